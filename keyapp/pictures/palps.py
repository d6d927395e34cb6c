"""Recipe `palps`: the front of a spider from above, for the two short feelers beside its mouth."""

from __future__ import annotations

import math
from collections.abc import Mapping

from keyapp.pictures.part import named, ring_round
from keyapp.pictures.plans import merged
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Ellipse,
    Group,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    placed,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.spider_close import draw_close
from keyapp.pictures.style import pen

__all__ = ["RECIPES", "draw_palps"]

_CLOSE: Mapping[str, object] = {
    "plan": "plain",
    "focus": "front",
    "legs": {"thick": 0.18},
}
_ENDS: Mapping[str, Mapping[str, object]] = {
    "knobs": {"palps": {"length": 2.4, "thick": 0.74, "bulbs": "bold", "bulb-color": "#3B2318", "spread": 34}},
    "thin": {"palps": {"length": 2.1, "thick": 0.4, "spread": 34}},
}
_SCALE = 0.93
_FAN = ((34, 52, 26), (66, 74, 52), (106, 100, 128), (140, 132, 160))


def _small(at: Point, palp: float) -> Group:
    """A small flat spider whose palps, `palp` units long, stand out in the accent colour."""
    x, y = at
    legs: list[list[Point]] = []
    palps: list[list[Point]] = []
    for side in (-1, 1):
        for hip, knee, foot in _FAN:
            line = [(x, y)]
            for turn, reach in ((hip, 2.4), (knee, 3.8), (foot, 5.0)):
                angle = math.radians(side * turn)
                line.append((line[-1][0] + math.sin(angle) * reach, line[-1][1] - math.cos(angle) * reach))
            legs.append(line)
        palps.append(
            [
                (x + side * 0.8, y - 1.6),
                (x + side * (0.9 + palp * 0.2), y - 1.6 - palp * 0.5),
                (x + side * (0.8 + palp * 0.12), y - 1.6 - palp),
            ]
        )
    ends = [Circle(line[-1], 0.95, "look") for line in palps] if palp > 5 else []
    return Group(
        (
            *(smooth(line, stroke=pen("line", "silk", times=1.2), tension=0.3) for line in legs),
            Ellipse((x, y + 5.4), 2.7, 3.6, "silk"),
            Circle((x, y), 2.1, "silk"),
            strokes(palps, Stroke("look", 0.8)),
            *ends,
        ),
        name="small-spider",
    )


def _fade() -> Group:
    """As the fade of other close-ups, but taller, so that what stands out in front of the head stays clear."""
    stops = (Stop(0, "paper", 0), Stop(0.78, "paper", 0), Stop(0.9, "paper", 0.75), Stop(1, "paper"))
    x, y, rx, ry = 50.0, 49.0, 40.0, 47.0
    # A round fade stretched to an ellipse: the sheet it is painted on is squeezed first, to end on the canvas edge.
    sheet = [((px - x) / rx, (py - y) / ry) for px, py in ((0, 0), (100, 0), (100, 100), (0, 100))]
    wash = polyline(sheet, closed=True, fill=RadialGradient((0, 0), 1, stops))
    return Group((wash,), (rx, 0, 0, ry, x, y), "fade")


def _ring(palp: list[Group]) -> Shape:
    """The ring round the part of one palp that stands out in front: its three outer segments and its knob, if any."""
    outer = named(palp, "palp-segment")[:3]
    return ring_round([*outer, *named(palp, "bulb")], grow=1.6)


def draw_palps(settings: Mapping[str, object]) -> Drawing:
    """The front of a spider, its palps ringed. Settings: `ends` knobs|thin, `long` (beside it,
    small, a spider with very long ones), `seed`."""
    s = Settings(settings, "palps")
    ends = s.choice("ends", _ENDS, "thin")
    long = s.flag("long")
    seed = s.text("seed", "palps")
    s.done()
    close = draw_close(merged(merged(_CLOSE, _ENDS[ends]), {"seed": seed}))
    groups = [item for item in close.items if not (isinstance(item, Group) and item.name == "fade")]
    palps = [item for item in groups if isinstance(item, Group) and item.name in ("palp", "bulb")]
    half = len(palps) // 2
    rings = [_ring(one) for one in (palps[:half], palps[half:])]
    at = (50 - 50 * _SCALE, 97 - 97 * _SCALE)
    items: list[Shape] = [placed(groups, at=at, scale=_SCALE), _fade(), placed(rings, at=at, scale=_SCALE)]
    if long:
        items.append(_small((88, 87), 11.0))
    return Drawing(tuple(items))


RECIPES = {"palps": draw_palps}
