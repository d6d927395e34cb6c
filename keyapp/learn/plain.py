"""JSON read strictly: what common readers let pass without a word is refused here."""

from __future__ import annotations

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from keyapp.errors import UserError

__all__ = ["MOST_BYTES", "file_text", "strict_json"]

MOST_BYTES = 20_000_000
"""A larger file is refused unread."""


def strict_json(text: str, where: str = "") -> Any:
    """Data from JSON; raises UserError for NaN, infinity, a name written twice, and what is not JSON at all."""
    try:
        return json.loads(text, parse_constant=_no_constant, object_pairs_hook=_once)
    except (ValueError, RecursionError) as error:
        raise UserError(f"This is not sound JSON ({str(error)[:80]}).", where=where, fix="Mend it there.") from error


def file_text(path: Path) -> str:
    """The text of a file; raises UserError where it cannot be read."""
    try:
        if path.stat().st_size > MOST_BYTES:
            raise UserError("The file is too large.", where=str(path), fix=f"Give one of at most {MOST_BYTES} bytes.")
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError as error:
        raise UserError("The file is not saved as UTF-8 text.", where=str(path), fix="Give a JSON file.") from error
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise UserError(f"The file cannot be read ({reason}).", where=str(path), fix="Give a JSON file.") from error


def _no_constant(name: str) -> None:
    raise ValueError(f"{name} is no number")


def _once(pairs: Iterable[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            raise ValueError(f"“{name}” is written twice")
        found[name] = value
    return found
