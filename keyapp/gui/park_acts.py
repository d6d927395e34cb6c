"""Putting an enquiry aside, and taking one up again, on the screen."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from keyapp.errors import ProgramError, UserError
from keyapp.gui.carry_on import usable
from keyapp.gui.desk import Stage
from keyapp.gui.draft import NoteDraft, SeenDraft
from keyapp.gui.note_acts import NoteActs
from keyapp.model import Case

if TYPE_CHECKING:
    from keyapp.work.parked import Parked, Place

__all__ = ["ParkActs"]

_PAGES = frozenset({Stage.HURT, Stage.SETTINGS, Stage.KEY, Stage.SEEN, Stage.FEARED, Stage.RESULT, Stage.SHORT})
"""Pages of an enquiry, to come back to."""


class ParkActs(NoteActs):
    """Several enquiries open at once: one at hand, the others put aside."""

    @property
    def parked(self) -> tuple[Parked, ...]:
        """What is put aside, longest first; read from disk when it is first asked for."""
        if self._parked is None:
            self._parked = ()
            if self._shelf is not None:
                self._parked, problems = self._shelf.all()
                for problem in problems:
                    self._reporter.tell(problem)
        return self._parked

    @property
    def can_put_back(self) -> bool:
        """Whether the enquiry let go last can be brought back."""
        return self._let_go is not None

    def open_parked(self) -> None:
        """Turn to what is put aside, from where one is."""
        if self._stage is not Stage.PARKED:
            self._parked_from = self._stage
        self.show_stage(Stage.PARKED)

    def leave_parked(self) -> None:
        """Go back to the enquiry at hand."""
        back, self._parked_from = self._parked_from, None
        self.show_stage(self._still(back) if back is not None else self._stage_of_case())

    def type_label(self, label: str) -> None:
        """Take the label as it is typed; words of injury in it open the card."""
        self._label_typed = label
        self.heed(label)

    def park(self, label: str) -> bool:
        """Put the enquiry at hand aside under a label and begin a new one; False where the label will not do."""
        from keyapp.work.parked import MOST_PARKED, check_label

        if self._enquiry is None or not self._is_worth_keeping():
            return False
        try:
            plain = check_label(label)
            if len(self.parked) >= MOST_PARKED:
                raise UserError("Too many enquiries are put aside.", where=str(MOST_PARKED), fix="Let go of one first.")
        except UserError as error:
            self._reporter.tell(error)
            return False
        self._put_aside(plain)
        self._begin(Case())
        self._label = ""
        self._stage = Stage.HURT
        self.changed.emit()
        self.moved.emit()
        return True

    def take_up(self, parked_id: str) -> None:
        """Come back to an enquiry exactly where it was; the one at hand is put aside."""
        found = next((one for one in self.parked if one.id == parked_id), None)
        if found is None or self._enquiry is None:
            return
        swapped = self._is_worth_keeping()
        name = self._label or self.words.fixed("park.unnamed")
        if swapped:
            self._put_aside(self._label)
        self._parked = tuple(one for one in self.parked if one.id != parked_id)
        dropped = self._restore(found)
        self._label = found.label
        self._come_back(found.id, found.place)
        self._forget(parked_id)
        self.changed.emit()
        self.moved.emit()
        lines = [self.words.fixed("park.swapped", label=name)] if swapped else []
        if dropped:
            lines = [self.words.fixed("park.history-gone"), "; ".join(dropped), *lines]
        elif found.lost:
            lines.append(self.words.fixed("park.history-some", count=str(found.lost)))
        if lines:
            self._reporter.note(lines[0], " ".join(lines[1:]))

    def let_go(self, parked_id: str) -> None:
        """Let go of an enquiry that is put aside; the last one let go can be put back."""
        found = next((one for one in self.parked if one.id == parked_id), None)
        if found is not None:
            self._let_go = found
            self._parked = tuple(one for one in self.parked if one.id != parked_id)
            self._forget(parked_id)
            self.moved.emit()

    def put_back(self) -> None:
        """Bring back the enquiry that was let go last."""
        if self._let_go is not None:
            found, self._let_go = self._let_go, None
            self._keep_parked(found)
            self.moved.emit()

    # Inside ----------------------------------------------------------------------------------

    def _is_worth_keeping(self) -> bool:
        return self.case != Case()

    def _put_aside(self, label: str) -> None:
        from keyapp.work.parked import Parked, fresh_id

        undo, redo = self.enquiry.history
        place = self._place_now()
        dangers = tuple(one.group for one in self.reading.not_ruled_out)
        is_clear = not dangers and "keep-away" not in self.reading.verdict.actions
        now = datetime.datetime.now(datetime.UTC)
        made = Parked(fresh_id(), label, now, self.case, place, undo, redo, 0, dangers, is_clear).trimmed()
        self._left[made.id] = (self._lead, self._seen, self._note, self._asked_from)
        self._keep_parked(made)

    def _place_now(self) -> Place:
        from keyapp.work.parked import Place

        stage = self._stage if self._stage in _PAGES else self._parked_from or self._stage_of_case()
        if stage not in _PAGES:
            stage = self._stage_of_case()
        about = {Stage.KEY: self._asked or "", Stage.SEEN: self._seen.character, Stage.FEARED: self._feared}
        return Place(str(stage), about.get(stage, ""))

    def _keep_parked(self, parked: Parked) -> None:
        self._parked = tuple(sorted((*self.parked, parked), key=lambda one: (one.since, one.id)))
        if self._saver is not None and self._shelf is not None:
            shelf = self._shelf
            self._saver.do(lambda: shelf.put(parked))

    def _forget(self, parked_id: str) -> None:
        if self._saver is not None and self._shelf is not None:
            shelf = self._shelf
            self._saver.do(lambda: shelf.remove(parked_id))

    def _restore(self, found: Parked) -> tuple[str, ...]:
        """Make it the enquiry at hand; returns what of it this key does not know."""
        try:
            self._begin(found.case, found.undo, found.redo)
        except UserError:
            case, dropped = usable(found.case, self.tables)
            self._begin(case)
            return dropped
        return ()

    def _begin(self, case: Case, undo: tuple[Case, ...] = (), redo: tuple[Case, ...] = ()) -> None:
        fresh = type(self.enquiry)(self.tables, case, undo, redo)
        fresh.listen(self._on_changed)
        self._enquiry = fresh
        self._case_before = case
        self._asked = self._lead = self._asked_from = self._feared_from = self._short_from = None
        self._seen, self._note = SeenDraft(), NoteDraft()
        self._feared = self._feared_said = self._label_typed = ""
        self._short_most = 0
        self._checking = False
        self._words_shown.clear()
        self._save()

    def _come_back(self, parked_id: str, place: Place) -> None:
        lead, seen, note, asked_from = self._left.pop(parked_id, (None, SeenDraft(), NoteDraft(), None))
        about = place.about
        self._stage = Stage(place.page) if place.page in set(Stage) else self._stage_of_case()
        if self._stage is Stage.KEY and about in self.keyset.couplets:
            self._asked = about
        elif self._stage is Stage.SEEN and about in self.keyset.characters:
            self._pick(about)
        elif self._stage is Stage.FEARED and (about in self.keyset.danger_groups or about in self.keyset.taxa):
            self._feared = about
        self._stage = self._still(self._stage)
        self._lead, self._note, self._asked_from = lead, note, asked_from
        if seen.character and seen.character == self._seen.character:
            self._seen = seen

    # Given by the session ------------------------------------------------------------------------

    def _on_changed(self) -> None:
        raise ProgramError("the session gives _on_changed")

    def _stage_of_case(self) -> Stage:
        raise ProgramError("the session gives _stage_of_case")

    def _save(self) -> None:
        raise ProgramError("the session gives _save")
