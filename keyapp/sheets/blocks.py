"""Blocks of a page, and how each is placed at a given spot and width."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.sheets.items import Box, Drawing, Item, Line, Mark, Role, Rule, Sign, Words
from keyapp.sheets.letters import MM_PER_POINT, Piece, Span, broken

__all__ = [
    "Block",
    "Cell",
    "Columns",
    "Gap",
    "Hair",
    "Panel",
    "Para",
    "Picture",
    "Stack",
    "Strip",
    "after_of",
    "in_strips",
    "place",
    "place_all",
]


@dataclass(frozen=True, slots=True)
class Para:
    """A paragraph of spans, with a symbol before it or none, and the gap after it in mm.

    One that `parts` may go on in the next column or on the next page; it has no symbol.
    """

    spans: tuple[Span, ...]
    role: Role = Role.TEXT
    sign: Sign | None = None
    colour: str = "ink"
    after: float = 1.0
    parts: bool = False


@dataclass(frozen=True, slots=True)
class Strip:
    """One line of a paragraph that may be parted; `of` tells which paragraph."""

    pieces: tuple[Piece, ...]
    of: int
    after: float


@dataclass(frozen=True, slots=True)
class Picture:
    """A square figure of `side` mm, with its alt text."""

    figure: str
    alt: str
    side: float
    after: float = 1.0


@dataclass(frozen=True, slots=True)
class Gap:
    """Empty space in mm."""

    high: float


@dataclass(frozen=True, slots=True)
class Hair:
    """A hairline, and the gap after it in mm."""

    after: float = 2.0


@dataclass(frozen=True, slots=True)
class Cell:
    """Blocks in a column: `width` in mm, or 0 for an even share of what is left."""

    width: float
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Columns:
    """Cells side by side, their tops level."""

    cells: tuple[Cell, ...]
    between: float = 4.0
    after: float = 1.5


@dataclass(frozen=True, slots=True)
class Panel:
    """Blocks on a tinted ground with an outline: `signal` for danger, else quiet."""

    blocks: tuple[Block, ...]
    signal: bool
    after: float = 3.0


@dataclass(frozen=True, slots=True)
class Stack:
    """Blocks below each other that stay together."""

    blocks: tuple[Block, ...]
    after: float = 0.0


Block = Para | Strip | Picture | Gap | Hair | Columns | Panel | Stack

BASE = 0.78
"""Where the base line lies in the pitch of a line, from its top."""

_PAD = 3.0


def place(block: Block, x: float, y: float, width: float) -> tuple[list[Item], float]:
    """Items of a block with its upper left corner at `x`, `y`; and where the next block starts."""
    if isinstance(block, Para):
        return _para(block, x, y, width)
    if isinstance(block, Strip):
        pitch = max(piece.style.pitch for piece in block.pieces)
        words = Words(Role.TEXT, (Line(x, y + pitch * BASE, block.pieces),))
        return [words], y + pitch + block.after
    if isinstance(block, Picture):
        return [Drawing(x, y, block.side, block.figure, block.alt)], y + block.side + block.after
    if isinstance(block, Gap):
        return [], y + block.high
    if isinstance(block, Hair):
        return [Rule(x, y, width)], y + block.after
    if isinstance(block, Columns):
        return _columns(block, x, y, width)
    if isinstance(block, Stack):
        items, end = place_all(block.blocks, x, y, width)
        return items, end + block.after
    items, bottom = place_all(block.blocks, x + _PAD, y + _PAD * 0.8, width - 2 * _PAD)
    high = bottom - after_of(block.blocks) - y + _PAD * 0.8
    fill, edge = ("signal-tint", "signal") if block.signal else ("quiet-tint", "rule")
    return [Box(x, y, width, high, fill, edge), *items], y + high + block.after


def place_all(blocks: Sequence[Block], x: float, y: float, width: float) -> tuple[list[Item], float]:
    """Items of blocks beneath each other, and where the next one starts."""
    items: list[Item] = []
    last: Block | None = None
    for block in blocks:
        placed, y = place(block, x, y, width)
        before = items[-1] if items else None
        same = isinstance(block, Strip) and isinstance(last, Strip) and block.of == last.of
        if same and isinstance(before, Words) and isinstance(placed[0], Words):
            items[-1] = Words(before.role, (*before.lines, *placed[0].lines))
        else:
            items += placed
        last = block
    return items, y


def in_strips(blocks: Sequence[Block], width: float) -> list[Block]:
    """Blocks with every paragraph that may be parted as its lines; the first and the last two keep together."""
    made: list[Block] = []
    for number, block in enumerate(blocks):
        if not isinstance(block, Para) or not block.parts:
            made.append(block)
            continue
        lines = broken(block.spans, width)
        strips = [Strip(pieces, number, block.after if pieces is lines[-1] else 0.0) for pieces in lines]
        if len(strips) < 4:
            made.append(Stack(tuple(strips)))
        else:
            made += [Stack(tuple(strips[:2])), *strips[2:-2], Stack(tuple(strips[-2:]))]
    return made


def after_of(blocks: Sequence[Block]) -> float:
    """The gap after the last block, which a panel and a page end do without."""
    return 0.0 if not blocks or isinstance(blocks[-1], Gap) else blocks[-1].after


def _para(block: Para, x: float, y: float, width: float) -> tuple[list[Item], float]:
    items: list[Item] = []
    first = block.spans[0].style
    cap = first.size * MM_PER_POINT * 0.7
    indent = 0.0
    if block.sign is not None:
        side = cap * (1.25 if block.sign is Sign.WARNING else 0.42)
        indent = cap * (1.25 if block.sign is Sign.WARNING else 0.42) + first.size * 0.16
        top = y + first.pitch * BASE - cap * 0.5 - side / 2 - (0.1 if block.sign is Sign.WARNING else -0.12)
        items.append(Mark(x, top, side, block.sign, block.colour))
    lines = []
    at = y
    for pieces in broken(block.spans, width - indent):
        pitch = max(piece.style.pitch for piece in pieces)
        lines.append(Line(x + indent, at + pitch * BASE, pieces))
        at += pitch
    return [*items, Words(block.role, tuple(lines))] if lines else items, at + block.after


def _columns(block: Columns, x: float, y: float, width: float) -> tuple[list[Item], float]:
    fixed = sum(cell.width for cell in block.cells) + block.between * (len(block.cells) - 1)
    shared = [cell for cell in block.cells if not cell.width]
    share = (width - fixed) / len(shared) if shared else 0.0
    items: list[Item] = []
    bottom = y
    for cell in block.cells:
        wide = cell.width or share
        placed, end = place_all(cell.blocks, x, y, wide)
        items += placed
        bottom = max(bottom, end - after_of(cell.blocks))
        x += wide + block.between
    return items, bottom + block.after
