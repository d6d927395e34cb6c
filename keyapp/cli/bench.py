"""`keyapp bench`: speed, beside a bound or a peer measured in the same run."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from keyapp.bench.report import json_text, plain_text, scale_plot
from keyapp.bench.scale import measure_scale
from keyapp.cli.open import open_tables
from keyapp.cli.plot_file import require_place, write_plot
from keyapp.cli.terminal import Terminal
from keyapp.engine import reachable, read_case
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.model import Case, Choice, LeadAnswer, Settings

__all__ = ["run"]

ROUNDS = 7
BARE = (
    "import time;"
    "from PySide6.QtWidgets import QApplication, QLabel;"
    "app = QApplication([]); label = QLabel('bare'); label.resize(1024, 768); label.show(); app.processEvents();"
    "print(time.time())"
)


def run(out: Terminal, folder: Path, what: str, as_json: bool, plot: Path | None, seed: int) -> int:
    """Measure `what`: `start`, `answer` or `scale`; returns 0.

    `as_json`, `plot` (an SVG file) and `seed` are for `scale`, which makes its own keys and takes only
    the weights from the one in `folder`. Raises UserError for options that do not fit, and for a key
    that cannot be used.
    """
    if what == "scale":
        return _scale(out, folder, as_json, plot, seed)
    for option, given in (("--json", as_json), ("--plot", plot is not None)):
        if given:
            raise UserError(f"{option} goes with `bench scale` alone.", where=option, fix="Leave it out.")
    measures: dict[str, Callable[[Terminal, Path], None]] = {"start": _start, "answer": _answer}
    measures[what](out, folder)
    return 0


def _scale(out: Terminal, folder: Path, as_json: bool, plot: Path | None, seed: int) -> int:
    """Growth with the size of the key, and the same beside plain Python and a general-purpose library."""
    if seed < 0:
        raise UserError(f"{seed} is no seed.", where="--seed", fix="Give 0 or more.")
    require_place(plot)
    scale = measure_scale(require_keyset(folder).weights, seed, ROUNDS, out.error)
    if plot is not None:
        write_plot(plot, scale_plot(scale))
    out.say(json_text(scale) if as_json else plain_text(scale))
    return 0


def _start(out: Terminal, folder: Path) -> None:
    """Time from process start to the first couplet painted, beside a bare Qt window."""
    environment = {**os.environ, "QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen")}
    ours = [sys.executable, "-m", "keyapp.gui.first_couplet", str(folder)]
    times: dict[str, list[float]] = {"bare Qt window": [], "first couplet": []}
    for _ in range(ROUNDS):
        for name, command in (("bare Qt window", [sys.executable, "-c", BARE]), ("first couplet", ours)):
            begin = time.time()
            done = subprocess.run(command, env=environment, check=True, capture_output=True, text=True)
            times[name].append(float(done.stdout.split()[-1]) - begin)
    bare, first = (statistics.median(values) for values in times.values())
    out.say(f"bare Qt window: {bare * 1000:.0f} ms   first couplet: {first * 1000:.0f} ms   ratio: {first / bare:.2f}")


def _answer(out: Terminal, folder: Path) -> None:
    """Time to read a case after each answer on the longest way through the key, nothing remembered."""
    tables = open_tables(folder)
    case = Case(Settings(month=9))
    times = []
    while (couplet := read_case(tables, case).current) is not None:
        leads = tables.keyset.couplets[couplet].leads
        longer = max(
            (0, 1), key=lambda i: len(reachable(tables, leads[i].to.id)) if leads[i].to.kind == "couplet" else 0
        )
        case = case.with_answer(LeadAnswer(couplet, (Choice.FIRST, Choice.SECOND)[longer]))
        rounds = []
        for _ in range(ROUNDS):
            tables.memo.clear()
            begin = time.perf_counter()
            read_case(tables, case)
            rounds.append(time.perf_counter() - begin)
        times.append(statistics.median(rounds))
    if times:
        out.say(
            f"answers: {len(times)}   median: {statistics.median(times) * 1000:.2f} ms   "
            f"slowest: {max(times) * 1000:.2f} ms   bound: 16 ms"
        )
