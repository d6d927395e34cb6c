"""Trials: many simulated calls, over regions, months and animals, in parallel and repeatable."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import partial

import numpy as np

from keyapp.engine import Tables, build_tables, prior
from keyapp.model import KeySet, Settings, Taxon
from keyapp.trial.call import Outcome, Policy, hold_call
from keyapp.trial.caller import Habits, draw_caller

__all__ = ["Plan", "run_trials"]

CHUNK = 20
"""Calls that a worker process holds before it reports."""

_TABLES: Tables | None = None
"""The tables of a worker process; set once when it starts."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What is tried.

    Attributes:
        calls: how many.
        seed: the same seed gives the same calls.
        outside: share of animals that are not in the key.
        even: share of the other animals drawn evenly over results, so that rare and dangerous
            ones are met; the rest are drawn as common as the key holds them in the region and month.
        habits: of the callers.
        policy: how calls are led.
    """

    calls: int = 1000
    seed: int = 1
    outside: float = 0.05
    even: float = 0.0
    habits: Habits = field(default_factory=Habits)
    policy: Policy = field(default_factory=Policy)


Job = tuple[Plan, int]
"""A plan and the number of the first call of a chunk of it."""


def run_trials(
    keyset: KeySet, plans: Sequence[Plan], *, workers: int | None = None, told: Callable[[int, int], None] | None = None
) -> tuple[tuple[Outcome, ...], ...]:
    """Hold every call of every plan, and give the outcomes plan by plan.

    `told` hears how many calls of all are done. Results do not depend on `workers`. Plans of one seed meet the same
    animals, so that they differ only in what they vary.
    """
    jobs = [(which, plan, start) for which, plan in enumerate(plans) for start in range(0, plan.calls, CHUNK)]
    total = sum(plan.calls for plan in plans)
    found: list[list[Outcome]] = [[] for _ in plans]
    done = 0
    with _pool(keyset, workers) as hold:
        for (which, _, _), outcomes in zip(jobs, hold([(plan, start) for _, plan, start in jobs]), strict=True):
            found[which] += outcomes
            done += len(outcomes)
            if told:
                told(done, total)
    return tuple(tuple(outcomes) for outcomes in found)


@contextmanager
def _pool(keyset: KeySet, workers: int | None) -> Iterator[Callable[[Sequence[Job]], Iterable[list[Outcome]]]]:
    """What holds jobs one after the other: this process alone, or several side by side."""
    count = workers if workers is not None else max(1, os.cpu_count() or 1)
    if count <= 1:
        _begin(keyset)
        yield partial(map, _hold)
        return
    with ProcessPoolExecutor(count, initializer=_begin, initargs=(keyset,)) as pool:
        try:
            yield partial(pool.map, _hold)
        except BaseException:
            # Else leaving would wait for every call not yet held.
            pool.shutdown(cancel_futures=True)
            raise


def _begin(keyset: KeySet) -> None:
    global _TABLES
    _TABLES = build_tables(keyset)


def _hold(job: Job) -> list[Outcome]:
    tables = _TABLES
    assert tables is not None
    plan, start = job
    return [_one(tables, plan, number) for number in range(start, min(start + CHUNK, plan.calls))]


def _one(tables: Tables, plan: Plan, number: int) -> Outcome:
    rng = np.random.default_rng([plan.seed, number, 0])
    keyset = tables.keyset
    regions = [region.id for region in keyset.regions.values() if not region.part_of]
    region = str(rng.choice(regions)) if regions else None
    settings = Settings(region=region, month=int(rng.integers(1, 13)))
    taxon = _animal(tables, plan, settings, rng)
    caller = draw_caller(keyset, taxon, plan.habits, [plan.seed, number, 1])
    settings = replace(settings, spot=caller.animal.spot)
    known = settings if rng.random() < 0.8 else replace(settings, region=None, month=None)
    return hold_call(tables, caller, known, plan.policy)


def _animal(tables: Tables, plan: Plan, settings: Settings, rng: np.random.Generator) -> Taxon | None:
    if rng.random() < plan.outside:
        return None
    taxa = [taxon for taxon in tables.keyset.taxa.values() if not taxon.outside]
    if rng.random() < plan.even:
        return taxa[int(rng.integers(len(taxa)))]
    found = prior(tables, settings)
    weights = np.array([tables.mass(found, taxon.id) for taxon in taxa])
    return taxa[int(rng.choice(len(taxa), p=weights / weights.sum()))]
