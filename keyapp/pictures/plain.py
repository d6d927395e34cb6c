"""A plain spider from above, for figures in which the spider is not the point or only one part of it is."""

from __future__ import annotations

import random
from dataclasses import dataclass

from keyapp.pictures.limb import LimbLook
from keyapp.pictures.part import Profile, eye, leg_pair, put
from keyapp.pictures.shape import Group, Shape, smooth, strokes
from keyapp.pictures.style import blend, globe, pen
from keyapp.pictures.texture import hairs_within, seeded, stipple

__all__ = ["PlainSpider", "spider_parts"]


@dataclass(frozen=True)
class PlainSpider:
    """How the plain spider is drawn.

    Attributes:
        tone: body colour; `legs` the colour of the legs.
        reach: length of the legs, 1 is ordinary.
        thick: thickness of the legs, 1 is ordinary.
        fangs: draw long jaws that stick out in front.
        hairs: hairs on the hind part.
        mark: draw a dark mark on the hind part.
        eyes: eight in two rows, or six in a close group.
    """

    tone: str = "#8E7355"
    legs: str = "#A1825F"
    belly: str = "#9A8266"
    reach: float = 1.0
    thick: float = 1.0
    fangs: bool = False
    hairs: int = 110
    mark: bool = True
    eyes: int = 8


_EYES = {
    8: tuple((x, 34.7) for x in (-2.2, -0.75, 0.75, 2.2)) + tuple((x, 36.3) for x in (-2.7, -0.9, 0.9, 2.7)),
    6: ((-1.5, 34.6), (1.5, 34.6), (-1.8, 35.8), (1.8, 35.8), (-0.6, 36.0), (0.6, 36.0)),
}
_FAN = (
    ((3.6, -6.2), (34, 30, 14, 2, -6), 38.0),
    ((4.8, -3.0), (64, 62, 48, 38, 30), 34.0),
    ((4.9, 1.0), (102, 96, 112, 122, 128), 29.0),
    ((3.8, 4.4), (136, 138, 152, 164, 170), 39.0),
)


def spider_parts(rng: random.Random | None = None, build: PlainSpider | None = None) -> tuple[list[Shape], list[Shape]]:
    """Legs and body (two lists, so that either can be faded) of a spider, head up, front part about (50, 42)."""
    rng = rng or seeded("plain-spider")
    b = build or PlainSpider()
    look = LimbLook((b.legs,), hairs=0.9, hair_length=1.0, spines=(0, 1, 2, 3, 2), spine_length=1.3)
    t = b.thick
    widths = tuple(
        (t * x, t * y, t * z)
        for x, y, z in ((2.5, 2.8, 2.3), (2.2, 2.3, 1.9), (1.9, 1.9, 1.5), (1.4, 1.3, 1.0), (0.9, 0.8, 0.35))
    )
    legs: list[Shape] = []
    for (out, down), turns, long in _FAN:
        parts = [long * b.reach * k for k in (0.3, 0.13, 0.23, 0.22, 0.14)]
        legs += leg_pair(rng, (50 + out, 42 + down), parts, turns, widths, look)
    body: list[Shape] = []
    pale = LimbLook((blend(b.legs, "#FFFFFF", 0.08),), hairs=0.8, hair_length=0.8)
    body += leg_pair(
        rng,
        (52.6, 34.6),
        [3.2, 2.4, 2.8],
        (24, 10, -8),
        ((1.5, 1.6, 1.4), (1.4, 1.4, 1.3), (1.3, 1.6, 1.0)),
        pale,
        name="palp",
    )
    head = Profile(((33.2, 2.6), (34.2, 3.9), (38, 5.4), (42.6, 6.9), (47, 6.4), (50, 3.8), (50.8, 1.2)))
    belly = Profile(((51.2, 1.4), (52.4, 4.4), (57, 7.8), (64, 9.4), (71, 8.4), (77, 4.8), (80.2, 1.2), (80.6, 0)))
    for side in (1, -1):
        if b.fangs:
            jaw = put(
                [(0.4, 0.8), (0.5, -4.4), (0.9, -7.2), (2.0, -8.4), (3.3, -7.6), (3.7, -4), (3.4, 0.8)],
                (50, 34.2),
                8 if side > 0 else -8,
                flip=side < 0,
            )
            fang = put(
                [(2.9, -7.4), (2.9, -10.6), (1.4, -13.6), (-0.4, -14.6), (0.8, -12.6), (1.3, -10.2), (1.4, -7.8)],
                (50, 34.2),
                8 if side > 0 else -8,
                flip=side < 0,
            )
            body.append(
                Group(
                    (
                        smooth(fang, closed=True, fill="#3A1810", stroke=pen("line")),
                        smooth(jaw, closed=True, fill=globe((50 + side * 2, 30), 5, "#9A3F20"), stroke=pen("outline")),
                    ),
                    name="jaw",
                )
            )
        else:
            jaw = put([(0.2, 0.8), (0.2, -1.8), (0.9, -2.5), (2.2, -1.9), (2.6, 0.8)], (50, 33.6), flip=side < 0)
            body.append(Group((smooth(jaw, closed=True, fill=b.tone, stroke=pen("line")),), name="jaw"))
    body.append(
        Group(
            (
                belly.outline(globe((50, 65), 16, b.belly), pen("outline")),
                smooth(
                    [
                        belly.at(u, v)
                        for u, v in ((-0.16, 0.06), (0.16, 0.06), (0.22, 0.3), (0.08, 0.5), (-0.08, 0.5), (-0.22, 0.3))
                    ],
                    closed=True,
                    fill=blend(b.belly, "#2A1A10", 0.5),
                    opacity=0.5 if b.mark else 0.0,
                ),
                hairs_within(belly.at, rng, count=b.hairs, length=1.5, stroke=pen("hair", opacity=0.8)),
                stipple(belly.at, rng, count=160, radius=0.13),
                *(
                    smooth(
                        [(50 + k * 0.9 - 0.5, 79.6), (50 + k * 0.9, 82.2), (50 + k * 0.9 + 0.5, 79.6)],
                        closed=True,
                        fill=b.tone,
                        stroke=pen("fine"),
                    )
                    for k in (-1, 1)
                ),
            ),
            name="hind-part",
        )
    )
    body.append(
        Group(
            (
                head.outline(globe((50, 42), 11, b.tone), pen("outline")),
                strokes(
                    [
                        ((50, 43.4), (50, 46.4)),
                        *(((50 + k * 1.2, 44), (50 + k * 3.2, 42.6), (50 + k * 5.4, 42.4)) for k in (-1, 1)),
                        *(((50 + k * 1.2, 45.6), (50 + k * 3.2, 46.6), (50 + k * 4.6, 48)) for k in (-1, 1)),
                        *(((50 + k * 0.9, 42.6), (50 + k * 2.6, 39), (50 + k * 4.2, 37)) for k in (-1, 1)),
                    ],
                    pen("fine", opacity=0.6),
                ),
                stipple(head.at, rng, count=90, radius=0.12),
                *(eye((50 + x, y), 0.42 if b.eyes == 8 else 0.52) for x, y in _EYES[b.eyes]),
            ),
            name="front-part",
        )
    )
    return legs, body
