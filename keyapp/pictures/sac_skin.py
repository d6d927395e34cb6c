"""Egg sacs by their skin: papery, spiky, tough, fluffy, flat."""

from __future__ import annotations

import math
import random

from keyapp.pictures.part import put, sampled
from keyapp.pictures.shape import (
    Circle,
    Ellipse,
    Group,
    Path,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend, cylinder, globe, pen
from keyapp.pictures.texture import hair, stipple

__all__ = ["SKINS", "sac_parts"]


SKINS = ("smooth-papery-round", "spiky-round", "tough-brown-bag", "fluffy-white", "flat-disc-or-woolly")


def _round(at: Point, r: float, rng: random.Random, wobble: float = 0.02, count: int = 18) -> list[Point]:
    return [
        (
            at[0] + math.sin(2 * math.pi * k / count) * r * (1 + rng.uniform(-wobble, wobble)),
            at[1] - math.cos(2 * math.pi * k / count) * r * (1 + rng.uniform(-wobble, wobble)),
        )
        for k in range(count)
    ]


def _disc(at: Point, r: float, rng: random.Random, inner: float = 0.0) -> Point:
    angle, far = rng.uniform(0, 2 * math.pi), r * math.sqrt(rng.uniform(inner, 0.94))
    return at[0] + math.cos(angle) * far, at[1] + math.sin(angle) * far


def _smooth(at: Point, r: float, rng: random.Random) -> list[Shape]:
    x, y = at
    tone = "#EADCB8"
    drop: list[Point] = [
        (x - r * 0.06, y - r * 1.12),
        (x + r * 0.08, y - r * 1.11),
        (x + r * 0.19, y - r * 0.985),
        (x + r * 0.66, y - r * 0.76),
        (x + r * 0.97, y - r * 0.26),
        (x + r * 0.93, y + r * 0.36),
        (x + r * 0.55, y + r * 0.83),
        (x, y + r * 0.99),
        (x - r * 0.56, y + r * 0.83),
        (x - r * 0.95, y + r * 0.34),
        (x - r * 0.97, y - r * 0.24),
        (x - r * 0.67, y - r * 0.75),
        (x - r * 0.18, y - r * 0.985),
    ]
    creases = []
    for _ in range(46):
        px, py = _disc(at, r * 0.86, rng)
        creases.append(hair((px, py), rng.gauss(90, 34), r * rng.uniform(0.1, 0.34), rng.uniform(-60, 60)))
    for k in (-2, -1, 0, 1, 2):
        creases.append(
            (
                (x + k * r * 0.035, y - r * 1.04),
                (x + k * r * 0.09, y - r * 0.88),
                (x + k * r * 0.2, y - r * rng.uniform(0.62, 0.76)),
            )
        )
    return [
        smooth(
            drop,
            closed=True,
            fill=globe((x, y), r * 1.1, tone, depth=0.36, shine=0.6),
            stroke=pen("outline", times=0.9),
        ),
        strokes(creases, pen("hair", opacity=0.3)),
        stipple(
            lambda u, v: (x + u * r * math.sqrt(max(0, 1 - (2 * v - 1) ** 2)) * 0.94, y - r * 0.9 + 1.84 * r * v),
            rng,
            count=int(r * 12),
            radius=0.13,
            opacity=0.4,
        ),
    ]


def _spiky(at: Point, r: float, rng: random.Random) -> list[Shape]:
    x, y = at
    tone = "#D9C79B"
    spikes: list[tuple[float, Shape]] = []

    def spike(px: float, py: float, angle: float, long: float, wide: float, depth: float) -> None:
        tri = put(
            [(-wide, 0.4), (-wide * 0.35, -long * 0.5), (0, -long), (wide * 0.35, -long * 0.5), (wide, 0.4)],
            (px, py),
            angle,
        )
        fill = cylinder(tri[0], tri[4], blend(tone, "#FFFFFF", 0.2), depth=0.42)
        spikes.append(
            (
                depth,
                Path(
                    (("M", tri[0]), ("L", tri[1]), ("L", tri[2]), ("L", tri[3]), ("L", tri[4])),
                    fill,
                    pen("line", times=0.8),
                ),
            )
        )

    for k in range(30):
        angle = k * 12 + rng.uniform(-3, 3)
        rad = math.radians(angle)
        spike(
            x + math.sin(rad) * r * 0.92,
            y - math.cos(rad) * r * 0.92,
            angle + rng.uniform(-9, 9),
            r * rng.uniform(0.28, 0.36),
            r * 0.085,
            -1,
        )
    golden = math.pi * (3 - math.sqrt(5))
    for k in range(46):
        far = math.sqrt((k + 0.5) / 46) * 0.9
        rad = k * golden
        px, py = x + math.cos(rad) * far * r, y + math.sin(rad) * far * r
        angle = math.degrees(math.atan2(px - x, -(py - y))) + rng.uniform(-8, 8)
        spike(px, py, angle, r * (0.1 + 0.24 * far), r * 0.075, far)
    ball = Circle(at, r, globe(at, r * 1.05, tone, depth=0.42, shine=0.5), pen("outline", times=0.9))
    back = [shape for depth, shape in spikes if depth < 0]
    front = [shape for depth, shape in sorted((s for s in spikes if s[0] >= 0), key=lambda s: -s[0])]
    return [
        Group(tuple(Group((s,), name="spike") for s in back)),
        ball,
        stipple(lambda u, v: (x + u * r * 0.9, y - r * 0.7 + 1.4 * r * v), rng, count=60, radius=0.11),
        Group(tuple(Group((s,), name="spike") for s in front)),
    ]


def _bag(at: Point, r: float, rng: random.Random) -> list[Shape]:
    x, y = at
    tone = "#94683A"
    flask: list[Point] = [
        (x - r * 0.2, y - r * 1.42),
        (x + r * 0.2, y - r * 1.42),
        (x + r * 0.26, y - r * 1.12),
        (x + r * 0.7, y - r * 0.72),
        (x + r * 0.98, y - r * 0.1),
        (x + r * 0.86, y + r * 0.55),
        (x + r * 0.42, y + r * 0.95),
        (x - r * 0.36, y + r * 0.97),
        (x - r * 0.84, y + r * 0.56),
        (x - r * 0.98, y - r * 0.1),
        (x - r * 0.7, y - r * 0.72),
        (x - r * 0.26, y - r * 1.12),
    ]
    blotches = [
        Ellipse(
            _disc(at, r * 0.8, rng),
            r * rng.uniform(0.05, 0.16),
            r * rng.uniform(0.04, 0.1),
            "#5A3A1E",
            None,
            0.3,
            turn=rng.uniform(0, 180),
        )
        for _ in range(36)
    ]
    fibres = []
    for _ in range(150):
        px, py = _disc((x, y - r * 0.05), r * 0.93, rng)
        angle = math.degrees(math.atan2(px - x, -(py - y + r * 1.6))) + rng.gauss(0, 26)
        fibres.append(hair((px, py), angle, r * rng.uniform(0.1, 0.3), rng.uniform(-30, 30)))
    seams = [
        [
            (x + k * r * 0.18, y - r * 1.36),
            (x + k * r * 0.26, y - r * 1.05),
            (x + k * r * 0.7, y - r * 0.4),
            (x + k * r * 0.72, y + r * 0.3),
        ]
        for k in (-0.9, -0.3, 0.4, 1.0)
    ]
    return [
        smooth(
            flask, closed=True, fill=globe((x, y), r * 1.15, tone, depth=0.5, shine=0.34), stroke=pen("bold", times=0.7)
        ),
        Group(tuple(blotches)),
        strokes([sampled(seam) for seam in seams], pen("fine", "#4A2E18", opacity=0.5)),
        strokes(fibres, pen("hair", "#3E2614", opacity=0.7)),
        Ellipse((x, y - r * 1.42), r * 0.2, r * 0.07, "#5A3A1E", pen("line")),
    ]


def _fluffy(at: Point, r: float, rng: random.Random) -> list[Shape]:
    tufts: list[Shape] = []
    for far, count in ((1.0, 26), (0.82, 22), (0.6, 16), (0.36, 10), (0.1, 5)):
        for k in range(count):
            angle = math.radians(k * 360 / count + rng.uniform(-8, 8))
            spread = far * rng.uniform(0.9, 1.06)
            spot = (at[0] + math.sin(angle) * r * spread, at[1] - math.cos(angle) * r * spread)
            size = r * rng.uniform(0.2, 0.34)
            puff = RadialGradient(
                (spot[0] - size * 0.2, spot[1] - size * 0.3),
                size * 1.05,
                (Stop(0, "white"), Stop(0.6, "#FBF9F4", 0.95), Stop(0.9, "#DAD2C2", 0.75), Stop(1, "#DAD2C2", 0.0)),
            )
            tufts.append(Circle(spot, size * 1.05, puff))
    curls = []
    for _ in range(240):
        spot = _disc(at, r * 1.12, rng)
        curls.append(hair(spot, rng.uniform(0, 360), r * rng.uniform(0.14, 0.36), rng.uniform(-170, 170)))
    loose = []
    for _ in range(120):
        angle = rng.uniform(0, 360)
        root = (at[0] + math.sin(math.radians(angle)) * r * 1.02, at[1] - math.cos(math.radians(angle)) * r * 1.02)
        loose.append(hair(root, angle + rng.uniform(-60, 60), r * rng.uniform(0.16, 0.42), rng.uniform(-120, 120)))
    halo = RadialGradient(
        at,
        r * 1.5,
        (Stop(0, "#B9AF9C", 0.9), Stop(0.6, "#C9BFAC", 0.8), Stop(0.8, "#DDD4C2", 0.5), Stop(1, "#EFE7D8", 0.0)),
    )
    return [
        Circle(at, r * 1.5, halo),
        strokes(loose, Stroke("ink-soft", 0.2, 0.75)),
        *tufts,
        strokes(curls, Stroke("ink-soft", 0.2, 0.7)),
    ]


def _flat(at: Point, r: float, rng: random.Random) -> list[Shape]:
    fringe = []
    for k in range(110):
        angle = k * 360 / 110 + rng.uniform(-2, 2)
        root = (at[0] + math.sin(math.radians(angle)) * r * 0.98, at[1] - math.cos(math.radians(angle)) * r * 0.66)
        fringe.append(hair(root, angle, r * rng.uniform(0.1, 0.3), rng.uniform(-50, 50)))
    x, y = at
    fill = RadialGradient(
        (x - r * 0.15, y - r * 0.15),
        r,
        (Stop(0, "#FBF8F1"), Stop(0.55, "#EDE6D6"), Stop(0.86, "#D6CCB8"), Stop(1, "#EFE9DC")),
    )
    lens = [
        Ellipse(
            (x + rng.gauss(0, r * 0.18), y + rng.gauss(0, r * 0.11)),
            r * 0.07,
            r * 0.055,
            "#C7A76C",
            pen("hair", opacity=0.5),
            0.6,
        )
        for _ in range(26)
    ]
    swirl = []
    for _ in range(90):
        px, py = _disc(at, r * 0.93, rng)
        py = y + (py - y) * 0.66
        swirl.append(
            hair(
                (px, py),
                math.degrees(math.atan2(px - x, -(py - y))) + 90 + rng.gauss(0, 20),
                r * rng.uniform(0.14, 0.34),
                rng.uniform(-30, 30),
            )
        )
    return [
        Ellipse((x + r * 0.05, y + r * 0.09), r * 1.04, r * 0.7, "ink", None, 0.16),
        strokes(fringe, Stroke("ink-soft", 0.2, 0.7)),
        Ellipse(at, r, r * 0.66, fill, pen("line", "ink-soft")),
        Group(tuple(lens)),
        Ellipse(at, r * 0.62, r * 0.4, "#FBF8F1", Stroke("silk", 0.3, 0.8), 0.45),
        strokes(swirl, Stroke("ink-soft", 0.16, 0.5)),
    ]


_DRAW = {
    "smooth-papery-round": _smooth,
    "spiky-round": _spiky,
    "tough-brown-bag": _bag,
    "fluffy-white": _fluffy,
    "flat-disc-or-woolly": _flat,
}


def sac_parts(skin: str, at: Point, radius: float, rng: random.Random) -> Group:
    """An egg sac of one skin about a point."""
    return Group(tuple(_DRAW[skin](at, radius, rng)), name="egg-sac")
