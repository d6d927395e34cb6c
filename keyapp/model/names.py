"""The nearest right name for a wrong one."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

__all__ = ["closest", "nearest"]


def closest(wrong: str, right: Iterable[str]) -> str | None:
    """The name in `right` that is most like `wrong`, or None where none is like it.

    >>> closest("tangel", ["orb", "tangle"])
    'tangle'
    >>> closest("xyz", ["orb", "tangle"])
    """
    found = difflib.get_close_matches(wrong[:80], sorted(set(right)), n=1, cutoff=0.6)
    return found[0] if found else None


def nearest(wrong: str, right: Iterable[str], *, most: int = 8) -> str:
    """Words for a fix: the closest of `right`, or the first few of them.

    >>> nearest("web-shap", ["web-shape", "gait"])
    '“web-shape”'
    """
    names = sorted(right)
    close = closest(wrong, names)
    if close is not None:
        return f"“{close}”"
    listed = ", ".join(f"“{name}”" for name in names[:most])
    return f"one of {listed}" + (", …" if len(names) > most else "")
