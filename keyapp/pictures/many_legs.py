"""Recipes for many-legged animals: whole ones, and the states of the questions that are asked of them."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from keyapp.pictures.arched import View, cut_body
from keyapp.pictures.long_bodies import (
    Long,
    giant_centipede,
    soil_centipede,
    stone_centipede,
)
from keyapp.pictures.millipedes import coiled_millipede, flat_millipede, round_millipede
from keyapp.pictures.part import fitted, framed, ground_shadow
from keyapp.pictures.rollers import ball, pill_millipede, pillbug_oblique
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    IDENTITY,
    Circle,
    Command,
    Drawing,
    Group,
    LinearGradient,
    Path,
    Point,
    Shape,
    Stop,
    placed,
    smooth,
    strokes,
)
from keyapp.pictures.sowbug import bug_from_above
from keyapp.pictures.style import pen, ring, scale_bar
from keyapp.pictures.track import polygon

__all__ = ["RECIPES", "many_legs_state", "ringed_animal"]

_LONG: dict[str, Callable[[], Long]] = {
    "stone-centipede": stone_centipede,
    "soil-centipede": soil_centipede,
    "giant-centipede": giant_centipede,
    "round-millipede": round_millipede,
    "flat-millipede": flat_millipede,
}


def ringed_animal(values: Mapping[str, object]) -> Drawing:
    """Recipe `ringed-animal`. Settings: kind, bar-mm, body-mm (length of the body without feelers and last legs)."""
    settings = Settings(values)
    kind = settings.choice("kind", (*_LONG, "pill-millipede", "pillbug", "sowbug"), "stone-centipede")
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 20, least=1, most=250)
    settings.done()
    shapes: list[Shape]
    if kind in _LONG:
        animal = _LONG[kind]()
        whole, scale = fitted(animal.items, margin=4, bottom=97)
        shapes, unit = [whole], animal.track.length * scale / long_mm
    elif kind == "sowbug":
        whole, scale = fitted(bug_from_above("sowbug")[0], margin=4, bottom=97)
        shapes, unit = [whole], 60 * scale / long_mm
    else:
        shapes, unit = _with_ball(kind, long_mm)
    if bar:
        shapes.append(scale_bar(bar, unit))
    return framed(shapes)


def _with_ball(kind: str, long_mm: float) -> tuple[list[Shape], float]:
    """A pillbug or a pill millipede that walks, and beneath it another closed up."""
    walker, tone = (pillbug_oblique(), "#6E7478") if kind == "pillbug" else (pill_millipede(), "#5E4330")
    whole, scale = fitted(walker, margin=4, bottom=60)
    round_one = ball((31, 75), 17, tone, narrow=5 if kind == "pillbug" else 0, shine=0.4 if kind == "pillbug" else 0.6)
    return [
        ground_shadow((50, 51), 40, 5, 0.14),
        whole,
        ground_shadow((33, 91), 19, 3.5),
        round_one,
    ], 52 * scale / long_mm


# ---------------------------------------------------------------- states


def _arrow(points: Sequence[Point], head: float = 3.2) -> list[Shape]:
    (xa, ya), (xb, yb) = points[-2], points[-1]
    turn = math.atan2(yb - ya, xb - xa)
    wings = [(xb - math.cos(turn + s * 0.5) * head, yb - math.sin(turn + s * 0.5) * head) for s in (1, -1)]
    return [
        smooth(points, stroke=pen("bold", "look", times=1.4)),
        polygon([(xb + math.cos(turn), yb + math.sin(turn)), *wings], "look", pen("line", "look")),
    ]


def _dots(ends: Sequence[Point], centre: Callable[[Point], Point], radius: float, far: float) -> list[Shape]:
    """A dot a little beyond the end of each leg, away from `centre`."""
    made: list[Shape] = []
    for x, y in ends:
        cx, cy = centre((x, y))
        long = math.hypot(x - cx, y - cy) or 1e-6
        made.append(
            Circle((x + (x - cx) / long * far, y + (y - cy) / long * far), radius, "look", pen("hair", "paper"))
        )
    return made


def _counted(kind: str) -> list[Shape]:
    if kind == "about-seven":
        items, ends = bug_from_above("sowbug")
        return [fitted([*items, *_dots(ends, lambda spot: (50, spot[1] - 3), 1.2, 2.4)], margin=4)[0]]
    straight = ((50, 14), (50.5, 40), (50, 60), (50.5, 86))
    if kind == "far-more":
        animal, radius, far = soil_centipede(), 0.55, 1.2
    elif kind == "about-fifteen":
        animal, radius, far = stone_centipede(tuple((x, 26 + (y - 14) * 0.68) for x, y in straight), sway=0), 0.9, 1.8
    else:
        animal, radius, far = giant_centipede(tuple((x, 20 + (y - 14) * 0.85) for x, y in straight), sway=0), 0.8, 1.7
    track = animal.track
    middles = [track.spot(k / 60)[0] for k in range(61)]

    def nearest(spot: Point) -> Point:
        return min(middles, key=lambda other: math.dist(other, spot))

    return [fitted([*animal.items, *_dots(animal.right, nearest, radius, far)], margin=4)[0]]


def _back(kind: str) -> list[Shape]:
    looks: dict[str, tuple[str, str, int, tuple[float, float], float, tuple[float, float, float]]] = {
        "round": ("#5A4030", "#C79A66", 2, (13, 13), 7.2, (6, 5, 1.4)),
        "side-plates": ("#4E342A", "#EBCF9C", 2, (10.5, 12), 9.0, (8, 7, 1.4)),
        "flat-ribbon": ("#A05A2C", "#D9A468", 1, (14, 13), 9.0, (13, 5, 2.2)),
        "arched-plates": ("#6E7478", "#B4B2AA", 1, (15, 17), 6.6, (6, 6, 2.2)),
        "flat-oval": ("#86827A", "#BDB8AC", 1, (15, 12), 6.6, (7, 5, 1.9)),
    }
    tone, legs, pairs, size, step, leg = looks[kind]
    items = cut_body(
        kind,
        tone,
        rings=7,
        pairs=pairs,
        legs=legs,
        size=size,
        step=step,
        leg=leg,
        view=View(40, 44 if kind == "flat-ribbon" else 34),
    )
    whole, _ = fitted(items, margin=7)
    return [ground_shadow((53, 68), 42, 13, 0.13), whole]


def _legs_a_ring(kind: str) -> list[Shape]:
    if kind == "one":
        items = cut_body(
            "flat-ribbon",
            "#A05A2C",
            rings=5,
            legs="#D9A468",
            size=(12, 14),
            step=12,
            leg=(17, 8, 3.0),
            tinted=(2,),
            face="#7A4420",
            view=View(62, 46),
        )
    else:
        items = cut_body(
            "round",
            "#5A4030",
            rings=5,
            pairs=2,
            legs="#C79A66",
            size=(12, 12),
            step=12,
            leg=(9, 9, 2.2),
            tinted=(2,),
            face="#3A281C",
            view=View(66, 22),
        )
    return [ground_shadow((50, 72), 44, 10, 0.12), fitted(items, margin=5)[0]]


def _rolls(kind: str) -> list[Shape]:
    if kind == "ball":
        walker, _ = fitted(pillbug_oblique(), margin=4, right=60, bottom=44)
        return [
            ground_shadow((30, 33), 24, 4, 0.16),
            walker,
            *_arrow([(60, 19), (68, 20), (74, 25), (76.5, 31)]),
            ground_shadow((64, 94), 30, 4.5, 0.26),
            ball((63, 66), 28, "#6E7478"),
        ]
    if kind == "flat-coil":
        return [ground_shadow((51, 54), 47, 47, 0.16), fitted(coiled_millipede().items, margin=5)[0]]
    animal = stone_centipede(((50, 30), (53, 40), (50, 52), (46, 62), (49, 73)))
    turned = placed(animal.items, turn=40)
    whole, _ = fitted([turned], margin=3, bottom=90, left=14)
    gone = [((16 + k * 6.5, 85 + k * 6.5), (9.5 + k * 6.5, 91.5 + k * 6.5)) for k in (-1, 0, 1)]
    return [whole, strokes(gone, pen("bold", "look", times=1.4))]


def _below(shape: Shape, top: float) -> Shape | None:
    """The part of a shape (not moved, or in plain groups) below a line: nothing may be drawn outside the picture."""
    if isinstance(shape, Group):
        if shape.transform != IDENTITY:
            return shape
        kept = tuple(part for part in (_below(item, top) for item in shape.items) if part is not None)
        return replace(shape, items=kept) if kept else None
    if not isinstance(shape, Path):
        return shape if shape.centre[1] > top + 1 else None
    runs: list[list[Command]] = []
    for letter, numbers in shape.commands:
        if letter == "M":
            runs.append([])
        runs[-1].append((letter, tuple(max(n, top) if k % 2 else n for k, n in enumerate(numbers))))
    seen = [run for run in runs if any(n > top for _, numbers in run for n in numbers[1::2])]
    return replace(shape, commands=tuple(step for run in seen for step in run)) if seen else None


def _tail(kind: str) -> list[Shape]:
    scale, middle = 2.15, (50.0, 66.0)
    if kind in ("two-small-points", "smooth"):
        items, _ = bug_from_above("sowbug" if kind == "two-small-points" else "pillbug")
        middle = (50.0, 67.0)
        mark: Shape = ring(
            (50, 76.3 if kind == "smooth" else 78.8), 11 if kind == "smooth" else 8.4, 6 if kind == "smooth" else 6.6
        )
    elif kind == "two-long-legs":
        animal = stone_centipede(((50, 8), (50.4, 30), (50, 50), (50, 62)))
        items, middle, scale = list(animal.items), (50.0, 69.0), 2.3
        mark = ring((50, 73), 10.5, 12.5)
    else:
        animal = giant_centipede(((50, -8), (50.4, 20), (50, 45), (50, 62)))
        items, middle, scale = list(animal.items), (50.0, 68.0), 2.3
        mark = ring((50, 72), 10, 12.5)
    top = middle[1] - 56 / scale
    lower = [part for part in (_below(item, top) for item in items) if part is not None]
    close = placed([*lower, mark], at=(50 - middle[0] * scale, 58 - middle[1] * scale), scale=scale)
    veil = LinearGradient((0, 0), (0, 26), (Stop(0, "paper", 1.0), Stop(0.2, "paper", 1.0), Stop(1, "paper", 0.0)))
    cover = Path((("M", (0, 0)), ("L", (100, 0)), ("L", (100, 26)), ("L", (0, 26)), ("Z", ())), veil)
    return [close, Group((cover,), name="veil")]


_STATES: dict[str, tuple[Callable[[str], list[Shape]], tuple[str, ...]]] = {
    "legs-a-ring": (_legs_a_ring, ("one", "two")),
    "leg-pairs": (_counted, ("about-seven", "about-fifteen", "about-twenty", "far-more")),
    "back-form": (_back, ("round", "side-plates", "flat-ribbon", "arched-plates", "flat-oval")),
    "rolls-up": (_rolls, ("ball", "flat-coil", "neither")),
    "tail-legs": (_tail, ("two-small-points", "two-long-legs", "two-stout-legs", "smooth")),
}


def many_legs_state(values: Mapping[str, object]) -> Drawing:
    """Recipe `many-legs-state`. Settings: of (a character), state."""
    settings = Settings(values)
    draw, states = _STATES[settings.choice("of", _STATES, "legs-a-ring")]
    state = settings.choice("state", states, states[0])
    settings.done()
    return framed(draw(state))


RECIPES = {"ringed-animal": ringed_animal, "many-legs-state": many_legs_state}
