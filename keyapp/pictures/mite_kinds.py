"""Mites under the lens: velvet mite, clover mite, spider mite, the six-legged chigger, a gall mite."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Callable, Mapping

from keyapp.pictures.limb import LimbLook
from keyapp.pictures.part import Profile, fitted, framed, leg_pair, put, ribbon, sampled
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Point, Shape, Stroke, mirror_points, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen, ring, scale_bar
from keyapp.pictures.texture import hair, hairs_within, seeded, wedge

__all__ = ["MITES", "RECIPES", "mite_kind"]


def _legs(
    rng: random.Random,
    rows: list[tuple[Point, float, tuple[float, ...]]],
    wide: float,
    look: LimbLook,
    last: float = 0.35,
) -> list[Group]:
    # Six parts to a leg; each row is a hip, a length and the turns of the six.
    steps = ((0.9, 1.0, 0.9), (0.8, 0.9, 0.8), (0.8, 1.0, 0.8), (0.75, 0.85, 0.7), (0.7, 0.75, 0.6), (0.6, 0.6, last))
    widths = tuple((wide * a, wide * b, wide * c) for a, b, c in steps)
    made: list[Group] = []
    for hip, length, turns in rows:
        parts = [length * k for k in (0.1, 0.1, 0.22, 0.17, 0.2, 0.21)]
        made += leg_pair(rng, hip, parts, turns, widths, look)
    return made


def _edge(body: Profile, per: int = 5) -> list[Point]:
    half = [(body.x + h, y) for y, h in body.spots]
    return sampled([*half, *mirror_points(half)], per)


def _velvet(rng: random.Random) -> list[Shape]:
    tone = "#C8281E"
    body = Profile(
        (
            (30, 3),
            (31, 7),
            (34.6, 13),
            (40, 17.4),
            (45, 18),
            (50, 16.2),
            (55, 15.4),
            (62, 16),
            (69, 14.2),
            (74.4, 9.4),
            (76.8, 3.6),
            (77.2, 0),
        )
    )
    pale = blend(tone, "#FFD9C8", 0.55)
    look = LimbLook((blend(tone, "#FFB08A", 0.14),), hairs=0.9, hair_length=1.3, hair_color="#7A120C", shine=0.3)
    rows: list[tuple[Point, float, tuple[float, ...]]] = [
        ((61, 60), 30, (112, 118, 128, 140, 150, 158)),
        ((62, 53), 26, (92, 96, 104, 116, 124, 130)),
        ((61, 39), 27, (82, 78, 66, 52, 44, 40)),
        ((56, 34), 35, (60, 52, 38, 24, 14, 8)),
    ]
    items: list[Shape] = [*_legs(rng, rows, 4.0, look, 0.5)]
    for flip in (False, True):
        palp = put([(1.4, 0), (4.4, -3.2), (4.6, -6.6), (3.4, -8.8)], (50, 32), flip=flip)
        items.append(ribbon(palp, (3.2, 2.8, 1.4), blend(tone, "#FFB08A", 0.1), pen("fine")))
    snout = put([(-2.4, 0), (-2.0, -3.6), (0, -5.4), (2.0, -3.6), (2.4, 0)], (50, 31.4))
    items.append(smooth(snout, closed=True, fill=blend(tone, "#FFB08A", 0.25), stroke=pen("fine")))
    edge = _edge(body)
    fringe = []
    for (x0, y0), (x1, y1) in itertools.pairwise(edge):
        for _ in range(max(1, round(math.hypot(x1 - x0, y1 - y0) * 1.05))):
            share = rng.random()
            out = math.degrees(math.atan2(x1 - x0, -(y1 - y0))) - 90
            fringe.append(hair((x0 + (x1 - x0) * share, y0 + (y1 - y0) * share), out + rng.gauss(0, 16), 1.6))
    items.append(strokes(fringe, Stroke("#7A120C", 0.3)))
    items.append(body.outline(globe((50, 50), 24, tone, depth=0.4, shine=0.24), pen("line", "#5E100B")))
    for u, v, size in (
        (-0.4, 0.42, 2.4),
        (0.4, 0.42, 2.4),
        (-0.34, 0.62, 2.0),
        (0.34, 0.62, 2.0),
        (0, 0.74, 1.8),
        (0, 0.3, 1.8),
    ):
        x, y = body.at(u, v)
        dip = [(x - size, y), (x, y - size * 0.5), (x + size, y), (x, y + size * 0.6)]
        items.append(smooth(dip, closed=True, fill="#7A120C", opacity=0.35))
    dark, light = Stroke("#7A120C", 0.26, 0.9), Stroke(pale, 0.24, 0.85)
    items.append(hairs_within(body.at, rng, count=180, length=1.5, spread=24, stroke=dark, edge=0.95))
    items.append(hairs_within(body.at, rng, count=120, length=1.2, spread=30, stroke=light, edge=0.8))
    for side in (-1, 1):
        items.append(
            Group(
                (Circle((50 + side * 5.6, 33.6), 0.85, "black"), Circle((50 + side * 5.4, 33.3), 0.25, "white")),
                name="eye",
            )
        )
    return items


def _clover(rng: random.Random) -> list[Shape]:
    tone = "#7E3A2A"
    body = Profile(
        ((33, 6.4), (34, 8.6), (38, 12), (43, 15.4), (50, 18), (57, 18), (64, 15.4), (70, 10), (73.4, 4.4), (74, 0))
    )
    look = LimbLook(("#D58A50",), hairs=0.5, hair_length=1.1, shine=0.4)
    rows: list[tuple[Point, float, tuple[float, ...]]] = [
        ((60, 57), 25, (112, 118, 132, 144, 150, 156)),
        ((61, 51), 22, (94, 98, 106, 116, 122, 128)),
        ((58, 41), 22, (84, 78, 66, 54, 46, 40)),
        ((54.6, 37), 50, (50, 38, 24, 16, 10, 4)),
    ]
    items: list[Shape] = [*_legs(rng, rows, 2.7, look)]
    for flip in (False, True):
        palp = put([(1.2, 0), (3.2, -2.6), (2.8, -5)], (50, 34), flip=flip)
        items.append(ribbon(palp, (2.2, 2.0, 0.9), "#D58A50", pen("fine")))
    # Four lobes over the mouth, each with a pale scale-like hair.
    for x, high in ((45.6, 2.2), (54.4, 2.2), (48.2, 4.2), (51.8, 4.2)):
        lobe = put([(-1.7, 1.6), (-1.0, -high * 0.7), (0, -high), (1.0, -high * 0.7), (1.7, 1.6)], (x, 33.6))
        items.append(smooth(lobe, closed=True, fill=blend(tone, "#D58A50", 0.3), stroke=pen("fine")))
        items.append(wedge((x, 33 - high - 2.6), 180, 3.0, 1.5, "#F1E3C8"))
    items.append(body.outline(globe((50, 53), 22, tone, depth=0.45, shine=0.34), pen("bold", times=0.75)))
    items.append(strokes([((38.4, 44.6), (50, 49), (61.6, 44.6))], pen("line", opacity=0.7)))
    folds = [((50 - w, y), (50, y + 1.8), (50 + w, y)) for y, w in ((53, 12), (57, 13), (61, 12), (65, 9.4), (68.6, 6))]
    items.append(strokes(folds, pen("fine", opacity=0.55)))
    shine = [body.at(-0.4, 0.48), body.at(-0.5, 0.58), body.at(-0.44, 0.7)]
    items.append(strokes([sampled(shine, 4)], Stroke("white", 1.5, 0.35)))
    scales = [
        (0.36, 0.16),
        (0.34, 0.34),
        (0.34, 0.5),
        (0.36, 0.66),
        (0.7, 0.28),
        (0.86, 0.42),
        (0.9, 0.56),
        (0.88, 0.7),
        (0.8, 0.84),
        (0.34, 0.84),
        (0.4, 0.96),
    ]
    for u, v in scales:
        for side in (-1, 1):
            x, y = body.at(side * u, v)
            turn = side * (100 + 70 * v)
            lean = math.radians(turn)
            items.append(wedge((x + math.sin(lean) * 2.2, y - math.cos(lean) * 2.2), turn + 180, 2.5, 1.3, "#F1E3C8"))
    for side in (-1, 1):
        for x, y in ((11.8, 40.6), (12.4, 42.2)):
            items.append(Group((Circle((50 + side * (x - 0.5), y), 0.75, "#C81E1E", pen("hair")),), name="eye"))
    return items


def _spider_mite(rng: random.Random) -> list[Shape]:
    tone = "#CFD07E"
    body = Profile(
        ((31, 4.4), (32.4, 8), (37, 12.6), (44, 16), (52, 17.4), (60, 16.6), (67, 13), (72, 7.6), (74, 3), (74.4, 0))
    )
    look = LimbLook(("#DDD79E",), hairs=0.75, hair_length=2.2, shine=0.45)
    rows: list[tuple[Point, float, tuple[float, ...]]] = [
        ((60, 56), 27, (112, 120, 132, 144, 152, 158)),
        ((61, 50), 25, (96, 100, 110, 120, 126, 130)),
        ((59, 40), 25, (82, 76, 64, 54, 48, 42)),
        ((55.4, 36), 29, (56, 46, 34, 24, 14, 8)),
    ]
    items: list[Shape] = [*_legs(rng, rows, 3.2, look)]
    for flip in (False, True):
        palp = put([(1.4, 0), (3.8, -2.8), (3.0, -5.6)], (50, 32.6), flip=flip)
        items.append(ribbon(palp, (2.8, 2.4, 1.0), "#DDD79E", pen("fine")))
    snout = put([(-1.8, 0), (-1.2, -4.4), (0, -5.4), (1.2, -4.4), (1.8, 0)], (50, 32))
    items.append(smooth(snout, closed=True, fill="#DDD79E", stroke=pen("fine")))
    items.append(body.outline(globe((50, 52), 22, tone, depth=0.32, shine=0.5), pen("bold", times=0.7)))
    for side in (-1, 1):
        blot = [
            (38.4, 46),
            (42, 44.6),
            (44.6, 47.4),
            (43.6, 50.6),
            (45, 53.4),
            (43.4, 57.4),
            (40, 58.6),
            (37, 56),
            (36, 51.4),
        ]
        line = blot if side < 0 else mirror_points(blot)
        centre = (50 + side * 9.4, 51.6)
        items.append(
            Group((smooth(line, closed=True, fill=globe(centre, 8, "#3E4424", depth=0.4, shine=0.1)),), name="spot")
        )
    items.append(strokes([((38.6, 43.4), (50, 46), (61.4, 43.4))], pen("fine", opacity=0.5)))
    long = []
    for u, v, size in (
        (0.3, 0.12, 6),
        (0.72, 0.2, 6),
        (0.3, 0.28, 7),
        (0.84, 0.38, 7),
        (0.28, 0.46, 7.4),
        (0.9, 0.56, 7),
        (0.28, 0.64, 7.4),
        (0.8, 0.74, 7),
        (0.3, 0.82, 6.6),
        (0.7, 0.9, 6),
        (0.35, 0.97, 5),
    ):
        for side in (-1, 1):
            long.append(hair(body.at(side * u, v), side * (176 - 96 * u), size, side * 16))
    items.append(strokes(long, Stroke("#5A5636", 0.3)))
    for side in (-1, 1):
        for x, y in ((10.2, 38.4), (11.4, 40)):
            items.append(Group((Circle((50 + side * x, y), 0.8, "#C81E1E", pen("hair")),), name="eye"))
    return items


def _chigger(rng: random.Random) -> list[Shape]:
    tone = "#E2702F"
    body = Profile(
        ((34, 4), (35.2, 8), (39, 13), (45, 16.6), (53, 18), (61, 16.6), (67.6, 12), (71.4, 6.4), (72.8, 2), (73, 0))
    )
    look = LimbLook(("#E79A5A",), hairs=0.6, hair_length=2.4, shine=0.4)
    rows: list[tuple[Point, float, tuple[float, ...]]] = [
        ((60, 55), 33, (108, 116, 130, 144, 150, 156)),
        ((61, 47), 30, (86, 84, 84, 92, 100, 106)),
        ((57, 40), 31, (64, 54, 42, 30, 22, 16)),
    ]
    items: list[Shape] = [*_legs(rng, rows, 3.4, look)]
    # Mouthparts: two blade-like jaws between two short stout palps with forked claws.
    for flip in (False, True):
        palp = put([(2.2, 0), (5.6, -3), (5.4, -6.4), (3.4, -8)], (50, 36), flip=flip)
        items.append(ribbon(palp, (3.4, 3.2, 1.4), "#D9813F", pen("fine")))
        jaw = put([(0.4, 0), (0.5, -5), (1.4, -8.4), (2.4, -4), (2.4, 0)], (50, 36), flip=flip)
        items.append(smooth(jaw, closed=True, fill="#E7A468", stroke=pen("fine")))
        claw = put([(3.4, -8), (2.4, -9.8)], (50, 36), flip=flip)
        items.append(strokes([tuple(claw)], pen("line")))
    items.append(body.outline(globe((50, 54), 22, tone, depth=0.36, shine=0.42), pen("bold", times=0.7)))
    plate = [(45.6, 40.4), (50, 39.4), (54.4, 40.4), (55.2, 44), (53, 47), (50, 48), (47, 47), (44.8, 44)]
    items.append(smooth(plate, closed=True, fill="#C9571F", stroke=pen("line"), opacity=0.9))
    feathers: list[tuple[Point, ...]] = []
    spots = [
        (u, v)
        for v, row in (
            (0.3, (0.62,)),
            (0.42, (0.2, 0.55, 0.86)),
            (0.56, (0.16, 0.48, 0.8)),
            (0.7, (0.2, 0.56, 0.86)),
            (0.83, (0.22, 0.62)),
            (0.93, (0.34, 0.8)),
        )
        for u in row
    ]
    for u, v in spots:
        for side in (-1, 1):
            x, y = body.at(side * u, v)
            turn = math.radians(side * (172 - 60 * u))
            tip = (x + math.sin(turn) * 4.6, y - math.cos(turn) * 4.6)
            feathers.append(((x, y), tip))
            for k in (0.35, 0.6, 0.85):
                px, py = x + (tip[0] - x) * k, y + (tip[1] - y) * k
                for lean in (-0.7, 0.7):
                    feathers.append(((px, py), (px + math.sin(turn + lean) * 1.0, py - math.cos(turn + lean) * 1.0)))
    items.append(strokes(feathers, Stroke("#6A2A10", 0.24)))
    feelers = [((50 + s * 2.2, 43.4), (50 + s * 5, 39), (50 + s * 8.6, 37.4)) for s in (-1, 1)]
    items.append(strokes(feelers, pen("fine")))
    for side in (-1, 1):
        for x, y in ((7.4, 42.4), (7.8, 44.2)):
            items.append(Group((Circle((50 + side * x, y), 0.85, "#A8141C", pen("hair")),), name="eye"))
    return items


def _gall_mite(rng: random.Random) -> list[Shape]:
    # Worm-like, ringed, with two pairs of legs, all at the front end.
    tone = "#E6C79A"
    body = Profile(
        ((30, 2.6), (31.4, 5), (35, 7.4), (40, 8), (50, 7.4), (62, 6), (74, 4.4), (84, 2.8), (88, 1.6), (88.6, 0))
    )
    items: list[Shape] = []
    look = LimbLook(("#D9B27E",), hairs=0.0)
    widths = ((2.4, 2.4, 2.0), (2.0, 2.0, 1.6), (1.6, 1.5, 1.2), (1.2, 1.1, 0.7))
    for hip, turns in (((55, 37), (70, 40, 24, 14)), ((53, 34), (40, 16, 6, -4))):
        items += leg_pair(rng, hip, [3.4, 4, 3.4, 3.6], turns, widths, look)
    items.append(
        smooth(
            [(47.6, 31), (49.2, 25.6), (50, 24.8), (50.8, 25.6), (52.4, 31)],
            closed=True,
            fill="#C99A62",
            stroke=pen("fine"),
        )
    )
    items.append(body.outline(cylinder((42, 50), (58, 52), tone, shine=0.5), pen("outline")))
    rings = [
        (body.at(-0.97, v), (50, body.at(0, v)[1] + 1.0), body.at(0.97, v))
        for v in [0.2 + 0.0245 * k for k in range(32)]
    ]
    items.append(strokes(rings, pen("hair", opacity=0.8)))
    items.append(
        strokes(
            [
                ((49.4, 88), (46, 93), (44, 98)),
                ((50.6, 88), (54, 93), (56, 98)),
                ((43.2, 52), (38.6, 56)),
                ((56.8, 52), (61.4, 56)),
            ],
            pen("fine"),
        )
    )
    return items


MITES: Mapping[str, tuple[Callable[[random.Random], list[Shape]], float]] = {
    "velvet": (_velvet, 47.2),
    "clover": (_clover, 41.0),
    "spider": (_spider_mite, 43.4),
    "chigger": (_chigger, 39.0),
    "gall": (_gall_mite, 58.6),
}
"""Mite name to the function that draws it, head up, and the length of its body in the drawing."""

_LOOK: Mapping[str, Callable[[], list[Shape]]] = {
    "front-legs": lambda: [ring((50 + s * 14.4, 13.4), 7.6, 27.5, turn=s * 16) for s in (-1, 1)],
    "spots": lambda: [ring((50 + s * 9.4, 51.6), 7.4, 9.4) for s in (-1, 1)],
    "body": lambda: [ring((50, 53.6), 22.4, 27.4)],
}


def mite_kind(values: Mapping[str, object]) -> Drawing:
    """Recipe `mite-kind`. Settings: kind, look none|front-legs|spots|body, bar-mm, body-mm, scale, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", MITES, "velvet")
    look = settings.choice("look", (*_LOOK, "none"), "none")
    bar = settings.number("bar-mm", 0, least=0, most=20)
    long_mm = settings.number("body-mm", 1, least=0.05, most=20)
    most = settings.number("scale", 1.6, least=0.05, most=2)
    rng = seeded("mite-kind", kind, settings.whole("seed", 1))
    settings.done()
    make, long = MITES[kind]
    marks = _LOOK[look]() if look != "none" else []
    body, scale = fitted([*make(rng), *marks], bottom=95 if bar else 100, most=most)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, long * scale / long_mm))
    return framed(shapes)


RECIPES = {"mite-kind": mite_kind}
