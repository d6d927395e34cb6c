"""Small random keys with a danger in them: observer levels, shared independence groups, never-clearing characters."""

from __future__ import annotations

import numpy as np

from keyapp.engine import build_tables
from keyapp.model import Danger, Observer, Report, Sureness, Weights
from tests.builders import character, keyset, taxon

__all__ = ["random_answers", "random_dangerous"]

OBSERVERS = (Observer("good", 0.4, 0.5), Observer("ordinary", 0.4, 1.0), Observer("poor", 0.2, 2.5))
LOOSE = {"ruled_out_ratio": 0.2, "ruled_out_posterior": 0.1}
"""Thresholds at which a few random answers may rule a danger out, so that second looks and the gate are met."""


def random_dangerous(seed, **weights):
    """Six results, one danger of two results and one of one, over six characters in four groups."""
    rng = np.random.default_rng(seed)
    groups = ("a", "a", "b", "b", "c", "d")
    characters = []
    for i, group in enumerate(groups):
        count = int(rng.integers(2, 4))
        characters.append(
            character(
                f"c{i}",
                " ".join(f"s{k}" for k in range(count)),
                group=group,
                right=float(rng.uniform(0.8, 0.98)),
                tell=float(rng.uniform(0.5, 1.0)),
                never_clears="it deceives" if i == 4 and seed % 2 else "",
                absent="s0" if i == 5 and seed % 3 == 0 else "",
            )
        )
    dangers = {"t0": "widows", "t1": "widows", "t2": "ticks"}
    taxa = [
        taxon(
            name,
            {c.id: _shown(rng, c) for c in characters},
            danger=Danger.SIGNIFICANT if name in dangers else Danger.NONE,
            group=dangers.get(name, ""),
        )
        for name in (f"t{n}" for n in range(6))
    ]
    values = {"outside": 0.05, "unlisted": 0.02, "observers": OBSERVERS, "slip": 0.03, "asking": 4.0, **LOOSE}
    return build_tables(keyset(characters, taxa, weights=Weights(**{**values, **weights})))


def _shown(rng, one):
    """One state surely, or two with chances."""
    names = list(rng.permutation(list(one.state_ids)))
    if rng.uniform() < 0.6:
        return {names[0]: 1.0}
    often = float(rng.uniform(0.3, 0.7))
    return {names[0]: often, names[1]: 1.0 - often}


def random_answers(tables, seed, most=4):
    """Up to `most` reports of different characters, most of them sure."""
    rng = np.random.default_rng(1000 + seed)
    names = list(rng.permutation(list(tables.characters)))[: int(rng.integers(2, most + 1))]
    return tuple(
        Report(
            str(name),
            frozenset({str(rng.choice(tables.characters[name].character.state_ids))}),
            sureness=Sureness.SURE if rng.uniform() < 0.85 else Sureness.THINK_SO,
        )
        for name in names
    )
