"""Recipe `cup-and-card`: how a small animal is moved without a hand near it, step by step, and photographed."""

from __future__ import annotations

import math
from collections.abc import Mapping

from keyapp.pictures.part import ground_shadow
from keyapp.pictures.plans import planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Drawing,
    Ellipse,
    Group,
    LinearGradient,
    Point,
    Shape,
    Stop,
    Stroke,
    mirror,
    placed,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.spider_side import side_spider
from keyapp.pictures.style import pen

__all__ = ["RECIPES", "SHOWN", "STEPS", "draw_cup_and_card"]

STEPS = ("cover", "slide", "carry", "release", "photo")
SHOWN = ("moving-cover", "moving-slide", "moving-carry", "moving-release", "photo-hands-off")
"""Ids of the figures that the short way shows."""
_FLOOR = 76.0
_SMALL = 13.0
"""From front to tail of the animal, in canvas units: it has room in the cup."""
_RIM, _BASE, _HIGH = 25.0, 19.0, 44.0
"""Half the width of the cup at its rim and at its bottom, and its height."""
_ANIMAL: Mapping[str, object] = {
    "plan": "plain",
    "seed": "cup",
    "legs": {"thick": 0.2, "lengths": [13, 12, 10, 13]},
}


def _animal(at: Point, *, right: bool = False) -> Group:
    """A small long-legged animal from its side, its feet on the ground beneath `at`."""
    s = Settings(planned(_ANIMAL), "cup-and-card")
    spider = side_spider(s, (at[0], at[1] - _SMALL * 0.5), _SMALL, "stand")
    shadow = ground_shadow((at[0], at[1]), _SMALL * 1.1, 1.3)
    return placed((shadow, mirror(spider, at[0]) if right else spider), name="animal")


def _cup(rim_at: Point, turn: float = 0.0, size: float = 1.0) -> tuple[Group, Group]:
    """A clear cup upside down, its rim centred at a point: the parts behind what is in it, and those before it."""
    glass = LinearGradient(
        (-_RIM, 0), (_RIM, 0), (Stop(0, "#BFD3D6", 0.42), Stop(0.45, "#DCE8E8", 0.1), Stop(1, "#BFD3D6", 0.36))
    )
    wall = [(-_RIM, 0.0), (-_BASE, -_HIGH), (_BASE, -_HIGH), (_RIM, 0.0)]
    back: list[Shape] = [
        Ellipse((0, 0), _RIM, 4.2, "#E6EFEE", pen("line", "ink-soft"), 0.75),
        Ellipse((0, -_HIGH), _BASE, 3.1, "#E6EFEE", pen("line", "ink-soft")),
    ]
    lip = [(math.cos(t) * _RIM, math.sin(t) * 4.2) for t in (k * math.pi / 12 for k in range(13))]
    front: list[Shape] = [
        polyline([wall[0], wall[1], wall[2], wall[3], *[(x, y) for x, y in lip]], closed=True, fill=glass),
        strokes([(wall[0], wall[1]), (wall[3], wall[2])], pen("outline")),
        smooth(lip, stroke=pen("bold")),
        strokes([((-_BASE * 0.7, -_HIGH * 0.86), (-_RIM * 0.76, -_HIGH * 0.2))], Stroke("white", 1.8, 0.9)),
        strokes([((-_BASE * 0.48, -_HIGH * 0.86), (-_BASE * 0.54, -_HIGH * 0.6))], Stroke("white", 1.1, 0.9)),
    ]
    return (
        placed(back, at=rim_at, turn=turn, scale=size, name="cup-back"),
        placed(front, at=rim_at, turn=turn, scale=size, name="cup"),
    )


def _card(left: float, right: float, y: float) -> Group:
    """A stiff card that lies level, seen a little from above."""
    lean, deep, thick = 5.0, 5.5, 1.5
    top = [(left + lean, y - deep), (right + lean, y - deep), (right - lean, y + deep), (left - lean, y + deep)]
    edge = [top[3], top[2], (top[2][0], top[2][1] + thick), (top[3][0], top[3][1] + thick)]
    side = [top[2], top[1], (top[1][0], top[1][1] + thick), (top[2][0], top[2][1] + thick)]
    parts: tuple[Shape, ...] = (
        polyline(top, closed=True, fill="#F1E3C4", stroke=pen("outline")),
        polyline(edge, closed=True, fill="#D7C39A", stroke=pen("outline")),
        polyline(side, closed=True, fill="#C6B088", stroke=pen("line")),
        strokes([((left + 6, y + 1.5), (right - 8, y + 1.5))], Stroke("#D7C39A", 0.5)),
    )
    return Group(parts, name="card")


def _arrow(start: Point, end: Point) -> Group:
    """A motion mark from one point to another."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    long = math.hypot(dx, dy)
    ux, uy = dx / long, dy / long
    barbs = [(end[0] - 5 * ux + side * 3.2 * uy, end[1] - 5 * uy - side * 3.2 * ux) for side in (-1, 1)]
    pens = Stroke("look", 1.6)
    return Group((polyline([start, end], stroke=pens), polyline([barbs[0], end, barbs[1]], stroke=pens)), name="motion")


def _floor(y: float = _FLOOR + 8) -> Shape:
    """The edge of the surface that it all stands on."""
    return strokes([((4, y), (96, y))], pen("line", "ink-soft"))


def _cover() -> list[Shape]:
    back, front = _cup((50, 54))
    return [
        _floor(),
        Ellipse((50, _FLOOR), _RIM, 4.2, None, pen("fine", "ink-soft", opacity=0.6)),
        back,
        _animal((51, _FLOOR)),
        front,
        _arrow((16, 30), (16, 60)),
        _arrow((84, 30), (84, 60)),
    ]


def _slide() -> list[Shape]:
    back, front = _cup((44, _FLOOR))
    return [
        _floor(),
        ground_shadow((46, _FLOOR + 4), 36, 3.4),
        back,
        _card(46, 90, _FLOOR),
        _animal((36, _FLOOR)),
        front,
        _arrow((92, 62), (72, 62)),
    ]


def _carry() -> list[Shape]:
    back, front = _cup((50, 60))
    return [
        _floor(92),
        ground_shadow((50, 90), 34, 3.0, 0.16),
        _card(16, 84, 60),
        back,
        _animal((51, 60)),
        front,
        _arrow((7, 78), (7, 52)),
        _arrow((93, 78), (93, 52)),
    ]


def _release() -> list[Shape]:
    back, front = _cup((63, 69.5), 80.0, 0.72)
    grass: list[Shape] = []
    for x, high, lean in ((8, 15, -3), (12, 20, 2), (16, 13, 4), (91, 13, -3), (95, 18, 2), (48, 8, 2), (52, 6, -2)):
        blade = [(x - 0.9, 84.0), (x + lean * 0.5, 84 - high * 0.6), (x + lean, 84.0 - high), (x + 0.9, 84.0)]
        grass.append(smooth(blade, closed=True, fill="leaf", stroke=pen("fine", "leaf-dark"), tension=0.4))
    soil = [(2.0, 84.0), (30.0, 83.0), (60.0, 84.5), (98.0, 83.5), (98.0, 94.0), (2.0, 94.0)]
    ground = LinearGradient((0, 83), (0, 94), (Stop(0, "soil", 0.9), Stop(1, "soil", 0.15)))
    return [
        polyline(soil, closed=True, fill=ground),
        strokes([soil[:4]], pen("line", "ink-soft")),
        *grass,
        back,
        front,
        _animal((30, 84)),
        _arrow((50, 58), (22, 58)),
    ]


def _photo() -> list[Shape]:
    body = LinearGradient((72, 0), (80, 0), (Stop(0, "#4A4540"), Stop(0.5, "#6B645D"), Stop(1, "#3A3530")))
    phone = [(74.0, 26.0), (80.0, 28.0), (75.0, 56.0), (69.0, 54.0)]
    lens = (72.6, 33.5)
    sight = Stroke("look", 0.7, 0.8)
    frame = [(10.0, 62.0), (42.0, 62.0), (42.0, 82.0), (10.0, 82.0)]
    corners: list[list[Point]] = []
    for (x, y), dx, dy in zip(frame, (6, -6, -6, 6), (6, 6, -6, -6), strict=True):
        corners.append([(x + dx, y), (x, y), (x, y + dy)])
    return [
        _floor(84),
        strokes([(lens, (42.0, 62.0)), (lens, (42.0, 82.0))], sight),
        _animal((27, 84 - 3)),
        strokes(corners, Stroke("look", 1.3)),
        polyline(phone, closed=True, fill=body, stroke=pen("outline")),
        Ellipse(lens, 1.5, 1.7, "black", pen("line", "paper-shade")),
        strokes([((30, 93), (76, 93)), ((30, 90.6), (30, 95.4)), ((76, 90.6), (76, 95.4))], pen("outline")),
    ]


def draw_cup_and_card(settings: Mapping[str, object]) -> Drawing:
    """One step of moving a small animal with a cup and a card. Settings: `step`, one of `STEPS`.

    `photo` shows it photographed from a step away.
    """
    s = Settings(settings, "cup-and-card")
    step = s.choice("step", STEPS, "cover")
    s.done()
    draw = {"cover": _cover, "slide": _slide, "carry": _carry, "release": _release, "photo": _photo}
    return Drawing(tuple(draw[step]()))


RECIPES = {"cup-and-card": draw_cup_and_card}
