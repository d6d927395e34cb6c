"""What is asked before the key: what there is, where, when, who asks, what they were told."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from PySide6.QtCore import QLocale
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.places import place_entries
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.asking import feared_button
from keyapp.gui.widgets.choices import Option, Picks
from keyapp.gui.widgets.note_line import NoteLine
from keyapp.gui.widgets.offer import offer_panel
from keyapp.gui.widgets.park_button import park_button
from keyapp.gui.widgets.select import Entry, Select
from keyapp.gui.widgets.texts import button, label, row
from keyapp.model import Evidence

__all__ = ["SettingsPage"]

THING = "thing"


class SettingsPage(Page):
    """Every field may be left out; each change takes effect at once."""

    stage = Stage.SETTINGS

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._selects: dict[str, Select] = {}
        self._things: list[str | None] = []
        self._picks: Picks | None = None
        self._told: QLineEdit | None = None
        self._cards: list[Option] = []
        self._grid = QGridLayout()

    def subject(self) -> object:
        return (self.stage, self.session.is_open, self.session.offer is None, self.kit.look.is_dark)

    def update_in_place(self) -> bool:
        if not self.session.is_open:
            return False
        settings = self.session.case.settings
        for name, chosen in self._selects.items():
            chosen.choose(getattr(settings, name))
        if self._picks is not None:
            self._picks.choose(self._things.index(settings.thing))
        if self._told is not None and self._told.text() != settings.told:
            self._told.setText(settings.told)
        return True

    def forget(self) -> None:
        self._cards, self._selects, self._picks, self._told = [], {}, None, None

    def build(self) -> None:
        self._selects.clear()
        self._picks = self._told = None
        self._cards = []
        body = self.body
        offer = offer_panel(self.kit, self.session)
        if offer is not None:
            body.addWidget(offer)
        if not self.session.is_open:
            body.addWidget(label(self.tr("Opening the key"), "title"))
            body.addWidget(label(self.tr("One moment."), "soft"))
            body.addStretch(1)
            if self.session.early is not None:
                early = button(self.tr("Go on"), "go-on", "primary", says=self.tr("Go on to the first question"))
                early.clicked.connect(self.session.go_on)
                self.footer.addStretch(1)
                self.footer.addWidget(early)
            return
        body.addWidget(NoteLine(self.kit, self.session))
        body.addWidget(label(self.tr("What do you have?"), "title"))
        self._add_things()
        body.addSpacing(SPACE.small)
        body.addWidget(label(self.tr("Where, when, who"), "head"))
        body.addWidget(label(self.tr("Leave out what you don't know."), "soft"))
        body.addLayout(self._fields())
        body.addStretch(1)
        back = button(self.tr("Back"), "back", says=self.tr("Back to the first question"))
        back.clicked.connect(lambda: self.session.show_stage(Stage.HURT))
        on = button(self.tr("Go on"), "go-on", "primary", says=self.tr("Go on to the key"))
        on.clicked.connect(self.session.go_on)
        self.footer.addWidget(back)
        self.footer.addStretch(1)
        self.footer.addWidget(park_button(self.kit, self.session))
        self.footer.addWidget(feared_button(self.session))
        self.footer.addWidget(on)

    def _add_things(self) -> None:
        keyset, language = self.session.keyset, self.session.language
        character = keyset.characters.get(THING)
        if character is None:
            return
        self.body.addWidget(label(character.look.say(language), "soft"))
        values = self._things = [*character.state_ids, None]
        options = [
            Option(self.kit, s.label.say(language), f"thing-{s.id}", note=s.means.say(language), figure=s.figure)
            for s in character.states
        ]
        options.append(Option(self.kit, self.tr("Not sure, or something else"), "thing-none"))
        self._grid = QGridLayout()
        self._grid.setSpacing(SPACE.small)
        self._cards = options
        self._arrange()
        self.body.addLayout(self._grid)
        picked = values.index(self.session.case.settings.thing)
        self._picks = Picks(options[-1], options, lambda i: self.session.set_up(thing=values[i]), None, picked)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._cards:
            self._arrange()

    def _arrange(self) -> None:
        """Two cards in a row where there is room."""
        across = 2 if self.width() >= 2 * SPACE.list_width + SPACE.rail else 1
        for index, card in enumerate(self._cards):
            self._grid.addWidget(card, index // across, index % across)
        self._grid.setColumnStretch(0, 1)
        self._grid.setColumnStretch(1, across - 1)

    def _fields(self) -> QGridLayout:
        session = self.session
        settings = session.case.settings
        words = session.words
        unknown: Entry = (self.tr("Not known"), None)
        spots = [(spot.label.say(session.language), spot.id, spot.indoors) for spot in session.keyset.spots.values()]
        found: list[Entry] = [unknown, (self.tr("Indoors"), Select.HEADING)]
        found += [(text, spot) for text, spot, indoors in spots if indoors]
        found += [(self.tr("Outdoors"), Select.HEADING)]
        found += [(text, spot) for text, spot, indoors in spots if not indoors]
        this_month = datetime.date.today().month
        names = [QLocale(session.language).standaloneMonthName(m) for m in range(1, 13)]
        months: list[Entry] = [unknown]
        months += [
            (self.tr("{month} (now)").replace("{month}", n) if m == this_month else n, m)
            for m, n in enumerate(names, start=1)
        ]
        askers: list[Entry] = [
            (self.tr("Not said"), None),
            (self.tr("Someone on the telephone or at the desk"), "caller"),
            (self.tr("A gardener, with the animal at hand"), "gardener"),
            (self.tr("A class or group"), "class"),
            (self.tr("Staff"), "staff"),
        ]
        kinds: list[Entry] = [(words.fixed(f"evidence.{e}"), e) for e in Evidence]
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE.large)
        grid.setVerticalSpacing(SPACE.small)
        self._add(grid, self.tr("Where was it found?"), "spot", found, settings.spot)
        self._add(grid, self.tr("Which state or region?"), "region", self._regions(unknown), settings.region)
        self._add(grid, self.tr("Which month?"), "month", months, settings.month)
        self._add(grid, self.tr("Who is asking?"), "asker", askers, settings.asker)
        self._add(grid, self.tr("What do answers rest on?"), "evidence", kinds, settings.evidence)
        told = self._told = QLineEdit(settings.told)
        told.setObjectName("told")
        told.setAccessibleName(self.tr("What were they told it is?"))
        told.setAccessibleDescription(words.fixed("told-hidden"))
        told.textEdited.connect(self._on_typed)
        told.editingFinished.connect(lambda: session.set_told(told.text()))
        self._place(grid, self.tr("What were they told it is?"), told)
        grid.addWidget(label(words.fixed("told-hidden"), "small"), grid.rowCount(), 1)
        grid.setColumnStretch(1, 1)
        return grid

    def _regions(self, unknown: Entry) -> Sequence[Entry]:
        headings = {
            "offices": self.tr("Offices"),
            "states": self.tr("States"),
            "regions": self.tr("Regions, where the state is not known"),
        }
        return [unknown, *place_entries(self.session.keyset.regions, self.session.language, headings, Select.HEADING)]

    def _add(self, grid: QGridLayout, text: str, name: str, entries: Sequence[Entry], value: object) -> None:
        chosen = Select(self.kit, name, text, entries, lambda v: self.session.set_up(**{name: v}))
        chosen.choose(value)
        self._selects[name] = chosen
        self._place(grid, text, chosen)

    def _place(self, grid: QGridLayout, text: str, field: QWidget) -> None:
        at = grid.rowCount()
        said = label(text)
        said.setMinimumWidth(SPACE.label_width)
        said.setBuddy(field)
        grid.addLayout(row(said), at, 0)
        grid.addWidget(field, at, 1)

    def _on_typed(self, text: str) -> None:
        if self.session.has_new_injury_words(text):
            self.session.set_told(text)
