"""The trail of answers: one line that opens to show and change any of them."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStyle, QStyleOptionButton, QVBoxLayout, QWidget

from keyapp.engine import Step, StepKind
from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.beside import Beside
from keyapp.gui.widgets.park_button import park_button
from keyapp.gui.widgets.select import Select
from keyapp.gui.widgets.texts import button, label, panel, row, rule, symbol
from keyapp.model import Answer, Choice, Evidence, LeadAnswer, Measurement, Report

__all__ = ["Trail"]


_JOINT = " · "
_SHORT = 34
"""Letters of an answer that the line shows."""


class _Line(QPushButton):
    """A button that shows as many of its parts as fit, the last ones first to stay."""

    def __init__(self, parts: Sequence[str], empty: str) -> None:
        super().__init__()
        self._parts = list(parts)
        self._empty = empty

    def sizeHint(self) -> QSize:
        return QSize(SPACE.label_width, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        return QSize(SPACE.thumb, super().minimumSizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        option = QStyleOptionButton()
        self.initStyleOption(option)
        painter = QPainter(self)
        style = self.style()
        style.drawControl(QStyle.ControlElement.CE_PushButtonBevel, option, painter, self)
        option.rect = style.subElementRect(QStyle.SubElement.SE_PushButtonContents, option, self)
        option.text = self._fitting(option.rect.width() - SPACE.icon - SPACE.medium)
        style.drawControl(QStyle.ControlElement.CE_PushButtonLabel, option, painter, self)
        painter.end()

    def _fitting(self, room: int) -> str:
        metrics = self.fontMetrics()
        if not self._parts:
            return metrics.elidedText(self._empty, Qt.TextElideMode.ElideRight, room)
        parts = [_first_words(part) for part in self._parts]
        for first in range(len(parts)):
            text = _JOINT.join((["…"] if first else []) + parts[first:])
            if metrics.horizontalAdvance(text) <= room:
                return text
        return metrics.elidedText(parts[-1], Qt.TextElideMode.ElideRight, room)


def _first_words(text: str) -> str:
    """The text where it is short, else its first words."""
    return textwrap.shorten(text.rstrip("."), _SHORT, placeholder="…")


class Trail(QWidget):
    """Every answer in order, with the couplets that were passed, and undo and redo."""

    def __init__(self, kit: Kit, session: Session) -> None:
        super().__init__()
        self._kit = kit
        self._session = session
        self._list: QWidget | None = None
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        self._inside = inside
        session.folded.connect(self._on_folded)
        inside.addLayout(self._head())
        self._draw()

    def _draw(self) -> None:
        is_open = self._session.is_unfolded("trail")
        state = self.tr("open") if is_open else self.tr("closed")
        self._line.setAccessibleName(
            self.tr("Answers so far ({state}): {text}").replace("{state}", state).replace("{text}", self._text)
        )
        self._line.setIcon(self._kit.look.icon("down" if is_open else "right", "soft"))
        if self._list is not None:
            self._list.hide()
            self._list.deleteLater()
            self._list = None
        if is_open:
            self._list = self._rows()
            self._inside.addWidget(self._list)

    def _on_folded(self, name: str) -> None:
        if name == "trail":
            self._draw()

    def _on_clicked(self) -> None:
        self._session.unfold("trail", not self._session.is_unfolded("trail"))

    def _head(self) -> QHBoxLayout:
        session, kit = self._session, self._kit
        said = [self._short(answer) for answer in session.case.answers]
        thing = self._thing()
        parts = [*([thing] if thing else []), *said]
        text = _JOINT.join(parts) if parts else self.tr("No answers yet")
        line = _Line(parts, text)
        line.setObjectName("fold-trail")
        line.setProperty("role", "fold")
        self._line, self._text = line, text
        line.setToolTip(self.tr("Show the answers, and change any of them"))
        line.clicked.connect(self._on_clicked)
        undo = button("", "undo", "plain", icon=kit.look.icon("undo", "accent"), says=self.tr("Undo"))
        undo.setToolTip(self.tr("Undo (Ctrl+Z)"))
        undo.setEnabled(session.can_undo)
        undo.clicked.connect(session.undo)
        redo = button("", "redo", "plain", icon=kit.look.icon("redo", "accent"), says=self.tr("Redo"))
        redo.setToolTip(self.tr("Redo (Ctrl+Shift+Z)"))
        redo.setEnabled(session.can_redo)
        redo.clicked.connect(session.redo)
        across = row(gap=SPACE.tiny)
        across.addWidget(line, 1)
        across.addWidget(undo)
        across.addWidget(redo)
        across.addWidget(park_button(kit, session, text=False))
        return across

    def _rows(self) -> QWidget:
        session = self._session
        frame, inside = panel("card", SPACE.small, SPACE.medium)
        way = session.reading.walk
        thing = self._thing()
        if thing:
            self._add(inside, "check", self.tr("Said before the key"), thing, None, None, "settings")
        for step in way.steps:
            self._add_step(inside, step)
        for answer in session.case.answers:
            if not isinstance(answer, LeadAnswer):
                character = session.keyset.characters[answer.character]
                question = character.question.say(session.language)
                self._add(
                    inside,
                    "note",
                    question,
                    self._short(answer),
                    None,
                    answer,
                    f"seen-{answer.character}",
                    self.tr("Reported"),
                )
        for answer in way.set_aside:
            couplet = session.keyset.couplets[answer.couplet]
            self._add(
                inside,
                "away",
                couplet.asks.say(session.language),
                session.words.answer(answer),
                answer.couplet,
                answer,
                f"aside-{answer.couplet}",
                self.tr("Set aside: kept, but not on the way now, so it does not count"),
            )
        if inside.count() == 0:
            inside.addWidget(label(self.tr("Nothing has been answered yet."), "soft"))
        return frame

    def _add_step(self, inside: QVBoxLayout, step: Step) -> None:
        session = self._session
        couplet = session.keyset.couplets[step.couplet]
        asks = couplet.asks.say(session.language)
        if step.kind is StepKind.PASSED:
            lead = couplet.leads[0 if step.choice is Choice.FIRST else 1]
            self._add(
                inside,
                "passed",
                asks,
                lead.says.say(session.language),
                step.couplet,
                None,
                f"step-{step.couplet}",
                self.tr("Passed: other answers settle it"),
            )
        elif step.answer is not None:
            icon = "both" if step.kind is StepKind.BOTH else "check"
            note = self.tr("Both ways stay open") if step.kind is StepKind.BOTH else ""
            self._add(
                inside, icon, asks, self._short(step.answer), step.couplet, step.answer, f"step-{step.couplet}", note
            )

    def _add(
        self,
        inside: QVBoxLayout,
        icon: str,
        question: str,
        said: str,
        couplet: str | None,
        answer: Answer | None,
        name: str,
        note: str = "",
    ) -> None:
        session = self._session
        if inside.count():
            inside.addWidget(rule())
        texts = QVBoxLayout()
        texts.setSpacing(0)
        texts.addWidget(label(question, "small"))
        texts.addWidget(label(said))
        if note:
            texts.addWidget(label(note, "small"))
        controls: list[QWidget] = []
        if answer is not None:
            controls.append(self._rests(answer, f"rests-{name}"))
        change = button(self.tr("Change"), f"change-{name}", "plain", says=self.tr("Change: ") + question)
        if couplet is not None:
            change.clicked.connect(lambda: session.look_at(couplet))
        elif answer is not None:
            change.clicked.connect(lambda: session.look_at_answer(answer))
        else:
            change.clicked.connect(lambda: session.show_stage(type(session.stage).SETTINGS))
        controls.append(change)
        if answer is not None:
            back = button(self.tr("Take back"), f"back-{name}", "plain", says=self.tr("Take back: ") + question)
            back.clicked.connect(lambda: session.take_back(answer))
            controls.append(back)
        across = row(gap=SPACE.medium)
        across.addWidget(symbol(self._kit, icon, "soft"), 0, Qt.AlignmentFlag.AlignTop)
        across.addWidget(Beside(texts, controls), 1)
        inside.addLayout(across)

    def _rests(self, answer: Answer, name: str) -> Select:
        """What the answer rests on, to be changed on the spot."""
        session, words = self._session, self._session.words
        kinds = [(words.fixed(f"evidence.{one}"), one) for one in Evidence]
        says = words.fixed("rests.change", answer=words.answer(answer))
        rests = Select(self._kit, name, says, kinds, lambda kind: session.rest_on(answer, Evidence(str(kind))))
        rests.choose(answer.evidence)
        rests.setFixedWidth(SPACE.label_width)
        return rests

    def _thing(self) -> str:
        session = self._session
        thing = session.case.settings.thing
        character = session.keyset.characters.get("thing")
        if not thing or character is None or session.case.note("thing") is not None:
            return ""
        return character.state(thing).label.say(session.language)

    def _short(self, answer: Answer) -> str:
        """The answer without its question, where it can stand alone."""
        words, language = self._session.words, self._session.language
        if isinstance(answer, LeadAnswer) and answer.choice in (Choice.CANT_TELL, Choice.NEITHER):
            return words.fixed(f"choice.{answer.choice}")
        if isinstance(answer, Measurement):
            said = f"{answer.mm:g} mm"
            return said if answer.sureness == "sure" else f"{said} ({words.fixed('sureness.think-so')})"
        if words.says_nothing(answer):
            return words.fixed("choice.cant-tell")
        if isinstance(answer, Report):
            character = self._session.keyset.characters[answer.character]
            joint = " + " if answer.both else " / "
            labels = [character.state(s).label.say(language) for s in character.state_ids if s in answer.states]
            said = joint.join(labels)
            return said if answer.sureness == "sure" else f"{said} ({words.fixed('sureness.think-so')})"
        return words.answer(answer)
