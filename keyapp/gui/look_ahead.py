"""Gets the figures ready that the next answer may lead to, while a person reads."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer

from keyapp.gui.figures import Figures
from keyapp.gui.session import Session, Stage

__all__ = ["LookAhead"]


class LookAhead(QObject):
    """Draws one figure each turn of the loop, so that nothing is held up."""

    def __init__(self, session: Session, figures: Figures, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self._figures = figures
        self._wanted: list[str] = []
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._draw_one)
        session.changed.connect(self._begin)
        session.moved.connect(self._begin)

    def _begin(self) -> None:
        self._wanted = self._next_figures()
        if self._wanted:
            self._timer.start()

    def _draw_one(self) -> None:
        if self._wanted:
            self._figures.prepare(self._wanted.pop(0))
        if not self._wanted:
            self._timer.stop()

    def _next_figures(self) -> list[str]:
        """Figures of the couplets behind both leads of the one on the screen."""
        session = self._session
        if not session.is_open or session.stage is not Stage.KEY or session.couplet is None:
            return []
        keyset = session.keyset
        found = []
        for lead in keyset.couplets[session.couplet].leads:
            to = lead.to.id
            if to in keyset.keys:
                to = keyset.keys[to].start
            following = keyset.couplets.get(to)
            found += [one.figure for one in following.leads] if following is not None else []
        return found
