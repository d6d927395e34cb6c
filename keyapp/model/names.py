"""The nearest right name for a wrong one."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

__all__ = ["closest"]


def closest(wrong: str, right: Iterable[str]) -> str | None:
    """The name in `right` that is most like `wrong`, or None where none is like it.

    >>> closest("tangel", ["orb", "tangle"])
    'tangle'
    >>> closest("xyz", ["orb", "tangle"])
    """
    found = difflib.get_close_matches(wrong[:80], sorted(set(right)), n=1, cutoff=0.6)
    return found[0] if found else None
