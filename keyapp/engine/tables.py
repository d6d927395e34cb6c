"""The descriptions of a key set as arrays: a row a hypothesis, a column a state."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from keyapp.model import AppliesTo, Character, Form, KeySet, Taxon, Weights

__all__ = ["OUTSIDE", "CharacterTable", "GroupId", "Tables", "build_tables"]

OUTSIDE = "(not in this key)"
"""Id of the hypothesis "something not in this key"; it is always the last row."""

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, order=True)
class GroupId:
    """What results are summed by: `danger`, `family`, `order` or `outside`, and the name."""

    level: str
    name: str


@dataclass(frozen=True, slots=True)
class CharacterTable:
    """One character over all hypotheses.

    Attributes:
        chance: H x K, chance that hypothesis h truly shows state k; rows sum to 1.
        listed: H x K, whether the description lists the state.
        described: H, whether the description says anything of this character.
        applies: H, whether the character applies at all.
        misread: K x K, row s: chance of each wrong report given the true state s; rows sum to 1.
    """

    character: Character
    chance: Floats
    listed: Bools
    described: Bools
    applies: Bools
    misread: Floats


@dataclass(frozen=True, slots=True)
class Tables:
    """A key set made ready for the engine.

    `taxon_ids` names the rows (the last is `OUTSIDE`), `groups` the group of each row.
    """

    keyset: KeySet
    weights: Weights
    taxon_ids: tuple[str, ...]
    row: dict[str, int]
    groups: tuple[GroupId, ...]
    characters: dict[str, CharacterTable]
    size_applies: dict[str, Bools]
    gated: tuple[int, ...]
    signs: Bools
    memo: dict[object, object] = field(default_factory=dict, compare=False)

    def taxon(self, row: int) -> Taxon | None:
        """The taxon of a row; None for the last."""
        return self.keyset.taxa.get(self.taxon_ids[row])


def build_tables(keyset: KeySet) -> Tables:
    """Turn the descriptions of `keyset` into arrays.

    Undescribed characters take the mean row of the described taxa to which the character
    applies, each kind counting once, so that they are uninformative.
    """
    taxa = list(keyset.taxa.values())
    ids = (*(taxon.id for taxon in taxa), OUTSIDE)
    kinds = _kind_weights(taxa)
    tables = {c.id: _character_table(c, taxa, kinds, keyset.weights) for c in keyset.characters.values() if c.states}
    sizes = {
        c.id: np.array([*(applies(c.applies_to, taxon) for taxon in taxa), True])
        for c in keyset.characters.values()
        if c.number
    }
    return Tables(
        keyset=keyset,
        weights=keyset.weights,
        taxon_ids=ids,
        row={taxon_id: index for index, taxon_id in enumerate(ids)},
        groups=(*(_group_of(taxon) for taxon in taxa), GroupId("outside", OUTSIDE)),
        characters=tables,
        size_applies=sizes,
        gated=tuple(i for i, taxon in enumerate(taxa) if taxon.danger.is_gated),
        signs=np.array([*(taxon.form is not Form.ANIMAL for taxon in taxa), False]),
    )


def applies(rule: AppliesTo, taxon: Taxon) -> bool:
    """Whether a character with this rule applies to `taxon`."""
    if rule.forms and str(taxon.form) not in rule.forms:
        return False
    names = taxon.group_names
    if rule.groups and taxon.form is Form.ANIMAL and not names & set(rule.groups):
        return False
    return not names & set(rule.not_groups)


def _group_of(taxon: Taxon) -> GroupId:
    """Dangerous groups apart; a sign that several kinds make stays with its family."""
    if taxon.outside:
        return GroupId("outside", OUTSIDE)
    if taxon.danger_group and len(taxon.made_by) <= 1:
        return GroupId("danger", taxon.danger_group)
    if taxon.family:
        return GroupId("family", taxon.family)
    return GroupId("order", taxon.order) if taxon.order else GroupId("sign", taxon.id)


def _kind_weights(taxa: list[Taxon]) -> Floats:
    """Weight of each taxon when every kind counts once and shares it among its descriptions."""
    totals: dict[str, float] = {}
    for taxon in taxa:
        totals[taxon.kind] = totals.get(taxon.kind, 0.0) + taxon.share
    return np.array([taxon.share / totals[taxon.kind] for taxon in taxa], dtype=float)


def _character_table(character: Character, taxa: list[Taxon], kinds: Floats, weights: Weights) -> CharacterTable:
    states = {state_id: k for k, state_id in enumerate(character.state_ids)}
    count, n = len(states), len(taxa)
    chance = np.zeros((n + 1, count))
    listed = np.zeros((n + 1, count), dtype=bool)
    described = np.zeros(n + 1, dtype=bool)
    applying = np.array([*(applies(character.applies_to, taxon) for taxon in taxa), True])
    for i, taxon in enumerate(taxa):
        shown = taxon.shows.get(character.id)
        if not shown or not applying[i]:
            continue
        described[i] = True
        for state_id, often in shown.items():
            chance[i, states[state_id]] = often
            listed[i, states[state_id]] = often > 0
        rest = max(0.0, 1.0 - chance[i].sum())
        unnamed = ~listed[i]
        if rest > 1e-12:
            # What the description leaves open falls on the states it does not name.
            chance[i, unnamed if unnamed.any() else slice(None)] += rest / (unnamed.sum() or count)
        chance[i] /= chance[i].sum()
        chance[i] = (1 - weights.unlisted) * chance[i] + weights.unlisted / count
    mean = np.full(count, 1.0 / count)
    known = described[:n]
    if known.any():
        mean = np.average(chance[:n][known], axis=0, weights=kinds[known])
    chance[:n][~known] = mean
    chance[n] = 1.0 / count
    return CharacterTable(character, chance, listed, described, applying, _misread(character, states))


def _misread(character: Character, states: dict[str, int]) -> Floats:
    """Chance of each wrong report by true state; unnamed wrong states share the rest evenly."""
    count = len(states)
    table = np.zeros((count, count))
    for state in character.states:
        row = states[state.id]
        for other, chance in state.mistaken_for.items():
            table[row, states[other]] = chance
        rest = max(0.0, 1.0 - table[row].sum())
        others = [k for k in range(count) if k != row and table[row, k] == 0]
        if others:
            table[row, others] = rest / len(others)
        if table[row].sum() > 0:
            table[row] /= table[row].sum()
    return table
