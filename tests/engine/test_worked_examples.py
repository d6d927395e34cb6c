"""The standing against worked figures.

Figures: Bayes' rule on a binary question with error chance e, as in the theory of questions with
noisy answers (Jedynak, Frazier & Sznitman 2012, "Twenty questions with noise", J. Appl. Prob. 49);
the arithmetic is redone here. The recluse figures use 324 recluses in 1,773 specimens sent in as
such (Vetter 2005, J. Med. Entomol. 42:512-521, counted in a report of his 2006 Kentucky talk).
"""

from __future__ import annotations

import numpy as np
import pytest

from keyapp.engine import build_tables, read_case
from keyapp.engine.ledger import events
from keyapp.engine.standing import standing
from keyapp.model import Case, Evidence, Report, Weights
from tests.builders import character, keyset, taxon

PLAIN = Weights(outside=1e-15, evidence={})


def standing_after(shows: dict[str, dict[str, str]], prior: list[float], said: list[tuple[str, str]], right: float):
    names = sorted({c for held in shows.values() for c in held})
    characters = [character(name, "yes no", right=right) for name in names]
    tables = build_tables(keyset(characters, [taxon(t, held) for t, held in shows.items()], weights=PLAIN))
    log_prior = np.log(np.array([*prior, 1e-15]))
    return standing(tables, log_prior, events(tables, [Report(c, frozenset({s})) for c, s in said])).posterior[:-1]


def within(members: str) -> dict[str, str]:
    return {t: ("yes" if t in members else "no") for t in "abcd"}


def questions(**named: str) -> dict[str, dict[str, str]]:
    return {t: {q: within(members)[t] for q, members in named.items()} for t in "abcd"}


def entropy(p: np.ndarray) -> float:
    return float(-(p * np.log2(p)).sum())


def test_even_prior_one_question_halves_the_doubt():
    found = standing_after(questions(q="ab"), [0.25] * 4, [("q", "yes")], 0.9)
    assert found == pytest.approx([0.45, 0.45, 0.05, 0.05], abs=1e-9)
    assert entropy(found) == pytest.approx(1.4690, abs=5e-5)


def test_even_prior_two_questions_from_different_groups():
    found = standing_after(questions(q="ab", r="ac"), [0.25] * 4, [("q", "yes"), ("r", "yes")], 0.9)
    assert found == pytest.approx([0.81, 0.09, 0.09, 0.01], abs=1e-9)
    assert entropy(found) == pytest.approx(0.9380, abs=5e-5)


def test_a_contradiction_taken_as_independent_cancels_out():
    shows = questions(q="ab", r="ac", again="ab")
    found = standing_after(shows, [0.25] * 4, [("q", "yes"), ("r", "yes"), ("again", "no")], 0.9)
    assert found == pytest.approx([0.45, 0.05, 0.45, 0.05], abs=1e-9)


@pytest.mark.parametrize(
    ("said", "wanted"),
    [("yes", [0.7258, 0.0484, 0.2177, 0.0081]), ("no", [0.1316, 0.7105, 0.0395, 0.1184])],
)
def test_uneven_prior_one_question(said, wanted):
    found = standing_after(questions(q="ac"), [0.5, 0.3, 0.15, 0.05], [("q", said)], 0.9)
    assert found == pytest.approx(wanted, abs=5e-5)


@pytest.mark.parametrize(
    ("members", "right", "gain"),
    [
        ("ac", 0.9, 0.4890),
        ("a", 0.9, 0.5310),
        ("ab", 0.9, 0.3578),
        ("ac", 1.0, 0.9341),
        ("a", 1.0, 1.0),
        ("ab", 1.0, 0.7219),
    ],
)
def test_expected_gain_of_a_question_in_bits(members, right, gain):
    prior = np.array([0.5, 0.3, 0.15, 0.05])
    left = 0.0
    for said in ("yes", "no"):
        truth = np.array([1.0 if (t in members) == (said == "yes") else 0.0 for t in "abcd"])
        chance = float((prior * (right * truth + (1 - right) * (1 - truth))).sum())
        found = standing_after(questions(q=members), list(prior), [("q", said)], right)
        left += chance * entropy(np.maximum(found, 1e-300))
    assert entropy(prior) - left == pytest.approx(gain, abs=1e-4)


EYES = {"recluse": {"eyes": "no"}, "other": {"eyes": "yes"}}
SUBMITTED = 324 / 1773


@pytest.mark.parametrize(
    ("prior", "error", "said", "wanted"),
    [
        (SUBMITTED, 0.1, "yes", 0.0242),
        (SUBMITTED, 0.1, "no", 0.6680),
        (SUBMITTED, 0.2, "yes", 0.0529),
        (SUBMITTED, 0.2, "no", 0.4721),
        (0.89, 0.1, "yes", 0.4734),
        (0.32, 0.1, "yes", 0.0497),
    ],
)
def test_recluse_after_one_count_of_eyes(prior, error, said, wanted):
    """`yes`: told eight eyes. One lay answer does not rule a recluse out."""
    found = standing_after(EYES, [prior, 1 - prior], [("eyes", said)], 1 - error)
    assert found[0] == pytest.approx(wanted, abs=5e-5)


@pytest.mark.parametrize(
    ("error", "wanted"),
    [(0.1, [0.02424, 0.00275, 0.000307]), (0.2, [0.05294, 0.01378, 0.00348, 0.000873])],
)
def test_recluse_after_several_contrary_cues(error, wanted):
    shows = {"recluse": {c: "no" for c in "wxyz"}, "other": {c: "yes" for c in "wxyz"}}
    for count, value in enumerate(wanted, start=1):
        said = [(c, "yes") for c in "wxyz"[:count]]
        found = standing_after(shows, [SUBMITTED, 1 - SUBMITTED], said, 1 - error)
        assert found[0] == pytest.approx(value, rel=5e-3)


def test_three_different_cues_settle_a_majority():
    """Majority of three independent cues at error .1 is right .9720 of the time (binomial)."""
    shows = {"a": {c: "yes" for c in "xyz"}, "b": {c: "no" for c in "xyz"}}
    right = 0.0
    for said in [(x, y, z) for x in ("yes", "no") for y in ("yes", "no") for z in ("yes", "no")]:
        chance = np.prod([0.9 if one == "yes" else 0.1 for one in said])
        found = standing_after(shows, [0.5, 0.5], list(zip("xyz", said, strict=True)), 0.9)
        right += chance * float(found[0] > found[1])
    assert right == pytest.approx(0.9720, abs=1e-9)


def test_words_alone_never_carry_one_name():
    tables = build_tables(
        keyset(
            [character(c, "yes no", right=0.99) for c in "vwxyz"],
            [taxon("a", {c: "yes" for c in "vwxyz"}), taxon("b", {c: "no" for c in "vwxyz"})],
            weights=Weights(outside=0.01),
        )
    )
    answers = tuple(Report(c, frozenset({"yes"}), evidence=Evidence.WORDS) for c in "vwxyz")
    reading = read_case(tables, Case(answers=answers))
    assert reading.standing.groups[0][1] > 0.99
    assert reading.verdict.claim == "one-of"
