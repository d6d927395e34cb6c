"""When asking stops, and the reason that is given; or what is asked next, and what for."""

from __future__ import annotations

import pytest

from keyapp.engine import Because, StopReason, aim_of, build_tables, helpful_questions, read_case, stop, unseen
from keyapp.engine.stopping import clears
from keyapp.model import Case, Choice, Danger, LeadAnswer, Report, Sureness, Weights
from tests.builders import character, keyset, lead, taxon
from tests.engine.random_keys import random_answers, random_dangerous
from tests.engine.test_safety import NC, TABLES, report

CLEARED = (report("gait", "leaps"), report("shape", "oval"), report("web", "none"), report("colour", "black"))


def told(tables, *answers, passed_over=(), **how):
    found = stop(tables, read_case(tables, Case(answers=answers)), passed_over, **how)
    return found.reason, found.because


def cant_tell(tables, name):
    return Report(name, frozenset(tables.characters[name].character.state_ids), view_seen=False)


def plain(*shows, weights=None, **characters):
    """A key without dangers: results a, b, c ... that show these states."""
    made = [character(name, states, right=0.97) for name, states in characters.items()]
    taxa = [taxon(name, show) for name, show in zip("abcdef", shows, strict=False)]
    return build_tables(keyset(made, taxa, weights=weights or Weights(outside=0.02)))


APART = plain({"x": "yes"}, {"x": "no"}, x="yes no")
ALIKE = plain({"x": "yes", "y": "yes"}, {"x": "yes", "y": "yes"}, {"x": "no", "y": "yes"}, x="yes no", y="yes no")


def other_danger(**shape):
    """A weaver that one answer settles, and a danger that only `gait` and `shape` could clear."""
    characters = [
        character("web", "tangle orb sheet", right=0.999, never_clears=NC),
        character("gait", "hangs leaps", right=0.95),
        character("shape", "globe oval", right=0.95, **shape),
        character("colour", "black green", right=0.95, never_clears=NC),
    ]
    taxa = [
        taxon(
            "bad",
            {"web": "tangle", "gait": "hangs", "shape": "globe", "colour": "black"},
            danger=Danger.SIGNIFICANT,
            group="widows",
        ),
        taxon("weaver", {"web": "orb", "gait": "leaps", "shape": "oval", "colour": "black"}),
        taxon("sheet", {"web": "sheet", "gait": "leaps", "shape": "oval", "colour": "green"}),
    ]
    couplets = {"web": (lead("taxon:weaver", web="orb"), lead("taxon:bad", web="tangle sheet"))}
    return build_tables(keyset(characters, taxa, couplets, Weights(outside=1e-4, danger_bits=1.5)))


OTHER = other_danger()


def test_nothing_said_goes_on_with_the_best_question():
    reading = read_case(APART, Case())
    found = stop(APART, reading)
    assert (found.reason, found.because) == (StopReason.GO_ON, Because.FAMILY)
    assert found.question == helpful_questions(APART, reading)[0]


def test_a_firm_group_with_no_danger_named_is_settled():
    assert told(TABLES, *CLEARED) == (StopReason.SETTLED, Because.FIRM)


def test_a_firm_group_that_is_itself_a_danger_is_settled_too_and_named():
    answers = (report("web", "tangle"), report("gait", "hangs"), report("shape", "globe"), report("under", "red"))
    found = stop(TABLES, read_case(TABLES, Case(answers=answers)))
    assert (found.reason, found.because, found.dangers) == (StopReason.SETTLED, Because.FIRM_DANGER, ("widows",))


def test_a_firm_group_is_not_settled_while_a_danger_is_named_that_a_question_could_clear():
    reading = read_case(OTHER, Case(answers=(report("web", "orb"),)))
    assert reading.standing.groups[0][1] >= OTHER.weights.firm
    found = stop(OTHER, reading)
    assert (found.reason, found.because, found.dangers) == (StopReason.GO_ON, Because.DANGER, ("widows",))
    assert found.question.character in ("gait", "shape")


def test_with_one_of_two_said_the_other_is_asked_for_and_then_it_is_settled():
    answers = [report("web", "orb"), report("gait", "leaps")]
    found = stop(OTHER, read_case(OTHER, Case(answers=tuple(answers))))
    assert (found.reason, found.question.character) == (StopReason.GO_ON, "shape")
    assert told(OTHER, *answers, report("shape", "oval")) == (StopReason.SETTLED, Because.FIRM)


def test_a_danger_that_stays_named_with_nothing_left_that_clears_it_needs_a_specialist():
    answers = (
        report("web", "orb"),
        report("gait", "leaps", sureness=Sureness.THINK_SO),
        report("shape", "oval", sureness=Sureness.THINK_SO),
    )
    found = stop(OTHER, read_case(OTHER, Case(answers=answers)))
    assert (found.reason, found.because) == (StopReason.SPECIALIST, Because.DANGER_LEFT)
    assert found.dangers == ("widows",)


def test_a_danger_that_could_be_cleared_but_was_not_seen_is_no_more_than_can_be_seen():
    answers = (report("web", "orb"), cant_tell(OTHER, "gait"), cant_tell(OTHER, "shape"))
    found = stop(OTHER, read_case(OTHER, Case(answers=answers)))
    assert (found.reason, found.because) == (StopReason.NOTHING_MORE, Because.CANT_TELL)
    assert found.dangers == ("widows",)


def test_passed_over_counts_like_cant_tell():
    assert told(APART, passed_over={"x"}) == (StopReason.NOTHING_MORE, Because.CANT_TELL)
    assert told(APART, cant_tell(APART, "x")) == (StopReason.NOTHING_MORE, Because.CANT_TELL)


def test_a_question_that_costs_more_than_it_tells_is_not_asked():
    assert told(APART, least_score=10.0) == (StopReason.NOTHING_MORE, Because.EFFORT)


def test_animals_that_no_character_tells_apart_need_a_specialist():
    assert told(ALIKE, report("x", "yes"), report("y", "yes")) == (StopReason.SPECIALIST, Because.FINER)


def test_what_is_likely_not_in_the_key_needs_a_specialist():
    tables = plain(
        {"x": "yes", "y": "yes"}, {"x": "no", "y": "yes"}, x="yes no odd", y="yes no", weights=Weights(outside=0.4)
    )
    assert told(tables, report("x", "odd"), report("y", "no")) == (StopReason.SPECIALIST, Because.OUTSIDE)


def test_answers_that_disagree_are_not_settled_by_new_questions():
    answers = [LeadAnswer("k/web", Choice.FIRST), *CLEARED[:1], report("web", "tangle"), report("shape", "oval")]
    answers += [report("colour", "green"), report("under", "none")]
    reading = read_case(TABLES, Case(answers=tuple(answers)))
    assert reading.contradictions
    assert stop(TABLES, reading).reason is not StopReason.SETTLED
    weights = Weights(outside=0.02, ruled_out_answers=0, ruled_out_ratio=1.1, ruled_out_posterior=1.0)
    tables = plain({"x": "yes"}, {"x": "no"}, x="yes no", weights=weights)
    both = (LeadAnswer("k/only", Choice.FIRST), report("x", "no"))
    assert told(tables, *both) == (StopReason.NOTHING_MORE, Because.DISAGREE)


def test_cant_tell_at_a_couplet_of_one_character_is_not_asked_again():
    reading = read_case(TABLES, Case(answers=(LeadAnswer("k/web", Choice.CANT_TELL),)))
    assert unseen(TABLES, reading) == {"web"}
    found = stop(TABLES, reading)
    assert found.question.character != "web"
    told_after = read_case(TABLES, Case(answers=(LeadAnswer("k/web", Choice.CANT_TELL), report("web", "orb"))))
    assert unseen(TABLES, told_after) == frozenset()


def test_not_there_from_a_side_that_was_not_seen_is_cant_tell():
    reading = read_case(TABLES, Case(answers=(report("under", "none", view_seen=False),)))
    assert unseen(TABLES, reading) == {"under"}


def test_what_a_question_is_asked_for():
    """`gait` alone could clear the danger; `web` never does; at first both are open."""
    assert stop(ALIKE, read_case(ALIKE, Case())).because is Because.FAMILY
    reading = read_case(OTHER, Case())
    aims = {q.character: aim_of(OTHER, reading, q) for q in helpful_questions(OTHER, reading)}
    assert (aims["web"].because, aims["web"].dangers) == (Because.FAMILY, ())
    assert (aims["gait"].because, aims["gait"].dangers) == (Because.BOTH, ("widows",))
    assert stop(OTHER, read_case(OTHER, Case(answers=(report("web", "orb"),)))).because is Because.DANGER


@pytest.mark.parametrize("seed", range(20))
def test_what_may_clear_a_danger_is_what_the_gate_counts(seed):
    """Against whole readings: some sure answer brings a result of the danger nearer to enough answers."""
    tables = random_dangerous(seed)
    answers = random_answers(tables, seed, most=3)
    reading = read_case(tables, Case(answers=answers))
    for name in tables.characters:
        if name in {answer.character for answer in answers}:
            continue
        helped = set()
        for state in tables.characters[name].character.state_ids:
            after = read_case(tables, Case(answers=(*answers, Report(name, frozenset({state})))))
            now = {one.group: one for one in after.not_ruled_out}
            for one in reading.not_ruled_out:
                if one.group not in now or now[one.group].contradicted_by > one.contradicted_by:
                    helped.add(one.group)
        # The count of a danger is that of its worst result; helping one of two leaves it as it was.
        assert helped <= set(clears(tables, reading, name)) | _by_odds(tables, reading, helped)


def _by_odds(tables, reading, helped):
    """Dangers that had answers enough, so that the odds alone took them off."""
    needed = tables.weights.ruled_out_answers
    return {one.group for one in reading.not_ruled_out if one.group in helped and one.contradicted_by >= needed}


@pytest.mark.parametrize("seed", range(20))
def test_asking_what_it_says_ends_and_never_settles_over_a_named_danger(seed):
    tables = random_dangerous(seed)
    case = Case()
    for _ in range(len(tables.characters) + 1):
        reading = read_case(tables, case)
        found = stop(tables, reading)
        if found.reason is StopReason.SETTLED:
            top = reading.standing.groups[0][0]
            assert {one.group for one in reading.not_ruled_out} <= {top.name}
        if found.question is None:
            break
        assert found.reason is StopReason.GO_ON
        states = tables.characters[found.question.character].character.state_ids
        case = case.with_answer(Report(found.question.character, frozenset({states[seed % len(states)]})))
    assert found.reason is not StopReason.GO_ON
