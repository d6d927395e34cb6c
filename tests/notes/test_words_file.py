"""The file of words for notes is read as strictly as the others, and a key can do without it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from keyapp.keyfile import load_keyset, require_keyset
from keyapp.keyfile.cache import read_copy, write_copy
from keyapp.model import NoteWords
from keyapp.notes import Kind, read_note

BASE = Path(__file__).parent.parent / "cases" / "base"
GOOD = """
ask-instead:
  big: {words: {en: [big]}, ask: legs, keep: false, why: Fear makes sizes grow., basis: [from memory]}
things:
  dime: {words: {en: [dime]}, mm: 17.91, basis: [from memory]}
parts:
  animal: {en: [spider]}
about:
  mark: [animal]
denies: {en: ["no", not]}
"""


@pytest.fixture
def folder(tmp_path):
    return Path(shutil.copytree(BASE, tmp_path / "keys"))


def test_a_key_can_do_without_it(folder):
    keyset = require_keyset(folder)
    assert keyset.notes == NoteWords()
    assert read_note(keyset, "half an inch, in June, bit me").found


def test_it_is_read_and_kept_in_the_compiled_copy(folder, tmp_path):
    (folder / "notes.yaml").write_text(GOOD, encoding="utf-8")
    keyset = require_keyset(folder)
    assert keyset.notes.things[0].mm == 17.91
    write_copy(tmp_path / "copy.key", keyset)
    assert read_copy(tmp_path / "copy.key").notes == keyset.notes
    assert [one.ask for one in read_note(keyset, "a big one").better] == ["legs"]
    sizes = [find for find in read_note(keyset, "the size of a dime, body").found if find.kind is Kind.SIZE]
    assert [find.mm for find in sizes] == [17.91]


@pytest.mark.parametrize(
    "old, new, says",
    [
        ("ask: legs", "ask: lags", 'The character "lags" does not exist'),
        ("why: Fear makes sizes grow., ", "", 'has no field "why"'),
        ("mm: 17.91", "mm: 0", "out of range"),
        ("mm: 17.91", 'mm: "17.91"', "A number belongs here"),
        ("keep: false", "keep: perhaps", "true or false belongs here"),
        ("en: [big]", "en: [Big]", "not in small letters"),
        ("en: [big]", "english: [big]", "not a language code"),
        ("mark: [animal]", "mark: [tail]", "neither a part nor a noun"),
        ("mark: [animal]", "mork: [animal]", 'The character "mork" does not exist'),
        ("denies:", "deny:", "has no field called"),
        ("things:", "spots: {nowhere: {en: [moon]}}\nthings:", 'The find spot "nowhere" does not exist'),
    ],
)
def test_a_fault_is_told_with_its_place(folder, old, new, says):
    (folder / "notes.yaml").write_text(GOOD.replace(old, new), encoding="utf-8")
    problems = load_keyset(folder).problems
    assert any(says in problem.what and problem.place.file == "notes.yaml" for problem in problems), problems
    assert all(problem.place.line > 0 for problem in problems)
