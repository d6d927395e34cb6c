"""Recipe `on-glass`: a spider at the upright wall of a glass, for whether it climbs or slides back."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from keyapp.pictures.part import ground_shadow
from keyapp.pictures.plans import planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Drawing,
    Group,
    LinearGradient,
    Point,
    Shape,
    Stop,
    Stroke,
    placed,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.spider import animal
from keyapp.pictures.style import pen

__all__ = ["RECIPES", "draw_on_glass"]

_GLASS = "#BFD3D6"
_WALL = 8.0
_FLOOR = 88.0
_RIM = 5.0
_SCALE = 2.0
_SPIDER: Mapping[str, object] = {
    "plan": "plain",
    "seed": "glass",
    "legs": {"thick": 0.24, "lengths": [14.5, 13, 11, 14.5], "sway": 2},
}


def _glass() -> tuple[list[Shape], list[Shape]]:
    """A straight drinking glass: what lies behind the spider, and the near edges and lights before it."""
    left, right, thick = _WALL, 100 - _WALL, 3.0
    base = _FLOOR + 7.0
    inside = LinearGradient(
        (left, 0), (right, 0), (Stop(0, _GLASS, 0.34), Stop(0.4, _GLASS, 0.1), Stop(1, _GLASS, 0.3))
    )
    ellipse = [
        ((left + right) / 2 + math.cos(t) * (right - left) / 2, _RIM + math.sin(t) * 2.6)
        for t in (k * math.pi / 12 for k in range(24))
    ]
    back: list[Shape] = [
        ground_shadow(((left + right) / 2, base + 0.6), 46, 3.0),
        polyline([(left, _RIM), (right, _RIM), (right, _FLOOR), (left, _FLOOR)], closed=True, fill=inside),
        smooth(ellipse, closed=True, stroke=pen("line", "ink-soft")),
    ]
    foot = [(left - thick, _FLOOR), (right + thick, _FLOOR), (right + thick - 1, base), (left - thick + 1, base)]
    slab = LinearGradient((0, _FLOOR), (0, base), (Stop(0, "#DCE8E8"), Stop(0.5, "#A9C1C5"), Stop(1, "#D3E2E3")))
    front: list[Shape] = [polyline(foot, closed=True, fill=slab, stroke=pen("line", "ink-soft"))]
    for inner, outer in ((left, left - thick), (right, right + thick)):
        side = LinearGradient((outer, 0), (inner, 0), (Stop(0, "#A9C1C5"), Stop(0.45, "#EAF2F2"), Stop(1, "#B7CDD0")))
        edge = [(outer, _RIM), (inner, _RIM), (inner, _FLOOR), (outer, _FLOOR)]
        front.append(polyline(edge, closed=True, fill=side, stroke=pen("line", "ink-soft")))
    light = [(((right - 6.0), 14.0), (right - 6.0, 52.0)), ((right - 9.0, 14.0), (right - 9.0, 30.0))]
    front.append(strokes(light, Stroke("white", 1.3, 0.9)))
    return back, front


def _arrow(x: float, start: float, end: float) -> Group:
    """A straight motion mark up or down the page."""
    way = 1 if end > start else -1
    head = polyline([(x - 3.4, end - way * 5), (x, end), (x + 3.4, end - way * 5)], stroke=Stroke("look", 1.6))
    return Group((polyline([(x, start), (x, end)], stroke=Stroke("look", 1.6)), head), name="motion")


def _skids(feet: Sequence[Point], top: float) -> Group:
    """Traces of feet that slid down the wall, from `top` to where the feet are."""
    lines = [((x, top), (x + 0.8, (top + y) / 2), (x, y - 2.0)) for x, y in feet]
    return Group((strokes(lines, Stroke("look", 0.8, 0.7)),), name="skid")


def _spider(at: Point, turn: float) -> tuple[Group, list[Point]]:
    """The spider from above, head up, and where the feet of its two front pairs of legs are."""
    built = animal(Settings(planned(_SPIDER), "on-glass"), _SCALE, (0.0, 0.0))
    group = placed([*built.limbs, *built.trunk], at=at, turn=turn, name="spider")
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    tips = [pose.joints[-1] for pose in built.poses if pose.pair < 2]
    return group, [(at[0] + x * cos - y * sin, at[1] + x * sin + y * cos) for x, y in tips]


def draw_on_glass(settings: Mapping[str, object]) -> Drawing:
    """A spider at the wall of a glass. Settings: `does` climbs|slips."""
    s = Settings(settings, "on-glass")
    does = s.choice("does", ("climbs", "slips"), "climbs")
    s.done()
    back, front = _glass()
    items: list[Shape] = []
    if does == "climbs":
        spider, _ = _spider((59.0, 33.0), 0.0)
        items += [spider, _arrow(20.0, 80.0, 16.0)]
    else:
        spider, feet = _spider((59.0, 66.0), -9.0)
        items += [_skids(feet, 12.0), spider, _arrow(20.0, 16.0, 80.0)]
    return Drawing((*back, *items, *front))


RECIPES = {"on-glass": draw_on_glass}
