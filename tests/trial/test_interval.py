"""The upper bound of a share."""

from __future__ import annotations

import math

import pytest

from keyapp.trial.interval import upper_bound


@pytest.mark.parametrize("calls", [1, 10, 59, 5000])
def test_nothing_seen_has_a_bound_in_closed_form(calls):
    assert upper_bound(0, calls) == pytest.approx(1 - 0.05 ** (1 / calls))


@pytest.mark.parametrize("calls", [2, 10, 300])
def test_all_but_one_seen_has_a_bound_in_closed_form(calls):
    assert upper_bound(calls - 1, calls) == pytest.approx(0.95 ** (1 / calls))


@pytest.mark.parametrize(("seen", "calls"), [(1, 20), (3, 40), (17, 100)])
def test_at_the_bound_so_few_are_seen_with_the_chance_left(seen, calls):
    p = upper_bound(seen, calls, 0.9)
    chance = sum(math.comb(calls, i) * p**i * (1 - p) ** (calls - i) for i in range(seen + 1))
    assert chance == pytest.approx(0.1)


def test_everything_seen_has_no_bound_below_one():
    assert upper_bound(7, 7) == 1.0


def test_many_calls_do_not_overflow():
    assert 0.01 < upper_bound(1000, 100_000) < 0.011


@pytest.mark.parametrize(("seen", "calls"), [(0, 0), (-1, 5), (6, 5)])
def test_counts_that_cannot_be_are_refused(seen, calls):
    with pytest.raises(ValueError, match=f"{seen} of {calls} calls"):
        upper_bound(seen, calls)
