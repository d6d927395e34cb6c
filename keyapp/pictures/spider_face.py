"""Recipe `spider-face`: a spider looking at us, for the number and arrangement of its eyes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from keyapp.pictures.body import Body, Coat, Profile, finished
from keyapp.pictures.eyes import FACE, eyes_on_face
from keyapp.pictures.limb import LimbLook, joints_from, limb
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Point, RadialGradient, Shape, Stop, smooth
from keyapp.pictures.spider_close import vignette
from keyapp.pictures.style import blend, pen, ring
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "draw_face"]

_ROUND: Profile = (
    (0.008, 0.22),
    (0.04, 0.5),
    (0.12, 0.74),
    (0.28, 0.92),
    (0.5, 1.0),
    (0.75, 1.0),
    (0.92, 0.9),
    (0.99, 0.7),
)
_LOW: Profile = (
    (0.008, 0.22),
    (0.035, 0.42),
    (0.12, 0.6),
    (0.3, 0.74),
    (0.55, 0.9),
    (0.78, 1.0),
    (0.94, 0.92),
    (0.99, 0.7),
)
_TALL: Profile = (
    (0.006, 0.3),
    (0.03, 0.54),
    (0.08, 0.69),
    (0.2, 0.76),
    (0.45, 0.8),
    (0.7, 0.92),
    (0.88, 1.0),
    (0.98, 0.8),
)
_SQUARE: Profile = (
    (0.006, 0.5),
    (0.025, 0.76),
    (0.08, 0.89),
    (0.2, 0.95),
    (0.5, 1.0),
    (0.75, 0.98),
    (0.92, 0.88),
    (0.99, 0.68),
)


@dataclass(frozen=True, slots=True)
class _Head:
    """Shape and colours of a face: head height and width, jaw length and width as parts of the head's width."""

    profile: Profile
    width: float
    height: float
    top: float
    color: str
    jaw: str
    jaw_length: float
    jaw_width: float
    eyes_width: float
    hairs: int = 60
    hair_color: str = "#4A3422"
    shine: float = 0.2
    splay: float = 4.0
    leg_width: float = 9.0
    iris: str = "#241A16"
    fangs: bool = False
    lean: bool = False


HEADS: dict[str, _Head] = {
    "three-pairs": _Head(_LOW, 54, 34, 22, "#BE9058", "#8A5A34", 0.46, 0.26, 46, 40, "#5A3F28", leg_width=7),
    "six-close-group": _Head(
        _LOW, 52, 32, 20, "#9A3520", "#8E2F1C", 0.62, 0.31, 46, 0, shine=0.5, splay=12, leg_width=8, fangs=True
    ),
    "two-big-in-front": _Head(
        _SQUARE, 66, 44, 14, "#3A3534", "#2F7F78", 0.42, 0.28, 64, 190, "#8E867E", leg_width=13, iris="#2C241E"
    ),
    "two-big-above-row-of-four": _Head(
        _TALL, 56, 44, 14, "#7A5E40", "#47301F", 0.58, 0.35, 50, 150, "#35271B", leg_width=11
    ),
    "two-rows": _Head(_ROUND, 54, 38, 20, "#8C6A48", "#5E4029", 0.54, 0.32, 50, 60, leg_width=8),
    "two-four-two": _Head(
        _TALL, 52, 42, 16, "#A6875C", "#5E4029", 0.54, 0.33, 50, 70, "#4A3422", leg_width=9, lean=True
    ),
    "six-in-front-row": _Head(
        _LOW, 64, 30, 26, "#8A7458", "#5A4632", 0.38, 0.24, 60, 60, "#3A2E22", leg_width=9, lean=True
    ),
    "hexagon-high": _Head(
        _TALL, 48, 50, 10, "#86B755", "#9CC56C", 0.5, 0.34, 58, 50, "#E9EFC4", leg_width=7, shine=0.15
    ),
    "small-mound": _Head(_ROUND, 68, 34, 18, "#86654A", "#5A4030", 0.5, 0.36, 78, 260, "#3A281B", leg_width=13),
}
"""Eye pattern to the head that carries it."""


def draw_face(settings: Mapping[str, object]) -> Drawing:
    """A face. Settings: `layout` (an eye pattern), `ring` (true: round the eyes), `tally` (rings below, one per eye),
    `color`, `jaw` (its colour), `ring-jaws` (true: round the jaws), `seed`."""
    s = Settings(settings, "spider-face")
    layout = s.choice("layout", FACE, "two-rows")
    head = HEADS[layout]
    tone = s.color("color", head.color)
    head = replace(head, jaw=s.color("jaw", head.jaw))
    tally = s.flag("tally")
    seed = s.text("seed", "1")
    marked = s.flag("ring")
    jaws_marked = s.flag("ring-jaws")
    lift = 5.0 if tally else 0.0
    rng = seeded("face", layout, seed)
    top = head.top - lift
    face = Body((50.0, top), head.height, head.width, head.profile)
    items: list[Shape] = [_behind(top, tone)]
    items += _legs(face, head, tone, seed)
    items.append(vignette(face.place(0, 14), 34, 46))
    items += _jaws(face, head, seed)
    coat = Coat(tone, head.hairs, 1.7, head.hair_color, head.hairs // 3, head.shine, 160, 0.36, splay=40)
    items.append(finished(face, coat, (), rng, "head"))
    if layout == "small-mound":
        spot = (50.0, top + 0.125 * head.eyes_width)
        mound = Body((50.0, spot[1] - 7.5), 15, 24, _ROUND)
        items.append(finished(mound, Coat(blend(tone, "ink", 0.35), stipple=40, shine=0.1), (), rng, "mound"))
    if layout == "hexagon-high":
        items.append(Circle((50, top + 12), 11, "#E9EFC4", None, 0.55))
    eyes = eyes_on_face(layout, (50.0, top), head.eyes_width, iris=head.iris)
    items += eyes
    items += _palps(face, head, tone, seed)
    if marked:
        items.append(_ring(layout, top, head.eyes_width))
    if jaws_marked:
        low = face.place(0, face.length * 0.86)[1]
        items.append(ring((50.0, low + head.jaw_length * head.width * 0.5), head.jaw_width * head.width * 1.35, 17.5))
    if tally:
        count = len(eyes)
        gap = 6.4
        marks = tuple(Circle((50 + (index - (count - 1) / 2) * gap, 95.5), 2.1, "look") for index in range(count))
        items.append(Group(marks, name="tally"))
    s.done()
    return Drawing(tuple(items))


def _behind(top: float, tone: str) -> Group:
    """The abdomen, out of focus behind the head."""
    centre = (50.0, top + 14)
    reach = min(30.0, centre[1] - 1.0)
    dark = blend(tone, "ink", 0.2)
    soft = RadialGradient(centre, reach, (Stop(0, dark, 0.4), Stop(0.6, dark, 0.22), Stop(1, dark, 0.0)))
    return Group((Circle(centre, reach, soft),), name="behind")


def _legs(face: Body, head: _Head, tone: str, seed: str) -> list[Shape]:
    """The four near leg pairs as far as the picture reaches: upper leg, knee and on."""
    shapes: list[Shape] = []
    pale = blend(tone, "#FFFFFF", 0.12)
    hairs = 0.5 + head.hairs / 60
    look = LimbLook((pale,), hairs=hairs, hair_length=1.7, hair_color=head.hair_color, lean=head.lean)
    wide = head.leg_width
    rows = (
        (0.5, 0.78, (100, 66, 60, 118, 160), (7, 4, 26, 9, 22)),
        (0.55, 0.7, (92, 52, 48, 108, 156), (7, 4, 27, 9, 22)),
        (0.62, 0.9, (112, 88, 78, 134, 166), (8, 5, 25, 9, 20)),
        (0.7, 0.98, (124, 110, 100, 150, 172), (8, 5, 22, 9, 16)),
    )
    for index in (1, 2, 3, 0):
        u, v, turns, lengths = rows[index]
        for side in (-1, 1):
            rng = seeded("face-leg", seed, index, side)
            hip = face.at(side * u, v)
            bent = [side * (turn + rng.gauss(0, 2.5)) for turn in turns]
            widths = [(wide * k, wide * k * 1.04, wide * k * 0.9) for k in (0.9, 0.85, 1.0, 0.9, 0.75)]
            joints = _inside(joints_from(hip, lengths, bent), face.place(0, 14))
            shapes.append(limb(joints, widths, look, rng))
    return shapes


def _inside(joints: list[Point], middle: Point) -> list[Point]:
    """Joints drawn in towards the middle until all lie within the fade."""
    kept: list[Point] = []
    for x, y in joints:
        dx, dy = x - middle[0], y - middle[1]
        far = max(1e-6, (dx * dx + dy * dy) ** 0.5)
        share = min(1.0, 43.0 / far) if y > 3 else 0.8
        kept.append((middle[0] + dx * share, middle[1] + dy * share))
    return kept


def _jaws(face: Body, head: _Head, seed: str) -> list[Shape]:
    shapes: list[Shape] = []
    length, width = head.jaw_length * head.width, head.jaw_width * head.width
    bottom = face.place(0, face.length * 0.86)
    profile: Profile = ((0.02, 0.6), (0.12, 0.92), (0.35, 1.0), (0.65, 0.9), (0.88, 0.66), (0.97, 0.4))
    for side in (-1, 1):
        rng = seeded("face-jaw", seed, side)
        jaw = Body((bottom[0] + side * width * 0.5, bottom[1]), length, width, profile, 180 - side * head.splay)
        tip = jaw.at(-side * 0.3, 0.95)
        reach, thick = length * (0.5 if head.fangs else 0.2), width * (0.2 if head.fangs else 0.24)
        fang: list[Point] = [
            (tip[0] + side * thick, tip[1] - thick),
            (tip[0] + side * thick * 0.7, tip[1] + reach * 0.5),
            (tip[0] - side * reach * 0.5, tip[1] + reach),
            (tip[0] - side * thick * 0.3, tip[1] + reach * 0.42),
            (tip[0] - side * thick, tip[1] - thick),
        ]
        shapes.append(smooth(fang, closed=True, fill="#4A1A12", stroke=pen("line"), tension=0.8))
        coat = Coat(
            head.jaw, min(80, head.hairs // 2 + 10), 1.6, head.hair_color, head.hairs // 6, head.shine, 50, 0.42
        )
        shapes.append(finished(jaw, coat, (), rng, "jaw"))
    return shapes


def _palps(face: Body, head: _Head, tone: str, seed: str) -> list[Shape]:
    shapes: list[Shape] = []
    wide = head.leg_width * 0.62
    look = LimbLook(
        (blend(tone, "#FFFFFF", 0.18),),
        hairs=0.6 + head.hairs / 50,
        hair_length=1.5,
        hair_color=head.hair_color,
        lean=head.lean,
    )
    for side in (-1, 1):
        rng = seeded("face-palp", seed, side)
        hip = face.at(side * 0.66, 0.93)
        turns = [side * turn for turn in (150, 140, 118, 176, 196, 204)]
        widths = [(wide * k, wide * k, wide * k * 0.9) for k in (0.9, 0.85, 0.95, 0.95, 0.9, 0.8)]
        joints = joints_from(hip, (3, 2.5, 8, 5, 6.5, 7), turns)
        shapes.append(limb(joints, widths, look, rng, name="palp", part="palp-segment"))
    return shapes


def _ring(layout: str, top: float, width: float) -> Shape:
    eyes = FACE[layout]
    high, low = min(e.y - e.r for e in eyes), max(e.y + e.r for e in eyes)
    right = max(e.x + e.r for e in eyes)
    return ring(
        (50.0, top + (high + low) / 2 * width), right * width * 1.13 + 2.6, (low - high) / 2 * width * 1.16 + 2.8
    )


RECIPES = {"spider-face": draw_face}
