"""Burrows and silk tubes without their makers: open holes, lids, folding collars, a tube up a trunk."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence

from keyapp.pictures.brood import spiderling
from keyapp.pictures.part import framed, ground_shadow, put, sampled
from keyapp.pictures.purse import purse_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Ellipse,
    Group,
    LinearGradient,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    placed,
    smooth,
    strokes,
)
from keyapp.pictures.silk import Thread, grass, soil, threads
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "burrow"]

_VIEW = 0.56
"""Height of a circle on the ground over its width: the ground is seen from above at a slant."""


def _on_rim(at: Point, rx: float, degrees: float, far: float = 1.0) -> Point:
    # A point of a circle on the ground, degrees from the right, downwards on the page.
    turn = math.radians(degrees)
    return at[0] + math.cos(turn) * rx * far, at[1] + math.sin(turn) * rx * far * _VIEW


def _arc(at: Point, rx: float, first: float, last: float, far: float = 1.0, steps: int = 10) -> list[Point]:
    return [_on_rim(at, rx, first + (last - first) * k / steps, far) for k in range(steps + 1)]


def _litter(rng: random.Random, clear: Sequence[tuple[Point, float]], top: float, count: int = 26) -> list[Shape]:
    # Pebbles, bits of straw and crumbs on the ground, none on the places in `clear` (middle, radius).
    items: list[Shape] = []
    straw: list[Thread] = []
    made = 0
    while made < count:
        x, y = rng.uniform(3, 97), rng.uniform(top + 4, 96)
        if any(math.hypot(x - at[0], (y - at[1]) / _VIEW) < r for at, r in clear):
            continue
        made += 1
        if made % 3 == 0:
            turn = rng.uniform(0, math.pi)
            long = rng.uniform(2, 5)
            end = (min(98, x + math.cos(turn) * long), min(98, y + math.sin(turn) * long * _VIEW))
            straw.append(((x, y), end))
        else:
            r = rng.uniform(0.5, 1.5)
            tone = blend("#A79A88", "#7C6549", rng.random())
            items.append(Ellipse((x, y), r, r * 0.65, globe((x, y), r, tone), pen("fine", "ink-soft")))
    return [strokes(straw, Stroke("#7A6238", 0.55, 0.8)), *items]


def _ground(rng: random.Random, clear: Sequence[tuple[Point, float]], top: float = 24.0) -> list[Shape]:
    items: list[Shape] = [soil(top, rng)]
    for x in (9, 36, 66, 92):
        items.append(grass((x, top + 1.5), rng, count=5, spread=7, high=17))
    return [*items, *_litter(rng, clear, top)]


def _shaft(at: Point, rx: float, rng: random.Random, *, silk: float = 0.8) -> list[Shape]:
    # The hole: the far wall shows, lined with silk, and goes down into the dark.
    ry = rx * _VIEW
    deep = LinearGradient(
        (at[0], at[1] - ry),
        (at[0], at[1] + ry),
        (Stop(0, "#8D7A63"), Stop(0.3, "#4C3D2F"), Stop(0.62, "#1C140E"), Stop(1, "#0F0A07")),
    )
    lining: list[Thread] = []
    for k in range(40):
        one = _on_rim(at, rx, 190 + k * 4 + rng.uniform(-2, 2), 0.97)
        drop = ry * rng.uniform(0.2, 0.62) * (0.45 + 0.55 * math.sin(math.radians(10 + k * 4)))
        lining.append((one, (one[0] + (at[0] - one[0]) * 0.1 + rng.uniform(-1, 1), one[1] + drop)))
    return [
        Ellipse(at, rx, ry, deep, pen("outline")),
        threads(lining, 0.24, "#EDE6D8", silk, "lining"),
    ]


def _silk_rim(at: Point, rx: float, rng: random.Random, *, wide: float = 0.3) -> list[Shape]:
    fan: list[Thread] = []
    for k in range(70):
        angle = k * 360 / 70 + rng.uniform(-2, 2)
        fan.append((_on_rim(at, rx, angle, 0.94), _on_rim(at, rx, angle + rng.uniform(-9, 9), 1 + wide * rng.random())))
    loops = [[*_arc(at, rx, 0, 360, far, 30)] for far in (0.98, 1.04, 1.1)]
    band = Ellipse(at, rx * 1.09, rx * 1.09 * _VIEW, None, Stroke("#F4EFE4", rx * 0.13, 0.75))
    return [
        band,
        threads(fan, 0.3, "#FFFFFF", 0.9, "rim"),
        strokes(loops, Stroke("ink-soft", 0.2, 0.7)),
        threads(fan[::2], 0.15, "ink-soft", 0.7, "rim"),
    ]


def _turret(at: Point, rx: float, rng: random.Random, *, back: bool) -> list[Shape]:
    # A low wall of twigs and grass laid round the hole like the sides of a nest.
    items: list[Shape] = []
    span = (184, 356) if back else (-4, 184)
    for row in range(2 if back else 4):
        for k in range(9):
            angle = span[0] + (span[1] - span[0]) * (k + rng.random()) / 9
            far = 1.1 + rng.uniform(-0.05, 0.07)
            x, y = _on_rim(at, rx, angle, far)
            y += 1.8 - row * 1.9 if not back else -row * 1.7
            ahead = math.degrees(math.atan2(math.cos(math.radians(angle)) * _VIEW, -math.sin(math.radians(angle))))
            half = rng.uniform(2.8, 4.8)
            tone = blend("#8A6B42", "#CDB583", rng.random())
            line = put([(-half, 0), (half, 0)], (x, y), ahead + rng.uniform(-16, 16))
            items.append(strokes([line], Stroke("ink", 2.0)))
            items.append(strokes([line], Stroke(tone, 1.6)))
    return items


def _open(rng: random.Random, wide: bool, at: Point, rx: float) -> list[Shape]:
    items = _ground(rng, [(at, rx * 1.6)])
    if wide:
        return [
            *items,
            ground_shadow((at[0] + 1, at[1] + 3), rx * 1.5, rx * 0.85, 0.32),
            *_turret(at, rx, rng, back=True),
            *_shaft(at, rx, rng),
            *_turret(at, rx, rng, back=False),
        ]
    return [*items, *_shaft(at, rx, rng), *_silk_rim(at, rx, rng)]


def _speckled(at: Point, rx: float, rng: random.Random, count: int, green: float = 0.3) -> Group:
    # Soil, needles and moss stuck on silk.
    bits: list[Shape] = []
    for _ in range(count):
        x, y = _on_rim(at, rx, rng.uniform(0, 360), 0.94 * math.sqrt(rng.random()))
        tone = "#7C9152" if rng.random() < green else blend("#6B543A", "#B89D76", rng.random())
        bits.append(Ellipse((x, y), rng.uniform(0.3, 0.9), rng.uniform(0.25, 0.5), tone))
    return Group(tuple(bits), name="soil")


def _lid_open(at: Point, rx: float, rng: random.Random) -> list[Shape]:
    # The lid stands up behind the hole on its hinge; its silk-lined underside faces us, soil shows at its edge.
    x, y = at
    back = y - rx * _VIEW
    high = rx * 0.84
    middle = (x, back - high * 0.92)
    hinge = [
        (x - rx * 0.62, back + 1.6),
        (x - rx * 0.6, back - 4),
        (x + rx * 0.6, back - 4),
        (x + rx * 0.62, back + 1.6),
    ]
    face = RadialGradient(middle, rx, (Stop(0, "#FFFFFF"), Stop(0.7, "#F1EADC"), Stop(1, "#CFC3AE")))
    weave: list[Thread] = []
    for _ in range(60):
        turn, far = rng.uniform(0, 360), 0.86 * math.sqrt(rng.random())
        one = (
            middle[0] + math.cos(math.radians(turn)) * rx * far,
            middle[1] + math.sin(math.radians(turn)) * high * far,
        )
        side = math.radians(turn + 90)
        long = rng.uniform(2, 4.5) * (0.5 + far)
        weave.append((one, (one[0] + math.cos(side) * long * 0.9, one[1] + math.sin(side) * long * 0.7)))
    crumbs = [
        Circle(
            (
                middle[0] + math.cos(math.radians(a)) * (rx + 1.6),
                middle[1] - 1.2 + math.sin(math.radians(a)) * (high + 1.8),
            ),
            rng.uniform(0.5, 1.1),
            blend("#6B543A", "#A98D66", rng.random()),
            pen("hair"),
        )
        for a in range(165, 376, 5)
    ]
    return [
        ground_shadow((x + 3, back - 2), rx * 1.4, 6, 0.3),
        *_shaft(at, rx, rng),
        *_silk_rim(at, rx, rng, wide=0.16),
        Group((smooth(hinge, closed=True, fill="#E9E0CF", stroke=pen("line", "ink-soft"), tension=0.3),), name="hinge"),
        Ellipse((middle[0], middle[1] - 1.2), rx + 2.4, high + 2.4, globe(middle, rx + 2, "#8C7150"), pen("outline")),
        Group(tuple(crumbs), name="soil"),
        Group((Ellipse(middle, rx * 0.96, high * 0.95, face, pen("line")),), name="lid"),
        threads(weave, 0.18, "ink-soft", 0.6, "weave"),
        Ellipse(middle, rx * 0.78, high * 0.77, None, Stroke("ink-soft", 0.22, 0.6)),
    ]


def _lid_shut(at: Point, rx: float, rng: random.Random) -> list[Shape]:
    seam = _arc(at, rx, -60, 240, 1.0, 30)
    return [
        Ellipse(at, rx, rx * _VIEW, globe(at, rx, "#C3AB8A", depth=0.16, shine=0.15)),
        _speckled(at, rx, rng, 46, 0.12),
        strokes([seam], Stroke("#2A1E14", 0.65)),
        strokes([_arc(at, rx, 248, 292, 1.0, 8)], Stroke("#F4EFE4", 0.9)),
    ]


def _lidded(rng: random.Random, wide: bool) -> list[Shape]:
    if not wide:
        at = (50.0, 72.0)
        return [*_ground(rng, [(at, 36), ((50, 48), 34)]), *_lid_open(at, 22, rng)]
    at, shut = (36.0, 71.0), (79.0, 53.0)
    return [*_ground(rng, [(at, 28), ((36, 52), 28), (shut, 17)]), *_lid_open(at, 17, rng), *_lid_shut(shut, 13, rng)]


def _flaps(at: Point, rx: float, rng: random.Random, spread: float) -> list[Shape]:
    # Two half-round flaps of silk, hinged at the sides of the hole and folded back; soil and moss on their outside.
    items: list[Shape] = [ground_shadow((at[0], at[1] + 3), rx * 1.7, rx * 0.8, 0.3), *_shaft(at, rx, rng, silk=0.6)]
    for side in (-1, 1):
        hinge = [(at[0] + side * (x - at[0]), y) for x, y in _arc(at, rx, -84, 84)]
        lift = rx * 0.62
        tip = (at[0] + side * rx * (1 + spread * 0.5), at[1] - lift)
        free = [
            (at[0] + side * rx * (0.62 + spread * 0.42), at[1] + rx * 0.3),
            (tip[0] + side * rx * 0.06, tip[1] + lift * 0.46),
            tip,
            (at[0] + side * rx * (0.66 + spread * 0.3), at[1] - rx * 0.92),
            (at[0] + side * rx * 0.28, at[1] - rx * 0.82),
        ]
        outline = [*hinge, *free]
        outer = [(x + side * 1.5, y - 0.9) for x, y in outline]
        fill = LinearGradient(
            (at[0] + side * rx * 0.7, at[1]), tip, (Stop(0, "#B9AB94"), Stop(0.45, "#F1EADC"), Stop(1, "#FFFFFF"))
        )
        weave: list[Thread] = []
        for k in range(1, 10):
            root = hinge[k]
            goal = sampled([*reversed(free)], 4)[2 * k - 2]
            weave.append((root, ((root[0] + goal[0]) / 2 + side * 1.6, (root[1] + goal[1]) / 2 - 0.6), goal))
        edge = sampled(free, 5)
        bits = []
        for k in range(34):
            x, y = edge[k % len(edge)]
            tone = "#7C9152" if k % 3 == 0 else blend("#6B543A", "#A98D66", rng.random())
            spot = (x + side * rng.uniform(0.2, 2.2), y + rng.uniform(-1.5, 0.7))
            bits.append(Ellipse(spot, rng.uniform(0.6, 1.3), rng.uniform(0.4, 0.9), tone, pen("hair")))
        items += [
            smooth(outer, closed=True, fill="#8C7150", stroke=pen("outline")),
            Group(tuple(bits), name="soil"),
            Group((smooth(outline, closed=True, fill=fill, stroke=pen("line")),), name="flap"),
            threads(weave, 0.22, "ink-soft", 0.6, "weave"),
        ]
    return items


def _flaps_shut(at: Point, rx: float, rng: random.Random) -> list[Shape]:
    dome = [(x, y + 0.36 * min(0.0, y - at[1])) for x, y in _arc(at, rx, 0, 345, steps=23)]
    seam = [
        (at[0] - 0.4, at[1] - rx * 0.75),
        (at[0] + 0.7, at[1] - rx * 0.24),
        (at[0] - 0.6, at[1] + rx * 0.2),
        (at[0], at[1] + rx * _VIEW),
    ]
    return [
        ground_shadow((at[0] + 1, at[1] + 2), rx * 1.3, rx * 0.75, 0.3),
        smooth(dome, closed=True, fill=globe(at, rx * 1.1, "#B59C79", depth=0.35), stroke=pen("line")),
        _speckled((at[0], at[1] - rx * 0.12), rx * 0.92, rng, 60, 0.4),
        strokes([sampled(seam)], Stroke("#F4EFE4", 1.5)),
        strokes([sampled(seam)], Stroke("#2A1E14", 0.7)),
    ]


def _folding(rng: random.Random, wide: bool) -> list[Shape]:
    if not wide:
        at = (50.0, 66.0)
        return [*_ground(rng, [(at, 46), ((50, 52), 40)]), *_flaps(at, 21, rng, 1.0)]
    at, shut = (37.0, 70.0), (80.0, 50.0)
    return [
        *_ground(rng, [(at, 33), ((37, 60), 30), (shut, 18)]),
        *_flaps(at, 15, rng, 1.0),
        *_flaps_shut(shut, 11.5, rng),
    ]


def _none(rng: random.Random) -> list[Shape]:
    at = (48.0, 64.0)
    dashes = [_arc(at, 33, k * 18, k * 18 + 10, 1.0, 3) for k in range(20)]
    return [
        *_ground(rng, [((66, 62), 9)]),
        Group((strokes(dashes, pen("ring", "paper", times=2.2, opacity=0.75)),), name="empty"),
        Group((strokes(dashes, pen("ring", "look")),), name="empty"),
        ground_shadow((66.5, 63.5), 8, 4, 0.25),
        spiderling((66, 62), 9.0, 64, "#8A6B4C", rng),
    ]


def burrow(values: Mapping[str, object]) -> Drawing:
    """Recipe `burrow`: a hole or tube on its own.

    Settings: kind open-hole|lid|folding-collar|tube-up-trunk|none, wide (the larger scene), at and radius (of an open
    hole), ring, bar-mm, hole-mm (how wide the hole is), seed.
    """
    settings = Settings(values)
    kind = settings.choice("kind", ("open-hole", "lid", "folding-collar", "tube-up-trunk", "none"), "open-hole")
    wide = settings.flag("wide")
    x, y = settings.numbers("at", (50, 62), count=2)
    radius = settings.number("radius", 20, least=5, most=30)
    mark = settings.flag("ring")
    bar = settings.number("bar-mm", 0, least=0, most=100)
    hole = settings.number("hole-mm", 15, least=2, most=80)
    rng = seeded("burrow", kind, settings.whole("seed", 1))
    settings.done()
    across, around = 2 * radius, ((x, y), radius * 1.5, radius * 0.98)
    if kind == "open-hole":
        items = _open(rng, wide, (x, y), radius)
    elif kind == "lid":
        items = _lidded(rng, wide)
        across, around = (34.0 if wide else 44.0), ((50, 41), 29.5, 27)
    elif kind == "folding-collar":
        items = _folding(rng, wide)
        across, around = (30.0 if wide else 42.0), ((50, 60), 41, 27)
    elif kind == "tube-up-trunk":
        items = purse_parts(rng, wide)
        across, around = 7.2, ((50, 52), 12, 42)
    else:
        items = _none(rng)
    if mark:
        items.append(ring(*around))
    if bar:
        items.append(placed((scale_bar(bar, across / hole),)))
    return framed(items)


RECIPES = {"burrow": burrow}
