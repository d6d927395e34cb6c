"""From a key folder to an engine ready to answer."""

from __future__ import annotations

import datetime
from pathlib import Path

from keyapp.cli.terminal import Terminal
from keyapp.engine import Tables, build_tables
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.learn import open_learned
from keyapp.model import KeySet
from keyapp.work.names import nearest

__all__ = ["open_tables", "require_month", "require_region"]


def open_tables(folder: Path, learned: Path | None = None, out: Terminal | None = None) -> Tables:
    """Load the key in `folder`, with what was learned in force.

    `learned` is the file of what was learned; None, or no file there, leaves the key as it ships. What is in
    force, or why nothing is, goes to the error stream of `out`, so that results stay clean.

    Raises UserError with every problem where the key cannot be used; trouble with `learned` is told, and
    the key used as it ships.
    """
    keyset = require_keyset(folder)
    if learned is None:
        return build_tables(keyset)
    opened = open_learned(keyset, learned, datetime.date.today())
    if out is not None and opened.problem is not None:
        out.problem(opened.problem)
    elif out is not None and opened.note:
        out.error(opened.note)
    return build_tables(opened.keyset)


def require_region(keyset: KeySet, region: str) -> None:
    """Raise UserError unless `region` is the id of a region or a state code that one covers."""
    known = {*keyset.regions, *(state for one in keyset.regions.values() for state in one.states)}
    if region not in known:
        raise UserError(f"There is no region “{region}”.", fix=f"Use {nearest(region, known)}.")


def require_month(month: int) -> None:
    """Raise UserError unless `month` is 1 to 12."""
    if not 1 <= month <= 12:
        raise UserError(f"There is no month {month}.", fix="Give a number from 1 to 12.")
