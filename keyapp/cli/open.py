"""From a key folder to an engine ready to answer."""

from __future__ import annotations

import datetime
from pathlib import Path

from keyapp.cli.terminal import Terminal
from keyapp.engine import Tables, build_tables
from keyapp.keyfile import require_keyset
from keyapp.learn import open_learned

__all__ = ["open_tables"]


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
