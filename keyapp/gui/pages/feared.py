"""Is it a ...? Started from an animal someone is afraid it is."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.proposals import answer_row
from keyapp.gui.widgets.safety_panel import safety_panel
from keyapp.gui.widgets.texts import button, label, panel, row, rule, with_symbol
from keyapp.wording import EvidenceLine, FearText, fear_text, feared_called, feared_name

__all__ = ["FearedPage"]


class FearedPage(Page):
    """First the choice of the animal; then how it stands, the one thing to look at, and the evidence."""

    stage = Stage.FEARED

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._sides: QBoxLayout | None = None

    def subject(self) -> object:
        return (self.stage, self.session.feared, self.session.feared_said)

    def build(self) -> None:
        self._sides = None
        if not self.session.is_open:
            return
        if self.session.feared:
            self._add_fear()
        else:
            self._add_choice()
        self.body.addStretch(1)

    # Choosing the animal -------------------------------------------------------------------------

    def _add_choice(self) -> None:
        session = self.session
        self.body.addWidget(safety_panel(self.kit, session))
        self.body.addWidget(label(self.tr("Is it a …?"), "title"))
        said = self.tr("Choose the animal you are afraid it is. Your answers so far are kept.")
        self.body.addWidget(label(said, "soft"))
        groups = session.keyset.danger_groups.values()
        dangers = [group for group in groups if any(row.danger == group.id for row in session.tables.rows)]
        for group in dangers:
            self._add_animal(group.id, session.words.danger(group.id))
        self.first_focus = f"feared-{dangers[0].id}" if dangers else "feared-name"
        self.body.addSpacing(SPACE.small)
        self.body.addWidget(label(self.tr("Any other animal, by any name"), "head"))
        name = QLineEdit(session.feared_said)
        name.setObjectName("feared-name")
        name.setAccessibleName(self.tr("Name of the animal you are afraid it is"))
        name.textEdited.connect(session.heed)
        name.returnPressed.connect(lambda: session.find_feared(name.text()))
        find = button(self.tr("Find"), "feared-find", says=self.tr("Find the animal of this name"))
        find.clicked.connect(lambda: session.find_feared(name.text()))
        self.body.addLayout(row(name, find))
        if session.feared_said:
            self.body.addWidget(label(self.tr("That name is in use for several. Which one?"), "soft"))
            shown = {group.id for group in dangers}
            for animal in feared_called(session.tables, session.feared_said):
                prefix = "may-be" if animal.id in shown else "feared"
                self._add_animal(animal.id, feared_name(session.words, animal), prefix)
        self._add_leave()

    def _add_animal(self, animal: str, name: str, prefix: str = "feared") -> None:
        choose = button(name[:1].upper() + name[1:], f"{prefix}-{animal}", icon=self.kit.look.icon("right"))
        choose.setMinimumWidth(SPACE.list_width)
        choose.clicked.connect(lambda: self.session.fear_about(animal))
        self.body.addLayout(row(choose, None))

    # The animal ----------------------------------------------------------------------------------

    def _add_fear(self) -> None:
        session = self.session
        fear = session.fear
        text = fear_text(session.words, fear)
        self.first_focus = "fear-ask" if fear.best else "leave-feared"
        self.body.addWidget(label(text.ask, "title"))
        self.body.addWidget(self._status(text, fear.is_open))
        if not fear.is_open:
            self.body.addWidget(safety_panel(self.kit, session))
        if text.check_again:
            self.body.addWidget(self._check_again(text))
        if text.best:
            self.body.addWidget(self._best(text))
        for line in text.missing:
            self.body.addLayout(with_symbol(self.kit, "note", line, "", "soft"))
        self._add_evidence(text)
        self._add_leave()
        if fear.best is not None:
            character = fear.best.character
            asks = session.keyset.characters[character].question.say(session.language)
            ask = button(self.tr("Answer this"), "fear-ask", "primary", says=self.tr("Answer this: ") + asks)
            ask.clicked.connect(lambda: session.ask(character))
            self.footer.addWidget(ask)
        self._fit()

    def _status(self, text: FearText, is_open: bool) -> QWidget:
        frame, inside = panel("danger" if is_open else "card", SPACE.tiny, SPACE.medium)
        frame.setObjectName("fear-status")
        role, tone = ("signal", "signal") if is_open else ("strong", "ink")
        inside.addLayout(with_symbol(self.kit, "warning", text.status, role, tone))
        words, named = self.session.words, self.session.reading.not_ruled_out
        others = [words.danger(one.group) for one in named if one.group != self.session.fear.feared.danger]
        lines = [text.together]
        if is_open and others:
            lines.append(words.fixed("fear.others", names=words.listing(others)))
        for line in lines:
            if line:
                said = label(line)
                said.setIndent(SPACE.icon + SPACE.small)
                inside.addWidget(said)
        return frame

    def _check_again(self, text: FearText) -> QWidget:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("fear-second-look")
        inside.addLayout(with_symbol(self.kit, "eye", text.check_again, "strong"))
        for place, answer in enumerate(text.again):
            answer_row(self.kit, self.session, inside, answer, f"fear-again-{place}")
        return frame

    def _best(self, text: FearText) -> QWidget:
        frame, inside = panel("card", SPACE.tiny, SPACE.large)
        frame.setObjectName("fear-best")
        inside.addWidget(label(text.best, "head"))
        inside.addLayout(with_symbol(self.kit, "eye", text.best_look, "soft", "soft"))
        if text.best_why:
            inside.addWidget(label(text.best_why))
        return frame

    def _add_evidence(self, text: FearText) -> None:
        """For and against side by side, and what says little beneath; only what there is."""
        self._sides = QHBoxLayout()
        self._sides.setSpacing(SPACE.medium)
        sides = (
            ("fear-for", self.tr("What speaks for it"), text.for_it, self.tr("Nothing so far.")),
            ("fear-against", self.tr("What speaks against it"), text.against_it, self.tr("Nothing so far.")),
        )
        for name, title, lines, nothing in sides:
            self._sides.addWidget(self._lines(name, title, lines, nothing), 1)
        self.body.addLayout(self._sides)
        if text.little:
            self.body.addWidget(self._lines("fear-little", self.tr("What says little either way"), text.little, ""))

    def _lines(self, name: str, title: str, lines: tuple[EvidenceLine, ...], nothing: str) -> QWidget:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName(name)
        inside.addWidget(label(title, "head"))
        for at, line in enumerate(lines):
            if at:
                inside.addWidget(rule())
            self._add_line(inside, line)
        if not lines:
            inside.addWidget(label(nothing, "soft"))
        inside.addStretch(1)
        return frame

    def _add_line(self, inside: QVBoxLayout, line: EvidenceLine) -> None:
        inside.addWidget(label(line.said))
        inside.addWidget(label(line.speaks[:1].upper() + line.speaks[1:] + ".", "strong"))
        if line.clears:
            inside.addWidget(label(line.clears, "small"))

    # The way back --------------------------------------------------------------------------------

    def _add_leave(self) -> None:
        session = self.session
        back = button(self.tr("Back"), "leave-feared", says=self.tr("Back to where you were; your answers are kept"))
        back.clicked.connect(session.leave_feared)
        self.footer.addWidget(back)
        if session.feared or session.feared_said:
            other = button(self.tr("Another animal"), "feared-other", says=self.tr("Ask about another animal"))
            other.clicked.connect(lambda: session.fear_about(""))
            self.footer.addWidget(other)
        self.footer.addStretch(1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """For and against side by side where there is room."""
        if self._sides is None:
            return
        is_narrow = min(self.width(), SPACE.column) - 2 * SPACE.wide < 2 * SPACE.list_width
        way = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        self._sides.setDirection(way)
