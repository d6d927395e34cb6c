"""How the window looks at this moment: the theme in force, tinted symbols, bundled fonts."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path

from PySide6.QtCore import QByteArray, QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QIcon, QPainter, QPalette, QPixmap
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QApplication

from keyapp.gui.style import style_sheet
from keyapp.gui.theme import DARK, LIGHT, SPACE, TYPE, Colours

__all__ = ["Look", "Mode", "app_icon", "font", "load_fonts"]

_PLAIN, _HEAVY = QFont.Weight.Normal, QFont.Weight.DemiBold
_STYLES = {
    "": (TYPE.text, TYPE.body, _PLAIN, False),
    "title": (TYPE.heading, TYPE.title, _HEAVY, False),
    "signal-title": (TYPE.heading, TYPE.title, _HEAVY, False),
    "head": (TYPE.heading, TYPE.head, _HEAVY, False),
    "lead": (TYPE.text, TYPE.lead, _PLAIN, False),
    "strong": (TYPE.text, TYPE.body, _HEAVY, False),
    "small": (TYPE.text, TYPE.small, _PLAIN, False),
    "science": (TYPE.text, TYPE.body, _PLAIN, True),
    "signal": (TYPE.text, TYPE.lead, _HEAVY, False),
    "signal-small": (TYPE.text, TYPE.small, _HEAVY, False),
    "call": (TYPE.text, TYPE.call, _HEAVY, False),
}
"""Family, size, weight and slant by role of text."""

_FONTS: dict[str, QFont] = {}

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
        return self._colours is DARK

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

    def icon(self, name: str, role: str = "ink", size: int = SPACE.icon) -> QIcon:
        """A symbol in the colour of `role`."""
        key = (name, str(getattr(self._colours, role)), size)
        if key not in self._icons:
            icon = QIcon()
            for ratio in (1, 2, 3):
                icon.addPixmap(_drawn(_symbol(name, key[1]), size, ratio))
            self._icons[key] = icon
        return self._icons[key]

    def _wanted(self) -> Colours:
        if self._mode is Mode.SYSTEM:
            scheme = QGuiApplication.styleHints().colorScheme()
            return DARK if scheme is Qt.ColorScheme.Dark else LIGHT
        return DARK if self._mode is Mode.DARK else LIGHT

    def _on_system_changed(self) -> None:
        if self._mode is Mode.SYSTEM:
            self._follow()

    def _follow(self) -> None:
        wanted = self._wanted()
        if wanted is not self._colours:
            self.changing.emit()
            self._colours = wanted
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
        made.setPixelSize(size)
        made.setWeight(weight)
        made.setItalic(is_italic)
        _FONTS[role] = made
    return _FONTS[role]


def load_fonts() -> None:
    """Make the bundled fonts known to Qt."""
    for path in sorted((_HERE / "fonts").iterdir()):
        if path.suffix in (".ttf", ".otf"):
            QFontDatabase.addApplicationFont(str(path))


def app_icon() -> QIcon:
    """The program's own icon."""
    icon = QIcon()
    data = (_HERE / "icons" / "keyapp.svg").read_bytes()
    for size in (16, 24, 32, 48, 64, 128, 256):
        icon.addPixmap(_drawn(data, size, 1))
    return icon


def _symbol(name: str, colour: str) -> bytes:
    text = (_HERE / "icons" / f"{name}.svg").read_text(encoding="utf-8")
    return text.replace("currentColor", colour).encode()


def _drawn(data: bytes, size: int, ratio: int) -> QPixmap:
    pixmap = QPixmap(QSize(size, size) * ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    QSvgRenderer(QByteArray(data)).render(painter, QRectF(0, 0, size * ratio, size * ratio))
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap
