"""Recipe `eye-shine`: a spider in the beam of a flashlight at night, its eyes bright or not."""

from __future__ import annotations

import math
from collections.abc import Mapping

from keyapp.pictures.plans import planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Group,
    LinearGradient,
    Point,
    RadialGradient,
    Shape,
    Stop,
    placed,
    polyline,
)
from keyapp.pictures.spider import animal
from keyapp.pictures.style import cylinder, pen, ring

__all__ = ["RECIPES", "STATES", "draw_eye_shine"]

STATES = ("shines", "no-shine")
"""Whether two eyes shine back."""

_NIGHT = "#1B2530"
_WAIST: Point = (50.0, 33.0)
_UNITS = 2.5
_EYES: tuple[Point, ...] = ((47.4, 43.2), (52.6, 43.2))
_SPIDER: Mapping[str, object] = {
    "plan": "neutral",
    "seed": "eye-shine",
    "carapace": {"color": "#7C6850"},
    "abdomen": {"color": "#86705A"},
    "legs": {"lengths": [13.5, 12.5, 11, 14.5], "color": "#7C6850", "sway": 2},
    "palps": {"length": 2.4},
}


def _star(at: Point) -> Group:
    """A point of light: a glow, four rays and a white core."""
    x, y = at
    rays = []
    for step in range(8):
        turn, reach = math.radians(45 * step), (6.4 if step % 2 == 0 else 1.3)
        rays.append((x + math.sin(turn) * reach, y - math.cos(turn) * reach))
    glow = RadialGradient(at, 6.0, (Stop(0, "#D8FFF4", 0.95), Stop(0.45, "#7FE9D0", 0.5), Stop(1, "#7FE9D0", 0.0)))
    return Group(
        (Circle(at, 6.0, glow), polyline(rays, closed=True, fill="#FFFFFF"), Circle(at, 1.7, "#FFFFFF")), name="spark"
    )


def _flashlight() -> Group:
    body = polyline(
        [(45.5, 99.0), (45.5, 90.5), (42.5, 85.5), (57.5, 85.5), (54.5, 90.5), (54.5, 99.0)],
        closed=True,
        fill=cylinder((43, 92), (57, 92), "#8C969C"),
        stroke=pen("outline"),
    )
    lens = polyline(
        [(42.5, 85.5), (57.5, 85.5), (57.0, 83.6), (43.0, 83.6)], closed=True, fill="#FFF3C4", stroke=pen("line")
    )
    return Group((body, lens), name="flashlight")


def draw_eye_shine(settings: Mapping[str, object]) -> Drawing:
    """A spider that faces the light, a ring round its eyes. Settings: `state` shines|no-shine."""
    s = Settings(settings, "eye-shine")
    state = s.choice("state", STATES, "shines")
    s.done()
    built = animal(Settings(planned(_SPIDER), "eye-shine"), _UNITS, (0.0, 0.0))
    beam = LinearGradient(
        (0, 84), (0, 2), (Stop(0, "#FFF3C4", 0.85), Stop(0.6, "#FFF3C4", 0.5), Stop(1, "#FFF3C4", 0.16))
    )
    items: list[Shape] = [
        polyline([(1, 1), (99, 1), (99, 99), (1, 99)], closed=True, fill=_NIGHT),
        polyline([(43.5, 84.0), (56.5, 84.0), (93, 2), (7, 2)], closed=True, fill=beam),
        placed((*built.limbs, *built.trunk), at=_WAIST, turn=180, name="spider"),
        _flashlight(),
    ]
    if state == "shines":
        items += [_star(at) for at in _EYES]
    else:
        items.append(ring((50.0, 43.0), 8.5, 6.5))
    return Drawing(tuple(items))


RECIPES = {"eye-shine": draw_eye_shine}
