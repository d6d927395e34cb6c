"""Keeping the enquiry on disk as it goes, so that a crash or power cut loses nothing."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from keyapp.errors import UserError
from keyapp.model import Case
from keyapp.work.casefile import case_from_json, case_to_json

__all__ = ["Keeper"]


class Keeper:
    """Writes the case to one file, whole or not at all.

    The file is written beside its final place, flushed to disk and renamed, so that at any
    moment either the old or the new case is there.
    """

    def __init__(self, folder: Path) -> None:
        self.path = folder / "enquiry.json"

    def keep(self, case: Case) -> None:
        """Write `case`; raises UserError if the disk refuses."""
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(dir=self.path.parent, prefix="enquiry-", suffix=".part")
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(case_to_json(case))
                file.flush()
                os.fsync(file.fileno())
            Path(name).replace(self.path)
        except OSError as error:
            raise UserError(
                "The enquiry could not be kept on disk.",
                where=str(self.path.parent),
                fix=f"Check free space and rights ({error.strerror}).",
            ) from error

    def kept(self) -> Case | None:
        """The case kept last, or None; raises UserError if it is damaged (the file is set aside)."""
        if not self.path.exists():
            return None
        try:
            return case_from_json(self.path.read_text(encoding="utf-8"))
        except (OSError, UnicodeDecodeError, UserError) as error:
            aside = self.path.with_suffix(".damaged")
            self.path.replace(aside)
            raise UserError(
                "The kept enquiry could not be read.", where=str(aside), fix="It was set aside; start a new one."
            ) from error

    def forget(self) -> None:
        """Remove the kept case."""
        self.path.unlink(missing_ok=True)
