"""What the answers themselves suggest to look at again."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol
from keyapp.model import Answer, LeadAnswer

__all__ = ["answer_row", "contradiction_panel", "go_back_panel"]


def contradiction_panel(kit: Kit, session: Session) -> QWidget | None:
    """Answers that cannot both be right, each with a way to it; None where there are none."""
    found = session.reading.contradictions
    if not found:
        return None
    frame, inside = panel("card", SPACE.small, SPACE.medium)
    frame.setObjectName("contradiction")
    text = _tr("These two answers cannot both be right. Look again at one of them.")
    for index, one in enumerate(found):
        inside.addLayout(with_symbol(kit, "warning", text, "strong"))
        for place, answer in (("first", one.first), ("second", one.second)):
            answer_row(kit, session, inside, answer, f"settle-{index}-{place}")
    return frame


def go_back_panel(kit: Kit, session: Session) -> QWidget | None:
    """After two *neither fits*, the answer to look at again; None where there is none."""
    couplet_id = session.reading.go_back
    if couplet_id is None or couplet_id == session.couplet:
        return None
    asks = session.keyset.couplets[couplet_id].asks.say(session.language)
    frame, inside = panel("card", SPACE.small, SPACE.medium)
    frame.setObjectName("go-back")
    inside.addLayout(with_symbol(kit, "undo", session.words.fixed("neither-twice", couplet=asks), "strong"))
    again = button(_tr("Look at it again"), "go-back-look", says=_tr("Look again at: ") + asks)
    again.clicked.connect(lambda: session.look_at(couplet_id))
    inside.addLayout(row(again, None))
    return frame


def answer_row(kit: Kit, session: Session, inside: QVBoxLayout, answer: Answer, name: str) -> None:
    """One answer with a button that leads to where it was given."""
    said = session.words.answer(answer)
    across = row(gap=SPACE.medium)
    across.addSpacing(SPACE.icon - SPACE.tiny)
    texts = label(said)
    across.addWidget(texts, 1)
    again = button(_tr("Look again"), name, says=_tr("Look again at: ") + said)
    again.clicked.connect(lambda: session.look_at_answer(answer))
    across.addWidget(again)
    if not isinstance(answer, LeadAnswer) and answer in session.case.answers:
        back = button(_tr("Take back"), f"{name}-back", "plain", says=_tr("Take back: ") + said)
        back.clicked.connect(lambda: session.take_back(answer))
        across.addWidget(back)
    inside.addLayout(across)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Proposals", text)
