"""Recipe `sting`: the end of a scorpion's tail from the side, for the small tooth below the sting."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.limb import Segment
from keyapp.pictures.part import fitted, put, silhouette
from keyapp.pictures.scorpion import scorpion_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Drawing,
    Group,
    LinearGradient,
    Path,
    Point,
    Shape,
    Stop,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.style import blend, cylinder, globe, pen, ring
from keyapp.pictures.texture import hair, seeded, stipple

__all__ = ["RECIPES", "draw_sting"]

_TONE = "#D6B273"
# The bulb and its sting, drawn pointing to the right with the back of the tail upwards.
_TURN = 14.0
_AT = (58.0, 31.0)
_BULB: tuple[Point, ...] = (
    (-1.5, -4.5), (4, -7.6), (12, -8.6), (19, -6.6), (24.5, -2.6), (24.0, 2.2), (19.5, 7.2), (12.5, 11.2), (5, 10.4),
    (0, 6.4), (-1.8, 1.5),
)  # fmt: skip
_NEEDLE: tuple[Point, ...] = (
    (21.5, -5.2), (27.5, -2.4), (32.6, 3.4), (35.2, 10.6), (35.4, 18.4), (33.0, 12.2), (29.6, 7.0), (25.4, 3.6),
    (21.4, 4.0),
)  # fmt: skip
_TOOTH: tuple[Point, ...] = ((16.4, 8.0), (20.0, 8.2), (24.4, 10.6), (23.4, 7.4), (22.6, 3.6), (18.6, 4.6))
_SPOT = (23.2, 8.6)


def _joint(one: Point, two: Point, wide: float, index: int) -> Group:
    rng = seeded("sting-joint", index)
    piece = Segment(one, two, wide * 0.84, wide * 1.06, wide * 0.94)
    tone = blend(_TONE, "#4A2814", 0.06 * index)
    keels = [[piece.at(t, k) for t in (0.05, 0.35, 0.65, 0.96)] for k in (-0.74, -0.3, 0.28, 0.7)]
    hairs = [
        hair(piece.at(rng.uniform(0.1, 0.95), side * 0.92), piece.degrees + side * rng.uniform(40, 75),
             rng.uniform(2.0, 4.6))
        for side in (-1, 1)
        for _ in range(7)
    ]  # fmt: skip
    return Group(
        (
            strokes(hairs, pen("fine")),
            Path(piece.outline(), cylinder(piece.at(0.5, -1), piece.at(0.5, 1), tone), pen("outline", times=1.2)),
            *(smooth(keel, stroke=pen("line", opacity=0.5)) for keel in keels),
            stipple(lambda u, v: piece.at(v, u), rng, count=90, radius=0.15),
        ),
        name="tail-joint",
    )


def _sting(tooth: bool) -> Group:
    rng = seeded("sting")
    bulb, needle, point = (put(points, _AT, _TURN) for points in (_BULB, _NEEDLE, _TOOTH))
    tone = blend(_TONE, "#5A2F18", 0.14)
    dark = blend(_TONE, "#2A120A", 0.78)
    centre = put([(11.5, 1.0)], _AT, _TURN)[0]
    sharp = put([(24.5, -2.0), (36.0, 14.0)], _AT, _TURN)
    horn = LinearGradient(sharp[0], sharp[1], (Stop(0, blend(tone, dark, 0.35)), Stop(0.45, dark), Stop(1, "#241009")))
    fill = globe(centre, 15.0, tone)
    items: list[Shape] = [smooth(needle, closed=True, fill=horn, stroke=pen("outline"), tension=0.9)]
    if tooth:
        items.append(
            Group(
                (smooth(point, closed=True, fill=blend(tone, dark, 0.45), stroke=pen("outline"), tension=0.7),),
                name="tooth",
            )
        )
    items.append(smooth(bulb, closed=True, fill=fill, stroke=pen("outline", times=1.2)))
    roots = put([(rng.uniform(2, 20), rng.uniform(-5, 8)) for _ in range(16)], _AT, _TURN)
    items.append(strokes([hair(root, rng.uniform(80, 130), rng.uniform(1.6, 3.4)) for root in roots], pen("hair")))
    items.append(
        stipple(lambda u, v: put([(11.5 + u * 10, 1 + (v - 0.5) * 14)], _AT, _TURN)[0], rng, count=60, radius=0.14)
    )
    return Group(tuple(items), name="sting")


def _fade(start: Point, end: Point) -> Group:
    """Lets the joint that begins at `start` come out of the paper."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    sheet = [
        (start[0] + dx * along - dy * across, start[1] + dy * along + dx * across)
        for along, across in ((-0.26, -0.36), (-0.26, 0.36), (0.85, 0.36), (0.85, -0.36))
    ]
    last = (start[0] + dx * 0.85, start[1] + dy * 0.85)
    wash = LinearGradient(start, last, (Stop(0, "paper"), Stop(0.25, "paper", 0.9), Stop(1, "paper", 0.0)))
    return Group((polyline(sheet, closed=True, fill=wash),), name="fade")


def _key_map() -> Group:
    """A small whole scorpion with the sting picked out."""
    grey: list[Shape] = []
    for item in scorpion_parts("slender", "pale", "straight", seeded("sting-map")):
        if isinstance(item, Group) and item.name == "tail":
            parts = [(part, isinstance(part, Group) and part.name == "sting") for part in item.items]
            grey += [silhouette(part, "look" if chosen else "silk") for part, chosen in parts]
        else:
            grey.append(silhouette(item, "silk"))
    small, _ = fitted(grey, margin=0, left=64, top=62, right=92, bottom=96)
    return Group((small,), name="key-map")


def draw_sting(settings: Mapping[str, object]) -> Drawing:
    """The end of the tail. Settings: `tooth` (draw the small tooth below the sting)."""
    s = Settings(settings, "sting")
    tooth = s.flag("tooth")
    s.done()
    joints = ((14.0, 80.0), (26.0, 58.0), (56.0, 31.5))
    spot = put([_SPOT], _AT, _TURN)[0]
    return Drawing(
        (
            _joint(joints[0], joints[1], 15.5, 0),
            _fade(joints[0], joints[1]),
            _sting(tooth),
            _joint(joints[1], joints[2], 14.5, 1),
            ring(spot, 8.4),
            _key_map(),
        )
    )


RECIPES = {"sting": draw_sting}
