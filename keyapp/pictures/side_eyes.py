"""Recipe `side-eye-gap`: a spider's face with two rows of four eyes, for the two eyes at each side of it."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.eyes import Eye, eye
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, Shape
from keyapp.pictures.spider_face import HEADS, draw_face
from keyapp.pictures.style import ring

__all__ = ["GAPS", "RECIPES", "draw_side_eyes", "side_eyes"]

_WIDTH = 54.0
_RADIUS = 0.05
_MIDDLE = (Eye(0.085, 0.4, 0.044), Eye(0.1, 0.215, 0.044))
_SIDE = (0.315, 0.3)
GAPS = {"touching": 0.0, "apart": 1.0}
"""State to the gap between the two eyes of one side, in widths of an eye."""


def side_eyes(state: str) -> tuple[Eye, Eye]:
    """The upper and the lower side eye of the right half, in parts of the face's width."""
    half = _RADIUS * (1 + GAPS[state])
    x, y = _SIDE
    lean = half * 0.16
    return Eye(x + lean, y - half, _RADIUS), Eye(x - lean, y + half, _RADIUS)


def draw_side_eyes(settings: Mapping[str, object]) -> Drawing:
    """A face with the side eyes ringed. Settings: `state` touching|apart, `color`, `seed`."""
    s = Settings(settings, "side-eye-gap")
    state = s.choice("state", GAPS, "touching")
    tone = s.color("color", "#BE9058")
    seed = s.text("seed", "side-eyes")
    s.done()
    face = draw_face({"layout": "two-rows", "color": tone, "seed": seed})
    top = HEADS["two-rows"].top
    half = (*_MIDDLE, *side_eyes(state))
    eyes = [
        eye((50 + side * one.x * _WIDTH, top + one.y * _WIDTH), one.r * _WIDTH, rim="#1A1613")
        for one in sorted(half, key=lambda one: one.y)
        for side in (-1, 1)
    ]
    items: list[Shape] = []
    for item in face.items:
        if isinstance(item, Group) and item.name == "eye":
            # The face's own eyes give way, all at once, to those of the state.
            items, eyes = [*items, *eyes], []
        else:
            items.append(item)
    x, y = _SIDE
    items += [ring((50 + side * x * _WIDTH, top + y * _WIDTH), 7.0, 11.2) for side in (-1, 1)]
    return Drawing(tuple(items))


RECIPES = {"side-eye-gap": draw_side_eyes}
