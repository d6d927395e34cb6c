"""What someone was told against what was seen, side by side."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import column, label, panel
from keyapp.wording import taxa_called

__all__ = ["told_card"]

_MOST = 6
"""Answers that are listed; the trail has them all."""


def told_card(session: Session, told: str) -> QWidget:
    """To the left the name, what it is used for, and what is set straight; to the right what was seen."""
    words = session.words
    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName("told-panel")
    inside.addWidget(label(words.fixed("told.against"), "head"))
    grid = QGridLayout()
    grid.setHorizontalSpacing(SPACE.wide)
    for at, side in enumerate((_told(session, told), _seen(session))):
        grid.addLayout(side, 0, at)
        grid.setColumnStretch(at, 1)
    inside.addLayout(grid)
    return frame


def _told(session: Session, told: str) -> QVBoxLayout:
    words = session.words
    side = column(SPACE.tiny)
    side.addWidget(label(words.fixed("told", told=told), "strong"))
    called = taxa_called(session.keyset, told)
    if called:
        titles = words.listing([words.taxon(taxon_id) for taxon_id in called])
        side.addWidget(label(words.fixed("told.used-for", titles=titles)))
    for fact in words.told_facts(told):
        side.addWidget(label(fact))
    side.addStretch(1)
    return side


def _seen(session: Session) -> QVBoxLayout:
    words, reading = session.words, session.reading
    side = column(SPACE.tiny)
    if not reading.events:
        side.addWidget(label(words.fixed("sheet.saw-none")))
        side.addStretch(1)
        return side
    names = words.listing([words.group(one.group) for one in reading.verdict.candidates])
    side.addWidget(label(words.fixed("sheet.points", names=names), "strong"))
    answers = [answer for event in reading.events for answer in event.answers]
    for answer in list(dict.fromkeys(answers))[:_MOST]:
        side.addWidget(label(words.answer(answer), "small"))
    left = len(set(answers)) - _MOST
    if left > 0:
        side.addWidget(label(words.fixed("told.more", count=str(left)), "small"))
    side.addStretch(1)
    return side
