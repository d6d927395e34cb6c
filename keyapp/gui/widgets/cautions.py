"""Statements that carry a source and a date, both shown on request."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QCoreApplication, QDate, QLocale
from PySide6.QtWidgets import QVBoxLayout

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.texts import label, with_symbol
from keyapp.model import Caution

__all__ = ["add_cautions", "add_sources"]


def add_cautions(
    kit: Kit, session: Session, inside: QVBoxLayout, cautions: Sequence[Caution], symbol: str = "dot"
) -> None:
    """One line a statement."""
    for caution in cautions:
        inside.addLayout(with_symbol(kit, symbol, caution.says.say(session.language), "", "soft"))


def add_sources(
    kit: Kit, session: Session, inside: QVBoxLayout, cautions: Sequence[Caution], name: str, title: str = ""
) -> None:
    """A fold with where each statement comes from and when it was checked."""
    if not cautions:
        return

    def body(held: QVBoxLayout) -> None:
        for caution in dict.fromkeys(cautions):
            held.addWidget(label(caution.says.say(session.language), "small"))
            text = _tr("Source: {source}. Checked {checked}, to be looked at again by {review}.")
            text = text.replace("{source}", session.words.basis(caution.basis))
            text = text.replace("{checked}", _day(caution.checked.isoformat(), session.language))
            text = text.replace("{review}", _day(caution.review_by.isoformat(), session.language))
            held.addWidget(label(text, "small"))
            held.addSpacing(SPACE.tiny)

    inside.addWidget(Fold(kit, session, name, title or _tr("Sources and dates"), body))


def _day(iso: str, language: str) -> str:
    return QLocale(language).toString(QDate.fromString(iso, "yyyy-MM-dd"), QLocale.FormatType.ShortFormat)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Cautions", text)
