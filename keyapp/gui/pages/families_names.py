"""What people call a ...: what a name may mean, and the question that splits it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from keyapp.browse import Hit, Line, Meant, meant
from keyapp.gui.pages.families_part import Line as LineText
from keyapp.gui.pages.families_part import Part
from keyapp.gui.pages.page import Page
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import button, clear, label, panel, reveal, with_symbol
from keyapp.gui.widgets.tiles import Tiles
from keyapp.model import State
from keyapp.wording import called_line

__all__ = ["NamesPart"]

_FIRST = 6
"""As many kinds that a name may mean are shown as cards."""


class NamesPart(Part):
    """A field; then who may be meant, dangers first, and what to ask. Drawn anew as one types."""

    first_focus = "name"

    def __init__(self, page: Page) -> None:
        super().__init__(page)
        self._field = QLineEdit()
        self._whole = QWidget()
        self._area = QVBoxLayout()
        self._work = button("", "names-work")
        self._shown = ""

    def build(self) -> None:
        body, footer = self.page.body, self.page.footer
        body.addWidget(label(self.say("names"), "title"))
        body.addWidget(label(self.say("names-intro"), "soft"))
        said = label(self.say("names-field"), "strong")
        field = self._field = QLineEdit(self.browsing.name)
        field.setObjectName("name")
        field.setAccessibleName(self.say("names-field"))
        field.setPlaceholderText(self.say("search-hint"))
        field.textEdited.connect(self._on_typed)
        said.setBuddy(field)
        self.hold(body, said, field)
        self._whole = QWidget()
        self._area = QVBoxLayout(self._whole)
        self._area.setContentsMargins(0, 0, 0, 0)
        self._area.setSpacing(SPACE.medium)
        body.addWidget(self._whole)
        body.addStretch(1)
        footer.addWidget(self.back_button())
        footer.addStretch(1)
        self._work = button(self.say("names-work"), "names-work", "primary", says=self.say("names-work-says"))
        self._work.setToolTip(self.say("names-work-says"))
        self._work.clicked.connect(lambda: self.session.work_out_told(self.browsing.name.strip()))
        footer.addWidget(self._work)
        self._fill()

    def follow(self) -> bool:
        if self._field.text() != self.browsing.name:
            self._field.setText(self.browsing.name)
        if self._shown != self.browsing.name:
            self._fill()
            reveal(self._whole)
        return True

    def _on_typed(self, text: str) -> None:
        self.session.heed(text)
        self.browsing.ask_name(text)

    # What it may mean ----------------------------------------------------------------------------

    def _fill(self) -> None:
        said = self._shown = self.browsing.name
        clear(self._area)
        self._work.setEnabled(bool(said.strip()))
        if not said.strip():
            return
        found = meant(self.tables, said)
        if not found.hits:
            self._area.addLayout(with_symbol(self.kit, "warning", self.say("none"), "strong"))
            self._area.addWidget(label(self.say("none-why")))
            return
        dangers = [hit for hit in found.hits if hit.kind.gated]
        others = [hit for hit in found.hits if not hit.kind.gated]
        self._add_dangers([*dangers, *found.look_alikes])
        if others:
            entry = "names-means-also" if dangers else "names-means"
            self._area.addWidget(label(self.say(entry, said=said.strip()), "head"))
            self._add_others(others)
        if len(found.hits) == 1:
            self._area.addWidget(label(self.say("names-one"), "soft"))
        else:
            self._area.addWidget(self._split(found))
        self._add_facts()
        if self.session.case.answers:
            self._area.addLayout(with_symbol(self.kit, "undo", self.say("names-work-undo"), "small", "soft"))

    def _add_dangers(self, hits: Sequence[Hit]) -> None:
        if not hits:
            return
        frame, inside = panel("danger", SPACE.small, SPACE.medium)
        frame.setObjectName("names-dangers")
        inside.addLayout(with_symbol(self.kit, "warning", self.say("dangers-head"), "signal", "signal"))
        inside.addWidget(self._cards(hits))
        self._area.addWidget(frame)

    def _add_others(self, hits: Sequence[Hit]) -> None:
        self._area.addWidget(self._cards(hits[:_FIRST]))
        if len(hits) > _FIRST:
            self._area.addWidget(label(self.words.listing([self.title(hit.kind) for hit in hits[_FIRST:]]), "soft"))

    def _cards(self, hits: Sequence[Hit]) -> QWidget:
        cards: list[QWidget] = []
        for hit in hits:
            lines: list[LineText] = []
            called = called_line(self.words, hit.name, self.keyset.taxa[hit.kind.id].title.say(self.language))
            if called:
                lines.append((called, "small", ""))
            if hit.taken_for:
                names = self.words.listing([self.title(one) for one in hit.taken_for])
                lines.append((self.say("taken-for", names=names), "small", "both"))
            cards.append(self.card(hit.kind, lines, "meant"))
        return Tiles(cards, SPACE.list_width + SPACE.thumb, level=True)

    def _add_facts(self) -> None:
        facts = self.words.told_facts(self.browsing.name)
        if not facts:
            return
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("names-facts")
        inside.addWidget(label(self.say("names-facts"), "head"))
        for at, fact in enumerate(facts):
            inside.addWidget(self.terms(fact, f"fact-{at}"))
        self._area.addWidget(frame)

    # What to ask ---------------------------------------------------------------------------------

    def _split(self, found: Meant) -> QWidget:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("names-split")
        inside.addWidget(label(self.say("split-head"), "small"))
        if found.split is None:
            inside.addWidget(label(self.say("split-none")))
            return frame
        character = self.keyset.characters[found.split.character]
        inside.addWidget(self.terms(character.question.say(self.language), "split", "head"))
        inside.addLayout(with_symbol(self.kit, "eye", character.look.say(self.language), "soft", "soft"))
        ask = self.say("split-caller", ask=character.ask_caller.say(self.language))
        inside.addLayout(with_symbol(self.kit, "phone", ask, "soft", "soft"))
        states = [(s, self._fitting(found.split, s)) for s in character.states]
        parts = [self._state(state, names) for state, names in states if names]
        inside.addWidget(Tiles(parts, SPACE.label_width))
        inside.addWidget(label(self.say("split-note"), "soft"))
        return frame

    def _fitting(self, split: Line, state: State) -> list[str]:
        """The kinds that mostly, or often, show a state."""
        fits = []
        for cell in split.cells:
            most = cell.states[0][1] if cell.states else 0.0
            if any(one == state.id and chance >= most / 2 for one, chance in cell.states):
                fits.append(self.title(cell.kind))
        return fits

    def _state(self, state: State, names: Sequence[str]) -> QWidget:
        made = QWidget()
        inside = QVBoxLayout(made)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.tiny)
        text = state.label.say(self.language)
        inside.addWidget(self.figure(state.figure, SPACE.portrait, text, f"figure-split-{state.id}"))
        inside.addWidget(label(text, "strong"))
        inside.addWidget(label(self.say("split-fits", names=self.words.listing(names)), "small"))
        return made
