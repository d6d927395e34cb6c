"""The pieces of a spider seen from above: legs, palps, jaws, spinnerets, points, and their settings."""

from __future__ import annotations

import math
from dataclasses import dataclass
from random import Random

from keyapp.pictures.body import PROFILES, Body, Coat, finished
from keyapp.pictures.brush import Brush, brush_from, brush_shapes
from keyapp.pictures.fangs import folded_fang, open_fang
from keyapp.pictures.limb import Band, LimbLook, Segment, joints_from, limb, tuft
from keyapp.pictures.posture import POSTURES, SEGMENTS, SHARES
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Group, Path, Point, RadialGradient, Shape, Stop
from keyapp.pictures.style import blend, cylinder, pen
from keyapp.pictures.texture import seeded, wedge

__all__ = [
    "HIPS",
    "LegPose",
    "Legs",
    "coat_from",
    "jaw_shapes",
    "leg_look",
    "leg_pose",
    "leg_shapes",
    "leg_widths",
    "legs_from",
    "palp_shapes",
    "point_shapes",
    "shadow",
    "spinner_shapes",
]

_CLIMB = (1.0, 0.6, 0.5, 0.7, 0.3)

HIPS = (0.34, 0.48, 0.61, 0.73)
"""How far along the carapace each pair of legs joins it, front pair first."""


@dataclass(frozen=True, slots=True)
class Legs:
    """Legs of a spider: lengths in canvas units for pairs one to four, femur width, and looks for each pair."""

    lengths: tuple[float, ...]
    width: float
    thicker: tuple[float, ...]
    looks: tuple[LimbLook, ...]
    shares: tuple[float, ...]
    taper: float
    arch: float
    tufts: bool
    cut: int = 7
    reach: tuple[float, ...] = ()
    brush: Brush | None = None


def coat_from(row: Settings, scale: float) -> Coat:
    """The cover of a body part from its settings; hair lengths there are in mm."""
    return Coat(
        color=row.color("color", "#8A6A48"),
        hairs=row.whole("hairs", 0, most=600),
        hair_length=max(0.5, row.number("hair-length", 0.4) * scale),
        hair_color=row.color("hair-color", "ink"),
        fringe=row.whole("fringe", 0, most=400),
        shine=row.number("shine", 0.15, least=0, most=1),
        stipple=row.whole("stipple", 110, most=400),
        depth=row.number("depth", 0.4, least=0, most=1),
    )


def leg_look(row: Settings, pair: int, scale: float) -> LimbLook:
    """The look of one leg pair (0-3) from the `legs` settings."""
    colors = [row.color("color", "#8A6A48")] * len(SEGMENTS)
    for name, settings in (("base", (0, 1, 2)), ("tip", (5, 6)), ("foot", (6,)), ("middle", (3, 4))):
        tone = row.color(f"{name}-color", "") if f"{name}-color" in row else ""
        for index in settings:
            colors[index] = tone or colors[index]
    if pair < 2 and "front-color" in row:
        tone = row.color("front-color", "ink")
        colors = [tone if index > 1 else c for index, c in enumerate(colors)]
    bands_row = row.table("bands")
    tone, opacity = bands_row.color("color", "ink"), bands_row.number("opacity", 0.75)
    bands: list[Band] = []
    for index, name in enumerate(SEGMENTS):
        spans = bands_row.numbers(name, ())
        bands += [Band(index, spans[i], spans[i + 1], tone, opacity) for i in range(0, len(spans) - 1, 2)]
    bands_row.done()
    return LimbLook(
        tuple(colors),
        tuple(bands),
        tuple(int(n) for n in row.numbers("spines", (0,))),
        max(0.9, row.number("spine-length", 1.0) * scale),
        row.number("hairs", 1.2, least=0, most=14),
        max(0.35, row.number("hair-length", 0.3) * scale),
        row.color("hair-color", "ink"),
        shine=row.number("shine", 0.26, least=0, most=1),
        gloss=row.number("gloss", 0.0, least=0, most=1),
        lean=row.flag("lean"),
        comb=tuple(int(n) for n in row.numbers("comb", ())) if pair < 2 else (),
    )


def legs_from(row: Settings, carapace_width: float, scale: float) -> Legs:
    """The legs from the `legs` settings."""
    lengths = row.numbers("lengths", (15, 14, 12, 15), count=4)
    return Legs(
        tuple(length * scale for length in lengths),
        max(0.42, row.number("thick", 0.2) * carapace_width),
        row.numbers("thicker", (1, 1, 1, 1), count=4),
        tuple(leg_look(row, pair, scale) for pair in range(4)),
        row.numbers("shares", SHARES, count=5),
        row.number("taper", 1.0, least=0.5, most=2.5),
        row.number("arch", 0.3, least=0, most=0.6),
        row.flag("tufts"),
        row.whole("cut", 7, least=2, most=7),
        row.numbers("reach", ()),
        brush_from(row.table("brush")),
    )


def leg_widths(width: float, taper: float) -> list[tuple[float, float, float]]:
    """Widths at start, middle and end of the seven segments, from the femur's width."""
    rows = [
        (1.0, 1.05, 0.95),
        (0.85, 0.9, 0.82),
        (0.8, 1.04, 0.8),
        (0.78, 0.86, 0.74),
        (0.7, 0.78, 0.6),
        (0.55, 0.52, 0.42),
        (0.4, 0.38, 0.24),
    ]
    thin = [1, 1, 1, 1, taper**-0.5, taper**-0.8, taper**-1.0]
    return [
        (max(0.3, one * width * by), max(0.3, two * width * by), max(0.3, three * width * by))
        for (one, two, three), by in zip(rows, thin, strict=True)
    ]


@dataclass(frozen=True, slots=True)
class LegPose:
    """Where one leg lies: its joints from the body outwards and the widths of its segments."""

    pair: int
    side: int
    joints: tuple[Point, ...]
    widths: tuple[tuple[float, float, float], ...]

    def segment(self, index: int) -> Segment:
        """One segment (0 coxa to 6 tarsus)."""
        return Segment(self.joints[index], self.joints[index + 1], *self.widths[index])


def leg_pose(
    carapace: Body,
    legs: Legs,
    pair: int,
    side: int,
    posture: str,
    sway: float,
    seed: str,
    hips: tuple[Point, Point] | None = None,
) -> LegPose:
    """Place one leg: pair 0-3, side -1 left or 1 right; `sway` degrees of difference from the set posture.

    `hips` gives where the first segment starts and where it leaves the body; by default under the carapace.
    """
    rng = seeded("stance", seed, pair, side)
    whole, bend = rng.gauss(0, sway), rng.gauss(0, sway * 0.8)
    turns = [
        side * (turn + (whole + bend * max(0, index - 3) * 0.4 + rng.gauss(0, sway * 0.25) if index > 1 else 0))
        for index, turn in enumerate(POSTURES[posture][pair])
    ]
    inner, outer = hips or (carapace.at(side * 0.5, HIPS[pair]), carapace.at(side * 1.0, HIPS[pair]))
    width = legs.width * legs.thicker[pair]
    total = legs.lengths[pair] / sum(legs.shares)
    # Seen from above a standing leg is foreshortened where it climbs from the body and drops to the ground.
    lengths = [
        math.dist(inner, outer) * 1.12,
        width * 0.55,
        *(
            share * total * (1 - legs.arch * part)
            for share, part in zip(legs.shares, (1, 0.6, 0.5, 0.7, 0.3), strict=True)
        ),
    ]
    joints, widths = joints_from(inner, lengths, turns), leg_widths(width, legs.taper)
    joints = joints[: legs.cut + 1]
    if legs.reach:
        joints[-1] = _on_circle(joints[-2], joints[-1], legs.reach)
    return LegPose(pair, side, tuple(joints), tuple(widths[: legs.cut]))


def _on_circle(start: Point, end: Point, circle: tuple[float, ...]) -> Point:
    """Where the line from `start` through `end` leaves a circle (x, y, radius): cut legs are drawn to there."""
    x, y, radius = circle
    dx, dy = end[0] - start[0], end[1] - start[1]
    far = math.hypot(dx, dy)
    dx, dy = dx / far, dy / far
    along = (start[0] - x) * dx + (start[1] - y) * dy
    off = (start[0] - x) ** 2 + (start[1] - y) ** 2 - radius**2
    if off > 0:
        return end
    step = -along + math.sqrt(along**2 - off)
    return start[0] + dx * step, start[1] + dy * step


def leg_shapes(pose: LegPose, legs: Legs, seed: str) -> list[Shape]:
    """One leg drawn, with its brushes where the legs have them."""
    rng = seeded("leg", seed, pose.pair, pose.side)
    shapes: list[Shape] = [limb(pose.joints, pose.widths, legs.looks[pose.pair], rng)]
    if legs.tufts and pose.pair != 2:
        for index in (2, 4) if legs.cut > 4 else (2,):
            brush = tuft(pose.segment(index), 0.66, 0.97, rng, length=legs.width * 1.3, tone="#2A1C14")
            shapes.append(brush)
    if legs.brush:
        pieces = [pose.segment(index) for index in range(len(pose.widths))]
        shapes += brush_shapes(legs.brush, pose.pair + 1, pieces, legs.width, rng)
    return shapes


def palp_shapes(
    carapace: Body, row: Settings, look: LimbLook, scale: float, leg_width: float, seed: str
) -> tuple[list[Shape], list[Point]]:
    """The two palps, with the males' bulbs where set, and the places of their tips (left, right)."""
    rng = seeded("palps", seed)
    length = row.number("length", 2.5) * scale
    thick = row.number("thick", 0.62) * leg_width
    bulbs = row.choice("bulbs", ("none", "plain", "bold"), "none")
    spread = row.number("spread", 20)
    tone = row.color("color", look.colors[2])
    bulb_tone = row.color("bulb-color", blend(tone, "black", 0.45))
    start = row.number("start", 0.3)
    row.done()
    plain = LimbLook((tone,), (), (0,), 0, look.hairs, look.hair_length * 0.8, look.hair_color, shine=look.shine,
                     lean=look.lean)  # fmt: skip
    shapes: list[Shape] = []
    tips: list[Point] = []
    # A palp has six segments: no metatarsus.
    shares = (0.1, 0.06, 0.32, 0.16, 0.18, 0.18)
    bends = (spread + 16, spread + 12, spread + 6, spread - 6, spread - 22, spread - 30)
    for side in (-1, 1):
        turns = [side * (bend + rng.gauss(0, 4)) for bend in bends]
        hip = carapace.at(side * start * 1.2, 0.06)
        joints = joints_from(hip, [share * length for share in shares], turns)
        big = thick * (1.0 if bulbs == "none" else 1.05)
        widths = [(big * k, big * k * 1.05, big * k * 0.92) for k in (0.9, 0.85, 0.95, 0.9, 0.85, 0.72)]
        shapes.append(limb(joints, widths, plain, rng, name="palp", part="palp-segment"))
        tips.append(joints[-1])
        if bulbs != "none":
            size = thick * (1.0 if bulbs == "plain" else 1.5)
            (x0, y0), (x1, y1) = joints[-2], joints[-1]
            turn = math.degrees(math.atan2(x1 - x0, y0 - y1))
            shapes.append(_bulb(((x0 + x1) / 2, (y0 + y1) / 2), size, turn, bulb_tone, rng))
    return shapes, tips


def _bulb(centre: Point, size: float, turn: float, tone: str, rng: Random) -> Group:
    back = math.radians(turn)
    front = (centre[0] - math.sin(back) * size * 0.7, centre[1] + math.cos(back) * size * 0.7)
    ball = Body(front, size * 1.9, size * 1.35, PROFILES["tail-pointed"], turn)
    return finished(ball, Coat(tone, stipple=12, shine=0.4), (), rng, "bulb")


def jaw_shapes(carapace: Body, row: Settings, scale: float, seed: str) -> list[Shape]:
    """The two jaws as far as they show in front of the carapace, with open fangs where set."""
    rng = seeded("jaws", seed)
    length, width = row.number("length", 0.7) * scale, row.number("width", 0.9) * scale
    tone = row.color("color", "#5A3A26")
    fangs, spread = row.flag("fangs"), row.number("spread", 6)
    hairs = row.whole("hairs", 0)
    shine = row.number("shine", 0.25)
    plain, folded = row.flag("plain"), row.flag("folded-fangs")
    row.done()
    shapes: list[Shape] = []
    for side in (-1, 1):
        root = carapace.place(side * width * 0.52, carapace.length * 0.06)
        turn = side * spread
        angle = math.radians(turn)
        tip = (root[0] + math.sin(angle) * length, root[1] - math.cos(angle) * length)
        if fangs:
            shapes.append(open_fang(tip, turn, side, length * 0.78, width * 0.3))
        jaw = Body(tip, length * 1.15, width, PROFILES["cylinder"], turn + 180)
        if plain:
            fill = cylinder(jaw.at(-1, 0.4), jaw.at(1, 0.4), tone, shine=shine)
            outline: Shape = jaw.outline(fill=fill, stroke=pen("line"))
            shapes.append(Group((*(folded_fang(jaw, -side) if folded else ()), outline), name="jaw"))
            continue
        coat = Coat(tone, hairs=hairs, hair_length=width * 0.4, stipple=16, shine=shine, fringe=hairs // 2)
        shapes.append(finished(jaw, coat, (), rng, "jaw"))
    return shapes


def spinner_shapes(abdomen: Body, row: Settings, scale: float, seed: str) -> tuple[list[Shape], Point]:
    """The two hind spinnerets and the middle of the place they take."""
    rng = seeded("spinners", seed)
    length, width = row.number("length", 0.25) * scale, row.number("width", 0.3) * scale
    tone = row.color("color", "#4A3524")
    spread = row.number("spread", 14)
    jointed = row.flag("jointed")
    row.done()
    shapes: list[Shape] = []
    look = LimbLook((tone, blend(tone, "#FFFFFF", 0.25)), hairs=2.5 if jointed else 0, hair_length=width * 0.6)
    for side in (-1, 1):
        root = abdomen.place(side * width * 0.75, abdomen.length * 0.965)
        turn = abdomen.turn - side * spread
        bits = (0.5, 0.5) if jointed else (1.0,)
        joints = joints_from(root, [bit * length for bit in bits], [turn, turn - side * 6][: len(bits)])
        widths = [(width, width, width * 0.85), (width * 0.8, width * 0.7, width * 0.35)][: len(bits)]
        shapes.append(limb(joints, widths, look, rng, name="spinner", part="spinner-segment"))
    return shapes, abdomen.place(0, abdomen.length + length * 0.45)


def point_shapes(abdomen: Body, row: Settings, scale: float) -> list[Shape]:
    """Stiff points on the abdomen's edge: `at` lists u, v, degrees from straight back, length (mm), width (mm)."""
    numbers = row.numbers("at", ())
    tone = row.color("color", "ink")
    row.done()
    shapes: list[Shape] = []
    for index in range(0, len(numbers) - 4, 5):
        u, v, turn, length, width = numbers[index : index + 5]
        for side in (1, -1):
            root = abdomen.at(u * side, v)
            shapes.append(_spike(root, 180 - side * turn, length * scale, width * scale, tone))
    return shapes


def _spike(root: Point, degrees: float, length: float, width: float, tone: str) -> Group:
    base = wedge(root, degrees, length, width, tone)
    edge = Path(base.commands, None, pen("line"))
    light = wedge(
        (root[0] - width * 0.12, root[1] - width * 0.05),
        degrees,
        length * 0.75,
        width * 0.25,
        blend(tone, "#FFFFFF", 0.5),
    )
    return Group((base, edge, light), name="point")


def shadow(body: Body) -> Group:
    """A soft shadow on the paper, a little to the lower right of a body part. Draw it first."""
    dark = "#5B4630"
    stops = (Stop(0, dark, 0.34), Stop(0.55, dark, 0.26), Stop(0.8, dark, 0.1), Stop(1, dark, 0.0))
    circle = Circle((0, 0), 50, RadialGradient((0, 0), 50, stops))
    x, y = body.centre
    lift = body.width * 0.07
    return Group((circle,), (body.width * 0.0128, 0, 0, body.length * 0.0124, x + lift, y + lift))
