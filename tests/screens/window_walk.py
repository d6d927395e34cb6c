"""A whole enquiry in a real window, by keyboard alone: `python window_walk.py STATE_FOLDER PICTURE_FOLDER`.

Prints what it came to as JSON on the last line: the stage and case of the first window, what a second
window offered to carry on, and the platform. Any Qt warning is printed to the standard error.
"""

from __future__ import annotations

import json
import sys
import time
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from keyapp.folders import images_folder, keys_folder
from keyapp.gui.app import App, make_application
from keyapp.gui.session import Stage
from keyapp.work.casefile import case_to_json

LONGEST = 20.0
"""Seconds to wait for anything."""


def wait(until: object) -> None:
    end = time.monotonic() + LONGEST
    while not until():  # type: ignore[operator]
        if time.monotonic() > end:
            raise TimeoutError
        QTest.qWait(20)


def press(key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    QTest.keyClick(QApplication.focusWidget(), key, held)
    QTest.qWait(30)


def tab_to(name: str) -> None:
    for _ in range(60):
        if QApplication.focusWidget().objectName() == name:
            return
        press(Qt.Key.Key_Tab)
    raise LookupError(name)


def shoot(app: App, folder: Path, name: str) -> None:
    QTest.qWait(150)
    screen = QGuiApplication.primaryScreen()
    screen.grabWindow(app.window.winId()).save(str(folder / f"{name}.png"))


def opened(state: Path) -> App:
    app = App(keys_folder(), images_folder(), state)
    app.reporter.said.connect(lambda message: sys.stderr.write(f"{message}\n"))
    app.start()
    QTest.qWaitForWindowExposed(app.window)
    app.window.activateWindow()
    wait(lambda: app.session.is_open and QApplication.focusWidget() is not None)
    return app


def walk(app: App, pictures: Path) -> None:
    shoot(app, pictures, "1-start")
    press(Qt.Key.Key_F1)
    shoot(app, pictures, "2-emergency")
    press(Qt.Key.Key_Escape)
    tab_to("hurt-no")
    press(Qt.Key.Key_Space)
    shoot(app, pictures, "3-settings")
    tab_to("go-on")
    press(Qt.Key.Key_Space)
    for step in range(30):
        if app.session.stage is not Stage.KEY:
            break
        shoot(app, pictures, f"4-couplet-{step:02}")
        press(Qt.Key.Key_Right)
        press(Qt.Key.Key_Return)
        if app.session.needs_view() is not None and not app.session.can_answer():
            press(Qt.Key.Key_Space)
            tab_to("next")
            press(Qt.Key.Key_Space)
    wait(lambda: app.session.stage is Stage.RESULT)
    QTest.qWait(200)
    shoot(app, pictures, "5-result")
    look_up(app, pictures)


def look_up(app: App, pictures: Path) -> None:
    """From the result to the page of all families, to a kind, and back to the result."""
    press(Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(QApplication.focusWidget(), "dady longlegs")
    shoot(app, pictures, "7-families")
    tab_to("open-harvestman")
    press(Qt.Key.Key_Return)
    shoot(app, pictures, "8-kind")
    tab_to("families-work")
    press(Qt.Key.Key_Space)
    wait(lambda: app.session.stage is Stage.RESULT)


def main(state: Path, pictures: Path) -> None:
    application = make_application(["keyapp"])
    pictures.mkdir(parents=True, exist_ok=True)
    first = opened(state)
    walk(first, pictures)
    stage, case = str(first.session.stage), case_to_json(first.session.case)
    first.window.close()
    first.stop()
    second = opened(state)
    shoot(second, pictures, "6-carry-on")
    offered = case_to_json(second.session.offer) if second.session.offer is not None else ""
    second.window.close()
    second.stop()
    platform = application.platformName()
    sys.stdout.write(json.dumps({"platform": platform, "stage": stage, "case": case, "offered": offered}) + "\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
