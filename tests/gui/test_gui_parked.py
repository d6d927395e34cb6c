"""Several enquiries at once: put aside, listed, and taken up exactly where they were."""

from __future__ import annotations

from pathlib import Path

import pytest
from harness import TO_COBWEB, Bench
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit

from keyapp.gui.session import Stage
from keyapp.model import Case, Choice
from keyapp.work import Shelf


def park(bench: Bench, label: str) -> None:
    bench.press(Qt.Key.Key_F4)
    line = bench.named("park-label")
    assert isinstance(line, QLineEdit)
    line.clear()
    bench.type(label)
    bench.press(Qt.Key.Key_Return)


def test_a_label_and_return_put_it_aside_and_begin_the_next(bench: Bench) -> None:
    bench.go(*TO_COBWEB[:2])
    before = bench.session.case
    park(bench, "web in the shed")
    assert bench.session.case == Case()
    assert bench.session.stage is Stage.HURT
    (one,) = bench.session.parked
    assert (one.label, one.case) == ("web in the shed", before)
    bench.session.flush()
    assert Shelf(bench.folder).all()[0] == (one,)


def test_the_list_says_age_and_what_is_not_ruled_out(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    park(bench, "first")
    bench.press(Qt.Key.Key_F4)
    said = bench.texts()
    assert "first" in said
    assert "Put aside just now · One answer" in said
    assert "Not ruled out: widow spiders" in said


@pytest.mark.parametrize("stage", [Stage.SETTINGS, Stage.KEY, Stage.SEEN, Stage.FEARED, Stage.RESULT, Stage.SHORT])
def test_it_comes_back_to_the_page_and_state_it_was_left_in(bench: Bench, stage: Stage) -> None:
    bench.go(*TO_COBWEB[:2])
    bench.session.see("skin")
    bench.session.draft_seen(states=frozenset({"dull"}))
    bench.session.fear_about("widows")
    bench.session.show_stage(stage)
    if stage is Stage.KEY:
        bench.session.look_at("start/web")
        bench.session.draft_lead(choice=Choice.FIRST)
    case, undo = bench.session.case, bench.session.enquiry.history
    shown = (bench.session.couplet, bench.session.seen_draft if stage is Stage.SEEN else None)
    draft = bench.session.lead_draft
    bench.settle()
    park(bench, "one")
    bench.go(Choice.FIRST)
    bench.press(Qt.Key.Key_F4)
    bench.click("take-up-0")
    session = bench.session
    assert session.case == case
    assert session.stage is stage
    assert (session.couplet, session.seen_draft if stage is Stage.SEEN else None) == shown
    assert session.enquiry.history == undo
    if stage is Stage.KEY:
        assert session.lead_draft == draft
    if stage is Stage.FEARED:
        assert session.feared == "widows"


def test_the_one_at_hand_is_put_aside_not_lost(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    park(bench, "first")
    bench.go(Choice.FIRST)
    second = bench.session.case
    bench.press(Qt.Key.Key_F4)
    bench.click("take-up-0")
    (left,) = bench.session.parked
    assert left.case == second
    assert "put aside" in bench.said[-1].what
    bench.press(Qt.Key.Key_F4)
    bench.click("take-up-0")
    assert bench.session.case == second
    assert [one.label for one in bench.session.parked] == ["first"]


def test_it_is_there_after_the_program_was_closed(application: QApplication, tmp_path: Path) -> None:
    first = Bench(tmp_path)
    first.open()
    first.go(*TO_COBWEB[:2])
    first.session.look_at("start/web")
    case, undo = first.session.case, first.session.enquiry.history
    park(first, "kept")
    first.close()
    second = Bench(tmp_path)
    second.open()
    assert second.session.offer is None
    second.click("open-parked")
    second.click("take-up-0")
    assert second.session.case == case
    assert second.session.couplet == "start/web"
    assert second.session.enquiry.history == undo
    second.session.flush()
    assert Shelf(tmp_path).all()[0] == ()
    second.close()


def test_a_label_with_a_telephone_number_is_refused_and_nothing_moves(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    before = bench.session.case
    park(bench, "call 555-010-0142")
    assert "telephone" in bench.said[-1].what
    assert bench.session.stage is Stage.PARKED
    assert bench.session.case is before
    assert bench.session.parked == ()


def test_letting_go_can_be_taken_back(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    park(bench, "one")
    (one,) = bench.session.parked
    bench.press(Qt.Key.Key_F4)
    bench.click("let-go-0")
    assert bench.session.parked == ()
    bench.session.flush()
    assert Shelf(bench.folder).all()[0] == ()
    bench.click("put-back")
    assert bench.session.parked == (one,)
    bench.session.flush()
    assert Shelf(bench.folder).all()[0] == (one,)


def test_what_the_key_no_longer_knows_is_left_out_and_the_lost_steps_are_said(
    application: QApplication, tmp_path: Path
) -> None:
    bench = Bench(tmp_path)
    bench.open()
    bench.go(Choice.SECOND)
    park(bench, "old")
    bench.session.flush()
    (path,) = Shelf(tmp_path).folder.glob("*.json")
    path.write_text(path.read_text(encoding="utf-8").replace("start/legs", "start/gone"), encoding="utf-8")
    bench.close()
    again = Bench(tmp_path)
    again.open()
    again.session.take_up(again.session.parked[0].id)
    again.settle()
    assert again.session.case.answers == ()
    assert "can no longer be undone" in again.said[-1].what
    assert "start/gone" in again.said[-1].fix
    assert not again.session.can_undo
    again.close()


def test_with_nothing_at_hand_there_is_nothing_to_put_aside(bench: Bench) -> None:
    bench.press(Qt.Key.Key_F4)
    assert not bench.has("park")
    assert not bench.session.park("nothing")
    assert bench.session.parked == ()
    bench.click("leave-parked")
    assert bench.session.stage is Stage.HURT


def test_words_of_injury_in_a_label_open_the_card(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.press(Qt.Key.Key_F4)
    bench.type("it bit her")
    assert bench.window.is_emergency
    bench.press(Qt.Key.Key_Escape)
    assert bench.session.stage is Stage.PARKED
