"""Limbs and bodies: widths, bands, seeds and the coordinates of surfaces."""

from __future__ import annotations

import math

import pytest

from keyapp.pictures.body import PROFILES, Body
from keyapp.pictures.limb import LimbLook, Segment, joints_from, limb
from keyapp.pictures.posture import POSTURES, SEGMENTS, SHARES
from keyapp.pictures.texture import seeded


def test_joints_follow_lengths_and_directions():
    assert joints_from((0, 0), (2, 3), (0, 90)) == [(0, 0), pytest.approx((0, -2)), pytest.approx((3, -2))]


def test_a_segment_has_the_widths_it_was_given():
    piece = Segment((0, 0), (10, 0), 4, 6, 2)
    assert [2 * piece.half_width(t) for t in (0, 0.5, 1)] == pytest.approx([4, 6, 2])


def test_the_edges_of_a_segment_lie_on_either_side():
    piece = Segment((0, 0), (0, -10), 4, 4, 4)
    assert piece.at(0.5, -1) == pytest.approx((-2, -5))
    assert piece.at(0.5, 1) == pytest.approx((2, -5))


def test_a_limb_has_one_group_for_every_segment():
    joints = joints_from((0, 0), (1,) * 7, (10,) * 7)
    group = limb(joints, [(1, 1, 1)] * 7, LimbLook(("ink",), hairs=2), seeded("x"))
    assert [item.name for item in group.items if getattr(item, "name", "") == "segment"] == ["segment"] * 7


def test_a_limb_refuses_joints_and_widths_that_do_not_match():
    with pytest.raises(ValueError, match="zip"):
        limb([(0, 0), (1, 0)], [(1, 1, 1)] * 2, LimbLook(("ink",)), seeded("x"))


def test_the_same_seed_gives_the_same_limb():
    joints, widths, look = [(0, 0), (9, 0)], [(2, 2, 1)], LimbLook(("#AA8855",), hairs=3, spines=(4,))
    first = limb(joints, widths, look, seeded("a"))
    assert first == limb(joints, widths, look, seeded("a"))
    assert first != limb(joints, widths, look, seeded("b"))


@pytest.mark.parametrize("name", sorted(PROFILES))
def test_a_body_is_as_wide_as_it_says(name):
    body = Body((50, 0), 100, 40, PROFILES[name])
    widest = max(body.half(index / 200) for index in range(201))
    assert widest == pytest.approx(20, abs=0.7)


def test_places_on_a_body_turn_with_it():
    body = Body((50, 10), 20, 10, PROFILES["oval"], turn=90)
    assert body.place(0, 20) == pytest.approx((70, 10))
    assert body.at(1, 0.5)[1] < 10 < body.at(-1, 0.5)[1]


@pytest.mark.parametrize("name", sorted(POSTURES))
def test_a_posture_gives_four_legs_of_seven_segments(name):
    assert [len(row) for row in POSTURES[name]] == [len(SEGMENTS)] * 4


def test_the_shares_of_a_leg_make_the_whole():
    assert math.fsum(SHARES) == pytest.approx(1)
