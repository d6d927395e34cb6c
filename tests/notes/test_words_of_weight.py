"""Words of injury, words that mislead, words of doubt, and finds that contradict each other."""

from __future__ import annotations

import pytest

from keyapp.model import Sureness
from keyapp.notes import Kind


@pytest.mark.parametrize(
    "text",
    ["It BIT me", "my son was stung", "now it’s numb", "nobody has been stung", "I can’t breathe", "is it a bite?"],
)
def test_words_of_injury_are_flagged_whatever_is_said_of_them(reader, text):
    note = reader.read(text)
    assert note.injury
    (find,) = [one for one in note.found if one.kind is Kind.INJURY]
    assert find.words in text


@pytest.mark.parametrize("text", ["a bit hairy", "bitter orange", "", "brown spider, no web"])
def test_other_words_are_not(reader, text):
    assert not reader.read(text).injury


@pytest.mark.parametrize(
    "text, word, ask, kept",
    [
        ("it was huge", "huge", "body-length", False),
        ("as big as my hand", "huge", "body-length", False),
        ("a brown spider", "colour", "abdomen-pattern", True),
        ("it had a violin on its back", "violin", "leg-surface", False),
        ("with a red mark", "red-mark", "underside-mark", False),
        ("a hairy one", "hairy", "body-surface", False),
        ("eight legs", "legs", "body-parts", True),
        ("six eyes", "eyes", "eye-layout", True),
        ("it jumped at me", "jumped", "gait", True),
        ("we have an infestation", "nest", "thing", False),
        ("looks just like the picture", "same-as-picture", "web-shape", False),
    ],
)
def test_a_word_that_misleads_brings_a_better_question(reader, text, word, ask, kept):
    found = {one.word: one for one in reader.read(text).better}
    assert (found[word].ask, found[word].kept) == (ask, kept)
    assert found[word].words in text


@pytest.mark.parametrize(
    "text",
    ["it was huge", "a violin", "a violin on its back", "a fiddle mark", "with a red mark", "hairy", "a hairy body"],
)
def test_such_a_word_alone_is_no_observation(states, text):
    assert states(text) == {}


@pytest.mark.parametrize(
    "text, character, state",
    [
        ("a red hourglass on its belly", "underside-mark", "red-hourglass"),
        ("red spots on its back", "top-red-mark", "red-on-top"),
        ("thick hairy legs", "leg-build", "thick-hairy"),
        ("huge jaws", "front-tools", "huge-jaws"),
    ],
)
def test_with_more_to_it_it_is(states, text, character, state):
    assert states(text)[character] == [(state,)]


@pytest.mark.parametrize("text", ["it is brown", "all black", "eight legs", "six eyes", "it jumped at me"])
def test_what_is_kept_of_it_is_think_so(reader, text):
    finds = [find for find in reader.read(text).found if find.kind is Kind.STATES]
    assert finds
    assert all(find.sureness is Sureness.THINK_SO for find in finds)


@pytest.mark.parametrize(
    "text",
    [
        "maybe banded legs",
        "banded legs I think",
        "kind of banded legs",
        "the legs might be banded",
        "banded legs, I guess",
        "I'm not sure but the legs looked banded, maybe",
    ],
)
def test_words_of_doubt_make_it_think_so(reader, text):
    (find,) = [one for one in reader.read(text).found if one.characters == ("leg-pattern",)]
    assert find.sureness is Sureness.THINK_SO


def test_doubt_reaches_no_further_than_its_clause(reader):
    note = reader.read("It maybe has banded legs. It has long feelers.")
    sureness = {find.characters[0]: find.sureness for find in note.found if find.characters}
    assert sureness == {"leg-pattern": Sureness.THINK_SO, "feelers": Sureness.SURE}


def test_finds_that_contradict_are_both_offered_and_marked(reader):
    finds = [find for find in reader.read("The legs are banded. Later: plain legs.").found if find.states]
    assert [find.states for find in finds] == [("banded",), ("plain",)]
    assert [find.against for find in finds] == [(finds[1].id,), (finds[0].id,)]


def test_of_phrases_that_overlap_the_longest_wins(states):
    assert states("long thin legs, not like threads")["leg-build"] == [("long-slender",)]
    assert states("dark brown")["body-colour"] == [("dark-brown",)]


@pytest.mark.parametrize(
    "text, character",
    [
        ("the legs are brown", "body-colour"),
        ("a brown stripe", "body-colour"),
        ("a red head", "body-colour"),
        ("shiny eyes", "body-surface"),
        ("Ringed legs, brown and black.", "body-colour"),
        ("a waist like a thread", "web-silk"),
        ("the long body has thin legs", "leg-build"),
        ("its butt is round like a ball and the web is big", "carries"),
        ("the first pair of legs is thick", "leg-posture"),
        ("something near the ceiling", "web-height"),
    ],
)
def test_a_word_said_of_another_part_does_not_count(states, text, character):
    assert character not in states(text)


def test_a_sign_is_meant_where_there_is_no_animal(states):
    assert states("just a web")["thing"] == [("web",)]
    assert states("There is a web in the corner, but I see no spider.")["thing"] == [("web",)]
    assert states("a spider with an egg sac")["thing"] == [("animal",)]
    assert states("an egg sac under the eaves")["thing"] == [("egg-sac",)]


def test_of_a_sign_nothing_is_said_that_only_an_animal_has(states):
    assert states("just an egg sac, tan, papery")["thing"] == [("egg-sac",)]
    assert "body-colour" not in states("just an egg sac, tan, papery")
    assert "body-colour" in states("a tan spider")


def test_a_word_of_injury_is_not_taken_for_another_word(reader):
    assert [one.word for one in reader.read("something is biting us").better] == []
