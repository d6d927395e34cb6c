"""The bar above the page that says what happened, where, and what to do next."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from keyapp.gui.kit import Kit
from keyapp.gui.reporter import Message, Reporter, Tone
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import button, clear, label, symbol

__all__ = ["MessageBar"]


class MessageBar(QFrame):
    """Shows the newest message until it is closed."""

    def __init__(self, reporter: Reporter, kit: Kit) -> None:
        super().__init__()
        self._kit = kit
        self._message: Message | None = None
        self.setProperty("role", "message")
        self._inside = QHBoxLayout(self)
        self._inside.setContentsMargins(SPACE.wide, SPACE.small, SPACE.wide, SPACE.small)
        self._inside.setSpacing(SPACE.medium)
        self.hide()
        reporter.said.connect(self.show_message)
        kit.look.changed.connect(self._on_look)

    @property
    def message(self) -> Message | None:
        """The message that is shown."""
        return self._message

    def show_message(self, message: Message) -> None:
        """Show a message."""
        self._message = message
        self._draw(message)
        self.show()

    def close_message(self) -> None:
        """Take the message away."""
        self._message = None
        self.hide()

    def _draw(self, message: Message) -> None:
        clear(self._inside)
        icon, word = {
            Tone.NOTE: ("info", self.tr("Note")),
            Tone.PROBLEM: ("info", self.tr("This did not work")),
            Tone.FAULT: ("close", self.tr("A fault of ours")),
        }[message.tone]
        texts = QVBoxLayout()
        texts.setSpacing(SPACE.line)
        texts.addWidget(label(f"{word}: {message.what}", "strong"))
        after = " ".join(part for part in (message.where and f"({message.where})", message.fix) if part)
        if after:
            texts.addWidget(label(after, "soft"))
        self.setAccessibleName(f"{word}: {message.what} {after}".strip())
        shut = button(self.tr("Close"), "close-message", "plain", says=self.tr("Close the message"))
        shut.clicked.connect(self.close_message)
        self._inside.addWidget(symbol(self._kit, icon), 0, Qt.AlignmentFlag.AlignTop)
        self._inside.addLayout(texts, 1)
        self._inside.addWidget(shut, 0, Qt.AlignmentFlag.AlignTop)

    def _on_look(self) -> None:
        if self._message is not None:
            self._draw(self._message)
