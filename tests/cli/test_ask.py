"""The key as a conversation in the terminal."""

from __future__ import annotations

import io

import pytest

from keyapp.cli import ask
from keyapp.cli.terminal import Terminal
from keyapp.folders import keys_folder

SKIP_SETTINGS = ["no", "1", "", "", "", "", ""]
"""Not hurt, an animal, and nothing else known."""


@pytest.fixture
def talk():
    def act(*lines):
        out = io.StringIO()
        code = ask.run(Terminal(io.StringIO("\n".join(lines) + "\n"), out, out), keys_folder(), "en")
        assert code == 0
        return out.getvalue()

    return act


def test_it_warns_before_it_asks(talk):
    assert talk().splitlines()[0].endswith("Do not handle an animal you do not know.")


def test_a_person_hurt_comes_first(talk):
    said = talk("yes", "1")
    assert said.index("1-800-222-1222") < said.index("What do you have?")


def test_the_key_is_walked_to_a_careful_result(talk):
    said = talk(*SKIP_SETTINGS, *["c"] * 40, "result", "quit")
    assert "Do not handle" in said
    assert "What to do:" in said
    assert "1-800-222-1222" in said


def test_an_unfinished_run_never_reads_as_reassurance(talk):
    said = talk(*SKIP_SETTINGS, "result")
    assert "Not ruled out:" in said
    assert "Keep away and ask" in said


@pytest.mark.parametrize("line", ["99", "xyzzy", "1 2 3", "[[[", "again 5"])
def test_a_wrong_line_is_answered_and_the_run_goes_on(talk, line):
    said = talk(*SKIP_SETTINGS, line, "why", "quit")
    assert "Traceback" not in said
    assert "Not ruled out:" in said


def test_words_of_injury_open_the_card(talk):
    said = talk(*SKIP_SETTINGS, "she was bitten on the arm")
    assert "PERSON FIRST" in said


def test_a_name_from_elsewhere_is_set_straight_at_the_end(talk):
    said = talk("no", "1", "", "", "", "", "a banana spider, they said", "result")
    assert "at least four" in said.split("You were told:")[1]


def test_undo_and_trail(talk):
    said = talk(*SKIP_SETTINGS, "1", "trail", "u", "u", "quit")
    assert "Undone." in said


def test_is_it_a_widow_says_the_evidence_and_asks_one_thing_then_goes_back(talk):
    said = talk(*SKIP_SETTINGS, "is black widow", "1", "yes", "", "trail", "quit")
    first, second = said.split("Is it one of the widow spiders?")[1:3]
    assert "Not ruled out:" in first
    assert "Still missing to rule it out: two sure answers against it" in first
    assert "Look at this next:" in first
    assert "it." in second
    assert "Back to the key. Your answers are kept." in second
    assert "reported:" in second


def test_a_feared_animal_is_asked_about_in_the_middle_and_answers_are_kept(talk):
    said = talk(*SKIP_SETTINGS, "1", "is Brown Reclsue", "", "trail", "quit")
    assert "Is it one of the recluse spiders?" in said
    assert "  1. " in said.split("Back to the key.")[1]


def test_cant_tell_of_a_direct_question_is_not_asked_again(talk):
    said = talk(*SKIP_SETTINGS, "is widow", "can't", "", "trail", "quit")
    asked = [line for line in said.splitlines() if line.startswith("Look at this next:")]
    assert len(asked) == 2
    assert asked[0] != asked[1]
    assert "can't tell" in said.split("reported:")[1]


def test_a_name_for_several_animals_asks_which(talk):
    said = talk(*SKIP_SETTINGS, "is banana spider", "1", "", "quit")
    assert "Which one?" in said
    assert "Is it this one:" in said


def test_a_name_that_nothing_has_is_answered_with_names_to_try(talk):
    assert "Try another name for it, or one of: widow spiders" in talk(*SKIP_SETTINGS, "is zzqq", "quit")


def test_words_of_injury_after_is_open_the_card(talk):
    assert "PERSON FIRST" in talk(*SKIP_SETTINGS, "is what bit me", "quit")


def test_best_says_what_helps_most_and_why_and_asks_it(talk):
    said = talk(*SKIP_SETTINGS, "best", "1", "yes", "trail", "quit")
    line = next(one for one in said.splitlines() if one.startswith("What would help most now:"))
    assert "It may help to rule out" in line or "It tells more about" in line
    assert "reported:" in said


def test_the_result_says_in_one_line_whether_to_go_on(talk):
    lines = talk(*SKIP_SETTINGS, "result", "quit").splitlines()
    assert sum(line.startswith("Go on: more can be seen.") for line in lines) == 1


def test_the_end_of_input_ends_it(talk):
    assert talk("no")
