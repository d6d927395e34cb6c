"""Recipes `spider-lens`, a spider from above with an enlarged view beside it, and `net-held`, one that holds a net."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Mapping

from keyapp.pictures.body import Body, Coat, Profile, finished
from keyapp.pictures.eyes import eye
from keyapp.pictures.limb import LimbLook, joints_from, limb
from keyapp.pictures.plans import merged, planned
from keyapp.pictures.posture import SHARES
from keyapp.pictures.profile import Tones, profile_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, Shape, Stroke, placed, smooth, strokes
from keyapp.pictures.spider import animal, draw_spider, fitted, lens
from keyapp.pictures.spider_parts import leg_widths
from keyapp.pictures.style import pen, ring
from keyapp.pictures.texture import seeded

__all__ = ["LENSES", "RECIPES", "draw_net_held", "draw_with_lens"]

_FACE: Profile = (
    (0.01, 0.3),
    (0.05, 0.62),
    (0.14, 0.88),
    (0.3, 1.0),
    (0.5, 0.96),
    (0.7, 0.8),
    (0.88, 0.62),
    (0.97, 0.4),
)


def _bowl(radius: float) -> list[Shape]:
    """A bowl of fine silk over a flat sheet, crossing threads above it, and the spider hanging below the bowl."""
    rng = seeded("bowl")
    r = radius
    rim, low, wide = -0.2 * r, 0.2 * r, 0.84 * r

    def bowl(x: float) -> float:
        return low - (low - rim) * (x / wide) ** 2

    spread = [(index / 8 - 1) * wide for index in range(17)]
    curve = [(x, bowl(x)) for x in spread]
    back = [(x, rim - 0.09 * r * (1 - (x / wide) ** 2)) for x in reversed(spread)]
    items: list[Shape] = [smooth([*curve, *back], closed=True, fill="#D8E1E4", opacity=0.75)]
    rib_xs = spread[2:-2:2]
    ribs: list[tuple[Point, ...]] = []
    ribs += [((x, bowl(x)), (x * 0.94, (bowl(x) + rim) / 2), (x * 0.9, rim - 0.05 * r)) for x in rib_xs]
    for part in (0.35, 0.7):
        edge = [(x, rim + (bowl(x) - rim) * part) for x in spread[1:-1:2]]
        ribs += list(itertools.pairwise(edge))
    items.append(strokes(ribs, Stroke("ink-soft", 0.14, 0.7)))
    items.append(smooth(back, stroke=Stroke("ink-soft", 0.2, 0.8)))
    items.append(smooth(curve, stroke=Stroke("ink-soft", 0.4)))
    above = []
    for _ in range(26):
        one, two = rng.uniform(-0.8, 0.8) * r, rng.uniform(-0.62, 0.62) * r
        above.append(((one, rim - 0.02 * r + rng.uniform(-0.06, 0.04) * r), (two, -rng.uniform(0.45, 0.72) * r)))
    items.append(strokes(above, Stroke("ink-soft", 0.15, 0.65)))
    doily = 0.7 * r
    cross = [
        ((x * 0.8, doily - 0.03 * r), (x * 0.8 + rng.uniform(-0.2, 0.2) * r, doily + 0.07 * r)) for x in spread[::2]
    ]
    sheet = [(-0.68 * r, doily - 0.02 * r), (0.0, doily + 0.03 * r), (0.68 * r, doily - 0.02 * r)]
    items.append(strokes([tuple(sheet), *cross], Stroke("ink-soft", 0.26, 0.85)))
    ties = [((x, bowl(x)), (x * 0.8, doily)) for x in (spread[1], spread[3], spread[-4], spread[-2])]
    items.append(strokes(ties, Stroke("ink-soft", 0.12, 0.6)))
    # The spider below the bowl: back down, feet up on the silk.
    y = low + 0.2 * r
    legs: list[tuple[Point, ...]] = []
    for index, (knee, foot) in enumerate(((-0.4, -0.52), (-0.27, -0.3), (0.02, 0.04), (0.3, 0.5))):
        hip = ((-0.17 + 0.035 * index) * r, y - 0.02 * r)
        for way in (0.0, 0.06):
            bend = ((knee + way) * r, y - (0.01 if index in (0, 3) else 0.06) * r)
            legs += [(hip, bend), (bend, ((foot + way) * r, bowl((foot + way) * r)))]
    items.append(strokes(legs, Stroke("#6B4A2C", 0.36)))
    items.append(Ellipse((-0.12 * r, y), 0.12 * r, 0.075 * r, "#7A4C2C", pen("fine")))
    items.append(Ellipse((0.14 * r, y + 0.04 * r), 0.21 * r, 0.15 * r, "#33261F", pen("fine"), turn=8))
    marks = [((x * r, y + 0.02 * r), (x * r + 0.01 * r, y + 0.12 * r)) for x in (0.04, 0.14, 0.24)]
    items.append(strokes(marks, Stroke("#F1E8D2", 0.5)))
    return items


def _dome(radius: float) -> list[Shape]:
    """A spitting spider from the side: its eight legs are plain lines, so that the body is what is seen."""
    tones = Tones("#E8D7A8", "#E6D6AC", "#DCC690", "#3A2A20", 0.0, 0.3)
    parts = profile_parts("domed", "spitting", tones, "spots", legs=False)
    scale = radius / 30
    far = (((-12, 2), (-20, -12), (-24, 15)), ((-9, 2), (-15, -14), (-17, 15)), ((-5, 2), (9, -13), (12, 15)),
           ((-3, 2), (17, -12), (23, 15)))  # fmt: skip
    near = (((-13, 4), (-22, -5), (-25, 17)), ((-10, 4.6), (-13, 0), (-15, 18)), ((-6, 4.6), (2, 0), (4, 18)),
            ((-4, 4), (14, -1), (22, 17)))  # fmt: skip
    behind: Shape = strokes(
        [part for hip, knee, foot in far for part in ((hip, knee), (knee, foot))], Stroke("#B9A679", 0.9)
    )
    lines: Shape = strokes(
        [part for hip, knee, foot in near for part in ((hip, knee), (knee, foot))], Stroke("#6E5A38", 1.1)
    )
    bars = [((-27.0, 16.0), (27.0, 16.0))]
    ground: Shape = strokes(bars, pen("fine", "ink-soft"))
    return [Group((ground, behind, *parts, lines), (scale, 0, 0, scale, -0.6 * scale, -0.5 * scale))]


def _huge_eyes(radius: float) -> list[Shape]:
    """The face of a net-casting spider: two huge eyes, six small ones, short jaws, and the thighs beside it."""
    r = radius
    rng = seeded("huge-eyes")
    items: list[Shape] = []
    look = LimbLook(("#A98A62",), hairs=0.3, hair_length=0.9, hair_color="#6E563A", lean=True)
    for side in (-1, 1):
        for turns, start in (((70, 40, 14), 0.06), ((92, 80, 60), 0.22), ((122, 134, 150), 0.34)):
            joints = joints_from((side * r * 0.38, r * start), [r * 0.2, r * 0.12, r * 0.15], [side * t for t in turns])
            items.append(limb(joints, [(r * 0.13, r * 0.13, r * 0.12)] * 3, look, rng))
    for side in (-1, 1):
        jaw = Body((side * r * 0.15, r * 0.3), r * 0.5, r * 0.27, _FACE, 180)
        items.append(finished(jaw, Coat("#8A6B46", hairs=12, hair_length=0.7, stipple=12), (), rng, "jaw"))
    head = Body((0.0, -r * 0.62), r * 1.1, r * 1.16, _FACE, 180)
    coat = Coat("#AE9068", hairs=40, hair_length=0.9, hair_color="#6E563A", stipple=30, shine=0.1)
    items.append(finished(head, coat, (), rng, "head"))
    for side in (-1, 1):
        items.append(eye((side * r * 0.36, -r * 0.4), r * 0.055))
        items.append(eye((side * r * 0.26, -r * 0.06), r * 0.235, rim="#6E4A2C", iris="#2C1A12"))
        items.append(eye((side * r * 0.07, r * 0.2), r * 0.045))
        items.append(eye((side * r * 0.44, r * 0.2), r * 0.05))
    return items


LENSES: dict[str, Callable[[float], list[Shape]]] = {"bowl-and-doily": _bowl, "dome": _dome, "huge-eyes": _huge_eyes}
"""Name to what a lens of a radius shows, drawn about (0, 0)."""


def draw_with_lens(settings: Mapping[str, object]) -> Drawing:
    """A spider from above as `spider` draws it, and a `lens` (`what`, `at`, `radius`) with an enlarged view."""
    row = Settings(settings, "spider-lens").table("lens")
    what = row.choice("what", LENSES, "dome")
    x, y = row.numbers("at", (17, 82), count=2)
    radius = row.number("radius", 14, least=6, most=24)
    row.done()
    rest = {name: value for name, value in settings.items() if name != "lens"}
    base = draw_spider(rest)
    s = Settings(planned(rest), "spider-lens")
    left, top, right, bottom = s.numbers("area", (4, 4, 96, 91), count=4)
    built = fitted(s, (left, top, right, bottom))
    on = built.carapace.at(-0.6, 0.12) if what == "huge-eyes" else built.carapace.at(-0.8, 0.75)
    items: list[Shape] = list(base.items)
    if what == "bowl-and-doily":
        on = built.abdomen.at(-0.9, 0.7)
    return Drawing((*items, lens((x, y), radius, on), placed(LENSES[what](radius), at=(x, y), name="enlarged")))


def _net() -> tuple[list[Shape], tuple[Point, Point, Point, Point]]:
    """A stretched square of woolly bands and its corners: upper left, upper right, lower right, lower left."""
    a, b, c, d = (35.0, 67.0), (65.0, 67.0), (63.5, 91.0), (36.5, 91.0)

    def spot(u: float, v: float) -> Point:
        top = a[0] + (b[0] - a[0]) * u, a[1]
        low = d[0] + (c[0] - d[0]) * u, d[1]
        pull = 1.2 * math.sin(math.pi * v) * (0.5 - u)
        sag = 1.2 * math.sin(math.pi * u) * (0.5 - v)
        return top[0] + (low[0] - top[0]) * v + pull * 2, top[1] + (low[1] - top[1]) * v + sag * 2

    rng = seeded("held-net")
    steps = [index / 8 for index in range(9)]
    fill = [spot(u, 0) for u in steps] + [spot(1, v) for v in steps] + [spot(u, 1) for u in reversed(steps)]
    fill += [spot(0, v) for v in reversed(steps)]
    items: list[Shape] = [smooth(fill, closed=True, fill="#DFE6EA", opacity=0.75, tension=0.6)]
    for index in range(8):
        v = (index + 0.5) / 8
        band = [spot(u, v + rng.uniform(-0.012, 0.012)) for u in steps]
        items.append(smooth(band, stroke=Stroke("#A9B4C2", 1.5, 0.45)))
        items.append(smooth(band, stroke=Stroke("#6F7C8C", 0.3, 0.9)))
    threads = [tuple(spot(u, v) for v in (0, 0.5, 1)) for u in steps]
    items.append(strokes(threads, Stroke("ink-soft", 0.24, 0.9)))
    items.append(smooth(fill, closed=True, stroke=Stroke("ink-soft", 0.45), tension=0.6))
    return items, (a, b, c, d)


def _held_leg(hip: Point, knee: Point, foot: Point, width: float, look: LimbLook, key: str) -> Group:
    femur = SHARES[0]
    start = [hip, *((hip[0] + (knee[0] - hip[0]) * t, hip[1] + (knee[1] - hip[1]) * t) for t in (0.08, 0.14)), knee]
    rest, done, joints = sum(SHARES) - femur, 0.0, start
    out = 1 if foot[0] > 50 else -1
    bow = (knee[0] + foot[0]) / 2 + out * abs(foot[1] - knee[1]) * 0.1, (knee[1] + foot[1]) / 2
    for share in SHARES[1:]:
        done = min(1.0, done + share / rest)
        s = 1 - done
        joints.append((s * s * knee[0] + 2 * s * done * bow[0] + done * done * foot[0],
                       s * s * knee[1] + 2 * s * done * bow[1] + done * done * foot[1]))  # fmt: skip
    return limb(joints, leg_widths(width, 1.4), look, seeded("held", key))


def draw_net_held(settings: Mapping[str, object]) -> Drawing:
    """A net-casting spider, head down in its threads, with the net between its four front legs. No settings."""
    Settings(settings, "net-held").done()
    plan = planned(
        merged({"plan": "net-casting", "seed": "net-held"}, {"legs": {"hairs": 0}, "palps": {"length": 2.2}})
    )
    scale = 2.15
    built = animal(Settings(plan, "net-held"), scale, (0.0, 0.0))
    waist = (50.0, 41.0)
    keep = [item for item in built.limbs if not (isinstance(item, Group) and item.name == "leg")]
    look = LimbLook(("#A98A62",), hairs=0.8, hair_length=0.8, hair_color="#6E563A", lean=True)
    far = ((9.0, 4.0), (30.0, 4.0), (70.0, 4.0), (91.0, 4.0))
    grips = ((17.0, 27.0), (37.0, 9.5), (63.0, 9.5), (83.0, 27.0))
    lines: list[tuple[Point, ...]] = [(grips[0], far[0]), (grips[1], far[1]), (grips[2], far[2]), (grips[3], far[3])]
    lines += [(grips[0], (3.0, 62.0)), (grips[3], (97.0, 62.0)), (grips[0], grips[1]), (grips[3], grips[2])]
    lines += [((50.0, 14.0), (50.0, 3.0)), (grips[1], (50.0, 14.0)), (grips[2], (50.0, 14.0))]
    items: list[Shape] = [strokes(lines, Stroke("ink-soft", 0.35, 0.85))]
    net, (a, b, c, d) = _net()
    items += net
    held = (((d, c), (21.0, 66.0), 47.5), ((a, b), (29.0, 49.0), 46.0))
    for side in (0, 1):
        out = -1 if side == 0 else 1
        for index, (feet, (kx, ky), hip) in enumerate(held):
            knee = (kx, ky) if side == 0 else (100 - kx, ky)
            items.append(_held_leg((50 + out * 2.4, hip), knee, feet[side], 1.7, look, f"front{side}{index}"))
        for index, (knee, foot, hip) in enumerate((((30.0, 38.0), grips[0], 44.0), ((38.0, 30.0), grips[1], 42.5))):
            knee, foot = (knee, foot) if side == 0 else ((100 - knee[0], knee[1]), (100 - foot[0], foot[1]))
            items.append(_held_leg((50 + out * 2.2, hip), knee, foot, 1.4, look, f"hind{side}{index}"))
    items.append(placed([*keep, *built.trunk], at=waist, turn=180, name="spider"))
    items.append(ring((50.0, 79.0), 22.5, 17.5))
    return Drawing(tuple(items))


RECIPES = {"spider-lens": draw_with_lens, "net-held": draw_net_held}
