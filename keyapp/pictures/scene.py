"""Small scenes: a web low or high on a house, silk pulled with a twig, a place without a web."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Mapping

from keyapp.pictures.part import framed, ground_shadow, sampled
from keyapp.pictures.plain import spider_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Drawing,
    Ellipse,
    Group,
    Point,
    Shape,
    Stroke,
    placed,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.silk import Thread, beads, flat, soil, threads, twig, wool
from keyapp.pictures.style import blend, pen, ring
from keyapp.pictures.texture import seeded
from keyapp.pictures.web import orb_stems

__all__ = ["RECIPES", "no_web", "silk_pulled", "web_height"]


def _person() -> Group:
    # A grown person standing, for size: head, trunk, arms, legs, in one flat tone.
    tone = "#B9AE9E"
    x = 27.0
    left = [
        (x - 1.6, 34.6),
        (x - 6.6, 37),
        (x - 8.2, 46),
        (x - 8.8, 57),
        (x - 7.0, 58.4),
        (x - 5.6, 48),
        (x - 4.8, 44.6),
        (x - 5.2, 58),
        (x - 5.2, 74),
        (x - 5.4, 90.6),
        (x - 7.2, 93.4),
        (x - 1.2, 93.4),
        (x - 1.2, 76),
        (x - 0.2, 61.6),
    ]
    outline = [*left, *[(2 * x - px, py) for px, py in reversed(left)]]
    return Group(
        (
            smooth(outline, closed=True, fill=tone, stroke=pen("line", "ink-soft"), tension=0.7),
            Ellipse((x, 29), 3.7, 4.7, tone, pen("line", "ink-soft")),
        ),
        name="person",
    )


def web_height(values: Mapping[str, object]) -> Drawing:
    """Recipe `web-height`. Settings: height low|high, seed."""
    settings = Settings(values)
    height = settings.choice("height", ("low", "high"), "low")
    rng = seeded("web-height", settings.whole("seed", 1))
    settings.done()
    boards = [((46.5, y), (96, y)) for y in range(24, 86, 6)]
    items: list[Shape] = [
        soil(92, rng),
        flat([(46, 20), (96, 20), (96, 92), (46, 92)], "#EDE3D2"),
        strokes(boards, pen("line", "#CDBFA8")),
        flat([(46, 85), (96, 85), (96, 92), (46, 92)], "#C9BFB0"),
        strokes([((46, 85), (96, 85)), ((46, 20), (46, 92)), ((96, 20), (96, 92))], pen("line", "ink-soft")),
        polyline([(38, 20.5), (46, 12), (99, 4), (99, 20.5)], closed=True, fill="#A0704F", stroke=pen("outline")),
        strokes([((43, 16.6), (99, 9)), ((40.4, 18.8), (99, 14.4))], pen("fine", opacity=0.5)),
        flat([(66, 40), (86, 40), (86, 62), (66, 62)], "#BFD0D3"),
        strokes(
            [
                ((66, 40), (86, 40)),
                ((86, 40), (86, 62)),
                ((86, 62), (66, 62)),
                ((66, 62), (66, 40)),
                ((76, 40), (76, 62)),
                ((66, 51), (86, 51)),
            ],
            pen("outline", "ink-soft"),
        ),
        _person(),
    ]
    dashes = [((x, 75.6), (x + 2.4, 75.6)) for x in range(4, 97, 5)]
    items.append(Group((strokes(dashes, pen("outline", "look")),), name="knee-line"))
    lines: list[Thread] = []
    if height == "low":
        spots = [(54 + rng.gauss(0, 4.4), 85 + rng.gauss(0, 2.8)) for _ in range(26)]
        ends = [
            (46.4, 80),
            (46.4, 88),
            (54, 92),
            (60, 92),
            (49, 92),
            (64, 86),
            (62, 79),
            (50, 77.6),
            (66, 90),
            (57, 77),
        ]
        centre = (55.0, 85.2)
    else:
        spots = [(56 + rng.gauss(0, 4.4), 27 + rng.gauss(0, 2.8)) for _ in range(26)]
        ends = [
            (46.4, 33),
            (46.4, 24),
            (54, 20.6),
            (60, 20.6),
            (49, 20.6),
            (66, 24),
            (64, 33),
            (51, 35),
            (68, 20.6),
            (58, 35),
        ]
        centre = (56.0, 27.0)
    for spot in spots:
        for other in sorted(spots, key=lambda p, s=spot: math.dist(p, s))[1:5]:  # type: ignore[misc]
            lines.append((spot, other))
    for end in ends:
        for other in sorted(spots, key=lambda p, e=end: math.dist(p, e))[:2]:  # type: ignore[misc]
            lines.append((end, other))
    items += [threads(lines, 0.3, "ink", 0.75), ring(centre, 13.5, 10.5)]
    return framed(items)


def silk_pulled(values: Mapping[str, object]) -> Drawing:
    """Recipe `silk-pulled`. Settings: silk coarse-strong|fine-soft|dusty-woolly|sticky-spiral, seed."""
    settings = Settings(values)
    silk = settings.choice("silk", ("coarse-strong", "fine-soft", "dusty-woolly", "sticky-spiral"), "coarse-strong")
    rng = seeded("silk-pulled", silk, settings.whole("seed", 1))
    settings.done()
    tip: Point = (64.0, 52.0)
    stick = twig([(97, 93), (84, 76), (72, 62), tip], 5.2, 2.2, rng)
    items: list[Shape] = []
    if silk == "coarse-strong":
        items += _coarse(tip, stick, rng)
    elif silk == "fine-soft":
        fine: list[Thread] = []
        for _ in range(170):
            y0, y1 = rng.uniform(8, 92), rng.uniform(8, 92)
            sag = rng.uniform(2, 14)
            fine.append(((1.5, y0), (50 + rng.uniform(-24, 24), (y0 + y1) / 2 + sag), (98.5, y1)))
        draped: list[Thread] = [
            (
                (rng.uniform(2, 40), rng.uniform(12, 60)),
                (56, 60 + rng.uniform(-2, 10)),
                (tip[0] + rng.uniform(-1, 5), tip[1] + rng.uniform(-1, 5)),
            )
            for _ in range(34)
        ]
        items += [threads(fine, 0.16, "ink-soft", 0.75), stick, threads(draped, 0.16, "ink-soft", 0.8)]
    elif silk == "dusty-woolly":
        items += _dusty(tip, stick, rng)
    else:
        items += _sticky(tip, stick, rng)
    return framed(items)


def _coarse(tip: Point, stick: Group, rng: random.Random) -> list[Shape]:
    loose: list[Thread] = []
    for _ in range(15):
        one = (rng.choice((2.0, rng.uniform(2, 60))), rng.uniform(4, 96))
        two = (rng.uniform(20, 98), rng.choice((3.0, 97.0)))
        loose.append((one, two))
    taut: list[Thread] = [
        ((x, y), (tip[0] + rng.uniform(-0.8, 0.8), tip[1] + 1.2 + k * 0.8))
        for k, (x, y) in enumerate(((2, 10), (2, 30), (2, 52), (2, 74), (14, 97), (30, 3), (54, 3)))
    ]
    snapped: list[Shape] = []
    for start, curl in (
        ((2.0, 90.0), [(20, 84), (34, 78), (41, 78.6), (43, 82.6), (39.6, 84.4), (37.6, 81.6)]),
        ((96.0, 6.0), [(88, 18), (82, 27), (78.6, 28), (77.6, 24.4), (80.6, 23)]),
        ((tip[0], tip[1] + 4), [(58, 62), (52, 68), (48.6, 68.4), (48, 64.8), (51, 64.2)]),
    ):
        snapped.append(
            Group(
                (
                    strokes([sampled([start, *curl], 8)], Stroke("ink", 1.15)),
                    strokes([sampled([start, *curl], 8)], Stroke("silk-soft", 0.6)),
                ),
                name="snapped-thread",
            )
        )
    burst = []
    for k in range(8):
        angle = math.radians(k * 45 + 10)
        burst.append(
            (
                (46.4 + math.cos(angle) * 3.8, 74.4 + math.sin(angle) * 3.8),
                (46.4 + math.cos(angle) * 7.4, 74.4 + math.sin(angle) * 7.4),
            )
        )
    heavy = [
        Group((strokes([line], Stroke("ink", 1.15)), strokes([line], Stroke("silk-soft", 0.6))), name="coarse-thread")
        for line in (*loose, *taut)
    ]
    return [
        *heavy[: len(loose)],
        stick,
        *heavy[len(loose) :],
        *snapped,
        Group((strokes(burst, pen("bold", "look")),), name="crackle"),
    ]


def _dusty(tip: Point, stick: Group, rng: random.Random) -> list[Shape]:
    lines: list[Thread] = []
    for k in range(8):
        y = 8 + k * 12 + rng.uniform(-3, 3)
        lines.append(((2, y), (32, y + rng.uniform(-6, 8)), (tip[0] + rng.uniform(-2, 2), tip[1] + (y - 50) * 0.1)))
        lines.append(((28 + k * 6, 3), (34 + k * 5, 26 + rng.uniform(-4, 4)), (46 + k * 2.6, 46 + rng.uniform(-5, 5))))
    for _ in range(14):
        x, y = rng.uniform(8, 50), rng.uniform(10, 86)
        lines.append(
            ((x, y), (x + rng.uniform(-4, 8), y + rng.uniform(2, 8)), (x + rng.uniform(-4, 14), y + rng.uniform(8, 16)))
        )
    dust: list[Shape] = []
    for _ in range(150):
        line = sampled(rng.choice(lines), 8)
        x, y = rng.choice(line)
        size = rng.uniform(0.25, 0.85)
        dust.append(
            Ellipse(
                (x + rng.gauss(0, 1.0), y + rng.gauss(0, 1.0)),
                size,
                size * 0.7,
                blend("#8A7458", "#5A4A38", rng.random()),
                None,
                0.85,
            )
        )
    clump: list[Thread] = [
        (
            tip,
            (tip[0] + rng.uniform(-9, 6), tip[1] + rng.uniform(-4, 10)),
            (tip[0] + rng.uniform(-8, 7), tip[1] + rng.uniform(-2, 12)),
        )
        for _ in range(10)
    ]
    return [
        wool(lines, rng, width=2.0, tone="#8B8F99"),
        stick,
        wool(clump, rng, width=1.8, tone="#8B8F99"),
        Group(tuple(dust), name="dust"),
    ]


def _sticky(tip: Point, stick: Group, rng: random.Random) -> list[Shape]:
    hub = (-28.0, 20.0)
    radii: list[Thread] = []
    angles = [-6.0, 10.0, 26.0, 42.0, 58.0, 74.0]

    def spot(degrees: float, far: float) -> Point:
        return hub[0] + math.cos(math.radians(degrees)) * far, hub[1] + math.sin(math.radians(degrees)) * far

    def inside(point: Point) -> bool:
        return 1.5 <= point[0] <= 98.5 and 1.5 <= point[1] <= 98.5

    for angle in angles:
        run = [spot(angle, far) for far in range(20, 190, 2)]
        run = [point for point in run if inside(point)]
        if len(run) > 1:
            radii.append((run[0], run[-1]))
    items: list[Shape] = [threads(radii, 0.6, "ink-soft", 0.95, "spoke"), stick]
    strands: list[Shape] = []
    for far in range(36, 150, 10):
        for one, two in itertools.pairwise(angles):
            a, b = spot(one, far), spot(two, far + 10 / len(angles) * 0.8)
            if not (inside(a) and inside(b)):
                continue
            middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            if math.dist(middle, tip) < 13:
                line = [a, (tip[0] + rng.uniform(-0.8, 0.8), tip[1] + rng.uniform(0, 2)), b]
            else:
                line = sampled([a, (middle[0] - 0.6, middle[1] + 0.8), b], 6)
            strands.append(
                Group(
                    (strokes([line], Stroke("ink-soft", 0.34)), beads(line, rng, gap=2.6, radius=0.9, tone="#CFE3E2")),
                    name="sticky-thread",
                )
            )
    return [*items, *strands]


def no_web(values: Mapping[str, object]) -> Drawing:
    """Recipe `no-web`. Settings: seed. The place of a wheel web without one, a spider walking on the ground below."""
    settings = Settings(values)
    rng = seeded("no-web", settings.whole("seed", 1))
    settings.done()
    arcs = []
    for k in range(30):
        angle = [math.radians(k * 12 + step * 2.2) for step in range(4)]
        arcs.append([(50 + math.cos(a) * 29, 41 + math.sin(a) * 29) for a in angle])
    legs, body = spider_parts(rng)
    walker = placed([*legs, *body], at=(50 - 50 * 0.27 + 1, 86 - 55 * 0.27), scale=0.27, turn=0)
    return framed(
        [
            soil(73, rng),
            *orb_stems(rng),
            Group((strokes(arcs, pen("ring", "look")),), name="empty"),
            ground_shadow((51, 86.5), 11, 5, 0.2),
            walker,
        ]
    )


RECIPES = {"web-height": web_height, "silk-pulled": silk_pulled, "no-web": no_web}
