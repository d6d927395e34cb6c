"""From a key folder to an engine ready to answer."""

from __future__ import annotations

from pathlib import Path

from keyapp.engine import Tables, build_tables
from keyapp.keyfile import require_keyset

__all__ = ["open_tables"]


def open_tables(folder: Path) -> Tables:
    """Load the key in `folder`; raises UserError with every problem where it cannot be used."""
    return build_tables(require_keyset(folder))
