"""Excess: how many couplets the written key takes below each couplet, against the best order there is."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from keyapp.engine import Tables
from keyapp.measure.optimum import Item, best_mean, merged, splittings
from keyapp.measure.propagate import Way
from keyapp.measure.routes import Routes

__all__ = ["Excess", "excess_below"]

MOST_ITEMS = 150
MOST_SUBSETS = 4000
MOST_SPLITS = 400


@dataclass(frozen=True, slots=True)
class Excess:
    """The part of the key from a couplet on.

    Attributes:
        couplet: couplet id.
        share: share of all specimens that are asked it, without error.
        written: expected couplets from here on, this one counted, as the key is written.
        best: least expected number with the same characters; None where the part is too large to tell.
        results: number of results that come here.
    """

    couplet: str
    share: float
    written: float
    best: float | None
    results: int


def excess_below(
    tables: Tables, graph: Routes, ways: Mapping[str, Way], weights: Mapping[str, float]
) -> tuple[Excess, ...]:
    """For every couplet that two or more results come to without error.

    The best order may use any two-lead couplet on one of the characters asked from here on, and ends where one result
    is left or nothing can split on. So a written key whose couplets join two characters in a lead may do better
    than this best. Looked at where no more than 150 kinds of specimen come, and 4,000 sets of them have to be weighed.
    """
    free = dict.fromkeys(graph.couplets, 0.0)
    arriving: dict[str, list[tuple[str, frozenset[tuple[str, int]], float]]] = {}
    beyond: dict[str, float] = {}
    for taxon, weight in weights.items():
        mass = ways[taxon].arriving(free)
        for node, chance in mass.items():
            if not isinstance(node, str) and weight * chance > 0:
                arriving.setdefault(node[0], []).append((taxon, node[1], weight * chance))
        for couplet, chance in ways[taxon].asked_from(free).items():
            beyond[couplet] = beyond.get(couplet, 0.0) + weight * chance
    found = []
    for couplet, comers in arriving.items():
        results = len({taxon for taxon, _, _ in comers})
        if results < 2:
            continue
        share = sum(mass for _, _, mass in comers)
        items = _items(tables, comers, graph.asked_below[couplet])
        found.append(Excess(couplet, share, beyond[couplet] / share, _best(items), results))
    order = {couplet: place for place, couplet in enumerate(graph.couplets)}
    return tuple(sorted(found, key=lambda one: order[one.couplet]))


def _best(items: Sequence[Item] | None) -> float | None:
    if items is None:
        return None
    splits = splittings(items)
    if len(splits) > MOST_SPLITS:
        return None
    return best_mean([i.weight for i in items], [i.label for i in items], splits, most_subsets=MOST_SUBSETS)


def _items(
    tables: Tables, comers: Sequence[tuple[str, frozenset[tuple[str, int]], float]], asked: frozenset[str]
) -> tuple[Item, ...] | None:
    items: list[Item] = []
    for taxon, known, mass in comers:
        row = tables.row(taxon)
        settled = {name for name, _ in known}
        choices = [
            [((name, k), float(p)) for k, p in enumerate(tables.characters[name].chance[row]) if p > 0]
            for name in sorted(asked - settled)
            if tables.characters[name].applies[row]
        ]
        # Few combinations turn out the same, so counting them first saves most of the work.
        if len(items) + math.prod(map(len, choices)) > 2 * MOST_ITEMS:
            return None
        for drawn in product(*choices):
            weight = mass
            for _, p in drawn:
                weight *= p
            items.append(Item(taxon, known | {state for state, _ in drawn}, weight))
    few = merged(items)
    return few if len(few) <= MOST_ITEMS else None
