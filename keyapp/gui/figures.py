"""The figures, drawn sharp at the size and resolution they are shown at."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap
from PySide6.QtSvg import QSvgRenderer

from keyapp.gui.theme import LIGHT
from keyapp.model import Figure

__all__ = ["Figures"]

_KEEP = 160
"""Pixmaps kept; at the largest size about 2 MB each at twice the resolution."""


class Figures:
    """Finds a figure by id in a folder of SVG files; draws a plain mark where there is none."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._known: Mapping[str, Figure] = {}
        self._drawn: OrderedDict[tuple[str, int, float], QPixmap] = OrderedDict()

    def describe(self, figures: Mapping[str, Figure]) -> None:
        """Take the figures' own words (alt text) from the key."""
        self._known = figures

    def alt(self, figure_id: str, language: str) -> str:
        """What the figure shows, in words; empty where the key says nothing of it."""
        figure = self._known.get(figure_id)
        return figure.alt.say(language) if figure else ""

    def has(self, figure_id: str) -> bool:
        """Whether there is a picture of this id."""
        return bool(figure_id) and self._path(figure_id).is_file()

    def pixmap(self, figure_id: str, side: int, ratio: float) -> QPixmap:
        """The figure as a square of `side` device-independent pixels at the screen's `ratio`."""
        key = (figure_id, side, ratio)
        if key in self._drawn:
            self._drawn.move_to_end(key)
            return self._drawn[key]
        pixels = max(1, round(side * ratio))
        pixmap = QPixmap(QSize(pixels, pixels))
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        renderer = QSvgRenderer(str(self._path(figure_id))) if self.has(figure_id) else None
        if renderer is not None and renderer.isValid():
            renderer.setAspectRatioMode(Qt.AspectRatioMode.KeepAspectRatio)
            renderer.render(painter, QRectF(0, 0, pixels, pixels))
        else:
            _draw_missing(painter, pixels)
        painter.end()
        pixmap.setDevicePixelRatio(ratio)
        self._drawn[key] = pixmap
        if len(self._drawn) > _KEEP:
            self._drawn.popitem(last=False)
        return pixmap

    def _path(self, figure_id: str) -> Path:
        return self._folder / f"{figure_id}.svg"


def _draw_missing(painter: QPainter, side: int) -> None:
    """A quiet mark that stands for a picture not drawn yet: a fork of two ways on plain paper."""
    painter.fillRect(QRectF(0, 0, side, side), QColor(LIGHT.plate))
    pen = QPen(QColor(LIGHT.rule), max(1.0, side / 60))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    at = side / 100
    painter.drawLine(round(50 * at), round(72 * at), round(50 * at), round(55 * at))
    for x in (36, 64):
        painter.drawLine(round(50 * at), round(55 * at), round(x * at), round(38 * at))
        painter.drawEllipse(QRectF((x - 4) * at, 27 * at, 8 * at, 8 * at))
