"""What is counted in a trial."""

from __future__ import annotations

import json

import pytest

from keyapp.engine import Claim
from keyapp.trial import summarise
from keyapp.trial.summary import ENOUGH, Missed
from tests.trial.outcomes import missed_widow, named_widow, outcome, stranger


def test_a_summary_counts_by_hand():
    found = summarise(
        [
            outcome(),
            outcome(ranked=("B", "A"), strict_right=False, extra=3),
            named_widow(),
            missed_widow(),
            stranger(claim=Claim.CONSISTENT, ranked=("A",)),
            stranger(),
        ]
    )
    assert (found.calls, found.inside, found.outside, found.dangerous, found.others) == (6, 4, 2, 2, 2)
    assert (found.first, found.three, found.strict_first) == (0.75, 1.0, 0.5)
    assert (found.danger_missed, found.danger_miss, found.strict_danger_miss) == (1, 0.5, 0.5)
    assert (found.outside_named, found.answers, found.extra) == (0.5, 5.0, pytest.approx(8 / 6))
    assert (found.near_certain, found.near_certain_calls) == (pytest.approx(4 / 6), 6)
    assert found.worst == (("a", 1),)


def test_a_true_group_in_fourth_place_is_not_in_the_first_three():
    found = summarise([outcome(ranked=("B", "C", "D", "A")), outcome(ranked=("B", "C", "A"))])
    assert (found.first, found.three) == (0.0, 0.5)


def test_dangers_are_counted_by_result_the_most_missed_first():
    scorpion = outcome("bark", dangers=("scorpions",), named=("scorpions",))
    found = summarise([scorpion, named_widow(), missed_widow(), missed_widow()])
    assert found.danger_by_taxon == (Missed("widow", 2, 3), Missed("bark", 0, 1))


def test_what_is_still_named_is_counted_over_animals_in_no_danger_group_alone():
    found = summarise(
        [
            outcome(named=("widows", "scorpions"), named_taxa=("w", "v", "s"), safety_extra=4),
            outcome(),
            outcome("widow", dangers=("widows",), named=("widows",), named_taxa=tuple("vwxyz"), safety_extra=9),
            stranger(named=("widows",), named_taxa=tuple("vwxyz"), safety_extra=9),
        ]
    )
    assert (found.named_groups, found.most_named_groups) == (1.0, 2)
    assert (found.named_taxa, found.most_named_taxa) == (1.5, 3)
    assert (found.safety_extra, found.most_safety_extra) == (2.0, 4)


def test_the_lower_bound_is_the_bits_lost_over_the_best_channel():
    calls = [outcome(bits_before=4.0, bits_after=1.0), stranger(bits_before=2.0, bits_after=1.0)]
    found = summarise(calls, capacity=0.5)
    assert (found.bits_before, found.bits_after, found.least_answers) == (3.0, 1.0, 4.0)


def test_no_answer_is_needed_where_no_bit_was_lost():
    assert summarise([outcome(bits_before=1.0, bits_after=2.0)], capacity=0.5).least_answers == 0.0


def test_without_a_capacity_no_lower_bound_is_claimed():
    assert summarise([outcome(bits_before=4.0)]).least_answers is None


def test_reliability_is_judged_in_bins_with_enough_calls_alone():
    many = [outcome(chance=0.6)] * (ENOUGH // 2) + [outcome(chance=0.6, ranked=("B", "A"))] * (ENOUGH // 2)
    few = [outcome(chance=0.85, ranked=("B", "A"))] * (ENOUGH - 1)
    found = summarise(many + few)
    assert [(b.calls, b.enough) for b in found.bins] == [(ENOUGH, True), (ENOUGH - 1, False)]
    assert found.reliability_off == pytest.approx(0.1)
    assert summarise(few).reliability_off is None


def test_every_call_is_in_one_bin():
    chances = [0.0, 0.29, 0.3, 0.5, 0.95, 1.0, 1.0 + 1e-15]
    found = summarise([outcome(chance=chance) for chance in chances])
    assert sum(one.calls for one in found.bins) == len(chances)


def test_a_summary_of_nothing_claims_nothing():
    found = summarise([], capacity=2.0)
    assert (found.first, found.danger_miss, found.danger_upper, found.answers) == (None, None, None, None)
    assert (found.least_answers, found.most_named_taxa, found.bins) == (None, None, ())


def test_a_summary_can_be_written_as_json():
    data = json.loads(json.dumps(summarise([missed_widow(), stranger()]).data()))
    assert data["danger_by_taxon"] == {"widow": {"missed": 1, "calls": 1}}
    assert data["bins"][0]["enough"] is False
