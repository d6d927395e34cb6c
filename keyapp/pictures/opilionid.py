"""Harvestmen: one small oval body carried on eight thread-thin legs."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.part import Profile, eye, faded, fitted, framed, taper
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import seeded, stipple

__all__ = ["RECIPES", "harvestman", "harvestman_body", "harvestman_parts"]

_TONE = "#8F6B48"


def harvestman_body(rng: random.Random, tone: str = _TONE, size: float = 1.0) -> list[Shape]:
    """The body from above about (50, 50), 13 units long at size 1: no waist, faint rings, two eyes on a mound."""
    s = size
    body = Profile(
        tuple(
            (50 + y * s, half * s)
            for y, half in (
                (-6.6, 0),
                (-6.2, 1.8),
                (-4.6, 3.2),
                (-1.6, 4.3),
                (1.6, 4.6),
                (4.4, 3.8),
                (6.2, 2.0),
                (6.7, 0),
            )
        )
    )
    items: list[Shape] = []
    for side in (1, -1):
        palp: list[Point] = [
            (50 + side * 1.0 * s, 50 - 5.6 * s),
            (50 + side * 1.9 * s, 50 - 7.8 * s),
            (50 + side * 1.7 * s, 50 - 9.6 * s),
            (50 + side * 1.2 * s, 50 - 10.8 * s),
        ]
        items.append(
            Group(
                (
                    limb(
                        palp,
                        ((0.9 * s, 0.9 * s, 0.8 * s), (0.8 * s, 0.8 * s, 0.6 * s), (0.5 * s, 0.4 * s, 0.2 * s)),
                        LimbLook((blend(tone, "#FFFFFF", 0.15),)),
                        rng,
                        name="feeler",
                    ),
                ),
                name="palp",
            )
        )
        items.append(
            smooth(
                [
                    (50 + side * 0.3 * s, 50 - 5.6 * s),
                    (50 + side * 0.5 * s, 50 - 7.4 * s),
                    (50 + side * 1.2 * s, 50 - 5.8 * s),
                ],
                closed=True,
                fill=tone,
                stroke=pen("fine"),
            )
        )
    items.append(body.outline(globe((50, 50), 7 * s, tone, depth=0.42, shine=0.34), pen("outline", times=0.9)))
    saddle = [
        (50 - 1.3 * s, 50 - 3.2 * s),
        (50 - 2.5 * s, 50 - 0.6 * s),
        (50 - 1.5 * s, 50 + 1.6 * s),
        (50 - 2.0 * s, 50 + 3.8 * s),
        (50 - 0.9 * s, 50 + 5.6 * s),
    ]
    mirrored = [(100 - x, y) for x, y in reversed(saddle)]
    items.append(smooth([*saddle, *mirrored], closed=True, fill="#4E3724", opacity=0.7))
    items.append(
        strokes([body.line(50 + y * s, 0.5 * s, 0.92) for y in (0.2, 1.7, 3.1, 4.3, 5.3)], pen("fine", opacity=0.55))
    )
    items.append(stipple(body.at, rng, count=90, radius=0.1 + 0.02 * s))
    mound = (50.0, 50 - 3.3 * s)
    items.append(Circle(mound, 1.05 * s, globe(mound, 1.05 * s, blend(tone, "#2A1A10", 0.35)), pen("fine")))
    items += [eye((50 + side * 0.62 * s, mound[1] - 0.1 * s), 0.36 * s) for side in (-1, 1)]
    return items


_LEGS = (
    # hip (out, down), reach, direction of the thigh, then of the knee part, shin and foot
    ((3.1, -3.3), 34.0, (38, 62, 30, 8), 0.36),
    ((3.9, -1.4), 52.0, (66, 84, 58, 40), 0.35),
    ((4.2, 0.8), 36.0, (108, 104, 126, 146), 0.35),
    ((3.8, 2.8), 46.0, (136, 128, 152, 170), 0.35),
)


def harvestman_parts(
    rng: random.Random, tone: str = _TONE, *, pale_legs: bool = False, size: float = 1.0
) -> list[Shape]:
    """A harvestman from above about (50, 50); the second pair of legs is the longest."""
    legs: list[Shape] = []
    dark = blend(tone, "#2A1A10", 0.5)
    for (out, down), reach, turns, share in _LEGS:
        for side in (1, -1):
            swing = rng.uniform(-7, 7)
            spots: list[Point] = [(50 + side * out * size, 50 + down * size)]
            for part, turn in zip((0.04, share, 0.09, 0.25), (turns[0], turns[0], turns[1], turns[2]), strict=True):
                angle = math.radians(turn + swing)
                x, y = spots[-1]
                spots.append((x + side * math.sin(angle) * reach * part, y - math.cos(angle) * reach * part))
            look = LimbLook((dark, tone, dark, tone), spines=(0, 3, 0, 0), spine_length=0.5, outline=0.3)
            leg = limb(spots, ((1.5, 1.4, 1.1), (0.95, 0.8, 0.7), (0.85, 0.85, 0.7), (0.62, 0.5, 0.42)), look, rng)
            x, y = spots[-1]
            whip: list[Point] = [(x, y)]
            bend = turns[2] + swing
            for _step in range(6):
                bend += (turns[3] - turns[2]) * 0.33
                angle = math.radians(bend)
                x, y = x + side * math.sin(angle) * reach * 0.075, y - math.cos(angle) * reach * 0.075
                whip.append((x, y))
            foot = taper(whip, 0.58, 0.22, "ink")
            legs.append(Group((foot, *leg.items), name="leg"))
    return [faded(legs, 0.6) if pale_legs else Group(tuple(legs)), *harvestman_body(rng, tone, size)]


def harvestman(values: Mapping[str, object]) -> Drawing:
    """Recipe `harvestman`. Settings: color, ring-body, bar-mm, body-mm, seed."""
    settings = Settings(values)
    tone = settings.color("color", _TONE)
    rng = seeded("harvestman", settings.whole("seed", 1))
    mark = settings.flag("ring-body")
    bar = settings.number("bar-mm", 0, least=0, most=50)
    long_mm = settings.number("body-mm", 6, least=1, most=30)
    settings.done()
    items = harvestman_parts(rng, tone)
    if mark:
        items.append(ring((50, 49), 8.6, 11))
    body, scale = fitted(items, margin=4, bottom=97 if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, 13.3 * scale / long_mm))
    return framed(shapes)


RECIPES = {"harvestman": harvestman}
