"""The report on trials, their plot and the command."""

from __future__ import annotations

import io
import json
import xml.etree.ElementTree as ET

import pytest

from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal
from keyapp.trial import Plan, Trial, summarise, trial_data, trial_plot, trial_text
from keyapp.trial.target import TARGETS
from tests.trial.outcomes import missed_widow, named_widow, outcome, stranger

SVG = "{http://www.w3.org/2000/svg}"
CALLS = [outcome()] * 60 + [outcome(ranked=("B", "A"), chance=0.4)] * 60 + [named_widow(), missed_widow(), stranger()]


def trials(errors=(0.0, 0.1), cant_tells=(0.1,), calls=CALLS):
    return [Trial(error, cant_tell, summarise(calls, 2.0)) for cant_tell in cant_tells for error in errors]


def faultless(calls=CALLS):
    return Trial(0.0, 0.0, summarise(calls), faultless=True)


def words_of(svg):
    return [node.text or "" for node in ET.fromstring(svg).iter(f"{SVG}text")]


def test_every_target_stands_beside_its_figure():
    text = trial_text(Plan(), [*trials(), faultless()])
    beside = [line for line in text.splitlines() if line.endswith(("reached", "missed", "not judged"))]
    assert len(beside) == len(TARGETS)
    assert any(line.startswith("true group in first place") and "92 %: missed" in line for line in beside)


def test_a_target_of_a_rate_that_was_not_tried_is_not_spoken_of():
    text = trial_text(Plan(), trials(errors=(0.2,)))
    assert "reached" not in text
    assert "missed" not in text


def test_the_text_names_who_was_missed_and_bins_too_small_to_judge():
    text = trial_text(Plan(), trials())
    assert "dangerous animal unnamed: widow 1 of 2" in text
    assert "calls    60   too few calls to judge" in text


def test_the_text_of_calls_without_dangers_does_not_say_that_none_was_missed():
    assert "dangerous animal unnamed: no call was dangerous" in trial_text(Plan(), trials(calls=[outcome()]))


def test_each_rate_of_cant_tell_has_its_table():
    text = trial_text(Plan(), trials(cant_tells=(0.0, 0.25)))
    assert "Can't tell: 0 % of answers" in text
    assert "Can't tell: 25 % of answers" in text


def test_the_data_hold_every_rate_with_its_targets():
    data = json.loads(json.dumps(trial_data(Plan(calls=123, seed=4), trials())))
    assert (data["calls"], data["seed"], data["outside"]) == (123, 4, 0.05)
    assert [trial["error"] for trial in data["trials"]] == [0.0, 0.1]
    first = next(t for t in data["trials"][1]["targets"] if t["figure"] == "first")
    assert first == {"figure": "first", "least": 0.92, "value": 62 / 122, "verdict": "missed", "unsure": False}


@pytest.mark.parametrize("errors", [(0.1,), (0.0, 0.05, 0.1, 0.2), tuple(i / 20 for i in range(9))])
@pytest.mark.parametrize("calls", [CALLS, [stranger()], [outcome()]], ids=["many", "stranger", "one"])
def test_the_plot_keeps_to_its_paper(errors, calls):
    root = ET.fromstring(trial_plot(trials(errors, (0.0, 0.1), calls)))
    width, height = float(root.get("width", 0)), float(root.get("height", 0))
    places = [(float(n.get("x", -1)), float(n.get("y", -1))) for n in root.iter(f"{SVG}text")]
    assert places
    assert all(0 < x < width and 0 < y < height for x, y in places)
    assert "nan" not in trial_plot(trials(errors, (0.0, 0.1), calls))


def test_the_plot_has_four_panels_for_each_rate_of_cant_tell():
    titles = ["True group found", "Dangerous animal ends unnamed", "Stated and right, first place", "Answers a call"]
    words = words_of(trial_plot(trials(cant_tells=(0.0, 0.1))))
    assert [words.count(title) for title in titles] == [2, 2, 2, 2]
    assert {"first place", "first three", "strict key", "answers", "lower bound", "1 of 2"} <= set(words)


def test_names_at_the_ends_of_lines_that_meet_do_not_touch():
    root = ET.fromstring(trial_plot(trials(calls=[outcome()])))
    ends = [
        float(n.get("y", 0)) for n in root.iter(f"{SVG}text") if n.text in {"first place", "first three", "strict key"}
    ]
    assert len(ends) == 3
    assert min(b - a for a, b in zip(sorted(ends), sorted(ends)[1:], strict=False)) >= 16


def test_only_bins_with_enough_calls_are_filled():
    few, many = trials((0.1,), calls=[outcome()] * 99), trials((0.1,), calls=[outcome()] * 100)
    hollow = "fill='#FBF7EF' stroke="
    assert trial_plot(few).count(hollow) == 1
    assert hollow not in trial_plot(many)


# The command -------------------------------------------------------------------------------------


def ran(*options):
    out, errors = io.StringIO(), io.StringIO()
    return run(["trial", *options], Terminal(io.StringIO(), out, errors)), out.getvalue(), errors.getvalue()


def test_the_command_holds_the_rates_asked_for(tmp_path):
    plot = tmp_path / "trial.svg"
    code, out, _ = ran("--calls", "2", "--error", "0.2,0", "--error", "0.1,0.2", "--json", "--plot", str(plot))
    data = json.loads(out)
    assert code == 0
    assert [(t["error"], t["cant_tell"], t["calls"]) for t in data["trials"]] == [
        (0, 0.1, 2),
        (0.1, 0.1, 2),
        (0.2, 0.1, 2),
        (0, 0, 2),
    ]
    assert [t["faultless"] for t in data["trials"]] == [False, False, False, True]
    capacities = [t["capacity"] for t in data["trials"][:3]]
    assert capacities == sorted(capacities, reverse=True)
    assert all(t["bits_before"] > t["bits_after"] for t in data["trials"])
    assert "0 %" in words_of(plot.read_text(encoding="utf-8"))


def test_the_command_prints_text():
    code, out, _ = ran("--calls", "1", "--error", "0.1", "--cant-tell", "0,0.1")
    assert code == 0
    assert out.count("true group in first place") == 3


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--calls", "0"], "--calls"),
        (["--seed", "-1"], "--seed"),
        (["--error", "2"], "“2” is no share"),
        (["--error", "0.1,,0.2"], "“” is no share"),
        (["--error", "ten"], "“ten” is no share"),
        (["--error", "nan"], "“nan” is no share"),
        (["--cant-tell", "-1"], "--cant-tell"),
        (["--even", "1.5"], "--even"),
        (["--plot", "no/such/folder/plot.svg"], "Name a folder that is there"),
    ],
)
def test_bad_options_are_told_in_words(options, told):
    code, out, errors = ran(*options)
    assert (code, out) == (2, "")
    assert errors.startswith("Problem:")
    assert told in errors


def test_a_folder_is_no_plot_file(tmp_path):
    code, _, errors = ran("--plot", str(tmp_path))
    assert code == 2
    assert "name a file in it" in errors
