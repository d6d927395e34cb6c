"""The window up to its first couplet and the first answer, then gone: what `keyapp bench start` times.

Prints the moments, in seconds of the system's clock, at which the couplet was painted and at which the
answer to it was in the case, and the most memory taken by then in MB. A person who is as quick as that
leaves the first question and the settings alone, and answers at once.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from PySide6.QtCore import QTimer

from keyapp.folders import images_folder, state_folder
from keyapp.gui.app import App, make_application
from keyapp.gui.store import store_folder

__all__ = ["main", "peak_mb"]


def main(folder: Path) -> int:
    """Show the window at the first couplet, answer it, leave once that counts; 1 if it never does."""
    application = make_application(["keyapp"])
    app = App(folder, images_folder(), state_folder, store=store_folder())
    app.get_early()
    painted = [0.0]

    def on_painted() -> None:
        painted[0] = time.time()
        app.session.pick_early(CHOICES[0])
        app.session.answer_early()

    def on_open() -> None:
        if not painted[0]:
            # Nothing was kept of the first couplet: it shows only now.
            app.session.go_on()
            application.processEvents()
            painted[0] = time.time()
            app.session.draft_lead(choice=CHOICES[0])
            app.session.answer()
        accepted = time.time()
        is_given = bool(app.session.case.answers)
        sys.stdout.write(f"{painted[0]} {accepted} {peak_mb():.1f}\n")
        application.exit(0 if is_given else 1)

    from keyapp.gui.widgets.lead_cards import CHOICES

    app.opening.ready.connect(lambda *_: QTimer.singleShot(0, on_open))
    app.session.go_on()
    if app.session.early is not None:
        app.window.shown.connect(on_painted)
    app.start()
    code = application.exec()
    app.stop()
    return code


def peak_mb() -> float:
    """The most memory this process has taken, in MB; 0 where the system does not say."""
    try:
        import resource
    except ImportError:
        return 0.0
    taken = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return taken / (1024 * 1024) if sys.platform == "darwin" else taken / 1024


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
