"""The rail on the left: the pages there are, the emergency card, the big picture, the theme."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout

from keyapp.gui.kit import Kit
from keyapp.gui.look import Mode, app_mark
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.rail_button import RailButton

__all__ = ["Rail"]

_NEXT = {Mode.SYSTEM: Mode.LIGHT, Mode.LIGHT: Mode.DARK, Mode.DARK: Mode.SYSTEM}


class Rail(QFrame):
    """Shows only pages that exist."""

    def __init__(
        self, kit: Kit, on_work: Callable[[], None], on_families: Callable[[], None], on_emergency: Callable[[], None]
    ) -> None:
        super().__init__()
        self._kit = kit
        self.setProperty("role", "rail")
        mark = QLabel()
        mark.setPixmap(app_mark(SPACE.huge))
        mark.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self.work = RailButton(kit, "fork", self.tr("Work it out"), "rail-work", on_work)
        self.work.setCheckable(True)
        self.work.setChecked(True)
        self.families = RailButton(kit, "families", self.tr("Families"), "rail-families", on_families)
        self.families.setCheckable(True)
        self.families.setToolTip(self.tr("Look up any family or sign (Ctrl+F)"))
        self.help = RailButton(kit, "aid", self.tr("Someone\nis hurt"), "rail-emergency", on_emergency, role="signal")
        self.help.setAccessibleName(self.tr("Someone is hurt: open the emergency card"))
        self.help.setToolTip(self.tr("Emergency card (F1)"))
        self.big = RailButton(kit, "big", "", "rail-big", self._on_big)
        self.theme = RailButton(kit, "theme", "", "rail-theme", self._on_theme)
        inside = QVBoxLayout(self)
        inside.setContentsMargins(SPACE.small, SPACE.large, SPACE.small, SPACE.small)
        inside.setSpacing(SPACE.small)
        inside.addWidget(mark)
        inside.addSpacing(SPACE.small)
        inside.addWidget(self.work)
        inside.addWidget(self.families)
        inside.addStretch(1)
        inside.addWidget(self.help)
        inside.addWidget(self.big)
        inside.addWidget(self.theme)
        kit.look.changed.connect(self._draw)
        self._draw()

    def show_families(self, is_families: bool) -> None:
        """Mark the page of all families as the one in front, or *Work it out*."""
        self.families.setChecked(is_families)
        self.work.setChecked(not is_families)

    def _on_big(self) -> None:
        self._kit.look.set_big(not self._kit.look.is_big)

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
        is_big = self._kit.look.is_big
        self.big.setText(self.tr("Leave big\npicture (Esc)") if is_big else self.tr("Big picture\n(F11)"))
        self.big.setAccessibleName(
            self.tr("Leave the big picture")
            if is_big
            else self.tr("Big picture for a projector: larger, with more contrast and fewer words")
        )
        self.theme.setVisible(not is_big)
        self.setFixedWidth(SPACE.rail)
        for one in (self.work, self.families, self.help, self.big, self.theme):
            one.redraw()
