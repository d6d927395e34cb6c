"""The offer to carry on an enquiry that was left open."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol

__all__ = ["offer_panel"]


def offer_panel(kit: Kit, session: Session) -> QWidget | None:
    """A panel with the offer, or None where nothing was left open."""
    offer = session.offer
    if offer is None:
        return None

    def tr(text: str) -> str:
        return QCoreApplication.translate("Offer", text)

    frame, inside = panel("card")
    inside.addLayout(with_symbol(kit, "again", tr("An enquiry was left open"), "strong"))
    count = len(offer.answers)
    text = tr("It holds {count} answers.") if count != 1 else tr("It holds one answer.")
    inside.addWidget(label(text.replace("{count}", str(count)), "soft"))
    carry = button(tr("Carry on where it was"), "carry-on", icon=kit.look.icon("right"))
    carry.clicked.connect(session.carry_on)
    leave = button(tr("Let it go"), "leave-kept", "plain", says=tr("Let the enquiry that was left open go"))
    leave.clicked.connect(session.leave_kept)
    inside.addLayout(row(carry, leave, None))
    return frame
