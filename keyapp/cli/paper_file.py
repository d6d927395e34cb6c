"""What `keyapp sheet` and `keyapp card` share: paper, date, edition, and the file they write."""

from __future__ import annotations

import datetime
from pathlib import Path

from keyapp.errors import UserError
from keyapp.keyfile.edition import edition_of

__all__ = ["day_of", "edition_of", "require_file", "write_paper"]


def day_of(text: str | None) -> datetime.date:
    """The date given as YYYY-MM-DD, or today; UserError for anything else."""
    if text is None:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise UserError(f"“{text}” is no date.", where="--date", fix="Write it as YYYY-MM-DD.") from None


def require_file(path: Path) -> None:
    """Raise UserError where a paper cannot be written: told before the work, not after it."""
    if path.is_dir():
        raise UserError("The paper could not be written.", where=str(path), fix="This is a folder: name a file in it.")
    if not path.absolute().parent.is_dir():
        raise UserError("The paper could not be written.", where=str(path), fix="Name a folder that is there.")


def write_paper(path: Path, content: bytes) -> None:
    """Write a PDF; UserError where the file cannot be written."""
    try:
        path.write_bytes(content)
    except OSError as error:
        raise UserError(
            "The paper could not be written.", where=str(path), fix=f"{error.strerror}: choose another place."
        ) from error
