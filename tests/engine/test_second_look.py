"""The second look against trying every one and every pair of answers."""

from __future__ import annotations

import itertools
import math

import pytest

from keyapp.engine import read_case, second_look
from keyapp.model import Case, Sureness
from tests.engine.brute_force import error
from tests.engine.random_keys import random_answers, random_dangerous

SEEDS = range(60)


def named(tables, answers):
    return {one.group for one in read_case(tables, Case(answers=tuple(answers))).not_ruled_out}


def told(tables, answer, h, factor):
    """Chance of this report of one state by an observer of this level, were it animal `h`."""
    table = tables.characters[answer.character]
    k = table.character.state_ids.index(next(iter(answer.states)))
    scale = factor * (1.0 if answer.sureness is Sureness.SURE else 2.0)
    total = 0.0
    for s, right in enumerate(table.right):
        e = error(tables, right, scale)
        total += table.chance[h, s] * ((1.0 - e) * (s == k) + e * table.misread[s, k])
    return total


def cost(tables, answers, rows):
    ordinary = tables.weights.observers[len(tables.weights.observers) // 2].factor
    every = range(len(tables.rows))

    def of(answer, row):
        return math.log(max(told(tables, answer, h, ordinary) for h in every)) - math.log(
            told(tables, answer, row, ordinary)
        )

    return min(sum(of(answer, row) for answer in answers) for row in rows)


def by_hand(tables, answers, danger):
    """The cheapest one answer that brings the danger back when it is taken back, else the cheapest two."""
    rows = [i for i in tables.gated if tables.rows[i].danger == danger]
    for size in (1, 2):
        found = [
            (cost(tables, taken, rows), set(taken))
            for taken in itertools.combinations(answers, size)
            if danger in named(tables, [a for a in answers if a not in taken])
        ]
        # Answers that are no surprise to the danger at all are no slip to look for.
        found = [one for one in found if one[0] > 1e-12]
        if found:
            return min(found, key=lambda one: one[0])
    return None


@pytest.mark.parametrize("seed", SEEDS)
def test_the_second_look_is_that_of_brute_force(seed):
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed)
    reading = read_case(tables, Case(answers=answers))
    looks = {look.group: look for look in second_look(tables, reading)}
    cleared = {"widows", "ticks"} - named(tables, answers)
    wanted = {danger: by_hand(tables, answers, danger) for danger in cleared}
    assert set(looks) == {danger for danger, found in wanted.items() if found is not None}
    for danger, look in looks.items():
        best = wanted[danger]
        assert look.cost == pytest.approx(best[0], abs=1e-9)
        assert set(look.answers) == best[1] or cost_ties(tables, answers, danger, best[0])


def cost_ties(tables, answers, danger, best):
    rows = [i for i in tables.gated if tables.rows[i].danger == danger]
    costs = [cost(tables, taken, rows) for size in (1, 2) for taken in itertools.combinations(answers, size)]
    return sum(abs(one - best) < 1e-9 for one in costs) > 1


def test_the_random_keys_meet_looks_of_one_answer_and_of_two():
    sizes = {
        len(look.answers)
        for seed in SEEDS
        for tables in [random_dangerous(seed)]
        for look in second_look(tables, read_case(tables, Case(answers=random_answers(tables, seed))))
    }
    assert sizes == {1, 2}


def test_the_cheapest_come_first():
    for seed in SEEDS:
        tables = random_dangerous(seed)
        reading = read_case(tables, Case(answers=random_answers(tables, seed)))
        costs = [look.cost for look in second_look(tables, reading)]
        assert costs == sorted(costs)
