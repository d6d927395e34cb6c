"""The emergency card: one key away everywhere, also without a key."""

from __future__ import annotations

import pytest
from harness import STAGES, Bench
from PySide6.QtCore import Qt

from keyapp.errors import UserError
from keyapp.gui.session import Stage
from keyapp.model.injury import injury_words


@pytest.mark.parametrize("stage", STAGES)
def test_f1_opens_the_card_from_every_page_and_escape_goes_back(bench: Bench, stage: Stage) -> None:
    bench.to(stage)
    before, page = bench.focused(), bench.window.page
    bench.press(Qt.Key.Key_F1)
    assert bench.window.is_emergency
    assert "Call 911 now" in bench.texts()
    assert "Poison Help 1-800-222-1222" in bench.texts()
    bench.press(Qt.Key.Key_Escape)
    assert bench.window.page is page
    assert bench.focused() == before


def test_the_card_works_before_the_key_is_open(closed: Bench) -> None:
    closed.press(Qt.Key.Key_F1)
    shown = closed.texts()
    assert "Call 911 now" in shown
    assert "Poison Help 1-800-222-1222" in shown
    assert "local emergency number" in shown


def test_the_card_works_when_the_key_cannot_be_used(closed: Bench) -> None:
    closed.window.show_no_key(UserError("The key has 1 problem.", where="keys", fix="Mend it."), ("a.yaml:3: wrong",))
    closed.settle()
    assert "Treat every animal as unknown: do not handle." in closed.texts()
    closed.click("open-emergency")
    assert "Poison Help 1-800-222-1222" in closed.texts()
    closed.press(Qt.Key.Key_Escape)
    assert "The key cannot be used" in closed.texts()


def test_someone_hurt_sees_the_card_first(bench: Bench) -> None:
    bench.click("hurt-yes")
    assert bench.window.is_emergency
    bench.press(Qt.Key.Key_Escape)
    assert bench.session.stage is Stage.SETTINGS
    assert bench.session.case.settings.hurt is True


def test_an_answer_given_before_the_key_is_open_is_kept(closed: Bench) -> None:
    closed.click("hurt-no")
    assert closed.session.stage is Stage.SETTINGS
    closed.open()
    assert closed.session.case.settings.hurt is False
    assert closed.session.stage is Stage.SETTINGS
    assert closed.has("go-on")


def test_the_numbers_follow_the_region(bench: Bench) -> None:
    bench.window.show_emergency()
    bench.settle()
    assert "Outside the regions of this key" in bench.texts()
    bench.session.set_up(region="GA")
    bench.settle()
    assert "Outside the regions of this key" not in bench.texts()
    assert "Call 911 now" in bench.texts()


@pytest.mark.parametrize("kind", ["spider", "scorpion", "tick", "sting", "unknown"])
def test_first_aid_by_kind(bench: Bench, kind: str) -> None:
    bench.window.show_emergency()
    bench.settle()
    bench.click(f"aid-{kind}")
    assert f"First aid for {kind}." in bench.texts()


def test_words_of_injury_open_the_card_as_they_are_typed(bench: Bench) -> None:
    bench.click("hurt-no")
    bench.tab_to("told")
    bench.type("It bit")
    assert bench.window.is_emergency
    assert bench.session.case.settings.hurt is True
    assert bench.session.case.settings.told == "It bit"
    bench.press(Qt.Key.Key_Escape)
    assert bench.focused() == "told"
    bench.type(" me")
    assert not bench.window.is_emergency
    bench.tab_to("go-on")
    assert bench.session.case.settings.told == "It bit me"


def test_hurt_can_be_set_right_on_the_card(bench: Bench) -> None:
    bench.click("hurt-yes")
    bench.click("aid-hurt")
    assert bench.session.case.settings.hurt is False
    assert bench.window.is_emergency


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("It BIT me", {"bit"}),
        ("a bit of web", set()),
        ("a rabbit", set()),
        ("I can’t  breathe", {"can't breathe"}),
        ("", set()),
    ],
)
def test_words_of_injury_are_whole_words(text: str, found: set[str]) -> None:
    assert injury_words(text, ["bit", "can't breathe"]) == found


def test_the_result_of_someone_hurt_opens_with_help(bench: Bench) -> None:
    bench.go(hurt=True)
    bench.window.hide_emergency()
    bench.session.show_stage(Stage.RESULT)
    bench.settle()
    assert "Someone is hurt. See to that first." in bench.texts()
    bench.click("open-emergency")
    assert bench.window.is_emergency
