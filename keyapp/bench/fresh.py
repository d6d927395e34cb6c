"""A fresh process that opens a compiled key and holds a session: `python -m keyapp.bench.fresh COPY RESULT ...`.

It prints one JSON object: seconds to load, of each update and each question, and the most memory it held.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from dataclasses import asdict
from pathlib import Path
from typing import Any

__all__ = ["main"]


def main(arguments: list[str]) -> int:
    """Carry it out; 1 where the copy cannot be read."""
    parser = argparse.ArgumentParser(prog="keyapp.bench.fresh")
    parser.add_argument("copy", type=Path)
    parser.add_argument("taxon")
    parser.add_argument("--answers", type=int, required=True)
    parser.add_argument("--rounds", type=int, required=True)
    options = parser.parse_args(arguments)
    begin = time.perf_counter()
    # What is loaded of the program itself is part of the time it takes to open.
    from keyapp.engine import build_tables
    from keyapp.keyfile.cache import read_copy

    keyset = read_copy(options.copy)
    if keyset is None:
        return 1
    tables = build_tables(keyset)
    load, worked, ready = time.perf_counter() - begin, time.process_time(), time.time()
    found: dict[str, Any] = {"load": load, "worked": worked, "ready": ready, "rows": len(tables.rows)}
    if options.answers:
        from keyapp.bench.session import hold

        found["session"] = asdict(hold(tables, keyset.taxa[options.taxon], options.answers, options.rounds))
    found["memory"] = most_memory()
    sys.stdout.write(json.dumps(found) + "\n")
    return 0


def most_memory() -> float | None:
    """The most memory this process has held, in bytes; None where the system does not say."""
    # `getrusage` would count what the process that started this one held.
    try:
        lines = Path("/proc/self/status").read_text(encoding="ascii", errors="replace").splitlines()
    except OSError:
        return None
    found = [line.split()[1] for line in lines if line.startswith("VmHWM:")]
    return float(found[0]) * 1024 if found else None


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
