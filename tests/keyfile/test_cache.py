"""The compiled copy of a key: as good as the files, or not used."""

from __future__ import annotations

import hashlib
import os
import pickle
import shutil
from pathlib import Path

import pytest

from keyapp.keyfile import KeyFolderError, cache, require_keyset
from keyapp.keyfile.cache import cached_keyset, content_digest

BASE = Path(__file__).parent.parent / "cases" / "base"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(BASE, tmp_path / "keys"))


@pytest.fixture
def store(tmp_path: Path) -> Path:
    return tmp_path / "cache"


@pytest.fixture
def reads(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """Every folder that is read from its files."""
    seen: list[Path] = []

    def counting(folder: Path):
        seen.append(folder)
        return require_keyset(folder)

    monkeypatch.setattr(cache, "require_keyset", counting)
    return seen


def only_copy(store: Path) -> Path:
    (copy,) = store.glob("*.key")
    return copy


def rewrite(copy: Path, body: bytes) -> None:
    copy.write_bytes(b"keyapp compiled key\n" + hashlib.sha256(body).digest() + body)


def test_second_opening_takes_the_copy(folder: Path, store: Path, reads: list[Path]) -> None:
    first = cached_keyset(folder, store)
    second = cached_keyset(folder, store)
    assert first == second == require_keyset(BASE)
    assert reads == [folder]


def test_places_survive_in_the_copy(folder: Path, store: Path) -> None:
    cached_keyset(folder, store)
    assert cached_keyset(folder, store).taxa["plain-spider"].place.line == 1


@pytest.mark.parametrize("file", ["spots.yaml", "taxa/red-spider.yaml", "start.yaml"])
def test_any_change_of_a_file_makes_a_new_copy(file: str, folder: Path, store: Path, reads: list[Path]) -> None:
    cached_keyset(folder, store)
    with (folder / file).open("a") as stream:
        stream.write("# changed\n")
    cached_keyset(folder, store)
    assert len(reads) == 2


def test_new_and_renamed_files_change_the_digest(folder: Path) -> None:
    before = content_digest(folder)
    (folder / "taxa/more.yml").write_text("a: b")
    added = content_digest(folder)
    (folder / "taxa/web-red.yaml").rename(folder / "taxa/web-blue.yaml")
    assert len({before, added, content_digest(folder)}) == 3


@pytest.mark.parametrize("keep", [0, 5, 40, 200, -1])
def test_copy_cut_short_is_passed_over(keep: int, folder: Path, store: Path, reads: list[Path]) -> None:
    cached_keyset(folder, store)
    copy = only_copy(store)
    copy.write_bytes(copy.read_bytes()[:keep])
    assert cached_keyset(folder, store) == require_keyset(BASE)
    assert len(reads) == 2


def test_copy_with_one_changed_byte_is_passed_over(folder: Path, store: Path, reads: list[Path]) -> None:
    cached_keyset(folder, store)
    copy = only_copy(store)
    data = bytearray(copy.read_bytes())
    data[-100] ^= 1
    copy.write_bytes(data)
    assert cached_keyset(folder, store) == require_keyset(BASE)
    assert len(reads) == 2


class Harmful:
    """Would make a folder when it is unpickled."""

    def __init__(self, target: Path) -> None:
        self.target = target

    def __reduce__(self) -> tuple:
        return os.mkdir, (str(self.target),)


def test_copy_that_would_run_something_is_not_obeyed(
    folder: Path, store: Path, tmp_path: Path, reads: list[Path]
) -> None:
    cached_keyset(folder, store)
    rewrite(only_copy(store), pickle.dumps(Harmful(tmp_path / "harm")))
    assert cached_keyset(folder, store) == require_keyset(BASE)
    assert not (tmp_path / "harm").exists()
    assert len(reads) == 2


@pytest.mark.parametrize("other", [{"taxa": {}}, None, [1, 2], b"text"])
def test_copy_of_something_else_is_passed_over(other: object, folder: Path, store: Path) -> None:
    cached_keyset(folder, store)
    rewrite(only_copy(store), pickle.dumps(other))
    assert cached_keyset(folder, store) == require_keyset(BASE)


def test_faulty_key_is_refused_and_leaves_no_copy(folder: Path, store: Path) -> None:
    (folder / "spots.yaml").write_text("shed: 3\n")
    with pytest.raises(KeyFolderError, match="cannot be used"):
        cached_keyset(folder, store)
    assert not store.exists()


def test_missing_key_folder_is_the_same_error(tmp_path: Path, store: Path) -> None:
    with pytest.raises(KeyFolderError, match="does not exist"):
        cached_keyset(tmp_path / "none", store)


def test_cache_that_cannot_be_written_does_no_harm(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    assert cached_keyset(folder, tmp_path / "file" / "cache") == require_keyset(BASE)


def test_only_a_few_copies_are_kept(folder: Path, store: Path) -> None:
    for number in range(6):
        (folder / "spots.yaml").write_text(f"shed: {{label: Shed number {number}}}\n")
        cached_keyset(folder, store)
    assert len(list(store.iterdir())) == 4


def test_deleted_cache_is_made_again(folder: Path, store: Path) -> None:
    cached_keyset(folder, store)
    shutil.rmtree(store)
    assert cached_keyset(folder, store) == require_keyset(BASE)
    assert only_copy(store).is_file()
