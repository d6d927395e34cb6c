"""The short way in the window: people first, quick questions by one key each, one action, no name before it."""

from __future__ import annotations

import pytest
from harness import Bench, Count
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QWidget

from keyapp.engine import Action
from keyapp.gui.session import Stage
from keyapp.model import Case, Evidence, Report, Sureness

WOLF = {"thing": "animal", "leg-count": "eight", "web-shape": "none", "skin": "dull", "gait": "runs", "mark": "none"}
INSECT = {"thing": "animal", "leg-count": "six"}
CLEAR = {"thing": "animal", "leg-count": "eight", "web-shape": "orb", "skin": "dull", "gait": "runs"}
ALONE = {**CLEAR, "carries": "nothing"}
WITH_SAC = {**CLEAR, "carries": "sac"}


def begin(bench: Bench, *, hurt: bool = False) -> None:
    bench.session.set_hurt(hurt)
    bench.window.hide_emergency()
    bench.session.open_short()
    bench.settle()


def answer_all(bench: Bench, shown: dict[str, str]) -> list[str]:
    """Answer every question, *can't tell* where nothing is said, looking further as long as that may help."""
    session, asked = bench.session, []
    while True:
        question = session.short.question
        if question is not None:
            asked.append(question)
            session.draft_short(state=shown.get(question, ""), cant_tell=question not in shown)
            session.answer_short()
        elif session.short.action is Action.KEEP_AWAY and session.can_ask_more_short():
            session.ask_more_short()
        else:
            bench.settle()
            return asked


def test_it_is_reached_from_the_first_page_and_asks_for_the_people_first(bench: Bench) -> None:
    bench.tab_to("short-way")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.stage is Stage.SHORT
    assert "Has anyone been bitten, stung or become unwell?" in bench.texts()
    assert bench.focused() == "hurt-no"
    bench.press(Qt.Key.Key_Space)
    assert bench.session.case.settings.hurt is False
    assert "What of thing?" in bench.texts()


@pytest.mark.parametrize("stage", [Stage.HURT, Stage.KEY, Stage.RESULT, Stage.FEARED])
def test_it_is_reached_by_one_key_and_leads_back(bench: Bench, stage: Stage) -> None:
    bench.session.set_hurt(False)
    bench.session.show_stage(stage)
    bench.settle()
    bench.press(Qt.Key.Key_F2)
    assert bench.session.stage is Stage.SHORT
    bench.click("back")
    assert bench.session.stage is stage


def test_it_works_before_the_key_is_open(closed: Bench) -> None:
    closed.press(Qt.Key.Key_F2)
    closed.click("hurt-yes")
    assert closed.window.is_emergency
    closed.press(Qt.Key.Key_Escape)
    assert "touch nothing" in closed.texts()
    closed.open()
    assert closed.named("action-keep-away")


def test_someone_hurt_opens_the_card_and_leaves_no_other_action(bench: Bench) -> None:
    bench.press(Qt.Key.Key_F2)
    bench.click("hurt-yes")
    assert bench.window.is_emergency
    bench.press(Qt.Key.Key_Escape)
    assert bench.has("action-keep-away")
    bench.click("open-emergency")
    assert bench.window.is_emergency


def test_a_number_picks_and_return_answers(bench: Bench) -> None:
    begin(bench)
    bench.press(Qt.Key.Key_1)
    assert bench.session.short_draft.state == "animal"
    assert bench.session.case.answers == ()
    bench.press(Qt.Key.Key_Return)
    note = bench.session.case.note("thing")
    assert isinstance(note, Report)
    assert note.states == {"animal"}
    assert note.evidence is Evidence.OWN_EYES


def test_nothing_picked_is_no_answer_and_the_last_number_is_cant_tell(bench: Bench) -> None:
    begin(bench)
    before = bench.session.case
    assert not bench.named("short-next").isEnabled()
    bench.press(Qt.Key.Key_Return)
    assert bench.session.case is before
    bench.press(Qt.Key.Key_9)
    assert bench.session.case is before
    bench.press(Qt.Key.Key_3)
    assert bench.session.short_draft.cant_tell
    bench.press(Qt.Key.Key_Return)
    assert bench.session.short.question not in (None, "thing")


def test_think_so_is_kept_with_the_answer(bench: Bench) -> None:
    begin(bench)
    bench.press(Qt.Key.Key_1)
    bench.click("short-think-so")
    bench.click("short-next")
    note = bench.session.case.note("thing")
    assert note is not None
    assert note.sureness is Sureness.THINK_SO


def test_back_takes_one_answer_back_and_then_leaves(bench: Bench) -> None:
    begin(bench)
    for _ in range(2):
        bench.press(Qt.Key.Key_1)
        bench.press(Qt.Key.Key_Return)
    assert len(bench.session.short.asked) == 2
    for left in (1, 0):
        bench.click("back")
        assert len(bench.session.short.asked) == left
        assert bench.session.stage is Stage.SHORT
    bench.click("back")
    assert bench.session.stage is not Stage.SHORT


def test_undo_and_redo_stay_on_the_short_way(bench: Bench) -> None:
    begin(bench)
    bench.press(Qt.Key.Key_1)
    bench.press(Qt.Key.Key_Return)
    second = bench.session.short.question
    bench.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert (bench.session.stage, bench.session.short.question) == (Stage.SHORT, "thing")
    bench.press(Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert (bench.session.stage, bench.session.short.question) == (Stage.SHORT, second)


@pytest.mark.parametrize("shown", [{}, INSECT, {"thing": "web"}, {"thing": "animal"}])
def test_unknown_or_unfinished_is_keep_away(bench: Bench, shown: dict[str, str]) -> None:
    begin(bench)
    answer_all(bench, shown)
    assert bench.has("action-keep-away")
    assert "Keep away and ask. Do not handle it." in bench.texts()
    assert not bench.has("short-steps")
    assert not bench.has("short-leaving")


def test_move_it_shows_the_steps_only_when_the_gate_allows(bench: Bench) -> None:
    begin(bench)
    asked = answer_all(bench, ALONE)
    assert asked[-1] == "carries"
    assert bench.session.reading.not_ruled_out == ()
    assert bench.has("action-move")
    assert bench.has("short-steps")
    assert "Leaving it is fine, and why" in bench.texts()
    assert "How long it will stay" in bench.texts()


def test_an_egg_sac_leaves_it_where_it_is(bench: Bench) -> None:
    begin(bench)
    answer_all(bench, WITH_SAC)
    assert bench.has("action-leave")
    assert not bench.has("short-steps")


@pytest.mark.parametrize("shown", [{}, ALONE, WITH_SAC])
def test_no_page_of_it_says_that_nothing_can_happen(bench: Bench, shown: dict[str, str]) -> None:
    begin(bench)
    answer_all(bench, shown)
    said = bench.texts().casefold()
    for word in ("safe", "harmless", "cannot hurt", "poisonous"):
        assert word not in said


def test_no_name_stands_before_the_action(bench: Bench) -> None:
    begin(bench)
    names = [t.title.say("en").casefold() for t in bench.session.keyset.taxa.values()]
    while bench.session.short.question is not None:
        said = bench.texts().casefold()
        assert [name for name in names if name in said] == []
        bench.session.draft_short(state=ALONE.get(bench.session.short.question, ""), cant_tell=False)
        if not bench.session.can_answer_short():
            bench.session.draft_short(cant_tell=True)
        bench.session.answer_short()
        bench.settle()


def test_what_was_answered_counts_in_the_full_key(bench: Bench) -> None:
    begin(bench)
    asked = answer_all(bench, WOLF)
    count = Count(bench.session.changed)
    bench.click("short-full")
    assert bench.session.stage in (Stage.KEY, Stage.RESULT)
    assert count.times == 0
    assert [one for one in asked if bench.session.case.note(one) is None] == []


def test_starting_again_leaves_the_short_way(bench: Bench) -> None:
    begin(bench)
    answer_all(bench, {})
    bench.session.start_again()
    assert bench.session.stage is Stage.HURT
    assert bench.session.case == Case()


def test_every_page_of_it_can_be_used_by_keyboard_in_a_small_window(bench: Bench) -> None:
    bench.window.resize(640, 480)
    begin(bench)
    for shown in (None, ALONE):
        if shown is not None:
            answer_all(bench, shown)
        start, seen = bench.focused(), []
        for _ in range(40):
            bench.press(Qt.Key.Key_Tab)
            focused = bench.window.focusWidget()
            assert isinstance(focused, QWidget)
            assert focused.accessibleName(), focused.objectName()
            assert not focused.visibleRegion().isEmpty(), focused.objectName()
            seen.append(bench.focused())
            if bench.focused() == start:
                break
        assert seen[-1] == start
        buttons = [w for w in bench.window.findChildren(QAbstractButton) if w.isVisible()]
        assert [w.objectName() for w in buttons if w.width() < 24 or w.height() < 24] == []
