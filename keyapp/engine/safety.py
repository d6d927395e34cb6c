"""What is not ruled out: the gate that every result passes before anyone sees it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.ledger import Event
from keyapp.engine.standing import Standing
from keyapp.engine.tables import Bools, Floats, Tables

__all__ = [
    "Counted",
    "NotRuledOut",
    "clearing_counts",
    "counted",
    "counts_of",
    "not_ruled_out",
    "openness",
    "openness_of",
]


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
    that never clears, and the description never shows what was reported. An answer about something
    the result cannot have never counts, for a sign as for an animal: whoever takes a web for a
    spider goes on to speak of a body that is not there, and all of that is one mistake.
    Answers that share an independence group count once.
    """
    return counts_of([counted(event) for event in found if event.may_clear], (len(tables.rows),))


@dataclass(frozen=True, slots=True)
class Counted:
    """An answer that may help to rule out, and which rows it would count for if it were alone.

    `rows` has an entry a row, or is rows x some reports tried beside each other.
    """

    groups: frozenset[str]
    characters: tuple[str, ...]
    rows: Bools

    def columns(self) -> Counted:
        """The same for reports tried beside each other."""
        return Counted(self.groups, self.characters, self.rows[:, None])


def counted(event: Event, rows: NDArray[np.int64] | None = None) -> Counted:
    """What an answer that may clear counts for, of all rows or of `rows`."""
    found = event.against & ~event.inapplicable
    return Counted(event.groups, event.characters, found if rows is None else found[rows])


def counts_of(answers: Sequence[Counted], shape: tuple[int, ...]) -> NDArray[np.int64]:
    """How many of `answers` count for each row, at most one an independence group (see `clearing_counts`)."""
    counts = np.zeros(shape, dtype=np.int64)
    taken: dict[str, Bools] = {}
    # Narrow answers first, so that the count does not depend on their order.
    for answer in sorted(answers, key=lambda one: (len(one.groups), one.characters)):
        counts_for = answer.rows
        for group in answer.groups:
            if group in taken:
                counts_for = counts_for & ~taken[group]
        for group in answer.groups:
            taken[group] = taken[group] | counts_for if group in taken else counts_for
        counts += counts_for
    return counts


def not_ruled_out(tables: Tables, stand: Standing, found: Sequence[Event]) -> tuple[NotRuledOut, ...]:
    """The gated groups still possible, likeliest first.

    A gated result is ruled out only when its likelihood ratio to the best hypothesis and its
    posterior are both below their thresholds, and enough sure answers from different independence
    groups contradict it. Its group is named until all its results are ruled out and their summed
    posterior is below the threshold too, so that describing more stages never helps to clear it.
    """
    weights = tables.weights
    ratios = np.exp(stand.fit - stand.fit.max())
    counts = clearing_counts(tables, found)
    named = []
    for group, rows in tables.danger_rows.items():
        mass: dict[str, float] = {}
        for row in rows:
            mass[tables.rows[row].taxon] = mass.get(tables.rows[row].taxon, 0.0) + float(stand.posterior[row])
        left = [
            row
            for row in rows
            if mass[tables.rows[row].taxon] >= weights.ruled_out_posterior
            or ratios[row] >= weights.ruled_out_ratio
            or counts[row] < weights.ruled_out_answers
        ]
        if not left and sum(mass.values()) >= weights.ruled_out_posterior:
            left = [max(rows, key=lambda row: float(stand.posterior[row]))]
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
    gated = np.array(tables.gated, dtype=np.int64)
    counts = counts_of([counted(event, gated) for event in found if event.may_clear], gated.shape)
    return float(openness_of(tables, stand.posterior[gated], np.exp(stand.fit[gated] - stand.fit.max()), counts))


def openness_of(tables: Tables, posterior: Floats, ratios: Floats, counts: NDArray[np.int64]) -> Floats:
    """`openness` from posterior, likelihood ratio and clearing counts of `tables.gated`.

    Each has an entry a gated row, or is rows x some reports tried beside each other; so is the result.
    """
    weights = tables.weights
    place = {row: i for i, row in enumerate(tables.gated)}
    total = np.zeros(np.shape(posterior)[1:])
    for rows in tables.danger_rows.values():
        own = [place[row] for row in rows]
        missing = 1.0 - np.minimum(1.0, counts[own].min(axis=0) / weights.ruled_out_answers)
        above = _above(posterior[own].sum(axis=0), weights.ruled_out_posterior)
        reach = _above(ratios[own].max(axis=0), weights.ruled_out_ratio)
        total = total + 0.5 * missing + 0.5 * np.minimum(1.0, np.maximum(0.0, np.maximum(above, reach)))
    return np.asarray(total)


def _above(value: Floats, threshold: float) -> Floats:
    """How far above its threshold, on the log scale: 0 at the threshold, 1 at 1."""
    return np.asarray(np.log(np.maximum(value, 1e-12) / threshold) / -math.log(threshold))
