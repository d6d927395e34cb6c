"""`keyapp learn`: what confirmed calls would change in the key, and what of it is in force."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.learn import (
    Approval,
    Change,
    Proven,
    counted,
    counts_data,
    fingerprint,
    learned,
    proposed,
    read_calls,
)
from keyapp.proof import prove

__all__ = ["run"]


def run(
    out: Terminal,
    folder: Path,
    file: Path,
    approve: str | None = None,
    date: str | None = None,
    target: Path | None = None,
    runs: int = 20_000,
    workers: int | None = None,
) -> int:
    """Print every change; with an approval, prove the changed key first. Returns 1 where something is held back.

    `target` gets the counts, the approval and the changes in force as JSON. The key files themselves
    are never written: without that file the shipped key stands.
    """
    approval = _approval(approve, date)
    keyset = require_keyset(folder)
    try:
        text = file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise UserError("The file cannot be read.", where=str(file), fix="Give a JSON file of calls.") from error
    counts = counted(keyset, read_calls(text, str(file)))
    proven = None
    if approval is not None:
        whole = proposed(keyset, counts)
        proven = Proven(fingerprint(whole), prove(whole, runs=runs, workers=workers).holds)
    _, changes = learned(keyset, counts, approval, proven)
    out.say(f"confirmed calls: {counts.calls}   changes: {len(changes)}")
    for change in changes:
        out.say(_line(change))
    if target is not None:
        data = {
            "counts": counts_data(counts),
            "approval": None if approval is None else {"name": approval.name, "date": approval.date.isoformat()},
            "changes": [{f: getattr(change, f) for f in Change.__dataclass_fields__} for change in changes],
        }
        try:
            target.write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8")
        except OSError as error:
            raise UserError("The file cannot be written.", where=str(target), fix="Give another place.") from error
    return 1 if any(change.held for change in changes) else 0


def _approval(name: str | None, date: str | None) -> Approval | None:
    if name is None and date is None:
        return None
    if not name or not name.strip() or not date:
        raise UserError("An approval needs a name and a date.", where="--approve", fix="Give --approve and --date.")
    try:
        return Approval(name.strip(), datetime.date.fromisoformat(date))
    except ValueError as error:
        raise UserError(f"“{date}” is not a date.", where="--date", fix="Give it as YYYY-MM-DD.") from error


def _line(change: Change) -> str:
    way = "weaker" if change.weakens else "stricter"
    head = f"{change.figure} {change.item}: {change.old:.4f} -> {change.new:.4f} ({way}; {change.why})"
    if change.held:
        return f"{head}   HELD BACK at {change.now:.4f}: {change.held}"
    return f"{head}   in force"
