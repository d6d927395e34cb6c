"""Measures: everything that is measured of a key, in one call."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from keyapp.engine import OUTSIDE, Tables, prior
from keyapp.engine.tables import Floats
from keyapp.errors import UserError
from keyapp.measure.bounds import entropy, huffman, least_mean, lies_bits, lies_questions, worst_mean
from keyapp.measure.capacity import character_capacity
from keyapp.measure.errors import ErrorRates, error_rates
from keyapp.measure.excess import Excess, excess_below
from keyapp.measure.greedy import greedy_order
from keyapp.measure.misread_paths import MisreadPath, misread_paths
from keyapp.measure.pairs import Pair, pairs
from keyapp.measure.propagate import Way, as_described, own_errors, same_error
from keyapp.measure.routes import Routes, routes
from keyapp.model import Settings

__all__ = ["OWN", "RATES", "Bounds", "Greedy", "Measures", "Shape", "measure"]

OWN = "own"
"""Name of the error rates that the characters of the key state themselves."""

RATES = {"0 %": 0.0, "5 %": 0.05, "10 %": 0.1, "20 %": 0.2}
"""One rate for all couplets. No published rate exists for lay answers to single key questions; trained
volunteers named 6 to 21 % of insects wrongly (Ratnieks et al. 2016, Methods in Ecology and Evolution 7:1226-1235)."""

CLOSE_ENOUGH = 0.01
"""Bits per specimen that the greedy order may leave untold."""


@dataclass(frozen=True, slots=True)
class Shape:
    """The graph: couplets, results that leads go to, leads that rejoin, couplets on the longest path."""

    couplets: int
    results: int
    rejoining: int
    longest: int


@dataclass(frozen=True, slots=True)
class Bounds:
    """Bounds on the expected number of couplets without error.

    Attributes:
        entropy, huffman: of the results by how common they are.
        entropy_groups, huffman_groups: the same of the groups they are summed by.
        least_even, worst_even: were all results equally common: the best and the worst tree.
        lies: number of wrong answers -> questions needed to find one of the results all the same.
        lies_bits: the same by how common the results are, about.
    """

    entropy: float
    huffman: float
    entropy_groups: float
    huffman_groups: float
    least_even: float
    worst_even: float
    lies: Mapping[int, int]
    lies_bits: Mapping[int, float]


@dataclass(frozen=True, slots=True)
class Greedy:
    """The greedy order from the characters the key asks: mean, longest, couplets, bits it leaves, bits by step."""

    mean: float
    longest: int
    couplets: int
    bits_left: float
    bits_by_step: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Measures:
    """All measures of a key.

    Attributes:
        shape, bounds, greedy: see there.
        expected: expected couplets without error.
        bits_by_step: bits left about the result after 0, 1, 2, ... couplets of the key, without error, to one
            who knows the place in the key alone.
        rates: error rates by name (`RATES`, `OWN`).
        below: couplet by couplet against the best order there is.
        unseparated: pairs of results that nothing separates.
        thin: pairs with a dangerous result that too few independence groups separate for it ever to be ruled out.
        pair_count: pairs looked at.
        capacities: character -> most bits that one report of it carries, largest first.
        least_reports: no way of asking the characters directly gets as far as the key, at its own rates, with fewer.
        towards, away: cheapest misread path to each dangerous result, and from it to an end that does not name it.
        named_outside: result for what is not in the key -> chance that a specimen of it ends under a name.
    """

    shape: Shape
    bounds: Bounds
    expected: float
    greedy: Greedy
    bits_by_step: tuple[float, ...]
    rates: Mapping[str, ErrorRates]
    below: tuple[Excess, ...]
    unseparated: tuple[Pair, ...]
    thin: tuple[Pair, ...]
    pair_count: int
    capacities: Mapping[str, float]
    least_reports: float
    towards: Mapping[str, MisreadPath]
    away: Mapping[str, MisreadPath]
    named_outside: Mapping[str, float]


def measure(tables: Tables, settings: Settings | None = None) -> Measures:
    """Measure the key of `tables`, its results as common as they are in the circumstances of `settings`.

    Specimens are those of the described results; what stands for animals that are not in the key is left out, save
    in `named_outside`. Deterministic. Raises UserError where the key leads to no result that can be weighed.
    """
    given = settings or Settings()
    plain = as_described(tables)
    graph = routes(tables.keyset)
    ways = {taxon: Way(plain, graph, taxon) for taxon in graph.ends}
    rows = _row_weights(plain, graph, given)
    weights = {t: w for t in graph.ends if (w := float(sum(rows[r] for r in plain.rows_of[t]))) > 0}
    free = same_error(graph, 0.0)
    own = own_errors(plain, graph)
    rates = {name: error_rates(plain, graph, ways, rows, same_error(graph, e)) for name, e in RATES.items()}
    rates[OWN] = error_rates(plain, graph, ways, rows, own)
    asked = frozenset().union(*graph.asked.values())
    order = greedy_order(plain, weights, characters=asked, bits_left=CLOSE_ENOUGH)
    capacities = {name: character_capacity(table) for name, table in plain.characters.items()}
    told = rates[OWN].bits_before - rates[OWN].bits_left
    best = max(capacities.values(), default=0.0)
    found = pairs(plain)
    towards, away = misread_paths(plain, graph, own)
    return Measures(
        shape=Shape(len(graph.couplets), len(graph.ends), graph.rejoining, graph.longest),
        bounds=_bounds(plain, weights, rows),
        expected=rates["0 %"].couplets,
        greedy=Greedy(order.mean, order.longest, order.couplets, order.bits_left, tuple(order.bits_by_step())),
        bits_by_step=_bits_by_step(ways, weights, free),
        rates=rates,
        below=excess_below(plain, graph, ways, weights),
        unseparated=tuple(pair for pair in found if not pair.groups),
        thin=tuple(p for p in found if p.danger and 0 < len(p.groups) < tables.weights.ruled_out_answers),
        pair_count=len(found),
        capacities=dict(sorted(capacities.items(), key=lambda item: (-item[1], item[0]))),
        least_reports=told / best if best > 0 else 0.0,
        towards=towards,
        away=away,
        named_outside={
            taxon: 1.0 - sum(p for end, p in way.flow(free).ends.items() if tables.keyset.taxa[end].outside)
            for taxon, way in ways.items()
            if tables.keyset.taxa[taxon].outside
        },
    )


def _row_weights(tables: Tables, graph: Routes, settings: Settings) -> Floats:
    """Prior masses of the rows that the key leads to and that describe something; they sum to 1."""
    ends = set(graph.ends)
    taxa = tables.keyset.taxa
    counts = [r.taxon != OUTSIDE and r.taxon in ends and not taxa[r.taxon].outside for r in tables.rows]
    rows = np.where(counts, prior(tables, settings), 0.0)
    if rows.sum() <= 0:
        raise UserError("The key leads to no described result.", fix="Let a lead go to a taxon.")
    return np.asarray(rows / rows.sum())


def _bounds(tables: Tables, weights: Mapping[str, float], rows: Floats) -> Bounds:
    results = list(weights.values())
    groups = [float(w) for w in tables.group_sums(rows) if w > 0]
    return Bounds(
        entropy=entropy(results),
        huffman=huffman(results).mean,
        entropy_groups=entropy(groups),
        huffman_groups=huffman(groups).mean,
        least_even=least_mean(len(results)),
        worst_even=worst_mean(len(results)),
        lies={k: lies_questions(len(results), k) for k in range(4)},
        lies_bits={k: lies_bits(results, k) for k in range(4)},
    )


def _bits_by_step(
    ways: Mapping[str, Way], weights: Mapping[str, float], errors: Mapping[str, float]
) -> tuple[float, ...]:
    """Entropy of the result given the place in the key, after each number of answers."""
    steps = {taxon: list(ways[taxon].by_step(errors)) for taxon in weights}
    left = []
    for step in range(max(len(places) for places in steps.values())):
        at: dict[str, list[float]] = {}
        for taxon, places in steps.items():
            for place, chance in places[min(step, len(places) - 1)].items():
                at.setdefault(place, []).append(weights[taxon] * chance)
        left.append(sum(sum(held) * entropy(held) for held in at.values()))
    return tuple(left)
