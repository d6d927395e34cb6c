"""Cases weighed from a file."""

from __future__ import annotations

import io
import json

import pytest

from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal

GOOD = """
cases:
  - id: wheel
    settings: {thing: animal, month: 9, evidence: photo}
    reports:
      leg-count: eight
      web-shape: orb
      underside-mark: {states: [none], view-seen: true}
      gait: {states: [still, slow-careful], sureness: think-so}
    sizes: {body-length: 12}
"""


@pytest.fixture
def weigh(tmp_path):
    def act(text):
        file = tmp_path / "cases.yaml"
        file.write_text(text, encoding="utf-8")
        out, errors = io.StringIO(), io.StringIO()
        code = run(["weigh", str(file)], Terminal(io.StringIO(), out, errors))
        return code, json.loads(out.getvalue() or "null"), errors.getvalue()

    return act


def test_a_case_is_weighed(weigh):
    code, results, _ = weigh(GOOD)
    assert code == 0
    assert results[0]["candidates"][0]["group"] == "Araneidae"


BAD = {
    "unknown character": ("leg-cuont: eight", "leg-count"),
    "unknown state": ("leg-count: seven", "six"),
    "absence without view": ("underside-mark: none", "view_seen"),
    "unknown detail": ("leg-count: {states: eight, sure: true}", "sureness"),
    "a mapping without states": ("leg-count: {sureness: sure}", "states"),
}


@pytest.mark.parametrize(("line", "fix"), BAD.values(), ids=BAD)
def test_a_bad_case_names_line_and_fix_and_the_others_go_on(weigh, line, fix):
    code, results, _ = weigh(f"{GOOD}  - id: bad\n    reports:\n      {line}\n")
    assert code == 1
    assert [one["ok"] for one in results] == [True, False]
    assert fix in results[1]["error"]["fix"]
    assert "cases.yaml:13" in results[1]["error"]["where"]


@pytest.mark.parametrize("text", ["", "cases", "cases: {}", "a: [", "cases:\n  - x\n", "cases:\n- {id: 1, id: 2}"])
def test_a_broken_file_is_told_in_words(weigh, text):
    code, results, errors = weigh(text)
    assert code in (1, 2)
    assert errors.startswith("Problem:") or results[0]["error"]["fix"]


def test_a_missing_file_is_told_in_words(tmp_path):
    errors = io.StringIO()
    code = run(["weigh", str(tmp_path / "none.yaml")], Terminal(io.StringIO(), io.StringIO(), errors))
    assert (code, errors.getvalue().startswith("Problem:")) == (2, True)
