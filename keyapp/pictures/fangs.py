"""The fangs at the ends of a spider's jaws, seen from above."""

from __future__ import annotations

import math

from keyapp.pictures.body import Body
from keyapp.pictures.shape import Path, Point, Shape, smooth
from keyapp.pictures.style import pen
from keyapp.pictures.texture import wedge

__all__ = ["folded_fang", "open_fang"]


def folded_fang(jaw: Body, side: int) -> list[Shape]:
    """A fang closed along the inner edge of a long jaw, and the jaw's teeth; `side` is the inner side, 1 or -1."""
    way = [(0.3, 0.02), (1.0, 0.02), (1.75, 0.09), (1.7, 0.3), (1.2, 0.62), (1.42, 0.3), (1.35, 0.16), (0.8, 0.12)]
    teeth = [wedge(jaw.at(side * 0.8, v), jaw.turn - side * 75, jaw.width * 0.5, jaw.width * 0.22, "#4A2A18")
             for v in (0.2, 0.34, 0.5)]  # fmt: skip
    fang = smooth([jaw.place(side * u * jaw.width / 2, v * jaw.length) for u, v in way], closed=True,
                  fill="#4A1A12", stroke=pen("fine"), tension=0.8)  # fmt: skip
    return [*teeth, fang]


def open_fang(tip: Point, turn: float, side: int, length: float, width: float) -> Path:
    """A fang that runs forwards from the jaw's tip and curves inwards, so that the two cross."""
    a = math.radians(turn)
    forward, across = (math.sin(a), -math.cos(a)), (-math.cos(a) * side, -math.sin(a) * side)

    def spot(f: float, s: float) -> Point:
        return tip[0] + forward[0] * f + across[0] * s, tip[1] + forward[1] * f + across[1] * s

    outer = [spot(-width, -width * 1.6), spot(length * 0.45, -width * 1.7), spot(length * 0.8, -width * 0.3)]
    inner = [
        spot(length, width * 2.4),
        spot(length * 0.7, width * 0.5),
        spot(length * 0.4, -width * 0.5),
        spot(-width, 0),
    ]
    return smooth([*outer, *inner], closed=True, fill="#4A1A12", stroke=pen("fine"), tension=0.8)
