"""Messages: what happened, where, what next; our own faults to the log."""

from __future__ import annotations

import logging
import sys

import pytest
from harness import Bench, watch_qt
from PySide6.QtCore import qWarning

from keyapp.errors import ProgramError, UserError
from keyapp.gui.reporter import Tone


def test_a_message_shows_what_where_and_fix(bench: Bench) -> None:
    bench.reporter.tell(UserError("The disk is full.", where="/home", fix="Free some space."))
    bench.settle()
    bar = bench.window.message_bar
    assert bar.isVisible()
    assert bar.accessibleName() == "This did not work: The disk is full. (/home) Free some space."
    bench.click("close-message")
    assert not bar.isVisible()


def test_a_fault_is_logged_whole_and_owned_up_to(bench: Bench, caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.ERROR, logger="keyapp"):
        bench.reporter.fault(ProgramError("a promise broke"))
    assert bench.said[0].tone is Tone.FAULT
    assert "our fault" in bench.said[0].what
    assert "keyapp.log" in bench.said[0].fix
    assert "a promise broke" in caplog.text
    caplog.clear()


def test_what_nobody_caught_comes_to_the_reporter(bench: Bench, caplog: pytest.LogCaptureFixture) -> None:
    before = sys.excepthook
    bench.reporter.take_over()
    with caplog.at_level(logging.ERROR, logger="keyapp"):
        sys.excepthook(UserError, UserError("Mend this."), None)
        sys.excepthook(ValueError, ValueError("ours"), None)
    bench.reporter.hand_back()
    assert [m.tone for m in bench.said] == [Tone.PROBLEM, Tone.FAULT]
    assert sys.excepthook is before
    caplog.clear()


def test_a_fault_in_a_click_is_reported(bench: Bench, caplog: pytest.LogCaptureFixture) -> None:
    def broken() -> None:
        raise ValueError("in a slot")

    bench.named("hurt-no").clicked.connect(broken)
    bench.reporter.take_over()
    with caplog.at_level(logging.ERROR, logger="keyapp"):
        bench.click("hurt-no")
    bench.reporter.hand_back()
    assert [m.tone for m in bench.said] == [Tone.FAULT]
    assert "in a slot" in caplog.text
    caplog.clear()


def test_a_qt_warning_would_fail_a_test() -> None:
    with watch_qt() as heard:
        qWarning("heard")
    assert heard == ["heard"]
