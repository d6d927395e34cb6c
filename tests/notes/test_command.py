"""`keyapp note`."""

from __future__ import annotations

import io
import json

import pytest

from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal


@pytest.fixture
def note():
    def act(*arguments, typed=""):
        out, errors = io.StringIO(), io.StringIO()
        code = run(["note", *arguments], Terminal(io.StringIO(typed), out, errors))
        return code, out.getvalue(), errors.getvalue()

    return act


def test_it_says_what_was_found_with_the_words(note):
    code, said, _ = note("no web, long skinny legs, half an inch, huge")
    assert code == 0
    assert "to be confirmed" in said
    assert "[“no web”]" in said
    assert "Counts only if that side was seen: web" in said
    assert "[“long skinny legs”]" in said
    assert "Ask what was measured" in said
    assert "“huge”: Fear makes sizes grow" in said


def test_a_person_comes_first(note):
    _, said, _ = note("it bit me in Ohio")
    assert said.startswith("PERSON FIRST")
    assert "1-800-222-1222" in said


def test_it_speaks_json(note):
    _, said, _ = note("--json", "banded legs, eight of them, black widow?")
    data = json.loads(said)
    assert data["injury"] is False
    assert [find["states"] for find in data["found"] if find["states"]] == [["banded"], ["eight"]]
    for find in data["found"]:
        assert data["text"][find["start"] : find["end"]] == find["words"]


def test_it_reads_from_the_input(note):
    code, said, _ = note(typed="brown spider\nno web\n")
    assert code == 0
    assert "No web seen" in said


def test_a_note_with_nothing_in_it(note):
    assert "Nothing that the key can use was found." in note("hello there")[1]
    code, _, errors = note(typed="")
    assert code == 2
    assert "There is no note to read" in errors


def test_of_finds_that_contradict_each_names_the_other(note):
    _, said, _ = note("The legs are banded. Later: plain legs.")
    assert "Cannot be true together with 2: ask again." in said
    assert "Cannot be true together with 1: ask again." in said
