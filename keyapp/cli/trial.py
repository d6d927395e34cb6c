"""`keyapp trial`: how the key does with simulated callers."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from keyapp.cli.plot_file import require_place, write_plot
from keyapp.cli.progress import show_progress
from keyapp.cli.terminal import Terminal
from keyapp.engine import Tables, build_tables
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.measure.capacity import character_capacity
from keyapp.trial import Habits, Plan, Trial, run_trials, summarise, trial_data, trial_plot, trial_text

__all__ = ["CANT_TELLS", "ERRORS", "run"]

ERRORS = "0,0.05,0.1,0.2"
"""Chances of a slip where none are given. No rate for lay answers to single key questions is published."""

CANT_TELLS = "0.1"
"""Chances of *can't tell* where none are given; an assumption, from memory."""


def run(
    out: Terminal,
    folder: Path,
    *,
    calls: int,
    seed: int,
    errors: Sequence[str] = (),
    cant_tells: Sequence[str] = (),
    even: float = 0.0,
    as_json: bool = False,
    plot: Path | None = None,
    workers: int | None = None,
) -> int:
    """Hold `calls` calls at each chance of a slip with each chance of *can't tell*, and print the figures; returns 0.

    As many again are held with callers who never err, over all results evenly: how many dangers stay named then.

    `errors` and `cant_tells` are shares from 0 to 1, or lists of them with commas (`ERRORS`, `CANT_TELLS` where
    empty). With `plot`, an SVG file is written there as well. Raises UserError for values that cannot be, and for a
    plot that cannot be written.
    """
    if calls < 1:
        raise UserError(f"A trial of {calls} calls is no trial.", where="--calls", fix="Give 1 or more.")
    if seed < 0:
        raise UserError(f"{seed} is no seed.", where="--seed", fix="Give a whole number from 0.")
    if not 0 <= even <= 1:
        raise _no_share(f"{even:g}", "--even")
    slips = _shares(errors or [ERRORS], "--error")
    unseen = _shares(cant_tells or [CANT_TELLS], "--cant-tell")
    require_place(plot)
    keyset = require_keyset(folder)
    plan = Plan(calls=calls, seed=seed, even=even)
    rates = [(error, cant_tell) for cant_tell in unseen for error in slips]
    plans = [replace(plan, habits=replace(plan.habits, error=e, cant_tell=c)) for e, c in rates]
    plans.append(replace(plan, outside=0.0, even=1.0, habits=Habits.faultless()))
    *held, plain = run_trials(keyset, plans, workers=workers, told=show_progress)
    tables = build_tables(keyset)
    capacities = {error: _best_channel(tables, error) for error in slips}
    trials = [
        Trial(error, cant_tell, summarise(outcomes, capacities[error]))
        for (error, cant_tell), outcomes in zip(rates, held, strict=True)
    ]
    if plot is not None:
        write_plot(plot, trial_plot(trials))
    trials.append(Trial(0.0, 0.0, summarise(plain), faultless=True))
    out.say(json.dumps(trial_data(plan, trials), indent=1) if as_json else trial_text(plan, trials))
    return 0


def _shares(given: Sequence[str], option: str) -> list[float]:
    """Shares of one option, given once or more, each with or without commas; in order, none twice."""
    found = set()
    for word in ",".join(given).split(","):
        try:
            value = float(word)
        except ValueError:
            raise _no_share(word.strip(), option) from None
        if not 0 <= value <= 1:
            raise _no_share(word.strip(), option)
        found.add(value)
    return sorted(found)


def _no_share(word: str, option: str) -> UserError:
    return UserError(f"“{word}” is no share.", where=option, fix="Give shares from 0 to 1, such as 0.1 for 10 %.")


def _best_channel(tables: Tables, error: float) -> float | None:
    """Most bits that one answer about any one character can tell at this chance of a slip; None where it is nothing."""
    told = [character_capacity(one, error) for one in tables.characters.values() if one.character.states]
    most = max(told, default=0.0)
    return most if most > 0 else None
