"""No way through the shipped key, and no single mistake on it, loses an animal of medical importance."""

from __future__ import annotations

import random
from dataclasses import replace
from itertools import product

import pytest

from keyapp.engine import build_tables, walk
from keyapp.engine.ledger import events
from keyapp.model import Choice, Form, LeadAnswer, Measurement, Report, Settings, TargetKind
from tests.keys.walks import Observer, named, seen_states, some_settings

RECLUSES = {"recluse", "recluse-young"}
NEVER_CLEARS = [
    "front-mark",
    "body-colour",
    "body-length",
    "leg-span",
    "sac-width",
    "eye-count",
    "underside-mark",
    "top-red-mark",
    "body-step",
    "side-eyes",
    "on-glass",
    "sting-tooth",
    "eye-shine",
    "jaw-shade",
    "when-out",
    "scorpion-hold",
    "shield-mark",
    "mouth-from-above",
    "mite-look",
]
SIZES = ["body-length", "leg-span", "sac-width"]
WALKS = 300


@pytest.fixture(scope="module")
def lenient(shipped):
    """The shipped key with odds left out of account: two clearing answers of two groups rule out by themselves."""
    weights = replace(shipped.weights, ruled_out_ratio=1.0, ruled_out_posterior=1.0)
    return build_tables(replace(shipped.keyset, weights=weights))


@pytest.fixture(scope="module")
def sure_answers(shipped):
    """Every sure answer there is: each state reported, each lead chosen, all views seen."""
    keyset = shipped.keyset
    reports = [Report(c.id, frozenset({s})) for c in keyset.characters.values() for s in c.state_ids]
    return [*reports, *(LeadAnswer(c, choice) for c in keyset.couplets for choice in (Choice.FIRST, Choice.SECOND))]


@pytest.fixture(scope="module")
def circumstances(shipped):
    """Every find spot, region and month by itself, and some taken together."""
    keyset = shipped.keyset
    spots = [Settings(spot=spot) for spot in keyset.spots]
    regions = [Settings(region=region) for region in keyset.regions]
    months = [Settings(month=month) for month in range(1, 13)]
    chance = random.Random(1)
    return [*spots, *regions, *months, *(some_settings(shipped, chance) for _ in range(20))]


def reached_without(keyset, character, state):
    """Results that some path reaches without a lead that asserts just this state."""
    found, seen, pending = set(), set(), [keyset.keys[keyset.start].start]
    while pending:
        couplet = pending.pop()
        leads = [lead for lead in keyset.couplets[couplet].leads if lead.holds.get(character) != frozenset({state})]
        found |= {lead.to.id for lead in leads if lead.to.kind is TargetKind.TAXON}
        onward = {lead.to.id for lead in leads if lead.to.kind is TargetKind.COUPLET}
        onward |= {keyset.keys[lead.to.id].start for lead in leads if lead.to.kind is TargetKind.KEY}
        pending.extend(onward - seen)
        seen |= onward
    return found


def test_every_path_to_a_recluse_asks_for_three_pairs_of_eyes(shipped):
    assert RECLUSES & reached_without(shipped.keyset, "eye-layout", "three-pairs") == set()


def test_a_recluse_can_be_reached_at_all(shipped):
    assert reached_without(shipped.keyset, "eye-layout", "no such state") & RECLUSES != set()


@pytest.mark.parametrize("mark", ["violin", "stripes-along", "other-marks", "plain"])
def test_the_mark_on_the_front_part_clears_no_recluse(lenient, sure_answers, mark):
    """With any one other sure answer, whatever the mark."""
    others = [a for a in sure_answers if getattr(a, "character", "") != "front-mark"]
    report = Report("front-mark", frozenset({mark}))
    assert [a for a in others if "recluses" not in named(lenient, Settings(), (a, report))] == []


def test_place_and_month_clear_no_recluse(lenient, sure_answers, circumstances):
    """Nor together with any one sure answer."""
    pairs = product(circumstances, sure_answers)
    assert [(s, a) for s, a in pairs if "recluses" not in named(lenient, s, (a,))] == []


def test_a_missing_hourglass_clears_no_widow(lenient, sure_answers):
    """With any one other sure answer, the belly side seen well."""
    others = [a for a in sure_answers if getattr(a, "character", "") != "underside-mark"]
    missing = Report("underside-mark", frozenset({"none"}), view_seen=True)
    assert [a for a in others if "widows" not in named(lenient, Settings(), (a, missing))] == []


def test_any_mark_below_clears_no_widow(shipped, lenient, sure_answers):
    marks = shipped.keyset.characters["underside-mark"].state_ids
    others = [a for a in sure_answers if getattr(a, "character", "") != "underside-mark"]
    cases = product(others, [Report("underside-mark", frozenset({mark})) for mark in marks])
    assert [pair for pair in cases if "widows" not in named(lenient, Settings(), pair)] == []


@pytest.mark.parametrize("attached", ["stuck-to-skin", "on-skin-or-clothes"])
def test_six_legs_and_like_a_tick_keep_ticks_named(lenient, sure_answers, attached):
    """Young ticks have six legs: with any one other sure answer, and on a person or not."""
    tick = (Report("leg-count", frozenset({"six"})), Report("attached", frozenset({attached})))
    others = [a for a in sure_answers if getattr(a, "character", "") not in ("leg-count", "attached")]
    cases = product(others, (Settings(), Settings(spot="on-person-or-pet")))
    assert [(s, a) for a, s in cases if "ticks" not in named(lenient, s, (*tick, a))] == []


def test_six_legs_one_oval_body_and_no_feelers_keep_ticks_named(shipped):
    tick = [
        Report(c, frozenset({s})) for c, s in (("leg-count", "six"), ("body-parts", "one-oval"), ("feelers", "none"))
    ]
    assert "ticks" in named(shipped, Settings(), tick)


@pytest.mark.parametrize("character", NEVER_CLEARS)
def test_what_never_clears_says_why(shipped, character):
    assert len(str(shipped.keyset.characters[character].never_clears).split()) >= 6


@pytest.mark.parametrize("character", [c for c in NEVER_CLEARS if c not in SIZES])
def test_no_answer_about_it_may_clear(shipped, character):
    states = shipped.keyset.characters[character].state_ids
    found = events(shipped, [Report(character, frozenset({state})) for state in states])
    assert [event.answers for event in found if event.may_clear] == []


def test_nothing_else_never_clears_unless_it_is_listed_here(shipped):
    never = {c.id for c in shipped.keyset.characters.values() if c.never_clears}
    assert never == set(NEVER_CLEARS)


@pytest.mark.parametrize("size", SIZES)
def test_no_size_may_clear(shipped, size):
    number = shipped.keyset.characters[size].number
    found = events(shipped, [Measurement(size, number.least), Measurement(size, number.most)])
    assert [event.answers for event in found if event.may_clear] == []


def test_nothing_that_is_not_there_may_clear(shipped):
    """Each "none seen", as a report and as a lead, though the view was seen."""
    keyset = shipped.keyset
    absent = {(c.id, s.id) for c in keyset.characters.values() for s in c.states if s.absence}
    reports = [Report(c, frozenset({s})) for c, s in sorted(absent)]
    leads = [
        LeadAnswer(couplet.id, choice)
        for couplet in keyset.couplets.values()
        for choice, lead in zip((Choice.FIRST, Choice.SECOND), couplet.leads, strict=True)
        if any((c, s) in absent for c, states in lead.holds.items() for s in states)
    ]
    found = [event for answer in (*reports, *leads) for event in events(shipped, [answer])]
    assert len(found) == len(reports) + len(leads)
    assert len(reports) >= 10
    assert [event.answers for event in found if event.may_clear] == []


def gated_pairs(tables, *forms):
    """What an observer may have before them, and the danger group that it means; a sign by its maker."""
    pairs = sorted({(tables.rows[row].taxon, tables.rows[row].danger) for row in tables.gated})
    return [(taxon, danger) for taxon, danger in pairs if tables.keyset.taxa[taxon].form in (forms or Form)]


def before(tables, pairs, walks, **how):
    """Observers before each of `pairs`, `walks` of each, with the danger they have before them."""
    pool = random.Random(2)
    settings = [some_settings(tables, pool) for _ in range(60)]
    for taxon_id, danger in pairs:
        taxon = tables.keyset.taxa[taxon_id]
        chance = random.Random(f"{taxon_id} {danger}")
        for _ in range(walks):
            yield Observer(tables, taxon, seen_states(taxon, chance), chance.choice(settings), chance, **how), danger


def told(observer, answers):
    """One line that says what went wrong."""
    said = ", ".join(str(getattr(a, "choice", "") or sorted(a.states)) + f" {_about(a)}" for a in answers)
    return f"{observer.taxon.id} in {observer.settings}: {said}"


def _about(answer):
    return getattr(answer, "couplet", "") or answer.character


def lost(tables, observers, answer):
    """The observers whose answers leave unnamed what they have before them, as lines to read."""
    found = []
    for observer, danger in observers:
        answers = answer(observer)
        if danger not in named(tables, observer.settings, answers):
            found.append(told(observer, answers))
    return found


def test_whoever_sees_everything_right_has_the_danger_named(shipped):
    observers = before(shipped, gated_pairs(shipped), WALKS)
    assert lost(shipped, observers, lambda observer: observer.right_answers().answers) == []


def test_whoever_misreads_one_couplet_has_the_danger_named(shipped):
    """With all that follows from it: couplets that do not apply to the animal are answered at random."""
    observers = before(shipped, gated_pairs(shipped), WALKS)
    assert lost(shipped, observers, lambda observer: observer.one_misread().answers) == []


@pytest.mark.parametrize("misread", [0, 1])
def test_whoever_reports_what_they_see_has_the_danger_named(shipped, misread):
    """Characters reported directly, all of them right or one of them wrong."""
    observers = before(shipped, gated_pairs(shipped), WALKS)
    assert lost(shipped, observers, lambda observer: observer.reports(misread)) == []


def test_the_danger_is_named_at_every_step_of_the_way(shipped):
    """After each answer of a walk with one misread couplet, not at its end alone."""
    missed = []
    for observer, danger in before(shipped, gated_pairs(shipped), 20):
        answers = observer.one_misread().answers
        steps = [answers[:length] for length in range(len(answers))]
        missed += [told(observer, step) for step in steps if danger not in named(shipped, observer.settings, step)]
    assert missed == []


def test_a_sign_taken_for_an_animal_is_never_lost_to_made_up_answers(shipped):
    """Wings and waists made up for a web talk no danger away."""
    pairs = gated_pairs(shipped, Form.WEB, Form.EGG_SAC, Form.SHED_SKIN)
    observers = before(shipped, pairs, WALKS, guesses=True)
    assert lost(shipped, observers, lambda observer: observer.one_misread().answers) == []


def ends_of_right_walks(tables, taxon):
    """Where observers who see everything right are led."""
    observers = before(tables, [(taxon, "")], 60)
    return {end for observer, _ in observers for end in walk(tables, observer.right_answers(), {}).ends}


def test_the_walks_reach_the_results_they_are_about(shipped):
    """Otherwise the walks above would prove little."""
    gated = [taxon for taxon, _ in gated_pairs(shipped)]
    assert [taxon for taxon in gated if taxon not in ends_of_right_walks(shipped, taxon)] == []


def test_what_is_plainly_something_else_can_rule_a_danger_out(shipped):
    """Otherwise nothing could be lost above: some right reports of a jumping spider let recluses go."""
    observers = before(shipped, [("jumping-spider", "recluses")], 60)
    assert lost(shipped, observers, lambda observer: observer.reports(0)) != []
