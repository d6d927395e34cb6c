"""How the kinds of ticks differ, as data: outline, shield, colours, mouthparts, rear rim and eyes."""

from __future__ import annotations

from dataclasses import dataclass

from keyapp.pictures.part import Profile

__all__ = ["KINDS", "SILVER", "TickKind"]

SILVER = "#E4DCC8"
"""Colour of the pale marks of dog ticks."""


@dataclass(frozen=True)
class TickKind:
    """What sets one kind of tick apart.

    Attributes:
        body: its outline from above without the mouthparts; the front end lies at y 30.
        tone: colour of the soft back behind the shield.
        shield: outline of the hard shield; None where there is none.
        shield_tone: its colour.
        legs: colour of the legs.
        joints: colour of the pale rings at the leg joints, empty where there are none.
        base: shape of the base of the mouthparts, `rectangle`, `hexagon`, `triangle`, or `hidden`.
        reach: length of the palps.
        broad: width of one palp.
        festoons: whether the rear rim is notched into eleven lobes.
        eyes: whether eyes stand at the edges of the shield.
        mm: length of the unfed body.
    """

    body: Profile
    tone: str
    shield: Profile | None
    shield_tone: str
    legs: str
    joints: str = ""
    base: str = "rectangle"
    reach: float = 6.0
    broad: float = 2.4
    festoons: bool = True
    eyes: bool = True
    mm: float = 4.0


_IXODES = Profile(
    (
        (30, 3.6),
        (31, 6.6),
        (35, 11.2),
        (43, 15.6),
        (52, 17.6),
        (60, 17.2),
        (67, 13.6),
        (71.5, 8),
        (73.6, 2.6),
        (73.9, 0),
    )
)
_IXODES_MALE = Profile(
    (
        (30, 3.6),
        (31, 6.4),
        (35, 10.4),
        (43, 14.2),
        (52, 16),
        (60, 15.8),
        (67, 12.6),
        (71.5, 7.6),
        (73.6, 2.6),
        (73.9, 0),
    )
)
_LONE_STAR = Profile(
    ((30, 4.6), (31.4, 8.6), (36, 13.8), (43, 18), (51, 20.2), (59, 20), (66, 16.6), (71, 10.4), (73.4, 4), (73.8, 0))
)
_DOG = Profile(
    ((30, 5), (31, 8.8), (35.6, 12.8), (43, 15.8), (52, 17.8), (60, 17.8), (67, 15), (71.6, 9.4), (73.8, 3.6), (74, 0))
)
_BROWN_DOG = Profile(
    ((30, 4.4), (31, 7), (36, 9.8), (44, 11.8), (53, 13), (62, 13), (69, 11), (74, 7), (76.4, 2.8), (76.6, 0))
)
_NYMPH = Profile(
    (
        (31, 3.4),
        (32, 6.4),
        (36, 11),
        (43, 14.8),
        (51, 16.2),
        (59, 15.2),
        (65.6, 11.2),
        (69.8, 6),
        (71.4, 1.8),
        (71.6, 0),
    )
)
_SOFT = Profile(
    (
        (24.6, 0),
        (25, 2.6),
        (28, 6.8),
        (33, 10.6),
        (41, 14.2),
        (50, 16.6),
        (60, 17.4),
        (68, 15.6),
        (73.6, 10.6),
        (76.4, 4),
        (76.8, 0),
    )
)

KINDS = {
    "blacklegged": TickKind(
        _IXODES,
        "#B8562C",
        Profile(((30.2, 4.2), (31.4, 6.6), (36, 9.8), (42, 10.8), (47.4, 9.2), (51.4, 5.4), (53, 2), (53.2, 0))),
        "#33211B",
        "#3B241B",
        base="triangle",
        reach=10.6,
        broad=1.9,
        festoons=False,
        eyes=False,
        mm=3.0,
    ),
    "blacklegged-male": TickKind(
        _IXODES_MALE,
        "#A98763",
        Profile(
            (
                (30.2, 3.8),
                (31.4, 6),
                (35, 9.6),
                (43, 13),
                (52, 14.6),
                (60, 14.2),
                (66.4, 11),
                (70, 6.4),
                (71.6, 2),
                (71.8, 0),
            )
        ),
        "#4A2C20",
        "#3B241B",
        base="triangle",
        reach=6.4,
        broad=2.2,
        festoons=False,
        eyes=False,
        mm=2.3,
    ),
    "lone-star": TickKind(
        _LONE_STAR,
        "#A65A32",
        Profile(((30.2, 5.2), (31.4, 8.4), (35.4, 11.8), (40, 12.4), (45, 9.8), (50, 6), (53.6, 2.6), (54.4, 0))),
        "#83401F",
        "#8A4826",
        joints="#D9B78A",
        base="triangle",
        reach=11.2,
        broad=2.1,
        mm=4.0,
    ),
    "lone-star-male": TickKind(
        _LONE_STAR,
        "#8A4826",
        Profile(
            (
                (30.2, 4.6),
                (31.4, 8),
                (36, 12.8),
                (43, 17),
                (51, 19.2),
                (59, 19),
                (65.6, 15.8),
                (70.4, 10),
                (72.8, 4),
                (73.2, 0),
            )
        ),
        "#8C4A28",
        "#8A4826",
        base="triangle",
        reach=10.4,
        broad=2.0,
        mm=3.3,
    ),
    "dog": TickKind(
        _DOG,
        "#7A4126",
        Profile(((30.2, 5.4), (31.4, 8.4), (36, 11.4), (42, 12.2), (47.4, 10.2), (51.6, 6), (53.2, 1.8), (53.4, 0))),
        SILVER,
        "#6E3F28",
        base="rectangle",
        reach=5.6,
        broad=3.0,
        mm=4.6,
    ),
    "dog-male": TickKind(
        _DOG,
        "#6E3F28",
        Profile(
            (
                (30.2, 5),
                (31.4, 8.2),
                (35.6, 12),
                (43, 15),
                (52, 17),
                (60, 17),
                (66.8, 14.2),
                (71, 9),
                (73.2, 3.4),
                (73.4, 0),
            )
        ),
        "#6B3E29",
        "#6E3F28",
        base="rectangle",
        reach=5.4,
        broad=2.9,
        mm=3.8,
    ),
    "brown-dog": TickKind(
        _BROWN_DOG,
        "#9A5631",
        Profile(((30.2, 4.8), (31.4, 6.8), (36, 8.6), (42, 9), (48, 7.4), (52, 4.4), (54, 1.4), (54.2, 0))),
        "#8E4C2B",
        "#8E4C2B",
        base="hexagon",
        reach=4.8,
        broad=2.6,
        mm=3.2,
    ),
    "plain": TickKind(
        _DOG,
        "#8C5535",
        Profile(((30.2, 5.4), (31.4, 8.2), (36, 10.8), (42, 11.4), (47.4, 9.6), (51.6, 5.6), (53.2, 1.8), (53.4, 0))),
        "#85502F",
        "#7E4B2E",
        base="rectangle",
        reach=6.6,
        broad=2.4,
        mm=3.5,
    ),
    "nymph": TickKind(
        _NYMPH,
        "#C8A67C",
        Profile(((31.2, 4), (32.4, 6.6), (36.6, 9.8), (42, 10.8), (47, 9.2), (50.6, 5.4), (52.2, 1.8), (52.4, 0))),
        "#5B3A28",
        "#8B6546",
        base="triangle",
        reach=8.4,
        broad=1.9,
        festoons=False,
        eyes=False,
        mm=1.4,
    ),
    "soft": TickKind(_SOFT, "#97877A", None, "", "#8D7560", base="hidden", festoons=False, eyes=False, mm=6.0),
}
"""Every kind of tick that can be drawn, by name; those called `-male` are grown males."""
