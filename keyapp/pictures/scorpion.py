"""Scorpions: pincers, a ringed body and a tail of five joints that ends in a sting."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence

from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.part import Profile, eye, fitted, framed, ground_shadow, leg_pair, named, put, ring_round
from keyapp.pictures.scorpion_limbs import BUILDS, TONES, Build, chain, chela, tail_group
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Group, LinearGradient, Path, Point, Shape, Stop, placed, smooth, strokes
from keyapp.pictures.style import blend, cylinder, pen, scale_bar
from keyapp.pictures.texture import hair, seeded, stipple

__all__ = ["RECIPES", "scorpion", "scorpion_parts"]


_REST = {
    "straight": ((180, 178, 183, 186, 182), 180.0),
    "curled": ((170, 152, 112, 62, 18), -26.0),
}


def scorpion_parts(
    build_name: str, skin: str, tail: str, rng: random.Random, *, hairy: bool = False, tone: str | None = None
) -> list[Shape]:
    """A scorpion seen from above, head up; `tail` straight, curled or none (left out, for close-ups)."""
    build = BUILDS[build_name]
    tone = tone or TONES[skin]
    top, end = 33.0, 61.0
    b = build.body
    front = Profile(((top, b * 0.46), (top + 0.5, b * 0.6), (top + 4.5, b * 0.82), (top + 8.6, b * 0.95)))
    trunk = Profile(
        (
            (top + 8.4, b * 0.94),
            (top + 13, b * 1.06),
            (top + 18, b * 1.08),
            (top + 23, b * 0.9),
            (end, build.tail * 0.52),
        )
    )
    limb_tone = blend(tone, "#FFFFFF", 0.1) if skin != "dark" else blend(tone, "#A06A3C", 0.25)
    look = LimbLook((limb_tone,), hairs=0.5, hair_length=1.1, spines=(0, 1, 2, 1), spine_length=1.1)
    leg = build.leg
    widths = (
        (leg, leg * 1.1, leg * 0.9),
        (leg * 0.9, leg, leg * 0.8),
        (leg * 0.75, leg * 0.8, leg * 0.5),
        (leg * 0.5, leg * 0.45, leg * 0.2),
    )
    fan = (
        (3.2, (48, 78, 40, 22), 19.5),
        (5.0, (76, 96, 78, 62), 22.0),
        (6.8, (104, 112, 122, 132), 25.0),
        (8.3, (126, 128, 148, 162), 29.5),
    )
    items: list[Shape] = []
    for down, turns, length in fan:
        items += leg_pair(
            rng, (50 + b * 0.55, top + down), [length * k for k in (0.27, 0.3, 0.23, 0.2)], turns, widths, look
        )
    arm = build.arm
    arm_look = LimbLook((limb_tone,), hairs=0.5, hair_length=1.2, outline=0.5)
    arm_widths = ((arm * 0.7, arm * 0.8, arm * 0.8), (arm * 0.75, arm, arm), (arm * 0.85, arm * 1.15, arm * 0.85))
    for side in (1, -1):
        swing = rng.uniform(-4, 4)
        spots = chain((50 + side * b * 0.4, top + 1.8), (), 1)
        for turn, reach in ((62, 4.0), (70, 8.6), (8, 8.0)):
            angle = math.radians(side * (turn + swing))
            x, y = spots[-1]
            spots.append((x + math.sin(angle) * reach, y - math.cos(angle) * reach))
        items.append(limb(spots, arm_widths, arm_look, rng, name="arm"))
        items.append(
            chela(spots[-1], side * (-24 + swing), build, tone if skin == "dark" else limb_tone, rng, flip=side < 0)
        )
    for side in (1, -1):
        nip = put([(0.3, 1), (0.3, -1.6), (0.9, -2.6), (1.5, -1.4), (1.7, 1)], (50, top), 0, flip=side < 0)
        items.append(smooth(nip, closed=True, fill=limb_tone, stroke=pen("line")))
    if tail in _REST:
        rest, sting = _REST[tail]
        items.append(tail_group(chain((50, end - 0.8), rest, build.tail_length), build.tail, tone, rng, sting, bend=1))
    edges = [trunk.top + (end - trunk.top) * k for k in (0, 0.11, 0.24, 0.38, 0.53, 0.68, 0.83, 1.0)]
    for index in range(6, -1, -1):
        plate = trunk.plate(edges[index], edges[index + 1], tone, bow=0.5)
        items.append(Group(plate.items, name="back-plate"))
    shield = front.outline(cylinder((50 - b, top), (50 + b, top), blend(tone, "#4A2814", 0.08)), pen("outline"))
    items.append(shield)
    if skin == "striped":
        items += _stripes(trunk, front, rng)
    if skin == "dark" or hairy:
        items.append(stipple(trunk.at, rng, count=170, radius=0.13))
        items.append(stipple(front.at, rng, count=60, radius=0.13))
    else:
        items.append(stipple(trunk.at, rng, count=70, radius=0.1, opacity=0.35))
    items.append(strokes([((50, y), (50, y + 1.5)) for y in (top + 4.6, top + 6.4)], pen("fine", opacity=0.6)))
    items += [eye((50 - 0.62, top + 3.7), 0.52), eye((50 + 0.62, top + 3.7), 0.52)]
    for side in (1, -1):
        items += [eye((50 + side * (b * 0.46 + k * 0.18), top + 0.9 + k * 0.7), 0.24) for k in range(3)]
    if hairy:
        items.append(
            strokes(
                [
                    hair(
                        trunk.at(side * 0.95, rng.uniform(0.05, 0.8)), side * rng.uniform(70, 120), rng.uniform(1, 2.2)
                    )
                    for side in (-1, 1)
                    for _ in range(16)
                ],
                pen("hair"),
            )
        )
    return items


def _stripes(trunk: Profile, front: Profile, rng: random.Random) -> list[Shape]:
    items: list[Shape] = []
    for side in (-0.5, 0.5):
        for index in range(7):
            v0, v1 = index / 7 + 0.015, (index + 0.82) / 7
            quad = [
                trunk.at(side - 0.22, v0),
                trunk.at(side + 0.2, v0),
                trunk.at(side + 0.22, v1),
                trunk.at(side - 0.2, v1),
            ]
            items.append(smooth(quad, closed=True, fill="#3E2A1C", tension=0.3, opacity=0.85))
    blot = [front.at(-0.5, 0.05), front.at(0.5, 0.05), front.at(0.2, 0.55), front.at(0.0, 0.75), front.at(-0.2, 0.55)]
    items.append(smooth(blot, closed=True, fill="#3E2A1C", opacity=0.75))
    return items


def _side_parts(build_name: str, skin: str, tail: str, rng: random.Random) -> list[Shape]:
    """A scorpion seen from its left, head to the left, standing on the ground."""
    build = BUILDS[build_name]
    tone = TONES[skin]
    pale = blend(tone, "#FFFFFF", 0.1)
    ground = 77.0
    items: list[Shape] = [ground_shadow((48, ground + 1.2), 40, 3.2)]
    look = LimbLook((pale,), hairs=0.4, hair_length=1.0, spines=(0, 1, 2, 1), spine_length=1.0)
    far_look = LimbLook((blend(pale, "#5A4330", 0.35),), hairs=0.2)
    leg = build.leg
    leg *= 1.25
    widths = (
        (leg, leg * 1.2, leg * 0.95),
        (leg * 0.85, leg * 0.9, leg * 0.7),
        (leg * 0.65, leg * 0.6, leg * 0.35),
        (leg * 0.35, leg * 0.3, leg * 0.15),
    )
    feet = ((17.5, 31.0, 28.0), (29.5, 35.0, 33.5), (59.5, 39.5, 45.0), (75.0, 44.0, 55.0))
    far: list[Shape] = []
    near: list[Shape] = []
    for foot, x, knee in feet:
        for group, back, a_look in ((far, 1.0, far_look), (near, 0.0, look)):
            y, floor = 68.4 - back * 1.6, ground + 2.4 - back * 3.4
            way = 1 if foot > x else -1
            out = foot + back * 3.4 * way
            bend = knee + back * 2.4 * way
            spots = [
                (x + back, y),
                (bend, y - 3.4 - back),
                (bend + (out - bend) * 0.62, y + 2.6),
                (out - way * 1.6, floor - 1.2),
                (out, floor),
            ]
            group.append(limb(spots, widths, a_look, rng))
    items += far
    items.append(_side_arm(build, far_look, tone, rng, (28, 64.5), far=True))
    if tail == "arched":
        items += _side_tail(
            build, tone, rng, (chain((67.5, 64.5), (52, 8, -38, -74, -96), build.tail_length * 1.32)), -128
        )
    items += near
    body_top = [(25.5, 66), (26.5, 63.2), (34, 60.6), (44, 58.8), (54, 58.8), (62, 60.6), (69.5, 64)]
    body_low = [(69.5, 66.6), (62, 69.6), (52, 71), (40, 70.4), (30, 69.2), (26, 67.6)]
    deep = 0.5 + build.body / 14.4
    body_top, body_low = ([(x, 65.5 + (y - 65.5) * deep) for x, y in row] for row in (body_top, body_low))
    fill = cylinder((48, 58), (48.2, 71), tone, depth=0.5)
    items.append(smooth([*body_top, *body_low], closed=True, fill=fill, stroke=pen("outline")))
    edges = [
        tuple(
            (x + 4.4 * k, 65.5 + (y - 65.5) * deep)
            for x, y in ((38.5, 60.2 + abs(k - 3) ** 2 * 0.09), (39.6, 63), (38.9, 67))
        )
        for k in range(7)
    ]
    items.append(strokes(edges, pen("line", opacity=0.8)))
    items.append(strokes([((37.5, 66.6), (52, 68.2), (67.5, 66))], pen("fine", opacity=0.6)))
    if skin == "striped":
        items += [
            smooth(
                [(x, 60.4), (x + 3.1, 60.4), (x + 3, 62.6), (x + 0.2, 62.6)],
                closed=True,
                fill="#3E2A1C",
                tension=0.3,
                opacity=0.8,
            )
            for x in (40.0, 44.4, 48.8, 53.2, 57.6)
        ]
    items.append(eye((31.4, 61.6), 0.55))
    items += [eye((26.6 + k * 0.9, 64.6), 0.22) for k in range(3)]
    items.append(
        smooth(
            [(26.4, 66), (22.8, 65.6), (21.4, 67.2), (23.6, 68.4), (26.6, 68.2)],
            closed=True,
            fill=pale,
            stroke=pen("line"),
        )
    )
    items.append(_side_arm(build, look, pale, rng, (28, 67.5), far=False))
    if tail != "arched":
        # The tail lies on the ground and curls round to the near side: a flattened coil seen from a little above.
        coil = [(68.5, 65.6), (75.5, 69.5), (82.5, 74.6), (82.0, 80.6), (74.5, 83.8), (65.8, 83.2)]
        items.append(ground_shadow((74, 83.5), 15, 3.4, 0.2))
        items += _side_tail(build, tone, rng, coil, -72)
    return items


def _side_tail(build: Build, tone: str, rng: random.Random, joints: Sequence[Point], sting: float) -> list[Shape]:
    return [tail_group(joints, build.tail * 1.05, tone, rng, sting, bend=1)]


def _side_arm(build: Build, look: LimbLook, tone: str, rng: random.Random, at: Point, *, far: bool) -> Group:
    arm = build.arm
    lift = -3.0 if far else 0.0
    spots = [at, (at[0] - 4.5, at[1] - 5.8), (at[0] - 11.8, at[1] - 6.2 + lift)]
    widths = ((arm * 0.8, arm, arm * 0.85), (arm * 0.85, arm * 1.15, arm * 0.85))
    shade = blend(tone, "#5A4330", 0.3) if far else tone
    group = limb(spots, widths, look, rng, name="arm")
    return Group((group, chela(spots[-1], -104 if far else -112, build, shade, rng, flip=False)), name="arm-side")


_RINGS = {"pincers": "pincer", "tail": "tail", "back": "back-plate"}


def scorpion(values: Mapping[str, object]) -> Drawing:
    """Recipe `scorpion`. Settings: view top|side, build slender|stout, skin pale|striped|dark, tail
    curled|straight|arched|none, hairy, look-at (pincers, tail, back), scale (0: fill the canvas), shift, fade
    (the height from which a close-up fades out, 0: none), bar-mm, body-mm, seed."""
    settings = Settings(values)
    view = settings.choice("view", ("top", "side"), "top")
    build = settings.choice("build", BUILDS, "slender")
    skin = settings.choice("skin", TONES, "pale")
    tail = settings.choice("tail", ("arched", "curled") if view == "side" else (*_REST, "none"), "curled")
    rng = seeded("scorpion", settings.whole("seed", 1))
    hairy = settings.flag("hairy")
    marks = settings.words("look-at", _RINGS)
    scale = settings.number("scale", 0, least=0, most=3)
    shift = settings.numbers("shift", (0, 0), count=2)
    fade = settings.number("fade", 0, least=0, most=100)
    bar = settings.number("bar-mm", 0, least=0, most=100)
    long_mm = settings.number("body-mm", 25, least=2, most=200)
    settings.done()
    side = view == "side"
    items = _side_parts(build, skin, tail, rng) if side else scorpion_parts(build, skin, tail, rng, hairy=hairy)
    rings: list[Shape] = [ring_round(named(items, _RINGS[mark]), grow=2.0) for mark in marks]
    if scale:
        at = (50 + shift[0] - 50 * scale, 50 + shift[1] - 50 * scale)
        body, rings = placed(items, at=at, scale=scale), [placed(rings, at=at, scale=scale)]
    else:
        body, scale = fitted([*items, *rings], bottom=96 if bar else 100)
        rings = []
    shapes: list[Shape] = [body]
    if fade:
        wash = LinearGradient((0, fade), (0, 97), (Stop(0, "paper", 0.0), Stop(0.85, "paper", 0.94), Stop(1, "paper")))
        shapes.append(Path((("M", (0, fade)), ("L", (100, fade)), ("L", (100, 100)), ("L", (0, 100)), ("Z", ())), wash))
    shapes += rings
    if bar:
        shapes.append(scale_bar(bar, (44 if side else 28) * scale / long_mm))
    return framed(shapes)


RECIPES = {"scorpion": scorpion}
