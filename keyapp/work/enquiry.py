"""The enquiry at hand: one method for each thing a person does, each of which can be undone."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from keyapp.engine import THING, Reading, Tables, read_case, second_look
from keyapp.engine.second_look import SecondLook
from keyapp.errors import UserError
from keyapp.model import (
    Answer,
    Case,
    Choice,
    Evidence,
    LeadAnswer,
    Measurement,
    Report,
    Settings,
    Sureness,
    View,
)
from keyapp.work.names import nearest

__all__ = ["Enquiry"]

Listener = Callable[[], None]


class Enquiry:
    """The state of one enquiry. Views listen to it and hold nothing themselves.

    Every act takes effect whole or not at all: a bad id, state or number raises UserError and
    leaves everything as it was. Listeners are called once for a real change, never otherwise.

    Attributes:
        tables: the key set made ready for the engine.
    """

    def __init__(self, tables: Tables, case: Case | None = None) -> None:
        self.tables = tables
        self._case = case or Case()
        self._undo: list[Case] = []
        self._redo: list[Case] = []
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
        known = {f for f in Settings.__dataclass_fields__}
        for name, value in settings.items():
            if name not in known:
                raise UserError(f"There is no setting “{name}”.", fix=f"Use {nearest(name, known)}.")
            self._check_setting(name, value)
        self._change(replace(self._case, settings=replace(self._case.settings, **settings)))  # type: ignore[arg-type]

    def choose(
        self,
        couplet: str,
        choice: Choice,
        sureness: Sureness = Sureness.SURE,
        evidence: Evidence | None = None,
        view_seen: bool | None = None,
    ) -> None:
        """Answer a couplet, or change the answer to it.

        `view_seen` says whether the side a lead speaks of was in view; it must be given where
        the chosen lead says that something is not there. Without it in view the answer adds
        nothing.
        """
        if couplet not in self.tables.keyset.couplets:
            raise UserError(
                f"There is no couplet “{couplet}”.", fix=f"Use {nearest(couplet, self.tables.keyset.couplets)}."
            )
        if self.lead_needs_view(couplet, choice) is not None and view_seen is None:
            raise UserError(
                "This lead says that something is not there.",
                where=couplet,
                fix="Say whether the side it speaks of was in view (view_seen).",
            )
        seen = True if view_seen is None else view_seen
        kind = evidence or self._case.settings.evidence
        self._change(self._case.with_answer(LeadAnswer(couplet, choice, sureness, kind, seen)))

    def report(
        self,
        character: str,
        states: frozenset[str],
        *,
        both: bool = False,
        sureness: Sureness = Sureness.SURE,
        evidence: Evidence | None = None,
        view_seen: bool | None = None,
    ) -> None:
        """Report a character directly; it takes the place of an earlier report of it."""
        characters = self.tables.keyset.characters
        if character not in characters:
            raise UserError(f"There is no character “{character}”.", fix=f"Use {nearest(character, characters)}.")
        found = characters[character]
        if found.number:
            raise UserError(f"“{character}” is a size.", fix="Give it in mm (measure).")
        unknown = sorted(set(states) - set(found.state_ids))
        if unknown or not states:
            wrong = f"“{character}” has no state “{unknown[0]}”." if unknown else f"No state of “{character}” is given."
            fix = nearest(unknown[0], found.state_ids) if unknown else ", ".join(found.state_ids)
            raise UserError(wrong, fix=f"Use {fix}.")
        absent = any(found.state(s).absence for s in states)
        if absent and found.view is not View.ANY and view_seen is None:
            raise UserError(
                "“Not there” can only be reported when that side was seen.",
                where=character,
                fix=f"Say whether the view “{found.view}” was seen (view_seen).",
            )
        kind = evidence or self._case.settings.evidence
        seen = True if view_seen is None else view_seen
        self._change(self._case.with_answer(Report(character, frozenset(states), both, sureness, kind, seen)))

    def measure(
        self,
        character: str,
        mm: float,
        *,
        spread: float | None = None,
        sureness: Sureness = Sureness.SURE,
        evidence: Evidence | None = None,
    ) -> None:
        """Report a size in mm. `spread`: standard deviation of its natural log, where measured."""
        characters = self.tables.keyset.characters
        found = characters.get(character)
        if found is None or found.number is None:
            numeric = [c.id for c in characters.values() if c.number]
            raise UserError(f"“{character}” is not a size.", fix=f"Use {nearest(character, numeric)}.")
        least, most = found.number.least, found.number.most
        if not isinstance(mm, int | float) or isinstance(mm, bool) or not least <= mm <= most:
            given = str(mm)[:20]
            raise UserError(f"{given} mm is out of range.", where=character, fix=f"Give {least:g} to {most:g} mm.")
        if spread is not None and not 0 < spread <= 2:
            raise UserError(f"A spread of {spread} is out of range.", where=character, fix="Give more than 0, up to 2.")
        kind = evidence or self._case.settings.evidence
        self._change(self._case.with_answer(Measurement(character, float(mm), spread, sureness, kind)))

    def take_back(self, answer: Answer) -> None:
        """Take an answer back altogether."""
        self._change(self._case.without(answer))

    def reopen(self, couplet: str) -> None:
        """Ask a couplet again: drop its answer, or open one that was passed."""
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

    def _check_setting(self, name: str, value: object) -> None:
        keyset = self.tables.keyset
        if value is None and name != "told" and name != "evidence":
            return
        choices: dict[str, tuple[str, ...]] = {
            "spot": tuple(keyset.spots),
            "region": (*keyset.regions, *(s for r in keyset.regions.values() for s in r.states)),
            "thing": keyset.characters[THING].state_ids if THING in keyset.characters else (),
            "asker": ("caller", "gardener", "class", "staff"),
            "evidence": tuple(str(e) for e in Evidence),
        }
        if name in choices and value not in choices[name]:
            raise UserError(f"“{value}” is not a {name} of this key.", fix=f"Use {nearest(str(value), choices[name])}.")
        if name == "month" and not (isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= 12):
            raise UserError(f"“{value}” is not a month.", fix="Give a whole number from 1 to 12.")
        if name == "hurt" and not isinstance(value, bool):
            raise UserError(f"“{value}” is not an answer to “is anyone hurt”.", fix="Give true or false.")
        if name == "told" and not isinstance(value, str):
            raise UserError("What you were told must be text.", fix="Put it in quotation marks.")

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
