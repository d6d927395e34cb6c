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


def test_the_end_of_input_ends_it(talk):
    assert talk("no")
