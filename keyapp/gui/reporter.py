"""The one way out for messages: what can be mended goes to the message bar, our own faults to the log as well."""

from __future__ import annotations

import logging
import sys
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QCoreApplication, QObject, Signal

from keyapp.errors import UserError

__all__ = ["Message", "Reporter", "Tone", "log_file", "start_log"]

_LOG = logging.getLogger("keyapp")


class Tone(StrEnum):
    """What kind of message it is."""

    NOTE = "note"
    PROBLEM = "problem"
    FAULT = "fault"


@dataclass(frozen=True, slots=True)
class Message:
    """One message: what happened, where, what to do next."""

    tone: Tone
    what: str
    where: str = ""
    fix: str = ""


class Reporter(QObject):
    """Takes every message of the window.

    Signals:
        said: a message to show; argument: Message.
    """

    said = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._before: Callable[..., object] | None = None

    def note(self, what: str, fix: str = "") -> None:
        """Something the user should know; nothing is wrong."""
        self.said.emit(Message(Tone.NOTE, what, fix=fix))

    def tell(self, error: UserError) -> None:
        """Something the user or the world can mend."""
        _LOG.info("told the user: %s", error)
        self.said.emit(Message(Tone.PROBLEM, error.what, error.where, error.fix))

    def fault(self, error: BaseException) -> None:
        """A fault of ours: the whole of it to the log, an apology to the user."""
        _LOG.error("fault in the program", exc_info=(type(error), error, error.__traceback__))
        what = QCoreApplication.translate("Reporter", "Something went wrong inside the program. That is our fault.")
        fix = QCoreApplication.translate(
            "Reporter",
            "Your answers are kept. You can go on, or close the window and carry on later. Details are in {file}.",
        ).replace("{file}", str(log_file()))
        self.said.emit(Message(Tone.FAULT, what, fix=fix))

    def take_over(self) -> None:
        """Let every exception that nobody caught come here."""
        self._before = sys.excepthook
        sys.excepthook = self._on_exception

    def hand_back(self) -> None:
        """Put the exception hook back that was there before."""
        if self._before is not None:
            sys.excepthook = self._before
            self._before = None

    def _on_exception(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if isinstance(error, UserError):
            self.tell(error)
        elif issubclass(kind, Exception):
            self.fault(error.with_traceback(trace))
        else:
            sys.__excepthook__(kind, error, trace)


def log_file() -> Path:
    """Where faults are logged."""
    import platformdirs  # late: the window shows before it is needed

    return Path(platformdirs.user_log_dir("keyapp", appauthor=False)) / "keyapp.log"


def start_log() -> None:
    """Send the program's log to its file; without a place to write, faults go to the standard error."""
    handler: logging.Handler
    try:
        log_file().parent.mkdir(parents=True, exist_ok=True)
        handler = logging.FileHandler(log_file(), encoding="utf-8", delay=True)
    except OSError:
        handler = logging.StreamHandler()
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(message)s"))
    _LOG.addHandler(handler)
    _LOG.setLevel(logging.INFO)
