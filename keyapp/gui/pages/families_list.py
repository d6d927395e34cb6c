"""The list of all families and signs, by any name and narrowed down, whatever is dangerous on top."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from keyapp.browse import Filters, Found, Hit, find, sorts
from keyapp.gui.browsing import MOST_COMPARED
from keyapp.gui.pages.families_part import Line, Part
from keyapp.gui.places import STATES, place_entries
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.choices import Tick
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.select import Entry, Select
from keyapp.gui.widgets.texts import button, clear, column, label, panel, reveal, row, with_symbol
from keyapp.gui.widgets.tiles import Tiles
from keyapp.model import Danger, Form
from keyapp.wording import called_line, sort_name

if TYPE_CHECKING:
    from keyapp.gui.pages.page import Page

__all__ = ["ListPart"]

_NARROW = "families-narrow"
_FIRST = 10
"""As many kinds that are not medically important are shown without asking for more."""
_AT_ONCE = 5
"""As many rows are made before the list is shown; the others follow, so that typing never waits for them."""
_EACH_TURN = 2


class ListPart(Part):
    """The name, the choices, then what was found: drawn anew as one types, without touching the field."""

    first_focus = "find"

    def __init__(self, page: Page) -> None:
        super().__init__(page)
        self._field = QLineEdit()
        self._area = QVBoxLayout()
        self._whole = QWidget()
        self._selects: dict[str, Select] = {}
        self._ticks: dict[str, Tick] = {}
        self._compare = QPushButton()
        self._shown: object = None
        self._steps: list[Callable[[], None]] = []

    def build(self) -> None:
        body = self.page.body
        body.addWidget(label(self.say("title"), "title"))
        body.addWidget(self.limits())
        self._add_field()
        body.addWidget(Fold(self.kit, self.session, _NARROW, self.say("narrow"), self._add_filters))
        self._whole = QWidget()
        self._area = QVBoxLayout(self._whole)
        self._area.setContentsMargins(0, 0, 0, 0)
        self._area.setSpacing(SPACE.medium)
        body.addWidget(self._whole)
        body.addStretch(1)
        names = button(self.say("names"), "families-names")
        names.clicked.connect(self.browsing.show_names)
        self._compare = button("", "families-compare")
        self._compare.clicked.connect(self.browsing.show_compare)
        now = button(self.say("now"), "families-now")
        now.clicked.connect(self._on_now)
        self.page.footer.addWidget(names)
        self.page.footer.addWidget(now)
        self.page.footer.addStretch(1)
        self.page.footer.addWidget(self._compare)
        self._fill(at_once=self.first_focus != "find")
        self._show_picked()

    def follow(self) -> bool:
        if self._field.text() != self.browsing.said:
            self._field.setText(self.browsing.said)
        if self.session.is_unfolded(_NARROW):
            for name, chosen in self._selects.items():
                chosen.choose(self.browsing.filters.get(name))
        if self._shown != self._wanted():
            self._fill()
            reveal(self._whole)
        self._show_picked()
        return True

    # The name and the choices --------------------------------------------------------------------

    def _add_field(self) -> None:
        said = label(self.say("search"), "strong")
        field = self._field = QLineEdit(self.browsing.said)
        field.setObjectName("find")
        field.setAccessibleName(self.say("search"))
        field.setPlaceholderText(self.say("search-hint"))
        field.textEdited.connect(self._on_typed)
        said.setBuddy(field)
        clears = button(self.say("clear"), "find-clear", "plain", says=self.say("clear-says"))
        clears.clicked.connect(self._on_clear)
        self.page.body.addWidget(said)
        self.page.body.addLayout(row(field, clears))

    def _on_typed(self, text: str) -> None:
        # Words of injury open the emergency card wherever they are typed.
        self.session.heed(text)
        self.browsing.look_for(text)

    def _on_clear(self) -> None:
        self.browsing.look_for("")
        self._field.setFocus()

    def _add_filters(self, held: QVBoxLayout) -> None:
        nothing: Entry = (self.say("any"), None)
        heading = Select.HEADING
        headings = {name: self.say(name) for name in ("offices", "states", "regions")}
        regions = place_entries(self.keyset.regions, self.language, headings, heading)
        months: list[Entry] = [(self.words.fixed(f"month.{month}"), month) for month in range(1, 13)]
        spots = self.keyset.spots.values()
        found: list[Entry] = []
        for is_indoors, name in ((True, "indoors"), (False, "outdoors")):
            found.append((self.say(name), heading))
            found += [(spot.label.say(self.language), spot.id) for spot in spots if spot.indoors is is_indoors]
        every = sorts(self.tables)
        forms = set(Form)
        kinds: list[Entry] = [(self.say("animals"), heading)]
        kinds += [(sort_name(self.words, one), one) for one in every if one not in forms]
        kinds.append((self.say("signs-heading"), heading))
        kinds += [(sort_name(self.words, one), one) for one in every if one in forms]
        dangers: list[Entry] = [(self.say(f"danger.{one}"), one) for one in Danger]
        self._selects = {}
        parts = [
            self._filter(name, [nothing, *entries])
            for name, entries in (
                ("region", regions), ("month", months), ("spot", found), ("sort", kinds), ("danger", dangers),
            )
        ]  # fmt: skip
        held.addWidget(Tiles(parts, SPACE.list_width))

    def _filter(self, name: str, entries: Sequence[Entry]) -> QWidget:
        says = self.say(f"filter.{name}")
        chosen = Select(self.kit, f"filter-{name}", says, entries, lambda value: self.browsing.narrow(**{name: value}))
        chosen.choose(self.browsing.filters.get(name))
        self._selects[name] = chosen
        made = QWidget()
        inside = column(SPACE.hair)
        made.setLayout(inside)
        said = label(says, "small")
        said.setBuddy(chosen)
        self.hold(inside, said, chosen)
        return made

    # What was found ------------------------------------------------------------------------------

    def _wanted(self) -> object:
        return self.browsing.said, self.browsing.filters, self.browsing.shows_all

    def _fill(self, *, at_once: bool = False) -> None:
        self._shown = self._wanted()
        self._ticks = {}
        self._steps = []
        had_more = self.page.named("families-more")
        had_focus = had_more is not None and had_more.hasFocus()
        clear(self._area)
        found = find(self.tables, self.browsing.said, Filters(**self.browsing.filters))  # type: ignore[arg-type]
        self._add_narrowed(found)
        if not found.hits:
            self._add_nothing()
            return
        self._add_dangers(found)
        others = found.others if self.browsing.shows_all else found.others[:_FIRST]
        if others:
            # Its rows come after those of the dangers, each in its own turn.
            self._area.addWidget(label(self._others_head(), "head"))
            if self._is_now():
                self._area.addWidget(label(self.say("now-why"), "soft"))
        self._steps += [partial(self._add_row, self._area, self._whole, hit) for hit in others]
        left = len(found.others) - len(others)
        if left:
            self._steps.append(partial(self._add_more, left))
        self._go_on(len(self._steps) if at_once or had_focus else _AT_ONCE)
        if had_focus:
            first = self.page.named(f"open-{found.others[_FIRST].kind.id}") if len(found.others) > _FIRST else None
            if first is not None:
                first.setFocus()

    def _is_now(self) -> bool:
        filters = Filters(**self.browsing.filters)  # type: ignore[arg-type]
        return filters.here_and_now and not self.browsing.said.strip()

    def _others_head(self) -> str:
        if not self._is_now():
            return self.say("others-head")
        place, month = (self._chosen(name, self.browsing.filters[name]) for name in ("region", "month"))
        return self.say("now-head", place=place, month=month)

    def _on_now(self) -> None:
        """The place of the enquiry, or else that of the office, and this month."""
        region = self.session.case.settings.region or next(
            (one.id for one in self.keyset.regions.values() if one.part_of), next(iter(self.keyset.regions))
        )
        self.browsing.look_for("")
        self.browsing.narrow(region=region, month=datetime.date.today().month)

    def _go_on(self, count: int) -> None:
        """Make as many rows, and plan the others for the next turns of the loop."""
        steps = self._steps
        for step in steps[:count]:
            step()
        del steps[:count]
        if steps:
            QTimer.singleShot(0, self._whole, lambda: self._next(steps))

    def _next(self, steps: list[Callable[[], None]]) -> None:
        if steps is self._steps:
            self._go_on(_EACH_TURN)
            self._show_picked()

    def _add_row(self, inside: QVBoxLayout, parent: QWidget, hit: Hit) -> None:
        inside.addLayout(self._row(hit))
        if parent.isVisible():
            reveal(parent)

    def _add_more(self, left: int) -> None:
        more = button(self.say("more", count=str(left)), "families-more", icon=self.kit.look.icon("down", "soft"))
        more.clicked.connect(self.browsing.show_all)
        self._area.addLayout(row(more, None))
        if self._whole.isVisible():
            reveal(self._whole)

    def _add_narrowed(self, found: Found) -> None:
        names = [self._chosen(name, value) for name, value in self.browsing.filters.items()]
        if not names:
            return
        again = button(self.say("narrow-none"), "families-all")
        again.clicked.connect(self.browsing.narrow_nothing)
        said = f"{self.words.listing(names)}. {self.say('left-out', count=str(found.left_out))}"
        across = row(label(said, "soft"), again)
        across.setStretch(0, 1)
        self._area.addLayout(across)

    def _chosen(self, name: str, value: object) -> str:
        """What a choice is called."""
        text = str(value)
        if name == "month":
            return self.words.fixed(f"month.{text}")
        if name == "spot":
            return self.keyset.spots[text].label.say(self.language)
        if name == "sort":
            return sort_name(self.words, text)
        if name == "danger":
            return self.say(f"danger.{text}")
        region = self.keyset.regions.get(text)
        return region.name.say(self.language) if region else STATES.get(text, text)

    def _add_nothing(self) -> None:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("families-none")
        inside.addLayout(with_symbol(self.kit, "warning", self.say("none"), "strong"))
        inside.addWidget(label(self.say("none-why")))
        self._area.addWidget(frame)

    def _add_dangers(self, found: Found) -> None:
        if not found.dangers:
            self._area.addLayout(with_symbol(self.kit, "note", self.say("dangers-none"), "", "soft"))
            return
        frame, inside = panel("danger", SPACE.small, SPACE.medium)
        frame.setObjectName("families-dangers")
        inside.addLayout(with_symbol(self.kit, "warning", self.say("dangers-head"), "signal", "signal"))
        self._steps += [partial(self._add_row, inside, frame, hit) for hit in found.dangers]
        self._area.addWidget(frame)

    def _row(self, hit: Hit) -> QHBoxLayout:
        kind, title = hit.kind, self.title(hit.kind)
        lines: list[Line] = []
        called = called_line(self.words, hit.name, self.keyset.taxa[kind.id].title.say(self.language))
        if called:
            lines.append((called, "small", ""))
        if hit.taken_for:
            names = self.words.listing([self.title(one) for one in hit.taken_for[:3]])
            lines.append((self.say("taken-for", names=names), "small", "both"))
        lines += [(self.say(f"unusual.{name}"), "small", "note") for name in hit.unusual]
        tick = Tick(self.kit, self.say("pick"), f"pick-{kind.id}")
        tick.setAccessibleName(self.say("pick-says", name=title))
        tick.setChecked(kind.id in self.browsing.picked)
        tick.toggled.connect(lambda is_on: self.browsing.pick(kind.id, is_on))
        self._ticks[kind.id] = tick
        tick.setMaximumWidth(SPACE.portrait - SPACE.huge)
        across = row(self.card(kind, lines))
        across.addWidget(tick)
        across.setStretch(0, 1)
        return across

    def _show_picked(self) -> None:
        picked = self.browsing.picked
        is_full = len(picked) >= MOST_COMPARED
        for kind, tick in self._ticks.items():
            tick.setChecked(kind in picked)
            tick.setEnabled(kind in picked or not is_full)
            tick.setToolTip(self.say("compare-full") if is_full and kind not in picked else "")
        can = len(picked) >= 2
        text = self.say("compare", count=str(len(picked))) if can else self.say("compare-few")
        self._compare.setText(text)
        self._compare.setAccessibleName(text)
        self._compare.setEnabled(can)
