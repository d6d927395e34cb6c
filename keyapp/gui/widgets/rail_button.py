"""A button of the rail: a symbol above its name."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QSizePolicy, QToolButton

from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE

__all__ = ["RailButton"]


class RailButton(QToolButton):
    """Drawn in ink, or in the signal colour where `role` says so."""

    def __init__(
        self, kit: Kit, icon: str, text: str, name: str, on_click: Callable[[], None], role: str = "ink"
    ) -> None:
        super().__init__()
        self._kit = kit
        self._icon = icon
        self._role = role
        self.setObjectName(name)
        self.setProperty("role", f"rail-{role}")
        self.setText(text)
        self.setAccessibleName(text.replace("\n", " "))
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        self.setIconSize(QSize(SPACE.icon_large, SPACE.icon_large))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.clicked.connect(lambda: on_click())
        self.redraw()

    def redraw(self) -> None:
        """Follow the theme."""
        self.setIconSize(QSize(SPACE.icon_large, SPACE.icon_large))
        self.setIcon(self._kit.look.icon(self._icon, self._role, SPACE.icon_large))
