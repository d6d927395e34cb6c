"""Webs of closed silk: sheets with a tube, woolly webs round a hole, small silk tubes."""

from __future__ import annotations

import math
import random

from keyapp.pictures.part import Profile, ground_shadow, sampled
from keyapp.pictures.shape import (
    Circle,
    Ellipse,
    Group,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    smooth,
    strokes,
)
from keyapp.pictures.silk import Thread, bark, corner, grass, soil, threads, wool
from keyapp.pictures.style import globe, pen

__all__ = ["sheet_parts", "silk_tube_parts", "woolly_parts"]


def sheet_parts(rng: random.Random) -> list[Shape]:
    items: list[Shape] = [soil(40, rng)]
    for x, count, high, spread in ((9, 8, 22, 4), (80, 16, 22, 8), (56, 12, 16, 12)):
        items.append(grass((x, 42), rng, count=count, spread=spread, high=high))
    # A stone at the back left, the tube running in under it.
    stone = [(8, 45), (9, 33), (17, 25), (29, 22.6), (40, 26), (45, 34), (44, 42), (38, 46), (24, 47)]
    items.append(
        Group(
            (
                smooth(stone, closed=True, fill=globe((24, 34), 22, "#9C968C"), stroke=pen("outline")),
                strokes(
                    [((16, 31), (22, 29), (26, 31)), ((30, 27), (36, 29), (38, 33)), ((14, 38), (18, 37), (21, 39))],
                    pen("fine", opacity=0.5),
                ),
            ),
            name="stone",
        )
    )
    mouth = (31.0, 44.5)
    sheet: list[Point] = [
        (26, 49.5),
        (15, 55),
        (6, 64),
        (7, 76),
        (20, 85),
        (42, 90),
        (66, 89),
        (86, 82),
        (95, 70),
        (92, 58),
        (80, 51),
        (60, 47.5),
        (42, 47.2),
    ]
    fill = RadialGradient((38, 56), 62, (Stop(0, "white", 0.96), Stop(0.6, "#F6F3EC", 0.85), Stop(1, "#E9E3D6", 0.75)))
    items.append(smooth(sheet, closed=True, fill=fill, stroke=pen("fine", "silk")))
    inside = sampled([*sheet, sheet[0]], 8)
    weave: list[Thread] = []
    for _ in range(260):
        one, two = rng.choice(inside), rng.choice(inside)
        if math.dist(one, two) < 14:
            continue
        a, b = sorted((rng.random(), rng.random()))
        p = (one[0] + (two[0] - one[0]) * a, one[1] + (two[1] - one[1]) * a)
        q = (one[0] + (two[0] - one[0]) * b, one[1] + (two[1] - one[1]) * b)
        weave.append((p, ((p[0] + q[0]) / 2, (p[1] + q[1]) / 2 + 0.7), q))
    items.append(threads(weave, 0.15, "ink-soft", 0.5, "sheet-thread"))
    drawn: list[Thread] = []
    for index in range(0, len(inside), 1):
        edge = inside[index]
        drawn.append(
            (
                edge,
                ((edge[0] + mouth[0] * 2) / 3 + rng.uniform(-2, 2), (edge[1] + (mouth[1] + 4) * 2) / 3 + 1.4),
                (mouth[0] + rng.uniform(-5.6, 5.6), mouth[1] + rng.uniform(0.5, 4.2)),
            )
        )
    items.append(threads(drawn, 0.17, "ink-soft", 0.55, "sheet-thread"))
    funnel: list[Point] = [
        (17.5, 53.5),
        (22.2, 46),
        (24.6, 40.6),
        (31, 37.6),
        (37.6, 40.4),
        (40.2, 46),
        (47, 51.4),
        (40, 54.2),
        (30, 55.6),
        (22, 55),
    ]
    items.append(smooth(funnel, closed=True, fill="#F4F0E7", stroke=pen("fine", "silk"), opacity=0.95))
    hole = RadialGradient((31, 43), 8.6, (Stop(0, "#15100C"), Stop(0.6, "#2C231B"), Stop(1, "#6B5F52")))
    items.append(Group((Ellipse((31, 44.6), 7.4, 5.6, hole, pen("line", "ink-soft")),), name="tube-mouth"))
    rings = [
        Ellipse((31, 44.8 + k * 0.6), 7.8 + k, 5.9 + k * 0.8, None, Stroke("ink-soft", 0.2, 0.7))
        for k in (0.4, 1.4, 2.6, 4.0)
    ]
    items.append(Group(tuple(rings)))
    rays = []
    for step in range(30):
        angle = math.radians(step * 12)
        rays.append(
            (
                (31 + math.cos(angle) * 7, 44.6 + math.sin(angle) * 5.2),
                (31 + math.cos(angle) * 13, 46 + math.sin(angle) * 8.4),
            )
        )
    items.append(threads(rays, 0.18, "ink-soft", 0.7))
    knock: list[Thread] = []
    for _ in range(34):
        foot = rng.uniform(16, 86)
        knock.append(((foot, rng.uniform(50, 74)), (foot + rng.uniform(-6, 6), rng.uniform(14, 44))))
    items.append(threads(knock, 0.15, "ink-soft", 0.5, "knock-down-thread"))
    for left, low, count in ((14, 89, 7), (86, 93, 7), (48, 98, 9), (72, 97, 6)):
        items.append(grass((left, low), rng, count=count, spread=5, high=17))
    return items


def woolly_parts(rng: random.Random) -> list[Shape]:
    items: list[Shape] = [bark(rng)]
    hole = (48.0, 47.0)
    crack = [
        (47, 4),
        (49.4, 16),
        (46.2, 27),
        (48.6, 37),
        (53, 42.6),
        (55.6, 48),
        (52.6, 53.6),
        (49.8, 58),
        (51.4, 72),
        (48.6, 84),
        (49.4, 97),
        (47.6, 97),
        (46.8, 84),
        (48.6, 72),
        (46.4, 58),
        (42.4, 52.6),
        (41.2, 46.6),
        (43.8, 41.6),
        (46, 37),
        (44, 27),
        (47, 16),
    ]
    items.append(Group((smooth(crack, closed=True, fill="#2A2019", stroke=pen("line"), tension=0.8),), name="crack"))
    angles, at = [], rng.uniform(0, 12)
    while at < 356:
        angles.append(at)
        at += rng.uniform(11, 19)
    reach = [rng.uniform(27, 43) for _ in angles]
    spoke: list[Thread] = []
    steps: list[Thread] = []

    def spot(degrees: float, far: float) -> Point:
        return hole[0] + math.sin(math.radians(degrees)) * far, hole[1] - math.cos(math.radians(degrees)) * far

    lines = []
    for degrees, far in zip(angles, reach, strict=True):
        bend = rng.uniform(-7, 7)
        line = [spot(degrees, 5.6), spot(degrees + bend * 0.5, far * 0.5), spot(degrees + bend, far)]
        lines.append(sampled(line, 7))
        spoke.append(tuple(line))
    for index, line in enumerate(lines):
        other = lines[(index + 1) % len(lines)]
        count = min(len(line), len(other))
        up = 1
        while up < count - 1:
            step = rng.choice((1, 1, 2))
            one, two = line[up], other[min(count - 1, up + rng.choice((0, 1, 1)))]
            if rng.random() < 0.86:
                sag = ((one[0] + two[0]) / 2 + rng.uniform(-0.9, 0.9), (one[1] + two[1]) / 2 + rng.uniform(-0.9, 0.9))
                steps.append((one, sag, two))
                if rng.random() < 0.5:
                    steps.append(
                        (
                            two,
                            (
                                (two[0] + line[min(count - 1, up + 1)][0]) / 2,
                                (two[1] + line[min(count - 1, up + 1)][1]) / 2,
                            ),
                            line[min(count - 1, up + 1)],
                        )
                    )
            up += step
    items.append(
        Circle(
            hole, 38, RadialGradient(hole, 38, (Stop(0, "white", 0.6), Stop(0.5, "white", 0.42), Stop(1, "white", 0.0)))
        )
    )
    items.append(wool(steps, rng, width=0.95, tone="#8B8F99"))
    items.append(threads(spoke, 0.36, "#6B6A70", 0.95, "spoke"))
    mouth = RadialGradient(hole, 7.2, (Stop(0, "#0F0B08"), Stop(0.7, "#231A14"), Stop(1, "#4A3D33")))
    items.append(Group((Ellipse((48, 47), 6.2, 6.8, mouth, pen("line", "ink-soft")),), name="hole"))
    collar: list[Thread] = []
    for far in (6.3, 7.4, 8.8):
        ring_line = [spot(a, far * rng.uniform(0.94, 1.08)) for a in range(0, 360, 24)]
        collar.append((*ring_line, ring_line[0]))
    items.append(wool(collar, rng, width=0.8, tone="#8B8F99"))
    return items


def silk_tube_parts(rng: random.Random) -> list[Shape]:
    # High in the corner of a room, where two walls meet the ceiling.
    items: list[Shape] = [corner((50.0, 30.0), rng, floor=False)]
    shape: list[Point] = [
        (26, 37),
        (32, 30),
        (44, 26.6),
        (58, 27.4),
        (70, 31.6),
        (76.4, 38),
        (72, 46),
        (60, 51),
        (46, 51.4),
        (32, 46),
    ]
    body = Profile(tuple((y, half) for y, half in ((26.6, 6), (32, 18), (38, 24), (45, 20), (51, 6))), 51)
    ties: list[Thread] = []
    for step in range(64):
        angle = 2 * math.pi * step / 64 + rng.uniform(-0.04, 0.04)
        x, y = 51 + math.cos(angle) * 24.6, 39 + math.sin(angle) * 12
        far = rng.uniform(3, 8)
        ties.append(((x, y), (x + math.cos(angle) * far, y + math.sin(angle) * far * 0.8)))
    items.append(ground_shadow((52, 47), 27, 8.5, 0.2))
    items.append(threads(ties, 0.2, "ink-soft", 0.7, "tie"))
    fill = globe((50, 38), 26, "#F3EFE6", depth=0.26, shine=0.8)
    items.append(Group((smooth(shape, closed=True, fill=fill, stroke=pen("line", "ink-soft")),), name="silk-tube"))
    shade = Group(
        (Ellipse((54, 39.4), 10.6, 4.6, "#8A7355", None, 0.26), Ellipse((44.4, 38.4), 5.2, 3.6, "#8A7355", None, 0.26)),
        name="inside",
    )
    items.append(shade)
    wrap: list[Thread] = []
    for _ in range(170):
        u, v = rng.uniform(-0.95, 0.95), rng.uniform(0.05, 0.95)
        x, y = body.at(u, v)
        slope = rng.uniform(-2.6, 2.6)
        wide = rng.uniform(2.6, 7) * (1 - 0.55 * abs(u))
        wrap.append(((max(27, x - wide), y - slope * 0.4), (x, y + 0.7), (min(75, x + wide), y + slope * 0.4)))
    items.append(threads(wrap, 0.16, "ink-soft", 0.5, "wrap"))
    items.append(
        Group((Ellipse((74.6, 38.6), 1.7, 3.4, "#3A3028", pen("fine", "ink-soft"), 0.75, turn=-8),), name="slit")
    )
    return items
