"""Answers given in the real window, each from the key press to the next couplet painted: for `keyapp bench answer`.

Prints the times in seconds, one a line, and on the last line the most memory taken in MB.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from PySide6.QtCore import QEvent, QEventLoop, QTimer

from keyapp.folders import images_folder
from keyapp.gui.app import App, make_application
from keyapp.gui.first_couplet import peak_mb
from keyapp.gui.session import Stage
from keyapp.gui.store import store_folder
from keyapp.model import Choice

__all__ = ["main"]

LONGEST = 40
"""More couplets than any way through a key has."""


def main(folder: Path, rounds: int) -> int:
    """Answer all couplets on one way `rounds` times over and print how long each answer took to show."""
    application = make_application(["keyapp"])
    app = App(folder, images_folder(), None, store=store_folder())
    loop = QEventLoop()
    app.opening.finished.connect(loop.quit)
    app.start()
    loop.exec()
    _settle()
    if not app.session.is_open:
        return 1
    for _ in range(rounds):
        app.session.start_again()
        app.session.set_hurt(False)
        app.session.go_on()
        _settle()
        for _ in range(LONGEST):
            if app.session.stage is not Stage.KEY or app.session.couplet is None:
                break
            app.session.draft_lead(choice=Choice.SECOND)
            if app.session.needs_view() is not None:
                app.session.draft_lead(view_seen=True)
            _settle()
            begin = time.perf_counter()
            app.session.answer()
            # Layouts first, then what is stale is painted and given to the screen: the work of one frame.
            application.sendPostedEvents(None, QEvent.Type.LayoutRequest.value)
            application.sendPostedEvents(app.window, QEvent.Type.UpdateRequest.value)
            application.processEvents()
            sys.stdout.write(f"{time.perf_counter() - begin}\n")
            _settle()
    sys.stdout.write(f"{peak_mb():.1f}\n")
    app.stop()
    return 0


def _settle() -> None:
    """Let everything that waits happen, as it does while a person reads."""
    loop = QEventLoop()
    QTimer.singleShot(60, loop.quit)
    loop.exec()


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), int(sys.argv[2])))
