"""What is said in plain words: found, offered, confirmed one by one; nothing enters by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from harness import Bench, Count
from PySide6.QtCore import Qt

from keyapp.gui.session import Stage
from keyapp.model import Evidence, Report, Sureness, View
from keyapp.notes import BetterQuestion, Found, Kind, Note, Span

TEXT = "it runs, no web, glossy, half an inch, in a room, huge"
SPAN = Span(0, 2)
FINDS = (
    Found(1, Kind.STATES, SPAN, "it runs", characters=("gait",), states=("runs",)),
    Found(2, Kind.STATES, SPAN, "no web", characters=("web-shape",), states=("none",), denied=True, view=View.WEB),
    Found(3, Kind.STATES, SPAN, "glossy", Sureness.THINK_SO, ("skin",), ("glossy",), misspelt=True),
    Found(4, Kind.SIZE, SPAN, "half an inch", characters=("body-length", "leg-span"), mm=12.7),
    Found(5, Kind.SPOT, SPAN, "in a room", value="room"),
)
BETTER = (BetterQuestion("huge", SPAN, "huge", "body-length", False),)


@pytest.fixture
def noted(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> Iterator[Bench]:
    """A window at the first couplet, with a reader that finds the same in every text."""
    import keyapp.notes

    keyset = bench.session.keyset
    keyset.characters["leg-span"] = replace(keyset.characters["body-length"], id="leg-span")  # type: ignore[index]
    monkeypatch.setattr(keyapp.notes, "read_note", lambda _key, text, _language: Note(text, "en", FINDS, BETTER))
    bench.go()
    yield bench


def say(bench: Bench, text: str = TEXT) -> None:
    bench.press(Qt.Key.Key_F3)
    assert bench.focused() == "note-line"
    bench.type(text)
    bench.press(Qt.Key.Key_Return)


def test_nothing_found_enters_by_itself(noted: Bench) -> None:
    before = noted.session.case
    count = Count(noted.session.changed)
    say(noted)
    assert noted.session.case is before
    assert count.times == 0
    assert noted.focused() == "find-1"
    assert "from “it runs”" in noted.texts()


def test_return_confirms_the_first_and_goes_on_to_the_next(noted: Bench) -> None:
    say(noted)
    noted.press(Qt.Key.Key_Return)
    note = noted.session.case.note("gait")
    assert isinstance(note, Report)
    assert note.states == {"runs"}
    assert noted.focused() == "find-2"
    assert noted.session.stage is Stage.KEY
    assert noted.session.couplet == "start/legs"


def test_a_number_confirms_that_one(noted: Bench) -> None:
    say(noted)
    noted.press(Qt.Key.Key_3)
    note = noted.session.case.note("skin")
    assert note is not None
    assert note.sureness is Sureness.THINK_SO
    assert noted.session.case.note("gait") is None


def test_not_there_is_confirmed_only_together_with_its_side(noted: Bench) -> None:
    say(noted)
    noted.session.confirm_find(2)
    assert noted.session.case.note("web-shape") is None
    assert "It counts only if that side was in view." in noted.texts()
    noted.press(Qt.Key.Key_2)
    note = noted.session.case.note("web-shape")
    assert isinstance(note, Report)
    assert note.view_seen


def test_a_size_asks_what_was_measured(noted: Bench) -> None:
    say(noted)
    noted.session.confirm_find(4)
    assert noted.session.case.answers == ()
    noted.click("find-4-1")
    assert noted.session.case.note("leg-span") is not None
    assert noted.session.case.note("body-length") is None


def test_delete_drops_a_find(noted: Bench) -> None:
    before = noted.session.case
    say(noted)
    noted.press(Qt.Key.Key_Delete)
    assert noted.focused() == "find-2"
    assert [one.id for one in noted.session.finds] == [2, 3, 4, 5]
    assert noted.session.case is before


def test_a_place_said_stays_on_the_page(noted: Bench) -> None:
    say(noted)
    noted.session.confirm_find(5)
    noted.settle()
    assert noted.session.case.settings.spot == "room"
    assert noted.session.stage is Stage.KEY


def test_a_confirmed_find_can_be_undone(noted: Bench) -> None:
    before = noted.session.case
    say(noted)
    noted.press(Qt.Key.Key_Return)
    noted.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert noted.session.case == before


def test_the_kind_of_evidence_is_that_of_the_settings_or_as_chosen(noted: Bench) -> None:
    noted.session.set_up(evidence=Evidence.PHOTO)
    noted.session.go_on()
    noted.settle()
    say(noted)
    noted.press(Qt.Key.Key_Return)
    noted.session.rest_note_on(Evidence.OWN_EYES)
    noted.press(Qt.Key.Key_Return)
    kinds = {one.evidence for one in noted.session.case.answers}
    assert kinds == {Evidence.PHOTO, Evidence.OWN_EYES}


def test_words_that_mislead_bring_the_better_question(noted: Bench) -> None:
    say(noted)
    assert "“huge” often misleads. Better ask: Say, what of body-length?" in noted.texts()
    noted.click("better-0")
    assert noted.session.stage is Stage.SEEN
    assert noted.session.seen_draft.character == "body-length"
    noted.click("back")
    assert noted.session.stage is Stage.KEY


def test_words_of_injury_open_the_card_while_they_are_typed(noted: Bench) -> None:
    noted.press(Qt.Key.Key_F3)
    noted.type("it bit")
    assert noted.window.is_emergency
    assert noted.session.case.settings.hurt is True
    noted.press(Qt.Key.Key_Escape)
    assert noted.session.stage is Stage.KEY
    assert noted.session.note.text == "it bit"


def test_typing_on_lets_old_finds_go(noted: Bench) -> None:
    say(noted)
    noted.press(Qt.Key.Key_F3)
    noted.type(" and more")
    assert noted.session.finds == ()
    assert not noted.has("find-1")


def test_emptying_the_line_goes_back_to_it(noted: Bench) -> None:
    say(noted)
    noted.click("note-clear")
    assert noted.session.note.text == ""
    assert noted.focused() == "note-line"


@pytest.mark.parametrize("stage", [Stage.SETTINGS, Stage.RESULT])
def test_the_line_is_on_the_other_pages_too_and_they_stay(noted: Bench, stage: Stage) -> None:
    noted.session.show_stage(stage)
    noted.settle()
    say(noted)
    noted.press(Qt.Key.Key_Return)
    assert noted.session.stage is stage
    assert noted.session.case.note("gait") is not None


def test_what_an_answer_rests_on_is_shown_and_changed_in_the_trail(noted: Bench) -> None:
    say(noted)
    noted.press(Qt.Key.Key_Return)
    noted.session.unfold("trail", True)
    noted.settle()
    rests = noted.named("rests-seen-gait")
    assert rests.currentText() == "words alone"  # type: ignore[attr-defined]
    rests.setCurrentIndex(2)  # type: ignore[attr-defined]
    rests.activated.emit(2)  # type: ignore[attr-defined]
    noted.settle()
    note = noted.session.case.note("gait")
    assert note is not None
    assert note.evidence is Evidence.PHOTO
    assert noted.session.stage is Stage.KEY
