"""The descriptions of a key set as arrays: a row a hypothesis, a column a state."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from keyapp.model import AppliesTo, Character, Form, KeySet, Taxon, Weights

__all__ = ["OUTSIDE", "THING", "CharacterTable", "GroupId", "Row", "Tables", "build_tables"]

THING = "thing"
"""The character that says what there is: an animal, a web, an egg sac, a shed skin."""

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
        right: K, chance that a report is right given the true state.
    """

    character: Character
    chance: Floats
    listed: Bools
    described: Bools
    applies: Bools
    misread: Floats
    right: Floats

    def taken(self, owner: list[int]) -> CharacterTable:
        """The same with the rows named in `owner`, in that order."""
        return CharacterTable(
            self.character,
            self.chance[owner],
            self.listed[owner],
            self.described[owner],
            self.applies[owner],
            self.misread,
            self.right,
        )


@dataclass(frozen=True, slots=True)
class Row:
    """One hypothesis: a result, and for a sign the kind that made it.

    Attributes:
        taxon: taxon id; `OUTSIDE` for the last row.
        kind: the kind of animal; for a sign, one of its makers.
        group: what the row is summed under: that of the animal, or of the sign's maker.
        danger: danger group id of the animal or maker where it is gated, else empty.
        sign: whether it is a sign.
    """

    taxon: str
    kind: str
    group: GroupId
    danger: str
    sign: bool


@dataclass(frozen=True, slots=True)
class Tables:
    """A key set made ready for the engine.

    `rows` are the hypotheses in order; `rows_of` gives those of a taxon; `gated` those that a
    danger group names. `groups` are all groups by name, `group_of` the index of each row's.
    """

    keyset: KeySet
    weights: Weights
    rows: tuple[Row, ...]
    rows_of: dict[str, tuple[int, ...]]
    characters: dict[str, CharacterTable]
    size_applies: dict[str, Bools]
    gated: tuple[int, ...]
    groups: tuple[GroupId, ...]
    group_of: NDArray[np.int64]
    memo: dict[object, object] = field(default_factory=dict, compare=False)

    def group_sums(self, posterior: Floats) -> Floats:
        """Summed posterior of each of `groups`."""
        return np.bincount(self.group_of, weights=posterior, minlength=len(self.groups)).astype(np.float64)

    def row(self, taxon: str) -> int:
        """The first row of a taxon."""
        return self.rows_of[taxon][0]

    def mass(self, posterior: Floats, taxon: str) -> float:
        """Summed posterior of a taxon over its rows."""
        return float(sum(posterior[row] for row in self.rows_of[taxon]))


def build_tables(keyset: KeySet) -> Tables:
    """Turn the descriptions of `keyset` into arrays.

    A sign has one row for each kind that makes it, so that its weight falls to the makers by how
    common they are. Undescribed characters take the mean row of the described taxa to which the
    character applies, each kind counting once, so that they are uninformative.
    """
    taxa = list(keyset.taxa.values())
    rows, owner = _rows(taxa)
    rows_of: dict[str, tuple[int, ...]] = {}
    for index, row in enumerate(rows):
        rows_of[row.taxon] = (*rows_of.get(row.taxon, ()), index)
    kinds = _kind_weights(taxa)
    tables = {}
    for character in keyset.characters.values():
        if character.states:
            tables[character.id] = _character_table(character, taxa, kinds, keyset.weights).taken(owner)
    sizes = {
        c.id: np.array([*(applies(c.applies_to, taxon) for taxon in taxa), True])[owner]
        for c in keyset.characters.values()
        if c.number
    }
    gated = tuple(i for i, row in enumerate(rows) if row.danger)
    groups = tuple(sorted({row.group for row in rows}))
    place = {group: i for i, group in enumerate(groups)}
    group_of = np.array([place[row.group] for row in rows], dtype=np.int64)
    return Tables(keyset, keyset.weights, rows, rows_of, tables, sizes, gated, groups, group_of)


def _rows(taxa: list[Taxon]) -> tuple[tuple[Row, ...], list[int]]:
    """The rows, and for each the index of its taxon (one more than the last for `OUTSIDE`)."""
    makers = {taxon.kind: taxon for taxon in reversed(taxa) if taxon.form is Form.ANIMAL}
    rows: list[Row] = []
    owner: list[int] = []
    for index, taxon in enumerate(taxa):
        sign = taxon.form is not Form.ANIMAL
        for kind in taxon.made_by or (taxon.kind,):
            model = makers.get(kind, taxon) if sign else taxon
            danger = model.danger_group if model.danger.is_gated else ""
            group = _group_of(taxon if taxon.outside else model, danger)
            rows.append(Row(taxon.id, kind, group, danger, sign))
            owner.append(index)
    rows.append(Row(OUTSIDE, OUTSIDE, GroupId("outside", OUTSIDE), "", False))
    return tuple(rows), [*owner, len(taxa)]


def applies(rule: AppliesTo, taxon: Taxon) -> bool:
    """Whether a character with this rule applies to `taxon`."""
    if rule.forms and str(taxon.form) not in rule.forms:
        return False
    names = taxon.group_names
    if rule.groups and taxon.form is Form.ANIMAL and not names & set(rule.groups):
        return False
    return not names & set(rule.not_groups)


def _group_of(taxon: Taxon, danger: str) -> GroupId:
    """Dangerous groups apart, then the family, then what is left to go by."""
    if taxon.outside:
        return GroupId("outside", OUTSIDE)
    if danger:
        return GroupId("danger", danger)
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
    # What is not in the key may show anything, but rare things are rare there too; and it is no
    # more often a web or a skin than the rest.
    breadth = 0.0 if character.id == THING else weights.outside_breadth
    chance[n] = (1.0 - breadth) * mean + breadth / count
    right = np.array([character.right if s.right is None else s.right for s in character.states])
    return CharacterTable(character, chance, listed, described, applying, _misread(character, states), right)


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
