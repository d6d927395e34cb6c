"""Scores what the reader finds in the notes of `cases.yaml` against what a careful person takes down."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import yaml

from keyapp.model import Sureness
from keyapp.notes import Kind, NoteReader

CASES = Path(__file__).with_name("cases.yaml")
CHARACTERS = Path(__file__).with_name("characters.yaml")
TOLERANCE = 0.05
"""Share by which a size may be off."""


@dataclass
class Score:
    """Counts over notes, and every miss by case for whoever tunes the reader."""

    right: int = 0
    wrong: int = 0
    missed: int = 0
    sure_right: int = 0
    sure_asked: int = 0
    said: list[str] = field(default_factory=list)

    @property
    def precision(self) -> float:
        """Share of what was offered that is right."""
        return self.right / max(1, self.right + self.wrong)

    @property
    def recall(self) -> float:
        """Share of what should be found that was found."""
        return self.right / max(1, self.right + self.missed)


def cases(half: str) -> list[Mapping[str, Any]]:
    """The cases of one half: `tune` or `held`."""
    return [case for case in yaml.safe_load(CASES.read_text(encoding="utf-8")) if case["half"] == half]


def score(reader: NoteReader, some: Iterable[Mapping[str, Any]]) -> Score:
    """Hold every note against its mapping."""
    total = Score()
    known = yaml.safe_load(CHARACTERS.read_text(encoding="utf-8"))
    for case in some:
        note = reader.read(case["note"])
        by_character: dict[str, list[Any]] = {}
        for find in note.found:
            if find.kind in (Kind.STATES, Kind.THING):
                states = tuple(state for state in find.states if state in known.get(find.characters[0], ()))
                if states:
                    by_character.setdefault(find.characters[0], []).append(replace(find, states=states))
        _states(total, case, by_character)
        _sizes(total, case, [find for find in note.found if find.kind is Kind.SIZE])
        spots = [find.value for find in note.found if find.kind is Kind.SPOT]
        _one(total, case, "spot", spots, case.get("spot") or [])
        months = [find.value for find in note.found if find.kind is Kind.MONTH]
        _one(total, case, "month", months, [str(case["month"])] if "month" in case else [])
        places = [find.value for find in note.found if find.kind is Kind.REGION]
        _one(total, case, "place", places, [case["place"]] if "place" in case else [])
        _told(total, case, [find.value for find in note.found if find.kind is Kind.TOLD])
        if note.injury == bool(case.get("hurt")):
            total.right += note.injury
        else:
            _bad(total, case, "injury", note.injury)
    return total


def _bad(total: Score, case: Mapping[str, Any], what: str, offered: object) -> None:
    if offered:
        total.wrong += 1
    else:
        total.missed += 1
    total.said.append(f"{case['case']}: {'WRONG' if offered else 'missed'} {what}")


def _states(total: Score, case: Mapping[str, Any], offered: Mapping[str, list[Any]]) -> None:
    shows, may = case["shows"], case.get("may") or {}
    for character, finds in offered.items():
        wanted, allowed = set(shows.get(character, ())), {*may.get(character, ()), *shows.get(character, ())}
        union = {state for find in finds for state in find.states}
        if wanted and union == wanted:
            total.right += 1
            _sureness(total, case, character, finds)
            continue
        hit = [find for find in finds if wanted and set(find.states) == wanted]
        if hit:
            total.right += 1
            _sureness(total, case, character, hit)
        elif wanted and character not in may:
            _bad(total, case, f"{character} {sorted(wanted)}", None)
        for find in finds:
            if find not in hit and not (character in may and set(find.states) <= allowed):
                _bad(total, case, f"{character} {find.states} from “{find.words}”", find)
    for character in shows:
        if character not in offered and character not in may:
            _bad(total, case, f"{character} {shows[character]}", None)


def _sureness(total: Score, case: Mapping[str, Any], character: str, finds: list[Any]) -> None:
    total.sure_asked += 1
    hedged = character in case["think-so"]
    doubt = all(find.sureness is Sureness.THINK_SO for find in finds)
    total.sure_right += doubt if hedged else True
    if hedged and not doubt:
        total.said.append(f"{case['case']}: sure of {character}")


def _sizes(total: Score, case: Mapping[str, Any], finds: list[Any]) -> None:
    wanted = dict(case.get("size") or {})
    for find in finds:
        name = "ask" if find.must_ask else find.characters[0]
        mm = wanted.get(name)
        if mm is not None and abs(find.mm - mm) <= TOLERANCE * mm:
            total.right += 1
            del wanted[name]
        else:
            _bad(total, case, f"size {name} {find.mm} from “{find.words}”", find)
    for name, mm in wanted.items():
        _bad(total, case, f"size {name} {mm}", None)


def _one(total: Score, case: Mapping[str, Any], what: str, offered: list[str], right: list[str]) -> None:
    """One of several that would be right is enough; every one that would not be right is wrong."""
    if any(value in right for value in offered):
        total.right += 1
    elif right:
        _bad(total, case, f"{what} {right}", None)
    for value in offered:
        if value not in right:
            _bad(total, case, f"{what} {value}", value)


def _told(total: Score, case: Mapping[str, Any], offered: list[str]) -> None:
    """A name counts where one of the two holds the other (“giant red ant”, “red ant”)."""
    left = list(case.get("told") or [])
    for name in offered:
        same = next((one for one in left if _bare(one) in _bare(name) or _bare(name) in _bare(one)), None)
        if same is None:
            _bad(total, case, f"told “{name}”", name)
        else:
            total.right += 1
            left.remove(same)
    for name in left:
        _bad(total, case, f"told “{name}”", None)


def _bare(name: str) -> str:
    return name.replace("-", "").replace(" ", "").removesuffix("s")
