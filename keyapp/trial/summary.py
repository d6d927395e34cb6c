"""What a trial found, in figures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from itertools import pairwise
from typing import Any

import numpy as np

from keyapp.engine import Claim
from keyapp.trial.call import Outcome
from keyapp.trial.interval import upper_bound

__all__ = ["BINS", "ENOUGH", "NEAR_CERTAIN", "Bin", "Missed", "Summary", "Trial", "summarise"]

BINS = (0.0, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 1.0)
"""Edges of the bins of stated probability in which reliability is judged."""

ENOUGH = 100
"""A bin is judged only with so many calls in it: then 95 % of what chance does to its share is within 10 points."""

NEAR_CERTAIN = 0.95
"""A first place stated at so much or more counts as near-certain."""


@dataclass(frozen=True, slots=True)
class Bin:
    """Calls whose first place was stated with a probability in [`least`, `most`): mean stated, share right."""

    least: float
    most: float
    calls: int
    stated: float
    right: float

    @property
    def enough(self) -> bool:
        """Whether it holds enough calls to be judged."""
        return self.calls >= ENOUGH

    @property
    def off(self) -> float:
        """How far what is stated and what is right lie apart, 0-1."""
        return abs(self.stated - self.right)


@dataclass(frozen=True, slots=True)
class Missed:
    """Dangerous calls of one result, and how many of them ended with the danger unnamed."""

    taxon: str
    missed: int
    calls: int


@dataclass(frozen=True, slots=True)
class Summary:
    """Figures of the calls held at one rate of slips. Shares are 0-1; `None` where no call bears on them.

    *Others* are calls about animals and signs of the key that are in no danger group.

    Attributes:
        calls: calls held; `inside` with an animal of the key, `dangerous` and `others` among these, `outside` without.
        first, three: share of inside calls with the true group first, or in the first three.
        danger_missed: dangerous calls that end with the danger unnamed; `danger_miss` their share; `danger_upper`
            its upper 95 % bound (Clopper & Pearson, see `upper_bound`); `danger_by_taxon` the same by result.
        outside_named: share of animals not in the key that got a firm name.
        near_certain: share of the `near_certain_calls` stated at 0.95 or more that were right.
        strict_first: share of inside calls in which the key followed strictly ended at the true group and no other;
            `strict_danger_miss` the share of dangerous calls in which none of its ends bore the danger.
        answers, extra: mean answers of a call, and direct answers among them, over all calls.
        bits_before, bits_after: mean entropy of the engine's probabilities over groups (*not in this key* is one) at
            the start and at the end, over all calls.
        capacity: most bits one answer can tell; None where it was not given.
        least_answers: (bits_before - bits_after) / capacity. Answers that each tell at most `capacity` bits
            cannot lower the entropy so far in fewer on average (Shannon's bound; it holds as far as the engine is
            calibrated).
        named_groups, most_named_groups: danger groups still named at the end of others, mean and greatest.
        named_taxa, most_named_taxa: results among them.
        safety_extra, most_safety_extra: answers asked of others for safety alone, once one group stood firm.
        reliability_off: greatest distance of stated and right over the bins with enough calls.
        bins: reliability, by stated probability of the first place.
        worst: results most often not first, with counts.
    """

    calls: int
    inside: int
    outside: int
    dangerous: int
    others: int
    first: float | None
    three: float | None
    danger_missed: int
    danger_miss: float | None
    danger_upper: float | None
    danger_by_taxon: tuple[Missed, ...]
    outside_named: float | None
    near_certain: float | None
    near_certain_calls: int
    strict_first: float | None
    strict_danger_miss: float | None
    answers: float | None
    extra: float | None
    bits_before: float | None
    bits_after: float | None
    capacity: float | None
    least_answers: float | None
    named_groups: float | None
    most_named_groups: int | None
    named_taxa: float | None
    most_named_taxa: int | None
    safety_extra: float | None
    most_safety_extra: int | None
    reliability_off: float | None
    bins: tuple[Bin, ...]
    worst: tuple[tuple[str, int], ...]

    def data(self) -> dict[str, Any]:
        """The figures as plain data for JSON."""
        values = asdict(self)
        values["bins"] = [{**asdict(b), "enough": b.enough} for b in self.bins]
        values["danger_by_taxon"] = {m.taxon: {"missed": m.missed, "calls": m.calls} for m in self.danger_by_taxon}
        values["worst"] = dict(self.worst)
        return values


@dataclass(frozen=True, slots=True)
class Trial:
    """What was found at one chance of a slip and one of *can't tell* per answer (0-1).

    `faultless`: the callers were sure and never erred (`Habits.faultless`), and results were drawn evenly.
    """

    error: float
    cant_tell: float
    summary: Summary
    faultless: bool = False


def summarise(outcomes: Sequence[Outcome], capacity: float | None = None) -> Summary:
    """Count up calls; `capacity` is the most bits that one answer can tell (above 0)."""
    inside = [o for o in outcomes if o.taxon is not None]
    outside = [o for o in outcomes if o.taxon is None]
    dangerous = [o for o in inside if o.dangers]
    others = [o for o in inside if not o.dangers]
    certain = [o for o in outcomes if o.chance >= NEAR_CERTAIN]
    missed = sum(o.misses_danger for o in dangerous)
    before, after = _mean(o.bits_before for o in outcomes), _mean(o.bits_after for o in outcomes)
    told = max(0.0, before - after) if before is not None and after is not None else None
    bins = _bins(outcomes)
    return Summary(
        calls=len(outcomes),
        inside=len(inside),
        outside=len(outside),
        dangerous=len(dangerous),
        others=len(others),
        first=_mean(o.place == 0 for o in inside),
        three=_mean(o.place is not None and o.place < 3 for o in inside),
        danger_missed=missed,
        danger_miss=_mean(o.misses_danger for o in dangerous),
        danger_upper=upper_bound(missed, len(dangerous)) if dangerous else None,
        danger_by_taxon=_by_taxon(dangerous),
        outside_named=_mean(o.claim not in (Claim.UNKNOWN, Claim.ONE_OF) for o in outside),
        near_certain=_mean(o.right for o in certain),
        near_certain_calls=len(certain),
        strict_first=_mean(o.strict_right for o in inside),
        strict_danger_miss=_mean(o.strict_misses for o in dangerous),
        answers=_mean(o.answers for o in outcomes),
        extra=_mean(o.extra for o in outcomes),
        bits_before=before,
        bits_after=after,
        capacity=capacity,
        least_answers=told / capacity if capacity and told is not None else None,
        named_groups=_mean(len(o.named) for o in others),
        most_named_groups=max((len(o.named) for o in others), default=None),
        named_taxa=_mean(len(o.named_taxa) for o in others),
        most_named_taxa=max((len(o.named_taxa) for o in others), default=None),
        safety_extra=_mean(o.safety_extra for o in others),
        most_safety_extra=max((o.safety_extra for o in others), default=None),
        reliability_off=max((b.off for b in bins if b.enough), default=None),
        bins=bins,
        worst=tuple(Counter(o.taxon or "" for o in inside if o.place != 0).most_common(10)),
    )


def _mean(found: Iterable[float]) -> float | None:
    values = list(found)
    return float(np.mean(values)) if values else None


def _by_taxon(dangerous: Sequence[Outcome]) -> tuple[Missed, ...]:
    """By result, most often missed first."""
    calls = Counter(o.taxon or "" for o in dangerous)
    missed = Counter(o.taxon or "" for o in dangerous if o.misses_danger)
    return tuple(Missed(t, missed[t], calls[t]) for t in sorted(calls, key=lambda t: (-missed[t], t)))


def _bins(outcomes: Sequence[Outcome]) -> tuple[Bin, ...]:
    found = []
    for least, most in pairwise(BINS):
        held = [o for o in outcomes if least <= o.chance < most or (most == BINS[-1] and o.chance >= most)]
        if held:
            stated = float(np.mean([o.chance for o in held]))
            found.append(Bin(least, most, len(held), stated, float(np.mean([o.right for o in held]))))
    return tuple(found)
