"""Recipe `spider`: a whole spider seen from above, built from its measurements in millimetres."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from keyapp.pictures.body import PROFILES, Body, finished
from keyapp.pictures.brood import carried_sac, young_on
from keyapp.pictures.eyes import ABOVE, eyes_above, halo
from keyapp.pictures.lenses import burrow_mouth, trash_line
from keyapp.pictures.marks import marks_on
from keyapp.pictures.plans import planned
from keyapp.pictures.posture import POSTURES
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Box, Circle, Drawing, Ellipse, Group, Point, Shape, Stroke, box_of, polyline, smooth
from keyapp.pictures.spider_parts import (
    LegPose,
    Legs,
    coat_from,
    jaw_shapes,
    leg_pose,
    leg_shapes,
    legs_from,
    palp_shapes,
    point_shapes,
    shadow,
    spinner_shapes,
)
from keyapp.pictures.spider_under import belly_lens
from keyapp.pictures.style import pen, ring, scale_bar, tint
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "RINGS", "Animal", "animal", "draw_spider", "fitted", "lens", "nice_length"]

RINGS = ("eyes", "violin", "spinners", "bulbs", "tufts", "abdomen", "carapace", "jaws", "sac", "tail-spot", "points",
         "brood", "feet", "whole", "top-row", "tail-end", "left-bulb", "right-bulb")  # fmt: skip
"""Places that the settings `ring` and `tint` can name."""


@dataclass(frozen=True, slots=True)
class Animal:
    """A spider placed on the page.

    Attributes:
        limbs: legs, palps and jaws, lowest first; they lie under `trunk`.
        trunk: spinnerets, carapace, eyes, abdomen and what is carried.
        places: what can be ringed, by name: centre and half-axes.
        poses: the eight legs' joints.
        carapace, abdomen: their outlines.
        scale: canvas units per mm.
    """

    limbs: tuple[Shape, ...]
    trunk: tuple[Shape, ...]
    places: Mapping[str, tuple[Point, float, float]]
    poses: tuple[LegPose, ...]
    carapace: Body
    abdomen: Body
    scale: float

    @property
    def box(self) -> Box:
        """The box round the whole animal."""
        return box_of([*self.limbs, *self.trunk])


def animal(s: Settings, scale: float, origin: Point) -> Animal:
    """Build a spider at `scale` units per mm with its waist at `origin`, head up the page."""
    seed = s.text("seed", "1")
    c_row, a_row, l_row, e_row = s.table("carapace"), s.table("abdomen"), s.table("legs"), s.table("eyes")
    length, width = c_row.number("length", 4) * scale, c_row.number("width", 3.2) * scale
    overlap = c_row.number("overlap", 0.08)
    carapace = Body((origin[0], origin[1] - length), length, width, PROFILES[c_row.choice("shape", PROFILES, "pear")])
    rng = seeded("trunk", seed)
    abdomen = Body(
        (origin[0], origin[1] - length * overlap),
        a_row.number("length", 6) * scale,
        a_row.number("width", 4) * scale,
        PROFILES[a_row.choice("shape", PROFILES, "oval")],
        180 + a_row.number("turn", rng.uniform(-3.5, 3.5)),
    )
    legs = legs_from(l_row, width, scale)
    posture, sway = l_row.choice("posture", POSTURES, "all-round"), l_row.number("sway", 3.0, least=0, most=15)
    poses = [leg_pose(carapace, legs, pair, side, posture, sway, seed) for pair in (3, 2, 1, 0) for side in (-1, 1)]
    limbs = [shape for pose in poses for shape in leg_shapes(pose, legs, seed)]
    palps, palp_tips = palp_shapes(carapace, s.table("palps"), legs.looks[0], scale, legs.width, seed)
    limbs += palps
    limbs += jaw_shapes(carapace, s.table("jaws"), scale, seed)
    brood_row = s.table("carries")
    brood, brood_spot = _carried(brood_row, carapace, abdomen, scale, seed)
    under = brood_row.text("what") == "sac-under"
    limbs += brood if under else []
    trunk: list[Shape] = []
    stalk = origin[0], origin[1] - length * overlap * 0.3
    trunk.append(Ellipse(stalk, width * 0.13, length * 0.1, "#3A2A20", pen("line")))
    spinners, spinner_spot = spinner_shapes(abdomen, s.table("spinners"), scale, seed)
    trunk += spinners
    trunk += point_shapes(abdomen, a_row.table("points"), scale)
    c_marks, a_marks = marks_on(carapace, c_row.tables("marks"), rng), marks_on(abdomen, a_row.tables("marks"), rng)
    trunk.append(finished(carapace, coat_from(c_row, scale), c_marks, rng, "carapace"))
    layout = e_row.choice("layout", ABOVE, "two-rows")
    patch = e_row.color("patch", "ink") if "patch" in e_row else None
    trunk += eyes_above(carapace, layout, times=e_row.number("times", 1.0), patch=patch)
    trunk.append(finished(abdomen, coat_from(a_row, scale), a_marks, rng, "abdomen"))
    trunk += [] if under else brood
    places = _places(carapace, abdomen, layout, spinner_spot, palp_tips, poses, legs)
    places["brood"] = brood_spot
    for row in (c_row, a_row, l_row, e_row, brood_row):
        row.done()
    return Animal(tuple(limbs), tuple(trunk), places, tuple(poses), carapace, abdomen, scale)


def _carried(
    row: Settings, carapace: Body, abdomen: Body, scale: float, seed: str
) -> tuple[list[Shape], tuple[Point, float, float]]:
    what = row.choice("what", ("nothing", "sac-at-tail", "sac-under", "young-on-back"), "nothing")
    size = row.number("size", 6) * scale
    tone = row.color("color", "#C2A47C" if what == "young-on-back" else "#E3DCCB")
    count = row.whole("count", 34, most=80)
    spot = abdomen.place(0, abdomen.length + size * 0.4)
    if what == "sac-at-tail":
        return [carried_sac(spot, size, tone, seed)], (spot, size * 0.72, size * 0.72)
    if what == "sac-under":
        spot = carapace.place(0, carapace.length * 0.78)
        return [carried_sac(spot, size, tone, seed)], (spot, size * 0.66, size * 0.66)
    if what == "young-on-back":
        heap = (abdomen.centre, abdomen.width * 0.78, abdomen.length * 0.68)
        return young_on(abdomen, count, size, tone, seed), heap
    return [], (abdomen.centre, abdomen.width * 0.6, abdomen.length * 0.6)


def _places(
    carapace: Body,
    abdomen: Body,
    layout: str,
    spinner: Point,
    palp_tips: list[Point],
    poses: list[LegPose],
    legs: Legs,
) -> dict[str, tuple[Point, float, float]]:
    left, right = palp_tips
    between = (left[0] + right[0]) / 2, (left[1] + right[1]) / 2
    wide = legs.width
    first = next(pose for pose in poses if pose.pair == 0 and pose.side == 1)
    brush = first.segment(4 if legs.cut > 4 else 1).at(0.84)
    foot = first.joints[-1]
    return {
        "eyes": halo(carapace, layout),
        "violin": (carapace.place(0, carapace.length * 0.5), carapace.width * 0.4, carapace.length * 0.52),
        "spinners": (spinner, abdomen.width * 0.34 + 1, abdomen.length * 0.2 + 1),
        "bulbs": (
            between,
            abs(right[0] - left[0]) / 2 + wide * 1.6,
            wide * 2.4,
        ),
        "left-bulb": (left, wide * 1.5, wide * 1.7),
        "right-bulb": (right, wide * 1.5, wide * 1.7),
        "tufts": (brush, wide * 2.4, wide * 2.4),
        "feet": (foot, 3.0, 3.0),
        "abdomen": (abdomen.centre, abdomen.width * 0.62, abdomen.length * 0.6),
        "carapace": (carapace.centre, carapace.width * 0.62, carapace.length * 0.62),
        "jaws": (carapace.place(0, -carapace.length * 0.22), carapace.width * 0.5, carapace.length * 0.4),
        "sac": (abdomen.place(0, abdomen.length * 1.25), abdomen.width * 0.62, abdomen.length * 0.4),
        "tail-spot": (abdomen.place(0, abdomen.length * 0.86), abdomen.width * 0.26, abdomen.length * 0.16),
        "top-row": (abdomen.place(0, abdomen.length * 0.6), abdomen.width * 0.16, abdomen.length * 0.35),
        "tail-end": (abdomen.place(0, abdomen.length), abdomen.width * 0.3 + 1, abdomen.length * 0.14 + 1),
        "points": (abdomen.centre, abdomen.width * 0.82, abdomen.length * 0.85),
        "whole": (abdomen.front, 44.0, 43.0),
    }


def fitted(s: Settings, area: tuple[float, float, float, float]) -> Animal:
    """Build a spider as large as it can be within `area` (left, top, right, bottom), in the middle of it."""
    left, top, right, bottom = area
    middle = (left + right) / 2, (top + bottom) / 2
    scale, origin = 1.0, (0.0, 0.0)
    # Hairs and pen lines do not grow with the animal, so the true extent is measured again at each size.
    for _ in range(4):
        built = animal(s, scale, origin)
        box = built.box
        over = max(box.width / (right - left), box.height / (bottom - top))
        shift = (middle[0] - box.centre[0], middle[1] - box.centre[1])
        if 0.98 <= over <= 1.0 and max(abs(shift[0]), abs(shift[1])) < 0.2:
            break
        waist = ((origin[0] - box.centre[0]) / over, (origin[1] - box.centre[1]) / over)
        scale *= 0.995 / over
        origin = (middle[0] + waist[0], middle[1] + waist[1])
    return built


def nice_length(units_per_mm: float, most: float = 24.0) -> float:
    """The longest of 0.5, 1, 2, 5, 10, 20 or 50 mm that takes at most `most` units."""
    for mm in (50.0, 20.0, 10.0, 5.0, 2.0, 1.0):
        if mm * units_per_mm <= most:
            return mm
    return 0.5


def draw_spider(settings: Mapping[str, object]) -> Drawing:
    """A whole spider from above. See `plans` for the settings; `plan` names the set to start from.

    Beside those: `area` (left, top, right, bottom), `ring` and `tint` (see `RINGS`), `wash` (soft patches: x, y,
    half-width, half-height, turn, one after another), `inset`, `asks` (open ring), `shadow`, `scale-bar`, `bar` (mm).
    """
    s = Settings(planned(settings), "spider")
    s.text("plan")
    left, top, right, bottom = s.numbers("area", (4, 4, 96, 91), count=4)
    built = fitted(s, (left, top, right, bottom))
    items: list[Shape] = [tint(*built.places[name]) for name in s.words("tint", RINGS)]
    wash = s.numbers("wash", ())
    for index in range(0, len(wash) - 4, 5):
        x, y, rx, ry, turn = wash[index : index + 5]
        items.append(tint((x, y), rx, ry, turn=turn))
    if s.flag("shadow", True):
        items += [shadow(built.abdomen), shadow(built.carapace)]
    items += built.limbs
    items += built.trunk
    items += inset(s.table("inset"), settings, built)
    items += [ring(*built.places[name]) for name in s.words("ring", RINGS)]
    if s.flag("asks"):
        items.append(_open_ring())
    if s.flag("scale-bar", True):
        items.append(scale_bar(s.number("bar", nice_length(built.scale)), built.scale))
    s.done()
    return Drawing(tuple(items))


def _open_ring() -> Group:
    angles = [math.radians(-95 + 285 * index / 28) for index in range(29)]
    points = [(50 + 45 * math.sin(a), 49 - 45 * math.cos(a)) for a in angles]
    return Group((smooth(points, stroke=Stroke("look", 0.9)),), name="open-ring")


def inset(row: Settings, settings: Mapping[str, object], built: Animal) -> list[Shape]:
    """A lens beside the animal: the front of the body, larger. `at` is its centre, `radius` its size."""
    what = row.choice("what", ("none", "front", "underside", "jaws", "burrow", "trash"), "none")
    if what == "none":
        row.done()
        return []
    x, y = row.numbers("at", (16, 82), count=2)
    radius = row.number("radius", 13)
    if what == "underside":
        shapes = belly_lens(Settings(planned(settings), "spider"), row, (x, y), radius)
        row.done()
        return [lens((x, y), radius, built.abdomen.at(-0.9, 0.62)), *shapes]
    row.done()
    if what in ("burrow", "trash", "jaws"):
        return _with_surroundings(what, Settings(planned(settings), "spider"), (x, y), radius, built)
    s = Settings(planned(settings), "spider")
    scale = radius * 1.5 / (built.carapace.length / built.scale)
    big = animal(s, scale, (x, y + radius * 0.82))
    # Only the carapace and the eyes: what would stick out of the lens is left out.
    shapes = [shape for shape in big.trunk if isinstance(shape, Group) and shape.name in ("carapace", "eye")]
    return [lens((x, y), radius, built.carapace.at(-0.8, 0.8) if x < 40 else built.abdomen.at(0, 1.0)), *shapes]


def _with_surroundings(what: str, s: Settings, at: Point, radius: float, built: Animal) -> list[Shape]:
    (x, y), rng = at, seeded("lens", s.text("seed", "1"))
    if what == "jaws":
        big = animal(s, radius * 0.86 / (built.carapace.length / built.scale), (x, y + radius * 0.9))
        jaws = jaw_shapes(big.carapace, s.table("jaws"), big.scale, s.text("seed", "1"))
        front = [shape for shape in big.trunk if isinstance(shape, Group) and shape.name in ("carapace", "eye")]
        return [lens(at, radius, built.carapace.at(-0.8, 0.2)), *jaws, *front]
    return [burrow_mouth(at, radius, rng) if what == "burrow" else trash_line(at, radius, rng)]


def lens(centre: Point, radius: float, on: Point) -> Group:
    """The frame of an enlarged view, with a fine line from what it enlarges."""
    dx, dy = on[0] - centre[0], on[1] - centre[1]
    far = math.hypot(dx, dy)
    edge = (centre[0] + dx / far * radius, centre[1] + dy / far * radius)
    return Group(
        (
            polyline([edge, on], stroke=pen("fine", "ink-soft")),
            Circle(centre, radius, "#FFFDF8", pen("line", "ink-soft")),
        ),
        name="lens",
    )


RECIPES = {"spider": draw_spider}
