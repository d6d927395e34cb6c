"""Misread paths against every path of tiny keys."""

from __future__ import annotations

import math

import pytest

from keyapp.engine import build_tables
from keyapp.measure.misread_paths import misread_paths
from keyapp.measure.propagate import as_described, own_errors, same_error
from keyapp.measure.routes import routes
from keyapp.model import Danger, TargetKind
from tests.builders import character, keyset, lead, taxon
from tests.measure.random_keys import random_key


def all_paths(keyset, couplet):
    """Every run of (couplet, lead) from a couplet to an end."""
    for index, one in enumerate(keyset.couplets[couplet].leads):
        if one.to.kind is TargetKind.TAXON:
            yield [(couplet, index)], one.to.id
        else:
            for rest, end in all_paths(keyset, one.to.id):
                yield [(couplet, index), *rest], end


def step_cost(keyset, name, couplet, index, error):
    """From the descriptions alone: how unlikely the lead is against the likelier one."""
    described = keyset.taxa[name]
    fits = []
    for one in keyset.couplets[couplet].leads:
        fit = 1.0
        for c, states in one.holds.items():
            fit *= sum(p for s, p in described.shows.get(c, {}).items() if s in states)
        fits.append(fit)
    asked = {c for one in keyset.couplets[couplet].leads for c in one.holds}
    even = sum(fits) == 0 or any(c not in described.shows for c in asked)
    told = []
    for fit in fits:
        share = 0.5 if even else fit / sum(fits)
        told.append((1 - error) * share + error * (1 - share))
    return -math.log(told[index] / max(told))


@pytest.mark.parametrize("seed", range(15))
def test_the_cheapest_of_all_paths(seed):
    """A missing description in these keys is that of a character that does not apply."""
    tables = random_key(seed)
    graph = routes(tables.keyset)
    errors = own_errors(tables, graph)
    danger = {t.id: t.danger_group for t in tables.keyset.taxa.values()}
    costs = {
        (name, end): min(
            sum(step_cost(tables.keyset, name, c, i, errors[c]) for c, i in path)
            for path, to in all_paths(tables.keyset, graph.start)
            if to == end
        )
        for name in danger
        for end in graph.ends
    }
    towards, away = misread_paths(tables, graph, errors)
    wanted = {
        e: min(c for (n, to), c in costs.items() if to == e and danger[n] != danger[e]) for e in graph.ends if danger[e]
    }
    assert {end: path.cost for end, path in towards.items()} == pytest.approx(wanted)
    wanted = {
        n: min(c for (of, e), c in costs.items() if of == n and danger[e] != danger[n]) for n in danger if danger[n]
    }
    assert {name: path.cost for name, path in away.items()} == pytest.approx(wanted)
    for path in (*towards.values(), *away.values()):
        assert path.cost == pytest.approx(sum(turn.cost for turn in path.turns))


def test_turns_are_named_and_told_apart():
    """From the widow: one misreading. From the fly, which is at times red: a rarer state, then a misreading."""
    tables = as_described(
        build_tables(
            keyset(
                [character("colour", "black red"), character("legs", "six eight")],
                [
                    taxon("widow", {"colour": "red", "legs": "eight"}, danger=Danger.SIGNIFICANT),
                    taxon("fly", {"colour": {"black": 0.8, "red": 0.2}, "legs": "six"}),
                ],
                {
                    "colour": (lead("couplet:legs", colour="red"), lead("taxon:fly", colour="black")),
                    "legs": (lead("taxon:widow", legs="eight"), lead("taxon:fly", legs="six")),
                },
            )
        )
    )
    graph = routes(tables.keyset)
    towards, away = misread_paths(tables, graph, same_error(graph, 0.1))
    assert (away["widow"].end, away["widow"].misreads) == ("fly", 1)
    assert away["widow"].cost == pytest.approx(math.log(9))
    (rare, wrong) = towards["widow"].turns
    assert (rare.couplet, rare.lead, rare.misread) == ("k/colour", 1, False)
    assert (wrong.couplet, wrong.lead, wrong.misread) == ("k/legs", 1, True)
    assert rare.cost == pytest.approx(-math.log((0.9 * 0.2 + 0.1 * 0.8) / (0.9 * 0.8 + 0.1 * 0.2)))
