"""One figure on its own plate of paper."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE

__all__ = ["FigureView"]


class FigureView(QWidget):
    """Shows a figure as a square, `side` wide."""

    def __init__(self, kit: Kit, figure_id: str, side: int, says: str) -> None:
        super().__init__()
        self._kit = kit
        self._figure = figure_id
        self._side = side
        self.setAccessibleName(says)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setFixedSize(side, side)

    def set_side(self, side: int) -> None:
        """Show it larger or smaller."""
        if side != self._side:
            self._side = side
            self.setFixedSize(side, side)
            self.updateGeometry()

    def sizeHint(self) -> QSize:
        return QSize(self._side, self._side)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        path = QPainterPath()
        path.addRoundedRect(QRectF(self.rect()), SPACE.tiny, SPACE.tiny)
        painter.fillPath(path, self._kit.look.colour("plate"))
        painter.save()
        painter.setClipPath(path)
        painter.drawPixmap(0, 0, self._kit.figures.pixmap(self._figure, self._side, self.devicePixelRatioF()))
        painter.restore()
        painter.end()
