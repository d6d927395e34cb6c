"""Is it a ...? And: what would help most, whether to go on asking, one question put by itself."""

from __future__ import annotations

import pytest
from harness import TO_COBWEB, TO_WIDOW, Bench, Count
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QLabel, QLineEdit, QWidget

from keyapp.gui.main_window import MainWindow
from keyapp.gui.session import Stage
from keyapp.model import Choice, Report
from keyapp.wording import why_line

CLEARING = ({"leg-count": "six", "skin": "dull"}, {"gait": "runs"}, {"web-shape": "orb"})


def report(bench: Bench, character: str, state: str) -> None:
    bench.session.see(character)
    bench.session.draft_seen(states=frozenset({state}), view_seen=True)
    bench.session.report()
    bench.settle()


def feared(bench: Bench, animal: str = "widows") -> None:
    bench.session.open_feared()
    bench.session.fear_about(animal)
    bench.settle()


def rule_out(bench: Bench) -> None:
    for part in CLEARING:
        for character, state in part.items():
            report(bench, character, state)


# Choosing --------------------------------------------------------------------------------------


def test_every_page_of_the_enquiry_has_a_way_to_it(bench: Bench) -> None:
    bench.session.set_hurt(False)
    bench.settle()
    for stage in (Stage.SETTINGS, Stage.KEY, Stage.RESULT):
        bench.session.show_stage(stage)
        bench.settle()
        bench.click("is-it-a")
        assert bench.session.stage is Stage.FEARED
        bench.click("leave-feared")
        assert bench.session.stage is stage


def test_a_danger_is_chosen_by_keyboard_and_left_again(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    before = bench.session.case
    bench.tab_to("is-it-a")
    bench.press(Qt.Key.Key_Space)
    assert bench.focused() == "feared-widows"
    bench.press(Qt.Key.Key_Space)
    assert "Is it one of the widow spiders?" in bench.texts()
    assert bench.focused() == "fear-ask"
    bench.tab_to("leave-feared")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.stage is Stage.KEY
    assert bench.session.couplet == "start/web"
    assert bench.session.case == before


def test_any_animal_is_found_by_a_name_typed(bench: Bench) -> None:
    bench.go()
    bench.session.open_feared()
    bench.settle()
    bench.tab_to("feared-name")
    bench.type("Wolff Spider")
    bench.press(Qt.Key.Key_Return)
    assert bench.session.feared == "wolf"
    assert "Is it this one: wolf spider?" in bench.texts()
    bench.click("feared-other")
    assert bench.has("feared-name")


def test_a_name_for_several_shows_them_to_choose_from(bench: Bench) -> None:
    bench.go()
    bench.session.open_feared()
    bench.session.find_feared("spider")
    bench.settle()
    assert "That name is in use for several." in bench.texts()
    assert bench.has("may-be-widows")
    bench.click("feared-orb")
    assert bench.session.feared == "orb"


def test_a_name_that_nothing_has_is_answered_with_what_to_do(bench: Bench) -> None:
    bench.go()
    bench.session.open_feared()
    bench.session.find_feared("zzqq")
    bench.settle()
    assert "zzqq" in bench.said[-1].what
    assert "widow spiders" in bench.said[-1].fix
    assert bench.session.feared == ""


def test_words_of_injury_typed_there_open_the_card_once(bench: Bench) -> None:
    bench.go()
    bench.session.open_feared()
    bench.settle()
    bench.tab_to("feared-name")
    bench.type("it bit")
    assert bench.window.is_emergency
    assert bench.session.case.settings.hurt is True
    bench.press(Qt.Key.Key_Escape)
    bench.session.heed("it bit me")
    assert not bench.window.is_emergency


# The animal ------------------------------------------------------------------------------------


def test_it_is_not_ruled_out_while_the_gate_holds_it(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    feared(bench)
    assert bench.named("fear-status").property("role") == "danger"
    shown = bench.texts()
    assert "Not ruled out: widow spiders. Do not handle." in shown
    assert "Still missing to rule it out" in shown
    assert "speak against widow" not in shown


def test_ruled_out_it_still_says_treat_as_unknown_and_what_to_check_again(bench: Bench) -> None:
    bench.go()
    rule_out(bench)
    assert bench.session.reading.not_ruled_out == ()
    feared(bench)
    shown = bench.texts()
    assert bench.named("fear-status").property("role") == "card"
    assert "Your answers speak against widow spiders." in shown
    assert "Treat it as unknown: do not handle." in shown
    assert "Check again before you rely on this." in shown
    assert bench.has("safety-line")
    bench.click("fear-again-0")
    assert bench.session.stage in (Stage.SEEN, Stage.KEY)


def test_evidence_stands_on_its_side_in_words_without_numbers(bench: Bench) -> None:
    bench.go()
    report(bench, "skin", "dull")
    report(bench, "web-shape", "tangle")
    feared(bench)
    for name, said in (("fear-for", "A tangle"), ("fear-against", "Dull")):
        texts = "\n".join(one.text() for one in bench.named(name).findChildren(QLabel))
        assert said in texts
        assert "speaks" in texts.lower()
    assert not any(char.isdigit() for char in bench.texts())


def test_a_character_that_never_clears_says_so(bench: Bench) -> None:
    bench.go()
    report(bench, "mark", "none")
    feared(bench)
    assert "This alone cannot rule it out, however sure you are. It hides." in bench.texts()


def test_the_best_question_is_put_alone_and_leads_back(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    feared(bench)
    best = bench.session.fear.best
    assert best is not None
    count = Count(bench.session.changed)
    bench.click("fear-ask")
    assert bench.session.stage is Stage.SEEN
    assert not bench.has("characters")
    states = bench.session.keyset.characters[best.character].states
    assert bench.focused() == f"state-{states[0].id}"
    bench.press(Qt.Key.Key_Space)
    bench.tab_to("give")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.stage is Stage.FEARED
    assert count.times == 1
    assert bench.session.case.note(best.character) is not None
    assert bench.session.fear.best is None or bench.session.fear.best.character != best.character


def test_cant_tell_is_kept_can_be_undone_and_is_not_asked_again(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    feared(bench)
    first = bench.session.fear.best
    assert first is not None
    bench.click("fear-ask")
    bench.click("seen-cant-tell")
    assert bench.session.stage is Stage.FEARED
    second = bench.session.fear.best
    assert second is not None
    assert second.character != first.character
    note = bench.session.case.note(first.character)
    assert isinstance(note, Report)
    assert bench.session.words.says_nothing(note)
    bench.session.undo()
    assert bench.session.stage is Stage.FEARED
    assert bench.session.fear.best == first


def test_undo_and_redo_stay_at_the_animal_and_follow(bench: Bench) -> None:
    bench.go()
    feared(bench)
    bench.session.ask("skin")
    bench.session.draft_seen(states=frozenset({"dull"}))
    bench.session.report()
    bench.settle()
    assert "What of skin? Dull" in bench.texts()
    bench.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert bench.session.stage is Stage.FEARED
    assert "What of skin? Dull" not in bench.texts()
    bench.press(Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert bench.session.stage is Stage.FEARED
    assert "What of skin? Dull" in bench.texts()


def test_starting_again_forgets_the_animal(bench: Bench) -> None:
    bench.go()
    feared(bench)
    bench.session.start_again()
    assert (bench.session.feared, bench.session.stage) == ("", Stage.HURT)


def test_tab_goes_round_and_everything_has_a_name_and_is_in_view(bench: Bench) -> None:
    bench.window.resize(820, 520)
    bench.go()
    report(bench, "skin", "dull")
    feared(bench)
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
    assert {"leave-feared", "feared-other", "rail-emergency"} <= set(seen)
    fields = [w for w in bench.window.findChildren(QWidget) if isinstance(w, QAbstractButton | QLineEdit)]
    assert [w.objectName() for w in fields if w.isVisible() and not w.accessibleName()] == []


@pytest.mark.parametrize("animal", ["", "widows", "wolf"])
def test_the_page_made_twice_shows_the_same(bench: Bench, animal: str) -> None:
    bench.go(*TO_WIDOW)
    bench.session.open_feared()
    bench.session.fear_about(animal)
    bench.settle()
    twin = MainWindow(bench.session, bench.kit, bench.reporter)
    twin.resize(bench.window.size())
    twin.show()
    bench.session.moved.emit()
    bench.settle()
    shown = [
        [one.text() for one in window.page.findChildren(QLabel) if one.isVisible()] for window in (bench.window, twin)
    ]
    assert shown[0] == shown[1]
    twin.close()
    twin.deleteLater()


# What would help most --------------------------------------------------------------------------


def test_what_would_help_most_is_shown_on_demand_with_its_reason(bench: Bench) -> None:
    bench.go()
    why = why_line(bench.session.words, bench.session.stop)
    assert why not in bench.texts()
    assert not bench.has("helps-ask")
    bench.click("fold-helps")
    assert bench.has("helps-ask")
    assert why in bench.texts()


def test_taking_it_opens_the_question_and_comes_back_to_the_couplet(bench: Bench) -> None:
    bench.go()
    bench.click("fold-helps")
    asked = bench.session.stop.question
    assert asked is not None
    bench.click("helps-ask")
    assert bench.session.stage is Stage.SEEN
    assert bench.session.seen_draft.character == asked.character
    bench.click("back")
    assert bench.session.stage is Stage.KEY
    assert bench.session.couplet == "start/legs"
    bench.click("helps-ask")
    bench.click("seen-cant-tell")
    assert bench.session.stage is Stage.KEY
    assert bench.session.stop.question is None or bench.session.stop.question.character != asked.character


def test_from_the_result_it_comes_back_to_the_result(bench: Bench) -> None:
    bench.go()
    bench.session.show_stage(Stage.RESULT)
    bench.settle()
    assert "Go on: more can be seen." in bench.texts()
    bench.click("helps-ask")
    assert bench.session.stage is Stage.SEEN
    bench.click("seen-cant-tell")
    assert bench.session.stage is Stage.RESULT


def test_a_report_that_was_not_asked_for_goes_on_along_the_key(bench: Bench) -> None:
    bench.go()
    bench.session.ask("skin")
    bench.session.see("gait")
    bench.session.draft_seen(states=frozenset({"hangs"}))
    bench.session.report()
    assert bench.session.stage is Stage.KEY


def test_the_result_says_when_to_stop_and_still_to_keep_away(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    assert bench.session.stage is Stage.RESULT
    assert not bench.has("helps-ask")
    assert "You can stop asking. The answers point to widow spiders. Keep away and ask." in bench.texts()


def test_cant_tell_stands_in_the_trail_as_cant_tell(bench: Bench) -> None:
    bench.go()
    bench.session.ask("skin")
    bench.session.cant_tell()
    bench.session.unfold("trail", True)
    bench.settle()
    assert "can't tell" in bench.texts()
    bench.session.see("skin")
    assert bench.session.seen_draft.states == frozenset()
