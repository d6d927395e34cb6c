"""Kinds of ticks told apart by shield, mouthparts, outline, rear rim and eyes: both sexes, the young, a soft tick."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

from keyapp.pictures.limb import Band, LimbLook
from keyapp.pictures.part import Profile, eye, leg_pair, put, sampled
from keyapp.pictures.shape import Circle, Group, Point, Shape, Stroke, mirror_points, smooth, strokes
from keyapp.pictures.silk import ray_out
from keyapp.pictures.style import blend, cylinder, globe, pen
from keyapp.pictures.texture import hairs_within, stipple
from keyapp.pictures.tick_looks import KINDS, SILVER, TickKind

__all__ = ["tick_kind_parts"]

_FAN: tuple[tuple[float, ...], ...] = (
    (58, 46, 34, 22, 10),
    (86, 80, 68, 58, 46),
    (102, 106, 116, 124, 132),
    (122, 130, 144, 154, 164),
)


def _legs(name: str, kind: TickKind, rng: random.Random) -> list[Shape]:
    top = max(kind.body.top, 29.0)
    soft = kind.base == "hidden"
    young = name == "nymph"
    wide = 3.4 if soft else 3.9 if young else 3.5
    bands = tuple(Band(k, 0.86, 1.0, kind.joints, 0.75) for k in (1, 3)) if kind.joints else ()
    look = LimbLook((kind.legs,), bands=bands, hairs=0.06 if name.endswith("male") else 0.2, hair_length=0.8)
    widths = tuple(
        (wide * a, wide * b, wide * c)
        for a, b, c in ((0.9, 1.05, 0.9), (0.85, 1.0, 0.85), (0.8, 0.9, 0.7), (0.65, 0.65, 0.5), (0.45, 0.42, 0.16))
    )
    rows = (9.0, 15.0, 21.0, 27.0) if soft else (5.0, 10.0, 15.5, 21.0)
    lengths = (25.0, 24.0, 25.0, 30.0) if soft else (29.0, 27.0, 28.0, 33.0)
    made: list[Shape] = []
    for row, turns, length in reversed(list(zip(rows, _FAN, lengths, strict=True))):
        hip = (50 + kind.body.half(top + row) * 0.72, top + row)
        made += leg_pair(rng, hip, [length * k for k in (0.13, 0.25, 0.2, 0.22, 0.2)], turns, widths, look)
    return made


def _palp(kind: TickKind, at: Point, *, flip: bool, tone: str) -> Group:
    # Three joints are seen from above; the second of a long palp is the longest.
    r, b = kind.reach, kind.broad
    inner = 0.75
    spots = [
        (inner, 0),
        (inner, -r * 0.55),
        (inner + b * 0.1, -r * 0.92),
        (inner + b * 0.5, -r),
        (inner + b, -r * 0.88),
    ]
    spots += [(inner + b * (1.12 if r < 8 else 0.98), -r * 0.5), (inner + b * 0.8, 0)]
    first, second = (0.16, 0.62) if r > 8 else (0.12, 0.55)
    rings = [
        put([(inner, -r * k), (inner + b * 0.55, -r * k - 0.4), (inner + b * 1.02, -r * k)], at, flip=flip)
        for k in (first, second)
    ]
    side = put([(inner, 0), (inner + b, 0)], at, flip=flip)
    outline = smooth(
        put(spots, at, flip=flip), closed=True, fill=cylinder(side[0], side[1], tone), stroke=pen("line"), tension=0.8
    )
    return Group((outline, strokes([tuple(line) for line in rings], pen("fine"))), name="palp")


def _mouth(kind: TickKind, tone: str) -> Group:
    top = kind.body.top + 0.6
    r = kind.reach
    high = 3.4
    at = (50.0, top - high + 0.3)
    tube = put(
        [(-0.75, 0), (-0.85, -r * 0.6), (-0.6, -r * 0.9), (0, -r * 1.0), (0.6, -r * 0.9), (0.85, -r * 0.6), (0.75, 0)],
        at,
    )
    teeth = [
        ((50 + s * 0.85, at[1] - r * k), (50 + s * 0.25, at[1] - r * k + 0.7))
        for s in (-1, 1)
        for k in (0.25, 0.4, 0.55, 0.7, 0.83)
    ]
    half = 1.0 + kind.broad
    shapes = {
        "rectangle": [
            (-half, 0),
            (half, 0),
            (half * 1.08, high * 0.6),
            (half * 1.04, high),
            (-half * 1.04, high),
            (-half * 1.08, high * 0.6),
        ],
        "hexagon": [
            (-half * 0.85, 0),
            (half * 0.85, 0),
            (half * 1.75, high * 0.5),
            (half * 0.95, high),
            (-half * 0.95, high),
            (-half * 1.75, high * 0.5),
        ],
        "triangle": [
            (-half * 0.8, 0),
            (half * 0.8, 0),
            (half * 1.3, high * 0.8),
            (half * 1.18, high),
            (-half * 1.18, high),
            (-half * 1.3, high * 0.8),
        ],
    }
    base = put(shapes[kind.base], at)
    return Group(
        (
            smooth(tube, closed=True, fill=blend(tone, "#E8C79A", 0.35), stroke=pen("fine"), tension=0.7),
            strokes(teeth, pen("hair")),
            *(_palp(kind, at, flip=flip, tone=tone) for flip in (True, False)),
            smooth(
                base,
                closed=True,
                fill=cylinder((50 - half, at[1]), (50 + half, at[1] + 1), tone),
                stroke=pen("line"),
                tension=0.2,
            ),
        ),
        name="mouth",
    )


def _rear(kind: TickKind) -> list[Shape]:
    # Eleven lobes round the rear rim, or one smooth rim.
    body = kind.body
    edge = sampled([(50 + h, y) for y, h in body.spots] + mirror_points([(50 + h, y) for y, h in body.spots[:-1]]), 4)
    centre = (50.0, body.top + (body.bottom - body.top) * 0.6)

    def spot(degrees: float, share: float) -> Point:
        far = ray_out(centre, degrees, edge) * share
        return centre[0] + math.sin(math.radians(degrees)) * far, centre[1] - math.cos(math.radians(degrees)) * far

    if not kind.festoons:
        inner = [spot(turn, 0.87) for turn in range(66, 295, 19)]
        return [smooth(inner, stroke=pen("fine", opacity=0.7))]
    span = 7.4
    walls = [(spot(180 + (k - 5.5) * 2 * span, 1.0), spot(180 + (k - 5.5) * 2 * span, 0.85)) for k in range(12)]
    lobes: list[Shape] = [strokes(walls, pen("line", opacity=0.85))]
    inner = [spot(180 + k * span, 0.85) for k in range(-11, 12, 2)]
    lobes.append(smooth(inner, stroke=pen("line", opacity=0.75)))
    side = [spot(180 + s * k, 0.88) for s in (1,) for k in (-125, -110, -95, -82)]
    lobes.append(strokes([side, mirror_points(side)], pen("fine", opacity=0.6)))
    return [Group(tuple(lobes), name="festoons")]


def _patch(points: Sequence[Point], tone: str, opacity: float = 1.0) -> list[Shape]:
    # A patch and its mirror image.
    return [smooth(list(line), closed=True, fill=tone, opacity=opacity) for line in (points, mirror_points(points))]


def _dog_shield() -> list[Shape]:
    brown = "#6B4630"
    items: list[Shape] = []
    items += _patch([(48.8, 31.4), (47.2, 33), (46.6, 38), (48, 43), (49.2, 43.6), (49.0, 37)], brown, 0.9)
    items += _patch([(43.6, 31.2), (45, 33), (43.4, 37.6), (43.6, 43), (42, 43), (41.2, 37)], brown, 0.9)
    items += _patch([(38.6, 38.6), (39.8, 38.4), (40, 42), (39.4, 44.6), (38.2, 42.6)], brown, 0.85)
    items += _patch([(47.2, 46), (48.8, 46.8), (48.4, 50), (46.6, 49.6), (45.6, 47.4)], brown, 0.85)
    items += _patch([(42.4, 46), (44.2, 47), (44.8, 49.6), (43, 48.6)], brown, 0.8)
    return items


def _dog_back(rng: random.Random) -> list[Shape]:
    heavy: list[list[Point]] = [
        [(41.6, 33), (42.6, 36), (41, 40), (39.2, 43), (37.6, 47), (36.8, 52)],
        [(47.6, 32), (47.9, 36.6), (46.6, 40), (46.8, 43.4)],
        [(42.6, 45.4), (43.4, 48.4), (42, 52), (40.4, 54)],
        [(48.2, 46.4), (48.6, 51), (47.2, 55)],
        [(35.4, 55.6), (36.6, 59), (38.4, 62.6)],
        [(46.8, 60), (47.6, 63), (47, 66.6)],
    ]
    light: list[list[Point]] = [
        [(42.6, 36), (44.2, 39), (43.8, 42.4)],
        [(46.8, 43.4), (45, 46), (45.2, 50)],
        [(39.2, 43), (40.8, 45.4), (40, 48.6)],
        [(36.8, 52), (39, 54.6), (38.2, 57.6), (40, 60.6), (41.8, 65.6)],
        [(42, 52), (43.6, 56), (42.4, 60), (43.8, 64)],
        [(47.2, 55), (45.6, 57.6), (46.8, 60)],
        [(40, 60.6), (42.4, 60)],
        [(49, 35), (49.2, 41)],
    ]
    items: list[Shape] = []
    pairs: list[tuple[list[list[Point]], float]] = [(heavy, 1.9), (light, 1.0)]
    for lines, wide in pairs:
        both = [sampled(line, 3) for one in lines for line in (one, mirror_points(one))]
        items.append(strokes(both, Stroke(SILVER, wide)))
    pits = [((x, y), (x + 0.1, y)) for x, y in ((rng.uniform(37, 63), rng.uniform(33, 66)) for _ in range(46))]
    items.append(strokes(pits, Stroke("#5A3524", rng.uniform(0.55, 0.65))))
    return items


def _lone_star_rear() -> list[Shape]:
    items: list[Shape] = []
    for line in (
        [(45.8, 67.2), (48.2, 68.2), (48.2, 69.4), (45.4, 68.6)],
        [(39.2, 62.8), (41.4, 65.2), (43.2, 66.8), (42, 67.8), (39.4, 65.6)],
        [(34.2, 54), (35.2, 57.4), (36.6, 60.4), (35.2, 60), (33.6, 57)],
    ):
        items += _patch(line, "#EBDDBD", 0.95)
    return items


def _shield(name: str, kind: TickKind, plate: Profile, rng: random.Random) -> Group:
    wide = max(half for _, half in plate.spots)
    whole = plate.bottom > 66
    fill = cylinder((50 - wide, plate.top), (50 + wide, plate.top + 12), kind.shield_tone, shine=0.34)
    items: list[Shape] = [plate.outline(fill, pen("outline", times=0.7 if whole else 1))]
    if name == "dog":
        items += _dog_shield()
    if name == "dog-male":
        items += _dog_back(rng)
    if name == "lone-star-male":
        items += _lone_star_rear()
    soft_lines = [
        sampled([(50 + s * plate.half(32) * 0.62, 32), (50 + s * wide * 0.42, 37), (50 + s * wide * 0.5, 44)], 3)
        for s in (-1, 1)
    ]
    items.append(strokes(soft_lines, pen("fine", opacity=0.75)))
    items.append(stipple(plate.at, rng, count=40 if whole else 44, radius=0.16))
    if name == "lone-star":
        spot = [
            (50, 46.2),
            (52.3, 46.8),
            (53.2, 49.2),
            (52.2, 51.6),
            (50, 52.6),
            (47.8, 51.6),
            (46.8, 49.2),
            (47.7, 46.8),
        ]
        items.append(
            Group(
                (smooth(spot, closed=True, fill=globe((50, 49), 4, "#F1EAD6", depth=0.14), stroke=pen("hair")),),
                name="dot",
            )
        )
    if kind.eyes:
        y = 39.6
        items += [
            eye((50 + s * (plate.half(y) - 0.7), y), 0.55, "#D9C9A0" if name != "dog" else "black") for s in (-1, 1)
        ]
    return Group(tuple(items), name="shield")


def _gut(rng: random.Random) -> list[Shape]:
    # Dark branches of the gut show through the pale back of a young tick.
    items: list[Shape] = []
    for line in (
        [(46, 54), (44, 60), (41.6, 65), (43.4, 65.6), (46.2, 61), (48, 55)],
        [(41, 51), (38.6, 56), (37, 61), (38.8, 61.6), (41.4, 57), (43.4, 52)],
        [(38.4, 42), (36.2, 47), (35.6, 52), (37.2, 52.6), (38.6, 48), (39.4, 44)],
        [(49.2, 56), (48.6, 62), (48.9, 67.4), (50, 68), (50, 60), (50, 56)],
    ):
        items += _patch(line, "#6B4A36", 0.62 - rng.random() * 0.08)
    return items


def _leather(body: Profile, rng: random.Random) -> list[Shape]:
    # Close-set bumps all over, a few smooth discs, folds along the sides: the skin of a soft tick.
    bumps = []
    for row in range(25):
        v = 0.05 + row * 0.037
        count = max(1, round(body.half(body.at(0, v)[1]) * 0.62))
        for k in range(-count, count + 1):
            u = (k + (0.5 if row % 2 else 0)) / count * 0.92
            if abs(u) < 0.94 and rng.random() < 0.86:
                x, y = body.at(u, v)
                x, y, size = x + rng.uniform(-0.45, 0.45), y + rng.uniform(-0.5, 0.5), rng.uniform(0.3, 0.6)
                bumps.append(((x - size, y + size), (x, y + size * 1.9), (x + size, y + size * 0.6)))
    discs = [
        (-0.38, 0.26),
        (0.38, 0.26),
        (-0.26, 0.44),
        (0.26, 0.44),
        (-0.42, 0.6),
        (0.42, 0.6),
        (-0.22, 0.74),
        (0.22, 0.74),
        (0, 0.58),
    ]
    spots = [body.at(u, v) for u, v in discs]
    folds = [
        sampled([body.at(s * u, v) for u, v in ((0.62, 0.2), (0.72, 0.36), (0.7, 0.56), (0.58, 0.74))], 4)
        for s in (-1, 1)
    ]
    return [
        strokes(bumps, pen("fine", "#463A31", opacity=0.75)),
        *(Circle(spot, 1.0, "#7A6A5C", pen("hair", opacity=0.6)) for spot in spots),
        strokes(folds, pen("line", "#4A3C32", opacity=0.7)),
        strokes([((46.4, 29.4), (50, 27.6), (53.6, 29.4))], pen("fine", opacity=0.6)),
    ]


def tick_kind_parts(name: str, rng: random.Random) -> tuple[list[Shape], list[Shape]]:
    """The legs, and the rest, of a tick seen from above with its head up; `name` is one of `KINDS`."""
    kind = KINDS[name]
    body = kind.body
    middle = (50.0, (body.top + body.bottom) / 2)
    dark = kind.shield_tone if name.startswith("blacklegged") else blend(kind.legs, "#2A140A", 0.12)
    rest: list[Shape] = []
    if kind.base != "hidden":
        rest.append(_mouth(kind, dark))
    shine = 0.28 if kind.shield else 0.2
    rest.append(body.outline(globe(middle, 22.5, kind.tone, depth=0.42, shine=shine), pen("bold", times=0.75)))
    if name == "nymph":
        rest += _gut(rng)
    if kind.shield is None:
        rest += _leather(body, rng)
        return _legs(name, kind, rng), rest
    rest += _rear(kind)
    if kind.shield.bottom < 66:
        rest.append(hairs_within(body.at, rng, count=32, length=1.0, stroke=pen("hair", opacity=0.6)))
        rest.append(stipple(body.at, rng, count=76, radius=0.14))
        low = kind.shield.bottom + 3
        grooves = [((45, low), (44.2, low + 4), (45.4, low + 8)), ((55, low), (55.8, low + 4), (54.6, low + 8))]
        rest.append(strokes(grooves, pen("line", opacity=0.5)))
    rest.append(_shield(name, kind, kind.shield, rng))
    return _legs(name, kind, rng), rest
