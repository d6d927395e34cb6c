"""The end of the result: the final check, what was told against what was seen, and the printed sheet."""

from __future__ import annotations

from pathlib import Path

import pytest
from harness import TO_COBWEB, Bench
from PySide6.QtCore import Qt

from keyapp.engine import Action, Claim
from keyapp.errors import UserError
from keyapp.gui.session import Stage
from keyapp.gui.widgets.print_row import PrintButton
from keyapp.model import Evidence, FinalCheck


@pytest.fixture
def ended(bench: Bench) -> Bench:
    """At the result of a cobweb spider, seen on a photo."""
    bench.session.set_up(evidence=Evidence.SPECIMEN)
    bench.go(*TO_COBWEB)
    for character, state in (("gait", "hangs"), ("mark", "none"), ("skin", "dull"), ("web-shape", "tangle")):
        bench.session.enquiry.report(character, [state], view_seen=True)
    bench.session.show_stage(Stage.RESULT)
    for _ in range(6):
        bench.settle()
    return bench


def top(bench: Bench) -> str:
    return bench.session.reading.verdict.candidates[0].taxa[0]


def test_yes_is_kept_with_a_warning_and_goes_with_the_next_answer(ended: Bench) -> None:
    ended.click("check-yes")
    assert ended.session.case.check == FinalCheck(top(ended), True)
    assert ended.focused() == "check-redo"
    assert "An answer can still be wrong." in ended.texts()
    ended.session.see("gait")
    ended.session.draft_seen(states=frozenset({"hangs"}))
    ended.session.report()
    assert ended.session.case.check is None


def test_not_quite_asks_for_the_part_lowers_the_claim_and_asks_that_question_again(ended: Bench) -> None:
    assert ended.session.reading.verdict.claim is not Claim.ONE_OF
    ended.tab_to("check-no")
    ended.press(Qt.Key.Key_Space)
    assert ended.focused() == "part-first"
    assert ended.session.case.check is None
    ended.click("part-skin")
    assert ended.session.case.check == FinalCheck("cobweb", False, "skin")
    assert ended.session.reading.verdict.claim is Claim.ONE_OF
    assert ended.session.reading.verdict.actions == (Action.KEEP_AWAY,)
    assert "You said that it does not quite fit." in ended.texts()
    assert ended.focused() == "check-ask"
    ended.press(Qt.Key.Key_Space)
    assert ended.session.stage is Stage.SEEN
    assert ended.session.seen_draft.character == "skin"
    ended.session.draft_seen(states=frozenset({"dull"}))
    ended.session.report()
    assert ended.session.stage is Stage.RESULT
    assert ended.session.case.check is None


def test_something_else_that_does_not_fit_stays_until_checked_again(ended: Bench) -> None:
    ended.click("check-no")
    ended.click("part-other")
    assert ended.session.case.check == FinalCheck("cobweb", False)
    assert ended.session.reading.verdict.claim is Claim.ONE_OF
    ended.click("check-redo")
    assert ended.session.case.check is None
    assert ended.has("check-yes")


def test_the_check_can_be_undone_and_is_kept(ended: Bench) -> None:
    ended.click("check-yes")
    ended.session.flush()
    kept = ended.session._saver
    assert kept is not None
    ended.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert ended.session.case.check is None
    assert ended.session.stage is Stage.RESULT
    ended.press(Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert ended.session.case.check is not None


def test_what_was_told_stands_beside_what_was_seen(bench: Bench) -> None:
    bench.session.set_up(told="button spider")
    bench.go(*TO_COBWEB)
    bench.session.show_stage(Stage.RESULT)
    for _ in range(6):
        bench.settle()
    said = bench.texts()
    assert "What you were told against what you saw" in said
    assert "You were told: button spider." in said
    assert "That is a name for another animal." in said
    assert "Dull, with a pattern." in said


def wait(bench: Bench) -> None:
    if bench.session._printing is not None:
        bench.session._printing.wait()
    bench.settle()


def pages(bench: Bench, monkeypatch: pytest.MonkeyPatch, target: Path | None) -> None:
    monkeypatch.setattr(PrintButton, "choose", staticmethod(lambda _parent: target))
    bench.session.images = bench.folder
    bench.session.printed.emit()


def test_the_sheet_is_written_beside_the_window(ended: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    import keyapp.sheets

    target = ended.folder / "sheet.pdf"
    pages(ended, monkeypatch, target)
    monkeypatch.setattr(keyapp.sheets, "sheet_pdf", lambda *_a, **_k: b"%PDF-made")
    ended.click("print-sheet")
    wait(ended)
    assert target.read_bytes() == b"%PDF-made"
    assert str(target) in ended.said[-1].what
    assert ended.named("print-sheet").isEnabled()


def test_while_it_is_written_the_page_says_so(ended: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    import threading

    import keyapp.sheets

    go = threading.Event()
    pages(ended, monkeypatch, ended.folder / "sheet.pdf")

    def slow(*_a: object, **_k: object) -> bytes:
        go.wait(20)
        return b"%PDF"

    monkeypatch.setattr(keyapp.sheets, "sheet_pdf", slow)
    ended.click("print-sheet")
    assert ended.has("printing")
    assert not ended.named("print-sheet").isEnabled()
    go.set()
    wait(ended)
    assert not ended.has("printing")


@pytest.mark.parametrize("trouble", ["disk", "sheet", "fault"])
def test_trouble_with_the_sheet_is_told(
    ended: Bench, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture, trouble: str
) -> None:
    import keyapp.sheets

    errors = {"sheet": UserError("The sheet does not fit.", fix="Settle more."), "fault": ValueError("ours")}

    def make(*_a: object, **_k: object) -> bytes:
        if trouble in errors:
            raise errors[trouble]
        return b"%PDF"

    pages(ended, monkeypatch, ended.folder / "nowhere" / "sheet.pdf")
    monkeypatch.setattr(keyapp.sheets, "sheet_pdf", make)
    ended.click("print-sheet")
    wait(ended)
    assert (
        ended.said[-1].what
        == {
            "disk": "The sheet could not be written.",
            "sheet": "The sheet does not fit.",
            "fault": "Something went wrong inside the program. That is our fault.",
        }[trouble]
    )
    assert bool(caplog.records) is (trouble == "fault")
    assert ended.named("print-sheet").isEnabled()


def test_choosing_no_file_writes_nothing(ended: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    pages(ended, monkeypatch, None)
    ended.click("print-sheet")
    assert not ended.session.is_printing
