"""Every file in `tests/cases/faults` makes one fault in the small sound key and is reported as it says.

A case is a YAML file: `about`; one or more of `change` (list of {file, find, put}), `add` (file: text),
`remove` (list of files), `hex` (file: bytes), `size` (file: bytes, filled with zeros), `undrawn` and
`drawn` (figures without a picture, or with one), `today`; and `expect`, a list of {code, file, fix}
with `line`, a piece of the line that must be named, where the file has lines, and `what`, a piece of
what must be said.
"""

from __future__ import annotations

import datetime
import os
import re
import shutil
from pathlib import Path

import pytest
import yaml

from keyapp.checker import CODES, run_check

CASES = Path(__file__).parent.parent / "cases"
FAULTS = sorted((CASES / "faults").glob("*.yaml"))
OF_WHOLE_FILES = ("K101", "K102", "K103", "K106", "K115", "K116", "K121")
TODAY = datetime.date(2026, 11, 24)


def make_folder(case: dict, target: Path) -> Path:
    """The small sound key with the fault of a case in it."""
    folder = target / "keys"
    shutil.copytree(CASES / "base", folder)
    for change in case.get("change", []):
        path = folder / change["file"]
        text = path.read_text("utf-8")
        assert text.count(change["find"]) == 1, f"{change['find']!r} must occur once in {change['file']}"
        path.write_text(text.replace(change["find"], change["put"]), "utf-8")
    for file, text in case.get("add", {}).items():
        (folder / file).parent.mkdir(exist_ok=True)
        (folder / file).write_text(text, "utf-8")
    for file in case.get("remove", []):
        (shutil.rmtree if (folder / file).is_dir() else os.unlink)(folder / file)
    for file, digits in case.get("hex", {}).items():
        (folder / file).write_bytes(bytes.fromhex(digits))
    for file, size in case.get("size", {}).items():
        os.truncate(folder / file, size)
    return folder


def make_images(case: dict, target: Path) -> Path:
    """A picture folder with an empty picture for every figure that is drawn."""
    figures = target / "images" / "figures"
    figures.mkdir(parents=True)
    drawn = set(yaml.safe_load((CASES / "base/figures/all.yaml").read_text("utf-8")))
    drawn = drawn - set(case.get("undrawn", [])) | set(case.get("drawn", []))
    for name in drawn:
        (figures / f"{name}.svg").touch()
    return figures.parent


@pytest.fixture
def checked(request: pytest.FixtureRequest, tmp_path: Path):
    case = yaml.safe_load(request.param.read_text("utf-8"))
    folder = make_folder(case, tmp_path)
    today = case.get("today", TODAY)
    return case, folder, run_check(folder, make_images(case, tmp_path), today)


def named_line(folder: Path, file: str, line: int) -> str:
    lines = (folder / file).read_bytes().decode("utf-8", "replace").splitlines() if (folder / file).is_file() else []
    return lines[line - 1] if 1 <= line <= len(lines) else ""


def test_the_small_key_itself_is_sound(tmp_path: Path) -> None:
    report = run_check(make_folder({}, tmp_path), make_images({}, tmp_path), TODAY)
    assert (report.found, report.remark, report.exit_code) == ((), "", 0)


@pytest.mark.parametrize("checked", FAULTS, indirect=True, ids=lambda path: path.stem)
def test_fault_is_reported_with_code_and_file(checked) -> None:
    case, _, report = checked
    assert [(each.code, each.place.file) for each in report.found] == [(e["code"], e["file"]) for e in case["expect"]]


@pytest.mark.parametrize("checked", FAULTS, indirect=True, ids=lambda path: path.stem)
def test_fault_names_line_and_fix(checked) -> None:
    case, folder, report = checked
    for each, expected in zip(report.found, case["expect"], strict=True):
        assert expected.get("line", "") in named_line(folder, each.place.file, each.place.line)
        assert expected["fix"] in each.fix
        assert expected.get("what", "") in each.what


@pytest.mark.parametrize("path", FAULTS, ids=lambda path: path.stem)
def test_case_names_its_line_wherever_there_is_one(path: Path) -> None:
    case = yaml.safe_load(path.read_text("utf-8"))
    assert all(e.get("line") or e["code"] in OF_WHOLE_FILES for e in case["expect"])


def test_every_code_has_a_case_and_every_case_a_code() -> None:
    shown = {e["code"] for path in FAULTS for e in yaml.safe_load(path.read_text("utf-8"))["expect"]}
    assert shown == set(CODES)


def test_every_case_begins_with_the_code_it_shows() -> None:
    codes = re.compile(r"k\d{3}-[a-z0-9-]+")
    named = {path.stem: path.stem[:4].upper() for path in FAULTS}
    assert all(codes.fullmatch(stem) for stem in named)
    assert all(named[path.stem] in path.read_text("utf-8") for path in FAULTS)
