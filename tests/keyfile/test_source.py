"""Reading one file: limits, encodings, places; never a traceback."""

from __future__ import annotations

import os
import tracemalloc
from pathlib import Path

import pytest

from keyapp.keyfile.node import converted_kind
from keyapp.keyfile.problem import PROBLEMS_PER_FILE, Problems
from keyapp.keyfile.source import MAX_BYTES, parse, read


def codes(data: bytes) -> list[str]:
    problems = Problems()
    parse(data, "a.yaml", problems)
    return [problem.code for problem in problems.kept]


def test_every_value_knows_its_line_and_path() -> None:
    root = parse(b"a:\n  b:\n    - x\n    - c: y\n", "a.yaml", Problems())
    assert root is not None
    inner = root.fields["a"].fields["b"].items[1].fields["c"]
    assert (inner.text, inner.line, inner.path) == ("y", 4, "a.b[1].c")


def test_byte_order_mark_of_utf8_is_passed_over() -> None:
    problems = Problems()
    root = parse(b"\xef\xbb\xbfa: b\n", "a.yaml", problems)
    assert root is not None and root.fields["a"].text == "b"
    assert problems.kept == []


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-be", "utf-32", "utf-32-be", "utf-32-le"])
def test_other_encodings_are_refused_politely(encoding: str) -> None:
    assert codes("a: b\n".encode(encoding)) == ["K103"]


def test_windows_line_ends_count_as_one_line() -> None:
    root = parse(b"a: b\r\nc: d\r\n", "a.yaml", Problems())
    assert root is not None and root.fields["c"].line == 2


def test_quoted_and_block_texts_are_not_plain() -> None:
    root = parse(b"a: \"yes\"\nb: 'no'\nc: |\n  on\nd: off\n", "a.yaml", Problems())
    assert root is not None
    assert [node.plain for node in root.fields.values()] == [False, False, False, True]


@pytest.mark.parametrize(
    "data", [b"a: [", b"a: b: c", b"\t", b"a: 'x", b"- a\nb: c", b"%YAML 9.9\n---\na: b", b"a: \x07", b": y"]
)
def test_broken_yaml_is_one_problem(data: bytes) -> None:
    assert codes(data) == ["K104"]


@pytest.mark.parametrize("data", [b"", b"\n\n", b"# nothing\n", b"---\n"])
def test_empty_file_is_one_problem(data: bytes) -> None:
    assert codes(data) == ["K116"]


@pytest.mark.parametrize("data", [b"- a\n", b"text\n", b"3\n"])
def test_file_without_names_is_one_problem(data: bytes) -> None:
    assert codes(data) == ["K111"]


@pytest.mark.parametrize("opening", [b"[", b"{a: ", b"- ", b"? "])
def test_deep_nesting_is_given_up_at_once(opening: bytes) -> None:
    assert codes(b"a: " * (opening != b"- ") + opening * 100_000)[-1] in ("K104", "K106")


def test_alias_bomb_is_refused_without_growing() -> None:
    lines = ["a0: &a0 [x]"] + [f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 9)}]" for i in range(1, 12)]
    assert set(codes("\n".join(lines).encode())) == {"K105"}


def test_merge_of_a_mapping_into_another_is_refused() -> None:
    assert codes(b"a: {<<: {b: c}}\n") == ["K108"]


@pytest.mark.parametrize("key", [b"? [x]\n: y", b"? {x: y}\n: z", b"yes: y", b"3: y", b"2026-01-01: y", b"~: y"])
def test_names_that_are_not_words_are_refused(key: bytes) -> None:
    assert codes(key + b"\n") == ["K108"]


def test_value_of_a_refused_name_does_not_end_up_elsewhere() -> None:
    root = parse(b"? [x]\n: lost\nkept: here\n", "a.yaml", Problems())
    assert root is not None and {name: node.text for name, node in root.fields.items()} == {"kept": "here"}


def test_first_of_two_equal_names_is_kept() -> None:
    root = parse(b"a: first\na: second\n", "a.yaml", Problems())
    assert root is not None and root.fields["a"].text == "first"


def test_problems_of_one_file_are_capped_with_a_word_about_it() -> None:
    found = codes(b"a: b\n" * 5000)
    assert len(found) == PROBLEMS_PER_FILE + 1
    assert found[-1] == "K106"


def test_hundred_megabytes_are_refused_without_being_read(tmp_path: Path) -> None:
    path = tmp_path / "big.yaml"
    path.touch()
    os.truncate(path, 100_000_000)
    problems = Problems()
    tracemalloc.start()
    found = read(path, "big.yaml", problems)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert found is None
    assert [problem.code for problem in problems.kept] == ["K102"]
    assert peak < MAX_BYTES / 10


def test_folder_and_pipe_are_not_read_as_files(tmp_path: Path) -> None:
    problems = Problems()
    os.mkfifo(tmp_path / "pipe.yaml")
    assert read(tmp_path, "a.yaml", problems) is None
    assert read(tmp_path / "pipe.yaml", "pipe.yaml", problems) is None
    assert [problem.code for problem in problems.kept] == ["K101", "K101"]


def test_missing_file_is_a_problem(tmp_path: Path) -> None:
    problems = Problems()
    assert read(tmp_path / "none.yaml", "none.yaml", problems) is None
    assert [problem.code for problem in problems.kept] == ["K101"]


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("yes/no value", ["yes", "No", "ON", "y", "False"]),
        ("empty value", ["", "~", "null"]),
        ("number", ["3", "012", "0o17", "0x1F", "1_000", "1e3", "-.5", "9:30", ".inf"]),
        ("date", ["2026-05-01", "2026-05-01 10:00:00"]),
        ("merge sign", ["<<"]),
        (None, ["orb", "none", "555-0101", "1-800-222-1222", "1.2.3", "3 mm", "-", "nothing"]),
    ],
)
def test_texts_that_readers_convert_are_known(kind: str | None, texts: list[str]) -> None:
    assert {converted_kind(text) for text in texts} == {kind}


def test_long_runs_of_digits_are_judged_in_no_time() -> None:
    assert converted_kind("1" * 200_000 + "x") is None
    assert converted_kind("1_" * 100_000 + ".x") is None
