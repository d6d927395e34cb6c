"""Insects: six legs, feelers, three body parts; beetles, ants, flies, and the recipe for all insects."""

from __future__ import annotations

import random
from collections.abc import Mapping

from keyapp.pictures.cricket import camel_cricket_parts
from keyapp.pictures.limb import LimbLook
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, sampled, taper
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Ellipse, Group, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import hairs_within, seeded, stipple

__all__ = ["RECIPES", "ant_parts", "beetle_parts", "fly_parts", "insect"]


def _six(
    rng: random.Random,
    look: LimbLook,
    hips: tuple[tuple[float, float], ...],
    reach: tuple[float, float, float],
    wide: float,
) -> list[Shape]:
    items: list[Shape] = []
    bends = ((52, 42, 18), (96, 108, 128), (128, 148, 168))
    widths = (
        (wide, wide * 1.25, wide * 0.9),
        (wide * 0.8, wide * 0.7, wide * 0.55),
        (wide * 0.5, wide * 0.42, wide * 0.22),
    )
    for hip, bend, long in reversed(list(zip(hips, bends, reach, strict=True))):
        items += leg_pair(rng, hip, [long * 0.36, long * 0.36, long * 0.3], bend, widths, look)
    return items


def _feelers(
    rng: random.Random, root: Point, bends: tuple[Point, ...], wide: float, knobs: int, tone: str = "#33241A"
) -> list[Shape]:
    items: list[Shape] = []
    for side in (1, -1):
        line = [(50 + side * (root[0] - 50), root[1])]
        line += [(50 + side * (x - 50 + rng.uniform(-0.8, 0.8)), y + rng.uniform(-0.8, 0.8)) for x, y in bends]
        beads = sampled(line, 6)
        picked = beads[2 :: max(1, len(beads) // knobs)]
        items.append(
            Group(
                (
                    taper(line, wide, wide * 0.55, tone),
                    *(Circle(spot, wide * 0.62, tone, pen("hair")) for spot in picked),
                ),
                name="feeler",
            )
        )
    return items


def beetle_parts(rng: random.Random, tone: str = "#3F3A38", *, long_feelers: bool = False) -> list[Shape]:
    """A beetle from above: hard wing cases meeting in a straight line, a neck plate, a head with jaws."""
    look = LimbLook((blend(tone, "#6A4226", 0.45),), hairs=0.5, spines=(1, 5, 2), spine_length=1.2)
    items = _six(rng, look, ((56, 39), (58, 49), (56.5, 57)), (27, 30, 36), 2.6)
    if long_feelers:
        items += _feelers(rng, (53.6, 22.4), ((59, 14), (67, 5), (78, -1), (88, 6), (93, 18), (92, 29)), 1.35, 11)
    else:
        items += _feelers(rng, (53.6, 22.4), ((58.5, 17), (64, 13.5), (69, 8)), 1.0, 9)
    for side in (1, -1):
        items.append(
            smooth(
                [
                    (50 + side * 2.8, 20),
                    (50 + side * 3.4, 16.4),
                    (50 + side * 0.8, 13.6),
                    (50 + side * 1.6, 17),
                    (50 + side * 0.6, 19.6),
                ],
                closed=True,
                fill="#4A2C1A",
                stroke=pen("line"),
            )
        )
    head = Profile(((17.8, 2.6), (19, 4.4), (23, 5.6), (27, 5.2), (29.6, 4.6)))
    neck = Profile(((28.4, 5.6), (29.4, 7.4), (34, 9.4), (39, 8.8), (42.4, 7.6), (43, 5)))
    case = Profile(((42.6, 6.4), (44, 9.2), (52, 12.2), (62, 12.8), (72, 10.8), (80, 5.4), (83, 0.8), (83.2, 0)))
    items.append(
        Group(
            (head.outline(globe((50, 23), 7, tone), pen("outline")), eye((45.2, 22.6), 1.2), eye((54.8, 22.6), 1.2)),
            name="head",
        )
    )
    items.append(
        Group(
            (
                case.outline(globe((50, 60), 22, tone, shine=0.4), pen("outline")),
                strokes(
                    [
                        sampled([case.at(u, v) for v in (0.03, 0.3, 0.6, 0.94)])
                        for u in (-0.8, -0.6, -0.4, -0.2, 0.2, 0.4, 0.6, 0.8)
                    ],
                    pen("fine", "black", opacity=0.6),
                ),
                strokes([((50, 43.6), (50, 83))], pen("outline")),
            ),
            name="hind-part",
        )
    )
    items.append(
        Group(
            (
                neck.outline(globe((50, 36), 11, tone, shine=0.4), pen("outline")),
                strokes([((50, 31), (50, 41))], pen("fine")),
            ),
            name="middle-part",
        )
    )
    items.append(stipple(case.at, rng, count=120, radius=0.13, tone="black"))
    return items


def ant_parts(rng: random.Random, tone: str = "#7A3B22") -> list[Shape]:
    """A worker ant from above: head with elbowed feelers, slim middle, a knot, a round hind part."""
    look = LimbLook((tone,), hairs=0.7, hair_length=1.2)
    items = _six(rng, look, ((53, 38), (53.4, 42.5), (53.2, 47)), (26, 30, 34), 2.0)
    items += _feelers(rng, (53, 16.6), ((61.5, 13.6), (65, 12), (65, 5.5), (62.5, 0.8)), 1.1, 11, "#4A2415")
    head = Profile(((12, 2.6), (13.4, 5.4), (19, 7.6), (25, 7.4), (28.8, 5), (29.6, 1.6)))
    middle = Profile(((29.4, 2.2), (32, 4.4), (36.5, 5.0), (41.5, 3.4), (46, 3.9), (50, 3.2), (52.4, 1.4)))
    knot = Profile(((51.8, 1.2), (54, 2.6), (56.6, 2.4), (58, 1.2)))
    hind = Profile(((57.2, 1.4), (59.6, 6.6), (66, 10.4), (73, 10.6), (80, 7.4), (85, 2.2), (85.6, 0)))
    for side in (1, -1):
        items.append(
            smooth(
                [
                    (50 + side * 3.6, 13.6),
                    (50 + side * 4.4, 9.6),
                    (50 + side * 1.0, 7),
                    (50 + side * 1.6, 10),
                    (50 + side * 0.6, 12.6),
                ],
                closed=True,
                fill=blend(tone, "#2A140A", 0.3),
                stroke=pen("line"),
            )
        )
    items.append(
        Group(
            (head.outline(globe((50, 20), 9, tone), pen("outline")), eye((43.9, 19.6), 1.0), eye((56.1, 19.6), 1.0)),
            name="head",
        )
    )
    items.append(
        Group(
            (
                knot.outline(globe((50, 55), 3, tone), pen("outline", times=0.8)),
                middle.outline(globe((50, 40), 9, tone), pen("outline")),
                strokes([middle.line(41.4, 0.5, 0.95)], pen("line")),
            ),
            name="middle-part",
        )
    )
    items.append(
        Group(
            (
                hind.outline(globe((50, 70), 13, blend(tone, "#2A140A", 0.35), shine=0.4), pen("outline")),
                strokes([hind.line(y, 1.0, 0.97) for y in (65, 71.5, 77.5, 82)], pen("line", opacity=0.8)),
                hairs_within(hind.at, rng, count=60, length=1.6),
            ),
            name="hind-part",
        )
    )
    return items


def _wing(side: int, rng: random.Random) -> Group:
    # A clear wing with its main veins, spread back and out.
    def spot(x: float, y: float) -> Point:
        return 50 + side * x, y

    edge = [
        spot(4.2, 37),
        spot(16, 35.4),
        spot(30, 38.4),
        spot(40, 44.6),
        spot(42, 51),
        spot(36, 56),
        spot(24, 55.4),
        spot(12, 50),
        spot(5, 43),
    ]
    veins = [
        [spot(4.4, 37.6), spot(18, 37), spot(31, 41), spot(40.6, 47)],
        [spot(4.6, 38.6), spot(18, 40.4), spot(31, 45.4), spot(41.6, 50.6)],
        [spot(4.8, 39.8), spot(17, 43.8), spot(29, 49.8), spot(38, 54.4)],
        [spot(5, 41), spot(14, 46.4), spot(24, 52.4), spot(29, 55.6)],
        [spot(5, 42.2), spot(11, 47.4), spot(17, 52.4)],
    ]
    cross = [
        (spot(22, 37.8), spot(22, 41.6)),
        (spot(26, 43.2), spot(25.4, 47.6)),
        (spot(15, 43), spot(14.4, 46.6)),
        (spot(33.4, 46.6), spot(32.6, 51.2)),
    ]
    return Group(
        (
            smooth(edge, closed=True, fill="#C9D6D4", stroke=pen("outline", times=0.9), opacity=0.72),
            smooth(edge, closed=True, stroke=pen("line")),
            strokes([sampled(vein) for vein in veins], pen("line", "#4C4238", opacity=0.9)),
            strokes(cross, pen("fine", "#4C4238")),
        ),
        name="wing",
    )


def fly_parts(rng: random.Random, *, winged: bool, tone: str = "#6C6459") -> list[Shape]:
    """An insect from above, with two spread clear wings or with none at all, otherwise the same."""
    look = LimbLook((blend(tone, "#2A1A10", 0.4),), hairs=0.8, hair_length=1.3, spines=(0, 2, 0), spine_length=1.4)
    items = _six(rng, look, ((54.5, 36), (56, 41.5), (55, 47)), (26, 31, 36), 2.2)
    items += _feelers(rng, (52, 21.4), ((55.4, 15.6), (59.6, 11)), 1.1, 6)
    middle = Profile(((28.6, 3.4), (30.4, 6.2), (36, 8.4), (43, 8.2), (48.6, 5.6), (50.4, 3.2)))
    hind = Profile(((49.6, 3.2), (52, 6.6), (59, 9.2), (68, 8.4), (75, 4.6), (78.2, 0.8), (78.6, 0)))
    items.append(
        Group(
            (
                hind.outline(globe((50, 62), 13, blend(tone, "#B58A4A", 0.3)), pen("outline")),
                strokes([hind.line(y, 0.9, 0.97) for y in (56, 62, 68, 73)], pen("line", opacity=0.8)),
                hairs_within(hind.at, rng, count=90, length=1.7),
            ),
            name="hind-part",
        )
    )
    if winged:
        items += [_wing(-1, rng), _wing(1, rng)]
    items.append(
        Group(
            (
                middle.outline(globe((50, 39), 10, tone), pen("outline")),
                strokes(
                    [sampled([middle.at(u, v) for v in (0.1, 0.5, 0.85)]) for u in (-0.5, 0, 0.5)],
                    pen("line", opacity=0.5),
                ),
                hairs_within(middle.at, rng, count=60, length=1.4),
            ),
            name="middle-part",
        )
    )
    items.append(
        Group(
            (
                Circle((50, 25), 5.2, globe((50, 25), 5.4, tone), pen("outline")),
                *(
                    Ellipse((50 + side * 3.9, 24.4), 2.5, 3.7, "#7A3A28", pen("line"), turn=side * 14)
                    for side in (-1, 1)
                ),
                *(Circle((50 + side * 3.9 - 0.8, 23), 0.6, "white") for side in (-1, 1)),
            ),
            name="head",
        )
    )
    return items


def insect(values: Mapping[str, object]) -> Drawing:
    """Recipe `insect`. Settings: kind camel-cricket|plain-hind-legs|beetle|ant|winged|wingless, ring (wings, feelers,
    hind-legs), bar-mm, body-mm, seed."""
    settings = Settings(values)
    kind = settings.choice(
        "kind", ("camel-cricket", "plain-hind-legs", "beetle", "ant", "winged", "wingless"), "camel-cricket"
    )
    rng = seeded("insect", settings.whole("seed", 1))
    marks = settings.words("ring", ("wings", "feelers", "hind-legs", "wings-place"))
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 20, least=1, most=200)
    settings.done()
    if kind in ("winged", "wingless"):
        items = fly_parts(rng, winged=kind == "winged")
    elif kind in ("beetle", "ant"):
        items = (beetle_parts if kind == "beetle" else ant_parts)(rng)
    else:
        items = camel_cricket_parts(rng, jumping=kind == "camel-cricket")
    spots = {
        "wings": [(24.0, 46.0, 22.0, 14.0), (76.0, 46.0, 22.0, 14.0)],
        "wings-place": [(50.0, 45.0, 15.0, 13.0)],
        "feelers": [(50.0, 13.0, 22.0, 13.0)],
        "hind-legs": [(68.0, 60.0, 27.0, 28.0) if kind == "camel-cricket" else (57.0, 74.5, 14.0, 12.5)],
    }
    items += [ring((x, y), rx, ry) for mark in marks for x, y, rx, ry in spots[mark]]
    body, scale = fitted(items, margin=4, bottom=97 if bar else 100, most=1.15)
    shapes: list[Shape] = [body]
    if bar:
        shapes.append(scale_bar(bar, 50 * scale / long_mm))
    return framed(shapes)


RECIPES = {"insect": insect}
