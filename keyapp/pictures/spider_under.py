"""Recipe `spider-underside`: a spider seen from below, and the enlarged belly that other figures show."""

from __future__ import annotations

from collections.abc import Mapping
from random import Random

from keyapp.pictures.body import PROFILES, Body, Coat, finished
from keyapp.pictures.limb import LimbLook, joints_from, limb
from keyapp.pictures.marks import marks_on
from keyapp.pictures.plans import planned
from keyapp.pictures.posture import POSTURES
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Point, Shape, Stroke, box_of, smooth, strokes
from keyapp.pictures.spider_parts import coat_from, leg_pose, leg_shapes, legs_from, shadow
from keyapp.pictures.style import blend, pen, ring, scale_bar
from keyapp.pictures.texture import seeded

__all__ = ["BELLY_MARKS", "RECIPES", "belly_lens", "draw_underside"]

_TOP = [0, 0.37, 0.25, 0.365, 0.27, 0.4, 0.13, 0.475, 0.055, 0.52]
_LOW = [0.055, 0.55, 0.13, 0.6, 0.24, 0.68, 0.22, 0.71, 0, 0.715]

BELLY_MARKS: dict[str, list[Mapping[str, object]]] = {
    "red-hourglass": [{"kind": "area", "points": [*_TOP, *_LOW], "color": "#D3281C", "opacity": 1, "tension": 0.5}],
    "orange-or-yellow-hourglass": [
        {"kind": "area", "points": [*_TOP, *_LOW], "color": "#EE9A2E", "opacity": 1, "tension": 0.5}
    ],
    "red-spots-or-bars": [
        {"kind": "area", "points": [0, 0.36, 0.22, 0.365, 0.2, 0.42, 0.06, 0.46, 0, 0.465], "color": "#D3281C",
         "opacity": 1, "tension": 0.5},
        {"kind": "area", "points": [0, 0.61, 0.08, 0.615, 0.2, 0.67, 0.18, 0.71, 0, 0.72], "color": "#D3281C",
         "opacity": 1, "tension": 0.5},
    ],
    "other-mark": [
        {"kind": "area", "points": [0.3, 0.3, 0.42, 0.34, 0.44, 0.55, 0.34, 0.76, 0.26, 0.72, 0.3, 0.5], "pair": True,
         "color": "#E9DDB8", "opacity": 0.95},
        {"kind": "spots", "at": [0, 0.42, 0, 0.56, 0, 0.68], "size": 0.05, "color": "#E9DDB8"},
    ],
    "none": [],
}  # fmt: skip
"""Mark of the underside to the rows that draw it."""


def belly(body: Body, coat: Coat, mark: str, rng: Random, spinner_tone: str) -> list[Shape]:
    """The abdomen from below: its mark, the lung covers, the furrow behind them and the spinnerets."""
    rows = [Settings(row, "underside") for row in BELLY_MARKS[mark]]
    pale = blend(coat.color, "#FFFFFF", 0.18)
    lungs: list[Shape] = [
        Ellipse(
            body.at(side * 0.36, 0.17), body.width * 0.12, body.length * 0.07, pale, pen("fine"), 0.8, turn=side * -20
        )
        for side in (-1, 1)
    ]
    furrow = [body.at(u, 0.26 + 0.035 * (1 - u * u)) for u in (-0.86, -0.4, 0, 0.4, 0.86)]
    marks: list[Shape] = [*lungs, smooth(furrow, stroke=Stroke("ink", 0.35, 0.7)), *marks_on(body, rows, Random(1))]
    shapes: list[Shape] = [finished(body, coat, marks, rng, "abdomen")]
    size = body.width * 0.055
    look = LimbLook((spinner_tone,))
    for u, v, turn in ((-1, 0.9, 168), (1, 0.9, 192), (-0.6, 0.865, 176), (0.6, 0.865, 184)):
        root = body.place(u * size, v * body.length)
        joints = joints_from(root, [size * 1.7], [turn])
        shapes.append(limb(joints, [(size, size, size * 0.6)], look, rng, name="spinner", part="spinner-segment"))
    return shapes


def belly_lens(s: Settings, row: Settings, centre: Point, radius: float) -> list[Shape]:
    """The abdomen from below, in a lens of `radius`: `mark` in the row names the mark."""
    mark = row.choice("mark", BELLY_MARKS, "none")
    a_row = s.table("abdomen")
    length, width = a_row.number("length", 6), a_row.number("width", 4)
    scale = radius * 1.56 / max(length, width)
    profile = PROFILES[a_row.choice("shape", PROFILES, "oval")]
    body = Body((centre[0], centre[1] - length * scale / 2), length * scale, width * scale, profile)
    rng = seeded("belly", s.text("seed", "1"))
    return belly(body, coat_from(a_row, scale), mark, rng, s.table("spinners").color("color", "#4A3524"))


def _build(s: Settings, scale: float, origin: Point) -> tuple[list[Shape], Body]:
    seed = s.text("seed", "1")
    rng = seeded("underside", seed)
    c_row, a_row, l_row, j_row = s.table("carapace"), s.table("abdomen"), s.table("legs"), s.table("jaws")
    length, width = c_row.number("length", 4) * scale, c_row.number("width", 3.2) * scale
    overlap = c_row.number("overlap", 0.08)
    tone = c_row.color("color", "#8A6A48")
    carapace = Body((origin[0], origin[1] - length), length, width, PROFILES[c_row.choice("shape", PROFILES, "pear")])
    sternum = Body(carapace.place(0, length * 0.3), length * 0.6, width * 0.56, PROFILES["heart"])
    profile = PROFILES[a_row.choice("shape", PROFILES, "oval")]
    abdomen = Body(
        (origin[0], origin[1] - length * overlap),
        a_row.number("length", 6) * scale,
        a_row.number("width", 4) * scale,
        profile,
    )
    legs = legs_from(l_row, width, scale)
    posture, sway = l_row.choice("posture", POSTURES, "all-round"), l_row.number("sway", 3.0)
    shapes: list[Shape] = [shadow(abdomen), shadow(carapace)]
    shapes.append(finished(carapace, Coat(blend(tone, "ink", 0.25), stipple=20), (), rng, "carapace"))
    shapes += _mouth(carapace, j_row, legs.looks[0], scale, legs.width, rng)
    for pair in (3, 2, 1, 0):
        for side in (-1, 1):
            v = (0.16, 0.4, 0.64, 0.86)[pair]
            hips = sternum.at(side * 0.86, v), carapace.at(side * 1.04, (0.4, 0.52, 0.63, 0.74)[pair])
            pose = leg_pose(carapace, legs, pair, side, posture, sway, seed, hips)
            shapes += leg_shapes(pose, legs, seed)
    shapes.append(
        finished(
            sternum, Coat(blend(tone, "ink", 0.1), hairs=30, stipple=30, hair_length=length * 0.07), (), rng, "sternum"
        )
    )
    mark = s.choice("mark", BELLY_MARKS, "none")
    coat = coat_from(a_row, scale)
    shapes += belly(abdomen, coat, mark, rng, s.table("spinners").color("color", "#4A3524"))
    return shapes, abdomen


def _mouth(carapace: Body, row: Settings, look: LimbLook, scale: float, leg_width: float, rng: Random) -> list[Shape]:
    """Jaws with folded fangs, the palps and the plates round the mouth."""
    tone, wide = row.color("color", "#5A3A26"), carapace.width * 0.2
    high = carapace.length * 0.3
    shapes: list[Shape] = []
    for side in (-1, 1):
        turns = [side * turn for turn in (40, 36, 24, 10, -8, -16)]
        hip = carapace.place(side * carapace.width * 0.2, carapace.length * 0.2)
        lengths = [share * carapace.length * 0.75 for share in (0.14, 0.08, 0.3, 0.16, 0.16, 0.16)]
        widths = [(leg_width * k,) * 3 for k in (0.7, 0.6, 0.62, 0.58, 0.52, 0.4)]
        shapes.append(limb(joints_from(hip, lengths, turns), widths, look, rng, name="palp", part="palp-segment"))
        jaw = Body(carapace.place(side * wide * 0.55, -high * 0.35), high, wide, PROFILES["cylinder"])
        shapes.append(finished(jaw, Coat(tone, stipple=12, shine=0.3), (), rng, "jaw"))
        fang = [jaw.at(side * 0.5, 0.06), jaw.at(-side * 0.1, 0.2), jaw.at(-side * 0.75, 0.42)]
        shapes.append(strokes([fang], Stroke("#3A1510", max(0.35, wide * 0.16))))
    for side in (-1, 1):
        plate = Body(carapace.place(side * wide * 0.75, high * 0.62), high * 0.7, wide * 0.8, PROFILES["oval"])
        shapes.append(finished(plate, Coat(look.colors[0], stipple=8), (), rng, "mouth-plate"))
    return shapes


def draw_underside(settings: Mapping[str, object]) -> Drawing:
    """A spider seen from below. Settings of `spider`, and `mark` (see `BELLY_MARKS`), `ring` (true: round it)."""
    s = Settings(planned(settings), "spider-underside")
    s.text("plan")
    for name in ("eyes", "palps", "spinners"):
        s.table(name)
    left, top, right, bottom = s.numbers("area", (4, 4, 96, 91), count=4)
    middle = (left + right) / 2, (top + bottom) / 2
    scale, origin = 1.0, (0.0, 0.0)
    for _ in range(4):
        shapes, abdomen = _build(s, scale, origin)
        # The first two shapes are the soft shadows, which may run past the area.
        box = box_of(shapes[2:])
        over = max(box.width / (right - left), box.height / (bottom - top))
        shift = (middle[0] - box.centre[0], middle[1] - box.centre[1])
        if 0.98 <= over <= 1.0 and max(abs(shift[0]), abs(shift[1])) < 0.2:
            break
        waist = ((origin[0] - box.centre[0]) / over, (origin[1] - box.centre[1]) / over)
        scale *= 0.995 / over
        origin = (middle[0] + waist[0], middle[1] + waist[1])
    if s.flag("ring"):
        shapes.append(ring(abdomen.place(0, abdomen.length * 0.54), abdomen.width * 0.27, abdomen.length * 0.26))
    if s.flag("scale-bar", True):
        shapes.append(scale_bar(s.number("bar", 5.0), scale))
    s.done()
    return Drawing(tuple(shapes))


RECIPES = {"spider-underside": draw_underside}
