"""Keeping the enquiry on disk as it goes, so that a crash or power cut loses nothing."""

from __future__ import annotations

from pathlib import Path

from keyapp.errors import UserError
from keyapp.model import Case
from keyapp.work.casefile import case_from_json, case_to_json
from keyapp.work.whole_file import write_whole

__all__ = ["Keeper"]


class Keeper:
    """Writes the case to one file, whole or not at all."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / "enquiry.json"

    def keep(self, case: Case) -> None:
        """Write `case`; raises UserError if the disk refuses."""
        write_whole(self.path, case_to_json(case))

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
