"""Pincers and tails of scorpions, and the proportions of slender and stout ones."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.pictures.limb import Segment
from keyapp.pictures.part import put
from keyapp.pictures.shape import Group, Path, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen
from keyapp.pictures.texture import hair

__all__ = ["BUILDS", "TONES", "Build", "chain", "chela", "tail_group"]


@dataclass(frozen=True)
class Build:
    """Proportions that differ between a slender and a stout scorpion, in canvas units."""

    palm: float
    finger: float
    palm_width: float
    arm: float
    body: float
    tail: float
    tail_length: float
    leg: float


BUILDS = {
    "slender": Build(palm=6.4, finger=10.5, palm_width=3.1, arm=2.3, body=4.9, tail=2.7, tail_length=6.9, leg=1.7),
    "stout": Build(palm=10.0, finger=8.2, palm_width=7.6, arm=3.9, body=7.2, tail=4.3, tail_length=6.0, leg=2.3),
}


TONES = {"pale": "#DDBB7C", "striped": "#CFA665", "dark": "#5C3F2C"}


def chela(at: Point, turn: float, build: Build, tone: str, rng: random.Random, *, flip: bool = False) -> Group:
    """A pincer: its hand, the fixed finger and the finger that moves, pointing to `turn`."""
    palm, finger, half = build.palm, build.finger, build.palm_width / 2
    tip = palm + finger
    hand = [
        (-half * 0.42, 0),
        (-half * 0.95, -palm * 0.35),
        (-half * 0.98, -palm * 0.72),
        (-half * 0.62, -palm * 1.02),
        (-half * 0.5, -palm - finger * 0.45),
        (-half * 0.05, -tip * 0.995),
        (half * 0.06, -tip),
        (-half * 0.02, -palm - finger * 0.5),
        (half * 0.25, -palm * 1.03),
        (half * 0.95, -palm * 0.8),
        (half, -palm * 0.4),
        (half * 0.42, 0),
    ]
    movable = [
        (half * 0.98, -palm * 0.8),
        (half * 1.15, -palm * 1.08),
        (half * 0.9, -palm - finger * 0.45),
        (half * 0.22, -tip * 1.0),
        (half * 0.12, -tip * 0.985),
        (half * 0.42, -palm - finger * 0.42),
        (half * 0.4, -palm * 1.0),
    ]
    hand, movable = (put(points, at, turn, flip=flip) for points in (hand, movable))
    edge = put([(-half, -palm * 0.5), (half, -palm * 0.5)], at, turn, flip=flip)
    fill = cylinder(edge[0], edge[1], tone, depth=0.45, shine=0.32)
    dark = blend(tone, "#3A2010", 0.28)
    keels = [
        put(
            [(half * k, -palm * 0.1), (half * k * 1.35, -palm * 0.5), (half * k * 0.9, -palm * 0.9)],
            at,
            turn,
            flip=flip,
        )
        for k in (-0.35, 0.2)
    ]
    hairs = []
    for _ in range(12):
        y = -rng.uniform(palm * 0.4, tip * 0.95)
        side = rng.choice((-1, 1))
        root = put([(side * half * (0.9 if -y < palm else 0.5), y)], at, turn, flip=flip)[0]
        hairs.append(hair(root, turn + (-side if flip else side) * rng.uniform(30, 70), rng.uniform(0.9, 1.8)))
    return Group(
        (
            strokes(hairs, pen("hair")),
            smooth(movable, closed=True, fill=dark, stroke=pen("line"), tension=0.85),
            smooth(hand, closed=True, fill=fill, stroke=pen("outline", times=0.85), tension=0.85),
            strokes(keels, pen("fine", opacity=0.45)),
        ),
        name="pincer",
    )


def tail_group(
    joints: Sequence[Point], width: float, tone: str, rng: random.Random, sting: float, *, bend: int = 1
) -> Group:
    """Five tail joints and the sting bulb; `sting` is the way the bulb points, `bend` the side it hooks to."""
    items: list[Shape] = []
    order = list(itertools.pairwise(joints))
    for index, (one, two) in enumerate(order):
        wide = width * (1.0 - 0.04 * index)
        piece = Segment(one, two, wide * 0.74, wide * 1.06, wide * 0.86)
        tint = blend(tone, "#4A2814", 0.05 * index)
        keels = [[piece.at(t, k) for t in (0.1, 0.5, 0.92)] for k in (-0.45, 0.4)]
        hairs = []
        for _ in range(5):
            side = rng.choice((-1, 1))
            hairs.append(
                hair(piece.at(rng.uniform(0.2, 0.9), side * 0.9), piece.degrees + side * 55, rng.uniform(0.8, 1.7))
            )
        parts: tuple[Shape, ...] = (
            strokes(hairs, pen("hair")),
            Path(piece.outline(), cylinder(piece.at(0.5, -1), piece.at(0.5, 1), tint), pen("outline", times=0.8)),
            strokes(keels, pen("fine", opacity=0.45)),
        )
        items.insert(0, Group(parts, name="tail-joint"))
    w = width
    bulb = put(
        [
            (0, 0.4),
            (-w * 0.42, -w * 0.25),
            (-w * 0.5, -w * 0.85),
            (-w * 0.2, -w * 1.4),
            (w * 0.14, -w * 1.42),
            (w * 0.46, -w * 0.9),
            (w * 0.4, -w * 0.25),
        ],
        joints[-1],
        sting,
        flip=bend < 0,
    )
    needle = put(
        [
            (-w * 0.17, -w * 1.28),
            (w * 0.05, -w * 1.75),
            (w * 0.42, -w * 2.12),
            (w * 0.86, -w * 2.24),
            (w * 0.5, -w * 1.92),
            (w * 0.3, -w * 1.62),
            (w * 0.2, -w * 1.3),
        ],
        joints[-1],
        sting,
        flip=bend < 0,
    )
    centre = put([(0, -w * 0.8)], joints[-1], sting)[0]
    items.insert(
        0,
        Group(
            (
                smooth(needle, closed=True, fill=blend(tone, "#2A120A", 0.72), stroke=pen("line", times=0.8)),
                smooth(
                    bulb,
                    closed=True,
                    fill=globe(centre, w * 0.95, blend(tone, "#5A2F18", 0.16)),
                    stroke=pen("outline", times=0.8),
                ),
            ),
            name="sting",
        ),
    )
    return Group(tuple(items), name="tail")


def chain(start: Point, turns: Sequence[float], length: float, growth: float = 1.05) -> list[Point]:
    spots = [start]
    for index, turn in enumerate(turns):
        reach = length * growth**index
        x, y = spots[-1]
        spots.append((x + math.sin(math.radians(turn)) * reach, y - math.cos(math.radians(turn)) * reach))
    return spots
