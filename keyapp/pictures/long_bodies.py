"""Centipedes from above, along a curved line, with their true counts of legs."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.pictures.part import eye, ribbon, sampled
from keyapp.pictures.shape import Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.style import blend, cylinder, pen
from keyapp.pictures.track import Joints, Legs, Track, body, cross_bands, ring_edges

__all__ = ["Long", "even", "giant_centipede", "soil_centipede", "stone_centipede"]


@dataclass(frozen=True)
class Long:
    """A drawn animal: its shapes, where its right legs end, its last legs, its length in units and its track."""

    items: tuple[Shape, ...]
    right: tuple[Point, ...]
    tail: tuple[Point, ...]
    track: Track


def even(count: int, start: float = 0.0, end: float = 1.0) -> list[float]:
    return [start + (end - start) * k / count for k in range(count + 1)]


def _feelers(track: Track, shape: Sequence[Point], wide: tuple[float, float], tone: str, beads: int) -> list[Shape]:
    """Two beaded feelers; `shape` (across, along) is the right one's."""
    made: list[Shape] = []
    for side in (1, -1):
        line = track.local(0.0, [(x * side, y) for x, y in shape])
        soft = sampled(line, 10)
        ticks: list[tuple[Point, Point]] = []
        for k in range(1, beads):
            spot = k / beads * (len(soft) - 1)
            low = int(spot)
            (xa, ya), (xb, yb) = soft[low], soft[min(low + 1, len(soft) - 1)]
            long = math.hypot(xb - xa, yb - ya) or 1e-6
            half = (wide[0] + (wide[1] - wide[0]) * k / beads) / 2
            nx, ny = -(yb - ya) / long * half, (xb - xa) / long * half
            x, y = xa + (xb - xa) * (spot - low), ya + (yb - ya) * (spot - low)
            ticks.append(((x - nx, y - ny), (x + nx, y + ny)))
        band = ribbon(line, wide, tone, Stroke(blend(tone, "ink", 0.8), 0.24))
        made.append(Group((band, strokes(ticks, pen("hair", times=0.9, opacity=0.7))), name="feeler"))
    return made


def _head(track: Track, wide: float, long: float, tone: str, eyes: Sequence[Point], size: float) -> list[Shape]:
    """A flat head plate ahead of the track's start, with the tips of the venom claws beside it."""
    right = [(wide * 0.45, -long), (wide * 0.9, -long * 0.7), (wide, -long * 0.3), (wide * 0.82, long * 0.08)]
    ring = [(0.0, -long * 0.95), *right, *((-x, y) for x, y in reversed(right))]
    made: list[Shape] = []
    for side in (1, -1):
        claw = [
            (side * wide * 0.95, -long * 0.1),
            (side * wide * 1.2, -long * 0.5),
            (side * wide * 0.95, -long * 0.95),
            (side * wide * 0.35, -long * 1.18),
            (side * wide * 0.7, -long * 0.8),
            (side * wide * 0.75, -long * 0.3),
        ]
        made.append(
            Group(
                (smooth(track.local(0, claw), closed=True, fill=blend(tone, "#2A140A", 0.3), stroke=pen("fine")),),
                name="claw",
            )
        )
    (one, two) = track.local(0, [(-wide, -long * 0.5), (wide, -long * 0.5)])
    made.append(
        Group(
            (
                smooth(track.local(0, ring), closed=True, fill=cylinder(one, two, tone), stroke=pen("outline")),
                strokes([track.local(0, [(0, -long * 0.85), (0, -long * 0.45)])], pen("hair", opacity=0.5)),
            ),
            name="head",
        )
    )
    made += [eye(track.at(0, side * x * wide, -y * long), size) for x, y in eyes for side in (-1, 1)]
    return made


def _centipede(
    track: Track,
    edges: Sequence[float],
    tone: str,
    leg_tone: str,
    build: Sequence[Joints],
    *,
    swing: float,
    wave: float,
    tip: str | None = None,
    outline: float = 0.3,
    colors: tuple[str, str] | None = None,
) -> tuple[list[Shape], list[Point], list[Point], list[Shape]]:
    """Legs and body of a centipede, one pair of legs to each ring between two edges.

    Returns the legs, the ends of the right legs, the ends of the last pair, and the body.
    """
    legs = Legs(leg_tone, tip=tip, outline=outline, fine=outline < 0.2)
    right, tail = [], []
    pairs = list(itertools.pairwise(edges))
    for index in range(len(pairs) - 1, -1, -1):
        start, end = pairs[index]
        last = index == len(pairs) - 1
        for side in (1, -1):
            push = 0.0 if last else swing * math.sin(math.tau * index / wave + (0 if side > 0 else math.pi * 0.8))
            legs.on(
                track,
                start + (end - start) * 0.6,
                side,
                build[index],
                inset=0.4 if last else 0.82,
                swing=push,
                tone=colors[1] if colors and last else None,
            )
            if side > 0:
                right.append(legs.ends[-1])
        if last:
            tail = list(legs.ends)
    return legs.shapes(), right, tail, body(track, edges, tone)


def _scaled(build: Joints, by: float, turn: float = 0.0, fat: float = 1.0) -> Joints:
    return Joints(
        tuple(long * by for long in build.lengths),
        tuple(one + turn for one in build.turns),
        tuple((a * fat, b * fat, c * fat) for a, b, c in build.widths),
    )


def stone_centipede(
    points: Sequence[Point] = ((45, 26), (50, 36), (54, 49), (51, 62), (45, 73)),
    tone: str = "#A05A2C",
    sway: float = 10,
) -> Long:
    """A stone centipede: 15 pairs of legs, long and short plates in turn, the last two pairs of legs longest."""
    track = Track(tuple(points), ((0, 3.0), (0.1, 3.9), (0.4, 4.5), (0.7, 4.2), (0.92, 2.9), (1, 1.7)))
    # Plates 1, 3, 5, 7, 8, 10, 12 and 14 are the long ones; a narrow plate follows the last pair of legs.
    parts = [0.85, 0.5, 1, 0.5, 1, 0.5, 1, 1, 0.5, 1, 0.5, 1, 0.5, 0.95, 0.55]
    runs = [0.0, *itertools.accumulate(parts)]
    edges = [run / runs[-1] * 0.965 for run in runs]
    basic = Joints(
        (3.0, 3.2, 3.4, 2.6), (78, 66, 84, 104), ((1.5, 1.6, 1.3), (1.3, 1.25, 1), (1, 0.85, 0.65), (0.6, 0.45, 0.1))
    )
    build = []
    for index in range(15):
        share = index / 14
        build.append(_scaled(basic, 0.8 + 0.4 * share, -8 + 46 * share, 0.95 + 0.15 * share))
    build[13] = Joints(
        (3.8, 4.6, 5.0, 4.2), (128, 138, 150, 160), ((1.8, 1.9, 1.5), (1.5, 1.4, 1.2), (1.2, 1, 0.8), (0.7, 0.5, 0.1))
    )
    build[14] = Joints(
        (4.2, 6.0, 6.6, 5.4),
        (152, 158, 164, 170),
        ((2.0, 2.1, 1.7), (1.7, 1.6, 1.3), (1.3, 1.1, 0.85), (0.8, 0.55, 0.1)),
    )
    leg_tone = blend(tone, "#E9C074", 0.5)
    legs, right, tail, shape = _centipede(track, edges, tone, leg_tone, build, swing=sway, wave=6)
    items = [*legs]
    line = [(1.6, -5.0), (4.5, -10), (8.5, -15), (13.5, -18.8), (20, -20.4), (26, -18.5)]
    items += _feelers(track, line, (1.25, 0.4), blend(tone, "#E9C074", 0.25), 26)
    end = track.local(0.965, [(-1.7, 0), (-1.3, 2.0), (0, 2.8), (1.3, 2.0), (1.7, 0)])
    items.append(smooth(end, closed=True, fill=blend(tone, "#2A140A", 0.2), stroke=pen("line")))
    items += shape
    items += ring_edges(track, edges[1:], bow=0.5, rim=0.4)
    items += _head(track, 3.7, 5.8, blend(tone, "#8A3414", 0.35), ((0.72, 0.62), (0.8, 0.5)), 0.42)
    return Long(tuple(items), tuple(right), tuple(tail), track)


def giant_centipede(
    points: Sequence[Point] = ((40, 22), (50, 28), (59, 37), (58, 49), (49, 57), (43, 67), (47, 79)),
    tone: str = "#B98A48",
    head: str = "#B4471F",
    sway: float = 11,
) -> Long:
    """A giant centipede: 21 pairs of legs, thick beaded feelers, and a stout last pair of legs that trails behind."""
    track = Track(tuple(points), ((0, 3.2), (0.06, 3.8), (0.4, 4.2), (0.8, 4.0), (0.95, 3.4), (1, 2.5)))
    parts = [0.8, 0.8, *([1.0] * 17), 0.9, 0.9]
    runs = [0.0, *itertools.accumulate(parts)]
    edges = [run / runs[-1] for run in runs]
    basic = Joints(
        (3.1, 3.2, 2.9, 2.5), (74, 68, 92, 116), ((1.5, 1.5, 1.25), (1.25, 1.2, 1), (1, 0.85, 0.65), (0.62, 0.45, 0.08))
    )
    build = [_scaled(basic, 0.92 + 0.18 * i / 20, -6 + 34 * i / 20) for i in range(21)]
    build[20] = Joints(
        (7.0, 5.2, 4.6, 4.4), (150, 160, 170, 178), ((3.2, 3.4, 2.8), (2.8, 2.8, 2.3), (2.3, 2.1, 1.6), (1.4, 1.0, 0.1))
    )
    legs, right, tail, shape = _centipede(
        track,
        edges,
        tone,
        "#DDB56A",
        build,
        swing=sway,
        wave=6,
        tip="#8A5A24",
        colors=(tone, blend(head, "#D98A3A", 0.4)),
    )
    items = [*legs]
    line = [(1.8, -5.4), (4.2, -9.6), (8.4, -13.2), (14, -14.8), (20.5, -13.4)]
    items += _feelers(track, line, (1.75, 0.5), blend(head, "#D98A3A", 0.35), 18)
    items += shape
    items.append(cross_bands(track, edges, "#4C3A22", start=0.66, bow=0.35))
    items += ring_edges(track, edges[1:-1], bow=0.35, rim=0.35)
    fine = [
        [track.at(a + (b - a) * f, s * track.half(a) * 0.34) for f in (0.1, 0.9)]
        for a, b in itertools.pairwise(edges)
        for s in (-1, 1)
    ]
    items.append(strokes([(one, two) for one, two in fine], pen("hair", opacity=0.55)))
    end = track.local(1.0, [(-2.4, -0.4), (-1.6, 1.7), (0, 2.3), (1.6, 1.7), (2.4, -0.4)])
    items.append(smooth(end, closed=True, fill=blend(head, "#D98A3A", 0.2), stroke=pen("line")))
    items += _head(track, 3.8, 6.0, head, ((0.74, 0.72), (0.82, 0.62), (0.7, 0.58), (0.8, 0.5)), 0.34)
    return Long(tuple(items), tuple(right), tuple(tail), track)


_WINDING = (
    (24, 15),
    (17, 25),
    (24, 36),
    (42, 38),
    (62, 36),
    (77, 43),
    (77, 57),
    (62, 63),
    (42, 61),
    (27, 67),
    (26, 79),
    (38, 86),
    (52, 85),
)


def soil_centipede(points: Sequence[Point] = _WINDING, tone: str = "#D9A04E", pairs: int = 67) -> Long:
    """A soil centipede: thin as a string, 67 pairs of short legs, no eyes, short feelers, a last pair that trails."""
    track = Track(tuple(points), ((0, 1.15), (0.03, 1.5), (0.2, 1.75), (0.6, 1.8), (0.9, 1.5), (1, 0.8)))
    edges = even(pairs)
    basic = Joints((1.35, 1.3, 1.15), (78, 84, 112), ((0.75, 0.7, 0.55), (0.55, 0.5, 0.4), (0.38, 0.28, 0.06)))
    build = [basic] * (pairs - 1) + [
        Joints((1.9, 2.0, 1.8), (146, 152, 160), ((1.0, 1.05, 0.85), (0.85, 0.8, 0.65), (0.6, 0.45, 0.15)))
    ]
    legs, right, tail, shape = _centipede(
        track, edges, tone, blend(tone, "#F3DFA8", 0.5), build, swing=20, wave=9, outline=0.17
    )
    items = [*legs]
    items += _feelers(
        track, [(0.45, -2.1), (1.5, -4.0), (3.0, -5.8), (4.4, -7.4)], (0.75, 0.42), blend(tone, "#9A4E1E", 0.4), 14
    )
    items += shape
    items += ring_edges(track, edges[1:-1], bow=0.12, rim=0.16, ink=pen("hair", times=1.1))
    items += _head(track, 1.35, 2.3, blend(tone, "#A8501C", 0.55), (), 0.1)
    return Long(tuple(items), tuple(right), tuple(tail), track)
