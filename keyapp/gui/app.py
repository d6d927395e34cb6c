"""Builds every object of the window once and joins them; the only place that does."""

from __future__ import annotations

import signal
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from keyapp.errors import ProgramError, UserError
from keyapp.folders import LEARNED_NAME, images_folder, keys_folder, state_folder
from keyapp.gui.figures import Figures
from keyapp.gui.kit import Kit
from keyapp.gui.look import Look, app_icon, load_fonts
from keyapp.gui.main_window import MainWindow
from keyapp.gui.opening import Opening
from keyapp.gui.reporter import Reporter, start_log
from keyapp.gui.session import Session
from keyapp.gui.singletons import keep_singletons

if TYPE_CHECKING:
    from keyapp.learn import Opened

__all__ = ["App", "make_application", "run"]


class App(QObject):
    """Everything the window is made of."""

    def __init__(self, keys: Path, images: Path, state: Path | None, language: str = "en") -> None:
        super().__init__()
        self.reporter = Reporter()
        self.look = Look()
        self.look.apply()
        self.kit = Kit(self.look, Figures(images / "figures"))
        self.session = Session(self.reporter, language=language)
        self._state = state
        self.window = MainWindow(self.session, self.kit, self.reporter)
        self.opening = Opening(keys, language, self, state / LEARNED_NAME if state is not None else None)
        self.opening.learned.connect(self._on_learned)
        self.opening.ready.connect(self._on_ready)
        self.opening.failed.connect(self._on_failed)
        self.opening.broke.connect(self._on_broke)

    def start(self) -> None:
        """Show the window, then open the key."""
        self.window.show()
        QTimer.singleShot(0, self.opening.start)

    def stop(self) -> None:
        """End what runs beside the window."""
        self.opening.wait()
        self.session.close()

    def _on_ready(self, enquiry: object, words: object) -> None:
        from keyapp.wording import Words
        from keyapp.work import Enquiry, Keeper

        if not isinstance(enquiry, Enquiry) or not isinstance(words, Words):
            raise ProgramError("the key was opened as something else")
        self.session.open(enquiry, words, Keeper(self._state) if self._state is not None else None)

    def _on_learned(self, opened: Opened) -> None:
        """Say in the message bar what confirmed calls have changed, or why they have not."""
        if opened.problem is not None:
            self.reporter.tell(opened.problem)
        elif opened.note:
            self.reporter.note(opened.note)

    def _on_failed(self, error: UserError, problems: tuple[str, ...]) -> None:
        self.window.show_no_key(error, problems)

    def _on_broke(self, error: BaseException) -> None:
        self.reporter.fault(error)
        self.window.show_no_key(
            UserError("The key could not be opened.", fix="Details are in the log. Install the program anew."), ()
        )


def make_application(argv: Sequence[str]) -> QApplication:
    """The one QApplication, with the bundled fonts and the program's names."""
    keep_singletons()
    application = QApplication.instance()
    if not isinstance(application, QApplication):
        application = QApplication(list(argv))
    application.setApplicationName("keyapp")
    application.setDesktopFileName("keyapp")
    application.setStyle("Fusion")
    application.setWindowIcon(app_icon())
    load_fonts()
    return application


def run(argv: Sequence[str]) -> int:
    """Open the window and stay until it is closed; returns the exit code."""
    start_log()
    application = make_application([sys.argv[0] if not argv else argv[0], *argv[1:]])
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    app = App(keys_folder(), images_folder(), state_folder())
    app.reporter.take_over()
    app.start()
    code = application.exec()
    app.stop()
    app.reporter.hand_back()
    return code
