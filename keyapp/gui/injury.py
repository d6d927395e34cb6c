"""Words of injury in what someone types."""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = ["injury_words"]


def injury_words(text: str, words: Iterable[str]) -> frozenset[str]:
    """Those of `words` that stand in `text` as whole words, whatever the case or the apostrophe.

    >>> sorted(injury_words("It BIT my hand and I can’t breathe", ["bit", "can't breathe", "it b"]))
    ['bit', "can't breathe"]
    >>> injury_words("a bitter orange", ["bit"])
    frozenset()
    """
    plain = _plain(text)
    return frozenset(word for word in words if re.search(rf"(?<!\w){re.escape(_plain(word))}(?!\w)", plain))


def _plain(text: str) -> str:
    return " ".join(text.replace("’", "'").replace("‘", "'").casefold().split())
