"""The way through the key.

web ──orb── wheel
 └──none/tangle── gait ──leaps── jumper
                    └──walks/sideways── colour ──green── crab
                                          └──brown── beetle
"""

from __future__ import annotations

from keyapp.engine import StepKind, reachable, read_case
from keyapp.model import Case, Choice, LeadAnswer, Report, Sureness
from tests.engine.test_ledger import TABLES


def way(*answers, **more):
    return read_case(TABLES, Case(answers=answers, **more))


def test_it_begins_at_the_first_couplet():
    assert way().current == "k/web"


def test_a_lead_to_a_taxon_ends_the_way():
    reading = way(LeadAnswer("k/web", Choice.FIRST))
    assert (reading.current, reading.walk.ends) == (None, ("wheel",))


def test_cant_tell_goes_on_along_both_leads():
    reading = way(LeadAnswer("k/web", Choice.CANT_TELL))
    assert (reading.current, reading.walk.ends) == ("k/gait", ("wheel",))


def test_changing_an_early_answer_keeps_the_later_ones_that_still_apply():
    later = LeadAnswer("k/gait", Choice.SECOND)
    changed = Case(answers=(LeadAnswer("k/web", Choice.CANT_TELL), later)).with_answer(
        LeadAnswer("k/web", Choice.SECOND)
    )
    assert read_case(TABLES, changed).current == "k/colour"


def test_later_answers_off_the_way_are_set_aside_and_do_not_count():
    later = LeadAnswer("k/gait", Choice.FIRST)
    reading = way(LeadAnswer("k/web", Choice.FIRST), later)
    assert reading.walk.set_aside == (later,)
    assert [event.answers[0] for event in reading.events] == [LeadAnswer("k/web", Choice.FIRST)]


def test_a_couplet_settled_by_a_sure_report_is_passed_and_said_so():
    reading = way(Report("gait", frozenset({"leaps"})), LeadAnswer("k/web", Choice.SECOND))
    assert [(s.couplet, s.kind) for s in reading.walk.steps] == [
        ("k/web", StepKind.ANSWERED),
        ("k/gait", StepKind.PASSED),
    ]


def test_a_report_in_doubt_passes_nothing():
    unsure = Report("gait", frozenset({"leaps"}), sureness=Sureness.THINK_SO)
    assert way(unsure, LeadAnswer("k/web", Choice.SECOND)).current == "k/gait"


def test_a_passed_couplet_can_be_opened_again():
    answers = (Report("gait", frozenset({"leaps"})), LeadAnswer("k/web", Choice.SECOND))
    assert way(*answers, reopened=frozenset({"k/gait"})).current == "k/gait"


def test_two_neither_fits_propose_the_earliest_weak_answer():
    weak = LeadAnswer("k/web", Choice.SECOND, Sureness.THINK_SO)
    once = way(weak, LeadAnswer("k/gait", Choice.NEITHER))
    twice = way(weak, LeadAnswer("k/gait", Choice.NEITHER), LeadAnswer("k/colour", Choice.NEITHER))
    assert (once.go_back, twice.go_back) == (None, "k/web")


def test_what_can_be_reached_below_a_couplet():
    assert reachable(TABLES, "k/gait") == {"jumper", "crab", "beetle"}


def test_where_the_key_and_the_standing_part_is_named():
    """Led to the wheel weaver by one word, against three sure observations of something else."""
    reading = way(
        LeadAnswer("k/web", Choice.FIRST, Sureness.THINK_SO),
        Report("gait", frozenset({"sideways"})),
        Report("colour", frozenset({"green"})),
        Report("pattern", frozenset({"plain"})),
    )
    assert reading.verdict.differs
    assert reading.verdict.claim == "one-of"
    assert reading.verdict.parting == "k/web"
