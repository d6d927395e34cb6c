"""A leaf seen close: its outline with teeth or lobes, its veins, and places on it."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.pictures.part import put, ribbon, sampled
from keyapp.pictures.shape import Group, Point, polyline, smooth, strokes
from keyapp.pictures.style import blend, cylinder, pen

__all__ = ["BLADES", "Blade", "blob"]

BLADES: dict[str, tuple[Point, ...]] = {
    "heart": (
        (0, -0.02),
        (0.08, 0.07),
        (0.22, 0.1),
        (0.37, 0.04),
        (0.45, -0.1),
        (0.46, -0.26),
        (0.4, -0.44),
        (0.29, -0.62),
        (0.16, -0.78),
        (0.06, -0.9),
        (0, -1.0),
    ),
    "oval": ((0, 0), (0.11, -0.06), (0.24, -0.2), (0.31, -0.4), (0.28, -0.62), (0.18, -0.82), (0.07, -0.94), (0, -1.0)),
    "lobed": (
        (0, -0.04),
        (0.07, 0.1),
        (0.26, 0.12),
        (0.4, 0.0),
        (0.36, -0.14),
        (0.5, -0.26),
        (0.56, -0.44),
        (0.44, -0.5),
        (0.3, -0.52),
        (0.31, -0.68),
        (0.22, -0.85),
        (0.1, -0.94),
        (0, -1.02),
    ),
    "lance": ((0, 0), (0.05, -0.05), (0.13, -0.2), (0.17, -0.42), (0.145, -0.66), (0.08, -0.86), (0, -1.0)),
}
"""Right-hand outlines from the stalk at (0, 0) to the tip at (0, -1)."""


@dataclass(frozen=True)
class Blade:
    """A leaf of a form with its stalk end at `at`, its tip towards `turn` (clockwise from up), `long` units long."""

    form: str
    at: Point
    turn: float
    long: float
    wide: float = 1.0
    tone: str = "leaf"

    def spot(self, u: float, v: float) -> Point:
        """The point `u` (-1 left edge, 1 right edge) across and `v` (0 stalk, 1 tip) along."""
        return put([(u * self._half(v) * self.long, -v * self.long)], self.at, self.turn)[0]

    def _half(self, v: float) -> float:
        line = sampled(BLADES[self.form], 5)
        best = 0.0
        for (x0, y0), (x1, y1) in itertools.pairwise(line):
            low, high = sorted((-y0, -y1))
            if low <= v <= high:
                share = 0.0 if high == low else (v + y0) / (y0 - y1)
                best = max(best, x0 + (x1 - x0) * share)
        return best * self.wide

    def side(self, per: int = 5) -> list[Point]:
        """The right-hand edge on the page, from the stalk to the tip."""
        return put(
            [(x * self.wide * self.long, y * self.long) for x, y in sampled(BLADES[self.form], per)], self.at, self.turn
        )

    def scattered(
        self, rng: random.Random, count: int, *, edge: float = 0.84, gap: float = 0.0, low: float = 0.03
    ) -> list[Point]:
        """Places on the blade, at least `gap` units apart where that can be had."""
        spots: list[Point] = []
        for _ in range(count * 12):
            u, v = rng.uniform(-edge, edge), rng.uniform(low, 0.93)
            if rng.random() > self._half(v) * 2.2 / self.wide:
                continue
            spot = self.spot(u, v)
            if all(math.dist(spot, other) >= gap for other in spots):
                spots.append(spot)
            if len(spots) == count:
                break
        return spots

    def drawn(
        self, rng: random.Random, *, teeth: float = 0.0, veins: int = 5, stalk: float = 0.0, trim: float = 1.0
    ) -> Group:
        """The blade, with teeth `teeth` units high, side veins, and a stalk `stalk` units long.

        `trim` narrows its right half, as where the edge is rolled in.
        """
        edge = [(x * self.wide * self.long, y * self.long) for x, y in sampled(BLADES[self.form], 8)]
        half = _toothed(edge, teeth, rng) if teeth else edge[::4]
        right = [(x * trim, y) for x, y in half]
        other = _toothed(edge, teeth, rng) if teeth else half
        points = put([*right, *[(-x, y) for x, y in reversed(other[1:-1])]], self.at, self.turn)
        sides = put([(-self.long * 0.4, -self.long * 0.5), (self.long * 0.4, -self.long * 0.4)], self.at, self.turn)
        fill = cylinder(sides[0], sides[1], self.tone, depth=0.26, shine=0.2)
        rim = pen("line", blend(self.tone, "#2E4322", 0.7), times=1.1)
        shape = (
            polyline(points, closed=True, fill=fill, stroke=rim)
            if teeth
            else smooth(points, closed=True, fill=fill, stroke=rim)
        )
        items = [shape]
        if stalk:
            base = put([(0, 0), (stalk * 0.06, stalk * 0.5), (stalk * 0.02, stalk)], self.at, self.turn)
            items.insert(0, ribbon(base, (1.3, 1.1, 1.6), blend(self.tone, "#2E4322", 0.3), pen("fine")))
        lines, fine = self._veins(veins, trim)
        ink = blend(self.tone, "#2E4322", 0.55)
        rib = put([(0, 0), (0, -self.long * 0.5), (0, -self.long * 0.97)], self.at, self.turn)
        items.append(ribbon(rib, (1.1, 0.7, 0.2), ink))
        items.append(strokes(lines, pen("line", ink, opacity=0.85)))
        items.append(strokes(fine, pen("hair", ink, opacity=0.7)))
        return Group(tuple(items), name="leaf")

    def _veins(self, count: int, trim: float) -> tuple[list[tuple[Point, ...]], list[tuple[Point, ...]]]:
        main: list[tuple[Point, ...]] = []
        fine: list[tuple[Point, ...]] = []
        for k in range(count):
            start = 0.02 + 0.8 * k / count
            end = min(0.96, start + 0.17)
            for s in (-1, 1):
                side = s * (trim if s > 0 else 1.0)
                root, tip = (0.0, start), (side * 0.9, end)
                x, y = put([(0, -root[1] * self.long)], self.at, self.turn)[0]
                far = self.spot(tip[0], tip[1])
                bend = self.spot(side * 0.42, start + (end - start) * 0.36)
                main.append(((x, y), bend, far))
                for share in (0.35, 0.62):
                    ax, ay = x + (far[0] - x) * share, y + (far[1] - y) * share
                    bx, by = self.spot(side * (share + 0.14), min(0.97, start + (end - start) * share + 0.13))
                    fine.append(((ax, ay), (bx, by)))
        return main, fine


def _toothed(edge: Sequence[Point], high: float, rng: random.Random) -> list[Point]:
    # Even teeth along an edge, leaning towards the tip.
    made: list[Point] = [edge[0]]
    due = high * 1.2
    for (x0, y0), (x1, y1) in itertools.pairwise(edge):
        length = math.hypot(x1 - x0, y1 - y0) or 1e-6
        ux, uy = (x1 - x0) / length, (y1 - y0) / length
        while due < length:
            x, y = x0 + ux * due, y0 + uy * due
            push = high * rng.uniform(0.75, 1.15)
            made += [(x, y), (x + ux * push * 1.3 - uy * push * 0.75, y + uy * push * 1.3 + ux * push * 0.75)]
            due += high * 2.0
        due -= length
    return [*made[:-1], edge[-1]]


def blob(
    at: Point, rx: float, ry: float, rng: random.Random, turn: float = 0.0, count: int = 9, rough: float = 0.19
) -> Sequence[Point]:
    """The outline of an uneven round patch; `rough` is how far it strays from an ellipse."""
    spots = []
    for k in range(count):
        angle = 2 * math.pi * k / count
        far = rng.uniform(0.97 - rough, 0.97 + rough)
        spots.append((math.cos(angle) * rx * far, math.sin(angle) * ry * far))
    return put(spots, at, turn)
