"""What the descriptions of a key say, as arrays: an entry a character of a taxon."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from keyapp.model import Character, PackedShows, ShownColumns, Taxon

__all__ = ["Described", "described"]

Ints = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Described:
    """What is described, sorted by character and then by taxon.

    Attributes:
        character: N, place of the character among those given.
        taxon: N, place of the taxon.
        chance: N x most states, chance of each state, rows sum to 1; 0 beyond the states of the character.
        listed: N x most states, whether the description lists the state.
    """

    character: Ints
    taxon: Ints
    chance: NDArray[np.float64]
    listed: NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class _Cells:
    """Entries as they were read: `length` cells each, a state and how often."""

    character: Ints
    taxon: Ints
    length: Ints
    state: Ints
    often: NDArray[np.float64]


def described(held: Sequence[Character], taxa: Sequence[Taxon], unlisted: float) -> Described:
    """Read what `taxa` show of the characters `held`, which all have states.

    What a description leaves open falls on the states it does not name, or on all where it names them
    all; then `unlisted` of it (0-1) is spread over all states. Raises KeyError for a state that a
    character does not have.
    """
    cells = _cells(held, taxa)
    counts = np.array([len(c.states) for c in held], dtype=np.int64)
    most = int(counts.max(initial=1))
    mine = counts[cells.character][:, None]
    chance = np.zeros((len(cells.character), most))
    chance[np.repeat(np.arange(len(cells.length)), cells.length), cells.state] = cells.often
    listed = chance > 0
    real = np.arange(most) < mine
    rest = np.maximum(0.0, 1.0 - chance.sum(axis=1))
    some = np.flatnonzero(rest > 1e-12)
    unnamed = real[some] & ~listed[some]
    takers = np.where(unnamed.any(axis=1, keepdims=True), unnamed, real[some])
    chance[some] += takers * (rest[some] / takers.sum(axis=1))[:, None]
    chance /= chance.sum(axis=1, keepdims=True)
    chance *= 1 - unlisted
    chance += real * (unlisted / mine)
    order = np.argsort(cells.taxon, kind="stable")
    # Short numbers are sorted faster.
    short = np.uint16 if len(held) < 2**16 else np.int64
    order = order[np.argsort(cells.character[order].astype(short), kind="stable")]
    return Described(cells.character[order], cells.taxon[order], chance[order], listed[order])


def _cells(held: Sequence[Character], taxa: Sequence[Taxon]) -> _Cells:
    packs: dict[int, tuple[ShownColumns, list[int]]] = {}
    plain = []
    for index, taxon in enumerate(taxa):
        if isinstance(taxon.shows, PackedShows):
            packs.setdefault(id(taxon.shows.columns), (taxon.shows.columns, []))[1].append(index)
        else:
            plain.append(index)
    parts = [_loose(held, taxa, plain), *(_packed(held, taxa, columns, own) for columns, own in packs.values())]
    return _Cells(
        np.concatenate([part.character for part in parts]),
        np.concatenate([part.taxon for part in parts]),
        np.concatenate([part.length for part in parts]),
        np.concatenate([part.state for part in parts]),
        np.concatenate([part.often for part in parts]),
    )


def _loose(held: Sequence[Character], taxa: Sequence[Taxon], chosen: Iterable[int]) -> _Cells:
    """Entries of taxa that hold them as mappings."""
    places = {c.id: (i, {s: k for k, s in enumerate(c.state_ids)}) for i, c in enumerate(held)}
    character: list[int] = []
    owner: list[int] = []
    length: list[int] = []
    state: list[int] = []
    often: list[float] = []
    for index in chosen:
        for name, shown in taxa[index].shows.items():
            if shown and name in places:
                number, own = places[name]
                character.append(number)
                owner.append(index)
                length.append(len(shown))
                for one, value in shown.items():
                    state.append(own[one])
                    often.append(value)
    return _Cells(_ints(character), _ints(owner), _ints(length), _ints(state), np.array(often, dtype=np.float64))


def _packed(held: Sequence[Character], taxa: Sequence[Taxon], columns: ShownColumns, chosen: Sequence[int]) -> _Cells:
    """Entries of taxa that share `columns`."""
    entries = _ints([taxa[i].shows.entries for i in chosen])  # type: ignore[attr-defined]
    runs = _ints([taxa[i].shows.cells for i in chosen])  # type: ignore[attr-defined]
    entry, cell = _ranges(entries), _ranges(runs)
    owner = np.repeat(_ints(chosen), entries[:, 1] - entries[:, 0])
    character = np.frombuffer(columns.character, np.uint32).astype(np.int64)[entry]
    length = np.frombuffer(columns.length, np.uint16).astype(np.int64)[entry]
    state = np.frombuffer(columns.state, np.uint16).astype(np.int64)[cell]
    often = np.frombuffer(columns.often, np.float64)[cell]
    # The columns have their own order of characters and states; what is not held here is left out.
    used = np.zeros(len(columns.names), dtype=bool)
    used[character[length > 0]] = True
    number = {c.id: i for i, c in enumerate(held)}
    place = np.full(len(columns.names), -1)
    most = max((len(own) for own in columns.states), default=0)
    column = np.zeros((len(columns.names), max(1, most)), dtype=np.int64)
    for i in np.flatnonzero(used):
        name = columns.names[i]
        if name in number:
            place[i] = number[name]
            own = {s: k for k, s in enumerate(held[number[name]].state_ids)}
            column[i, : len(columns.states[i])] = [own[s] for s in columns.states[i]]
    of_cell = np.repeat(character, length)
    kept = (place[character] >= 0) & (length > 0)
    state = column[of_cell, state]
    keep_cell = np.repeat(kept, length)
    return _Cells(place[character][kept], owner[kept], length[kept], state[keep_cell], often[keep_cell])


def _ranges(bounds: Ints) -> Ints:
    """The numbers of all ranges (first, one past the last), one after the other."""
    sizes = bounds[:, 1] - bounds[:, 0]
    starts = np.concatenate([[0], np.cumsum(sizes)[:-1]])
    return np.asarray(np.arange(int(sizes.sum())) + np.repeat(bounds[:, 0] - starts, sizes))


def _ints(values: object) -> Ints:
    return np.array(values, dtype=np.int64)
