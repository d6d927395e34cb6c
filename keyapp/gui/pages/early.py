"""The first couplet, while the key is still being opened."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QPushButton

from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.lead_cards import LeadCards
from keyapp.gui.widgets.texts import button, label, panel, with_symbol

__all__ = ["EarlyPage"]


class EarlyPage(Page):
    """Takes a pick and an answer; both wait for the key. The page of the couplet follows in its place."""

    stage = Stage.KEY

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._cards: LeadCards | None = None
        self._said: QLabel | None = None
        self._next: QPushButton | None = None
        session.drafted.connect(self._on_drafted)

    def build(self) -> None:
        self._cards = self._said = self._next = None
        early = self.session.early
        if early is None or self.session.is_open:
            return
        page = early.page
        frame, inside = panel("danger", SPACE.tiny, SPACE.medium)
        frame.setObjectName("safety-line")
        inside.addLayout(with_symbol(self.kit, "warning", page.safety, "signal", "signal"))
        self.body.addWidget(frame)
        self.body.addWidget(label(page.asks, "title"))
        if page.look:
            self.body.addLayout(with_symbol(self.kit, "eye", page.look, "soft", "soft"))
        self._cards = LeadCards(self.kit, page, early.choice, self.session.pick_early, self.session.answer_early)
        self.first_focus = self._cards.first
        self.body.addWidget(self._cards)
        self._said = label("", "small")
        self.body.addWidget(self._said)
        self.body.addStretch(1)
        back = button(self.tr("Back"), "back", says=self.tr("Back to the step before"))
        back.clicked.connect(lambda: self.session.show_stage(Stage.SETTINGS))
        on = self._next = button(self.tr("Next"), "next", "primary", says=self.tr("Next: give this answer and go on"))
        on.clicked.connect(self.session.answer_early)
        self.footer.addWidget(back)
        self.footer.addStretch(1)
        self.footer.addWidget(on)
        self._on_drafted()
        self._cards.fit(self.width(), self.height())

    def _on_drafted(self) -> None:
        early = self.session.early
        if early is None or self._said is None or self._next is None or self._cards is None:
            return
        if early.choice is not None:
            self._cards.choose(early.choice)
        self._next.setEnabled(early.choice is not None and not early.is_given)
        said = self.tr("Your answer is taken. It counts as soon as the key is open.")
        waits = self.tr("The key is being opened. You can answer already.")
        self._said.setText(said if early.is_given else waits)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._cards is not None:
            self._cards.fit(self.width(), self.height())
