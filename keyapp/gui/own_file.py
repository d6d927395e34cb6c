"""A file of its own for the enquiry of each window, so that two windows at once do not hurt each other."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

from PySide6.QtCore import QLockFile

__all__ = ["OwnFile", "left_open"]

_MOST = 9
"""Windows at once that keep their enquiry; more than anyone has open."""


class OwnFile:
    """Takes a file for the kept enquiry in `folder`, and holds it until it is let go.

    A file is free where no living process holds its lock: what a killed program leaves behind counts for
    nothing, since the lock names the process and the start of the machine. Files that hold an enquiry come
    first, so that what a second window left open is offered again too.

    Attributes:
        path: the file to keep the enquiry in.
        is_second: whether another window is open that keeps its enquiry here.
    """

    def __init__(self, folder: Path) -> None:
        self.is_second = False
        self._lock: QLockFile | None = None
        with contextlib.suppress(OSError):
            folder.mkdir(parents=True, exist_ok=True)
        files = [folder / _name(place) for place in range(1, _MOST + 1)]
        self.path = files[0]
        for path in sorted(files, key=lambda one: not _holds(one)):
            lock = QLockFile(str(path.with_suffix(".lock")))
            # However long a window has been open, its lock holds while it lives.
            lock.setStaleLockTime(0)
            if lock.tryLock(0):
                self._lock, self.path = lock, path
                self._sweep()
                return
            if lock.error() is not QLockFile.LockError.LockFailedError:
                # The disk refuses locks. It will refuse the enquiry as well, and that is told then.
                return
            self.is_second = True
        self.path = folder / f"enquiry.{os.getpid()}.json"

    @property
    def is_locked(self) -> bool:
        """Whether it is ours alone."""
        return self._lock is not None

    def let_go(self) -> None:
        """Leave the file to others."""
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None

    def _sweep(self) -> None:
        """Remove what was half written when a program was killed; nobody else writes for this file."""
        for part in self.path.parent.glob(f"{self.path.stem}-*.part"):
            with contextlib.suppress(OSError):
                part.unlink()


def left_open(folder: Path) -> bool:
    """Whether there is any file of an enquiry that was left open."""
    return any(_holds(folder / _name(place)) for place in range(1, _MOST + 1))


def _name(place: int) -> str:
    """No dash before the number: what is half written is named after the file, with a dash."""
    return "enquiry.json" if place == 1 else f"enquiry{place}.json"


def _holds(path: Path) -> bool:
    try:
        return path.stat().st_size > 0
    except OSError:
        return False
