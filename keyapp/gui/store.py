"""Where the window keeps what only makes it faster; everything in it is safe to delete."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QStandardPaths

__all__ = ["store_folder"]


def store_folder() -> Path:
    """The folder, in the user's cache; it need not exist."""
    return Path(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.GenericCacheLocation)) / "keyapp"
