"""Animals of many rings: house centipedes, brown centipedes, millipedes, and sowbugs with their seven leg pairs."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Mapping

from keyapp.pictures.limb import Band, LimbLook, limb
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, sampled, taper
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen, scale_bar
from keyapp.pictures.texture import seeded, stipple

__all__ = ["RECIPES", "brown_centipede_parts", "house_centipede_parts", "many_legs", "millipede_parts", "sowbug_parts"]


def _mix(first: float, last: float, share: float) -> float:
    return first + (last - first) * share


def house_centipede_parts(rng: random.Random) -> list[Shape]:
    """A house centipede from above: 15 pairs of banded legs, longer towards the rear, and three dark stripes."""
    tone, dark = "#D8C48E", "#4C3B2B"
    top, end = 29.0, 70.0
    trunk = Profile(
        (
            (top - 2.6, 2.3),
            (top - 1.6, 3.3),
            (top + 3, 4.1),
            (top + 18, 4.5),
            (top + 33, 3.9),
            (end, 2.3),
            (end + 1.6, 0),
        )
    )
    legs: list[Shape] = []
    for index in range(14, -1, -1):
        share = index / 14
        y = top + 0.8 + index * 2.72
        last = index == 14
        reach = _mix(22, 38, share**1.2) * (1.15 if last else 1.0)
        first = _mix(46, 142, share) if not last else 148.0
        for side in (1, -1):
            swing = rng.uniform(-4, 4)
            spots: list[Point] = [(50 + side * 2.8, y)]
            bends = (first, first + _mix(-10, 10, share), first + _mix(-16, 22, share))
            if last:
                bends = (138, 150, 156)
            for part, turn in zip((0.06, 0.30, 0.27), (bends[0], bends[0], bends[1]), strict=True):
                angle = math.radians(turn + swing)
                x, at = spots[-1]
                spots.append((x + side * math.sin(angle) * reach * part, at - math.cos(angle) * reach * part))
            bands = (
                Band(1, 0.3, 0.46, dark),
                Band(1, 0.74, 0.9, dark),
                Band(2, 0.24, 0.42, dark),
                Band(2, 0.72, 0.9, dark),
            )
            look = LimbLook((tone,), bands=bands, spines=(0, 2, 2), spine_length=0.8, outline=0.24)
            leg = limb(spots, ((1.4, 1.3, 1.2), (1.35, 1.3, 1.05), (1.05, 0.9, 0.72)), look, rng)
            whip = [spots[-1]]
            bend = bends[1] + swing
            for _ in range(6):
                bend += (bends[2] - bends[1]) * 0.42
                angle = math.radians(bend)
                x, at = whip[-1]
                whip.append((x + side * math.sin(angle) * reach * 0.075, at - math.cos(angle) * reach * 0.075))
            foot = taper(whip, 0.78, 0.2, "#5A4936")
            legs.append(Group((foot, *leg.items), name="leg"))
    items: list[Shape] = [*legs]
    for side in (1, -1):
        feeler = [
            (50 + side * 1.4, top - 4.4),
            (50 + side * 5.0, top - 13),
            (50 + side * 11, top - 20),
            (50 + side * 20, top - 24.4),
            (50 + side * 31, top - 25 + rng.uniform(-1, 1)),
            (50 + side * 40, top - 22),
        ]
        line = sampled(feeler, 10)
        rings = [((x - 0.24, y - 0.1), (x + 0.24, y + 0.1)) for x, y in line[3:36:2]]
        items.append(
            Group((taper(feeler, 1.0, 0.2, "#6B563C"), strokes(rings, pen("hair", opacity=0.7))), name="feeler")
        )
    items.append(trunk.outline(tone, pen("outline")))
    edges = [top - 0.6 + (end - top) * k for k in (0, 0.115, 0.25, 0.4, 0.555, 0.7, 0.83, 0.96)]
    for one, two in reversed(list(itertools.pairwise(edges))):
        items.append(trunk.plate(one, two, tone, bow=0.35, name="back-plate", depth=0.3))
    for k in (-0.62, 0.0, 0.62):
        line = [trunk.at(k, v) for v in (0.07, 0.2, 0.4, 0.6, 0.8, 0.95)]
        items.append(Group((strokes([sampled(line)], pen("bold", "#4A3324", times=1.5, opacity=0.92)),), name="stripe"))
    for y in (top + 6.2, top + 12.2, top + 18.6, top + 25, top + 31):
        items.append(Circle((50, y), 0.42, "#9C5A33", None, 0.9))
    head = (50.0, top - 4.0)
    items.append(
        Group(
            (
                Circle(head, 3.2, globe(head, 3.3, blend(tone, "#A86A3A", 0.35)), pen("line")),
                eye((47.5, top - 4.8), 1.1),
                eye((52.5, top - 4.8), 1.1),
                strokes([((49, top - 6.4), (50, top - 3)), ((51, top - 6.4), (50, top - 3))], pen("fine", opacity=0.7)),
            ),
            name="head",
        )
    )
    return items


def brown_centipede_parts(rng: random.Random, tone: str = "#9A5328") -> list[Shape]:
    """A flat brown centipede from above: one pair of legs to each of its 21 rings."""
    trunk = Profile(((20, 2.6), (22, 3.6), (30, 4.2), (50, 4.5), (70, 4.1), (80, 3.2), (84, 1.8), (84.6, 0)))
    look = LimbLook((blend(tone, "#E8C070", 0.45),), outline=0.35)
    pairs, step = 21, 2.83
    items: list[Shape] = []
    for index in range(pairs - 1, -1, -1):
        share = index / (pairs - 1)
        last = index == pairs - 1
        reach = 13.5 if last else _mix(7.4, 9.4, share)
        turn = 160 if last else _mix(66, 122, share)
        items += leg_pair(
            rng,
            (53.4 if not last else 51.6, 24 + index * step),
            [reach * 0.36, reach * 0.34, reach * 0.34],
            (turn - 12, turn + 4, turn + 24 * (1 if share > 0.3 else 0.2)),
            ((1.4, 1.3, 1.0), (1.0, 0.9, 0.7), (0.7, 0.5, 0.15)),
            look,
            jitter=5,
        )
    for side in (1, -1):
        line = [
            (50 + side * 1.6, 15.4),
            (50 + side * 5, 10),
            (50 + side * 9.4, 6.5),
            (50 + side * 14, 5.6 + rng.uniform(-0.6, 0.6)),
        ]
        items.append(Group((taper(line, 1.1, 0.3, blend(tone, "#2A140A", 0.3)),), name="feeler"))
    items.append(trunk.outline(tone, pen("outline")))
    for index in range(pairs - 1, -1, -1):
        items.append(
            trunk.plate(22 + index * 2.94, min(22 + (index + 1) * 2.94, 84.4), tone, bow=0.3, name="ring-plate")
        )
    head = Profile(((14.4, 1.6), (15, 3.0), (18, 3.7), (21, 3.2), (22.4, 2.2)))
    items.append(head.outline(cylinder((46, 17), (54, 19), blend(tone, "#C4581E", 0.4)), pen("outline")))
    items += [eye((50 + side * 2.7, 16.4), 0.5) for side in (-1, 1)]
    items.append(stipple(trunk.at, rng, count=140, radius=0.11))
    return items


def millipede_parts(rng: random.Random, tone: str = "#5B3B2A") -> list[Shape]:
    """A round-bodied millipede from above in a gentle bend, with two leg pairs to most rings."""
    spine = sampled([(41, 12), (44, 22), (54, 38), (57, 54), (50, 70), (44, 82), (45, 90)], 9)
    look = "#8C5A38"
    legs, rings = [], []
    for index in range(2, len(spine) - 2):
        (xa, ya), (xb, yb) = spine[index - 1], spine[index + 1]
        length = math.hypot(xb - xa, yb - ya)
        nx, ny = -(yb - ya) / length, (xb - xa) / length
        half = 4.4 * min(1.0, 0.55 + index / 9, 0.4 + (len(spine) - index) / 9)
        x, y = spine[index]
        for side in (1, -1):
            for lag in (0.0, 0.55):
                out = half + rng.uniform(2.2, 2.8)
                bx, by = x + (xb - xa) * lag * 0.5, y + (yb - ya) * lag * 0.5
                wave = math.sin(index * 0.9 + lag) * 0.8
                legs.append(
                    (
                        (bx + nx * side * half * 0.8, by + ny * side * half * 0.8),
                        (bx + nx * side * (half + 1.4), by + ny * side * (half + 1.4) - 0.5),
                        (bx + nx * side * out, by + ny * side * out + wave),
                    )
                )
        rings.append((x, y, nx, ny, half))
    items: list[Shape] = [Group((strokes([leg], pen("line", look, times=1.3)),), name="leg") for leg in legs]
    for side in (1, -1):
        items.append(
            Group(
                (taper([(41 + side * 1.4, 10), (40.6 + side * 4.2, 6.4), (40.6 + side * 5.8, 6.2)], 0.9, 0.6),),
                name="feeler",
            )
        )
    for x, y, nx, ny, half in reversed(rings):
        turn = math.degrees(math.atan2(ny, nx)) + 90
        fill = cylinder((x - nx * half, y - ny * half), (x + nx * half, y + ny * half), tone, shine=0.34)
        corners = [(x + nx * half, y + ny * half), (x - nx * half, y - ny * half)]
        dx, dy = math.cos(math.radians(turn - 0)), math.sin(math.radians(turn - 0))
        ahead = 1.5 if dy < 0 else -1.5
        ring = [
            corners[0],
            (corners[0][0] - dx * ahead, corners[0][1] - dy * ahead),
            (x - dx * ahead * 1.35, y - dy * ahead * 1.35),
            (corners[1][0] - dx * ahead, corners[1][1] - dy * ahead),
            corners[1],
            (x + dx * 0.3, y + dy * 0.3),
        ]
        items.append(
            Group(
                (smooth(ring, closed=True, fill=fill, stroke=pen("line", times=0.8), tension=0.5),), name="ring-plate"
            )
        )
    head = (40.9, 12.2)
    items.append(Circle(head, 3.1, globe(head, 3.2, blend(tone, "#8A4A26", 0.3)), pen("outline")))
    items += [eye((39.2, 10.9), 0.5), eye((42.4, 10.6), 0.5)]
    return items


def sowbug_parts(rng: random.Random, tone: str = "#7C8084") -> list[Shape]:
    """A sowbug from above: seven pairs of legs under seven overlapping plates, two bent feelers, two short tails."""
    trunk = Profile(((24, 6.4), (27, 10), (35, 14.2), (48, 16), (60, 14.8), (69, 11), (76, 6), (80, 2.4), (80.6, 0)))
    look = LimbLook((blend(tone, "#D9D3C6", 0.45),), hairs=0.5, outline=0.45)
    items: list[Shape] = []
    for index in range(6, -1, -1):
        turn = _mix(58, 132, index / 6)
        items += leg_pair(
            rng,
            (50 + trunk.half(29 + index * 5.4) * 0.86, 29 + index * 5.4),
            [4.2, 4.4, 4.2],
            (turn - 6, turn + 6, turn + 22),
            ((1.8, 1.9, 1.5), (1.5, 1.4, 1.1), (1.1, 0.8, 0.3)),
            look,
        )
    for side in (1, -1):
        items += [
            smooth(
                [(50 + side * 1.2, 78), (50 + side * 2.6, 85), (50 + side * 3.6, 86), (50 + side * 3.4, 78)],
                closed=True,
                fill=tone,
                stroke=pen("line"),
            )
        ]
        spots = [(50 + side * 3.2, 20.4), (50 + side * 7, 16), (50 + side * 12.6, 17.5), (50 + side * 17.0, 10.5)]
        items.append(
            Group(
                (limb(spots, ((1.2, 1.2, 1.0), (1.0, 1.0, 0.9), (0.8, 0.6, 0.25)), look, rng, name="feeler"),),
                name="feelers",
            )
        )
    items.append(
        smooth(
            [(44.2, 23.4), (45, 19.4), (50, 18.2), (55, 19.4), (55.8, 23.4), (50, 26)],
            closed=True,
            fill=cylinder((44, 20), (56, 23), tone),
            stroke=pen("outline"),
        )
    )
    items += [eye((45, 20.9), 0.8), eye((55, 20.9), 0.8)]
    items.append(trunk.outline(tone, pen("outline")))
    edges = [23.4 + 6.1 * k for k in range(8)]
    for one, two in reversed([*itertools.pairwise(edges), *((66.1 + 2.9 * k, 69 + 2.9 * k) for k in range(5))]):
        plate = trunk.plate(one, min(two, 80.4), tone, bow=1.1)
        items.append(Group(plate.items, name="ring-plate"))
    items.append(stipple(trunk.at, rng, count=260, radius=0.14))
    pale = [
        trunk.at(k + rng.uniform(-0.06, 0.06), v)
        for k in (-0.5, 0.5, -0.22, 0.22)
        for v in (0.1, 0.21, 0.32, 0.43, 0.55, 0.66)
    ]
    items.append(Group(tuple(Circle(spot, 0.5, "#D8D3C8", None, 0.6) for spot in pale)))
    return items


_KINDS = {
    "house-centipede": house_centipede_parts,
    "brown-centipede": brown_centipede_parts,
    "millipede": millipede_parts,
    "sowbug": sowbug_parts,
}


def many_legs(values: Mapping[str, object]) -> Drawing:
    """Recipe `many-legs`. Settings: kind house-centipede|brown-centipede|millipede|sowbug, bar-mm, body-mm, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", _KINDS, "house-centipede")
    rng = seeded("many-legs", kind, settings.whole("seed", 1))
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 30, least=1, most=200)
    settings.done()
    body, scale = fitted(_KINDS[kind](rng), margin=4, bottom=97 if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        long = {"house-centipede": 48, "brown-centipede": 70, "millipede": 84, "sowbug": 62}[kind]
        shapes.append(scale_bar(bar, long * scale / long_mm))
    return framed(shapes)


RECIPES = {"many-legs": many_legs}
