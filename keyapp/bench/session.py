"""One session with a key: answers given one by one, each update and each question timed."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

import numpy as np

from keyapp.engine import Tables, not_ruled_out, prior, standing
from keyapp.engine.ledger import Event, report_event
from keyapp.engine.question import Question, next_questions
from keyapp.engine.safety import NotRuledOut
from keyapp.engine.standing import Standing
from keyapp.engine.tables import Floats
from keyapp.model import Evidence, Report, Settings, Taxon

__all__ = ["EVIDENCE", "Session", "Step", "Timing", "fastest", "hold"]

EVIDENCE = Evidence.WORDS
Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class Timing:
    """Seconds by the clock, and seconds that the processor worked on it (less where others use the machine)."""

    clock: float
    processor: float


@dataclass(frozen=True, slots=True)
class Step:
    """One answer: what was said, and how long the update after it and the next question took."""

    character: str
    state: str
    update: Timing
    question: Timing


@dataclass(frozen=True, slots=True)
class Session:
    """All of it.

    Attributes:
        first_question: seconds of the very first question, which makes what the later ones use.
        steps: the answers.
    """

    first_question: float
    steps: tuple[Step, ...]


def fastest(rounds: int, work: Callable[[], Found]) -> tuple[Found, Timing]:
    """What `work` returns, and the least that it took in so many rounds."""
    clock = processor = float("inf")
    for _ in range(rounds):
        begin, worked = time.perf_counter(), time.process_time()
        found = work()
        processor = min(processor, time.process_time() - worked)
        clock = min(clock, time.perf_counter() - begin)
    return found, Timing(clock, processor)


def hold(tables: Tables, taxon: Taxon, answers: int, rounds: int) -> Session:
    """Ask up to so many questions about `taxon`, the best first that its description speaks of.

    Each time is the least of `rounds`. Nothing of a round helps the next: the answer is
    made an event anew, and the sums over the standing are taken anew.
    """
    log_prior = np.log(prior(tables, Settings()))
    found: tuple[Event, ...] = ()
    stand, named = _update(tables, log_prior, found)
    begin = time.perf_counter()
    questions = _question(tables, log_prior, found, stand, named)
    first = time.perf_counter() - begin
    steps: list[Step] = []
    while len(steps) < answers:
        name = next((q.character for q in questions if q.character in taxon.shows), None)
        if name is None:
            break
        state = max(taxon.shows[name], key=taxon.shows[name].__getitem__)
        report = Report(name, frozenset({state}), evidence=EVIDENCE)
        before = found
        (found, stand, named), update = fastest(rounds, lambda: _answered(tables, log_prior, before, report))  # noqa: B023
        questions, question = fastest(rounds, lambda: _question(tables, log_prior, found, stand, named))  # noqa: B023
        steps.append(Step(name, state, update, question))
    return Session(first, tuple(steps))


def _answered(
    tables: Tables, log_prior: Floats, found: tuple[Event, ...], report: Report
) -> tuple[tuple[Event, ...], Standing, tuple[NotRuledOut, ...]]:
    then = (*found, report_event(tables, report))
    return (then, *_update(tables, log_prior, then))


def _update(tables: Tables, log_prior: Floats, found: tuple[Event, ...]) -> tuple[Standing, tuple[NotRuledOut, ...]]:
    """The standing, and the gate it must pass."""
    stand = standing(tables, log_prior, found)
    return stand, not_ruled_out(tables, stand, found)


def _question(
    tables: Tables, log_prior: Floats, found: tuple[Event, ...], stand: Standing, named: tuple[NotRuledOut, ...]
) -> tuple[Question, ...]:
    tables.memo.pop("sums", None)
    return next_questions(tables, log_prior, found, stand, named, EVIDENCE)
