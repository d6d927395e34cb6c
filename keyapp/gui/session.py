"""The session: the one object that pages listen to and act through."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from keyapp.errors import UserError
from keyapp.gui.carry_on import usable
from keyapp.gui.desk import Desk, Stage
from keyapp.gui.draft import SeenDraft
from keyapp.gui.saver import Saver
from keyapp.model import Answer, Case, LeadAnswer, Measurement, Report, Settings
from keyapp.model.injury import injury_words

if TYPE_CHECKING:
    from keyapp.wording import Words
    from keyapp.work.enquiry import Enquiry
    from keyapp.work.keep import Keeper

__all__ = ["Session", "Stage"]


class Session(Desk):
    """An open key and the enquiry at hand. One method for each thing a person does.

    Before the key is open only `hurt` can be answered; the answer waits for it.
    """

    # Opening -------------------------------------------------------------------------------

    def open(self, enquiry: Enquiry, words: Words, keeper: Keeper | None = None) -> None:
        """Take the key that was read, and look for an enquiry that was left open."""
        self._enquiry = enquiry
        self._words = words
        enquiry.listen(self._on_changed)
        if keeper is not None:
            self._saver = Saver(keeper)
            self._saver.failed.connect(self._reporter.tell)
            self._offer = self._kept(keeper)
        self.opened.emit()
        if self._hurt_early is not None:
            self.set_up(hurt=self._hurt_early)

    def close(self) -> None:
        """Write what is left to keep."""
        if self._saver is not None:
            self._saver.close()
            self._saver = None

    def flush(self) -> None:
        """Wait until the enquiry is on disk."""
        if self._saver is not None:
            self._saver.flush()

    # Acts on the case --------------------------------------------------------------------------

    def set_hurt(self, hurt: bool) -> None:
        """Say whether anyone is hurt; the card opens where someone is."""
        if self._enquiry is None:
            self._hurt_early = hurt
        else:
            self._act(lambda: self.enquiry.set_up(hurt=hurt))
        if hurt:
            self.emergency.emit()
        if self._stage is Stage.HURT:
            self.show_stage(Stage.SETTINGS)

    def mark_hurt(self, hurt: bool) -> None:
        """Change whether anyone is hurt, from the emergency card; the screen stays."""
        if self._enquiry is None:
            self._hurt_early = hurt
            self.moved.emit()
        else:
            self._act(lambda: self.enquiry.set_up(hurt=hurt))

    def set_up(self, **settings: object) -> None:
        """Change settings by name."""
        self._act(lambda: self.enquiry.set_up(**settings))

    def set_told(self, text: str) -> None:
        """Keep what they were told it is; words of injury count as someone hurt and open the card."""
        found = injury_words(text, self.keyset.emergency.words)
        fresh = found - self._words_shown
        self._words_shown |= fresh
        if fresh:
            self._act(lambda: self.enquiry.set_up(told=text, hurt=True))
            self.emergency.emit()
        else:
            self._act(lambda: self.enquiry.set_up(told=text))

    def has_new_injury_words(self, text: str) -> bool:
        """Whether `text` holds words of injury that have not opened the card yet."""
        return bool(injury_words(text, self.keyset.emergency.words) - self._words_shown)

    def answer(self) -> None:
        """Give what is picked at the couplet as the answer, and go on."""
        draft = self.lead_draft
        choice = draft.choice
        if choice is None or not self.can_answer():
            return
        before = self.case
        shown = self.couplet
        seen = draft.view_seen if self.needs_view() is not None else None
        self._asked = None
        done = self._act(lambda: self.enquiry.choose(draft.couplet, choice, draft.sureness, draft.evidence, seen))
        if not done:
            self._asked = shown
        elif before == self.case:
            self._lead = None
            self._go_on()

    def report(self) -> None:
        """Give what is picked on the page for things seen as a report, and go on."""
        draft = self._seen
        before = self.case
        if draft.mm is not None:
            mm = draft.mm
            done = self._act(
                lambda: self.enquiry.measure(draft.character, mm, sureness=draft.sureness, evidence=draft.evidence)
            )
        else:
            seen = draft.view_seen if self.seen_needs_view() is not None else None
            done = self._act(
                lambda: self.enquiry.report(
                    draft.character,
                    draft.states,
                    both=draft.both and len(draft.states) > 1,
                    sureness=draft.sureness,
                    evidence=draft.evidence,
                    view_seen=seen,
                )
            )
        if done and before == self.case:
            self._go_on()

    def take_back(self, answer: Answer) -> None:
        """Take an answer back altogether."""
        self._act(lambda: self.enquiry.take_back(answer))

    def start_again(self) -> None:
        """Begin a new enquiry; this can be undone."""
        self._asked = None
        self._seen = SeenDraft()
        self._words_shown.clear()
        self._act(lambda: self.enquiry.start_again())
        self.show_stage(Stage.HURT)

    def undo(self) -> None:
        """Undo the last change."""
        if self.can_undo:
            self._asked = None
            self.enquiry.undo()

    def redo(self) -> None:
        """Do the last undone change again."""
        if self.can_redo:
            self._asked = None
            self.enquiry.redo()

    def carry_on(self) -> None:
        """Take up the enquiry that was left open."""
        offer, self._offer = self._offer, None
        if offer is None or self._enquiry is None or self._words is None:
            return
        case, dropped = usable(offer, self.tables)
        fresh = type(self._enquiry)(self.tables, case)
        fresh.listen(self._on_changed)
        self._enquiry = fresh
        self._case_before = case
        if dropped:
            self._reporter.note(
                self.tr("The key has changed since. {count} of the kept answers could not be used:").replace(
                    "{count}", str(len(dropped))
                ),
                "; ".join(dropped),
            )
        self._stage = self._stage_of_case()
        self._save()
        self.changed.emit()
        self.moved.emit()

    def leave_kept(self) -> None:
        """Let go of the enquiry that was left open."""
        self._offer = None
        self._save()
        self.moved.emit()

    def ask_for_help(self) -> None:
        """Ask for the emergency card."""
        self.emergency.emit()

    # Acts on the screen --------------------------------------------------------------------------

    def show_stage(self, stage: Stage) -> None:
        """Turn to another part."""
        if stage is not self._stage:
            self._stage = stage
            self.moved.emit()

    def look_at(self, couplet: str) -> None:
        """Show a couplet, answered or not, with its answer picked; nothing changes until it is given."""
        self._asked = couplet
        self._lead = None
        self._stage = Stage.KEY
        self.moved.emit()

    def look_at_answer(self, answer: Answer) -> None:
        """Show the place where an answer was given."""
        if isinstance(answer, LeadAnswer):
            self.look_at(answer.couplet)
        else:
            self.see(answer.character)

    def step_back(self) -> None:
        """Show the couplet before the one on the screen, with its answer picked; before the first, the settings."""
        steps = [step.couplet for step in self.reading.walk.steps if step.answer is not None]
        place = steps.index(self.couplet) if self.couplet in steps else len(steps)
        if place == 0:
            self._asked = None
            self.show_stage(Stage.SETTINGS)
        else:
            self.look_at(steps[place - 1])

    def go_on(self) -> None:
        """Turn to the next couplet to answer, or to the result where none is left."""
        self._go_on()

    def see(self, character: str) -> None:
        """Open the page for things seen at a character, with what was reported of it."""
        self._pick(character)
        self._stage = Stage.SEEN
        self.moved.emit()

    def pick_character(self, character: str) -> None:
        """Choose the character to report."""
        if character != self._seen.character:
            self._pick(character)
            self.drafted.emit()

    def draft_seen(self, **parts: object) -> None:
        """Change the report in the making."""
        fresh = replace(self._seen, **parts)  # type: ignore[arg-type]
        if fresh != self._seen:
            self._seen = fresh
            self.drafted.emit()

    def draft_lead(self, **parts: object) -> None:
        """Change what is picked at the couplet."""
        old = self.lead_draft
        fresh = replace(old, **parts)  # type: ignore[arg-type]
        if fresh.choice is not old.choice:
            fresh = replace(fresh, view_seen=None)
        if fresh != old:
            self._lead = fresh
            self.drafted.emit()

    def unfold(self, name: str, is_open: bool) -> None:
        """Open or close a fold."""
        if is_open != (name in self._folds):
            self._folds ^= {name}
            self.folded.emit(name)

    def set_first_aid(self, kind: str) -> None:
        """Choose the kind of animal the emergency card speaks of."""
        if kind != self._first_aid:
            self._first_aid = kind
            self.moved.emit()

    # Inside ----------------------------------------------------------------------------------

    def _act(self, act: Callable[[], object]) -> bool:
        if self._enquiry is None:
            return False
        try:
            act()
        except UserError as error:
            self._reporter.tell(error)
            return False
        return True

    def _on_changed(self) -> None:
        before, self._case_before = self._case_before, self.case
        self._lead = None
        stage = self._stage
        if self.case == Case():
            self._stage = Stage.HURT
        elif before.answers != self.case.answers or before.reopened != self.case.reopened:
            self._stage = Stage.KEY if self._couplet_or_none() else Stage.RESULT
        elif before.settings.hurt is not self.case.settings.hurt:
            self._stage = Stage.HURT if self.case.settings.hurt is None else stage
            if stage is Stage.HURT and self.case.settings.hurt is not None:
                self._stage = Stage.SETTINGS
        elif stage is not Stage.SETTINGS:
            self._stage = Stage.SETTINGS
        self._save()
        self.changed.emit()
        if stage is not self._stage:
            self.moved.emit()

    def _couplet_or_none(self) -> str | None:
        return self.couplet if self._asked else self.reading.current

    def _go_on(self) -> None:
        self._asked = None
        self._lead = None
        self._stage = Stage.KEY if self.reading.current else Stage.RESULT
        self.moved.emit()

    def _stage_of_case(self) -> Stage:
        if self.case.answers:
            return Stage.KEY if self.reading.current else Stage.RESULT
        return Stage.HURT if self.case.settings.hurt is None else Stage.SETTINGS

    def _pick(self, character: str) -> None:
        note = self.case.note(character)
        draft = SeenDraft(character)
        if isinstance(note, Report):
            draft = SeenDraft(character, note.states, note.both, None, note.sureness, note.evidence, note.view_seen)
        elif isinstance(note, Measurement):
            draft = SeenDraft(character, mm=note.mm, sureness=note.sureness, evidence=note.evidence)
        self._seen = draft

    def _kept(self, keeper: Keeper) -> Case | None:
        try:
            kept = keeper.kept()
        except UserError as error:
            self._reporter.tell(error)
            return None
        except OSError as error:
            self._reporter.tell(UserError("The kept enquiry could not be read.", fix=f"{error.strerror}."))
            return None
        return kept if kept is not None and (kept.answers or kept.settings != Settings()) else None

    def _save(self) -> None:
        if self._saver is None:
            return
        if self._offer is not None:
            # The enquiry left open stays on disk until it is taken up, let go, or overtaken by answers.
            if not self.case.answers:
                return
            self._offer = None
        self._saver.save(self.case)
