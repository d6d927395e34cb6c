"""Recipe `scorpion-hold`: a scorpion up on a wall and one beneath a board, or one on the ground."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.part import fitted
from keyapp.pictures.scorpion import scorpion_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Ellipse, Group, Shape, Stroke, placed, polyline, strokes
from keyapp.pictures.style import pen
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "STATES", "draw_scorpion_hold"]

STATES = ("up-or-under", "on-the-ground")
"""Where the scorpion holds on."""


def _animal() -> Group:
    """The same scorpion in both pictures, from above, head up, filling the canvas."""
    body, _ = fitted(scorpion_parts("stout", "pale", "straight", seeded("scorpion-hold"), hairy=False))
    return Group((body,), name="scorpion")


def _wall() -> list[Shape]:
    rows = [(1.0, 1.0), (99.0, 1.0), (99.0, 84.0), (1.0, 84.0)]
    items: list[Shape] = [polyline(rows, closed=True, fill="#D9A88A")]
    lines = [((1.0, y), (99.0, y)) for y in (12.0, 24.0, 36.0, 48.0, 60.0, 72.0)]
    for index, y in enumerate((1, 12, 24, 36, 48, 60, 72)):
        first = 13.0 if index % 2 else 25.0
        lines += [
            ((x, float(y)), (x, float(min(84, y + 12 if y > 1 else 12))))
            for x in (first, first + 24, first + 48, first + 72)
            if x < 98
        ]
    items.append(strokes(lines, Stroke("#F1DCCD", 0.9)))
    items.append(polyline([(1, 84), (99, 84), (99, 99), (1, 99)], closed=True, fill="#B3A186"))
    items.append(strokes([((1.0, 84.0), (99.0, 84.0))], pen("bold", "ink-soft")))
    return items


def _sand() -> list[Shape]:
    rng = seeded("scorpion-hold sand")
    items: list[Shape] = [polyline([(1, 1), (99, 1), (99, 99), (1, 99)], closed=True, fill="#E2CFA6")]
    for _ in range(170):
        items.append(Circle((rng.uniform(2, 98), rng.uniform(2, 98)), rng.uniform(0.2, 0.55), "#A98F60", opacity=0.8))
    for x, y, rx, ry in ((12, 14, 7, 4.6), (86, 20, 6, 4), (11, 80, 5.4, 3.8), (88, 82, 8, 5.4), (80, 92, 4, 2.8)):
        items.append(Ellipse((x + 0.8, y + 1.4), rx, ry, "ink", opacity=0.2))
        items.append(Ellipse((x, y), rx, ry, "#A59A88", pen("line")))
    return items


def _up() -> Group:
    line = polyline([(84, 74), (84, 22)], stroke=Stroke("look", 1.6))
    head = polyline([(80.6, 27), (84, 21), (87.4, 27)], stroke=Stroke("look", 1.6))
    return Group((line, head), name="motion")


def draw_scorpion_hold(settings: Mapping[str, object]) -> Drawing:
    """A scorpion on a brick wall above the floor, or on sand among stones. Settings: `state`."""
    s = Settings(settings, "scorpion-hold")
    state = s.choice("state", STATES, "on-the-ground")
    s.done()
    if state == "up-or-under":
        animal = placed((_animal(),), at=(46 - 50 * 0.62, 42 - 50 * 0.62), scale=0.62)
        return Drawing((*_wall(), animal, _up()))
    animal = placed((_animal(),), at=(50 - 50 * 0.72, 52 - 50 * 0.72), scale=0.72)
    return Drawing((*_sand(), animal))


RECIPES = {"scorpion-hold": draw_scorpion_hold}
