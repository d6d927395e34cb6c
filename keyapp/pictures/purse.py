"""A closed tube of silk up the foot of a tree."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

from keyapp.pictures.part import ribbon, sampled
from keyapp.pictures.shape import Ellipse, Group, Point, Shape, Stroke, polyline, smooth, strokes
from keyapp.pictures.silk import Thread, grass, leaf, soil, threads
from keyapp.pictures.style import cylinder, pen

__all__ = ["purse_parts"]


def _trunk(rng: random.Random, foot: float) -> list[Shape]:
    # The foot of a tree, flaring into roots, with bark ridges.
    left = sampled([(27, 0.3), (28, 30), (25, foot - 24), (18, foot - 8), (5, foot + 1)], 6)
    right = sampled([(77, 0.3), (76, 30), (79, foot - 24), (86, foot - 8), (97, foot + 1)], 6)
    ridges = []
    for _ in range(60):
        x, y = rng.uniform(30, 74), rng.uniform(1, foot - 16)
        long = rng.uniform(5, 14)
        flare = (x - 52) * max(0.0, (y + long - foot + 26) / 60)
        ridges.append(((x, y), (x + rng.uniform(-1.2, 1.2), y + long * 0.5), (x + flare, y + long)))
    for k in range(9):
        x = 24 + k * 7
        ridges.append(((x, foot - 15), (x + (x - 52) * 0.14, foot - 9), (x + (x - 52) * 0.42, foot - 2)))
    return [
        polyline([*left, *reversed(right)], closed=True, fill=cylinder((24, 50), (80, 50), "#A98C6B", depth=0.5)),
        strokes([left, right], pen("outline")),
        strokes(ridges, Stroke("#55412D", 0.45, 0.6)),
    ]


def _tube(line: Sequence[Point], rx: float, rng: random.Random) -> list[Shape]:
    # From the ground up: a finger of tough silk, closed and round at the top, hidden under bark dust and moss.
    spine = sampled(line, 6)
    top = spine[-1]
    left = [(x - rx * (0.94 + 0.07 * math.sin(k * 0.9)), y) for k, (x, y) in enumerate(spine[::3])]
    right = [(x + rx * (0.94 + 0.07 * math.sin(k * 1.1 + 1)), y) for k, (x, y) in enumerate(spine[::3])]
    cap = [(top[0] - rx * 0.7, top[1] - rx * 0.9), (top[0], top[1] - rx * 1.3), (top[0] + rx * 0.7, top[1] - rx * 0.9)]
    outline = [*left, *cap, *reversed(right)]
    wraps: list[Thread] = []
    grime: list[Shape] = []
    dust: dict[str, list[Thread]] = {"#6E8248": [], "#5A452D": [], "#86704F": []}
    for x, y in spine:
        for _ in range(2):
            half, mid = rx * rng.uniform(0.3, 0.6), x + rng.uniform(-0.3, 0.3) * rx
            at = y + rng.uniform(-1.4, 1.4)
            wraps.append(((mid - half, at + rng.uniform(-1.4, 1.4)), (mid + half, at + rng.uniform(-1.4, 1.4))))
        spot = (x + rng.uniform(-0.5, 0.5) * rx, y + rng.uniform(-1, 1))
        tone = "#74874C" if rng.random() < 0.3 else "#6B543A"
        grime.append(Ellipse(spot, rx * rng.uniform(0.2, 0.46), rx * rng.uniform(0.16, 0.3), tone, None, 0.5))
        for _ in range(7):
            spot = (x + rng.uniform(-0.88, 0.88) * rx, y + rng.uniform(-1.4, 1.4))
            dust[rng.choice(sorted(dust))].append(
                (spot, (spot[0] + rng.uniform(-0.5, 0.5), spot[1] + rng.uniform(-0.3, 0.3)))
            )
    ties: list[Thread] = [
        ((top[0] + dx * 0.08 * rx, top[1] - rx * 1.1), (top[0] + dx, top[1] - rx * 1.2 - dy))
        for dx, dy in ((-7, 2), (-4, 6), (0, 7), (4, 6), (7, 2))
    ]
    for k in range(6, len(spine) - 3, 5):
        x, y = spine[k]
        ties += [((x - rx, y), (x - rx - 2.6, y - 2.4)), ((x + rx, y), (x + rx + 2.6, y - 2.4))]
    fill = cylinder((line[2][0] - rx, 50), (line[2][0] + rx, 50), "#B39E80", depth=0.55, shine=0.5)
    return [
        smooth([(x + rx * 0.7, y + 1) for x, y in outline], closed=True, fill="ink", opacity=0.25),
        threads(ties, 0.4, "#FFFFFF", 0.85, "tie"),
        Group(
            (
                smooth(outline, closed=True, fill=fill, stroke=pen("outline")),
                *grime,
                strokes(wraps, Stroke("#F4EFE4", 0.34, 0.8)),
                *(strokes(lines, Stroke(tone, 0.75)) for tone, lines in dust.items()),
            ),
            name="silk-tube",
        ),
    ]


def purse_parts(rng: random.Random, wide: bool) -> list[Shape]:
    """The foot of a tree with a closed tube up it; `wide` shows the ground cut away and more of the tree."""
    foot = 70.0 if wide else 84.0
    ground = soil(foot - 1, rng, tone="#8B6F4E" if wide else "soil")
    items = _trunk(rng, foot)
    rx = 3.6 if wide else 5.4
    below: list[Shape] = []
    if wide:
        # The ground is cut away in front to show how the tube goes on below.
        way: list[Point] = [(43, 96), (45, 88), (49, 79), (50.4, foot - 1)]
        below.append(ribbon(way, (3, 6.6, 7.4, 7.4), "#4A3826", pen("line")))
        below.append(ribbon(way, (1.6, 4.6, 5.4, 5.4), "#B7A78C"))
        line: list[Point] = [
            (50.4, foot - 1),
            (51, foot - 10),
            (50, foot - 22),
            (51, foot - 33),
            (50.4, foot - 42),
            (50.2, foot - 46),
        ]
    else:
        line = [(50, foot - 1), (51, foot - 14), (49.4, foot - 30), (51, foot - 46), (50.4, foot - 60), (50, foot - 65)]
    items += [*_tube(line, rx, rng), ground, *below]
    for x in (8, 26, 44, 57, 74, 92) if not wide else (8, 26, 74, 92):
        items.append(grass((x, foot + 1.5), rng, count=5, spread=5, high=15))
    items.append(leaf((40, foot + 3), 250, 9, 4, "#B58A55"))
    return items
