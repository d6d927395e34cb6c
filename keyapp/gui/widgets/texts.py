"""Labels, panels and other plain parts, styled by role."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QIcon, QPalette
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLayout,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from keyapp.gui.kit import Kit
from keyapp.gui.look import font
from keyapp.gui.theme import SPACE

__all__ = ["button", "clear", "column", "label", "panel", "reveal", "row", "rule", "symbol", "with_symbol"]


_TONES = {
    "soft": QPalette.ColorRole.PlaceholderText,
    "small": QPalette.ColorRole.PlaceholderText,
    "science": QPalette.ColorRole.PlaceholderText,
    "signal": QPalette.ColorRole.BrightText,
    "signal-small": QPalette.ColorRole.BrightText,
    "signal-title": QPalette.ColorRole.BrightText,
}
"""Roles of text that are not in plain ink, by the palette role that holds their colour."""


def label(text: str, role: str = "", *, wrap: bool = True) -> QLabel:
    """A text that wraps and can be marked with the mouse; never read as markup."""
    made = QLabel(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setFont(font(role))
    made.setForegroundRole(_TONES.get(role, QPalette.ColorRole.WindowText))
    made.setWordWrap(wrap)
    made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    made.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    if wrap:
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        made.setSizePolicy(policy)
    return made


def button(text: str, name: str, role: str = "", *, icon: QIcon | None = None, says: str = "") -> QPushButton:
    """A button. `name` finds it again after a redraw; `says` is its accessible name where `text` is not enough."""
    made = QPushButton(text)
    made.setObjectName(name)
    made.setProperty("role", role)
    made.setAccessibleName(says or text)
    made.setCursor(Qt.CursorShape.PointingHandCursor)
    made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    made.setAutoDefault(False)
    if icon is not None:
        made.setIcon(icon)
    return made


def panel(role: str = "card", gap: int = SPACE.small, pad: int = SPACE.large) -> tuple[QFrame, QVBoxLayout]:
    """A framed panel with a column inside."""
    frame = QFrame()
    frame.setProperty("role", role)
    inside = QVBoxLayout(frame)
    inside.setContentsMargins(pad, pad, pad, pad)
    inside.setSpacing(gap)
    return frame, inside


def rule() -> QFrame:
    """A hairline."""
    made = QFrame()
    made.setProperty("role", "rule")
    return made


def column(gap: int = SPACE.small) -> QVBoxLayout:
    """A column without margins."""
    made = QVBoxLayout()
    made.setContentsMargins(0, 0, 0, 0)
    made.setSpacing(gap)
    return made


def row(*parts: QWidget | None, gap: int = SPACE.small) -> QHBoxLayout:
    """Widgets in a row; None puts a stretch in its place."""
    made = QHBoxLayout()
    made.setContentsMargins(0, 0, 0, 0)
    made.setSpacing(gap)
    for part in parts:
        if part is None:
            made.addStretch(1)
        else:
            made.addWidget(part)
    return made


def symbol(kit: Kit, name: str, role: str = "ink", size: int = 0) -> QLabel:
    """A symbol as a picture beside a text that says the same; of the usual size where `size` is 0."""
    size = size or SPACE.icon
    made = QLabel()
    made.setPixmap(kit.look.icon(name, role, size).pixmap(size, size))
    made.setFixedWidth(size)
    made.setAlignment(Qt.AlignmentFlag.AlignTop)
    return made


def with_symbol(
    kit: Kit, name: str, text: str, role: str = "", tone: str = "ink", size: int = 0
) -> QBoxLayout:
    """A text with a symbol before it."""
    made = QHBoxLayout()
    made.setContentsMargins(0, 0, 0, 0)
    made.setSpacing(SPACE.small)
    made.addWidget(symbol(kit, name, tone, size), 0, Qt.AlignmentFlag.AlignTop)
    made.addWidget(label(text, role), 1)
    return made


def reveal(parent: QWidget) -> None:
    """Show at once what was added to a visible parent; Qt alone would wait for the next turn of its loop."""
    for child in parent.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly):
        is_meant = child.testAttribute(Qt.WidgetAttribute.WA_WState_ExplicitShowHide)
        if child.isHidden() and not is_meant:
            child.show()


def clear(layout: QLayout) -> None:
    """Take everything out of a layout and let it go."""
    while layout.count():
        item = layout.takeAt(0)
        if item is None:
            return
        widget, inner = item.widget(), item.layout()
        if widget is not None:
            widget.hide()
            widget.setParent(None)
            widget.deleteLater()
        elif inner is not None:
            clear(inner)
