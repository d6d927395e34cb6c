"""The reading grade, against worked values, and the counting it rests on.

Formula: Flesch-Kincaid grade level as given by the US Department of Veterans Affairs, Health Services Research
(readability formulas): 0.39 (words / sentences) + 11.8 (syllables / words) - 15.59. The worked values follow from
it by hand. Syllable counts are those of the CMU Pronouncing Dictionary (Carnegie Mellon University).
"""

from __future__ import annotations

import pytest

from keyapp.checker.reading import Counts, count_text, grade, reading_grade, syllables

SIX_EYES = "The spider has six eyes. It has no bands on its legs."

SYLLABLES = {
    1: "legs eyes web black striped spread tongue guess build moved touched caught one once though leaves wolves",
    2: "spider widow banded pointed recluse belly table tangled jumping being poison people silver body open cover",
    3: "abdomen underneath violin animal medical allergic usual unicorn area museum families serious recluses",
    4: "usually material medically identify everybody tarantula society variety unusual California",
    5: "university individual association electricity",
}


@pytest.mark.parametrize(
    ("counts", "expected"), [((120, 10, 168), 5.610), ((100, 5, 150), 9.910), ((12, 2, 13), -0.467)]
)
def test_grade_matches_worked_values(counts: tuple[int, int, int], expected: float) -> None:
    assert grade(Counts(*counts)) == pytest.approx(expected, abs=5e-4)


def test_words_sentences_and_syllables_are_counted() -> None:
    assert count_text(SIX_EYES) == Counts(words=12, sentences=2, syllables=13)
    assert reading_grade(SIX_EYES) == pytest.approx(-0.467, abs=5e-4)


@pytest.mark.parametrize(("words", "sentences"), [(0, 1), (1, 0), (-1, 1)])
def test_grade_of_nothing_is_refused(words: int, sentences: int) -> None:
    with pytest.raises(ValueError, match="at least one word and one sentence"):
        grade(Counts(words, sentences, 1))


def test_text_without_words_has_grade_zero() -> None:
    assert reading_grade(" ... !") == 0.0


@pytest.mark.parametrize(("expected", "words"), SYLLABLES.items())
def test_syllables_of_common_words(expected: int, words: str) -> None:
    assert {word: syllables(word) for word in words.split()} == dict.fromkeys(words.split(), expected)


@pytest.mark.parametrize(
    ("word", "expected"),
    [
        ("doesn't", 2), ("don't", 1), ("isn’t", 2), ("spider's", 2), ("house's", 2), ("look-alike", 3), ("8", 1),
        ("bluish", 2),
    ],
)
def test_syllables_of_joined_and_shortened_words(word: str, expected: int) -> None:
    assert syllables(word) == expected


@pytest.mark.parametrize(
    ("text", "sentences"),
    [
        ("It is 0.5 to 1.5 mm long. It runs.", 2),
        ("Use a lens, e.g. one of glass, i.e. no plastic.", 1),
        ("Is it black? No! It is brown.", 3),
        ("One line without a stop", 1),
        ("One\n\nTwo", 2),
        ("Wait... there it is.", 2),
        ("He said “go away.” Then it ran.", 2),
    ],
)
def test_sentences_end_where_readers_end_them(text: str, sentences: int) -> None:
    assert count_text(text).sentences == sentences


def test_terms_of_the_glossary_count_two_syllables_at_most() -> None:
    text = "It has a hard cephalothorax and two pedipalps."
    plain, eased = count_text(text), count_text(text, {"cephalothorax", "pedipalp"})
    assert plain.syllables - eased.syllables == syllables("cephalothorax") - 2 + syllables("pedipalps") - 2
    assert reading_grade(text, {"cephalothorax", "pedipalp"}) < reading_grade(text)


def test_short_words_of_the_glossary_keep_their_count() -> None:
    assert count_text("A web.", {"web"}) == count_text("A web.")
