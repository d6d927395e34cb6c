"""Recipe `scorpion-kind`: one scorpion of each family from above, alike in pose, so that they can be compared."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from keyapp.pictures.limb import LimbLook, joints_from, limb
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, named, put, recolored, ring_round
from keyapp.pictures.scorpion_build import KINDS, Kind, claw, tail
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.style import blend, cylinder, pen, scale_bar
from keyapp.pictures.texture import hair, seeded, stipple

__all__ = ["RECIPES", "TOP", "body_parts", "leg_parts", "scorpion_kind", "scorpion_kind_parts", "tail_spots"]

TOP, _SHIELD, _END = 33.0, 42.0, 61.0
_CURL = ((176, 160, 122, 76, 22), -16.0)
# A long tail is curled in more, clear of the legs.
_LONG_CURL = ((178, 150, 102, 42, -24), -66.0)
_FAN = (
    (3.4, (60, 82, 58, 38), 20.5),
    (5.2, (80, 102, 92, 78), 22.0),
    (7.0, (104, 112, 126, 136), 25.0),
    (8.6, (126, 128, 150, 164), 29.5),
)


def tail_spots(kind: Kind, turns: Sequence[float]) -> list[Point]:
    """The six points through which the tail runs."""
    return joints_from((50, _END - 1.0), kind.joints, turns)


def leg_parts(kind: Kind, rng: random.Random, top: float = TOP) -> list[Shape]:
    """Four pairs of legs, the first pair named `leg-first`."""
    w = kind.leg
    widths = (
        (w, w * 1.1, w * 0.9),
        (w * 0.95, w * 1.05, w * 0.85),
        (w * 0.78, w * 0.8, w * 0.55),
        (w * 0.5, w * 0.45, w * 0.2),
    )
    rich = kind.hairs > 0.5
    look = LimbLook((kind.limbs,), hairs=1.4 if rich else 0.3, hair_length=1.9 if rich else 1.0,
                    spines=(0, 1, 2, 1), spine_length=1.0, lean=True, outline=0.5)  # fmt: skip
    items: list[Shape] = []
    for index, (down, turns, length) in enumerate(_FAN):
        hip = (50 + kind.waist * 0.72, top + down)
        lengths = [length * kind.reach * k for k in (0.27, 0.3, 0.23, 0.2)]
        pair = leg_pair(rng, hip, lengths, turns, widths, look)
        items += [Group((leg,), name="leg-first") for leg in pair] if index == 0 else pair
    return items


def _arms(kind: Kind, rng: random.Random) -> list[Shape]:
    w = kind.arm_width
    look = LimbLook((kind.hands,), hairs=1.3 if kind.hairs > 0.5 else 0.3, hair_length=kind.hair * 0.8,
                    outline=0.5)  # fmt: skip
    widths = ((w * 0.75, w * 0.85, w * 0.85), (w * 0.8, w, w * 0.95), (w * 0.8, w * 1.15, w * 0.7))
    items: list[Shape] = []
    for side in (1, -1):
        swing = rng.uniform(-4, 4)
        turns = [side * (turn + swing) for turn in (60, 66, 6)]
        spots = joints_from((50 + side * kind.front * 0.85, TOP + 2.2), (3.6, *kind.arm), turns)
        items.append(limb(spots, widths, look, rng, name="arm"))
        items.append(claw(spots[-1], side * (-22 + swing), kind, kind.hands, rng, flip=side < 0))
    for side in (1, -1):
        nip = put([(0.2, 1.4), (0.3, -1.2), (0.9, -2.3), (1.6, -1.2), (1.9, 1.4)], (50, TOP + kind.notch * 0.5), 0,
                  flip=side < 0, scale=0.6 + kind.front * 0.1)  # fmt: skip
        items.append(smooth(nip, closed=True, fill=kind.limbs, stroke=pen("line")))
    return items


def _shield(kind: Kind) -> tuple[list[Point], Profile]:
    front, back = kind.front, kind.waist
    half = ((TOP + 0.2, front * 0.8), (TOP + 0.9, front), (TOP + 4.6, front + (back - front) * 0.6), (_SHIELD, back))
    points: list[Point] = [(50, TOP + kind.notch)]
    points += [(50 + w, y) for y, w in half]
    points += [(50 + back * 0.5, _SHIELD + 0.5), (50 - back * 0.5, _SHIELD + 0.5)]
    points += [(50 - w, y) for y, w in reversed(half)]
    return points, Profile(half)


def body_parts(kind: Kind, rng: random.Random) -> list[Shape]:
    """The head shield and the seven plates of the back."""
    b = kind.body
    trunk = Profile(
        (
            (_SHIELD - 0.4, kind.waist * 0.98),
            (TOP + 14, b),
            (TOP + 19, b * 1.02),
            (TOP + 23.6, b * 0.88),
            (_END, kind.tail[0] * 0.52),
        )
    )
    items: list[Shape] = []
    shares = (0, 0.09, 0.2, 0.33, 0.47, 0.62, 0.78, 1.0)
    edges = [trunk.top + (_END - trunk.top) * k for k in shares]
    pale = blend(kind.back, "#F2DCAA", 0.45)
    for index in range(6, -1, -1):
        plate = trunk.plate(edges[index], edges[index + 1], kind.back, bow=0.4)
        items.append(Group(plate.items, name="back-plate"))
        y = edges[index + 1]
        if kind.mark in ("dusky", "barred"):
            items.append(strokes([trunk.line(y - 0.45, 0.4, 0.9)], Stroke(pale, 0.75, 0.85)))
        if kind.mark == "barred":
            for side in (-1, 1):
                spot = [(50 + side * b * u, y - d) for u, d in ((0.2, 1.9), (0.62, 2.0), (0.66, 1.0), (0.24, 0.8))]
                items.append(smooth(spot, closed=True, fill="#4A3320", opacity=0.6))
    points, shield = _shield(kind)
    tone = blend(kind.back, "#4A2814", 0.1)
    fill = cylinder((50 - b, TOP), (50 + b, TOP), tone)
    items.append(smooth(points, closed=True, fill=fill, stroke=pen("outline", times=0.9), tension=0.8))
    if kind.mark == "dusky":
        # The front of the head shield is pale before and beside the eyes.
        bow = [
            (50 - kind.front * 0.8, TOP + 1.1), (50, TOP + kind.notch + 0.7), (50 + kind.front * 0.8, TOP + 1.1),
            (50 + kind.front * 0.92, TOP + 3.4), (50 + kind.front * 0.4, TOP + 2.9), (50, TOP + 3.7),
            (50 - kind.front * 0.4, TOP + 2.9), (50 - kind.front * 0.92, TOP + 3.4),
        ]  # fmt: skip
        items.append(smooth(bow, closed=True, fill=blend(kind.limbs, kind.back, 0.1), opacity=0.9))
    if kind.mark == "mottled":
        for y0, y1 in pairwise(edges):
            for u, wide in ((0.2, 0.3), (0.58, 0.34), (0.86, 0.18)):
                for side in (-1, 1):
                    x, half = 50 + side * trunk.half((y0 + y1) / 2) * (u + rng.uniform(-0.06, 0.06)), b * wide * 0.5
                    top, low = y0 + (y1 - y0) * rng.uniform(0.12, 0.3), y0 + (y1 - y0) * rng.uniform(0.6, 0.85)
                    blot = [(x - half, top + 0.3), (x + half * 0.5, top), (x + half, (top + low) / 2), (x, low),
                            (x - half * 0.7, low - 0.3)]  # fmt: skip
                    items.append(smooth(blot, closed=True, fill="#2E1E12", opacity=0.66))
        marks = [shield.at(side * u, v) for u, v in ((0.25, 0.7), (0.6, 0.5), (0.65, 0.85), (0.3, 0.25), (0.8, 0.2))
                 for side in (-1, 1)]  # fmt: skip
        items.append(strokes([((x, y), (x + 0.5, y + 0.5)) for x, y in marks], Stroke("#2E1E12", 1.1, 0.66)))
        shine = [((50 - b * 0.42, y0 + 0.6), (50 - b * 0.42, y1 - 0.9)) for y0, y1 in pairwise(edges[1:6])]
        items.append(strokes(shine, Stroke("white", 0.8, 0.42)))
    grain = 120 if kind.rough else 50
    items += [stipple(trunk.at, rng, count=grain, radius=0.12), stipple(shield.at, rng, count=grain // 2, radius=0.12)]
    items.append(strokes([((50, TOP + 5.4), (50, _SHIELD - 0.6))], pen("fine", opacity=0.6)))
    items += [eye((50 - 0.68, TOP + 4.4), 0.55), eye((50 + 0.68, TOP + 4.4), 0.55)]
    for side in (1, -1):
        items += [eye((50 + side * (kind.front * 0.86 + k * 0.14), TOP + 1.2 + k * 0.7), 0.24) for k in range(3)]
    if kind.hairs > 0.5:
        lines = [
            hair(trunk.at(side * 0.97, rng.uniform(0.03, 0.9)), side * rng.uniform(75, 120), rng.uniform(1.4, 2.4))
            for side in (-1, 1)
            for _ in range(14)
        ]
        items.append(strokes(lines, Stroke("ink", 0.18)))
    return items


def scorpion_kind_parts(kind: Kind, rng: random.Random) -> list[Shape]:
    """A whole scorpion from above, head up, its tail laid in a curve to one side."""
    turns, sting = _LONG_CURL if sum(kind.joints) > 38 else _CURL
    return [
        *leg_parts(kind, rng),
        *_arms(kind, rng),
        tail(tail_spots(kind, turns), kind, rng, sting),
        *body_parts(kind, rng),
    ]


def scorpion_kind(values: Mapping[str, object]) -> Drawing:
    """Recipe `scorpion-kind`. Settings: kind, look-at (nothing, tail or first-legs), bar-mm, body-mm (without the
    tail), seed."""
    settings = Settings(values)
    kind = KINDS[settings.choice("kind", KINDS, "bark")]
    mark = settings.choice("look-at", ("nothing", "tail", "first-legs"), "nothing")
    rng = seeded("scorpion-kind", settings.whole("seed", 1))
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 25, least=2, most=200)
    settings.done()
    items = scorpion_kind_parts(kind, rng)
    if mark == "tail":
        items.append(ring_round(named(items, "tail"), grow=1.5))
    elif mark == "first-legs":
        items = [
            replace(item, items=recolored(item, "look", line="ink", wash=0.1).items)  # type: ignore[union-attr]
            if isinstance(item, Group) and item.name == "leg-first"
            else item
            for item in items
        ]
    body, scale = fitted(items, margin=4, bottom=97 if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, (_END - TOP) * scale / long_mm))
    return framed(shapes)


RECIPES = {"scorpion-kind": scorpion_kind}
