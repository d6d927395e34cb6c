"""Wheel webs with a line of trash through the middle, or with a tangle beside the wheel."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping
from dataclasses import replace

from keyapp.pictures.part import framed, put
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.silk import threads
from keyapp.pictures.style import blend, cylinder, globe, pen, ring
from keyapp.pictures.texture import seeded
from keyapp.pictures.web import OrbWeb, orb_parts, orb_stems
from keyapp.pictures.wheel_view import messy

__all__ = ["RECIPES", "wheel_extra"]


def _trash(web: OrbWeb, rng: random.Random) -> Group:
    # Dry leftovers wound in silk in a line up and down through the hub; the spider sits in the gap, legs drawn in.
    x, y = web.hub
    items: list[Shape] = [threads([((x, y - 30), (x, y + 33))], 0.5)]
    at = -27.0
    while at < 30:
        if -5.8 < at < 5.8:
            at = 6.4
        size = rng.uniform(2.3, 3.7) * (1 - abs(at) / 60)
        spot = (x + rng.uniform(-0.7, 0.7), y + at)
        lump = [
            (
                spot[0] + math.cos(k) * size * rng.uniform(0.7, 1.15),
                spot[1] + math.sin(k) * size * rng.uniform(0.6, 0.95),
            )
            for k in (0, 0.9, 1.8, 2.7, 3.6, 4.5, 5.4)
        ]
        tone = blend("#5E4A36", "#B9A78A", rng.random())
        items.append(smooth(lump, closed=True, fill=globe(spot, size * 1.1, tone), stroke=pen("line", times=0.8)))
        bits = [
            (
                (spot[0], spot[1]),
                (spot[0] + rng.choice((-1, 1)) * size * rng.uniform(1, 1.7), spot[1] + rng.uniform(-1.6, 1.6)),
            )
            for _ in range(3)
        ]
        items.append(strokes(bits, Stroke("#3A2A1C", 0.3)))
        at += size * 1.4
    for side in (-1, 1):
        legs = [
            [(x + side * a * 1.3, y - 1.2), (x + side * b * 1.3, y + c * 1.3), (x + side * d * 1.3, y + e * 1.3)]
            for a, b, c, d, e in (
                (0.9, 2.6, -2.6, 1.5, -3.7),
                (1, 3.0, -1.6, 2.3, -2.9),
                (1, 2.9, 0.2, 2.5, 1.2),
                (0.9, 2.8, 1.6, 2.2, 3),
            )
        ]
        items.append(strokes(legs, Stroke("#4A3524", 0.75)))
    items += [
        Ellipse((x, y - 2), 1.9, 2.1, globe((x, y - 2), 2.1, "#7A5E42"), pen("line", times=0.8)),
        Ellipse((x, y + 2), 2.7, 3.4, globe((x, y + 2), 3.4, "#A08A6C"), pen("line", times=0.8)),
    ]
    return Group(tuple(items), name="trash-line")


def _beside(rng: random.Random) -> list[Shape]:
    # The wheel stands lower right; above it on the left a tangle holds a leaf tent and a string of flat sacs.
    full = OrbWeb()
    hub = (61.0, 58.0)

    def shrunk(spot: Point) -> Point:
        return hub[0] + (spot[0] - full.hub[0]) * 0.76, hub[1] + (spot[1] - full.hub[1]) * 0.76

    ends: tuple[Point, ...] = ((30, 22), (68, 3), (92.6, 20), (95, 70), (80, 95.6), (42, 97), (5, 84), (14, 52))
    web = replace(
        full,
        hub=hub,
        frame=tuple(shrunk(s) for s in full.frame),
        anchors=ends,
        spokes=25,
        pitch=2.3,
        hub_radius=3.0,
        inner=6.0,
    )
    heart = (27.0, 29.0)
    goals = (
        (4, 40),
        (6, 52),
        (5.6, 28),
        (7, 18),
        (14, 3.4),
        (24, 4.6),
        (36, 4.4),
        (46, 3.6),
        (56, 3),
        (5, 62),
        (40, 44),
    )
    cone = put([(0, -7.4), (3.4, -2), (4.8, 4.8), (0.4, 6.6), (-4.6, 5), (-3.2, -2)], (27, 26), 8)
    mouth = put([(4.6, 4.9), (0.4, 6.7), (-4.4, 5.1), (0.2, 3.4)], (27, 26), 8)
    ribs = [put([(0, -7), (k, 4)], (27, 26), 8) for k in (-2.4, 0, 2.4)]
    sacs: list[Shape] = []
    for k in range(3):
        at = (36.5 + k * 0.8, 22 + k * 4.6)
        sacs.append(Ellipse(at, 2.3, 2.0, globe(at, 2.3, "#C9AE7C"), pen("line")))
    return [
        *orb_stems(rng),
        *orb_parts(web, rng),
        messy(rng, heart, 21, 20, 74, goals),
        threads([((36, 12), (38.4, 36)), ((27, 32), hub)], 0.45),
        *sacs,
        Group(
            (
                smooth(cone, closed=True, fill=cylinder(cone[5], cone[1], "#A58A58", depth=0.5), stroke=pen("outline")),
                strokes(ribs, pen("fine", "#5A4426")),
                smooth(mouth, closed=True, fill="#2E2418", stroke=pen("line")),
            ),
            name="retreat",
        ),
        ring(heart, 23, 22.5),
    ]


def wheel_extra(values: Mapping[str, object]) -> Drawing:
    """Recipe `wheel-extra`. Settings: extra trash-line|tangle-beside, seed."""
    settings = Settings(values)
    extra = settings.choice("extra", ("trash-line", "tangle-beside"), "trash-line")
    rng = seeded("wheel-extra", extra, settings.whole("seed", 1))
    settings.done()
    if extra == "tangle-beside":
        return framed(_beside(rng))
    web = OrbWeb(spokes=25, pitch=3.0, inner=8.5)
    x, y = web.hub
    return framed([*orb_stems(rng), *orb_parts(web, rng), _trash(web, rng), ring((x, y + 1.5), 8.5, 34.5)])


RECIPES = {"wheel-extra": wheel_extra}
