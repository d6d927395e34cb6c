"""The short way, finds and parked enquiries in sentences."""

from __future__ import annotations

import pytest

from keyapp.engine import Action, ShortEnd, ShortWay, build_tables, read_case
from keyapp.folders import keys_folder
from keyapp.keyfile.cache import cached_keyset
from keyapp.model import Case, Settings
from keyapp.notes import read_note
from keyapp.wording import Words, better_line, find_text, short_text
from keyapp.wording.parked import age_line, answers_line, open_line


@pytest.fixture(scope="module")
def words():
    return Words(cached_keyset(keys_folder()))


@pytest.fixture(scope="module")
def reading(words):
    return read_case(build_tables(words.keyset), Case(Settings(hurt=False)))


def ended(action, why, dangers=("widows",)):
    return ShortWay((), None, action, why, dangers)


@pytest.mark.parametrize("why", list(ShortEnd))
@pytest.mark.parametrize("action", list(Action))
def test_every_end_has_its_sentences_and_none_of_them_comforts(words, reading, action, why):
    text = short_text(words, reading, ended(action, why))
    said = " ".join([text.says, text.why, *text.keep, text.stop, text.leaving, text.stay, *text.photo]).casefold()
    for word in ("safe", "harmless", "cannot hurt", "poisonous", "{"):
        assert word not in said
    assert bool(text.steps) is (action is Action.MOVE)
    assert bool(text.stop) is (action is Action.MOVE)
    assert bool(text.keep) is (action is Action.KEEP_AWAY)
    assert bool(text.garden) is (action is not Action.KEEP_AWAY)
    assert text.ask


def test_dangers_are_named_whatever_else_is_the_reason(words, reading):
    for why in (ShortEnd.DANGER, ShortEnd.UNKNOWN, ShortEnd.HURT, ShortEnd.NOTHING_SAID):
        assert "widow spiders" in short_text(words, reading, ended(Action.KEEP_AWAY, why)).why


def test_an_end_without_an_action_is_keep_away(words, reading):
    assert short_text(words, reading, ended(None, None)).action is Action.KEEP_AWAY


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(-5, "just now"), (59, "just now"), (60, "1 min"), (3599, "59 min"), (3600, "1 h"), (86400 * 3, "3 days")],
)
def test_an_age_is_said_in_its_largest_unit(words, seconds, said):
    assert said in age_line(words, seconds)


def test_how_many_answers_there_are(words):
    assert [answers_line(words, count) for count in (0, 1, 5)] == ["No answers yet", "One answer", "5 answers"]


def test_what_was_open_is_said_and_nothing_open_is_no_comfort(words):
    assert "widow spiders" in open_line(words, ("widows",), False)
    assert "do not handle" in open_line(words, (), False)
    assert "bare hands" in open_line(words, (), True)


def test_finds_carry_the_words_they_came_from(words):
    note = read_note(words.keyset, "it jumped off the wall in June, no web, about half an inch")
    texts = [find_text(words, find) for find in note.found]
    assert texts
    for find, text in zip(note.found, texts, strict=True):
        assert find.words in text.notes[0]
        assert "{" not in text.says
        assert len(text.measured) == (len(find.characters) if find.must_ask else 0)


def test_a_better_question_is_put_as_a_question(words):
    said = better_line(words, "huge", "body-length")
    assert "“huge”" in said
    assert "body-length" not in said
    assert "Is it shiny?" in better_line(words, "brown", "Is it shiny?")
