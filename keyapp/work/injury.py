"""Words of injury in what a person types."""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = ["speaks_of_injury"]


def speaks_of_injury(text: str, words: Iterable[str]) -> bool:
    """Whether `text` holds any of `words` (or word groups), whole and in any case.

    >>> speaks_of_injury("It BIT me", ["bit", "stung"])
    True
    >>> speaks_of_injury("a bit hairy", ["bit"])
    False
    """
    plain = re.sub(r"[’`]", "'", text.lower())
    plain = re.sub(r"\b(?:a|little|tiny) bit\b(?! (?:me|him|her|my|us|them|the)\b)", " ", plain)
    return any(re.search(rf"(?<![\w']){re.escape(word.lower())}(?![\w'])", plain) for word in words)
