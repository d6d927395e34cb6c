"""The best order against Huffman, a restricted case with a known optimum, and plain recursion."""

from __future__ import annotations

import itertools
from functools import cache

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.measure.bounds import entropy, huffman, least_restricted_total
from keyapp.measure.excess import excess_below
from keyapp.measure.optimum import Splitting, best_mean, items_of, splittings
from keyapp.measure.propagate import Way, as_described
from keyapp.measure.routes import routes
from tests.builders import character, keyset, lead, taxon
from tests.measure.published import animals, tables_of
from tests.measure.random_keys import random_key
from tests.measure.test_bounds import CHANCES


def splits_of(count, most):
    """Every question that singles out up to `most` of `count` ends."""
    whole = (1 << count) - 1
    masks = (m for m in range(1, whole) if m.bit_count() <= most)
    return [Splitting(mask, whole) for mask in masks]


@pytest.mark.parametrize("chances", CHANCES)
def test_with_every_split_it_is_huffman(chances):
    ends = len(chances)
    assert best_mean(chances, range(ends), splits_of(ends, ends)) == pytest.approx(huffman(chances).mean)


@pytest.mark.parametrize(("ends", "total"), [(5, 12), (6, 16), (7, 20), (8, 25), (12, 47)])
def test_with_questions_about_three_at_most(ends, total):
    """A formula by Hyafil & Rivest, in `least_restricted_total`; 47 for twelve ends."""
    best = best_mean([1.0] * ends, range(ends), splits_of(ends, 3))
    assert round(best * ends, 9) == total == least_restricted_total(ends)


def by_recursion(weights, labels, splits):
    """The same without bounds, bit tricks or sharing of work beyond a cache."""

    @cache
    def least(held):
        if len({labels[i] for i in held}) < 2:
            return 0.0
        found = []
        for split in splits:
            if all(split.able >> i & 1 for i in held):
                one = frozenset(i for i in held if split.first >> i & 1)
                if one and one != held:
                    found.append(least(one) + least(held - one))
        return sum(weights[i] for i in held) + min(found) if found else 0.0

    return least(frozenset(range(len(weights)))) / sum(weights)


@pytest.mark.parametrize("seed", range(40))
def test_tiny_cases_by_recursion(seed):
    """Labels shared, items that nothing tells apart, and in every other case couplets that cannot be asked of all."""
    rng = np.random.default_rng(seed)
    count = int(rng.integers(2, 9))
    whole = (1 << count) - 1
    weights = rng.dirichlet(np.ones(count)).tolist()
    labels = rng.integers(0, 5, count).tolist()
    able = [whole if seed % 2 else int(rng.integers(1, whole + 1)) | int(rng.integers(1, whole + 1)) for _ in range(6)]
    splits = [Splitting(int(rng.integers(0, whole + 1)) & a, a) for a in able]
    assert best_mean(weights, labels, splits) == pytest.approx(by_recursion(weights, labels, splits))


def test_too_many_sets_give_no_answer():
    assert best_mean([1.0] * 9, range(9), splits_of(9, 9), most_subsets=20) is None


def test_splittings_are_the_two_lead_couplets_of_a_character():
    """Four states give seven couplets, and three are left where one state is not there."""
    characters = [character("c", "w x y z")]
    tables = as_described(build_tables(keyset(characters, [taxon(s, {"c": s}) for s in "wxyz"])))
    assert len(splittings(items_of(tables, dict.fromkeys("wxyz", 1.0), ["c"]))) == 7
    assert len(splittings(items_of(tables, dict.fromkeys("xyz", 1.0), ["c"]))) == 3


def test_a_result_that_goes_both_ways_is_an_item_for_each():
    tables = as_described(
        build_tables(
            keyset(
                [character("c", "x y"), character("d", "p q")],
                [taxon("a", {"c": {"x": 0.25, "y": 0.75}, "d": "p"}), taxon("b", {"c": "y", "d": "q"})],
            )
        )
    )
    items = items_of(tables, {"a": 0.4, "b": 0.6}, ["c", "d"])
    assert sorted((i.label, round(i.weight, 9)) for i in items) == [("a", 0.1), ("a", 0.3), ("b", 0.6)]


def test_too_many_items_give_none():
    tables = as_described(tables_of(animals()))
    weights = {f"a{i}": 1.0 for i in range(20)}
    assert items_of(tables, weights, tables.characters, most=10) is None


@pytest.mark.parametrize("seed", range(8))
def test_below_a_couplet_the_best_beats_neither_entropy_nor_what_is_written(seed):
    """Keys without the freedom to join characters in a lead: the written part cannot be shorter than the best."""
    rng = np.random.default_rng(seed)
    names = [f"c{i}" for i in range(4)]
    patterns = list(itertools.product("xy", repeat=4))
    picked = rng.choice(len(patterns), size=6, replace=False)
    taxa = [taxon(f"t{k}", dict(zip(names, patterns[p], strict=True))) for k, p in enumerate(picked)]
    made = {}

    def grow(held, used):
        """A tree that splits on any character that splits; returns where a lead to it goes."""
        if len(held) == 1:
            return f"taxon:{held[0].id}"
        free = [n for n in names if n not in used and len({frozenset(t.shows[n]) for t in held}) == 2]
        name = str(rng.choice(free))
        couplet = f"q{len(made)}"
        made[couplet] = None
        sides = [[t for t in held if s in t.shows[name]] for s in "xy"]
        made[couplet] = tuple(lead(grow(side, {*used, name}), **{name: s}) for side, s in zip(sides, "xy", strict=True))
        return f"couplet:{couplet}"

    grow(taxa, set())
    tables = as_described(build_tables(keyset([character(n, "x y") for n in names], taxa, made)))
    graph = routes(tables.keyset)
    weights = dict(zip((t.id for t in taxa), rng.dirichlet(np.ones(6)).tolist(), strict=True))
    ways = {name: Way(tables, graph, name) for name in graph.ends}
    for part in excess_below(tables, graph, ways, weights):
        below = {hop.taxon for c in reach(graph, part.couplet) for hop in graph.hops[c] if hop.taxon}
        assert part.share == pytest.approx(sum(weights[t] for t in below))
        assert part.results == len(below)
        assert entropy([weights[t] for t in below]) - 1e-9 <= part.best <= part.written + 1e-9


def reach(graph, couplet):
    return {couplet}.union(*(reach(graph, hop.couplet) for hop in graph.hops[couplet] if hop.couplet))


@pytest.mark.parametrize("seed", range(6))
def test_what_is_written_below_the_start_is_the_whole_key(seed):
    tables = random_key(seed)
    graph = routes(tables.keyset)
    ways = {name: Way(tables, graph, name) for name in tables.keyset.taxa}
    weights = dict.fromkeys(tables.keyset.taxa, 0.2)
    free = dict.fromkeys(graph.couplets, 0.0)
    whole = next(part for part in excess_below(tables, graph, ways, weights) if part.couplet == graph.start)
    assert whole.share == pytest.approx(1.0)
    assert whole.written == pytest.approx(sum(0.2 * way.flow(free).couplets for way in ways.values()))
