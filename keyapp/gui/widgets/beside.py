"""Controls beside a text where there is room, beneath it where there is not."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QLayout, QWidget

from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import row

__all__ = ["Beside"]


class Beside(QWidget):
    """A text, or a column of texts, and its controls; it follows the width it is given."""

    def __init__(self, texts: QWidget | QLayout, controls: Sequence[QWidget], least: int = 0) -> None:
        """`least`: the width that the text needs beside its controls; a little more than a label by default."""
        super().__init__()
        self._controls = list(controls)
        self._least = least or SPACE.list_width
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(SPACE.small)
        if isinstance(texts, QWidget):
            self._box.addWidget(texts, 1)
        else:
            self._box.addLayout(texts, 1)
        held = row(gap=SPACE.small)
        for one in controls:
            held.addWidget(one, 0, Qt.AlignmentFlag.AlignTop)
        held.addStretch(0)
        self._box.addLayout(held)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        taken = sum(one.sizeHint().width() + SPACE.small for one in self._controls)
        is_narrow = self.width() < taken + self._least
        way = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        if self._box.direction() is not way:
            self._box.setDirection(way)
