"""What a trial found, in figures, beside its targets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np

from keyapp.engine import Claim
from keyapp.trial.call import Outcome

__all__ = ["BINS", "Bin", "Summary", "summarise"]

BINS = (0.0, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 1.0)
"""Edges of the bins of stated probability in which reliability is judged."""

ENOUGH = 100
"""A bin is judged only with so many calls in it."""


@dataclass(frozen=True, slots=True)
class Bin:
    """Calls whose first place was stated with a probability in [least, most)."""

    least: float
    most: float
    calls: int
    stated: float
    right: float


@dataclass(frozen=True, slots=True)
class Summary:
    """Figures of a trial. Shares are 0-1; `None` where no call bears on them.

    Attributes:
        calls: calls held; `inside` with an animal of the key; `dangerous` with a gated one.
        first, three: share of inside calls with the true group first, or in the first three.
        danger_miss: share of dangerous calls that end with the danger unnamed.
        outside_named: share of animals not in the key that got a firm name.
        near_certain: share of calls stated at 0.95 or more that were right.
        strict_first: share of inside calls in which following the key strictly led to the true group.
        strict_danger_miss: share of dangerous calls in which it led elsewhere and named nothing.
        answers, extra: mean answers of a call, and direct questions among them.
        named, most_named: dangers still named at the end over inside calls of no medical
            importance, mean and greatest.
        bins: reliability.
        worst: taxa most often not first, with counts.
    """

    calls: int
    inside: int
    dangerous: int
    first: float | None
    three: float | None
    danger_miss: float | None
    outside_named: float | None
    near_certain: float | None
    strict_first: float | None
    strict_danger_miss: float | None
    answers: float | None
    extra: float | None
    named: float | None
    most_named: int
    bins: tuple[Bin, ...]
    worst: tuple[tuple[str, int], ...]

    def data(self) -> dict[str, Any]:
        """The figures as plain data for JSON."""
        values: dict[str, Any] = {name: getattr(self, name) for name in self.__dataclass_fields__}
        values["bins"] = [{name: getattr(b, name) for name in b.__dataclass_fields__} for b in self.bins]
        values["worst"] = dict(self.worst)
        return values


def summarise(outcomes: Sequence[Outcome]) -> Summary:
    """Count up a trial."""
    inside = [o for o in outcomes if o.taxon is not None]
    outside = [o for o in outcomes if o.taxon is None]
    dangerous = [o for o in inside if o.dangers]
    others = [o for o in inside if not o.dangers]
    certain = [o for o in outcomes if o.chance >= 0.95]
    return Summary(
        calls=len(outcomes),
        inside=len(inside),
        dangerous=len(dangerous),
        first=_share(o.place == 0 for o in inside),
        three=_share(o.place is not None and o.place < 3 for o in inside),
        danger_miss=_share(o.misses_danger for o in dangerous),
        outside_named=_share(o.claim not in (Claim.UNKNOWN, Claim.ONE_OF) for o in outside),
        near_certain=_share(o.right for o in certain),
        strict_first=_share(o.strict_right for o in inside),
        strict_danger_miss=_share(not o.strict_right for o in dangerous),
        answers=_mean(o.answers for o in inside),
        extra=_mean(o.extra for o in others),
        named=_mean(len(o.named) for o in others),
        most_named=max((len(o.named) for o in others), default=0),
        bins=_bins(outcomes),
        worst=tuple(Counter(o.taxon or "" for o in inside if o.place != 0).most_common(10)),
    )


def _share(found: object) -> float | None:
    values = list(found)  # type: ignore[call-overload]
    return float(np.mean(values)) if values else None


_mean = _share


def _bins(outcomes: Sequence[Outcome]) -> tuple[Bin, ...]:
    found = []
    for least, most in pairwise(BINS):
        held = [o for o in outcomes if least <= o.chance < most or (most == 1.0 and o.chance == 1.0)]
        if held:
            stated = float(np.mean([o.chance for o in held]))
            found.append(Bin(least, most, len(held), stated, float(np.mean([o.right for o in held]))))
    return tuple(found)
