"""The whole reading of a case: way, standing, dangers, verdict, in one call."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from keyapp.engine.ledger import Contradiction, Event, contradictions, events, known_states
from keyapp.engine.prior import log_prior_of
from keyapp.engine.question import Question, next_questions
from keyapp.engine.safety import NotRuledOut, not_ruled_out
from keyapp.engine.second_look import SecondLook, second_looks
from keyapp.engine.settle import Settling, settling
from keyapp.engine.standing import Standing, standing
from keyapp.engine.tables import THING, Floats, Tables
from keyapp.engine.verdict import Verdict, verdict
from keyapp.engine.walk import StepKind, Walk, reachable, walk
from keyapp.model import Answer, Case, Choice, LeadAnswer, Report, Sureness, check_case

__all__ = ["THING", "Reading", "helpful_questions", "read_case", "second_look", "unseen"]


@dataclass(frozen=True, slots=True)
class Reading:
    """Everything the program thinks of a case.

    Attributes:
        case: the case read.
        walk: the way through the key; `current` is the couplet to ask, None where it is done.
        events: the answers that count, as evidence.
        standing: probabilities.
        not_ruled_out: dangers still possible, likeliest first.
        settles: by danger group, the observation that would settle it best.
        contradictions: answers that cannot both be right.
        verdict: what may be said and done.
        go_back: after two *neither fits*, the couplet to look at again.
    """

    case: Case
    walk: Walk
    current: str | None
    events: tuple[Event, ...]
    standing: Standing
    not_ruled_out: tuple[NotRuledOut, ...]
    settles: dict[str, Settling | None]
    contradictions: tuple[Contradiction, ...]
    verdict: Verdict
    go_back: str | None


def notes_of(case: Case) -> tuple[Answer, ...]:
    """Direct reports, with the setting of what there is as one of them."""
    notes: list[Answer] = [a for a in case.answers if not isinstance(a, LeadAnswer)]
    thing = case.settings.thing
    if thing and not any(isinstance(a, Report) and a.character == THING for a in notes):
        notes.insert(0, Report(THING, frozenset({thing}), evidence=case.settings.evidence))
    return tuple(notes)


def read_case(tables: Tables, case: Case) -> Reading:
    """Read `case` against `tables`: pure, exact and deterministic.

    Raises UserError, before anything is worked out, where the key cannot take the case (`check_case`).
    """
    check_case(tables.keyset, case)
    notes = notes_of(case)
    way = walk(tables, case, known_states(tables, notes))
    answers = _in_order(case, (*notes, *way.answers))
    log_prior = log_prior_of(tables, case.settings)
    found = events(tables, answers)
    stand = standing(tables, log_prior, found)
    named = not_ruled_out(tables, stand, found)
    said = {c for event in found for c in event.characters}
    disagreeing = contradictions(tables, answers)
    settles = {}
    for danger in named:
        used = {g for e in found if e.may_clear for g in e.groups if _clears_any(tables, e, danger)}
        settles[danger.group] = settling(tables, stand, danger, said, used)
    return Reading(
        case=case,
        walk=way,
        current=_current(tables, stand, way),
        events=found,
        standing=stand,
        not_ruled_out=named,
        settles=settles,
        contradictions=disagreeing,
        verdict=verdict(
            tables, log_prior, case.settings, found, stand, way, named, bool(disagreeing), case.is_doubted
        ),
        go_back=_go_back(tables, log_prior, found, way),
    )


def second_look(tables: Tables, reading: Reading) -> tuple[SecondLook, ...]:
    """The second look for a reading; apart from `read_case`, since only results show it."""
    return second_looks(tables, log_prior_of(tables, reading.case.settings), reading.events)


def helpful_questions(tables: Tables, reading: Reading, passed_over: Collection[str] = ()) -> tuple[Question, ...]:
    """What would help most to ask next; apart from `read_case`, since it costs more."""
    log_prior = log_prior_of(tables, reading.case.settings)
    evidence = reading.case.settings.evidence
    return next_questions(
        tables,
        log_prior,
        reading.events,
        reading.standing,
        reading.not_ruled_out,
        evidence,
        passed_over,
        {best.character for best in reading.settles.values() if best is not None},
    )


def unseen(tables: Tables, reading: Reading) -> frozenset[str]:
    """Characters the person could not tell, so that it makes no sense to ask them for again.

    These are reports that say nothing (every state ticked, or "not there" from a side that was not
    seen) and *can't tell* at a couplet that speaks of this character alone.
    """
    said = {c for event in reading.events for c in event.characters}
    found: set[str] = set()
    for answer in reading.case.answers:
        if isinstance(answer, LeadAnswer):
            couplet = tables.keyset.couplets[answer.couplet]
            held = {c for lead in couplet.leads for c in lead.holds}
            if len(held) == 1 and (answer.choice is Choice.CANT_TELL or not answer.view_seen):
                found |= held
        elif isinstance(answer, Report):
            found.add(answer.character)
    return frozenset(found - said)


def _in_order(case: Case, answers: tuple[Answer, ...]) -> tuple[Answer, ...]:
    """Answers in the order they were given; the thing set before the key comes first."""
    place = {answer: index for index, answer in enumerate(case.answers)}
    return tuple(sorted(answers, key=lambda answer: place.get(answer, -1)))


def _clears_any(tables: Tables, event: Event, danger: NotRuledOut) -> bool:
    return any(event.against[row] for t in danger.taxa for row in tables.rows_of[t])


def _current(tables: Tables, stand: Standing, way: Walk) -> str | None:
    """The open couplet beneath which most of the standing lies; None when none is worth asking."""
    best: tuple[float, str] | None = None
    for couplet in way.open:
        mass = sum(tables.mass(stand.posterior, t) for t in reachable(tables, couplet))
        if best is None or mass > best[0]:
            best = (mass, couplet)
    if best is None or (way.ends and best[0] < tables.weights.pass_branch):
        return None
    return best[1]


def _go_back(tables: Tables, log_prior: Floats, found: tuple[Event, ...], way: Walk) -> str | None:
    """After two *neither fits*: the earliest answer that was not sure, else the one that jars most.

    The one that jars most is the answer without which the rest becomes likeliest.
    """
    if sum(step.choice is Choice.NEITHER for step in way.steps) < 2:
        return None
    chosen = [s for s in way.steps if s.kind is StepKind.ANSWERED and s.answer is not None]
    for step in chosen:
        if step.answer is not None and step.answer.sureness is Sureness.THINK_SO:
            return step.couplet
    best: tuple[float, str] | None = None
    for step in chosen:
        left = [event for event in found if step.answer not in event.answers]
        stand = standing(tables, log_prior, left)
        gain = float(np.log(np.sum(np.exp(stand.fit + log_prior))))
        own = [event for event in found if step.answer in event.answers]
        gain -= sum(float(event.logs.max()) for event in own)
        if best is None or gain > best[0] + 1e-12:
            best = (gain, step.couplet)
    return best[1] if best else None
