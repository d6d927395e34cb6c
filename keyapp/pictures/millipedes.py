"""Long millipedes along a curved line: round ones from above or coiled on their side, and flat-backed ones."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from keyapp.pictures.long_bodies import Long, even
from keyapp.pictures.part import ribbon
from keyapp.pictures.shape import Circle, Command, Group, Path, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen
from keyapp.pictures.track import Joints, Legs, Track, body, cross_bands, polygon, ring_edges

__all__ = ["coiled_millipede", "flat_millipede", "round_millipede"]


def _millipede_legs(
    track: Track,
    edges: Sequence[float],
    sides: Sequence[int],
    build: Joints,
    tone: str,
    *,
    outline: float,
    inset: float,
    wave: float,
    tail_free: int = 2,
    sway: float = 17,
) -> tuple[list[Shape], list[Point]]:
    """Legs of a millipede: none on the first ring and the last ones, one pair on rings two to four, then two pairs."""
    legs = Legs(tone, outline=outline, gloss=0.3, fine=True)
    right: list[Point] = []
    pairs = list(itertools.pairwise(edges))
    number = 0
    for index, (start, end) in enumerate(pairs[: len(pairs) - tail_free]):
        if index == 0:
            continue
        for f in (0.6,) if index < 4 else (0.32, 0.86):
            for side in sides:
                swing = sway * math.sin(math.tau * number / wave + (0 if side > 0 else 0.6))
                legs.on(track, start + (end - start) * f, side, build, inset=inset, swing=swing)
                if side > 0:
                    right.append(legs.ends[-1])
            number += 1
    return legs.shapes(), right


def _blunt_head(track: Track, wide: float, tone: str, *, side_view: bool = False) -> list[Shape]:
    """The short rounded head of a millipede, bent down, with two elbowed feelers."""
    middle = track.at(0, 0, -wide * 0.35)
    made: list[Shape] = []
    for side in (1, -1):
        if side_view and side < 0:
            continue
        line = track.local(
            0,
            [
                (side * wide * 0.45, -wide * 0.9),
                (side * wide * 0.95, -wide * 1.55),
                (side * wide * 1.3, -wide * 1.75),
                (side * wide * 1.75, -wide * 1.6),
            ],
        )
        made.append(
            Group(
                (
                    ribbon(
                        line,
                        (wide * 0.2, wide * 0.24, wide * 0.34, wide * 0.26),
                        blend(tone, "#C98A50", 0.3),
                        pen("fine"),
                    ),
                ),
                name="feeler",
            )
        )
    made.append(
        Group(
            (Circle(middle, wide * 0.9, globe(middle, wide * 0.9, blend(tone, "#8A4A26", 0.25)), pen("outline")),),
            name="head",
        )
    )
    made += [
        Circle(track.at(0, side * wide * 0.55, -wide * 0.62), wide * 0.17, "black", pen("hair", "white", opacity=0.5))
        for side in ((1,) if side_view else (1, -1))
    ]
    return made


_SNAKE = ((27, 15), (24, 27), (31, 38), (46, 43), (61, 48), (69, 58), (65, 70), (52, 77), (38, 82))


def round_millipede(points: Sequence[Point] = _SNAKE, tone: str = "#5A4030", rings: int = 46) -> Long:
    """A round millipede from above: a smooth rod of many rings fringed with thin legs, two pairs a ring."""
    track = Track(tuple(points), ((0, 3.0), (0.04, 3.5), (0.3, 3.9), (0.85, 3.8), (0.95, 2.9), (0.985, 1.7), (1, 0.6)))
    edges = even(rings)
    build = Joints((1.2, 1.5, 1.3), (84, 92, 122), ((0.62, 0.55, 0.5), (0.5, 0.42, 0.34), (0.32, 0.24, 0.06)))
    legs, right = _millipede_legs(
        track, edges, (1, -1), build, "#C79A66", outline=0.14, inset=0.88, wave=14, tail_free=3
    )
    items = [*legs, *_blunt_head(track, 3.0, tone)]
    items += body(track, edges, tone, scallop=0.0, levels=8, depth=0.62, shine=0.85, lift=0.3)
    items.append(cross_bands(track, edges[:-1], "#1E130C", start=0.7, bow=0.3, opacity=0.4))
    items += ring_edges(track, edges[1:-2], bow=0.3, rim=0.22, ink=pen("fine"))
    items.append(strokes([(track.at(e, 0), track.at(e + 0.006, 0)) for e in edges[2:-3]], pen("hair", opacity=0.6)))
    return Long(tuple(items), tuple(right), (track.at(1, 0),), track)


def coiled_millipede(tone: str = "#5A4030", rings: int = 52) -> Long:
    """A round millipede that lies coiled flat on its side, the head in the middle and the legs turned inwards."""
    points = []
    for k in range(25):
        turn = math.radians(90 + k * 33)
        far = 9.5 + k * 1.22
        points.append((50 + math.cos(turn) * far, 50 + math.sin(turn) * far))
    track = Track(tuple(points), ((0, 3.3), (0.03, 4.0), (0.3, 4.5), (0.8, 4.4), (0.94, 3.2), (0.985, 1.8), (1, 0.6)))
    edges = even(rings)
    build = Joints((1.0, 1.3, 1.1), (96, 112, 150), ((0.7, 0.6, 0.5), (0.5, 0.42, 0.34), (0.32, 0.24, 0.06)))
    side = 1 if math.dist(track.at(0.5, 3), (50, 50)) < math.dist(track.at(0.5, -3), (50, 50)) else -1
    legs, _ = _millipede_legs(track, edges, (side,), build, "#D0A470", outline=0.16, inset=0.92, wave=16, tail_free=3)
    items = [*_blunt_head(track, 3.4, tone, side_view=True)]
    items += body(track, edges, tone, scallop=0.0, levels=8, depth=0.6, shine=0.85, lift=0.2)
    items.append(cross_bands(track, edges[:-1], "#1E130C", start=0.7, bow=0.0, opacity=0.4))
    items += ring_edges(track, edges[1:-2], bow=0.0, rim=0.22, ink=pen("fine"))
    items.append(Group(tuple(Circle(track.at(e + 0.008, side * 0.8), 0.22, "ink") for e in edges[5:-4:2])))
    items += legs
    return Long(tuple(items), (), (track.at(1, 0),), track)


_STROLL = ((43, 14), (45, 30), (50, 46), (54, 62), (53, 76), (48, 89))


def flat_millipede(points: Sequence[Point] = _STROLL, tone: str = "#4A3026", ledge: str = "#D9A968") -> Long:
    """A flat-backed millipede: head, twenty rings each with a pale ledge at both sides, and 31 pairs of pale legs."""
    track = Track(tuple(points), ((0, 4.0), (0.05, 5.0), (0.15, 5.6), (0.8, 5.5), (0.9, 4.4), (0.96, 2.4), (1, 0.5)))
    edges = even(20)
    build = Joints(
        (2.6, 2.7, 2.0, 1.6),
        (82, 76, 92, 112),
        ((1.0, 0.9, 0.8), (0.8, 0.75, 0.65), (0.65, 0.55, 0.45), (0.42, 0.3, 0.08)),
    )
    legs, right = _millipede_legs(track, edges, (1, -1), build, "#EBCF9C", outline=0.2, inset=0.85, wave=9, sway=10)
    items = [*legs]
    for side in (1, -1):
        line = track.local(0, [(side * 1.5, -3.2), (side * 4.4, -6.6), (side * 7.6, -8.4), (side * 11.4, -7.6)])
        items.append(Group((ribbon(line, (0.7, 0.85, 1.0, 1.35, 1.1), "#8A5A3A", pen("fine")),), name="feeler"))
    middle = track.at(0, 0, -1.8)
    items.append(
        Group((Circle(middle, 3.1, globe(middle, 3.1, blend(tone, "#8A4A26", 0.3)), pen("outline")),), name="head")
    )
    for index in range(19, -1, -1):
        items.append(_keeled(track, edges[index], edges[index + 1], index, tone, ledge))
    return Long(tuple(items), tuple(right), (track.at(1, 0),), track)


def _keeled(track: Track, start: float, end: float, index: int, tone: str, ledge: str) -> Group:
    """One ring with its two ledges; the first and the last have none."""
    long = (end - start) * track.length
    middle = (start + end) / 2
    half = max(track.half(middle), 0.8)
    y0, y1 = -long / 2, long / 2
    neck: list[Point] = [(half * 0.7, y0 - 0.3), (half * 0.7, y1 + 0.9)]
    under = track.local(middle, [*neck, *((-x, y) for x, y in reversed(neck))])
    one, two = track.local(middle, [(-half, 0), (half, 0)])
    shapes: list[Shape] = [polygon(under, blend(tone, "#1A100A", 0.45), pen("line"))]
    if index == 19:
        tip = track.local(start, [(-half * 1.6, -0.4), (-half, 2.0), (0, 4.0), (half, 2.0), (half * 1.6, -0.4)])
        return Group((smooth(tip, closed=True, fill=cylinder(one, two, tone), stroke=pen("line")),), name="ring-plate")
    edge = 1.0 if index == 0 else 1.36
    right = [
        (half * 0.6, y0 + long * 0.06),
        (half * edge * 0.92, y0 + long * 0.12),
        (half * edge, y0 + long * 0.3),
        (half * edge * 1.04, y1 + long * 0.04),
        (half * edge * 0.8, y1 - long * 0.14),
        (half * 0.55, y1 - long * 0.1),
    ]
    plate = track.local(middle, [*right, *((-x, y) for x, y in reversed(right))])
    shapes.append(smooth(plate, closed=True, fill=cylinder(one, two, tone, depth=0.5), stroke=pen("line"), tension=0.6))
    if index:
        for side in (1, -1):
            rim = [
                (half * 0.98, y0 + long * 0.22),
                (half * edge * 0.95, y0 + long * 0.32),
                (half * edge * 0.99, y1 - long * 0.06),
                (half * 0.98, y1 - long * 0.22),
            ]
            shapes.append(polygon(track.local(middle, [(side * x, y) for x, y in rim]), ledge, None, 0.95))
    groove = [track.at(middle, -half * 0.6), track.at(middle, 0, 0.2), track.at(middle, half * 0.6)]
    commands: tuple[Command, ...] = (("M", groove[0]), ("Q", (*groove[1], *groove[2])))
    shapes.append(Path(commands, None, pen("fine", "#1A100A", opacity=0.8)))
    return Group(tuple(shapes), name="ring-plate")
