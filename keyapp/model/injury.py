"""Words of injury in what a person types."""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = ["injury_words", "speaks_of_injury"]

_NO_BITE = re.compile(r"\b(?:a|little|tiny) bit\b(?! (?:me|him|her|my|us|them|the)\b)")
"""“A bit hairy” speaks of no bite; “something a bit me” might."""


def injury_words(text: str, words: Iterable[str]) -> frozenset[str]:
    """Those of `words` that stand in `text` as whole words, whatever the case or the apostrophe.

    >>> sorted(injury_words("It BIT my hand and I can’t breathe", ["bit", "can't breathe", "it b"]))
    ['bit', "can't breathe"]
    >>> injury_words("a bitter orange, a bit red", ["bit"])
    frozenset()
    """
    plain = _NO_BITE.sub(" ", _plain(text))
    return frozenset(word for word in words if re.search(rf"(?<!\w){re.escape(_plain(word))}(?!\w)", plain))


def speaks_of_injury(text: str, words: Iterable[str]) -> bool:
    """Whether any of `words` stands in `text`.

    >>> speaks_of_injury("It BIT me", ["bit", "stung"])
    True
    """
    return bool(injury_words(text, words))


def _plain(text: str) -> str:
    return " ".join(text.replace("’", "'").replace("‘", "'").replace("`", "'").casefold().split())
