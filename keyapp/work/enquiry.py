"""The enquiry at hand: one method for each thing a person does, each of which can be undone."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from keyapp.engine import Reading, Tables, read_case, second_look
from keyapp.engine.second_look import SecondLook
from keyapp.errors import UserError
from keyapp.model import (
    Answer,
    Case,
    Choice,
    Evidence,
    FinalCheck,
    LeadAnswer,
    Measurement,
    Report,
    Sureness,
    View,
    check_answer,
    check_case,
    check_final,
    check_setting,
    word_of,
)
from keyapp.work.names import nearest

__all__ = ["Enquiry"]

Listener = Callable[[], None]


class Enquiry:
    """The state of one enquiry. Views listen to it and hold nothing themselves.

    Every act takes effect whole or not at all: a bad id, word, state or number raises UserError and
    leaves everything as it was. Listeners are called once for a real change, never otherwise.
    Words may be given as plain text (`"first"`, `"think-so"`, `"photo"`).

    Attributes:
        tables: the key set made ready for the engine.
    """

    def __init__(
        self, tables: Tables, case: Case | None = None, undo: Iterable[Case] = (), redo: Iterable[Case] = ()
    ) -> None:
        """Begin with `case`, or with nothing, and with the steps to undo and redo, oldest first.

        Raises UserError where the key cannot take one of the cases.
        """
        for one in (*([case] if case is not None else []), *undo, *redo):
            check_case(tables.keyset, one)
        self.tables = tables
        self._case = case or Case()
        self._undo: list[Case] = list(undo)
        self._redo: list[Case] = list(redo)
        self._listeners: list[Listener] = []
        self._reading: Reading | None = None

    @property
    def case(self) -> Case:
        """The case as it stands."""
        return self._case

    @property
    def reading(self) -> Reading:
        """What the engine makes of the case; worked out once per change."""
        if self._reading is None:
            self._reading = read_case(self.tables, self._case)
        return self._reading

    @property
    def second_look(self) -> tuple[SecondLook, ...]:
        """Answers to check again before anything reassuring is said."""
        return second_look(self.tables, self.reading)

    @property
    def history(self) -> tuple[tuple[Case, ...], tuple[Case, ...]]:
        """The cases to go back to, and those to come forward to, the nearest last."""
        return tuple(self._undo), tuple(self._redo)

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to undo."""
        return bool(self._undo)

    @property
    def can_redo(self) -> bool:
        """Whether there is a step to do again."""
        return bool(self._redo)

    def listen(self, listener: Listener) -> None:
        """Call `listener` after every change."""
        self._listeners.append(listener)

    # Acts ----------------------------------------------------------------------------------

    def set_up(self, **settings: object) -> None:
        """Change settings by name: hurt, thing, spot, region, month, asker, told, evidence."""
        for name, value in settings.items():
            check_setting(self.tables.keyset, name, value)
        if "evidence" in settings:
            settings["evidence"] = word_of(Evidence, "evidence", settings["evidence"])
        self._change(replace(self._case, settings=replace(self._case.settings, **settings)))  # type: ignore[arg-type]

    def choose(
        self,
        couplet: str,
        choice: Choice | str,
        sureness: Sureness | str = Sureness.SURE,
        evidence: Evidence | str | None = None,
        view_seen: bool | None = None,
    ) -> None:
        """Answer a couplet, or change the answer to it.

        `view_seen` says whether the side a lead speaks of was in view; it must be given where
        the chosen lead says that something is not there. Without it in view the answer adds
        nothing.
        """
        seen = True if view_seen is None else view_seen
        chosen = word_of(Choice, "choice", choice)
        answer = LeadAnswer(couplet, chosen, word_of(Sureness, "sureness", sureness), self._kind(evidence), seen)
        check_answer(self.tables.keyset, answer)
        if self.lead_needs_view(couplet, chosen) is not None and view_seen is None:
            raise UserError(
                "This lead says that something is not there.",
                where=couplet,
                fix="Say whether the side it speaks of was in view (view_seen).",
            )
        self._change(self._case.with_answer(answer))

    def report(
        self,
        character: str,
        states: Iterable[str],
        *,
        both: bool = False,
        sureness: Sureness | str = Sureness.SURE,
        evidence: Evidence | str | None = None,
        view_seen: bool | None = None,
    ) -> None:
        """Report a character directly; it takes the place of an earlier report of it."""
        seen = True if view_seen is None else view_seen
        answer = Report(
            character, _as_set(states), both, word_of(Sureness, "sureness", sureness), self._kind(evidence), seen
        )
        check_answer(self.tables.keyset, answer)
        found = self.tables.keyset.characters[character]
        absent = any(found.state(s).absence for s in answer.states)
        if absent and found.view is not View.ANY and view_seen is None:
            raise UserError(
                "“Not there” can only be reported when that side was seen.",
                where=character,
                fix=f"Say whether the view “{found.view}” was seen (view_seen).",
            )
        self._change(self._case.with_answer(answer))

    def measure(
        self,
        character: str,
        mm: float,
        *,
        spread: float | None = None,
        sureness: Sureness | str = Sureness.SURE,
        evidence: Evidence | str | None = None,
    ) -> None:
        """Report a size in mm. `spread`: standard deviation of its natural log, where measured."""
        answer = Measurement(character, mm, spread, word_of(Sureness, "sureness", sureness), self._kind(evidence))
        check_answer(self.tables.keyset, answer)
        self._change(self._case.with_answer(replace(answer, mm=float(mm))))

    def rest_on(self, answer: Answer, evidence: Evidence | str) -> None:
        """Say anew what kind of evidence an answer rests on; without effect where it was never given."""
        kind = word_of(Evidence, "evidence", evidence)
        answers = tuple(replace(old, evidence=kind) if old == answer else old for old in self._case.answers)
        self._change(replace(self._case, answers=answers))

    def check_fit(self, taxon: str, fits: bool, part: str = "") -> None:
        """Say whether a result, held against the animal, fits; `part` is the character that does not.

        "Not quite" lowers the claim to "one of these" until that part is reported again (`Case`).
        """
        check = FinalCheck(taxon, fits, part)
        check_final(self.tables.keyset, check)
        self._change(replace(self._case, check=check))

    def drop_check(self) -> None:
        """Take the final check back."""
        self._change(replace(self._case, check=None))

    def take_back(self, answer: Answer) -> None:
        """Take an answer back altogether; without effect where it was never given."""
        self._change(self._case.without(answer))

    def reopen(self, couplet: str) -> None:
        """Ask a couplet again: drop its answer, or open one that was passed."""
        couplets = self.tables.keyset.couplets
        if not isinstance(couplet, str) or couplet not in couplets:
            name = str(couplet)
            raise UserError(f"There is no couplet “{name}”.", where="couplet", fix=f"Use {nearest(name, couplets)}.")
        old = self._case.lead_answer(couplet)
        case = self._case.without(old) if old else self._case
        self._change(replace(case, reopened=case.reopened | {couplet}))

    def back(self) -> str | None:
        """Take back the last couplet answer on the way; returns its couplet, or None."""
        given = [a for a in self._case.answers if isinstance(a, LeadAnswer)]
        if not given:
            return None
        last = given[-1]
        self._change(self._case.without(last))
        return last.couplet

    def start_again(self) -> None:
        """Begin a new enquiry; this can be undone as well."""
        self._change(Case())

    def undo(self) -> bool:
        """Undo the last change; False if there is none."""
        return self._swap(self._undo, self._redo)

    def redo(self) -> bool:
        """Do the last undone change again; False if there is none."""
        return self._swap(self._redo, self._undo)

    # Questions about the state ---------------------------------------------------------------

    def lead_needs_view(self, couplet: str, choice: Choice) -> View | None:
        """The side that must have been in view for this choice, or None where none need be.

        Only leads that say that something is not there need one.
        """
        if choice not in (Choice.FIRST, Choice.SECOND):
            return None
        lead = self.tables.keyset.couplets[couplet].leads[0 if choice is Choice.FIRST else 1]
        for character_id, states in lead.holds.items():
            character = self.tables.keyset.characters[character_id]
            if character.view is not View.ANY and any(character.state(s).absence for s in states):
                return character.view
        return None

    def _kind(self, evidence: Evidence | str | None) -> Evidence:
        return self._case.settings.evidence if evidence is None else word_of(Evidence, "evidence", evidence)

    def _change(self, case: Case) -> None:
        if case == self._case:
            return
        self._undo.append(self._case)
        self._redo.clear()
        self._put(case)

    def _swap(self, source: list[Case], target: list[Case]) -> bool:
        if not source:
            return False
        target.append(self._case)
        self._put(source.pop())
        return True

    def _put(self, case: Case) -> None:
        self._case = case
        self._reading = None
        for listener in self._listeners:
            listener()


def _as_set(states: object) -> frozenset[str]:
    """States as a set, where they are several texts; anything else is left for the check to refuse."""
    if isinstance(states, frozenset | set | list | tuple) and all(isinstance(state, str) for state in states):
        return frozenset(states)
    return states  # type: ignore[return-value]
