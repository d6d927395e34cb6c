"""A heading that opens what lies beneath it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import button

__all__ = ["Fold"]


class Fold(QWidget):
    """A button and a body; whether it is open is kept in the session. The body is made when first opened."""

    def __init__(self, kit: Kit, session: Session, name: str, title: str, body: Callable[[QVBoxLayout], None]) -> None:
        super().__init__()
        is_open = session.is_unfolded(name)
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        state = self.tr("open") if is_open else self.tr("closed")
        icon = kit.look.icon("down" if is_open else "right", "soft")
        head = button(title, f"fold-{name}", "fold", icon=icon, says=f"{title} ({state})")
        head.setCheckable(False)
        head.clicked.connect(lambda: session.unfold(name, not session.is_unfolded(name)))
        inside.addWidget(head)
        if is_open:
            area = QWidget()
            held = QVBoxLayout(area)
            held.setContentsMargins(SPACE.wide, 0, 0, SPACE.small)
            held.setSpacing(SPACE.small)
            body(held)
            inside.addWidget(area)
