"""Seeded runs through the whole engine, and whether the danger is still named at the end of each."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from keyapp.engine import Action, Tables, read_case
from keyapp.model import Form
from keyapp.proof.observer import Run, draw_run
from keyapp.proof.specimen import dangers_of, gated_taxa

__all__ = ["KEPT", "Failure", "Plan", "Tally", "add_up", "sample_run"]

KINDS = ("key", "reports", "key", "reports", "feared")
"""Kinds of run in turn; starting from the feared animal costs most."""

KEPT = 20
"""Failures that are kept to be shown; all are counted."""


@dataclass(frozen=True, slots=True)
class Plan:
    """A set of runs.

    Attributes:
        runs: how many; they fall evenly on the gated results.
        slips: misread answers in each.
        seed: the same seed gives the same runs.
        taken: a sign is taken for an animal, and answers about its body are made up; signs only, and
            this is the error, whatever `slips` says.
    """

    runs: int
    slips: int
    seed: int = 1
    taken: bool = False


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
        slips: misread answers in all, not counting what followed from them.
        answers: answers in all.
        failures: the first runs that failed.
    """

    runs: dict[str, int]
    missed: dict[str, int]
    kinds: dict[str, int]
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
    taxa = [t for t in gated_taxa(tables) if not plan.taken or tables.keyset.taxa[t].form is not Form.ANIMAL]
    return add_up(_one(tables, plan, taxa, number) for number in numbers) if taxa else add_up(())


def _one(tables: Tables, plan: Plan, taxa: list[str], number: int) -> Tally:
    taxon = taxa[number % len(taxa)]
    kind = KINDS[number // len(taxa) % len(KINDS)]
    run = draw_run(tables, taxon, kind, plan.slips, f"{plan.seed} {number}", plan.taken)
    reading = read_case(tables, run.case)
    named = {danger.group for danger in reading.not_ruled_out}
    missing = tuple(sorted(dangers_of(tables, taxon) - named))
    actions = reading.verdict.actions
    failed = bool(missing) or actions != (Action.KEEP_AWAY,)
    return Tally(
        {taxon: 1},
        {taxon: 1} if failed else {},
        {kind: 1},
        run.slips,
        len(run.case.answers),
        (Failure(run, missing, actions),) if failed else (),
    )


def add_up(tallies: Iterable[Tally]) -> Tally:
    """All of `tallies` as one."""
    runs: dict[str, int] = {}
    missed: dict[str, int] = {}
    kinds: dict[str, int] = {}
    slips = answers = 0
    failures: list[Failure] = []
    for tally in tallies:
        for whole, part in ((runs, tally.runs), (missed, tally.missed), (kinds, tally.kinds)):
            for name, count in part.items():
                whole[name] = whole.get(name, 0) + count
        slips += tally.slips
        answers += tally.answers
        failures += tally.failures[: KEPT - len(failures)] if len(failures) < KEPT else ()
    return Tally(runs, missed, kinds, slips, answers, tuple(failures))
