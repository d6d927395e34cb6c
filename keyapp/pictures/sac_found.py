"""Egg sacs as they are found without their mother: a ball with a seam, and that of a lynx spider."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from keyapp.pictures.part import framed, ground_shadow, put
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.silk import Thread, grass, leaf, soil, threads, twig
from keyapp.pictures.style import blend, cylinder, globe, pen, scale_bar
from keyapp.pictures.texture import hair, seeded, stipple

__all__ = ["RECIPES", "found_sac"]


def _seamed(at: Point, r: float, rng: random.Random) -> Group:
    # Two cups of silk joined at a pale, slightly raised seam that runs round the middle.
    x, y = at
    tone = "#E6E0D2"
    winds = []
    for _ in range(90):
        v = rng.uniform(-0.9, 0.9)
        half = math.sqrt(1 - v * v) * r
        mid = x + rng.uniform(-0.6, 0.6) * half
        long = half * rng.uniform(0.15, 0.34)
        bow = r * 0.2 * (1 - abs(mid - x) / r)
        one, two = (
            (max(x - half * 0.95, mid - long), y + v * r),
            (min(x + half * 0.95, mid + long), y + v * r + rng.uniform(-1, 1)),
        )
        winds.append((one, (mid, y + v * r + bow * 0.5), two))
    turn = -9.0
    seam = put([(-r * 0.93, 0), (-r * 0.6, r * 0.2), (0, r * 0.3), (r * 0.6, r * 0.2), (r * 0.93, 0)], at, turn)
    under = put(
        [(-r * 0.92, r * 0.09), (-r * 0.6, r * 0.3), (0, r * 0.4), (r * 0.6, r * 0.3), (r * 0.92, r * 0.09)], at, turn
    )
    over = put(
        [(-r * 0.92, -r * 0.09), (-r * 0.6, r * 0.1), (0, r * 0.2), (r * 0.6, r * 0.1), (r * 0.92, -r * 0.09)], at, turn
    )
    frill = []
    for k in range(34):
        u = -0.88 + 1.76 * k / 33
        low = r * 0.3 * (1 - u * u)
        a, b = put([(u * r, low - r * 0.07), (u * r * 1.01, low + r * 0.09)], at, turn)
        frill.append((a, b))
    return Group(
        (
            Ellipse(at, r, r * 0.94, globe(at, r * 1.05, tone, depth=0.34, shine=0.75), pen("outline")),
            strokes(winds, Stroke("ink-soft", 0.16, 0.5)),
            stipple(
                lambda u, v: (x + u * r * 0.84, y - r * 0.62 + 1.24 * r * v), rng, count=120, radius=0.12, opacity=0.35
            ),
            smooth(under, stroke=Stroke("#5E5546", 0.9, 0.55)),
            smooth(seam, stroke=Stroke("#F7F3EA", r * 0.11)),
            smooth(over, stroke=Stroke("#5E5546", 0.35, 0.8)),
            smooth(under, stroke=Stroke("#5E5546", 0.35, 0.8)),
            strokes(frill, Stroke("ink-soft", 0.2, 0.7)),
        ),
        name="egg-sac",
    )


def _carried(rng: random.Random) -> list[Shape]:
    # Loose on the ground, 6 mm across.
    at, r = (50.0, 60.0), 20.0
    items: list[Shape] = [soil(34, rng)]
    for x in (12, 88):
        items.append(grass((x, 36), rng, count=7, spread=8, high=24))
    items += [
        leaf((20, 92), 52, 22, 10, "#B58A55"),
        ground_shadow((at[0] + 3, at[1] + r * 0.88), r * 1.3, r * 0.32, 0.42),
        _seamed(at, r, rng),
    ]
    for px, py, w in ((14, 58, 4.2), (84, 64, 5), (76, 84, 3), (10, 78, 3.2), (90, 50, 2.6)):
        items.append(Ellipse((px, py), w, w * 0.66, globe((px, py), w, "#A79A88"), pen("line")))
    return [*items, scale_bar(5, 2 * r / 6)]


def _pointed(at: Point, r: float, rng: random.Random) -> Group:
    # Straw-coloured, a little flat below, with short blunt points here and there.
    x, y = at
    tone = "#D2BC86"
    outline = [
        (x + math.cos(a) * r, y + math.sin(a) * r * (0.78 if math.sin(a) > 0 else 0.9))
        for a in (k * math.pi / 9 for k in range(18))
    ]
    items: list[Shape] = []

    def point(px: float, py: float, turn: float, long: float, wide: float) -> Shape:
        cone = put(
            [
                (-wide, 0.8),
                (-wide * 0.5, -long * 0.55),
                (-wide * 0.16, -long),
                (wide * 0.16, -long),
                (wide * 0.5, -long * 0.55),
                (wide, 0.8),
            ],
            (px, py),
            turn,
        )
        return smooth(
            cone,
            fill=cylinder(cone[0], cone[-1], blend(tone, "#FFFFFF", 0.15), depth=0.45),
            stroke=pen("line", "#5E4C28"),
            tension=0.6,
        )

    for turn in (-112, -74, -40, -6, 34, 70, 106, 146, 206):
        a = math.radians(turn + rng.uniform(-5, 5) - 90)
        squash = 0.78 if math.sin(a) > 0 else 0.9
        items.append(
            point(
                x + math.cos(a) * r * 0.95,
                y + math.sin(a) * r * squash * 0.95,
                turn,
                r * rng.uniform(0.2, 0.28),
                r * 0.11,
            )
        )
    items.append(
        smooth(outline, closed=True, fill=globe((x, y), r * 1.05, tone, depth=0.42, shine=0.45), stroke=pen("outline"))
    )
    fuzz = []
    for _ in range(150):
        a, far = rng.uniform(0, 2 * math.pi), r * 0.93 * math.sqrt(rng.random())
        fuzz.append(
            hair((x + math.cos(a) * far, y + math.sin(a) * far * 0.82), rng.uniform(0, 360), rng.uniform(0.9, 1.6))
        )
    items.append(strokes(fuzz, Stroke("#7E6A38", 0.18, 0.7)))
    for u, v in ((-0.5, -0.34), (0.08, -0.5), (0.54, -0.22), (-0.18, 0.02), (0.3, 0.2), (-0.56, 0.28), (0.0, 0.46)):
        px, py = x + u * r, y + v * r
        lean = math.degrees(math.atan2(u, -v))
        items.append(Ellipse((px + 0.8, py + 1.0), r * 0.13, r * 0.1, "#4A3A1C", None, 0.25))
        items.append(point(px, py, lean, r * (0.1 + 0.22 * math.hypot(u, v)), r * 0.11))
        tuft = [((px, py), (px + rng.uniform(-2.6, 2.6), py + rng.uniform(-2.6, 2.6))) for _ in range(5)]
        items.append(strokes(tuft, Stroke("#7E6A38", 0.2, 0.7)))
    return Group(tuple(items), name="egg-sac")


def _lynx(rng: random.Random) -> list[Shape]:
    # Tied into the top of a shrub by many threads; 20 mm across.
    at, r = (50.0, 47.0), 17.0
    items: list[Shape] = [
        twig([(50, 99), (51, 84), (49, 70), (50, 52)], 2.8, 2.0, rng, "#7D8A4E"),
        twig([(50, 82), (34, 70), (24, 50), (22, 24), (25, 6)], 2.0, 1.2, rng, "#7D8A4E"),
        twig([(50, 78), (66, 68), (77, 50), (79, 26), (75, 5)], 2.0, 1.2, rng, "#7D8A4E"),
        twig([(50, 52), (50, 30), (51, 8)], 1.8, 1.1, rng, "#7D8A4E"),
    ]
    spots = (
        ((50.6, 20), 42, 19, 7),
        ((50.2, 27), -52, 19, 7),
        ((51, 9), -12, 8, 4),
        ((23, 40), -62, 19, 7.4),
        ((22, 22), 40, 17, 6),
        ((25, 8), -30, 8, 4),
        ((78, 42), 62, 19, 7.4),
        ((79, 24), -38, 17, 6),
        ((75, 7), 24, 7, 3.6),
        ((32, 68), -72, 22, 8),
        ((68, 67), 74, 22, 8),
        ((50.4, 88), 70, 22, 8),
        ((50.4, 92), -74, 22, 8),
    )
    items += [leaf(*spot) for spot in spots]
    ties: list[Thread] = []
    for k in range(26):
        a = math.radians(k * 360 / 26 + rng.uniform(-4, 4))
        one = (at[0] + math.cos(a) * r * 0.9, at[1] + math.sin(a) * r * 0.76)
        goal_x = 23.0 if math.cos(a) < -0.35 else 78.0 if math.cos(a) > 0.35 else 50 + rng.uniform(-7, 7)
        goal_y = at[1] + math.sin(a) * (24 if abs(math.cos(a)) > 0.35 else 30) + rng.uniform(-3, 3)
        for _ in range(2):
            ties.append((one, (goal_x + rng.uniform(-1, 1), goal_y + rng.uniform(-3, 3))))
    return [
        *items,
        threads(ties, 0.45, "#FFFFFF", 0.9, "tie"),
        threads(ties, 0.24, "ink-soft", 0.8, "tie"),
        _pointed(at, r, rng),
        scale_bar(10, 2 * r / 20),
    ]


def _seam_alone(rng: random.Random) -> list[Shape]:
    return [_seamed((50.0, 50.0), 25.0, rng)]


def _points_alone(rng: random.Random) -> list[Shape]:
    return [_pointed((50.0, 50.0), 23.0, rng)]


_KINDS = {"carried": _carried, "lynx": _lynx, "seam": _seam_alone, "points": _points_alone}


def found_sac(values: Mapping[str, object]) -> Drawing:
    """Recipe `found-sac`. Settings: kind carried|lynx|seam|points, seed; the last two show the sac alone."""
    settings = Settings(values)
    kind = settings.choice("kind", _KINDS, "carried")
    rng = seeded("found-sac", kind, settings.whole("seed", 1))
    settings.done()
    return framed(_KINDS[kind](rng))


RECIPES = {"found-sac": found_sac}
