"""The keys 1 to 9 press one of several buttons, wherever around them the focus is, but not while something is typed."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QWidget

__all__ = ["NumberKeys"]


class NumberKeys(QObject):
    """Presses the button of a number. A key that the widget with the focus does not take comes up to `around`."""

    def __init__(self, around: QWidget, buttons: Sequence[QAbstractButton]) -> None:
        super().__init__(buttons[0])
        self._buttons = list(buttons)
        around.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is not QEvent.Type.KeyPress or not isinstance(event, QKeyEvent):
            return False
        at = int(event.key()) - int(Qt.Key.Key_1)
        plain = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier == Qt.KeyboardModifier.NoModifier
        if not plain or not 0 <= at < min(9, len(self._buttons)) or not self._buttons[at].isVisible():
            return False
        self._buttons[at].setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._buttons[at].click()
        return True
