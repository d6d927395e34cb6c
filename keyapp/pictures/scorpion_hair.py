"""Recipe `scorpion-hair`: a claw and the end of a tail, close up, with many long hairs or nearly bare."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.part import fitted, framed
from keyapp.pictures.scorpion_build import KINDS, claw, tail
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, LinearGradient, Point, Shape, Stop, placed, polyline
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "scorpion_hair"]


def scorpion_hair(values: Mapping[str, object]) -> Drawing:
    """Recipe `scorpion-hair`. Settings: many (long dark hairs all over; else hardly any), seed."""
    settings = Settings(values)
    many = settings.flag("many")
    rng = seeded("scorpion-hair", settings.whole("seed", 1))
    settings.done()
    # The same claw and the same tail both times: only the hairs differ.
    kind = replace(
        KINDS["giant-hairy"], hairs=1.15 if many else 0.0, hair=3.2 if many else 1.0, joints=(5.4, 6.0, 6.4, 7.4, 9.6)
    )
    look = LimbLook((kind.hands,), hairs=2.2 if many else 0.0, hair_length=2.6, outline=0.5)
    arm = limb([(20.6, 59), (23.6, 47)], ((4.0, 5.2, 3.2),), look, rng, name="arm")
    spots = ((38, 63), (42.6, 60.2), (48.4, 58.2), (54.4, 55), (58.6, 48.8), (60.6, 39.4))
    items: list[Shape] = [
        placed([arm, claw((23.6, 47), 14, kind, kind.hands, rng), _wash((19.5, 61), (22.6, 50))],
               at=(-18, -23), scale=1.6),
        placed([tail(spots, kind, rng, 6, outer=1), _wash((35.5, 64.5), (44, 59.6))], name="tail-end"),
    ]  # fmt: skip
    body, _ = fitted(items, margin=5, most=3)
    return framed([body])


def _wash(start: Point, end: Point) -> Group:
    """Lets a joint come out of the paper between two points."""
    sheet = LinearGradient(start, end, (Stop(0, "paper"), Stop(0.3, "paper", 0.95), Stop(1, "paper", 0.0)))
    dx, dy = end[0] - start[0], end[1] - start[1]
    wide = 6.0 / math.hypot(dx, dy)
    corners = [(x - dy * k * wide, y + dx * k * wide) for (x, y), k in ((start, -1), (start, 1), (end, 1), (end, -1))]
    back = [(x - dx * 0.3, y - dy * 0.3) for x, y in corners[:2]]
    return Group((polyline([*back, *corners[2:]], closed=True, fill=sheet),), name="fade")


RECIPES = {"scorpion-hair": scorpion_hair}
