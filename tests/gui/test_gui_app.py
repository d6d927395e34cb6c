"""Opening the program: the window first, then the key."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from harness import Bench
from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QApplication

from keyapp.gui.app import App
from keyapp.gui.figures import Figures
from keyapp.gui.singletons import keep_singletons

SHOW = """
import sys
from pathlib import Path
from keyapp.gui.app import App, make_application
application = make_application(["keyapp"])
app = App(Path("nowhere"), Path("nowhere"), None)
app.window.show()
application.processEvents()
print(sorted(name for name in ("numpy", "networkx", "yaml", "keyapp.engine") if name in sys.modules))
"""


def test_the_window_shows_before_anything_heavy_is_imported() -> None:
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    root = Path(__file__).resolve().parents[2]
    done = subprocess.run([sys.executable, "-c", SHOW], capture_output=True, text=True, cwd=root, env=environment)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == "[]"


def test_a_key_that_cannot_be_used_is_said_so(application: QApplication, tmp_path: Path) -> None:
    (tmp_path / "keys").mkdir()
    app = App(tmp_path / "keys", tmp_path, tmp_path / "state")
    loop = QEventLoop()
    app.opening.finished.connect(loop.quit)
    QTimer.singleShot(20_000, loop.quit)
    app.start()
    loop.exec()
    application.processEvents()
    assert type(app.window.page).__name__ == "NoKeyPage"
    app.stop()
    app.window.close()
    app.window.deleteLater()
    application.processEvents()


@pytest.mark.parametrize("ratio", [1.0, 2.0])
def test_figures_are_drawn_at_the_resolution_of_the_screen(tmp_path: Path, ratio: float) -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><rect width="50" height="100"/></svg>'
    (tmp_path / "half.svg").write_text(svg, encoding="utf-8")
    figures = Figures(tmp_path)
    drawn = figures.pixmap("half", 80, ratio)
    assert drawn.width() == round(80 * ratio)
    assert drawn.devicePixelRatio() == ratio
    image = drawn.toImage()
    assert image.pixelColor(round(10 * ratio), round(40 * ratio)).alpha() == 255
    assert image.pixelColor(round(60 * ratio), round(40 * ratio)).alpha() == 0
    assert figures.pixmap("half", 80, ratio).cacheKey() == drawn.cacheKey()


def colours_of(folder: Path) -> set[int]:
    drawn = Figures(folder).pixmap("bad", 80, 1.0).toImage()
    return {drawn.pixel(x, y) for x in range(80) for y in range(80)}


def test_a_missing_figure_has_a_plain_mark(tmp_path: Path) -> None:
    assert len(colours_of(tmp_path)) > 1


@pytest.mark.parametrize("text", ["", "not a picture"])
def test_a_broken_figure_has_a_plain_mark_and_is_warned_of(tmp_path: Path, no_qt_warning: list[str], text: str) -> None:
    (tmp_path / "bad.svg").write_text(text, encoding="utf-8")
    assert len(colours_of(tmp_path)) > 1
    assert "bad.svg" in no_qt_warning.pop()


def test_calls_into_the_library_do_not_use_the_interpreter_up(bench: Bench) -> None:
    """One release of it gives away a reference to None with every call; None must not run out of them."""
    before = [sys.getrefcount(one) for one in (None, True, False)]
    for _ in range(3000):
        QApplication.processEvents()
        bench.session.drafted.emit()
    enough = [1000 + count // 2 for count in before]
    assert all(sys.getrefcount(one) > least for one, least in zip((None, True, False), enough, strict=True))


def test_keeping_the_singletons_is_done_once(application: QApplication) -> None:
    keep_singletons()
    before = sys.getrefcount(None)
    keep_singletons()
    assert abs(sys.getrefcount(None) - before) < 10_000
