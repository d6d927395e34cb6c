"""The key spoken by a script, one JSON object a line."""

from __future__ import annotations

import io
import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from keyapp.cli import ask_json
from keyapp.cli.ask_json import ACTS, Desk
from keyapp.cli.terminal import Terminal
from keyapp.engine import build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.wording import Words
from keyapp.work import Enquiry

TABLES = build_tables(require_keyset(keys_folder()))


@pytest.fixture
def desk():
    return Desk(Enquiry(TABLES), Words(TABLES.keyset))


def say(desk, act, **fields):
    return desk.answer(json.dumps({"act": act, **fields}))


def test_every_reply_holds_couplet_standing_dangers_and_actions(desk):
    reply = say(desk, "state")
    assert reply["ok"]
    assert {"couplet", "standing", "not_ruled_out", "actions", "safety_line", "trail", "acts"} <= reply.keys()
    assert reply["actions"] == ["keep-away"]


def test_the_standing_sums_to_one_within_what_is_listed(desk):
    total = sum(one["chance"] for one in say(desk, "state")["standing"])
    assert total == pytest.approx(1, abs=0.02)


def test_a_lead_moves_on_and_back_returns(desk):
    first = say(desk, "state")["couplet"]["id"]
    assert say(desk, "lead", choice="first")["couplet"]["id"] != first
    assert say(desk, "back")["couplet"]["id"] == first


def test_change_keeps_later_answers_set_aside(desk):
    start = say(desk, "state")["couplet"]["id"]
    say(desk, "lead", choice="first")
    later = say(desk, "cant-tell")["trail"][-1]["couplet"]
    changed = say(desk, "change", couplet=start, choice="second")
    assert [one["couplet"] for one in changed["set_aside"]] == [later]


def test_undo_and_redo_are_exact(desk):
    before = say(desk, "state")
    after = say(desk, "report", character="leg-count", states=["eight"])
    undone, redone = say(desk, "undo"), say(desk, "redo")
    assert undone["standing"] == before["standing"]
    assert redone["standing"] == after["standing"]


def test_words_of_injury_bring_the_emergency_lines(desk):
    reply = say(desk, "settings", told="it bit my hand")
    assert any("1-800-222-1222" in line for line in reply["emergency"])


def test_the_result_is_whole_at_any_time(desk):
    result = say(desk, "result")["result"]
    assert result["claim"] == "unknown"
    assert result["actions"][0]["action"] == "keep-away"
    assert any("1-800-222-1222" in line for line in result["referral"])


def test_a_feared_animal_is_weighed_and_the_case_stays_as_it_is(desk):
    before = say(desk, "report", character="leg-build", states=["short-stout"])
    reply = say(desk, "feared", name="black widow")
    (fear,) = reply["feared"]
    assert (fear["id"], fear["danger"], fear["open"]) == ("widows", "widows", True)
    assert fear["status"] == "Not ruled out: widow spiders. Do not handle."
    assert sum(len(fear[side]) for side in ("for", "against", "little")) == 1
    assert fear["missing"]
    assert fear["best"]["character"] != "leg-build"
    assert reply["standing"] == before["standing"]
    assert say(desk, "feared", name="widows")["feared"][0]["id"] == "widows"


def test_a_name_for_several_gives_each_and_a_very_wide_one_a_list(desk):
    assert {f["id"] for f in say(desk, "feared", name="banana spider")["feared"]} == {
        "giant-crab",
        "garden-orb",
        "golden-silk-orb",
    }
    wide = say(desk, "feared", name="spider")
    assert wide["feared"] == []
    assert wide["may_mean"][0] == {"id": "widows", "danger": "widows", "name": "widow spiders"}


def test_words_of_injury_in_a_feared_name_bring_the_emergency_lines(desk):
    assert any("1-800-222-1222" in line for line in say(desk, "feared", name="it bit my hand")["emergency"])


def test_what_helps_most_comes_with_its_reason_and_can_be_passed_over(desk):
    reply = say(desk, "helps-most")
    best = reply["helps_most"]
    assert best["because"] in ("family", "danger", "both")
    assert best["why"] in best["says"]
    assert reply["stop"]["reason"] == "go-on"
    say(desk, "cant-see", character=best["character"])
    assert say(desk, "helps-most")["helps_most"]["character"] != best["character"]
    assert say(desk, "undo")["notes"] == []
    assert say(desk, "helps-most")["helps_most"]["character"] == best["character"]


def test_the_result_says_whether_to_go_on(desk):
    result = say(desk, "result")["result"]
    assert result["stop"]["says"].startswith("Go on: more can be seen.")
    assert result["helps_most"]["character"]


BAD = {
    "not json": "hello",
    "nan": '{"act": "measure", "character": "body-length", "mm": NaN}',
    "a list": "[]",
    "no act": "{}",
    "unknown act": '{"act": "leed"}',
    "unknown field": '{"act": "lead", "choice": "first", "mood": 1}',
    "wrong type": '{"act": "report", "character": 5, "states": []}',
    "unknown state": '{"act": "report", "character": "leg-count", "states": ["seven"]}',
    "unknown sureness": '{"act": "lead", "choice": "first", "sureness": "very"}',
    "month as text": '{"act": "settings", "month": "May"}',
    "size out of range": '{"act": "measure", "character": "body-length", "mm": 1e9}',
    "true is not a number": '{"act": "measure", "character": "body-length", "mm": true}',
    "a word of the language as setting": '{"act": "settings", "self": 1}',
    "a very long number": '{"act": "measure", "character": "body-length", "mm": 1' + "0" * 400 + "}",
    "deep": "[" * 5000,
    "no such animal": '{"act": "feared", "name": "zzqq"}',
    "a feared animal without a name": '{"act": "feared"}',
    "a size that was not seen": '{"act": "cant-see", "character": "body-length"}',
    "no character to pass over": '{"act": "cant-see", "character": "nose"}',
    "absence without view": '{"act": "report", "character": "underside-mark", "states": ["none"]}',
}


@pytest.mark.parametrize("line", BAD.values(), ids=BAD)
def test_bad_input_gets_an_error_with_a_fix_and_changes_nothing(desk, line):
    before = say(desk, "report", character="leg-count", states=["eight"])
    reply = desk.answer(line)
    assert not reply["ok"]
    assert reply["error"]["what"]
    assert reply["error"]["fix"]
    assert reply["standing"] == before["standing"]


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda v: st.lists(v, max_size=3),
    max_leaves=4,
)
FIELDS = st.dictionaries(
    st.sampled_from(
        ["choice", "couplet", "character", "states", "mm", "name", "sureness", "evidence", "month", "told", "both"]
    ),
    VALUES,
)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.sampled_from(sorted(set(ACTS) - {"quit"})), FIELDS)
def test_nothing_sent_breaks_it(desk, act, fields):
    reply = desk.answer(json.dumps({"act": act, **fields}))
    assert isinstance(reply["ok"], bool)
    assert json.loads(json.dumps(reply))


def test_a_script_holds_a_whole_conversation():
    lines = [
        '{"act": "settings", "thing": "animal", "region": "MO"}',
        "rubbish",
        '{"act": "lead", "choice": "first"}',
        '{"act": "quit"}',
    ]
    out = io.StringIO()
    code = ask_json.run(Terminal(io.StringIO("\n".join(lines) + "\n"), out), keys_folder(), "en")
    replies = [json.loads(line) for line in out.getvalue().splitlines()]
    assert (code, [r["ok"] for r in replies]) == (0, [True, True, False, True, True])
