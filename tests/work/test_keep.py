"""Keeping the enquiry on disk."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from keyapp.errors import UserError
from keyapp.model import Case, Choice, Evidence, LeadAnswer, Measurement, Report, Settings, Sureness
from keyapp.work import Keeper, case_from_json, case_to_json

SURENESS = st.sampled_from(list(Sureness))
EVIDENCE = st.sampled_from(list(Evidence))
NAMES = st.text("abcdef-/", min_size=1, max_size=8)
ANSWERS = st.one_of(
    st.builds(LeadAnswer, NAMES, st.sampled_from(list(Choice)), SURENESS, EVIDENCE, st.booleans()),
    st.builds(Report, NAMES, st.frozensets(NAMES, min_size=1), st.booleans(), SURENESS, EVIDENCE, st.booleans()),
    st.builds(Measurement, NAMES, st.floats(0.1, 300), st.none() | st.floats(0.01, 1), SURENESS, EVIDENCE),
)
CASES = st.builds(
    Case,
    st.builds(
        Settings, st.none() | st.booleans(), month=st.none() | st.integers(1, 12), told=st.text(), evidence=EVIDENCE
    ),
    st.lists(ANSWERS, max_size=4).map(tuple),
    st.frozensets(NAMES),
)


@given(CASES)
def test_a_case_comes_back_as_it_was(case):
    assert case_from_json(case_to_json(case)) == case


DAMAGED = {
    "not json": "{",
    "a list": "[]",
    "no format": "{}",
    "unknown kind": json.dumps(
        {"format": 1, "settings": {"evidence": "words"}, "answers": [{"kind": "x"}], "reopened": []}
    ),
    "unknown setting": json.dumps(
        {"format": 1, "settings": {"evidence": "words", "mood": 1}, "answers": [], "reopened": []}
    ),
    "bad evidence": json.dumps({"format": 1, "settings": {"evidence": "hearsay"}, "answers": [], "reopened": []}),
}


@pytest.mark.parametrize("text", DAMAGED.values(), ids=DAMAGED)
def test_damaged_text_is_refused_in_words(text):
    with pytest.raises(UserError, match="damaged"):
        case_from_json(text)


def test_a_newer_format_is_refused_politely():
    with pytest.raises(UserError, match="newer version"):
        case_from_json('{"format": 99}')


def test_what_is_kept_is_there_again(tmp_path):
    case = Case(Settings(month=4), (LeadAnswer("k/web", Choice.FIRST),))
    Keeper(tmp_path / "new" / "folder").keep(case)
    assert Keeper(tmp_path / "new" / "folder").kept() == case


def test_nothing_kept_is_no_fault(tmp_path):
    assert Keeper(tmp_path).kept() is None


def test_a_damaged_file_is_set_aside_not_lost(tmp_path):
    keeper = Keeper(tmp_path)
    keeper.path.write_bytes(b"\xff\xfe{")
    with pytest.raises(UserError, match="could not be read"):
        keeper.kept()
    assert keeper.path.with_suffix(".damaged").read_bytes() == b"\xff\xfe{"
    assert keeper.kept() is None


def test_a_folder_that_cannot_be_written_is_told(tmp_path):
    (tmp_path / "file").write_text("x")
    with pytest.raises(UserError, match="could not be kept"):
        Keeper(tmp_path / "file" / "below").keep(Case())


def test_no_half_written_file_is_left(tmp_path):
    keeper = Keeper(tmp_path)
    keeper.keep(Case())
    keeper.keep(Case(Settings(month=2)))
    assert [p.name for p in tmp_path.iterdir()] == ["enquiry.json"]
