"""Sums of the standing: how much of each group shows each state, for all characters in one go."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.standing import Standing
from keyapp.engine.tables import Bools, Floats, Tables

__all__ = ["Layout", "Sums", "layout_of", "sums_of"]

Ints = NDArray[np.int64]
_NONE = np.zeros(0, dtype=np.int64)
_AT_ONCE = 60_000
"""Cells of a block at most. Larger products are shared between processor cores, and to wait for a core that is
busy with something else takes longer than that saves."""


@dataclass(frozen=True, slots=True)
class Kind:
    """Characters with the same number of states, side by side.

    Attributes:
        states: how many states.
        members: places of the characters in `tables.characters`.
        columns: their columns, `states` for each.
    """

    states: int
    members: Ints
    columns: slice


@dataclass(frozen=True, slots=True)
class _Block:
    """The part of a segment in which its rows differ.

    Attributes:
        rows: its sorted rows.
        chance: rows x the columns in which they differ.
        part: where the sums of these columns stand among those of all blocks.
    """

    rows: slice
    chance: Floats
    part: slice


@dataclass(frozen=True, slots=True)
class Layout:
    """Where everything stands; made once for a key.

    Rows are sorted by group, and within it by danger group; a run with the same of both is a segment.
    Columns are the states of all characters, sorted by `Kind`, then one for each rule of what applies,
    which holds the rows that it leaves out. Most of a family agree on most characters, if only because
    none of them is described: there a segment holds one row for all (`alike`), and `blocks` the rest.

    Attributes:
        order: rows in sorted order.
        starts: first sorted row of each segment.
        group_starts: first segment of each group.
        free: segments that hold nothing gated.
        kinds: the characters by number of states.
        owner: for each column of a state, the place of its character.
        first: for each character, its first column.
        rule: for each character, the column of the rows it does not apply to.
        absent: for each column of a state, whether it says that something is not there.
        alike: columns x segments, chance of each state where the character applies, else 0, for
            segments in which all rows have the same.
        blocks: the same row by row for the others.
        target, source: where sums of blocks go among all sums, in order, and where they come from.
        gated: gated rows x columns, the same for each of `tables.gated`.
        listed: gated rows x columns of states, whether an applicable description lists the state.
        tells: gated rows x characters, whether the description says anything of it and it applies.
    """

    order: Ints
    starts: Ints
    group_starts: Ints
    free: Bools
    kinds: tuple[Kind, ...]
    owner: Ints
    first: Ints
    rule: Ints
    absent: Bools
    alike: Floats
    blocks: tuple[_Block, ...]
    target: Ints
    source: Ints
    gated: Floats
    listed: Bools
    tells: Bools


@dataclass(frozen=True, slots=True)
class Sums:
    """Sums for one standing.

    Attributes:
        by_segment: columns x observer levels x segments.
        free: columns, over all that is not gated.
        beside: for each character, how much of the standing it does not apply to (0-1).
    """

    by_segment: Floats
    free: Floats
    beside: Floats


def sums_of(tables: Tables, stand: Standing) -> Sums:
    """The sums for `stand`; those of the last one asked for are kept."""
    kept = tables.memo.get("sums")
    if isinstance(kept, tuple) and kept[0] is stand:
        return kept[1]  # type: ignore[no-any-return]
    layout = layout_of(tables)
    joint = stand.joint[:, layout.order]
    mass = np.add.reduceat(joint, layout.starts, axis=1)
    sums = layout.alike[:, None, :] * mass
    differing = np.empty((len(joint), sum(block.chance.shape[1] for block in layout.blocks)))
    for block in layout.blocks:
        differing[:, block.part] = joint[:, block.rows] @ block.chance
    sums.reshape(-1)[layout.target] = differing.reshape(-1)[layout.source]
    free = np.einsum("cos,s->c", sums, layout.free.astype(float))
    found = Sums(sums, free, sums[layout.rule].sum(axis=(1, 2)))
    tables.memo["sums"] = (stand, found)
    return found


def layout_of(tables: Tables) -> Layout:
    """The layout of a key; made when it is first asked for."""
    if "layout" not in tables.memo:
        tables.memo["layout"] = _layout(tables)
    return tables.memo["layout"]  # type: ignore[return-value]


def _layout(tables: Tables) -> Layout:
    every = list(tables.characters.values())
    dangers = {danger: i for i, danger in enumerate(sorted({row.danger for row in tables.rows}))}
    danger_of = np.array([dangers[row.danger] for row in tables.rows])
    order = np.lexsort((danger_of, tables.group_of))
    group, danger = tables.group_of[order], danger_of[order]
    new = np.concatenate([[True], (group[1:] != group[:-1]) | (danger[1:] != danger[:-1])])
    starts = np.flatnonzero(new)
    counts = np.array([len(table.right) for table in every], dtype=np.int64)
    members = np.argsort(counts, kind="stable")
    owner = np.repeat(members, counts[members])
    first = np.zeros(len(every), dtype=np.int64)
    first[members] = np.cumsum(counts[members]) - counts[members]
    rules: dict[bytes, tuple[int, Bools]] = {}
    rule = np.array(
        [len(owner) + rules.setdefault(t.applies.tobytes(), (len(rules), t.applies))[0] for t in every], dtype=np.int64
    )
    chance = np.empty((len(order), len(owner) + len(rules)))
    for place, table in enumerate(every):
        columns = slice(first[place], first[place] + counts[place])
        np.multiply(table.chance[order], table.applies[order, None], out=chance[:, columns])
    for column, mask in rules.values():
        chance[:, len(owner) + column] = ~mask[order]
    blocks: list[_Block] = []
    cells: list[Ints] = []
    begin = 0
    for segment, (start, end) in enumerate(zip(starts, [*starts[1:], len(order)], strict=True)):
        rows = slice(int(start), int(end))
        differ = np.flatnonzero((chance[rows] != chance[start]).any(axis=0))
        for few in np.array_split(differ, math.ceil(len(differ) * (end - start) / _AT_ONCE)) if len(differ) else ():
            part = slice(begin, begin + len(few))
            blocks.append(_Block(rows, np.ascontiguousarray(chance[rows, few]), part))
            cells.append(few * len(starts) + segment)
            begin = part.stop
    target, source = _scattered(np.concatenate([*cells, _NONE]), len(tables.weights.observers), len(starts))
    place_of = np.empty(len(order), dtype=np.int64)
    place_of[order] = np.arange(len(order))
    gated = np.array(tables.gated, dtype=np.int64)
    tells = np.array([t.applies[gated] & t.described[gated] for t in every]).reshape(len(every), len(gated)).T
    listed = np.hstack([every[m].listed[gated] for m in members]) if every else np.zeros((len(gated), 0), dtype=bool)
    absent = [state.absence for m in members.tolist() for state in every[m].character.states]
    return Layout(
        order=order,
        starts=starts,
        group_starts=np.searchsorted(group[starts], np.arange(len(tables.groups))),
        free=np.array([not tables.rows[order[start]].danger for start in starts]),
        kinds=_kinds(counts, members, first),
        owner=owner,
        first=first,
        rule=rule,
        absent=np.array(absent, dtype=bool),
        alike=np.ascontiguousarray(chance[starts].T),
        blocks=tuple(blocks),
        target=target,
        source=source,
        gated=chance[place_of[gated]],
        listed=listed & tells[:, owner],
        tells=tells,
    )


def _scattered(cells: Ints, levels: int, segments: int) -> tuple[Ints, Ints]:
    """Places of the sums of all blocks (levels x cells) among all sums (columns x levels x segments), in order."""
    column, segment = np.divmod(cells, segments)
    level = np.arange(levels)[:, None]
    target = ((column * levels + level) * segments + segment).reshape(-1)
    source = np.argsort(target)
    return target[source], source


def _kinds(counts: Ints, members: Ints, first: Ints) -> tuple[Kind, ...]:
    found = []
    for count in np.unique(counts):
        own = members[counts[members] == count]
        start = int(first[own[0]])
        found.append(Kind(int(count), own, slice(start, start + int(count) * len(own))))
    return tuple(found)
