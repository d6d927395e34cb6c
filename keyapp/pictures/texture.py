"""Seeded hairs, spines and stipple: the same seed always gives the same marks."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Sequence

from keyapp.pictures.shape import Circle, Group, Path, Point, Stroke, strokes
from keyapp.pictures.style import pen

__all__ = ["DENSITY", "dots", "hair", "hairs_along", "hairs_within", "seeded", "stipple", "wedge"]


DENSITY = 0.65
"""Hairs and dots drawn for each that a plan asks for: enough for the look of fur, and small files."""

STRAIGHT = 1.7
"""Hairs shorter than this, in units of the canvas (of 100), are drawn straight."""


def seeded(*parts: object) -> random.Random:
    """A random source that depends on `parts` alone, the same on every machine."""
    return random.Random("/".join(str(part) for part in parts))


def hair(root: Point, degrees: float, length: float, bend: float = 0.0) -> tuple[Point, ...]:
    """One hair from `root`; degrees clockwise from up the page; `bend` degrees it turns by its tip.

    Short hairs are straight: a bend would not show.
    """
    one = math.radians(degrees)
    if length < STRAIGHT:
        one = math.radians(degrees + bend / 2)
        return root, (root[0] + math.sin(one) * length, root[1] - math.cos(one) * length)
    two = math.radians(degrees + bend)
    middle = (root[0] + math.sin(one) * length * 0.5, root[1] - math.cos(one) * length * 0.5)
    return root, middle, (middle[0] + math.sin(two) * length * 0.5, middle[1] - math.cos(two) * length * 0.5)


def hairs_along(
    line: Sequence[Point],
    rng: random.Random,
    *,
    count: int,
    length: float,
    lean: float = 35.0,
    side: float = 1.0,
    stroke: Stroke | None = None,
) -> Path:
    """Hairs standing on a line of points, leaning towards its end by `lean` degrees off the line.

    `side` +1 puts them on the right of the direction of travel, -1 on the left.
    """
    lines = []
    for _ in range(round(count * DENSITY)):
        spot = rng.random() * (len(line) - 1)
        index = min(int(spot), len(line) - 2)
        part = spot - index
        (x0, y0), (x1, y1) = line[index], line[index + 1]
        along = math.degrees(math.atan2(x1 - x0, -(y1 - y0)))
        root = (x0 + (x1 - x0) * part, y0 + (y1 - y0) * part)
        turn = lean * rng.uniform(0.6, 1.4)
        lines.append(hair(root, along + side * turn, length * rng.uniform(0.6, 1.2), -side * turn * 0.6))
    return strokes(lines, stroke or pen("hair"))


def hairs_within(
    at: Callable[[float, float], Point],
    rng: random.Random,
    *,
    count: int,
    length: float,
    degrees: float = 180.0,
    spread: float = 14.0,
    splay: float = 25.0,
    stroke: Stroke | None = None,
    edge: float = 0.92,
) -> Path:
    """Hairs over an area. `at(u, v)` maps u -1..1 (across) and v 0..1 (along) onto the page.

    They point to `degrees` (180: down the page), turned outwards by `splay` towards the sides.
    """
    lines = []
    for _ in range(round(count * DENSITY)):
        u, v = rng.uniform(-edge, edge), rng.uniform(0.04, edge)
        turn = degrees - u * splay + rng.gauss(0, spread)
        lines.append(hair(at(u, v), turn, length * rng.uniform(0.6, 1.25), rng.uniform(-12, 12)))
    return strokes(lines, stroke or pen("hair"))


def stipple(
    at: Callable[[float, float], Point],
    rng: random.Random,
    *,
    count: int,
    tone: str = "ink",
    radius: float = 0.14,
    rim: float = 2.2,
    opacity: float = 0.55,
) -> Path:
    """Fine dots over an area, denser towards its right and lower rim the larger `rim` is: pen-and-ink shading."""
    lines = []
    for _ in range(round(count * DENSITY)):
        u = 1 - rng.random() ** rim * 1.9
        v = rng.random() ** (1 / 1.35)
        x, y = at(max(-0.95, min(0.96, u)), max(0.03, min(0.97, v)))
        # A tenth of a unit long: shorter lines are written as none at all.
        lines.append(((x, y), (x + 0.1, y)))
    return strokes(lines, Stroke(tone, radius * 2, opacity))


def dots(spots: Sequence[Point], radius: float, tone: str, opacity: float = 1.0) -> Group:
    """Plain round dots."""
    return Group(tuple(Circle(spot, radius, tone, None, opacity) for spot in spots))


def wedge(root: Point, degrees: float, length: float, width: float, tone: str = "ink") -> Path:
    """A filled tapering spike: a stout spine or a claw; degrees clockwise from up the page."""
    turn = math.radians(degrees)
    tip = (root[0] + math.sin(turn) * length, root[1] - math.cos(turn) * length)
    across = (math.cos(turn) * width / 2, math.sin(turn) * width / 2)
    one, two = (root[0] + across[0], root[1] + across[1]), (root[0] - across[0], root[1] - across[1])
    return Path((("M", one), ("L", tip), ("L", two), ("Z", ())), tone)
