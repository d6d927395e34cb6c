"""The nearest right name for a wrong one."""

from __future__ import annotations

from collections.abc import Iterable

from keyapp.model.names import closest

__all__ = ["nearest"]


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
