"""The figures, drawn sharp at the size and resolution they are shown at.

Drawing an SVG takes far longer than reading a picture, so pictures that were drawn are kept in a folder
beside the compiled key. Each is named by a digest of the SVG it came from, so that a changed figure is
drawn anew, and holds the same pixels as a fresh drawing. The folder is always safe to delete.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections import OrderedDict
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, QThreadPool
from PySide6.QtGui import QColor, QImage, QPainter, QPen, QPixmap

from keyapp.gui.theme import LIGHT, SPACE

if TYPE_CHECKING:
    from keyapp.model import Figure

__all__ = ["Figures"]

_KEEP = 160
"""Pixmaps kept; at the largest size about 2 MB each at twice the resolution."""

_KEEP_FILES = 1500
"""Pictures kept on disk; a few kilobytes each."""


class Figures:
    """Finds a figure by id in a folder of SVG files; draws a plain mark where there is none.

    `cache` is the folder of drawn pictures, made when it is needed; without one nothing is kept on disk.
    """

    def __init__(self, folder: Path, cache: Path | None = None) -> None:
        self._folder = folder
        self._cache = cache
        self._known: Mapping[str, Figure] = {}
        self._drawn: OrderedDict[tuple[str, int, float], QPixmap] = OrderedDict()
        self._is_swept = False
        self._usual = (0, 1.0)

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
        if side >= SPACE.portrait:
            self._usual = (side, ratio)
        if key in self._drawn:
            self._drawn.move_to_end(key)
            return self._drawn[key]
        pixmap = self._found(figure_id, max(1, round(side * ratio)))
        pixmap.setDevicePixelRatio(ratio)
        self._drawn[key] = pixmap
        if len(self._drawn) > _KEEP:
            self._drawn.popitem(last=False)
        return pixmap

    def prepare(self, figure_id: str) -> None:
        """Get a figure ready at the size at which large ones are shown, so that it need not be drawn then."""
        if self._usual[0] and self.has(figure_id):
            self.pixmap(figure_id, *self._usual)

    # Inside ----------------------------------------------------------------------------------

    def _found(self, figure_id: str, pixels: int) -> QPixmap:
        """The kept picture, where it is sound, else a fresh drawing, which is then kept."""
        try:
            content = self._path(figure_id).read_bytes() if figure_id else b""
        except OSError:
            content = b""
        kept = None
        if self._cache is not None and content:
            kept = self._cache / f"{hashlib.sha256(content).hexdigest()[:32]}-{pixels}.png"
            image = QImage()
            with contextlib.suppress(OSError):
                if image.loadFromData(kept.read_bytes()) and image.size() == QSize(pixels, pixels):
                    return QPixmap.fromImage(image)
        drawn, is_figure = _drawn(self._path(figure_id), pixels, bool(content))
        if kept is not None and is_figure:
            self._keep(kept, drawn.toImage())
        return drawn

    def _keep(self, path: Path, image: QImage) -> None:
        sweep, self._is_swept = not self._is_swept, True
        QThreadPool.globalInstance().start(lambda: _write(path, image, sweep))

    def _path(self, figure_id: str) -> Path:
        return self._folder / f"{figure_id}.svg"


def _write(path: Path, image: QImage, sweep: bool) -> None:
    """Write a picture, whole or not at all; trouble with the disk is no error."""
    part = path.with_suffix(f".{os.getpid()}.part.png")
    with contextlib.suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        if image.save(str(part)):
            part.replace(path)
        else:
            part.unlink(missing_ok=True)
        if sweep:
            kept = sorted(path.parent.glob("*.png"), key=lambda one: one.stat().st_mtime, reverse=True)
            for old in kept[_KEEP_FILES:]:
                old.unlink(missing_ok=True)


def _drawn(path: Path, pixels: int, is_there: bool) -> tuple[QPixmap, bool]:
    """The figure drawn anew, or the plain mark; and whether it is the figure."""
    from PySide6.QtSvg import QSvgRenderer  # late: a kept picture does without it

    pixmap = QPixmap(QSize(pixels, pixels))
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    renderer = QSvgRenderer(str(path)) if is_there or path.is_file() else None
    is_figure = renderer is not None and renderer.isValid()
    if renderer is not None and is_figure:
        renderer.setAspectRatioMode(Qt.AspectRatioMode.KeepAspectRatio)
        renderer.render(painter, QRectF(0, 0, pixels, pixels))
    else:
        _draw_missing(painter, pixels)
    painter.end()
    return pixmap, is_figure


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
