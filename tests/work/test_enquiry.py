"""The enquiry: every act, its undoing, and how often listeners hear of it."""

from __future__ import annotations

import math

import pytest

from keyapp.engine import Action, Claim
from keyapp.errors import UserError
from keyapp.model import Case, Choice, Evidence, Report, Sureness
from keyapp.work import Enquiry
from tests.engine.test_ledger import TABLES

ACTS = {
    "set up": lambda e: e.set_up(month=9, evidence=Evidence.PHOTO),
    "choose": lambda e: e.choose("k/web", Choice.FIRST),
    "can't tell": lambda e: e.choose("k/web", Choice.CANT_TELL),
    "neither": lambda e: e.choose("k/web", Choice.NEITHER),
    "report": lambda e: e.report("gait", frozenset({"leaps"})),
    "measure": lambda e: e.measure("body", 7.5),
    "reopen": lambda e: e.reopen("k/web"),
}


@pytest.fixture
def enquiry():
    return Enquiry(TABLES)


@pytest.fixture
def heard(enquiry):
    calls = []
    enquiry.listen(lambda: calls.append(enquiry.case))
    return calls


@pytest.mark.parametrize("act", ACTS.values(), ids=ACTS)
def test_each_act_is_heard_once_and_undone_exactly(enquiry, heard, act):
    before = enquiry.case
    act(enquiry)
    after = enquiry.case
    assert (len(heard), after != before) == (1, True)
    assert enquiry.undo()
    assert enquiry.case == before
    assert enquiry.redo()
    assert enquiry.case == after
    assert len(heard) == 3


@pytest.mark.parametrize("act", ACTS.values(), ids=ACTS)
def test_an_act_that_changes_nothing_is_not_heard(enquiry, heard, act):
    act(enquiry)
    act(enquiry)
    assert len(heard) == 1


def test_undo_restores_the_reading_exactly(enquiry):
    before = enquiry.reading.standing.posterior.copy()
    enquiry.report("gait", frozenset({"leaps"}))
    enquiry.undo()
    assert (enquiry.reading.standing.posterior == before).all()


def test_nothing_to_undo_says_so(enquiry):
    assert not enquiry.undo()
    assert not enquiry.redo()


def test_back_takes_the_last_couplet_answer(enquiry):
    enquiry.choose("k/web", Choice.CANT_TELL)
    enquiry.report("colour", frozenset({"green"}))
    assert enquiry.back() == "k/web"
    assert [type(a) for a in enquiry.case.answers] == [Report]
    assert enquiry.back() is None


def test_start_again_can_be_undone(enquiry):
    enquiry.choose("k/web", Choice.FIRST)
    kept = enquiry.case
    enquiry.start_again()
    assert enquiry.case == Case()
    enquiry.undo()
    assert enquiry.case == kept


BAD = {
    "unknown couplet": (lambda e: e.choose("k/wev", Choice.FIRST), "k/web"),
    "unknown character": (lambda e: e.report("gat", frozenset({"leaps"})), "gait"),
    "unknown state": (lambda e: e.report("gait", frozenset({"leap"})), "leaps"),
    "no state": (lambda e: e.report("gait", frozenset()), "leaps, walks, sideways"),
    "a size reported as state": (lambda e: e.report("body", frozenset({"big"})), "mm"),
    "a state measured": (lambda e: e.measure("gait", 3), "body"),
    "not a number": (lambda e: e.measure("body", math.nan), "0.2 to 300"),
    "too large": (lambda e: e.measure("body", 1e9), "0.2 to 300"),
    "negative": (lambda e: e.measure("body", -1), "0.2 to 300"),
    "negative spread": (lambda e: e.measure("body", 5, spread=-1), "more than 0"),
    "unknown setting": (lambda e: e.set_up(mouth=3), "month"),
    "month 13": (lambda e: e.set_up(month=13), "1 to 12"),
    "unknown region": (lambda e: e.set_up(region="mars"), "one of"),
    "absence without view": (lambda e: e.report("web", frozenset({"none"})), "view_seen"),
}


@pytest.mark.parametrize(("act", "fix"), BAD.values(), ids=BAD)
def test_bad_input_names_the_fix_and_changes_nothing(enquiry, heard, act, fix):
    enquiry.choose("k/web", Choice.FIRST)
    before = enquiry.case
    with pytest.raises(UserError) as caught:
        act(enquiry)
    assert fix in caught.value.fix
    assert enquiry.case == before
    assert len(heard) == 1


def test_an_answer_can_be_changed_in_place(enquiry):
    enquiry.choose("k/web", Choice.FIRST)
    enquiry.report("gait", frozenset({"leaps"}))
    enquiry.choose("k/web", Choice.SECOND, Sureness.THINK_SO, view_seen=True)
    assert [getattr(a, "choice", None) for a in enquiry.case.answers] == [Choice.SECOND, None]


# The final check, what an answer rests on, and the steps -----------------------------------------


def answered(**parts):
    enquiry = Enquiry(TABLES)
    enquiry.report("gait", ["leaps"], **parts)
    return enquiry


def test_not_quite_lowers_the_claim_and_forbids_moving():
    enquiry = answered(evidence="specialist")
    enquiry.report("web", ["none"], evidence="specialist", view_seen=True)
    enquiry.report("pattern", ["banded"], evidence="specialist")
    before = enquiry.reading.verdict
    assert before.claim is Claim.CONFIRMED
    enquiry.check_fit("jumper", False, "gait")
    after = enquiry.reading.verdict
    assert enquiry.case.is_doubted
    assert after.claim is Claim.ONE_OF
    assert after.actions == (Action.KEEP_AWAY,)
    enquiry.report("gait", ["leaps"], evidence="specialist")
    assert enquiry.case.check is None
    assert enquiry.reading.verdict == before


def test_a_yes_holds_only_for_the_answers_it_was_given_for():
    enquiry = answered()
    enquiry.check_fit("jumper", True)
    enquiry.set_up(month=4)
    assert enquiry.case.check is not None
    enquiry.report("gait", ["leaps"], sureness="think-so")
    assert enquiry.case.check is None


def test_not_quite_stays_until_that_part_is_reported_again():
    enquiry = answered()
    enquiry.check_fit("jumper", False, "gait")
    enquiry.report("pattern", ["plain"])
    assert enquiry.case.is_doubted
    enquiry.undo()
    enquiry.undo()
    assert enquiry.case.check is None


def test_a_check_of_what_the_key_does_not_know_is_refused():
    enquiry = answered()
    before = enquiry.case
    with pytest.raises(UserError):
        enquiry.check_fit("nothing-like-it", True)
    with pytest.raises(UserError):
        enquiry.check_fit("jumper", False, "no-such-part")
    assert enquiry.case is before


def test_what_an_answer_rests_on_can_be_said_anew_and_undone():
    enquiry = answered()
    (answer,) = enquiry.case.answers
    enquiry.rest_on(answer, "photo")
    assert [one.evidence for one in enquiry.case.answers] == [Evidence.PHOTO]
    with pytest.raises(UserError):
        enquiry.rest_on(enquiry.case.answers[0], "hearsay")
    enquiry.undo()
    assert enquiry.case.answers == (answer,)


def test_the_steps_can_be_taken_along():
    enquiry = answered()
    enquiry.set_up(month=4)
    enquiry.undo()
    undo, redo = enquiry.history
    again = Enquiry(TABLES, enquiry.case, undo, redo)
    assert again.redo()
    assert again.case.settings.month == 4
    assert again.undo()
    assert again.undo()
    assert again.case == Case()
    assert not again.undo()
