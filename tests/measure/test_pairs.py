"""Pairs that nothing separates: by hand on tiny keys, by brute force on a published table."""

from __future__ import annotations

import itertools

import pytest

from keyapp.engine import build_tables
from keyapp.measure.pairs import pairs
from keyapp.model import AppliesTo, Danger, Form
from tests.builders import character, keyset, taxon
from tests.measure.published import animals, tables_of

BAD = Danger.SIGNIFICANT


def only(characters, one, two):
    (pair,) = pairs(build_tables(keyset(characters, [one, two])))
    return pair


@pytest.mark.parametrize(
    ("one", "two", "separated"),
    [
        ({"c": "x"}, {"c": "y"}, ("c",)),
        ({"c": {"x": 0.5, "y": 0.5}}, {"c": "y"}, ()),
        ({"c": {"x": 0.5, "y": 0.5}}, {"c": "z"}, ("c",)),
        ({"c": "x"}, {}, ()),
        ({}, {}, ()),
    ],
)
def test_disjoint_states_separate(one, two, separated):
    assert only([character("c", "x y z")], taxon("a", one), taxon("b", two)).separated_by == separated


@pytest.mark.parametrize(("danger", "separated"), [(BAD, ()), (Danger.MINOR, ("c",))])
def test_what_never_clears_separates_only_where_nothing_is_dangerous(danger, separated):
    characters = [character("c", "x y", never_clears="colour")]
    pair = only(characters, taxon("a", {"c": "x"}, danger=danger), taxon("b", {"c": "y"}))
    assert pair.separated_by == separated


@pytest.mark.parametrize(("other", "separated"), [("none", ()), ("mark", ("c",)), ({"none": 0.5, "mark": 0.5}, ("c",))])
def test_an_absence_alone_never_clears_a_danger(other, separated):
    characters = [character("c", "none mark hourglass", absent="none")]
    pair = only(characters, taxon("a", {"c": "hourglass"}, danger=BAD), taxon("b", {"c": other}))
    assert pair.separated_by == separated


def test_a_dangerous_one_that_lacks_something_is_cleared_by_its_presence():
    characters = [character("c", "none mark", absent="none")]
    assert only(characters, taxon("a", {"c": "none"}, danger=BAD), taxon("b", {"c": "mark"})).separated_by == ("c",)


def test_what_does_not_apply_to_both_does_not_separate():
    characters = [character("c", "x y", applies_to=AppliesTo(groups=("Aidae",)))]
    assert only(characters, taxon("a", {"c": "x"}), taxon("b", {"c": "y"})).separated_by == ()


def test_groups_count_once():
    characters = [character("c", "x y", group="g"), character("d", "x y", group="g"), character("e", "x y")]
    pair = only(characters, taxon("a", {"c": "x", "d": "x", "e": "x"}), taxon("b", {"c": "y", "d": "y", "e": "y"}))
    assert pair.groups == {"g", "e"}


@pytest.mark.parametrize("more", [{"family": "Aidae"}, {"form": Form.WEB}, {"outside": True}])
def test_of_one_group_or_of_another_form_or_outside_is_no_pair(more):
    tables = build_tables(keyset([character("c", "x y")], [taxon("a", {"c": "x"}), taxon("b", {"c": "y"}, **more)]))
    assert pairs(tables) == ()


def test_published_animals_that_the_six_attributes_do_not_separate():
    """A pair is not separated where every attribute is the same or missing for one of them."""
    rows = animals()
    columns = [c for c in rows[0] if c != "name"]
    wanted = {
        (one["name"], two["name"])
        for one, two in itertools.combinations(rows, 2)
        if all(one[c] == two[c] or not one[c] or not two[c] for c in columns)
    }
    found = {
        (rows[int(p.first[1:])]["name"], rows[int(p.second[1:])]["name"])
        for p in pairs(tables_of(rows))
        if not p.groups
    }
    assert found == wanted
    assert ("chi", "man") in found
