"""Confirmed finds go into an enquiry, and nothing else does."""

from __future__ import annotations

import pytest

from keyapp.errors import UserError
from keyapp.model import Evidence, Measurement, Report, Settings, Sureness
from keyapp.notes import Kind, take_finds
from keyapp.work import Enquiry


@pytest.fixture
def enquiry(shipped):
    return Enquiry(shipped)


def finds(reader, text, *characters):
    wanted = {(character,) for character in characters}
    return [find for find in reader.read(text).found if not wanted or find.characters[:1] in wanted]


def test_reading_a_note_changes_no_case(reader, enquiry):
    before = enquiry.case
    reader.read("shiny black spider, no web, bit me")
    assert enquiry.case == before


def test_what_is_chosen_is_taken_and_the_rest_is_not(reader, enquiry):
    take_finds(enquiry, finds(reader, "shiny spider with long feelers", "feelers"))
    assert enquiry.case.answers == (Report("feelers", frozenset({"long-feelers"})),)


def test_settings_are_set_up(reader, enquiry):
    text = "A spider in the garage in June in Texas. I think it's a black widow. It bit my brother."
    take_finds(enquiry, finds(reader, text))
    assert enquiry.case.settings == Settings(
        hurt=True, thing="animal", spot="garage-shed", region="TX", month=6, told="black widow"
    )


def test_a_name_is_added_to_what_was_told_before(reader, enquiry):
    enquiry.set_up(told="wolf spider")
    take_finds(enquiry, finds(reader, "he says brown recluse"))
    assert enquiry.case.settings.told == "wolf spider; brown recluse"


def test_not_there_counts_only_where_that_side_was_seen(reader, enquiry):
    (find,) = finds(reader, "no web")
    take_finds(enquiry, [find])
    assert enquiry.case.note("web-shape") == Report("web-shape", frozenset({"none"}), view_seen=False)
    take_finds(enquiry, [find], seen=[find.id])
    assert enquiry.case.note("web-shape") == Report("web-shape", frozenset({"none"}), view_seen=True)


def test_doubt_and_evidence_are_kept(reader, enquiry):
    take_finds(enquiry, finds(reader, "maybe banded legs"), evidence="photo")
    assert enquiry.case.answers == (
        Report("leg-pattern", frozenset({"banded"}), sureness=Sureness.THINK_SO, evidence=Evidence.PHOTO),
    )


def test_a_size_is_taken_once_it_is_said_what_was_measured(reader, enquiry):
    (find,) = finds(reader, "half an inch")
    with pytest.raises(UserError, match="not said what was measured"):
        take_finds(enquiry, [find])
    assert enquiry.case.answers == ()
    take_finds(enquiry, [find], measured={find.id: "body-length"})
    assert enquiry.case.answers == (Measurement("body-length", 12.7),)


def test_a_size_is_not_taken_for_something_it_cannot_be(reader, enquiry):
    (find,) = finds(reader, "half an inch")
    with pytest.raises(UserError):
        take_finds(enquiry, [find], measured={find.id: "sac-width"})


def test_contradicting_finds_become_one_of_these(reader, enquiry):
    take_finds(enquiry, finds(reader, "The legs are banded. Later: plain legs."))
    assert enquiry.case.answers == (Report("leg-pattern", frozenset({"banded", "plain"}), sureness=Sureness.THINK_SO),)


def test_each_act_can_be_undone(reader, enquiry):
    take_finds(enquiry, [f for f in finds(reader, "shiny spider with long feelers") if f.kind is Kind.STATES])
    assert len(enquiry.case.answers) == 2
    enquiry.undo()
    assert len(enquiry.case.answers) == 1
