"""Tapered jointed limbs: every segment an outline of its own, with bands, hairs and spines."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.pictures.lean import lean_limb
from keyapp.pictures.shape import Command, Fill, Group, Path, Point, Shape, Stroke, strokes
from keyapp.pictures.style import WIDTHS, blend, cylinder
from keyapp.pictures.texture import DENSITY, hair

__all__ = ["Band", "LimbLook", "Segment", "joints_from", "limb", "tuft"]


@dataclass(frozen=True, slots=True)
class Band:
    """A ring of another colour on one segment (index from 0), from `start` to `end` (0-1) along it."""

    segment: int
    start: float
    end: float
    color: str
    opacity: float = 0.8


@dataclass(frozen=True, slots=True)
class LimbLook:
    """How a limb looks.

    Attributes:
        colors: one colour for all segments, or one for each.
        bands: rings of colour.
        spines: stout bristles for each segment (one number, or one per segment).
        spine_length: their length in canvas units.
        hairs: fine hairs per canvas unit of length, on both edges and the surface.
        hair_length: their length in canvas units.
        hair_color: colour of hairs and spines.
        outline: width of the ink line; thin limbs get a thinner one by themselves.
        shine: how bright the lit side is, 0-1.
        gloss: strength of a narrow line of light along bare segments, 0-1.
        lean: drawn in few strokes, to keep the picture small.
        comb: long curved spines for each segment, shorter ones between them, all on one side.
    """

    colors: tuple[str, ...]
    bands: tuple[Band, ...] = ()
    spines: tuple[int, ...] = (0,)
    spine_length: float = 2.0
    hairs: float = 0.0
    hair_length: float = 0.8
    hair_color: str = "ink"
    outline: float = WIDTHS["line"]
    shine: float = 0.28
    gloss: float = 0.0
    lean: bool = False
    comb: tuple[int, ...] = ()

    def color(self, index: int) -> str:
        """Colour of one segment; the last listed colour goes on."""
        return self.colors[min(index, len(self.colors) - 1)]

    def spine_count(self, index: int) -> int:
        """Spines on one segment; the last listed number goes on."""
        return self.spines[min(index, len(self.spines) - 1)]


@dataclass(frozen=True, slots=True)
class Segment:
    """One segment from `start` to `end`, with its full width at start, middle and end."""

    start: Point
    end: Point
    first: float
    middle: float
    last: float

    @property
    def length(self) -> float:
        """Distance between its joints."""
        return math.hypot(self.end[0] - self.start[0], self.end[1] - self.start[1]) or 1e-6

    @property
    def degrees(self) -> float:
        """Its direction, clockwise from up the page."""
        return math.degrees(math.atan2(self.end[0] - self.start[0], self.start[1] - self.end[1]))

    def _controls(self) -> tuple[float, float, float, float]:
        # The half-width as a cubic whose middle comes out at half of `middle`.
        bulge = (self.middle / 2 - (self.first + self.last) / 16) / 0.75
        lean = (self.first - self.last) / 8
        return self.first / 2, bulge + lean, bulge - lean, self.last / 2

    def half_width(self, t: float) -> float:
        """Half its width at `t` (0-1) along it."""
        a, b, c, d = self._controls()
        s = 1 - t
        return a * s**3 + 3 * b * s * s * t + 3 * c * s * t * t + d * t**3

    def at(self, t: float, across: float = 0.0) -> Point:
        """The point at `t` along it; `across` -1 is its left edge, +1 its right edge seen along it."""
        dx, dy = (self.end[0] - self.start[0]), (self.end[1] - self.start[1])
        side = self.half_width(t) * across / self.length
        return self.start[0] + dx * t - dy * side, self.start[1] + dy * t + dx * side

    def outline(self) -> tuple[Command, ...]:
        """Its closed outline with rounded ends."""
        a, b, c, d = self._controls()
        length = self.length
        ux, uy = (self.end[0] - self.start[0]) / length, (self.end[1] - self.start[1]) / length

        def spot(t: float, across: float) -> Point:
            return (
                self.start[0] + ux * length * t - uy * across,
                self.start[1] + uy * length * t + ux * across,
            )

        tip, root = 1 + self.last * 0.42 / length, -self.first * 0.42 / length
        return (
            ("M", spot(0, -a)),
            ("C", (*spot(1 / 3, -b), *spot(2 / 3, -c), *spot(1, -d))),
            ("Q", (*spot(tip, -d), *spot(tip, 0))),
            ("Q", (*spot(tip, d), *spot(1, d))),
            ("C", (*spot(2 / 3, c), *spot(1 / 3, b), *spot(0, a))),
            ("Q", (*spot(root, a), *spot(root, 0))),
            ("Q", (*spot(root, -a), *spot(0, -a))),
            ("Z", ()),
        )

    def shadow_edge(self) -> int:
        """The side (-1 or +1) away from the light, which falls from the upper left."""
        left, right = self.at(0.5, -1), self.at(0.5, 1)
        return -1 if left[0] + left[1] > right[0] + right[1] else 1


def joints_from(hip: Point, lengths: Sequence[float], degrees: Sequence[float]) -> list[Point]:
    """Joint positions from the hip outwards: each segment's length and direction (clockwise from up the page)."""
    points = [hip]
    for length, turn in zip(lengths, degrees, strict=True):
        x, y = points[-1]
        angle = math.radians(turn)
        points.append((x + math.sin(angle) * length, y - math.cos(angle) * length))
    return points


def limb(
    joints: Sequence[Point],
    widths: Sequence[tuple[float, float, float]],
    look: LimbLook,
    rng: random.Random,
    *,
    name: str = "leg",
    part: str = "segment",
) -> Group:
    """A whole limb: joints from the body outwards and, for each segment, its width at start, middle and end."""
    pieces = [Segment(one, two, *wide) for one, two, wide in zip(joints[:-1], joints[1:], widths, strict=True)]
    items: list[Shape] = []
    under = [line for index, piece in enumerate(pieces) for line in _edge_hairs(piece, index, look, rng)]
    if under:
        items.append(strokes(under, Stroke(look.hair_color, min(0.2, 0.1 + look.hair_length / 14))))
    if look.lean:
        items += lean_limb(pieces, look, part)
    else:
        # Outer segments first, so that each joint is capped by the segment nearer the body.
        for index in range(len(pieces) - 1, -1, -1):
            items.append(Group(tuple(_segment(pieces[index], index, look)), name=part))
        items.append(_shadow(pieces, look))
        if look.gloss:
            items.append(_gloss(pieces, look.gloss))
    surface = [line for piece in pieces for line in _surface_hairs(piece, look, rng)]
    if surface:
        items.append(strokes(surface, Stroke(look.hair_color, 0.15, 0.7)))
    spines = [line for index, piece in enumerate(pieces) for line in _spines(piece, look.spine_count(index), look, rng)]
    if spines:
        items.append(strokes(spines, Stroke(look.hair_color, min(0.8, 0.12 + look.spine_length / 18))))
    teeth = [line for piece, count in zip(pieces, look.comb, strict=False) for line in _comb(piece, count, look)]
    if teeth:
        line = Stroke(look.hair_color, min(0.8, 0.12 + look.spine_length / 18))
        items.append(Group((strokes(teeth, line),), name="comb"))
    return Group(tuple(items), name=name)


THIN = 1.1
"""A segment narrower than this, in units of the canvas (of 100), gets one colour: shading would not show."""


def _pen_width(piece: Segment, look: LimbLook) -> float:
    return min(look.outline, 0.1 + max(piece.first, piece.middle, piece.last) * 0.2)


def _segment(piece: Segment, index: int, look: LimbLook) -> list[Shape]:
    tone = look.color(index)
    wide = max(piece.first, piece.middle, piece.last)
    fill: Fill = cylinder(piece.at(0.5, -1), piece.at(0.5, 1), tone, shine=look.shine)
    if wide < THIN:
        fill = blend(tone, "#FFFFFF", look.shine * 0.35)
    # Ink would swallow a hair-thin limb: there its line is thinner and nearer the limb's own colour.
    ink = Stroke(blend(tone, "ink", min(1.0, 0.55 + wide * 0.3)), _pen_width(piece, look))
    shapes: list[Shape] = [Path(piece.outline(), fill, ink)]
    for band in look.bands:
        if band.segment == index:
            shapes.append(_band(piece, band))
    return shapes


def _band(piece: Segment, band: Band) -> Path:
    start, end = max(0.03, band.start), min(0.99, band.end)
    middle = (start + end) / 2
    bow = piece.half_width(middle) * 0.35 / piece.length
    edge = 0.88
    return Path(
        (
            ("M", piece.at(start, -edge)),
            ("Q", (*piece.at(middle, -edge), *piece.at(end, -edge))),
            ("Q", (*piece.at(end + bow, 0), *piece.at(end, edge))),
            ("Q", (*piece.at(middle, edge), *piece.at(start, edge))),
            ("Q", (*piece.at(start + bow, 0), *piece.at(start, -edge))),
            ("Z", ()),
        ),
        band.color,
        None,
        band.opacity,
    )


def _shadow(pieces: Sequence[Segment], look: LimbLook) -> Path:
    # A second, inner line on the shaded edge makes the ink swell and thin as a pen line does.
    lines: list[tuple[Point, ...]] = []
    for piece in pieces:
        side = piece.shadow_edge()
        inner = 1 - min(0.5, _pen_width(piece, look) * 0.7 / max(piece.half_width(0.5), 0.05))
        lines.append(tuple(piece.at(t, side * inner) for t in (0.08, 0.4, 0.7, 0.95)))
    return strokes(lines, Stroke("ink", _pen_width(pieces[len(pieces) // 2], look) * 0.8, 0.5))


def _gloss(pieces: Sequence[Segment], strength: float) -> Path:
    lines = []
    for piece in pieces:
        side = -piece.shadow_edge() * 0.42
        lines.append(tuple(piece.at(t, side) for t in (0.14, 0.5, 0.84)))
    width = max(piece.half_width(0.5) for piece in pieces) * 0.26
    return strokes(lines, Stroke("white", width, strength))


def _edge_hairs(piece: Segment, index: int, look: LimbLook, rng: random.Random) -> list[tuple[Point, ...]]:
    lines: list[tuple[Point, ...]] = []
    for _ in range(round(piece.length * look.hairs * DENSITY * (0.3 if index < 2 else 1.0))):
        side = rng.choice((-1, 1))
        lean = rng.uniform(22, 60)
        root = piece.at(rng.uniform(0.02, 0.98), side * 0.9)
        lines.append(
            hair(root, piece.degrees + side * lean, look.hair_length * rng.uniform(0.6, 1.2), -side * lean / 2)
        )
    return lines


def _surface_hairs(piece: Segment, look: LimbLook, rng: random.Random) -> list[tuple[Point, ...]]:
    wide = max(piece.first, piece.middle, piece.last)
    if wide < 1.0:
        return []
    lines: list[tuple[Point, ...]] = []
    for _ in range(round(piece.length * look.hairs * DENSITY * min(wide, 3.0) * 0.2)):
        across = rng.uniform(-0.8, 0.8)
        root = piece.at(rng.uniform(0.05, 0.95), across)
        length = look.hair_length * rng.uniform(0.5, 0.9)
        lines.append(hair(root, piece.degrees + across * 25 + rng.uniform(-12, 12), length, rng.uniform(-10, 10)))
    return lines


def _spines(piece: Segment, count: int, look: LimbLook, rng: random.Random) -> list[tuple[Point, ...]]:
    lines: list[tuple[Point, ...]] = []
    for index in range(count):
        side = 1 if index % 2 else -1
        t = (index + 1) / (count + 1) + rng.uniform(-0.04, 0.04)
        turn = math.radians(piece.degrees + side * rng.uniform(26, 50))
        length = look.spine_length * rng.uniform(0.6, 1.2)
        x, y = piece.at(t, side * 0.75)
        lines.append(((x, y), (x + math.sin(turn) * length, y - math.cos(turn) * length)))
    return lines


def _comb(piece: Segment, count: int, look: LimbLook) -> list[tuple[Point, ...]]:
    """`count` long curved spines on the inner side, the side that faces the middle of the page, three short between."""
    side = 1 if abs(piece.at(0.5, 1)[0] - 50) < abs(piece.at(0.5, -1)[0] - 50) else -1
    lines: list[tuple[Point, ...]] = []
    for index in range(count * 4 - 3 if count else 0):
        t = 0.08 + 0.88 * index / max(1, count * 4 - 4)
        length = look.spine_length * (1.0 if index % 4 == 0 else 0.24 + 0.09 * (index % 4))
        x, y = piece.at(t, side * 0.55)
        one, two = math.radians(piece.degrees + side * 62), math.radians(piece.degrees + side * 22)
        bend = (x + math.sin(one) * length * 0.55, y - math.cos(one) * length * 0.55)
        lines.append(((x, y), bend, (bend[0] + math.sin(two) * length * 0.5, bend[1] - math.cos(two) * length * 0.5)))
    return lines


def tuft(
    piece: Segment, start: float, end: float, rng: random.Random, *, length: float, tone: str, count: int = 46
) -> Group:
    """A bottle-brush of stiff dark hairs round a segment from `start` to `end` (0-1)."""
    lines: list[tuple[Point, ...]] = []
    for _ in range(count):
        t = rng.uniform(start, end)
        across = rng.uniform(-1, 1)
        side = 1 if across > 0 else -1
        reach = length * (1 - 0.5 * abs((t - start) / (end - start) - 0.55)) * rng.uniform(0.7, 1.1)
        lines.append(hair(piece.at(t, across), piece.degrees + side * rng.uniform(30, 75), reach, -side * 12))
    return Group((strokes(lines, Stroke(tone, 0.26)),), name="tuft")
