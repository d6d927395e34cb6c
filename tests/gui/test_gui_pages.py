"""Pages: they follow the session, can be made twice, and can be told by name."""

from __future__ import annotations

import pytest
from harness import STAGES, TO_COBWEB, TO_WIDOW, Bench
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QScrollArea,
    QWidget,
)

from keyapp.gui.look import Mode
from keyapp.gui.main_window import MainWindow
from keyapp.gui.session import Stage
from keyapp.model import Choice, Sureness

INTERACTIVE = (QAbstractButton, QComboBox, QLineEdit, QAbstractSpinBox, QAbstractItemView)


def interactive(window: QWidget) -> list[QWidget]:
    found = [w for w in window.findChildren(QWidget) if isinstance(w, INTERACTIVE) and w.isVisible()]
    return [w for w in found if not w.objectName().startswith("qt_")]


@pytest.mark.parametrize("stage", STAGES)
def test_everything_one_can_use_has_a_name_and_room(bench: Bench, stage: Stage) -> None:
    bench.to(stage)
    found = interactive(bench.window)
    assert len(found) > 3
    assert [w for w in found if not w.accessibleName()] == []
    assert [w.objectName() for w in found if w.width() < 24 or w.height() < 24] == []
    assert [w for w in found if w.objectName() == ""] == []


def test_the_emergency_card_has_names_and_room(bench: Bench) -> None:
    bench.window.show_emergency()
    bench.settle()
    found = interactive(bench.window)
    assert [w for w in found if not w.accessibleName() or not w.objectName()] == []
    assert [w.objectName() for w in found if w.width() < 24 or w.height() < 24] == []


def portrait(window: MainWindow) -> QImage:
    """The window as it looks with the focus on its last control."""
    window.activateWindow()
    QApplication.processEvents()
    window.rail.theme.setFocus(Qt.FocusReason.TabFocusReason)
    QApplication.processEvents()
    return window.centralWidget().grab().toImage()


@pytest.mark.parametrize("stage", STAGES)
def test_a_page_made_twice_looks_the_same(bench: Bench, stage: Stage) -> None:
    bench.to(stage)
    bench.session.draft_lead(choice=Choice.SECOND, sureness=Sureness.THINK_SO)
    bench.session.draft_seen(states=frozenset({"orb"}))
    bench.session.unfold("standing", True)
    bench.session.unfold("trail", True)
    bench.settle()
    twin = MainWindow(bench.session, bench.kit, bench.reporter)
    twin.resize(bench.window.size())
    twin.show()
    bench.session.moved.emit()
    bench.settle()
    assert portrait(bench.window) == portrait(twin)
    twin.close()
    twin.deleteLater()


def test_both_windows_follow_one_session(bench: Bench) -> None:
    twin = MainWindow(bench.session, bench.kit, bench.reporter)
    twin.show()
    bench.go(Choice.SECOND)
    for window in (bench.window, twin):
        shown = [one.text() for one in window.page.findChildren(QLabel) if one.isVisible()]
        assert "Is there a web?" in shown
    twin.close()
    twin.deleteLater()


def test_the_rail_shows_only_the_pages_that_exist(bench: Bench) -> None:
    names = {w.objectName() for w in bench.window.rail.findChildren(QAbstractButton)}
    assert names == {"rail-work", "rail-families", "rail-emergency", "rail-big", "rail-theme"}


def test_the_theme_can_be_switched(bench: Bench) -> None:
    light = bench.window.grab().toImage().pixelColor(600, 700)
    bench.look.set_mode(Mode.DARK)
    bench.settle()
    dark = bench.window.grab().toImage().pixelColor(600, 700)
    assert light.lightness() > 200
    assert dark.lightness() < 60
    bench.look.set_mode(Mode.LIGHT)


def test_the_safety_line_names_the_danger_with_word_and_symbol(bench: Bench) -> None:
    bench.go()
    panel = bench.named("safety-line")
    assert panel.property("role") == "danger"
    assert "Not ruled out: widow spiders" in bench.texts()
    assert "To settle widow spiders" in bench.texts()


def test_the_danger_style_is_kept_for_danger(bench: Bench) -> None:
    bench.go(Choice.SECOND, Choice.SECOND, Choice.FIRST)
    bench.session.see("skin")
    bench.session.draft_seen(states=frozenset({"dull"}))
    bench.session.report()
    bench.session.see("gait")
    bench.session.draft_seen(states=frozenset({"runs"}))
    bench.session.report()
    bench.settle()
    assert bool(bench.session.reading.not_ruled_out) == (bench.named("safety-line").property("role") == "danger")


def test_the_view_question_appears_only_where_it_is_needed(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    assert not bench.has("lead-view-yes")
    bench.click("lead-first")
    assert bench.has("lead-view-yes")
    assert not bench.named("next").isEnabled()
    bench.click("lead-view-yes")
    assert bench.named("next").isEnabled()
    bench.click("lead-second")
    assert not bench.has("lead-view-yes")
    assert bench.named("next").isEnabled()


def test_a_contradiction_is_shown_with_a_way_to_both_answers(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    bench.session.see("web-shape")
    bench.session.draft_seen(states=frozenset({"orb"}))
    bench.session.report()
    bench.settle()
    assert bench.has("contradiction")
    bench.click("settle-0-second")
    assert bench.session.stage is Stage.SEEN
    assert bench.session.seen_draft.character == "web-shape"
    bench.session.take_back(bench.session.case.answers[-1])
    bench.settle()
    assert not bench.has("contradiction")


def test_two_neithers_propose_to_go_back(bench: Bench) -> None:
    bench.go()
    bench.answer(Choice.SECOND, sureness=Sureness.THINK_SO)
    bench.answer(Choice.NEITHER)
    bench.answer(Choice.NEITHER)
    assert bench.session.reading.go_back == "start/legs"
    bench.click("go-back-look")
    assert bench.session.couplet == "start/legs"


def test_the_trail_opens_and_leads_back_to_any_answer(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    bench.click("fold-trail")
    bench.click("change-step-start/web")
    assert bench.session.couplet == "start/web"
    assert "You answered this before" in bench.texts()


def test_change_answers_opens_the_trail_and_goes_there(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    bench.click("change-answers")
    assert bench.focused() == "fold-trail"
    assert bench.has("change-step-start/web")


def test_ticks_follow_what_is_picked(bench: Bench) -> None:
    bench.go()
    bench.session.see("web-shape")
    bench.session.draft_seen(states=frozenset({"orb"}))
    bench.settle()
    ticks = {name: bench.named(f"state-{name}").isChecked() for name in ("orb", "tangle", "none")}
    assert ticks == {"orb": True, "tangle": False, "none": False}


def test_a_page_turned_to_anew_starts_at_its_top(bench: Bench) -> None:
    bench.window.resize(820, 520)
    bench.go(*TO_WIDOW)
    bar = bench.window.page.findChild(QScrollArea).verticalScrollBar()
    bar.setValue(bar.maximum())
    bench.session.undo()
    bench.answer(Choice.SECOND)
    assert bench.session.stage is Stage.RESULT
    assert bar.value() == 0


def test_the_trail_marks_what_was_passed_and_set_aside(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    bench.session.look_at("start/legs")
    bench.answer(Choice.FIRST)
    bench.session.unfold("trail", True)
    bench.settle()
    assert "Set aside" in bench.texts()
    bench.session.start_again()
    bench.go(Choice.SECOND)
    bench.session.see("web-shape")
    bench.session.draft_seen(states=frozenset({"tangle"}))
    bench.session.report()
    bench.settle()
    assert "Passed: other answers settle it" in bench.texts()
    assert bench.session.couplet == "start/skin"
    bench.click("change-step-start/shape")
    assert bench.session.couplet == "start/shape"
    assert "Other answers settle this" in bench.texts()


def test_the_standing_is_words_and_bars_without_numbers(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.click("fold-standing")
    shown = bench.texts()
    assert "widow spiders: not ruled out" in shown
    assert "possible" in shown or "fits" in shown
    assert "%" not in shown


def test_an_unfinished_result_is_never_reassuring(bench: Bench) -> None:
    bench.session.set_hurt(False)
    bench.session.show_stage(Stage.RESULT)
    bench.settle()
    shown = bench.texts()
    assert "Treat as unknown: do not handle." in shown
    assert "Keep away and ask." in shown
    assert not bench.has("garden")


def test_a_danger_on_the_result_hides_what_would_reassure(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    shown = bench.texts()
    assert "Not ruled out: widow spiders" in shown
    assert "Caution for widow." in shown
    assert "Advice for widow." in shown
    assert "cup and a card" not in shown
    assert not bench.has("garden")
    assert "Poison Help 1-800-222-1222" in shown


def test_what_they_were_told_is_shown_only_at_the_end(bench: Bench) -> None:
    bench.session.set_hurt(False)
    bench.session.set_told("button spider")
    bench.session.go_on()
    bench.settle()
    assert "button spider" not in bench.texts()
    bench.session.show_stage(Stage.RESULT)
    bench.settle()
    assert "You were told: button spider." in bench.texts()


def test_look_alikes_stand_side_by_side_on_what_separates_them(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    shown = bench.texts()
    assert "The widow is glossy, the cobweb spider dull." in shown
    assert shown.count("Glossy") >= 1
    assert "Dull" in shown


def test_a_stage_kept_open_redraws_when_the_case_changes(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    assert "Not ruled out: widow spiders" in bench.texts()
    bench.session.undo()
    bench.settle()
    assert "Is it glossy?" in bench.texts()
