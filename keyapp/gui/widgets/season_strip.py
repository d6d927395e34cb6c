"""The months of a year, those of the season marked."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.look import font
from keyapp.gui.theme import SPACE

__all__ = ["SeasonStrip"]

_LETTERS = 3


class SeasonStrip(QWidget):
    """Twelve boxes: filled and ticked in season, empty and dashed else. `says` is the same in words."""

    def __init__(self, kit: Kit, names: Sequence[str], months: Collection[int], says: str) -> None:
        super().__init__()
        self._kit = kit
        self._names = [name[:_LETTERS] for name in names]
        self._months = frozenset(months)
        self.setAccessibleName(says)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMaximumWidth(SPACE.measure)
        self.setFont(font("small"))

    def sizeHint(self) -> QSize:
        return QSize(SPACE.measure, SPACE.target + SPACE.wide)

    def minimumSizeHint(self) -> QSize:
        return QSize(SPACE.list_width, SPACE.target + SPACE.wide)

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._kit.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide = self.width() / len(self._names)
        high = self.height() - SPACE.wide
        for index, name in enumerate(self._names):
            is_in = index + 1 in self._months
            box = QRectF(index * wide, 0, wide, high).adjusted(SPACE.line, SPACE.hair, -SPACE.line, -SPACE.hair)
            pen = QPen(look.colour("accent" if is_in else "edge"), SPACE.hair)
            if not is_in:
                pen.setStyle(Qt.PenStyle.DashLine)
            painter.setPen(pen)
            painter.setBrush(look.colour("accent" if is_in else "sheet"))
            painter.drawRoundedRect(box, SPACE.tiny, SPACE.tiny)
            if is_in:
                at = box.center()
                half = SPACE.icon // 2
                look.icon("check", "on_accent").paint(
                    painter, round(at.x()) - half, round(at.y()) - half, SPACE.icon, SPACE.icon
                )
            painter.setFont(font("small"))
            painter.setPen(look.colour("ink" if is_in else "soft"))
            below = QRectF(index * wide, high, wide, SPACE.wide)
            painter.drawText(below, Qt.AlignmentFlag.AlignCenter, name)
        painter.end()
