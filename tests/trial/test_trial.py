"""Simulated callers and what a trial counts."""

from __future__ import annotations

import io
import json

import pytest

from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal
from keyapp.engine import Claim
from keyapp.model import Choice, Settings
from keyapp.trial import Habits, Outcome, Plan, Policy, draw_caller, hold_call, run_trial, summarise
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
    plan = Plan(calls=45, seed=3)
    assert run_trial(keyset, plan, workers=1) == run_trial(keyset, plan, workers=2)


def outcome(taxon="a", ranked=("A", "B"), chance=0.97, claim=Claim.CONSISTENT, dangers=(), named=(), **more):
    groups = ("A",) if taxon else ()
    values = {"answers": 5, "extra": 1, "strict_right": True, **more}
    return Outcome(taxon, groups, dangers, ranked, chance, claim, named, **values)


def test_a_summary_counts_by_hand():
    found = summarise(
        [
            outcome(),
            outcome(ranked=("B", "A"), strict_right=False, extra=3),
            outcome(dangers=("widows",), named=("widows",)),
            outcome(dangers=("widows",), named=()),
            outcome(taxon=None, claim=Claim.CONSISTENT),
            outcome(taxon=None, claim=Claim.UNKNOWN, ranked=("(not in this key)",)),
        ]
    )
    assert (found.calls, found.inside, found.dangerous) == (6, 4, 2)
    assert (found.first, found.three, found.strict_first) == (0.75, 1.0, 0.75)
    assert (found.danger_miss, found.outside_named) == (0.5, 0.5)
    assert (found.answers, found.extra) == (5.0, 2.0)
    assert found.near_certain == pytest.approx(4 / 6)


def test_a_summary_of_nothing_claims_nothing():
    found = summarise([])
    assert (found.first, found.danger_miss, found.bins) == (None, None, ())


def test_the_command_prints_json():
    out = io.StringIO()
    code = run(["trial", "--calls", "4", "--seed", "2", "--json"], Terminal(io.StringIO(), out))
    assert (code, json.loads(out.getvalue())["calls"]) == (0, 4)


@pytest.mark.parametrize("options", [["--calls", "0"], ["--error", "2"], ["--cant-tell", "-1"]])
def test_bad_options_are_told_in_words(options):
    errors = io.StringIO()
    assert run(["trial", *options], Terminal(io.StringIO(), io.StringIO(), errors)) == 2
    assert errors.getvalue().startswith("Problem:")
