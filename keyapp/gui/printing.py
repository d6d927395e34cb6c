"""Writing the sheet of an enquiry beside the window."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QThread, Signal

from keyapp.errors import UserError

__all__ = ["Printing"]


class Printing(QThread):
    """Makes the pages and writes them to a file.

    Signals:
        written: the file is there; argument: its path as text.
        failed: it could not be written; argument: UserError.
        broke: a fault of ours; argument: the exception.
    """

    written = Signal(str)
    failed = Signal(object)
    broke = Signal(object)

    def __init__(self, make: Callable[[], bytes], target: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._make = make
        self._target = target

    def run(self) -> None:
        """Make the pages, then write them."""
        try:
            content = self._make()
            self._target.write_bytes(content)
        except UserError as error:
            self.failed.emit(error)
        except OSError as error:
            fix = f"{error.strerror}: choose another place."
            self.failed.emit(UserError("The sheet could not be written.", where=str(self._target), fix=fix))
        except Exception as error:  # noqa: BLE001 - handed whole to the reporter in the window's thread
            self.broke.emit(error)
        else:
            self.written.emit(str(self._target))
