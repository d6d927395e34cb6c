"""The next question against brute force."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from keyapp.engine import build_tables, prior, read_case
from keyapp.engine.question import next_questions
from keyapp.model import Case, Evidence, Observer, Report, Settings, Weights
from tests.builders import character, keyset, taxon
from tests.engine.brute_force import worth_by_hand
from tests.engine.random_keys import random_answers, random_dangerous
from tests.engine.test_safety import TABLES as DANGEROUS

OBSERVERS = (Observer("good", 0.4, 0.5), Observer("poor", 0.6, 2.0))


def random_tables(seed):
    rng = np.random.default_rng(seed)
    counts = [int(rng.integers(2, 5)) for _ in range(4)]
    characters = [
        character(
            f"c{i}",
            " ".join(f"s{k}" for k in range(n)),
            right=float(rng.uniform(0.7, 0.97)),
            tell=float(rng.uniform(0.5, 1)),
        )
        for i, n in enumerate(counts)
    ]
    taxa = [
        taxon(
            f"t{t}",
            {
                f"c{i}": {f"s{k}": float(p) for k, p in enumerate(rng.dirichlet(np.ones(n)))}
                for i, n in enumerate(counts)
            },
        )
        for t in range(5)
    ]
    return build_tables(keyset(characters, taxa, weights=Weights(outside=0.05, observers=OBSERVERS)))


def asked(tables, *answers):
    reading = read_case(tables, Case(answers=answers))
    log_prior = np.log(prior(tables, Settings()))
    return next_questions(tables, log_prior, reading.events, reading.standing, reading.not_ruled_out, Evidence.WORDS)


def entropy(groups):
    p = np.array([chance for _, chance in groups])
    return float(-(p[p > 0] * np.log2(p[p > 0])).sum())


def by_hand(tables, name, *answers):
    """Expected fall of entropy over groups, from nothing but whole readings of each possible case."""
    before = read_case(tables, Case(answers=answers)).standing
    table = tables.characters[name]
    total = 0.0
    for k, state in enumerate(table.character.state_ids):
        after = read_case(tables, Case(answers=(*answers, Report(name, frozenset({state}))))).standing
        chance = 0.0
        for o, observer in enumerate(tables.weights.observers):
            e = min(0.45, (1 - table.character.right) * observer.factor)
            told = (1 - e) * table.chance[:, k] + e * (table.chance @ table.misread)[:, k]
            chance += float((before.joint[o] * told).sum())
        total += chance * (entropy(before.groups) - entropy(after.groups))
    return total * table.character.tell


@pytest.mark.parametrize(("seed", "count"), list(itertools.product(range(5), (0, 1, 2))))
def test_expected_bits_equal_brute_force(seed, count):
    tables = random_tables(seed)
    answers = tuple(Report(f"c{i}", frozenset({"s0"})) for i in range(count))
    for question in asked(tables, *answers):
        assert question.bits == pytest.approx(by_hand(tables, question.character, *answers), abs=1e-9)


def test_what_was_answered_is_not_asked_again():
    tables = random_tables(1)
    assert "c0" not in {q.character for q in asked(tables, Report("c0", frozenset({"s0"})))}


def test_one_of_an_answered_group_gives_only_what_it_adds():
    """`copy` shows just what `c` shows, in the same independence group: nothing is left to learn from it."""
    characters = [character("c", "yes no", group="g"), character("copy", "yes no", group="g"), character("d", "yes no")]
    taxa = [
        taxon(n, {"c": a, "copy": a, "d": b})
        for n, a, b in (("p", "yes", "yes"), ("q", "no", "no"), ("r", "no", "yes"))
    ]
    tables = build_tables(keyset(characters, taxa, weights=Weights(outside=1e-9)))
    bits = {q.character: q.bits for q in asked(tables, Report("c", frozenset({"no"})))}
    assert bits["d"] > 0.2
    assert bits.get("copy", 0.0) < bits["d"] / 3


def test_clearing_a_danger_counts():
    reading = read_case(
        DANGEROUS, Case(answers=(Report("web", frozenset({"orb"})), Report("shape", frozenset({"oval"}))))
    )
    log_prior = np.log(prior(DANGEROUS, Settings()))
    found = next_questions(
        DANGEROUS, log_prior, reading.events, reading.standing, reading.not_ruled_out, Evidence.WORDS
    )
    cleared = {q.character: q.cleared for q in found}
    assert cleared["gait"] >= cleared["colour"]


@pytest.mark.parametrize("seed", range(16))
def test_bits_cleared_and_order_equal_brute_force_where_dangers_are_named(seed):
    """With observer levels, with slips, and with groups that an answer has touched, where the same error lasts on."""
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed, most=3)
    reading = read_case(tables, Case(answers=answers))
    said = {answer.character for answer in answers}
    by_hand = {
        name: worth_by_hand(tables, tables, name, answers, lambda stand: [chance for _, chance in stand.groups])
        for name in tables.characters
        if name not in said
    }
    found = asked(tables, *answers)
    for question in found:
        bits, cleared, score = by_hand[question.character]
        assert question.bits == pytest.approx(bits, abs=1e-9)
        if reading.not_ruled_out:
            assert (question.cleared, question.score) == pytest.approx((cleared, score), abs=1e-9)
    assert {q.character for q in found} == {name for name, worth in by_hand.items() if worth[2] > 1e-9}
    if reading.not_ruled_out:
        best = max(worth[2] for worth in by_hand.values())
        assert by_hand[found[0].character][2] == pytest.approx(best, abs=1e-9)


def test_the_random_keys_ask_within_groups_that_were_answered():
    """Else the persistent error would go untested."""
    touching = 0
    for seed in range(16):
        tables = random_dangerous(seed)
        answers = random_answers(tables, seed, most=3)
        touched = {tables.characters[a.character].character.group for a in answers}
        touching += sum(tables.characters[q.character].character.group in touched for q in asked(tables, *answers))
    assert touching > 8
