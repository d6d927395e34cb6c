"""`keyapp sheet` and `keyapp card`."""

from __future__ import annotations

import io
import json

import pypdf
import pytest

from keyapp.cli.main import run
from keyapp.cli.terminal import Terminal
from keyapp.model import Case, Settings
from keyapp.work.casefile import case_to_json
from tests.sheets.cases import pages_of


def keyapp(*arguments: object) -> tuple[int, str]:
    said = io.StringIO()
    code = run([str(one) for one in arguments], Terminal(io.StringIO(), said, said))
    return code, said.getvalue()


@pytest.fixture
def case(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    file = tmp_path / "case.json"
    file.write_text(case_to_json(Case(Settings(region="demo-office", month=7, told="a widow"))), encoding="utf-8")
    return file


def test_a_kept_case_becomes_a_sheet(case, tmp_path):
    target = tmp_path / "sheet.pdf"
    code, said = keyapp("sheet", case, "--paper", "a4", "--out", target, "--date", "2026-11-25")
    assert (code, said) == (0, f"Sheet written: {target}\n")
    pages = pages_of(target.read_bytes())
    assert "You were told: a widow." in " ".join(pages)
    assert "Date: 2026-11-25 · Edition: keyapp" in pages[0]
    assert float(pypdf.PdfReader(target).pages[0].mediabox.width) == pytest.approx(595.3, abs=0.5)


def test_the_lines_of_a_script_become_a_sheet(case, tmp_path):
    lines = [{"act": "settings", "region": "AZ"}, {"act": "lead", "choice": "first"}]
    case.write_text("\n".join(json.dumps(line) for line in lines), encoding="utf-8")
    target = tmp_path / "sheet.pdf"
    assert keyapp("sheet", case, "--out", target)[0] == 0
    assert "Not identified. Treat as unknown: do not handle." in pages_of(target.read_bytes())[0]


def test_a_card_is_written(tmp_path):
    target = tmp_path / "card.pdf"
    code, _ = keyapp("card", "--region", "mo", "--month", 7, "--out", target, "--language", "es")
    assert code == 0
    assert "MO, julio" in pages_of(target.read_bytes())[0]


@pytest.mark.parametrize(
    ("content", "what"),
    [
        ("", "damaged"),
        ("not json", "damaged"),
        ('{"format": 99}', "newer version"),
        ('{"act": "lead", "choice": "sideways"}', "line 1"),
        ('{"act": "state"}\n{"act": "dance"}', "line 2"),
    ],
)
def test_a_bad_case_is_told_and_nothing_is_written(case, tmp_path, content, what):
    case.write_text(content, encoding="utf-8")
    target = tmp_path / "sheet.pdf"
    code, said = keyapp("sheet", case, "--out", target)
    assert code == 2
    assert what in said
    assert not target.exists()


@pytest.mark.parametrize(
    ("arguments", "what"),
    [
        (["card", "--region", "MO", "--month", "7", "--out", "no/such/folder/card.pdf"], "Name a folder that is there"),
        (["card", "--region", "MO", "--month", "7", "--out", "."], "This is a folder"),
        (["card", "--region", "Moo", "--month", "7", "--out", "card.pdf"], "There is no region “Moo”"),
        (["card", "--region", "MO", "--month", "0", "--out", "card.pdf"], "There is no month 0"),
        (["card", "--region", "MO", "--month", "7", "--out", "card.pdf", "--date", "soon"], "is no date"),
        (["sheet", "missing.json", "--out", "sheet.pdf"], "could not be read"),
    ],
)
def test_what_cannot_be_done_is_told(arguments, what, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    code, said = keyapp(*arguments)
    assert code == 2
    assert what in said
    assert list(tmp_path.glob("*.pdf")) == []


def test_a_file_that_cannot_be_written_is_told(case, tmp_path, monkeypatch):
    def refuse(_path, _content):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("pathlib.Path.write_bytes", refuse)
    code, said = keyapp("card", "--region", "MO", "--month", 7, "--out", tmp_path / "card.pdf")
    assert code == 2
    assert "The paper could not be written. Permission denied: choose another place." in said
