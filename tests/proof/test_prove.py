"""The whole proof: a safe key passes, unsafe ones fail with a walk that can be read, the shipped one holds."""

from __future__ import annotations

import io
import json

import numpy as np
import pytest

import keyapp.proof.facts as facts_module
from keyapp.cli import prove as command
from keyapp.cli.terminal import Terminal
from keyapp.engine import build_tables, read_case
from keyapp.errors import UserError
from keyapp.folders import keys_folder
from keyapp.proof import proof_data, proof_text, prove
from keyapp.proof.facts import check_facts
from keyapp.proof.observer import draw_run
from keyapp.proof.sample import Plan, add_up, sample_run
from keyapp.proof.specimen import gated_taxa
from tests.proof.tiny import garden, one_answer_is_enough


@pytest.fixture(scope="module")
def safe():
    return prove(garden(), runs=400, workers=1)


@pytest.fixture(scope="module")
def unsafe():
    return prove(one_answer_is_enough(), runs=400, workers=1)


def test_a_safe_key_passes(safe):
    assert safe.holds
    assert (safe.sampled.total, safe.sampled.total_missed) == (400, 0)


def test_a_sign_with_made_up_answers_is_told_apart(safe):
    assert not safe.holds_for_made_up
    assert "does not hold where a sign is taken for an animal" in proof_text(garden(), safe)


def test_a_key_that_clears_on_one_answer_fails(unsafe):
    assert not unsafe.holds
    assert unsafe.sampled.total_missed > 0


def test_the_failure_is_a_walk_in_words(unsafe):
    key = one_answer_is_enough()
    text = proof_text(key, unsafe)
    assert "BROKEN" in text
    assert "widow (widow) can be ruled out in this walk:" in text
    assert "widows left unnamed" in text
    walk = text[text.index("can be ruled out in this walk") :].split("\n\n")[0]
    assert walk.count("<- misread") >= 1
    assert "1. thing? ->" in walk


def test_a_failed_run_fails_again_in_the_engine(unsafe):
    """What is shown is a real case: read once more, the danger is still missing."""
    tables = build_tables(one_answer_is_enough())
    for failure in unsafe.sampled.failures:
        named = {d.group for d in read_case(tables, failure.run.case).not_ruled_out}
        assert set(failure.missing) & named == set()
        assert failure.missing or failure.actions != ("keep-away",)
        assert failure.run.slips == 1


def test_a_gate_that_counts_every_sure_answer_breaks_the_facts(monkeypatch):
    def careless(tables, found):
        return np.full(len(tables.rows), sum(event.may_clear for event in found), dtype=np.int64)

    tables = build_tables(garden())
    assert check_facts(tables).breaches == ()
    monkeypatch.setattr(facts_module, "clearing_counts", careless)
    assert {breach.why for breach in check_facts(tables).breaches} >= {"truthful", "inapplicable"}


def test_a_gate_that_counts_what_never_clears_breaks_the_facts(monkeypatch):
    def careless(tables, found):
        return np.full(len(tables.rows), len(found), dtype=np.int64)

    monkeypatch.setattr(facts_module, "clearing_counts", careless)
    assert "never" in {breach.why for breach in check_facts(build_tables(garden())).breaches}


@pytest.mark.parametrize("kind", ["key", "reports", "feared"])
@pytest.mark.parametrize("slips", [0, 1, 2])
def test_a_run_holds_no_more_errors_than_asked_and_comes_again(kind, slips):
    tables = build_tables(garden())
    runs = [draw_run(tables, "widow", kind, slips, f"{n}") for n in range(40)]
    assert max(run.slips for run in runs) <= slips
    assert sum(run.slips == min(slips, 1) or run.slips == slips for run in runs) > 20
    assert runs == [draw_run(tables, "widow", kind, slips, f"{n}") for n in range(40)]


def test_runs_without_an_error_never_count_against_what_is_there():
    tables = build_tables(garden(ruled_out_answers=1))
    tally = sample_run(tables, Plan(300, 0, seed=5), range(300))
    assert (tally.total, tally.total_missed) == (300, 0)


def test_parts_of_a_plan_add_up_to_the_whole():
    tables = build_tables(garden())
    plan = Plan(60, 1, seed=3)
    parts = add_up([sample_run(tables, plan, range(0, 25)), sample_run(tables, plan, range(25, 60))])
    assert parts == sample_run(tables, plan, range(60))


def test_several_processes_find_the_same(safe):
    again = prove(garden(), runs=400, workers=2)
    assert proof_data(garden(), again) == proof_data(garden(), safe)


def test_the_shipped_key_holds_in_a_reduced_proof():
    """Facts about every answer, all runs of one result, and some runs through the engine; the command does all."""
    out = io.StringIO()
    code = command.run(Terminal(target=out), keys_folder(), 60, 1, True, only=["tick-larva"], workers=1)
    data = json.loads(out.getvalue())
    assert code == 0
    assert data["facts"]["breaches"] == []
    assert data["facts"]["truthful"] > 5000
    (cover,) = data["runs"]
    assert (cover["most_clearing"], cover["ruled_out"]) == (1, "0")
    assert int(cover["misread"]) > 10**6


def test_every_dangerous_result_of_the_shipped_key_is_met_by_the_proof(shipped):
    gated = {t.id for t in shipped.keyset.taxa.values() if t.danger.is_gated}
    assert gated == set(gated_taxa(shipped))


@pytest.mark.parametrize("wrong", [{"runs": 0}, {"runs": 5, "only": ["nothing-like-it"]}])
def test_the_command_refuses_what_it_cannot_do(wrong):
    with pytest.raises(UserError):
        command.run(Terminal(target=io.StringIO()), keys_folder(), wrong["runs"], 1, False, only=wrong.get("only", ()))


def test_the_command_fails_on_an_unsafe_key(monkeypatch):
    monkeypatch.setattr(command, "require_keyset", lambda folder: one_answer_is_enough())
    out = io.StringIO()
    assert command.run(Terminal(target=out), keys_folder(), 40, 1, False, workers=1) == 1
    assert "BROKEN" in out.getvalue()


def test_strict_asks_for_made_up_answers_as_well(monkeypatch):
    monkeypatch.setattr(command, "require_keyset", lambda folder: garden())
    target = Terminal(target=io.StringIO())
    assert command.run(target, keys_folder(), 40, 1, False, workers=1) == 0
    assert command.run(target, keys_folder(), 40, 1, False, strict=True, workers=1) == 1
