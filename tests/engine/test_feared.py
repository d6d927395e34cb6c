"""Is it this animal? Questions against brute force; the gate; what is missing."""

from __future__ import annotations

import pytest

from keyapp.engine import Strength, build_tables, feared, feared_of, read_case, read_fear
from keyapp.engine.feared import about
from keyapp.errors import UserError
from keyapp.model import Case, Danger, Form, Report, Sureness, Weights
from tests.builders import character, keyset, taxon
from tests.engine.brute_force import worth_by_hand
from tests.engine.random_keys import random_answers, random_dangerous
from tests.engine.test_safety import TABLES, report

SEEDS = range(16)
ANIMALS = ("widows", "ticks", "t4")


def fear_of(tables, name, *answers, passed_over=()):
    return read_fear(tables, read_case(tables, Case(answers=answers)), feared(tables, name), passed_over)


@pytest.mark.parametrize("animal", ANIMALS)
@pytest.mark.parametrize("seed", SEEDS)
def test_the_question_asked_is_that_of_brute_force(seed, animal):
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed, most=3)
    rows = list(feared(tables, animal).rows)
    view = about(tables, feared(tables, animal))
    fear = fear_of(tables, animal, *answers)

    def sides(stand):
        inside = float(stand.posterior[rows].sum())
        return inside, 1.0 - inside

    # Once it is ruled out only bits are left to be gained.
    said = {answer.character for answer in answers}
    by_hand = {}
    for name in tables.characters:
        if name not in said:
            bits, cleared, score = worth_by_hand(tables, view, name, answers, sides)
            if not fear.is_open:
                cleared, score = 0.0, bits / (tables.weights.asking + 5)
            by_hand[name] = (bits, cleared, score)
    for question in fear.questions:
        assert (question.bits, question.cleared, question.score) == pytest.approx(by_hand[question.character], abs=1e-9)
    best = max(by_hand, key=lambda name: by_hand[name][2])
    assert by_hand[fear.questions[0].character][2] == pytest.approx(by_hand[best][2], abs=1e-9)
    assert {q.character for q in fear.questions} == {name for name in by_hand if by_hand[name][2] > 1e-9}


@pytest.mark.parametrize("seed", SEEDS)
def test_it_is_open_just_while_the_gate_names_it(seed):
    tables = random_dangerous(seed)
    for count in range(5):
        answers = random_answers(tables, seed)[:count]
        named = {one.group for one in read_case(tables, Case(answers=answers)).not_ruled_out}
        for danger in ("widows", "ticks"):
            assert fear_of(tables, danger, *answers).is_open == (danger in named)


def test_random_keys_meet_both_sides_of_the_gate():
    states = {
        fear_of(tables, danger, *random_answers(tables, seed)).is_open
        for seed in SEEDS
        for tables in [random_dangerous(seed)]
        for danger in ("widows", "ticks")
    }
    assert states == {True, False}


def test_missing_answers_are_counted_down():
    assert fear_of(TABLES, "widows").missing == 2
    assert fear_of(TABLES, "widows", report("gait", "leaps")).missing == 1
    assert fear_of(TABLES, "widows", report("gait", "leaps", sureness=Sureness.THINK_SO)).missing == 2
    assert fear_of(TABLES, "widows", report("gait", "leaps"), report("colour", "green")).missing == 1
    ruled_out = fear_of(TABLES, "widows", report("gait", "leaps"), report("web", "orb"), report("shape", "oval"))
    assert (ruled_out.is_open, ruled_out.missing) == (False, 0)


def test_what_never_clears_leaves_it_open_however_much_is_said():
    fear = fear_of(TABLES, "widows", report("colour", "green"), report("under", "none"), report("web", "none"))
    assert fear.is_open
    assert fear.missing == 2
    assert all(one.not_clearing is not None for one in fear.evidence)


def test_the_best_thing_to_look_at_says_what_would_speak_for_and_against():
    fear = fear_of(TABLES, "widows", report("web", "tangle"))
    assert fear.best.character in ("gait", "shape")
    assert (fear.points, fear.clears) in (("hangs", "leaps"), ("globe", "oval"), ("hangs", "stalks"), ("globe", "flat"))


def test_all_answers_together_in_one_word():
    assert fear_of(TABLES, "widows").strength is Strength.LITTLE
    assert fear_of(TABLES, "widows", report("web", "tangle"), report("gait", "hangs")).strength is Strength.STRONGLY_FOR
    assert fear_of(TABLES, "widows", report("gait", "leaps")).strength is Strength.STRONGLY_AGAINST


def test_a_ruled_out_animal_gets_a_second_look_and_one_that_is_open_none():
    answers = (report("gait", "leaps"), report("web", "orb"), report("shape", "oval"))
    (look,) = fear_of(TABLES, "widows", *answers).second_look
    assert look.answers[0] in answers
    assert fear_of(TABLES, "widows").second_look == ()


def test_what_was_passed_over_or_could_not_be_told_is_not_asked():
    first = fear_of(TABLES, "widows").best.character
    assert first not in {q.character for q in fear_of(TABLES, "widows", passed_over=[first]).questions}
    cant_tell = Report(first, frozenset(TABLES.characters[first].character.state_ids))
    found = fear_of(TABLES, "widows", cant_tell)
    assert first not in {q.character for q in found.questions}
    assert not found.answered


def test_nothing_is_left_to_look_at_once_all_is_said():
    everything = [
        report(name, table.character.state_ids[0], sureness=Sureness.THINK_SO)
        for name, table in TABLES.characters.items()
    ]
    fear = fear_of(TABLES, "widows", *everything)
    assert (fear.is_open, fear.best, fear.settles) == (True, None, None)


def tables_with_signs():
    characters = [character("form", "body sac"), character("gait", "hangs leaps")]
    taxa = [
        taxon("female", {"gait": "hangs"}, danger=Danger.SIGNIFICANT, group="widows", kind="widow", share=0.5),
        taxon("male", {"gait": "leaps"}, danger=Danger.SIGNIFICANT, group="widows", kind="widow", share=0.5),
        taxon("weaver", {"gait": "hangs"}),
        taxon("weaver-young", {"gait": "leaps"}, kind="weaver"),
        taxon("sac", {"form": "sac"}, form=Form.EGG_SAC, made_by=("widow", "weaver")),
        taxon("web", {"form": "sac"}, form=Form.WEB, made_by=("weaver",)),
        taxon("ball", {"form": "sac"}, form=Form.EGG_SAC, made_by=("widow",)),
    ]
    return build_tables(keyset(characters, taxa, weights=Weights(outside=0.05)))


def test_an_animal_stands_for_all_its_kind_and_its_signs():
    tables = tables_with_signs()
    taxa = {name: {tables.rows[r].taxon for r in feared(tables, name).rows} for name in ("widows", "weaver")}
    assert taxa == {"widows": {"female", "male", "sac", "ball"}, "weaver": {"weaver", "weaver-young", "sac", "web"}}
    assert feared_of(tables, "male") == feared_of(tables, "ball") == feared(tables, "widows")
    assert feared_of(tables, "weaver-young") == feared(tables, "weaver")


def test_a_sign_stands_for_the_worst_animal_that_makes_it():
    tables = tables_with_signs()
    assert feared_of(tables, "sac") == feared(tables, "widows")
    web = feared_of(tables, "web")
    assert (web.id, web.danger, [tables.rows[r].taxon for r in web.rows]) == ("web", "", ["web"])


def test_an_unknown_animal_is_refused():
    with pytest.raises(UserError, match="no animal"):
        feared(TABLES, "unicorn")
