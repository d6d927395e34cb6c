"""Sections set one below the other onto pages."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.sheets.blocks import Block, Para, after_of, in_strips, place, place_all
from keyapp.sheets.items import Item, Page, Rule
from keyapp.sheets.paper import Frame

__all__ = ["HEAD_WIDTH", "Section", "flowed"]

HEAD_WIDTH = 38.0
BETWEEN = 5.0
ABOVE = 2.2
LEAST = 24.0
"""Columns are not begun where less than this is left of the page, in mm."""


@dataclass(frozen=True, slots=True)
class Section:
    """Blocks under a head, or without one.

    With one column the head hangs in the left margin, beside the first block. With two, the head stands
    above them and the columns take the whole width and are made equally long. A hairline stands above a
    head. `after` is the gap below in mm.
    """

    head: Para | None
    blocks: tuple[Block, ...]
    after: float = 3.0
    columns: int = 1


def flowed(sections: Sequence[Section], frame: Frame) -> tuple[Page, ...]:
    """Pages with all sections on them, as many as it takes; a block is never split between two.

    A block higher than a page runs over its foot: look at the bounds before printing.
    """
    flow = _Flow(frame)
    for section in sections:
        flow.add(section)
    return tuple(tuple(page) for page in flow.pages)


class _Flow:
    def __init__(self, frame: Frame) -> None:
        self.frame = frame
        self.pages: list[list[Item]] = [[]]
        self.y = frame.top

    def add(self, section: Section) -> None:
        if section.columns == 1:
            self._add_hanging(section)
        else:
            self._add_columns(section)
        self.y += section.after

    def _turn(self) -> None:
        self.pages.append([])
        self.y = self.frame.top

    # One column --------------------------------------------------------------------------------------

    def _add_hanging(self, section: Section) -> None:
        frame, head = self.frame, section.head
        left = frame.left + (HEAD_WIDTH + BETWEEN if head is not None else 0.0)
        head_end = 0.0
        for block in section.blocks:
            items, end, ends = self._try(head, block, left)
            if _lowest(items) > frame.bottom and self.y > frame.top:
                self._turn()
                items, end, ends = self._try(head, block, left)
                head_end = 0.0
            self.pages[-1] += items
            self.y, head_end = end, max(head_end, ends)
            head = None
        self.y = max(self.y, head_end)

    def _try(self, head: Para | None, block: Block, left: float) -> tuple[list[Item], float, float]:
        """Items of a block, with the head of its section where it is the first; and where both end."""
        frame = self.frame
        if head is None:
            items, end = place(block, left, self.y, frame.right - left)
            return items, end, 0.0
        top = self.y + ABOVE
        title, title_end = place(head, frame.left, top, HEAD_WIDTH)
        items, end = place(block, left, top, frame.right - left)
        rule = Rule(frame.left, self.y, frame.right - frame.left)
        return [rule, *title, *items], end, title_end

    # Several columns -----------------------------------------------------------------------------------

    def _add_columns(self, section: Section) -> None:
        frame = self.frame
        width = (frame.right - frame.left - BETWEEN * (section.columns - 1)) / section.columns
        blocks = in_strips(section.blocks, width)
        heights = [place(block, 0.0, 0.0, width)[1] for block in blocks]
        heads = section.head
        left = list(zip(blocks, heights, strict=True))
        if self.y + self._head_height(heads) + min(LEAST, sum(heights)) > frame.bottom:
            self._turn()
        while left:
            if heads is not None:
                self.pages[-1].append(Rule(frame.left, self.y, frame.right - frame.left))
                title, end = place(heads, frame.left, self.y + ABOVE, frame.right - frame.left)
                self.pages[-1] += title
                self.y, heads = end + 0.8, None
            room = frame.bottom - self.y
            split = _split([high for _, high in left], room, section.columns)
            if sum(split) == len(left):
                split = _evened([high for _, high in left], room, section.columns)
            if not sum(split) and self.y > frame.top:
                self._turn()
                continue
            split = split if sum(split) else [1]
            lowest = self.y
            for number, count in enumerate(split):
                own = [block for block, _ in left[:count]]
                items, end = place_all(own, frame.left + number * (width + BETWEEN), self.y, width)
                self.pages[-1] += items
                lowest = max(lowest, end - (after_of(own) if own else 0.0))
                left = left[count:]
            self.y = lowest
            if left:
                self._turn()

    def _head_height(self, head: Para | None) -> float:
        return 0.0 if head is None else ABOVE + place(head, 0.0, 0.0, self.frame.right - self.frame.left)[1] + 0.8


def _split(heights: Sequence[float], room: float, columns: int) -> list[int]:
    """How many blocks go into each column of height `room`, the first filled first."""
    split, at = [0] * columns, 0
    for column in range(columns):
        used = 0.0
        while at < len(heights) and used + heights[at] <= room + 1e-6:
            used += heights[at]
            at += 1
            split[column] += 1
    return split


def _evened(heights: Sequence[float], room: float, columns: int) -> list[int]:
    """The same with the least room that holds all, so that the columns end near each other."""
    low, high = 0.0, room
    for _ in range(30):
        middle = (low + high) / 2
        if sum(_split(heights, middle, columns)) == len(heights):
            high = middle
        else:
            low = middle
    return _split(heights, high, columns)


def _lowest(items: Sequence[Item]) -> float:
    return max((item.bounds[3] for item in items), default=0.0)
