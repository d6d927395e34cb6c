"""The window up to its first couplet, then gone: what `keyapp bench start` times.

Writes the moment at which the couplet is painted, in seconds of the system's clock.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from PySide6.QtCore import QTimer

from keyapp.folders import images_folder
from keyapp.gui.app import App, make_application

__all__ = ["main"]


def main(folder: Path) -> int:
    """Show the window, go on to the first couplet, leave once it is painted; 1 if it never shows."""
    application = make_application(["keyapp"])
    app = App(folder, images_folder(), None)
    # Queued behind the window's own handling of the same news, so that the key is open by then.
    app.opening.ready.connect(lambda *_: QTimer.singleShot(0, to_couplet))

    def to_couplet() -> None:
        app.session.go_on()
        application.processEvents()
        sys.stdout.write(f"{time.time()}\n")
        application.exit(0 if app.session.couplet else 1)

    app.start()
    code = application.exec()
    app.stop()
    return code


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
