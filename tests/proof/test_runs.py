"""The exact count of runs against every run written out one by one."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.model import Choice, LeadAnswer, TargetKind
from keyapp.proof import facts
from keyapp.proof.facts import counts_against
from keyapp.proof.runs import CANT_TELLS, count_runs
from tests.proof.tiny import garden, one_answer_is_enough, with_state

FIRST, SECOND, NEITHER, CANT_TELL = Choice.FIRST, Choice.SECOND, Choice.NEITHER, Choice.CANT_TELL
ORDER = ["k/thing", "k/legs", "k/web", "k/wings", "k/body", "k/spines"]
APPLIES = {
    "widow": {"thing", "legs", "web", "shape", "belly", "spines"},
    "widow-web": {"thing", "web"},
}


def one_by_one(key, taxon):
    """Every run as (specimen, answers, misread or not), by plain recursion."""
    shows = {c: sorted(states) for c, states in key.taxa[taxon].shows.items()}
    asked = sorted(APPLIES[taxon])
    for states in product(*(shows[c] for c in asked)):
        specimen = dict(zip(asked, states, strict=True))
        yield from _sheets(key, taxon, specimen, 0, {ORDER[0]}, None, CANT_TELLS, ())


def _sheets(key, taxon, specimen, at, reached, slip, left, said):
    if at == len(ORDER):
        yield specimen, said, slip is not None
        return
    name = ORDER[at]
    if name not in reached:
        yield from _sheets(key, taxon, specimen, at + 1, reached, slip, left, said)
        return
    couplet = key.couplets[name]
    characters = {c for one in couplet.leads for c in one.holds}
    groups = {key.characters[c].group for c in characters}
    options = []
    if left:
        options.append((CANT_TELL, slip, left - 1))
    if not characters <= APPLIES[taxon]:
        options += [(choice, slip, left) for choice in (FIRST, SECOND, NEITHER)]
    else:
        fits = [all(specimen[c] in s for c, s in one.holds.items()) for one in couplet.leads]
        right = FIRST if fits[0] else SECOND if fits[1] else NEITHER
        for choice in (FIRST, SECOND, NEITHER):
            if choice is right:
                options.append((choice, slip, left))
            elif slip is None or slip & groups:
                options.append((choice, slip or groups, left))
    for choice, now, rest in options:
        both = choice in (NEITHER, CANT_TELL)
        followed = couplet.leads if both else (couplet.leads[0 if choice is FIRST else 1],)
        onward = {one.to.id for one in followed if one.to.kind is TargetKind.COUPLET}
        answers = (*said, LeadAnswer(name, choice))
        yield from _sheets(key, taxon, specimen, at + 1, reached | onward, now, rest, answers)


@pytest.mark.parametrize("taxon", ["widow", "widow-web"])
def test_the_count_is_that_of_every_run_written_out(taxon):
    key = garden()
    tables = build_tables(key)
    every = list(one_by_one(key, taxon))
    cover = count_runs(tables, taxon)
    assert (cover.right, cover.misread) == (sum(not m for *_, m in every), sum(m for *_, m in every))
    assert len(every) > 50


@pytest.mark.parametrize("taxon", ["widow", "widow-web"])
def test_no_run_written_out_clears_more_often_than_was_found(taxon):
    key = garden()
    tables = build_tables(key)
    runs = one_by_one(key, taxon)
    most = max(counts_against(tables, taxon, said) for _, said, _ in runs)
    assert min(most, 2) == count_runs(tables, taxon).clearing


@pytest.mark.parametrize("taxon", ["widow", "widow-web"])
def test_one_misread_answer_clears_once_at_most(taxon):
    cover = count_runs(build_tables(garden()), taxon)
    assert (cover.clearing, cover.ruled_out) == (1, 0)


def test_a_gate_that_counts_made_up_answers_lets_a_web_taken_for_an_animal_go(monkeypatch):
    """What the strict rule is for: one wrong turn, and a body that is not there made up after it."""

    def careless(tables, found):
        signs = np.array([row.sign for row in tables.rows])
        counted = [event.against | (signs & event.inapplicable) for event in found if event.may_clear]
        return np.sum(counted, axis=0) if counted else np.zeros(len(tables.rows), dtype=np.int64)

    monkeypatch.setattr(facts, "clearing_counts", careless)
    cover = count_runs(build_tables(garden()), "widow-web")
    assert cover.clearing == 2
    assert 0 < cover.ruled_out < cover.runs
    assert "made up" in {said.how for said in cover.walk}


def test_where_one_answer_is_enough_the_walk_that_shows_it_is_kept():
    tables = build_tables(one_answer_is_enough())
    cover = count_runs(tables, "widow")
    assert cover.ruled_out > 0
    assert [said.how for said in cover.walk].count("misread") == 1
    answers = [LeadAnswer(said.couplet, said.choice) for said in cover.walk]
    assert counts_against(tables, "widow", answers) == 1


def test_a_state_shown_more_often_leaves_more_runs():
    base = count_runs(build_tables(garden()), "widow")
    wider = with_state(garden(), "widow", "web", {"tangle": 0.5, "orb": 0.2, "none": 0.3})
    assert count_runs(build_tables(wider), "widow").runs > base.runs
