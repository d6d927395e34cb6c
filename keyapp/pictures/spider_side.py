"""Recipe `spider-side`: a spider from its side, standing on a surface or hanging under threads."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from keyapp.pictures.body import PROFILES, Body, Coat, finished
from keyapp.pictures.eyes import eye
from keyapp.pictures.limb import LimbLook, limb
from keyapp.pictures.plans import planned
from keyapp.pictures.posture import SHARES
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing, Ellipse, Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.spider_parts import coat_from, leg_look, leg_widths
from keyapp.pictures.style import blend, pen, ring, tint
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "curved_leg", "draw_side", "side_spider"]

# Feet and knees from the waist, in body lengths, for a spider facing left: knee x, knee y, foot x, foot y.
_STAND = ((-0.62, -0.62, -1.2, 0.5), (-0.46, -0.72, -0.72, 0.5), (0.02, -0.7, 0.26, 0.5), (0.5, -0.7, 1.12, 0.5))
_HANG = ((-0.72, 0.1, -1.22, -0.62), (-0.5, 0.18, -0.68, -0.6), (-0.02, 0.2, 0.1, -0.58), (0.5, 0.24, 1.0, -0.66))
_CROUCH = ((-0.5, -0.36, -0.78, 0.34), (-0.34, -0.42, -0.46, 0.36), (0.0, -0.42, 0.14, 0.36), (0.34, -0.44, 0.66, 0.36))
_LEAP = ((-0.62, -0.22, -1.05, -0.34), (-0.5, -0.06, -0.95, 0.06), (0.16, 0.2, 0.62, 0.42), (0.34, 0.1, 1.0, 0.34))
POSES = {"stand": _STAND, "hang": _HANG, "crouch": _CROUCH, "leap": _LEAP}


def curved_leg(hip: Point, knee: Point, foot: Point, shares: Sequence[float]) -> list[Point]:
    """Joints of a leg from hip to foot over its knee: femur up to the knee, the rest down and outwards."""
    femur = shares[0]
    up = ((knee[0] - hip[0]), (knee[1] - hip[1]))
    joints = [hip, (hip[0] + up[0] * 0.12, hip[1] + up[1] * 0.12), (hip[0] + up[0] * 0.2, hip[1] + up[1] * 0.2), knee]
    rest = [share / (sum(shares) - femur) for share in shares[1:]]
    # Beyond the knee the leg bows a little outwards.
    span = (foot[0] - knee[0], foot[1] - knee[1])
    bow = 0.16 * (1 if span[0] > 0 else -1)
    control = (knee[0] + span[0] * 0.5 + abs(span[1]) * bow, knee[1] + span[1] * 0.42)
    t = 0.0
    for part in rest:
        t = min(1.0, t + part)
        s = 1 - t
        joints.append(
            (
                s * s * knee[0] + 2 * s * t * control[0] + t * t * foot[0],
                s * s * knee[1] + 2 * s * t * control[1] + t * t * foot[1],
            )
        )
    return joints


def side_spider(s: Settings, waist: Point, size: float, pose: str, *, mark: bool = False) -> Group:
    """A spider facing left, `size` canvas units from front to tail, its waist at a point. Settings of `spider`."""
    seed = s.text("seed", "1")
    rng = seeded("side", seed, pose)
    c_row, a_row, l_row, j_row = s.table("carapace"), s.table("abdomen"), s.table("legs"), s.table("jaws")
    front, back = c_row.number("length", 4), a_row.number("length", 6)
    scale = size / (front + back * 0.95)
    hanging = pose == "hang"
    tilt = {"stand": 4, "hang": 14, "crouch": 8, "leap": -24}[pose]
    high = c_row.number("width", 3.2) * scale * 0.62
    carapace = Body((waist[0] - front * scale, waist[1]), front * scale, high, PROFILES["shield"], 90)
    plump = a_row.number("plump", 0.92) * a_row.number("width", 4) * scale
    abdomen = Body(
        (waist[0] - front * scale * 0.08, waist[1]),
        back * scale,
        plump,
        PROFILES[a_row.choice("shape", PROFILES, "oval")],
        90 + tilt,
    )
    legs: dict[bool, list[Shape]] = {True: [], False: []}
    width = max(0.5, l_row.number("thick", 0.2) * c_row.number("width", 3.2) * scale)
    shares, taper = l_row.numbers("shares", SHARES, count=5), l_row.number("taper", 1.0)
    lengths = l_row.numbers("lengths", (15, 14, 12, 15), count=4)
    thicker = l_row.numbers("thicker", (1, 1, 1, 1), count=4)
    for pair, (kx, ky, fx, fy) in enumerate(POSES[pose]):
        stretch = lengths[pair] / max(lengths) * 0.3 + 0.7
        for near in (False, True):
            shift = 0.0 if near else 0.09 + rng.uniform(-0.04, 0.04)
            hip = (
                waist[0] - front * scale * (0.78 - pair * 0.17),
                waist[1] + (high * 0.16 if not hanging else -high * 0.16),
            )
            knee = (waist[0] + (kx * stretch + shift) * size, waist[1] + ky * size * (1.0 if near else 1.06))
            foot = (waist[0] + (fx * stretch + shift * 1.6) * size, waist[1] + fy * size)
            look = leg_look(l_row, pair, scale)
            if not near:
                look = LimbLook(
                    tuple(blend(tone, "paper", 0.22) for tone in look.colors),
                    hairs=look.hairs * 0.6,
                    hair_length=look.hair_length,
                    hair_color=blend("ink", "paper", 0.4),
                )
            legs[near].append(
                limb(
                    curved_leg(hip, knee, foot, shares),
                    leg_widths(width * thicker[pair], taper),
                    look,
                    seeded(seed, pair, near),
                )
            )
    items: list[Shape] = [*legs[False]]
    tone = c_row.color("color", "#8A6A48")
    jaw_len = max(j_row.number("length", 0.7) * scale, high * 0.45)
    jaw_turn = 140 if not hanging else 40
    jaw = Body(
        (waist[0] - front * scale * 0.93, waist[1]), jaw_len, jaw_len * 0.55, PROFILES["cylinder"], jaw_turn + 90
    )
    items.append(finished(jaw, Coat(j_row.color("color", "#5A3A26"), stipple=10), (), rng, "jaw"))
    items.append(Ellipse(waist, high * 0.22, high * 0.16, "#3A2A20", pen("line")))
    items.append(finished(carapace, coat_from(c_row, scale), (), rng, "carapace"))
    up = -1 if not hanging else 1
    for along, rise, r in ((0.08, 0.3, 0.045), (0.17, 0.42, 0.04), (0.1, 0.14, 0.035), (0.22, 0.26, 0.035)):
        spot = (carapace.front[0] + along * front * scale, waist[1] + up * rise * high * 0.62)
        items.append(eye(spot, max(0.3, r * front * scale)))
    marks: list[Shape] = []
    if mark:
        # The belly faces up when the animal hangs, so half of the hourglass shows along that edge.
        belly = 1 if hanging else -1
        half = ((0.66, 0.38), (0.98, 0.36), (0.9, 0.5), (0.98, 0.64), (0.66, 0.6), (0.78, 0.5))
        marks.append(smooth([abdomen.at(belly * u, v) for u, v in half], closed=True, fill="#D3281C", tension=0.5))
    items.append(finished(abdomen, coat_from(a_row, scale), marks, rng, "abdomen"))
    tail = abdomen.place(0, abdomen.length)
    items.append(
        strokes([(tail, (tail[0] + size * 0.025, tail[1] + size * 0.01))], Stroke(blend(tone, "ink", 0.3), size * 0.03))
    )
    items += legs[True]
    return Group(tuple(items), name="side-spider")


def draw_side(settings: Mapping[str, object]) -> Drawing:
    """A spider from its side. Settings of `spider`, and `pose` (stand, hang, crouch, leap), `size`, `mark`, `ring`."""
    s = Settings(planned(settings), "spider-side")
    pose = s.choice("pose", POSES, "stand")
    size = s.number("size", 38, least=8, most=60)
    x, y = s.numbers("at", (50, 52), count=2)
    items: list[Shape] = []
    if pose in ("stand", "crouch"):
        ground = y + size * (0.5 if pose == "stand" else 0.36) + 0.6
        items.append(strokes([((5, ground), (95, ground))], pen("line", "ink-soft")))
    if s.flag("tint"):
        items.append(tint((x, y), size * 1.1, size * 0.7))
    items.append(side_spider(s, (x, y), size, pose, mark=s.flag("mark")))
    if s.flag("ring"):
        items.append(ring((x + size * 0.25, y), size * 0.4))
    s.done_except(("plan", "seed", "carapace", "abdomen", "legs", "eyes", "jaws", "palps", "spinners", "carries"))
    return Drawing(tuple(items))


RECIPES = {"spider-side": draw_side}
