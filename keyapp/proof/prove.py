"""The whole proof of one-error safety: single answers, all runs through the key, runs through the engine."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from dataclasses import dataclass
from functools import partial

import numpy as np

from keyapp.engine import Tables, build_tables, prior
from keyapp.model import Danger, KeySet, Settings
from keyapp.proof.facts import Facts, check_facts
from keyapp.proof.runs import Cover, count_runs
from keyapp.proof.sample import Plan, Tally, add_up, sample_run
from keyapp.proof.specimen import gated_taxa
from keyapp.proof.starts import starts

__all__ = ["Proof", "prove", "start_settings"]

CHUNK = 100

_TABLES: Tables | None = None
"""The tables of a worker process; set once when it starts."""


@dataclass(frozen=True, slots=True)
class Proof:
    """What was proven, counted and measured.

    Attributes:
        need: clearing answers that rule a result out.
        ratio, posterior: odds below which a result must be too; all that stands between two sure errors and
            a danger that is ruled out.
        settings: start settings that give different odds; none of them needs to be told apart.
        classes: classes of start settings that the runs are spread over.
        levels: results that are proven, by level of danger.
        allergic: results with an allergic risk; the gate does not hold them, so they are named apart.
        facts: single answers, each in every case.
        covers: all runs with at most one misread answer, by result.
        sampled: runs through the engine with one misread answer.
        two: runs with two, measured, not proven.
    """

    need: int
    ratio: float
    posterior: float
    settings: int
    classes: int
    levels: dict[str, tuple[str, ...]]
    allergic: tuple[str, ...]
    facts: Facts
    covers: tuple[Cover, ...]
    sampled: Tally
    two: Tally

    @property
    def holds(self) -> bool:
        """One misread answer, with all that follows from it, leaves no danger unnamed.

        It may be about anything, and so also that a sign is taken for an animal and answers about
        its body are made up.
        """
        if self.facts.breaches or self.sampled.total_missed:
            return False
        return not any(cover.ruled_out for cover in self.covers)


def prove(
    keyset: KeySet,
    *,
    runs: int = 100_000,
    seed: int = 1,
    workers: int | None = None,
    only: Sequence[str] = (),
    told: Callable[[int, int], None] | None = None,
) -> Proof:
    """Prove one-error safety of `keyset`; a tenth of `runs` more is held with two errors.

    `only` limits the counting of all runs to some results; `told` hears how many steps of how many
    are done. The outcome does not depend on `workers`.
    """
    tables = build_tables(keyset)
    gated = gated_taxa(tables)
    chosen = [taxon for taxon in gated if not only or taxon in only]
    plans = (Plan(runs, 1, seed), Plan(max(1, runs // 10), 2, seed))
    jobs: list[Callable[[], Cover | Tally]] = [partial(_count, taxon) for taxon in chosen]
    for plan in plans:
        jobs += [partial(_sample, plan, start) for start in range(0, plan.runs, CHUNK)]
    done = _all_done(keyset, jobs, workers, told)
    covers = [one for one in done if isinstance(one, Cover)]
    tallies = [one for one in done if isinstance(one, Tally)]
    first = len(range(0, runs, CHUNK))
    levels: dict[str, tuple[str, ...]] = {}
    for taxon in chosen:
        level = str(keyset.taxa[taxon].danger)
        levels[level] = (*levels.get(level, ()), taxon)
    return Proof(
        need=keyset.weights.ruled_out_answers,
        ratio=keyset.weights.ruled_out_ratio,
        posterior=keyset.weights.ruled_out_posterior,
        settings=start_settings(tables),
        classes=len(starts(keyset)),
        levels=levels,
        allergic=tuple(taxon.id for taxon in keyset.taxa.values() if taxon.danger is Danger.ALLERGIC_RISK),
        facts=check_facts(tables),
        covers=tuple(covers),
        sampled=add_up(tallies[:first]),
        two=add_up(tallies[first:]),
    )


def start_settings(tables: Tables) -> int:
    """How many start settings give different odds: region or state, month and find spot, known or not.

    Told only to show what the proof covers without telling it apart. Region, month and spot enter the
    odds alone. The gate asks for clearing answers as well as low odds, and clearing answers are counted
    without the odds; so a result with too few of them is named whatever the settings are.
    """
    regions = tables.keyset.regions.values()
    places = [None, *(region.id for region in regions), *(state for region in regions for state in region.states)]
    odds = set()
    for place in dict.fromkeys(places):
        for month in (None, *range(1, 13)):
            odds.add(_rounded(prior(tables, Settings(region=place, month=month))))
    spots = {_rounded(prior(tables, Settings(spot=spot))) for spot in (None, *tables.keyset.spots)}
    return len(odds) * len(spots)


def _rounded(odds: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> bytes:
    return np.asarray(np.round(odds, 12)).tobytes()


def _all_done(
    keyset: KeySet,
    jobs: Sequence[Callable[[], Cover | Tally]],
    workers: int | None,
    told: Callable[[int, int], None] | None,
) -> list[Cover | Tally]:
    """Do every job, in this process or in several; results in the order of the jobs."""
    count = workers if workers is not None else max(1, os.cpu_count() or 1)
    done: list[Cover | Tally] = []
    if count <= 1:
        _begin(keyset)
        for job in jobs:
            done.append(job())
            if told:
                told(len(done), len(jobs))
        return done
    with ProcessPoolExecutor(count, initializer=_begin, initargs=(keyset,)) as pool:
        waiting: list[Future[Cover | Tally]] = [pool.submit(job) for job in jobs]
        for number, _ in enumerate(as_completed(waiting), start=1):
            if told:
                told(number, len(jobs))
        return [one.result() for one in waiting]


def _begin(keyset: KeySet) -> None:
    global _TABLES
    _TABLES = build_tables(keyset)


def _count(taxon: str) -> Cover:
    assert _TABLES is not None
    return count_runs(_TABLES, taxon)


def _sample(plan: Plan, start: int) -> Tally:
    assert _TABLES is not None
    return sample_run(_TABLES, plan, range(start, min(start + CHUNK, plan.runs)))
