"""Killed at any moment, the program carries on where it was.

A process that is killed takes nothing along: what it had written stays with the system. A power cut is
another matter; against it each file is flushed to disk before it takes the place of the old one.
"""

from __future__ import annotations

import json
import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from keyapp.folders import keys_folder
from keyapp.model import Case
from keyapp.work import Keeper, case_from_json

HERE = Path(__file__).resolve().parent
TIMES = int(os.environ.get("KEYAPP_KILLS", "25"))
"""How often it is killed; KEYAPP_KILLS=100 for the full run."""

LONGEST = 0.4
"""Seconds of acting before it is killed, at most; some forty acts."""

pytestmark = pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="needs SIGKILL")


class Driven:
    """The program in a process of its own."""

    def __init__(self, folder: Path, seed: int) -> None:
        self.log = folder / f"log-{seed}"
        environment = {
            **os.environ,
            "QT_QPA_PLATFORM": "offscreen",
            "XDG_CACHE_HOME": str(folder / "cache"),
            "PYTHONPATH": str(HERE.parents[1]),
        }
        command = [sys.executable, str(HERE / "act_until_killed.py"), str(keys_folder()), str(folder / "state")]
        self.process = subprocess.Popen([*command, str(self.log), str(seed)], env=environment)

    def lines(self) -> Iterator[tuple[str, object]]:
        """What it has logged, whole lines only."""
        for line in self.log.read_text(encoding="utf-8").splitlines() if self.log.exists() else []:
            yield from json.loads(line).items()

    def wait_for(self, word: str) -> object:
        end = time.monotonic() + 60
        while time.monotonic() < end and self.process.poll() is None:
            for found, value in self.lines():
                if found == word:
                    return value
            time.sleep(0.005)
        raise AssertionError(f"the program never said “{word}”; it ended with {self.process.poll()}")

    def kill(self) -> None:
        self.process.kill()
        self.process.wait()


def case_of(text: object) -> Case:
    """The case in a logged text; an empty one for null."""
    return case_from_json(str(text)) if text is not None else Case()


@pytest.mark.parametrize("seed", range(max(1, TIMES // 25)))
def test_killed_at_any_moment_it_carries_on_where_it_was(tmp_path: Path, seed: int) -> None:
    chance = random.Random(seed)
    may_be = {Case()}
    answered = 0
    acted = 0
    for kill in range(min(25, TIMES)):
        driven = Driven(tmp_path, 1000 * seed + kill)
        offered = case_of(driven.wait_for("offered"))
        assert offered in may_be, "what is offered was never reached, or more than the last act is lost"
        time.sleep(chance.random() * LONGEST)
        assert driven.process.poll() is None, "it ended by itself"
        driven.kill()
        told = list(driven.lines())
        kept = Keeper(tmp_path / "state").kept() or Case()
        done = [case_of(text) for word, text in told if word == "kept"]
        tried = [case_of(text) for word, text in told if word == "trying"]
        # The last one that was written, or the one that was being written.
        may_be = {*(done[-1:] or [offered]), *tried[-1:]}
        assert kept in may_be
        assert len(tried) - len(done) <= 1
        assert list((tmp_path / "state").glob("*.damaged")) == []
        answered += any(case.answers for case in tried)
        acted += sum(word == "acted" for word, _ in told)
    assert acted > 0
    assert answered > 0


def test_what_was_half_written_is_swept_away(tmp_path: Path) -> None:
    state = tmp_path / "state"
    state.mkdir()
    (state / "enquiry-abcdefgh.part").write_text("{", encoding="utf-8")
    driven = Driven(tmp_path, 1)
    driven.wait_for("offered")
    driven.kill()
    assert not (state / "enquiry-abcdefgh.part").exists()


def test_two_windows_keep_an_enquiry_each_and_both_come_back(tmp_path: Path) -> None:
    first = Driven(tmp_path, 1)
    first.wait_for("acted")
    second = Driven(tmp_path, 2)
    assert second.wait_for("offered") is None
    second.wait_for("acted")
    time.sleep(0.5)
    first.kill()
    second.kill()
    names = ("enquiry.json", "enquiry2.json")
    left = {name: case_of(text) for name in names if (text := _text(tmp_path / "state" / name)) is not None}
    again = [Driven(tmp_path, 3), Driven(tmp_path, 4)]
    offered = [again[0].wait_for("offered")]
    offered.append(again[1].wait_for("offered"))
    for one in again:
        one.kill()
    assert left
    assert {case_of(text) for text in offered if text is not None} == set(left.values())


def _text(path: Path) -> str | None:
    return path.read_text(encoding="utf-8") if path.exists() else None
