"""Exact propagation against hand-worked keys, brute force, and an independent simulation."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.measure.bounds import path_survival
from keyapp.measure.propagate import Way, as_described, own_errors, same_error
from keyapp.measure.routes import routes
from keyapp.model import AppliesTo, Form, Weights
from tests.builders import character, keyset, lead, taxon
from tests.measure.random_keys import random_key

DRAWS = 20_000


def chain(order):
    """A key that splits off one result after the other."""
    names = [f"t{i}" for i in order]
    made = {}
    for k, name in enumerate(names[:-1]):
        ahead = f"couplet:q{k + 1}" if k + 2 < len(names) else f"taxon:{names[-1]}"
        made[f"q{k}"] = (lead(f"taxon:{name}", **{name: "yes"}), lead(ahead, **{name: "no"}))
    characters = [character(name, "yes no") for name in names]
    taxa = [taxon(name, {other: "yes" if other == name else "no" for other in names}) for name in names]
    return as_described(build_tables(keyset(characters, taxa, made)))


def follow(tables, name, error=0.0):
    graph = routes(tables.keyset)
    return Way(tables, graph, name).flow(same_error(graph, error))


@pytest.mark.parametrize(("order", "expected"), [((0, 1, 2, 3, 4), 2.2), ((4, 3, 2, 1, 0), 3.3)])
def test_one_at_a_time(order, expected):
    """Commonest first and rarest first."""
    chances = (0.4, 0.2, 0.2, 0.1, 0.1)
    tables = chain(order)
    mean = sum(p * follow(tables, f"t{i}").couplets for i, p in enumerate(chances))
    assert mean == pytest.approx(expected)


@pytest.mark.parametrize("couplets", [5, 8, 10])
@pytest.mark.parametrize("error", [0.05, 0.1, 0.2])
def test_the_last_of_a_chain_survives_every_couplet(couplets, error):
    tables = chain(range(couplets + 1))
    assert follow(tables, f"t{couplets}", error).ends[f"t{couplets}"] == pytest.approx(
        path_survival(1 - error, couplets)
    )


def both_ways(share):
    return as_described(
        build_tables(
            keyset(
                [character("c", "x y z"), character("d", "p q")],
                [taxon("a", {"c": {"x": share, "y": 1 - share}, "d": "p"}), taxon("b", {"c": "y", "d": "q"})],
                {
                    "one": (lead("couplet:two", c="x"), lead("couplet:three", c="y z")),
                    "two": (lead("taxon:a", d="p"), lead("taxon:b", d="q")),
                    "three": (lead("couplet:two", c="y"), lead("taxon:b", c="x z")),
                },
                weights=Weights(unlisted=0.1),
            )
        )
    )


def test_a_result_that_goes_both_ways_is_split_by_its_frequencies():
    flow = follow(both_ways(0.7), "a")
    assert flow.visits == pytest.approx({"k/one": 1.0, "k/three": 0.3, "k/two": 1.0})
    assert flow.couplets == pytest.approx(2.3)


def test_a_state_once_drawn_is_kept():
    """Where `one` sent the animal by y, `three` asks of y again: it is y."""
    assert follow(both_ways(0.7), "a").ends == pytest.approx({"a": 1.0})


def test_what_does_not_apply_is_answered_at_random():
    tables = as_described(
        build_tables(
            keyset(
                [character("legs", "six eight", applies_to=AppliesTo(forms=("animal",)))],
                [taxon("a", {"legs": "six"}), taxon("b", {"legs": "eight"}), taxon("w", {}, form=Form.WEB)],
                {"only": (lead("taxon:a", legs="six"), lead("taxon:b", legs="eight"))},
            )
        )
    )
    flow = follow(tables, "w", 0.2)
    assert flow.ends == pytest.approx({"a": 0.5, "b": 0.5})
    assert flow.inapplicable == {"k/only": 1.0}


def test_where_neither_lead_fits_it_is_told():
    tables = as_described(
        build_tables(
            keyset(
                [character("c", "x y z")],
                [taxon("a", {"c": {"x": 0.75, "z": 0.25}}), taxon("b", {"c": "y"})],
                {"only": (lead("taxon:a", c="x"), lead("taxon:b", c="y"))},
            )
        )
    )
    flow = follow(tables, "a")
    assert flow.neither == {"k/only": 0.25}
    assert flow.ends == pytest.approx({"a": 0.875, "b": 0.125})


@pytest.mark.parametrize("seed", range(12))
def test_chances_sum_to_one_and_slips_are_what_a_couplet_without_error_saves(seed):
    tables = random_key(seed)
    graph = routes(tables.keyset)
    errors = own_errors(tables, graph)
    cost = {end: float(i) for i, end in enumerate(graph.ends)}
    for name in tables.keyset.taxa:
        way = Way(tables, graph, name)
        flow = way.flow(errors)
        assert sum(flow.ends.values()) == pytest.approx(1.0)
        mean = sum(p * cost[end] for end, p in flow.ends.items())
        lost = way.slips(errors, cost)
        for couplet in graph.couplets:
            without = way.flow({**errors, couplet: 0.0})
            saved = mean - sum(p * cost[end] for end, p in without.ends.items())
            assert lost.get(couplet, 0.0) == pytest.approx(saved, abs=1e-12)


@pytest.mark.parametrize("seed", range(12))
def test_step_by_step_comes_to_the_same_ends(seed):
    tables = random_key(seed)
    graph = routes(tables.keyset)
    errors = own_errors(tables, graph)
    for name in tables.keyset.taxa:
        way = Way(tables, graph, name)
        steps = list(way.by_step(errors))
        assert all(sum(places.values()) == pytest.approx(1.0) for places in steps)
        assert len(steps) <= graph.longest + 1
        assert steps[-1] == pytest.approx({f"={end}": p for end, p in way.flow(errors).ends.items()})
        asked = sum(p for places in steps for place, p in places.items() if not place.startswith("="))
        assert asked == pytest.approx(way.flow(errors).couplets)
        assert way.asked_from(errors)[graph.start] == pytest.approx(asked)


def simulate(keyset, name, error, rng):
    """One follower, written from the rules alone: where it ends and after how many couplets."""
    described = keyset.taxa[name]
    shown = {}
    couplet, asked = keyset.couplets[keyset.keys["k"].start], 0
    while True:
        asked += 1
        applies = True
        for character_id in sorted({c for one in couplet.leads for c in one.holds}):
            forms = keyset.characters[character_id].applies_to.forms
            applies = applies and (not forms or str(described.form) in forms)
            if applies and character_id not in shown:
                states = described.shows[character_id]
                (shown[character_id],) = rng.choices(list(states), list(states.values()))
        fits = [applies and all(shown[c] in s for c, s in one.holds.items()) for one in couplet.leads]
        chosen = int(rng.random() < 0.5) if fits[0] == fits[1] else fits.index(True)
        chosen = 1 - chosen if rng.random() < error else chosen
        target = couplet.leads[chosen].to
        if target.kind == "taxon":
            return target.id, asked
        couplet = keyset.couplets[target.id]


@pytest.mark.parametrize(("seed", "name", "error"), [(1, "t0", 0.1), (5, "t1", 0.2), (9, "t3", 0.05)])
def test_propagation_agrees_with_sampling(seed, name, error):
    """20,000 seeded draws; every share within 4.5 standard deviations."""
    tables = random_key(seed)
    rng = random.Random(seed)
    ends = {}
    asked = []
    for _ in range(DRAWS):
        end, couplets = simulate(tables.keyset, name, error, rng)
        ends[end] = ends.get(end, 0) + 1
        asked.append(couplets)
    flow = follow(tables, name, error)
    assert set(ends) <= set(flow.ends)
    for end, chance in flow.ends.items():
        spread = math.sqrt(chance * (1 - chance) / DRAWS)
        assert abs(ends.get(end, 0) / DRAWS - chance) <= 4.5 * spread + 1e-9
    assert abs(np.mean(asked) - flow.couplets) <= 4.5 * np.std(asked) / math.sqrt(DRAWS) + 1e-9


@pytest.mark.parametrize("seed", range(12))
def test_the_longest_path_by_walking_all(seed):
    graph = routes(random_key(seed).keyset)

    def longest(couplet):
        return 1 + max(longest(hop.couplet) if hop.couplet else 0 for hop in graph.hops[couplet])

    assert graph.longest == longest(graph.start)
    places = {couplet: i for i, couplet in enumerate(graph.couplets)}
    assert all(places[c] < places[h.couplet] for c, pair in graph.hops.items() for h in pair if h.couplet)
