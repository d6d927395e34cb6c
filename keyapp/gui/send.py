"""Sending a signal without wearing the interpreter down."""

from __future__ import annotations

import ctypes
import sys

from PySide6.QtCore import QObject, Signal, SignalInstance

__all__ = ["send"]


class _Probe(QObject):
    heard = Signal()


def send(signal: SignalInstance, *values: object) -> None:
    """Emit `signal` with `values`.

    PySide6 6.12 returns True from `emit` without taking a reference to it. Where True can run out
    of references (up to Python 3.11) each emission uses one up, and after some hundreds the
    interpreter aborts; so the reference is given back.
    """
    signal.emit(*values)
    if _IS_SHORT:
        ctypes.pythonapi.Py_IncRef(ctypes.py_object(True))


def _loses_a_reference() -> bool:
    probe = _Probe()
    before = sys.getrefcount(True)
    for _ in range(8):
        probe.heard.emit()
    return before - sys.getrefcount(True) >= 8


_IS_SHORT = _loses_a_reference()
