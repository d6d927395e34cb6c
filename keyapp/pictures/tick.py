"""Ticks: hard ticks unfed and fed, their six-legged young, soft ticks."""

from __future__ import annotations

import random
from collections.abc import Mapping

from keyapp.pictures.limb import LimbLook
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, put, sampled
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen, ring, scale_bar
from keyapp.pictures.texture import hair, hairs_within, seeded, stipple

__all__ = ["RECIPES", "tick", "tick_parts"]

_BROWN = "#9A5A34"


def _mouth(at: Point, size: float, tone: str) -> list[Shape]:
    # Base of the mouthparts, two palps and the toothed feeding tube between them.
    s = size
    base = put([(-s * 0.55, 0.2), (-s * 0.62, -s * 0.4), (s * 0.62, -s * 0.4), (s * 0.55, 0.2)], at)
    tube = put(
        [(-s * 0.12, -s * 0.3), (-s * 0.14, -s * 1.35), (0, -s * 1.5), (s * 0.14, -s * 1.35), (s * 0.12, -s * 0.3)], at
    )
    items: list[Shape] = [smooth(tube, closed=True, fill="#4A2A18", stroke=pen("fine"), tension=0.5)]
    for flip in (False, True):
        palp = put(
            [
                (s * 0.2, -s * 0.3),
                (s * 0.24, -s * 0.9),
                (s * 0.36, -s * 1.4),
                (s * 0.58, -s * 1.3),
                (s * 0.6, -s * 0.8),
                (s * 0.56, -s * 0.3),
            ],
            at,
            flip=flip,
        )
        items.append(
            Group(
                (
                    smooth(palp, closed=True, fill=tone, stroke=pen("line")),
                    strokes([put([(s * 0.26, -s * 0.85), (s * 0.58, -s * 0.8)], at, flip=flip)], pen("fine")),
                ),
                name="palp",
            )
        )
    items.append(smooth(base, closed=True, fill=tone, stroke=pen("line"), tension=0.4))
    return items


def _legs(
    rng: random.Random,
    count: int,
    hips: list[Point],
    turns: list[tuple[float, ...]],
    lengths: list[float],
    wide: float,
    tone: str,
) -> list[Group]:
    look = LimbLook((tone,), hairs=0.7, hair_length=0.9)
    widths = tuple(
        (wide * a, wide * b, wide * c)
        for a, b, c in ((0.9, 1.05, 0.9), (0.85, 1.0, 0.85), (0.8, 0.9, 0.7), (0.65, 0.65, 0.5), (0.45, 0.42, 0.18))
    )
    made: list[Group] = []
    for hip, turn, length in list(zip(hips, turns, lengths, strict=True))[: count // 2]:
        parts = [length * k for k in (0.13, 0.25, 0.2, 0.22, 0.2)]
        made += leg_pair(rng, hip, parts, turn, widths, look)
    return made


_FAN: list[tuple[float, ...]] = [
    (62, 50, 36, 22, 8),
    (88, 82, 70, 58, 44),
    (102, 104, 114, 122, 132),
    (122, 128, 142, 152, 164),
]


# A full body pushes all the legs forward and out.
_FED_FAN: list[tuple[float, ...]] = [
    _FAN[0],
    (70, 62, 52, 40, 28),
    (82, 80, 74, 66, 56),
    (92, 94, 96, 94, 90),
]


def _unfed(rng: random.Random, *, shield: bool, tone: str) -> list[Shape]:
    body = Profile(
        ((30, 4.2), (31.5, 8.0), (37, 13.0), (46, 17.0), (55, 18.4), (64, 16.4), (70, 11.5), (73.2, 5.0), (73.8, 0))
    )
    dark = blend(tone, "#2A140A", 0.45)
    items: list[Shape] = list(
        _legs(
            rng,
            8,
            [(57.5, 35), (60, 40), (61.5, 45.5), (62, 51)],
            _FAN,
            [27, 26, 27, 31],
            3.9,
            dark,
        )
    )
    items += _mouth((50, 31), 6.4, dark)
    items.append(body.outline(globe((50, 54), 22, tone, depth=0.42, shine=0.28), pen("bold", times=0.75)))
    # Scallops along the rear rim.
    for index in range(-5, 6):
        u = index / 5.6
        y = 74.2 - 10.6 * abs(u) ** 2.1
        x = 50 + u * 17.2
        items.append(strokes([((x, y - 1.0), (x - u * 1.2, y - 4.6))], pen("fine", opacity=0.8)))
    rim = [(body.x + body.half(y) * k, y) for k, y in ((-0.86, 52), (-0.87, 60), (-0.86, 66), (-0.7, 69.4), (0, 70.2))]
    items.append(strokes([sampled([*rim, *[(100 - x, y) for x, y in reversed(rim[:-1])]])], pen("line", opacity=0.6)))
    items.append(hairs_within(body.at, rng, count=60, length=1.0, stroke=pen("hair", opacity=0.6)))
    items.append(stipple(body.at, rng, count=240, radius=0.14))
    items.append(
        strokes(
            [((46, 58), (45.2, 62), (46.2, 66)), ((54, 58), (54.8, 62), (53.8, 66)), ((50, 60), (50, 64), (50, 68))],
            pen("line", opacity=0.55),
        )
    )
    if shield:
        plate = Profile(
            ((30.2, 5.0), (31.2, 7.0), (36, 10.2), (42, 11.4), (47.5, 9.6), (51.5, 5.4), (53.4, 1.6), (53.6, 0))
        )
        items.append(
            Group(
                (
                    plate.outline(
                        cylinder((39, 34), (61, 46), blend("#4B2A1A", tone, 0.12), shine=0.36), pen("outline")
                    ),
                    strokes(
                        [sampled([(50 + k * 4.6, 31.4), (50 + k * 4.0, 37), (50 + k * 6.4, 45)]) for k in (-1, 1)],
                        pen("fine", opacity=0.7),
                    ),
                    smooth(
                        [(42.2, 37), (44.6, 36), (44.2, 41), (46.4, 47), (44.6, 47.4), (41.6, 42.6)],
                        closed=True,
                        fill="#D9BF94",
                        opacity=0.55,
                    ),
                    smooth(
                        [(57.8, 37), (55.4, 36), (55.8, 41), (53.6, 47), (55.4, 47.4), (58.4, 42.6)],
                        closed=True,
                        fill="#D9BF94",
                        opacity=0.55,
                    ),
                    stipple(plate.at, rng, count=110, radius=0.15),
                    eye((39.3, 40.5), 0.5),
                    eye((60.7, 40.5), 0.5),
                ),
                name="shield",
            )
        )
    return items


def _soft(rng: random.Random) -> list[Shape]:
    tone = "#9C8876"
    body = Profile(
        ((27, 0), (27.4, 5), (30, 9.6), (37, 14.4), (48, 17.6), (58, 18.2), (67, 15.8), (72.5, 9.5), (74, 0))
    )
    items: list[Shape] = list(
        _legs(
            rng,
            8,
            [(58.5, 36), (60.5, 41), (62, 46.5), (62.5, 52)],
            _FAN,
            [27, 26, 27, 31],
            3.4,
            "#8A6E56",
        )
    )
    items.append(body.outline(globe((50, 52), 22, tone, depth=0.4), pen("bold", times=0.75)))
    inner = [body.at(0.86, v) for v in (0.1, 0.3, 0.5, 0.7, 0.88)] + [
        body.at(-0.86, v) for v in (0.88, 0.7, 0.5, 0.3, 0.1)
    ]
    items.append(smooth(inner, closed=True, stroke=pen("fine", opacity=0.7)))
    wrinkles = []
    for _ in range(150):
        u, v = rng.uniform(-0.8, 0.8), rng.uniform(0.08, 0.92)
        x, y = body.at(u, v)
        wide = rng.uniform(0.5, 1.7)
        wrinkles.append(((x - wide, y), (x, y + rng.uniform(-0.7, 0.7)), (x + wide, y + rng.uniform(-0.5, 0.5))))
    items.append(strokes(wrinkles, pen("hair", opacity=0.75, times=1.2)))
    for u, v in ((-0.4, 0.3), (0.4, 0.3), (-0.3, 0.5), (0.3, 0.5), (-0.42, 0.66), (0.42, 0.66), (0, 0.6)):
        x, y = body.at(u, v)
        items.append(
            smooth(
                [(x - 1.3, y - 0.5), (x, y - 1.1), (x + 1.3, y - 0.3), (x + 0.3, y + 0.9)],
                closed=True,
                fill="#6E5B4B",
                opacity=0.7,
            )
        )
    return items


def _fed(rng: random.Random) -> list[Shape]:
    tone = "#8E9A96"
    body = Profile(
        ((25, 3.4), (26.4, 7), (31, 14), (40, 21.5), (52, 25.6), (64, 26), (76, 22.4), (85, 14.5), (89, 6), (89.8, 0))
    )
    dark = "#6B3A24"
    items: list[Shape] = list(
        _legs(
            rng,
            8,
            [(54.6, 27.4), (59.2, 29.4), (63.4, 32.6), (66.6, 36.6)],
            _FED_FAN,
            [12.5, 12.5, 13.5, 14.5],
            1.9,
            dark,
        )
    )
    items += _mouth((50, 25.4), 3.2, dark)
    items.append(body.outline(globe((50, 57), 33, tone, depth=0.5, shine=0.5), pen("bold", times=0.8)))
    grooves = [
        [body.at(u * k, v) for v, k in ((0.2, 0.7), (0.4, 0.9), (0.6, 0.95), (0.78, 0.8), (0.9, 0.5))]
        for u in (-0.36, 0.36)
    ]
    items.append(strokes([sampled(line) for line in grooves], pen("line", opacity=0.55)))
    items.append(strokes([((50, 62), (50.3, 72), (50, 80))], pen("line", opacity=0.45)))
    folds = []
    for _ in range(80):
        u, v = rng.uniform(-0.85, 0.85), rng.uniform(0.2, 0.93)
        x, y = body.at(u, v)
        wide = rng.uniform(0.8, 2.6)
        folds.append(((x - wide, y), (x, y + u * 0.2 + 0.7), (x + wide, y - rng.uniform(0, 0.5))))
    items.append(strokes(folds, pen("hair", opacity=0.5)))
    items.append(stipple(body.at, rng, count=320, radius=0.15, rim=2.8, opacity=0.45))
    plate = Profile(((25.4, 2.4), (26.4, 3.9), (30, 5.0), (33.4, 3.6), (35.4, 1), (35.6, 0)))
    items.append(
        Group(
            (
                plate.outline(cylinder((45, 28), (55, 32), "#5A3220", shine=0.36), pen("line")),
                stipple(plate.at, rng, count=24, radius=0.12),
            ),
            name="shield",
        )
    )
    return items


def _larva(rng: random.Random) -> list[Shape]:
    tone = "#C79A63"
    body = Profile(((31, 4.6), (32.4, 8.2), (38, 13.6), (47, 17), (56, 17.6), (64, 14.6), (69.6, 8), (71.4, 0)))
    dark = blend(tone, "#5A2F16", 0.3)
    items: list[Shape] = list(
        _legs(
            rng,
            6,
            [(58, 37), (61.5, 43), (63.5, 50)],
            [_FAN[0], (86, 84, 84, 84, 80), (112, 118, 130, 140, 150)],
            [30, 29, 32],
            4.0,
            dark,
        )
    )
    items += _mouth((50, 32), 7.0, dark)
    items.append(body.outline(globe((50, 53), 21, tone, depth=0.4, shine=0.45), pen("bold", times=0.75)))
    plate = Profile(((31.2, 5), (32.6, 7.6), (38, 11.4), (45, 12), (50, 8.4), (52.4, 3), (52.8, 0)))
    items.append(
        Group((plate.outline(cylinder((39, 34), (61, 46), "#93602F", shine=0.4), pen("outline")),), name="shield")
    )
    for index in range(-4, 5):
        x, y = 50 + index * 3.4, 71.2 - 0.56 * index * index * 0.9
        items.append(strokes([((x, y - 0.6), (x - index * 0.2, y - 4))], pen("fine", opacity=0.8)))
    items.append(stipple(body.at, rng, count=130, radius=0.13))
    items.append(
        strokes(
            [
                hair(body.at(side * 0.97, v), side * (80 + 90 * v), 2.0, side * 20)
                for side in (-1, 1)
                for v in (0.3, 0.42, 0.54, 0.66, 0.78, 0.9)
            ],
            pen("hair"),
        )
    )
    return items


_KINDS = ("unfed", "fed", "larva", "soft")


def tick_parts(kind: str, rng: random.Random, tone: str = _BROWN) -> list[Shape]:
    """A tick seen from above, head up: `unfed`, `fed`, `larva` (six legs) or `soft` (no shield)."""
    if kind == "fed":
        return _fed(rng)
    if kind == "larva":
        return _larva(rng)
    return _soft(rng) if kind == "soft" else _unfed(rng, shield=True, tone=tone)


def tick(values: Mapping[str, object]) -> Drawing:
    """Recipe `tick`. Settings: kind unfed|fed|larva|soft, ring-shield, bar-mm, body-mm, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", _KINDS, "unfed")
    rng = seeded("tick", settings.whole("seed", 1))
    mark = settings.flag("ring-shield")
    bar = settings.number("bar-mm", 0, least=0, most=50)
    long_mm = settings.number("body-mm", 4, least=0.2, most=30)
    most = settings.number("scale", 1.6, least=0.05, most=2)
    settings.done()
    items = tick_parts(kind, rng)
    if mark:
        items.append(ring((50, 40.5), 15.5, 16.5))
    body, scale = fitted(items, bottom=95 if bar else 100, most=most)
    shapes: list[Shape] = [body]
    if bar:
        long = {"unfed": 43.8, "soft": 47.0, "fed": 64.8, "larva": 40.4}[kind]
        shapes.append(scale_bar(bar, long * scale / long_mm))
    return framed(shapes)


RECIPES = {"tick": tick}
