"""What learning changes, and who allowed what weakens a caution."""

from __future__ import annotations

import datetime
import hashlib
import json
from dataclasses import asdict, dataclass

from keyapp.model import KeySet

__all__ = ["Approval", "Change", "Proven", "fingerprint"]


@dataclass(frozen=True, slots=True)
class Approval:
    """Who allows figures to be weakened, and on which day."""

    name: str
    date: datetime.date


@dataclass(frozen=True, slots=True)
class Proven:
    """Outcome of the one-error proof of a key, and of which key.

    Attributes:
        fingerprint: of the key that was proven.
        holds: whether the proof holds.
        runs: how many runs through the engine it was held with, beside the counting of all runs.
    """

    fingerprint: str
    holds: bool
    runs: int = 0


@dataclass(frozen=True, slots=True)
class Change:
    """One figure that the counts would change.

    Attributes:
        figure: `right`, `mistaken-for` or `occurrence`.
        item: what it is a figure of, in ids.
        old: the shipped value.
        new: the learned value.
        now: the value in force: `new`, or `old` where it is held back.
        weakens: it makes a report weigh more, or a danger rarer; never in force without approval.
        why: counts it rests on.
        held: why it is held back; empty where it is in force.
    """

    figure: str
    item: str
    old: float
    new: float
    now: float
    weakens: bool
    why: str
    held: str = ""


def fingerprint(keyset: KeySet) -> str:
    """A short text that differs wherever two keys differ in a figure, a lead, a range or what applies to what."""
    characters = [
        [
            [c.id, c.right, c.tell, c.group, bool(c.never_clears), str(c.view)],
            [list(part) for part in (c.applies_to.forms, c.applies_to.groups, c.applies_to.not_groups)],
            None if c.number is None else asdict(c.number),
            [[s.id, s.right, s.absence, dict(s.mistaken_for)] for s in c.states],
        ]
        for c in keyset.characters.values()
    ]
    taxa = [
        [
            [t.id, t.kind, t.share, str(t.danger), t.danger_group, list(t.months), list(t.made_by)],
            [str(t.form), t.class_, t.order, t.family, t.outside],
            {c: dict(states) for c, states in t.shows.items()},
            {c: [size.least, size.most] for c, size in t.sizes.items()},
            [dict(t.occurrence), dict(t.places)],
        ]
        for t in keyset.taxa.values()
    ]
    leads = [
        [c.id, [[{name: sorted(states) for name, states in lead.holds.items()}, lead.to.id] for lead in c.leads]]
        for c in keyset.couplets.values()
    ]
    regions = [[r.id, r.part_of, list(r.states), r.month_shift] for r in keyset.regions.values()]
    whole = json.dumps([characters, taxa, leads, regions, repr(keyset.weights)], sort_keys=True)
    return hashlib.sha256(whole.encode()).hexdigest()[:24]
