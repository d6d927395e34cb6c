"""Markings on a body part, given as data in its own coordinates: u across (-1..1), v along (0 front..1 back)."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Sequence

from keyapp.errors import UserError
from keyapp.pictures.body import Body
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Ellipse,
    Group,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend

__all__ = ["KINDS", "marks_on"]

Maker = Callable[[Body, Settings, random.Random], list[Shape]]


def marks_on(body: Body, rows: Sequence[Settings], rng: random.Random) -> list[Shape]:
    """Draw each row of settings (its `kind` names the mark) on the body, in the order given."""
    shapes: list[Shape] = []
    for row in rows:
        kind = row.choice("kind", KINDS, "area")
        shapes.append(Group(tuple(KINDS[kind](body, row, rng)), name=f"mark-{kind}"))
        row.done()
    return shapes


def _pairs(row: Settings, name: str, default: Sequence[float] = ()) -> list[Point]:
    numbers = row.numbers(name, default)
    if len(numbers) % 2:
        raise UserError(f"{name!r} needs pairs of numbers.", where="marks", fix="Give u, v, u, v and so on.")
    return [(numbers[i], numbers[i + 1]) for i in range(0, len(numbers), 2)]


def _shaken(points: Sequence[Point], rng: random.Random, amount: float = 0.006) -> list[Point]:
    return [(u + rng.gauss(0, amount), v + rng.gauss(0, amount)) for u, v in points]


def _area(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """An even patch. `points` from front to back on the right half; mirrored into one patch, or, with `pair`, two."""
    points = _pairs(row, "points")
    tone, opacity = row.color("color", "ink"), row.number("opacity", 0.85, least=0, most=1)
    tension, pair = row.number("tension", 1.0), row.flag("pair")
    edge = row.color("edge", "ink") if "edge" in row else None
    stroke = Stroke(edge, row.number("edge-width", 0.3), opacity) if edge else None
    if pair:
        return [
            smooth(
                [body.at(u * side, v) for u, v in _shaken(points, rng)],
                closed=True,
                fill=tone,
                stroke=stroke,
                opacity=opacity,
                tension=tension,
            )
            for side in (1, -1)
        ]
    ring = _shaken(points, rng) + [(-u, v) for u, v in reversed(_shaken(points, rng)) if abs(u) > 0.02]
    path = [body.at(u, v) for u, v in ring]
    return [smooth(path, closed=True, fill=tone, stroke=stroke, opacity=opacity, tension=tension)]


def _spots(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Round spots: `at` lists u, v; `size` is the radius as a part of the half-width; with `pair`, mirrored."""
    size = row.number("size", 0.08) * body.width / 2
    tone, opacity = row.color("color", "ink"), row.number("opacity", 0.9, least=0, most=1)
    sides = (1, -1) if row.flag("pair") else (1,)
    edge = row.color("edge", "ink") if "edge" in row else None
    stroke = Stroke(edge, max(0.2, size * 0.35), opacity) if edge else None
    shapes: list[Shape] = []
    for u, v in _pairs(row, "at"):
        for side in sides:
            spot = body.at(u * side + rng.gauss(0, 0.008), v + rng.gauss(0, 0.005))
            shapes.append(Circle(spot, size * rng.uniform(0.88, 1.1), tone, stroke, opacity))
    return shapes


def _humps(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Round mounds standing up from the body: `at` lists u, v; `size` is the radius as a part of the half-width."""
    size = row.number("size", 0.2) * body.width / 2
    tone = row.color("color", "paper")
    sides = (1, -1) if row.flag("pair") else (1,)
    shapes: list[Shape] = []
    for u, v in _pairs(row, "at"):
        for side in sides:
            x, y = body.at(u * side, v)
            dark = blend(tone, "#1A100A", 0.7)
            low = (x + size * 0.28, y + size * 0.3)
            fall = RadialGradient(low, size * 1.25, (Stop(0.5, dark, 0.55), Stop(1, dark, 0.0)))
            top = (Stop(0, blend(tone, "#FFFFFF", 0.5)), Stop(0.5, tone, 0.95), Stop(1, tone, 0.0))
            shapes += [
                Circle(low, size * 1.25, fall),
                Circle((x, y), size, RadialGradient((x, y), size, top, (x - size * 0.3, y - size * 0.32))),
            ]
    return shapes


def _speckle(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Scattered flecks: `count`, `size` (part of the half-width), between v `from` and `to`."""
    count, size = row.whole("count", 60), row.number("size", 0.04) * body.width
    start, end = row.number("from", 0.05), row.number("to", 0.95)
    edge = row.number("reach", 0.9)
    lines = []
    for _ in range(count):
        x, y = body.at(rng.uniform(-edge, edge), rng.uniform(start, end))
        turn = rng.uniform(0, math.tau)
        reach = size * rng.uniform(0.1, 0.6)
        lines.append(((x, y), (x + math.cos(turn) * reach, y + math.sin(turn) * reach)))
    return [strokes(lines, Stroke(row.color("color", "ink"), size * 0.6, row.number("opacity", 0.5)))]


def _chevrons(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Arrowheads pointing forwards, one behind another: `count`, v `from` and `to`, `width` (u), `thick` (v)."""
    count, start, end = row.whole("count", 4), row.number("from", 0.35), row.number("to", 0.9)
    wide, thick, drop = row.number("width", 0.55), row.number("thick", 0.035), row.number("drop", 0.06)
    tone, opacity = row.color("color", "ink"), row.number("opacity", 0.8)
    shapes: list[Shape] = []
    for index in range(count):
        v = start + (end - start) * index / max(1, count - 1)
        reach = wide * (1 - 0.35 * index / max(1, count - 1))
        points = [
            (0.0, v - thick),
            (reach * 0.5, v - thick * 0.3 + drop * 0.5),
            (reach, v + drop),
            (reach * 0.55, v + thick + drop * 0.75),
            (0.0, v + thick),
        ]
        ring = points + [(-u, w) for u, w in reversed(points[1:-1])]
        path = [body.at(u, w) for u, w in _shaken(ring, rng)]
        shapes.append(smooth(path, closed=True, fill=tone, opacity=opacity, tension=0.6))
    return shapes


def _bands(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Cross bands: `at` lists the v of each, `thick` its half-thickness (v), `reach` how far out (u), `bow` its sag."""
    tone, opacity = row.color("color", "ink"), row.number("opacity", 0.85)
    thick, reach, bow = row.number("thick", 0.03), row.number("reach", 0.98), row.number("bow", 0.04)
    wavy = row.number("wavy", 0.0)
    shapes: list[Shape] = []
    for v in row.numbers("at", ()):
        top = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1]
        upper = [(u * reach, v - thick + bow * (u * u - 1) + rng.gauss(0, wavy)) for u in top]
        lower = [(u * reach, v + thick + bow * (u * u - 1) + rng.gauss(0, wavy)) for u in reversed(top)]
        path = [body.at(u, min(0.99, max(0.01, w))) for u, w in upper + lower]
        shapes.append(smooth(path, closed=True, fill=tone, opacity=opacity, tension=0.7))
    return shapes


def _folium(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """A dark leaf with a scalloped edge and a pale border, tapering to the tail: `lobes`, `width`, `from`, `to`."""
    lobes, wide = row.whole("lobes", 4, least=2, most=8), row.number("width", 0.72)
    start, end = row.number("from", 0.08), row.number("to", 0.96)
    tone, border = row.color("color", "ink"), row.color("edge", "paper")
    points: list[Point] = [(0.0, start)]
    for index in range(lobes):
        v0 = start + (end - start) * (index + 0.1) / lobes
        v1 = start + (end - start) * (index + 0.62) / lobes
        v2 = start + (end - start) * (index + 0.95) / lobes
        reach = wide * (1 - 0.22 * index / lobes)
        points += [(reach * 0.72, v0), (reach, v1), (reach * 0.62, v2)]
    points.append((0.0, end))
    ring = _shaken(points, rng) + [(-u, v) for u, v in reversed(_shaken(points[1:-1], rng))]
    path = [body.at(u, min(0.985, v)) for u, v in ring]
    opacity = row.number("opacity", 0.75)
    size = body.width * 0.035
    middle = [body.at(u * 0.55, v) for u, v in ring]
    return [
        smooth(path, closed=True, fill=tone, stroke=Stroke(border, size, 0.9), opacity=opacity, tension=0.8),
        smooth(path, closed=True, stroke=Stroke(blend(tone, "black", 0.5), size * 0.4), opacity=0.9, tension=0.8),
        smooth(middle, closed=True, fill=blend(tone, border, 0.3), opacity=0.35, tension=0.8),
    ]


def _rays(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Dark lines from the middle of a carapace outwards, and its short groove: `count` a side, `color`, `opacity`."""
    count, v0 = row.whole("count", 4), row.number("at", 0.6)
    tone, opacity = row.color("color", "ink"), row.number("opacity", 0.5)
    wide = row.number("wide", 0.02) * body.width
    lines = []
    for index in range(count):
        v1 = v0 + (-0.24 + 0.46 * index / max(1, count - 1)) + rng.gauss(0, 0.01)
        for side in (1, -1):
            inner, bend = body.at(side * 0.16, v0 + (v1 - v0) * 0.25), body.at(side * 0.5, v0 + (v1 - v0) * 0.8)
            lines.append((inner, bend, body.at(side * 0.88, v1)))
    shapes: list[Shape] = [strokes(lines, Stroke(tone, wide, opacity))]
    if row.flag("groove", True):
        shapes.append(
            strokes([(body.at(0, v0 - 0.05), body.at(0, v0 + 0.06))], Stroke("ink", max(0.3, wide * 0.8), 0.85))
        )
    return shapes


def _head_groove(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """The curved V that sets the head apart from the rest of a carapace."""
    v, tone = row.number("at", 0.5), row.color("color", "ink")
    width = row.number("wide", 0.014) * body.width
    lines = [
        (body.at(side * 0.04, v), body.at(side * 0.42, v - 0.12), body.at(side * 0.86, v - 0.25)) for side in (1, -1)
    ]
    return [strokes(lines, Stroke(tone, max(0.22, width), row.number("opacity", 0.6)))]


def _lines(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """One line through `points`; with `pair`, also mirrored; `wide` as a part of the body's width."""
    points = _pairs(row, "points")
    pen = Stroke(row.color("color", "ink"), row.number("wide", 0.02) * body.width, row.number("opacity", 0.9))
    sides = (1, -1) if row.flag("pair") else (1,)
    drawn: list[Shape] = []
    for side in sides:
        path = [body.at(u * side, v) for u, v in _shaken(points, rng)]
        drawn.append(smooth(path, stroke=pen) if len(path) > 2 else polyline(path, stroke=pen))
    return drawn


def _margin(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """A stripe along each side edge from v `from` to `to`, reaching in to u = `inner`."""
    start, end, inner = row.number("from", 0.1), row.number("to", 0.95), row.number("inner", 0.75)
    outer = row.number("outer", 0.97)
    tone, opacity = row.color("color", "paper"), row.number("opacity", 0.85)
    shapes: list[Shape] = []
    for side in (1, -1):
        out = body.edge(start, end, side * outer, 9)
        back = [body.at(side * (inner + rng.gauss(0, 0.012)), end - (end - start) * index / 9) for index in range(10)]
        shapes.append(smooth([*out, *back], closed=True, fill=tone, opacity=opacity, tension=0.8))
    return shapes


def _violin(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """The violin: a broad body behind the eyes and a narrow neck running back to the groove."""
    right = [
        (0.0, 0.13), (0.3, 0.14), (0.42, 0.2), (0.36, 0.29), (0.27, 0.35), (0.3, 0.41), (0.33, 0.46), (0.22, 0.52),
        (0.085, 0.56), (0.06, 0.66), (0.055, 0.76), (0.045, 0.83), (0.0, 0.86),
    ]  # fmt: skip
    ring = right + [(-u, v) for u, v in reversed(right[1:-1])]
    path = [body.at(u, v) for u, v in _shaken(ring, rng, 0.004)]
    tone = row.color("color", "#4A2A18")
    return [smooth(path, closed=True, fill=tone, opacity=row.number("opacity", 0.95), tension=0.8)]


def _plates(body: Body, row: Settings, rng: random.Random) -> list[Shape]:
    """Bright plates that mirror the light: `count`; white, some bluish, with a fine dark edge."""
    shapes: list[Shape] = []
    columns = (0.0, -0.36, 0.36, -0.7, 0.7)
    count = row.whole("count", 20, most=60)
    for index in range(count):
        u = columns[index % 5] + rng.uniform(-0.05, 0.05)
        v = 0.12 + 0.76 * (index // 5 + 0.5 * (index % 2)) / max(1, math.ceil(count / 5) - 0.5)
        wide, high = body.width * rng.uniform(0.085, 0.115), body.length * rng.uniform(0.05, 0.07)
        tone = rng.choice(("#FFFFFF", "#FFFFFF", "#E6F0F6"))
        shapes.append(Ellipse(body.at(u, min(0.9, v)), wide, high, tone, Stroke("#7E8A96", 0.16, 0.8), 0.92,
                              turn=rng.uniform(-20, 20)))  # fmt: skip
    return shapes


KINDS: dict[str, Maker] = {
    "area": _area,
    "bands": _bands,
    "chevrons": _chevrons,
    "folium": _folium,
    "head-groove": _head_groove,
    "humps": _humps,
    "line": _lines,
    "margin": _margin,
    "plates": _plates,
    "rays": _rays,
    "speckle": _speckle,
    "spots": _spots,
    "violin": _violin,
}
"""Kind of mark to its maker."""
