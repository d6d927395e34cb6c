"""Two to four kinds side by side on the characters that separate them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.browse import Cell, Kind, Line, Standing, compare, kinds
from keyapp.gui.browsing import MOST_COMPARED
from keyapp.gui.pages.families_part import Part
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.select import Entry, Select
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol
from keyapp.gui.widgets.tiles import Tiles
from keyapp.model import Form
from keyapp.wording import science_line, shown_lines, size_line

__all__ = ["ComparePart"]

_FIRST = 6
"""As many characters are shown without unfolding."""
_SAME = 0.1
"""Separation below which a character is much the same in all."""


class ComparePart(Part):
    """What tells them apart best comes first; each cell in words and with its figure."""

    first_focus = "families-back"

    def follow(self) -> bool:
        return False

    def build(self) -> None:
        body = self.page.body
        some = self.kinds_of(self.browsing.picked)
        body.addWidget(label(self.say("compare-head"), "title"))
        body.addLayout(with_symbol(self.kit, "warning", self.words.fixed("card.unsure"), "strong"))
        body.addWidget(self._heads(some))
        if len(some) < MOST_COMPARED:
            body.addLayout(self._adding(some))
        self.page.footer.addWidget(self.back_button())
        self.page.footer.addStretch(1)
        self.page.footer.addWidget(self.work_button("primary"))
        if len(some) < 2:
            body.addWidget(label(self.say("compare-few"), "soft"))
            body.addStretch(1)
            return
        self._add_lines(some)

    def _add_lines(self, some: Sequence[Kind]) -> None:
        body = self.page.body
        lines = compare(self.tables, some)
        apart = [line for line in lines if line.separation >= _SAME]
        if not apart:
            body.addWidget(label(self.say("compare-nothing"), "soft"))
        else:
            body.addWidget(label(self.say("compare-order"), "soft"))
        self.page.later(*(lambda one=one: body.addWidget(self._line(one)) for one in apart[:_FIRST]))

        same = [self._asks(line) for line in lines if line.separation < _SAME]

        def more(held: QVBoxLayout) -> None:
            for line in apart[_FIRST:]:
                held.addWidget(self._line(line))
            if same:
                held.addWidget(label(self.say("compare-same", names=" ".join(same)), "soft"))

        def rest() -> None:
            if apart[_FIRST:] or same:
                title = self.say("compare-more", count=str(len(lines[_FIRST:])))
                body.addWidget(Fold(self.kit, self.session, "families-compare-more", title, more))
            body.addStretch(1)

        self.page.later(rest)

    # The kinds -----------------------------------------------------------------------------------

    def _heads(self, some: Sequence[Kind]) -> QWidget:
        heads: list[QWidget] = []
        for kind in some:
            taxon, title = self.keyset.taxa[kind.id], self.title(kind)
            frame, inside = panel("danger" if kind.gated else "card", SPACE.tiny, SPACE.medium)
            frame.setObjectName(f"compared-{kind.id}")
            inside.addWidget(self.figure(taxon.figure, SPACE.thumb, title, f"figure-{kind.id}"))
            inside.addWidget(label(title, "strong"))
            inside.addWidget(label(science_line(taxon).split(" · ")[0], "science"))
            for text, role, icon in self.danger_lines(kind):
                inside.addLayout(with_symbol(self.kit, icon, text, role, "signal"))
            take = button(self.say("compare-take"), f"take-{kind.id}", says=self.say("compare-take-says", name=title))
            take.clicked.connect(lambda _=False, one=kind.id: self.browsing.pick(one, False))
            inside.addStretch(1)
            inside.addLayout(row(take, None))
            heads.append(frame)
        return Tiles(heads, SPACE.portrait, level=True)

    def _adding(self, some: Sequence[Kind]) -> QVBoxLayout:
        here = {kind.id for kind in some}
        found = [kind for kind in kinds(self.tables) if kind.id not in here and not kind.outside]
        titled = sorted((self.title(kind), kind.id, self.keyset.taxa[kind.id].form) for kind in found)
        entries: list[Entry] = [(self.say("compare-add-none"), None)]
        for heading, is_animal in (("animals", True), ("signs-heading", False)):
            entries.append((self.say(heading), Select.HEADING))
            entries += [(title, one) for title, one, form in titled if (form is Form.ANIMAL) is is_animal]
        says = self.say("compare-add")
        adds = Select(self.kit, "families-add", says, entries, self._on_add)
        said = label(says, "small")
        said.setBuddy(adds)
        adds.setMaximumWidth(SPACE.figure + SPACE.huge)
        inside = QVBoxLayout()
        inside.setSpacing(SPACE.hair)
        self.hold(inside, said, adds)
        return inside

    def _on_add(self, kind: object) -> None:
        if isinstance(kind, str):
            self.browsing.pick(kind, True)

    # The characters ------------------------------------------------------------------------------

    def _asks(self, line: Line) -> str:
        return self.keyset.characters[line.character].question.say(self.language)

    def _line(self, line: Line) -> QWidget:
        frame, inside = panel("card", SPACE.medium, SPACE.large)
        frame.setObjectName(f"line-{line.character}")
        inside.addWidget(self.terms(self._asks(line), f"asks-{line.character}", "head"))
        inside.addWidget(Tiles([self._cell(line, cell) for cell in line.cells], SPACE.portrait))
        return frame

    def _cell(self, line: Line, cell: Cell) -> QWidget:
        made = QWidget()
        inside = QVBoxLayout(made)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.tiny)
        name = label(self.title(cell.kind), "strong")
        inside.addWidget(name)
        if cell.standing is not Standing.TOLD:
            inside.addWidget(label(self.say(f"cell.{cell.standing}"), "soft"))
            return made
        if cell.size is not None:
            inside.addWidget(label(size_line(self.words, cell.size)))
            return made
        character = self.keyset.characters[line.character]
        state = character.state(cell.states[0][0])
        text = state.label.say(self.language)
        figure = self.figure(state.figure, SPACE.portrait, text, f"figure-{line.character}-{cell.kind.id}")
        inside.addWidget(figure, 0, Qt.AlignmentFlag.AlignLeft)
        for at, shown in enumerate(shown_lines(self.words, line.character, cell.states)):
            inside.addWidget(label(shown, "small" if at else ""))
        return made
