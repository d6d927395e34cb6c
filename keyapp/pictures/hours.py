"""Recipe `when-out`: a spider out in daylight, out after dark, or hidden under a board until that is lifted."""

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
    Shape,
    Stop,
    Stroke,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.spider_side import side_spider
from keyapp.pictures.style import blend, cylinder, pen, ring
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "STATES", "draw_when_out"]

STATES = ("by-day", "after-dark", "hidden")
"""What the picture may show."""

_GROUND = 80.0
_SKIES = {"by-day": ("#BFE0F2", "#EAF5FA"), "after-dark": ("#141C33", "#2C3A5C"), "hidden": ("#E7E2D8", "#F4F0E8")}
_SOIL = {"by-day": "#C9B38C", "after-dark": "#4C4A4A", "hidden": "#B79F7A"}


def _sun(at: Point) -> Group:
    rays = []
    for step in range(12):
        turn = math.radians(30 * step)
        rays.append(tuple((at[0] + math.sin(turn) * reach, at[1] - math.cos(turn) * reach) for reach in (13.0, 17.5)))
    return Group(
        (Circle(at, 10.5, "#F7C948", pen("outline", "#B9862A")), strokes(rays, Stroke("#E2A72E", 1.4))), name="sun"
    )


def _night(at: Point) -> Group:
    moon = (Circle(at, 11.0, "#F6EBC1"), Circle((at[0] - 5.0, at[1] - 2.5), 9.6, blend(*_SKIES["after-dark"], 0.26)))
    rng = seeded("when-out stars")
    stars = [Circle((rng.uniform(5, 95), rng.uniform(5, 46)), rng.uniform(0.35, 0.8), "#F4F0DC") for _ in range(34)]
    return Group((*stars, *moon), name="moon")


def _board() -> Group:
    """A board lifted at its right end, on a prop of nothing but an arrow that says it has just been raised."""
    board = polyline(
        [(8, 79.6), (91, 37.5), (94, 43.0), (11, 85.2)],
        closed=True,
        fill=cylinder((50, 58), (53, 64), "#B5895A", depth=0.3),
        stroke=pen("outline"),
    )
    grain = strokes([((16, 77.8), (88, 41.2)), ((20, 78.4), (91.5, 42.2))], pen("hair", "#6E4C2A"))
    arrow = Group(
        (
            smooth([(94.5, 74), (96.5, 62), (94.5, 51)], stroke=Stroke("look", 1.6)),
            polyline([(91.2, 54.6), (94.3, 49.6), (97.4, 54.6)], stroke=Stroke("look", 1.6)),
        ),
        name="motion",
    )
    return Group((board, grain, arrow), name="board")


def draw_when_out(settings: Mapping[str, object]) -> Drawing:
    """The spider on the ground below sky and sun, below moon and stars, or below a lifted board. Settings: `state`."""
    s = Settings(settings, "when-out")
    state = s.choice("state", STATES, "by-day")
    s.done()
    high, low = _SKIES[state]
    soil = _SOIL[state]
    items: list[Shape] = [
        polyline([(1, 1), (99, 1), (99, _GROUND), (1, _GROUND)], closed=True,
                 fill=LinearGradient((0, 0), (0, _GROUND), (Stop(0, high), Stop(1, low)))),
        polyline([(1, _GROUND), (99, _GROUND), (99, 99), (1, 99)], closed=True, fill=soil),
    ]  # fmt: skip
    if state == "by-day":
        items.append(_sun((79, 21)))
    elif state == "after-dark":
        items.append(_night((76, 21)))
    plan = Settings(planned({"plan": "plain", "seed": "when-out"}), "when-out")
    if state == "hidden":
        items.append(
            polyline([(11, 85.0), (93, 43.4), (93, _GROUND), (20, _GROUND)], closed=True, fill="ink", opacity=0.22)
        )
        items.append(side_spider(plan, (73, 71.0), 17, "stand"))
        items.append(_board())
        items.append(ring((72, 71.0), 20, 11.5))
    else:
        items.append(side_spider(plan, (46, 66.4), 29, "stand"))
    return Drawing(tuple(items))


RECIPES = {"when-out": draw_when_out}
