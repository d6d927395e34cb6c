"""Growths that mites make on leaves: nails, beads, felt, blisters and rolled edges; and a leaf without any."""

from __future__ import annotations

import random
from collections.abc import Mapping

from keyapp.pictures.blade import Blade, blob
from keyapp.pictures.insect import beetle_parts
from keyapp.pictures.mite_kinds import MITES
from keyapp.pictures.part import framed, ground_shadow, put, ribbon
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Ellipse,
    Group,
    LinearGradient,
    Point,
    RadialGradient,
    Shape,
    Stop,
    placed,
    smooth,
    strokes,
)
from keyapp.pictures.silk import twig
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar
from keyapp.pictures.texture import hair, seeded

__all__ = ["RECIPES", "gall"]

_RED = "#B8382C"


def _nail(at: Point, high: float, lean: float, rng: random.Random) -> Group:
    # A slim pointed pouch that stands on the leaf, greenish at its foot.
    x, y = at
    tip = (x + lean, y - high)
    middle = (x + lean * 0.3 + rng.uniform(-0.3, 0.3), y - high * 0.55)
    tone = blend(_RED, "#D98A3A", rng.random() * 0.35)
    body = ribbon([(x, y), middle, tip], (2.1, 1.9, 0.35), tone, pen("fine", "#5E1A14"))
    return Group(
        (
            Ellipse((x + 1.2, y + 0.2), 2.2, 0.9, "#2E3A1E", None, 0.3),
            body,
            Ellipse((x, y), 1.35, 0.75, "#A9B465", pen("hair", "#4A5A2A")),
            strokes(
                [((x - 0.4, y - 0.9), (x - 0.35 + lean * 0.25, y - high * 0.55))], pen("fine", "#F3B9A4", opacity=0.85)
            ),
        ),
        name="gall",
    )


def _bead(at: Point, size: float, tone: str) -> Group:
    x, y = at
    shape = (
        Ellipse((x + 0.45 * size, y + 0.75 * size), 1.15 * size, 0.7 * size, "#2E3A1E", None, 0.3),
        Circle(at, size, globe(at, size, tone, depth=0.4, shine=0.35), pen("fine", "#5E1A14")),
        Circle((x - 0.3 * size, y - 0.36 * size), 0.22 * size, "white", None, 0.85),
    )
    return Group(shape, name="gall")


def _felt(at: Point, rx: float, ry: float, turn: float, rng: random.Random) -> Group:
    edge = list(blob(at, rx, ry, rng, turn, 11))
    fibres = []
    for _ in range(round(rx * ry * 4.2)):
        far, angle = rng.random() ** 0.5 * 0.98, rng.uniform(0, 360)
        spot = put([(rx * far, 0)], (0, 0), angle)[0]
        root = put([(spot[0], spot[1] * ry / rx)], at, turn)[0]
        fibres.append(hair(root, rng.uniform(0, 360), rng.uniform(0.45, 0.9)))
    half = len(fibres) // 2
    low = [(x + 0.5, y + 0.7) for x, y in edge]
    return Group(
        (
            smooth(low, closed=True, fill="#2E3A1E", opacity=0.3),
            smooth(edge, closed=True, fill=globe(at, max(rx, ry), "#DDB5A6", depth=0.16, shine=0.4)),
            strokes(fibres[:half], pen("hair", "#A8614C", opacity=0.9)),
            strokes(fibres[half:], pen("hair", "#FFF4EC", times=1.25)),
        ),
        name="gall",
    )


def _blister(at: Point, rx: float, ry: float, turn: float, rng: random.Random, tone: str) -> Group:
    # A swelling of the leaf itself: its colour fades into the blade at the rim.
    edge = list(blob(at, rx, ry, rng, turn, 10, rough=0.07))
    shade = RadialGradient(
        at,
        rx * 1.16,
        (
            Stop(0, blend(tone, "#FFFFF0", 0.72)),
            Stop(0.4, tone),
            Stop(0.8, blend(tone, "#55703F", 0.6)),
            Stop(1, "#4C6638"),
        ),
        (at[0] - rx * 0.36, at[1] - ry * 0.44),
    )
    under = [(x + 0.5, y + 0.7) for x, y in edge[: len(edge) // 2 + 1]]
    return Group(
        (
            smooth(edge, closed=True, fill=shade),
            smooth(under, stroke=pen("outline", "#2E3F1C", opacity=0.75)),
        ),
        name="gall",
    )


def _beads_on(
    leaf: Blade, rng: random.Random, count: int, tones: tuple[str, ...], size: float, gap: float
) -> list[Shape]:
    spots = sorted(leaf.scattered(rng, count, gap=gap), key=lambda p: p[1])
    return [_bead(spot, size * rng.uniform(0.7, 1.2), rng.choice(tones)) for spot in spots]


def _nails_on(leaf: Blade, rng: random.Random, count: int, high: float, gap: float) -> list[Shape]:
    spots = sorted(leaf.scattered(rng, count, gap=gap, edge=0.8), key=lambda p: p[1])
    return [_nail(spot, high * rng.uniform(0.75, 1.2), rng.uniform(-1.6, 1.6), rng) for spot in spots]


def _spikes_and_beads(rng: random.Random) -> list[Shape]:
    leaf = Blade("heart", (53, 84), -5, 76, 1.14)
    return [leaf.drawn(rng, teeth=1.5, stalk=11), *_split(leaf, rng)]


def _split(leaf: Blade, rng: random.Random) -> list[Shape]:
    # Nails on the half towards the tip, beads on the half towards the stalk.
    spots = sorted(leaf.scattered(rng, 44, gap=6.4, edge=0.8), key=lambda p: p[1])
    items: list[Shape] = []
    for spot in spots:
        if spot[1] < 50:
            items.append(_nail(spot, rng.uniform(7.5, 11), rng.uniform(-1.8, 1.8), rng))
        else:
            items.append(_bead(spot, rng.uniform(1.6, 2.5), rng.choice((_RED, "#C65A34"))))
    return items


def _felt_leaf(rng: random.Random) -> list[Shape]:
    leaf = Blade("lobed", (50, 86), 0, 80, 0.92)
    items: list[Shape] = [leaf.drawn(rng, teeth=1.6, veins=4, stalk=9)]
    for (u, v), rx, ry, turn in (
        ((-0.46, 0.2), 10, 7, 20),
        ((0.42, 0.34), 11, 7.6, -24),
        ((-0.48, 0.42), 8, 5.6, -30),
        ((0.36, 0.04), 7, 5.0, 10),
        ((-0.42, 0.72), 6.4, 5.4, 30),
        ((0.4, 0.64), 6, 4.8, 0),
    ):
        items.append(_felt(leaf.spot(u, v), rx, ry, turn, rng))
    return items


def _blister_leaf(rng: random.Random) -> list[Shape]:
    leaf = Blade("oval", (44, 91), 4, 84, 1.2)
    trim = 0.82
    items: list[Shape] = [leaf.drawn(rng, veins=6, stalk=7, trim=trim)]
    tones = ("#AFC07A", "#A9BC74", "#BDB46A")
    for spot in leaf.scattered(rng, 17, gap=10.4, edge=0.5, low=0.14):
        rx = rng.uniform(4.2, 6.2)
        items.append(_blister(spot, rx, rx * 0.74, rng.uniform(-40, 40), rng, rng.choice(tones)))
    # The right-hand edge is rolled up tight along most of its length.
    middle = put([(0, 0), (0, -leaf.long)], leaf.at, leaf.turn)
    lean = (middle[1][0] - middle[0][0]) / (middle[1][1] - middle[0][1])
    roll = [
        ((x - (middle[0][0] + (y - middle[0][1]) * lean)) * (trim - 0.03) + middle[0][0] + (y - middle[0][1]) * lean, y)
        for x, y in leaf.side(4)[4:-3]
    ]
    ends = (0.6, 3.4, 4.6, 5.0, 4.4, 3.2, 0.6)
    shade = LinearGradient((62, 50), (72, 52), (Stop(0, "#6F8A4C"), Stop(0.45, "#D3DDAE"), Stop(1, "#7F9A58")))
    under = [(x - 1.2, y + 0.6) for x, y in roll]
    items.append(ribbon(under, ends, "#26331A", opacity=0.35))
    items.append(ribbon(roll, ends, shade, pen("line", "#3F5A2C")))
    items.append(strokes([tuple((x - 0.5, y) for x, y in roll[3:-3])], pen("fine", "#3F5A2C", opacity=0.8)))
    items.append(
        strokes(
            [((x - 1.7, y - 0.5), (x - 0.6, y + 0.5), (x + 1.6, y - 0.6)) for x, y in roll[4:-3:2]],
            pen("hair", "#3F5A2C"),
        )
    )
    return items


def _bare_leaf(rng: random.Random) -> list[Shape]:
    leaf = Blade("oval", (36, 92), 14, 86, 1.3)
    scale, turn = 0.34, 38.0
    at = (58.0, 34.0)
    corner = put([(-50 * scale, -50 * scale)], at, turn)[0]
    beetle = placed(beetle_parts(rng), at=corner, scale=scale, turn=turn)
    dashes: list[tuple[Point, ...]] = []
    for k in range(22):
        arc = [put([(15, 0)], (47, 65), k * 360 / 22 + step * 3.2)[0] for step in range(4)]
        dashes.append(tuple(arc))
    return [
        leaf.drawn(rng, veins=6, stalk=6),
        ground_shadow((at[0] + 1, at[1] + 1.6), 12, 12, 0.26),
        beetle,
        Group((strokes(dashes, pen("ring", "look")),), name="empty"),
    ]


def _on_twig(rng: random.Random) -> list[Shape]:
    stem = twig([(99, 90), (80, 83), (58, 80), (32, 84), (4, 93)], 3.2, 1.8, rng)
    one = Blade("heart", (60, 72), 12, 62, 1.06)
    two = Blade("heart", (32, 78), -34, 42, 1.0, blend("leaf", "leaf-dark", 0.2))
    swell = [
        (-15, 0),
        (-11, -4.4),
        (-5, -7.6),
        (2, -8.2),
        (8, -6.4),
        (13, -2.6),
        (15, 0.4),
        (12, 4),
        (6, 7.4),
        (-1, 8.2),
        (-8, 6.4),
        (-12.6, 3),
    ]
    edge = put(swell, (78, 82), 14)
    swelling = smooth(edge, closed=True, fill=globe((78, 82), 14, "#9A7650", depth=0.5), stroke=pen("outline"))
    cracks = [
        ((x, y), (x + 2.2, y + 0.5), (x + 4.2, y + 1.6))
        for x, y in ((72, 79), (76, 77), (78, 81), (74, 84), (80, 85), (82, 80), (69, 81.6))
    ]
    return [
        two.drawn(rng, teeth=1.2, stalk=8),
        *_beads_on(two, rng, 15, (_RED, "#C65A34"), 1.9, 5.0),
        one.drawn(rng, teeth=1.5, stalk=10),
        *_nails_on(one, rng, 22, 8.4, 7.0),
        stem,
        Group((swelling, strokes(cracks, pen("line", opacity=0.7))), name="gall"),
    ]


def _mite_gall(rng: random.Random) -> list[Shape]:
    leaf = Blade("heart", (42, 82), -6, 74, 1.06)
    spots = leaf.scattered(rng, 30, gap=6.8, edge=0.8)
    centre, radius = (78.0, 69.0), 19.5
    near = min(spots, key=lambda p: abs(p[0] - 64) + abs(p[1] - 40))
    lens: list[Shape] = [
        strokes(
            [
                ((near[0] + 3.5, near[1] - 1.6), (centre[0] + 12, centre[1] - 15.4)),
                ((near[0] - 2.6, near[1] - 0.2), (centre[0] - 16.6, centre[1] - 10.2)),
            ],
            pen("line", "look"),
        ),
        Circle(centre, radius, "paper", pen("ring", "look")),
    ]
    make, _ = MITES["gall"]
    scale, turn = 0.48, 58.0
    corner = put([(-50 * scale, -60 * scale)], (centre[0] - 1.2, centre[1] + 0.3), turn)[0]
    return [
        leaf.drawn(rng, teeth=1.4, stalk=10),
        *[_nail(spot, rng.uniform(6, 8.4), rng.uniform(-1.5, 1.5), rng) for spot in sorted(spots, key=lambda p: p[1])],
        ring((near[0], near[1] - 3.4), 3.6, 5.4),
        *lens,
        placed(make(rng), at=corner, scale=scale, turn=turn, name="mite"),
    ]


_FORMS = {
    "beads-or-spikes": _spikes_and_beads,
    "felt-patches": _felt_leaf,
    "blisters": _blister_leaf,
    "no-gall": _bare_leaf,
    "on-twig": _on_twig,
    "mite-gall": _mite_gall,
}


def gall(values: Mapping[str, object]) -> Drawing:
    """Recipe `gall`. Settings: form beads-or-spikes|felt-patches|blisters|no-gall|on-twig|mite-gall, bar-mm, seed."""
    settings = Settings(values)
    form = settings.choice("form", _FORMS, "beads-or-spikes")
    bar = settings.number("bar-mm", 0, least=0, most=50)
    rng = seeded("gall", form, settings.whole("seed", 1))
    settings.done()
    items = _FORMS[form](rng)
    if bar:
        items.append(scale_bar(bar, 74 / 60, right=6 + bar * 74 / 60))
    return framed(items)


RECIPES = {"gall": gall}
