"""The single observation that would best settle whether a danger is there."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from keyapp.engine.safety import NotRuledOut
from keyapp.engine.standing import Standing
from keyapp.engine.tables import Tables

__all__ = ["Settling", "settling"]


@dataclass(frozen=True, slots=True)
class Settling:
    """What to look at next for a danger.

    Attributes:
        character: what to look at.
        chance: chance that looking speaks against the danger, were it not there (0-1).
        clears: states none of its results show.
        points: states they show, likeliest first.
    """

    character: str
    chance: float
    clears: tuple[str, ...]
    points: tuple[str, ...]


def settling(
    tables: Tables, stand: Standing, danger: NotRuledOut, passed_over: Collection[str], used_groups: Collection[str]
) -> Settling | None:
    """Find the character whose report would most likely speak against `danger`.

    For each character that may clear, is not in `passed_over` and whose independence group is
    not in `used_groups`: the chance, over what else it may be, that a sure observer can tell,
    reads it right and reports a state that no remaining result of the danger shows. Ties go to
    the quicker one. Returns None when nothing is left to look at.
    """
    rows = [r for t in danger.taxa for r in tables.rows_of[t] if tables.rows[r].danger == danger.group]
    gated = set(rows)
    others = np.array([i not in gated for i in range(len(tables.rows))])
    weight = stand.posterior * others
    if weight.sum() <= 0:
        return None
    weight = weight / weight.sum()
    best: tuple[float, float, str] | None = None
    found: Settling | None = None
    for character_id, table in tables.characters.items():
        character = table.character
        if character.never_clears or character_id in passed_over or character.group in used_groups:
            continue
        if float(stand.posterior @ table.applies) < 0.5:
            continue
        telling = [row for row in rows if table.applies[row] and table.described[row]]
        if not telling:
            continue
        shown = np.asarray(table.listed[telling].any(axis=0))
        absent = np.array([state.absence for state in character.states])
        clears = ~shown & ~absent
        if not clears.any():
            continue
        chance = float(weight @ (table.chance[:, clears].sum(axis=1) * table.applies))
        chance *= character.tell * character.right
        score = (-chance, character.seconds, character_id)
        if chance > 0 and (best is None or score < best):
            best = score
            order = np.argsort(-table.chance[telling].mean(axis=0), kind="stable")
            found = Settling(
                character_id,
                chance,
                tuple(s for s, clear in zip(character.state_ids, clears, strict=True) if clear),
                tuple(character.state_ids[k] for k in order if shown[k]),
            )
    return found
