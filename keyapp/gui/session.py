"""The session: the one object that pages listen to and act through."""

from __future__ import annotations

from typing import TYPE_CHECKING

from keyapp.errors import UserError
from keyapp.gui.carry_on import usable
from keyapp.gui.desk import Stage
from keyapp.gui.draft import LeadDraft, NoteDraft, SeenDraft
from keyapp.gui.result_acts import ResultActs
from keyapp.gui.saver import Saver
from keyapp.model import Answer, Case, Choice, Settings

if TYPE_CHECKING:
    from keyapp.gui.early import Early
    from keyapp.wording import Words
    from keyapp.work.enquiry import Enquiry
    from keyapp.work.keep import Keeper

__all__ = ["Session", "Stage"]


class Session(ResultActs):
    """An open key and the enquiry at hand. One method for each thing a person does.

    Before the key is open only `hurt` can be answered; the answer waits for it.
    """

    # Opening -------------------------------------------------------------------------------

    def open(self, enquiry: Enquiry, words: Words, keeper: Keeper | None = None) -> None:
        """Take the key that was read, and look for an enquiry that was left open."""
        from keyapp.work.parked import Shelf

        self._enquiry = enquiry
        self._words = words
        enquiry.listen(self._on_changed)
        if keeper is not None:
            self._saver = Saver(keeper)
            self._saver.failed.connect(self._reporter.tell)
            self._shelf = Shelf(keeper.path.parent)
            self._offer = self._kept(keeper)
        early, self.early = self.early, None
        is_early = early is not None and self._stage is Stage.KEY
        holds = is_early and self._still_holds(early)
        if holds and early is not None and early.choice is not None:
            self._lead = LeadDraft(early.page.couplet, early.choice)
        self.opened.emit()
        if self._hurt_early is not None:
            self.set_up(hurt=self._hurt_early)
        if is_early and not holds:
            self._reporter.note(
                self.tr("The key has changed since it was last opened."),
                self.tr("No answer was given yet. Answer the question as it stands now."),
            )
        elif holds and early is not None and early.choice is not None:
            self.draft_lead(choice=early.choice)
            if early.is_given:
                self.answer()

    def pick_early(self, choice: Choice) -> None:
        """Pick a lead of the first couplet before the key is open."""
        if self.early is not None and not self.early.is_given and choice is not self.early.choice:
            self.early.choice = choice
            self.drafted.emit()

    def answer_early(self) -> None:
        """Mean what is picked as the answer; it is given once the key is open and says the same."""
        if self.early is not None and self.early.choice is not None and not self.early.is_given:
            self.early.is_given = True
            self.drafted.emit()

    def close(self) -> None:
        """Write what is left to keep."""
        if self._printing is not None:
            self._printing.wait()
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
        elif self._stage is Stage.SHORT and self._enquiry is None:
            self.moved.emit()

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
        if self._has_fresh_injury(text):
            self._act(lambda: self.enquiry.set_up(told=text, hurt=True))
            self.emergency.emit()
        else:
            self._act(lambda: self.enquiry.set_up(told=text))

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
            self.leave_seen()

    def cant_tell(self) -> None:
        """Say of the character on the page for things seen that it could not be told, and go on.

        It is kept as a report that leaves every state open, so that it says nothing and is not asked again.
        """
        character = self.keyset.characters[self._seen.character]
        before = self.case
        everything = frozenset(character.state_ids)
        done = self._act(lambda: self.enquiry.report(character.id, everything, view_seen=False))
        if done and before == self.case:
            self.leave_seen()

    def take_back(self, answer: Answer) -> None:
        """Take an answer back altogether."""
        self._act(lambda: self.enquiry.take_back(answer))

    def start_again(self) -> None:
        """Begin a new enquiry; this can be undone."""
        self._asked = None
        self._seen = SeenDraft()
        self._feared = self._feared_said = ""
        self._feared_from = self._asked_from = None
        self._words_shown.clear()
        self._note, self._label, self._checking = NoteDraft(), "", False
        self._act(lambda: self.enquiry.start_again())
        self.show_stage(Stage.HURT)

    def work_out_told(self, told: str) -> None:
        """Begin an enquiry of which nothing is known but what they were told; an older one can be brought back."""
        if self.case != Case():
            self.start_again()
        self.set_told(told)
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

    # Inside ----------------------------------------------------------------------------------

    def _still_holds(self, early: Early | None) -> bool:
        """Whether the first couplet that is on the screen is what the key says now, word for word."""
        from keyapp.gui.first_page import first_page

        couplet = self.reading.current
        if early is None or couplet is None or self._offer is not None:
            return False
        safety = self.words.safety_line(self.reading)
        return early.page == first_page(self.keyset, self.words, couplet, safety, self.language)

    def _on_changed(self) -> None:
        before, self._case_before = self._case_before, self.case
        self._lead = None
        stage = self._stage
        if self.case == Case() and stage is not Stage.SHORT:
            self._stage = Stage.HURT
        elif self._keeps_stage or stage in (Stage.SHORT, Stage.PARKED):
            self._stage = self._still(stage)
        elif before.answers != self.case.answers or before.reopened != self.case.reopened:
            self._stage = self._after_answer(stage)
        elif before.check != self.case.check and stage is Stage.SEEN:
            # The part that did not fit was reported again, and just as before.
            self._stage = self._after_answer(stage)
        elif before.settings.hurt is not self.case.settings.hurt:
            self._stage = Stage.HURT if self.case.settings.hurt is None else stage
            if stage is Stage.HURT and self.case.settings.hurt is not None:
                self._stage = Stage.SETTINGS
        elif before.settings != self.case.settings and stage is not Stage.SETTINGS:
            self._stage = Stage.SETTINGS
        self._save()
        self.changed.emit()
        if stage is not self._stage:
            self.moved.emit()

    def _after_answer(self, stage: Stage) -> Stage:
        """Where an answer leads: back to where its question was taken up, else on along the key."""
        back, self._asked_from = self._asked_from, None
        if stage is Stage.FEARED:
            return stage
        return self._still(back if back is not None else Stage.KEY)

    def _stage_of_case(self) -> Stage:
        if self.case.answers:
            return Stage.KEY if self.reading.current else Stage.RESULT
        return Stage.HURT if self.case.settings.hurt is None else Stage.SETTINGS

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
