"""Recipe `whip-scorpion`: the vinegaroon with its whip tail, and the flat tailless whip scorpion."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import replace

from keyapp.pictures.limb import LimbLook, Segment, joints_from, limb
from keyapp.pictures.part import Profile, eye, fitted, framed, leg_pair, named, put, recolored, ring_round, taper
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, Path, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen, scale_bar
from keyapp.pictures.texture import seeded, stipple, wedge

__all__ = ["RECIPES", "tailless_parts", "vinegaroon_parts", "whip_scorpion"]

_BLACK = "#4A342A"
_EDGE = "#C79A72"


def _rim(lines: Sequence[Sequence[Point]]) -> Path:
    """Light along the edges of black plates."""
    return strokes(lines, Stroke(_EDGE, 0.22, 0.65))


def vinegaroon_parts(rng: random.Random) -> list[Shape]:
    """A vinegaroon from above, head up: body 28 to 74, whip below it."""
    items: list[Shape] = []
    # The whip: as long as the body, ringed, with no swollen tip.
    whip: list[Point] = [(50, 77.5), (50.4, 84), (53, 91), (59, 96.5), (68, 98.4), (77, 95.6), (84.5, 89)]
    items.append(Group((taper(whip, 1.0, 0.34, "#2E1C14"),), name="tail"))
    w = 2.1
    look = LimbLook(("#5A3A2C",), hairs=0.4, hair_length=1.0, spines=(0, 1, 2, 1), spine_length=1.0, lean=True)
    widths = ((w, w * 1.15, w), (w, w * 1.05, w * 0.85), (w * 0.75, w * 0.75, w * 0.55), (w * 0.5, w * 0.42, w * 0.2))
    for down, turns, length in (
        (38.5, (78, 92, 74, 62), 25.0), (42.4, (106, 112, 124, 134), 27.0), (46.0, (128, 128, 148, 162), 33.0),
    ):  # fmt: skip
        items += leg_pair(rng, (54.6, down), [length * k for k in (0.28, 0.28, 0.24, 0.2)], turns, widths, look)
    # The first legs: thin and very long feelers, held forward and out.
    thin = LimbLook(("#5A3A2C",), lean=True)
    feel = ((1.0, 1.05, 0.9), (0.9, 0.85, 0.75), (0.75, 0.7, 0.6), (0.6, 0.55, 0.4), (0.4, 0.38, 0.3))
    items += leg_pair(rng, (54.4, 35.0), [9.5, 12, 14, 7, 5.5], (76, 62, 30, 44, 70), feel, thin, name="whip")
    items += _pincers(rng)
    hind = Profile(
        ((49.4, 4.0), (51, 5.4), (56, 7.4), (62, 7.8), (67, 6.8), (71, 4.6), (73.6, 2.6), (74.2, 1.9))
    )  # fmt: skip
    for index, half in enumerate((1.0, 1.25, 1.55)):
        y = 77.6 - index * 1.4
        ringed = [(50 - half, y - 1.5), (50 + half, y - 1.5), (50 + half, y), (50 - half, y)]
        items.append(smooth(ringed, closed=True, fill=_BLACK, stroke=pen("line"), tension=0.3))
    edges = [49.6 + k for k in (0, 1.6, 4.3, 7.2, 10.1, 13.0, 15.8, 18.5, 21.0, 24.4)]
    for index in range(8, -1, -1):
        plate = hind.plate(edges[index], edges[index + 1], _BLACK, bow=0.3, depth=0.5)
        items.append(Group(plate.items, name="ring-plate"))
    items.append(_rim([hind.line(y - 0.5, 0.3, 0.88) for y in edges[1:9]]))
    dimples = [(50 + side * hind.half(y) * 0.42, y - 1.4) for y in edges[2:8] for side in (-1, 1)]
    items.append(strokes([((x, y), (x + 0.12, y + 0.3)) for x, y in dimples], Stroke("#160D09", 0.6, 0.8)))
    front = Profile(
        ((28.6, 1.5), (29.2, 3.0), (31.5, 4.3), (36, 5.2), (42, 5.6), (47, 5.2), (49.6, 4.2), (50.1, 0))
    )  # fmt: skip
    items.append(front.outline(cylinder((44, 38), (56, 40), _BLACK, depth=0.5), pen("outline")))
    items.append(strokes([((50, 40.4), (50, 47)), *(((50 + s * 1.4, 41), (50 + s * 4, 39.4)) for s in (-1, 1)),
                          *(((50 + s * 1.2, 44.6), (50 + s * 3.8, 45.4)) for s in (-1, 1))],
                         Stroke("#160D09", 0.4, 0.7)))  # fmt: skip
    items.append(_rim([[(50 + s * x, y) for x, y in ((2.4, 30.2), (3.8, 33), (4.6, 37), (4.9, 42))] for s in (-1, 1)]))
    items += [eye((50 + side * 0.75, 30.6), 0.5) for side in (-1, 1)]
    items += [eye((50 + side * 3.9, 33.0 + k * 0.7), 0.26) for side in (-1, 1) for k in (0, 1)]
    items += [stipple(front.at, rng, count=60, radius=0.12), stipple(hind.at, rng, count=80, radius=0.12)]
    return items


def _pincers(rng: random.Random) -> list[Shape]:
    """Heavy arms folded in front like a basket, with spurs on the inside and a short claw at each end."""
    items: list[Shape] = []
    look = LimbLook(("#4E3024",), hairs=0.3, hair_length=1.0, outline=0.5, shine=0.34)
    for side in (1, -1):
        spots = joints_from((50 + side * 3.0, 31.6), (4.0, 6.6, 7.2, 5.4), [side * t for t in (40, 62, -6, -36)])
        widths = ((5.8, 6.4, 6.2), (5.6, 6.4, 5.6), (5.0, 5.8, 4.8), (4.4, 4.8, 3.6))
        parts: list[Shape] = []
        # Spurs: one from the knee joint (the fixed finger of the basket), small teeth on the rim of the first joint.
        knee = spots[3]
        parts.append(wedge((knee[0] - side * 1.4, knee[1] + 1.4), -side * 62, 6.0, 2.0, "#2A1811"))
        rim = [(50 + side * (1.1 + k * 1.0), 28.9 - k * 0.25) for k in range(4)]
        parts += [wedge(spot, -side * (4 - k * 8), 1.3, 0.7, "#2A1811") for k, spot in enumerate(rim)]
        # The claw: a fixed finger on the last joint, the thin finger that moves outside it.
        end = spots[-1]
        turn = side * -46
        fixed = put([(-1.9, 0.8), (-1.9, -1.4), (-1.5, -4.4), (-0.5, -1.9), (0.2, 0)], end, turn, flip=side < 0)
        moves = put([(0.0, 0.6), (1.6, 0.2), (1.7, -2.6), (0.2, -6.6), (0.3, -2.8)], end, turn, flip=side < 0)
        parts += [
            smooth(fixed, closed=True, fill="#33201A", stroke=pen("line")),
            smooth(moves, closed=True, fill="#33201A", stroke=pen("line")),
        ]
        parts.append(limb(spots, widths, look, rng, name="arm"))
        items.append(Group(tuple(parts), name="pincer"))
    return items


_SHADE = "#8A6E56"


def tailless_parts(rng: random.Random) -> list[Shape]:
    """A tailless whip scorpion from above, head up: a wide head shield, folded spiny arms, whips, six walking legs."""
    items: list[Shape] = []
    bands = ("#8A6A4C", "#8A6A4C", "#7C5C42", "#6E5240", "#6E5240")
    look = LimbLook(bands, hairs=0.2, hair_length=0.8, spines=(0, 0, 1, 0), spine_length=0.8, lean=True)
    w = 1.9
    widths = (
        (w * 1.1, w * 1.2, w), (w * 0.8, w * 0.85, w * 0.7), (w * 0.6, w * 0.55, w * 0.45),
        (w * 0.42, w * 0.36, w * 0.18),
    )  # fmt: skip
    for hip, turns, length in (
        ((57.6, 47.6), (66, 84, 104, 122), 41.0),
        ((57.4, 50.6), (96, 112, 132, 150), 43.0),
        ((56.0, 53.2), (124, 136, 156, 172), 42.0),
    ):
        items += leg_pair(rng, hip, [length * k for k in (0.34, 0.36, 0.2, 0.1)], turns, widths, look)
    # The whips: one to the front and one out to the side, as when it feels its way.
    thin = LimbLook(("#8A6A4C", "#6E5240"), lean=True)
    for side, reach in ((1, (62, 34, 16)), (-1, (74, 62, 30))):
        spots = joints_from((50 + side * 8, 44), (17, 19), [side * t for t in reach[:2]])
        leg = limb(spots, ((1.1, 1.15, 0.9), (0.85, 0.75, 0.6)), thin, rng)
        last, bend = [spots[-1]], float(reach[1])
        for _ in range(7):
            bend += (reach[2] - reach[1]) / 3.0
            last += joints_from(last[-1], (5.2,), (side * bend,))[1:]
        items.append(Group((taper(last, 0.6, 0.22, "#4A3628"), *leg.items), name="whip"))
    items += _folding_arms(rng)
    hind = Profile(
        ((54.4, 2.6), (55.6, 4.6), (60, 7.2), (65, 7.9), (70, 7.0), (74, 4.8), (76.4, 2.2), (77, 0))
    )  # fmt: skip
    edges = [54.6, 56.2, 58.4, 60.8, 63.2, 65.6, 68.0, 70.2, 72.3, 74.2, 75.7, 77.0]
    for index in range(10, -1, -1):
        plate = hind.plate(edges[index], edges[index + 1], _SHADE, bow=0.4, depth=0.34)
        items.append(Group(plate.items, name="ring-plate"))
    for side in (-1, 1):
        marks = [(50 + side * hind.half(y) * 0.5, y - 1.1) for y in edges[2:9]]
        items.append(strokes([((x, y), (x + side * 0.6, y + 0.1)) for x, y in marks], Stroke("#4A3424", 0.8, 0.55)))
    shield: list[Point] = [
        (50, 40.8), (53.4, 41.0), (57.6, 42.6), (60.2, 46.2), (60.0, 50.2), (57.2, 53.8), (53.4, 55.4), (50, 54.6),
        (46.6, 55.4), (42.8, 53.8), (40.0, 50.2), (39.8, 46.2), (42.4, 42.6), (46.6, 41.0),
    ]  # fmt: skip
    items.append(Group((smooth(shield, closed=True, fill=globe((50, 47), 12, blend(_SHADE, "#5A3E28", 0.3), depth=0.36),
                               stroke=pen("outline")),), name="shield"))  # fmt: skip
    furrows: list[Sequence[Point]] = [((50, 45), (50, 52.6))]
    heights = ((46, 44.8), (48.4, 48.6), (50.6, 52))
    furrows += [((50 + s * 1.4, y0), (50 + s * 7.6, y1)) for s in (-1, 1) for y0, y1 in heights]
    items.append(strokes(furrows, pen("fine", opacity=0.55)))
    rim = ((5.6, 42.4), (9.2, 46.4), (9.0, 50), (6.6, 53.2))
    items.append(strokes([[(50 + s * x, y) for x, y in rim] for s in (-1, 1)], Stroke("#D8B48A", 0.35, 0.55)))
    items += [eye((50 + side * 0.62, 41.9), 0.5) for side in (-1, 1)]
    trio = ((6.6, 44.2), (7.2, 44.7), (6.6, 45.1))
    items += [eye((50 + side * x, y), 0.26) for side in (-1, 1) for x, y in trio]
    items.append(stipple(hind.at, rng, count=70, radius=0.12))
    return items


def _folding_arms(rng: random.Random) -> list[Shape]:
    """The catching arms, half folded: thigh out to the side, the spiny shin back across the front."""
    items: list[Shape] = []
    look = LimbLook(("#7A4E32",), outline=0.45, shine=0.3)
    for side in (1, -1):
        spots = joints_from((50 + side * 4.6, 42.6), (4.0, 13.0, 12.6, 4.4), [side * t for t in (46, 62, -34, -62)])
        widths = ((3.2, 3.2, 2.8), (2.8, 2.9, 2.4), (2.5, 2.8, 1.9), (1.7, 1.5, 0.8))
        pieces = [Segment(one, two, *wide) for one, two, wide in zip(spots[:-1], spots[1:], widths, strict=True)]
        spines: list[Shape] = []
        # Seen along the arm, the inner edge lies to the left on the right-hand side.
        for piece, row in ((pieces[1], ((0.3, 2.2), (0.52, 3.4), (0.72, 4.4), (0.9, 2.6))),
                           (pieces[2], ((0.12, 2.4), (0.32, 3.8), (0.54, 5.6), (0.74, 6.2), (0.92, 3.2)))):  # fmt: skip
            for t, long in row:
                root = piece.at(t, -side * 0.7)
                spines.append(wedge(root, piece.degrees - side * 68, long * 1.15, 1.15, "#4A2A1A"))
        for t, long in ((0.3, 1.6), (0.6, 2.2), (0.85, 1.8)):
            spines.append(wedge(pieces[1].at(t, side * 0.7), pieces[1].degrees + side * 74, long, 0.7, "#4A2A1A"))
        claw = wedge(spots[-1], side * -84, 3.2, 0.9, "#3A2014")
        items.append(Group((*spines, claw, limb(spots, widths, look, rng, name="arm")), name="folding-arm"))
    return items


def whip_scorpion(values: Mapping[str, object]) -> Drawing:
    """Recipe `whip-scorpion`. Settings: kind vinegaroon|tailless, look-at (nothing, tail, whips or arms), bar-mm,
    body-mm, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", ("vinegaroon", "tailless"), "vinegaroon")
    mark = settings.choice("look-at", ("nothing", "tail", "whips", "arms"), "nothing")
    rng = seeded("whip-scorpion", settings.whole("seed", 1))
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 45 if kind == "vinegaroon" else 18, least=2, most=200)
    settings.done()
    items = vinegaroon_parts(rng) if kind == "vinegaroon" else tailless_parts(rng)
    if mark == "whips":
        items = [
            replace(item, items=tuple(recolored(part, "look", line="look", wash=0.15) for part in item.items))
            if isinstance(item, Group) and item.name == "whip"
            else item
            for item in items
        ]
    elif mark in ("tail", "arms"):
        items.append(ring_round(named(items, "tail" if mark == "tail" else "folding-arm"), grow=2.0))
    body, scale = fitted(items, margin=4, bottom=(97 if kind == "vinegaroon" else 93) if bar else 100)
    shapes: list[Shape] = [body]
    if bar:
        units = 46.0 if kind == "vinegaroon" else 36.0
        shapes.append(scale_bar(bar, units * scale / long_mm))
    return framed(shapes)


RECIPES = {"whip-scorpion": whip_scorpion}
