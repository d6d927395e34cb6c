"""The edition of a key: what is printed on every paper, so that it can be told which key it came from."""

from __future__ import annotations

import hashlib
from pathlib import Path

from keyapp import __version__
from keyapp.keyfile.load import key_files

__all__ = ["edition_of"]


def edition_of(folder: Path, learned: Path | None = None) -> str:
    """The edition of a key: the program's version, and a short digest of the key's files (and of what was learned)."""
    total = hashlib.sha256()
    for path in key_files(folder):
        total.update(f"{path.name}\0".encode())
        total.update(path.read_bytes())
    edition = f"keyapp {__version__}, key {total.hexdigest()[:8]}"
    if learned is not None and learned.is_file():
        edition += f", learned {hashlib.sha256(learned.read_bytes()).hexdigest()[:8]}"
    return edition
