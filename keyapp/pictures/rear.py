"""Recipe `rear-size`: a spider from above with a bar across each part of its body, to hold their widths together."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.part import recolored
from keyapp.pictures.plans import planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Box, Drawing, Group, Shape, box_of
from keyapp.pictures.sizing import measuring_bar
from keyapp.pictures.spider import animal

__all__ = ["RECIPES", "body_widths", "draw_rear_size"]

_FRONT_MM = 4.0
_UNITS = 4.6
"""Canvas units for one millimetre, the same for every state, so that the front part is the same in all."""
_LONG = 1.3
_WAIST = (50.0, 43.5)


def _built(times: float) -> tuple[list[Shape], list[Shape]]:
    over = {
        "plan": "neutral",
        "seed": "rear",
        "carapace": {"color": "#B99A70"},
        "abdomen": {
            "width": _FRONT_MM * times,
            "length": max(5.4, _FRONT_MM * times * _LONG),
            "turn": 0,
            "color": "#B99A70",
        },
        "legs": {"lengths": [7.6, 8.2, 7.8, 9.4], "sway": 1.5, "posture": "all-round"},
        "palps": {"length": 2.2},
    }
    built = animal(Settings(planned(over), "rear-size"), _UNITS, _WAIST)
    return list(built.limbs), list(built.trunk)


def _box(trunk: list[Shape], name: str) -> Box:
    return box_of([shape for shape in trunk if isinstance(shape, Group) and shape.name == name])


def body_widths(times: float) -> tuple[float, float]:
    """Widths of the front part and of the back part as drawn, in canvas units."""
    _, trunk = _built(times)
    return _box(trunk, "carapace").width, _box(trunk, "abdomen").width


def draw_rear_size(settings: Mapping[str, object]) -> Drawing:
    """A bar across the front part and one across the back part. Settings: `times`, the width of the
    back part in widths of the front part."""
    s = Settings(settings, "rear-size")
    times = s.number("times", 1, least=0.5, most=3)
    s.done()
    limbs, trunk = _built(times)
    bars = []
    for name in ("carapace", "abdomen"):
        box = _box(trunk, name)
        y = box.centre[1]
        bars.append(measuring_bar((box.left, y), (box.right, y), upright=False))
    return Drawing((recolored(Group(tuple(limbs)), "paper", wash=0.5), *trunk, *bars))


RECIPES = {"rear-size": draw_rear_size}
