"""The foot of every page: what the paper is, and which page of how many."""

from __future__ import annotations

from collections.abc import Sequence

from keyapp.sheets.items import Line, Page, Role, Rule, Words
from keyapp.sheets.letters import Piece, printable, width_of
from keyapp.sheets.paper import Frame
from keyapp.sheets.style import Style, type_at
from keyapp.wording import Words as Wording

__all__ = ["with_foot"]


def with_foot(pages: Sequence[Page], words: Wording, frame: Frame, text: str) -> tuple[Page, ...]:
    """Pages with `text` at the left of their foot and "1 of 2" at the right."""
    style = type_at(9.0).small
    made = []
    for number, page in enumerate(pages, start=1):
        count = words.fixed("sheet.page", page=str(number), pages=str(len(pages)))
        at = frame.right - width_of(printable(count), style)
        rule = Rule(frame.left, frame.foot - 3.9, frame.right - frame.left)
        left = _cut(text, at - frame.left - 6.0, style)
        feet = [_foot(frame.left, frame.foot, left, style), _foot(at, frame.foot, printable(count), style)]
        made.append((*page, rule, *feet))
    return tuple(made)


def _foot(x: float, base: float, text: str, style: Style) -> Words:
    return Words(Role.FOOT, (Line(x, base, (Piece(0.0, text, style),)),))


def _cut(text: str, width: float, style: Style) -> str:
    """As much of a line as has room; what the foot says stands in full on the page as well."""
    plain = printable(text)
    while plain and width_of(plain, style) > width:
        plain = plain[:-1].rstrip()
    return plain
