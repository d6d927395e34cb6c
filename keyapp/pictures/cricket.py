"""Camel crickets seen from the side: humped, wingless, with huge hind legs and very long feelers."""

from __future__ import annotations

import itertools
import random

from keyapp.pictures.limb import Band, LimbLook, limb
from keyapp.pictures.part import ground_shadow, sampled, taper
from keyapp.pictures.shape import Circle, Ellipse, Group, Point, Shape, smooth, strokes
from keyapp.pictures.style import blend, cylinder, globe, pen

__all__ = ["camel_cricket_parts"]


def camel_cricket_parts(rng: random.Random, tone: str = "#B58A57", *, jumping: bool = True) -> list[Shape]:
    """A camel cricket from its left: high bent back, no wings, feelers longer than the body.

    With `jumping` false the hind legs are drawn as slim as the others (for comparison only).
    """
    dark = "#5A3B22"
    far_tone = blend(tone, "#5A4330", 0.35)
    items: list[Shape] = [ground_shadow((52, 85), 36, 3.0)]
    ground = 84.0

    def legs(x: float, shade: str) -> list[Shape]:
        bands = (Band(0, 0.55, 0.68, dark, 0.6), Band(1, 0.2, 0.32, dark, 0.6), Band(1, 0.62, 0.74, dark, 0.6))
        look = LimbLook((shade,), bands=bands, hairs=0.4, spines=(0, 3, 0), spine_length=1.2)
        made: list[Shape] = []
        for hip, knee, foot in (
            ((31, 66), (23.0, 68.4), (18.6, ground - 1.4)),
            ((38, 68), (34.5, 73.0), (29.6, ground - 1.2)),
        ):
            spots = [(hip[0] + x, hip[1]), (knee[0] + x, knee[1]), (foot[0] + x, foot[1]), (foot[0] - 4.4 + x, ground)]
            made.append(limb(spots, ((2.0, 2.2, 1.6), (1.4, 1.2, 0.9), (0.9, 0.7, 0.35)), look, rng))
        if jumping:
            spots = [(46 + x, 66), (65.5 + x, 38.5), (83 + x * 0.6, ground - 4.4), (91 + x * 0.6, ground)]
            thick = ((6.4, 9.4, 2.6), (1.9, 1.6, 1.3), (1.2, 1.0, 0.5))
            hind = LimbLook(
                (shade,),
                spines=(0, 15, 0),
                spine_length=1.9,
                hairs=0.25,
                outline=0.55,
                bands=(Band(0, 0.76, 0.86, dark, 0.6), Band(1, 0.1, 0.17, dark, 0.6), Band(1, 0.4, 0.48, dark, 0.6)),
            )
        else:
            spots = [(46 + x, 68), (55.5 + x, 73.0), (60.4 + x, ground - 1.2), (65 + x, ground)]
            thick = ((2.0, 2.2, 1.6), (1.4, 1.2, 0.9), (0.9, 0.7, 0.35))
            hind = look
        made.append(limb(spots, thick, hind, rng, name="leg"))
        return made

    items += legs(3.4, far_tone)
    for shift in (0.0, 1.6):
        feeler = [
            (23.6 + shift, 56.6),
            (17.5 + shift * 2, 46),
            (14.5 + shift * 3, 31),
            (20 + shift * 5, 17),
            (36 + shift * 5, 9 + shift),
            (58 + shift * 3, 8.4 + shift * 4),
            (76 + shift * 3, 14 + shift * 5),
        ]
        items.append(Group((taper(feeler, 0.95, 0.2, "#5A4026"),), name="feeler"))
    back: list[Point] = [
        (26.4, 59.2),
        (30, 52.8),
        (37, 47.4),
        (46, 46.4),
        (55, 50.2),
        (62.5, 57),
        (68.4, 65.2),
        (71.4, 71.2),
    ]
    under: list[Point] = [(70.2, 74), (63, 74.6), (52, 73.4), (42, 71.4), (33, 69), (28, 65.6)]
    items.append(taper([(69.4, 70.4), (74.8, 70), (78.6, 71.4)], 1.0, 0.25, dark))
    items.append(
        smooth(
            [(70, 72.4), (76, 73.0), (82.4, 71.2), (83, 71.8), (77, 75), (70, 75)],
            closed=True,
            fill="#6E4526",
            stroke=pen("line"),
        )
    )
    items.append(
        smooth(
            [*back, *under], closed=True, fill=cylinder((49, 46), (49.6, 74), tone, depth=0.48), stroke=pen("outline")
        )
    )
    tops = sampled(back, 8)
    lows = sampled(list(reversed(under)), 8)
    rings = []
    for k in (0.19, 0.34, 0.46, 0.56, 0.65, 0.735, 0.81, 0.88, 0.945):
        upper, lower = tops[int(k * (len(tops) - 1))], lows[int((0.16 + 0.84 * k) * (len(lows) - 1))]
        middle = ((upper[0] + lower[0]) / 2 + 1.6, (upper[1] + lower[1]) / 2)
        rings.append((upper, middle, lower))
        items.append(
            Group(
                (
                    smooth(
                        [
                            (upper[0] - 1.4, upper[1] + 0.7),
                            (upper[0] + 0.3, upper[1] + 0.9),
                            (middle[0] + 0.2, middle[1]),
                            (middle[0] - 1.4, middle[1] - 1),
                        ],
                        closed=True,
                        fill=dark,
                        opacity=0.32,
                    ),
                )
            )
        )
    items.append(strokes(rings, pen("line", opacity=0.85)))
    spots = []
    for _ in range(70):
        one, two = rng.choice(list(itertools.pairwise(tops))[4:38])
        share = rng.uniform(0.08, 0.5)
        spots.append(
            Ellipse(
                ((one[0] + two[0]) / 2 - share * 2, one[1] + share * 24 + 0.8),
                rng.uniform(0.3, 0.9),
                rng.uniform(0.2, 0.5),
                dark,
                None,
                0.35,
            )
        )
    items.append(Group(tuple(spots)))
    head: list[Point] = [(28.6, 56.6), (24.6, 55.6), (21.4, 58.4), (20.6, 63.4), (22.2, 67.8), (25.4, 68), (28.8, 65)]
    for shift in (0.0, 1.5):
        items.append(
            limb(
                [(22.8 + shift, 67), (19.4 + shift, 71), (20.6 + shift, 75.4), (17.8 + shift, 78.6)],
                ((0.9, 0.9, 0.8), (0.8, 0.7, 0.6), (0.6, 0.6, 0.5)),
                LimbLook((tone,), outline=0.35),
                rng,
                name="palp",
            )
        )
    items.append(smooth(head, closed=True, fill=globe((24.6, 60), 7, tone), stroke=pen("outline")))
    items.append(Ellipse((23.4, 59.6), 1.3, 1.8, "black", pen("fine"), turn=16))
    items.append(Circle((22.9, 58.9), 0.4, "white"))
    items.append(strokes([((22.0, 65.4), (24, 65.0), (25.6, 66.4))], pen("fine")))
    items += legs(0.0, tone)
    if jumping:
        items.append(
            strokes(
                [
                    ((49.6, 60.2), (55, 51.2), (61.2, 43.8)),
                    ((51.2, 62.4), (56.8, 54), (62.6, 45.6)),
                    ((48.8, 63.6), (52.8, 61.4)),
                    ((51.4, 59.6), (54.8, 58.4)),
                    ((54, 55.6), (57, 54.6)),
                    ((56.6, 51.6), (59.2, 50.6)),
                ],
                pen("fine", "#5A3B22", opacity=0.7),
            )
        )
    return items
