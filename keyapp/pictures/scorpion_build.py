"""What differs between the families of scorpions, and their claws, tail joints and stings as parts."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from keyapp.pictures.limb import Segment
from keyapp.pictures.part import put
from keyapp.pictures.shape import Group, Path, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen
from keyapp.pictures.texture import hair

__all__ = ["KINDS", "Kind", "claw", "tail"]

_DARK = "#2A140B"


@dataclass(frozen=True)
class Kind:
    """One kind of scorpion, in canvas units; the body without the tail is 28 units long.

    Attributes:
        back: colour of the back; `limbs`, `hands` and `end` those of legs, claws and tail.
        palm: length of the hand of a claw, `wide` its width, `finger` the length of its fingers.
        arm: lengths of the two long joints of the arm; `arm_width` how thick they are.
        body: half the width of the body; `front` and `waist` half widths of the head shield in front and behind.
        joints: lengths of the five tail joints; `tail` their widths at the first and the last one.
        bulb: length of the bulb of the sting.
        reach: length of the legs against the usual; `leg` how thick they are.
        hairs: how many long dark hairs stand on tail and claws (1: very many); `hair` their length.
        mark: plain, dusky (a dark back with pale edges), mottled or barred.
        lines: dark lines along the underside of the tail.
        tooth: a small tooth below the sting.
        notch: how deep the front edge of the head shield is cut in.
        rough: coarse grains on claws and back.
    """

    back: str
    limbs: str
    hands: str
    end: str
    palm: float
    wide: float
    finger: float
    arm: tuple[float, float]
    arm_width: float
    body: float
    front: float
    waist: float
    joints: tuple[float, float, float, float, float]
    tail: tuple[float, float]
    bulb: float
    reach: float = 1.0
    leg: float = 1.9
    hairs: float = 0.12
    hair: float = 1.5
    mark: str = "plain"
    lines: bool = False
    tooth: bool = False
    notch: float = 0.4
    rough: bool = False


KINDS = {
    "bark": Kind(
        back="#DDBE82", limbs="#E5CB93", hands="#DDBC7E", end="#DDBC7E", palm=5.6, wide=2.9, finger=9.2,
        arm=(8.4, 8.6), arm_width=2.2, body=4.9, front=2.4, waist=4.5, joints=(6.6, 7.6, 8.0, 8.8, 9.4),
        tail=(2.6, 2.3), bulb=3.9, reach=1.06, leg=1.6, tooth=True,
    ),
    "stripe-tailed": Kind(
        back="#B68F5C", limbs="#DDBE84", hands="#D6AC68", end="#D2AC6C", palm=7.0, wide=5.2, finger=6.6,
        arm=(6.2, 6.4), arm_width=3.2, body=6.1, front=3.6, waist=5.8, joints=(4.6, 5.2, 5.6, 6.6, 8.6),
        tail=(4.2, 3.8), bulb=5.2, reach=0.96, leg=1.9, hairs=0.2, mark="barred", lines=True,
    ),
    "giant-hairy": Kind(
        back="#5B4636", limbs="#E2BD66", hands="#DDB35A", end="#DDB45C", palm=7.2, wide=5.0, finger=8.0,
        arm=(6.8, 7.2), arm_width=3.5, body=7.2, front=4.4, waist=6.8, joints=(5.0, 5.6, 6.0, 7.2, 9.6),
        tail=(5.0, 4.3), bulb=6.6, reach=1.0, leg=2.4, hairs=1.0, hair=3.0, mark="dusky", notch=0.5,
    ),
    "thick-clawed": Kind(
        back="#6E3F28", limbs="#A8703F", hands="#7E4226", end="#74402A", palm=9.4, wide=8.4, finger=6.4,
        arm=(5.4, 5.8), arm_width=4.6, body=7.4, front=5.2, waist=7.0, joints=(3.8, 4.1, 4.4, 5.0, 7.4),
        tail=(4.6, 3.7), bulb=5.4, reach=0.8, leg=2.3, hairs=0.25, tooth=True, notch=1.5, rough=True,
    ),
    "superstition": Kind(
        back="#B78A4E", limbs="#D2AC6C", hands="#B9854A", end="#B98A4E", palm=5.8, wide=3.4, finger=4.8,
        arm=(5.0, 5.2), arm_width=2.7, body=6.8, front=4.4, waist=6.4, joints=(3.9, 4.3, 4.6, 5.2, 7.6),
        tail=(4.3, 4.0), bulb=5.6, reach=0.84, leg=2.1, hairs=0.1, mark="mottled",
    ),
}  # fmt: skip
"""Proportions and colours that set the families apart."""


def claw(at: Point, turn: float, kind: Kind, tone: str, rng: random.Random, *, flip: bool = False) -> Group:
    """A claw that points to `turn`: the hand with its fixed finger inside, the finger that moves outside."""
    half, p, f = kind.wide / 2, kind.palm, kind.finger
    end = p + f
    thick = min(half, 2.6)
    hand: list[Point] = [
        (-half * 0.32, 0.3), (-half * 0.86, -p * 0.2), (-half * 1.02, -p * 0.55), (-half * 0.86, -p * 0.9),
        (-half * 0.3 - thick * 0.32, -p - f * 0.36), (-half * 0.12 - thick * 0.3, -p - f * 0.72), (thick * 0.06, -end),
        (-half * 0.08 - thick * 0.06, -p - f * 0.68), (-half * 0.1, -p - f * 0.3), (half * 0.02, -p * 1.0),
        (half * 0.6, -p * 0.96), (half * 0.98, -p * 0.74), (half * 1.0, -p * 0.42), (half * 0.7, -p * 0.12),
        (half * 0.32, 0.3),
    ]  # fmt: skip
    mover: list[Point] = [
        (half * 0.86, -p * 0.78), (half * 0.72 + thick * 0.3, -p - f * 0.06),
        (half * 0.4 + thick * 0.44, -p - f * 0.46), (thick * 0.5, -p - f * 0.8), (thick * 0.14, -end * 1.002),
        (thick * 0.16, -p - f * 0.74), (half * 0.16 + thick * 0.12, -p - f * 0.4), (half * 0.22, -p - f * 0.1),
        (half * 0.2, -p * 0.9),
    ]  # fmt: skip
    hand, mover = (put(points, at, turn, flip=flip) for points in (hand, mover))
    edge = put([(-half, -p * 0.5), (half, -p * 0.5)], at, turn, flip=flip)
    fingers = blend(tone, _DARK, 0.62 if kind.rough else 0.42 if kind.mark == "dusky" else 0.3)
    keels = [put([(half * k, -p * 0.1), (half * k * 1.4, -p * 0.5), (half * k, -p * 0.9)], at, turn, flip=flip)
             for k in (-0.3, 0.34)]  # fmt: skip
    hairs: list[tuple[Point, ...]] = []
    for index in range(round(8 + 30 * kind.hairs)):
        side = 1 if index % 2 else -1
        y = -rng.uniform(p * 0.12, end * 0.92)
        over = half * (0.96 if -y < p else 0.3) + (0 if -y < p else thick * 0.3 * (1 + y / end))
        root = put([(side * over, y)], at, turn, flip=flip)[0]
        way = -side if flip else side
        hairs.append(hair(root, turn + way * rng.uniform(40, 85), kind.hair * rng.uniform(0.6, 1.1)))
    items: list[Shape] = [
        strokes(hairs, Stroke("#3A2416", 0.15)),
        smooth(mover, closed=True, fill=fingers, stroke=pen("line"), tension=0.9),
        smooth(hand, closed=True, fill=cylinder(edge[0], edge[1], tone, depth=0.45, shine=0.3),
               stroke=pen("outline", times=0.8), tension=0.9),
        strokes(keels, pen("fine", opacity=0.4)),
    ]  # fmt: skip
    if kind.rough:
        grains = [put([(half * rng.uniform(-0.82, 0.82), -p * rng.uniform(0.2, 0.92))], at, turn, flip=flip)[0]
                  for _ in range(46)]  # fmt: skip
        items.append(strokes([(spot, (spot[0] + 0.14, spot[1])) for spot in grains], Stroke("#2A140B", 0.42, 0.6)))
    if kind.hairs > 0.5:
        roots = [put([(half * rng.uniform(-0.7, 0.7), -p * rng.uniform(0.15, 0.95))], at, turn, flip=flip)[0]
                 for _ in range(14)]  # fmt: skip
        items.append(strokes([hair(root, turn + rng.uniform(-40, 40), 1.6) for root in roots], Stroke("ink", 0.17)))
    return Group(tuple(items), name="pincer")


def tail(spots: Sequence[Point], kind: Kind, rng: random.Random, sting: float, *, outer: int = 1) -> Group:
    """Five tail joints through six points and the sting, which points to `sting`.

    `outer` is the side of the way along the tail on which its underside lies: the sting curves to that side.
    """
    items: list[Shape] = []
    for index, (one, two) in enumerate(pairwise(spots)):
        wide = kind.tail[0] + (kind.tail[1] - kind.tail[0]) * index / 4
        piece = Segment(one, two, wide * 0.82, wide * 1.02, wide * (0.94 if index < 4 else 0.78))
        tone = blend(kind.end, "#4A2410", 0.05 * index)
        hairs = []
        for step in range(round(4 + 24 * kind.hairs)):
            side = 1 if step % 2 else -1
            hairs.append(
                hair(piece.at(rng.uniform(0.06, 0.96), side * 0.94), piece.degrees + side * rng.uniform(58, 95),
                     kind.hair * rng.uniform(0.65, 1.15))
            )  # fmt: skip
        keels = [[piece.at(t, k * outer) for t in (0.06, 0.5, 0.94)] for k in (-0.62, -0.12)]
        parts: list[Shape] = [
            strokes(hairs, Stroke("#3A2416", 0.15)),
            Path(piece.outline(), cylinder(piece.at(0.5, -1), piece.at(0.5, 1), tone), pen("outline", times=0.75)),
            strokes(keels, pen("fine", opacity=0.45)),
        ]
        if kind.lines:
            dark = [[piece.at(t, k * outer) for t in (0.04, 0.5, 0.96)] for k in (0.3, 0.66)]
            parts.append(strokes(dark, Stroke("#3A2010", 0.5, 0.85)))
        if kind.mark == "mottled":
            spots_dark = [piece.at(rng.uniform(0.1, 0.9), rng.uniform(-0.7, 0.7)) for _ in range(7)]
            parts.append(strokes([(s, (s[0] + 0.4, s[1] + 0.2)) for s in spots_dark], Stroke("#2E1C10", 0.55, 0.6)))
        if kind.hairs > 0.5:
            roots = [piece.at(rng.uniform(0.1, 0.9), rng.uniform(-0.7, 0.7)) for _ in range(7)]
            parts.append(strokes([hair(r, piece.degrees + rng.uniform(-50, 50), 1.7) for r in roots],
                                 Stroke("ink", 0.17)))  # fmt: skip
        items.insert(0, Group(tuple(parts), name="tail-joint"))
    items.insert(0, _sting(spots[-1], sting, kind, rng, outer))
    return Group(tuple(items), name="tail")


def _sting(at: Point, turn: float, kind: Kind, rng: random.Random, outer: int) -> Group:
    b = kind.bulb
    bulb: list[Point] = [
        (-b * 0.16, 0.5), (-b * 0.3, -b * 0.22), (-b * 0.33, -b * 0.55), (-b * 0.2, -b * 0.86), (0, -b * 1.02),
        (b * 0.2, -b * 0.9), (b * 0.36, -b * 0.55), (b * 0.32, -b * 0.2), (b * 0.16, 0.5),
    ]  # fmt: skip
    needle: list[Point] = [
        (-b * 0.17, -b * 0.86), (-b * 0.1, -b * 1.16), (b * 0.1, -b * 1.42), (b * 0.44, -b * 1.56),
        (b * 0.24, -b * 1.3), (b * 0.16, -b * 1.1), (b * 0.16, -b * 0.88),
    ]  # fmt: skip
    tooth: list[Point] = [
        (b * 0.14, -b * 1.0), (b * 0.42, -b * 1.12), (b * 0.47, -b * 0.98), (b * 0.4, -b * 0.72), (b * 0.2, -b * 0.66),
    ]  # fmt: skip
    flip = outer < 0
    tone = blend(kind.end, "#5A2F18", 0.1)
    centre = put([(0, -b * 0.5)], at, turn)[0]
    hairs = []
    for step in range(round(3 + 15 * kind.hairs)):
        side = 1 if step % 2 else -1
        root = put([(side * b * 0.32, -b * rng.uniform(0.1, 0.85))], at, turn, flip=flip)[0]
        way = -side if flip else side
        hairs.append(hair(root, turn + way * rng.uniform(35, 80), kind.hair * rng.uniform(0.6, 1)))
    items: list[Shape] = [
        strokes(hairs, Stroke("#3A2416", 0.15)),
        smooth(put(needle, at, turn, flip=flip), closed=True, fill=blend(tone, _DARK, 0.75),
               stroke=pen("line", times=0.7)),
    ]  # fmt: skip
    if kind.tooth:
        items.append(smooth(put(tooth, at, turn, flip=flip), closed=True, fill=blend(tone, _DARK, 0.35),
                            stroke=pen("line", times=0.7), tension=0.7))  # fmt: skip
    items.append(smooth(put(bulb, at, turn, flip=flip), closed=True, fill=globe(centre, b * 0.55, tone),
                        stroke=pen("outline", times=0.75)))  # fmt: skip
    return Group(tuple(items), name="sting")
