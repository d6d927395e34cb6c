"""Words that comfort falsely or diagnose are found; careful wording passes."""

from __future__ import annotations

import dataclasses
import datetime
import re

import pytest

from keyapp.checker import check
from keyapp.checker.rules.wording import FORBIDDEN, JARGON
from keyapp.model import KeySet, Text
from tests.builders import character, keyset, taxon

TODAY = datetime.date(2026, 11, 24)


def saying(text: Text) -> KeySet:
    two = [taxon("left", {"web": "orb"}), taxon("right", {"web": "tangle"})]
    return keyset([character("web", "orb tangle")], [dataclasses.replace(two[0], season=text), two[1]])


def found(text: Text, code: str) -> int:
    return sum(each.code == code for each in check(saying(text), today=TODAY))


@pytest.mark.parametrize(
    "words",
    [
        "It is safe to handle.", "It is quite safe.", "They are harmless.", "It can’t hurt you.",
        "It cannot harm people.", "It does not bite.", "It never stings.", "There is no danger.",
        "It is not dangerous.", "It is not venomous.", "A poisonous spider.", "This is a recluse bite.",
        "It is not a bite.", "That mark was a spider bite.", "There is nothing to worry about.", "Don’t worry.",
        "Use an insecticide on it.", "HARMLESS to all.",
    ],
)
def test_false_comfort_and_diagnosis_are_found(words: str) -> None:
    assert found(Text.of(words), "K391") == 1


@pytest.mark.parametrize(
    "words",
    [
        "Watch it from a safe distance.", "It is venomous.", "Leave it alone.", "Do not handle it.",
        "It may bite if held.", "A bite can hurt a lot.", "If someone was bitten, call.", "Do not use any pesticide.",
        "Never spray an insecticide.", "This group is not considered medically important.",
        "No dangerous group fits.", "Keep it in a safe place.", "A bite or sting can cause an allergic reaction.",
    ],
)
def test_careful_wording_passes(words: str) -> None:
    assert found(Text.of(words), "K391") == 0


@pytest.mark.parametrize(
    "words", ["Es inofensiva.", "Es segura de tocar.", "No te puede hacer daño.", "Use un pesticida."]
)
def test_false_comfort_in_spanish_is_found(words: str) -> None:
    assert found(Text.of("Leave it alone.", es=words), "K391") == 1


def test_quoted_names_may_be_wrong_but_their_correction_may_not() -> None:
    key = saying(Text.of("Leave it alone."))
    web = key.characters["web"]
    quoting = dataclasses.replace(web.states[0], phrases={"en": ("poisonous spider",)})
    told = dataclasses.replace(web, states=(quoting, *web.states[1:]))
    report = check(dataclasses.replace(key, characters={"web": told}), today=TODAY)
    assert "K391" not in {each.code for each in report}


def test_short_labels_are_not_graded() -> None:
    assert found(Text.of("Extraordinarily characteristic individuality."), "K392") == 0
    assert found(Text.of("Extraordinarily characteristic individuality characterizes it."), "K392") == 1


def test_names_filled_in_later_do_not_count_as_hard_words() -> None:
    assert found(Text.of("Ask for {a_very_long_placeholder_of_the_program} at the office."), "K392") == 0


def test_every_pattern_can_be_compiled_and_every_term_is_one_word() -> None:
    assert all(re.compile(pattern) and language in ("en", "es") and instead for language, pattern, instead in FORBIDDEN)
    assert all(re.fullmatch(r"[a-z]+(?:-[a-z]+)*", term) for term in JARGON)
