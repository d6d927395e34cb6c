"""A trial: many simulated calls, over regions, months and animals, in parallel and repeatable."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field, replace
from functools import partial

import numpy as np

from keyapp.engine import Tables, build_tables, prior
from keyapp.model import KeySet, Settings, Taxon
from keyapp.trial.call import Outcome, Policy, hold_call
from keyapp.trial.caller import Habits, draw_caller

__all__ = ["Plan", "run_trial"]

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


def run_trial(
    keyset: KeySet, plan: Plan, *, workers: int | None = None, told: Callable[[int], None] | None = None
) -> tuple[Outcome, ...]:
    """Hold every call of `plan`; `told` hears how many are done. Results do not depend on `workers`."""
    count = workers if workers is not None else max(1, os.cpu_count() or 1)
    chunks = [range(start, min(start + 20, plan.calls)) for start in range(0, plan.calls, 20)]
    outcomes: list[Outcome] = []
    if count <= 1:
        _begin(keyset)
        for chunk in chunks:
            outcomes += _hold(plan, chunk)
            if told:
                told(len(outcomes))
        return tuple(outcomes)
    with ProcessPoolExecutor(count, initializer=_begin, initargs=(keyset,)) as pool:
        for found in pool.map(partial(_hold, plan), chunks):
            outcomes += found
            if told:
                told(len(outcomes))
    return tuple(outcomes)


def _begin(keyset: KeySet) -> None:
    global _TABLES
    _TABLES = build_tables(keyset)


def _hold(plan: Plan, numbers: Sequence[int]) -> list[Outcome]:
    tables = _TABLES
    assert tables is not None
    return [_one(tables, plan, number) for number in numbers]


def _one(tables: Tables, plan: Plan, number: int) -> Outcome:
    rng = np.random.default_rng([plan.seed, number, 0])
    keyset = tables.keyset
    regions = [region.id for region in keyset.regions.values() if not region.part_of]
    region = str(rng.choice(regions)) if regions else None
    settings = Settings(region=region, month=int(rng.integers(1, 13)))
    taxon = _animal(tables, plan, settings, rng)
    caller = draw_caller(keyset, taxon, plan.habits, [plan.seed, number, 1])
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
