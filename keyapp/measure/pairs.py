"""Pairs of results, and what separates them."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

import numpy as np

from keyapp.engine import Tables
from keyapp.engine.tables import CharacterTable

__all__ = ["Pair", "pairs"]


@dataclass(frozen=True, slots=True)
class Pair:
    """Two results of different groups.

    Attributes:
        first, second: taxon ids, in the order of the key's descriptions.
        separated_by: characters of which they never show the same state, and that may be used to tell them apart:
            where one is medically important, only those that may rule it out.
        groups: independence groups of these characters.
        danger: danger group ids of the two, where they have one.
    """

    first: str
    second: str
    separated_by: tuple[str, ...]
    groups: frozenset[str]
    danger: tuple[str, ...]


def pairs(tables: Tables) -> tuple[Pair, ...]:
    """Every pair of results of one form that are summed apart and are not "outside the key".

    An animal, a web, an egg sac and a shed skin are not compared with each other: which is there is asked first.
    A character separates two results when it applies to both, both descriptions speak of it and the states
    they list are disjoint. Against a medically important result it must also be able to clear: it is not one that
    never clears, and the other shows some state that is not an absence (an absence never rules anything out).
    """
    taxa = [taxon for taxon in tables.keyset.taxa.values() if not taxon.outside]
    found = []
    for one, two in combinations(taxa, 2):
        if one.form is not two.form:
            continue
        rows = [tables.rows_of[one.id], tables.rows_of[two.id]]
        groups = [{tables.rows[r].group for r in of_one} for of_one in rows]
        if groups[0] & groups[1]:
            continue
        dangers = [sorted({tables.rows[r].danger for r in of_one} - {""}) for of_one in rows]
        separating = [
            table.character
            for table in tables.characters.values()
            if _separates(table, rows[0][0], rows[1][0], bool(dangers[0]), bool(dangers[1]))
        ]
        found.append(
            Pair(
                one.id,
                two.id,
                tuple(c.id for c in separating),
                frozenset(c.group for c in separating),
                tuple(dict.fromkeys((*dangers[0], *dangers[1]))),
            )
        )
    return tuple(found)


def _separates(table: CharacterTable, one: int, two: int, one_gated: bool, two_gated: bool) -> bool:
    both = [one, two]
    if not (table.applies[both].all() and table.described[both].all()):
        return False
    if (table.listed[one] & table.listed[two]).any():
        return False
    if not (one_gated or two_gated):
        return True
    if table.character.never_clears:
        return False
    present = np.array([not state.absence for state in table.character.states])
    # What the other shows must speak against the dangerous one, and an absence never does.
    clears_one = not one_gated or bool((table.listed[two] & present).any())
    clears_two = not two_gated or bool((table.listed[one] & present).any())
    return clears_one and clears_two
