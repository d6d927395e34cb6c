"""Whatever file is missing or damaged: a clear message or none needed, and a window that works."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from harness import watch_qt
from PySide6.QtCore import QEvent, QEventLoop, QThreadPool, QTimer
from PySide6.QtWidgets import QApplication, QPushButton

from keyapp.folders import images_folder, keys_folder
from keyapp.gui.app import App
from keyapp.gui.first_page import FirstPage, place_of, read_first_page, write_first_page
from keyapp.gui.reporter import Message
from keyapp.gui.session import Stage
from keyapp.keyfile.cache import cached_keyset
from keyapp.model import Choice

Damage = Callable[[Path], object]

DAMAGES: dict[str, Damage] = {
    "missing": lambda path: path.unlink(),
    "empty": lambda path: path.write_bytes(b""),
    "cut": lambda path: path.write_bytes(path.read_bytes()[: path.stat().st_size // 2]),
    "noise": lambda path: path.write_bytes(bytes(range(256)) * 8),
    "flipped": lambda path: path.write_bytes(bytes([path.read_bytes()[0] ^ 0x55]) + path.read_bytes()[1:]),
    "a folder": lambda path: (path.unlink(), path.mkdir()),
}


class Started:
    """The program over folders of its own, with what it said."""

    def __init__(self, folder: Path, keys: Path, images: Path) -> None:
        self.said: list[Message] = []
        self.app = App(keys, images, folder / "state", store=folder / "store")
        self.app.reporter.said.connect(self.said.append)
        self.loop = QEventLoop()
        self.app.opening.finished.connect(self.loop.quit)

    def open(self) -> None:
        QTimer.singleShot(30_000, self.loop.quit)
        self.app.start()
        self.loop.exec()
        self.settle()

    def settle(self) -> None:
        for _ in range(30):
            QApplication.processEvents()
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)

    def close(self) -> None:
        self.app.stop()
        self.app.window.close()
        self.app.window.deleteLater()
        QThreadPool.globalInstance().waitForDone()
        self.settle()

    def answers(self) -> int:
        """Answer one couplet and give the number of answers then."""
        session = self.app.session
        session.set_hurt(False)
        session.go_on()
        self.settle()
        self.app.window.page.grab()
        session.draft_lead(choice=Choice.FIRST)
        session.draft_lead(view_seen=True)
        session.answer()
        self.settle()
        return len(session.case.answers)


@pytest.fixture(scope="module")
def compiled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the compiled copy of the shipped key, which is the same wherever the key lies."""
    folder = tmp_path_factory.mktemp("compiled")
    cached_keyset(keys_folder(), folder / "keyapp" / "keys")
    return folder


@pytest.fixture
def folders(
    application: QApplication, compiled: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Path]:
    """The key and its pictures copied where they can be damaged, and a cache of their own."""
    shutil.copytree(compiled, tmp_path / "cache")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    shutil.copytree(keys_folder(), tmp_path / "keys")
    (tmp_path / "images").mkdir()
    (tmp_path / "images" / "figures").mkdir()
    for name in ("thing-animal", "thing-web"):
        shutil.copy(images_folder() / "figures" / f"{name}.svg", tmp_path / "images" / "figures")
    yield tmp_path


def start(folder: Path) -> Started:
    return Started(folder, folder / "keys", folder / "images")


def used_before(folder: Path) -> None:
    """As it is after a first use: an answer is kept, and so is all that makes the program faster."""
    started = start(folder)
    started.open()
    assert started.answers() == 1
    started.close()
    assert list((folder / "cache").rglob("*.key"))
    assert list((folder / "store").glob("first-*.json"))
    assert list((folder / "store" / "pictures").glob("*.png"))


@pytest.mark.parametrize("kind", ["key", "first", "picture"])
@pytest.mark.parametrize("damage", DAMAGES.values(), ids=DAMAGES)
def test_what_only_makes_it_faster_may_be_damaged(folders: Path, kind: str, damage: Damage) -> None:
    used_before(folders)
    shutil.rmtree(folders / "state")
    (folders / "state").mkdir()
    where = {"key": (folders / "cache", "*.key"), "first": (folders / "store", "first-*.json")}
    place, pattern = where.get(kind, (folders / "store", "*.png"))
    found = list(place.rglob(pattern))
    assert found
    for path in found:
        damage(path)
    started = start(folders)
    started.open()
    assert started.said == []
    assert started.answers() == 1
    started.close()


@pytest.mark.parametrize("damage", DAMAGES.values(), ids=DAMAGES)
def test_a_damaged_key_file_is_told_with_its_name(folders: Path, damage: Damage) -> None:
    used_before(folders)
    damage(folders / "keys" / "start.yaml")
    started = start(folders)
    started.open()
    page = started.app.window.page
    assert type(page).__name__ == "NoKeyPage"
    assert "start" in page.findChild(object, "problems").toPlainText()
    # Someone hurt is helped all the same.
    page.findChild(QPushButton, "open-emergency").click()
    assert started.app.window.is_emergency
    started.close()


@pytest.mark.parametrize("damage", DAMAGES.values(), ids=DAMAGES)
def test_a_damaged_figure_leaves_a_plain_mark(folders: Path, no_qt_warning: list[str], damage: Damage) -> None:
    damage(folders / "images" / "figures" / "thing-animal.svg")
    started = start(folders)
    started.open()
    assert started.answers() == 1
    started.app.session.look_at("start/thing")
    started.settle()
    assert not started.app.window.page.grab().isNull()
    started.close()
    assert all("thing-animal.svg" in text for text in no_qt_warning)
    no_qt_warning.clear()


@pytest.mark.parametrize("damage", [d for n, d in DAMAGES.items() if n != "missing"], ids=lambda d: "")
def test_a_damaged_enquiry_is_told_and_a_new_one_begins(folders: Path, damage: Damage) -> None:
    used_before(folders)
    damage(folders / "state" / "enquiry.json")
    started = start(folders)
    started.open()
    # An empty file of an enquiry holds none to offer, and is told as well where it is there.
    assert [message.what for message in started.said] == ["The kept enquiry could not be read."]
    assert started.said[0].fix
    assert started.answers() == 1
    started.close()


def test_a_missing_enquiry_is_no_matter(folders: Path) -> None:
    used_before(folders)
    (folders / "state" / "enquiry.json").unlink()
    started = start(folders)
    started.open()
    assert started.said == []
    assert started.app.session.offer is None
    started.close()


@pytest.mark.parametrize("damage", [d for n, d in DAMAGES.items() if n != "missing"], ids=lambda d: "")
def test_damaged_counts_are_told_and_the_key_stands_as_it_was(folders: Path, damage: Damage) -> None:
    (folders / "state").mkdir()
    (folders / "state" / "learned.json").write_text("{}", encoding="utf-8")
    damage(folders / "state" / "learned.json")
    started = start(folders)
    started.open()
    assert len(started.said) == 1
    assert started.said[0].fix
    assert started.answers() == 1
    started.close()


# The first couplet before the key is open --------------------------------------------------------


def early(folder: Path) -> Started:
    """The program at its first couplet, the key not open yet."""
    started = start(folder)
    started.app.get_early()
    started.app.session.go_on()
    started.app.window.show()
    QApplication.processEvents()
    return started


def fresh_start(folder: Path) -> Path:
    """The file of the first couplet, of a program used before with nothing left open."""
    used_before(folder)
    shutil.rmtree(folder / "state")
    return place_of(folder / "store", folder / "keys", "en")


def test_an_early_answer_counts_once_the_key_says_the_same(folders: Path) -> None:
    fresh_start(folders)
    started = early(folders)
    assert type(started.app.window.page).__name__ == "EarlyPage"
    started.app.session.pick_early(Choice.FIRST)
    started.app.session.answer_early()
    assert started.app.session.case.answers == ()
    started.open()
    assert [answer.choice for answer in started.app.session.case.answers] == [Choice.FIRST]
    assert started.said == []
    started.close()


def test_a_quick_person_gets_to_the_first_couplet_by_the_buttons(folders: Path) -> None:
    fresh_start(folders)
    started = start(folders)
    started.app.get_early()
    started.app.window.show()
    QApplication.processEvents()
    for name in ("hurt-no", "go-on"):
        next(one for one in started.app.window.findChildren(QPushButton, name) if one.isVisible()).click()
    assert type(started.app.window.page).__name__ == "EarlyPage"
    started.open()
    assert type(started.app.window.page).__name__ == "CoupletPage"
    assert started.app.session.case.settings.hurt is False
    started.close()


def test_an_early_pick_stays_picked(folders: Path) -> None:
    fresh_start(folders)
    started = early(folders)
    started.app.session.pick_early(Choice.SECOND)
    started.open()
    assert started.app.session.case.answers == ()
    assert started.app.session.lead_draft.choice is Choice.SECOND
    started.close()


def test_an_early_couplet_that_the_key_does_not_hold_is_thrown_away(folders: Path) -> None:
    """Sound by its own sum, yet not what the key says: the answer must not count."""
    path = fresh_start(folders)
    page = read_first_page(path)
    assert isinstance(page, FirstPage)
    write_first_page(path, page._replace(leads=(page.leads[1], page.leads[0])))
    started = early(folders)
    started.app.session.pick_early(Choice.FIRST)
    started.app.session.answer_early()
    started.open()
    assert started.app.session.case.answers == ()
    assert started.app.session.lead_draft.choice is None
    assert started.app.session.stage is Stage.KEY
    assert ["changed" in message.what for message in started.said] == [True]
    assert read_first_page(path) == page
    started.close()


def test_an_enquiry_left_open_is_not_overtaken_by_an_early_answer(folders: Path) -> None:
    used_before(folders)
    started = early(folders)
    started.app.session.pick_early(Choice.FIRST)
    started.app.session.answer_early()
    started.open()
    assert started.app.session.offer is not None
    assert started.app.session.case.answers == ()
    started.close()


def test_the_first_page_is_read_back_as_it_was_and_damage_is_seen(tmp_path: Path) -> None:
    page = FirstPage("a/b", "s", "asks", "", (("x", "f", ""), ("y", "g", "alt")), "c", "n")  # type: ignore[arg-type]
    path = tmp_path / "deep" / "first.json"
    write_first_page(path, page)
    assert read_first_page(path) == page
    kept = json.loads(path.read_text(encoding="utf-8"))
    for change in ({"asks": "other"}, {"leads": []}, {"leads": None}, {"more": 1}):
        path.write_text(json.dumps({**kept, "page": {**kept["page"], **change}}), encoding="utf-8")
        assert read_first_page(path) is None
    for text in ("", "[]", "null", "{}", "[" * 5000):
        path.write_text(text, encoding="utf-8")
        assert read_first_page(path) is None


def test_a_read_only_store_is_no_error(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    page = FirstPage("a/b", "s", "asks", "", (("x", "f", ""), ("y", "g", "alt")), "c", "n")  # type: ignore[arg-type]
    with watch_qt() as heard:
        write_first_page(tmp_path / "file" / "first.json", page)
    assert heard == []
    assert [path.name for path in tmp_path.iterdir()] == ["file"]
