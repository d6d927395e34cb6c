"""Acts of the result: the final check, what an answer rests on, the sheet."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path

from keyapp.gui.park_acts import ParkActs
from keyapp.gui.printing import Printing
from keyapp.model import Answer, Evidence

__all__ = ["ResultActs"]


class ResultActs(ParkActs):
    """Acts on an enquiry that has a result.

    Attributes:
        images: the folder of pictures, for the sheet.
        edition: names the edition of program and key; worked out when a sheet is written.
    """

    images: Path | None = None
    edition: Callable[[], str] | None = None

    def say_fits(self, taxon: str) -> None:
        """Say that the result fits the animal in every part."""
        self._checking, self._wish = False, "check-redo"
        self._stay(lambda: self.enquiry.check_fit(taxon, True))

    def ask_part(self, is_asked: bool) -> None:
        """Ask which part does not fit, or stop asking."""
        if is_asked is not self._checking:
            self._checking, self._wish = is_asked, "part-first" if is_asked else "check-yes"
            self.moved.emit()

    def say_part(self, taxon: str, part: str) -> None:
        """Say which part does not fit (a character; empty for something else); the claim is lowered."""
        self._checking, self._wish = False, "check-ask" if part else "check-redo"
        self._stay(lambda: self.enquiry.check_fit(taxon, False, part))

    def check_anew(self) -> None:
        """Take the final check back, to make it again."""
        self._wish = "check-yes"
        self._stay(lambda: self.enquiry.drop_check())

    def rest_on(self, answer: Answer, evidence: Evidence) -> None:
        """Say anew what an answer rests on."""
        self._stay(lambda: self.enquiry.rest_on(answer, evidence))

    def print_sheet(self, target: Path) -> None:
        """Write the sheet of the enquiry to a file, beside the window; `printed` tells the beginning and the end."""
        if self._printing is not None or self._enquiry is None or self.images is None:
            return
        tables, reading, words, images = self.tables, self.reading, self.words, self.images
        today, edition = datetime.date.today(), self.edition

        def make() -> bytes:
            from keyapp.sheets import sheet_pdf

            named = edition() if edition is not None else ""
            return sheet_pdf(tables, reading, words, images=images, date=today, edition=named)

        printing = self._printing = Printing(make, target, self)
        printing.written.connect(self._on_written)
        printing.failed.connect(self._reporter.tell)
        printing.broke.connect(self._reporter.fault)
        printing.finished.connect(self._on_printed)
        self.printed.emit()
        printing.start()

    # Inside ----------------------------------------------------------------------------------

    def _on_written(self, target: str) -> None:
        self._reporter.note(self.words.fixed("print.done", file=target))

    def _on_printed(self) -> None:
        if self._printing is not None:
            self._printing.deleteLater()
            self._printing = None
            self.printed.emit()
