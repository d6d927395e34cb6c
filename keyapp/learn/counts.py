"""Confirmed calls as counts: what was reported against what was there, and which kinds were found where."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar

from keyapp.errors import UserError
from keyapp.model import Character, Form, KeySet, Taxon
from keyapp.model.names import nearest

__all__ = [
    "CAP",
    "MOST_CALLS",
    "Confirmed",
    "Counts",
    "added",
    "check_counts",
    "confusion",
    "counted",
    "counts_data",
    "read_counts",
    "taken_out",
]

Name = TypeVar("Name", bound=tuple[str, ...])

CAP = 20.0
"""Most that one call may count for, however seldom such calls are confirmed (from memory: keeps one call from
outweighing the shipped figures)."""

MOST_CALLS = 100_000
"""More calls than any office has; a larger number is taken for a slip."""

GRAIN = 2.0**30
"""Weights are whole multiples of 1/GRAIN. Sums of up to MOST_CALLS of them (CAP each) are then exact in double
precision, so that counts do not depend on the order of calls and taking calls out undoes adding them to the bit."""


@dataclass(frozen=True, slots=True)
class Confirmed:
    """One call whose animal a specialist has named.

    Attributes:
        taxon: taxon id of the determination.
        reports: character -> the state that the caller reported.
        true: character -> the state that the specialist saw, where it was noted.
        region: region id, or None where it is not known.
        chance: chance that a call of this kind gets confirmed at all (above 0, up to 1). Frightening
            animals are sent in more often than others; each call counts for 1 / `chance`, at most CAP.
    """

    taxon: str
    reports: Mapping[str, str]
    true: Mapping[str, str] = field(default_factory=dict)
    region: str | None = None
    chance: float = 1.0

    @property
    def weight(self) -> float:
        """How many calls it stands for (Horvitz and Thompson's inverse-chance weight, capped)."""
        return min(CAP, 1.0 / self.chance)


@dataclass(frozen=True, slots=True)
class Counts:
    """Weighted counts; without any, the shipped key stands as it is.

    Attributes:
        reports: (character, true state, reported state) -> weight.
        kinds: (region, kind) -> weight.
        calls: number of calls counted (0 to MOST_CALLS).
    """

    reports: Mapping[tuple[str, str, str], float] = field(default_factory=dict)
    kinds: Mapping[tuple[str, str], float] = field(default_factory=dict)
    calls: int = 0


def confusion(character: Character, true: str) -> dict[str, float]:
    """Chance of each report where `true` is there, as the key ships it: right, or mistaken for another state."""
    state = character.state(true)
    right = character.right if state.right is None else state.right
    others = [other for other in character.state_ids if other != true]
    open_ = [other for other in others if not state.mistaken_for.get(other)]
    rest = max(0.0, 1.0 - sum(state.mistaken_for.values()))
    shares = {other: state.mistaken_for.get(other) or rest / len(open_) for other in others}
    total = sum(shares.values()) or 1.0
    return {true: right, **{other: (1.0 - right) * share / total for other, share in shares.items()}}


def counted(keyset: KeySet, calls: Iterable[Confirmed]) -> Counts:
    """Count confirmed calls.

    Where the specialist did not note the state, it is that of the determination; where the taxon may
    show several, the call is shared among them by how likely each is to have led to the report, by
    the shipped figures: often(s) * P(report | s). Raises UserError for an id the key does not have.
    """
    reports: dict[tuple[str, str, str], float] = {}
    kinds: dict[tuple[str, str], float] = {}
    number = 0
    for call in calls:
        number += 1
        taxon = _checked(keyset, call, f"call {number}")
        for name, reported in call.reports.items():
            for true, share in _true_states(keyset.characters[name], taxon, call.true.get(name), reported).items():
                key = (name, true, reported)
                reports[key] = reports.get(key, 0.0) + _grained(share * call.weight)
        if call.region and taxon.form is Form.ANIMAL and not taxon.outside:
            found = (call.region, taxon.kind)
            kinds[found] = kinds.get(found, 0.0) + _grained(call.weight)
    _check_number(number)
    return Counts(_without_nothing(reports), _without_nothing(kinds), number)


def added(one: Counts, other: Counts) -> Counts:
    """Both counts together, exactly, as if all calls had been counted at once."""
    _check_number(one.calls + other.calls)
    return Counts(_sum(one.reports, other.reports, 1), _sum(one.kinds, other.kinds, 1), one.calls + other.calls)


def taken_out(whole: Counts, part: Counts) -> Counts:
    """`whole` without `part`: `taken_out(added(a, b), b) == a`, to the bit.

    Raises UserError where `part` holds what was never counted.
    """
    reports, kinds = _sum(whole.reports, part.reports, -1), _sum(whole.kinds, part.kinds, -1)
    calls = whole.calls - part.calls
    if calls < 0 or min((*reports.values(), *kinds.values()), default=0.0) < 0:
        raise UserError("Calls are to be taken out that were never counted.", fix="Take out only what was put in.")
    return Counts(reports, kinds, calls)


def _sum(one: Mapping[Name, float], other: Mapping[Name, float], sign: int) -> dict[Name, float]:
    names = dict.fromkeys((*one, *other))
    return _without_nothing({name: one.get(name, 0.0) + sign * other.get(name, 0.0) for name in names})


def _without_nothing(weights: Mapping[Name, float]) -> dict[Name, float]:
    return {name: weight for name, weight in weights.items() if weight != 0}


def _grained(weight: float) -> float:
    return round(weight * GRAIN) / GRAIN


def _check_number(calls: int) -> None:
    if calls > MOST_CALLS:
        raise UserError(f"{calls} calls are too many.", fix=f"Count at most {MOST_CALLS}.")


def _true_states(character: Character, taxon: Taxon, noted: str | None, reported: str) -> dict[str, float]:
    if noted is not None:
        return {noted: 1.0}
    shown = taxon.shows.get(character.id, {})
    likely = {state: often * confusion(character, state)[reported] for state, often in shown.items() if often > 0}
    total = sum(likely.values())
    return {state: value / total for state, value in likely.items() if value > 0} if total > 0 else {}


def _checked(keyset: KeySet, call: Confirmed, where: str) -> Taxon:
    if call.taxon not in keyset.taxa:
        fix = f"Use {nearest(call.taxon, keyset.taxa)}."
        raise UserError(f"There is no result “{call.taxon}” in this key.", where=where, fix=fix)
    if call.region is not None and call.region not in keyset.regions:
        fix = f"Use {nearest(call.region, keyset.regions)}, or leave it out."
        raise UserError(f"There is no region “{call.region}” in this key.", where=where, fix=fix)
    if not (math.isfinite(call.chance) and 0 < call.chance <= 1):
        raise UserError(f"A chance of {call.chance} is out of range.", where=where, fix="Give more than 0, up to 1.")
    for name, state in (*call.reports.items(), *call.true.items()):
        character = keyset.characters.get(name)
        if character is None or state not in character.state_ids:
            known = keyset.characters if character is None else character.state_ids
            fix = f"Use {nearest(name if character is None else state, known)}."
            raise UserError(f"There is no state “{state}” of “{name}” in this key.", where=where, fix=fix)
    return keyset.taxa[call.taxon]


def counts_data(counts: Counts) -> dict[str, Any]:
    """The counts as plain data for a JSON file; removing the file removes all that was learned."""
    return {
        "calls": counts.calls,
        "reports": [[*key, weight] for key, weight in sorted(counts.reports.items())],
        "kinds": [[*key, weight] for key, weight in sorted(counts.kinds.items())],
    }


def read_counts(data: Any) -> Counts:
    """Counts from plain data; raises UserError where it is not what `counts_data` gives."""
    try:
        if set(data) != {"calls", "reports", "kinds"}:
            raise ValueError(data)
        calls = data["calls"]
        if not isinstance(calls, int) or isinstance(calls, bool) or not 0 <= calls <= MOST_CALLS:
            raise ValueError(calls)
        reports = {_names(c, true, said): _weight(w, calls) for c, true, said, w in data["reports"]}
        kinds = {_names(region, kind): _weight(w, calls) for region, kind, w in data["kinds"]}
        if len(reports) != len(data["reports"]) or len(kinds) != len(data["kinds"]):
            raise ValueError("the same entry twice")
    except (KeyError, TypeError, ValueError) as error:
        raise UserError("This is not a file of counts.", fix="Make it anew from the confirmed calls.") from error
    return Counts(reports, kinds, calls)  # type: ignore[arg-type]


def _names(*names: Any) -> tuple[str, ...]:
    if not all(isinstance(name, str) for name in names):
        raise ValueError(names)
    return names


def _weight(value: Any, calls: int) -> float:
    """A weight that so many calls can have: above 0, at most CAP each."""
    if not isinstance(value, int | float) or isinstance(value, bool) or not 0 < value <= CAP * calls:
        raise ValueError(value)
    if _grained(value) != value:
        raise ValueError(value)
    return float(value)


def check_counts(keyset: KeySet, counts: Counts) -> None:
    """Raise UserError where the counts speak of what this key does not have."""
    for name, true, said in counts.reports:
        character = keyset.characters.get(name)
        for state in (true, said):
            if character is None or state not in character.state_ids:
                raise UserError(f"There is no state “{state}” of “{name}” in this key.", fix="Count the calls again.")
    kinds = {taxon.kind for taxon in keyset.taxa.values()}
    for region, kind in counts.kinds:
        if region not in keyset.regions or kind not in kinds:
            raise UserError(f"There is no “{kind}” in “{region}” in this key.", fix="Count the calls again.")
