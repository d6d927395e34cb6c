"""Brushes of hair on chosen segments of a spider's legs."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.pictures.limb import Segment, tuft
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Shape

__all__ = ["Brush", "brush_from", "brush_shapes"]


@dataclass(frozen=True, slots=True)
class Brush:
    """Hair standing all round parts of some legs.

    Attributes:
        pairs: leg pairs that have it, 1 to 4.
        segments: segments that have it, 0 coxa to 6 tarsus.
        start, end: from where to where along each segment, 0-1.
        length: as a part of the leg's width.
        color: colour of the hair.
        count: hairs on each segment.
    """

    pairs: tuple[int, ...]
    segments: tuple[int, ...]
    start: float
    end: float
    length: float
    color: str
    count: int


def brush_from(row: Settings) -> Brush | None:
    """The brush of the settings `brush`; None where no leg pair is named."""
    found = Brush(
        tuple(int(n) for n in row.numbers("pairs", ())),
        tuple(int(n) for n in row.numbers("segments", (4,))),
        row.number("from", 0.4, least=0, most=1),
        row.number("to", 1.0, least=0, most=1),
        row.number("length", 1.0, least=0, most=4),
        row.color("color", "#2A1C14"),
        row.whole("count", 40, most=80),
    )
    row.done()
    return found if found.pairs else None


def brush_shapes(brush: Brush, pair: int, pieces: Sequence[Segment], width: float, rng: random.Random) -> list[Shape]:
    """The brush as it shows on one leg; `pieces` are the leg's segments, `pair` counts from 1."""
    if pair not in brush.pairs:
        return []
    return [
        tuft(pieces[index], brush.start, brush.end, rng, length=brush.length * width, tone=brush.color,
             count=brush.count)
        for index in brush.segments
        if index < len(pieces)
    ]  # fmt: skip
