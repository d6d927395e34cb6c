"""The short way: a few quick questions for someone who stands at the animal, then the one thing to do."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.choices import Option, Picks
from keyapp.gui.widgets.number_keys import NumberKeys
from keyapp.gui.widgets.short_end import add_short_end
from keyapp.gui.widgets.texts import button, label, row, with_symbol
from keyapp.model import Character, Sureness

__all__ = ["ShortPage"]

SURENESS = (Sureness.SURE, Sureness.THINK_SO)
_CANT = "short-cant-tell"


class ShortPage(Page):
    """Someone hurt comes first; then questions; then what to do, and nothing with a name before it."""

    stage = Stage.SHORT

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._cards: list[Option] = []
        self._grid: QGridLayout | None = None
        self._next: QWidget | None = None
        self._picks: Picks | None = None
        self._values: list[str] = []
        session.drafted.connect(self._on_drafted)

    def subject(self) -> object:
        session = self.session
        if not session.is_open or session.case.settings.hurt is None:
            return (self.stage, "hurt", session.is_open)
        return (self.stage, session.short.question, session.short.action, session.case.settings.hurt)

    def forget(self) -> None:
        self._cards, self._grid, self._next, self._picks = [], None, None, None

    def build(self) -> None:
        session = self.session
        self.forget()
        self.first_focus = ""
        if session.case.settings.hurt is None:
            self._ask_hurt()
        elif not session.is_open:
            self.body.addWidget(label(self.tr("Opening the key"), "title"))
            self.body.addWidget(label(self.tr("One moment. Stay a step away from it, and touch nothing."), "soft"))
            self.body.addStretch(1)
        elif session.short.question is not None:
            self._ask(session.keyset.characters[session.short.question])
        else:
            self._tell()

    # The people ----------------------------------------------------------------------------------

    def _ask_hurt(self) -> None:
        """Works before the key is open, as does the first page."""
        self.first_focus = "hurt-no"
        self.body.addSpacing(SPACE.wide)
        self.body.addWidget(label(self.tr("First, the people"), "small"))
        self.body.addWidget(label(self.tr("Has anyone been bitten, stung or become unwell?"), "title"))
        self.body.addWidget(label(self.tr("A person comes before an animal. A pet counts too: call a vet."), "soft"))
        yes = button(
            self.tr("Yes, or not sure"),
            "hurt-yes",
            "danger",
            icon=self.kit.look.icon("aid", "signal"),
            says=self.tr("Yes, or not sure: someone may be bitten, stung or unwell"),
        )
        yes.clicked.connect(lambda: self.session.set_hurt(True))
        no = button(self.tr("No one is hurt"), "hurt-no", "primary", says=self.tr("No one is hurt, go on"))
        no.clicked.connect(lambda: self.session.set_hurt(False))
        self.body.addSpacing(SPACE.small)
        self.body.addLayout(row(yes, no, None, gap=SPACE.medium))
        self.body.addStretch(1)
        self._add_back(self.session.leave_short)

    # A question ----------------------------------------------------------------------------------

    def _ask(self, character: Character) -> None:
        session, words, language = self.session, self.session.words, self.session.language
        way = session.short
        most = max(session.short_most, way.at)
        body = self.body
        body.addLayout(with_symbol(self.kit, "away", words.fixed("short.hands-off"), "strong"))
        body.addWidget(label(words.fixed("short.at", at=str(way.at), most=str(most)), "small"))
        body.addWidget(label(character.question.say(language), "title"))
        look = character.look.say(language)
        if look:
            body.addLayout(with_symbol(self.kit, "eye", look, "soft", "soft"))
        self._add_cards(character)
        options = [Option(self.kit, words.fixed(f"sureness.{one}"), f"short-{one}") for one in SURENESS]
        picked = SURENESS.index(session.short_draft.sureness)
        Picks(options[0], options, lambda i: session.draft_short(sureness=SURENESS[i]), session.answer_short, picked)
        body.addLayout(row(label(words.fixed("short.sure"), "soft", wrap=False), *options, None))
        body.addStretch(1)
        self._add_back(session.back_short)
        self._next = button(self.tr("Next"), "short-next", "primary", says=self.tr("Next: give this answer and go on"))
        self._next.clicked.connect(session.answer_short)
        self.footer.addWidget(self._next)
        self._on_drafted()

    def _add_cards(self, character: Character) -> None:
        session, words, language = self.session, self.session.words, self.session.language
        values = self._values = [*character.state_ids, ""]
        for place, state in enumerate(character.states, start=1):
            note = words.fixed("short.absent") if state.absence else ""
            text = f"{place}  {state.label.say(language)}"
            alt = self.kit.figures.alt(state.figure, language)
            says = f"{state.label.say(language)}. {alt}" if alt else state.label.say(language)
            figure = state.figure if self.kit.figures.has(state.figure) else ""
            self._cards.append(Option(self.kit, text, f"short-{state.id}", note=note, figure=figure, says=says))
        said = words.fixed("short.cant-tell")
        note = words.fixed("short.cant-tell-why")
        self._cards.append(Option(self.kit, f"{len(values)}  {said}", _CANT, note=note, says=said))
        holder = QWidget()
        holder.setAccessibleName(character.question.say(language))
        self._grid = QGridLayout(holder)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(SPACE.small)
        self._arrange()
        self.body.addWidget(holder)
        draft = session.short_draft
        is_mine = draft.character == character.id
        picked = None
        if is_mine and (draft.state or draft.cant_tell):
            picked = values.index("" if draft.cant_tell else draft.state)

        def pick(index: int) -> None:
            session.draft_short(state=values[index], cant_tell=not values[index])

        self._picks = Picks(holder, self._cards, pick, session.answer_short, picked)
        NumberKeys(self, self._cards)
        self.first_focus = self._cards[picked or 0].objectName()

    def _arrange(self) -> None:
        """Two cards in a row where there is room."""
        if self._grid is None:
            return
        across = 2 if self.width() >= 2 * SPACE.list_width + SPACE.rail else 1
        for index, card in enumerate(self._cards):
            self._grid.addWidget(card, index // across, index % across)
        self._grid.setColumnStretch(0, 1)
        self._grid.setColumnStretch(1, across - 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    # What to do ----------------------------------------------------------------------------------

    def _tell(self) -> None:
        session, words = self.session, self.session.words
        self.first_focus = "short-more"
        can_more = add_short_end(self.body, self.kit, session)
        self._add_back(session.back_short)
        full = button(words.fixed("short.full"), "short-full")
        full.clicked.connect(session.go_on)
        self.footer.addWidget(full)
        if can_more:
            more = button(words.fixed("short.more"), "short-more", "primary")
            more.setAccessibleDescription(words.fixed("short.more-why"))
            more.clicked.connect(session.ask_more_short)
            self.footer.addWidget(more)
        else:
            self.first_focus = "short-full"

    def _add_back(self, act: Callable[[], None]) -> None:
        back = button(self.tr("Back"), "back", says=self.tr("Back: take the last answer back"))
        back.clicked.connect(act)
        self.footer.addWidget(back)
        self.footer.addStretch(1)

    def _on_drafted(self) -> None:
        session = self.session
        if self._next is None or self._picks is None or session.stage is not self.stage or not session.is_open:
            return
        self._next.setEnabled(session.can_answer_short())
        if session.can_answer_short():
            draft = session.short_draft
            self._picks.choose(self._values.index("" if draft.cant_tell else draft.state))
