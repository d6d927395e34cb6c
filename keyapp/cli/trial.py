"""`keyapp trial`: how the key does with simulated callers."""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from pathlib import Path

from keyapp.cli.terminal import Terminal
from keyapp.keyfile import require_keyset
from keyapp.trial import Plan, Summary, run_trial, summarise

__all__ = ["run"]

LINES = (
    ("first", "true group in first place"),
    ("three", "true group in the first three"),
    ("danger_miss", "dangerous animal ends unnamed"),
    ("outside_named", "animal not in the key given a firm name"),
    ("near_certain", "right where stated at 95 % or more"),
    ("strict_first", "baseline: the key followed strictly ends at the true group"),
    ("strict_danger_miss", "baseline: dangerous animal ends elsewhere"),
)


def run(
    out: Terminal, folder: Path, calls: int, seed: int, error: float, cant_tell: float, even: float, as_json: bool
) -> int:
    """Hold a trial and print its figures; returns 0."""
    plan = Plan(calls=calls, seed=seed, even=even)
    plan = replace(plan, habits=replace(plan.habits, error=error, cant_tell=cant_tell))
    outcomes = run_trial(require_keyset(folder), plan, told=lambda done: _progress(done, calls))
    found = summarise(outcomes)
    out.say(json.dumps(found.data(), indent=1) if as_json else _text(found))
    return 0


def _progress(done: int, calls: int) -> None:
    if sys.stderr.isatty():
        width = 40 * done // calls
        end = "\n" if done == calls else ""
        sys.stderr.write(f"\r[{'#' * width:<40}] {done}/{calls}{end}")
        sys.stderr.flush()


def _text(found: Summary) -> str:
    lines = [f"calls: {found.calls}   of animals in the key: {found.inside}   dangerous: {found.dangerous}"]
    for name, words in LINES:
        value = getattr(found, name)
        lines.append(f"{words}: " + ("no call" if value is None else f"{100 * value:.2f} %"))
    if found.answers is not None and found.named is not None and found.extra is not None:
        lines.append(f"answers a call: {found.answers:.2f}   direct questions: {found.extra:.2f}")
        lines.append(f"dangers still named for other animals: mean {found.named:.2f}, most {found.most_named}")
    lines.append("stated    right     calls")
    lines += [f"{100 * b.stated:5.1f} %   {100 * b.right:5.1f} %   {b.calls}" for b in found.bins]
    lines.append("most often not first: " + ", ".join(f"{name} {count}" for name, count in found.worst))
    return "\n".join(lines)
