"""What was learned, put in force when the key is opened: visibly, reversibly, and never trusted blindly."""

from __future__ import annotations

import datetime
import hashlib
import io
import json
import os
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from keyapp.cli import main
from keyapp.cli.open import open_tables
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.folders import LEARNED_NAME
from keyapp.learn import (
    Approval,
    Confirmed,
    Counts,
    Lessons,
    Proven,
    added,
    counted,
    fingerprint,
    forget,
    keep,
    learned,
    lessons_text,
    open_learned,
    proposed,
    taken_out,
)
from keyapp.learn.counts import MOST_CALLS
from tests.learn.test_learned import BETTER, WORSE, spiders

TODAY = datetime.date(2026, 11, 25)
ANN = Approval("A. Specialist", TODAY)
KEY = spiders()


def lessons(counts, approval=None, proven=None):
    return Lessons(counts, approval, proven)


def full():
    """Counts that weaken, approved and proven."""
    return lessons(BETTER, ANN, Proven(fingerprint(proposed(KEY, BETTER)), True, 100))


def kept(tmp_path, what):
    path = tmp_path / LEARNED_NAME
    keep(path, KEY, what, learned(KEY, what.counts, what.approval, what.proven)[1])
    return path


def opened(path):
    return open_learned(KEY, path, TODAY)


def rewritten(path, change, sum_too=True):
    """The file after `change` of its data by hand, with a check sum that fits unless told otherwise."""
    data = json.loads(path.read_text(encoding="utf-8"))
    change(data)
    if sum_too:
        del data["sum"]
        data["sum"] = hashlib.sha256(json.dumps(data, sort_keys=True).encode()).hexdigest()
    path.write_text(json.dumps(data), encoding="utf-8")
    return path


# In force -------------------------------------------------------------------------------------


def test_what_is_stricter_is_in_force_and_said(tmp_path):
    found = opened(kept(tmp_path, lessons(WORSE)))
    assert found.keyset == learned(KEY, WORSE)[0] != KEY
    assert found.note == "3 figures learned from 10 confirmed calls are in force; 0 held back."
    assert found.problem is None


def test_what_is_weaker_is_held_back_and_said(tmp_path):
    found = opened(kept(tmp_path, lessons(BETTER)))
    assert found.keyset == KEY
    assert found.note == "0 figures learned from 30 confirmed calls are in force; 3 held back."


def test_what_is_weaker_is_in_force_with_approval_and_proof_and_says_who(tmp_path):
    found = opened(kept(tmp_path, full()))
    assert found.keyset == proposed(KEY, BETTER)
    assert found.note.endswith("0 held back. Approved by A. Specialist on 2026-11-25.")


def test_without_the_file_the_very_key_comes_back(tmp_path):
    path = kept(tmp_path, lessons(WORSE))
    path.unlink()
    assert opened(path).keyset is KEY
    assert (opened(path).note, opened(path).problem) == ("", None)


def test_to_forget_moves_the_file_aside_and_loses_nothing(tmp_path):
    path = kept(tmp_path, lessons(WORSE))
    first = path.read_bytes()
    aside = forget(path)
    assert opened(path).keyset is KEY
    assert aside.read_bytes() == first
    kept(tmp_path, lessons(BETTER))
    second = forget(path)
    assert second != aside
    assert aside.read_bytes() == first
    assert forget(path) is None


def test_a_file_kept_over_another_moves_that_aside(tmp_path):
    first = kept(tmp_path, lessons(WORSE)).read_bytes()
    kept(tmp_path, lessons(BETTER))
    others = [path for path in tmp_path.iterdir() if path.name != LEARNED_NAME]
    assert [path.read_bytes() for path in others] == [first]


# Never trusted blindly --------------------------------------------------------------------------


def counts_with(weight, calls=30):
    def change(data):
        data["counts"] = {"calls": calls, "reports": [["eyes", "six", "six", weight]], "kinds": []}

    return change


def put(name, value):
    return lambda data: data.__setitem__(name, value)


WRONG = {
    "another key": (put("key", "0" * 24), "another key"),
    "newer format": (put("format", 2), "another version"),
    "format true": (put("format", True), "another version"),
    "a field too many": (put("mood", 1), "mood"),
    "a field too few": (lambda data: data.pop("proven"), "proven"),
    "negative count": (counts_with(-1.0), "counts"),
    "no count": (counts_with(0), "counts"),
    "more than so many calls can be": (counts_with(601.0), "counts"),
    "huge count": (counts_with(1e300, MOST_CALLS), "counts"),
    "very long number": (counts_with(10**400), "counts"),
    "count as text": (counts_with("5"), "counts"),
    "true as count": (counts_with(True), "counts"),
    "calls below nothing": (counts_with(1.0, -1), "counts"),
    "too many calls": (counts_with(1.0, MOST_CALLS + 1), "counts"),
    "half a call": (counts_with(1.0, 1.5), "counts"),
    "unknown state": (
        lambda data: data["counts"].__setitem__("reports", [["eyes", "six", "seven", 1.0]]),
        "“seven”",
    ),
    "unknown region": (lambda data: data["counts"].__setitem__("kinds", [["moon", "recluse", 1.0]]), "“moon”"),
    "the same entry twice": (
        lambda data: data["counts"].__setitem__("reports", data["counts"]["reports"] * 2),
        "counts",
    ),
    "approval without a name": (put("approval", {"date": "2026-11-24"}), "name and a date"),
    "approval by nobody": (put("approval", {"name": " ", "date": "2026-11-24"}), "name and a date"),
    "approval by dots": (put("approval", {"name": "...", "date": "2026-11-24"}), "name of a person"),
    "approval without a date": (put("approval", {"name": "A. Specialist"}), "name and a date"),
    "approval with no real date": (put("approval", {"name": "A. Specialist", "date": "2026-13-01"}), "not a date"),
    "approval with a week": (put("approval", {"name": "A. Specialist", "date": "2026-W01-1"}), "not a date"),
    "approval still to come": (put("approval", {"name": "A. Specialist", "date": "2026-11-26"}), "still to come"),
    "approval as text": (put("approval", "A. Specialist"), "name and a date"),
    "proof as text": (put("proven", "yes"), "what was learned"),
    "proof that says yes": (put("proven", {"fingerprint": "", "holds": "yes", "runs": 1}), "proof"),
    "no counts": (put("counts", None), "counts"),
}


@pytest.mark.parametrize(("change", "says"), WRONG.values(), ids=WRONG)
def test_a_file_that_cannot_be_right_leaves_the_key_as_it_ships(tmp_path, change, says):
    path = rewritten(kept(tmp_path, full()), change)
    before = path.read_bytes()
    found = opened(path)
    assert found.keyset is KEY
    assert says in str(found.problem)
    assert found.problem.what.startswith("What was learned from confirmed calls is not in force")
    assert str(path) in found.problem.where
    assert "--forget" in found.problem.fix
    assert path.read_bytes() == before


TEXTS = {
    "nothing": "",
    "half of it": None,
    "a list": "[]",
    "a number": "1",
    "not a number": '{"format": 1, "counts": NaN}',
    "a name twice": '{"format": 1, "format": 1}',
    "deep": "[" * 100_000,
}


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_a_damaged_file_leaves_the_key_as_it_ships(tmp_path, text):
    path = kept(tmp_path, full())
    whole = path.read_text(encoding="utf-8")
    path.write_text(whole[: len(whole) // 2] if text is None else text, encoding="utf-8")
    assert opened(path).keyset is KEY
    assert opened(path).problem.fix


def test_a_file_that_is_no_text_or_a_folder_is_told(tmp_path):
    path = tmp_path / LEARNED_NAME
    path.write_bytes(b"\xff\xfe\x00")
    assert "UTF-8" in str(opened(path).problem)
    path.unlink()
    path.mkdir()
    assert opened(path).keyset is KEY
    assert opened(path).problem is not None


def test_a_change_by_hand_is_noticed(tmp_path):
    path = rewritten(kept(tmp_path, full()), put("approval", {"name": "B. Else", "date": "2026-11-24"}), sum_too=False)
    assert "changed by hand" in str(opened(path).problem)


def test_figures_written_in_the_file_are_never_used(tmp_path):
    """A file whose check sum was made to fit: the stored figures are loosened, those in force are not."""

    def loosen(data):
        for change in data["changes"]:
            change.update(now=0.9999, new=0.9999, held="")

    assert opened(rewritten(kept(tmp_path, lessons(BETTER)), loosen)).keyset == KEY


def test_counts_raised_by_hand_are_not_what_was_proven(tmp_path):
    """A file whose check sum was made to fit: the proof is of another key, so nothing weaker is in force."""

    def raise_(data):
        for entry in data["counts"]["reports"]:
            entry[-1] *= 10

    found = opened(rewritten(kept(tmp_path, full()), raise_))
    assert found.keyset == KEY
    assert "0 figures" in found.note


@pytest.mark.parametrize("missing", ["approval", "proven"])
def test_half_of_approval_and_proof_holds_what_is_weaker_back(tmp_path, missing):
    found = opened(rewritten(kept(tmp_path, full()), put(missing, None)))
    assert found.keyset == KEY
    assert found.note.endswith("3 held back.")


# Counts in and out --------------------------------------------------------------------------------

CALLS = st.lists(
    st.builds(
        Confirmed,
        st.sampled_from(["recluse", "weaver"]),
        st.dictionaries(st.just("eyes"), st.sampled_from(["six", "eight"]), min_size=1)
        | st.dictionaries(st.just("shade"), st.sampled_from(["pale", "dark", "red"])),
        region=st.sampled_from(["north", "south", None]),
        chance=st.floats(0.001, 1),
    ),
    max_size=8,
)


@given(CALLS, CALLS)
def test_counts_taken_out_undo_counts_put_in_to_the_bit(one, other):
    first, second = counted(KEY, one), counted(KEY, other)
    both = added(first, second)
    assert taken_out(both, second) == first
    assert taken_out(both, first) == second
    assert both == counted(KEY, [*one, *other]) == counted(KEY, [*other, *one])


@given(CALLS)
def test_learning_is_undone_exactly_by_taking_the_calls_out(calls):
    base = counted(KEY, [Confirmed("recluse", {"eyes": "eight"})])
    there = added(base, counted(KEY, calls))
    assert learned(KEY, taken_out(there, counted(KEY, calls))) == learned(KEY, base)


def test_what_was_never_counted_cannot_be_taken_out():
    with pytest.raises(UserError, match="never counted"):
        taken_out(WORSE, BETTER)
    with pytest.raises(UserError, match="never counted"):
        taken_out(Counts(), counted(KEY, [Confirmed("weaver", {})]))


def test_more_calls_than_can_be_are_refused():
    with pytest.raises(UserError, match="too many"):
        added(Counts(calls=MOST_CALLS), Counts(calls=1))


# The commands -------------------------------------------------------------------------------------


@pytest.fixture
def state(tmp_path, monkeypatch):
    """A state folder of its own, and the shipped key's calls in a file."""
    folder = tmp_path / "state"
    monkeypatch.setattr(main, "state_folder", lambda: folder)
    return folder


def said(*arguments, lines=""):
    """Exit code, output and error output of one command."""
    out, errors = io.StringIO(), io.StringIO()
    code = main.run([str(one) for one in arguments], Terminal(io.StringIO(lines), out, errors))
    return code, out.getvalue(), errors.getvalue()


def calls_file(tmp_path, state_seen="globe", number=5):
    path = tmp_path / f"calls-{state_seen}.json"
    call = {"taxon": "false-widow", "reports": {"abdomen-shape": state_seen}, "true": {"abdomen-shape": "oval"}}
    path.write_text(json.dumps([call] * number), encoding="utf-8")
    return path


def standing(output):
    return [json.loads(line)["standing"] for line in output.splitlines()]


TALK = '{"act": "report", "character": "abdomen-shape", "states": ["globe"]}\n'


def test_the_terminal_works_with_what_was_kept_until_it_is_forgotten(tmp_path, state):
    shipped = said("ask", "--json", lines=TALK)
    assert shipped[2] == ""
    assert said("learn", calls_file(tmp_path), "--keep")[0] in (0, 1)
    code, output, errors = said("ask", "--json", lines=TALK)
    assert code == 0
    assert "learned from 5 confirmed calls are in force" in errors
    assert standing(output) != standing(shipped[1])
    assert said("learn", "--forget")[0] == 0
    assert said("ask", "--json", lines=TALK) == shipped


def test_a_named_file_is_used_in_place_of_the_kept_one(tmp_path, state):
    said("learn", calls_file(tmp_path), "--out", tmp_path / "named.json")
    assert not state.exists()
    case = tmp_path / "case.yaml"
    case.write_text("cases:\n  - reports: {abdomen-shape: globe}\n", encoding="utf-8")
    plain, with_ = said("weigh", case), said("weigh", case, "--learned", tmp_path / "named.json")
    assert (plain[2], "5 confirmed calls" in with_[2]) == ("", True)
    assert plain[0] == with_[0] == 0
    assert plain[1] != with_[1]


def test_a_damaged_file_is_told_and_the_key_works_as_it_ships(tmp_path, state):
    shipped = said("ask", "--json", lines=TALK)
    state.mkdir()
    (state / LEARNED_NAME).write_text("{", encoding="utf-8")
    code, output, errors = said("ask", "--json", lines=TALK)
    assert (code, output) == shipped[:2]
    assert errors.startswith("Problem: ") and "--forget" in errors
    assert (state / LEARNED_NAME).read_text(encoding="utf-8") == "{"


def test_a_file_named_but_not_there_is_refused(tmp_path, state):
    code, _, errors = said("ask", "--json", "--learned", tmp_path / "none.json")
    assert code == 2
    assert "--learned" in errors


def test_the_key_is_opened_as_its_files_say_unless_told_otherwise(tmp_path, state):
    from keyapp.folders import keys_folder

    said("learn", calls_file(tmp_path), "--keep")
    whole = open_tables(keys_folder()).keyset
    assert open_tables(keys_folder(), state / LEARNED_NAME).keyset != whole


def test_offices_put_their_counts_together(tmp_path, state):
    one, two = calls_file(tmp_path, "globe", 3), calls_file(tmp_path, "long-narrow", 4)
    said("learn", one, "--out", tmp_path / "one.json")
    said("learn", two, "--out", tmp_path / "two.json")
    said("learn", "--merge", tmp_path / "one.json", tmp_path / "two.json", "--out", tmp_path / "both.json")
    both = json.loads((tmp_path / "both.json").read_text(encoding="utf-8"))
    assert both["counts"]["calls"] == 7
    assert [entry[-1] for entry in both["counts"]["reports"]] == [3, 4]
    said("learn", "--merge", tmp_path / "both.json", "--without", two, "--out", tmp_path / "back.json")
    assert (tmp_path / "back.json").read_bytes() == (tmp_path / "one.json").read_bytes()


REFUSED = {
    "nothing to learn from": (["learn"], "FILE"),
    "the same file twice": (["learn", "--merge", "one.json", "one.json"], "twice"),
    "a merge of what is no counts": (["learn", "--merge", "calls-globe.json"], "not a file of what was learned"),
    "no file": (["learn", "none.json"], "cannot be read"),
    "no runs": (["learn", "calls-globe.json", "--runs", "0"], "--runs"),
    "an approval to come": (["learn", "calls-globe.json", "--approve", "A. B.", "--date", "9999-01-01"], "to come"),
    "a date alone": (["learn", "calls-globe.json", "--date", "2026-11-24"], "name and a date"),
    "to forget and more": (["learn", "calls-globe.json", "--forget"], "alone"),
    "taken out but never in": (["learn", "calls-globe.json", "--without", "calls-oval.json"], "never counted"),
}


@pytest.mark.parametrize(("arguments", "says"), REFUSED.values(), ids=REFUSED)
def test_a_wrong_command_is_refused_and_keeps_nothing(tmp_path, state, monkeypatch, arguments, says):
    monkeypatch.chdir(tmp_path)
    calls_file(tmp_path)
    calls_file(tmp_path, "oval", 9)
    said("learn", tmp_path / "calls-globe.json", "--out", tmp_path / "one.json")
    code, _, errors = said(*arguments, *([] if "--forget" in arguments else ["--keep"]))
    assert code == 2
    assert says in errors
    assert not state.exists()


def test_the_size_of_the_proof_is_the_one_asked_for(tmp_path, monkeypatch):
    from keyapp.cli import learn as command
    from tests.proof.tiny import garden

    asked = []
    monkeypatch.setattr(command, "require_keyset", lambda folder: garden())
    monkeypatch.setattr(
        command, "prove", lambda key, runs, **how: asked.append(runs) or type("Proof", (), {"holds": True})()
    )
    calls = tmp_path / "calls.json"
    calls.write_text('[{"taxon": "widow", "reports": {"legs": "eight"}}]', encoding="utf-8")
    command.run(
        Terminal(target=io.StringIO()), tmp_path, calls, "A. B.", "2026-11-24", tmp_path / "o.json", 77, today=TODAY
    )
    assert asked == [77]
    assert json.loads((tmp_path / "o.json").read_text(encoding="utf-8"))["proven"]["runs"] == 77


def test_the_file_says_what_people_want_to_read():
    data = json.loads(lessons_text(KEY, full(), learned(KEY, BETTER, ANN)[1]))
    assert data["approval"] == {"name": "A. Specialist", "date": "2026-11-25"}
    assert {"old", "new", "now", "why", "held"} <= data["changes"][0].keys()


# The window ---------------------------------------------------------------------------------------


@pytest.mark.parametrize("damaged", [False, True])
def test_the_window_opens_the_key_with_what_was_kept_and_says_so(tmp_path, state, damaged):
    from keyapp.folders import keys_folder
    from keyapp.gui.opening import Opening

    said("learn", calls_file(tmp_path), "--keep")
    path = state / LEARNED_NAME
    if damaged:
        path.write_text("{", encoding="utf-8")
    opening = Opening(keys_folder(), "en", None, lambda: path)
    heard, ready = [], []
    opening.learned.connect(heard.append)
    opening.ready.connect(lambda enquiry, words: ready.append(enquiry.tables.keyset))
    opening.run()
    assert bool(heard[0].problem) is damaged
    assert ("5 confirmed calls" in heard[0].note) is not damaged
    assert (ready[0] == open_tables(keys_folder()).keyset) is damaged


SHOW = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QLabel
from keyapp.folders import images_folder, keys_folder
from keyapp.gui.app import App, make_application
application = make_application(["keyapp"])
app = App(keys_folder(), images_folder(), Path(sys.argv[1]))
app.window.show()
app.opening.run()
application.processEvents()
print([label.text() for label in app.window.message_bar.findChildren(QLabel) if label.isVisible()])
print(app.session.is_open)
app.stop()
"""


def test_the_message_bar_says_what_is_in_force(tmp_path, state):
    said("learn", calls_file(tmp_path), "--keep")
    done = subprocess.run(
        [sys.executable, "-c", SHOW, str(state)],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )
    assert done.returncode == 0, done.stderr
    bar, is_open = done.stdout.splitlines()
    assert "learned from 5 confirmed calls are in force" in bar
    assert is_open == "True"
