"""Putting what was learned in force when a key is opened, and taking it out of force again."""

from __future__ import annotations

import datetime
import os
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from keyapp.errors import UserError
from keyapp.learn.change import Change
from keyapp.learn.learned import learned
from keyapp.learn.lessons import Lessons, lessons_text, read_lessons
from keyapp.model import KeySet

__all__ = ["Opened", "forget", "keep", "open_learned"]


@dataclass(frozen=True, slots=True)
class Opened:
    """A key with what was learned in force.

    Attributes:
        keyset: the key to work with; the very key given where nothing is in force.
        note: one line on what is in force; empty where there is no file.
        problem: why the file is not in force; None where it is, or is not there.
    """

    keyset: KeySet
    note: str = ""
    problem: UserError | None = None


def open_learned(keyset: KeySet, path: Path, today: datetime.date) -> Opened:
    """`keyset` with what the file at `path` has taught it; never raises for anything about the file.

    The figures are worked out anew from counts, approval and proof. Without the file, or where it cannot be
    trusted, the key comes back as it was and the file is left where it is.
    """
    if not path.exists():
        return Opened(keyset)
    try:
        lessons = read_lessons(path, keyset, today)
    except UserError as error:
        what = f"What was learned from confirmed calls is not in force; the key is used as it ships. {error.what}"
        return Opened(keyset, problem=UserError(what, where=error.where, fix=error.fix))
    changed, changes = learned(keyset, lessons.counts, lessons.approval, lessons.proven)
    return Opened(changed, _note(lessons, changes))


def _note(lessons: Lessons, changes: Sequence[Change]) -> str:
    active = [change for change in changes if change.now != change.old]
    held = len(changes) - len(active)
    figures = f"{len(active)} figure{'' if len(active) == 1 else 's'}"
    calls = f"{lessons.counts.calls} confirmed call{'' if lessons.counts.calls == 1 else 's'}"
    line = f"{figures} learned from {calls} {'is' if len(active) == 1 else 'are'} in force; {held} held back."
    approval = lessons.approval
    if approval is not None and any(change.weakens and not change.held for change in active):
        line += f" Approved by {approval.name} on {approval.date.isoformat()}."
    return line


def keep(path: Path, keyset: KeySet, lessons: Lessons, changes: Sequence[Change]) -> Path | None:
    """Write what was learned to `path`, whole or not at all; returns where an earlier file was moved, or None."""
    text = lessons_text(keyset, lessons, changes)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix="learned-", suffix=".part")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            before = forget(path)
            Path(name).replace(path)
        except OSError:
            Path(name).unlink(missing_ok=True)
            raise
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise UserError(
            f"The file cannot be written ({reason}).", where=str(path), fix="Give another place."
        ) from error
    return before


def forget(path: Path) -> Path | None:
    """Move the file at `path` aside, so that the key is as it ships; returns where to, or None without a file."""
    if not path.exists():
        return None
    aside = path.with_name(f"{path.stem}-aside{path.suffix}")
    number = 1
    while aside.exists():
        number += 1
        aside = path.with_name(f"{path.stem}-aside-{number}{path.suffix}")
    try:
        path.rename(aside)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise UserError(f"The file cannot be moved ({reason}).", where=str(path), fix="Move it by hand.") from error
    return aside
