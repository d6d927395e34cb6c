"""Mites where they live: fine silk over leaves, pale mites under a leaf, a speck on a fingertip seen through a lens."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from keyapp.pictures.blade import Blade
from keyapp.pictures.mite_kinds import MITES
from keyapp.pictures.part import framed, ground_shadow, put, ribbon
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Path, Point, Shape, Stroke, placed, smooth, strokes
from keyapp.pictures.silk import Thread, flat, threads
from keyapp.pictures.style import cylinder, pen, ring, scale_bar
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "mite_place"]


def _specks(leaf: Blade, rng: random.Random, count: int) -> Path:
    # Pale dots where mites fed.
    spots = leaf.scattered(rng, count, edge=0.9)
    return strokes([((x, y), (x + 0.1, y)) for x, y in spots], Stroke("#F3EFC4", 0.62, 0.95))


def _film(leaves: list[Blade], middle: Point, rng: random.Random, count: int, deep: float = 0.3) -> list[Shape]:
    """A thin veil hung from leaf to leaf (given round the shoot): pale, and of many fine sagging threads."""

    def pulled(point: Point, share: float) -> Point:
        return point[0] + (middle[0] - point[0]) * share, point[1] + (middle[1] - point[1]) * share

    edge: list[Point] = []
    lines: list[Thread] = []
    loop = list(zip(leaves, [*leaves[1:], leaves[0]], strict=True))
    for one, two in loop:
        a, b = one.spot(0, 0.94), two.spot(0, 0.94)
        edge += [a, pulled(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), deep)]
        for _ in range(count // len(loop)):
            share, lean = rng.random() ** 1.4, rng.uniform(-0.12, 0.12)
            c = one.spot(rng.uniform(-0.35, 0.35), 0.97 - 0.75 * share)
            d = two.spot(rng.uniform(-0.35, 0.35), 0.97 - 0.75 * max(0.0, min(1.0, share + lean)))
            lines.append((c, pulled(((c[0] + d[0]) / 2, (c[1] + d[1]) / 2), deep * rng.uniform(0.7, 1.3)), d))
    inner = [pulled(point, 0.3) for point in edge]
    return [
        Group(
            (
                smooth(edge, closed=True, fill="#F6F4EC", opacity=0.42, tension=0.7),
                smooth(inner, closed=True, fill="#FFFFFF", opacity=0.3, tension=0.7),
            ),
            name="film",
        ),
        threads(lines, 0.26, "#FFFFFF", 0.75, "silk"),
        threads(lines[::2], 0.1, "ink-soft", 0.8, "silk"),
        smooth(edge, closed=True, stroke=pen("hair", "ink-soft", opacity=0.8), tension=0.7),
    ]


def _walkers(spots: list[Point], tone: str = "#B4562A") -> list[Shape]:
    # Mites as the bare eye sees them: specks with a hint of legs.
    legs = []
    for x, y in spots:
        for k in range(4):
            angle = math.radians(40 + k * 33)
            for s in (-1, 1):
                legs.append(((x, y), (x + s * math.sin(angle) * 1.0, y - math.cos(angle) * 1.0)))
    return [
        strokes(legs, Stroke(tone, 0.16)),
        Group(tuple(Circle(spot, 0.55, tone, pen("hair", opacity=0.7)) for spot in spots), name="mites"),
    ]


def _stem(points: list[Point], first: float, last: float) -> Path:
    return ribbon(points, (first, last), cylinder((46, 60), (54, 62), "#7E9A57", depth=0.35), pen("line", "#3F5A2C"))


def _plant(rng: random.Random) -> list[Shape]:
    # The tip of a shoot with seven leaves, veiled from leaf to leaf.
    tones = ("#9DA865", "#A8A866", "#93A862", "#AEA76A", "#97A55F")
    spread = (
        ((49, 78), -98, 44), ((51, 70), 96, 45), ((49, 58), -66, 42), ((51, 49), 62, 42), ((50, 40), -34, 34),
        ((50, 36), 24, 36),
    )  # fmt: skip
    leaves = [Blade("oval", at, turn, long, 1.1, tones[k % 5]) for k, (at, turn, long) in enumerate(spread)]
    items: list[Shape] = [_stem([(51, 99), (49, 78), (51, 58), (50, 34)], 3.4, 1.2)]
    for leaf in leaves:
        items += [leaf.drawn(rng, veins=4), _specks(leaf, rng, 85)]
    around = [leaves[k] for k in (0, 2, 4, 5, 3, 1)]
    items += _film(around, (50, 56), rng, 150)
    walkers = [(50 + rng.gauss(0, 13), 48 + rng.gauss(0, 14)) for _ in range(34)]
    return [*items, *_walkers(walkers)]


def _leaf_tips(rng: random.Random) -> list[Shape]:
    # Close to: three leaves at the tip of a stem, with the veil over their tips and down the stem.
    leaves = [
        Blade("oval", (47, 70), -52, 50, 1.25, "#A3A965"),
        Blade("oval", (53, 68), 54, 50, 1.25, "#98A75F"),
        Blade("oval", (50, 62), 2, 54, 1.15, "#A0AC66"),
    ]
    items: list[Shape] = [_stem([(52, 99), (50, 84), (50, 60)], 4.6, 2.6)]
    for leaf in leaves:
        items += [leaf.drawn(rng, veins=5), _specks(leaf, rng, 150)]
    left, right, top = leaves
    foot = Blade("lance", (50, 66), 178, 28)
    items += _film([left, top, right, foot], (50, 56), rng, 190, 0.36)
    walkers = [(50 + rng.gauss(0, 12), 52 + rng.gauss(0, 11)) for _ in range(16)]
    return [*items, *_walkers(walkers)]


def _under_leaf(rng: random.Random) -> list[Shape]:
    leaf = Blade("oval", (20, 104), 34, 128, 1.5, "#B4C48C")
    silk: list[Thread] = []
    for _ in range(60):
        x0, y0 = rng.uniform(4, 96), rng.uniform(6, 94)
        x1, y1 = x0 + rng.uniform(-40, 40), y0 + rng.uniform(-40, 40)
        if 2 < x1 < 98 and 2 < y1 < 98:
            silk.append(((x0, y0), ((x0 + x1) / 2, (y0 + y1) / 2 + 2), (x1, y1)))
    ground = flat([(0, 0), (100, 0), (100, 100), (0, 100)], "#B9C793")
    sides: list[Thread] = [
        ((22, 73), (28, 46), (46, 0.5)),
        ((50, 56), (58, 36), (66, 0.5)),
        ((34, 66), (62, 74), (99.5, 92)),
        ((64, 46), (82, 50), (99.5, 58)),
    ]
    veins = [
        ribbon([(-1, 84), (40, 62), (101, 12)], (4.2, 3.2, 2.0), "#D9E1B8", pen("line", "#6F8650")),
        strokes(sides, Stroke("#6F8650", 1.5)),
        strokes(sides, Stroke("#D9E1B8", 1.0)),
        strokes([((x, y), (x + 0.1, y)) for x, y in leaf.scattered(rng, 110, edge=0.9)], Stroke("#F3EFC4", 0.9, 0.9)),
    ]
    eggs = [Circle(spot, 2.3, "#F4EBC8", pen("fine")) for spot in ((16, 22), (22, 27), (84, 78), (15, 52), (80, 24))]
    gleams = [Circle((x - 0.7, y - 0.8), 0.6, "white") for x, y in ((16, 22), (22, 27), (84, 78), (15, 52), (80, 24))]
    items: list[Shape] = [ground, *veins, threads(silk[:34], 0.2, "white", 0.9), *eggs, *gleams]
    items += [_young(at, turn) for at, turn in (((87, 48), -50), ((27, 88), 110))]
    make, _ = MITES["spider"]
    at, scale, turn = (52.0, 50.0), 0.98, 24.0
    corner = put([(-50 * scale, -52 * scale)], at, turn)[0]
    items += [ground_shadow((at[0] + 1, at[1] + 1.5), 22 * scale, 24 * scale, 0.25)]
    items += [placed(make(rng), at=corner, scale=scale, turn=turn, name="mite"), threads(silk[34:], 0.2, "white", 0.9)]
    return [*items, *(ring(put([(s * 9.4 * scale, -0.4)], at, turn)[0], 6.8, 8.8, turn=turn) for s in (-1, 1))]


def _young(at: Point, turn: float) -> Group:
    # A young one, small and plain.
    legs = [
        put([(s * 2.6, y), (s * 6, y + dy), (s * 7, y + dy * 1.8)], at, turn)
        for s in (-1, 1)
        for y, dy in ((-3, -3.4), (-1.4, -1.2), (1.4, 1.6), (2.8, 3.4))
    ]
    body = smooth(
        put([(0, -5), (3, -3.6), (4, 0.4), (2.8, 4.4), (0, 5.6), (-2.8, 4.4), (-4, 0.4), (-3, -3.6)], at, turn),
        closed=True,
        fill="#DCDCA0",
        stroke=pen("line"),
    )
    spots = [Circle(put([(s * 2.1, 0.4)], at, turn)[0], 1.1, "#4A5030") for s in (-1, 1)]
    eyes = [Circle(put([(s * 2.2, -3)], at, turn)[0], 0.36, "#C81E1E") for s in (-1, 1)]
    return Group((strokes([tuple(leg) for leg in legs], Stroke("#8F8B5C", 0.6)), body, *spots, *eyes), name="mite")


def _fingertip(rng: random.Random) -> list[Shape]:
    # A fingertip from the left; the speck on it is as small as it would be.
    skin = "#E3B795"
    edge = [
        (0, 52),
        (14, 51),
        (27, 52.4),
        (37, 57),
        (43.4, 65),
        (44.6, 75),
        (40.6, 85),
        (32, 92.4),
        (20, 95.4),
        (0, 96.4),
    ]
    nail = [(24, 56), (34, 59.6), (40.6, 66), (42, 74.6), (38.6, 82.6), (30, 87), (23.4, 82), (21, 72), (21.6, 62)]
    finger = Group(
        (
            smooth(edge, fill=cylinder((20, 51), (22, 96), skin, depth=0.24, shine=0.3), stroke=pen("outline")),
            smooth(nail, closed=True, fill="#F3D9C6", stroke=pen("line", "#A87A60"), opacity=0.95),
            strokes([((9, 58), (7.6, 72), (9, 89)), ((6.4, 60), (5.2, 73), (6.4, 87))], pen("fine", "#8A5540")),
            strokes([((25, 60), (31, 62), (36, 66))], pen("bold", "white", opacity=0.6)),
        ),
        name="finger",
    )
    speck = (15.4, 63.0)
    centre, radius = (65.0, 34.0), 30.5
    make, _ = MITES["chigger"]
    scale, turn = 0.68, 12.0
    corner = put([(-50 * scale, -50 * scale)], centre, turn)[0]
    return [
        finger,
        Circle(speck, 0.62, "#D2491E"),
        ring(speck, 3.4),
        strokes(
            [((speck[0] - 0.6, speck[1] - 3.4), (43, 13)), ((speck[0] + 3.0, speck[1] + 1.8), (61, 64.2))],
            pen("line", "look"),
        ),
        Circle(centre, radius, "paper", pen("ring", "look")),
        placed(make(rng), at=corner, scale=scale, turn=turn, name="mite"),
    ]


_PLACES = {"plant": _plant, "leaf-tips": _leaf_tips, "under-leaf": _under_leaf, "fingertip": _fingertip}


def mite_place(values: Mapping[str, object]) -> Drawing:
    """Recipe `mite-place`. Settings: where plant|leaf-tips|under-leaf|fingertip, bar-mm, units-per-mm, seed."""
    settings = Settings(values)
    where = settings.choice("where", _PLACES, "plant")
    bar = settings.number("bar-mm", 0, least=0, most=100)
    per_mm = settings.number("units-per-mm", 1, least=0.05, most=20)
    rng = seeded("mite-place", where, settings.whole("seed", 1))
    settings.done()
    items = _PLACES[where](rng)
    if bar:
        items.append(scale_bar(bar, per_mm))
    return framed(items)


RECIPES = {"mite-place": mite_place}
