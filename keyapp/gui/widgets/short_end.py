"""The end of the short way: one thing to do in words, how to do it, and whom to ask."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from keyapp.engine import Action, ShortEnd
from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol
from keyapp.wording import PHOTO_FIGURE, ShortText, short_text

__all__ = ["add_short_end"]

_ICONS = {Action.KEEP_AWAY: "warning", Action.LEAVE: "check", Action.MOVE: "cup"}
_STEPS_ACROSS = 2


def add_short_end(body: QVBoxLayout, kit: Kit, session: Session) -> bool:
    """Fill `body` with what to do; returns whether more quick questions may help."""
    text = short_text(session.words, session.reading, session.short)
    if session.short.why is ShortEnd.HURT:
        body.addWidget(_hurt(kit, session))
    body.addWidget(label(session.words.fixed("short.do"), "small"))
    body.addWidget(_action(kit, text))
    if text.steps:
        body.addWidget(_steps(kit, session, text))
    if text.leaving:
        body.addWidget(_leaving(session, text))
    body.addWidget(_photo(kit, session, text))
    body.addWidget(_ask(kit, session, text))
    body.addStretch(1)
    return session.can_ask_more_short()


def _hurt(kit: Kit, session: Session) -> QWidget:
    frame, inside = panel("danger", SPACE.small, SPACE.medium)
    said = _tr("Someone is hurt. See to that first.")
    inside.addLayout(with_symbol(kit, "aid", said, "signal", "signal"))
    card = button(_tr("Open the emergency card"), "open-emergency", "danger")
    card.clicked.connect(session.ask_for_help)
    inside.addLayout(row(card, None))
    return frame


def _action(kit: Kit, text: ShortText) -> QWidget:
    """The action in the largest letters of the page; keeping away in the signal style."""
    away = text.action is Action.KEEP_AWAY
    frame, inside = panel("danger" if away else "card", SPACE.small, SPACE.large)
    frame.setObjectName(f"action-{text.action}")
    tone = "signal" if away else "ink"
    title = with_symbol(
        kit, _ICONS[text.action], text.says, "signal-title" if away else "title", tone, SPACE.icon_large
    )
    inside.addLayout(title)
    for line in (text.why, *text.keep):
        said = label(line, "lead" if line == text.why else "")
        said.setIndent(SPACE.icon_large + SPACE.small)
        inside.addWidget(said)
    return frame


def _steps(kit: Kit, session: Session, text: ShortText) -> QWidget:
    frame, inside = panel("card", SPACE.medium, SPACE.large)
    frame.setObjectName("short-steps")
    inside.addWidget(label(session.words.fixed("short.move"), "head"))
    grid = QGridLayout()
    grid.setHorizontalSpacing(SPACE.large)
    grid.setVerticalSpacing(SPACE.large)
    for at, (figure, says) in enumerate(text.steps):
        held = QVBoxLayout()
        held.setSpacing(SPACE.small)
        alt = kit.figures.alt(figure, session.language) or says
        held.addWidget(FigureView(kit, figure, SPACE.portrait, alt), 0, Qt.AlignmentFlag.AlignLeft)
        held.addWidget(label(f"{at + 1}. {says}"))
        held.addStretch(1)
        grid.addLayout(held, at // _STEPS_ACROSS, at % _STEPS_ACROSS)
    for at in range(_STEPS_ACROSS):
        grid.setColumnStretch(at, 1)
    inside.addLayout(grid)
    inside.addLayout(with_symbol(kit, "warning", text.stop, "strong"))
    for line in text.advice:
        inside.addLayout(with_symbol(kit, "dot", line, "", "soft"))
    return frame


def _leaving(session: Session, text: ShortText) -> QWidget:
    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName("short-leaving")
    inside.addWidget(label(text.leaving, "head"))
    for says, source in text.garden:
        inside.addWidget(label(says))
        if source:
            inside.addWidget(label(source, "small"))
    inside.addWidget(label(session.words.fixed("short.stay"), "strong"))
    inside.addWidget(label(text.stay))
    return frame


def _photo(kit: Kit, session: Session, text: ShortText) -> QWidget:
    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName("short-photo")
    inside.addWidget(label(session.words.fixed("short.photo"), "head"))
    across = row(gap=SPACE.large)
    alt = kit.figures.alt(PHOTO_FIGURE, session.language)
    if kit.figures.has(PHOTO_FIGURE):
        across.addWidget(FigureView(kit, PHOTO_FIGURE, SPACE.portrait, alt), 0, Qt.AlignmentFlag.AlignTop)
    lines = QVBoxLayout()
    lines.setSpacing(SPACE.small)
    for line in text.photo:
        lines.addLayout(with_symbol(kit, "dot", line, "", "soft"))
    lines.addStretch(1)
    across.addLayout(lines, 1)
    inside.addLayout(across)
    return frame


def _ask(kit: Kit, session: Session, text: ShortText) -> QWidget:
    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName("short-ask")
    inside.addWidget(label(session.words.fixed("short.ask"), "head"))
    for line in text.ask:
        inside.addLayout(with_symbol(kit, "phone", line, "", "soft"))
    return frame


def _tr(text: str) -> str:
    return QCoreApplication.translate("ShortEnd", text)
