"""The single observation that would best settle whether a danger is there."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from keyapp.engine.safety import NotRuledOut
from keyapp.engine.standing import Standing
from keyapp.engine.sums import layout_of, sums_of
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
    layout, sums = layout_of(tables), sums_of(tables, stand)
    rows = {r for t in danger.taxa for r in tables.rows_of[t] if tables.rows[r].danger == danger.group}
    mine = np.array([row in rows for row in tables.gated], dtype=bool)
    posterior = stand.posterior
    # Added up from what is left, not taken off the whole: that is exact where little is left too.
    gated = np.array(tables.gated, dtype=np.int64)
    others = np.where(mine, 0.0, posterior[gated])
    alone = np.ones(len(posterior), dtype=bool)
    alone[gated] = False
    weight = float(posterior[alone].sum() + others.sum())
    if weight <= 0:
        return None
    states = len(layout.owner)
    shows = (sums.free[:states] + np.einsum("g,gc->c", others, layout.gated[:, :states])) / weight
    shown = layout.listed[mine].any(axis=0)
    clears = ~shown & ~layout.absent
    speaks = np.bincount(layout.owner, weights=shows * clears, minlength=len(tables.characters))
    open_to = (sums.beside <= 0.5) & layout.tells[mine].any(axis=0)
    best: tuple[float, float, str] | None = None
    chance = 0.0
    for place, (character_id, table) in enumerate(tables.characters.items()):
        character = table.character
        if not open_to[place] or character.never_clears:
            continue
        if character_id in passed_over or character.group in used_groups:
            continue
        found = float(speaks[place]) * character.tell * character.right
        # Rounded, so that a tie is one however the sums were taken.
        score = (-round(found, 12), character.seconds, character_id)
        if found > 0 and (best is None or score < best):
            best, chance = score, found
    if best is None:
        return None
    table = tables.characters[best[2]]
    place = list(tables.characters).index(best[2])
    own = slice(layout.first[place], layout.first[place] + len(table.right))
    telling = gated[mine & layout.tells[:, place]]
    order = np.argsort(-table.chance[telling].mean(axis=0), kind="stable")
    ids = table.character.state_ids
    return Settling(
        best[2],
        chance,
        tuple(s for s, clear in zip(ids, clears[own], strict=True) if clear),
        tuple(ids[k] for k in order if shown[own][k]),
    )
