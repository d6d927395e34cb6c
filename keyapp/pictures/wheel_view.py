"""Wheel webs seen in space: upright, nearly flat, drawn up like a dome."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Mapping, Sequence
from functools import partial

from keyapp.pictures.part import framed
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, Shape, smooth, strokes
from keyapp.pictures.silk import Thread, grass, leaf, nearest_pairs, ray_out, soil, threads, twig
from keyapp.pictures.style import pen
from keyapp.pictures.texture import seeded
from keyapp.pictures.web import OrbWeb, spoke_angles, sticky_spiral

__all__ = ["RECIPES", "messy", "wheel_slope"]

_STEM = "#8A6B4C"
Seen = Callable[[float, float], Point]
"""From a place in the plane of the wheel (about -1 to 1, up is negative) to the page."""


def _wheel(web: OrbWeb, rng: random.Random, seen: Seen) -> list[Shape]:
    # The wheel of `web` shown as `seen` shows it.
    def at(spot: Point) -> Point:
        return seen((spot[0] - web.hub[0]) / 40, (spot[1] - web.hub[1]) / 40)

    def along(one: Point, two: Point, steps: int = 5) -> Thread:
        return tuple(
            at((one[0] + (two[0] - one[0]) * k / steps, one[1] + (two[1] - one[1]) * k / steps))
            for k in range(steps + 1)
        )

    angles = spoke_angles(web, rng)
    spokes = []
    for angle in angles:
        far = ray_out(web.hub, angle, web.frame)
        turn = math.radians(angle)
        end = (web.hub[0] + math.sin(turn) * far, web.hub[1] - math.cos(turn) * far)
        spokes.append(along(web.hub, end))
    frame = [along(a, b) for a, b in zip(web.frame, [*web.frame[1:], web.frame[0]], strict=True)]
    hub = tuple(
        at((web.hub[0] + math.sin(k / 3) * k * 0.045, web.hub[1] - math.cos(k / 3) * k * 0.045)) for k in range(76)
    )
    sticky = [tuple(at(spot) for spot in stretch) for stretch in sticky_spiral(web, angles)]
    return [
        threads(frame, 0.5, "ink-soft", 0.95, "frame"),
        threads(spokes, 0.28, "ink-soft", 0.9, "spoke"),
        threads([hub], 0.24, "ink-soft", 0.9, "hub"),
        threads(sticky, 0.22, "ink-soft", 0.95, "sticky"),
    ]


def _guys(web: OrbWeb, seen: Seen, ends: list[Point]) -> Group:
    corners = [seen((x - web.hub[0]) / 40, (y - web.hub[1]) / 40) for x, y in web.frame]
    return threads(list(zip(corners, ends, strict=True)), 0.42, "ink-soft", 0.95, "guy")


def _meadow(rng: random.Random) -> list[Shape]:
    items: list[Shape] = [soil(83, rng)]
    for x in (16, 50, 84):
        items.append(grass((x, 85), rng, count=5, spread=9, high=9))
    return items


def _upright(rng: random.Random) -> list[Shape]:
    # Two bushes stand one behind the other; the wheel stands between them, seen a little from one side.
    web = OrbWeb(spokes=26, pitch=2.8)

    def seen(u: float, v: float) -> Point:
        deep = 1 + 0.2 * u
        return 51 + u * 23 * deep, 41 + (v * 33 + 2 * u) * deep

    ends: list[Point] = [(16.6, 7), (56, 2.6), (89, 9), (88.6, 58), (88, 86), (17.4, 80), (14.6, 62), (14.4, 26)]
    return [
        *_meadow(rng),
        Ellipse((52, 89), 27, 1.8, "ink", None, 0.14),
        twig([(18, 86), (15, 60), (14, 30), (17, 4)], 2.6, 1.4, rng, _STEM),
        twig([(87, 92), (89, 62), (88, 30), (90, 3)], 3.6, 1.8, rng, _STEM),
        twig([(17, 7), (40, 3.4), (66, 2.4), (88, 5)], 1.4, 1.0, rng, _STEM),
        *(leaf(at, turn, 9, 3.8) for at, turn in (((15, 46), -60), ((14.4, 20), -50), ((16, 72), -64))),
        *(
            leaf(at, turn, 9, 4.2)
            for at, turn in (((88.6, 44), 56), ((88.4, 20), 50), ((88, 70), 62), ((40, 3.6), 120))
        ),
        _guys(web, seen, ends),
        *_wheel(web, rng, seen),
        _gauge([(97, 14), (97, 80)]),
    ]


def _gauge(line: list[Point]) -> Group:
    # The accent: how the wheel lies in space.
    return Group((smooth(line, stroke=pen("ring", "look", times=1.2)),), name="gauge")


def _four_stems(rng: random.Random, high: float) -> tuple[list[Shape], list[Shape]]:
    # Stems behind the web, then those in front of it.
    back: list[Shape] = [
        twig([(24, 84), (22, 60), (24, high - 12)], 2.0, 1.0, rng, "#7D8A4E"),
        twig([(76, 84), (79, 60), (77, high - 12)], 2.0, 1.0, rng, "#7D8A4E"),
        leaf((23, high - 9), -40, 9, 4),
        leaf((77.4, high - 9), 42, 9, 4),
    ]
    front: list[Shape] = [
        twig([(8, 96), (6, 70), (8, high + 4)], 2.6, 1.2, rng, "#7D8A4E"),
        twig([(92, 96), (94, 70), (92, high + 4)], 2.6, 1.2, rng, "#7D8A4E"),
        leaf((7.4, high + 8), 24, 10, 4.4),
        leaf((92.6, high + 8), -24, 10, 4.4),
        leaf((6.6, 82), 52, 9, 4),
        leaf((93.4, 80), -52, 9, 4),
    ]
    return back, front


_FLAT_ENDS: tuple[Point, ...] = (
    (22.6, 42),
    (50, 33),
    (78, 42),
    (93.4, 56),
    (93, 70),
    (7, 70),
    (6.6, 56),
    (15, 46),
)


def _nearly_flat(rng: random.Random) -> list[Shape]:
    web = OrbWeb(spokes=26, pitch=3.0)

    def seen(u: float, v: float) -> Point:
        deep = 1 + 0.16 * v
        return 50 + u * 34 * deep, 55 + v * 13.5 * deep

    back, front = _four_stems(rng, 44)
    across = twig([(23, 43), (40, 33.5), (60, 33), (77.6, 42)], 1.0, 0.8, rng, "#7D8A4E")
    shade = Ellipse((52, 90), 30, 4, "ink", None, 0.08)
    return [
        *_meadow(rng),
        shade,
        *back,
        across,
        _guys(web, seen, list(_FLAT_ENDS)),
        *_wheel(web, rng, seen),
        *front,
        _gauge([(18, 76), (82, 76)]),
    ]


def _domed(rng: random.Random) -> list[Shape]:
    web = OrbWeb(spokes=28, pitch=2.7)

    def seen(u: float, v: float) -> Point:
        deep = 1 + 0.12 * v
        up = 30 * max(0.0, 1 - math.hypot(u, v) / 1.04) ** 1.25
        return 50 + u * 34 * deep, 64 + v * 12 * deep - up

    back, front = _four_stems(rng, 50)
    peak = seen(0, 0)
    pull: list[Thread] = [
        (seen(math.sin(k) * 0.09, math.cos(k) * 0.09), (50 + math.sin(k * 1.7) * 9, 10.6 - abs(math.sin(k)) * 0.6))
        for k in range(9)
    ]
    cross: list[Thread] = [
        (
            (50 + rng.uniform(-6, 6), rng.uniform(14, peak[1] - 5)),
            (50 + rng.uniform(-6, 6), rng.uniform(14, peak[1] - 3)),
        )
        for _ in range(16)
    ]
    ends = [(x, y + 9) for x, y in _FLAT_ENDS]
    ends[1] = (50, 40)
    bough = twig([(2, 14), (28, 9), (56, 10), (80, 6), (98, 8)], 2.4, 1.2, rng, _STEM)
    return [
        *_meadow(rng),
        *back,
        bough,
        leaf((28, 9), 150, 9, 4),
        leaf((80, 6), 130, 10, 4.4),
        _guys(web, seen, ends),
        *_wheel(web, rng, seen),
        threads([*pull, *cross], 0.24, "ink-soft", 0.8),
        *front,
        _gauge([(seen(k / 8, 0.0)[0], seen(k / 8, 0.0)[1] - 5) for k in range(-8, -1)]),
        _gauge([(seen(k / 8, 0.0)[0], seen(k / 8, 0.0)[1] - 5) for k in range(2, 9)]),
    ]


def messy(
    rng: random.Random, centre: Point, wide: float, high: float, knots: int, goals: Sequence[Point] = ()
) -> Group:
    """A tangle of threads about a point, its outer knots tied to the `goals`."""
    spots = [
        (centre[0] + rng.gauss(0, wide * 0.5), centre[1] + rng.gauss(0, high * 0.5), rng.gauss(0, 8))
        for _ in range(knots)
    ]
    spots = [s for s in spots if math.hypot((s[0] - centre[0]) / wide, (s[1] - centre[1]) / high) < 1]
    lines: list[Thread] = [(spots[a][:2], spots[b][:2]) for a, b in nearest_pairs(spots, 3)]
    for _ in range(knots // 2):
        one, two = rng.sample(spots, 2)
        lines.append((one[:2], two[:2]))
    for goal in goals:
        near = sorted(spots, key=partial(math.dist, (*goal, 0.0)))
        lines += [(spot[:2], goal) for spot in rng.sample(near[:6], 2)]
    return threads(lines, 0.24, "ink-soft", 0.85, "tangle-thread")


def _no_wheel(rng: random.Random) -> list[Shape]:
    # The same place with a web of another kind: a tangle, and a broken ring where a wheel would be.
    centre = (50.0, 46.0)
    goals: list[Point] = [(8.0, float(y)) for y in (16, 28, 40, 52, 66, 78)] + [
        (92.0, float(y)) for y in (14, 27, 40, 54, 66, 78)
    ]
    goals += [(float(x), 4.0) for x in (24, 38, 52, 66, 80)] + [(float(x), 84.0) for x in (30, 44, 58, 72)]
    arcs = []
    for k in range(24):
        arcs.append(
            [(50 + math.cos(a) * 34, 46 + math.sin(a) * 34) for a in (math.radians(k * 15 + s * 3) for s in range(4))]
        )
    return [
        *_meadow(rng),
        twig([(9, 96), (6, 62), (8, 30), (12, 2)], 3.2, 1.6, rng, _STEM),
        twig([(91, 96), (94, 62), (92, 30), (88, 2)], 3.4, 1.6, rng, _STEM),
        twig([(11, 6), (40, 3.4), (66, 3), (89, 5)], 1.4, 1.0, rng, _STEM),
        *(leaf(at, turn, 9, 4) for at, turn in (((7, 50), 40), ((93.4, 52), -40), ((8, 76), 52), ((92.6, 22), -48))),
        messy(rng, centre, 32, 28, 84, goals),
        Group(
            (strokes(arcs, pen("ring", "paper", times=2.2, opacity=0.75)), strokes(arcs, pen("ring", "look"))),
            name="no-wheel",
        ),
    ]


_SLOPES = {"upright": _upright, "nearly-flat": _nearly_flat, "domed-wheel": _domed, "no-wheel": _no_wheel}


def wheel_slope(values: Mapping[str, object]) -> Drawing:
    """Recipe `wheel-slope`. Settings: slope upright|nearly-flat|domed-wheel|no-wheel, seed."""
    settings = Settings(values)
    slope = settings.choice("slope", _SLOPES, "upright")
    rng = seeded("wheel-slope", slope, settings.whole("seed", 1))
    settings.done()
    return framed(_SLOPES[slope](rng))


RECIPES = {"wheel-slope": wheel_slope}
