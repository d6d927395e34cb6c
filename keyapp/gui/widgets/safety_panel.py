"""The safety line: what is not ruled out, and what would settle it."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.texts import label, panel, with_symbol

__all__ = ["safety_panel"]


_MOST = 2
"""As many observations that would settle a danger are shown without unfolding."""


def safety_panel(kit: Kit, session: Session) -> QWidget:
    """The line in the signal style where a danger is not ruled out, else in ink."""
    reading, words = session.reading, session.words
    is_danger = bool(reading.not_ruled_out)
    frame, inside = panel("danger" if is_danger else "card", SPACE.tiny, SPACE.medium)
    frame.setObjectName("safety-line")
    tone = "signal" if is_danger else "ink"
    inside.addLayout(with_symbol(kit, "warning", words.safety_line(reading), "signal" if is_danger else "strong", tone))
    lines = words.settle_lines(reading)
    shown = lines if len(lines) <= _MOST else lines[:1]
    for line in shown:
        inside.addWidget(_indented(line))
    if len(lines) > len(shown):

        def more(body: QVBoxLayout) -> None:
            for line in lines[1:]:
                body.addWidget(label(line))

        title = QCoreApplication.translate("Safety", "What would settle the others ({count})")
        inside.addWidget(Fold(kit, session, "settle", title.replace("{count}", str(len(lines) - 1)), more))
    return frame


def _indented(text: str) -> QWidget:
    made = label(text)
    made.setIndent(SPACE.icon + SPACE.small)
    return made
