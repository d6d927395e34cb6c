"""The marks of a plot as SVG elements: words, lines, bars, point marks. Sizes in pixels, tones by role name."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from keyapp.pictures.style import color

__all__ = ["MARKS", "area", "bar", "document", "line", "mark", "text"]

MARKS = ("circle", "square", "triangle", "diamond")
"""Shapes of point marks; they tell series apart without colour."""

SIZE = 4.5
"""Half the width of a point mark."""


def document(title: str, width: float, height: float, parts: Sequence[str]) -> str:
    """A whole SVG file of `parts` on paper; `title` is what a screen reader says."""
    return "\n".join(
        [
            f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {width:g} {height:g}' "
            f"width='{width:g}' height='{height:g}'>",
            f"<title>{escape(title)}</title>",
            f"<rect width='{width:g}' height='{height:g}' fill='{color('paper')}'/>",
            *parts,
            "</svg>",
            "",
        ]
    )


def text(
    x: float,
    y: float,
    words: str,
    *,
    anchor: str = "start",
    strong: bool = False,
    size: int = 13,
    tone: str = "ink",
    upward: bool = False,
) -> str:
    """Words that start, are centred (`middle`) or end (`end`) at a point of their baseline; `upward` turns them."""
    weight = " font-weight='bold'" if strong else ""
    turn = f" transform='rotate(-90 {x:.1f} {y:.1f})'" if upward else ""
    return (
        f"<text x='{x:.1f}' y='{y:.1f}' text-anchor='{anchor}' fill='{color(tone)}' "
        f"font-family='sans-serif' font-size='{size}'{weight}{turn}>{escape(words)}</text>"
    )


def line(points: Sequence[tuple[float, float]], tone: str, dash: str = "", width: float = 2.0) -> str:
    """A line through points, dashed where `dash` gives lengths on and off."""
    path = "M" + " L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    dashes = f" stroke-dasharray='{dash}'" if dash else ""
    return f"<path d='{path}' fill='none' stroke='{color(tone)}' stroke-width='{width}'{dashes}/>"


def bar(x: float, y: float, width: float, height: float, tone: str) -> str:
    """A filled rectangle from its upper left corner."""
    return f"<rect x='{x:g}' y='{y:.1f}' width='{width:.1f}' height='{height:g}' fill='{color(tone)}'/>"


def area(points: Sequence[tuple[float, float]], tone: str) -> str:
    """A filled shape with its corners at points."""
    path = "M" + " L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return f"<path d='{path} Z' fill='{color(tone)}'/>"


def mark(kind: str, x: float, y: float, tone: str, *, filled: bool = True) -> str:
    """A point mark of one of `MARKS`, filled or only outlined."""
    r = SIZE
    fill = color(tone if filled else "paper")
    pen = f"fill='{fill}' stroke='{color(tone)}' stroke-width='1.6'"
    if kind == "circle":
        return f"<circle cx='{x:.1f}' cy='{y:.1f}' r='{r:g}' {pen}/>"
    corners = {
        "square": [(-0.9, -0.9), (0.9, -0.9), (0.9, 0.9), (-0.9, 0.9)],
        "triangle": [(0.0, -1.1), (1.05, 0.8), (-1.05, 0.8)],
        "diamond": [(0.0, -1.25), (1.25, 0.0), (0.0, 1.25), (-1.25, 0.0)],
    }[kind]
    path = "M" + " L".join(f"{x + r * across:.1f} {y + r * down:.1f}" for across, down in corners) + " Z"
    return f"<path d='{path}' {pen}/>"
