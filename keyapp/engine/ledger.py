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
from keyapp.model import Answer, Choice, Lead, LeadAnswer, Measurement, Report, Sureness

__all__ = ["Contradiction", "Event", "asserted", "contradictions", "events", "known_states", "lead_of", "report_event"]


@dataclass(frozen=True, slots=True)
class Event:
    """One answer as evidence.

    Attributes:
        answer: the answer it comes from.
        characters: characters it speaks of.
        groups: independence groups of these characters.
        logs: O x H, log chance of the answer by level of observer and hypothesis.
        against: H, hypotheses whose own description it contradicts.
        may_clear: it is sure, says that something is there, and no character of it is one
            that never clears; only such answers can help to rule a danger out.
        inapplicable: H, hypotheses to which it does not apply.
    """

    answer: Answer
    characters: tuple[str, ...]
    groups: frozenset[str]
    logs: Floats
    against: Bools
    may_clear: bool
    inapplicable: Bools


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

    A direct report replaces what a lead says of the same character. *Can't tell*, and an
    absence reported without the view having been seen, add nothing.
    """
    noted = frozenset(a.character for a in answers if not isinstance(a, LeadAnswer) and _is_informative(tables, a))
    found = []
    for answer in answers:
        event = _event(tables, answer, noted)
        if event is not None:
            found.append(event)
    return tuple(found)


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
    key = (answer, noted if isinstance(answer, LeadAnswer) else frozenset())
    if key in tables.memo:
        return tables.memo[key]  # type: ignore[return-value]
    if isinstance(answer, LeadAnswer):
        event = _lead_event(tables, answer, noted)
    elif isinstance(answer, Report):
        event = report_event(tables, answer)
    else:
        event = _number_event(tables, answer)
    tables.memo[key] = event
    return event


def report_event(tables: Tables, answer: Report) -> Event:
    """A direct report as evidence."""
    table = tables.characters[answer.character]
    character = table.character
    logs = np.log([report_chance(table, answer, o.factor, tables.weights) for o in tables.weights.observers])
    absent = any(character.state(s).absence for s in answer.states)
    return Event(
        answer,
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
    return Event(answer, (character.id,), frozenset({character.group}), logs, nothing, False, ~applies)


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
    return Event(answer, left, groups, logs, against, may_clear, inapplicable)


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
