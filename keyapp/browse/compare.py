"""Kinds held side by side on the characters that separate them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations

import numpy as np

from keyapp.browse.facts import chances
from keyapp.browse.kinds import Kind
from keyapp.engine import THING, Tables
from keyapp.engine.tables import applies
from keyapp.errors import ProgramError
from keyapp.model import Character, Size

__all__ = ["MOST", "Cell", "Line", "Standing", "compare", "splitting"]

MOST = 4
"""As many kinds are held side by side."""
LEAST_SHOWN = 0.02
"""Chance below which a state is not named."""
LEAST_SPLIT = 0.2
"""Separation below which a character splits nothing."""


class Standing(StrEnum):
    """Whether a kind has a say on a character."""

    TOLD = "told"
    UNTOLD = "untold"
    """Its description does not mention it."""
    INAPPLICABLE = "inapplicable"
    """It does not have such a thing."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What one kind shows of one character.

    `states` are those that its descriptions list, with their chances (0-1), commonest first; `size` is the grown
    range of a measured one in mm.
    """

    kind: Kind
    standing: Standing
    states: tuple[tuple[str, float], ...] = ()
    size: Size | None = None


@dataclass(frozen=True, slots=True)
class Line:
    """One character over some kinds, and how well it separates them: 0 not at all, 1 wholly."""

    character: str
    cells: tuple[Cell, ...]
    separation: float


def compare(tables: Tables, some: Sequence[Kind]) -> tuple[Line, ...]:
    """Every character that two or more of `some` are described by, the one that separates them best first.

    The separation is the mean over all pairs of one less their overlap, sum over states of min(p, q) (the
    overlapping coefficient; Inman and Bradley 1989, from memory); a pair of which one has no say counts 0. For a
    size it is the overlap of the grown ranges on the log scale, over the shorter of them. Raises ProgramError for
    more than `MOST`.
    """
    if len(some) > MOST:
        raise ProgramError(f"At most {MOST} kinds are held side by side, not {len(some)}")
    return _lines(tables, some)


def splitting(tables: Tables, some: Sequence[Kind]) -> Line | None:
    """The character whose answer splits `some` best, for a lay person; None where none does.

    Best is the highest separation times the chance that they can tell it and read it right.
    """
    best, score = None, 0.0
    for line in _lines(tables, some):
        if line.separation < LEAST_SPLIT:
            break
        character = tables.keyset.characters[line.character]
        if not character.states:
            continue
        worth = line.separation * character.tell * float(tables.characters[line.character].right.mean())
        if worth > score:
            best, score = line, worth
    return best


def _lines(tables: Tables, some: Sequence[Kind]) -> tuple[Line, ...]:
    found = []
    for character in tables.keyset.characters.values():
        if character.id == THING and len({tables.keyset.taxa[kind.id].form for kind in some}) == 1:
            continue
        cells = tuple(_cell(tables, kind, character) for kind in some)
        if sum(cell.standing is Standing.TOLD for cell in cells) >= 2:
            found.append(Line(character.id, cells, _separation(tables, some, cells, character)))
    return tuple(sorted(found, key=lambda line: (-line.separation, line.character)))


def _cell(tables: Tables, kind: Kind, character: Character) -> Cell:
    taxa = [tables.keyset.taxa[taxon] for taxon in kind.taxa]
    if not any(applies(character.applies_to, taxon) for taxon in taxa):
        return Cell(kind, Standing.INAPPLICABLE)
    if character.number is not None:
        sizes = [taxon.sizes[character.id] for taxon in taxa if character.id in taxon.sizes]
        if not sizes:
            return Cell(kind, Standing.UNTOLD)
        return Cell(kind, Standing.TOLD, size=Size(min(s.least for s in sizes), max(s.most for s in sizes)))
    told = chances(tables, kind, character.id)
    if told is None:
        return Cell(kind, Standing.UNTOLD)
    listed = {state for taxon in taxa for state in taxon.shows.get(character.id, ())}
    states = [
        (state, float(chance))
        for state, chance in zip(character.state_ids, told, strict=True)
        if state in listed and chance >= LEAST_SHOWN
    ]
    return Cell(kind, Standing.TOLD, tuple(sorted(states, key=lambda one: -one[1])))


def _separation(tables: Tables, some: Sequence[Kind], cells: Sequence[Cell], character: Character) -> float:
    pairs = len(cells) * (len(cells) - 1) / 2
    sizes = [cell.size for cell in cells if cell.size is not None]
    apart = sum(1.0 - _shared(one, other) for one, other in combinations(sizes, 2))
    told = [
        known
        for kind, cell in zip(some, cells, strict=True)
        if cell.states and (known := chances(tables, kind, character.id)) is not None
    ]
    for at in range(len(told) - 1):
        apart += float((1.0 - np.minimum(told[at], told[at + 1 :]).sum(axis=1)).sum())
    return apart / pairs


def _shared(one: Size, other: Size) -> float:
    low, high = max(one.least, other.least), min(one.most, other.most)
    if high < low:
        return 0.0
    shorter = min(math.log(one.most / one.least), math.log(other.most / other.least))
    return min(1.0, math.log(high / low) / shorter) if shorter > 0 else 1.0
