"""Role names for colours, spacing and type; nothing else in the window names a colour or a pixel.

Lengths and sizes of type can be enlarged together (`enlarge`); everything that draws reads them when it
draws, so a redraw is enough.
"""

from __future__ import annotations

from typing import NamedTuple

__all__ = [
    "BIG_DARK",
    "BIG_LIGHT",
    "CONTROL_PAIRS",
    "DARK",
    "LIGHT",
    "SPACE",
    "TEXT_PAIRS",
    "TYPE",
    "Colours",
    "Space",
    "Type",
    "contrast",
    "enlarge",
]


class Colours(NamedTuple):
    """Colours by role, as #rrggbb.

    Attributes:
        desk: the window behind everything; the rail and the bars lie on it.
        sheet: cards and panels; the same paper as the figures in the light theme.
        hover: a control under the pointer.
        tint: what is chosen.
        rule: hairlines that only divide; never the sole edge of a control.
        edge: edges of controls.
        ink, soft: text, and text of lesser weight.
        accent: the one accent: what is chosen, the way on, the focus.
        on_accent: text on the accent.
        signal: danger alone, always with a word and a symbol.
        signal_tint: ground of a danger panel.
        on_signal: text on the signal colour.
        plate: paper behind a figure, also in the dark.
        plate_ink: text on the plate.
    """

    desk: str
    sheet: str
    hover: str
    tint: str
    rule: str
    edge: str
    ink: str
    soft: str
    accent: str
    on_accent: str
    signal: str
    signal_tint: str
    on_signal: str
    plate: str
    plate_ink: str


LIGHT = Colours(
    desk="#F1EADC",
    sheet="#FBF7EF",
    hover="#EFE6D6",
    tint="#E2EEEE",
    rule="#DDD2BF",
    edge="#85776A",
    ink="#2A211B",
    soft="#5F5347",
    accent="#0B6573",
    on_accent="#FFFFFF",
    signal="#9E2B1B",
    signal_tint="#FBE7E1",
    on_signal="#FFFFFF",
    plate="#FBF7EF",
    plate_ink="#2A211B",
)
"""Warm paper and ink."""

DARK = Colours(
    desk="#1B1815",
    sheet="#26221E",
    hover="#332E28",
    tint="#1E3A3F",
    rule="#3B352F",
    edge="#948878",
    ink="#F0E8DB",
    soft="#BFB3A3",
    accent="#7FC6D0",
    on_accent="#10292D",
    signal="#FF9D87",
    signal_tint="#43211B",
    on_signal="#2B100B",
    plate="#FBF7EF",
    plate_ink="#2A211B",
)
"""The same paper by lamplight; figures stay on their own light plate."""

BIG_LIGHT = LIGHT._replace(
    desk="#FFFFFF",
    sheet="#FFFFFF",
    hover="#F0F0F0",
    rule="#8A8A8A",
    edge="#3A3A3A",
    ink="#000000",
    soft="#262626",
    accent="#00414C",
    signal="#7A1408",
    plate="#FFFFFF",
    plate_ink="#000000",
)
"""For a projector in a light room: every text at least 7:1 (WCAG 2.2, success criterion 1.4.6)."""

BIG_DARK = DARK._replace(
    desk="#000000",
    sheet="#0C0C0C",
    hover="#262626",
    rule="#6A6A6A",
    edge="#C9C9C9",
    ink="#FFFFFF",
    soft="#E6E6E6",
    accent="#9FE3EC",
    signal="#FFB3A2",
    signal_tint="#3A140E",
    tint="#123036",
)
"""For a projector in a dark room."""

TEXT_PAIRS = (
    *((text, ground) for text in ("ink", "soft") for ground in ("desk", "sheet", "hover", "tint", "signal_tint")),
    *(("accent", ground) for ground in ("desk", "sheet", "hover", "tint", "signal_tint")),
    *(("signal", ground) for ground in ("desk", "sheet", "signal_tint", "hover")),
    ("on_accent", "accent"),
    ("on_signal", "signal"),
    ("plate_ink", "plate"),
)
"""Every pair of text and ground in use; each must reach 4.5:1."""

CONTROL_PAIRS = (
    *(("edge", ground) for ground in ("desk", "sheet", "hover", "tint", "signal_tint")),
    *(("accent", ground) for ground in ("desk", "sheet", "hover", "tint", "signal_tint")),
    *(("signal", ground) for ground in ("desk", "sheet", "signal_tint")),
    ("ink", "desk"),
    ("ink", "sheet"),
)
"""Every pair of a control, symbol or focus ring and what lies beside it; each must reach 3:1.

A filled button that has the focus is drawn as paper with a ring in the accent.
"""


class Space:
    """Lengths in device-independent pixels, as they are in force.

    Attributes:
        hair, line, ring: widths of hairlines, of edges of controls, of the focus ring.
        tiny ... huge: gaps, in steps.
        corner: radius of a card.
        target: least height of a control (24 is the floor of WCAG 2.5.8).
        icon, icon_large: sides of symbols.
        rail, column, measure: widths of the rail, of the reading column, of a paragraph.
        thumb, portrait, figure: sides of a small, middling and large figure.
        bar: height of a bar of the standing.
    """

    hair: int = 1
    line: int = 2
    ring: int = 3
    tiny: int = 4
    small: int = 8
    medium: int = 12
    large: int = 16
    wide: int = 24
    huge: int = 36
    corner: int = 8
    target: int = 36
    icon: int = 18
    icon_large: int = 28
    rail: int = 124
    column: int = 900
    measure: int = 680
    thumb: int = 88
    portrait: int = 168
    figure: int = 280
    list_width: int = 280
    label_width: int = 190
    bar: int = 12
    window_width: int = 1180
    window_height: int = 860
    least_width: int = 640
    least_height: int = 420


class Type:
    """Type: families as bundled, sizes in device-independent pixels, as they are in force."""

    heading: str = "Vollkorn"
    text: str = "Cabin"
    small: int = 14
    body: int = 16
    lead: int = 18
    head: int = 20
    title: int = 26
    call: int = 30


SPACE = Space()
TYPE = Type()

_GROW = {
    "target": 1.0,
    "icon": 1.0,
    "icon_large": 0.6,
    "rail": 0.7,
    "column": 0.6,
    "measure": 1.0,
    "label_width": 0.4,
    "list_width": 0.6,
    "portrait": 0.5,
    "figure": 0.8,
    "bar": 1.0,
}
"""Lengths that grow with the text, and by what part of its growth."""

_SIZES = ("small", "body", "lead", "head", "title", "call")


def enlarge(zoom: float) -> None:
    """Put lengths and type in force for text `zoom` times as large as it is drawn by itself (1 to 2).

    What is in view follows when it is drawn anew. For `Look` alone.
    """
    for name in _SIZES:
        setattr(TYPE, name, round(getattr(Type, name) * zoom))
    for name, part in _GROW.items():
        setattr(SPACE, name, round(getattr(Space, name) * (1 + (zoom - 1) * part)))


def contrast(one: str, other: str) -> float:
    """Contrast of two #rrggbb colours, 1 to 21.

    (Llight + 0.05) / (Ldark + 0.05) with the relative luminance of WCAG 2.2
    (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance).

    >>> round(contrast("#000000", "#FFFFFF"), 1)
    21.0
    """
    dark, light = sorted((_luminance(one), _luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
