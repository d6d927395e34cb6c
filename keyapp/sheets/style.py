"""Colours and type of the papers; nothing else here names a colour or a size of letters."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from keyapp.pictures.style import color

__all__ = ["COLOURS", "TEXT_SIZES", "Face", "Style", "Type", "type_at"]


class Face(StrEnum):
    """A typeface that is embedded."""

    TEXT = "text"
    STRONG = "strong"
    HEADING = "heading"


COLOURS = {
    "ink": color("ink"),
    "soft": "#5F5347",
    "rule": "#B8AC99",
    "accent": "#0B6573",
    "signal": "#9E2B1B",
    "signal-tint": "#FCF0EC",
    "quiet-tint": "#F7F2E8",
}
"""Role name to #rrggbb: those of the window, with a darker hairline, since pale ones vanish on paper."""


@dataclass(frozen=True, slots=True)
class Style:
    """How letters look: face, size in points, line pitch in mm, and role of the colour."""

    face: Face
    size: float
    pitch: float
    colour: str = "ink"


@dataclass(frozen=True, slots=True)
class Type:
    """The styles of a paper, and `gap`, the small distance in mm that others are made of."""

    title: Style
    head: Style
    lead: Style
    body: Style
    strong: Style
    soft: Style
    small: Style
    small_strong: Style
    kicker: Style
    call: Style
    gap: float


SMALLEST = 9.0
"""No letters on paper are smaller, in points."""

TEXT_SIZES = (10.5, 10.0, 9.5, 9.0)
"""Sizes of the running text in points, roomy first."""


def type_at(size: float, *, tight: bool = False) -> Type:
    """The styles that go with running text of `size` points; `tight` sets the lines closer.

    The pitch of lines is 1.29 times the size, or 1.16 where they are tight.
    """
    per_point = 0.41 if tight else 0.455
    pitch = size * per_point
    small = max(SMALLEST, size - 1.0)
    return Type(
        title=Style(Face.HEADING, size + 9.5, (size + 9.5) * 0.4),
        head=Style(Face.HEADING, size + 1.5, pitch, "accent"),
        lead=Style(Face.STRONG, size + 1.5, pitch * 1.12),
        body=Style(Face.TEXT, size, pitch),
        strong=Style(Face.STRONG, size, pitch),
        soft=Style(Face.TEXT, size, pitch, "soft"),
        small=Style(Face.TEXT, small, small * per_point, "soft"),
        small_strong=Style(Face.STRONG, small, small * per_point),
        kicker=Style(Face.STRONG, small, small * per_point, "soft"),
        call=Style(Face.STRONG, size + 1.0, pitch * 1.1, "signal"),
        gap=1.2 if tight else 1.6,
    )
