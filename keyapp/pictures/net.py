"""Webs without a wheel: tangles, loose meshes, and the recipe for all of them."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping
from functools import partial

from keyapp.pictures.part import framed
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Ellipse,
    Group,
    Point,
    Shape,
    smooth,
    strokes,
)
from keyapp.pictures.sheet import sheet_parts, silk_tube_parts, woolly_parts
from keyapp.pictures.silk import Thread, beads, corner, nearest_pairs, threads
from keyapp.pictures.style import globe, pen
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "net_web", "tangle_parts"]


def _seen(spot: tuple[float, float, float], join: Point) -> Point:
    # A point of the room corner: x along the left wall, z along the right wall, y up; both 0-1 from the corner edge.
    x, y, z = spot
    near = 1 + 0.28 * (x + z)
    return join[0] + (z - x) * 44 * near, join[1] + (x + z) * 14 - y * 78 * (0.8 + 0.2 * near)


def tangle_parts(rng: random.Random, join: Point = (48.0, 74.0), *, knots: int = 104, catch: int = 8) -> list[Shape]:
    """A tangle in a corner by the floor: crossing threads without pattern, upright catching lines to the ground."""
    inner = []
    for _ in range(knots):
        x, z = rng.betavariate(1.6, 2.4) * 0.74 + 0.03, rng.betavariate(1.6, 2.4) * 0.74 + 0.03
        inner.append((x, min(0.9, max(0.34, rng.gauss(0.62, 0.13))), z))
    walls = [(0.0, rng.uniform(0.4, 0.95), rng.uniform(0.08, 0.84)) for _ in range(26)]
    walls += [(rng.uniform(0.08, 0.84), rng.uniform(0.4, 0.95), 0.0) for _ in range(26)]
    far: list[Thread] = []
    near: list[Thread] = []
    for a, b in nearest_pairs(inner, 3):
        one, two = inner[a], inner[b]
        (near if one[0] + one[2] + two[0] + two[2] > 1.25 else far).append((_seen(one, join), _seen(two, join)))
    for _ in range(64):
        one, two = rng.sample(inner, 2)
        a_end, b_end = _seen(one, join), _seen(two, join)
        slack = rng.uniform(0, 3.2) if rng.random() < 0.35 else 0.0
        far.append((a_end, ((a_end[0] + b_end[0]) / 2, (a_end[1] + b_end[1]) / 2 + slack), b_end))
    for _ in range(26):
        one, two = rng.choice(walls), rng.choice(walls)
        if one[0] != two[0]:
            far.append((_seen(one, join), _seen(two, join)))
    fixed = []
    for spot in walls:
        order = sorted(inner, key=partial(math.dist, spot))
        for other in rng.sample(order[:14], rng.choice((1, 2, 2, 3))):
            fixed.append((_seen(spot, join), _seen(other, join)))
    items: list[Shape] = [
        threads(fixed, 0.24, "ink-soft", 0.8, "anchor-thread"),
        threads(far, 0.17, "ink-soft", 0.75, "tangle-thread"),
        threads(near, 0.28, "ink-soft", 0.95, "tangle-thread"),
    ]
    dots = [Circle(_seen(spot, join), 0.26, "ink-soft") for spot in walls]
    items.append(Group(tuple(dots)))
    low = sorted(inner, key=lambda spot: spot[1])
    feet: list[Shape] = []
    taken: list[float] = []
    for spot in low:
        top = _seen(spot, join)
        foot = _seen((spot[0] * 1.02, 0.0, spot[2] * 1.02), join)
        if any(abs(foot[0] - other) < 5.2 for other in taken):
            continue
        taken.append(foot[0])
        end = (top[0] + (foot[0] - top[0]) * 0.7 + rng.uniform(-0.5, 0.5), foot[1])
        lower = (end[0] + (top[0] - end[0]) * 0.28, end[1] + (top[1] - end[1]) * 0.28)
        feet.append(
            Group(
                (
                    threads([(top, end)], 0.3, "ink", 0.7),
                    beads([lower, end], rng, gap=0.9, radius=0.24, tone="ink-soft"),
                    Circle(end, 0.32, "ink-soft"),
                ),
                name="catching-line",
            )
        )
        if len(feet) == catch:
            break
    return [*items, *feet]


def _tangle(rng: random.Random) -> list[Shape]:
    join = (48.0, 74.0)
    items: list[Shape] = [corner(join, rng, floor=True)]
    items.append(Ellipse((47, 83), 30, 6, "ink", None, 0.05))
    items += tangle_parts(rng, join)
    # What a catching web collects: a dry leaf and a dead beetle.
    items.append(
        smooth(
            [(50, 40), (54, 37.6), (59, 38.4), (62, 41), (57.6, 42), (53, 42.6)],
            closed=True,
            fill="#B58A55",
            stroke=pen("line"),
        )
    )
    items.append(strokes([((50, 40), (56, 40), (62, 41))], pen("fine")))
    items.append(Ellipse((37.5, 46.2), 1.9, 1.3, globe((37.5, 46.2), 1.9, "#4A3A30"), pen("line"), turn=24))
    return items


def _loose(rng: random.Random) -> list[Shape]:
    join = (50.0, 24.0)
    items: list[Shape] = [corner(join, rng, floor=False)]
    # A thin, slightly domed sheet well below the ceiling, far between its threads, with long stays up and to the walls.
    rows, columns = 6, 11
    spots: list[Point] = []
    for row in range(rows):
        for column in range(columns):
            u, v = column / (columns - 1), row / (rows - 1)
            dome = 8.5 * (1 - (2 * u - 1) ** 2)
            spots.append(
                (
                    13 + 74 * u + rng.uniform(-1.8, 1.8) - (v - 0.5) * 16,
                    53 - dome + v * 26 - 9 * abs(u - 0.5) * (v - 0.4) + rng.uniform(-0.8, 0.8),
                )
            )
    mesh: list[Thread] = []
    for index in range(rows * columns):
        row, column = divmod(index, columns)
        inside = column < columns - 1
        for step, ok in (
            (1, inside),
            (columns, row < rows - 1),
            (columns + 1, inside and row < rows - 1),
            (columns - 1, column > 0 and row < rows - 1),
        ):
            if ok and rng.random() < (0.88 if step in (1, columns) else 0.14):
                one, two = spots[index], spots[index + step]
                mesh.append(
                    (
                        one,
                        ((one[0] + two[0]) / 2 + rng.uniform(-0.9, 0.9), (one[1] + two[1]) / 2 + rng.uniform(0.2, 1.4)),
                        two,
                    )
                )
    for _ in range(5):
        one, two = rng.choice(spots), rng.choice(spots)
        mesh.append((one, ((one[0] + two[0]) / 2, (one[1] + two[1]) / 2 + rng.uniform(0, 3)), two))
    stays: list[Thread] = []
    last = columns - 1
    for index in [
        *range(columns),
        *(row * columns for row in range(1, rows)),
        *(row * columns + last for row in range(1, rows)),
        14,
        18,
        26,
        29,
    ]:
        x, y = spots[index]
        if index % columns == 0:
            stays.append(((x, y), (rng.uniform(1.5, 4), y + rng.uniform(-9, 12))))
        elif index % columns == last:
            stays.append(((x, y), (rng.uniform(96, 98.5), y + rng.uniform(-9, 12))))
        else:
            ceiling = 24 - 14 * abs(x - 50) / 50
            stays.append(((x, y), (x + rng.uniform(-7, 7), ceiling - rng.uniform(-1.5, 5))))
    items.append(threads(stays, 0.26, "ink-soft", 0.85, "stay"))
    items.append(threads(mesh, 0.22, "ink-soft", 0.95, "mesh-thread"))
    dangling = [
        (
            spot,
            (spot[0] + rng.uniform(-2, 2), spot[1] + 5),
            (spot[0] + rng.uniform(-1, 1), spot[1] + rng.uniform(7, 11)),
        )
        for spot in spots[56:64:2]
    ]
    items.append(threads(dangling, 0.24, "ink-soft", 0.7))
    return items


_NETS = {
    "tangle": _tangle,
    "loose-mesh": _loose,
    "sheet-funnel": sheet_parts,
    "woolly-round-hole": woolly_parts,
    "silk-tube": silk_tube_parts,
}


def net_web(values: Mapping[str, object]) -> Drawing:
    """Recipe `net-web`. Settings: kind tangle|loose-mesh|sheet-funnel|woolly-round-hole|silk-tube, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", _NETS, "tangle")
    rng = seeded("net-web", kind, settings.whole("seed", 1))
    settings.done()
    return framed(_NETS[kind](rng))


RECIPES = {"net-web": net_web}
