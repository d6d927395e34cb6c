"""The evidence for and against an animal, against sums worked out another way."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest

from keyapp.engine import NotClearing, Strength, prior, read_case, weigh_answers
from keyapp.engine.standing import block_logs, blocks
from keyapp.model import Case, Choice, LeadAnswer, Report, Sureness
from tests.engine.random_keys import random_answers, random_dangerous
from tests.engine.test_safety import TABLES, report

SEEDS = range(12)


def weighed(tables, rows, *answers):
    reading = read_case(tables, Case(answers=answers))
    return weigh_answers(tables, np.log(prior(tables, reading.case.settings)), reading.events, rows)


def log_odds(tables, rows, *answers):
    posterior = read_case(tables, Case(answers=answers)).standing.posterior
    inside = sum(posterior[row] for row in rows)
    return math.log(inside / (1.0 - inside))


@pytest.mark.parametrize("seed", SEEDS)
def test_the_ratios_of_the_groups_sum_to_the_log_ratio_of_the_standing(seed):
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed)
    found = weighed(tables, tables.gated, *answers)
    moved = log_odds(tables, tables.gated, *answers) - log_odds(tables, tables.gated)
    assert sum(one.log_ratio for one in found) == pytest.approx(moved, abs=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_one_group_alone_is_the_log_ratio_itself(seed):
    tables = random_dangerous(seed)
    for answer in random_answers(tables, seed):
        (one,) = weighed(tables, tables.gated, answer)
        moved = log_odds(tables, tables.gated, answer) - log_odds(tables, tables.gated)
        assert one.log_ratio == pytest.approx(moved, abs=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_shares_equal_a_fine_sum_over_the_standing_taken_up_in_steps(seed):
    """Ten thousand small steps instead of the points of a quadrature."""
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed)
    reading = read_case(tables, Case(answers=answers))
    logs = np.array([block_logs(block) for block in blocks(reading.events)])
    names = [tuple(sorted({c for event in block for c in event.characters})) for block in blocks(reading.events)]
    inside = np.isin(np.arange(len(tables.rows)), tables.gated)
    start = np.log(prior(tables, reading.case.settings)) + np.log([o.share for o in tables.weights.observers])[:, None]
    share = dict.fromkeys(names, 0.0)
    steps = 4000
    for step in range(steps):
        chance = np.exp(start + (step + 0.5) / steps * logs.sum(axis=0))
        for name, block in zip(names, logs, strict=True):
            yes = (chance * block)[:, inside].sum() / chance[:, inside].sum()
            no = (chance * block)[:, ~inside].sum() / chance[:, ~inside].sum()
            share[name] += (yes - no) / steps
    for one in weighed(tables, tables.gated, *answers):
        assert one.log_ratio == pytest.approx(share[tuple(sorted(one.characters))], abs=1e-5)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_order_of_answers_does_not_matter(seed):
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed)
    wanted = {one.characters: one.log_ratio for one in weighed(tables, tables.gated, *answers)}
    for order in itertools.islice(itertools.permutations(answers), 6):
        for one in weighed(tables, tables.gated, *order):
            same = [ratio for names, ratio in wanted.items() if set(names) == set(one.characters)]
            assert same == [pytest.approx(one.log_ratio, abs=1e-9)]


@pytest.mark.parametrize("seed", SEEDS)
def test_an_answer_that_fits_no_other_row_as_well_speaks_for_it_and_the_least_likely_against(seed):
    """Where every feared row makes the answer likelier than every other row does, it speaks for; and the reverse."""
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed)
    reading = read_case(tables, Case(answers=answers))
    rest = [i for i in range(len(tables.rows)) if i not in tables.gated]
    for block in blocks(reading.events):
        logs = block_logs(block)
        names = {c for event in block for c in event.characters}
        (ratio,) = (w.log_ratio for w in weighed(tables, tables.gated, *answers) if set(w.characters) == names)
        inside, outside = logs[:, list(tables.gated)], logs[:, rest]
        if inside.min() >= outside.max():
            assert ratio > 0
        elif inside.max() <= outside.min():
            assert ratio < 0


def test_the_signs_on_a_key_one_can_see_through():
    found = weighed(TABLES, TABLES.gated, report("gait", "leaps"), report("web", "tangle"), report("colour", "green"))
    assert {one.characters[0]: one.log_ratio > 0 for one in found} == {"gait": False, "web": True, "colour": False}


def test_words_of_strength():
    found = weighed(TABLES, TABLES.gated, report("gait", "leaps"), report("web", "tangle"), report("colour", "black"))
    assert [one.strength for one in found] == [
        Strength.STRONGLY_AGAINST,
        Strength.STRONGLY_FOR,
        Strength.SOMEWHAT_FOR,
    ]


@pytest.mark.parametrize(
    ("answer", "why"),
    [
        (report("gait", "leaps"), None),
        (report("gait", "leaps", sureness=Sureness.THINK_SO), NotClearing.UNSURE),
        (report("colour", "green"), NotClearing.NEVER),
        (report("under", "none"), NotClearing.NEVER),
        (report("web", "none"), NotClearing.ABSENCE),
        (report("gait", "hangs"), NotClearing.SHOWN),
        (Report("shape", frozenset({"globe", "flat"})), NotClearing.SHOWN),
        (LeadAnswer("k/web", Choice.NEITHER), NotClearing.ABSENCE),
        (LeadAnswer("k/gait", Choice.FIRST), None),
    ],
)
def test_why_an_answer_does_not_count_towards_ruling_out(answer, why):
    way = (
        [LeadAnswer("k/web", Choice.CANT_TELL)] if isinstance(answer, LeadAnswer) and answer.couplet != "k/web" else []
    )
    (one,) = weighed(TABLES, TABLES.gated, *way, answer)
    assert one.not_clearing is why


def test_nothing_said_weighs_nothing():
    assert weighed(TABLES, TABLES.gated) == ()
