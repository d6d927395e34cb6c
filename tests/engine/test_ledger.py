"""What counts as evidence, and how often."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from keyapp.engine import build_tables, read_case
from keyapp.model import AppliesTo, Case, Choice, LeadAnswer, Measurement, Observer, Report, Sureness, View, Weights
from tests.builders import character, keyset, lead, size, taxon

WEIGHTS = Weights(
    outside=0.1,
    unlisted=0.03,
    observers=(Observer("good", 0.3, 0.5), Observer("ordinary", 0.5, 1.0), Observer("poor", 0.2, 2.5)),
)


def garden():
    """web? -> orb: wheel | none: leap? -> leaps: jumper | walks: crab; beetle has no web to speak of."""
    spiders = AppliesTo(groups=("Araneae",))
    characters = [
        character("web", "orb tangle none", absent="none", view=View.WEB, group="web", applies_to=spiders),
        character("gait", "leaps walks sideways", group="gait"),
        character("colour", "green brown", group="colour"),
        character("pattern", "plain banded", group="colour"),
        size("body"),
    ]
    taxa = [
        taxon(
            "wheel", {"web": "orb", "gait": "walks", "colour": "brown", "pattern": "banded"}, sizes={"body": (8, 20)}
        ),
        taxon("jumper", {"web": "none", "gait": "leaps", "pattern": "banded"}, sizes={"body": (4, 15)}),
        taxon(
            "crab", {"web": "none", "gait": "sideways", "colour": "green", "pattern": "plain"}, sizes={"body": (3, 9)}
        ),
        taxon(
            "beetle",
            {"gait": "walks", "colour": "green", "pattern": "plain"},
            order="Coleoptera",
            sizes={"body": (2, 9)},
        ),
    ]
    couplets = {
        "web": (lead("taxon:wheel", web="orb"), lead("couplet:gait", web="none tangle")),
        "gait": (lead("taxon:jumper", gait="leaps"), lead("couplet:colour", gait="walks sideways")),
        "colour": (lead("taxon:crab", colour="green"), lead("taxon:beetle", colour="brown")),
    }
    return build_tables(keyset(characters, taxa, couplets, WEIGHTS))


TABLES = garden()
REPORTS = [
    Report("web", frozenset({"orb"})),
    Report("web", frozenset({"tangle", "none"})),
    Report("gait", frozenset({"leaps"}), sureness=Sureness.THINK_SO),
    Report("colour", frozenset({"green"})),
    Report("pattern", frozenset({"plain"})),
    Measurement("body", 12.0),
    LeadAnswer("k/web", Choice.FIRST),
    LeadAnswer("k/web", Choice.SECOND),
    LeadAnswer("k/gait", Choice.NEITHER),
    LeadAnswer("k/colour", Choice.CANT_TELL),
]


def posterior(*answers):
    return read_case(TABLES, Case(answers=answers)).standing.posterior


def row(name):
    return TABLES.row(name)


@given(st.lists(st.sampled_from(REPORTS), max_size=5))
def test_probabilities_sum_to_one(answers):
    case = Case()
    for answer in answers:
        case = case.with_answer(answer)
    found = read_case(TABLES, case).standing
    assert found.posterior.sum() == pytest.approx(1, abs=1e-12)
    assert sum(chance for _, chance in found.groups) == pytest.approx(1, abs=1e-12)
    assert found.observers.sum() == pytest.approx(1, abs=1e-12)


@pytest.mark.parametrize("answers", list(itertools.combinations(REPORTS[1:6], 3)))
def test_the_order_of_answers_does_not_matter(answers):
    first = posterior(*answers)
    for order in itertools.permutations(answers):
        assert posterior(*order) == pytest.approx(first, abs=1e-12)


def test_the_same_lead_again_and_a_report_of_the_same_count_once():
    report = Report("web", frozenset({"orb"}))
    assert posterior(report, LeadAnswer("k/web", Choice.FIRST)) == pytest.approx(posterior(report), abs=1e-12)


def test_a_report_takes_the_place_of_what_a_lead_said_of_the_character():
    both = posterior(LeadAnswer("k/web", Choice.FIRST), Report("web", frozenset({"none", "tangle"})))
    assert both == pytest.approx(posterior(Report("web", frozenset({"none", "tangle"}))), abs=1e-12)


def test_two_answers_of_one_independence_group_count_as_the_stronger_not_the_sum():
    colour, pattern = Report("colour", frozenset({"green"})), Report("pattern", frozenset({"plain"}))
    stand = read_case(TABLES, Case(answers=(colour, pattern))).standing
    one = read_case(TABLES, Case(answers=(colour,))).standing
    two = read_case(TABLES, Case(answers=(pattern,))).standing
    spread = [s.fit[row("crab")] - s.fit[row("wheel")] for s in (one, two, stand)]
    assert spread[2] == pytest.approx(max(spread[:2]), abs=0.35)
    assert spread[2] < spread[0] + spread[1] - 1


def test_cant_tell_adds_nothing_to_the_standing():
    assert posterior(LeadAnswer("k/web", Choice.CANT_TELL)) == pytest.approx(posterior(), abs=1e-12)


def test_absence_without_the_view_adds_nothing():
    unseen = Report("web", frozenset({"none"}), view_seen=False)
    assert posterior(unseen) == pytest.approx(posterior(), abs=1e-12)
    assert posterior(Report("web", frozenset({"none"})))[row("jumper")] > posterior()[row("jumper")]


def test_absence_never_helps_to_rule_out():
    events = read_case(TABLES, Case(answers=(Report("web", frozenset({"none"})),))).events
    assert [event.may_clear for event in events] == [False]


def test_a_character_not_described_is_uninformative():
    """`jumper` says nothing of colour: its odds against all the described together stay as they were."""
    before, after = posterior(), posterior(Report("colour", frozenset({"green"})))
    described = [row("wheel"), row("crab"), row("beetle")]
    odds = [p[row("jumper")] / sum(p[i] for i in described) for p in (before, after)]
    assert odds[1] == pytest.approx(odds[0], rel=1e-9)


def test_a_couplet_that_does_not_apply_is_answered_at_random():
    """The beetle has no web: each of the three answers is as likely as the others."""
    for choice in (Choice.FIRST, Choice.SECOND, Choice.NEITHER):
        event = read_case(TABLES, Case(answers=(LeadAnswer("k/web", choice),))).events[0]
        assert np.exp(event.logs[:, row("beetle")]) == pytest.approx([1 / 3] * 3, abs=1e-12)


def test_a_lead_counts_once_however_much_it_asserts():
    characters = [character(c, "yes no") for c in "xyz"]
    taxa = [taxon("a", dict.fromkeys("xyz", "yes")), taxon("b", dict.fromkeys("xyz", "no"))]
    couplets = {"all": (lead("taxon:a", x="yes", y="yes", z="yes"), lead("taxon:b", x="no", y="no", z="no"))}
    tables = build_tables(keyset(characters, taxa, couplets, Weights(outside=1e-12, neither_slip=0.0)))
    found = read_case(tables, Case(answers=(LeadAnswer("k/all", Choice.FIRST),))).standing.posterior
    assert found[1] / found[0] == pytest.approx(0.1 / 0.9, rel=0.05)


def test_one_of_these_sums_and_both_takes_the_less_likely():
    doubt = read_case(TABLES, Case(answers=(Report("gait", frozenset({"leaps", "walks"})),))).events[0]
    both = read_case(TABLES, Case(answers=(Report("gait", frozenset({"leaps", "walks"}), both=True),))).events[0]
    one = read_case(TABLES, Case(answers=(Report("gait", frozenset({"leaps"})),))).events[0]
    two = read_case(TABLES, Case(answers=(Report("gait", frozenset({"walks"})),))).events[0]
    assert np.exp(doubt.logs) == pytest.approx(np.exp(one.logs) + np.exp(two.logs), abs=1e-12)
    assert both.logs == pytest.approx(np.minimum(one.logs, two.logs), abs=1e-12)
    assert both.against[row("jumper")] and not doubt.against[row("jumper")]


def test_smaller_than_grown_never_contradicts_and_much_larger_does():
    small = read_case(TABLES, Case(answers=(Measurement("body", 0.5),))).events[0]
    large = read_case(TABLES, Case(answers=(Measurement("body", 60.0),))).events[0]
    assert np.exp(small.logs[1]) == pytest.approx(np.exp(small.logs[1].max()), abs=1e-6)
    assert large.logs[1, row("crab")] < np.log(0.07)
    assert large.logs[1, row("crab")] > np.log(0.04)


def test_answers_update_the_level_of_the_observer():
    steady = read_case(TABLES, Case(answers=(REPORTS[0],))).standing.observers
    odd = (
        Report("web", frozenset({"orb"})),
        Report("gait", frozenset({"leaps"})),
        Report("colour", frozenset({"green"})),
    )
    wild = read_case(TABLES, Case(answers=odd)).standing.observers
    assert wild[2] > steady[2]


def test_two_answers_that_disagree_are_shown():
    case = Case(answers=(LeadAnswer("k/web", Choice.FIRST), Report("web", frozenset({"tangle"}))))
    assert [c.character for c in read_case(TABLES, case).contradictions] == ["web"]


def test_agreeing_answers_are_no_contradiction():
    case = Case(answers=(LeadAnswer("k/web", Choice.FIRST), Report("web", frozenset({"orb", "tangle"}))))
    assert read_case(TABLES, case).contradictions == ()
