"""Harvestmen: one small oval body carried on eight thread-thin legs."""

from __future__ import annotations

import math
import random
from collections.abc import Iterable, Mapping
from dataclasses import replace

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.part import Profile, eye, faded, fitted, framed, ribbon, taper
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Group,
    LinearGradient,
    Point,
    Shape,
    Stop,
    placed,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import seeded, stipple

__all__ = ["BACKS", "RECIPES", "harvestman", "harvestman_body", "harvestman_parts"]

_TONE = "#8F6B48"
BACKS = ("plain", "stripe", "saddle")
"""What can be on the back."""


def _back(s: float, back: str) -> list[Shape]:
    """The mark on the back: one dark stripe, or a dark saddle that waves in and out between pale edges."""
    if back == "plain":
        return []
    half = (
        ((0.5, -5.2), (1.0, -2.4), (1.15, 0.6), (0.95, 3.4), (0.5, 5.4))
        if back == "stripe"
        else ((1.2, -5.0), (2.0, -3.2), (1.1, -1.7), (1.9, -0.2), (2.9, 1.6), (1.9, 3.3), (2.2, 4.4), (1.0, 5.9))
    )
    left = [(50 - x * s, 50 + y * s) for x, y in half]
    points = [*left, *((100 - x, y) for x, y in reversed(left))]
    edge = pen("line", "#E9DFC8", times=0.8 * s) if back == "saddle" else None
    return [
        Group((smooth(points, closed=True, fill="#3E2C20", stroke=edge, opacity=0.82 if edge else 0.7),), name="back")
    ]


def harvestman_body(rng: random.Random, tone: str = _TONE, size: float = 1.0, back: str = "plain") -> list[Shape]:
    """The body from above about (50, 50), 13 units long at size 1: no waist, faint rings, two eyes on a mound.

    `back` is plain, stripe or saddle; the saddled kind also has tiny spikes along its front edge.
    """
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
    items += _back(s, back)
    items.append(
        strokes([body.line(50 + y * s, 0.5 * s, 0.92) for y in (0.2, 1.7, 3.1, 4.3, 5.3)], pen("fine", opacity=0.55))
    )
    items.append(stipple(body.at, rng, count=90, radius=0.1 + 0.02 * s))
    if back == "saddle":
        spikes = [(50 + x * s, 50 - (6.0 - abs(x) * 0.52) * s) for x in (-2.4, -1.7, -1.0, -0.35, 0.35, 1.0, 1.7, 2.4)]
        items.append(strokes([((x, y), (x + (x - 50) * 0.08, y - 0.6 * s)) for x, y in spikes], pen("fine", times=s)))
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
    rng: random.Random,
    tone: str = _TONE,
    *,
    pale_legs: bool = False,
    size: float = 1.0,
    back: str = "plain",
    long: float = 1.0,
) -> list[Shape]:
    """A harvestman from above about (50, 50); the second pair of legs is the longest; `long` stretches the legs."""
    legs: list[Shape] = []
    dark = blend(tone, "#2A1A10", 0.5)
    for (out, down), usual, turns, share in _LEGS:
        reach = usual * long
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
    return [faded(legs, 0.6) if pale_legs else Group(tuple(legs)), *harvestman_body(rng, tone, size, back)]


def _nameless(shapes: Iterable[Shape]) -> list[Shape]:
    return [
        replace(shape, items=tuple(_nameless(shape.items)), name="") if isinstance(shape, Group) else shape
        for shape in shapes
    ]


def _inset(tone: str, back: str, at: Point, big: float) -> Group:
    """The body once more, enlarged, in a ring."""
    body = harvestman_body(seeded("harvestman-inset"), tone, big, back)
    # Without names: parts that are counted belong to the animal, not to the enlargement.
    small = placed(_nameless(body), at=(at[0] - 50, at[1] - 50 + 2 * big), name="body")
    return Group((small, ring(at, 7.2 * big, 10.2 * big)), name="inset")


def harvestman(values: Mapping[str, object]) -> Drawing:
    """Recipe `harvestman`. Settings: color, back plain|stripe|saddle, long (how long the legs are, usually 1), inset
    (the body once more, enlarged), ring-body, bar-mm, body-mm, seed."""
    settings = Settings(values)
    tone = settings.color("color", _TONE)
    back = settings.choice("back", BACKS, "plain")
    rng = seeded("harvestman", settings.whole("seed", 1))
    long = settings.number("long", 1, least=0.5, most=2)
    inset = settings.flag("inset")
    mark = settings.flag("ring-body")
    bar = settings.number("bar-mm", 0, least=0, most=50)
    long_mm = settings.number("body-mm", 6, least=1, most=30)
    settings.done()
    items = harvestman_parts(rng, tone, back=back, long=long)
    if mark:
        items.append(ring((50, 49), 8.6, 11))
    if inset:
        items.append(_inset(tone, back, (50, 86), 1.9))
    body, scale = fitted(items, margin=4, bottom=97 if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, 13.3 * scale / long_mm))
    return framed(shapes)


def _stubs(tone: str, size: float, reach: float) -> list[Shape]:
    """The first parts of the eight legs, which fade into the paper."""
    items: list[Shape] = []
    for (out, down), _, turns, _ in _LEGS:
        for side in (1, -1):
            turn = math.radians(turns[0])
            hip = (50 + side * out * size, 50 + down * size)
            end = (hip[0] + side * math.sin(turn) * reach, hip[1] - math.cos(turn) * reach)
            fade = LinearGradient(hip, end, (Stop(0, blend(tone, "#2A1A10", 0.35)), Stop(0.45, tone), Stop(1, "paper")))
            items.append(Group((ribbon((hip, end), (1.4 * size, 0.8 * size, 0.7 * size), fade),), name="leg"))
    return items


def harvestman_backs(values: Mapping[str, object]) -> Drawing:
    """Recipe `harvestman-backs`: the body from above, close up, its back ringed. Settings: backs (one or two of plain,
    stripe and saddle), colors (one for each)."""
    settings = Settings(values)
    backs = settings.words("backs", BACKS) or ("plain",)
    tones = settings.words("colors", ("grey", "rust", "brown")) or ("brown",)
    settings.done()
    colors = {"grey": "#93846F", "rust": "#A85F38", "brown": _TONE}
    made: list[Shape] = []
    size = 5.0 if len(backs) == 1 else 3.3
    for index, back in enumerate(backs):
        tone = colors[tones[min(index, len(tones) - 1)]]
        rng = seeded("harvestman-backs", back)
        parts = [*_stubs(tone, size, 5.0 * size), *harvestman_body(rng, tone, size, back)]
        parts.append(ring((50, 50.6), 5.8 * size, 7.8 * size))
        made.append(placed(parts, at=(61 * index, 0)))
    body, _ = fitted(made, margin=4, most=1.6)
    return framed([body])


RECIPES = {"harvestman": harvestman, "harvestman-backs": harvestman_backs}
