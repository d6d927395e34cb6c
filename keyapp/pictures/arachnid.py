"""Pseudoscorpions, whip scorpions and mites: the other small arachnids a key has to set apart."""

from __future__ import annotations

import random
from collections.abc import Mapping

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, put, taper
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen, ring, scale_bar
from keyapp.pictures.texture import hair, seeded, stipple

__all__ = ["RECIPES", "mite_parts", "pseudoscorpion", "pseudoscorpion_parts", "whip_scorpion_parts"]

_WIDTHS = ((2.0, 2.4, 2.0), (1.8, 1.9, 1.5), (1.3, 1.2, 0.9), (0.8, 0.7, 0.3))


def _fan(
    rng: random.Random, look: LimbLook, hips: tuple[tuple[float, float], ...], long: float, thick: float = 1.0
) -> list[Shape]:
    widths = [(a * thick, b * thick, c * thick) for a, b, c in _WIDTHS]
    items: list[Shape] = []
    for hip, turns, share in zip(
        hips,
        ((58, 48, 34, 24), (84, 78, 70, 64), (108, 116, 122, 128), (130, 138, 148, 154)),
        (0.9, 0.92, 1.0, 1.2),
        strict=True,
    ):
        items += leg_pair(rng, hip, [long * share * k for k in (0.2, 0.32, 0.27, 0.22)], turns, widths, look)
    return items


def pseudoscorpion_parts(rng: random.Random, tone: str = "#8A5A34") -> list[Shape]:
    """A pseudoscorpion from above: long pincers, a pear-shaped ringed body with a rounded end, no tail."""
    look = LimbLook((blend(tone, "#F0D8A8", 0.4),), hairs=0.8, hair_length=1.2)
    items = _fan(rng, look, ((54.5, 41), (55.4, 44.5), (56.4, 48.6), (57, 52)), 25, thick=1.35)
    arm = LimbLook((blend(tone, "#B4582C", 0.3),), hairs=0.6, hair_length=1.6, outline=0.5)
    for side in (1, -1):
        swing = rng.uniform(-1, 1)
        spots = [
            (50 + side * 4.2, 36.5),
            (50 + side * 9.5, 33.5),
            (50 + side * (24.5 + swing), 31),
            (50 + side * (29 + swing), 18.5),
        ]
        items.append(limb(spots, ((2.4, 2.8, 2.4), (2.2, 3.4, 3.0), (2.6, 4.4, 3.0)), arm, rng, name="arm"))
        at, turn = spots[-1], side * -20
        hand = put(
            [
                (-1.3, 0.4),
                (-3.5, -4),
                (-3.3, -8.5),
                (-2.0, -10.5),
                (-1.8, -14.5),
                (-0.2, -18.6),
                (0.3, -17.4),
                (-0.2, -13.5),
                (0.2, -10.6),
                (2.9, -8.6),
                (3.4, -4.4),
                (1.4, 0.4),
            ],
            at,
            turn,
            flip=side < 0,
        )
        finger = put(
            [(3.2, -7.4), (3.4, -11), (2.0, -15.4), (0.4, -18.4), (0.5, -15), (0.9, -11.6), (0.6, -9.8)],
            at,
            turn,
            flip=side < 0,
        )
        edge = put([(-3.4, -5), (3.4, -5)], at, turn)
        hairs = [
            hair(put([(k * 3.2, -j)], at, turn)[0], turn + k * rng.uniform(40, 80), rng.uniform(2, 3.6))
            for k in (-1, 1)
            for j in (3, 6, 9, 12, 15)
        ]
        items.append(
            Group(
                (
                    strokes(hairs, pen("hair")),
                    smooth(finger, closed=True, fill="#6E3A20", stroke=pen("line")),
                    smooth(
                        hand,
                        closed=True,
                        fill=cylinder(edge[0], edge[1], blend(tone, "#B4582C", 0.35), shine=0.36),
                        stroke=pen("outline"),
                    ),
                ),
                name="pincer",
            )
        )
    belly = Profile(
        ((48, 6.0), (52, 8.2), (60, 11.4), (70, 13.2), (79, 12), (85, 9.4), (87.8, 6.2), (89.3, 3.0), (89.6, 0))
    )
    head = Profile(((33.4, 2.6), (34.4, 3.6), (38, 5.0), (43, 6.4), (46.5, 7.1), (48.8, 6.6)))
    for side in (1, -1):
        items.append(
            smooth(
                put([(0.2, 1), (0.3, -3.6), (1.0, -5.4), (2.6, -3.4), (3.2, 1)], (50, 34), flip=side < 0),
                closed=True,
                fill=blend(tone, "#B4582C", 0.4),
                stroke=pen("line"),
            )
        )
    items.append(belly.outline(globe((50, 68), 20, blend(tone, "#D9B98A", 0.3)), pen("outline")))
    edges = [48.4 + 3.76 * k for k in range(12)]
    for index in range(10, -1, -1):
        items.append(
            Group(
                belly.plate(edges[index], min(edges[index + 1], 89.4), blend(tone, "#D9B98A", 0.3), bow=0.6).items,
                name="ring-plate",
            )
        )
    items.append(head.outline(cylinder((43, 40), (57, 42), tone), pen("outline")))
    items.append(strokes([head.line(y, 0.35, 0.94) for y in (40.2, 44.8)], pen("line", opacity=0.7)))
    items += [eye((50 + side * 4.0, 36.6), 0.5) for side in (-1, 1)]
    # The plates of the back are parted down the middle, each half with a darker patch.
    items.append(strokes([((50, 50), (50, 86))], pen("line", "#F0DDBA", opacity=0.5)))
    patches = [(50 + side * belly.half(y + 1.9) * 0.46, y + 2.0) for y in edges[:10] for side in (-1, 1)]
    dark = pen("bold", "#3E2414", times=1.7, opacity=0.3)
    items.append(strokes([((x - 1.3, y), (x + 1.3, y)) for x, y in patches], dark))
    items += [stipple(belly.at, rng, count=90), stipple(head.at, rng, count=50)]
    items.append(
        strokes(
            [
                hair(belly.at(side * 0.98, v), side * (100 + 60 * v), 2.0)
                for side in (-1, 1)
                for v in (0.15, 0.3, 0.45, 0.6, 0.75, 0.88)
            ],
            pen("hair"),
        )
    )
    return items


def whip_scorpion_parts(rng: random.Random) -> list[Shape]:
    """A whip scorpion from above: heavy arms, feeler-like first legs, a ringed body, a tail like a whip."""
    tone = "#4A3A30"
    look = LimbLook((tone,), outline=0.4)
    items = _fan(rng, look, ((53, 34), (53.8, 37.6), (54, 41), (53.4, 44)), 27)[2:]
    for side in (1, -1):
        items.append(
            taper([(50 + side * 3, 32), (50 + side * 12, 24), (50 + side * 22, 10), (50 + side * 24, 1)], 1.1, 0.4)
        )
        items.append(
            limb(
                [(50 + side * 3, 28.4), (50 + side * 9.6, 25.4), (50 + side * 10.6, 18.6), (50 + side * 4.4, 14.4)],
                ((3.6, 5.0, 4.8), (4.8, 5.2, 4.2), (3.8, 3.4, 1.0)),
                look,
                rng,
                name="arm",
            )
        )
    items.append(taper([(50, 70), (50.6, 80), (52.6, 90), (56, 99)], 1.3, 0.4))
    body = Profile(
        ((26, 2.6), (28, 4.2), (38, 5.0), (44, 4.4), (46, 4.2), (54, 6.6), (62, 6.0), (68, 3.2), (71, 1.2), (72, 0))
    )
    items.append(body.outline(tone, pen("outline")))
    return items


def mite_parts(rng: random.Random) -> list[Shape]:
    """A round mite from above with eight short hairy legs."""
    look = LimbLook(("#8A3A2A",), hairs=1.0, hair_length=1.2)
    items = _fan(rng, look, ((56, 34), (60, 38), (62, 58), (58, 64)), 26)
    body = Profile(((24, 3), (26, 7), (34, 13.4), (48, 16.4), (62, 14.4), (71, 8.2), (74, 2.6), (74.4, 0)))
    items.append(taper([(48.6, 25), (47.4, 18.6)], 2.2, 0.8))
    items.append(taper([(51.4, 25), (52.6, 18.6)], 2.2, 0.8))
    items.append(body.outline(globe((50, 48), 18, "#A8402C"), pen("outline")))
    items.append(
        strokes(
            [
                hair(body.at(side * 0.97, v), side * (70 + 90 * v), 3.0)
                for side in (-1, 1)
                for v in (0.2, 0.35, 0.5, 0.65, 0.8, 0.92)
            ],
            pen("fine"),
        )
    )
    return items


def pseudoscorpion(values: Mapping[str, object]) -> Drawing:
    """Recipe `pseudoscorpion`. Settings: ring-end (the rounded hind end), bar-mm, body-mm, seed."""
    settings = Settings(values)
    rng = seeded("pseudoscorpion", settings.whole("seed", 1))
    mark = settings.flag("ring-end")
    bar = settings.number("bar-mm", 0, least=0, most=20)
    long_mm = settings.number("body-mm", 3.2, least=1, most=20)
    settings.done()
    items = pseudoscorpion_parts(rng)
    if mark:
        items.append(ring((50, 84), 14.5, 10))
    body, scale = fitted(items, margin=4, bottom=97 if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, 56 * scale / long_mm))
    return framed(shapes)


RECIPES = {"pseudoscorpion": pseudoscorpion}
