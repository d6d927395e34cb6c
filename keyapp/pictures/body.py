"""A rounded body part (carapace, abdomen, egg sac) whose surface can be addressed across (u) and along (v)."""

from __future__ import annotations

import math
import random
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field

from keyapp.pictures.shape import (
    Fill,
    Group,
    Path,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    smooth,
)
from keyapp.pictures.style import WIDTHS, blend, globe
from keyapp.pictures.texture import hairs_along, hairs_within, stipple

__all__ = ["PROFILES", "Body", "Coat", "egg", "finished"]

Profile = tuple[tuple[float, float], ...]


def egg(lean: float = 1.0, full: float = 1.0, steps: int = 10) -> Profile:
    """Half-widths of an egg: (v, half) pairs, half 0-1. `lean` > 1 puts the widest part nearer the front;
    `full` < 1 squares it, > 1 points its ends."""
    rows = []
    for index in range(1, steps):
        t = math.pi * index / steps
        rows.append((((1 - math.cos(t)) / 2) ** lean, math.sin(t) ** full))
    return tuple(rows)


PROFILES: dict[str, Profile] = {
    # abdomens
    "globe": egg(0.95, 0.92),
    "oval": egg(1.05, 0.95),
    "long": egg(1.15, 0.8),
    "tail-pointed": egg(1.35, 1.05),
    "tapering": ((0.01, 0.3), (0.06, 0.66), (0.18, 0.95), (0.32, 1.0), (0.55, 0.86), (0.78, 0.55), (0.94, 0.24)),
    "shouldered": ((0.015, 0.3), (0.07, 0.68), (0.17, 0.95), (0.3, 1.0), (0.5, 0.92), (0.72, 0.68), (0.9, 0.36)),
    "broad-behind": ((0.02, 0.3), (0.1, 0.55), (0.3, 0.82), (0.55, 1.0), (0.75, 0.95), (0.92, 0.6)),
    "cylinder": ((0.01, 0.4), (0.05, 0.72), (0.15, 0.95), (0.35, 1.0), (0.65, 0.97), (0.85, 0.8), (0.95, 0.5)),
    "barrel": ((0.005, 0.5), (0.04, 0.78), (0.15, 0.94), (0.35, 1.0), (0.6, 0.98), (0.8, 0.82), (0.93, 0.6),
        (0.99, 0.34)),
    "fore": ((0.03, 0.3), (0.12, 0.6), (0.3, 0.84), (0.6, 0.97), (0.9, 1.0), (0.97, 0.86)),
    "kite": ((0.02, 0.25), (0.1, 0.45), (0.3, 0.7), (0.55, 1.0), (0.75, 0.8), (0.92, 0.4)),
    "two-humped": ((0.01, 0.2), (0.05, 0.36), (0.1, 0.56), (0.15, 0.82), (0.2, 0.99), (0.255, 1.0), (0.32, 0.89),
        (0.42, 0.85), (0.56, 0.78), (0.74, 0.57), (0.91, 0.28)),
    "blunt-tail": ((0.01, 0.3), (0.05, 0.6), (0.14, 0.9), (0.28, 1.0), (0.44, 0.92), (0.58, 0.72), (0.7, 0.54),
        (0.82, 0.42), (0.92, 0.36), (0.98, 0.25)),
    "stick": ((0.008, 0.5), (0.035, 0.84), (0.1, 1.0), (0.24, 0.98), (0.5, 0.8), (0.75, 0.64), (0.92, 0.46)),
    "twig": ((0.005, 0.4), (0.03, 0.66), (0.12, 0.86), (0.26, 0.9), (0.36, 1.0), (0.44, 0.9), (0.7, 0.72), (0.9, 0.5),
        (0.98, 0.3)),
    "ant-rear": ((0.01, 0.3), (0.06, 0.56), (0.16, 0.74), (0.25, 0.72), (0.32, 0.64), (0.4, 0.76), (0.54,
        0.97), (0.66, 1.0),
        (0.82, 0.78), (0.94, 0.4)),
    "kite-soft": ((0.01, 0.34), (0.06, 0.56), (0.2, 0.78), (0.4, 0.95), (0.55, 1.0), (0.72, 0.84), (0.87, 0.52),
        (0.96, 0.24)),
    # carapaces: head in front, then the wider part that carries the legs
    "pear": ((0.005, 0.34), (0.05, 0.44), (0.18, 0.52), (0.34, 0.76), (0.52, 0.98), (0.66, 1.0), (0.82, 0.84),
        (0.95, 0.45)),
    "disc": ((0.0, 0.22), (0.03, 0.38), (0.14, 0.72), (0.32, 0.95), (0.5, 1.0), (0.7, 0.9), (0.88, 0.64), (0.97, 0.34)),
    "egg": ((0.005, 0.2), (0.03, 0.3), (0.12, 0.46), (0.3, 0.76), (0.5, 0.96), (0.64, 1.0), (0.8, 0.9), (0.93, 0.6)),
    "ant": ((0.0, 0.5), (0.03, 0.74), (0.14, 0.94), (0.28, 1.0), (0.42, 0.9), (0.54, 0.7), (0.64, 0.66), (0.76, 0.7),
        (0.88, 0.6), (0.97, 0.3)),
    "round": ((0.005, 0.32), (0.04, 0.46), (0.16, 0.6), (0.32, 0.88), (0.52, 1.0), (0.7, 0.95), (0.86, 0.72),
        (0.97, 0.34)),
    "wolf": ((0.005, 0.4), (0.04, 0.5), (0.2, 0.62), (0.38, 0.86), (0.56, 1.0), (0.72, 0.98), (0.88, 0.76),
        (0.97, 0.42)),
    "box": ((0.0, 0.6), (0.03, 0.84), (0.14, 0.92), (0.35, 0.98), (0.55, 1.0), (0.75, 0.94), (0.91, 0.74),
        (0.985, 0.42)),
    "head-broad": ((0.0, 0.5), (0.05, 0.7), (0.2, 0.76), (0.35, 0.84), (0.55, 1.0), (0.72, 0.97),
        (0.88, 0.75), (0.97, 0.4)),
    "flat-front": ((0.002, 0.36), (0.03, 0.5), (0.12, 0.6), (0.28, 0.85), (0.48, 1.0), (0.68, 0.97), (0.86, 0.74),
        (0.97, 0.36)),
    "heart": ((0.005, 0.4), (0.06, 0.56), (0.2, 0.74), (0.4, 0.95), (0.55, 1.0), (0.72, 0.9), (0.88, 0.62),
        (0.97, 0.32)),
    "shield": ((0.0, 0.42), (0.04, 0.58), (0.15, 0.76), (0.35, 0.96), (0.5, 1.0), (0.7, 0.94), (0.88, 0.7),
        (0.97, 0.36)),
}  # fmt: skip
"""Named outlines: (v, half-width) from front to back, half-width 1 being the widest."""


@dataclass(frozen=True, slots=True)
class Body:
    """An outline on the page.

    Attributes:
        front: the middle of its front end.
        length, width: canvas units.
        profile: (v, half-width 0-1) from front to back.
        turn: direction from front to back, clockwise from up the page (180: tail down the page).
    """

    front: Point
    length: float
    width: float
    profile: Profile
    turn: float = 180.0
    _table: tuple[list[float], list[float]] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        # The drawn outline is a curve through the profile; half-widths are looked up on that same curve.
        spots = _curve([(0.0, 0.0), *self.profile, (1.0, 0.0)])
        vs: list[float] = []
        halves: list[float] = []
        for v, half in spots:
            if not vs or v > vs[-1] + 1e-6:
                vs.append(v)
                halves.append(half)
        object.__setattr__(self, "_table", (vs, halves))

    def half(self, v: float) -> float:
        """Half-width at `v`, in canvas units."""
        vs, halves = self._table
        v = min(max(v, vs[0]), vs[-1])
        index = min(max(bisect_left(vs, v), 1), len(vs) - 1)
        part = (v - vs[index - 1]) / (vs[index] - vs[index - 1])
        return max(0.0, (halves[index - 1] + (halves[index] - halves[index - 1]) * part)) * self.width / 2

    def at(self, u: float, v: float) -> Point:
        """The point `u` across (-1 left edge, 1 right edge, tail down the page) and `v` along (0 front, 1 back)."""
        return self.place(u * self.half(v), v * self.length)

    def place(self, across: float, along: float) -> Point:
        """The point `across` and `along` from the front, in canvas units."""
        angle = math.radians(self.turn)
        sin, cos = math.sin(angle), math.cos(angle)
        # Tail direction is (sin, -cos); "right" with the tail down the page is +x.
        return self.front[0] + sin * along - cos * across, self.front[1] - cos * along - sin * across

    @property
    def centre(self) -> Point:
        """The middle of its axis."""
        return self.place(0.0, self.length / 2)

    def edge(self, start: float = 0.0, end: float = 1.0, side: float = 1.0, steps: int = 14) -> list[Point]:
        """Points along one edge from v `start` to v `end`; side 1 right, -1 left, between: inside."""
        return [self.at(side, start + (end - start) * index / steps) for index in range(steps + 1)]

    def outline(self, *, fill: Fill = None, stroke: Stroke | None = None, opacity: float = 1.0) -> Path:
        """The closed outline."""
        right = [self.place(half * self.width / 2, v * self.length) for v, half in self.profile]
        left = [self.place(-half * self.width / 2, v * self.length) for v, half in reversed(self.profile)]
        ring = [self.front, *right, self.place(0.0, self.length), *left]
        return smooth(ring, closed=True, fill=fill, stroke=stroke, opacity=opacity)


def _curve(points: Sequence[Point], steps: int = 6) -> list[Point]:
    # Right half of the closed curve: its neighbours beyond the two ends are the mirrored first and last points.
    padded = [(points[1][0], -points[1][1]), *points, (points[-2][0], -points[-2][1])]
    spots: list[Point] = []
    for index in range(1, len(padded) - 2):
        p0, p1, p2, p3 = padded[index - 1 : index + 3]
        for step in range(steps + 1):
            t = step / steps
            spots.append((_spline(p0[0], p1[0], p2[0], p3[0], t), _spline(p0[1], p1[1], p2[1], p3[1], t)))
    return spots


def _spline(a: float, b: float, c: float, d: float, t: float) -> float:
    return 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3)


@dataclass(frozen=True, slots=True)
class Coat:
    """What covers a body part.

    Attributes:
        color: base colour.
        hairs: number of short hairs on the surface.
        hair_length: in canvas units.
        hair_color: their colour.
        fringe: number of hairs standing out from the edge.
        shine: 0 matt to 1 polished: adds a window of light.
        stipple: number of fine shading dots.
        depth: how dark the rim is, 0-1.
        splay: degrees that hairs turn outwards towards the sides.
    """

    color: str
    hairs: int = 0
    hair_length: float = 1.2
    hair_color: str = "ink"
    fringe: int = 0
    shine: float = 0.15
    stipple: int = 120
    depth: float = 0.4
    splay: float = 25.0


def finished(body: Body, coat: Coat, marks: Sequence[Shape], rng: random.Random, name: str) -> Group:
    """The whole body part: base, its marks, shading over both, texture, and an ink line that swells in the shade."""
    radius = max(body.length, body.width) / 2
    items: list[Shape] = []
    if coat.fringe:
        items += _fringe(body, coat, rng)
    items.append(body.outline(fill=globe(body.centre, radius, coat.color, depth=coat.depth * 0.6, shine=0.2)))
    items += marks
    items.append(_rim(body, coat.depth))
    if coat.hairs:
        items.append(
            hairs_within(
                body.at,
                rng,
                count=coat.hairs,
                length=coat.hair_length,
                degrees=body.turn,
                splay=coat.splay,
                stroke=Stroke(coat.hair_color, 0.15, 0.75),
            )
        )
    if coat.stipple:
        items.append(stipple(body.at, rng, count=coat.stipple))
    if coat.shine:
        items += _light(body, coat)
    items.append(body.outline(stroke=Stroke("ink", WIDTHS["outline"])))
    shaded = 1.0 if math.cos(math.radians(body.turn)) < 0.3 else -1.0
    items.append(smooth(body.edge(0.3, 0.95, shaded * 0.985), stroke=Stroke("ink", WIDTHS["outline"] * 1.5, 0.85)))
    return Group(tuple(items), name=name)


def _fringe(body: Body, coat: Coat, rng: random.Random) -> list[Shape]:
    pen = Stroke(coat.hair_color, 0.18)
    half = coat.fringe // 2
    return [
        hairs_along(body.edge(0.02, 0.99, side * 0.96), rng, count=half, length=coat.hair_length * 1.3, lean=40,
                    side=-side, stroke=pen)
        for side in (1.0, -1.0)
    ]  # fmt: skip


def _rim(body: Body, depth: float) -> Group:
    # Shading that follows the outline: drawn in a 100 x 100 box stretched over the body.
    right = [(50 + half * 50, v * 100) for v, half in body.profile]
    left = [(50 - half * 50, v * 100) for v, half in reversed(body.profile)]
    dark = blend("black", "#4A2A14", 0.4)
    turned = math.radians(body.turn - 180)
    # The light stays at the page's upper left however the body is turned.
    light = (50 - 16 * math.cos(turned) - 16 * math.sin(turned), 46 + 14 * math.sin(turned) - 14 * math.cos(turned))
    shade = RadialGradient(
        (50, 50),
        60,
        (Stop(0.0, dark, 0.0), Stop(0.5, dark, 0.04), Stop(0.78, dark, depth * 0.45), Stop(1.0, dark, depth * 1.1)),
        light,
    )
    path = smooth([(50.0, 0.0), *right, (50.0, 100.0), *left], closed=True, fill=shade)
    a, b = body.place(1.0, 0.0), body.place(0.0, 1.0)
    fx, fy = body.front
    across = ((a[0] - fx) * body.width / 100, (a[1] - fy) * body.width / 100)
    along = ((b[0] - fx) * body.length / 100, (b[1] - fy) * body.length / 100)
    return Group((path,), (*across, *along, fx - across[0] * 50, fy - across[1] * 50))


def _light(body: Body, coat: Coat) -> list[Shape]:
    size = min(body.length, body.width)
    shapes: list[Shape] = []
    up = 1.0 if math.cos(math.radians(body.turn)) < 0.3 else -1.0
    u, v = (-0.42, 0.3) if up > 0 else (0.42, 0.62)
    wide, high = size * 0.2, size * 0.26
    for shrink, strength in ((1.0, 0.5), (0.45, 0.8)):
        x, y = body.at(u, v)
        glow = RadialGradient(
            (x, y),
            high * shrink,
            (Stop(0.0, "#FFFFFF", coat.shine * strength), Stop(1.0, "#FFFFFF", 0.0)),
        )
        spot = [
            (x + wide * shrink * math.cos(t) * 0.9, y + high * shrink * math.sin(t))
            for t in (index * math.pi / 4 for index in range(8))
        ]
        shapes.append(smooth(spot, closed=True, fill=glow))
    if coat.shine > 0.6:
        # A polished body also catches light thrown back from below along its shaded edge.
        out, back = body.edge(0.42, 0.86, up * 0.9, 8), body.edge(0.42, 0.86, up * 0.8, 8)[::-1]
        shapes.append(smooth([*out, *back], closed=True, fill="white", opacity=coat.shine * 0.16))
    return shapes
