"""Where the key and its pictures are: in the checkout, or inside the installed package."""

from __future__ import annotations

from pathlib import Path

__all__ = ["LEARNED_NAME", "images_folder", "keys_folder", "state_folder"]

LEARNED_NAME = "learned.json"
"""Name of the file, in `state_folder`, of what confirmed calls have taught."""

_HERE = Path(__file__).resolve().parent


def keys_folder() -> Path:
    """Folder of the YAML files that ship with the program."""
    return _data("keys")


def images_folder() -> Path:
    """Folder of the pictures that ship with the program."""
    return _data("images")


def state_folder() -> Path:
    """Folder of the user's own state (the enquiry at hand, what was learned)."""
    import platformdirs  # late: the window shows before it is needed

    return Path(platformdirs.user_state_dir("keyapp", appauthor=False))


def _data(name: str) -> Path:
    packed = _HERE / "_data" / name
    return packed if packed.is_dir() else _HERE.parent / name
