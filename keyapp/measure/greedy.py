"""A greedy dichotomous order from the same characters: the yardstick for a written key."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from keyapp.engine import Tables
from keyapp.engine.tables import Floats, GroupId

__all__ = ["Split", "expected_couplets", "greedy_order"]


@dataclass(frozen=True, slots=True)
class Split:
    """A couplet of the greedy order: a character, the states of its first lead, and what follows.

    `first` and `second` are further splits, or the group that is left in front.
    """

    character: str
    states: frozenset[str]
    others: frozenset[str]
    weight: float
    first: Split | GroupId
    second: Split | GroupId


def greedy_order(
    tables: Tables, weights: Mapping[str, float], *, settled: float = 0.97, deepest: int = 14
) -> Split | GroupId:
    """Split again and again by the couplet that tells most of the group for the observer's effort.

    `weights` are masses by taxon id. A taxon that can honestly go both ways goes both ways, in
    parts. A branch ends where one group holds `settled` of it, at `deepest` couplets, or where
    nothing tells more.
    """
    rows = np.zeros(len(tables.rows))
    for taxon, weight in weights.items():
        for row in tables.rows_of[taxon]:
            rows[row] = weight / len(tables.rows_of[taxon])
    return _grow(tables, rows, frozenset(), settled, deepest)


def expected_couplets(tree: Split | GroupId) -> float:
    """Mean number of couplets answered on the way to an end, over the weights it was built with."""
    if isinstance(tree, GroupId):
        return 0.0
    return _total(tree) / tree.weight


def _total(tree: Split | GroupId) -> float:
    if isinstance(tree, GroupId):
        return 0.0
    return tree.weight + _total(tree.first) + _total(tree.second)


def _groups(tables: Tables, rows: Floats) -> dict[GroupId, float]:
    sums: dict[GroupId, float] = {}
    for row, weight in zip(tables.rows, rows, strict=True):
        if weight > 0:
            sums[row.group] = sums.get(row.group, 0.0) + float(weight)
    return sums


def _entropy(tables: Tables, rows: Floats) -> float:
    """Total weight times the entropy of its groups, in bits."""
    values = np.array(list(_groups(tables, rows).values()))
    if not len(values):
        return 0.0
    return float(-(values * np.log2(values / values.sum())).sum())


def _grow(tables: Tables, rows: Floats, used: frozenset[str], settled: float, left: int) -> Split | GroupId:
    sums = _groups(tables, rows)
    top = max(sums, key=lambda group: (sums[group], group))
    total = sum(sums.values())
    if sums[top] >= settled * total or left == 0:
        return top
    before = _entropy(tables, rows)
    best: tuple[float, str, tuple[str, ...], Floats] | None = None
    for name, table in tables.characters.items():
        if name in used:
            continue
        held = rows > 0
        if float(rows[held & ~table.applies].sum()) > 0.02 * total:
            continue
        states = table.character.state_ids
        for size in range(1, len(states)):
            for chosen in combinations(range(len(states)), size):
                if 0 not in chosen:
                    continue
                share = table.chance[:, chosen].sum(axis=1)
                gain = before - _entropy(tables, rows * share) - _entropy(tables, rows * (1 - share))
                score = gain * table.character.right / table.character.seconds**0.5
                if gain > 1e-3 * total and (best is None or score > best[0]):
                    best = (score, name, tuple(states[k] for k in chosen), share)
    if best is None:
        return top
    _, name, chosen_states, share = best
    parts = [np.where(rows * s > 2e-3 * rows, rows * s, 0.0) for s in (share, 1 - share)]
    first, second = (_grow(tables, part, used | {name}, settled, left - 1) for part in parts)
    others = frozenset(tables.characters[name].character.state_ids) - set(chosen_states)
    return Split(name, frozenset(chosen_states), others, total, first, second)
