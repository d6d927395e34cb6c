"""What would help most, and whether to go on asking; with the way to a feared animal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol

if TYPE_CHECKING:
    from keyapp.engine import Stop

__all__ = ["asking_panel", "feared_button", "helps_fold"]


def feared_button(session: Session, role: str = "") -> QPushButton:
    """The way to the page of a feared animal."""
    made = button(_tr("Is it a …?"), "is-it-a", role, says=_tr("Is it a …? Start from an animal you are afraid it is"))
    made.clicked.connect(session.open_feared)
    return made


def helps_fold(kit: Kit, session: Session) -> Fold:
    """The question that would help most, worked out when the fold is opened, with its reason and a way to it."""

    def body(held: QVBoxLayout) -> None:
        from keyapp.wording import stop_line, why_line

        stop = session.stop
        if stop.question is None:
            held.addWidget(label(stop_line(session.words, stop)))
        else:
            asked = session.keyset.characters[stop.question.character]
            held.addWidget(label(asked.question.say(session.language), "strong"))
            held.addWidget(label(why_line(session.words, stop), "soft"))
        _add_way(held, session, stop)

    return Fold(kit, session, "helps", _tr("What would help most"), body)


def asking_panel(kit: Kit, session: Session) -> QWidget:
    """Whether to go on asking and why, with the question to ask, and the way to a feared animal."""
    from keyapp.wording import stop_line

    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName("asking")
    stop = session.stop
    inside.addLayout(with_symbol(kit, "fork", stop_line(session.words, stop), "", "soft"))
    _add_way(inside, session, stop, feared_button(session))
    return frame


def _add_way(inside: QVBoxLayout, session: Session, stop: Stop, *others: QWidget) -> None:
    """A button that puts the question of `stop`, where there is one, and others beside it."""
    ways = list(others)
    if stop.question is not None:
        character = session.keyset.characters[stop.question.character]
        asks = character.question.say(session.language)
        ask = button(_tr("Answer this"), "helps-ask", says=_tr("Answer this: ") + asks)
        ask.clicked.connect(lambda: session.ask(character.id))
        ways.insert(0, ask)
    if ways:
        inside.addLayout(row(*ways, None))


def _tr(text: str) -> str:
    return QCoreApplication.translate("Asking", text)
