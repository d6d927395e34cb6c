"""Where terms of the glossary stand in a text."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from keyapp.model.keyset import Glossary

__all__ = ["EVERYDAY", "Span", "spans"]

_COMMON = "answer call character class key lead order range segment sheet sign standing state"
_OFTEN = "diagnosis family genus hunt species sureness taxon"
EVERYDAY = frozenset([*_COMMON.split(), *_OFTEN.split()])
"""Terms that in a text about an animal mostly mean what everyone means by them, or that its reader meets so often
that marking them would only clutter the page."""


@dataclass(frozen=True, slots=True)
class Span:
    """A term in a text: from `start` to before `end`, and the id of its glossary entry."""

    start: int
    end: int
    term: str


def spans(text: str, glossary: Glossary) -> tuple[Span, ...]:
    """The terms of `glossary` in `text`, each where it stands first, in order; the longest term wins.

    Terms of everyday speech (`EVERYDAY`) are passed over.

    >>> from keyapp.model import Term, Text
    >>> words = {"egg sac": Term("egg sac", ("egg sacs",), Text.of("A silk case."))}
    >>> spans("She guards her egg sacs.", words)
    (Span(start=15, end=23, term='egg sac'),)
    """
    entries = tuple(
        (name.casefold(), term.term) for term in glossary.values() if term.term not in EVERYDAY
        for name in (term.term, *term.also)
    )  # fmt: skip
    pattern, owners = _compiled(entries)
    found: dict[str, Span] = {}
    for match in pattern.finditer(text) if pattern else ():
        term = owners[match.group().casefold()]
        found.setdefault(term, Span(match.start(), match.end(), term))
    return tuple(sorted(found.values(), key=lambda span: span.start))


@lru_cache(maxsize=8)
def _compiled(entries: tuple[tuple[str, str], ...]) -> tuple[re.Pattern[str] | None, dict[str, str]]:
    if not entries:
        return None, {}
    names = sorted((name for name, _ in entries), key=len, reverse=True)
    alternatives = "|".join(re.escape(name) for name in names)
    return re.compile(rf"(?<![\w-])(?:{alternatives})(?![\w-])", re.IGNORECASE), dict(entries)
