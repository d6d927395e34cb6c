"""Parts in as many columns as there is room for."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from keyapp.gui.theme import SPACE

__all__ = ["Tiles"]


class Tiles(QWidget):
    """Puts its parts side by side, each at least `least` wide, and beneath each other where that does not fit.

    Those in a row are as high as the highest where they are `level`.
    """

    def __init__(self, parts: Sequence[QWidget], least: int, gap: int = SPACE.medium, *, level: bool = False) -> None:
        super().__init__()
        self._parts = list(parts)
        self._side = Qt.AlignmentFlag(0) if level else Qt.AlignmentFlag.AlignTop
        self._least = least
        self._across = 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(gap)
        self._arrange(1)

    @property
    def across(self) -> int:
        """How many stand side by side now."""
        return self._across

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        gap = self._grid.horizontalSpacing()
        # A long word in large type may need more than was asked for.
        least = max([self._least, *(part.minimumSizeHint().width() for part in self._parts)])
        most = max(1, min(len(self._parts), (self.width() + gap) // (least + gap)))
        # No row holds much less than another: four are two and two, not three and one.
        rows = -(-len(self._parts) // most)
        self._arrange(-(-len(self._parts) // max(1, rows)) or 1)

    def minimumSizeHint(self) -> QSize:
        least = max((part.minimumSizeHint().width() for part in self._parts), default=0)
        return QSize(least, super().minimumSizeHint().height())

    def _arrange(self, across: int) -> None:
        if across == self._across:
            return
        for index, part in enumerate(self._parts):
            self._grid.addWidget(part, index // across, index % across, self._side)
        for column in range(max(across, self._across)):
            self._grid.setColumnStretch(column, 1 if column < across else 0)
        self._across = across
