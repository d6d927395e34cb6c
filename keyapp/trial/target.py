"""Targets: what a trial is to reach, and whether it did."""

from __future__ import annotations

import math
from dataclasses import dataclass

from keyapp.trial.summary import Trial

__all__ = ["TARGETS", "Judged", "Target", "judge"]


@dataclass(frozen=True, slots=True)
class Target:
    """A figure of `Summary` that is to be at least (or else at most) `limit`.

    It is judged at the chance of a slip `error` (0-1); where that is None, with callers who never err.
    """

    figure: str
    error: float | None
    limit: float
    at_least: bool = False


TARGETS = (
    Target("first", 0.1, 0.92, at_least=True),
    Target("three", 0.1, 0.985, at_least=True),
    Target("danger_miss", 0.1, 0.001),
    Target("outside_named", 0.1, 0.05),
    Target("near_certain", 0.1, 0.95, at_least=True),
    Target("reliability_off", 0.1, 0.05),
    Target("named_taxa", None, 1.5),
    Target("most_named_taxa", None, 6.0),
    Target("safety_extra", None, 2.0),
)
"""What this key sets itself: our own choice, no published norm."""


@dataclass(frozen=True, slots=True)
class Judged:
    """A target with the value it is held against.

    Attributes:
        reached: whether the value is on the right side; None where no call, or too few, bear on it.
        unsure: reached, but the upper bound of the share lies beyond the limit: too few calls to show it.
    """

    target: Target
    value: float | None
    reached: bool | None
    unsure: bool = False

    @property
    def word(self) -> str:
        """`reached`, `missed` or `not judged`."""
        return "not judged" if self.reached is None else "reached" if self.reached else "missed"


def judge(trial: Trial) -> tuple[Judged, ...]:
    """Hold a trial against the targets for its kind of caller; the others are left out."""
    return tuple(_judged(trial, target) for target in TARGETS if _is_about(target, trial))


def _is_about(target: Target, trial: Trial) -> bool:
    if target.error is None or trial.faultless:
        return target.error is None and trial.faultless
    return math.isclose(target.error, trial.error, abs_tol=1e-9)


def _judged(trial: Trial, target: Target) -> Judged:
    value: float | None = getattr(trial.summary, target.figure)
    if value is None:
        return Judged(target, None, None)
    reached = value >= target.limit if target.at_least else value <= target.limit
    upper = trial.summary.danger_upper if target.figure == "danger_miss" else None
    return Judged(target, value, reached, reached and upper is not None and upper > target.limit)
