"""What is put on a page, as plain data in millimetres from its upper left corner."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from keyapp.sheets.letters import MM_PER_POINT, Piece, width_of

__all__ = ["Bounds", "Box", "Drawing", "Item", "Line", "Mark", "Page", "Role", "Rule", "Sign", "Words"]

Bounds = tuple[float, float, float, float]
"""Left, top, right, bottom."""


class Role(StrEnum):
    """What a text is, for those who have the page read to them (the standard structure types of PDF)."""

    TITLE = "H1"
    HEAD = "H2"
    TEXT = "P"
    FOOT = "Artifact"


class Sign(StrEnum):
    """A small symbol; it never stands without a word beside it."""

    WARNING = "warning"
    DOT = "dot"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of text: left edge, base line, and its pieces."""

    x: float
    base: float
    pieces: tuple[Piece, ...]

    @property
    def text(self) -> str:
        return "".join(piece.text for piece in self.pieces)

    @property
    def bounds(self) -> Bounds:
        """The room its letters take, from the tops of tall letters to the ends of hanging ones."""
        last = self.pieces[-1]
        size = max(piece.style.size for piece in self.pieces) * MM_PER_POINT
        right = self.x + last.at + width_of(last.text, last.style)
        return (self.x, self.base - 0.72 * size, right, self.base + 0.22 * size)


@dataclass(frozen=True, slots=True)
class Words:
    """A paragraph: its lines, read out as one."""

    role: Role
    lines: tuple[Line, ...]

    @property
    def text(self) -> str:
        return " ".join(line.text.strip() for line in self.lines)

    @property
    def bounds(self) -> Bounds:
        every = [line.bounds for line in self.lines]
        return (min(b[0] for b in every), every[0][1], max(b[2] for b in every), every[-1][3])


@dataclass(frozen=True, slots=True)
class Box:
    """A filled panel; `edge` is the role of the colour of its outline, `fill` of its ground."""

    x: float
    y: float
    width: float
    height: float
    fill: str
    edge: str

    @property
    def bounds(self) -> Bounds:
        return (self.x, self.y, self.x + self.width, self.y + self.height)


@dataclass(frozen=True, slots=True)
class Rule:
    """A level hairline."""

    x: float
    y: float
    width: float
    colour: str = "rule"
    weight: float = 0.2

    @property
    def bounds(self) -> Bounds:
        return (self.x, self.y, self.x + self.width, self.y)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A square figure by id, with what it shows in words."""

    x: float
    y: float
    side: float
    figure: str
    alt: str

    @property
    def bounds(self) -> Bounds:
        return (self.x, self.y, self.x + self.side, self.y + self.side)


@dataclass(frozen=True, slots=True)
class Mark:
    """A small symbol in a square."""

    x: float
    y: float
    side: float
    sign: Sign
    colour: str

    @property
    def bounds(self) -> Bounds:
        return (self.x, self.y, self.x + self.side, self.y + self.side)


Item = Words | Box | Rule | Drawing | Mark
Page = tuple[Item, ...]
"""What is on one page, in the order it is read."""
