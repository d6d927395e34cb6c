"""Enquiries put aside: kept whole, found again, and never with contact details in the label."""

from __future__ import annotations

import datetime
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from keyapp.errors import UserError
from keyapp.model import Case, Choice, FinalCheck, LeadAnswer, Report, Settings
from keyapp.work import Parked, Place, Shelf, check_label
from keyapp.work.parked import LONGEST_LABEL, MOST_STEPS, fresh_id, parked_from, parked_text

NOON = datetime.datetime(2026, 7, 1, 12, tzinfo=datetime.UTC)
CASE = Case(
    Settings(hurt=False, spot="room", told="a widow"),
    (LeadAnswer("start/legs", Choice.SECOND), Report("skin", frozenset({"dull"}))),
    frozenset({"start/web"}),
    FinalCheck("wolf", False, "skin"),
)
BEFORE = Case(Settings(hurt=False))


def parked(label="web in the shed", since=NOON, undo=(Case(), BEFORE), redo=(CASE,)):
    return Parked(fresh_id(), label, since, CASE, Place("key", "start/web"), undo, redo, 0, ("widows",), False)


@given(st.text(max_size=LONGEST_LABEL), st.text(max_size=20), st.booleans())
def test_it_comes_back_as_it_was(label, about, clear):
    one = Parked("a", label, NOON, CASE, Place("seen", about), (BEFORE,), (CASE,), 3, ("widows", "ticks"), clear)
    assert parked_from("a", parked_text(one)) == one


def test_the_shelf_gives_back_what_was_put_longest_parked_first(tmp_path):
    shelf = Shelf(tmp_path)
    late, early = parked("late", NOON + datetime.timedelta(hours=1)), parked("early")
    shelf.put(late)
    shelf.put(early)
    assert Shelf(tmp_path).all() == ((early, late), ())
    shelf.remove(early.id)
    shelf.remove("not there")
    assert shelf.all() == ((late,), ())


def test_an_empty_shelf_is_no_problem(tmp_path):
    assert Shelf(tmp_path / "nowhere").all() == ((), ())


@pytest.mark.parametrize("text", ["", "{", "[]", '{"format": 1}', '{"format": 99}', "null"])
def test_a_damaged_file_is_set_aside_and_the_others_are_there(tmp_path, text):
    shelf = Shelf(tmp_path)
    good = parked()
    shelf.put(good)
    (shelf.folder / "bad.json").write_text(text, encoding="utf-8")
    found, problems = shelf.all()
    assert found == (good,)
    assert len(problems) == 1
    assert "set aside" in problems[0].fix
    assert (shelf.folder / "bad.damaged").is_file()
    assert shelf.all() == ((good,), ())


@pytest.mark.parametrize(
    ("part", "value"),
    [("label", 7), ("since", "yesterday"), ("since", "2026-07-01T12:00:00"), ("lost", "many"), ("undo", [{}]),
     ("dangers", [1]), ("clear", 1), ("case", {"format": 1})],
)  # fmt: skip
def test_values_of_the_wrong_kind_are_damage(part, value):
    data = {**json.loads(parked_text(parked())), part: value}
    with pytest.raises(UserError, match="damaged"):
        parked_from("a", json.dumps(data))


def test_a_disk_that_refuses_is_told(tmp_path):
    (tmp_path / "parked").write_text("a file where a folder belongs", encoding="utf-8")
    with pytest.raises(UserError, match="could not be kept"):
        Shelf(tmp_path).put(parked())


@pytest.mark.parametrize("label", ["mail me at ann@example.org", "call 555-010-0142", "(555) 0142 77 8"])
def test_a_label_with_a_number_or_an_address_is_refused(label):
    with pytest.raises(UserError, match="telephone number or an e-mail"):
        check_label(label)


def test_a_label_is_one_short_line():
    assert check_label("  web in\n the shed, 2 mm ") == "web in the shed, 2 mm"
    assert check_label("") == ""
    with pytest.raises(UserError, match="too long"):
        check_label("x" * (LONGEST_LABEL + 1))


def test_too_many_steps_are_let_go_and_counted():
    undo = tuple(Case(Settings(month=1 + n % 12)) for n in range(MOST_STEPS + 5))
    one = parked(undo=undo).trimmed()
    assert one.undo == undo[5:]
    assert one.lost == 5
    assert parked().trimmed().lost == 0
