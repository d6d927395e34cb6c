"""The one way in and out of the terminal."""

from __future__ import annotations

import sys
from typing import TextIO

from keyapp.errors import UserError

__all__ = ["Terminal"]


class Terminal:
    """Lines in, lines out. Plain text without tricks, so that a screen reader can follow."""

    def __init__(
        self, source: TextIO | None = None, target: TextIO | None = None, errors: TextIO | None = None
    ) -> None:
        self._source = source
        self._target = target
        self._errors = errors

    def say(self, line: str = "") -> None:
        """Write one line."""
        target = self._target or sys.stdout
        target.write(line + "\n")
        target.flush()

    def error(self, line: str) -> None:
        """Write one line about trouble."""
        target = self._errors or sys.stderr
        target.write(line + "\n")
        target.flush()

    def problem(self, error: UserError) -> None:
        """Tell what happened, where, and what to do."""
        self.error(f"Problem: {error}")

    def read(self) -> str | None:
        """Read one line without its end; None at the end of input."""
        line = (self._source or sys.stdin).readline()
        return line.rstrip("\r\n") if line else None
