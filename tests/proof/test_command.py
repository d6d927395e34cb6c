"""`keyapp prove` and `keyapp learn` from the command line."""

from __future__ import annotations

import io
import json

import pytest

from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal


def said(*arguments):
    out, errors = io.StringIO(), io.StringIO()
    code = run(list(arguments), Terminal(io.StringIO(), out, errors))
    return code, out.getvalue(), errors.getvalue()


def test_one_error_safety_holds_for_a_recluse_of_the_shipped_key():
    code, text, _ = said("prove", "--runs", "40", "--only", "recluse")
    assert code == 0
    assert "One-error safety holds." in text


@pytest.mark.parametrize(
    ("arguments", "fix"),
    [
        (("prove", "--runs", "0"), "from 1"),
        (("prove", "--only", "dragon"), "ids of results"),
        (("learn", "none.json"), "JSON"),
    ],
)
def test_bad_input_is_told_in_words(arguments, fix):
    code, _, errors = said(*arguments)
    assert code == 2
    assert fix in errors


def test_confirmed_calls_say_what_they_would_change(tmp_path):
    file = tmp_path / "calls.json"
    calls = [{"taxon": "wolf-spider", "reports": {"gait": "still"}, "true": {"gait": "runs-fast"}}] * 20
    file.write_text(json.dumps(calls), encoding="utf-8")
    code, text, _ = said("learn", str(file))
    assert code in (0, 1)
    assert "gait" in text
    assert "stricter" in text
