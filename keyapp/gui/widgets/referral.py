"""Who to turn to: a person first, then about the animal."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.texts import label, panel, with_symbol

__all__ = ["referral_panel"]


def referral_panel(kit: Kit, session: Session) -> QWidget:
    """The referral lines, and every contact of the place on request."""
    words, language = session.words, session.language
    frame, inside = panel("card", SPACE.small, SPACE.large)
    inside.addWidget(label(_tr("Who to turn to"), "head"))
    for line in words.referral(session.case.settings):
        inside.addLayout(with_symbol(kit, "phone", line, "", "soft"))

    def body(held: QVBoxLayout) -> None:
        for contact in words.contacts(session.case.settings):
            held.addWidget(label(contact.name.say(language), "strong"))
            reach = [contact.telephone, contact.web, contact.hours.say(language)]
            held.addWidget(label(" · ".join(part for part in reach if part)))
            if contact.when:
                held.addWidget(label(contact.when.say(language), "soft"))
            held.addSpacing(SPACE.tiny)

    inside.addWidget(Fold(kit, session, "contacts", _tr("All contacts for this place"), body))
    return frame


def _tr(text: str) -> str:
    return QCoreApplication.translate("Referral", text)
