"""Builds every object of the window once and joins them; the only place that does."""

from __future__ import annotations

import gc
import signal
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from keyapp.errors import ProgramError, UserError
from keyapp.folders import LEARNED_NAME, images_folder, keys_folder, state_folder
from keyapp.gui.early import Early
from keyapp.gui.figures import Figures
from keyapp.gui.first_page import place_of, read_first_page
from keyapp.gui.kit import Kit
from keyapp.gui.look import Look, app_icon, load_fonts, load_more_fonts
from keyapp.gui.main_window import MainWindow
from keyapp.gui.opening import Opening
from keyapp.gui.own_file import OwnFile, left_open
from keyapp.gui.reporter import Reporter, start_log
from keyapp.gui.session import Session
from keyapp.gui.singletons import keep_singletons
from keyapp.gui.store import store_folder

if TYPE_CHECKING:
    from keyapp.learn import Opened

__all__ = ["App", "make_application", "run"]


class App(QObject):
    """Everything the window is made of.

    Args:
        keys, images: folders of the key and of its pictures.
        state: folder of the user's own state, or what finds it once the window shows; None keeps nothing.
        language: of all texts.
        store: folder of what only makes it faster; None keeps nothing there.
    """

    def __init__(
        self,
        keys: Path,
        images: Path,
        state: Path | Callable[[], Path] | None,
        language: str = "en",
        store: Path | None = None,
    ) -> None:
        super().__init__()
        # Nothing made until the window shows is garbage; looking for it would only take time.
        gc.disable()
        self.reporter = Reporter()
        self.look = Look()
        self.look.apply()
        self.kit = Kit(self.look, Figures(images / "figures", store / "pictures" if store is not None else None))
        self.session = Session(self.reporter, language=language)
        self._keys = keys
        self.session.images, self.session.edition = images, self._edition
        self._state = (lambda: state) if isinstance(state, Path) else state
        self._own: OwnFile | None = None
        self._first = place_of(store, keys, language) if store is not None else None
        self.window = MainWindow(self.session, self.kit, self.reporter)
        self.opening = Opening(keys, language, self, self._learned, self._first)
        self.opening.learned.connect(self._on_learned)
        self.opening.ready.connect(self._on_ready)
        self.opening.failed.connect(self._on_failed)
        self.opening.broke.connect(self._on_broke)

    def start(self) -> None:
        """Show the window, then open the key."""
        self.window.shown.connect(self._on_shown)
        self.window.show()

    def get_early(self) -> None:
        """Get the first couplet ready to be shown before the key is open, where it was kept."""
        page = read_first_page(self._first) if self._first is not None else None
        if page is not None and self.session.early is None and not self.session.is_open:
            self.session.early = Early(page)

    def stop(self) -> None:
        """End what runs beside the window."""
        self.opening.wait()
        self.session.close()
        if self._own is not None:
            self._own.let_go()
            self._own = None

    def _on_shown(self) -> None:
        self.opening.start()
        gc.freeze()
        gc.enable()
        load_more_fonts()
        self.window.setWindowIcon(app_icon())
        self.look.take_time()
        self.window.get_ready()
        # An enquiry that was left open comes before a new one.
        if self._state is None or not left_open(self._state()):
            self.get_early()

    def _edition(self) -> str:
        from keyapp.keyfile.edition import edition_of

        return edition_of(self._keys, self._learned())

    def _learned(self) -> Path | None:
        return self._state() / LEARNED_NAME if self._state is not None else None

    def _on_ready(self, enquiry: object, words: object) -> None:
        from keyapp.wording import Words
        from keyapp.work import Enquiry, Keeper

        if not isinstance(enquiry, Enquiry) or not isinstance(words, Words):
            raise ProgramError("the key was opened as something else")
        keeper = None
        if self._state is not None:
            keeper = Keeper(self._state())
            own = self._own = OwnFile(self._state())
            keeper.path = own.path
            if own.is_second:
                self.reporter.note(
                    self.tr("Another window of the program is open."),
                    self.tr("Each keeps its own enquiry; nothing you do here changes the other."),
                )
        self.session.open(enquiry, words, keeper)

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
    gc.disable()  # until the window shows, see App
    keep_singletons()
    application = QApplication.instance()
    if not isinstance(application, QApplication):
        # Named before the application is made, the style is made once and not twice.
        QApplication.setStyle("Fusion")
        application = QApplication(list(argv))
    application.setApplicationName("keyapp")
    application.setDesktopFileName("keyapp")
    load_fonts()
    return application


def run(argv: Sequence[str]) -> int:
    """Open the window and stay until it is closed; returns the exit code."""
    start_log()
    application = make_application([sys.argv[0] if not argv else argv[0], *argv[1:]])
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    app = App(keys_folder(), images_folder(), state_folder, store=store_folder())
    app.reporter.take_over()
    app.start()
    code = application.exec()
    app.stop()
    app.reporter.hand_back()
    return code
