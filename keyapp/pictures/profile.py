"""Recipe `spider-profile`: spiders from their side, for the height and shape of the parts of the body."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from random import Random

from keyapp.pictures.eyes import eye
from keyapp.pictures.limb import Band, LimbLook, joints_from, limb
from keyapp.pictures.posture import SHARES
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, RadialGradient, Shape, Stop, Stroke, smooth, strokes
from keyapp.pictures.spider_parts import leg_widths
from keyapp.pictures.spider_side import curved_leg
from keyapp.pictures.style import blend, globe, pen, ring, scale_bar, tint
from keyapp.pictures.texture import hairs_within, seeded, stipple

__all__ = ["BUILDS", "RECIPES", "Build", "Hull", "Tones", "draw_profile", "profile_parts"]

Rows = tuple[tuple[float, float, float], ...]


@dataclass(frozen=True, slots=True)
class Hull:
    """A body part from the side: rows of x, upper and lower y, front to back, the waist being at (0, 0)."""

    rows: Rows

    def at(self, u: float, v: float) -> Point:
        """The point at `v` (0 front, 1 back) along and `u` (-1 upper edge, 1 lower edge) across."""
        place = min(max(v, 0.0), 1.0) * (len(self.rows) - 1)
        index = min(int(place), len(self.rows) - 2)
        part = place - index
        x, top, low = (a + (b - a) * part for a, b in zip(self.rows[index], self.rows[index + 1], strict=True))
        return x, (top + low) / 2 + u * (low - top) / 2

    @property
    def points(self) -> list[Point]:
        """The outline, along the upper edge and back along the lower one."""
        return [(x, top) for x, top, _ in self.rows] + [(x, low) for x, _, low in reversed(self.rows)]

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom."""
        xs = [x for x, _, _ in self.rows]
        return min(xs), min(top for _, top, _ in self.rows), max(xs), max(low for _, _, low in self.rows)


@dataclass(frozen=True, slots=True)
class Build:
    """A spider from the side, facing left.

    Attributes:
        front, back: the two parts of the body.
        legs, near: for each pair, knee x, knee y, foot x, foot y, behind the body and before it.
        eyes: x, y and radius of the eyes of the near side.
        tail: where the spinnerets stand and the direction they point to.
        thick: width of the thighs.
    """

    front: Rows
    back: Rows
    legs: tuple[tuple[float, float, float, float], ...]
    near: tuple[tuple[float, float, float, float], ...]
    eyes: tuple[tuple[float, float, float], ...]
    tail: tuple[float, float, float]
    thick: float = 2.5


_LOW: Rows = ((-20, -1.4, 2.4), (-19.2, -4.2, 3.8), (-15, -6.2, 4.8), (-9, -6.4, 5.2), (-4, -5.2, 4.6), (0.4, -1.6, 2))
_DOME: Rows = ((-19.4, 0.2, 3.8), (-18.4, -2.2, 4.8), (-14, -6.4, 5.6), (-8.5, -11.6, 5.8), (-4, -13.4, 5.6),
    (0, -11.6, 4.8), (2.4, -6.2, 3.2), (3, -1.6, 1))  # fmt: skip
_THIN: Rows = ((-19, -0.6, 1), (-18, -1.9, 1.8), (-12, -2.5, 2.2), (-5, -2.4, 2.2), (0.3, -0.9, 1.2))
_BALL: Rows = ((-0.6, -2, 1.2), (0.8, -6.2, 4), (4, -10, 6.6), (9, -12.6, 8.2), (14, -13, 8.2), (19, -11.4, 7),
    (23, -7.4, 5), (25.2, -2.4, 2.2))  # fmt: skip
_SMALL: Rows = ((1, -2, 1.2), (2.4, -5.6, 3.8), (5.4, -9.4, 6.2), (10, -11.2, 7.4), (14.6, -10.6, 7.2),
    (18.4, -7.8, 5.6), (20.4, -4.2, 3.4), (21.2, -1.4, 1.4))  # fmt: skip
_LEAF: Rows = ((-0.6, -0.6, 0.8), (1, -1.8, 1.7), (6, -2.7, 2.5), (13, -3, 2.7), (20, -2.6, 2.3), (25, -1.6, 1.5),
    (27, -0.5, 0.7))  # fmt: skip
_PEAK: Rows = ((-0.6, -2, 1.4), (1.2, -6.6, 5), (4, -11.8, 8.4), (7.6, -16.6, 10.4), (11.4, -20.2, 10.6),
    (15.4, -22.6, 8.6), (19, -24, 3.6), (21.8, -24.8, -4), (23.6, -24.9, -12),
    (24.6, -23.9, -17.5), (24.9, -22.4, -20.8))  # fmt: skip
_HEAD: Rows = ((-13, -0.8, 2), (-12.2, -3.4, 2.8), (-9.4, -4.2, 3.6), (-5.4, -4, 3.8), (-2, -3.2, 3), (0.4, -1.2, 1.6))

# Knees and feet: of the legs behind the body, then of those before it, which point more or less at us.
_STAND = ((-31, -16, -40, 17), (-22, -19, -27, 17), (5, -18, 12, 17), (21, -18, 34, 17))
_STAND_NEAR = ((-32, -7, -41, 18), (-15, 0.5, -21, 21), (-2, 0.5, 3, 21), (16, -2, 33, 18))
_SPREAD = ((-27, -6, -37, 5), (-18, -7.4, -28, 5), (3, -7.4, 14, 5), (17, -6.4, 33, 5))
_SPREAD_NEAR = ((-26, 1.4, -37, 6), (-17, 3.4, -23, 8.5), (1, 3.6, 7, 8.5), (14, 3.4, 33, 6.4))
_DRAWN_IN = ((-22, 11, -27, 28), (-16, 15, -14, 28), (-8, 14, -1, 28), (8, 16, 15, 28))
_DRAWN_IN_NEAR = ((-24, 9, -29, 28), (-18, 14, -18, 28), (-5, 13, 3, 28), (10, 15, 19, 28))
_EYES = ((-18.9, -3.2, 0.75), (-17.2, -4.4, 0.75), (-18.4, -1.5, 0.65), (-16.6, -2.6, 0.65))
_DOME_EYES = ((-18.4, -0.7, 0.8), (-15.8, -3.4, 0.75), (-14.7, -2.3, 0.75))
_THIN_EYES = ((-18.2, -1.2, 0.5), (-17, -1.8, 0.5), (-17.7, -0.5, 0.45), (-16.3, -1.1, 0.45))
_HEAD_EYES = ((-12.1, -2.8, 0.6), (-11, -3.5, 0.6), (-11.8, -1.5, 0.5), (-10.6, -2.3, 0.5))

BUILDS: dict[str, Build] = {
    "deep": Build(_LOW, _BALL, _STAND, _STAND_NEAR, _EYES, (24.6, 1.6, 112)),
    "flat": Build(_THIN, _LEAF, _SPREAD, _SPREAD_NEAR, _THIN_EYES, (26.4, 0.6, 96), 2.2),
    "domed": Build(_DOME, _SMALL, _STAND, _STAND_NEAR, _DOME_EYES, (20.4, 1.8, 112), 1.9),
    "low": Build(_LOW, _SMALL, _STAND, _STAND_NEAR, _EYES, (20.4, 1.8, 112), 1.9),
    "peaked": Build(_HEAD, _PEAK, _STAND, _STAND_NEAR, _HEAD_EYES, (12.8, 9.6, 140), 1.7),
    "hanging-peak": Build(_HEAD, _PEAK, _DRAWN_IN, _DRAWN_IN_NEAR, _HEAD_EYES, (12.8, 9.6, 140), 1.35),
}
"""Name to a spider from the side."""


@dataclass(frozen=True, slots=True)
class Tones:
    """Colours of the front part, the back part, the legs and their rings; hairs a unit of length; shine 0-1."""

    front: str
    back: str
    legs: str
    bands: str
    hairs: float
    shine: float


def _shaded(hull: Hull, tone: str, rng: Random, name: str, tones: Tones, marks: Sequence[Shape] = ()) -> Group:
    left, top, right, bottom = hull.box
    middle, radius = ((left + right) / 2, (top + bottom) / 2), max(right - left, bottom - top) / 2
    points = hull.points
    items: list[Shape] = [smooth(points, closed=True, fill=globe(middle, radius, tone, depth=0.4, shine=0.25))]
    items += marks
    low = [hull.at(u, v) for u, v in ((0.98, 0.06), (0.98, 0.3), (0.98, 0.6), (0.98, 0.92))]
    back = [hull.at(u, v) for u, v in ((0.6, 0.86), (0.42, 0.6), (0.46, 0.3), (0.7, 0.1))]
    items.append(smooth([*low, *back], closed=True, fill="#1A100A", opacity=0.16))
    if tones.hairs:
        count = round(tones.hairs * (right - left))
        items.append(hairs_within(hull.at, rng, count=count, length=1.3, degrees=100, splay=18, edge=0.86))
    items.append(stipple(hull.at, rng, count=40))
    if tones.shine:
        spot = hull.at(-0.45, 0.4)
        size = min(right - left, bottom - top) * 0.3
        glow = RadialGradient(
            spot, size, (Stop(0, "white", tones.shine * (0.6 if name == "carapace" else 1)), Stop(1, "white", 0))
        )
        items.append(Ellipse(spot, size, size * 0.7, glow))
    items.append(smooth(points, closed=True, stroke=pen("outline")))
    return Group(tuple(items), name=name)


def _silver(hull: Hull) -> list[Shape]:
    """Bright plates between dark lines, as on a back part that shines like a mirror."""
    items: list[Shape] = []
    patches = ((-0.5, 0.26, 2.4, 1.5), (-0.05, 0.3, 2.2, 1.4), (-0.56, 0.42, 3.2, 1.8), (-0.12, 0.46, 3.0, 1.7),
        (-0.6, 0.57, 2.8, 1.6), (-0.2, 0.61, 3.2, 1.8), (0.2, 0.5, 2.2, 1.3), (-0.55, 0.72, 2.2, 1.3),
        (-0.1, 0.75, 2.0, 1.2), (-0.36, 0.85, 1.4, 0.9))  # fmt: skip
    for index, (u, v, rx, ry) in enumerate(patches):
        items.append(Ellipse(hull.at(u, v), rx, ry, "white", None, 0.78, turn=-52 + 9 * (index % 4)))
    belly = ((0.62, 0.1), (0.5, 0.3), (0.56, 0.5), (0.98, 0.5), (0.98, 0.3), (0.96, 0.12))
    items.append(smooth([hull.at(u, v) for u, v in belly], closed=True, fill="#4A4440", opacity=0.75))
    return items


def _spots(hull: Hull, rows: Sequence[tuple[float, float, float]], tone: str) -> list[Shape]:
    return [Ellipse(hull.at(u, v), size * 1.25, size, tone, None, 0.9, turn=-14) for u, v, size in rows]


_FRONT_SPOTS = ((-0.6, 0.42, 0.9), (-0.1, 0.5, 1.1), (0.3, 0.4, 0.8), (-0.62, 0.66, 1.1), (0.1, 0.72, 0.9),
    (-0.3, 0.84, 0.7), (0.42, 0.62, 0.7), (-0.1, 0.28, 0.6))  # fmt: skip
_BACK_SPOTS = ((-0.62, 0.34, 1), (-0.2, 0.42, 1.2), (0.2, 0.32, 0.8), (-0.6, 0.56, 1), (-0.1, 0.62, 1.1),
    (0.36, 0.54, 0.8), (-0.4, 0.78, 0.8), (0.14, 0.82, 0.7))  # fmt: skip


def _leg(build: Build, pair: int, near: bool, tones: Tones, rng: Random) -> Group:
    kx, ky, fx, fy = (build.near if near else build.legs)[pair]
    left, _, right, _ = Hull(build.front).box
    hip = left + (right - left) * (0.3 + pair * 0.16), Hull(build.front).at(0.62, 0.5)[1]
    sway = rng.uniform(-0.8, 0.8)
    knee, foot = (kx + sway, ky), (fx + sway, fy)
    legs = tones.legs if near else blend(tones.legs, "paper", 0.35)
    dark = tones.bands if near else blend(tones.bands or "ink", "paper", 0.35)
    look = LimbLook((legs,), hairs=tones.hairs * 0.35, hair_length=0.9, lean=True, shine=0.2)
    if tones.bands:
        spans = ((2, 0.3, 0.45), (2, 0.8, 0.98), (3, 0.4, 0.98), (4, 0.3, 0.5), (4, 0.85, 0.98), (5, 0.3, 0.5))
        look = LimbLook((legs,), tuple(Band(i, a, b, dark, 0.85) for i, a, b in spans), lean=True, shine=0.2)
    return limb(curved_leg(hip, knee, foot, SHARES), leg_widths(build.thick, 1.2), look, rng)


def profile_parts(
    name: str, seed: str, tones: Tones | None = None, marks: str = "none", *, legs: bool = True
) -> list[Shape]:
    """The spider of a build, its waist at (0, 0), facing left; without `legs`, no limbs."""
    build = BUILDS[name]
    rng = seeded("profile", name, seed)
    t = tones or Tones("#A0805A", "#A88C68", "#A58660", "", 1.6, 0.2)
    front, back = Hull(build.front), Hull(build.back)
    items: list[Shape] = [_leg(build, pair, False, t, rng) for pair in range(4) if legs]
    x, y, turn = build.tail
    stub = LimbLook((blend(t.back, "ink", 0.4),), lean=True)
    items.append(
        limb(joints_from((x, y), [2.6], [turn]), [(1.5, 1.3, 0.7)], stub, rng, name="spinner", part="spinner-segment")
    )
    items.append(Ellipse((0.3, 0), 1.6, 1.0, "#3A2A20", pen("fine")))
    left = front.box[0]
    low = front.at(1, 0.1)[1]
    jaw = Hull(((left - 0.2, low - 3, low - 1), (left - 0.3, low - 2, low + 2.4), (left + 1.8, low - 1.4, low + 3.4),
                (left + 3.4, low - 1, low + 1.6)))  # fmt: skip
    if name != "flat":
        items.append(smooth(jaw.points, closed=True, fill=blend(t.front, "ink", 0.35), stroke=pen("line")))
    spots = marks == "spots"
    on_back = _silver(back) if marks == "silver" else _spots(back, _BACK_SPOTS, "#3A2A20") if spots else []
    items.append(_shaded(back, t.back, rng, "abdomen", t, on_back))
    items.append(_shaded(front, t.front, rng, "carapace", t, _spots(front, _FRONT_SPOTS, "#3A2A20") if spots else ()))
    items += [eye((ex, ey), er) for ex, ey, er in build.eyes]
    palp = joints_from((left + 2.2, low - 0.6), [1.6, 3, 2.4, 2.6, 2.6], [-70, -64, -96, -160, -176])
    look = LimbLook((t.legs,), lean=True, hairs=t.hairs * 0.4, hair_length=0.8)
    wide = build.thick * 0.62
    if legs and name != "flat":
        items.append(limb(palp, [(wide, wide, wide * 0.9)] * 5, look, rng, name="palp", part="palp-segment"))
    items += [_leg(build, pair, True, t, rng) for pair in (0, 3, 2, 1) if legs]
    return items


def _tones(s: Settings) -> Tones:
    tone = s.color("color", "#A88C68")
    return Tones(
        s.color("front", blend(tone, "ink", 0.08)),
        tone,
        s.color("legs", blend(tone, "ink", 0.05)),
        s.color("bands", "ink") if "bands" in s else "",
        s.number("hairs", 1.6, least=0, most=4),
        s.number("shine", 0.2, least=0, most=1),
    )


def _guides(top: float, bottom: float) -> Group:
    """Broken lines along the back and the belly, and a bar between them: so high is the body."""
    dashes = [((x, y), (x + 2.2, y)) for y in (top, bottom) for x in (4 + 4 * step for step in range(24))]
    bar = [((8.0, top), (8.0, bottom)), ((6.8, top), (9.2, top)), ((6.8, bottom), (9.2, bottom))]
    return Group((strokes(dashes, pen("line", "look")), strokes(bar, pen("bold", "look"))), name="guide")


def draw_profile(settings: Mapping[str, object]) -> Drawing:
    """A spider from its side. Settings: `build` (see `BUILDS`), `color`, `front`, `legs`, `bands` (colours), `hairs`,
    `shine`, `marks` (none, spots or silver), `show` (none, height, front or peak: what is brought out), `size` (units
    of the canvas for one of the build), `length` (mm of the body, for a scale bar), `seed`."""
    s = Settings(settings, "spider-profile")
    name = s.choice("build", BUILDS, "deep")
    build = BUILDS[name]
    size = s.number("size", 1.0, least=0.2, most=2)
    show = s.choice("show", ("none", "height", "front", "peak"), "none")
    marks = s.choice("marks", ("none", "spots", "silver"), "none")
    tones, seed, length = _tones(s), s.text("seed", "1"), s.number("length", 0)
    s.done()
    hanging = name == "hanging-peak"
    waist = (50.0, 46.0 if hanging else 53.0)
    left, top, _, _ = Hull(build.front).box
    _, back_top, right, low = Hull(build.back).box
    reach = [row[2] for row in (*build.legs, *build.near)]
    middle = (50 - (min(left, *reach) + max(right, *reach)) / 2 * size, waist[1])
    flip = -1.0 if hanging else 1.0
    items: list[Shape] = []
    foot = max(row[3] for row in build.legs)
    ground = middle[1] + flip * (foot + 0.5) * size
    if hanging:
        rng = seeded("hold", name)
        lines: list[tuple[Point, ...]] = [
            ((4.0, ground - 2), (38.0, ground + 0.4), (96.0, ground - 4)),
            ((4.0, ground + 5), (40.0, ground), (96, ground + 2)),
        ]
        lines += [((rng.uniform(8, 92), ground + rng.uniform(-3, 2)), (rng.uniform(4, 96), 4.0)) for _ in range(13)]
        items.append(strokes(lines, Stroke("ink-soft", 0.3, 0.75)))
    else:
        items.append(strokes([((4, ground), (96, ground))], pen("line", "ink-soft")))
    x0 = (left + right) / 2
    if show == "peak":
        items.append(tint((middle[0] + 17 * size, middle[1] - 15 * size), 15 * size, 16 * size, turn=20))
    if not hanging:
        stops = (Stop(0, "#5B4630", 0.3), Stop(1, "#5B4630", 0.0))
        disc = Ellipse((0, 0), 50, 50, RadialGradient((0, 0), 50, stops))
        wide = (right - left) * 0.6 * size / 50
        items.append(Group((disc,), (wide, 0, 0, 0.045 * size, middle[0] + x0 * size, ground + 0.6)))
    items.append(Group(tuple(profile_parts(name, seed, tones, marks)), (size, 0, 0, flip * size, *middle), "spider"))
    if show == "height":
        items.append(
            _guides(middle[1] + min(top, back_top) * size, middle[1] + max(low, Hull(build.front).box[3]) * size)
        )
    if show == "front":
        items.append(ring((middle[0] - 9 * size, middle[1] - 3.2 * size), 14.6 * size, 13.6 * size))
    if length:
        items.append(scale_bar(1.0, (right - left) * size / length))
    return Drawing(tuple(items))


RECIPES = {"spider-profile": draw_profile}
