"""`keyapp check`: every problem of a key folder at once."""

from __future__ import annotations

import datetime
from pathlib import Path

from keyapp.checker import plain_count, run_check
from keyapp.cli.terminal import Terminal
from keyapp.keyfile import load_keyset

__all__ = ["run"]


def run(out: Terminal, folder: Path, images: Path, as_json: bool, basis: bool = False) -> int:
    """Check `folder`; 1 if there is any problem. With `basis`, what its statements rest on is counted as well."""
    today = datetime.datetime.now(tz=datetime.UTC).date()
    report = run_check(folder, images, today)
    out.say(report.json() if as_json else report.text())
    keyset = load_keyset(folder).keyset if basis and not as_json else None
    if keyset is not None:
        out.say(plain_count(keyset))
    return report.exit_code
