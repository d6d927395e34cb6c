"""Silk: threads by weight, woolly and beaded threads, and the twigs, leaves, walls and corners they hang from."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Sequence
from itertools import pairwise

from keyapp.pictures.part import put, ribbon, sampled
from keyapp.pictures.shape import (
    Circle,
    Fill,
    Group,
    LinearGradient,
    Path,
    Point,
    Shape,
    Stop,
    Stroke,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend, cylinder, pen
from keyapp.pictures.texture import hair

__all__ = [
    "bark",
    "beads",
    "corner",
    "flat",
    "grass",
    "leaf",
    "nearest_pairs",
    "ray_out",
    "soil",
    "threads",
    "twig",
    "wall",
    "wool",
]

Thread = tuple[Point, ...]


def threads(
    lines: Sequence[Thread], weight: float = 0.26, tone: str = "ink-soft", opacity: float = 0.85, name: str = "thread"
) -> Group:
    """Silk lines as one pen: two points straight, three a bow."""
    return Group((strokes(list(lines), Stroke(tone, weight, opacity)),), name=name)


def wool(lines: Sequence[Thread], rng: random.Random, *, width: float = 1.1, tone: str = "silk") -> Group:
    """Fluffy threads: a core with soft cloudy layers and loose fibres standing off it."""
    core = [sampled(line, 4) for line in lines]
    fibres = []
    for line in core:
        for (x0, y0), (x1, y1) in itertools.pairwise(line):
            length = math.hypot(x1 - x0, y1 - y0)
            for _ in range(max(1, round(length * 1.5))):
                share = rng.random()
                root = (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
                fibres.append(hair(root, rng.uniform(0, 360), width * rng.uniform(0.6, 1.5), rng.uniform(-140, 140)))
    return Group(
        (
            strokes(core, Stroke("silk-soft", width * 1.7, 0.28)),
            strokes(core, Stroke("silk-soft", width, 0.45)),
            strokes(core, Stroke(tone, width * 0.36, 0.75)),
            strokes(fibres, Stroke("ink-soft", 0.13, 0.75)),
        ),
        name="wool",
    )


def beads(line: Sequence[Point], rng: random.Random, *, gap: float, radius: float, tone: str = "silk") -> Group:
    """Drops of glue strung on a thread, `gap` units apart."""
    drops: list[Shape] = []
    due = gap / 2
    for (x0, y0), (x1, y1) in pairwise(line):
        length = math.hypot(x1 - x0, y1 - y0)
        while due < length:
            share = due / length
            due += gap * rng.uniform(0.85, 1.15)
            size = radius * rng.uniform(0.75, 1.2)
            spot = (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
            drops.append(Circle(spot, size, tone, pen("fine") if radius > 0.3 else None))
            if radius > 0.3:
                drops.append(Circle((spot[0] - size * 0.3, spot[1] - size * 0.35), size * 0.3, "white"))
        due -= length
    return Group(tuple(drops), name="beads")


def ray_out(centre: Point, degrees: float, edge: Sequence[Point]) -> float:
    """How far from `centre` the closed outline `edge` lies in a direction (clockwise from up the page)."""
    dx, dy = math.sin(math.radians(degrees)), -math.cos(math.radians(degrees))
    best = 0.0
    for (x1, y1), (x2, y2) in zip(edge, [*edge[1:], edge[0]], strict=True):
        ex, ey = x2 - x1, y2 - y1
        cross = dx * ey - dy * ex
        if abs(cross) < 1e-9:
            continue
        along = ((x1 - centre[0]) * ey - (y1 - centre[1]) * ex) / cross
        part = ((x1 - centre[0]) * dy - (y1 - centre[1]) * dx) / cross
        if along > 0 and 0 <= part <= 1:
            best = max(best, along)
    return best


def nearest_pairs(spots: Sequence[tuple[float, float, float]], each: int) -> list[tuple[int, int]]:
    """Pairs of points in space that are near neighbours, each point joined to about `each` others."""
    pairs = set()
    for index, one in enumerate(spots):
        order = sorted(range(len(spots)), key=lambda other: math.dist(one, spots[other]))
        pairs |= {(min(index, other), max(index, other)) for other in order[1 : each + 1]}
    return sorted(pairs)


def twig(points: Sequence[Point], first: float, last: float, rng: random.Random, tone: str = "#8A6B4C") -> Group:
    """A woody stem with bark lines."""
    line = sampled(points, 6)
    marks = []
    for index, (x, y) in enumerate(line[:-1]):
        half = (first + (last - first) * index / len(line)) * 0.3
        (xn, yn) = line[index + 1]
        marks.append(
            (
                (x + rng.uniform(-half, half), y + rng.uniform(-half, half)),
                (xn + rng.uniform(-half, half), yn + rng.uniform(-half, half)),
            )
        )
    left, right = line[0], line[-1]
    across = (first, 0.0) if abs(right[1] - left[1]) > abs(right[0] - left[0]) else (0.0, first)
    middle = line[len(line) // 2]
    fill = cylinder(
        (middle[0] - across[0] / 2, middle[1] - across[1] / 2),
        (middle[0] + across[0] / 2, middle[1] + across[1] / 2),
        tone,
    )
    return Group(
        (ribbon(points, (first, last), fill, pen("line")), strokes(marks, pen("hair", opacity=0.6))), name="twig"
    )


def leaf(at: Point, turn: float, length: float, width: float, tone: str = "leaf") -> Group:
    """A leaf from its stalk at `at` pointing to `turn`, with a middle rib and side veins."""
    w, n = width / 2, length
    edge = put(
        [
            (0, 0),
            (w * 0.7, -n * 0.18),
            (w, -n * 0.45),
            (w * 0.7, -n * 0.75),
            (0, -n),
            (-w * 0.72, -n * 0.74),
            (-w, -n * 0.44),
            (-w * 0.68, -n * 0.17),
        ],
        at,
        turn,
    )
    sides = put([(-w, -n * 0.5), (w, -n * 0.5)], at, turn)
    veins = [
        put(
            [
                (0, -n * k),
                (s * w * 0.4, -n * (k + 0.1)),
                (s * w * 0.78 * math.sin(math.pi * (k + 0.12)), -n * (k + 0.16)),
            ],
            at,
            turn,
        )
        for k in (0.14, 0.3, 0.46, 0.62)
        for s in (-1, 1)
    ]
    return Group(
        (
            smooth(
                edge,
                closed=True,
                fill=cylinder(sides[0], sides[1], tone, depth=0.3),
                stroke=pen("line", "leaf-dark", times=1.1),
            ),
            strokes([put([(0, 0), (0, -n * 0.96)], at, turn), *veins], pen("fine", "leaf-dark", opacity=0.8)),
        ),
        name="leaf",
    )


def grass(root: Point, rng: random.Random, *, count: int, spread: float, high: float, tone: str = "leaf") -> Group:
    """A tuft of grass blades."""
    blades = []
    for _ in range(count):
        x = root[0] + rng.uniform(-spread, spread)
        x = min(97.5, max(2.5, x))
        lean = min(98.5, max(1.5, x + rng.uniform(-0.5, 0.5) * high)) - x
        tall = high * rng.uniform(0.55, 1.0)
        shade = blend(tone, "leaf-dark", rng.uniform(0, 0.7))
        blades.append(
            ribbon(
                [(x, root[1]), (x + lean * 0.3, root[1] - tall * 0.55), (x + lean, root[1] - tall)],
                (1.3, 1.0, 0.15),
                shade,
                pen("hair", "leaf-dark"),
            )
        )
    return Group(tuple(blades), name="grass")


def flat(points: Sequence[Point], fill: Fill, opacity: float = 1.0) -> Path:
    """A flat area without an outline."""
    return polyline(points, closed=True, fill=fill, opacity=opacity)


def soil(y: float, rng: random.Random, bottom: float = 100.0, tone: str = "soil") -> Group:
    """Bare ground from a height down, with crumbs."""
    fill = LinearGradient(
        (0, y), (0, bottom), (Stop(0, blend(tone, "paper", 0.35), 0.9), Stop(1, blend(tone, "paper", 0.6), 0.5))
    )
    crumbs = [
        ((x, at), (x + rng.uniform(0.2, 0.9), at + rng.uniform(-0.2, 0.2)))
        for x, at in ((rng.uniform(1, 98), rng.uniform(y + 1, bottom - 1)) for _ in range(90))
    ]
    edge = [(0.0, y), *[(x * 10.0, y + rng.uniform(-0.5, 0.5)) for x in range(1, 10)], (100.0, y)]
    return Group(
        (
            flat([*edge, (100, bottom), (0, bottom)], fill),
            strokes(crumbs, pen("hair", opacity=0.6)),
            strokes([edge], pen("line", "ink-soft", opacity=0.7)),
        ),
        name="ground",
    )


def wall(left: float, top: float, right: float, bottom: float, tone: str = "paper-shade", opacity: float = 1.0) -> Path:
    """A plain upright surface."""
    return flat([(left, top), (right, top), (right, bottom), (left, bottom)], tone, opacity)


def corner(join: Point, rng: random.Random, *, floor: bool) -> Group:
    """Two walls meeting at an upright edge, with the floor below (`floor`) or the ceiling above them."""
    x, y = join
    if floor:
        left, right = (0.0, min(99.0, y + 14)), (100.0, min(99.0, y + 14))
        walls = [
            flat([(0, 0), (x, 0), (x, y), left], "#F1EADC"),
            flat([(x, 0), (100, 0), right, (x, y)], "#E6DCC9"),
            flat([left, (x, y), right, (100, 100), (0, 100)], "#D9CBB3"),
        ]
        edges: list[Thread] = [((x, 0), (x, y)), (left, (x, y)), ((x, y), right)]
    else:
        left, right = (0.0, max(1.0, y - 14)), (100.0, max(1.0, y - 14))
        walls = [
            flat([left, (x, y), (x, 100), (0, 100)], "#F1EADC"),
            flat([(x, y), right, (100, 100), (x, 100)], "#E6DCC9"),
            flat([(0, 0), (100, 0), right, (x, y), left], "#F8F3E8"),
        ]
        edges = [((x, 100), (x, y)), (left, (x, y)), ((x, y), right)]
    specks = [((px, py), (px + 0.3, py)) for px, py in ((rng.uniform(2, 98), rng.uniform(2, 98)) for _ in range(60))]
    return Group(
        (*walls, strokes(specks, pen("hair", opacity=0.3)), strokes(edges, pen("line", "ink-soft"))), name="corner"
    )


def bark(rng: random.Random, tone: str = "#B89C7C") -> Group:
    """The whole picture filled with old wood: long cracks and ridges."""
    lines = []
    for _ in range(60):
        x, y = rng.uniform(1, 99), rng.uniform(-4, 92)
        length = rng.uniform(7, 26)
        lines.append(
            tuple(
                _in_canvas(
                    put([(0, 0), (rng.uniform(-1.2, 1.2), length / 2), (rng.uniform(-0.8, 0.8), length)], (x, y))
                )
            )
        )
    fill = LinearGradient(
        (0, 0), (100, 100), (Stop(0, blend(tone, "paper", 0.55)), Stop(1, blend(tone, "paper", 0.25)))
    )
    return Group(
        (flat([(0, 0), (100, 0), (100, 100), (0, 100)], fill), strokes(lines, pen("line", "ink-soft", opacity=0.45))),
        name="wood",
    )


def _in_canvas(points: Sequence[Point]) -> list[Point]:
    return [(min(99.5, max(0.5, x)), min(99.5, max(0.5, y))) for x, y in points]
