"""Where in the files an item was written."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["NOWHERE", "Place"]


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """File (path below the key folder), 1-based line, and dotted path inside the document."""

    file: str
    line: int
    path: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}" + (f" ({self.path})" if self.path else "")


NOWHERE = Place("", 0)
