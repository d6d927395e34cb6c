"""One couplet: its two leads as cards, and the two ways out."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from keyapp.gui.first_page import first_page
from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.asking import feared_button, helps_fold
from keyapp.gui.widgets.choices import Option, Picks
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.lead_cards import LeadCards
from keyapp.gui.widgets.note_line import NoteLine
from keyapp.gui.widgets.proposals import contradiction_panel, go_back_panel
from keyapp.gui.widgets.safety_panel import safety_panel
from keyapp.gui.widgets.select import Select
from keyapp.gui.widgets.standing_strip import standing_fold
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol
from keyapp.gui.widgets.trail import Trail
from keyapp.gui.widgets.view_question import ViewQuestion
from keyapp.model import Couplet, Evidence, Sureness

__all__ = ["CoupletPage"]

SURENESS = (Sureness.SURE, Sureness.THINK_SO)


class CoupletPage(Page):
    """Picking does not answer: Return or the button does."""

    stage = Stage.KEY

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._cards: LeadCards | None = None
        self._view: ViewQuestion | None = None
        self._next: QWidget | None = None
        self._sure: Picks | None = None
        session.drafted.connect(self._on_drafted)

    def subject(self) -> object:
        return (self.stage, self.session.couplet if self.session.is_open else None)

    def forget(self) -> None:
        self._view = self._next = self._cards = self._sure = None

    def build(self) -> None:
        session = self.session
        self.forget()
        if not session.is_open:
            return
        couplet_id = session.couplet
        if couplet_id is None:
            self.body.addWidget(label(self.tr("Nothing is left to ask."), "title"))
            self._add_footer(None)
            return
        couplet = session.keyset.couplets[couplet_id]
        self.body.addWidget(Trail(self.kit, session))
        self.body.addWidget(safety_panel(self.kit, session))
        for proposal in (contradiction_panel(self.kit, session), go_back_panel(self.kit, session)):
            if proposal is not None:
                self.body.addWidget(proposal)
        self.body.addWidget(NoteLine(self.kit, session))
        self.body.addWidget(label(couplet.asks.say(session.language), "title"))
        note = self._place_note(couplet)
        if note:
            self.body.addWidget(label(note, "soft"))
        look = self._how_to_look(couplet)
        if look:
            self.body.addLayout(with_symbol(self.kit, "eye", look, "soft", "soft"))
        self._add_leads(couplet)
        self._view = ViewQuestion(self.kit, "lead-view", lambda seen: session.draft_lead(view_seen=seen))
        self.body.addWidget(self._view)
        self.body.addLayout(self._how_sure())
        ask = self._ask_caller(couplet)
        if ask is not None:
            self.body.addWidget(ask)
        self._add_terms(couplet)
        self.body.addWidget(standing_fold(self.kit, session))
        self.body.addWidget(helps_fold(self.kit, session))
        self.body.addLayout(row(feared_button(session, "plain"), None))
        self.body.addStretch(1)
        self._add_footer(couplet_id)
        self._on_drafted()
        self._fit()

    # Parts ---------------------------------------------------------------------------------------

    def _place_note(self, couplet: Couplet) -> str:
        session = self.session
        answered = session.case.lead_answer(couplet.id)
        if answered is not None:
            return self.tr("You answered this before. Change it, or go on.")
        if session.is_looking_back:
            return self.tr("Other answers settle this. Answer it all the same, or go on.")
        return ""

    def _how_to_look(self, couplet: Couplet) -> str:
        keyset, language = self.session.keyset, self.session.language
        held = dict.fromkeys(c for lead in couplet.leads for c in lead.holds)
        texts = [keyset.characters[c].look.say(language) for c in held]
        return " ".join(dict.fromkeys(text for text in texts if text))

    def _add_leads(self, couplet: Couplet) -> None:
        session = self.session
        page = first_page(session.keyset, session.words, couplet.id, "", session.language)
        self._cards = LeadCards(
            self.kit,
            page,
            session.lead_draft.choice,
            lambda choice: session.draft_lead(choice=choice),
            self._on_return,
        )
        self.first_focus = self._cards.first
        self.body.addWidget(self._cards)

    def _how_sure(self) -> QHBoxLayout:
        session, words = self.session, self.session.words
        draft = session.lead_draft
        options = [Option(self.kit, words.fixed(f"sureness.{one}"), f"sureness-{one}") for one in SURENESS]
        self._sure = Picks(
            options[0],
            options,
            lambda i: session.draft_lead(sureness=SURENESS[i]),
            self._on_return,
            SURENESS.index(draft.sureness),
        )
        kinds = [(words.fixed(f"evidence.{one}"), one) for one in Evidence]
        rests = Select(
            self.kit,
            "lead-evidence",
            self.tr("This answer rests on"),
            kinds,
            lambda value: session.draft_lead(evidence=value),
        )
        rests.choose(draft.evidence or session.case.settings.evidence)
        rests.setMaximumWidth(SPACE.list_width)
        sure = label(self.tr("How sure?"), "soft", wrap=False)
        on = label(self.tr("Rests on"), "soft", wrap=False)
        made = row(sure, *options, None, on, rests, gap=SPACE.small)
        made.setStretch(made.count() - 1, 2)
        return made

    def _ask_caller(self, couplet: Couplet) -> QWidget | None:
        language = self.session.language
        asked = [lead.ask_caller.say(language) for lead in couplet.leads]
        asked = [text for text in asked if text]
        if not asked:
            held = dict.fromkeys(c for lead in couplet.leads for c in lead.holds)
            asked = [self.session.keyset.characters[c].ask_caller.say(language) for c in held]
        if not any(asked):
            return None
        frame, inside = panel("card", SPACE.tiny, SPACE.medium)
        inside.addLayout(with_symbol(self.kit, "phone", self.tr("To say to a caller"), "small", "soft"))
        for text in dict.fromkeys(asked):
            said = label(self.tr("“{text}”").replace("{text}", text))
            said.setIndent(SPACE.icon + SPACE.small)
            inside.addWidget(said)
        return frame

    def _add_terms(self, couplet: Couplet) -> None:
        session = self.session
        said = " ".join(
            [couplet.asks.say(session.language), *(lead.says.say(session.language) for lead in couplet.leads)]
        ).casefold()
        found = [t for t in session.keyset.glossary.values() if any(w.casefold() in said for w in (t.term, *t.also))]
        if not found:
            return

        def body(held: QVBoxLayout) -> None:
            for term in found:
                held.addWidget(label(_sentence(term.term), "strong"))
                held.addWidget(label(term.means.say(session.language)))

        self.body.addWidget(Fold(self.kit, session, "terms", self.tr("What the words mean"), body))

    def _add_footer(self, couplet_id: str | None) -> None:
        session = self.session
        back = button(self.tr("Back"), "back", says=self.tr("Back to the step before"))
        back.clicked.connect(session.step_back)
        seen = button(self.tr("Report something seen"), "report-seen")
        seen.clicked.connect(lambda: session.show_stage(Stage.SEEN))
        result = button(self.tr("Result so far"), "result-so-far", says=self.tr("Show the result so far"))
        result.clicked.connect(lambda: session.show_stage(Stage.RESULT))
        for one in (back, seen, result):
            self.footer.addWidget(one)
        self.footer.addStretch(1)
        if couplet_id is None:
            return
        if session.is_looking_back:
            on = button(self.tr("Leave as it is"), "leave-as-is", says=self.tr("Leave this couplet as it is and go on"))
            on.clicked.connect(session.go_on)
            self.footer.addWidget(on)
        self._next = button(self.tr("Next"), "next", "primary", says=self.tr("Next: give this answer and go on"))
        self._next.clicked.connect(session.answer)
        self.footer.addWidget(self._next)

    # News ----------------------------------------------------------------------------------------

    def _on_return(self) -> None:
        session = self.session
        if session.can_answer():
            session.answer()
        elif self._view is not None and self._view.is_asking:
            self._view.take_focus()

    def _on_drafted(self) -> None:
        session = self.session
        if self._cards is None or session.stage is not self.stage or session.couplet is None:
            return
        draft = session.lead_draft
        if draft.choice is not None:
            self._cards.choose(draft.choice)
        if self._sure is not None:
            self._sure.choose(SURENESS.index(draft.sureness))
        if self._view is not None:
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
            self._cards.fit(self.width(), self.height())


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
