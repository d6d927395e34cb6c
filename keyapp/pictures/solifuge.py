"""Windscorpions: two huge jaws in front, leg-like feelers, a hairy ringed hind body and no tail."""

from __future__ import annotations

import random
from collections.abc import Mapping

from keyapp.pictures.limb import LimbLook
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, put
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, pen, ring, scale_bar
from keyapp.pictures.texture import hair, hairs_within, seeded, stipple

__all__ = ["RECIPES", "windscorpion", "windscorpion_parts"]

_TONE = "#CFA367"


def _jaw(flip: bool, tone: str, rng: random.Random) -> Group:
    at: Point = (50, 36.6)
    big, turn = 1.34, 4.0 if not flip else -4.0
    base = put(
        [
            (0.35, 0.6),
            (0.3, -7.0),
            (0.9, -9.6),
            (1.5, -11.4),
            (2.1, -9.2),
            (4.4, -8.2),
            (6.3, -5.4),
            (6.9, -2.0),
            (6.0, 1.2),
            (3, 1.8),
        ],
        at,
        turn,
        flip=flip,
        scale=big,
    )
    # The upper finger runs on from the base; the lower one swings against it and is seen outside it.
    upper = put(
        [(1.4, -7.6), (0.9, -11.2), (0.5, -14.6), (0.95, -17.2), (1.35, -14.8), (2.1, -11.6), (3.4, -8.4)],
        at,
        turn,
        flip=flip,
        scale=big,
    )
    lower = put(
        [(3.0, -8.0), (3.4, -11.4), (2.6, -14.4), (1.5, -16.4), (3.4, -15.6), (4.9, -12.6), (5.3, -8.8), (4.8, -7.4)],
        at,
        turn,
        flip=flip,
        scale=big,
    )
    teeth = [
        put(
            [(1.5 + 0.25 * k, -14.4 + 1.5 * k), (2.1 + 0.3 * k, -14.0 + 1.5 * k), (1.8 + 0.3 * k, -13.4 + 1.5 * k)],
            at,
            turn,
            flip=flip,
            scale=big,
        )
        for k in range(4)
    ]
    red = blend(tone, "#5E2412", 0.62)
    edge = put([(0.3, -3), (6.8, -3)], at, 0, flip=flip, scale=big)
    hairs = [
        hair(
            put([(rng.uniform(1.0, 6.6), rng.uniform(-9, 0))], at, 0, flip=flip, scale=big)[0],
            (-1 if flip else 1) * rng.uniform(-10, 60),
            rng.uniform(1.2, 2.8),
        )
        for _ in range(26)
    ]
    return Group(
        (
            smooth(lower, closed=True, fill=red, stroke=pen("line")),
            smooth(upper, closed=True, fill=blend(red, "#FFFFFF", 0.12), stroke=pen("line")),
            *(smooth(tooth, closed=True, fill="#2E140C", tension=0.2) for tooth in teeth),
            smooth(
                base,
                closed=True,
                fill=cylinder(edge[0], edge[1], blend(tone, "#B4713A", 0.35), depth=0.42, shine=0.35),
                stroke=pen("outline"),
            ),
            strokes(hairs, pen("hair")),
        ),
        name="jaw",
    )


def windscorpion_parts(rng: random.Random, tone: str = _TONE) -> list[Shape]:
    """A windscorpion from above, head up."""
    look = LimbLook((tone,), hairs=2.4, hair_length=2.2, spines=(0, 1, 2, 1), spine_length=1.8)
    thin = LimbLook((tone,), hairs=1.6, hair_length=1.6)
    items: list[Shape] = []
    walk = ((1.9, 2.3, 2.0), (2.2, 2.6, 2.1), (1.9, 1.8, 1.4), (1.2, 1.0, 0.6), (0.6, 0.5, 0.25))
    feel = ((1.2, 1.4, 1.2), (1.2, 1.3, 1.1), (1.0, 0.9, 0.7), (0.7, 0.6, 0.5), (0.5, 0.45, 0.3))
    palp = ((2.6, 3.0, 2.7), (2.9, 3.4, 3.0), (3.0, 3.1, 2.6), (2.5, 2.4, 2.1), (2.0, 1.8, 1.5))
    items += leg_pair(rng, (53.4, 54), [5, 12.5, 11.5, 9, 4], (128, 122, 150, 164, 172), walk, look)
    items += leg_pair(rng, (54, 49.6), [4.4, 9, 9.4, 8, 3.6], (110, 100, 122, 138, 146), walk, look)
    items += leg_pair(rng, (53.8, 45.6), [4.2, 8.4, 8.4, 7, 3.2], (86, 72, 88, 104, 112), walk, look)
    items += leg_pair(rng, (53.6, 42.4), [4, 8, 8.5, 6.6, 4.4], (70, 52, 44, 30, 18), feel, thin, name="feeling-leg")
    items += leg_pair(rng, (54.8, 38.6), [4.6, 9.4, 9.6, 8.2, 2.6], (56, 44, 24, 6, -4), palp, look, name="palp")
    belly = Profile(((54, 3.4), (57, 5.8), (64, 8.2), (72, 8.7), (80, 7.4), (86, 4.8), (89, 2.2), (89.6, 0)))
    fill = cylinder((41, 70), (59, 72), blend(tone, "#8A6A48", 0.4), depth=0.4)
    items.append(
        strokes(
            [
                hair(belly.at(side * 0.97, v), side * rng.uniform(80, 150), rng.uniform(1.6, 3.4))
                for side in (-1, 1)
                for v in [rng.uniform(0.06, 0.95) for _ in range(46)]
            ],
            pen("hair"),
        )
    )
    items.append(belly.outline(fill, pen("outline")))
    edges = [55.2 + 3.45 * k for k in range(11)]
    for index in range(9, -1, -1):
        plate = belly.plate(edges[index], min(edges[index + 1], 89.4), blend(tone, "#7A5A3C", 0.45), bow=0.45)
        items.append(Group(plate.items, name="ring-plate"))
    items.append(hairs_within(belly.at, rng, count=190, length=1.9, splay=20, stroke=pen("hair", opacity=0.75)))
    trunk = Profile(((43.6, 3.6), (45.2, 4.6), (49, 4.5), (52.5, 3.9), (55.6, 3.4)))
    items.append(trunk.outline(cylinder((45, 48), (55, 50), tone), pen("line")))
    items.append(strokes([trunk.line(y, 0.4, 0.96) for y in (46.6, 49.8, 53)], pen("line", opacity=0.8)))
    items += [_jaw(True, tone, rng), _jaw(False, tone, rng)]
    head = Profile(((35.4, 5.6), (35.9, 6.9), (38.4, 7.0), (41.6, 5.6), (44.2, 3.6), (44.8, 2)))
    items.append(
        Group(
            (
                head.outline(cylinder((43, 37), (57, 42), blend(tone, "#A8693A", 0.25), depth=0.4), pen("outline")),
                hairs_within(head.at, rng, count=40, length=1.3, degrees=0, splay=-20, stroke=pen("hair")),
                stipple(head.at, rng, count=50, radius=0.11),
            ),
            name="head",
        )
    )
    items.append(
        smooth(
            [(48.2, 35.6), (50, 35.1), (51.8, 35.4), (51.2, 37.3), (48.8, 37.3)],
            closed=True,
            fill="#3A2416",
            stroke=pen("fine"),
        )
    )
    items += [eye((49.1, 36.1), 0.6), eye((50.9, 36.1), 0.6)]
    return items


def windscorpion(values: Mapping[str, object]) -> Drawing:
    """Recipe `windscorpion`. Settings: color, ring-jaws, bar-mm, body-mm, seed."""
    settings = Settings(values)
    tone = settings.color("color", _TONE)
    rng = seeded("windscorpion", settings.whole("seed", 1))
    mark = settings.flag("ring-jaws")
    bar = settings.number("bar-mm", 0, least=0, most=50)
    long_mm = settings.number("body-mm", 22, least=1, most=80)
    settings.done()
    items = windscorpion_parts(rng, tone)
    if mark:
        items.append(ring((50, 25), 13, 15))
    body, scale = fitted(items, margin=4, bottom=96 if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, 71 * scale / long_mm))
    return framed(shapes)


RECIPES = {"windscorpion": windscorpion}
