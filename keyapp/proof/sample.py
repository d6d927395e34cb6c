"""Seeded runs through the whole engine, and whether the danger is still named at the end of each."""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import dataclass

from keyapp.engine import Action, Tables
from keyapp.proof.enquiry import KINDS, Run, draw_run
from keyapp.proof.gate import outcome
from keyapp.proof.specimen import dangers_of, gated_taxa
from keyapp.proof.starts import Start, class_of, starts

__all__ = ["KEPT", "Failure", "Plan", "Tally", "add_up", "sample_run"]

KEPT = 20
"""Failures that are kept to be shown; all are counted."""


@dataclass(frozen=True, slots=True)
class Plan:
    """A set of runs.

    Attributes:
        runs: how many; they fall evenly on the gated results, for each on the kinds, and for each of
            these on the classes of start settings.
        slips: misread answers in each.
        seed: the same seed gives the same runs.
    """

    runs: int
    slips: int
    seed: int = 1


@dataclass(frozen=True, slots=True)
class Failure:
    """A run at whose end a danger that is there is not named, or something it forbids is allowed.

    Attributes:
        run: the run.
        missing: danger groups that are not named.
        actions: what was allowed.
    """

    run: Run
    missing: tuple[str, ...]
    actions: tuple[Action, ...]


@dataclass(frozen=True, slots=True)
class Tally:
    """What came of runs.

    Attributes:
        runs, missed: by taxon id, all runs, and those in which a danger was not named.
        kinds: runs by kind.
        hows: answers by how they came about.
        starts: classes of start settings met.
        slips: misread answers in all, not counting what followed from them.
        answers: answers in all.
        failures: the first runs that failed.
    """

    runs: dict[str, int]
    missed: dict[str, int]
    kinds: dict[str, int]
    hows: dict[str, int]
    starts: frozenset[Start]
    slips: int
    answers: int
    failures: tuple[Failure, ...]

    @property
    def total(self) -> int:
        """All runs."""
        return sum(self.runs.values())

    @property
    def total_missed(self) -> int:
        """All runs that failed."""
        return sum(self.missed.values())


def sample_run(tables: Tables, plan: Plan, numbers: Iterable[int]) -> Tally:
    """Hold the runs with these numbers, 0 to `plan.runs` - 1."""
    taxa = gated_taxa(tables)
    # In no order, so that few runs meet classes that differ in everything.
    classes = random.Random(plan.seed).sample(starts(tables.keyset), len(starts(tables.keyset)))
    return add_up(_one(tables, plan, taxa, classes, number) for number in numbers) if taxa else add_up(())


def _one(tables: Tables, plan: Plan, taxa: tuple[str, ...], classes: list[Start], number: int) -> Tally:
    turn, place = divmod(number, len(taxa))
    turn, kind = divmod(turn, len(KINDS))
    # A result and kind begins with a class of its own, so that a few runs of each meet all the same.
    start = classes[(turn + place * len(KINDS) + kind) % len(classes)]
    run = draw_run(tables, taxa[place], KINDS[kind], plan.slips, f"{plan.seed} {number}", start)
    named, actions = outcome(tables, run.case)
    missing = tuple(sorted(dangers_of(tables, run.taxon) - named))
    failed = bool(missing) or actions != (Action.KEEP_AWAY,)
    hows: dict[str, int] = {}
    for how in run.hows:
        hows[how] = hows.get(how, 0) + 1
    return Tally(
        {run.taxon: 1},
        {run.taxon: 1} if failed else {},
        {run.kind: 1},
        hows,
        frozenset({class_of(tables.keyset, run.case.settings)}),
        run.slips,
        len(run.case.answers),
        (Failure(run, missing, actions),) if failed else (),
    )


def add_up(tallies: Iterable[Tally]) -> Tally:
    """All of `tallies` as one."""
    runs: dict[str, int] = {}
    missed: dict[str, int] = {}
    kinds: dict[str, int] = {}
    hows: dict[str, int] = {}
    met: set[Start] = set()
    slips = answers = 0
    failures: list[Failure] = []
    for tally in tallies:
        parts = ((runs, tally.runs), (missed, tally.missed), (kinds, tally.kinds), (hows, tally.hows))
        for whole, part in parts:
            for name, count in part.items():
                whole[name] = whole.get(name, 0) + count
        met |= tally.starts
        slips += tally.slips
        answers += tally.answers
        failures += tally.failures[: KEPT - len(failures)] if len(failures) < KEPT else ()
    return Tally(runs, missed, kinds, hows, frozenset(met), slips, answers, tuple(failures))
