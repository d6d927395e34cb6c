"""What is seen without a lens tells look-alikes apart, and what a dangerous animal may truly show never clears it.

Facts: Carlton, Huval and Reagan, Southern house spider, LSU AgCenter (the male's long palps tell it from a recluse);
Cramer 2015, Journal of Arachnology 43:67-71 (recluses sit on a small network of silk); Scott, McCann and Andrade 2019,
Proceedings of the Royal Society B (widows run well on silk); Ubick and others 2005, Spiders of North America (a
recluse's abdomen is a flattened oval and hairy); Nixon, Shining for spiders, Illinois Natural History Survey (eyes of
wolf and fishing spiders glow in a light held at eye level); Agrarian sac spider, Penn State Extension (dark brown jaws
on a pale body); Bark scorpions, Banner Poison and Drug Information Center (the scorpion that climbs walls).
"""

from __future__ import annotations

import pytest

from keyapp.engine.safety import clearing_counts
from keyapp.pictures.recipe import draw
from keyapp.work import Enquiry

MAY_SHOW = {
    "recluse": {
        "web-hold": "on-flat-silk beside-or-hidden",
        "gait": "still runs-fast runs-in-web",
        "abdomen-shape": "flat-wide oval globe",
        "body-surface": "furry-bristly fine-satin-hair",
        "rear-size": "far-bigger bit-bigger no-bigger",
        "palp-length": "short",
    },
    "widow-black-female": {"gait": "runs-in-web slow-careful still", "rear-size": "far-bigger bit-bigger"},
    "widow-male": {"gait": "runs-in-web slow-careful", "rear-size": "bit-bigger no-bigger", "palp-length": "short"},
    "widow-young": {"gait": "runs-in-web slow-careful", "rear-size": "far-bigger bit-bigger"},
    "hard-tick": {"carriage": "on-the-ground clear-of-ground", "front-legs": "alike"},
}


@pytest.fixture
def told(shipped):
    """Weighs states by character, each said for sure, in a region."""

    def weigh(region, **said):
        enquiry = Enquiry(shipped)
        enquiry.set_up(region=region)
        for character, state in said.items():
            enquiry.report(character.replace("_", "-"), frozenset({state}), view_seen=True)
        return enquiry.reading

    return weigh


def best_taxon(reading):
    return reading.verdict.candidates[0].taxa[0]


@pytest.mark.parametrize(
    ("taxon", "character", "state"),
    [
        (taxon, name, state)
        for taxon, seen in MAY_SHOW.items()
        for name, states in seen.items()
        for state in states.split()
    ],
)
def test_what_it_may_truly_show_does_not_speak_for_ruling_it_out(shipped, told, taxon, character, state):
    reading = told("MO", **{character: state})
    assert clearing_counts(shipped, reading.events)[shipped.row(taxon)] == 0


LIKE_A_RECLUSE = {
    "leg_count": "eight",
    "leg_build": "long-slender",
    "leg_pattern": "plain",
    "abdomen_pattern": "plain",
    "web_shape": "none",
}


def test_two_feelers_like_extra_legs_are_those_of_a_male_southern_house_spider(told):
    assert best_taxon(told("FL", **LIKE_A_RECLUSE, palp_length="like-extra-legs")) == "crevice-male"


def test_long_feelers_alone_do_not_clear_a_recluse(told):
    reading = told("TX", **LIKE_A_RECLUSE, palp_length="like-extra-legs")
    assert "recluses" in {danger.group for danger in reading.not_ruled_out}


def test_high_knees_and_thread_legs_are_a_harvestman_and_speak_twice_against_ticks(shipped, told):
    said = {"leg_count": "eight", "body_parts": "one-oval", "leg_build": "thread-thin-very-long"}
    ticks = [shipped.row(taxon) for taxon in ("hard-tick", "hard-tick-fed")]
    without, with_knees = (told("MI", **said, **more) for more in ({}, {"carriage": "hung-between-knees"}))
    assert best_taxon(with_knees) == "harvestman"
    assert clearing_counts(shipped, without.events)[ticks].tolist() == [1, 1]
    assert clearing_counts(shipped, with_knees.events)[ticks].tolist() == [2, 2]


def test_a_spider_that_dashes_along_its_tangle_may_be_a_widow(told):
    reading = told("CA", leg_count="eight", web_shape="tangle", gait="runs-in-web")
    assert "widows" in {danger.group for danger in reading.not_ruled_out}


def test_pale_legs_with_dark_feet_speak_for_a_sac_spider(shipped, told):
    def chance(state):
        reading = told("MI", leg_count="eight", body_colour="yellow-or-cream", leg_pattern=state)
        return shipped.mass(reading.standing.posterior, "long-legged-sac")

    assert chance("dark-feet") > chance("plain") > chance("banded")


# A character, a state of it, whom that speaks for and whom it speaks against.
SPEAKS = [
    ("eye-shine", "shines", "wolf-spider", "ground-spider"),
    ("eye-shine", "shines", "fishing-spider", "funnel-weaver"),
    ("eye-shine", "no-shine", "long-legged-sac", "wolf-spider"),
    ("jaw-shade", "darker", "long-legged-sac", "recluse"),
    ("jaw-shade", "darker", "long-legged-sac", "nursery-web"),
    ("jaw-shade", "bright", "jumping-spider", "crab-spider"),
    ("when-out", "by-day", "jumping-spider", "ground-spider"),
    ("when-out", "by-day", "crab-spider", "giant-crab"),
    ("when-out", "hidden", "woodlouse-hunter", "garden-orb"),
    ("scorpion-hold", "up-or-under", "bark-scorpion", "other-scorpion"),
]


@pytest.mark.parametrize(("character", "state", "one", "other"), SPEAKS)
def test_each_tells_two_apart_that_are_taken_for_each_other(shipped, told, character, state, one, other):
    before, after = told(None), told(None, **{character: state})

    def odds(reading):
        mass = [shipped.mass(reading.standing.posterior, taxon) for taxon in (one, other)]
        return mass[0] / mass[1]

    assert odds(after) > 1.5 * odds(before)


ALONE = ("eye-shine", "jaw-shade", "when-out", "scorpion-hold")


@pytest.mark.parametrize("character", ALONE)
def test_each_stands_alone_and_rules_nothing_out(shipped, told, character):
    characters = shipped.keyset.characters
    group = characters[character].group
    assert [c.id for c in characters.values() if c.group == group] == [character]
    for state in characters[character].state_ids:
        assert clearing_counts(shipped, told("TX", **{character: state}).events)[list(shipped.gated)].max() == 0


@pytest.mark.parametrize(
    "taxon", ["recluse", "recluse-young", "widow-black-female", "widow-brown-female", "bark-scorpion"]
)
def test_a_danger_may_be_met_at_any_hour(shipped, taxon):
    assert set(shipped.keyset.taxa[taxon].shows["when-out"]) == set(shipped.keyset.characters["when-out"].state_ids)


@pytest.mark.parametrize(
    ("state", "parts"),
    [
        ("eye-shine-shines", {"spark": 2, "spider": 1, "flashlight": 1}),
        ("eye-shine-no-shine", {"spark": 0, "spider": 1, "flashlight": 1}),
        ("when-out-by-day", {"sun": 1, "moon": 0, "board": 0, "side-spider": 1}),
        ("when-out-after-dark", {"sun": 0, "moon": 1, "board": 0, "side-spider": 1}),
        ("when-out-hidden", {"sun": 0, "moon": 0, "board": 1, "side-spider": 1}),
        ("scorpion-hold-up-or-under", {"scorpion": 1, "motion": 1}),
        ("scorpion-hold-on-the-ground", {"scorpion": 1, "motion": 0}),
        ("jaw-shade-darker", {"jaw": 2, "ring": 1}),
    ],
)
def test_its_picture_shows_the_state(shipped, state, parts):
    drawing = draw(shipped.keyset.figures[state])
    assert {part: drawing.count(part) for part in parts} == parts
