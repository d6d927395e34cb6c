"""The rail on the left: the pages there are, the emergency card, the theme."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout

from keyapp.gui.kit import Kit
from keyapp.gui.look import Mode, app_icon
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.rail_button import RailButton

__all__ = ["Rail"]

_NEXT = {Mode.SYSTEM: Mode.LIGHT, Mode.LIGHT: Mode.DARK, Mode.DARK: Mode.SYSTEM}


class Rail(QFrame):
    """Shows only pages that exist."""

    def __init__(self, kit: Kit, on_work: Callable[[], None], on_emergency: Callable[[], None]) -> None:
        super().__init__()
        self._kit = kit
        self.setProperty("role", "rail")
        self.setFixedWidth(SPACE.rail)
        mark = QLabel()
        mark.setPixmap(app_icon().pixmap(QSize(SPACE.huge, SPACE.huge)))
        mark.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self.work = RailButton(kit, "fork", self.tr("Work it out"), "rail-work", on_work)
        self.work.setCheckable(True)
        self.work.setChecked(True)
        self.help = RailButton(kit, "aid", self.tr("Someone\nis hurt"), "rail-emergency", on_emergency, role="signal")
        self.help.setAccessibleName(self.tr("Someone is hurt: open the emergency card"))
        self.help.setToolTip(self.tr("Emergency card (F1)"))
        self.theme = RailButton(kit, "theme", "", "rail-theme", self._on_theme)
        inside = QVBoxLayout(self)
        inside.setContentsMargins(SPACE.small, SPACE.large, SPACE.small, SPACE.small)
        inside.setSpacing(SPACE.small)
        inside.addWidget(mark)
        inside.addSpacing(SPACE.small)
        inside.addWidget(self.work)
        inside.addStretch(1)
        inside.addWidget(self.help)
        inside.addWidget(self.theme)
        kit.look.changed.connect(self._draw)
        self._draw()

    def _on_theme(self) -> None:
        self._kit.look.set_mode(_NEXT[self._kit.look.mode])
        self._draw()

    def _draw(self) -> None:
        names = {
            Mode.SYSTEM: self.tr("Light or dark:\nas the system"),
            Mode.LIGHT: self.tr("Light"),
            Mode.DARK: self.tr("Dark"),
        }
        text = names[self._kit.look.mode]
        self.theme.setText(text)
        self.theme.setAccessibleName(
            self.tr("Theme: {name}. Press to change").replace("{name}", text.replace("\n", " "))
        )
        for one in (self.work, self.help, self.theme):
            one.redraw()
