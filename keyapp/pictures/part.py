"""Body parts shared by the recipes: outlines with a middle line, ribbons of varying width, pairs of legs."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.shape import (
    Circle,
    Command,
    Drawing,
    Fill,
    Group,
    LinearGradient,
    Path,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    box_of,
    placed,
    smooth,
)
from keyapp.pictures.style import blend, cylinder, pen, ring

__all__ = [
    "Profile",
    "eye",
    "faded",
    "fitted",
    "framed",
    "ground_shadow",
    "leg_pair",
    "named",
    "put",
    "recolored",
    "ribbon",
    "ring_round",
    "sampled",
    "silhouette",
    "taper",
]


def put(
    points: Sequence[Point], at: Point, turn: float = 0.0, *, flip: bool = False, scale: float = 1.0
) -> list[Point]:
    """Points drawn about (0, 0) put at a place: mirrored left to right if `flip`, scaled, turned clockwise."""
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    placed = []
    for x, y in points:
        x, y = (-x if flip else x) * scale, y * scale
        placed.append((at[0] + cos * x - sin * y, at[1] + sin * x + cos * y))
    return placed


def sampled(points: Sequence[Point], per: int = 8) -> list[Point]:
    """Points along the soft curve through `points` (Catmull-Rom), `per` to each stretch."""
    last = len(points) - 1
    if last < 2:
        (x0, y0), (x1, y1) = points[0], points[-1]
        return [(x0 + (x1 - x0) * step / per, y0 + (y1 - y0) * step / per) for step in range(per + 1)]
    out = []
    for index in range(last):
        p0, p1, p2, p3 = (points[min(max(index + k, 0), last)] for k in (-1, 0, 1, 2))
        for step in range(per):
            t = step / per
            out.append((_catmull(t, p0[0], p1[0], p2[0], p3[0]), _catmull(t, p0[1], p1[1], p2[1], p3[1])))
    return [*out, points[-1]]


def _catmull(t: float, a: float, b: float, c: float, d: float) -> float:
    return 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t**3)


def ribbon(
    points: Sequence[Point],
    widths: Sequence[float],
    fill: Fill,
    stroke: Stroke | None = None,
    *,
    opacity: float = 1.0,
) -> Path:
    """A filled band along the soft curve through `points`, its full width given at two or more even steps."""
    line = sampled(points)
    left, right = [], []
    for index, (x, y) in enumerate(line):
        (xa, ya), (xb, yb) = line[max(index - 1, 0)], line[min(index + 1, len(line) - 1)]
        length = math.hypot(xb - xa, yb - ya) or 1e-6
        spot = index / (len(line) - 1) * (len(widths) - 1)
        low = min(int(spot), len(widths) - 2)
        half = (widths[low] + (widths[low + 1] - widths[low]) * (spot - low)) / 2
        nx, ny = -(yb - ya) / length * half, (xb - xa) / length * half
        left.append((x + nx, y + ny))
        right.append((x - nx, y - ny))
    ring = [*left, *reversed(right)]
    commands: list[Command] = [("M", ring[0]), *(("L", spot) for spot in ring[1:]), ("Z", ())]
    return Path(tuple(commands), fill, stroke, opacity)


def taper(points: Sequence[Point], first: float, last: float, tone: str = "ink", opacity: float = 1.0) -> Path:
    """A pen line that thins from `first` to `last` units wide: feelers, whips, stalks."""
    return ribbon(points, (first, last), tone, opacity=opacity)


@cache
def _edge(spots: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(sampled([(half, at) for at, half in spots]))


@dataclass(frozen=True)
class Profile:
    """A body seen from above: half widths at heights down the page, the same on both sides of the line at `x`.

    Attributes:
        spots: pairs (y, half width), y rising.
        x: the middle line.
    """

    spots: tuple[Point, ...]
    x: float = 50.0

    @property
    def top(self) -> float:
        """Where it starts."""
        return self.spots[0][0]

    @property
    def bottom(self) -> float:
        """Where it ends."""
        return self.spots[-1][0]

    def half(self, y: float) -> float:
        """Half its width at a height (0 outside)."""
        line = _edge(self.spots)
        for (h0, y0), (h1, y1) in itertools.pairwise(line):
            if y0 <= y <= y1:
                return max(0.0, h0 + (h1 - h0) * ((y - y0) / ((y1 - y0) or 1e-6)))
        return 0.0

    def at(self, u: float, v: float) -> Point:
        """The point `u` (-1 left edge, 1 right edge) across and `v` (0 top, 1 bottom) along."""
        y = self.top + (self.bottom - self.top) * v
        return self.x + u * self.half(y), y

    def outline(self, fill: Fill, stroke: Stroke | None = None, opacity: float = 1.0) -> Path:
        """The whole outline."""
        right = [(self.x + half, y) for y, half in self.spots]
        left = [(self.x - half, y) for y, half in reversed(self.spots)]
        points = [
            spot for index, spot in enumerate([*right, *left]) if index == 0 or spot != [*right, *left][index - 1]
        ]
        return smooth(points, closed=True, fill=fill, stroke=stroke, opacity=opacity)

    def line(self, y: float, bow: float = 0.0, share: float = 1.0) -> tuple[Point, Point, Point]:
        """A line across at a height, bowed down by `bow`, over `share` of the width."""
        half = self.half(y) * share
        return (self.x - half, y), (self.x, y + 2 * bow), (self.x + half, y)

    def slice(self, y0: float, y1: float, bow: float = 0.0) -> tuple[Command, ...]:
        """The closed outline of the part between two heights, its lower edge bowed down by `bow`."""
        steps = [y0 + (y1 - y0) * step / 6 for step in range(7)]
        right = [(self.x + self.half(y), y) for y in steps]
        left = [(self.x - self.half(y), y) for y in reversed(steps)]
        return (
            ("M", right[0]),
            *(("L", spot) for spot in right[1:]),
            ("Q", (self.x, y1 + 2 * bow, *left[0])),
            *(("L", spot) for spot in left[1:]),
            ("Q", (self.x, y0 + 2 * bow, *right[0])),
            ("Z", ()),
        )

    def plate(
        self, y0: float, y1: float, tone: str, *, bow: float = 0.0, name: str = "plate", depth: float = 0.4
    ) -> Group:
        """One hard plate of a ringed body, shaded across, its rear edge darkened."""
        half = max(self.half(y0), self.half(y1), 0.1)
        fill = cylinder((self.x - half, y0), (self.x + half, y0), tone, depth=depth)
        under = [self.line(y1 - (y1 - y0) * 0.16, bow, 0.94)]
        rim: tuple[Command, ...] = (("M", under[0][0]), ("Q", (*under[0][1], *under[0][2])))
        return Group(
            (Path(self.slice(y0, y1, bow), fill, pen("line", times=0.85)), Path(rim, None, pen("hair", opacity=0.45))),
            name=name,
        )


def leg_pair(
    rng: random.Random,
    hip: Point,
    lengths: Sequence[float],
    degrees: Sequence[float],
    widths: Sequence[tuple[float, float, float]],
    look: LimbLook,
    *,
    x: float = 50.0,
    jitter: float = 2.5,
    name: str = "leg",
) -> list[Group]:
    """A right and a left limb; `hip` and `degrees` (clockwise from up the page) are those of the right one.

    Each side is bent a little differently, as on a living animal.
    """
    made = []
    for side in (1, -1):
        spots = [(x + side * (hip[0] - x), hip[1])]
        swing = rng.uniform(-jitter, jitter)
        for length, turn in zip(lengths, degrees, strict=True):
            angle = math.radians(turn + swing + rng.uniform(-jitter, jitter) * 0.6)
            px, py = spots[-1]
            spots.append((px + side * math.sin(angle) * length, py - math.cos(angle) * length))
        made.append(limb(spots, widths, look, rng, name=name))
    return made


def ground_shadow(centre: Point, rx: float, ry: float, strength: float = 0.22) -> Group:
    """A soft shadow on the ground."""
    soft = RadialGradient((0, 0), 1, (Stop(0, "ink", strength), Stop(0.55, "ink", strength * 0.6), Stop(1, "ink", 0.0)))
    # A round shadow squeezed flat: the gradient is squeezed with it.
    return Group((Circle((0, 0), 1, soft),), (rx, 0, 0, ry, *centre), "shadow")


def recolored(shape: Shape, tone: str, *, line: str | None = None, wash: float = 0.0) -> Shape:
    """The shape with every fill turned towards `tone` by the share 1 - `wash`, and lines towards `line`."""

    def of_fill(fill: Fill) -> Fill:
        if fill is None:
            return None
        if isinstance(fill, str):
            return blend(tone, fill, wash)
        return replace(fill, stops=tuple(replace(stop, color=blend(tone, stop.color, wash)) for stop in fill.stops))

    def of_stroke(stroke: Stroke | None) -> Stroke | None:
        return replace(stroke, color=blend(line or tone, stroke.color, wash)) if stroke else None

    if isinstance(shape, Group):
        return replace(shape, items=tuple(recolored(item, tone, line=line, wash=wash) for item in shape.items))
    return replace(shape, fill=of_fill(shape.fill), stroke=of_stroke(shape.stroke))


def ring_round(shapes: Iterable[Shape], *, grow: float = 1.0) -> Shape:
    """The look-here ring round all of the shapes, `grow` units clear of their corners' middle."""
    box = box_of(shapes)
    return ring(box.centre, box.width * 0.56 + grow, box.height * 0.56 + grow)


def named(shapes: Iterable[Shape], name: str) -> list[Group]:
    """The groups of this name in shapes that are not moved, at any depth."""
    found: list[Group] = []
    for shape in shapes:
        if isinstance(shape, Group):
            found += [shape] if shape.name == name else named(shape.items, name)
    return found


def silhouette(shape: Shape, tone: str) -> Shape:
    """The shape as one flat colour."""
    if isinstance(shape, Group):
        return replace(shape, items=tuple(silhouette(item, tone) for item in shape.items), opacity=1.0)
    stroke = replace(shape.stroke, color=tone, opacity=1.0) if shape.stroke else None
    return replace(shape, fill=None if shape.fill is None else tone, stroke=stroke, opacity=1.0)


def faded(shapes: Iterable[Shape], share: float = 0.6) -> Group:
    """Shapes drawn pale, so that something else catches the eye; `share` 0-1 is how far towards the paper."""
    return Group(tuple(recolored(shape, "paper", wash=1 - share) for shape in shapes))


def framed(items: Iterable[Shape], *, top: tuple[str, float] | None = None) -> Drawing:
    """A 100 x 100 picture; `top` (colour, height) washes the upper part softly, as a wall or sky would."""
    shapes = list(items)
    if top is not None:
        tone, high = top
        wash = LinearGradient((0, 0), (0, high), (Stop(0, tone, 0.9), Stop(1, tone, 0.0)))
        shapes.insert(0, Path((("M", (0, 0)), ("L", (100, 0)), ("L", (100, high)), ("L", (0, high)), ("Z", ())), wash))
    return Drawing(tuple(shapes))


def fitted(
    items: Iterable[Shape],
    *,
    margin: float = 6.0,
    left: float = 0.0,
    top: float = 0.0,
    right: float = 100.0,
    bottom: float = 100.0,
    most: float = 2.0,
) -> tuple[Group, float]:
    """Shapes scaled (at most by `most`) and moved so that they fill a part of the canvas; with the scale used."""
    shapes = tuple(items)
    box = box_of(shapes)
    wide, high = right - left - 2 * margin, bottom - top - 2 * margin
    scale = min(wide / box.width, high / box.height, most)
    x, y = (left + right) / 2 - box.centre[0] * scale, (top + bottom) / 2 - box.centre[1] * scale
    return placed(shapes, at=(x, y), scale=scale), scale


def eye(at: Point, radius: float, tone: str = "black") -> Group:
    """A shining eye."""
    x, y = at
    spark = Circle((x - radius * 0.3, y - radius * 0.35), radius * 0.28, "white")
    return Group((Circle(at, radius, tone, pen("hair")), spark), name="eye")
