"""Where an observer stands in the key: what is answered, what is passed, what is open."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from keyapp.engine.tables import Tables
from keyapp.model import Case, Choice, Couplet, KeySet, Lead, LeadAnswer, Sureness, TargetKind

__all__ = ["Step", "StepKind", "Walk", "reachable", "walk"]


class StepKind(StrEnum):
    """How a couplet was dealt with."""

    ANSWERED = "answered"
    PASSED = "passed"
    BOTH = "both"


@dataclass(frozen=True, slots=True)
class Step:
    """One couplet on the way: answered, passed because answers settle it, or followed both ways."""

    couplet: str
    kind: StepKind
    choice: Choice
    answer: LeadAnswer | None


@dataclass(frozen=True, slots=True)
class Walk:
    """The way through the key so far.

    Attributes:
        steps: couplets dealt with, in order from the start.
        open: couplets still to be answered, in the order they were reached.
        ends: taxa the key has led to.
        set_aside: answers kept but not on the present way, so not counted.
    """

    steps: tuple[Step, ...]
    open: tuple[str, ...]
    ends: tuple[str, ...]
    set_aside: tuple[LeadAnswer, ...]

    @property
    def answers(self) -> tuple[LeadAnswer, ...]:
        """The couplet answers on the way."""
        return tuple(step.answer for step in self.steps if step.answer is not None)


def walk(tables: Tables, case: Case, known: Mapping[str, frozenset[str]]) -> Walk:
    """Follow the key from its start with the answers of `case`.

    `known` holds what sure direct reports settle (character -> states): a couplet that it
    settles is passed unless it was opened again. *Can't tell* and *neither fits* go on along
    both leads.
    """
    keyset = tables.keyset
    couplets = tables.keyset.couplets
    given = {a.couplet: a for a in case.answers if isinstance(a, LeadAnswer)}
    settled = dict(known)
    steps: list[Step] = []
    open_: list[str] = []
    ends: list[str] = []
    seen: set[str] = set()
    pending = [keyset.keys[keyset.start].start]
    while pending:
        couplet = couplets[pending.pop(0)]
        if couplet.id in seen:
            continue
        seen.add(couplet.id)
        answer = given.get(couplet.id)
        passed = None if answer or couplet.id in case.reopened else _settled_by(couplet, settled)
        if answer is None and passed is None:
            open_.append(couplet.id)
            continue
        choice = answer.choice if answer else passed or Choice.CANT_TELL
        both = choice in (Choice.CANT_TELL, Choice.NEITHER)
        kind = StepKind.BOTH if both else StepKind.ANSWERED if answer else StepKind.PASSED
        steps.append(Step(couplet.id, kind, choice, answer))
        followed = couplet.leads if both else (couplet.leads[0 if choice is Choice.FIRST else 1],)
        if answer and not both and answer.sureness is Sureness.SURE:
            for character, states in followed[0].holds.items():
                settled.setdefault(character, states)
        for lead in followed:
            target = _target(keyset, lead)
            if lead.to.kind is TargetKind.TAXON:
                if target not in ends:
                    ends.append(target)
            else:
                pending.append(target)
    on_way = {step.couplet for step in steps}
    aside = tuple(answer for couplet_id, answer in given.items() if couplet_id not in on_way)
    return Walk(tuple(steps), tuple(open_), tuple(ends), aside)


def _target(keyset: KeySet, lead: Lead) -> str:
    return keyset.keys[lead.to.id].start if lead.to.kind is TargetKind.KEY else lead.to.id


def _settled_by(couplet: Couplet, known: Mapping[str, frozenset[str]]) -> Choice | None:
    """The lead that what is known settles, or None.

    All that the lead asserts must be known, and something the other asserts must be excluded.
    """
    for choice, lead, other in (
        (Choice.FIRST, couplet.leads[0], couplet.leads[1]),
        (Choice.SECOND, couplet.leads[1], couplet.leads[0]),
    ):
        holds = all(known.get(c) and known[c] <= states for c, states in lead.holds.items())
        excluded = any(known.get(c) and not known[c] & states for c, states in other.holds.items())
        if holds and excluded:
            return choice
    return None


def reachable(tables: Tables, couplet_id: str) -> frozenset[str]:
    """Ids of the taxa that can be reached from a couplet, however it is answered."""
    memo = tables.memo.setdefault("reachable", {})
    assert isinstance(memo, dict)
    couplets = tables.keyset.couplets
    stack = [couplet_id]
    while stack:
        current = stack[-1]
        if current in memo:
            stack.pop()
            continue
        leads = couplets[current].leads
        missing = [
            t
            for lead in leads
            if lead.to.kind is not TargetKind.TAXON
            for t in [_target(tables.keyset, lead)]
            if t not in memo
        ]
        if missing:
            stack.extend(missing)
            continue
        found: set[str] = set()
        for lead in leads:
            target = _target(tables.keyset, lead)
            found |= {target} if lead.to.kind is TargetKind.TAXON else memo[target]
        memo[current] = frozenset(found)
        stack.pop()
    result: frozenset[str] = memo[couplet_id]
    return result


def lead_taxa(tables: Tables, lead: Lead) -> frozenset[str]:
    """Ids of the taxa that can be reached through a lead."""
    target = _target(tables.keyset, lead)
    return frozenset({target}) if lead.to.kind is TargetKind.TAXON else reachable(tables, target)
