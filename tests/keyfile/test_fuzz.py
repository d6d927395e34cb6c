"""Whatever a file holds, loading and checking end in a key or in problems, never in a traceback."""

from __future__ import annotations

import copy
import datetime
import os
import shutil
import tempfile
from pathlib import Path

import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from keyapp.checker import run_check
from keyapp.keyfile import load_keyset
from keyapp.keyfile.problem import Problem, Problems
from keyapp.keyfile.source import parse
from keyapp.model import KeySet

BASE = Path(__file__).parent.parent / "cases" / "base"
FILES = sorted(path.relative_to(BASE).as_posix() for path in BASE.rglob("*.yaml"))
TODAY = datetime.date(2026, 11, 24)
EXAMPLES = int(os.environ.get("KEYAPP_FUZZ_EXAMPLES", "50"))
QUICK = settings(
    max_examples=EXAMPLES, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=EXAMPLES == 50,
    database=None,
)

YAML_BITS = st.sampled_from([
    *"abz09 :-[]{}#&*!|>'\"%@`,?~\n\t\\é\u2028\x85\x00\ufeff", "\n  ", ": ", "- ", "<<: ", "*a", "&a ",
])
ODD_VALUES = st.recursive(
    st.one_of(
        st.none(), st.booleans(), st.integers(-(10**20), 10**20), st.floats(), st.text(max_size=8), st.dates(),
        st.sampled_from(["", "yes", "none", "animal", "mark", "start/thing", "K", "../x", "a" * 300]),
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.dictionaries(st.text("ab-:", max_size=3), inner, max_size=3)
    ),
    max_leaves=6,
)


def outcome_is_sound(files: dict[str, bytes]) -> None:
    """Load and check the small key with some files replaced."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(shutil.copytree(BASE, Path(place) / "keys"))
        for file, data in files.items():
            (folder / file).write_bytes(data)
        loaded = load_keyset(folder)
        report = run_check(folder, None, TODAY)
    assert all(type(problem) is Problem and problem.what and problem.code for problem in loaded.problems)
    assert isinstance(loaded.keyset, KeySet) == (loaded.problems == ())
    assert set(loaded.problems) <= set(report.found)
    assert report.text() and report.json()


def places_in(value: object, path: tuple = ()) -> list[tuple]:
    found = [path]
    pairs = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, child in pairs:
        found.extend(places_in(child, (*path, name)))
    return found


def replaced(value: object, path: tuple, new: object) -> object:
    whole = [copy.deepcopy(value)]
    at, keys = whole, (0, *path)
    for name in keys[:-1]:
        at = at[name]
    at[keys[-1]] = new
    return whole[0]


@given(st.binary(max_size=300))
@QUICK
def test_any_bytes_can_be_parsed(data: bytes) -> None:
    problems = Problems()
    assert parse(data, "a.yaml", problems) is not None or problems.kept


@given(st.lists(YAML_BITS, max_size=60).map("".join))
@QUICK
def test_any_yaml_like_text_can_be_parsed(text: str) -> None:
    problems = Problems()
    assert parse(text.encode("utf-8"), "a.yaml", problems) is not None or problems.kept


@given(st.sampled_from(FILES), st.binary(max_size=80))
@QUICK
def test_any_file_may_hold_any_bytes(file: str, data: bytes) -> None:
    outcome_is_sound({file: data})


@given(st.sampled_from(FILES), st.data())
@QUICK
def test_any_value_may_be_of_any_kind(file: str, data: st.DataObject) -> None:
    value = yaml.safe_load((BASE / file).read_text("utf-8"))
    path = data.draw(st.sampled_from(places_in(value)))
    changed = replaced(value, path, data.draw(ODD_VALUES))
    outcome_is_sound({file: yaml.safe_dump(changed, allow_unicode=True).encode("utf-8", "replace")})


@given(st.sampled_from(FILES), st.data())
@QUICK
def test_any_piece_may_be_cut_out_doubled_or_overwritten(file: str, data: st.DataObject) -> None:
    text = (BASE / file).read_text("utf-8")
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, min(len(text), start + 30)))
    bits = st.lists(YAML_BITS, max_size=6).map("".join)
    middle = data.draw(st.one_of(st.just(""), st.just(text[start:end] * 2), bits))
    outcome_is_sound({file: (text[:start] + middle + text[end:]).encode("utf-8")})


@given(st.lists(st.sampled_from(FILES), min_size=2, max_size=2, unique=True))
@QUICK
def test_files_may_change_places(pair: list[str]) -> None:
    first, second = pair
    outcome_is_sound({first: (BASE / second).read_bytes(), second: (BASE / first).read_bytes()})
