"""Recipes `spider-close` (front part, abdomen or tail, enlarged) and `spider-leg` (one leg from the side)."""

from __future__ import annotations

import math
from collections.abc import Mapping

from keyapp.pictures.limb import Segment, joints_from, limb, tuft
from keyapp.pictures.plans import merged, planned
from keyapp.pictures.posture import SHARES
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Group,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    box_of,
    polyline,
    strokes,
)
from keyapp.pictures.spider import RINGS, animal
from keyapp.pictures.spider_parts import leg_look, leg_widths
from keyapp.pictures.style import pen, ring, tint
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "draw_close", "draw_leg", "vignette"]


def vignette(centre: Point, clear: float, gone: float) -> Group:
    """Fades the picture into the paper beyond `clear` units from a point; nothing is left beyond `gone` units."""
    share = clear / gone
    stops = (Stop(0, "paper", 0), Stop(share, "paper", 0), Stop((1 + share) / 2, "paper", 0.7), Stop(1, "paper"))
    wash = RadialGradient(centre, gone, stops)
    sheet = [(0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0)]
    return Group((polyline(sheet, closed=True, fill=wash),), name="fade")


def draw_close(settings: Mapping[str, object]) -> Drawing:
    """An enlarged part of a spider from above, the rest fading into the paper.

    Settings of `spider`, and `focus` (front, abdomen or tail), `shrink` (0.3-1, to leave room beside the abdomen).
    """
    focus = Settings(settings).choice("focus", ("front", "abdomen", "tail"), "front")
    eye_point = (50.0, 48.0) if focus == "front" else (50.0, 52.0)
    gone = 47.0
    short = {"legs": {"cut": 3, "sway": 2, "reach": [*eye_point, gone - 2.5]}, "seed": "close"}
    s = Settings(merged(merged(planned({"plan": settings.get("plan")}), short), settings), "spider-close")
    s.text("plan")
    s.text("focus")
    c_row, a_row = s.table("carapace"), s.table("abdomen")
    front, back = c_row.number("length", 4), a_row.number("length", 6)
    # What would lie beyond the canvas is shortened: it is hidden in the fade anyway.
    if focus == "front":
        scale = min(44 / front, 48 / c_row.number("width", 3))
        origin, clear = (50.0, 49 + front * scale / 2), 33.0
        room = (origin[1] - front * scale - 4) / scale
        palps = min(s.table("palps").number("length", 2.5), room * 1.15)
        over: Mapping[str, object] = {
            "abdomen": {"length": (97.5 - origin[1]) / scale, "shape": "fore"},
            "spinners": {"length": 0.01, "width": 0.01},
            "palps": {"length": palps},
        }
    else:
        high = 52 if focus == "abdomen" else 44
        scale = min(high / back, 58 / a_row.number("width", 4)) * s.number("shrink", 1.0, least=0.3, most=1)
        origin, clear = (50.0, 34.0), 36.0
        over = {
            "carapace": {"length": min(front, 33 / scale)},
            "palps": {"length": 0.1 / scale},
            "jaws": {"length": 0.1 / scale, "fangs": False},
        }
    built = animal(Settings(merged(s.values, over), "spider-close"), scale, origin)
    items: list[Shape] = [tint(*built.places[name]) for name in s.words("tint", RINGS)]
    items += [*built.limbs, *built.trunk]
    # Front legs that would start beyond the fade are left out with everything else there.
    items = [item for item in items if not _beyond(item)]
    if focus != "front":
        items = [item for item in items if not (isinstance(item, Group) and item.name == "eye")]
    items.append(vignette(eye_point, clear, gone))
    items += [ring(*built.places[name]) for name in s.words("ring", RINGS)]
    s.done_except(("seed", "carapace", "abdomen", "legs", "eyes", "jaws", "palps", "spinners", "carries"))
    return Drawing(tuple(items))


def _beyond(item: Shape) -> bool:
    return isinstance(item, Group) and item.name in ("leg", "palp") and box_of([item]).top < 1.0


def draw_leg(settings: Mapping[str, object]) -> Drawing:
    """One leg from the side, standing, with a small whole spider showing which part is enlarged.

    Settings: `plan`, `legs`, `seed`, `thick` (femur width in canvas units before fitting), `length`, `ring` (tufts).
    """
    base = merged(planned({"plan": settings.get("plan")}), settings)
    s = Settings(base, "spider-leg")
    s.text("plan")
    for name in ("carapace", "abdomen", "eyes", "jaws", "palps", "spinners", "carries"):
        s.table(name)
    seed = s.text("seed", "1")
    row = s.table("legs")
    thick, length = s.number("thick", 11, least=1, most=16), s.number("length", 128)
    scale = length / row.numbers("lengths", (15, 14, 12, 15), count=4)[0]
    look = leg_look(row, 0, scale)
    taper = row.number("taper", 1.0)
    tufts = row.flag("tufts")
    shares = row.numbers("shares", SHARES, count=5)
    rng = seeded("big-leg", seed)
    # Shoulder low on the left, knee high, foot on the ground at the right.
    turns = (64, 52, 26, 62, 112, 144, 132)
    total = sum(shares)
    lengths = [thick * 1.25, thick * 0.62, *(share / total * length for share in shares)]
    joints = joints_from((8.0, 62.0), lengths, turns)
    left, right = min(x for x, _ in joints), max(x for x, _ in joints)
    top, bottom = min(y for _, y in joints), max(y for _, y in joints)
    fit = min(82 / (right - left), 70 / (bottom - top))
    moved = [(50 - (right - left) * fit / 2 + (x - left) * fit, 82 - (bottom - y) * fit) for x, y in joints]
    widths = leg_widths(thick * fit, taper)
    items: list[Shape] = []
    items.append(strokes([((6, 84.4), (94, 84.4))], pen("line", "ink-soft")))
    items.append(limb(moved, widths, look, rng))
    if tufts:
        for index in (2, 4):
            piece = Segment(moved[index], moved[index + 1], *widths[index])
            items.append(tuft(piece, 0.62, 0.97, rng, length=thick * fit * 1.15, tone="#2A1C14", count=170))
    x, y = moved[-1]
    claw = [
        ((x - 0.6, y - 0.3), (x + 1.2, y + 0.4), (x + 1.6, y + 1.8)),
        ((x - 0.8, y), (x + 0.4, y + 1.0), (x + 0.4, y + 2.0)),
    ]
    items.append(strokes(claw, Stroke("ink", 0.5)))
    places = s.words("ring", ("tufts",))
    for index in (2, 4) if places else ():
        spot = Segment(moved[index], moved[index + 1], *widths[index]).at(0.86)
        items.append(ring(spot, thick * fit * 1.55))
    items.append(_key_map())
    row.done_except(("thick", "thicker", "posture", "sway", "arch", "cut"))
    s.done()
    return Drawing(tuple(items))


def _key_map() -> Group:
    """A small spider with one leg picked out."""
    x, y = 85.0, 14.0
    lines: list[list[Point]] = []
    chosen: list[list[Point]] = []
    for side in (-1, 1):
        for index, (start, knee, foot) in enumerate(((30, 38, 18), (66, 62, 50), (104, 108, 124), (136, 138, 156))):
            a, b, c = (math.radians(side * turn) for turn in (start, knee, foot))
            one = (x + math.sin(a) * 1.6, y - math.cos(a) * 1.6)
            two = (one[0] + math.sin(b) * 4.5, one[1] - math.cos(b) * 4.5)
            line = [one, two, (two[0] + math.sin(c) * 5.5, two[1] - math.cos(c) * 5.5)]
            (chosen if side == 1 and index == 0 else lines).append(line)
    return Group(
        (
            *(polyline(line, stroke=pen("line", "silk")) for line in lines),
            Circle((x, y), 1.9, "silk"),
            Circle((x, y + 4.2), 2.9, "silk"),
            *(polyline(line, stroke=pen("bold", "look")) for line in chosen),
        ),
        name="key-map",
    )


RECIPES = {"spider-close": draw_close, "spider-leg": draw_leg}
