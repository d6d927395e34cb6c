"""Sources, and the statements that rest on them."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field

from keyapp.model.place import NOWHERE, Place
from keyapp.model.text import Text

__all__ = ["COMMON_PRACTICE", "FROM_MEMORY", "Basis", "Caution", "Source", "Statement"]

COMMON_PRACTICE = "common practice"
FROM_MEMORY = "from memory"

Basis = tuple[str, ...]
"""Source ids, or `common practice`, or `from memory`."""


@dataclass(frozen=True, slots=True)
class Source:
    """One published source, listed once.

    Attributes:
        id: short id that statements cite.
        title, publisher, address: as printed; `address` may be empty for a book.
        year: year of publication, or None where the copy shows none.
        note: what kind of copy was read, where that matters.
    """

    id: str
    title: str
    publisher: str
    address: str = ""
    year: int | None = None
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Statement:
    """A factual statement with its basis."""

    says: Text
    basis: Basis
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Caution:
    """A health or handling statement: it has a date it was checked and a date to look again."""

    says: Text
    basis: Basis
    checked: datetime.date
    review_by: datetime.date
    place: Place = field(default=NOWHERE, compare=False)
