"""Each window has a file of its own for its enquiry."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from keyapp.gui.own_file import OwnFile, left_open

HOLD_AND_DIE = """
import os, sys
from pathlib import Path
from keyapp.gui.own_file import OwnFile
own = OwnFile(Path(sys.argv[1]))
own.path.write_text("{}")
print(own.path.name, flush=True)
os.kill(os.getpid(), 9)
"""


def test_the_first_window_has_the_first_file(application: QApplication, tmp_path: Path) -> None:
    own = OwnFile(tmp_path / "new")
    assert own.path == tmp_path / "new" / "enquiry.json"
    assert own.is_locked
    assert not own.is_second
    own.let_go()


def test_the_second_window_has_another_and_knows_it(application: QApplication, tmp_path: Path) -> None:
    first, second, third = OwnFile(tmp_path), OwnFile(tmp_path), OwnFile(tmp_path)
    assert [own.path.name for own in (first, second, third)] == ["enquiry.json", "enquiry2.json", "enquiry3.json"]
    assert [own.is_second for own in (first, second, third)] == [False, True, True]
    first.let_go()
    assert OwnFile(tmp_path).path == first.path
    second.let_go()
    third.let_go()


def test_the_lock_of_a_killed_program_counts_for_nothing(application: QApplication, tmp_path: Path) -> None:
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).resolve().parents[2])}
    command = [sys.executable, "-c", HOLD_AND_DIE, str(tmp_path)]
    done = subprocess.run(command, capture_output=True, text=True, env=environment, check=False)
    assert done.stdout == "enquiry.json\n", done.stderr
    assert (tmp_path / "enquiry.lock").exists()
    own = OwnFile(tmp_path)
    assert own.path.name == "enquiry.json"
    assert not own.is_second
    own.let_go()


@pytest.mark.parametrize("content", ["", "nonsense", "1\n\n\n", "\x00\x01", "999999\npython\nhost\n"])
def test_a_damaged_lock_keeps_nobody_out(application: QApplication, tmp_path: Path, content: str) -> None:
    (tmp_path / "enquiry.lock").write_text(content, encoding="utf-8")
    own = OwnFile(tmp_path)
    assert own.is_locked
    own.let_go()


def test_what_a_second_window_left_open_comes_first(application: QApplication, tmp_path: Path) -> None:
    (tmp_path / "enquiry2.json").write_text("{}", encoding="utf-8")
    assert left_open(tmp_path)
    own = OwnFile(tmp_path)
    assert own.path.name == "enquiry2.json"
    assert not own.is_second
    own.let_go()


def test_only_what_is_half_written_for_its_own_file_is_swept(application: QApplication, tmp_path: Path) -> None:
    first = OwnFile(tmp_path)
    ours, theirs = tmp_path / "enquiry2-abc.part", tmp_path / "enquiry-abc.part"
    ours.touch()
    theirs.touch()
    second = OwnFile(tmp_path)
    assert not ours.exists()
    assert theirs.exists()
    first.let_go()
    second.let_go()


def test_nothing_is_left_open_in_a_new_folder(tmp_path: Path) -> None:
    assert not left_open(tmp_path / "none")


def test_a_folder_that_refuses_locks_is_no_error(application: QApplication, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("a file where a folder belongs", encoding="utf-8")
    own = OwnFile(tmp_path / "file")
    assert own.path.name == "enquiry.json"
    assert not own.is_locked
    assert not own.is_second
