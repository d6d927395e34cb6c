"""The scale benchmark: its made-up keys, its peers, what it says. Never how long anything takes."""

from __future__ import annotations

import io
import json
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest

from keyapp.bench import scale as scale_module
from keyapp.bench.plain import PlainKey
from keyapp.bench.report import json_text, plain_text, scale_plot
from keyapp.bench.scale import Growth, Peer, Scale, measure_scale
from keyapp.bench.session import EVIDENCE, Timing, hold
from keyapp.bench.synthetic import Extent, synthetic_keyset
from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal
from keyapp.engine import build_tables, not_ruled_out, prior, standing
from keyapp.engine.ledger import report_event
from keyapp.engine.question import next_questions
from keyapp.errors import ProgramError
from keyapp.model import Form, Observer, Report, Settings, Weights

WEIGHTS = Weights(
    unlisted=0.03,
    slip=0.04,
    inapplicable=0.3,
    observers=(Observer("good", 0.4, 0.5), Observer("poor", 0.6, 2.0)),
    evidence={"words": 1.2},
    asking=4.0,
)
SMALL = Extent(40, 30)


def small_key(seed):
    return synthetic_keyset(SMALL, seed, WEIGHTS)


def test_the_same_seed_gives_the_same_key():
    assert small_key(1) == small_key(1)
    assert small_key(1) != small_key(2)


def test_a_made_up_key_is_as_sparse_and_as_uneven_as_a_real_one():
    key = synthetic_keyset(Extent(300, 500), 4, WEIGHTS)
    described = [len(taxon.shows) / 500 for taxon in key.taxa.values()]
    states = {len(character.states) for character in key.characters.values()}
    assert (len(key.taxa), len(key.characters), states) == (300, 500, {2, 3, 4, 5, 6})
    assert 0.08 < np.mean(described) < 0.2
    assert len({character.group for character in key.characters.values()}) == 100
    tables = build_tables(key)
    assert len({row.danger for row in tables.rows} - {""}) >= 4
    assert len(tables.groups) > 12
    assert sum(taxon.form is Form.WEB for taxon in key.taxa.values()) > 2
    assert any(character.never_clears for character in key.characters.values())


def said_of(tables, seed, count):
    rng = np.random.default_rng(seed)
    names = rng.choice(list(tables.characters), size=count, replace=False)
    return [(str(n), str(rng.choice(tables.characters[n].character.state_ids))) for n in names]


@pytest.mark.parametrize(("seed", "count"), [(1, 0), (2, 1), (3, 4), (4, 8), (5, 12)])
def test_the_engine_agrees_with_plain_python(seed, count):
    key = small_key(seed)
    tables = build_tables(key)
    chances = prior(tables, Settings())
    plain = PlainKey(key, [(row.taxon, row.kind) for row in tables.rows], chances.tolist(), EVIDENCE)
    said = said_of(tables, seed, count)
    found = [report_event(tables, Report(n, frozenset({s}), evidence=EVIDENCE)) for n, s in said]
    stand = standing(tables, np.log(chances), found)
    assert stand.posterior == pytest.approx(np.array(plain.update(said)), abs=1e-9)
    named = not_ruled_out(tables, stand, found)
    questions = next_questions(tables, np.log(chances), found, stand, named, EVIDENCE)
    worth = plain.questions(said)
    assert questions
    for question in questions:
        tell = key.characters[question.character].tell
        bits, cleared = worth.pop(question.character)
        assert (question.bits, question.cleared) == pytest.approx((bits * tell, cleared * tell), abs=1e-9)
    assert all(bits < 1e-6 for bits, _ in worth.values())


def test_a_session_answers_what_the_result_shows():
    key = synthetic_keyset(Extent(40, 80), 1, WEIGHTS)
    taxon = key.taxa["taxon-7"]
    session = hold(build_tables(key), taxon, answers=3, rounds=1)
    assert len(session.steps) == 3
    assert len({step.character for step in session.steps}) == 3
    assert all(step.state in taxon.shows[step.character] for step in session.steps)


def test_a_run_measures_and_compares():
    heard = []
    found = measure_scale(WEIGHTS, 1, 1, heard.append, sizes=(30,), characters=40, peer_taxa=(25,))
    (growth,) = found.growth
    assert growth.taxa == 30
    assert len(growth.updates) == len(growth.questions) > 0
    assert growth.rows > 30
    assert {(peer.name, peer.what) for peer in found.peers} >= {
        ("plain Python", "update"),
        ("plain Python", "question"),
    }
    assert max(peer.difference for peer in found.peers) < 1e-9
    assert heard[0] == "30 taxa"
    assert json.loads(json_text(found))["seed"] == 1


def test_no_figures_for_a_wrong_result(monkeypatch):
    def wrong(self, said):
        return [1.0 / len(self._rows)] * len(self._rows)

    monkeypatch.setattr(PlainKey, "update", wrong)
    with pytest.raises(ProgramError, match=r"plain Python and the engine differ by .* \(update\)"):
        measure_scale(WEIGHTS, 1, 1, str, sizes=(), characters=40, peer_taxa=(25,))


def test_a_peer_that_is_not_installed_is_said_to_be_missing(monkeypatch):
    monkeypatch.setattr(scale_module, "has_library", lambda: False)
    found = measure_scale(WEIGHTS, 1, 1, str, sizes=(), characters=20, peer_taxa=())
    assert found.missing == ("pgmpy",)


def made_scale(**changes):
    times = (Timing(0.002, 0.001), Timing(0.004, 0.003))
    growth = Growth(
        taxa=100,
        rows=101,
        load=0.2,
        whole=0.3,
        worked=0.25,
        updates=times,
        questions=(Timing(0.010, 0.009), Timing(0.030, 0.020)),
        first_question=0.5,
        memory=2e8,
    )
    peer = Peer("plain Python", 100, "question", 0.01, 1.0, 1e-15)
    return Scale(500, 1, (growth, replace(growth, taxa=5000, **changes)), (peer,), ("pgmpy",))


def test_the_report_says_whether_the_targets_are_met():
    told = plain_text(made_scale())
    assert told.count("  met") == 4
    assert "NOT MET" not in told
    assert "question: 30.00 ms, below 50.00 ms  met" in told


def test_the_report_says_what_is_not_met():
    told = plain_text(made_scale(load=1.25, updates=(Timing(0.001, 0.001), Timing(0.006, 0.001))))
    assert "load: 1250 ms, below 1000 ms  NOT MET" in told
    assert "update: 6.00 ms, below 5.00 ms  NOT MET" in told


def test_the_report_names_ratios_and_what_is_missing():
    told = plain_text(made_scale())
    assert "question, 100 taxa: 10.00 ms; plain Python: 1000 ms, 100 times as long" in told
    assert "pgmpy is not installed (extra `outside`): not compared" in told


def test_memory_that_the_system_does_not_tell_is_not_said_to_be_met():
    told = made_scale(memory=None)
    assert "memory: not measured on this system, below 1000 MB" in plain_text(told)
    assert json.loads(json_text(told))["targets"]["memory"] == {"value": None, "below": 1e9, "met": None}


def test_the_plot_has_a_panel_for_each_target():
    root = ElementTree.fromstring(scale_plot(made_scale()))
    words = [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")]
    assert words.count("target") == words.count("taxa") == 4
    assert words.count("5000") == 4


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["answer", "--json"], "--json goes with `bench scale` alone"),
        (["start", "--plot", "x.svg"], "--plot goes with `bench scale` alone"),
        (["scale", "--seed", "-1"], "-1 is no seed"),
        (["scale", "--plot", "no/such/folder/x.svg"], "The plot could not be written"),
    ],
)
def test_options_that_do_not_fit_are_refused(options, words):
    errors = io.StringIO()
    assert run(["bench", *options], Terminal(io.StringIO(), io.StringIO(), errors)) == 2
    assert words in errors.getvalue()
