"""Enquiries put aside: put this one aside, take one up again."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QLineEdit

from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.beside import Beside
from keyapp.gui.widgets.texts import button, column, label, panel, row, rule, with_symbol
from keyapp.model import Case
from keyapp.wording.parked import age_line, answers_line, open_line

if TYPE_CHECKING:
    from PySide6.QtWidgets import QVBoxLayout

    from keyapp.work.parked import Parked

__all__ = ["ParkedPage"]


class ParkedPage(Page):
    """One label to type, one key to put aside, one button to come back to each."""

    stage = Stage.PARKED

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._label: QLineEdit | None = None

    def build(self) -> None:
        session = self.session
        self._label = None
        self.first_focus = "leave-parked"
        if not session.is_open:
            return
        words = session.words
        self.body.addWidget(label(words.fixed("park.title"), "title"))
        if session.case != Case():
            self._add_this()
        self._add_list()
        self.body.addStretch(1)
        back = button(self.tr("Back"), "leave-parked", says=self.tr("Back to the enquiry at hand"))
        back.clicked.connect(session.leave_parked)
        self.footer.addWidget(back)
        self.footer.addStretch(1)
        if session.can_put_back:
            again = button(self.tr("Put back what was let go"), "put-back", icon=self.kit.look.icon("undo"))
            again.clicked.connect(session.put_back)
            self.footer.addWidget(again)

    def _add_this(self) -> None:
        session, words = self.session, self.session.words
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("park-this")
        inside.addWidget(label(words.fixed("park.this"), "head"))
        dangers = [one.group for one in session.reading.not_ruled_out]
        is_clear = "keep-away" not in session.reading.verdict.actions
        self._add_open(inside, open_line(words, dangers, is_clear), bool(dangers))
        line = self._label = QLineEdit(session.label_typed or session.label)
        line.setObjectName("park-label")
        line.setAccessibleName(words.fixed("park.label"))
        line.setAccessibleDescription(words.fixed("park.hint"))
        line.setMaxLength(200)
        line.setMinimumHeight(SPACE.target)
        line.textEdited.connect(session.type_label)
        line.returnPressed.connect(self._on_park)
        inside.addWidget(label(words.fixed("park.label"), "strong"))
        park = button(self.tr("Put it aside, take the next"), "park", "primary")
        park.clicked.connect(self._on_park)
        across = row(line, park)
        across.setStretch(0, 1)
        inside.addLayout(across)
        inside.addWidget(label(words.fixed("park.hint"), "small"))
        self.body.addWidget(frame)
        self.first_focus = "park-label"

    def _add_list(self) -> None:
        session, words = self.session, self.session.words
        parked = session.parked
        if not parked:
            self.body.addWidget(label(words.fixed("park.none"), "soft"))
            return
        frame, inside = panel("card", SPACE.medium, SPACE.large)
        frame.setObjectName("parked")
        for at, one in enumerate(parked):
            if at:
                inside.addWidget(rule())
            self._add(inside, one, at)
        self.body.addWidget(frame)
        if session.case == Case():
            self.first_focus = "take-up-0"

    def _add(self, inside: QVBoxLayout, one: Parked, at: int) -> None:
        session, words = self.session, self.session.words
        name = one.label or words.fixed("park.unnamed")
        age = age_line(words, (datetime.datetime.now(datetime.UTC) - one.since).total_seconds())
        texts = column(SPACE.hair)
        texts.addWidget(label(name, "strong"))
        told = f"{age[:1].upper()}{age[1:]} · {answers_line(words, len(one.case.answers))}"
        texts.addWidget(label(told, "small"))
        self._add_open(texts, open_line(words, one.dangers, one.is_clear), bool(one.dangers))
        up = button(self.tr("Take up"), f"take-up-{at}", says=self.tr("Take up: ") + f"{name}, {age}")
        up.clicked.connect(lambda: session.take_up(one.id))
        go = button(self.tr("Let it go"), f"let-go-{at}", "plain", says=self.tr("Let it go: ") + name)
        go.clicked.connect(lambda: session.let_go(one.id))
        inside.addWidget(Beside(texts, (up, go)))

    def _add_open(self, inside: QVBoxLayout, text: str, is_danger: bool) -> None:
        role, tone = ("signal-small", "signal") if is_danger else ("small", "soft")
        inside.addLayout(with_symbol(self.kit, "warning", text, role, tone))

    def _on_park(self) -> None:
        if self._label is not None:
            self.session.park(self._label.text())
