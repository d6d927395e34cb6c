"""A window over the tiny key, and the rule that a Qt warning fails the test."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from harness import Bench, watch_qt
from PySide6.QtWidgets import QApplication

from keyapp.gui.app import make_application


@pytest.fixture(scope="session")
def application() -> QApplication:
    return make_application(["keyapp"])


@pytest.fixture(autouse=True)
def no_qt_warning(application: QApplication) -> Iterator[list[str]]:
    with watch_qt() as heard:
        yield heard
    assert heard == []


@pytest.fixture
def bench(application: QApplication, tmp_path: Path) -> Iterator[Bench]:
    """A window with the key open, at the first question."""
    made = Bench(tmp_path)
    made.open()
    yield made
    made.close()


@pytest.fixture
def closed(application: QApplication, tmp_path: Path) -> Iterator[Bench]:
    """A window whose key is not open yet."""
    made = Bench(tmp_path)
    yield made
    made.close()
