"""A tick stuck to skin, walking on a person, or on a leaf."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from keyapp.pictures.part import framed, ground_shadow, sampled
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Ellipse,
    Group,
    Point,
    RadialGradient,
    Shape,
    Stop,
    placed,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.silk import grass, leaf, soil, twig
from keyapp.pictures.style import cylinder, pen, ring
from keyapp.pictures.texture import hair, seeded
from keyapp.pictures.tick import tick_parts

__all__ = ["RECIPES", "tick_place"]


_SKIN = "#E3B795"


_TICK_SIZE = 0.4


def _arm(rng: random.Random) -> list[Shape]:
    # A forearm from the right with the back of the hand to the left.
    line = [
        (99.6, 23.8),
        (76, 27),
        (54, 33),
        (42, 37),
        (34, 36),
        (26, 30),
        (19, 22),
        (14.6, 19.4),
        (12.4, 22),
        (15.6, 27.6),
        (20, 35),
        (20.6, 38.4),
        (13, 37.6),
        (5.4, 37.8),
        (3.4, 40.2),
        (5.6, 42.8),
        (13, 43.6),
        (3.8, 44.6),
        (2.0, 47.4),
        (4.0, 50),
        (12.6, 50.4),
        (4.6, 52),
        (3.0, 54.6),
        (5.2, 57),
        (13.4, 56.8),
        (8.2, 59),
        (7.0, 61.6),
        (9.2, 63.4),
        (17, 63.6),
        (24, 66),
        (32, 68.6),
        (42, 68.4),
        (54, 71),
        (76, 77.6),
        (99.6, 81.2),
    ]
    edge = sampled(line, 5)
    fill = cylinder((60, 26), (62, 79), _SKIN, depth=0.24, shine=0.3)
    hairs = [
        hair((x, y), -62 + rng.uniform(-24, 24), rng.uniform(3, 5.4), rng.uniform(-30, 30))
        for x, y in ((rng.uniform(62, 95), rng.uniform(38, 68)) for _ in range(30))
    ]
    creases = [
        ((40.6, 42), (39.4, 50), (40.8, 60)),
        ((42.4, 44), (41.6, 51), (42.6, 58)),
        ((13, 43.6), (19, 43.8), (24, 44.6)),
        ((12.6, 50.4), (18, 50.4), (23, 50.6)),
        ((13.4, 56.8), (18, 57), (23, 56.8)),
    ]
    nails = [
        Ellipse((x, y), 1.6, 1.1, "#F3D9C6", pen("hair", opacity=0.7))
        for x, y in ((5.6, 40.2), (4.2, 47.3), (5.2, 54.5), (9.4, 61.2))
    ]
    return [
        Group(
            (
                polyline([*edge, (99.6, 81.2)], closed=True, fill=fill),
                strokes([edge], pen("outline")),
                strokes(creases, pen("fine", "#8A5540")),
                *nails,
                strokes(hairs, pen("fine", "#6E4A32", opacity=0.7)),
            ),
            name="arm",
        )
    ]


def _sleeve(rng: random.Random) -> Group:
    tone = "#8CA0B3"
    edge = [(66, 23.4), (64.4, 40), (65, 60), (67, 80.4)]
    shape = [(66, 23), (82, 20.6), (98.8, 18.6), (98.8, 87), (82, 84), (67, 80.8), (65, 60), (64.4, 40)]
    ribs = [((x, 22 - (x - 66) * 0.1), (x - 1.4, 52), (x, 81 + (x - 66) * 0.16)) for x in (68.4, 70.8, 73.2)]
    folds = [((80, 30), (86, 38), (96, 42)), ((79, 70), (87, 66), (97, 68)), ((84, 50), (90, 52), (97, 51))]
    return Group(
        (
            smooth(
                shape,
                closed=True,
                fill=cylinder((80, 20), (82, 85), tone, depth=0.34),
                stroke=pen("outline"),
                tension=0.4,
            ),
            strokes([sampled(edge)], pen("line")),
            strokes(ribs, pen("line", "#5F7286")),
            strokes(folds, pen("line", "#5F7286", opacity=0.8)),
        ),
        name="sleeve",
    )


def _tick_at(at: Point, turn: float, rng: random.Random) -> Group:
    # The middle of the drawn tick is near (50, 50).
    inner = placed(tick_parts("unfed", rng), at=(-50 * _TICK_SIZE, -50 * _TICK_SIZE), scale=_TICK_SIZE)
    return placed((inner,), at=at, turn=turn)


def tick_place(values: Mapping[str, object]) -> Drawing:
    """Recipe `tick-place`. Settings: where stuck-to-skin|on-skin-or-clothes|not-on-body, seed."""
    settings = Settings(values)
    where = settings.choice("where", ("stuck-to-skin", "on-skin-or-clothes", "not-on-body"), "stuck-to-skin")
    rng = seeded("tick-place", where, settings.whole("seed", 1))
    settings.done()
    at, turn = (60.0, 52.0), -62.0
    if where == "not-on-body":
        stem = twig([(99, 90), (84, 76), (74, 66)], 2.0, 1.2, rng, "#7D8A4E")
        return framed(
            [
                soil(88, rng),
                grass((12, 90), rng, count=10, spread=9, high=24),
                stem,
                leaf((78, 70), -66, 74, 50),
                ground_shadow((62, 54), 13, 12, 0.22),
                _tick_at(at, turn, rng),
            ]
        )
    items = _arm(rng)
    if where == "on-skin-or-clothes":
        trail = [Ellipse((94 - 4.4 * k, 66 - 1.6 * k + 1.4 * math.sin(k)), 0.7, 0.7, "look") for k in range(5)]
        return framed(
            [
                *items,
                _sleeve(rng),
                Group(tuple(trail), name="trail"),
                ground_shadow((61, 54), 13, 12, 0.2),
                _tick_at(at, turn, rng),
            ]
        )
    head = (at[0] + math.sin(math.radians(turn)) * 9.6, at[1] - math.cos(math.radians(turn)) * 9.6)
    sore = RadialGradient(head, 13, (Stop(0, "#B83A28", 0.85), Stop(0.45, "#D06048", 0.5), Stop(1, "#E3B795", 0.0)))
    bump = RadialGradient(head, 3.4, (Stop(0, "#E79A80"), Stop(0.7, "#D98468"), Stop(1, "#C96A52")))
    lip = Group((Ellipse(head, 3.3, 2.2, bump, pen("line", "#8A3A28"), turn=turn),), name="swelling")
    return framed(
        [
            *items,
            Circle(head, 13, sore),
            ground_shadow((61, 54), 13, 12, 0.18),
            _tick_at(at, turn, rng),
            lip,
            ring(head, 8.2),
        ]
    )


RECIPES = {"tick-place": tick_place}
