"""What the enlarged view beside a spider can show besides its body: a burrow's mouth, a line of trash in a web."""

from __future__ import annotations

import math
import random

from keyapp.pictures.body import PROFILES, Body
from keyapp.pictures.eyes import eyes_above
from keyapp.pictures.shape import (
    Circle,
    Ellipse,
    Group,
    Path,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend, globe, pen

__all__ = ["burrow_mouth", "trash_line"]


def burrow_mouth(centre: Point, radius: float, rng: random.Random) -> Group:
    """A spider looking out of an open round hole in sand, its dark front legs on the rim, all in a round frame."""
    x, y = centre

    def spot(across: float, up: float) -> Point:
        return x + across * radius, y - up * radius

    sand = RadialGradient(centre, radius, (Stop(0, "#DCC59C"), Stop(0.8, "#E6D5B2"), Stop(1, "#EEE2C8")))
    hole = radius * 0.62
    grains = []
    for _ in range(46):
        turn, far = rng.uniform(0, math.tau), radius * rng.uniform(0.76, 0.95)
        at = (x + math.cos(turn) * far, y + math.sin(turn) * far)
        grains.append((at, (at[0] + 0.3, at[1] + 0.1)))
    rim = []
    for index in range(26):
        turn = math.tau * index / 26 + rng.uniform(-0.08, 0.08)
        near, along = hole * rng.uniform(1.0, 1.1), turn + rng.uniform(1.1, 2.0)
        at = (x + math.cos(turn) * near, y + math.sin(turn) * near)
        bit = hole * rng.uniform(0.12, 0.24)
        rim.append((at, (at[0] + math.cos(along) * bit, at[1] + math.sin(along) * bit)))
    head = Body(spot(0, 0.26), radius * 0.74, radius * 0.5, PROFILES["head-broad"])
    legs = [[spot(s * a, b) for a, b in way] for way in _ON_RIM for s in (-1, 1)]
    deep = (x, y + hole * 0.55)
    fall = RadialGradient(deep, hole * 0.62, (Stop(0, "#17110D"), Stop(0.5, "#17110D", 0.85), Stop(1, "#17110D", 0.0)))
    items: list[Shape] = [
        Circle(centre, radius * 0.985, sand),
        strokes(grains, Stroke("#8A7350", 0.3, 0.7)),
        Circle(centre, hole, "#1C140F", pen("line", "#5A452F")),
        strokes(rim, Stroke("#8E744E", 0.55)),
    ]
    for tone, wide in (("#B29A74", 0.135), ("ink", 0.12), ("#4A382A", 0.085), ("#7A6550", 0.024)):
        items += [smooth(leg, stroke=Stroke(tone, radius * wide)) for leg in legs]
    items.append(head.outline(fill=globe(head.centre, radius * 0.4, "#A48C69", depth=0.35), stroke=pen("line")))
    for side in (-1, 1):
        jaw = Ellipse(spot(side * 0.085, 0.27), radius * 0.08, radius * 0.12, "#5A4632", pen("fine"))
        items.append(jaw)
    items += eyes_above(head, "two-big-above-row-of-four", times=1.15)
    items += [Circle(deep, hole * 0.62, fall), Circle(centre, hole, None, Stroke("#5A452F", 0.3))]
    return Group((*items, Circle(centre, radius, None, pen("line", "ink-soft"))), name="burrow-mouth")


_ON_RIM = (
    ((0.16, 0.02), (0.44, 0.1), (0.52, 0.34), (0.46, 0.62)),
    ((0.15, 0.12), (0.3, 0.28), (0.27, 0.52), (0.2, 0.84)),
)
"""The second and the first leg of one side on the rim of a burrow: across and up, as parts of the frame's radius."""


def trash_line(centre: Point, radius: float, rng: random.Random) -> Group:
    """The middle of a wheel web in a round frame, and a spider, head down, in the gap of an upright line of trash."""
    x, y = centre
    turns = [math.tau * (index + rng.uniform(-0.12, 0.12)) / 18 for index in range(18)]

    def spot(turn: float, far: float) -> Point:
        return x + math.sin(turn) * far, y - math.cos(turn) * far

    spokes = [(spot(turn, radius * 0.06), spot(turn, radius * 0.98)) for turn in turns]
    rings = [[spot(turn, radius * (0.36 + 0.095 * step)) for turn in [*turns, turns[0]]] for step in range(7)]
    items: list[Shape] = [
        strokes(spokes, Stroke("ink-soft", 0.2, 0.85)),
        strokes(rings, Stroke("ink-soft", 0.16, 0.8)),
    ]
    tones = ("#7C6A54", "#93826B", "#5E4E3E", "#A89A84", "#6E5B44")
    for side in (-1, 1):
        far = radius * 0.36
        while far < radius * 0.88:
            size = radius * rng.uniform(0.065, 0.1)
            at = (x + rng.gauss(0, radius * 0.018), y + side * far)
            items.append(_crumb(at, size, rng.choice(tones), rng))
            far += size * 1.3
    unit = radius * 0.3
    legs = []
    for side in (-1, 1):
        for way in _SITTING:
            legs.append([(x + side * a * unit, y + b * unit) for a, b in way])
    items += [strokes(legs, Stroke("ink", unit * 0.15)), strokes(legs, Stroke("#BCAB8E", unit * 0.08))]
    head = Body((x, y + unit * 0.82), unit * 0.62, unit * 0.46, PROFILES["pear"], 0)
    back = Body((x, y + unit * 0.34), unit * 1.3, unit * 0.8, PROFILES["blunt-tail"], 0)
    items.append(head.outline(fill="#3C3029", stroke=pen("fine")))
    items.append(back.outline(fill=globe(back.centre, unit * 0.7, "#A6977F"), stroke=pen("fine")))
    pale = [back.at(0.3, 0.1), back.at(-0.1, 0.4), back.at(0.2, 0.7)]
    items.append(smooth(pale, stroke=Stroke("#E9DFCA", unit * 0.14)))
    return Group((*items, Circle(centre, radius, None, pen("line", "ink-soft"))), name="trash-line")


_SITTING = (
    ((0.1, 0.7), (0.42, 0.95), (0.3, 1.3)),
    ((0.14, 0.62), (0.6, 0.8), (0.58, 1.12)),
    ((0.14, 0.5), (0.48, 0.46), (0.62, 0.3)),
    ((0.12, 0.42), (0.56, 0.1), (0.5, -0.42)),
)
"""The four legs of one side of a spider sitting head down: across and down, from front to back."""


def _crumb(at: Point, size: float, tone: str, rng: random.Random) -> Group:
    corners = [
        (at[0] + math.cos(turn) * size * rng.uniform(0.75, 1.25), at[1] + math.sin(turn) * size * rng.uniform(0.7, 1.1))
        for turn in (math.tau * index / 6 for index in range(6))
    ]
    ink = Stroke(blend(tone, "ink", 0.6), 0.16)
    lump: Path = smooth(corners, closed=True, fill=tone, stroke=ink)
    light = Ellipse((at[0] - size * 0.25, at[1] - size * 0.25), size * 0.4, size * 0.25, blend(tone, "#FFFFFF", 0.35))
    leg = polyline([at, (at[0] + size * rng.choice((-1.7, 1.7)), at[1] + size * rng.uniform(-0.6, 0.6))], stroke=ink)
    return Group((leg, lump, light), name="crumb")
