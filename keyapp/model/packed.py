"""What results show, packed into a few columns of numbers, so that a large key is read and opened fast."""

from __future__ import annotations

from array import array
from collections.abc import Iterator, Mapping, Sequence

__all__ = ["PackedShows", "ShownColumns", "Shows", "pack_shows"]

Shows = Mapping[str, Mapping[str, float]]


class ShownColumns:
    """The columns, shared by all results they were packed from. Bytes, in the order of this machine.

    One entry is one character of one result, one cell one state of it.

    Attributes:
        names: ids of the characters, in any order.
        states: for each, the ids of its states.
        character: for each entry, place of the character in `names` (uint32).
        length: for each entry, how many cells (uint16).
        state: for each cell, place of the state in `states` of its character (uint16).
        often: for each cell, how often (float64).
    """

    __slots__ = ("character", "length", "names", "often", "state", "states")

    def __init__(
        self,
        names: tuple[str, ...],
        states: tuple[tuple[str, ...], ...],
        character: bytes,
        length: bytes,
        state: bytes,
        often: bytes,
    ) -> None:
        self.names = names
        self.states = states
        self.character = character
        self.length = length
        self.state = state
        self.often = often


class PackedShows(Mapping[str, Mapping[str, float]]):
    """`shows` of one result: a run of entries of the columns. It equals the mapping it was packed from.

    Attributes:
        columns: the shared columns.
        entries: first entry, and one past the last.
        cells: first cell, and one past the last.
    """

    __slots__ = ("_made", "cells", "columns", "entries")

    columns: ShownColumns
    entries: tuple[int, int]
    cells: tuple[int, int]
    _made: dict[str, dict[str, float]]

    def __init__(self, columns: ShownColumns, entries: tuple[int, int], cells: tuple[int, int]) -> None:
        self.columns = columns
        self.entries = entries
        self.cells = cells

    def __getitem__(self, name: str) -> Mapping[str, float]:
        return self._whole()[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._whole())

    def __len__(self) -> int:
        return self.entries[1] - self.entries[0]

    def __repr__(self) -> str:
        return repr(self._whole())

    def _whole(self) -> dict[str, dict[str, float]]:
        """The mapping itself; made when it is first asked for, since most results are never looked at."""
        try:
            return self._made
        except AttributeError:
            self._made = self._unpacked()
            return self._made

    def _unpacked(self) -> dict[str, dict[str, float]]:
        columns, (first, last), (cell, _) = self.columns, self.entries, self.cells
        characters = memoryview(columns.character).cast("I")[first:last]
        lengths = memoryview(columns.length).cast("H")[first:last]
        states, often = memoryview(columns.state).cast("H"), memoryview(columns.often).cast("d")
        found = {}
        for character, length in zip(characters, lengths, strict=True):
            ids = columns.states[character]
            found[columns.names[character]] = {ids[states[i]]: often[i] for i in range(cell, cell + length)}
            cell += length
        return found

    def __getstate__(self) -> tuple[None, dict[str, object]]:
        return None, {"columns": self.columns, "entries": self.entries, "cells": self.cells}


def pack_shows(names: Sequence[str], states: Sequence[Sequence[str]], shows: Sequence[Shows]) -> list[PackedShows]:
    """Pack what several results show; `states` are the ids of the states of each character of `names`.

    Raises KeyError where something is shown that is not among them.

    >>> packed, = pack_shows(["web"], [["orb", "none"]], [{"web": {"none": 0.9, "orb": 0.1}}])
    >>> packed == {"web": {"none": 0.9, "orb": 0.1}}
    True
    """
    places = {
        name: (i, {s: k for k, s in enumerate(own)}) for i, (name, own) in enumerate(zip(names, states, strict=True))
    }
    character, length, state, often = array("I"), array("H"), array("H"), array("d")
    runs = []
    for each in shows:
        entry, cell = len(character), len(state)
        for name, shown in each.items():
            number, own = places[name]
            character.append(number)
            length.append(len(shown))
            state.extend(own[s] for s in shown)
            often.extend(shown.values())
        runs.append(((entry, len(character)), (cell, len(state))))
    columns = ShownColumns(
        tuple(names),
        tuple(tuple(own) for own in states),
        character.tobytes(),
        length.tobytes(),
        state.tobytes(),
        often.tobytes(),
    )
    return [PackedShows(columns, entries, cells) for entries, cells in runs]
