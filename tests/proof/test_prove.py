"""The whole proof: a safe key passes, unsafe ones fail with a walk that can be read, the shipped one holds."""

from __future__ import annotations

import io
import json
from itertools import product

import numpy as np
import pytest

import keyapp.proof.facts as facts_module
from keyapp.cli import prove as command
from keyapp.cli.terminal import Terminal
from keyapp.engine import build_tables, read_case
from keyapp.errors import UserError
from keyapp.folders import keys_folder
from keyapp.model import Report
from keyapp.proof import proof_data, proof_text, prove
from keyapp.proof.enquiry import KINDS, draw_run
from keyapp.proof.facts import check_facts
from keyapp.proof.gate import outcome, settles
from keyapp.proof.sample import Plan, add_up, sample_run
from keyapp.proof.specimen import gated_taxa
from keyapp.proof.starts import starts
from tests.proof.tiny import garden, one_answer_is_enough, with_places

GATED = ("widow", "widow-web")


@pytest.fixture(scope="module")
def safe():
    return prove(garden(), runs=400, workers=1)


@pytest.fixture(scope="module")
def unsafe():
    return prove(one_answer_is_enough(), runs=400, workers=1)


def test_a_safe_key_passes(safe):
    assert safe.holds
    assert (safe.sampled.total, safe.sampled.total_missed) == (400, 0)


def test_a_sign_taken_for_an_animal_with_its_body_made_up_is_part_of_what_holds(safe):
    (cover,) = [cover for cover in safe.covers if cover.taxon == "widow-web"]
    assert (cover.clearing, cover.ruled_out) == (1, 0)
    assert safe.sampled.hows["made up"] > 100


def test_runs_fall_on_all_kinds_and_all_classes_of_start_settings():
    tally = sample_run(build_tables(with_places(garden())), Plan(1200, 1), range(1200))
    assert set(tally.kinds) == set(KINDS)
    assert len(tally.starts) == len(starts(with_places(garden()))) == 144


def test_two_errors_are_told_by_result_with_what_then_stands_in_between(safe):
    text = proof_text(garden(), safe)
    told = text[text.index("two misread answers") :]
    assert "widow: unnamed in" in told
    assert "widow-web: unnamed in" in told
    assert "Two sure errors of different independence groups can permit" in told
    assert "below 1 of the best" in told


def test_a_gate_that_asks_for_three_answers_stands_two_errors():
    proof = prove(garden(ruled_out_answers=3), runs=100, workers=1)
    assert proof.two.total_missed == 0
    assert "Two sure errors never permit" in proof_text(garden(), proof)


def test_levels_of_danger_are_told_apart(safe):
    assert safe.levels == {"significant": ("widow", "widow-web")}
    assert "allergic risk: none" in proof_text(garden(), safe)


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


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("slips", [0, 1, 2])
def test_a_run_holds_no_more_errors_than_asked_and_comes_again(kind, slips):
    tables = build_tables(garden())
    runs = [draw_run(tables, "widow", kind, slips, f"{n}") for n in range(40)]
    assert max(run.slips for run in runs) <= slips
    assert sum(run.slips == min(slips, 1) or run.slips == slips for run in runs) > 20
    assert runs == [draw_run(tables, "widow", kind, slips, f"{n}") for n in range(40)]


def test_a_sign_is_often_taken_for_an_animal_from_the_start():
    tables = build_tables(garden())
    runs = [draw_run(tables, "widow-web", "free", 1, f"{n}") for n in range(40)]
    taken = [run for run in runs if run.case.settings.thing == "animal"]
    assert 10 < len(taken) < 40
    assert {run.slips for run in taken} == {1}
    assert "made up" in {how for run in taken for how in run.hows}


def test_the_short_way_asks_a_few_quick_questions_and_no_more():
    tables = build_tables(garden())
    runs = [draw_run(tables, "widow", "short", 1, f"{n}") for n in range(40)]
    assert {len(run.case.answers) for run in runs} <= {3, 4, 5}
    assert {type(answer) for run in runs for answer in run.case.answers} == {Report}


def test_no_run_says_cant_tell_more_than_twice():
    tables = build_tables(garden())
    runs = [draw_run(tables, taxon, kind, 1, f"{n}") for n in range(60) for taxon, kind in product(GATED, KINDS)]
    counts = [run.hows.count("can't tell") for run in runs]
    assert max(counts) == 2


def test_the_end_of_a_run_is_what_the_engine_reads(shipped):
    """Held against `read_case`, which works out much more."""
    for number, kind in enumerate(KINDS * 6):
        run = draw_run(shipped, ("shed-skin-spider", "recluse", "hard-tick")[number % 3], kind, 2, f"{number}")
        reading = read_case(shipped, run.case)
        named = frozenset(danger.group for danger in reading.not_ruled_out)
        assert outcome(shipped, run.case) == (named, reading.verdict.actions)
        for group, best in reading.settles.items():
            proposed = settles(shipped, run.case, group)
            assert (proposed and proposed.character) == (best and best.character)


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
    code = command.run(Terminal(target=out), keys_folder(), 60, 1, True, only=["tick-larva", "sac-widow"], workers=1)
    data = json.loads(out.getvalue())
    assert code == 0
    assert data["facts"]["breaches"] == []
    assert data["facts"]["truthful"] > 5000
    assert [cover["taxon"] for cover in data["runs"]] == ["tick-larva", "sac-widow"]
    assert {(cover["most_clearing"], cover["ruled_out"]) for cover in data["runs"]} == {(1, "0")}
    assert min(int(cover["misread"]) for cover in data["runs"]) > 10**6


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
