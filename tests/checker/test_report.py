"""What a check found, as text and JSON."""

from __future__ import annotations

import datetime
import json
import shutil
from pathlib import Path

import pytest

from keyapp.checker import CODES, Report, run_check
from keyapp.checker.codes import RULE_CODES
from keyapp.keyfile import LOADER_CODES, Problem
from keyapp.model import Place

BASE = Path(__file__).parent.parent / "cases" / "base"
TODAY = datetime.date(2026, 11, 24)
PROBLEM = Problem(Place("taxa/a.yaml", 7, "a.title"), "K116", "The text is empty.", "Write the text.")
NOTE = Problem(Place("", 0), "K334", "No statement cites it.", "Cite it.", "note")


def test_text_has_one_line_for_each_and_a_summary() -> None:
    assert Report((NOTE, PROBLEM)).text() == (
        "keys:1: [K334] No statement cites it.  Fix: Cite it.  (note)\n"
        "taxa/a.yaml:7: [K116] The text is empty.  Fix: Write the text.\n"
        "1 problem, 1 note.\n"
    )


def test_json_says_the_same() -> None:
    data = json.loads(Report((PROBLEM,), remark="Rules were left out.").json())
    assert data == {
        "problems": [
            {
                "code": "K116", "severity": "problem", "file": "taxa/a.yaml", "line": 7, "path": "a.title",
                "what": "The text is empty.", "fix": "Write the text.",
            }
        ],
        "counts": {"K116": 1},
        "remark": "Rules were left out.",
        "exit_code": 1,
    }


@pytest.mark.parametrize(
    ("found", "code", "summary"),
    [((), 0, "No problems."), ((NOTE,), 0, "No problems, 1 note."), ((PROBLEM,) * 2, 1, "2 problems.")],
)
def test_only_problems_fail_a_check(found: tuple[Problem, ...], code: int, summary: str) -> None:
    assert (Report(found).exit_code, Report(found).summary) == (code, summary)


def test_report_says_when_rules_had_to_wait(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(BASE, tmp_path / "keys"))
    (folder / "spots.yaml").write_text("shed: [")
    assert "rules about the key itself have not been run yet" in run_check(folder, None, TODAY).text()


def test_problems_of_files_and_rules_come_in_one_report(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(BASE, tmp_path / "keys"))
    (folder / "spots.yaml").write_text("shed: {label: A shed, indoor: true}\n")
    path = folder / "taxa/plain-spider.yaml"
    path.write_text(path.read_text().replace("A brown spider without a mark.", "A harmless spider."))
    assert set(run_check(folder, None, TODAY).counts) == {"K109", "K391"}


def test_missing_folder_is_reported(tmp_path: Path) -> None:
    report = run_check(tmp_path / "none", None, TODAY)
    assert (report.counts, report.exit_code) == ({"K101": 1}, 1)


def test_codes_of_files_and_rules_do_not_meet() -> None:
    assert not set(LOADER_CODES) & set(RULE_CODES)
    assert set(CODES) == set(LOADER_CODES) | set(RULE_CODES)


def test_every_code_has_a_sentence() -> None:
    assert all(code[0] == "K" and len(code) == 4 and meaning.endswith(".") for code, meaning in CODES.items())
