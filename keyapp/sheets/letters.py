"""How wide letters are, and where lines break."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

from fontTools.ttLib import TTFont

from keyapp.sheets.style import Face, Style

__all__ = ["FONT_FILES", "Piece", "Span", "broken", "printable", "width_of"]

_HERE = Path(__file__).resolve().parent
FONT_FILES = {
    Face.TEXT: _HERE / "fonts" / "KeyappSans-Regular.ttf",
    Face.STRONG: _HERE / "fonts" / "KeyappSans-SemiBold.ttf",
    Face.HEADING: _HERE.parent / "gui" / "fonts" / "Vollkorn-SemiBold.ttf",
}
"""The typefaces; the heading face is the one the window shows."""

MM_PER_POINT = 25.4 / 72
_INSTEAD = {"→": "–", "≥": "at least ", "\u00ad": "", "\u2011": "-", "\u202f": " ", "\u00a0": " "}


@dataclass(frozen=True, slots=True)
class Span:
    """Text in one style."""

    text: str
    style: Style


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a line: where it starts from the left edge of the line in mm, and what it says."""

    at: float
    text: str
    style: Style


@cache
def _widths(face: Face) -> dict[int, float]:
    """Code point to width in em."""
    with TTFont(FONT_FILES[face], lazy=True) as font:
        table, metrics, em = font.getBestCmap(), font["hmtx"].metrics, font["head"].unitsPerEm
        return {code: metrics[name][0] / em for code, name in table.items()}


@lru_cache(maxsize=2048)
def printable(text: str) -> str:
    """`text` as far as every face can print it: line ends become spaces, what no face holds a question mark."""
    for sign, instead in _INSTEAD.items():
        text = text.replace(sign, instead)
    plain = " ".join(text.split())
    return "".join(sign if all(ord(sign) in _widths(face) for face in Face) else "?" for sign in plain)


def width_of(text: str, style: Style) -> float:
    """Width of printable text in mm."""
    table = _widths(style.face)
    return sum(table[ord(sign)] for sign in text) * style.size * MM_PER_POINT


@lru_cache(maxsize=2048)
def broken(spans: tuple[Span, ...], width: float) -> tuple[tuple[Piece, ...], ...]:
    """Spans as lines no wider than `width` mm; a word that is wider by itself is broken where it has to be."""
    lines: list[list[Piece]] = [[]]
    at = 0.0
    for word, style in _words(spans, width):
        wide = width_of(word, style)
        if lines[-1] and at + width_of(word.rstrip(), style) > width + 1e-6:
            lines.append([])
            at = 0.0
        line = lines[-1]
        if line and line[-1].style == style:
            line[-1] = Piece(line[-1].at, line[-1].text + word, style)
        else:
            line.append(Piece(at, word, style))
        at += wide
    return tuple((*line[:-1], Piece(line[-1].at, line[-1].text.rstrip(), line[-1].style)) for line in lines if line)


def _words(spans: Sequence[Span], width: float) -> Iterator[tuple[str, Style]]:
    """Words with the space after them, where there is one."""
    for span in spans:
        plain = printable(span.text)
        edge = " " if span.text[-1:].isspace() else ""
        if span.text[:1].isspace():
            plain = f" {plain}"
        for word in re.findall(r" *[^ ]+ ?", plain + edge):
            parts = list(_parts(word.rstrip(), span.style, width))
            yield from ((part, span.style) for part in parts[:-1])
            yield parts[-1] + (" " if word.endswith(" ") else ""), span.style


def _parts(word: str, style: Style, width: float) -> Iterator[str]:
    part = ""
    for sign in word:
        if part and width_of(part + sign, style) > width:
            yield part
            part = ""
        part += sign
    yield part
