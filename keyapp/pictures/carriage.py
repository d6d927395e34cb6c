"""Recipe `carriage`: an animal with eight legs seen from the front, for how high its body is carried."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, Shape, placed, strokes
from keyapp.pictures.style import blend, globe, pen
from keyapp.pictures.texture import seeded

__all__ = ["POSES", "RECIPES", "Pose", "draw_carriage"]

_GROUND = 86.0
_TONE = "#9A7850"


@dataclass(frozen=True, slots=True)
class Pose:
    """Heights above the ground in canvas units: of the middle of the body and of the knees; half-axes of the body;
    how far the knees and the feet of the nearest and the farthest leg stand out to the side; thickness of the legs."""

    body: float
    knee: float
    rx: float
    ry: float
    knees: tuple[float, float]
    feet: tuple[float, float]
    thick: float


POSES = {
    "hung-between-knees": Pose(20, 66, 9, 7.5, (18, 30), (34, 45), 1.5),
    "clear-of-ground": Pose(26, 36, 15, 12, (22, 31), (28, 43), 3.0),
    "on-the-ground": Pose(8.5, 13, 18, 8.5, (24, 31), (30, 43), 3.0),
}
"""State to how the animal stands in it."""


def _leg(pose: Pose, side: int, index: int) -> Group:
    part = index / 3
    out = pose.knees[0] + (pose.knees[1] - pose.knees[0]) * part
    foot = pose.feet[0] + (pose.feet[1] - pose.feet[0]) * part
    lift = pose.knee * (1 - 0.07 * index)
    joints: list[Point] = [
        (50 + side * pose.rx * 0.6, _GROUND - pose.body),
        (50 + side * out, _GROUND - lift),
        (50 + side * (out + (foot - out) * 0.55), _GROUND - lift * 0.45),
        (50 + side * foot, _GROUND - 0.6),
    ]
    t = pose.thick
    tone = blend(_TONE, "paper", 0.1 * (3 - index) / 3)
    look = LimbLook((blend(tone, "#2A1A10", 0.25), tone, tone), outline=0.45)
    widths = ((t, t * 1.1, t * 0.9), (t * 0.9, t * 0.8, t * 0.6), (t * 0.6, t * 0.5, t * 0.3))
    return limb(joints, widths, look, seeded("carriage", side, index))


def draw_carriage(settings: Mapping[str, object]) -> Drawing:
    """The animal on the ground, a dashed line across at the height of its knees. Settings: `state`."""
    s = Settings(settings, "carriage")
    pose = POSES[s.choice("state", POSES, "clear-of-ground")]
    s.done()
    y = _GROUND - pose.body
    items: list[Shape] = [strokes([((3.0, _GROUND), (97.0, _GROUND))], pen("bold", "ink-soft"))]
    items.append(Ellipse((50, _GROUND + 1.6), pose.rx * 1.2, 1.4, "ink", opacity=0.16))
    legs = [_leg(pose, side, index) for index in range(4) for side in (-1, 1)]
    items += legs[:4]
    body: list[Shape] = [
        Ellipse((50, y), pose.rx, pose.ry, globe((50, y), pose.rx, _TONE, depth=0.42, shine=0.3), pen("outline"))
    ]
    for side in (-1, 1):
        body.append(Ellipse((50 + side * 2.6, y - pose.ry * 0.32), 1.1, 1.1, "ink"))
    items.append(Group(tuple(body), name="body"))
    items += legs[4:]
    level = _GROUND - pose.knee
    dashes = [((x, level), (x + 2.2, level)) for x in (4 + 4 * step for step in range(24))]
    items.append(Group((strokes(dashes, pen("line", "look")),), name="guide"))
    return Drawing((placed(items, at=(0, -6)),))


RECIPES = {"carriage": draw_carriage}
