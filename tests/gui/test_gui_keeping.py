"""An enquiry is kept as it goes and can be carried on."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from harness import TO_COBWEB, Bench
from PySide6.QtWidgets import QApplication

from keyapp.gui.session import Stage
from keyapp.model import Case, Choice, LeadAnswer, Report, Settings
from keyapp.work import Keeper
from keyapp.work.casefile import case_to_json


def test_every_change_is_on_disk(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.flush()
    assert Keeper(bench.folder).kept() == bench.session.case
    bench.session.start_again()
    bench.session.flush()
    assert Keeper(bench.folder).kept() is None


def test_an_enquiry_left_open_is_carried_on(application: QApplication, tmp_path: Path) -> None:
    first = Bench(tmp_path)
    first.open()
    first.go(*TO_COBWEB[:2])
    case = first.session.case
    first.close()
    second = Bench(tmp_path)
    second.open()
    assert second.session.offer == case
    second.click("carry-on")
    assert second.session.case == case
    assert second.session.stage is Stage.KEY
    assert second.session.couplet == "start/shape"
    second.close()


def test_the_offer_stays_until_answers_overtake_it(application: QApplication, tmp_path: Path) -> None:
    Keeper(tmp_path).keep(Case(Settings(hurt=False, month=4)))
    bench = Bench(tmp_path)
    bench.open()
    bench.click("hurt-no")
    bench.session.flush()
    assert bench.has("carry-on")
    assert Keeper(tmp_path).kept() == Case(Settings(hurt=False, month=4))
    bench.session.go_on()
    bench.answer(Choice.SECOND)
    bench.session.flush()
    assert bench.session.offer is None
    assert Keeper(tmp_path).kept() == bench.session.case
    bench.close()


def test_the_offer_can_be_let_go(application: QApplication, tmp_path: Path) -> None:
    Keeper(tmp_path).keep(Case(Settings(hurt=False)))
    bench = Bench(tmp_path)
    bench.open()
    bench.click("leave-kept")
    bench.session.flush()
    assert not bench.has("carry-on")
    assert Keeper(tmp_path).kept() is None
    bench.close()


@pytest.mark.parametrize("text", ["", "{", "[]", '{"format": 1}', '{"format": 99}', "\x00\x01"])
def test_a_damaged_file_gives_a_message_and_a_fresh_start(application: QApplication, tmp_path: Path, text: str) -> None:
    (tmp_path / "enquiry.json").write_text(text, encoding="utf-8")
    bench = Bench(tmp_path)
    bench.open()
    assert "could not be read" in bench.said[0].what
    assert bench.said[0].fix
    assert bench.session.offer is None
    bench.go(Choice.SECOND)
    bench.session.flush()
    assert Keeper(tmp_path).kept() == bench.session.case
    bench.close()


def test_what_the_key_no_longer_has_is_left_out_with_a_message(application: QApplication, tmp_path: Path) -> None:
    good = LeadAnswer("start/legs", Choice.SECOND)
    kept = Case(
        Settings(hurt=False, spot="attic", month=4),
        (good, LeadAnswer("start/gone", Choice.FIRST), Report("gone", frozenset({"x"}))),
        frozenset({"start/gone"}),
    )
    Keeper(tmp_path).keep(kept)
    bench = Bench(tmp_path)
    bench.open()
    bench.click("carry-on")
    assert bench.session.case == Case(Settings(hurt=False, month=4), (good,))
    for name in ("spot", "start/gone", "gone"):
        assert name in bench.said[0].fix
    bench.close()


@pytest.mark.parametrize(
    "part",
    [
        {"settings": {"month": "May"}},
        {"settings": {"told": 7}},
        {"settings": {"hurt": "no"}},
        {"answers": [{"kind": "size", "character": "body-length", "mm": "9", "spread": None}]},
        {"answers": [{"kind": "report", "character": "skin", "states": [], "both": False, "view_seen": True}]},
        {"answers": [{"kind": "report", "character": "skin", "states": ["dull"], "both": 1, "view_seen": "x"}]},
        {"answers": [{"kind": "lead", "couplet": ["a"], "choice": "first", "view_seen": True}]},
    ],
)
def test_values_of_the_wrong_kind_are_left_out(
    application: QApplication, tmp_path: Path, part: dict[str, object]
) -> None:
    data = json.loads(case_to_json(Case(Settings(hurt=False))))
    data["settings"].update(part.get("settings", {}))
    data["answers"] = [{"sureness": "sure", "evidence": "words", **a} for a in part.get("answers", [])]
    (tmp_path / "enquiry.json").write_text(json.dumps(data), encoding="utf-8")
    bench = Bench(tmp_path)
    bench.open()
    bench.session.carry_on()
    bench.settle()
    assert bench.session.case.answers == ()
    assert bench.session.case.settings.month is None
    assert len(bench.said) == 1
    bench.close()


def test_a_disk_that_refuses_gives_a_message(application: QApplication, tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file where a folder belongs", encoding="utf-8")
    bench = Bench(tmp_path)
    bench.folder = tmp_path / "state" / "below"
    bench.open()
    bench.session.set_hurt(False)
    bench.session.flush()
    bench.settle()
    assert "could not be kept" in bench.said[0].what
    assert bench.session.case.settings.hurt is False
    bench.close()
