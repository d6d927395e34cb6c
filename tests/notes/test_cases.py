"""Published cases told as a caller would: how much the reader finds of what a careful person takes down.

Notes and mappings were frozen before the reader was tuned; the half `held` was only ever scored, never looked at.
Both halves were written by the same hand as the reader, so that other people's notes will fare worse.
"""

from __future__ import annotations

import hashlib

import pytest

from keyapp.model import Sureness
from tests.notes.scoring import CASES, CHARACTERS, cases, score

FROZEN = {
    CASES: "ba9ce435ad9734f7444aeda962a3af27bf5efad2da8396cbd729801c52a3e86b",
    CHARACTERS: "d248b04cd101f56d46a45ab78976259804499ec8ea696d2437f9bc980979e07f",
}


@pytest.mark.parametrize("path", FROZEN, ids=lambda path: path.name)
def test_notes_and_mappings_are_those_that_were_frozen(path):
    assert hashlib.sha256(path.read_bytes()).hexdigest() == FROZEN[path]


@pytest.mark.parametrize("half, precision, recall", [("tune", 0.97, 0.97), ("held", 0.95, 0.95)])
def test_the_share_of_right_finds_and_of_what_is_found(reader, half, precision, recall):
    # Reached when written: 0.978 and 0.996 on the half tuned on, 0.966 and 0.966 on the half held out.
    result = score(reader, cases(half))
    assert result.precision >= precision, result.said
    assert result.recall >= recall, result.said


def test_hedged_words_are_taken_as_think_so(reader):
    result = score(reader, [*cases("tune"), *cases("held")])
    assert result.sure_asked > 250
    assert result.sure_right >= 0.99 * result.sure_asked


def test_the_halves_are_of_one_size():
    assert len(cases("tune")) == len(cases("held")) == 35


def test_the_example_of_a_careful_reading(reader):
    text = (
        "big brown spider, no web, long skinny legs, about the size of a quarter with the legs, it ran really fast in "
        "the garage; not hairy"
    )
    note = reader.read(text)
    said = {(find.characters or (str(find.kind),))[0]: find for find in note.found}
    assert said["body-colour"].states == ("mid-or-pale-brown",)
    assert said["body-colour"].sureness is Sureness.THINK_SO
    assert said["web-shape"].states == ("none",)
    assert (said["web-shape"].words, str(said["web-shape"].view)) == ("no web", "web")
    assert said["leg-build"].states == ("long-slender",)
    assert said["leg-span"].mm == 24.26
    assert said["gait"].states == ("runs-fast",)
    assert said["spot"].value == "garage-shed"
    assert said["body-surface"].states == ("bare-shiny", "fine-satin-hair")
    assert said["body-surface"].words == "not hairy"
    assert [one.word for one in note.better] == ["colour"]
