"""The question whether a side was in view, asked before "not there" may count."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QVBoxLayout

from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.choices import Option, Picks
from keyapp.gui.widgets.texts import label, row
from keyapp.model import View

__all__ = ["ViewQuestion"]


class ViewQuestion(QFrame):
    """Two options; hidden while nothing needs to have been seen."""

    def __init__(self, kit: Kit, name: str, on_answer: Callable[[bool], None]) -> None:
        super().__init__()
        self.setProperty("role", "card")
        self._kit = kit
        self._name = name
        self._on_answer = on_answer
        self._view: View | None = None
        self._inside = QVBoxLayout(self)
        self._inside.setContentsMargins(SPACE.medium, SPACE.medium, SPACE.medium, SPACE.medium)
        self._inside.setSpacing(SPACE.small)
        self._asks = label("", "strong")
        self._options = [
            Option(kit, self.tr("Yes, it was in view"), f"{name}-yes"),
            Option(kit, self.tr("No, or not sure"), f"{name}-no", note=self.tr("Then it counts as “can't tell”.")),
        ]
        self._inside.addWidget(self._asks)
        self._inside.addLayout(row(*self._options, gap=SPACE.medium))
        self._picks = Picks(self, self._options, lambda index: self._on_answer(index == 0))
        self.hide()

    def ask(self, view: View | None, seen: bool | None) -> None:
        """Ask about `view`, with the answer there is; None asks nothing."""
        self._view = view
        self.setVisible(view is not None)
        if view is None:
            return
        self._asks.setText(self.tr("This says something is not there. ") + self._question(view))
        if seen is None:
            self._picks.choose_none()
        else:
            self._picks.choose(0 if seen else 1)

    @property
    def is_asking(self) -> bool:
        """Whether there is a view to ask about."""
        return self._view is not None

    def take_focus(self) -> None:
        """Give the focus to the first option."""
        self._options[0].setFocus(Qt.FocusReason.TabFocusReason)

    def _question(self, view: View) -> str:
        return {
            View.TOP: self.tr("Was it seen well from above?"),
            View.SIDE: self.tr("Was it seen well from the side?"),
            View.UNDERSIDE: self.tr("Was its underside seen well?"),
            View.FACE: self.tr("Was its face seen well, close up?"),
            View.WEB: self.tr("Was the place where a web would be seen well?"),
            View.ANY: self.tr("Was it seen well?"),
        }[view]
