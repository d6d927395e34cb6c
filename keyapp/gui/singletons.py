"""Keeps None, True and False alive under a library that gives away references to them."""

from __future__ import annotations

import sys

from PySide6.QtCore import QObject

__all__ = ["keep_singletons"]

_PLENTY = 1 << 40


def keep_singletons() -> bool:
    """Make None, True and False last for ever where they would not; returns whether that was needed.

    From Python 3.12 on these three are immortal and C code need not count references to them.
    PySide6 6.12.0 relies on that, yet also installs on Python 3.10 and 3.11: there every call that
    returns nothing uses up one reference to None, and after some thousands the interpreter aborts.
    The counts are then raised beyond what can be used up, which is what immortality amounts to.
    """
    is_immortal = sys.version_info >= (3, 12) or sys.getrefcount(None) > _PLENTY // 2
    if is_immortal or sys.implementation.name != "cpython" or not _loses_references():
        return False
    import ctypes

    for one in (None, True, False):
        count = ctypes.c_ssize_t.from_address(id(one))
        # Where the count does not lie at the front of the object, nothing is touched.
        if abs(count.value - sys.getrefcount(one)) < 100:
            count.value += _PLENTY
    return True


def _loses_references() -> bool:
    probe = QObject()
    before = sys.getrefcount(None)
    for _ in range(50):
        probe.setObjectName("probe")
    return before - sys.getrefcount(None) > 25
