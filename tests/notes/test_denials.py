"""What is denied is never offered as seen."""

from __future__ import annotations

import pytest

from keyapp.model import View
from keyapp.notes import Kind

BEGINS = ("it", "just", "only", "short", "a", "an", "wingless", "legless", "with")
FRAMES = (
    "There is no {}.",
    "It is not {}.",
    "I didn't see any {}.",
    "It does not have {}",
    "without {}",
    "it isnt {}",
    "It wasn’t {}, I looked twice.",
    "never {}",
    "no wings or {}",
)


@pytest.mark.parametrize(
    "text, character, offered",
    [
        ("no web", "web-shape", [("none",)]),
        ("it is not in a web", "web-shape", [("none",)]),
        ("there isn't any web around", "web-shape", [("none",)]),
        ("without wings", "wings", [("none",)]),
        ("wings: none", "wings", [("none",)]),
        ("wings? no.", "wings", [("none",)]),
        ("any wings? None.", "wings", [("none",)]),
        ("web no, wings yes", "web-shape", [("none",)]),
        ("no wings, antennae or claws", "feelers", [("none",)]),
        ("no hourglass that I could see", "underside-mark", [("none",)]),
        ("there is no red mark on the belly", "underside-mark", [("none",)]),
        ("no zigzag in the web", "web-extra", [("none",)]),
        ("no brushes on the legs", "leg-tufts", [("none",)]),
        ("not hairy", "body-surface", [("bare-shiny", "fine-satin-hair")]),
        ("I don't see a violin", "front-mark", [("stripes-along", "other-marks", "plain")]),
        ("the abdomen is oval, not round", "abdomen-shape", [("oval",)]),
        ("egg shaped rather than round", "abdomen-shape", [("oval",)]),
        ("it did not move", "gait", [("still",)]),
        ("not brown, black", "body-colour", [("black",)]),
        ("no bigger than a grain of rice", "body-step", [("under-rice-grain",)]),
        ("it has wings but no antennae", "wings", [("wings",)]),
        ("no web and it ran fast", "gait", [("runs-fast",)]),
        ("it didn't jump, it ran fast", "gait", [("runs-fast",)]),
        ("no doubt it ran fast", "gait", [("runs-fast",)]),
        ("Did it bite? No. It ran fast.", "gait", [("runs-fast",)]),
        ("No, it ran fast", "gait", [("runs-fast",)]),
    ],
)
def test_a_denial_gives_what_is_left(states, text, character, offered):
    found = states(text)
    assert found.get(character) == offered


@pytest.mark.parametrize(
    "text",
    [
        "I have no idea if it has wings",
        "couldn't see whether the legs are banded",
        "I don't know if it jumps",
        "not sure if there is a web",
        "can't tell how many legs",
        "does it have wings?",
        "is it hairy? does it jump?",
        "if it jumps I will scream",
        "I read that recluses have six eyes",
        "I ran. we sat still. I jumped",
        "I didn't see legs",
        "not just a web",
    ],
)
def test_what_was_not_seen_is_no_observation(states, text):
    assert states(text) == {}


def test_what_follows_and_in_a_denial_is_taken_neither_way(states):
    assert "leg-build" not in states("no spots and stripes and long legs")


def test_no_phrase_of_the_key_is_offered_as_seen_where_it_is_denied(reader, shipped):
    wrong, read = [], 0
    for character in shipped.keyset.characters.values():
        for state in character.states:
            for phrase in state.phrases.get("en", ()):
                if not is_plain(reader, phrase):
                    continue
                for frame in FRAMES:
                    read += 1
                    for find in reader.read(frame.format(phrase)).found:
                        if find.characters == (character.id,) and find.states == (state.id,):
                            wrong.append((frame.format(phrase), find.states))
    assert read > 5000
    assert wrong == []


def is_plain(reader, phrase):
    """It denies nothing itself and can stand after a word that denies."""
    tokens, _ = reader._index.prepare(phrase)
    begins = phrase.split()[0]
    return not any(t.denied or t.unknown for t in tokens) and begins not in BEGINS


def test_not_there_needs_the_side_to_have_been_seen(reader, shipped):
    for text in ("no web", "without wings", "no hourglass", "no tails"):
        for find in reader.read(text).found:
            character = shipped.keyset.characters[find.characters[0]]
            assert find.denied
            assert find.view is character.view is not View.ANY


def test_that_something_is_not_there_must_be_said(states):
    # "On the wall" and "in the bathtub" say where it is.
    assert "attached" not in states("a spider on the wall")
    assert "web-shape" not in states("a spider in the bathtub")


def test_a_denied_spot_name_or_size_is_not_offered(reader):
    kinds = {find.kind for find in reader.read("It is not a wolf spider, not in the garage, not an inch.").found}
    assert not kinds & {Kind.SPOT, Kind.TOLD, Kind.SIZE}
