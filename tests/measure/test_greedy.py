"""The greedy order against the optimum, the bounds, published tables and an independent tree grower."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.measure.bounds import entropy, huffman
from keyapp.measure.greedy import greedy_order
from keyapp.measure.optimum import best_mean, items_of, splittings
from keyapp.measure.propagate import as_described
from tests.builders import character, keyset, taxon
from tests.measure.published import animals, tables_of, zoo

CLOSE = 1.05
"""Our mean number of questions is at most this times that of the tree grower; and that of the optimum."""


def table(seed, *, both):
    """Tables of six results over four characters; some show two states where `both`."""
    rng = np.random.default_rng(seed)
    states = [[f"s{k}" for k in range(int(rng.integers(2, 4)))] for _ in range(4)]
    taxa = []
    for t in range(6):
        shows = {}
        for i, s in enumerate(states):
            picked = rng.choice(s, size=2 if both and rng.random() < 0.3 else 1, replace=False).tolist()
            shows[f"c{i}"] = dict(zip(picked, rng.dirichlet(np.ones(len(picked))).tolist(), strict=True))
        taxa.append(taxon(f"t{t}", shows))
    tables = build_tables(keyset([character(f"c{i}", " ".join(s)) for i, s in enumerate(states)], taxa))
    return as_described(tables), dict(zip((t.id for t in taxa), rng.dirichlet(np.ones(6)).tolist(), strict=True))


def best_of(tables, weights, labels=None):
    items = items_of(tables, weights, tables.characters, labels)
    return best_mean([i.weight for i in items], [i.label for i in items], splittings(items), most_subsets=100_000)


@pytest.mark.parametrize(("seed", "both"), list(itertools.product(range(15), (False, True))))
def test_never_better_than_the_optimum_nor_the_bound(seed, both):
    """And never beyond the guarantee for it, 4 ln(1/p) times the optimum, p the rarest (Dasgupta 2004)."""
    tables, weights = table(seed, both=both)
    order = greedy_order(tables, weights)
    best = best_of(tables, weights)
    told = entropy(list(weights.values())) - order.bits_left
    assert told - 1e-4 <= order.mean
    assert best - 1e-4 <= order.mean <= 4 * math.log(1 / min(weights.values())) * best


@pytest.mark.parametrize("seed", range(15))
def test_its_branches_hold_what_comes_to_them(seed):
    tables, weights = table(seed, both=True)
    order = greedy_order(tables, weights)
    inner = [branch for branch in order.root.each() if branch.ahead]
    for branch in inner:
        assert sum(b.weight for b in branch.ahead) == pytest.approx(branch.weight, abs=1e-4)
        assert branch.states and branch.others and not branch.states & branch.others
        assert sum(b.bits_left for b in branch.ahead) < branch.bits_left
    assert order.mean == pytest.approx(sum(b.weight for b in inner))
    assert order.bits_left == pytest.approx(sum(b.bits_left for b in order.root.each() if not b.ahead))
    steps = order.bits_by_step()
    assert len(steps) == order.longest + 1
    assert steps[0] == pytest.approx(entropy(list(weights.values())))
    assert steps[-1] == pytest.approx(order.bits_left)
    assert sorted(steps, reverse=True) == pytest.approx(steps)


def test_a_character_of_many_states_is_met_again():
    """Eight results, one character of eight states: three couplets each."""
    letters = "abcdefgh"
    tables = build_tables(keyset([character("c", " ".join(letters))], [taxon(f"t{s}", {"c": s}) for s in letters]))
    order = greedy_order(as_described(tables), {f"t{s}": 1 / 8 for s in letters})
    assert (order.mean, order.couplets, order.longest, order.bits_left) == (3.0, 7, 3, 0.0)


def test_a_result_that_goes_both_ways_goes_both_ways_in_parts():
    tables = build_tables(
        keyset([character("c", "x y")], [taxon("a", {"c": {"x": 0.25, "y": 0.75}}), taxon("b", {"c": "y"})])
    )
    order = greedy_order(as_described(tables), {"a": 0.5, "b": 0.5})
    parts = {branch.weight: branch.labels for branch in order.root.ahead}
    assert parts == {0.125: {"a": 0.125}, 0.875: {"a": 0.375, "b": 0.5}}


def test_a_state_once_settled_is_not_drawn_again():
    """The parts of `a` beyond x|y,z: that with y or z splits on y|z by what is left of its frequencies."""
    tables = build_tables(
        keyset(
            [character("c", "x y z")],
            [taxon("a", {"c": {"x": 0.5, "y": 0.25, "z": 0.25}}), taxon("b", {"c": "x"}), taxon("d", {"c": "y"})],
        )
    )
    order = greedy_order(as_described(tables), {"a": 0.4, "b": 0.3, "d": 0.3})
    ends = [b.labels for b in order.root.each() if not b.ahead]
    assert sorted((round(sum(e.values()), 9), sorted(e)) for e in ends) == [
        (0.1, ["a"]),
        (0.4, ["a", "d"]),
        (0.5, ["a", "b"]),
    ]


def test_it_stops_at_the_bits_asked_for():
    tables, weights = table(3, both=False)
    full, part = greedy_order(tables, weights), greedy_order(tables, weights, bits_left=0.8)
    assert full.bits_left < part.bits_left <= 0.8
    assert part.mean < full.mean


def even(rows):
    return {f"a{i}": 1 / len(rows) for i in range(len(rows))}


def test_zoo_types_against_the_bounds_and_the_optimum():
    rows = zoo()
    tables = as_described(tables_of(rows, "type"))
    labels = {f"a{i}": row["type"] for i, row in enumerate(rows)}
    order = greedy_order(tables, even(rows), labels)
    counts = [list(labels.values()).count(kind) for kind in sorted(set(labels.values()))]
    assert order.bits_left == pytest.approx(0.0, abs=1e-9)
    best = best_of(tables, even(rows), labels)
    assert entropy(counts) <= huffman(counts).mean <= best <= order.mean <= CLOSE * best


def test_published_animals_against_the_optimum():
    """Five values are missing; such animals go both ways, as often as the others do."""
    rows = animals()
    tables = as_described(tables_of(rows))
    order = greedy_order(tables, even(rows))
    best = best_of(tables, even(rows))
    assert entropy([1] * len(rows)) - order.bits_left - 1e-4 <= best <= order.mean <= CLOSE * best


def patterns_of(rows, column):
    """The table as numbers, what is to be told (rows alike count as one), and weights of the alike."""
    columns = [c for c in rows[0] if c not in ("name", "type")]
    values = [tuple(float({"no": 0, "yes": 1}.get(row[c], row[c] or "nan")) for c in columns) for row in rows]
    labels = [row[column] if column else str(value) for row, value in zip(rows, values, strict=True)]
    return np.array(values), labels


@pytest.mark.outside
@pytest.mark.filterwarnings("ignore:The number of unique classes")
@pytest.mark.parametrize(
    ("rows", "column"),
    [
        (zoo(), "type"),
        (zoo(), ""),
        ([row for row in animals() if "" not in row.values()], ""),
    ],
    ids=["zoo types", "zoo animals", "animals without blanks"],
)
def test_as_short_as_an_entropy_tree_of_scikit_learn(rows, column):
    """Mean number of questions over the table. Its trees split numbers at a threshold, ours states in any two lots."""
    tree = pytest.importorskip("sklearn.tree")
    values, labels = patterns_of(rows, column)
    grown = tree.DecisionTreeClassifier(criterion="entropy", random_state=0).fit(values, labels)
    theirs = float(grown.decision_path(values).sum(axis=1).mean()) - 1
    assert list(grown.predict(values)) == labels
    named = {f"a{i}": label for i, label in enumerate(labels)}
    ours = greedy_order(as_described(tables_of(rows, "type")), even(rows), named)
    assert ours.bits_left == pytest.approx(0.0, abs=1e-9)
    counts = [labels.count(label) for label in sorted(set(labels))]
    assert entropy(counts) <= min(ours.mean, theirs)
    assert ours.mean <= CLOSE * theirs
