"""Bounds against worked figures; each formula's source is in its docstring, the figures follow by arithmetic."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest

from keyapp.measure.bounds import (
    answer_bits,
    entropy,
    huffman,
    least_mean,
    least_restricted_total,
    lies_bits,
    lies_questions,
    majority_right,
    path_survival,
    worst_mean,
)

CHANCES = {
    (0.4, 0.2, 0.2, 0.1, 0.1): (2.1219, 2.2),
    (0.5, 0.25, 0.125, 0.125): (1.75, 1.75),
    (0.30, 0.25, 0.15, 0.12, 0.10, 0.08): (2.4224, 2.45),
    (0.9, 0.05, 0.03, 0.02): (0.6175, 1.15),
    (0.35, 0.2, 0.15, 0.1, 0.1, 0.05, 0.05): (2.5016, 2.55),
}


@pytest.mark.parametrize(("chances", "wanted"), CHANCES.items())
def test_entropy_and_huffman(chances, wanted):
    assert entropy(chances) == pytest.approx(wanted[0], abs=5e-5)
    assert huffman(chances).mean == pytest.approx(wanted[1])


@pytest.mark.parametrize(
    ("chances", "lengths"),
    [((0.5, 0.25, 0.125, 0.125), [1, 2, 3, 3]), ((0.30, 0.25, 0.15, 0.12, 0.10, 0.08), [2, 2, 3, 3, 3, 3])],
)
def test_huffman_lengths(chances, lengths):
    assert sorted(huffman(chances).lengths) == lengths


def test_huffman_lies_between_entropy_and_one_more():
    for seed in range(30):
        chances = np.random.default_rng(seed).dirichlet(np.ones(2 + seed))
        assert entropy(chances) - 1e-12 <= huffman(chances).mean < entropy(chances) + 1


def test_weights_need_not_sum_to_one():
    assert entropy([4, 2, 2]) == entropy([0.5, 0.25, 0.25]) == 1.5
    assert huffman([4, 2, 2]).mean == 1.5


@pytest.mark.parametrize("sure", [[1.0], [3.0], [0.0, 1.0]])
def test_one_end_has_no_entropy(sure):
    assert entropy(sure) == 0


def test_huffman_of_nothing_is_refused():
    with pytest.raises(ValueError, match="no chances"):
        huffman([])


@pytest.mark.parametrize(
    ("ends", "least", "worst"),
    [
        (5, 2.4, 2.8),
        (8, 3, 4.375),
        (12, 3.6667, 6.4167),
        (20, 4.4, 10.45),
        (32, 5, 16.4688),
        (35, 5.1714, 17.9714),
        (40, 5.4, 20.475),
        (64, 6, 32.4844),
    ],
)
def test_trees_of_equally_likely_ends(ends, least, worst):
    assert least_mean(ends) == pytest.approx(least, abs=5e-5)
    assert worst_mean(ends) == pytest.approx(worst, abs=6e-5)
    assert huffman([1.0] * ends).mean == pytest.approx(least_mean(ends))


@pytest.mark.parametrize(
    ("ends", "total"), [(1, 0), (2, 2), (3, 5), (4, 8), (5, 12), (6, 16), (7, 20), (8, 25), (12, 47), (16, 74)]
)
def test_least_total_with_questions_about_three_at_most(ends, total):
    assert least_restricted_total(ends) == total


@pytest.mark.parametrize(("ends", "total"), [(8, 24), (16, 64)])
def test_free_choice_beats_it(ends, total):
    assert round(least_mean(ends) * ends) == total < least_restricted_total(ends)


@pytest.mark.parametrize(
    ("right", "couplets", "survives"),
    [(0.9, 5, 0.5905), (0.9, 8, 0.4305), (0.9, 10, 0.3487), (0.95, 5, 0.7738), (0.95, 10, 0.5987), (0.8, 5, 0.3277)],
)
def test_path_survival(right, couplets, survives):
    assert path_survival(right, couplets) == pytest.approx(survives, abs=5e-5)


@pytest.mark.parametrize(
    ("error", "bits"),
    [(0.0, 1.0), (0.01, 0.9192), (0.05, 0.7136), (0.1, 0.5310), (0.2, 0.2781), (0.25, 0.1887), (0.5, 0.0)],
)
def test_worth_of_an_answer(error, bits):
    assert answer_bits(error) == pytest.approx(bits, abs=5e-5)


def test_32_equal_groups_at_one_answer_in_ten_wrong():
    assert entropy([1 / 32] * 32) / answer_bits(0.1) == pytest.approx(9.42, abs=5e-3)


@pytest.mark.parametrize(
    ("ends", "questions"),
    [
        (1, (0, 0, 0, 0)),
        (16, (4, 7, 10, 13)),
        (20, (5, 8, 11, 13)),
        (32, (5, 9, 12, 14)),
        (35, (6, 9, 12, 15)),
        (64, (6, 10, 13, 16)),
        (1000, (10, 14, 18, 21)),
        (1_000_000, (20, 25, 29, 33)),
    ],
)
def test_questions_with_lies(ends, questions):
    assert tuple(lies_questions(ends, k) for k in range(4)) == questions


@pytest.mark.parametrize("ends", range(2, 7))
def test_questions_with_one_lie_by_playing_every_game(ends):
    """The questioner's best play against every liar, by exhaustion, for few ends."""
    assert lies_questions(ends, 1) == _fewest_questions(ends)


def _fewest_questions(ends):
    known = {}

    def wins(sure, lied, left):
        """`sure` ends need no lie so far, `lied` ends one; can `left` questions settle which it is?"""
        if sure + lied <= 1:
            return True
        if left == 0:
            return False
        if (sure, lied, left) not in known:
            known[sure, lied, left] = any(
                wins(a, b + (sure - a), left - 1) and wins(sure - a, lied - b + a, left - 1)
                for a, b in itertools.product(range(sure + 1), range(lied + 1))
            )
        return known[sure, lied, left]

    return next(q for q in itertools.count() if wins(ends, 0, q))


@pytest.mark.parametrize(("ends", "lies"), [(0, 1), (5, -1)])
def test_senseless_games_are_refused(ends, lies):
    with pytest.raises(ValueError, match="ends"):
        lies_questions(ends, lies)


@pytest.mark.parametrize(("lies", "bits"), [(0, 5.0), (1, 7.32), (2, 9.64)])
def test_lies_with_32_equal_groups(lies, bits):
    assert lies_bits([1 / 32] * 32, lies) == pytest.approx(bits, abs=5e-3)


def test_a_likely_end_takes_nothing_off_the_price_of_lies():
    assert lies_bits([0.9, 0.1], 1) == pytest.approx(entropy([0.9, 0.1]) + 0.1 * math.log2(math.log2(10)))


@pytest.mark.parametrize(("error", "right"), [(0.1, 0.9720), (0.2, 0.8960)])
def test_majority_of_three(error, right):
    assert majority_right(1 - error, 3) == pytest.approx(right)


def test_an_even_number_of_cues_is_refused():
    with pytest.raises(ValueError, match="odd"):
        majority_right(0.9, 2)
