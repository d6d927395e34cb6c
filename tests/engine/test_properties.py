"""What must hold of every case, of small random keys and of the shipped one."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from keyapp.engine import build_tables, prior, read_case, standing
from keyapp.engine.ledger import events
from keyapp.engine.reading import notes_of
from keyapp.errors import UserError
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.model import (
    Case,
    Choice,
    Danger,
    Evidence,
    LeadAnswer,
    Measurement,
    Observer,
    Report,
    Settings,
    Sureness,
    Weights,
)
from keyapp.work import Enquiry
from tests.builders import character, keyset, lead, size, taxon
from tests.measure.random_keys import random_key

FEW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
KEYS = ("shipped", *range(6))
STRICTER = (
    {"ruled_out_ratio": 0.1},
    {"ruled_out_posterior": 0.1},
    {"ruled_out_answers": 1},
    {"ruled_out_ratio": 0.3, "ruled_out_posterior": 0.3, "ruled_out_answers": 2},
)
"""What the thresholds are multiplied by, and how many more answers are asked for."""
SLOPPY = (Observer("good", 0.4, 0.5), Observer("ordinary", 0.4, 1.0), Observer("poor", 0.2, 2.5))


@cache
def tables_of(key):
    """The shipped key, or a small random one whose thresholds a few answers reach."""
    if key == "shipped":
        return build_tables(require_keyset(keys_folder()))
    found = random_key(key).keyset
    weights = Weights(
        outside=0.05,
        unlisted=0.01,
        slip=0.02,
        observers=SLOPPY,
        ruled_out_ratio=0.2,
        ruled_out_posterior=0.05,
        evidence={"words": 1.2, "specialist": 0.2},
    )
    return build_tables(replace(found, weights=weights))


@cache
def stricter(key, change):
    """The same key under a stricter rule."""
    base = tables_of(key).keyset
    values = {
        name: getattr(base.weights, name) + by if name == "ruled_out_answers" else getattr(base.weights, name) * by
        for name, by in STRICTER[change].items()
    }
    return build_tables(replace(base, weights=replace(base.weights, **values)))


HOW = {"sureness": st.sampled_from(list(Sureness)), "evidence": st.sampled_from(list(Evidence))}


@st.composite
def answers_for(draw, key, most=8):
    """Different answers that the key can take: leads on the way and off it, reports, sizes.

    In half of the cases most answers are sure and fit one result, so that dangers do get ruled out.
    """
    found = tables_of(key).keyset
    measured = [c.id for c in found.characters.values() if c.number is not None]
    told = [c.id for c in found.characters.values() if c.number is None]
    leads = st.builds(
        LeadAnswer,
        st.sampled_from(sorted(found.couplets)),
        st.sampled_from(list(Choice)),
        view_seen=st.booleans(),
        **HOW,
    )
    kinds = [leads, st.sampled_from(told).flatmap(lambda name: reports_of(found.characters[name]))]
    if measured:
        kinds.append(st.sampled_from(measured).flatmap(lambda name: sizes_of(found.characters[name])))
    case = Case()
    if draw(st.booleans()):
        harmless = sorted(t.id for t in found.taxa.values() if not t.danger.is_gated)
        shows = found.taxa[draw(st.sampled_from(harmless))].shows
        kind = draw(st.sampled_from([Evidence.PHOTO, Evidence.SPECIMEN]))
        for name in draw(st.lists(st.sampled_from(sorted(shows)), max_size=16, unique=True)):
            case = case.with_answer(
                Report(name, frozenset({draw(st.sampled_from(sorted(shows[name])))}), evidence=kind)
            )
        most = 2
    for answer in draw(st.lists(st.one_of(kinds), max_size=most)):
        case = case.with_answer(answer)
    return case.answers


def reports_of(character_):
    states = st.frozensets(st.sampled_from(character_.state_ids), min_size=1, max_size=3)
    return st.builds(Report, st.just(character_.id), states, st.booleans(), view_seen=st.booleans(), **HOW)


def sizes_of(character_):
    number = character_.number
    mm = st.floats(number.least, number.most)
    return st.builds(Measurement, st.just(character_.id), mm, st.none() | st.floats(0.01, 2), **HOW)


def settings_of(key):
    found = tables_of(key).keyset
    places = [None, *found.regions, *(state for region in found.regions.values() for state in region.states)]
    return st.builds(
        Settings,
        region=st.sampled_from(places),
        month=st.sampled_from([None, *range(1, 13)]),
        spot=st.sampled_from([None, *found.spots]),
    )


@st.composite
def cases(draw):
    key = draw(st.sampled_from(KEYS))
    return key, Case(draw(settings_of(key)), draw(answers_for(key)))


def named(reading):
    """Every result that is not ruled out, with its group."""
    return {(danger.group, name) for danger in reading.not_ruled_out for name in danger.taxa}


@FEW
@given(cases())
def test_probabilities_sum_to_one_and_no_danger_is_impossible(found):
    key, case = found
    tables = tables_of(key)
    stand = read_case(tables, case).standing
    assert np.isfinite(stand.posterior).all()
    assert stand.posterior.sum() == pytest.approx(1, abs=1e-9)
    assert sum(chance for _, chance in stand.groups) == pytest.approx(1, abs=1e-9)
    assert stand.observers.sum() == pytest.approx(1, abs=1e-9)
    assert (stand.posterior[list(tables.gated)] > 0).all()


@FEW
@given(cases(), st.randoms(use_true_random=False))
def test_the_order_of_answers_matters_neither_to_the_standing_nor_to_the_gate(found, random):
    key, case = found
    mixed = list(case.answers)
    random.shuffle(mixed)
    first, second = read_case(tables_of(key), case), read_case(tables_of(key), replace(case, answers=tuple(mixed)))
    assert second.standing.posterior == pytest.approx(first.standing.posterior, rel=1e-7, abs=1e-12)
    assert named(second) == named(first)
    assert second.verdict.actions == first.verdict.actions


@FEW
@given(cases())
def test_an_answer_counted_again_adds_nothing(found):
    key, case = found
    tables = tables_of(key)
    answers = (*notes_of(case), *read_case(tables, case).walk.answers)
    log_prior = np.log(prior(tables, case.settings))
    once = standing(tables, log_prior, events(tables, answers))
    for answer in answers:
        again = standing(tables, log_prior, events(tables, (*answers, answer)))
        assert again.posterior == pytest.approx(once.posterior, rel=1e-7, abs=1e-12)


@FEW
@given(cases())
def test_an_answer_given_again_changes_nothing(found):
    key, case = found
    enquiry = Enquiry(tables_of(key), case)
    calls = []
    enquiry.listen(lambda: calls.append(1))
    for answer in case.answers:
        give(enquiry, answer)
    assert enquiry.case is case
    assert (calls, enquiry.can_undo) == ([], False)


@FEW
@given(cases())
def test_a_case_that_holds_an_answer_twice_is_refused(found):
    key, case = found
    for answer in case.answers:
        with pytest.raises(UserError, match="answered twice"):
            read_case(tables_of(key), replace(case, answers=(*case.answers, answer)))


def give(enquiry, answer):
    """Give an answer as a person does."""
    how = {"sureness": answer.sureness, "evidence": answer.evidence}
    if isinstance(answer, LeadAnswer):
        enquiry.choose(answer.couplet, answer.choice, **how, view_seen=answer.view_seen)
    elif isinstance(answer, Report):
        enquiry.report(answer.character, answer.states, both=answer.both, **how, view_seen=answer.view_seen)
    else:
        enquiry.measure(answer.character, answer.mm, spread=answer.spread, **how)


@FEW
@given(cases(), st.data())
def test_undo_and_redo_are_exact(found, data):
    key, case = found
    enquiry = Enquiry(tables_of(key))
    past = [enquiry.case]
    acts = [*(lambda a=answer: give(enquiry, a) for answer in case.answers)]
    acts += [lambda: enquiry.set_up(month=case.settings.month, region=case.settings.region), enquiry.back]
    acts += [lambda: enquiry.reopen(sorted(tables_of(key).keyset.couplets)[0]), enquiry.start_again]
    for act in data.draw(st.lists(st.sampled_from(acts), max_size=8)):
        act()
        if enquiry.case is not past[-1]:
            past.append(enquiry.case)
    last = enquiry.reading.standing.posterior.copy()
    for before in past[-2::-1]:
        assert enquiry.undo()
        assert enquiry.case is before
    assert not enquiry.undo()
    for after in past[1:]:
        assert enquiry.redo()
        assert enquiry.case is after
    assert not enquiry.redo()
    assert (enquiry.reading.standing.posterior == last).all()


@FEW
@given(cases(), st.sampled_from(range(len(STRICTER))))
def test_a_stricter_rule_never_shortens_what_is_not_ruled_out(found, change):
    key, case = found
    assert named(read_case(tables_of(key), case)) <= named(read_case(stricter(key, change), case))


@FEW
@given(cases(), st.data())
def test_one_more_cant_tell_never_shortens_what_is_not_ruled_out(found, data):
    """Of a couplet not answered yet, and of a character not reported yet, in a case without answers set aside.

    An answer that was set aside may count again once *can't tell* opens its way; that is an answer more.
    """
    key, case = found
    tables = tables_of(key)
    aside = read_case(tables, case).walk.set_aside
    case = replace(case, answers=tuple(answer for answer in case.answers if answer not in aside))
    before = read_case(tables, case)
    couplets = [name for name in sorted(tables.keyset.couplets) if case.lead_answer(name) is None]
    told = [c for c in tables.keyset.characters.values() if c.number is None and case.note(c.id) is None]
    more = []
    if couplets:
        more.append(LeadAnswer(data.draw(st.sampled_from(couplets)), Choice.CANT_TELL))
    if told:
        one = data.draw(st.sampled_from(told))
        more.append(Report(one.id, frozenset(one.state_ids)))
    for answer in more:
        after = read_case(tables, case.with_answer(answer))
        assert after.standing.posterior == pytest.approx(before.standing.posterior, rel=1e-9)
        assert named(before) <= named(after)


@settings(max_examples=60, deadline=None)
@given(st.deferred(lambda: settings_of("shipped")))
def test_place_and_month_alone_never_rule_out(chosen):
    tables = tables_of("shipped")
    reading = read_case(tables, Case(chosen))
    assert {name for _, name in named(reading)} == {tables.rows[row].taxon for row in tables.gated}


@FEW
@given(answers_for("shipped", most=4), st.deferred(lambda: settings_of("shipped")))
def test_place_and_month_never_take_the_place_of_a_clearing_answer(answers, chosen):
    """Whatever the place, a group without enough clearing answers stays named."""
    tables = tables_of("shipped")
    reading = read_case(tables, Case(chosen, answers))
    least = tables.weights.ruled_out_answers
    for group in set(tables.keyset.danger_groups) - {group for group, _ in named(reading)}:
        rows = [row for row in tables.gated if tables.rows[row].danger == group]
        clearing = [event for event in reading.events if event.may_clear]
        for row in rows:
            against = [event for event in clearing if event.against[row]]
            assert len({name for event in against for name in event.groups}) >= least


def test_the_rule_is_met_by_the_cases_of_these_tests():
    """The properties above are not empty: some danger is ruled out in the shipped key and in a random one."""
    small = tables_of(0)
    found = [one for one in small.keyset.characters.values() if one.number is None]
    shorter = 0
    for first in found[0].state_ids:
        for second in found[1].state_ids:
            for third in found[2].state_ids:
                told = zip(found, (first, second, third), strict=False)
                case = Case(answers=tuple(Report(one.id, frozenset({state})) for one, state in told))
                shorter += len(named(read_case(small, case))) < len(small.gated)
    assert shorter > 0
    shipped = tables_of("shipped")
    shows = shipped.keyset.taxa["typical-orb"].shows
    answers = tuple(
        Report(name, frozenset({max(states, key=states.get)}), evidence=Evidence.SPECIMEN)
        for name, states in shows.items()
        if name in shipped.characters
    )
    assert named(read_case(shipped, Case(answers=answers))) < named(read_case(shipped, Case()))


def test_a_size_that_nothing_has_leaves_every_danger_possible():
    taxa = [
        taxon("bad", {"x": "yes"}, danger=Danger.SIGNIFICANT, group="widows", sizes={"body": (5, 10)}),
        taxon("good", {"x": "no"}, sizes={"body": (200, 300)}),
    ]
    couplets = {"only": (lead("taxon:bad", x="yes"), lead("taxon:good", x="no"))}
    tables = build_tables(keyset([character("x", "yes no"), size("body")], taxa, couplets))
    stand = read_case(tables, Case(answers=(Measurement("body", 300.0, 0.01), Report("x", frozenset({"no"}))))).standing
    assert stand.posterior[tables.row("bad")] > 0
