"""Shed skins, hollow with the lid of the front part open and the legs drawn in; a dead spider in the same pose."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.part import Profile, eye, fitted, framed, ground_shadow, put, sampled
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, RadialGradient, Shape, Stop, smooth, strokes
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import hairs_within, seeded, stipple

__all__ = ["RECIPES", "shed_skin", "shed_skin_parts"]

# For each leg: hip, then where knee, shin and foot lie, all drawn in under the body (right side, front to back).
_DRAWN_IN = (
    ((54.0, 38.0), (63.5, 23.0), (65.0, 14.5), (56.5, 9.5), (53.0, 12.5)),
    ((55.6, 41.5), (71.5, 31.5), (75.5, 22.5), (68.5, 14.0), (62.5, 14.0)),
    ((55.6, 45.5), (72.0, 51.0), (76.5, 59.5), (70.0, 67.5), (63.8, 66.8)),
    ((54.2, 49.0), (65.0, 63.5), (66.8, 74.0), (59.8, 83.0), (55.0, 82.0)),
)


def _legs(rng: random.Random, tone: str, thick: float, hairs: float, hair_length: float, opacity: float) -> list[Shape]:
    look = LimbLook(
        (tone,),
        hairs=hairs,
        hair_length=hair_length,
        spines=(1, 2, 3, 1) if hairs < 2 else (0,),
        spine_length=1.3,
        shine=0.5,
    )
    t = thick
    widths = (
        (2.5 * t, 3.0 * t, 2.5 * t),
        (2.4 * t, 2.4 * t, 2.1 * t),
        (2.1 * t, 2.0 * t, 1.5 * t),
        (1.5 * t, 1.3 * t, 0.7 * t),
    )
    made: list[Shape] = []
    for row in _DRAWN_IN:
        for side in (1, -1):
            spots: list[Point] = [
                (50 + side * (x - 50 + (rng.uniform(-1.6, 1.6) if k else 0)), y + (rng.uniform(-1.4, 1.4) if k else 0))
                for k, (x, y) in enumerate(row)
            ]
            leg = limb(spots, widths, look, rng)
            made.append(Group(leg.items, name="leg", opacity=opacity))
    return made


def shed_skin_parts(rng: random.Random, *, tarantula: bool) -> list[Shape]:
    """A shed skin from above: eight legs drawn in, the front part an open cup with its lid tipped off in front."""
    tone = "#A9825C" if tarantula else "#DCC9A2"
    thick = 1.75 if tarantula else 1.0
    items = _legs(rng, tone, thick, 4.2 if tarantula else 0.8, 2.0 if tarantula else 0.9, 0.94 if tarantula else 0.82)
    big = 1.22 if tarantula else 1.0
    # The skin of the hind part is thin: it shrivels to a crumpled bag.
    bag: list[Point] = [
        (48.4, 52),
        (46.6, 56),
        (44.4, 60.6),
        (46.4, 63.4),
        (44.8, 67.6),
        (47.2, 71.4),
        (50.6, 73.6),
        (52.6, 70.6),
        (55.4, 68.4),
        (53.6, 64.4),
        (55.6, 60.4),
        (53.2, 56.4),
        (51.8, 52),
    ]
    bag = [(50 + (x - 50) * big, 52 + (y - 52) * big) for x, y in bag]
    folds = [
        [(50 + (x - 50) * big, 52 + (y - 52) * big) for x, y in line]
        for line in (
            [(48.6, 54), (47.4, 60), (49.4, 65), (48.4, 70)],
            [(51.2, 54), (52.8, 59.6), (50.6, 64), (52.6, 69)],
            [(46, 61), (49.4, 62), (54, 61)],
            [(46.2, 67), (50, 66.4), (53.6, 67.6)],
        )
    ]
    items.append(
        Group(
            (
                smooth(
                    bag,
                    closed=True,
                    fill=globe((49, 61), 13 * big, blend(tone, "#FFFFFF", 0.3), depth=0.36),
                    stroke=pen("line"),
                    opacity=0.85,
                ),
                strokes([sampled(line) for line in folds], pen("fine", opacity=0.7)),
                hairs_within(
                    lambda u, v: (50 + u * 4.6 * big, 54 + v * 17 * big), rng, count=90 if tarantula else 24, length=1.6
                ),
            ),
            name="hind-skin",
        )
    )
    # The cup: the lower half of the front part, its rim standing up, dark and empty inside.
    cup = Profile(
        tuple(
            (43.6 + (y - 43.6) * big, half * big)
            for y, half in ((35.2, 0), (35.4, 3.6), (38, 5.6), (43, 7.4), (48, 6.6), (51.4, 3.8), (52.4, 0))
        )
    )
    hollow = RadialGradient(
        (50, 45), 8.4 * big, (Stop(0, "#2C1F16"), Stop(0.65, "#5A4431"), Stop(1, blend(tone, "#3A2818", 0.45)))
    )
    inner = [
        (50 + (x - 50) * 0.8, 44 + (y - 44) * 0.82)
        for x, y in [cup.at(1, v) for v in (0.02, 0.2, 0.45, 0.7, 0.95)]
        + [cup.at(-1, v) for v in (0.95, 0.7, 0.45, 0.2, 0.02)]
    ]
    sockets = [
        Ellipse(
            (50 + side * 4.3 * big, 39.6 + k * 2.9 * big),
            1.15 * big,
            0.95 * big,
            "#17100B",
            pen("hair", "#C9AE86"),
            0.95,
        )
        for side in (-1, 1)
        for k in range(4)
    ]
    items.append(
        Group(
            (
                cup.outline(blend(tone, "#FFFFFF", 0.15), pen("outline")),
                smooth(inner, closed=True, fill=hollow, stroke=pen("line")),
                *sockets,
            ),
            name="cup",
        )
    )
    for side in (1, -1):
        jaw = put(
            [(0.2, 1), (0.2, -2.2 * big), (1.1 * big, -3.4 * big), (2.9 * big, -2.4 * big), (3.1 * big, 1)],
            (50, 36.2 - (big - 1) * 8),
            0,
            flip=side < 0,
        )
        fang = put(
            [(2.0 * big, -3.0 * big), (2.1 * big, -4.6 * big), (0.9 * big, -6.4 * big), (1.0 * big, -4.4 * big)],
            (50, 36.2 - (big - 1) * 8),
            0,
            flip=side < 0,
        )
        items.append(
            Group(
                (
                    smooth(fang, closed=True, fill="#2A1710", stroke=pen("hair")),
                    smooth(jaw, closed=True, fill=tone, stroke=pen("line")),
                ),
                name="jaw",
            )
        )
    # The lid: the top of the front part, lifted off and tipped to one side, still hinged at the front edge.
    lid = Profile(
        tuple(
            (50 + y * big, half * big)
            for y, half in ((-8.4, 2.6), (-7.6, 4.2), (-3.6, 5.8), (1.0, 7.2), (5.4, 6.4), (8.2, 3.0), (8.8, 0))
        )
    )
    top = Group(
        (
            lid.outline(globe((49, 50), 11 * big, blend(tone, "#6A4A2C", 0.12), depth=0.34, shine=0.5), pen("outline")),
            strokes(
                [
                    ((50, 50.6), (50, 53.4)),
                    *(((50 + k * 1.4, 51), (50 + k * 3.4, 49.4), (50 + k * 5.6 * big, 49)) for k in (-1, 1)),
                    *(((50 + k * 1.2, 53), (50 + k * 3, 54.4), (50 + k * 4.8, 56)) for k in (-1, 1)),
                ],
                pen("fine", opacity=0.6),
            ),
            stipple(lid.at, rng, count=70, radius=0.12),
            hairs_within(lid.at, rng, count=120 if tarantula else 20, length=1.4),
            *(eye((50 + k * 0.8, 43.4 - (big - 1) * 6), 0.5, "#EFE6D2") for k in (-2.4, -0.8, 0.8, 2.4)),
            *(eye((50 + k * 0.8, 45.0 - (big - 1) * 6), 0.5, "#EFE6D2") for k in (-3.0, -1.0, 1.0, 3.0)),
        ),
        name="lid",
    )
    cos, sin = math.cos(math.radians(-34)), math.sin(math.radians(-34))
    at = (34.5 - (big - 1) * 12, 27.0 - (big - 1) * 8)
    placed = Group((top,), (cos, sin, -sin, cos, at[0] - cos * 50 + sin * 50, at[1] - sin * 50 - cos * 50), "lid-open")
    items += [ground_shadow((at[0] + 1.2, at[1] + 2.6), 8.4 * big, 8.0 * big, 0.26), placed]
    return items


def _solid_body_parts(rng: random.Random) -> list[Shape]:
    """A dead spider in the same pose: front part closed, hind part full."""
    tone = "#7E6448"
    items = _legs(rng, "#8F7455", 1.0, 0.9, 1.0, 1.0)
    head = Profile(((35.2, 2.6), (36.2, 4.2), (39.6, 5.8), (43.6, 7.2), (48, 6.4), (51.4, 3.6), (52.2, 0)))
    belly = Profile(((51.6, 1.4), (53.2, 5.4), (58, 8.6), (64.6, 9.6), (71, 7.8), (75.6, 3.6), (77.2, 0)))
    items.append(
        Group(
            (
                belly.outline(globe((50, 63), 15, "#8A7152"), pen("outline")),
                hairs_within(belly.at, rng, count=110, length=1.5),
                stipple(belly.at, rng, count=150),
            ),
            name="hind-part",
        )
    )
    for side in (1, -1):
        items.append(
            smooth(
                put([(0.2, 1), (0.2, -2.2), (1.1, -3.2), (2.8, -2.4), (3, 1)], (50, 36), flip=side < 0),
                closed=True,
                fill=tone,
                stroke=pen("line"),
            )
        )
    items.append(
        Group(
            (
                head.outline(globe((50, 43), 11, tone), pen("outline")),
                stipple(head.at, rng, count=80),
                strokes(
                    [
                        ((50, 44.6), (50, 47.6)),
                        *(((50 + k * 1.2, 45), (50 + k * 3.2, 43.8), (50 + k * 5.6, 43.6)) for k in (-1, 1)),
                    ],
                    pen("fine", opacity=0.7),
                ),
                *(eye((50 + k, 36.8), 0.5) for k in (-2.4, -0.8, 0.8, 2.4)),
                *(eye((50 + k, 38.4), 0.5) for k in (-2.9, -1.0, 1.0, 2.9)),
            ),
            name="front-part",
        )
    )
    return items


def shed_skin(values: Mapping[str, object]) -> Drawing:
    """Recipe `shed-skin`. Settings: kind spider|tarantula|solid-body, ring, bar-mm, body-mm, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", ("spider", "tarantula", "solid-body"), "spider")
    rng = seeded("shed-skin", kind, settings.whole("seed", 1))
    mark = settings.flag("ring")
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 12, least=1, most=100)
    settings.done()
    items = _solid_body_parts(rng) if kind == "solid-body" else shed_skin_parts(rng, tarantula=kind == "tarantula")
    if mark:
        items.append(ring((50, 56), 14, 25) if kind == "solid-body" else ring((42, 36), 20.5, 20.5))
    body, scale = fitted(items, margin=4, bottom=97 if bar else 100, most=1.2)
    shapes: list[Shape] = [ground_shadow((51, 54), 32, 34, 0.12), body]
    if bar:
        shapes.append(scale_bar(bar, 42 * scale / long_mm))
    return framed(shapes)


RECIPES = {"shed-skin": shed_skin}
