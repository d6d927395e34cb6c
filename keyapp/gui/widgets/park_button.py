"""The way to what is put aside."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QPushButton

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.widgets.texts import button

__all__ = ["park_button"]


def park_button(kit: Kit, session: Session, *, text: bool = True) -> QPushButton:
    """A button that opens the page of enquiries put aside; without its text it is a symbol alone."""

    def tr(says: str) -> str:
        return QCoreApplication.translate("ParkButton", says)

    says = tr("Put this enquiry aside, or take another up")
    made = button(
        tr("Put aside") if text else "",
        "open-parked",
        "" if text else "plain",
        icon=kit.look.icon("parked", "ink" if text else "accent"),
        says=says,
    )
    made.setToolTip(tr("{says} (F4)").replace("{says}", says))
    made.clicked.connect(session.open_parked)
    return made
