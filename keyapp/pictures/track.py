"""Long bodies along a curved line: shading, ring edges and jointed legs in few strokes, to keep figures small."""

from __future__ import annotations

import bisect
import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from keyapp.pictures.part import sampled
from keyapp.pictures.shape import Command, Fill, Group, Path, Point, Shape, Stroke, strokes
from keyapp.pictures.style import blend, pen

__all__ = ["Joints", "Legs", "Track", "body", "cross_bands", "polygon", "ring_edges"]

_LIGHT = (-0.6, -0.8)


def polygon(points: Sequence[Point], fill: Fill, stroke: Stroke | None = None, opacity: float = 1.0) -> Path:
    """A closed outline of straight pieces."""
    commands: list[Command] = [("M", points[0]), *(("L", spot) for spot in points[1:]), ("Z", ())]
    return Path(tuple(commands), fill, stroke, opacity)


@dataclass(frozen=True)
class Track:
    """The middle line of a body from head to tail, and its half width on the way.

    Attributes:
        points: the line goes softly through these.
        halves: pairs (share of the length 0-1, half width).
    """

    points: tuple[Point, ...]
    halves: tuple[Point, ...]

    @cached_property
    def _line(self) -> tuple[list[Point], list[float]]:
        line = sampled(self.points, 14)
        runs = [0.0]
        for (xa, ya), (xb, yb) in itertools.pairwise(line):
            runs.append(runs[-1] + math.hypot(xb - xa, yb - ya))
        return line, runs

    @property
    def length(self) -> float:
        """Length of the line in units."""
        return self._line[1][-1]

    def spot(self, share: float) -> tuple[Point, Point]:
        """The point at a share of the length, and the direction (towards the tail) there."""
        line, runs = self._line
        want = share * runs[-1]
        low = min(max(bisect.bisect_right(runs, want) - 1, 0), len(runs) - 2)
        t = (want - runs[low]) / ((runs[low + 1] - runs[low]) or 1e-6)
        (xa, ya), (xb, yb) = line[low], line[low + 1]
        before, after = line[max(low - 1, 0)], line[min(low + 2, len(line) - 1)]
        dx, dy = after[0] - before[0], after[1] - before[1]
        long = math.hypot(dx, dy) or 1e-6
        return (xa + (xb - xa) * t, ya + (yb - ya) * t), (dx / long, dy / long)

    def half(self, share: float) -> float:
        """Half the width at a share of the length."""
        spots = self.halves
        if share <= spots[0][0]:
            return spots[0][1]
        for (a, wa), (b, wb) in itertools.pairwise(spots):
            if a <= share <= b:
                return wa + (wb - wa) * (share - a) / ((b - a) or 1e-6)
        return spots[-1][1]

    def at(self, share: float, off: float, along: float = 0.0) -> Point:
        """`off` units to the right of the line for one who stands with the head up the page, `along` tailwards."""
        (x, y), (dx, dy) = self.spot(share)
        return x + dy * off + dx * along, y - dx * off + dy * along

    def local(self, share: float, points: Sequence[Point]) -> list[Point]:
        """Points (across, along) put at a share of the length."""
        return [self.at(share, x, y) for x, y in points]

    def heading(self, share: float, side: int, turn: float) -> Point:
        """The direction `turn` degrees from straight ahead (0) by way of outwards (90) to straight back (180)."""
        _, (dx, dy) = self.spot(share)
        cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn)) * side
        return -dx * cos + dy * sin, -dy * cos - dx * sin

    def light(self, share: float) -> float:
        """Where across the body the light falls, -1 to 1."""
        _, (dx, dy) = self.spot(share)
        return dy * _LIGHT[0] - dx * _LIGHT[1]


def body(
    track: Track,
    edges: Sequence[float],
    tone: str,
    *,
    scallop: float = 0.08,
    levels: int = 6,
    depth: float = 0.45,
    shine: float = 0.3,
    lift: float = 0.3,
    per: int = 2,
) -> list[Shape]:
    """The shaded body; each ring between two of `edges` is a little wider at its rear. No ring lines yet."""
    steps: list[tuple[float, float]] = []
    for start, end in itertools.pairwise(edges):
        for f in (0.08, 0.5, 1.0) if scallop else [k / per for k in range(1, per + 1)]:
            share = start + (end - start) * f
            steps.append((share, track.half(share) * (1 - scallop * (1 - f))))
    right = [track.at(share, half) for share, half in steps]
    left = [track.at(share, -half) for share, half in steps]
    shapes: list[Shape] = [polygon([*right, *reversed(left)], blend(tone, "#1A100A", depth), pen("outline"))]
    coarse = [edges[0] + (edges[-1] - edges[0]) * k / 30 for k in range(31)]
    for level in range(1, levels + 1):
        t = level / levels
        wide = 0.96 * (1 - t) ** 0.75 + 0.05
        shift = lift * t
        mixed = blend(tone, "#1A100A", depth * (1 - t) ** 1.3) if t < 0.6 else blend(tone, "#FFFFFF", shine * (t - 0.6))
        one, two = [], []
        for share in coarse:
            half, where = track.half(share), track.light(share) * shift
            one.append(track.at(share, half * min(0.98, where + wide)))
            two.append(track.at(share, half * max(-0.98, where - wide)))
        shapes.append(polygon([*one, *reversed(two)], mixed, None, 0.75))
    return shapes


def ring_edges(
    track: Track, edges: Sequence[float], *, bow: float = 0.5, ink: Stroke | None = None, rim: float = 0.35
) -> list[Shape]:
    """The rear edges of rings, bowed towards the tail by `bow`, with a pale rim before and a shadow behind each."""

    def across(share: float, along: float, part: float) -> list[Point]:
        half = track.half(share) * part
        return [track.at(share, -half, along), track.at(share, 0, along + bow * 2), track.at(share, half, along)]

    lines = [across(share, 0, 0.99) for share in edges]
    pale = [across(share, -rim, 0.8) for share in edges]
    dark = [across(share, rim, 0.95) for share in edges]
    return [
        strokes(dark, pen("line", "#1A100A", opacity=0.3)),
        strokes(pale, pen("fine", "white", opacity=0.32)),
        strokes(lines, ink or pen("line")),
    ]


def cross_bands(
    track: Track, edges: Sequence[float], tone: str, *, start: float = 0.62, bow: float = 0.5, opacity: float = 0.75
) -> Path:
    """A band of another colour over the rear part (from `start`, 0-1) of every ring."""
    commands: list[Command] = []
    for a, b in itertools.pairwise(edges):
        top = a + (b - a) * start
        h0, h1 = track.half(top) * 0.96, track.half(b) * 0.97
        commands += [
            ("M", track.at(top, -h0)),
            ("Q", (*track.at(top, 0, bow * 2), *track.at(top, h0))),
            ("L", track.at(b, h1)),
            ("Q", (*track.at(b, 0, bow * 2), *track.at(b, -h1))),
            ("Z", ()),
        ]
    return Path(tuple(commands), tone, None, opacity)


@dataclass(frozen=True)
class Joints:
    """A limb's build: per segment its length, its turn from straight ahead, and its widths at start, middle, end."""

    lengths: tuple[float, ...]
    turns: tuple[float, ...]
    widths: tuple[tuple[float, float, float], ...]


class Legs:
    """Gathers jointed legs and draws them: one outline to a leg (`fine`: to all), joints and gloss in one path each."""

    def __init__(
        self, tone: str, *, tip: str | None = None, outline: float = 0.3, gloss: float = 0.4, fine: bool = False
    ) -> None:
        self.fine = fine
        self.tone, self.tip, self.outline, self.gloss = tone, tip, outline, gloss
        self._paths: list[Shape] = []
        self._tips: list[list[Point]] = []
        self._joints: list[tuple[Point, Point]] = []
        self._gloss: list[tuple[Point, Point]] = []
        self.ends: list[Point] = []

    def add(self, hip: Point, headings: Sequence[Point], build: Joints, tone: str | None = None) -> None:
        """One leg from its hip; `headings` are unit directions, one to a segment."""
        here, left, right = hip, [], []
        for index, ((hx, hy), long, widths) in enumerate(zip(headings, build.lengths, build.widths, strict=True)):
            # Thin legs are drawn with fewer corners.
            for f, wide in (
                ((0.0, widths[0]), (1.0, widths[2])) if self.fine else zip((0.0, 0.45, 1.0), widths, strict=True)
            ):
                x, y = here[0] + hx * long * f, here[1] + hy * long * f
                left.append((x - hy * wide / 2, y + hx * wide / 2))
                right.append((x + hy * wide / 2, y - hx * wide / 2))
            if index:
                self._joints.append((left[-2 if self.fine else -3], right[-2 if self.fine else -3]))
            lit = -1 if (-hy * _LIGHT[0] + hx * _LIGHT[1]) < 0 else 1
            off = widths[1] * 0.2 * lit
            self._gloss.append(
                tuple((here[0] + hx * long * f - hy * off, here[1] + hy * long * f + hx * off) for f in (0.15, 0.8))  # type: ignore[arg-type]
            )
            here = (here[0] + hx * long, here[1] + hy * long)
        if self.tip:
            self._tips.append([*left[-3:], *reversed(right[-3:])])
        self.ends.append(here)
        base = tone or self.tone
        ink = Stroke(blend(base, "ink", 0.8), self.outline)
        self._paths.append(polygon([*left, *reversed(right)], base, ink))

    def on(
        self,
        track: Track,
        share: float,
        side: int,
        build: Joints,
        *,
        inset: float = 0.85,
        swing: float = 0.0,
        tone: str | None = None,
    ) -> None:
        """One leg of a body along a track, its turns moved by `swing` degrees."""
        hip = track.at(share, side * track.half(share) * inset)
        self.add(hip, [track.heading(share, side, turn + swing) for turn in build.turns], build, tone)

    def shapes(self, *, name: str = "leg") -> list[Shape]:
        """All legs so far."""
        wide = max(0.12, self.outline * 0.8)
        if self.fine:
            first = self._paths[0]
            commands = tuple(step for path in self._paths if isinstance(path, Path) for step in path.commands)
            return [Path(commands, first.fill, first.stroke)] if isinstance(first, Path) else []
        made: list[Shape] = [Group((path,), name=name) for path in self._paths]
        if self.tip:
            made += [polygon(points, self.tip, None, 0.85) for points in self._tips]
        made.append(strokes(self._joints, Stroke(blend(self.tone, "ink", 0.8), wide)))
        made.append(strokes(self._gloss, Stroke("white", wide, self.gloss)))
        return made
