"""Opening the key beside the window, so that the window shows at once and stays alive."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThread, Signal

if TYPE_CHECKING:
    from keyapp.learn import Opened
    from keyapp.wording import Words
    from keyapp.work.enquiry import Enquiry

__all__ = ["Opening"]


class Opening(QThread):
    """Reads the key and makes it ready for the engine.

    Signals:
        ready: arguments: Enquiry, Words.
        failed: the key cannot be used; arguments: UserError, tuple of lines, one a problem.
        broke: a fault of ours; argument: the exception.
        learned: what confirmed calls have taught the key, before `ready`; argument: Opened.
    """

    ready = Signal(object, object)
    failed = Signal(object, object)
    broke = Signal(object)
    learned = Signal(object)

    def __init__(
        self,
        folder: Path,
        language: str,
        parent: QObject | None = None,
        learned: Callable[[], Path | None] | None = None,
        first: Path | None = None,
    ) -> None:
        """Open the key in `folder`; `learned` finds the file of what was learned, `first` keeps the first couplet."""
        super().__init__(parent)
        self._first = first
        self._folder = folder
        self._language = language
        self._learned = learned

    def run(self) -> None:
        """Read, check, build; everything heavy is imported here."""
        from keyapp.errors import UserError

        try:
            learned = self._learned() if self._learned is not None else None
            enquiry, words, opened = open_key(self._folder, self._language, learned)
            if self._first is not None:
                _keep_first(self._first, enquiry, words, self._language)
        except UserError as error:
            problems = getattr(error, "problems", ())
            self.failed.emit(error, tuple(str(problem) for problem in problems))
        except Exception as error:  # noqa: BLE001 - handed whole to the reporter in the window's thread
            self.broke.emit(error)
        else:
            self.learned.emit(opened)
            self.ready.emit(enquiry, words)


def open_key(folder: Path, language: str, learned: Path | None) -> tuple[Enquiry, Words, Opened]:
    """The key in `folder`, with what was learned in force, as a fresh enquiry and its sentences.

    Raises UserError where the key cannot be used; trouble with the file `learned` is in the Opened.
    """
    import datetime

    from keyapp.engine import build_tables
    from keyapp.keyfile.cache import cached_keyset
    from keyapp.learn import Opened, open_learned
    from keyapp.wording import Words
    from keyapp.work import Enquiry

    keyset = cached_keyset(folder)
    opened = Opened(keyset) if learned is None else open_learned(keyset, learned, datetime.date.today())
    enquiry = Enquiry(build_tables(opened.keyset))
    enquiry.reading  # noqa: B018 - the first reading is the slow one; it belongs here
    return enquiry, Words(opened.keyset, language), opened


def _keep_first(path: Path, enquiry: Enquiry, words: Words, language: str) -> None:
    """Keep the first couplet for the next start, where it is another than the one kept."""
    from keyapp.gui.first_page import first_page, read_first_page, write_first_page

    reading = enquiry.reading
    if reading.current is None:
        path.unlink(missing_ok=True)
        return
    page = first_page(words.keyset, words, reading.current, words.safety_line(reading), language)
    if read_first_page(path) != page:
        write_first_page(path, page)
