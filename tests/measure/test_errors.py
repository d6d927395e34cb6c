"""Errors and danger misses by hand, on keys of one or two couplets."""

from __future__ import annotations

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.measure.bounds import answer_bits, entropy
from keyapp.measure.errors import error_rates
from keyapp.measure.propagate import Way, as_described, same_error
from keyapp.measure.routes import routes
from keyapp.model import Danger, Form
from tests.builders import character, keyset, lead, taxon

BAD = Danger.SIGNIFICANT


def rates(tables, masses, error):
    """`masses` by taxon and kind."""
    graph = routes(tables.keyset)
    ways = {name: Way(tables, graph, name) for name in graph.ends}
    rows = np.array([masses.get((row.taxon, row.kind), 0.0) for row in tables.rows])
    return error_rates(tables, graph, ways, rows, same_error(graph, error))


def key(characters, taxa, couplets):
    return as_described(build_tables(keyset(characters, taxa, couplets)))


@pytest.fixture
def two_couplets():
    """Widow or not by colour; a widow's colour leads on to the pattern that tells fly from outside."""
    return key(
        [character("colour", "red grey"), character("legs", "six eight")],
        [
            taxon("widow", {"colour": "red", "legs": "eight"}, danger=BAD),
            taxon("fly", {"colour": "grey", "legs": "six"}),
            taxon("other", {"colour": "grey", "legs": "eight"}, outside=True),
        ],
        {
            "colour": (lead("taxon:widow", colour="red"), lead("couplet:legs", colour="grey")),
            "legs": (lead("taxon:fly", legs="six"), lead("taxon:other", legs="eight")),
        },
    )


def test_a_missed_danger_that_ends_outside_the_key_is_not_unwarned(two_couplets):
    found = rates(two_couplets, {("widow", "widow"): 0.25, ("fly", "fly"): 0.75}, 0.1)
    widow = next(t for t in found.taxa if t.taxon == "widow")
    assert widow.danger_miss == widow.error == pytest.approx(0.1)
    assert widow.unwarned == pytest.approx(0.1 * 0.1)
    fly = next(t for t in found.taxa if t.taxon == "fly")
    assert fly.danger_miss is None
    assert fly.error == pytest.approx(1 - 0.9**2)
    assert found.error == pytest.approx(0.25 * 0.1 + 0.75 * 0.19)
    assert found.danger_miss == pytest.approx(0.1)
    assert [t.taxon for t in found.taxa] == ["widow", "fly"]


def test_what_each_couplet_loses(two_couplets):
    found = rates(two_couplets, {("widow", "widow"): 0.25, ("fly", "fly"): 0.75}, 0.1)
    colour, legs = found.losses
    assert (colour.couplet, legs.couplet) == ("k/colour", "k/legs")
    assert colour.error_lost == pytest.approx(0.25 * 0.1 + 0.75 * (0.19 - 0.1))
    assert legs.error_lost == pytest.approx(0.75 * (0.19 - 0.1))
    assert (colour.danger_lost, legs.danger_lost) == pytest.approx((0.1, 0.0))
    assert (colour.visits, legs.visits) == pytest.approx((1.0, 0.25 * 0.1 + 0.75 * 0.9))


def test_bits_of_one_couplet_are_those_of_its_channel():
    """Two even groups, one couplet: what is told is just what one answer can carry."""
    tables = key(
        [character("c", "x y")],
        [taxon("a", {"c": "x"}), taxon("b", {"c": "y"})],
        {"only": (lead("taxon:a", c="x"), lead("taxon:b", c="y"))},
    )
    found = rates(tables, {("a", "a"): 0.5, ("b", "b"): 0.5}, 0.1)
    assert found.bits_before == 1.0
    assert found.bits_left == pytest.approx(1 - answer_bits(0.1))
    assert found.least_couplets == pytest.approx(1.0)


def test_a_sign_names_the_danger_of_its_maker():
    """A web made by widow or by house spider: its own end is right for both, another web for the house spider alone."""
    tables = key(
        [character("web", "tangle sheet")],
        [
            taxon("widow", {}, danger=BAD, kind="widow"),
            taxon("house", {}, kind="house"),
            taxon("tangle-web", {"web": "tangle"}, form=Form.WEB, kind="tangle-web", made_by=("widow", "house")),
            taxon("sheet-web", {"web": "sheet"}, form=Form.WEB, kind="sheet-web", made_by=("house",)),
        ],
        {"only": (lead("taxon:tangle-web", web="tangle"), lead("taxon:sheet-web", web="sheet"))},
    )
    found = rates(tables, {("tangle-web", "widow"): 0.2, ("tangle-web", "house"): 0.8}, 0.1)
    (web,) = found.taxa
    assert web.error == pytest.approx(0.2 * 0.1)
    assert web.danger_miss == web.unwarned == pytest.approx(0.1)
    assert found.danger_by_group == pytest.approx({"widow": 0.1})
    assert found.bits_before == pytest.approx(entropy([0.2, 0.8]))


def test_rare_dangers_count_as_much_in_what_couplets_lose():
    """Danger groups of mass 0.9 and 0.1: each adds half of its own miss."""
    tables = key(
        [character("c", "x y z"), character("d", "p q")],
        [
            taxon("often", {"c": "x", "d": "p"}, danger=BAD),
            taxon("rare", {"c": "y", "d": "p"}, danger=BAD),
            taxon("fly", {"c": "z", "d": "q"}),
        ],
        {
            "first": (lead("taxon:often", c="x"), lead("couplet:then", c="y z")),
            "then": (lead("taxon:rare", d="p"), lead("taxon:fly", d="q")),
        },
    )
    found = rates(tables, {("often", "often"): 0.9, ("rare", "rare"): 0.1}, 0.1)
    assert found.danger_by_group == pytest.approx({"often": 0.1, "rare": 0.19})
    assert [c.danger_lost for c in found.losses] == pytest.approx([(0.1 + 0.09) / 2, 0.09 / 2])
