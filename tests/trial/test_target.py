"""What a trial is to reach."""

from __future__ import annotations

import pytest

from keyapp.trial import Trial, judge, summarise
from tests.trial.outcomes import missed_widow, named_widow, outcome, stranger


def judged(error, outcomes, faultless=False):
    return {one.target.figure: one for one in judge(Trial(error, 0.1, summarise(outcomes), faultless))}


def test_each_rate_has_its_own_targets():
    assert set(judged(0.1, [])) == {
        "first", "three", "danger_miss", "outside_named", "near_certain", "reliability_off",
    }  # fmt: skip
    assert set(judged(0.0, [], faultless=True)) == {"named_taxa", "most_named_taxa", "safety_extra"}
    assert judged(0.0, []) == {}
    assert judged(0.2, []) == {}


def test_nothing_is_judged_without_calls():
    assert {one.word for one in judged(0.1, []).values()} == {"not judged"}


@pytest.mark.parametrize(("right", "word"), [(91, "missed"), (92, "reached")])
def test_a_target_is_reached_at_its_limit(right, word):
    calls = [outcome()] * right + [outcome(ranked=("B", "A"))] * (100 - right)
    assert judged(0.1, calls)["first"].word == word


@pytest.mark.parametrize(("named", "word"), [(6, "reached"), (7, "missed")])
def test_never_above_a_number_means_in_no_call(named, word):
    calls = [outcome()] * 99 + [outcome(named=("widows",), named_taxa=tuple("abcdefg"[:named]))]
    assert judged(0.0, calls, faultless=True)["most_named_taxa"].word == word


@pytest.mark.parametrize(("calls", "unsure"), [(2994, True), (2995, False)])
def test_no_miss_in_too_few_calls_does_not_show_that_dangers_are_named(calls, unsure):
    found = judged(0.1, [named_widow()] * calls)["danger_miss"]
    assert (found.word, found.unsure) == ("reached", unsure)


def test_a_missed_danger_is_a_missed_target():
    found = judged(0.1, [named_widow()] * 99 + [missed_widow()])["danger_miss"]
    assert (found.word, found.unsure) == ("missed", False)


def test_an_animal_not_in_the_key_without_a_name_is_as_it_should_be():
    assert judged(0.1, [stranger()])["outside_named"].word == "reached"
