"""What a person does on the screen: turning to a part of it, and picking what is not given as an answer yet."""

from __future__ import annotations

from dataclasses import replace

from keyapp.errors import UserError
from keyapp.gui.desk import Desk, Stage
from keyapp.gui.draft import SeenDraft
from keyapp.model import Answer, LeadAnswer, Measurement, Report

__all__ = ["Screen"]


class Screen(Desk):
    """Acts that leave the case as it is. `Session` adds those that change it."""

    def show_stage(self, stage: Stage) -> None:
        """Turn to another part."""
        self._asked_from = None
        if stage is not self._stage:
            self._stage = stage
            self.moved.emit()

    def look_at(self, couplet: str) -> None:
        """Show a couplet, answered or not, with its answer picked; nothing changes until it is given."""
        self._asked = couplet
        self._lead = None
        self._asked_from = None
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
        self._asked_from = None
        self._stage = Stage.SEEN
        self.moved.emit()

    def ask(self, character: str) -> None:
        """Put one question about a character; the answer, or leaving it, leads back to where one is now."""
        self._pick(character)
        self._asked_from = self._stage
        self._stage = Stage.SEEN
        self.moved.emit()

    def leave_seen(self) -> None:
        """Leave the page for things seen without a report: back to where its question was taken up, else on."""
        back = self._asked_from
        if back is None:
            self._go_on()
        else:
            self._asked_from = None
            self.show_stage(self._still(back))

    def open_feared(self) -> None:
        """Turn to the page of a feared animal, from where one is; the animal chosen last is shown again."""
        if self._stage is not Stage.FEARED:
            self._feared_from = self._stage
        self.show_stage(Stage.FEARED)

    def find_feared(self, said: str) -> None:
        """Ask about the animal of this name; where several have it, the page shows them to choose from."""
        from keyapp.wording import feared_called

        if not said.strip():
            return
        try:
            found = feared_called(self.tables, said)
        except UserError as error:
            self._reporter.tell(error)
            return
        if len(found) == 1:
            self.fear_about(found[0].id)
        elif said != self._feared_said:
            self._feared_said = said
            self.moved.emit()

    def fear_about(self, animal: str) -> None:
        """Ask about this animal (id of a danger group or result); an empty id asks which one."""
        if animal != self._feared or self._feared_said:
            self._feared = animal
            self._feared_said = ""
            self.moved.emit()

    def leave_feared(self) -> None:
        """Go back to where one was before; the answers stay."""
        back, self._feared_from = self._feared_from, None
        if back is None:
            self._go_on()
        else:
            self.show_stage(self._still(back))

    def open_families(self) -> None:
        """Turn to the page of all families, from where one is."""
        if self._stage is not Stage.FAMILIES:
            self._families_from = self._stage
        self.show_stage(Stage.FAMILIES)

    def leave_families(self) -> None:
        """Go back to where one was in *Work it out*; the answers stay."""
        if self._stage is Stage.FAMILIES:
            back, self._families_from = self._families_from or Stage.HURT, None
            self.show_stage(self._still(back) if self.is_open else back)

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

    def _still(self, stage: Stage) -> Stage:
        """`stage`, or the result where the key has no couplet left to show."""
        return Stage.RESULT if stage is Stage.KEY and not self._couplet_or_none() else stage

    def _couplet_or_none(self) -> str | None:
        return self.couplet if self._asked else self.reading.current

    def _go_on(self) -> None:
        if self._enquiry is None:
            if self.early is not None:
                self.show_stage(Stage.KEY)
            return
        self._asked = None
        self._lead = None
        self._asked_from = None
        self._stage = Stage.KEY if self.reading.current else Stage.RESULT
        self.moved.emit()

    def _pick(self, character: str) -> None:
        note = self.case.note(character)
        draft = SeenDraft(character)
        if isinstance(note, Report) and not self.words.says_nothing(note):
            draft = SeenDraft(character, note.states, note.both, None, note.sureness, note.evidence, note.view_seen)
        elif isinstance(note, Measurement):
            draft = SeenDraft(character, mm=note.mm, sureness=note.sureness, evidence=note.evidence)
        self._seen = draft
