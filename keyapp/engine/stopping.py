"""When to stop asking, and why; or what to ask next."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from keyapp.engine.ledger import report_event
from keyapp.engine.prior import log_prior_of
from keyapp.engine.question import Question, next_questions
from keyapp.engine.reading import Reading, helpful_questions, unseen
from keyapp.engine.safety import clearing_counts
from keyapp.engine.tables import Tables
from keyapp.model import Report

__all__ = ["LEAST_SCORE", "Aim", "Because", "Stop", "StopReason", "aim_of", "clears", "stop"]

LEAST_SCORE = 0.001
"""Bits a second below which a question is not worth its effort: at this rate a single bit takes over a quarter of
an hour."""

FINER = 0.05
"""Where the best question left tells less than this share of what is open, only finer characters separate it."""

MOSTLY = 0.75
"""A question is asked for one purpose where so much of its worth is for that."""


class StopReason(StrEnum):
    """What is to be done about asking."""

    GO_ON = "go-on"
    SETTLED = "settled"
    NOTHING_MORE = "nothing-more"
    SPECIALIST = "specialist"


class Because(StrEnum):
    """Why: for going on, what the question is for; else why it ends."""

    FAMILY = "family"
    DANGER = "danger"
    BOTH = "both"
    FIRM = "firm"
    FIRM_DANGER = "firm-danger"
    CANT_TELL = "cant-tell"
    EFFORT = "effort"
    FINER = "finer"
    DANGER_LEFT = "danger-left"
    DISAGREE = "disagree"
    OUTSIDE = "outside"


@dataclass(frozen=True, slots=True)
class Aim:
    """What a question is asked for.

    Attributes:
        because: `family`, `danger` or `both`.
        dangers: the danger groups, not ruled out, that an answer to it could speak against.
    """

    because: Because
    dangers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Stop:
    """Whether to go on asking.

    Attributes:
        reason, because: what to do, and why.
        question: what to ask; None unless it is to go on.
        dangers: the danger groups this is about.
    """

    reason: StopReason
    because: Because
    question: Question | None = None
    dangers: tuple[str, ...] = ()


def stop(
    tables: Tables, reading: Reading, passed_over: Collection[str] = (), *, least_score: float = LEAST_SCORE
) -> Stop:
    """Whether asking more is worth it, with the reason, and with the question where it is.

    1. One group stands firm and is in the key, the key led to it if it led anywhere, no answers
       contradict each other, and no other danger is named: *settled*.
    2. A question is left that is worth its effort (`least_score`, bits a second): *go on*, with the
       best one; where one group is firm already, the best that could speak against a danger named.
    3. It is likeliest something not in this key; or a danger other than the firm group is named and nothing in
       the key that is not answered yet could count against it; or the best question left, were it
       answered, tells hardly anything of what is open: *needs a specialist*.
    4. Otherwise *nothing more can be seen*: all that would help could not be told, or costs too much.

    Characters in `passed_over`, and those the person could not tell, are not asked.
    """
    passed = {*passed_over, *unseen(tables, reading)}
    top, chance = reading.standing.groups[0]
    is_firm = bool(reading.events) and top.level != "outside" and chance >= tables.weights.firm
    is_firm = is_firm and not _disagrees(reading)
    # The firm group itself may be a danger: more questions would not take it off the line, nor should they.
    own = top.name if is_firm and top.level == "danger" else ""
    others = [one.group for one in reading.not_ruled_out if one.group != own]
    if is_firm and not others:
        firm = Because.FIRM_DANGER if own else Because.FIRM
        return Stop(StopReason.SETTLED, firm, dangers=(own,) if own else ())
    for question in _questions(tables, reading, passed, is_firm):
        aim = aim_of(tables, reading, question)
        if question.score >= least_score and (not is_firm or set(aim.dangers) & set(others)):
            return Stop(StopReason.GO_ON, aim.because, question, aim.dangers)
    return _end(tables, reading, passed, others, is_firm)


def aim_of(tables: Tables, reading: Reading, question: Question) -> Aim:
    """What a question is worth asking for: the family, the dangers not ruled out, or both."""
    dangers = clears(tables, reading, question.character) if question.cleared > 0 else ()
    for_danger = tables.weights.danger_bits * question.cleared if dangers else 0.0
    whole = question.bits + for_danger
    if not dangers or for_danger <= (1 - MOSTLY) * whole:
        return Aim(Because.FAMILY, dangers)
    return Aim(Because.DANGER if for_danger >= MOSTLY * whole else Because.BOTH, dangers)


def clears(tables: Tables, reading: Reading, character: str) -> tuple[str, ...]:
    """The dangers not ruled out that some sure report of `character` would count against, likeliest first.

    It counts where it brings one of their results nearer to enough answers; where enough count
    against all of them and only the odds are too high, any that is counted afresh does.
    """
    evidence = reading.case.settings.evidence
    before = clearing_counts(tables, reading.events)
    gained = np.zeros(len(tables.rows), dtype=bool)
    for state in tables.characters[character].character.state_ids:
        event = report_event(tables, Report(character, frozenset({state}), evidence=evidence))
        if event.may_clear:
            gained |= clearing_counts(tables, [*reading.events, event]) > before
    found = []
    for named in reading.not_ruled_out:
        rows = [r for taxon in named.taxa for r in tables.rows_of[taxon] if tables.rows[r].danger == named.group]
        needed = before[rows] < tables.weights.ruled_out_answers
        if (gained[rows] & (needed if needed.any() else True)).any():
            found.append(named.group)
    return tuple(found)


def _questions(tables: Tables, reading: Reading, passed: Collection[str], is_firm: bool) -> tuple[Question, ...]:
    """Questions left, best first; once a group is firm, with what each would clear worked out for all that could."""
    if not is_firm:
        return helpful_questions(tables, reading, passed)
    said = {c for event in reading.events for c in event.characters} | set(passed)
    could = {name for name in tables.characters if name not in said and clears(tables, reading, name)}
    log_prior = log_prior_of(tables, reading.case.settings)
    evidence = reading.case.settings.evidence
    found, stand, named = reading.events, reading.standing, reading.not_ruled_out
    return next_questions(tables, log_prior, found, stand, named, evidence, passed, could)


def _end(tables: Tables, reading: Reading, passed: Collection[str], others: Sequence[str], is_firm: bool) -> Stop:
    """Why nothing is asked any more."""
    if reading.standing.groups[0][0].level == "outside":
        return Stop(StopReason.SPECIALIST, Because.OUTSIDE)
    # What a keener eye could still tell: the same questions as if nothing had been passed over.
    left = helpful_questions(tables, reading, ())
    could = {danger for question in left for danger in clears(tables, reading, question.character)}
    hopeless = tuple(danger for danger in others if danger not in could)
    if hopeless:
        return Stop(StopReason.SPECIALIST, Because.DANGER_LEFT, dangers=hopeless)
    if _disagrees(reading):
        return Stop(StopReason.NOTHING_MORE, Because.DISAGREE, dangers=tuple(others))
    if not is_firm and max((q.bits for q in left), default=0.0) < FINER * _bits(reading):
        return Stop(StopReason.SPECIALIST, Because.FINER)
    why = Because.CANT_TELL if any(q.character in passed for q in left) else Because.EFFORT
    return Stop(StopReason.NOTHING_MORE, why, dangers=tuple(others))


def _disagrees(reading: Reading) -> bool:
    """Whether answers contradict each other, or the key led elsewhere than the standing."""
    return bool(reading.contradictions) or reading.verdict.differs


def _bits(reading: Reading) -> float:
    """What is open about the group, in bits."""
    chances = np.array([chance for _, chance in reading.standing.groups])
    held = chances[chances > 0]
    return float(-(held * np.log2(held)).sum())
