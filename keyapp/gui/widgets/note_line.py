"""A line to type what is said in, and what was found in it, each find to be confirmed by one key."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QPushButton, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.beside import Beside
from keyapp.gui.widgets.number_keys import NumberKeys
from keyapp.gui.widgets.select import Select
from keyapp.gui.widgets.texts import button, clear, label, panel, reveal, row, rule, symbol, with_symbol
from keyapp.model import Evidence
from keyapp.wording import better_line, find_text

if TYPE_CHECKING:
    from keyapp.notes import BetterQuestion, Found

__all__ = ["NoteLine"]


class NoteLine(QWidget):
    """The line, and beneath it the offers. It holds nothing: words and finds are the session's."""

    def __init__(self, kit: Kit, session: Session) -> None:
        super().__init__()
        self._kit = kit
        self._session = session
        words = session.words
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        line = self._line = QLineEdit(session.note.text)
        line.setObjectName("note-line")
        line.setAccessibleName(words.fixed("note.line"))
        line.setAccessibleDescription(words.fixed("note.hint"))
        line.setPlaceholderText(words.fixed("note.line"))
        line.setToolTip(words.fixed("note.hint"))
        line.setMinimumHeight(SPACE.target)
        line.textEdited.connect(session.type_note)
        line.returnPressed.connect(session.read_note)
        kinds = [(words.fixed("rests.on", evidence=words.fixed(f"evidence.{one}")), one) for one in Evidence]
        rests = Select(kit, "note-evidence", self.tr("These words rest on"), kinds, session.rest_note_on)
        rests.choose(session.note.evidence or session.case.settings.evidence)
        mark = symbol(kit, "note", "soft")
        mark.setAlignment(Qt.AlignmentFlag.AlignVCenter)
        across = row(mark, line, rests, gap=SPACE.small)
        across.setStretch(1, 5)
        across.setStretch(2, 3)
        inside.addLayout(across)
        self._held = QVBoxLayout()
        self._held.setSpacing(SPACE.small)
        inside.addLayout(self._held)
        session.noted.connect(self._on_noted)
        self._draw()

    # Offers --------------------------------------------------------------------------------------

    def _draw(self) -> None:
        session, words = self._session, self._session.words
        if self._line.text() != session.note.text:
            self._line.setText(session.note.text)
        clear(self._held)
        note = session.note.note
        if note is None:
            return
        frame, inside = panel("card", SPACE.small, SPACE.medium)
        frame.setObjectName("finds")
        finds = session.finds
        if finds:
            inside.addWidget(label(words.fixed("note.offers"), "strong"))
        else:
            inside.addWidget(label(words.fixed("note.left" if note.found else "note.nothing"), "soft"))
        confirms: list[QAbstractButton] = []
        for place, find in enumerate(finds, start=1):
            if place > 1:
                inside.addWidget(rule())
            confirms.append(self._add(inside, find, place))
        for at, one in enumerate(note.better):
            self._add_better(inside, one, at)
        done = button(self.tr("Empty the line"), "note-clear", "plain")
        done.clicked.connect(session.clear_note)
        inside.addLayout(row(None, done))
        self._held.addWidget(frame)
        if confirms:
            NumberKeys(frame, confirms)

    def _add(self, inside: QVBoxLayout, find: Found, place: int) -> QPushButton:
        """One find: what it says, the words it came from, and its buttons; returns the one that confirms."""
        session, words = self._session, self._session.words
        text = find_text(words, find)
        said = QVBoxLayout()
        said.setSpacing(SPACE.hair)
        said.addWidget(label(f"{place}  {text.says}", "strong"))
        for line in text.notes:
            said.addWidget(label(line, "small"))
        ways: list[QPushButton] = []
        name = f"find-{find.id}"
        if find.must_ask:
            for at, character in enumerate(find.characters):
                question = words.keyset.characters[character].question.say(words.language)
                made = button(text.measured[at], name if at == 0 else f"{name}-{at}", says=f"{text.says}: {question}")
                made.clicked.connect(lambda _=False, c=character: session.confirm_find(find.id, measured=c))
                ways.append(made)
        else:
            confirm = words.fixed("note.confirm-seen" if find.view is not None else "note.confirm")
            made = button(confirm, name, says=f"{confirm}: {text.says}. {text.notes[0]}")
            made.clicked.connect(lambda: session.confirm_find(find.id, seen=find.view is not None))
            ways.append(made)
        lets = words.fixed("note.drop")
        drop = button(lets, f"{name}-drop", "plain", says=f"{lets}: {text.says}")
        drop.clicked.connect(lambda: session.drop_find(find.id))
        for one in (*ways, drop):
            one.installEventFilter(self)
            one.setProperty("find", find.id)
        inside.addWidget(Beside(said, (*ways, drop)))
        return ways[0]

    def _add_better(self, inside: QVBoxLayout, one: BetterQuestion, at: int) -> None:
        """What to ask instead of words that often mislead, and a way to that question."""
        session, words = self._session, self._session.words
        said = with_symbol(self._kit, "phone", better_line(words, one.words, one.ask), "soft", "soft")
        if one.ask not in session.keyset.characters:
            inside.addLayout(said)
            return
        asks = session.keyset.characters[one.ask].question.say(words.language)
        ask = button(self.tr("Answer this"), f"better-{at}", "plain", says=self.tr("Answer this: ") + asks)
        ask.clicked.connect(lambda: session.ask(one.ask))
        inside.addWidget(Beside(said, (ask,)))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Return confirms as the button says; Delete and Backspace drop."""
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and isinstance(watched, QPushButton):
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                watched.click()
                return True
            if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
                self._session.drop_find(int(watched.property("find")))
                return True
        return super().eventFilter(watched, event)

    def _on_noted(self) -> None:
        # In the next turn: what was pressed may be one of the buttons that go.
        QTimer.singleShot(0, self, self._follow)

    def _follow(self) -> None:
        if not self.isVisible():
            return
        self._draw()
        reveal(self)
        for child in self.findChildren(QWidget, "finds"):
            child.show()
        wish = self._session.take_wish()
        target = next((w for w in self.findChildren(QWidget, wish) if not w.isHidden()), None) if wish else None
        if target is not None:
            target.setFocus(Qt.FocusReason.OtherFocusReason)
