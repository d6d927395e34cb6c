"""Recipe `scorpion-skin`: what a scorpion leaves when it grows, pale, hollow and split open at the front."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import replace

from keyapp.pictures.limb import LimbLook, joints_from, limb
from keyapp.pictures.part import Profile, fitted, framed, ground_shadow, leg_pair, recolored
from keyapp.pictures.scorpion_build import KINDS, claw, tail
from keyapp.pictures.scorpion_kinds import TOP, body_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, RadialGradient, Shape, Stop, placed, smooth, strokes
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import seeded, stipple

__all__ = ["RECIPES", "scorpion_skin"]

_SKIN = "#E4D6B4"


def _parts(rng: random.Random) -> list[Shape]:
    """The empty skin from above: legs drawn back, claws limp, a kinked tail, the lid of the front part lifted."""
    kind = replace(KINDS["stripe-tailed"], back=_SKIN, limbs=_SKIN, hands=_SKIN, end=_SKIN, mark="plain", lines=False,
                   hairs=0.15)  # fmt: skip
    items: list[Shape] = []
    look = LimbLook((_SKIN,), hairs=0.2, lean=True, shine=0.6)
    w = 1.8
    widths = ((w, w * 1.1, w), (w, w, w * 0.8), (w * 0.75, w * 0.75, w * 0.5), (w * 0.5, w * 0.4, w * 0.2))
    rows = (
        (36.8, (64, 106, 150, 182), 19.0), (38.8, (92, 124, 164, 196), 21.0),
        (40.6, (116, 140, 176, 206), 23.0), (42.2, (134, 150, 178, 200), 26.0),
    )  # fmt: skip
    for down, turns, length in rows:
        legs = leg_pair(rng, (54.2, down), [length * k for k in (0.27, 0.3, 0.23, 0.2)], turns, widths, look, jitter=8)
        items += [Group(leg.items, name="leg", opacity=0.85) for leg in legs]
    arm = LimbLook((_SKIN,), outline=0.45, shine=0.5)
    a = kind.arm_width * 0.9
    for side, bends in ((1, (72, 58, 4)), (-1, (84, 104, 40))):
        spots = joints_from((50 + side * 3.4, TOP + 3.0), (3.4, 6.2, 6.4), [side * t for t in bends])
        bent = limb(spots, ((a * 0.7, a * 0.8, a * 0.8), (a * 0.8, a, a * 0.9), (a * 0.8, a * 1.1, a * 0.7)), arm, rng)
        hand = claw(spots[-1], side * (-48 if side > 0 else 6), kind, _SKIN, rng, flip=side < 0)
        items.append(Group((bent, recolored(hand, _SKIN, line="ink", wash=0.35)), name="arm", opacity=0.9))
    # The tail has lost its stiffness: it lies in kinks.
    kinked = tail(joints_from((50, 60), kind.joints, (168, 196, 142, 188, 132)), kind, rng, 84)
    items.append(Group((recolored(kinked, _SKIN, line="ink", wash=0.55),), name="tail-skin", opacity=0.92))
    shell = [recolored(item, _SKIN, line="ink", wash=0.5) for item in body_parts(kind, rng)[:7]]
    items.append(Group(tuple(shell), name="back-skin"))
    # Light falls through the thin back: pale panes between the plates.
    panes = [[(46.4, y), (50, y + 0.5), (53.4, y)] for y in (44.0, 46.4, 49.0, 51.8, 54.4)]
    items.append(strokes(panes, pen("bold", "#FFFDF4", times=1.6, opacity=0.6)))
    # Split along the front and the sides: an open, dark mouth, its rim still whole.
    cup = Profile(
        ((TOP - 0.6, 2.6), (TOP - 0.2, 4.0), (TOP + 2, 5.2), (TOP + 5, 5.9), (TOP + 8.4, 6.0), (TOP + 9.8, 4.6))
    )
    hollow = RadialGradient((50, 39), 6.6, (Stop(0, "#1E140E"), Stop(0.55, "#463324"), Stop(1, "#A28A66")))
    edge = [cup.at(1, v) for v in (0.03, 0.2, 0.5, 0.8, 0.97)] + [cup.at(-1, v) for v in (0.97, 0.8, 0.5, 0.2, 0.03)]
    inner = [(50 + (x - 50) * 0.83, 37.6 + (y - 37.6) * 0.84) for x, y in edge]
    # Inside, the empty stumps of the legs are seen as holes.
    rim = pen("hair", "#D9C49A")
    holes = [
        Ellipse((50 + side * (3.0 + 0.12 * k), 35.8 + k * 1.75), 0.95, 0.66, "#120C08", rim, 0.95)
        for side in (-1, 1)
        for k in range(4)
    ]
    items.append(
        Group(
            (
                cup.outline(blend(_SKIN, "#FFFFFF", 0.4), pen("outline")),
                smooth(inner, closed=True, fill=hollow, stroke=pen("line")),
                *holes,
            ),
            name="cup",
        )
    )
    items.append(_lid(rng))
    return items


def _lid(rng: random.Random) -> Group:
    """The head shield, lifted off the cup and tipped back over to one side, with the clear lenses of its eyes."""
    lid = Profile(((-4.9, 2.4), (-4.6, 3.6), (-3.4, 4.5), (0, 5.2), (2.8, 5.7), (4.0, 5.3), (4.8, 3.6), (5.0, 1.6)), 0)
    parts: list[Shape] = [
        lid.outline(globe((-1, -1), 7, blend(_SKIN, "#8A6A44", 0.12), depth=0.3, shine=0.6), pen("outline")),
        strokes([((0, 0.6), (0, 4)), ((-3.4, 3.2), (0, 3.9), (3.4, 3.2))], pen("fine", opacity=0.6)),
        stipple(lid.at, rng, count=40, radius=0.12),
    ]
    for x, y, r in ((-0.7, -0.4, 0.5), (0.7, -0.4, 0.5), (-3.2, -3.6, 0.24), (3.2, -3.6, 0.24)):
        ball: list[Point] = [(x - r, y), (x, y - r), (x + r, y), (x, y + r)]
        parts.append(smooth(ball, closed=True, fill="#F6EFDD", stroke=pen("fine")))
    shadow = ground_shadow((0.6, 1.6), 6.4, 6.0, 0.3)
    return placed((shadow, *parts), at=(45.4, 27.2), turn=-30, name="lid-open")


def scorpion_skin(values: Mapping[str, object]) -> Drawing:
    """Recipe `scorpion-skin`. Settings: ring (round the split front), bar-mm, body-mm (without the tail), seed."""
    settings = Settings(values)
    rng = seeded("scorpion-skin", settings.whole("seed", 1))
    mark = settings.flag("ring")
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 22, least=2, most=200)
    settings.done()
    items = _parts(rng)
    if mark:
        items.append(ring((49, 33), 11, 13))
    body, scale = fitted(items, margin=5, bottom=97 if bar else 100)
    shapes: list[Shape] = [ground_shadow((51, 52), 34, 36, 0.11), body]
    if bar:
        shapes.append(scale_bar(bar, 28 * scale / long_mm))
    return framed(shapes)


RECIPES = {"scorpion-skin": scorpion_skin}
