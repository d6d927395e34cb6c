"""Figures of scorpions and their kin: the right number of legs, claws, whips and tail joints on each."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from keyapp.model import Figure, Text
from keyapp.pictures.recipe import draw
from keyapp.pictures.shape import box_of

ROOT = Path(__file__).parents[2]
TABLE = yaml.safe_load((ROOT / "keys" / "figures" / "scorpions-and-kin.yaml").read_text(encoding="utf-8"))
FIGURES = {
    name: Figure(name, Text.of(row["alt"]), row["credit"], row["draw"], row.get("with", {}))
    for name, row in TABLE.items()
}
SCORPION = {"leg": 8, "pincer": 2, "back-plate": 7, "tail-joint": 5, "sting": 1, "whip": 0}
COUNTS = {
    "giant-hairy-scorpion": {**SCORPION, "scale-bar": 1},
    "thick-clawed-scorpion": {**SCORPION, "scale-bar": 1},
    "superstition-scorpion": {**SCORPION, "scale-bar": 1},
    "tail-kind-rings-and-sting": {**SCORPION, "ring": 1},
    "first-legs-like-the-others": {**SCORPION, "leg-first": 2},
    "pseudoscorpion": {"leg": 8, "pincer": 2, "tail": 0, "sting": 0, "eye": 2, "scale-bar": 1},
    "tail-kind-none": {"leg": 8, "pincer": 2, "tail": 0, "ring": 1},
    "vinegaroon": {"leg": 6, "whip": 2, "pincer": 2, "tail": 1, "sting": 0, "scale-bar": 1},
    "tail-kind-thin-whip": {"leg": 6, "whip": 2, "pincer": 2, "tail": 1, "sting": 0, "ring": 1},
    "tailless-whip": {"leg": 6, "whip": 2, "folding-arm": 2, "pincer": 0, "tail": 0, "scale-bar": 1},
    "first-legs-whips": {"leg": 6, "whip": 2, "tail": 0},
    "front-tools-spiny-folding-arms": {"leg": 6, "whip": 2, "folding-arm": 2, "tail": 0, "ring": 1},
    "harvestman-saddled": {"leg": 8, "palp": 2, "eye": 2, "inset": 1, "tail": 0, "scale-bar": 1},
    "harvestman-back-saddle": {"leg": 8, "eye": 2, "back": 1, "ring": 1},
    "harvestman-back-plain-or-stripe": {"leg": 16, "eye": 4, "back": 1, "ring": 2},
    "scorpion-hair-many": {"pincer": 1, "tail-joint": 5, "sting": 1},
    "scorpion-hair-few": {"pincer": 1, "tail-joint": 5, "sting": 1},
    "skin-scorpion": {"cup": 1, "lid-open": 1, "pincer": 2, "tail-joint": 5, "eye": 0, "scale-bar": 1},
}


def test_every_figure_of_the_file_is_counted():
    assert sorted(FIGURES) == sorted(COUNTS)


@pytest.mark.parametrize("name", COUNTS)
def test_parts_are_there_in_the_right_number(name):
    drawing = draw(FIGURES[name])
    assert {part: drawing.count(part) for part in COUNTS[name]} == COUNTS[name]


@pytest.mark.parametrize("name", COUNTS)
def test_nothing_leaves_the_canvas(name):
    box = box_of(draw(FIGURES[name]).items)
    assert min(box.left, box.top) >= -0.5
    assert max(box.right, box.bottom) <= 100.5


def test_hairs_are_all_that_differs_between_the_two_close_ups():
    many, few = (str(draw(FIGURES[f"scorpion-hair-{state}"])).count("'M'") for state in ("many", "few"))
    assert many > few * 3
