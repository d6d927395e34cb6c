"""Recipe `rice-step`: a spider beside a grain of rice, both at one scale, for the length of its body."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.part import recolored
from keyapp.pictures.plans import planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Box, Drawing, Group, Point, Shape, Stroke, box_of, placed, smooth, strokes
from keyapp.pictures.sizing import measuring_bar
from keyapp.pictures.spider import animal
from keyapp.pictures.style import cylinder, pen, scale_bar
from keyapp.pictures.texture import seeded

__all__ = ["GRAIN", "RECIPES", "UNITS", "body_box", "draw_beside_rice"]

GRAIN = 6.0
"""Length of the grain of rice, mm."""
UNITS = 5.0
"""Canvas units for one millimetre, the same for every animal."""

_BODY = 12.0
_SPIDER: Mapping[str, object] = {
    "plan": "plain",
    "legs": {"lengths": [10, 9, 7.8, 10], "posture": "all-round", "sway": 1.5},
}
_MIDDLE = 47.0


def _grain(centre: Point) -> Group:
    """A grain of white rice standing on end, `GRAIN` mm long."""
    x, y = centre
    half, wide = GRAIN * UNITS / 2, GRAIN * UNITS * 0.17
    rng = seeded("rice")
    edge = [
        (0.0, -1.0),
        (0.55, -0.86),
        (0.92, -0.5),
        (1.0, 0.0),
        (0.9, 0.5),
        (0.6, 0.84),
        (0.0, 1.0),
        (-0.56, 0.86),
        (-0.9, 0.5),
        (-1.0, 0.0),
        (-0.92, -0.46),
        (-0.74, -0.68),
        (-0.56, -0.74),
        (-0.34, -0.9),
    ]
    spots = [(x + u * wide, y + v * half) for u, v in edge]
    lines = []
    for k in (-0.5, -0.15, 0.3, 0.62):
        start, end = rng.uniform(-0.66, -0.5), rng.uniform(0.5, 0.7)
        lines.append(
            ((x + k * wide * 0.8, y + start * half), (x + k * wide * 1.12, y), (x + k * wide * 0.8, y + end * half))
        )
    fill = cylinder((x - wide, y), (x + wide, y), "#F1E8D2", depth=0.2, shine=0.75)
    return Group(
        (
            smooth(spots, closed=True, fill=fill, stroke=pen("outline", "#6B5D48")),
            strokes(lines, Stroke("#B9A988", 0.3, 0.7)),
        ),
        name="rice",
    )


def _dashes(y: float, left: float, right: float) -> Group:
    count = int((right - left) / 2.4)
    step = (right - left) / count
    line = [((left + step * k, y), (left + step * (k + 0.55), y)) for k in range(count)]
    return Group((strokes(line, pen("line", "look")),), name="guide")


def _parts(body_mm: float) -> tuple[list[Shape], list[Shape], Box]:
    s = Settings(planned({**_SPIDER, "seed": "rice"}), "rice-step")
    built = animal(s, UNITS * body_mm / _BODY, (0.0, 0.0))
    trunk = [shape for shape in built.trunk if isinstance(shape, Group) and shape.name in ("carapace", "abdomen")]
    return list(built.limbs), list(built.trunk), box_of(trunk)


def body_box(body_mm: float) -> Box:
    """The box round the body (front part and hind part, no legs) of a spider `body_mm` long, its waist at (0, 0)."""
    return _parts(body_mm)[2]


def draw_beside_rice(settings: Mapping[str, object]) -> Drawing:
    """A spider beside a grain of rice. Settings: `body-mm`, the length of the body without the legs."""
    s = Settings(settings, "rice-step")
    limbs, trunk, box = _parts(s.number("body-mm", 10, least=2, most=11))
    s.done()
    x, y = 36.0, _MIDDLE - box.centre[1]
    top, bottom = box.top + y, box.bottom + y
    rice = 90.0
    bar = box_of(limbs).right + x + 4.5
    half = GRAIN * UNITS / 2
    return Drawing(
        (
            _dashes(_MIDDLE - half, 6, rice - 7),
            _dashes(_MIDDLE + half, 6, rice - 7),
            placed([recolored(Group(tuple(limbs)), "paper", wash=0.42)], at=(x, y)),
            placed(trunk, at=(x, y)),
            measuring_bar((bar, top), (bar, bottom), upright=True),
            _grain((rice, _MIDDLE)),
            scale_bar(GRAIN, UNITS),
        )
    )


RECIPES = {"rice-step": draw_beside_rice}
