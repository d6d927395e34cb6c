"""One couplet for a projector: the danger, the question, two large figures and the ways out, and no more."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QPushButton

from keyapp.gui.first_page import first_page
from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.lead_cards import LeadCards
from keyapp.gui.widgets.texts import button, label, panel, with_symbol
from keyapp.gui.widgets.view_question import ViewQuestion

__all__ = ["BigCoupletPage"]

SHARE = 0.42
"""Part of the height that a figure may take; the question and both texts must still fit on a projector."""


class BigCoupletPage(Page):
    """The couplet in the big picture. Acts and answers are those of the ordinary page."""

    stage = Stage.KEY

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._cards: LeadCards | None = None
        self._view: ViewQuestion | None = None
        self._next: QPushButton | None = None
        session.drafted.connect(self._on_drafted)

    def subject(self) -> object:
        return (self.stage, self.session.couplet if self.session.is_open else None)

    def build(self) -> None:
        self._cards = self._view = self._next = None
        session = self.session
        if not session.is_open:
            return
        couplet = session.couplet
        reading, words = session.reading, session.words
        is_danger = bool(reading.not_ruled_out)
        frame, inside = panel("danger" if is_danger else "card", SPACE.tiny, SPACE.medium)
        frame.setObjectName("safety-line")
        tone = ("signal", "signal") if is_danger else ("strong", "ink")
        inside.addLayout(with_symbol(self.kit, "warning", words.safety_line(reading), *tone))
        self.body.addWidget(frame)
        if couplet is None:
            self.body.addWidget(label(self.tr("Nothing is left to ask."), "title"))
        else:
            page = first_page(session.keyset, words, couplet, "", session.language)
            self.body.addWidget(label(page.asks, "title"))
            choice = session.lead_draft.choice
            self._cards = LeadCards(
                self.kit, page, choice, lambda c: session.draft_lead(choice=c), self._on_return, notes=False
            )
            self.first_focus = self._cards.first
            self.body.addWidget(self._cards)
            self._view = ViewQuestion(self.kit, "lead-view", lambda seen: session.draft_lead(view_seen=seen))
            self.body.addWidget(self._view)
        self.body.addStretch(1)
        self._add_footer(couplet)
        self._on_drafted()
        self._fit()

    def _add_footer(self, couplet: str | None) -> None:
        session = self.session
        back = button(self.tr("Back"), "back", says=self.tr("Back to the step before"))
        back.clicked.connect(session.step_back)
        self.footer.addWidget(back)
        self.footer.addStretch(1)
        if couplet is None:
            result = button(self.tr("Result"), "result-so-far", "primary", says=self.tr("Show the result so far"))
            result.clicked.connect(lambda: session.show_stage(Stage.RESULT))
            self.footer.addWidget(result)
            return
        self._next = button(self.tr("Next"), "next", "primary", says=self.tr("Next: give this answer and go on"))
        self._next.clicked.connect(session.answer)
        self.footer.addWidget(self._next)

    def _on_return(self) -> None:
        if self.session.can_answer():
            self.session.answer()
        elif self._view is not None and self._view.is_asking:
            self._view.take_focus()

    def _on_drafted(self) -> None:
        session = self.session
        if self._cards is None or self._view is None or session.stage is not self.stage or session.couplet is None:
            return
        draft = session.lead_draft
        if draft.choice is not None:
            self._cards.choose(draft.choice)
        was_asking = self._view.is_asking
        self._view.ask(session.needs_view(), draft.view_seen)
        if self._view.is_asking and not was_asking:
            self.show_widget(self._view)
        if self._next is not None:
            self._next.setEnabled(session.can_answer())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        if self._cards is not None:
            self._cards.fit(self.width(), self.height(), SHARE)
