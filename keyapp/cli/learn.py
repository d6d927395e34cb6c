"""`keyapp learn`: what confirmed calls would change in the key, and what of it is in force."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path

from keyapp.cli.progress import show_progress
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.learn import (
    Approval,
    Change,
    Counts,
    Lessons,
    Proven,
    added,
    approved,
    counted,
    file_text,
    fingerprint,
    forget,
    keep,
    learned,
    open_learned,
    proposed,
    read_calls,
    read_lessons,
    taken_out,
)
from keyapp.model import KeySet
from keyapp.proof import prove

__all__ = ["forget_learned", "run"]


def run(
    out: Terminal,
    folder: Path,
    file: Path | None,
    approve: str | None = None,
    date: str | None = None,
    target: Path | None = None,
    runs: int = 20_000,
    workers: int | None = None,
    *,
    merge: Sequence[Path] = (),
    without: Path | None = None,
    kept: Path | None = None,
    today: datetime.date | None = None,
) -> int:
    """Print every change; with an approval, prove the changed key first. Returns 1 where something is held back.

    Counted are the calls in `file` and what the files in `merge` have counted, less the calls in `without`.
    `target` gets counts, approval, proof and changes as JSON, and so does `kept`, where the key finds it
    when it is opened. The key files themselves are never written: without that file the shipped key stands.
    """
    today = today or datetime.date.today()
    if file is None and not merge:
        raise UserError("There is nothing to learn from.", where="FILE", fix="Name a file of confirmed calls.")
    if runs < 1:
        raise UserError(f"{runs} runs are too few.", where="--runs", fix="Give a whole number from 1.")
    approval = None if approve is None and date is None else _approval(approve, date, today)
    keyset = require_keyset(folder)
    counts = _counts(keyset, file, merge, without, today)
    proven = None
    if approval is not None:
        whole = proposed(keyset, counts)
        out.error("Proving the changed key; that takes some minutes.")
        proof = prove(whole, runs=runs, workers=workers, told=show_progress)
        proven = Proven(fingerprint(whole), proof.holds, runs)
    _, changes = learned(keyset, counts, approval, proven)
    out.say(f"confirmed calls: {counts.calls}   changes: {len(changes)}")
    for change in changes:
        out.say(_line(change))
    lessons = Lessons(counts, approval, proven)
    for path in (target, kept):
        if path is not None:
            before = keep(path, keyset, lessons, changes)
            if before is not None:
                out.say(f"The file that was there is now {before}.")
    if kept is not None:
        out.say(f"{open_learned(keyset, kept, today).note} `keyapp learn --forget` undoes it.")
    return 1 if any(change.held for change in changes) else 0


def forget_learned(out: Terminal, kept: Path) -> int:
    """Move the kept file aside, so that the key is as it ships; returns 0."""
    aside = forget(kept)
    out.say(
        f"The key is as it ships. What was learned is now in {aside}."
        if aside
        else "Nothing learned was in force: the key is as it ships."
    )
    return 0


def _counts(
    keyset: KeySet, file: Path | None, merge: Sequence[Path], without: Path | None, today: datetime.date
) -> Counts:
    counts = counted(keyset, read_calls(file_text(file), str(file))) if file is not None else Counts()
    seen: dict[str, Path] = {}
    for path in merge:
        text = file_text(path)
        if text in seen:
            raise UserError(
                f"It holds the same as {seen[text]}; nothing may count twice.",
                where=f"--merge {path}",
                fix="Leave one out.",
            )
        seen[text] = path
        counts = added(counts, read_lessons(path, keyset, today).counts)
    if without is not None:
        counts = taken_out(counts, counted(keyset, read_calls(file_text(without), str(without))))
    return counts


def _approval(name: str | None, date: str | None, today: datetime.date) -> Approval:
    try:
        return approved(name, date, today)
    except UserError as error:
        raise UserError(error.what, where="--approve, --date", fix=error.fix) from error


def _line(change: Change) -> str:
    way = "weaker" if change.weakens else "stricter"
    head = f"{change.figure} {change.item}: {change.old:.4f} -> {change.new:.4f} ({way}; {change.why})"
    if change.held:
        return f"{head}   HELD BACK at {change.now:.4f}: {change.held}"
    return f"{head}   in force"
