"""A heading that opens what lies beneath it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.reading_column import ReadingColumn
from keyapp.gui.widgets.texts import button, clear

__all__ = ["Fold"]


class Fold(QWidget):
    """A button and a body; whether it is open is kept in the session. The body is made whenever it opens."""

    def __init__(self, kit: Kit, session: Session, name: str, title: str, body: Callable[[QVBoxLayout], None]) -> None:
        super().__init__()
        self._kit = kit
        self._session = session
        self._name = name
        self._title = title
        self._fill = body
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        self._head = button(title, f"fold-{name}", "fold")
        self._head.clicked.connect(self._on_clicked)
        self._area = QWidget()
        self._held = QVBoxLayout(self._area)
        self._held.setContentsMargins(SPACE.wide, 0, 0, SPACE.small)
        self._held.setSpacing(SPACE.small)
        inside.addWidget(self._head)
        inside.addWidget(self._area)
        session.folded.connect(self._on_folded)
        self._draw()

    def _draw(self) -> None:
        is_open = self._session.is_unfolded(self._name)
        state = self.tr("open") if is_open else self.tr("closed")
        self._head.setAccessibleName(f"{self._title} ({state})")
        self._head.setIcon(self._kit.look.icon("down" if is_open else "right", "soft"))
        clear(self._held)
        if is_open:
            self._fill(self._held)
        self._area.setVisible(is_open)

    def _on_clicked(self) -> None:
        self._session.unfold(self._name, not self._session.is_unfolded(self._name))
        above = self.parentWidget()
        while above is not None and not isinstance(above, ReadingColumn):
            above = above.parentWidget()
        if above is not None and self._session.is_unfolded(self._name):
            above.show_widget(self._area)

    def _on_folded(self, name: str) -> None:
        if name == self._name:
            self._draw()
