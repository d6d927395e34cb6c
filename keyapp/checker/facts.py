"""What the rules of the checker look at: the key, the date, and the pictures there are."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from keyapp.checker.graph import Graph, build_graph
from keyapp.keyfile.problem import Problem
from keyapp.model.keyset import KeySet
from keyapp.model.place import Place

__all__ = ["Facts", "Rule", "note", "problem"]


@dataclass(frozen=True)
class Facts:
    """Everything a rule may look at.

    Attributes:
        keyset: the key.
        today: the date that review dates are held against.
        images: folder of the pictures, or None where pictures are not to be looked for.
    """

    keyset: KeySet
    today: datetime.date
    images: Path | None

    @cached_property
    def graph(self) -> Graph:
        """The key as a graph; only for keys whose links are sound."""
        return build_graph(self.keyset)


Rule = Callable[[Facts], Iterable[Problem]]
"""A rule looks at the facts and returns what it finds."""


def problem(code: str, place: Place, what: str, fix: str) -> Problem:
    """Make a problem."""
    return Problem(place, code, what, fix)


def note(code: str, place: Place, what: str, fix: str) -> Problem:
    """Make a remark that does not fail the check."""
    return Problem(place, code, what, fix, "note")
