"""What lies on the desk: the open key, the enquiry at hand, and which part of it is shown."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from keyapp.gui.browsing import Browsing
from keyapp.gui.draft import LeadDraft, NoteDraft, SeenDraft, ShortDraft
from keyapp.gui.reporter import Reporter
from keyapp.model import Case, Choice, Settings

if TYPE_CHECKING:
    from keyapp.engine import Fear, Reading, ShortWay, Stop, Tables
    from keyapp.engine.second_look import SecondLook
    from keyapp.gui.early import Early
    from keyapp.gui.printing import Printing
    from keyapp.gui.saver import Saver
    from keyapp.model import KeySet, View
    from keyapp.wording import Words
    from keyapp.work.enquiry import Enquiry
    from keyapp.work.parked import Parked, Shelf

__all__ = ["Desk", "Stage"]


class Stage(StrEnum):
    """The part that is on the screen: one of *Work it out*, or the page of all families."""

    HURT = "hurt"
    SETTINGS = "settings"
    KEY = "key"
    SEEN = "seen"
    FEARED = "feared"
    RESULT = "result"
    FAMILIES = "families"
    SHORT = "short"
    PARKED = "parked"


class Desk(QObject):
    """What pages may read. Only `Screen` and `Session` change it.

    Signals:
        opened: the key is ready; no arguments.
        changed: the case has changed, once for each real change; no arguments.
        moved: another stage, couplet or kind of first aid is shown; no arguments.
        folded: a fold was opened or closed; argument: its name.
        drafted: what is picked and not yet answered has changed; no arguments.
        noted: what was found in the words of a note, or is left of it, has changed; no arguments.
        printed: writing the sheet has begun or ended; no arguments.
        emergency: the emergency card is asked for; no arguments.
    """

    opened = Signal()
    changed = Signal()
    moved = Signal()
    folded = Signal(str)
    drafted = Signal()
    noted = Signal()
    printed = Signal()
    emergency = Signal()

    def __init__(self, reporter: Reporter, language: str = "en") -> None:
        super().__init__()
        self.language = language
        self._reporter = reporter
        self.early: Early | None = None
        self._saver: Saver | None = None
        self._enquiry: Enquiry | None = None
        self._words: Words | None = None
        self._stage = Stage.HURT
        self.browsing = Browsing()
        self._families_from: Stage | None = None
        self._asked: str | None = None
        self._lead: LeadDraft | None = None
        self._seen = SeenDraft()
        self._folds: set[str] = set()
        self._first_aid = "unknown"
        self._offer: Case | None = None
        self._case_before = Case()
        self._hurt_early: bool | None = None
        self._words_shown: set[str] = set()
        self._feared = ""
        self._feared_said = ""
        self._feared_from: Stage | None = None
        self._asked_from: Stage | None = None
        self._stop: tuple[Reading, Stop] | None = None
        self._keeps_stage = False
        self._wish = ""
        self._short_draft = ShortDraft()
        self._short_most = 0
        self._short_from: Stage | None = None
        self._short: tuple[Reading, int, ShortWay] | None = None
        self._note = NoteDraft()
        self._checking = False
        self._shelf: Shelf | None = None
        self._parked: tuple[Parked, ...] | None = None
        self._parked_from: Stage | None = None
        self._let_go: Parked | None = None
        self._label = ""
        self._label_typed = ""
        self._left: dict[str, tuple[LeadDraft | None, SeenDraft, NoteDraft, Stage | None]] = {}
        self._printing: Printing | None = None
        self._fear: tuple[Reading, Fear] | None = None

    @property
    def is_open(self) -> bool:
        """Whether the key is ready."""
        return self._enquiry is not None

    @property
    def enquiry(self) -> Enquiry:
        """The enquiry; only once the key is open."""
        assert self._enquiry is not None
        return self._enquiry

    @property
    def words(self) -> Words:
        """The key's sentences; only once the key is open."""
        assert self._words is not None
        return self._words

    @property
    def tables(self) -> Tables:
        """The key made ready for the engine."""
        return self.enquiry.tables

    @property
    def keyset(self) -> KeySet:
        """The key."""
        return self.words.keyset

    @property
    def case(self) -> Case:
        """The case as it stands; an empty one before the key is open."""
        if self._enquiry is None:
            return Case(Settings(hurt=self._hurt_early))
        return self._enquiry.case

    @property
    def reading(self) -> Reading:
        """What the engine makes of the case."""
        return self.enquiry.reading

    @property
    def second_look(self) -> tuple[SecondLook, ...]:
        """Answers to check again before anything reassuring is said."""
        return self.enquiry.second_look

    @property
    def stage(self) -> Stage:
        """The part that is on the screen."""
        return self._stage

    @property
    def couplet(self) -> str | None:
        """The couplet on the screen: the one asked for by hand, else the next to answer."""
        way = self.reading.walk
        if self._asked in (*way.open, *(step.couplet for step in way.steps)):
            return self._asked
        return self.reading.current

    @property
    def is_looking_back(self) -> bool:
        """Whether the couplet on the screen is not the next to answer."""
        return self._stage is Stage.KEY and self.couplet != self.reading.current

    @property
    def lead_draft(self) -> LeadDraft:
        """What is picked at the couplet on the screen."""
        couplet = self.couplet or ""
        if self._lead is None or self._lead.couplet != couplet:
            self._lead = self._fresh_draft(couplet)
        return self._lead

    @property
    def seen_draft(self) -> SeenDraft:
        """What is picked on the page for things seen."""
        return self._seen

    @property
    def feared(self) -> str:
        """Id of the feared animal that is asked about; empty while none is chosen."""
        return self._feared

    @property
    def feared_said(self) -> str:
        """A name that was typed for it and is in use for several animals; else empty."""
        return self._feared_said

    @property
    def fear(self) -> Fear:
        """How the answers stand to the feared animal; only while one is chosen. Worked out once per change."""
        from keyapp.engine import feared, read_fear

        reading = self.reading
        if self._fear is None or self._fear[0] is not reading or self._fear[1].feared.id != self._feared:
            animal = feared(self.tables, self._feared)
            self._fear = reading, read_fear(self.tables, reading, animal)
        return self._fear[1]

    @property
    def stop(self) -> Stop:
        """Whether to go on asking, why, and with what. Worked out once per change."""
        from keyapp.engine import stop

        reading = self.reading
        if self._stop is None or self._stop[0] is not reading:
            self._stop = reading, stop(self.tables, reading)
        return self._stop[1]

    @property
    def short(self) -> ShortWay:
        """Where the short way stands. Worked out once per change."""
        from keyapp.engine.short_way import MOST_ASKED, short_way

        reading, most = self.reading, MOST_ASKED + self._short_most
        if self._short is None or self._short[0] is not reading or self._short[1] != most:
            self._short = reading, most, short_way(self.tables, reading, most)
        return self._short[2]

    @property
    def short_most(self) -> int:
        """As many questions as the short way may put."""
        from keyapp.engine.short_way import MOST_ASKED

        return MOST_ASKED + self._short_most

    @property
    def short_draft(self) -> ShortDraft:
        """What is picked at the question of the short way."""
        return self._short_draft

    @property
    def note(self) -> NoteDraft:
        """What was typed in plain words, and what of it is left to confirm."""
        return self._note

    @property
    def is_checking(self) -> bool:
        """Whether it is asked which part does not fit."""
        return self._checking

    @property
    def label(self) -> str:
        """The label of the enquiry at hand, where it was put aside before."""
        return self._label

    @property
    def label_typed(self) -> str:
        """The label as far as it was typed."""
        return self._label_typed

    @property
    def is_printing(self) -> bool:
        """Whether the sheet is being written."""
        return self._printing is not None

    @property
    def is_asking(self) -> bool:
        """Whether the page for things seen puts one question, to go back from where it was taken up."""
        return self._asked_from is not None

    @property
    def offer(self) -> Case | None:
        """An enquiry that was left open and may be carried on."""
        return self._offer

    @property
    def first_aid(self) -> str:
        """The kind of animal the emergency card speaks of."""
        return self._first_aid

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to undo."""
        return self._enquiry is not None and self._enquiry.can_undo

    @property
    def can_redo(self) -> bool:
        """Whether there is a step to do again."""
        return self._enquiry is not None and self._enquiry.can_redo

    def is_unfolded(self, name: str) -> bool:
        """Whether the fold of that name is open."""
        return name in self._folds

    def needs_view(self) -> View | None:
        """The side that must have been in view for what is picked, where one must."""
        draft = self.lead_draft
        if not draft.couplet or draft.choice is None:
            return None
        return self.enquiry.lead_needs_view(draft.couplet, draft.choice)

    def seen_needs_view(self) -> View | None:
        """The side that must have been seen for the report in the making, where one must."""
        from keyapp.model import View

        draft = self._seen
        character = self.keyset.characters.get(draft.character)
        if character is None or not draft.states or character.view is View.ANY:
            return None
        return character.view if any(character.state(s).absence for s in draft.states) else None

    def can_answer(self) -> bool:
        """Whether what is picked is enough to go on."""
        draft = self.lead_draft
        return draft.choice is not None and (self.needs_view() is None or draft.view_seen is not None)

    def can_report(self) -> bool:
        """Whether the report in the making is enough."""
        draft = self._seen
        if draft.mm is not None:
            return True
        return bool(draft.states) and (self.seen_needs_view() is None or draft.view_seen is not None)

    # Inside ----------------------------------------------------------------------------------

    def _fresh_draft(self, couplet: str) -> LeadDraft:
        old = self.case.lead_answer(couplet)
        if old is None:
            return LeadDraft(couplet)
        draft = LeadDraft(couplet, old.choice, old.sureness, old.evidence)
        needed = self.enquiry.lead_needs_view(couplet, old.choice) if old.choice is not Choice.NEITHER else None
        return replace(draft, view_seen=old.view_seen if needed is not None else None)
