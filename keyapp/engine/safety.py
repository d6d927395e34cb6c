"""What is not ruled out: the gate that every result passes before anyone sees it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.ledger import Event
from keyapp.engine.standing import Standing
from keyapp.engine.tables import Bools, Tables

__all__ = ["NotRuledOut", "clearing_counts", "not_ruled_out", "openness"]


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


def clearing_counts(tables: Tables, found: Sequence[Event]) -> NDArray[np.int64]:
    """For every row, how many answers may help to rule it out, at most one an independence group.

    An answer counts when it is sure, says that something is there, no character of it is one
    that never clears, and the description never shows what was reported. For a sign, an answer
    about something a sign cannot have counts as well: it was an animal that was looked at.
    Answers that share an independence group count once.
    """
    counts = np.zeros(len(tables.rows), dtype=np.int64)
    signs = np.array([row.sign for row in tables.rows])
    taken: dict[str, Bools] = {}
    # Narrow events first, so that the count does not depend on the order of answers.
    for event in sorted((e for e in found if e.may_clear), key=lambda e: (len(e.groups), e.characters)):
        counted = event.against | (signs & event.inapplicable)
        for group in event.groups:
            counted = counted & ~taken.get(group, np.zeros_like(counted))
        for group in event.groups:
            taken[group] = taken.get(group, np.zeros_like(counted)) | counted
        counts += counted
    return counts


def not_ruled_out(tables: Tables, stand: Standing, found: Sequence[Event]) -> tuple[NotRuledOut, ...]:
    """The gated groups still possible, likeliest first.

    A gated result is ruled out only when the likelihood ratio of its group to the best
    hypothesis and the group's posterior are both below their thresholds, and enough sure
    answers from different independence groups contradict it.
    """
    weights = tables.weights
    ratios = np.exp(stand.fit - stand.fit.max())
    counts = clearing_counts(tables, found)
    named = []
    for group, rows in _gated_groups(tables).items():
        mass = float(stand.posterior[rows].sum())
        low = mass < weights.ruled_out_posterior
        left = [
            row
            for row in rows
            if not (low and ratios[row] < weights.ruled_out_ratio and counts[row] >= weights.ruled_out_answers)
        ]
        if left:
            left.sort(key=lambda row: (-stand.posterior[row], tables.rows[row].taxon))
            chance = float(stand.posterior[left].sum())
            taxa = tuple(dict.fromkeys(tables.rows[row].taxon for row in left))
            named.append(NotRuledOut(group, taxa, chance, int(counts[left].min())))
    return tuple(sorted(named, key=lambda one: (-one.chance, one.group)))


def openness(tables: Tables, stand: Standing, found: Sequence[Event]) -> float:
    """How far the gated groups are from being ruled out: 0 when all are, up to 1 for each.

    Half of it is the share of contradicting answers still missing, half the log of how far the
    group's posterior is above its threshold. It falls with every step towards ruling out, which
    the count of named groups does not.
    """
    weights = tables.weights
    counts = clearing_counts(tables, found)
    ratios = np.exp(stand.fit - stand.fit.max())
    total = 0.0
    for rows in _gated_groups(tables).values():
        mass = float(stand.posterior[rows].sum())
        missing = 1.0 - min(1.0, float(counts[rows].min()) / weights.ruled_out_answers)
        above = math.log(max(mass, 1e-12) / weights.ruled_out_posterior) / -math.log(weights.ruled_out_posterior)
        reach = math.log(max(float(ratios[rows].max()), 1e-12) / weights.ruled_out_ratio) / -math.log(
            weights.ruled_out_ratio
        )
        total += 0.5 * missing + 0.5 * min(1.0, max(0.0, above, reach))
    return total


def _gated_groups(tables: Tables) -> dict[str, list[int]]:
    """Rows by danger group."""
    groups: dict[str, list[int]] = {}
    for row in tables.gated:
        groups.setdefault(tables.rows[row].danger, []).append(row)
    return groups
