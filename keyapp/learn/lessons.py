"""The file of what was learned: counts, who approved what weakens, and the proof; figures are never taken from it."""

from __future__ import annotations

import datetime
import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

from keyapp.errors import UserError
from keyapp.learn.change import Approval, Change, Proven, fingerprint
from keyapp.learn.counts import Counts, check_counts, counts_data, read_counts
from keyapp.learn.plain import file_text, strict_json
from keyapp.model import KeySet

__all__ = ["FORMAT", "Lessons", "approved", "lessons_text", "read_lessons"]

FORMAT = 1
"""Version of the file format; any other is refused."""

ANEW = "Make it anew with `keyapp learn`, or put it aside with `keyapp learn --forget`."
LONGEST_NAME = 200


@dataclass(frozen=True, slots=True)
class Lessons:
    """What the figures in force are worked out from, each time the key is opened.

    Attributes:
        counts: of the confirmed calls.
        approval: who allows what weakens, or None.
        proven: the one-error proof of the key that all of it makes, or None.
    """

    counts: Counts
    approval: Approval | None = None
    proven: Proven | None = None


def approved(name: object, date: object, today: datetime.date) -> Approval:
    """An approval by a named person on a day that has come; raises UserError for anything less."""
    if not isinstance(name, str) or not name.strip() or not isinstance(date, str) or not date.strip():
        raise UserError("An approval needs a name and a date.", where="approval", fix="Give both.")
    if len(name) > LONGEST_NAME or not name.isprintable() or not any(letter.isalpha() for letter in name):
        raise UserError("This is not the name of a person.", where="approval", fix="Give the approver's name.")
    try:
        day = datetime.date.fromisoformat(date)
    except ValueError as error:
        raise UserError(f"“{date[:40]}” is not a date.", where="approval", fix="Give it as YYYY-MM-DD.") from error
    if day.isoformat() != date:
        raise UserError(f"“{date[:40]}” is not a date.", where="approval", fix="Give it as YYYY-MM-DD.")
    if day > today:
        raise UserError(f"The date {date} is still to come.", where="approval", fix="Give the day it was approved.")
    return Approval(name.strip(), day)


def lessons_text(keyset: KeySet, lessons: Lessons, changes: Sequence[Change]) -> str:
    """The file: `changes` are there for people to read and are never read back."""
    approval, proven = lessons.approval, lessons.proven
    data: dict[str, Any] = {
        "format": FORMAT,
        "key": fingerprint(keyset),
        "counts": counts_data(lessons.counts),
        "approval": None if approval is None else {"name": approval.name, "date": approval.date.isoformat()},
        "proven": None if proven is None else {f.name: getattr(proven, f.name) for f in fields(proven)},
        "changes": [{f.name: getattr(change, f.name) for f in fields(change)} for change in changes],
    }
    return json.dumps({**data, "sum": _sum(data)}, indent=1, ensure_ascii=False) + "\n"


def read_lessons(path: Path, keyset: KeySet, today: datetime.date) -> Lessons:
    """What was learned about `keyset`, from its file.

    Raises UserError where the file is damaged or of another format, was changed by hand, belongs to
    another key, or holds counts or an approval that cannot be. `today` is the last day an approval may bear.
    """
    text = file_text(path)
    try:
        return _lessons(strict_json(text), keyset, today)
    except UserError as error:
        place = f"{path}: {error.where}" if error.where else str(path)
        raise UserError(error.what, where=place, fix=ANEW) from error
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise UserError("This is not a file of what was learned.", where=str(path), fix=ANEW) from error


def _lessons(data: Any, keyset: KeySet, today: datetime.date) -> Lessons:
    version = data["format"]
    if not isinstance(version, int) or isinstance(version, bool) or version != FORMAT:
        raise UserError("The file was written by another version of the program.", where="format")
    known = {"format", "key", "counts", "approval", "proven", "changes", "sum"}
    if set(data) != known:
        odd = sorted(set(data) ^ known)[0]
        raise UserError(f"The field “{odd[:60]}” is missing or not known.", where=odd[:60])
    if data["key"] != fingerprint(keyset):
        raise UserError("It was learned for another key, or another edition of this one.", where="key")
    try:
        counts = read_counts(data["counts"])
        check_counts(keyset, counts)
    except UserError as error:
        raise UserError(f"The counts cannot be right. {error.what}", where="counts") from error
    approval = None if data["approval"] is None else _approval(data["approval"], today)
    proven = None if data["proven"] is None else _proven(data["proven"])
    if data["sum"] != _sum({name: value for name, value in data.items() if name != "sum"}):
        raise UserError("The file was changed by hand or damaged: its check sum does not fit.", where="sum")
    return Lessons(counts, approval, proven)


def _approval(data: Any, today: datetime.date) -> Approval:
    if not isinstance(data, dict) or not set(data) <= {"name", "date"}:
        raise UserError("An approval needs a name and a date.", where="approval")
    return approved(data.get("name"), data.get("date"), today)


def _proven(data: Any) -> Proven:
    proven = Proven(**data)
    kinds = (isinstance(proven.fingerprint, str), isinstance(proven.holds, bool))
    if not all(kinds) or isinstance(proven.runs, bool) or not isinstance(proven.runs, int) or proven.runs < 0:
        raise UserError("This is not the outcome of a proof.", where="proven")
    return proven


def _sum(data: dict[str, Any]) -> str:
    """Check sum against slips and damage; it keeps no secret."""
    return hashlib.sha256(json.dumps(data, sort_keys=True, ensure_ascii=True).encode()).hexdigest()
