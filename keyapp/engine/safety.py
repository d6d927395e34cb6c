"""What is not ruled out: the gate that every result passes before anyone sees it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from keyapp.engine.ledger import Event
from keyapp.engine.standing import Standing
from keyapp.engine.tables import Tables

__all__ = ["NotRuledOut", "clearing_groups", "not_ruled_out"]


@dataclass(frozen=True, slots=True)
class NotRuledOut:
    """A medically important group that the answers do not exclude yet.

    Attributes:
        group: danger group id.
        taxa: its results that are still possible, likeliest first.
        chance: their summed posterior (0-1).
        contradicted_by: fewest independence groups of sure answers that speak against one of them.
    """

    group: str
    taxa: tuple[str, ...]
    chance: float
    contradicted_by: int


def clearing_groups(tables: Tables, found: Sequence[Event], row: int) -> tuple[Event, ...]:
    """The answers that may help to rule out the result in `row`, at most one an independence group.

    An answer counts when it is sure, says that something is there, no character of it is one
    that never clears, and the description never shows what was reported. For a sign, an answer
    about something a sign cannot have counts as well: it was an animal that was looked at.
    Answers that share an independence group count once.
    """
    counted: list[Event] = []
    # Narrow events first, so that the count does not depend on the order of answers.
    for event in sorted(found, key=lambda e: (len(e.groups), e.characters)):
        against = event.against[row] or (tables.rows[row].sign and event.inapplicable[row])
        if event.may_clear and against and not any(event.groups & other.groups for other in counted):
            counted.append(event)
    return tuple(counted)


def not_ruled_out(tables: Tables, stand: Standing, found: Sequence[Event]) -> tuple[NotRuledOut, ...]:
    """The gated groups still possible, likeliest first.

    A gated result is ruled out only when the likelihood ratio of its group to the best
    hypothesis and the group's posterior are both below their thresholds, and enough sure
    answers from different independence groups contradict it.
    """
    weights = tables.weights
    best = float(stand.fit.max())
    groups: dict[str, list[int]] = {}
    for row in tables.gated:
        groups.setdefault(tables.rows[row].danger, []).append(row)
    named = []
    for group, rows in groups.items():
        mass = float(sum(stand.posterior[row] for row in rows))
        left, fewest = [], math.inf
        for row in rows:
            ratio = float(np.exp(stand.fit[row] - best))
            contradicted = len(clearing_groups(tables, found, row))
            cleared = (
                ratio < weights.ruled_out_ratio
                and mass < weights.ruled_out_posterior
                and contradicted >= weights.ruled_out_answers
            )
            if not cleared:
                left.append(row)
                fewest = min(fewest, contradicted)
        if left:
            left.sort(key=lambda row: (-stand.posterior[row], tables.rows[row].taxon))
            chance = float(sum(stand.posterior[row] for row in left))
            taxa = tuple(dict.fromkeys(tables.rows[row].taxon for row in left))
            named.append(NotRuledOut(group, taxa, chance, int(fewest)))
    return tuple(sorted(named, key=lambda one: (-one.chance, one.group)))
