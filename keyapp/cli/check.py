"""`keyapp check`: every problem of a key folder at once."""

from __future__ import annotations

import datetime
from pathlib import Path

from keyapp.checker import run_check
from keyapp.cli.terminal import Terminal

__all__ = ["run"]


def run(out: Terminal, folder: Path, images: Path, as_json: bool) -> int:
    """Check `folder`; 1 if there is any problem."""
    today = datetime.datetime.now(tz=datetime.UTC).date()
    report = run_check(folder, images, today)
    out.say(report.json() if as_json else report.text())
    return report.exit_code
