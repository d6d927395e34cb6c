"""`keyapp bench`: speed, beside a bound or a peer measured in the same run."""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
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
    """Time from process start to the first couplet painted, and to the first answer accepted, beside a bare Qt window.

    Each round begins without an enquiry left open. One round beforehand, for both, fills what a program
    that was used before has: compiled modules, the compiled key, the first couplet and its pictures.
    """
    times: dict[str, list[float]] = {"bare": [], "painted": [], "accepted": []}
    memory = []
    with tempfile.TemporaryDirectory() as place:
        environment = _window_environment(Path(place))
        ours = [sys.executable, "-m", "keyapp.gui.first_couplet", str(folder)]
        for round_ in range(-1, ROUNDS):
            for command in ([sys.executable, "-c", BARE], ours):
                shutil.rmtree(Path(place) / "state", ignore_errors=True)
                begin = time.time()
                moments = [float(part) for part in _run_window(command, environment).split()]
                if round_ >= 0:
                    times["bare" if len(moments) == 1 else "painted"].append(moments[0] - begin)
                    times["accepted"] += [moment - begin for moment in moments[1:2]]
                    memory += moments[2:]
    names = {
        "bare": "a bare Qt window painted",
        "painted": "the first couplet painted, to be picked and answered",
        "accepted": "the first answer accepted by the key",
    }
    for name, values in times.items():
        best, middle = min(values), statistics.median(values)
        ratio = middle / statistics.median(times["bare"])
        out.say(
            f"{names[name]}: {middle * 1000:.0f} ms (best {best * 1000:.0f} ms)   "
            f"times the bare window: {ratio:.2f} (best {best / min(times['bare']):.2f})"
        )
    out.say(f"most memory: {statistics.median(memory):.0f} MB   rounds: {ROUNDS}")


def _window_environment(place: Path) -> dict[str, str]:
    """Surroundings of a window that is timed: no screen, folders of its own, compiled modules kept."""
    environment = {**os.environ, "QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen")}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    for name in ("cache", "state"):
        environment[f"XDG_{name.upper()}_HOME"] = str(place / name)
    return {**environment, "PYTHONPYCACHEPREFIX": str(place / "modules")}


def _run_window(command: list[str], environment: dict[str, str]) -> str:
    """What the window prints; UserError where it fails."""
    done = subprocess.run(command, env=environment, check=False, capture_output=True, text=True, timeout=120)
    if done.returncode:
        last = (done.stderr.strip().splitlines() or ["it said nothing"])[-1]
        raise UserError("The window to be timed did not come up.", fix=f"Try `keyapp` by itself ({last}).")
    return done.stdout


def _answer(out: Terminal, folder: Path) -> None:
    """Time to read a case after each answer on the longest way through the key, nothing remembered; then the window."""
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
    with tempfile.TemporaryDirectory() as place:
        command = [sys.executable, "-m", "keyapp.gui.answer_times", str(folder), str(3)]
        *shown, memory = (float(line) for line in _run_window(command, _window_environment(Path(place))).splitlines())
    middle = statistics.median(shown) * 1000
    out.say(
        f"in the window, to the next page painted: {len(shown)} answers   median: {middle:.1f} ms"
        f"   slowest: {max(shown) * 1000:.1f} ms   bound: 16 ms   most memory: {memory:.0f} MB"
    )
