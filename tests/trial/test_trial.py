"""Simulated callers and the calls of a trial."""

from __future__ import annotations

import pytest

from keyapp.model import Choice, Settings
from keyapp.trial import Habits, Plan, Policy, draw_caller, hold_call, run_trials
from tests.engine.test_ledger import TABLES
from tests.engine.test_safety import dangerous_garden

PERFECT = Habits(error=0.0, cant_tell=0.0, spread=0.0, unlisted=0.0)
SEES_ALL = [c.id for c in TABLES.keyset.characters.values() if c.states]


def caller(taxon, habits=PERFECT, seed=1, tables=TABLES):
    return draw_caller(tables.keyset, tables.keyset.taxa[taxon], habits, seed)


@pytest.mark.parametrize("taxon", ["wheel", "jumper", "crab"])
def test_without_slips_a_caller_sees_what_the_animal_shows(taxon):
    found = [caller(taxon, Habits(0.0, 0.0, 0.0, 0.0, 0.0), seed) for seed in range(20)]
    shown = TABLES.keyset.taxa[taxon].shows
    seen = [(name, one.sees(name)) for one in found for name in shown if one.sees(name) is not None]
    assert seen
    assert all(state in shown[name] for name, state in seen)


def test_asked_the_same_again_a_caller_says_the_same_again():
    habits = Habits(error=0.5, cant_tell=0.3)
    for seed in range(20):
        one = caller("wheel", habits, seed)
        assert [one.sees(name) for name in SEES_ALL] == [one.sees(name) for name in SEES_ALL]


def test_the_same_seed_gives_the_same_caller():
    habits = Habits(error=0.4, cant_tell=0.2)
    one, two = caller("wheel", habits, 7), caller("wheel", habits, 7)
    assert [one.sees(name) for name in SEES_ALL] == [two.sees(name) for name in SEES_ALL]


def test_slips_come_about_as_often_as_asked():
    habits = Habits(error=0.2, cant_tell=0.0, spread=0.0, bunching=0.0, unlisted=0.0)
    seen = [caller("crab", habits, seed).sees("gait") for seed in range(800)]
    told = [state for state in seen if state is not None]
    assert sum(state != "sideways" for state in told) / len(told) == pytest.approx(0.2, abs=0.05)


def test_a_caller_who_sees_neither_lead_says_so():
    one = caller("wheel")
    couplet = TABLES.keyset.couplets["k/gait"]
    assert one.choose(couplet) in (Choice.SECOND, Choice.CANT_TELL)


def test_a_call_without_slips_ends_at_the_animal():
    outcome = hold_call(TABLES, caller("wheel"), Settings(), Policy(extra=3))
    assert (outcome.place, outcome.taxon) == (0, "wheel")


def test_a_dangerous_animal_described_without_slips_is_named():
    tables = dangerous_garden()
    for seed in range(10):
        one = draw_caller(tables.keyset, tables.keyset.taxa["widow"], PERFECT, seed)
        assert not hold_call(tables, one, Settings(), Policy()).misses_danger


def test_results_do_not_depend_on_the_number_of_workers():
    keyset = dangerous_garden().keyset
    plans = [Plan(calls=45, seed=3), Plan(calls=21, seed=3, habits=PERFECT)]
    alone = run_trials(keyset, plans, workers=1)
    assert [len(outcomes) for outcomes in alone] == [45, 21]
    assert alone == run_trials(keyset, plans, workers=2)


def test_a_plan_gives_the_same_calls_whatever_is_held_beside_it():
    keyset = dangerous_garden().keyset
    plan = Plan(calls=25, seed=3)
    (alone,) = run_trials(keyset, [plan], workers=1)
    assert run_trials(keyset, [Plan(calls=25, seed=4), plan], workers=1)[1] == alone


def test_plans_of_one_seed_meet_the_same_animals():
    plans = [Plan(calls=30, seed=5, habits=Habits(error=error)) for error in (0.0, 0.2)]
    calm, hasty = run_trials(dangerous_garden().keyset, plans, workers=1)
    assert [outcome.taxon for outcome in calm] == [outcome.taxon for outcome in hasty]
    assert calm != hasty


def test_progress_is_told_over_all_plans():
    told = []
    plans = [Plan(calls=30), Plan(calls=5)]
    run_trials(dangerous_garden().keyset, plans, workers=1, told=lambda done, total: told.append((done, total)))
    assert told == [(20, 35), (30, 35), (35, 35)]
