"""The short way: quick questions, hands off, and one action that is never milder than the gate allows."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from keyapp.engine import Action, ShortEnd, read_case, short_way
from keyapp.engine.short_way import LEAST_ASKED, MOST_ASKED, MOST_SECONDS, is_quick
from keyapp.engine.tables import THING, build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile.cache import cached_keyset
from keyapp.model import Case, Evidence, Means, Report, Settings, Sureness

EYES = Evidence.OWN_EYES
AT_HAND = Settings(hurt=False, region="GA", month=7)


@pytest.fixture(scope="module")
def tables():
    return build_tables(cached_keyset(keys_folder()))


def shown_by(tables, taxon_id, **instead):
    """What a taxon shows most often, by character."""
    shows = {name: max(states, key=lambda s: states[s]) for name, states in tables.keyset.taxa[taxon_id].shows.items()}
    return {THING: "animal", **shows, **instead}


def walk(tables, shown, most=MOST_ASKED, settings=AT_HAND, sureness=Sureness.SURE):
    """Answer every question by `shown`, *can't tell* where it says nothing; the case at the end and the questions."""
    case, questions = Case(settings), []
    while True:
        way = short_way(tables, read_case(tables, case), most)
        if way.question is None:
            return case, questions, way
        questions.append(way.question)
        every = frozenset(tables.characters[way.question].character.state_ids)
        said = frozenset({shown[way.question]}) if way.question in shown else every
        report = Report(way.question, said, sureness=sureness, evidence=EYES, view_seen=way.question in shown)
        case = case.with_answer(report)


ANY = ("widow-black-female", "recluse", "jumping-spider", "harvestman", "sac-widow", "web-orb")


@pytest.mark.parametrize("taxon", ANY)
def test_three_to_five_quick_questions_then_one_action(tables, taxon):
    form = str(tables.keyset.taxa[taxon].form)
    _, questions, way = walk(tables, shown_by(tables, taxon, thing=form))
    assert LEAST_ASKED <= len(questions) <= MOST_ASKED
    assert len(set(questions)) == len(questions)
    assert questions[0] == THING
    for name in questions[1:]:
        character = tables.characters[name].character
        assert character.means is Means.BARE_EYE
        assert character.seconds <= MOST_SECONDS
    assert way.action in Action
    assert way.why in ShortEnd


def test_with_nothing_seen_at_all_it_is_keep_away(tables):
    _, questions, way = walk(tables, {})
    assert way.action is Action.KEEP_AWAY
    assert way.dangers
    assert len(questions) <= MOST_ASKED


def test_someone_hurt_leaves_no_question_and_no_other_action(tables):
    way = short_way(tables, read_case(tables, Case(replace(AT_HAND, hurt=True))))
    assert (way.question, way.action, way.why) == (None, Action.KEEP_AWAY, ShortEnd.HURT)


@pytest.mark.parametrize("most", [MOST_ASKED, 15, 40])
def test_the_action_is_never_milder_than_the_gate(tables, most):
    rng = random.Random(7)
    for _ in range(12):
        shown = {}
        for name, table in tables.characters.items():
            if table.character.states and rng.random() < 0.8:
                shown[name] = rng.choice(table.character.state_ids)
        case, _, way = walk(tables, shown, most)
        reading = read_case(tables, case)
        assert way.action in reading.verdict.actions
        if reading.not_ruled_out:
            assert way.action is Action.KEEP_AWAY


@pytest.mark.parametrize("taxon", ["widow-black-female", "widow-brown-female", "recluse", "bark-scorpion", "hard-tick"])
def test_a_dangerous_animal_is_never_moved_nor_left_however_long_one_looks(tables, taxon):
    for most in (MOST_ASKED, 30):
        _, _, way = walk(tables, shown_by(tables, taxon), most)
        assert way.action is Action.KEEP_AWAY


def test_it_may_be_moved_only_once_eggs_and_young_were_asked_for(tables):
    shown = shown_by(tables, "spiny-orb", carries="nothing")
    case, questions, way = walk(tables, shown, 30)
    assert way.action is Action.MOVE
    assert "carries" in questions
    without = case.without(case.note("carries"))
    assert short_way(tables, read_case(tables, without), 30).question == "carries"
    assert short_way(tables, read_case(tables, without), len(without.answers)).action is Action.LEAVE


@pytest.mark.parametrize(
    ("states", "seen", "sureness"),
    [
        ({"young-on-back"}, True, Sureness.SURE),
        ({"nothing"}, False, Sureness.SURE),
        ({"nothing"}, True, Sureness.THINK_SO),
        ({"nothing", "sac-at-tail"}, True, Sureness.SURE),
    ],
)
def test_eggs_young_or_any_doubt_about_them_leave_it_where_it_is(tables, states, seen, sureness):
    case, _, way = walk(tables, shown_by(tables, "spiny-orb", carries="nothing"), 30)
    assert way.action is Action.MOVE
    doubt = Report("carries", frozenset(states), sureness=sureness, evidence=EYES, view_seen=seen)
    again = short_way(tables, read_case(tables, case.with_answer(doubt)), len(case.answers))
    assert again.action in (Action.LEAVE, Action.KEEP_AWAY)


def test_answers_that_are_not_sure_never_let_it_be_moved(tables):
    shown = shown_by(tables, "spiny-orb", carries="nothing")
    _, _, way = walk(tables, shown, 40, sureness=Sureness.THINK_SO)
    assert way.action is Action.KEEP_AWAY


def test_a_sign_is_not_asked_for_its_legs(tables):
    for thing in ("web", "egg-sac"):
        _, questions, way = walk(tables, {THING: thing}, 10)
        assert "leg-count" not in questions
        assert way.action in (Action.KEEP_AWAY, Action.LEAVE)


def test_what_takes_long_or_a_lens_is_not_quick(tables):
    slow = {name for name, table in tables.characters.items() if not is_quick(table.character)}
    assert {"eye-layout", "on-glass", "underside-mark", THING} <= slow


def test_a_key_that_cannot_ask_for_eggs_never_has_it_moved(tables):
    shown = shown_by(tables, "spiny-orb", carries="nothing")
    keyset = tables.keyset
    taxa = {n: replace(t, shows={c: s for c, s in t.shows.items() if c != "carries"}) for n, t in keyset.taxa.items()}
    less = replace(keyset, taxa=taxa, characters={n: c for n, c in keyset.characters.items() if n != "carries"})
    _, _, way = walk(build_tables(less), shown, 40)
    assert way.action in (Action.LEAVE, Action.KEEP_AWAY)


@pytest.mark.parametrize("taxon", ["widow-black-female", "recluse"])
def test_one_misread_answer_never_lets_a_dangerous_animal_be_moved(tables, taxon):
    shown = shown_by(tables, taxon, carries="nothing")
    _, questions, _ = walk(tables, shown, 12)
    rng = random.Random(3)
    for name in questions:
        wrong = [state for state in tables.characters[name].character.state_ids if state != shown.get(name)]
        _, _, way = walk(tables, {**shown, name: rng.choice(wrong)}, 12)
        assert way.action is Action.KEEP_AWAY, name
