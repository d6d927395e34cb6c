"""Every act of a person: done, undone, and signalled once."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from harness import TO_COBWEB, TO_WIDOW, Bench, Count

from keyapp.gui.session import Session, Stage
from keyapp.model import Case, Choice, LeadAnswer, Measurement, Report, Sureness


def answer_first(session: Session) -> None:
    session.draft_lead(choice=Choice.SECOND)
    session.answer()


def report_web(session: Session) -> None:
    session.see("web-shape")
    session.draft_seen(states=frozenset({"tangle"}))
    session.report()


def measure(session: Session) -> None:
    session.see("body-length")
    session.draft_seen(mm=9.0)
    session.report()


ACTS: dict[str, Callable[[Session], None]] = {
    "hurt": lambda s: s.set_hurt(False),
    "mark hurt": lambda s: s.mark_hurt(True),
    "setting": lambda s: s.set_up(month=5),
    "told": lambda s: s.set_told("a wolf spider"),
    "told with an injury": lambda s: s.set_told("it bit me"),
    "answer": answer_first,
    "report": report_web,
    "measure": measure,
}


@pytest.mark.parametrize("name", ACTS)
def test_an_act_changes_the_case_once_and_is_undone_and_redone(bench: Bench, name: str) -> None:
    session = bench.session
    before = session.case
    count = Count(session.changed)
    ACTS[name](session)
    after = session.case
    assert after != before
    assert count.times == 1
    session.undo()
    assert session.case == before
    assert count.times == 2
    session.redo()
    assert session.case == after
    assert count.times == 3


@pytest.mark.parametrize("name", ACTS)
def test_the_same_act_again_is_silent(bench: Bench, name: str) -> None:
    ACTS[name](bench.session)
    bench.session.show_stage(Stage.KEY)
    first = bench.session.case.answers[0] if bench.session.case.answers else None
    if isinstance(first, LeadAnswer):
        bench.session.look_at(first.couplet)
    count = Count(bench.session.changed)
    ACTS[name](bench.session)
    assert count.times == 0


def test_taking_back_and_starting_again_can_be_undone(bench: Bench) -> None:
    session = bench.session
    bench.go(*TO_COBWEB)
    full = session.case
    session.take_back(full.answers[0])
    assert len(session.case.answers) == 3
    session.undo()
    session.start_again()
    assert session.case == Case()
    assert session.stage is Stage.HURT
    session.undo()
    assert session.case == full


def test_nothing_to_undo_is_silent(bench: Bench) -> None:
    count = Count(bench.session.changed)
    bench.session.undo()
    bench.session.redo()
    assert count.times == 0


def test_picking_a_lead_does_not_answer(bench: Bench) -> None:
    bench.go()
    changed, drafted = Count(bench.session.changed), Count(bench.session.drafted)
    bench.session.draft_lead(choice=Choice.SECOND)
    bench.session.draft_lead(choice=Choice.SECOND)
    assert (changed.times, drafted.times) == (0, 1)
    assert bench.session.case.answers == ()


def test_a_bad_setting_is_told_and_changes_nothing(bench: Bench) -> None:
    before = bench.session.case
    bench.session.set_up(region="atlantis")
    assert bench.session.case == before
    assert "atlantis" in bench.said[0].what
    assert bench.said[0].fix


def test_the_way_ends_at_the_result(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    assert bench.session.stage is Stage.RESULT
    bench.session.undo()
    assert bench.session.stage is Stage.KEY
    assert bench.session.couplet == "start/skin"


def test_undoing_a_setting_shows_the_settings(bench: Bench) -> None:
    bench.session.set_hurt(False)
    bench.session.set_up(month=5)
    bench.session.go_on()
    bench.session.undo()
    assert bench.session.stage is Stage.SETTINGS


def test_an_answer_changed_later_keeps_those_that_still_apply(bench: Bench) -> None:
    bench.go(*TO_WIDOW)
    bench.session.look_at("start/skin")
    assert bench.session.lead_draft.choice is Choice.FIRST
    bench.answer(Choice.SECOND)
    assert [a.choice for a in bench.session.case.answers if isinstance(a, LeadAnswer)] == list(TO_COBWEB)
    assert bench.session.stage is Stage.RESULT


def test_an_answer_off_the_way_is_set_aside_not_lost(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    bench.session.look_at("start/legs")
    bench.answer(Choice.FIRST)
    assert len(bench.session.reading.walk.set_aside) == 3
    bench.session.look_at("start/legs")
    bench.answer(Choice.SECOND)
    assert bench.session.reading.walk.set_aside == ()


def test_looking_at_an_answer_changes_nothing_until_it_is_given(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    count = Count(bench.session.changed)
    bench.session.look_at("start/web")
    bench.session.step_back()
    assert bench.session.couplet == "start/legs"
    bench.session.go_on()
    assert bench.session.stage is Stage.RESULT
    assert count.times == 0


def test_stepping_back_before_the_first_couplet_shows_the_settings(bench: Bench) -> None:
    bench.go()
    bench.session.step_back()
    assert bench.session.stage is Stage.SETTINGS


def test_an_absence_needs_to_know_whether_the_side_was_in_view(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.draft_lead(choice=Choice.FIRST)
    assert not bench.session.can_answer()
    bench.session.answer()
    assert len(bench.session.case.answers) == 1
    bench.session.draft_lead(view_seen=False)
    bench.session.answer()
    given = bench.session.case.answers[1]
    assert isinstance(given, LeadAnswer)
    assert given.view_seen is False


def test_an_absence_can_be_answered_at_a_couplet_gone_back_to(bench: Bench) -> None:
    bench.go(*TO_COBWEB)
    bench.session.look_at("start/web")
    bench.session.draft_lead(choice=Choice.FIRST)
    bench.session.draft_lead(view_seen=True)
    bench.session.answer()
    assert bench.said == []
    given = bench.session.case.lead_answer("start/web")
    assert given is not None
    assert (given.choice, given.view_seen) == (Choice.FIRST, True)


def test_picking_the_other_lead_asks_about_its_view_anew(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.draft_lead(choice=Choice.FIRST)
    bench.session.draft_lead(view_seen=True)
    bench.session.draft_lead(choice=Choice.SECOND)
    bench.session.draft_lead(choice=Choice.FIRST)
    assert bench.session.lead_draft.view_seen is None


def test_a_report_keeps_all_that_was_said_of_it(bench: Bench) -> None:
    bench.go()
    bench.session.see("web-shape")
    bench.session.draft_seen(states=frozenset({"orb", "tangle"}), both=True, sureness=Sureness.THINK_SO)
    bench.session.report()
    note = bench.session.case.note("web-shape")
    assert isinstance(note, Report)
    assert (note.states, note.both, note.sureness) == (frozenset({"orb", "tangle"}), True, Sureness.THINK_SO)
    bench.session.see("web-shape")
    assert bench.session.seen_draft.states == frozenset({"orb", "tangle"})


def test_a_size_is_reported_in_mm(bench: Bench) -> None:
    bench.go()
    measure(bench.session)
    assert bench.session.case.answers == (Measurement("body-length", 9.0),)
