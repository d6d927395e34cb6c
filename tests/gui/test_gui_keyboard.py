"""Everything by keyboard alone."""

from __future__ import annotations

import pytest
from harness import STAGES, Bench, Count
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from keyapp.gui.session import Stage
from keyapp.model import Choice, LeadAnswer, Sureness

CTRL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


def test_from_the_first_question_to_the_result(bench: Bench) -> None:
    assert bench.focused() == "hurt-no"
    bench.press(Qt.Key.Key_Space)
    assert bench.session.stage is Stage.SETTINGS
    bench.tab_to("spot")
    bench.press(Qt.Key.Key_Down)
    bench.tab_to("told")
    bench.type("wolf spider")
    bench.tab_to("go-on")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.case.settings.told == "wolf spider"
    assert bench.focused() == "lead-first"
    for _ in range(3):
        bench.press(Qt.Key.Key_Right)
        assert bench.focused() == "lead-second"
        bench.press(Qt.Key.Key_Return)
    bench.press(Qt.Key.Key_Right)
    bench.tab_to("sureness-sure")
    bench.press(Qt.Key.Key_Right)
    bench.tab_to("next")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.stage is Stage.RESULT
    last = bench.session.case.answers[-1]
    assert isinstance(last, LeadAnswer)
    assert (last.choice, last.sureness) == (Choice.SECOND, Sureness.THINK_SO)


def test_the_leads_are_one_stop_and_arrows_go_round(bench: Bench) -> None:
    bench.go()
    count = Count(bench.session.changed)
    bench.press(Qt.Key.Key_Left)
    assert bench.focused() == "lead-neither"
    bench.press(Qt.Key.Key_Down)
    assert bench.focused() == "lead-first"
    assert bench.session.lead_draft.choice is Choice.FIRST
    bench.press(Qt.Key.Key_Tab)
    assert not bench.focused().startswith("lead-first")
    assert bench.focused() not in ("lead-second", "lead-cant-tell", "lead-neither")
    bench.press(Qt.Key.Key_Tab, SHIFT)
    assert bench.focused() == "lead-first"
    assert count.times == 0


def test_space_picks_the_first_lead(bench: Bench) -> None:
    bench.go()
    bench.press(Qt.Key.Key_Space)
    assert bench.session.lead_draft.choice is Choice.FIRST


def test_return_without_a_pick_stays(bench: Bench) -> None:
    bench.go()
    bench.press(Qt.Key.Key_Return)
    assert bench.session.case.answers == ()


def test_return_leads_to_the_view_question_first(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.press(Qt.Key.Key_Space)
    bench.press(Qt.Key.Key_Return)
    assert bench.focused() == "lead-view-yes"
    bench.press(Qt.Key.Key_Space)
    bench.tab_to("next")
    bench.press(Qt.Key.Key_Space)
    assert len(bench.session.case.answers) == 2


def test_undo_and_redo_by_key(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.press(Qt.Key.Key_Z, CTRL)
    assert bench.session.case.answers == ()
    bench.press(Qt.Key.Key_Z, CTRL | SHIFT)
    assert len(bench.session.case.answers) == 1


def test_a_report_by_keyboard(bench: Bench) -> None:
    bench.go()
    bench.tab_to("report-seen")
    bench.press(Qt.Key.Key_Space)
    assert bench.focused() == "characters"
    for _ in range(3):
        bench.press(Qt.Key.Key_Down)
    character = bench.session.keyset.characters[bench.session.seen_draft.character]
    bench.tab_to(f"state-{character.states[0].id}")
    bench.press(Qt.Key.Key_Space)
    bench.tab_to("give")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.case.note(character.id) is not None


@pytest.mark.parametrize("stage", STAGES)
def test_tab_goes_round_every_control_and_comes_back(bench: Bench, stage: Stage) -> None:
    bench.to(stage)
    start = bench.focused()
    seen = []
    for _ in range(80):
        bench.press(Qt.Key.Key_Tab)
        seen.append(bench.focused())
        if bench.focused() == start:
            break
    assert start
    assert seen[-1] == start
    assert "" not in seen
    assert {"rail-work", "rail-emergency", "rail-theme"} <= {*seen, start}


@pytest.mark.parametrize("stage", STAGES)
def test_what_has_the_focus_is_in_view(bench: Bench, stage: Stage) -> None:
    bench.window.resize(820, 520)
    bench.to(stage)
    page = bench.window.page
    assert page is not None
    for _ in range(40):
        bench.press(Qt.Key.Key_Tab)
        focused = bench.window.focusWidget()
        assert isinstance(focused, QWidget)
        assert not focused.visibleRegion().isEmpty(), focused.objectName()
