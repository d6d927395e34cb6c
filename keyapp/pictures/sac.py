"""Egg sacs in the places they are fixed to."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

from keyapp.pictures.part import framed, ground_shadow
from keyapp.pictures.sac_skin import SKINS, sac_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Drawing,
    Ellipse,
    Group,
    Point,
    Shape,
    smooth,
    strokes,
)
from keyapp.pictures.silk import Thread, grass, leaf, soil, threads, twig
from keyapp.pictures.style import blend, cylinder, globe, pen, ring, scale_bar
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "egg_sac"]

_PLACES = ("plain", "in-tangle-web", "hung-by-threads-on-plant", "stuck-flat-to-surface", "in-rolled-leaf", "loose")


def _tangle_round(at: Point, r: float, rng: random.Random) -> list[Shape]:
    lines: list[Thread] = []
    for _ in range(46):
        angle, turn = rng.uniform(0, 2 * math.pi), rng.uniform(-0.8, 0.8)
        one = (at[0] + math.cos(angle) * rng.uniform(0.6, 1.0) * r, at[1] + math.sin(angle) * rng.uniform(0.6, 1.0) * r)
        far = rng.uniform(26, 60)
        lines.append(
            (
                one,
                (
                    min(98.5, max(1.5, one[0] + math.cos(angle + turn) * far)),
                    min(98.5, max(1.5, one[1] + math.sin(angle + turn) * far)),
                ),
            )
        )
    cross: list[Thread] = []
    for _ in range(54):
        a, b = rng.choice(lines), rng.choice(lines)
        s, t = rng.uniform(0.3, 0.95), rng.uniform(0.3, 0.95)
        cross.append(
            (
                (a[0][0] + (a[-1][0] - a[0][0]) * s, a[0][1] + (a[-1][1] - a[0][1]) * s),
                (b[0][0] + (b[-1][0] - b[0][0]) * t, b[0][1] + (b[-1][1] - b[0][1]) * t),
            )
        )
    return [threads(lines, 0.28, "ink-soft", 0.75), threads(cross, 0.2, "ink-soft", 0.6)]


def _over_threads(at: Point, r: float, rng: random.Random) -> Group:
    lines: list[Thread] = []
    for _ in range(9):
        angle = rng.uniform(0, 2 * math.pi)
        one = (at[0] + math.cos(angle) * r * 1.5, at[1] + math.sin(angle) * r * 1.5)
        other = angle + math.pi + rng.uniform(-1.1, 1.1)
        lines.append((one, (at[0] + math.cos(other) * r * 1.5, at[1] + math.sin(other) * r * 1.5)))
    return threads(lines, 0.2, "ink-soft", 0.5)


def _on_plant(at: Point, r: float, rng: random.Random, neck: float) -> list[Shape]:
    x, y = at
    items: list[Shape] = [
        twig([(x - r - 15, 99), (x - r - 12, 62), (x - r - 14, 30), (x - r - 9, 2)], 2.2, 1.4, rng, "#7D8A4E"),
        twig([(x + r + 14, 99), (x + r + 12, 66), (x + r + 15, 34), (x + r + 10, 2)], 2.0, 1.2, rng, "#7D8A4E"),
        twig(
            [(x - r - 13, 20), (x - 6, y - r - 17), (x + 7, y - r - 18), (x + r + 12.4, 13)], 1.3, 1.0, rng, "#7D8A4E"
        ),
    ]
    for px, py, turn in (
        (x - r - 13, 38, -62),
        (x - r - 12.4, 66, -48),
        (x + r + 14, 44, 58),
        (x + r + 12.4, 72, 50),
        (x + r + 11.6, 16, 68),
        (x - r - 11, 12, -60),
    ):
        items.append(
            leaf(
                (px, py),
                turn,
                min(15, (98 - px if turn > 0 else px - 2) / max(0.3, abs(math.sin(math.radians(turn))))),
                5.2,
            )
        )
    lines: list[Thread] = []
    for k in range(11):
        top = (x + (k - 5) * 2.3, y - r - 17 + abs(k - 5) * 0.16)
        lines.append((top, (x + (k - 5) * r * 0.03, y - r * neck)))
    for side in (-1, 1):
        for k in range(9):
            angle = math.radians(-55 + k * 14)
            one = (x + side * math.cos(angle) * r * 0.92, y + math.sin(angle) * r * 0.86)
            lines.append((one, (x + side * (r + 12.6), one[1] + math.sin(angle) * 11 - 3)))
    items.append(threads(lines, 0.3, "ink-soft", 0.85))
    return items


def _rolled_leaf(at: Point, r: float, rng: random.Random) -> tuple[list[Shape], list[Shape]]:
    x, y = at
    back: list[Point] = [
        (x - r * 2.3, y + r * 1.5),
        (x - r * 2.4, y - r * 0.8),
        (x - r * 1.3, y - r * 1.9),
        (x + r * 0.8, y - r * 2.1),
        (x + r * 2.5, y - r * 1.2),
        (x + r * 3.1, y + r * 0.3),
        (x + r * 2.2, y + r * 1.5),
        (x, y + r * 1.9),
    ]
    fold: list[Point] = [
        (x - r * 2.3, y + r * 1.5),
        (x - r * 2.0, y + r * 0.55),
        (x - r * 0.7, y + r * 0.2),
        (x + r * 0.9, y + r * 0.12),
        (x + r * 2.3, y + r * 0.05),
        (x + r * 3.1, y + r * 0.3),
        (x + r * 2.5, y + r * 1.7),
        (x + r * 0.4, y + r * 2.3),
        (x - r * 1.5, y + r * 2.2),
    ]
    veins = [
        (
            (x - r * 2.0 + k * r * 0.8, y + r * 1.9),
            (x - r * 1.7 + k * r * 0.8, y + r * 1.1),
            (x - r * 1.2 + k * r * 0.8, y + r * 0.55),
        )
        for k in range(5)
    ]
    top_veins = [
        (
            (x - r * 1.6 + k * r * 0.9, y - r * 0.2),
            (x - r * 1.3 + k * r * 0.9, y - r * 1.0),
            (x - r * 0.8 + k * r * 0.9, y - r * 1.7),
        )
        for k in range(4)
    ]
    stem = twig([(3, y + r * 2.6), (x - r * 3.2, y + r * 1.9), (x - r * 2.2, y + r * 1.3)], 1.6, 1.1, rng, "#7D8A4E")
    behind: list[Shape] = [
        stem,
        smooth(
            back,
            closed=True,
            fill=globe((x, y - r), r * 3, blend("leaf", "paper", 0.22), depth=0.5),
            stroke=pen("outline", "leaf-dark"),
        ),
        strokes(top_veins, pen("fine", "leaf-dark", opacity=0.7)),
        Ellipse((x + r * 0.2, y + r * 0.2), r * 1.6, r * 1.0, "#2E3A1E", None, 0.25),
    ]
    bridging: list[Thread] = [
        (
            (x + k * r * 0.36, y + r * (0.25 + 0.05 * rng.random())),
            (x + k * r * 0.4 + rng.uniform(-2, 2), y - r * rng.uniform(1.2, 1.7)),
        )
        for k in (-4, -3.3, -2.8, 2.8, 3.3, 3.9, 4.6, 5.2)
    ]
    front: list[Shape] = [
        threads(bridging, 0.28, "white", 1.0),
        threads(bridging, 0.16, "ink-soft", 0.8),
        smooth(
            fold,
            closed=True,
            fill=cylinder((x, y), (x + 0.4, y + r * 2.3), "leaf", depth=0.4),
            stroke=pen("outline", "leaf-dark"),
        ),
        strokes(veins, pen("fine", "leaf-dark", opacity=0.8)),
    ]
    return behind, front


def _surface(at: Point, r: float, rng: random.Random) -> list[Shape]:
    # A brick wall: courses of brick with mortar, the sac pressed flat against it.
    items: list[Shape] = []
    for row in range(6):
        for column in range(-1, 4):
            left, top = column * 34.0 + (17 if row % 2 else 0) + 1, row * 16.6 + 0.6
            right = min(99.6, left + 32)
            left = max(0.4, left)
            if right - left < 2:
                continue
            tone = blend("#C49A80", "#E4C9B2", rng.random())
            items.append(
                smooth(
                    [(left, top), (right, top), (right, top + 15.2), (left, top + 15.2)],
                    closed=True,
                    fill=blend(tone, "paper", 0.35),
                    stroke=pen("fine", "ink-soft", opacity=0.6),
                    tension=0.04,
                )
            )
    specks = [((x, y), (x + 0.4, y)) for x, y in ((rng.uniform(1, 98), rng.uniform(1, 98)) for _ in range(150))]
    items.append(strokes(specks, pen("hair", opacity=0.5)))
    fan: list[Thread] = []
    for k in range(48):
        angle = math.radians(k * 7.5 + rng.uniform(-2, 2))
        one = (at[0] + math.cos(angle) * r * 0.95, at[1] + math.sin(angle) * r * 0.9)
        far = rng.uniform(3, 8)
        fan.append((one, (one[0] + math.cos(angle) * far, one[1] + math.sin(angle) * far)))
    patch = [
        (at[0] + math.sin(turn) * r * rng.uniform(1.35, 1.75), at[1] - math.cos(turn) * r * rng.uniform(1.25, 1.65))
        for turn in (k * 0.42 for k in range(15))
    ]
    items += [
        smooth(patch, closed=True, fill="#FBF8F1", stroke=pen("fine", "ink-soft"), opacity=0.9),
        threads(fan, 0.3, "white", 1.0),
        threads(fan, 0.16, "ink-soft", 0.9),
    ]
    return items


def _in_place(place: str, skin: str, at: Point, r: float, rng: random.Random) -> list[Shape]:
    sac = sac_parts(skin, at, r, rng)
    if place == "in-tangle-web":
        return [*_tangle_round(at, r, rng), sac, _over_threads(at, r, rng)]
    if place == "hung-by-threads-on-plant":
        return [*_on_plant(at, r, rng, 1.36 if skin == "tough-brown-bag" else 1.08), sac]
    if place == "stuck-flat-to-surface":
        return [*_surface(at, r, rng), sac]
    if place == "in-rolled-leaf":
        behind, front = _rolled_leaf(at, r, rng)
        return [*behind, sac, *front]
    if place == "loose":
        return [
            soil(46, rng),
            *(grass((x, 48), rng, count=9, spread=7, high=17) for x in (12, 88)),
            ground_shadow((at[0] + 1.5, at[1] + r * 0.96), r * 1.25, r * 0.26, 0.4),
            sac,
            *(
                Ellipse((x, y), w, w * 0.6, globe((x, y), w, "#A79A88"), pen("line"))
                for x, y, w in ((24, 80, 3.4), (76, 76, 2.6), (82, 88, 4.0))
            ),
        ]
    return [sac]


def egg_sac(values: Mapping[str, object]) -> Drawing:
    """Recipe `egg-sac`. Settings: skin, place, radius, at, ring, bar-mm, bar-right, width-mm, seed."""
    settings = Settings(values)
    skin = settings.choice("skin", SKINS, "smooth-papery-round")
    place = settings.choice("place", _PLACES, "plain")
    radius = settings.number("radius", 17, least=4, most=34)
    at = settings.numbers("at", (50, 52), count=2)
    mark = settings.flag("ring")
    bar = settings.number("bar-mm", 0, least=0, most=50)
    bar_right = settings.number("bar-right", 95, least=20, most=96)
    wide = settings.number("width-mm", 11, least=1, most=60)
    rng = seeded("egg-sac", skin, place, settings.whole("seed", 1))
    settings.done()
    items = _in_place(place, skin, (at[0], at[1]), radius, rng)
    if mark:
        items.append(ring((at[0], at[1] - radius * 0.1), radius * 1.6, radius * 1.65))
    if bar:
        items.append(scale_bar(bar, 2 * radius / wide, right=bar_right))
    return framed(items)


RECIPES = {"egg-sac": egg_sac}
