"""Pillbugs and pill millipedes seen obliquely, walking, and closed up into a ball."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from keyapp.pictures.arched import Spot, View, arch, shell, stride
from keyapp.pictures.part import ribbon
from keyapp.pictures.shape import (
    Circle,
    Group,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend, pen
from keyapp.pictures.track import Legs, polygon

__all__ = ["ball", "pill_millipede", "pillbug_oblique"]


def _plated(
    view: View,
    section: Sequence[Point],
    spine: Sequence[tuple[float, float, float]],
    tones: Sequence[str],
    *,
    lift: float,
    drop: float,
    shine: float,
    rim: str | None = None,
) -> list[Shape]:
    made: list[Shape] = []
    for index in range(len(spine) - 2, -1, -1):
        (z0, w0, h0), (z1, w1, h1) = spine[index], spine[index + 1]
        made.append(
            shell(
                view,
                section,
                ((z0, w0, h0, lift), (z1 + (z1 - z0) * 0.06, w1 * 1.03, h1 * 1.03, lift)),
                tones[index],
                shine=shine,
                drop=drop,
                rim=rim if index < len(spine) - 2 else None,
            )
        )
    return made


def _feeler(view: View, spots: Sequence[Spot], tone: str, wide: float) -> Group:
    flat = [view.flat(spot) for spot in spots]
    made = [
        ribbon(
            [one, two], (wide * (1 - 0.14 * k), wide * (0.88 - 0.14 * k)), tone, Stroke(blend(tone, "ink", 0.8), 0.25)
        )
        for k, (one, two) in enumerate(itertools.pairwise(flat))
    ]
    return Group(tuple(made), name="feeler")


def _bug(
    section: Sequence[Point], tone: str, halves: Sequence[tuple[float, float]], high: float, view: View
) -> list[Shape]:
    """A pillbug: head, seven broad plates, five narrow ones, a tail plate; seven legs on each side."""
    zs = [0.0, 6.2, 12.0, 17.8, 23.6, 29.4, 35.2, 40.8, 43.2, 45.6, 48.0, 50.3, 52.4, 56.5]
    spine = []
    for z in zs:
        t = z / zs[-1]
        low = max(k for k, (at, _) in enumerate(halves) if at <= t + 1e-9)
        nxt = min(low + 1, len(halves) - 1)
        (ta, wa), (tb, wb) = halves[low], halves[nxt]
        wide = wa + (wb - wa) * ((t - ta) / ((tb - ta) or 1))
        spine.append((z, wide, high * (wide / 12.5) ** 0.8))
    legs = Legs(blend(tone, "#D9D3C6", 0.5), outline=0.3)
    for side in (-1, 1):
        for k in range(6, -1, -1):
            z = (zs[k] + zs[k + 1]) / 2
            stride(view, legs, (side * spine[k][1] * 0.82, 3.8, z), side, 5.0, 4.6, (k - 2.5) * 1.0, 1.6)
    items: list[Shape] = [*legs.shapes()]
    tones = [blend(tone, "#2A2620", 0.08 if k % 2 else 0.0) for k in range(13)]
    shells = _plated(view, section, spine, tones, lift=3.6, drop=1.3, shine=1.1)
    items += shells[:-1]
    brow = view.flat((0, 3.6 + high * 0.36, -1.2))
    far = [(-3.2, 4.2, -2.0), (-5.2, 6.4, -5.2), (-8.4, 5.2, -8.2), (-9.6, 3.2, -12.5), (-10.0, 2.0, -14.5)]
    items.append(_feeler(view, far, blend(tone, "#2A2620", 0.2), 1.5))
    items.append(shells[-1])
    head = RadialGradient(
        brow, 8.0, (Stop(0, blend(tone, "#FFFFFF", 0.2)), Stop(0.5, tone), Stop(1, blend(tone, "#1A100A", 0.6)))
    )
    w, h = spine[0][1] * 0.86, spine[0][2] * 0.8
    front = [view.flat((x * w, y * h + 3.6, -0.6)) for x, y in section]
    chin = [view.flat((x * w, 3.0, -1.6)) for x in (0.5, 0.0, -0.5)]
    mouth = [view.flat((x * spine[0][1], y * spine[0][2] + 3.6, 0.1)) for x, y in section]
    items.append(polygon(mouth, blend(tone, "#1A100A", 0.6), pen("line")))
    items.append(Group((polygon([*front, *chin], head, pen("outline")),), name="head"))
    for side in (-1, 1):
        spot = view.flat((side * w * 0.78, h * 0.55 + 3.6, -1.0))
        items.append(
            Group(
                (Circle(spot, 0.75, "black", pen("hair")), Circle((spot[0] - 0.2, spot[1] - 0.25), 0.2, "white")),
                name="eye",
            )
        )
    near = [(3.2, 4.2, -1.4), (5.6, 6.8, -4.2), (9.4, 5.4, -6.0), (11.6, 3.4, -9.5), (12.6, 2.2, -11.5)]
    items.append(_feeler(view, near, blend(tone, "#2A2620", 0.1), 1.6))
    return items


def pillbug_oblique(view: View | None = None, tone: str = "#6E7478") -> list[Shape]:
    """A pillbug walking, high and arched, blunt at the tail."""
    halves = ((0, 9.2), (0.12, 11.4), (0.4, 12.5), (0.68, 12.2), (0.8, 11.0), (0.92, 8.6), (1, 4.6))
    return _bug(arch(), tone, halves, 13.2, view or View(62, 30))


def pill_millipede(view: View | None = None, tone: str = "#5E4330") -> list[Shape]:
    """A pill millipede walking: a collar, eleven glossy plates, the second and the last large; many short legs."""
    view = view or View(64, 28)
    zs = [0.0, 2.2, 9.0, 13.4, 17.8, 22.2, 26.6, 31.0, 35.4, 39.8, 44.0, 47.6, 54.0]
    wides = [5.4, 7.4, 9.8, 10.6, 10.9, 11.1, 11.1, 11.0, 10.8, 10.4, 9.8, 9.0, 3.4]
    spine = [(z, w, w * 1.08) for z, w in zip(zs, wides, strict=True)]
    legs = Legs("#C79A66", outline=0.22)
    for side in (-1, 1):
        for k in range(16, -1, -1):
            z = 4 + k * 2.72
            low = max(i for i, at in enumerate(zs) if at <= z)
            stride(view, legs, (side * wides[low] * 0.8, 2.4, z), side, 3.4, 2.5, math.sin(k * 0.8) * 1.4, 0.95)
    items = legs.shapes()
    tones = [blend(tone, "#C9955A", 0.16 if k % 2 else 0.0) for k in range(12)]
    shells = _plated(view, arch(), spine, tones, lift=2.4, drop=0.4, shine=1.5, rim="#E0BC88")
    items += shells
    mouth = [view.flat((x * wides[0], y * wides[0] * 1.08 + 2.4, 0.1)) for x, y in arch()]
    items.append(polygon(mouth, blend(tone, "#1A100A", 0.6), pen("line")))
    w, h = 4.9, 5.6
    front = [view.flat((x * w, y * h + 1.8, -0.5)) for x, y in arch()]
    middle = view.flat((0, 5, -0.5))
    head = RadialGradient(
        middle, 6.5, (Stop(0, blend(tone, "#FFFFFF", 0.25)), Stop(0.55, tone), Stop(1, blend(tone, "#1A100A", 0.6)))
    )
    items.append(Group((smooth(front, closed=True, fill=head, stroke=pen("outline"), tension=0.6),), name="head"))
    for side in (-1, 1):
        items.append(
            _feeler(
                view,
                [(side * 2.0, 5.0, -1.0), (side * 3.6, 6.2, -3.4), (side * 5.2, 4.6, -5.4), (side * 5.6, 3.4, -6.6)],
                blend(tone, "#C9955A", 0.4),
                1.2,
            )
        )
        spot = view.flat((side * 3.4, 4.6, -0.9))
        items.append(Group((Circle(spot, 0.55, "black", pen("hair")),), name="eye"))
    return items


def ball(
    centre: Point, radius: float, tone: str, *, narrow: int = 5, shine: float = 0.45, spots: bool = False
) -> Group:
    """An animal closed up into a ball, seen from the side: plates fan out from where head and tail meet."""
    x, y = centre
    hub = (x - radius * 0.08, y + radius * 0.34)
    body = RadialGradient(
        (x - radius * 0.1, y - radius * 0.1),
        radius * 1.2,
        (
            Stop(0, blend(tone, "#FFFFFF", shine)),
            Stop(0.45, tone),
            Stop(0.85, blend(tone, "#1A100A", 0.5)),
            Stop(1, blend(tone, "#1A100A", 0.62)),
        ),
        (x - radius * 0.35, y - radius * 0.45),
    )
    items: list[Shape] = [Circle(centre, radius, body, pen("outline", times=1.2))]
    lines: list[list[Point]] = []
    shades: list[list[Point]] = []
    pale: list[list[Point]] = []
    # Boundaries run from the rim towards the hub; the lower part of the rim is where the tail plates lie.
    broad, close = (7, 9.0) if narrow else (10, 0.0)
    turns = [-210 + (270 - (0 if narrow else -45)) * k / broad for k in range(broad + 1)]
    turns += [turns[-1] + close * (k + 1) for k in range(narrow)]
    for turn in turns:
        for kind, shift in ((lines, 0.0), (shades, 2.2), (pale, -2.2)):
            a = math.radians(turn + shift)
            rim = (x + math.cos(a) * radius * 0.99, y + math.sin(a) * radius * 0.99)
            b = math.radians(turn + shift + 5)
            inner = (hub[0] + math.cos(b) * radius * 0.3, hub[1] + math.sin(b) * radius * 0.22)
            bend = (
                (rim[0] + inner[0]) / 2 + math.cos(a + 1.57) * radius * 0.06,
                (rim[1] + inner[1]) / 2 + math.sin(a + 1.57) * radius * 0.06,
            )
            kind.append([rim, bend, inner])
    items.append(strokes(shades, pen("bold", "#1A100A", opacity=0.3)))
    items.append(strokes(pale, pen("line", "white", opacity=0.3)))
    items.append(strokes(lines, pen("line", times=1.2)))
    tips = []
    for one, two in itertools.pairwise(lines):
        (xa, ya), (xb, yb) = one[2], two[2]
        mx, my = (xa + xb) / 2, (ya + yb) / 2
        tips.append([(xa, ya), (mx + (hub[0] - mx) * 0.55, my + (hub[1] - my) * 0.55), (xb, yb)])
    dark = RadialGradient(
        hub, radius * 0.34, (Stop(0, "#1A100A", 0.85), Stop(0.7, "#1A100A", 0.45), Stop(1, "#1A100A", 0.0))
    )
    items.append(Circle(hub, radius * 0.34, dark))
    items.append(strokes(tips, pen("line", times=1.1)))
    if spots:
        marks = []
        for one, two in itertools.pairwise(lines):
            cx, cy = (one[0][0] + two[0][0]) / 2, (one[0][1] + two[0][1]) / 2
            marks.append(Circle((x + (cx - x) * 0.72, y + (cy - y) * 0.72), radius * 0.035, "#D8D3C8", None, 0.7))
        items.append(Group(tuple(marks)))
    return Group(tuple(items), name="ball")
