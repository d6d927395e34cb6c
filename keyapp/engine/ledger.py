"""The ledger: which answers count, each character once, and where they disagree."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from keyapp.engine.likelihood import (
    contradicts_lead,
    contradicts_report,
    couplet_right,
    error_chance,
    lead_chances,
    number_chance,
    report_chance,
)
from keyapp.engine.tables import Bools, Floats, Tables
from keyapp.model import Answer, Choice, Evidence, Lead, LeadAnswer, Measurement, Report, Sureness

__all__ = ["Contradiction", "Event", "asserted", "contradictions", "events", "known_states", "lead_of", "report_event"]


@dataclass(frozen=True, slots=True)
class Event:
    """One answer as evidence.

    Attributes:
        answers: the answers it comes from; several where leads of more than one couplet speak of
            the same character.
        characters: characters it speaks of.
        groups: independence groups of these characters.
        logs: O x H, log chance of the answer by level of observer and hypothesis.
        against: H, hypotheses whose own description it contradicts.
        may_clear: it is sure, says that something is there, and no character of it is one
            that never clears; only such answers can help to rule a danger out.
        inapplicable: H, hypotheses to which it does not apply.
    """

    answers: tuple[Answer, ...]
    characters: tuple[str, ...]
    groups: frozenset[str]
    logs: Floats
    against: Bools
    may_clear: bool
    inapplicable: Bools

    @property
    def evidence(self) -> Evidence:
        """The weakest kind of evidence among its answers."""
        kinds = list(Evidence)
        return min((answer.evidence for answer in self.answers), key=kinds.index)


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Two answers that cannot both be right about one character."""

    character: str
    first: Answer
    second: Answer


def lead_of(tables: Tables, answer: LeadAnswer) -> Lead | None:
    """The lead an answer chose, or None for *can't tell* and *neither fits*."""
    couplet = tables.keyset.couplets.get(answer.couplet)
    if couplet is None or answer.choice not in (Choice.FIRST, Choice.SECOND):
        return None
    return couplet.leads[0 if answer.choice is Choice.FIRST else 1]


def events(tables: Tables, answers: Sequence[Answer]) -> tuple[Event, ...]:
    """Turn the answers that count into events, in the order given.

    Each character has one entry: a direct report replaces what a lead says of it, and leads of
    several couplets that speak of it alone meet in what they leave open together. Where they
    leave nothing open, they stay apart. *Can't tell*, and an absence reported without the view
    having been seen, add nothing.
    """
    noted = frozenset(a.character for a in answers if not isinstance(a, LeadAnswer) and _is_informative(tables, a))
    meeting: dict[str, list[LeadAnswer]] = {}
    for answer in answers:
        name = _sole_character(tables, answer)
        if name is not None and name not in noted and isinstance(answer, LeadAnswer):
            meeting.setdefault(name, []).append(answer)
    found: list[Event] = []
    for answer in answers:
        name = _sole_character(tables, answer)
        if name in meeting and answer in meeting[name]:
            found += _met(tables, name, meeting.pop(name))
        elif name is None or name not in {c for event in found for c in event.characters}:
            event = _event(tables, answer, noted)
            if event is not None:
                found.append(event)
    return tuple(found)


def _sole_character(tables: Tables, answer: Answer) -> str | None:
    """The character of an answered couplet whose leads speak of no other; None for any other answer."""
    lead = lead_of(tables, answer) if isinstance(answer, LeadAnswer) else None
    if lead is None or not isinstance(answer, LeadAnswer) or not _is_informative(tables, answer):
        return None
    held = {c for one in tables.keyset.couplets[answer.couplet].leads for c in one.holds}
    return next(iter(held)) if len(held) == 1 else None


def _met(tables: Tables, name: str, answers: Sequence[LeadAnswer]) -> list[Event]:
    """One event for all the leads chosen about one character, or one for each where they disagree."""
    sets = [lead.holds[name] for lead in (lead_of(tables, answer) for answer in answers) if lead is not None]
    left = frozenset.intersection(*sets)
    if not left:
        return [event for answer in answers for event in _met(tables, name, [answer])]
    key = ("met", name, tuple(answers))
    if key not in tables.memo:
        sureness = max((a.sureness for a in answers), key=list(Sureness).index)
        evidence = min((a.evidence for a in answers), key=list(Evidence).index)
        report = Report(name, left, sureness=sureness, evidence=evidence)
        tables.remember(key, report_event(tables, report, tuple(answers)))
    return [tables.memo[key]]  # type: ignore[list-item]


def _is_informative(tables: Tables, answer: Answer) -> bool:
    if isinstance(answer, LeadAnswer):
        if answer.choice is Choice.CANT_TELL:
            return False
        return answer.view_seen or not _asserts_absence(tables, answer)
    if isinstance(answer, Report):
        table = tables.characters[answer.character]
        missing = any(table.character.state(s).absence for s in answer.states)
        return (answer.view_seen or not missing) and len(answer.states) < len(table.character.states)
    return True


def _asserts_absence(tables: Tables, answer: LeadAnswer) -> bool:
    lead = lead_of(tables, answer)
    if lead is None:
        return False
    return any(tables.characters[c].character.state(s).absence for c, states in lead.holds.items() for s in states)


def _event(tables: Tables, answer: Answer, noted: frozenset[str]) -> Event | None:
    if not _is_informative(tables, answer):
        return None
    if isinstance(answer, LeadAnswer):
        # What is noted of other things is of no matter here; left in, it would make an event of its own each time.
        noted = noted & {c for lead in tables.keyset.couplets[answer.couplet].leads for c in lead.holds}
    key = (answer, noted if isinstance(answer, LeadAnswer) else frozenset())
    if key in tables.memo:
        return tables.memo[key]  # type: ignore[return-value]
    if isinstance(answer, LeadAnswer):
        event = _lead_event(tables, answer, noted)
    elif isinstance(answer, Report):
        event = report_event(tables, answer)
    else:
        event = _number_event(tables, answer)
    tables.remember(key, event)
    return event


def report_event(tables: Tables, answer: Report, leads: tuple[Answer, ...] = ()) -> Event:
    """A direct report as evidence; or what `leads` chosen in the key come to, taken as one."""
    table = tables.characters[answer.character]
    character = table.character
    chances = [report_chance(table, answer, o.factor, tables.weights) for o in tables.weights.observers]
    if leads:
        # A couplet that does not apply is answered at random: either lead, or neither fits.
        chances = [np.where(table.applies, chance, 1.0 / 3.0) for chance in chances]
    logs = np.log(chances)
    absent = any(character.state(s).absence for s in answer.states)
    return Event(
        leads or (answer,),
        (character.id,),
        frozenset({character.group}),
        logs,
        contradicts_report(table, answer),
        answer.sureness is Sureness.SURE and not absent and not character.never_clears,
        ~table.applies,
    )


def _number_event(tables: Tables, answer: Measurement) -> Event:
    character = tables.keyset.characters[answer.character]
    logs = np.log([number_chance(tables, answer, o.factor) for o in tables.weights.observers])
    nothing = np.zeros(len(tables.rows), dtype=bool)
    applies = tables.size_applies[answer.character]
    return Event((answer,), (character.id,), frozenset({character.group}), logs, nothing, False, ~applies)


def _lead_event(tables: Tables, answer: LeadAnswer, noted: frozenset[str]) -> Event | None:
    couplet = tables.keyset.couplets[answer.couplet]
    held = {c for lead in couplet.leads for c in lead.holds}
    left = tuple(sorted(held - noted))
    if not left:
        return None
    without = frozenset(held & noted)
    right = couplet_right(tables, couplet, without)
    logs = np.log(
        [
            lead_chances(
                tables,
                couplet,
                answer.choice,
                error_chance(right, answer.sureness, answer.evidence, o.factor, tables.weights),
                without,
            )
            for o in tables.weights.observers
        ]
    )
    characters = [tables.characters[c] for c in left]
    lead = lead_of(tables, answer)
    against = np.zeros(len(tables.rows), dtype=bool)
    may_clear = False
    if lead is not None:
        against = contradicts_lead(tables, lead.holds, without)
        may_clear = (
            answer.sureness is Sureness.SURE
            and not _asserts_absence(tables, answer)
            and not any(t.character.never_clears for t in characters)
        )
    inapplicable = ~np.all([t.applies for t in characters], axis=0)
    groups = frozenset(t.character.group for t in characters)
    return Event((answer,), left, groups, logs, against, may_clear, inapplicable)


def asserted(tables: Tables, answer: Answer) -> dict[str, frozenset[str]]:
    """Character -> states that an answer says are there (one of them at least)."""
    if isinstance(answer, Report):
        return {answer.character: answer.states} if _is_informative(tables, answer) else {}
    if isinstance(answer, LeadAnswer):
        lead = lead_of(tables, answer)
        return dict(lead.holds) if lead is not None and _is_informative(tables, answer) else {}
    return {}


def known_states(tables: Tables, answers: Sequence[Answer]) -> dict[str, frozenset[str]]:
    """What *sure* answers settle: character -> states still open. Reports come before leads."""
    known: dict[str, frozenset[str]] = {}
    reports = [a for a in answers if isinstance(a, Report)]
    leads = [a for a in answers if isinstance(a, LeadAnswer)]
    settled = {a.character for a in reports}
    ordered: list[Report | LeadAnswer] = [*reports, *leads]
    for answer in ordered:
        if answer.sureness is not Sureness.SURE:
            continue
        for character, states in asserted(tables, answer).items():
            if isinstance(answer, LeadAnswer) and character in settled:
                continue
            both = known.get(character, states) & states
            known[character] = both or states
    return known


def contradictions(tables: Tables, answers: Sequence[Answer]) -> tuple[Contradiction, ...]:
    """Pairs of answers that say different things of one character, in order."""
    said = [(answer, asserted(tables, answer)) for answer in answers]
    found = []
    for i, (first, one) in enumerate(said):
        for second, other in said[i + 1 :]:
            for character in sorted(one.keys() & other.keys()):
                if not one[character] & other[character]:
                    found.append(Contradiction(character, first, second))
    return tuple(found)
