"""Webs without wheel or tube: hung bowls and domes, small flat tents on a wall, tents of leaves."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence

from keyapp.pictures.brood import carried_sac, spiderling
from keyapp.pictures.part import framed, sampled
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Drawing,
    Group,
    LinearGradient,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    smooth,
    strokes,
)
from keyapp.pictures.silk import Thread, flat, leaf, nearest_pairs, threads, twig
from keyapp.pictures.style import blend, cylinder, pen, ring, scale_bar
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "hung_web"]

_GREEN = "#7D8A4E"


def _sheet(
    at: Point, rx: float, drop: float, rng: random.Random, *, knots: int = 130
) -> tuple[list[Shape], list[Point]]:
    # A round sheet hung by its rim: its middle `drop` below the rim (a bowl), or above it when negative (a dome).
    ry = rx * 0.26

    def spot(turn: float, far: float) -> Point:
        return at[0] + math.cos(turn) * rx * far, at[1] + math.sin(turn) * ry * far + drop * (1 - far * far)

    rim = [spot(k * math.pi / 14, 1.0 + rng.uniform(-0.015, 0.015)) for k in range(28)]
    points: list[tuple[float, float, float]] = []
    for k in range(knots):
        turn, far = k * 2.39996, math.sqrt((k + 0.5) / knots)
        x, y = spot(turn + rng.uniform(-0.1, 0.1), far)
        points.append((x, y, math.sin(turn) * far * rx * 0.9))
    mesh: list[Thread] = [(points[a][:2], points[b][:2]) for a, b in nearest_pairs(points, 4)]
    bottom = [spot(math.pi - k * math.pi / 12, 1.0) for k in range(13)]
    profile = [(at[0] + rx * (1 - k / 8), at[1] + drop * (1 - (1 - k / 8) ** 2)) for k in range(17)]
    if drop > 0:
        bowl = [*[spot(math.pi + k * math.pi / 12, 1.0) for k in range(13)], *profile[1:-1]]
    else:
        bowl = [*bottom, *profile[1:-1]]
    fill = LinearGradient(
        (at[0], at[1] - abs(drop)), (at[0], at[1] + abs(drop)), (Stop(0, "#FFFFFF", 0.55), Stop(1, "#C9C3B8", 0.6))
    )
    return [
        smooth(bowl, closed=True, fill=fill),
        threads(mesh, 0.2, "ink-soft", 0.75, "sheet-thread"),
        strokes([[*rim, rim[0]]], Stroke("ink-soft", 0.3, 0.85)),
    ], rim


def _above(rim: Sequence[Point], top: float, rng: random.Random, *, count: int, low: float, inset: float = 4) -> Group:
    # The loose threads above a sheet that knock insects down.
    left, right = min(x for x, _ in rim), max(x for x, _ in rim)
    knots = [
        (rng.uniform(left + inset, right - inset), top + (low - top) * rng.random() ** 0.8, rng.uniform(-14, 14))
        for _ in range(count)
    ]
    lines: list[Thread] = [(knots[a][:2], knots[b][:2]) for a, b in nearest_pairs(knots, 2)]
    for k in range(count):
        x, y, _ = knots[k]
        if k % 2:
            lines.append(((x, y), (x + rng.uniform(-6, 6), top + rng.uniform(-1.0, 0.4))))
        else:
            lines.append(((x, y), (x + rng.uniform(-5, 5), low + rng.uniform(0, 4))))
    return threads(lines, 0.18, "ink-soft", 0.8, "knock-down-thread")


def _ties(rim: Sequence[Point], rng: random.Random, left: float, right: float) -> Group:
    lines: list[Thread] = []
    middle = sum(x for x, _ in rim) / len(rim)
    for x, y in rim[::2]:
        side = left if x < middle else right
        lines.append(((x, y), (side, y + (y - rim[0][1]) * 0.8 - abs(x - middle) * 0.1 + rng.uniform(-6, 3))))
    return threads(lines, 0.26, "ink-soft", 0.85, "tie")


def _hanger(at: Point, rng: random.Random, length: float = 5.0) -> Group:
    return spiderling(at, length, 96, "#6A4B34", rng)


def _shrub(rng: random.Random) -> list[Shape]:
    items: list[Shape] = [
        twig([(7, 99), (6, 66), (8, 34), (5, 2)], 2.8, 1.4, rng, "#8A6B4C"),
        twig([(93, 99), (95, 66), (92, 34), (95, 2)], 2.8, 1.4, rng, "#8A6B4C"),
        twig([(7.6, 24), (28, 12), (52, 9), (74, 12), (92.6, 22)], 1.5, 1.1, rng, "#8A6B4C"),
    ]
    spots = (
        ((7, 50), -34),
        ((6.2, 72), 48),
        ((93.6, 46), 36),
        ((94.6, 74), -50),
        ((24, 14), -30),
        ((72, 11.6), 24),
        ((6.4, 12), 60),
    )
    for at, turn in spots:
        items.append(leaf(at, turn, 10, 4.2, "leaf"))
    return [*items, leaf((94, 11), -62, 10, 4.4)]


def _bowl(rng: random.Random) -> list[Shape]:
    # A bowl with a loose maze above it and a flat doily below; the maker hangs under the bowl.
    sheet, rim = _sheet((50, 50), 33, 22, rng)
    doily, low_rim = _sheet((50, 83), 24, 1.5, rng, knots=60)
    return [
        *_shrub(rng),
        _ties(rim, rng, 7.5, 93),
        _ties(low_rim, rng, 6.6, 94.4),
        *doily,
        _above(rim, 11.5, rng, count=90, low=52, inset=10),
        *sheet,
        _hanger((52, 73.4), rng),
    ]


def _bowl_and_dome(rng: random.Random) -> list[Shape]:
    bowl, rim = _sheet((35, 36), 22, 17, rng, knots=90)
    dome, low_rim = _sheet((64, 84), 23, -20, rng, knots=90)
    return [
        *_shrub(rng),
        _ties(rim, rng, 7.5, 93),
        _ties(low_rim, rng, 6.6, 94.4),
        _above(rim, 14, rng, count=46, low=40),
        *bowl,
        *dome,
        _above([(x, y - 20) for x, y in low_rim], 54, rng, count=34, low=68),
    ]


def _patch(at: Point, r: float, rng: random.Random) -> list[Shape]:
    # Two sheets, one over the other: a star-edged roof tied to the wall by fans of threads.
    arms = 11
    start = rng.uniform(0, 2)
    edge: list[Point] = []
    fans: list[Thread] = []
    for k in range(arms):
        turn = start + k * 2 * math.pi / arms + rng.uniform(-0.1, 0.1)
        far = r * rng.uniform(0.86, 1.1)
        tip = (at[0] + math.cos(turn) * far, at[1] + math.sin(turn) * far)
        dent = turn + math.pi / arms
        edge += [tip, (at[0] + math.cos(dent) * r * 0.83, at[1] + math.sin(dent) * r * 0.83)]
        for j in range(6):
            out = turn + (j - 2.5) * 0.055 + rng.uniform(-0.03, 0.03)
            long = r * rng.uniform(1.3, 1.8)
            fans.append((tip, (at[0] + math.cos(out) * long, at[1] + math.sin(out) * long)))
        for j in range(3):
            out = turn + (j + 0.8) * 0.16
            one = (at[0] + math.cos(out) * r * 0.84, at[1] + math.sin(out) * r * 0.84)
            long = r * rng.uniform(1.1, 1.35)
            fans.append((one, (at[0] + math.cos(out) * long, at[1] + math.sin(out) * long)))
    weave: list[Thread] = []
    for _ in range(int(r * 5)):
        turn, far = rng.uniform(0, 2 * math.pi), r * 0.78 * math.sqrt(rng.random())
        one = (at[0] + math.cos(turn) * far, at[1] + math.sin(turn) * far)
        way = rng.uniform(0, math.pi)
        weave.append((one, (one[0] + math.cos(way) * r * 0.26, one[1] + math.sin(way) * r * 0.26)))
    lower = [(at[0] + (x - at[0]) * 1.1 + 0.6, at[1] + (y - at[1]) * 1.1 + 0.8) for x, y in edge]
    fill = RadialGradient(at, r, (Stop(0, "#FFFFFF"), Stop(0.6, "#FBF8F2"), Stop(1, "#E9E2D5")))
    return [
        threads(fans, 0.34, "#FFFFFF", 0.95, "star-thread"),
        threads(fans[::2], 0.14, "ink-soft", 0.7, "star-thread"),
        smooth([(x + 0.6, y + 1.0) for x, y in lower], closed=True, fill="ink", opacity=0.13),
        smooth(lower, closed=True, fill="#F6F2EA", stroke=pen("fine", "silk"), opacity=0.8),
        Group((smooth(edge, closed=True, fill=fill, stroke=pen("fine", "ink-soft"), opacity=0.96),), name="tent"),
        threads(weave, 0.16, "ink-soft", 0.45, "weave"),
    ]


def _plaster(rng: random.Random) -> list[Shape]:
    fill = LinearGradient((0, 0), (100, 100), (Stop(0, "#DCCDB4"), Stop(1, "#C7B597")))
    specks = [((x, y), (x + 0.5, y + 0.1)) for x, y in ((rng.uniform(1, 98), rng.uniform(1, 98)) for _ in range(170))]
    crack = sampled([(2, 88), (18, 84), (30, 90), (52, 86), (70, 92), (98, 87)], 4)
    return [
        flat([(0, 0), (100, 0), (100, 100), (0, 100)], fill),
        strokes(specks, Stroke("#6B543A", 0.3, 0.5)),
        strokes([crack], Stroke("#6B543A", 0.3, 0.6)),
    ]


def _small_tent(rng: random.Random) -> list[Shape]:
    # One tent close by; the maker shows through as a darker speck between the sheets.
    under = spiderling((50.6, 48.4), 6.0, 30, "#B9A78A", rng)
    return [
        *_plaster(rng),
        *_patch((50, 47), 22, rng),
        Group((under,), opacity=0.45),
        scale_bar(10, 2.2),
    ]


def _tents_on_wall(rng: random.Random) -> list[Shape]:
    items = _plaster(rng)
    items.append(flat([(0, 0), (100, 0), (100, 15), (0, 9)], "#F3ECDF"))
    items.append(strokes([((0, 9), (100, 15))], pen("outline", "ink-soft")))
    for at, r in (((72, 34), 9.5), ((24, 74), 7.5), ((80, 76), 6.4)):
        items += _patch(at, r, rng)
    items += _patch((36, 40), 12, rng)
    return [*items, ring((36, 40), 23, 23)]


def _bent_leaf(line: Sequence[Point], width: float, tone: str) -> Group:
    spine = sampled(line, 4)
    left, right, veins = [], [], []
    last = len(spine) - 1
    for k, (x, y) in enumerate(spine):
        (xa, ya), (xb, yb) = spine[max(0, k - 1)], spine[min(last, k + 1)]
        length = math.hypot(xb - xa, yb - ya) or 1.0
        half = width / 2 * math.sin(math.pi * min(1.0, (k / last) ** 0.8)) ** 0.8 if 0 < k < last else 0.0
        nx, ny = -(yb - ya) / length, (xb - xa) / length
        left.append((x + nx * half, y + ny * half))
        right.append((x - nx * half, y - ny * half))
        if 1 < k < last - 1 and k % 2:
            ahead = spine[k + 1]
            veins += [((x, y), (ahead[0] + s * nx * half * 0.8, ahead[1] + s * ny * half * 0.8)) for s in (-1, 1)]
    middle = last // 2
    return Group(
        (
            smooth(
                [*left, *reversed(right[:-1])],
                closed=True,
                fill=cylinder(left[middle], right[middle], tone, depth=0.34),
                stroke=pen("line", "leaf-dark", times=1.2),
            ),
            strokes([spine], pen("line", "leaf-dark")),
            strokes(veins, pen("fine", "leaf-dark", opacity=0.8)),
        ),
        name="leaf",
    )


def _leaf_tent(rng: random.Random, sac: bool) -> list[Shape]:
    # The top of a plant: leaves drawn together by silk round a sac, or round a crowd of young.
    heart = (50.0, 46.0)
    dark, pale = blend("leaf", "leaf-dark", 0.45), blend("leaf", "paper", 0.1)
    items: list[Shape] = [
        twig([(52, 99), (50.6, 90), (50, 80), (50, 72)], 2.8, 2.0, rng, _GREEN),
        _bent_leaf([(51, 90), (64, 87), (78, 90), (92, 85)], 11, "leaf"),
        _bent_leaf([(51, 93), (38, 90), (24, 92), (8, 87)], 11, "leaf"),
    ]
    items += [
        _bent_leaf([(50, 78), (34, 52), (36, 26), (49, 6)], 19, dark),
        _bent_leaf([(50, 78), (66, 52), (64, 26), (52, 5)], 19, dark),
        _bent_leaf([(50, 78), (50, 50), (49, 28), (51, 8)], 20, blend("leaf", "leaf-dark", 0.6)),
    ]
    veil = [(50, 12), (64, 26), (70, 46), (64, 64), (50, 71), (36, 64), (30, 46), (36, 26)]
    items.append(smooth(veil, closed=True, fill="#FFFFFF", opacity=0.42))
    cross: list[Thread] = []
    edge = sampled([*veil, veil[0]], 4)
    for _ in range(70):
        one, two = rng.sample(edge, 2)
        cross.append((one, two))
    items.append(threads(cross, 0.2, "#FFFFFF", 0.9, "veil"))
    if sac:
        items += [carried_sac((50, 50), 21.0, "#D3BF95", "tent", seam=False)]
    young = []
    count = 20 if sac else 42
    for k in range(count):
        turn, far = k * 2.39996 + rng.uniform(-0.4, 0.4), math.sqrt((k + 0.5) / count)
        spot = (heart[0] + math.cos(turn) * far * 14, heart[1] - 3 + math.sin(turn) * far * 22)
        if sac and math.dist(spot, (50, 50)) < 10:
            continue
        young.append(spiderling(spot, 2.7, rng.uniform(0, 360), "#B98F4E", rng))
    items += young
    items += [
        _bent_leaf([(50, 80), (24, 70), (16, 42), (33, 16)], 17, pale),
        _bent_leaf([(50, 80), (76, 70), (84, 42), (67, 15)], 17, pale),
        _bent_leaf([(50, 82), (36, 77), (26, 79), (20, 72)], 12, pale),
        _bent_leaf([(50, 82), (64, 77), (75, 80), (81, 73)], 12, pale),
    ]
    front: list[Thread] = []
    for _ in range(38):
        y0, y1 = rng.uniform(14, 68), rng.uniform(14, 68)
        lean = abs(y0 - 42) * 0.34
        front.append(((27 + lean, y0), (50 + rng.uniform(-3, 3), (y0 + y1) / 2 + rng.uniform(-3, 3)), (73 - lean, y1)))
    items += [threads(front, 0.28, "#FFFFFF", 0.9, "veil"), threads(front[::2], 0.15, "ink-soft", 0.7, "veil")]
    return items


def hung_web(values: Mapping[str, object]) -> Drawing:
    """Recipe `hung-web`.

    Settings: kind bowl|bowl-and-dome|small-tent|tents-on-wall|leaf-tent, sac (in the leaf tent), seed.
    """
    settings = Settings(values)
    kind = settings.choice("kind", ("bowl", "bowl-and-dome", "small-tent", "tents-on-wall", "leaf-tent"), "bowl")
    sac = settings.flag("sac")
    rng = seeded("hung-web", kind, settings.whole("seed", 1))
    settings.done()
    if kind == "leaf-tent":
        return framed(_leaf_tent(rng, sac))
    makers = {
        "bowl": _bowl,
        "bowl-and-dome": _bowl_and_dome,
        "small-tent": _small_tent,
        "tents-on-wall": _tents_on_wall,
    }
    return framed(makers[kind](rng))


RECIPES = {"hung-web": hung_web}
