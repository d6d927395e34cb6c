"""How the window looks at this moment: the theme and the size in force, tinted symbols, bundled fonts."""

from __future__ import annotations

import math
from enum import StrEnum
from pathlib import Path

from PySide6.QtCore import QByteArray, QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QIcon, QPainter, QPalette, QPixmap
from PySide6.QtWidgets import QApplication

from keyapp.gui.style import style_sheet
from keyapp.gui.theme import BIG_DARK, BIG_LIGHT, DARK, LIGHT, SPACE, TYPE, Colours, enlarge

__all__ = ["BIG", "ZOOMS", "Look", "Mode", "app_icon", "app_mark", "font", "load_fonts", "load_more_fonts"]

_PLAIN, _HEAVY = QFont.Weight.Normal, QFont.Weight.DemiBold
_STYLES = {
    "": (TYPE.text, "body", _PLAIN, False),
    "title": (TYPE.heading, "title", _HEAVY, False),
    "signal-title": (TYPE.heading, "title", _HEAVY, False),
    "head": (TYPE.heading, "head", _HEAVY, False),
    "lead": (TYPE.text, "lead", _PLAIN, False),
    "strong": (TYPE.text, "body", _HEAVY, False),
    "small": (TYPE.text, "small", _PLAIN, False),
    "science": (TYPE.text, "body", _PLAIN, True),
    "signal": (TYPE.text, "lead", _HEAVY, False),
    "signal-small": (TYPE.text, "small", _HEAVY, False),
    "call": (TYPE.text, "call", _HEAVY, False),
}
"""Family, name of the size, weight and slant by role of text."""

BIG = 1.7
"""How much larger text is in the big picture."""

ZOOMS = (1.0, 1.25, 1.5, 1.75, 2.0)
"""Sizes of text to choose from; WCAG 2.2, success criterion 1.4.4, asks for up to 200 %."""

_FONTS: dict[str, QFont] = {}

_FONTS_AT_ONCE = ("Cabin-Regular.otf", "Cabin-SemiBold.otf", "Vollkorn-SemiBold.ttf")
_LOADED: set[str] = set()

_HERE = Path(__file__).resolve().parent


class Mode(StrEnum):
    """Which theme is wanted."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


class Look(QObject):
    """The theme in force.

    Signals:
        changing: colours are about to change; no arguments. What will be drawn anew can go now, which is
            far quicker than dressing it in the new style first.
        changed: colours have changed; no arguments.
    """

    changing = Signal()
    changed = Signal()

    def __init__(self, mode: Mode = Mode.SYSTEM) -> None:
        super().__init__()
        self._mode = mode
        self._zoom = 1.0
        self._is_big = False
        self._is_hurried = True
        enlarge(1.0)
        _FONTS.clear()
        self._icons: dict[tuple[str, str, int], QIcon] = {}
        self._colours = self._wanted()
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._on_system_changed)

    @property
    def mode(self) -> Mode:
        """Light, dark, or as the system has it."""
        return self._mode

    @property
    def is_dark(self) -> bool:
        """Whether the dark theme is in force."""
        return self._colours in (DARK, BIG_DARK)

    @property
    def zoom(self) -> float:
        """How much larger text is drawn than by itself, 1 to 2, outside the big picture."""
        return self._zoom

    @property
    def is_big(self) -> bool:
        """Whether the big picture, for a projector, is in force: larger, with more contrast and fewer words."""
        return self._is_big

    def set_zoom(self, zoom: float) -> None:
        """Draw text `zoom` times as large, 1 to 2; `changed` follows if that differs."""
        self._follow(max(ZOOMS[0], min(ZOOMS[-1], zoom)), self._is_big)

    def step_zoom(self, step: int) -> None:
        """Draw text a step larger (1) or smaller (-1)."""
        at = min(range(len(ZOOMS)), key=lambda i: abs(ZOOMS[i] - self._zoom)) + step
        self.set_zoom(ZOOMS[max(0, min(len(ZOOMS) - 1, at))])

    def set_big(self, is_big: bool) -> None:
        """Enter or leave the big picture; `changed` follows if that differs."""
        self._follow(self._zoom, is_big)

    @property
    def colours(self) -> Colours:
        """The colours in force."""
        return self._colours

    def colour(self, role: str) -> QColor:
        """A colour by its role name."""
        return QColor(str(getattr(self._colours, role)))

    def set_mode(self, mode: Mode) -> None:
        """Choose the theme; `changed` follows if the colours differ."""
        self._mode = mode
        self._follow()

    def apply(self) -> None:
        """Put the colours in force on the application."""
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.setFont(font())
        app.setPalette(self._palette())
        app.setStyleSheet(style_sheet(self._colours))

    def icon(self, name: str, role: str = "ink", size: int = 0) -> QIcon:
        """A symbol in the colour of `role`; of the usual size where `size` is 0."""
        size = size or SPACE.icon
        key = (name, str(getattr(self._colours, role)), size)
        if key not in self._icons:
            icon = QIcon()
            for ratio in self._ratios():
                icon.addPixmap(_drawn(_symbol(name, key[1]), size, ratio))
            self._icons[key] = icon
        return self._icons[key]

    def _ratios(self) -> tuple[int, ...]:
        """Resolutions to draw symbols at: the screens', and twice that for one plugged in later, once there is time."""
        most = max((math.ceil(screen.devicePixelRatio()) for screen in QGuiApplication.screens()), default=1)
        return (1, *range(2, most + 1)) if self._is_hurried else tuple(range(1, max(3, most) + 1))

    def take_time(self) -> None:
        """From now on draw symbols for every screen there may come to be; those of the first page are done anew."""
        self._is_hurried = False
        self._icons.clear()

    def _wanted(self) -> Colours:
        is_dark = self._mode is Mode.DARK
        if self._mode is Mode.SYSTEM:
            is_dark = QGuiApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
        if self._is_big:
            return BIG_DARK if is_dark else BIG_LIGHT
        return DARK if is_dark else LIGHT

    def _on_system_changed(self) -> None:
        if self._mode is Mode.SYSTEM:
            self._follow()

    def _follow(self, zoom: float | None = None, is_big: bool | None = None) -> None:
        before = self._colours, self._zoom, self._is_big
        self._zoom = self._zoom if zoom is None else zoom
        self._is_big = self._is_big if is_big is None else is_big
        wanted = self._wanted()
        if (wanted, self._zoom, self._is_big) != before:
            self.changing.emit()
            self._colours = wanted
            if before[1:] != (self._zoom, self._is_big):
                enlarge(max(self._zoom, BIG) if self._is_big else self._zoom)
                _FONTS.clear()
            self.apply()
            self.changed.emit()

    def _palette(self) -> QPalette:
        c = self._colours
        roles = {
            QPalette.ColorRole.Window: c.desk,
            QPalette.ColorRole.WindowText: c.ink,
            QPalette.ColorRole.Base: c.sheet,
            QPalette.ColorRole.AlternateBase: c.hover,
            QPalette.ColorRole.Text: c.ink,
            QPalette.ColorRole.Button: c.sheet,
            QPalette.ColorRole.ButtonText: c.ink,
            QPalette.ColorRole.Highlight: c.accent,
            QPalette.ColorRole.HighlightedText: c.on_accent,
            QPalette.ColorRole.ToolTipBase: c.sheet,
            QPalette.ColorRole.ToolTipText: c.ink,
            QPalette.ColorRole.PlaceholderText: c.soft,
            QPalette.ColorRole.Link: c.accent,
            QPalette.ColorRole.BrightText: c.signal,
        }
        palette = QPalette()
        for role, value in roles.items():
            palette.setColor(role, QColor(value))
        return palette


def font(role: str = "") -> QFont:
    """The font of a role of text; the plain one where the role has none of its own."""
    if role not in _FONTS:
        family, size, weight, is_italic = _STYLES.get(role, _STYLES[""])
        made = QFont(family)
        made.setPixelSize(getattr(TYPE, size))
        made.setWeight(weight)
        made.setItalic(is_italic)
        _FONTS[role] = made
    return _FONTS[role]


def load_fonts() -> None:
    """Make the bundled fonts known to Qt, but for those that no page needs at once."""
    for name in _FONTS_AT_ONCE:
        QFontDatabase.addApplicationFont(str(_HERE / "fonts" / name))


def load_more_fonts() -> None:
    """Make the rest of the bundled fonts known to Qt."""
    known = {*_FONTS_AT_ONCE, *_LOADED}
    for path in sorted((_HERE / "fonts").iterdir()):
        if path.suffix in (".ttf", ".otf") and path.name not in known:
            QFontDatabase.addApplicationFont(str(path))
            _LOADED.add(path.name)


def app_icon() -> QIcon:
    """The program's own icon."""
    icon = QIcon()
    for size in (16, 24, 32, 48, 64, 128, 256):
        icon.addPixmap(app_mark(size))
    return icon


def app_mark(size: int) -> QPixmap:
    """The program's own icon as a picture, `size` wide."""
    return _drawn((_HERE / "icons" / "keyapp.svg").read_bytes(), size, 1)


def _symbol(name: str, colour: str) -> bytes:
    text = (_HERE / "icons" / f"{name}.svg").read_text(encoding="utf-8")
    return text.replace("currentColor", colour).encode()


def _drawn(data: bytes, size: int, ratio: int) -> QPixmap:
    pixmap = QPixmap(QSize(size, size) * ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    from PySide6.QtSvg import QSvgRenderer

    QSvgRenderer(QByteArray(data)).render(painter, QRectF(0, 0, size * ratio, size * ratio))
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap
