"""Settings of recipes: read by name, refused with the nearest name."""

from __future__ import annotations

import pytest

from keyapp.errors import UserError
from keyapp.model import Figure, Text
from keyapp.pictures.plans import PLANS, merged, planned
from keyapp.pictures.recipe import draw, recipes
from keyapp.pictures.settings import Settings


def figure(recipe: str, settings: dict) -> Figure:
    return Figure("f", Text.of("alt"), "credit", recipe, settings)


@pytest.mark.parametrize(
    ("recipe", "settings", "words"),
    [
        ("spidder", {}, "unknown recipe 'spidder'. Did you mean 'spider'?"),
        ("spider", {"plan": "wolff"}, "unknown plan 'wolff'. Did you mean 'wolf'?"),
        ("spider", {"plan": "wolf", "rng": []}, "unknown setting 'rng'. Did you mean 'ring'?"),
        ("spider", {"plan": "wolf", "legs": {"lenghts": [1]}}, "unknown setting 'lenghts'. Did you mean 'lengths'?"),
        ("spider", {"plan": "wolf", "legs": {"posture": "all-around"}}, "'all-around'. Did you mean 'all-round'?"),
        ("spider", {"plan": "wolf", "eyes": {"layout": "six-group"}}, "Did you mean 'six-close-group'?"),
        ("spider", {"plan": "wolf", "carapace": {"color": "brwn"}}, "'color' is no colour: 'brwn'."),
        ("spider", {"plan": "wolf", "abdomen": {"marks": [{"kind": "chevron"}]}}, "Did you mean 'chevrons'?"),
        ("spider", {"plan": "wolf", "bar": "five"}, "'bar' should be a number, not 'five'."),
        ("spider-face", {"layout": "three-pair"}, "Did you mean 'three-pairs'?"),
        ("spider-close", {"plan": "wolf", "focus": "back"}, "'focus' cannot be 'back'."),
        ("spider-underside", {"plan": "widow", "mark": "hourglass"}, "Did you mean 'red-hourglass'?"),
        ("spider-scene", {"scene": "jump"}, "Did you mean 'jumps'?"),
        ("spider-leg", {"plan": "wolf", "legz": {}}, "unknown setting 'legz'."),
    ],
)
def test_a_wrong_setting_names_the_figure_and_the_nearest_right_one(recipe, settings, words):
    with pytest.raises(UserError) as caught:
        draw(figure(recipe, settings))
    assert "figure f" in str(caught.value)
    assert words in str(caught.value)


def test_numbers_out_of_range_are_refused():
    with pytest.raises(UserError, match="between 0 and 1"):
        Settings({"shine": 3}).number("shine", 0.5, least=0, most=1)


@pytest.mark.parametrize("value", [True, "3", [1]])
def test_only_numbers_are_numbers(value):
    with pytest.raises(UserError, match="should be a number"):
        Settings({"x": value}).number("x", 1)


def test_pairs_of_numbers_must_be_whole_pairs():
    with pytest.raises(UserError, match="needs pairs"):
        draw(figure("spider", {"plan": "plain", "abdomen": {"marks": [{"kind": "spots", "at": [0.1, 0.2, 0.3]}]}}))


def test_laying_settings_over_a_plan_merges_groups_and_replaces_lists():
    base = {"legs": {"lengths": [1, 2], "thick": 0.2}, "seed": "a"}
    assert merged(base, {"legs": {"lengths": [3]}}) == {"legs": {"lengths": [3], "thick": 0.2}, "seed": "a"}


def test_a_plan_may_start_from_another():
    young = planned({"plan": "recluse-young"})
    assert young["eyes"]["layout"] == PLANS["recluse"]["eyes"]["layout"]
    assert young["carapace"]["length"] < PLANS["recluse"]["carapace"]["length"]


def test_the_recipes_of_spiders_are_found():
    assert {
        "spider",
        "spider-underside",
        "spider-side",
        "spider-face",
        "spider-close",
        "spider-leg",
        "spider-scene",
    } <= set(recipes())
