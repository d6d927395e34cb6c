"""What cannot be right is refused at every door, in words, with a fix, and without changing anything."""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys

import pytest

from keyapp.cli.ask_json import Desk
from keyapp.engine import Action, read_case
from keyapp.errors import UserError
from keyapp.keyfile.problem import Problems
from keyapp.keyfile.shapes import read_region, read_weights
from keyapp.keyfile.source import read
from keyapp.model import Case, Choice, Evidence, LeadAnswer, Measurement, Report, Settings, Sureness
from keyapp.wording import Words
from keyapp.work import Enquiry, case_from_json, case_to_json

FIRST = "start/thing"
LONG = 10**5000


@pytest.fixture
def enquiry(shipped):
    """An enquiry in which something was said already."""
    made = Enquiry(shipped)
    made.set_up(month=6)
    made.report("leg-count", {"eight"})
    return made


def refused(error, *, where=True):
    """An error says what, where and how to mend it."""
    assert error.what and error.fix
    assert error.where or not where
    assert len(str(error)) < 600
    str(error).encode()


# The enquiry --------------------------------------------------------------------------------------

ACTS = {
    "no such choice": lambda e: e.choose(FIRST, "third"),
    "no choice": lambda e: e.choose(FIRST, None),
    "no such sureness": lambda e: e.choose(FIRST, Choice.FIRST, "very"),
    "no such evidence": lambda e: e.choose(FIRST, Choice.FIRST, Sureness.SURE, "hearsay"),
    "empty evidence": lambda e: e.choose(FIRST, Choice.FIRST, Sureness.SURE, ""),
    "view seen in words": lambda e: e.choose(FIRST, Choice.FIRST, view_seen="no"),
    "no couplet": lambda e: e.choose(None, Choice.FIRST),
    "a list for a couplet": lambda e: e.choose([], Choice.FIRST),
    "half a character for a couplet": lambda e: e.choose("\ud800", Choice.FIRST),
    "no such character": lambda e: e.report("leg-cuont", {"six"}),
    "a list for a character": lambda e: e.report([], {"six"}),
    "a word for states": lambda e: e.report("leg-count", "six"),
    "no states at all": lambda e: e.report("leg-count", None),
    "an empty set": lambda e: e.report("leg-count", set()),
    "numbers for states": lambda e: e.report("leg-count", {6}),
    "a state of another character": lambda e: e.report("leg-count", {"six", "orb"}),
    "both in words": lambda e: e.report("leg-count", {"six"}, both="no"),
    "report so sure": lambda e: e.report("leg-count", {"six"}, sureness="SURE"),
    "report on hearsay": lambda e: e.report("leg-count", {"six"}, evidence="hearsay"),
    "no size": lambda e: e.measure("body-length", 0),
    "a negative size": lambda e: e.measure("body-length", -3.0),
    "endless": lambda e: e.measure("body-length", math.inf),
    "not a number": lambda e: e.measure("body-length", math.nan),
    "a size in words": lambda e: e.measure("body-length", "5"),
    "a size of true": lambda e: e.measure("body-length", True),
    "a size of 5000 digits": lambda e: e.measure("body-length", LONG),
    "spread of nothing": lambda e: e.measure("body-length", 5, spread=0),
    "spread that is no number": lambda e: e.measure("body-length", 5, spread=math.nan),
    "spread in words": lambda e: e.measure("body-length", 5, spread="wide"),
    "spread of true": lambda e: e.measure("body-length", 5, spread=True),
    "a number for a character": lambda e: e.measure(3, 5),
    "month 0": lambda e: e.set_up(month=0),
    "month 13": lambda e: e.set_up(month=13),
    "half a month": lambda e: e.set_up(month=5.5),
    "month 5.0": lambda e: e.set_up(month=5.0),
    "month true": lambda e: e.set_up(month=True),
    "no such region": lambda e: e.set_up(region="mars"),
    "empty region": lambda e: e.set_up(region=""),
    "a list for a region": lambda e: e.set_up(region=["MO"]),
    "no such spot": lambda e: e.set_up(spot="moon"),
    "no such thing": lambda e: e.set_up(thing="ufo"),
    "no such asker": lambda e: e.set_up(asker="police"),
    "hurt in words": lambda e: e.set_up(hurt="yes"),
    "no evidence": lambda e: e.set_up(evidence=None),
    "told a number": lambda e: e.set_up(told=5),
    "told half a character": lambda e: e.set_up(told="a \ud800"),
    "one of two settings": lambda e: e.set_up(month=5, region="mars"),
    "reopen what is not there": lambda e: e.reopen("start/nothing"),
    "reopen a list": lambda e: e.reopen([]),
}


@pytest.mark.parametrize("act", ACTS.values(), ids=ACTS)
def test_an_act_that_cannot_be_is_refused_and_leaves_the_same_case(enquiry, act):
    before, reading, heard = enquiry.case, enquiry.reading, []
    enquiry.listen(lambda: heard.append(1))
    with pytest.raises(UserError) as caught:
        act(enquiry)
    refused(caught.value)
    assert enquiry.case is before
    assert enquiry.reading is reading
    assert (heard, enquiry.can_redo) == ([], False)


def test_plain_words_are_taken_as_what_they_mean(shipped):
    """The engine tells choices apart by identity: a plain “first” must not be read as the second lead."""
    words, members = Enquiry(shipped), Enquiry(shipped)
    words.choose(FIRST, "first", "think-so", "photo")
    members.choose(FIRST, Choice.FIRST, Sureness.THINK_SO, Evidence.PHOTO)
    assert words.case == members.case
    assert [type(value) for value in (words.case.answers[0].choice, words.case.answers[0].sureness)] == [
        Choice,
        Sureness,
    ]
    words.set_up(evidence="views")
    assert words.case.settings.evidence is Evidence.VIEWS


def test_to_take_back_what_was_never_said_changes_nothing(enquiry):
    before = enquiry.case
    enquiry.take_back(Report("gait", frozenset({"leaps"})))
    assert enquiry.case is before


# A case made elsewhere ----------------------------------------------------------------------------

CASES = {
    "unknown couplet": Case(answers=(LeadAnswer("start/nothing", Choice.FIRST),)),
    "unknown character": Case(answers=(Report("nothing", frozenset({"six"})),)),
    "unknown state": Case(answers=(Report("leg-count", frozenset({"seven"})),)),
    "no state": Case(answers=(Report("leg-count", frozenset()),)),
    "a size reported in states": Case(answers=(Report("body-length", frozenset({"big"})),)),
    "states measured": Case(answers=(Measurement("leg-count", 6.0),)),
    "not a number": Case(answers=(Measurement("body-length", math.nan),)),
    "endless": Case(answers=(Measurement("body-length", math.inf),)),
    "negative": Case(answers=(Measurement("body-length", -1.0),)),
    "nothing": Case(answers=(Measurement("body-length", 0.0),)),
    "negative spread": Case(answers=(Measurement("body-length", 5.0, -1.0),)),
    "month 0": Case(Settings(month=0)),
    "month 13": Case(Settings(month=13)),
    "unknown region": Case(Settings(region="mars")),
    "unknown spot": Case(Settings(spot="moon")),
    "unknown thing": Case(Settings(thing="ufo")),
    "unknown evidence": Case(Settings(evidence="hearsay")),
    "evidence in words": Case(Settings(evidence="photo")),
    "choice in words": Case(answers=(LeadAnswer(FIRST, "first"),)),
    "unknown sureness": Case(answers=(Report("leg-count", frozenset({"six"}), sureness="very"),)),
    "evidence of an answer": Case(answers=(Report("leg-count", frozenset({"six"}), evidence="hearsay"),)),
    "view seen in words": Case(answers=(LeadAnswer(FIRST, Choice.FIRST, view_seen="no"),)),
    "not an answer": Case(answers=("leg-count",)),
    "two reports": Case(answers=(Report("leg-count", frozenset({"six"})), Report("leg-count", frozenset({"eight"})))),
    "the same twice": Case(answers=(LeadAnswer(FIRST, Choice.FIRST),) * 2),
    "unknown couplet reopened": Case(reopened=frozenset({"start/nothing"})),
}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_case_that_the_key_cannot_take_is_refused_before_anything_is_worked_out(shipped, case):
    for door in (read_case, Enquiry):
        with pytest.raises(UserError) as caught:
            door(shipped, case)
        refused(caught.value)


# A kept case --------------------------------------------------------------------------------------

WHOLE = json.loads(
    case_to_json(
        Case(
            Settings(month=6),
            (
                LeadAnswer(FIRST, Choice.FIRST),
                Report("leg-count", frozenset({"eight"})),
                Measurement("body-length", 7.0, 0.1),
            ),
            frozenset({"start/legs"}),
        )
    )
)


def part(*path):
    """Puts a value in one place of the kept file."""

    def put(data, value):
        *way, last = path
        for step in way:
            data = data[step]
        data[last] = value

    return put


KEPT = {
    "month 0": (part("settings", "month"), 0),
    "month 13": (part("settings", "month"), 13),
    "month true": (part("settings", "month"), True),
    "month in words": (part("settings", "month"), "June"),
    "hurt in words": (part("settings", "hurt"), "yes"),
    "told nothing": (part("settings", "told"), None),
    "region a list": (part("settings", "region"), ["MO"]),
    "told half a character": (part("settings", "told"), "\ud800"),
    "sure about nothing": (part("answers", 0, "sureness"), "very"),
    "couplet a number": (part("answers", 0, "couplet"), 5),
    "view seen in words": (part("answers", 0, "view_seen"), "yes"),
    "states one word": (part("answers", 1, "states"), "eight"),
    "no states": (part("answers", 1, "states"), []),
    "states numbers": (part("answers", 1, "states"), [8]),
    "both a number": (part("answers", 1, "both"), 1),
    "no size": (part("answers", 2, "mm"), 0),
    "size in words": (part("answers", 2, "mm"), "7"),
    "negative size": (part("answers", 2, "mm"), -7),
    "size true": (part("answers", 2, "mm"), True),
    "endless size": (part("answers", 2, "mm"), 1e999),
    "size that is no number": (part("answers", 2, "mm"), math.nan),
    "wide spread": (part("answers", 2, "spread"), 5),
    "another kind": (part("answers", 2, "kind"), "guess"),
    "a field too many": (part("answers", 2, "mood"), 1),
    "reopened number": (part("reopened"), [5]),
    "reopened nothing": (part("reopened"), None),
    "format in words": (part("format"), "1"),
    "format true": (part("format"), True),
    "format 0": (part("format"), 0),
    "answers a word": (part("answers"), "none"),
}


@pytest.mark.parametrize(("put", "value"), KEPT.values(), ids=KEPT)
def test_a_kept_case_that_cannot_be_is_damaged(put, value):
    data = json.loads(json.dumps(WHOLE))
    assert case_to_json(case_from_json(json.dumps(data))) == json.dumps(WHOLE)
    put(data, value)
    with pytest.raises(UserError, match="damaged") as caught:
        case_from_json(json.dumps(data))
    refused(caught.value, where=False)


def test_a_kept_case_as_deep_as_a_well_is_damaged():
    with pytest.raises(UserError, match="damaged"):
        case_from_json("[" * 100_000)


# By script ----------------------------------------------------------------------------------------

LINES = {
    "the same field twice": '{"act": "lead", "act": "undo"}',
    "half a character": '{"act": "settings", "told": "\\ud800"}',
    "half a character for a choice": '{"act": "lead", "choice": "\\ud800"}',
    "empty couplet": '{"act": "lead", "couplet": "", "choice": "first"}',
    "no couplet": '{"act": "lead", "couplet": null, "choice": "first"}',
    "unknown couplet": '{"act": "cant-tell", "couplet": "start/nothing"}',
    "unknown couplet reopened": '{"act": "reopen", "couplet": "start/nothing"}',
    "unknown character": '{"act": "report", "character": "nothing", "states": ["six"]}',
    "no states": '{"act": "report", "character": "leg-count", "states": []}',
    "states a word": '{"act": "report", "character": "leg-count", "states": "six"}',
    "both in words": '{"act": "report", "character": "leg-count", "states": ["six"], "both": "yes"}',
    "month 0": '{"act": "settings", "month": 0}',
    "month 13": '{"act": "settings", "month": 13}',
    "half a month": '{"act": "settings", "month": 1.5}',
    "empty region": '{"act": "settings", "region": ""}',
    "one setting of two": '{"act": "settings", "month": 7, "region": "mars"}',
    "evidence nothing": '{"act": "settings", "evidence": null}',
    "evidence hearsay": '{"act": "lead", "choice": "first", "evidence": "hearsay"}',
    "sureness in capitals": '{"act": "lead", "choice": "first", "sureness": "SURE"}',
    "no size": '{"act": "measure", "character": "body-length", "mm": 0}',
    "negative size": '{"act": "measure", "character": "body-length", "mm": -5}',
    "infinity": '{"act": "measure", "character": "body-length", "mm": Infinity}',
    "beyond all numbers": '{"act": "measure", "character": "body-length", "mm": 1e999}',
    "negative spread": '{"act": "measure", "character": "body-length", "mm": 5, "spread": -1}',
    "5000 digits": '{"act": "measure", "character": "body-length", "mm": 1' + "0" * 5000 + "}",
    "took back nothing": '{"act": "take-back", "character": "gait"}',
    "nothing": "null",
    "act nothing": '{"act": null}',
    "act a list": '{"act": ["lead"]}',
}


@pytest.mark.parametrize("line", LINES.values(), ids=LINES)
def test_a_line_that_cannot_be_is_refused_and_leaves_the_same_case(enquiry, line):
    desk = Desk(enquiry, Words(enquiry.tables.keyset))
    before = enquiry.case
    reply = desk.answer(line)
    assert not reply["ok"]
    refused(UserError(**reply["error"]))
    assert enquiry.case is before
    json.dumps(reply, ensure_ascii=False).encode()


def test_bytes_that_are_no_text_do_not_end_a_script():
    lines = b'\xff\xfe\n{"act": "quit"}\n'
    done = subprocess.run(
        [sys.executable, "-m", "keyapp", "ask", "--json"],
        input=lines,
        capture_output=True,
        check=False,
        env={**os.environ, "PYTHONIOENCODING": "utf-8:strict"},
    )
    assert done.returncode == 0
    assert [json.loads(line)["ok"] for line in done.stdout.splitlines()] == [True, False, True]


# Odd, but right -----------------------------------------------------------------------------------


def test_answers_that_disagree_are_shown_and_none_is_lost(shipped):
    answers = (LeadAnswer("start/legs", Choice.FIRST), Report("thing", frozenset({"animal"})))
    other = Report("leg-count", frozenset({"six"}))
    reading = read_case(shipped, Case(answers=(*answers, other)))
    assert [found.character for found in reading.contradictions] == ["leg-count"]
    assert reading.case.answers == (*answers, other)
    assert reading.standing.posterior.sum() == pytest.approx(1, abs=1e-9)


@pytest.mark.parametrize("choice", [Choice.CANT_TELL, Choice.NEITHER])
def test_no_couplet_told_leaves_all_dangers_named_and_nothing_moved(shipped, choice):
    reading = read_case(shipped, Case(answers=tuple(LeadAnswer(c, choice) for c in shipped.keyset.couplets)))
    assert reading.verdict.actions == (Action.KEEP_AWAY,)
    assert {danger.group for danger in reading.not_ruled_out} == set(shipped.keyset.danger_groups)
    if choice is Choice.CANT_TELL:
        assert reading.standing.posterior == pytest.approx(read_case(shipped, Case()).standing.posterior, abs=1e-12)


def test_every_character_not_told_is_as_nothing_said(shipped):
    told = [c for c in shipped.keyset.characters.values() if c.number is None and c.id != "thing"]
    case = Case(answers=tuple(Report(c.id, frozenset(c.state_ids)) for c in told))
    before, after = read_case(shipped, Case()), read_case(shipped, case)
    assert after.standing.posterior == pytest.approx(before.standing.posterior, abs=1e-12)
    assert {d.group for d in after.not_ruled_out} == {d.group for d in before.not_ruled_out}


def test_an_answer_off_the_way_is_kept_but_does_not_count(shipped):
    on_way = Case(answers=(LeadAnswer(FIRST, Choice.SECOND),))
    off = LeadAnswer("start/legs", Choice.SECOND)
    before, after = read_case(shipped, on_way), read_case(shipped, on_way.with_answer(off))
    assert after.walk.set_aside == (off,)
    assert (after.standing.posterior == before.standing.posterior).all()


# The numbers of the engine, and regions -------------------------------------------------------------


def problems_of(tmp_path, text, reader):
    path = tmp_path / "file.yaml"
    path.write_text(text, encoding="utf-8")
    problems = Problems()
    node = read(path, path.name, problems)
    if node is not None:
        reader(node, problems)
    return problems.kept


def weights_file(name, value):
    return f"{name}:\n  value: {value}\n  reason: why\n  basis: [from memory]\n"


WEIGHTS = {
    **{
        f"floor {v}": ("floor", v)
        for v in ("-0.1", "0", "-0", ".nan", "nan", ".inf", "1e999", "'0.1'", "null", "[0.1]", "2")
    },
    **{
        f"{name} {v}": (name, v)
        for name in ("outside", "error_cap", "ruled_out_ratio", "ruled_out_posterior", "size_outlier", "neither_floor")
        for v in ("0", "1")
    },
    "half an answer": ("ruled_out_answers", "1.5"),
    "no answer": ("ruled_out_answers", "0"),
    "a negative number of answers": ("ruled_out_answers", "-2"),
    "firm on little": ("firm", "0.2"),
    "no observers": ("observers", "[]"),
    "a share below nothing": (
        "observers",
        "[{id: a, share: -0.5, factor: 1}, {id: b, share: 1.5, factor: 1}]",
    ),
    "no share": ("observers", "[{id: a, share: 0, factor: 1}, {id: b, share: 1, factor: 1}]"),
    "shares that miss 1": ("observers", "[{id: a, share: 0.5, factor: 1}]"),
    "one observer twice": ("observers", "[{id: a, share: 0.5, factor: 1}, {id: a, share: 0.5, factor: 2}]"),
    "never wrong": ("observers", "[{id: a, share: 1, factor: 0}]"),
    "no factors": ("sureness", "{}"),
    "one factor left out": ("sureness", "{sure: 1}"),
    "surer when in doubt": ("sureness", "{sure: 2, think-so: 1}"),
    "an unknown sureness": ("sureness", "{sure: 1, think-so: 2, very: 0.1}"),
    "an unknown evidence": (
        "evidence",
        "{hearsay: 2, words: 1.2, own-eyes: 1, photo: 0.9, views: 0.7, specimen: 0.4, specialist: 0.15}",
    ),
    "words above a specialist": (
        "evidence",
        "{words: 0.1, own-eyes: 1, photo: 0.9, views: 0.7, specimen: 0.4, specialist: 0.15}",
    ),
    "an unknown number": ("flor", "0.1"),
}


@pytest.mark.parametrize(("name", "value"), WEIGHTS.values(), ids=WEIGHTS)
def test_a_number_of_the_engine_that_cannot_be_is_a_problem_with_line_and_fix(tmp_path, name, value):
    found = problems_of(tmp_path, weights_file(name, value), read_weights)
    assert found
    assert all(problem.what and problem.fix and problem.place.line for problem in found)


def test_the_numbers_that_ship_are_none_of_these(tmp_path):
    from keyapp.folders import keys_folder

    text = (keys_folder() / "weights.yaml").read_text(encoding="utf-8")
    assert problems_of(tmp_path, text, read_weights) == []


REGION = "north:\n  name: The north\n  basis: [from memory]\n"
REGIONS = {
    "no states": REGION,
    "an empty list of states": REGION + "  states: []\n",
    "a state twice": REGION + "  states: [MO, MO]\n",
    "small letters": REGION + "  states: [mo]\n",
    "no such state": REGION + "  states: [ZZ]\n",
    "seven months later": REGION + "  states: [MO]\n  month-shift: 7\n",
    "half a month later": REGION + "  states: [MO]\n  month-shift: 0.5\n",
    "no number of months": REGION + "  states: [MO]\n  month-shift: .nan\n",
    "nothing": "north:\n",
    "null": "north: null\n",
    "an empty file": "",
    "an unknown contact": REGION + "  states: [MO]\n  contacts: [{kind: police, name: Police, basis: [from memory]}]\n",
}


def regions(node, problems):
    for name, child in node.fields.items():
        read_region(name, child, problems)


@pytest.mark.parametrize("text", REGIONS.values(), ids=REGIONS)
def test_a_region_that_cannot_be_is_a_problem_with_line_and_fix(tmp_path, text):
    found = problems_of(tmp_path, text, regions)
    assert found
    assert all(problem.what and problem.fix and problem.place.line for problem in found)


def test_a_region_without_states_may_be_part_of_another(tmp_path):
    assert problems_of(tmp_path, REGION + "  states: [MO]\n", regions) == []
    assert problems_of(tmp_path, REGION + "  part-of: south\n", regions) == []


def test_a_state_in_two_regions_is_a_problem(tmp_path):
    import shutil

    from keyapp.folders import keys_folder
    from keyapp.keyfile import load_keyset

    folder = tmp_path / "keys"
    shutil.copytree(keys_folder(), folder)
    (folder / "regions" / "again.yaml").write_text(
        "again:\n  name: Again\n  states: [MO]\n  month-shift: 2\n  basis: [from memory]\n", encoding="utf-8"
    )
    loaded = load_keyset(folder)
    assert loaded.keyset is None
    assert [problem.code for problem in loaded.problems] == ["K107"]
    assert "MO" in loaded.problems[0].what
