"""A limb drawn with few strokes, for pictures that must stay small: even colour, one line of shade, one of light."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from keyapp.pictures.shape import Command, Group, Path, Point, Shape, Stroke, strokes
from keyapp.pictures.style import blend

if TYPE_CHECKING:
    from keyapp.pictures.limb import LimbLook, Segment

__all__ = ["lean_limb"]


def lean_limb(pieces: Sequence[Segment], look: LimbLook, part: str) -> list[Shape]:
    """The segments of a limb, outer ones first, then one path each for shade, light and every colour of ring."""
    items: list[Shape] = []
    wide = max(max(piece.first, piece.middle, piece.last) for piece in pieces)
    ink = Stroke(blend(look.color(2), "ink", min(1.0, 0.55 + wide * 0.3)), min(look.outline, 0.1 + wide * 0.16))
    for index in range(len(pieces) - 1, -1, -1):
        items.append(Group((Path(_patch(pieces[index]), look.color(index), ink),), name=part))
    items += _rings(pieces, look)
    shade: list[tuple[Point, ...]] = []
    light: list[tuple[Point, ...]] = []
    for piece in pieces[2:] or pieces:
        side = piece.shadow_edge()
        if piece.middle > wide * 0.55:
            shade.append(tuple(piece.at(t, side * 0.62) for t in (0.04, 0.98)))
            light.append(tuple(piece.at(t, -side * 0.3) for t in (0.1, 0.9)))
    if shade and wide > 0.5:
        items.append(strokes(shade, Stroke("#1A100A", wide * 0.36, 0.34)))
        items.append(strokes(light, Stroke("white", wide * 0.26, 0.2 + look.shine * 0.5 + look.gloss * 0.4)))
    return items


def _patch(piece: Segment) -> tuple[Command, ...]:
    a, b = piece.at(0, -1), piece.at(0, 1)
    one, two = piece.at(0.5, -1), piece.at(0.5, 1)
    c, d = piece.at(1, -1), piece.at(1, 1)
    cap = piece.at(1 + piece.last * 0.7 / piece.length)
    return (
        ("M", a),
        ("Q", (*_through(a, one, c), *c)),
        ("Q", (*cap, *d)),
        ("Q", (*_through(d, two, b), *b)),
        ("Z", ()),
    )


def _through(start: Point, middle: Point, end: Point) -> Point:
    """The control point of the curve from `start` to `end` that passes through `middle`."""
    return 2 * middle[0] - (start[0] + end[0]) / 2, 2 * middle[1] - (start[1] + end[1]) / 2


def _rings(pieces: Sequence[Segment], look: LimbLook) -> list[Shape]:
    found: dict[tuple[str, float], list[Command]] = {}
    for band in look.bands:
        if band.segment >= len(pieces):
            continue
        piece = pieces[band.segment]
        start, end = max(0.03, band.start), min(0.99, band.end)
        bow = piece.half_width(end) * 0.3 / piece.length
        found.setdefault((band.color, band.opacity), []).extend(
            (
                ("M", piece.at(start, -0.95)),
                ("L", piece.at(end, -0.95)),
                ("Q", (*piece.at(end + bow * 2), *piece.at(end, 0.95))),
                ("L", piece.at(start, 0.95)),
                ("Q", (*piece.at(start + bow * 2), *piece.at(start, -0.95))),
                ("Z", ()),
            )
        )
    return [Path(tuple(commands), tone, None, opacity) for (tone, opacity), commands in found.items()]
