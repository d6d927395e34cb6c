"""Keeps the enquiry on disk beside the window, so that a slow disk never holds the window up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from keyapp.errors import UserError

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future

    from keyapp.model import Case
    from keyapp.work.keep import Keeper

__all__ = ["Saver"]


class Saver(QObject):
    """Writes cases one after another in a thread of its own.

    Signals:
        failed: a case could not be kept; argument: UserError.
    """

    failed = Signal(object)

    def __init__(self, keeper: Keeper) -> None:
        super().__init__()
        self._keeper = keeper
        from concurrent.futures import ThreadPoolExecutor  # late: the window shows before it is needed

        self._pool = ThreadPoolExecutor(max_workers=1, thread_name_prefix="keep")
        self._last: Future[None] | None = None
        self._next: Case | None = None

    def save(self, case: Case) -> None:
        """Keep `case` soon; of cases that wait, only the newest is written."""
        self._next = case
        self._last = self._pool.submit(self._write)

    def do(self, act: Callable[[], None]) -> None:
        """Do something else to what is kept, in its turn."""
        self._last = self._pool.submit(self._tried, act)

    def flush(self) -> None:
        """Wait until everything is written."""
        if self._last is not None:
            self._last.result()

    def close(self) -> None:
        """Write what is left and end the thread."""
        self._pool.shutdown(wait=True)

    def _write(self) -> None:
        case, self._next = self._next, None
        if case is None:
            return
        self._tried(lambda: self._put(case))

    def _put(self, case: Case) -> None:
        if case.answers or case.settings != type(case.settings)():
            self._keeper.keep(case)
        else:
            self._keeper.forget()

    def _tried(self, act: Callable[[], None]) -> None:
        try:
            act()
        except UserError as error:
            self.failed.emit(error)
        except OSError as error:
            self.failed.emit(UserError("The kept enquiry could not be removed.", fix=f"{error.strerror}."))
