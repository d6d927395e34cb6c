"""What is shown where the key cannot be used: every problem, and the way to help all the same."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPlainTextEdit, QVBoxLayout, QWidget

from keyapp.errors import UserError
from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import button, label, row

__all__ = ["NoKeyPage"]


class NoKeyPage(QWidget):
    """The key failed to load; the emergency card still works."""

    def __init__(self, session: Session, kit: Kit, error: UserError, problems: Sequence[str]) -> None:
        super().__init__()
        self.setProperty("role", "desk")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        column = QVBoxLayout()
        column.setContentsMargins(SPACE.wide, SPACE.huge, SPACE.wide, SPACE.wide)
        column.setSpacing(SPACE.medium)
        column.addWidget(label(self.tr("The key cannot be used"), "title"))
        column.addWidget(
            label(self.tr("Without it nothing can be named. Treat every animal as unknown: do not handle."))
        )
        column.addWidget(label(error.what, "strong"))
        if error.where:
            column.addWidget(label(error.where, "small"))
        column.addWidget(label(error.fix, "soft"))
        card = button(self.tr("Someone is hurt (F1)"), "open-emergency", "danger", icon=kit.look.icon("aid", "signal"))
        card.clicked.connect(session.ask_for_help)
        column.addLayout(row(card, None))
        if problems:
            listed = QPlainTextEdit("\n".join(problems))
            listed.setObjectName("problems")
            listed.setAccessibleName(self.tr("Problems in the key"))
            listed.setReadOnly(True)
            listed.setTabChangesFocus(True)
            column.addWidget(listed, 1)
        else:
            column.addStretch(1)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        held = QWidget()
        held.setLayout(column)
        held.setMaximumWidth(SPACE.column)
        across.addStretch(1)
        across.addWidget(held, SPACE.column)
        across.addStretch(1)

    def take_focus(self) -> None:
        """Give the focus to the emergency card."""
        for widget in self.findChildren(QWidget, "open-emergency"):
            widget.setFocus(Qt.FocusReason.OtherFocusReason)
