"""Small parts that both papers are made of."""

from __future__ import annotations

from collections.abc import Sequence

from keyapp.sheets.blocks import Block, Panel, Para, Picture
from keyapp.sheets.items import Role, Sign
from keyapp.sheets.letters import Span
from keyapp.sheets.style import Style, Type
from keyapp.wording import Words
from keyapp.wording.sheet import ContactText

__all__ = ["call_panel", "contact_para", "dot", "para", "picture"]


def para(text: str, style: Style, role: Role = Role.TEXT, *, after: float = 1.0) -> Para:
    """A paragraph in one style."""
    return Para((Span(text, style),), role, after=after)


def dot(text: str, kind: Type) -> Para:
    """A statement after a dot."""
    return Para((Span(text, kind.body),), Role.TEXT, Sign.DOT, "soft", kind.gap * 0.35)


def picture(words: Words, figure: str, side: float) -> Picture:
    """A figure of the key with its alt text."""
    drawn = words.keyset.figures.get(figure)
    return Picture(figure, drawn.alt.say(words.language) if drawn else figure, side, 0.6)


def call_panel(
    head: str, calls: Sequence[str], numbers: Sequence[str], kind: Type, more: Sequence[Block] = ()
) -> Panel:
    """The panel at the top: what to do where a person may be hurt, its telephone numbers in strong letters."""
    inside: list[Block] = [Para((Span(head, kind.call),), Role.HEAD, Sign.WARNING, "signal", 0.6)]
    for call in calls:
        spans = [Span(call, kind.body)]
        for number in numbers:
            spans = [part for span in spans for part in _split(span, number, kind.strong)]
        inside.append(Para(tuple(spans), after=0.4))
    return Panel((*inside, *more), signal=True, after=0.0)


def contact_para(one: ContactText, kind: Type) -> Para:
    """Someone to turn to: name and number in strong letters, then the rest."""
    name = f"{one.name}, {one.telephone}" if one.telephone else one.name
    rest = ". ".join(part.rstrip(".") for part in (one.reach, one.when) if part)
    spans = (Span(f"{name}. ", kind.strong), Span(f"{rest}.", kind.soft)) if rest else (Span(name, kind.strong),)
    return Para(spans, after=kind.gap * 0.5)


def _split(span: Span, number: str, strong: Style) -> list[Span]:
    before, found, after = span.text.partition(number)
    if not number or not found or span.style == strong:
        return [span]
    return [one for one in (Span(before, span.style), Span(number, strong), Span(after, span.style)) if one.text]
