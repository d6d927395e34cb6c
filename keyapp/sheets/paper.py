"""Sheets of paper and the space on them, in millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["Frame", "Paper", "frame_of"]


class Paper(StrEnum):
    """A size of paper."""

    LETTER = "letter"
    A4 = "a4"

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm (US Letter is 8.5 x 11 inches; A4 is ISO 216)."""
        return (210.0, 297.0) if self is Paper.A4 else (215.9, 279.4)


@dataclass(frozen=True, slots=True)
class Frame:
    """What may be printed on, in mm from the upper left corner of the page.

    Attributes:
        width, height: the page.
        left, right, top, bottom: the edges of the text; the foot lies below `bottom`.
        foot: the base line of the foot.
    """

    width: float
    height: float
    left: float
    right: float
    top: float
    bottom: float
    foot: float


def frame_of(paper: Paper) -> Frame:
    """The frame of a paper: margins of 14 mm at the sides, 12.5 above, and 12 below the foot.

    Most printers leave about 6 mm blank; a hole punch takes 12.
    """
    width, height = paper.size
    return Frame(width, height, 14.0, width - 14.0, 12.5, height - 18.3, height - 12.8)
