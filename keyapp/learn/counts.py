"""Confirmed calls as counts: what was reported against what was there, and which kinds were found where."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from keyapp.errors import UserError
from keyapp.model import Character, Form, KeySet, Taxon

__all__ = ["CAP", "Confirmed", "Counts", "confusion", "counted", "counts_data", "read_calls", "read_counts"]

CAP = 20.0
"""Most that one call may count for, however seldom such calls are confirmed (from memory: keeps one call from
outweighing the shipped figures)."""


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
        calls: number of calls counted.
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
        taxon = _checked(keyset, call)
        number += 1
        for name, reported in call.reports.items():
            for true, share in _true_states(keyset.characters[name], taxon, call.true.get(name), reported).items():
                key = (name, true, reported)
                reports[key] = reports.get(key, 0.0) + share * call.weight
        if call.region and taxon.form is Form.ANIMAL and not taxon.outside:
            found = (call.region, taxon.kind)
            kinds[found] = kinds.get(found, 0.0) + call.weight
    return Counts(reports, kinds, number)


def _true_states(character: Character, taxon: Taxon, noted: str | None, reported: str) -> dict[str, float]:
    if noted is not None:
        return {noted: 1.0}
    shown = taxon.shows.get(character.id, {})
    likely = {state: often * confusion(character, state)[reported] for state, often in shown.items() if often > 0}
    total = sum(likely.values())
    return {state: value / total for state, value in likely.items() if value > 0} if total > 0 else {}


def _checked(keyset: KeySet, call: Confirmed) -> Taxon:
    if call.taxon not in keyset.taxa:
        raise UserError(f"There is no result “{call.taxon}” in this key.", fix="Give the id of a result.")
    if call.region is not None and call.region not in keyset.regions:
        raise UserError(f"There is no region “{call.region}” in this key.", fix="Give a region id, or leave it out.")
    if not (math.isfinite(call.chance) and 0 < call.chance <= 1):
        raise UserError(f"A chance of {call.chance} is out of range.", fix="Give more than 0, up to 1.")
    for name, state in (*call.reports.items(), *call.true.items()):
        character = keyset.characters.get(name)
        if character is None or state not in character.state_ids:
            raise UserError(f"There is no state “{state}” of “{name}” in this key.", fix="Give ids of the key.")
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
        reports = {(str(c), str(true), str(said)): _weight(w) for c, true, said, w in data["reports"]}
        kinds = {(str(region), str(kind)): _weight(w) for region, kind, w in data["kinds"]}
        return Counts(reports, kinds, int(data["calls"]))
    except (KeyError, TypeError, ValueError) as error:
        raise UserError("This is not a file of counts.", fix="Make it anew from the confirmed calls.") from error


def _weight(value: Any) -> float:
    weight = float(value)
    if not (math.isfinite(weight) and weight >= 0):
        raise ValueError(value)
    return weight


def read_calls(text: str, where: str = "") -> tuple[Confirmed, ...]:
    """Confirmed calls from JSON: a list of {taxon, reports, true, region, chance}, the last three optional."""
    try:
        items = json.loads(text)
    except ValueError as error:
        raise UserError("This is not JSON.", where=where, fix="Give a list of confirmed calls.") from error
    if not isinstance(items, list):
        raise UserError("There is no list of calls.", where=where, fix="Put the calls in square brackets.")
    calls = []
    for number, item in enumerate(items, start=1):
        here = f"{where}: call {number}" if where else f"call {number}"
        known = {"taxon", "reports", "true", "region", "chance"}
        if not isinstance(item, dict) or not {"taxon", "reports"} <= set(item) <= known:
            raise UserError("A call needs taxon and reports.", where=here, fix=f"Use {', '.join(sorted(known))}.")
        tables = (item["reports"], item.get("true", {}))
        words = all(isinstance(t, dict) and all(isinstance(s, str) for s in t.values()) for t in tables)
        chance, region = item.get("chance", 1.0), item.get("region")
        number_given = isinstance(chance, int | float) and not isinstance(chance, bool)
        if not (words and number_given and isinstance(item["taxon"], str) and isinstance(region, str | None)):
            raise UserError("A field is of the wrong kind.", where=here, fix="Give texts, and a number for chance.")
        calls.append(Confirmed(item["taxon"], item["reports"], item.get("true", {}), region, float(chance)))
    return tuple(calls)
