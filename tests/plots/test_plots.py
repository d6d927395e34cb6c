"""Plain plots: their axes and marks."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from keyapp.plots import MARKS, Axes, document, mark, text, ticks


@pytest.mark.parametrize(
    ("most", "found"),
    [
        (1.0, (0, 0.2, 0.4, 0.6, 0.8, 1.0)),
        (17, (0, 5, 10, 15, 20)),
        (0.013, (0, 0.005, 0.01, 0.015)),
        (0.0, (0, 1)),
    ],
)
def test_ticks_are_round_and_reach_the_greatest_value(most, found):
    assert ticks(most) == pytest.approx(found)


def test_values_lie_upward_from_the_foot():
    axes = Axes(10, 20, 100, 50, most_x=3.0, most_y=5.0, least_x=1.0)
    assert axes.at(1, 0) == (10, 70)
    assert axes.at(3, 5) == (110, 20)
    assert axes.at(2, 2.5) == (60, 45)


def test_labels_that_would_touch_are_left_out():
    axes = Axes(0, 0, 100, 50, most_x=100, most_y=1)
    labels = "".join(axes.across({0: "a", 10: "b", 40: "c", 50: "d", 80: "e"}, "words"))
    assert [label for label in "abcde" if f">{label}<" in labels] == ["a", "c", "e"]


@pytest.mark.parametrize("kind", MARKS)
def test_a_mark_may_be_open(kind):
    assert mark(kind, 5, 5, "ink") != mark(kind, 5, 5, "ink", filled=False)


def test_words_are_escaped():
    root = ET.fromstring(document("a < b", 10, 10, [text(1, 2, "c & d")]))
    assert [node.text for node in root.iter() if node.text and node.text.strip()] == ["a < b", "c & d"]
