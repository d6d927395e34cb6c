"""The descriptions of a key set as arrays: a row a hypothesis, a column a state."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.described import described
from keyapp.model import AppliesTo, Character, Form, KeySet, Taxon, Weights

__all__ = ["OUTSIDE", "THING", "CharacterTable", "GroupId", "Row", "Tables", "build_tables"]

THING = "thing"
"""The character that says what there is: an animal, a web, an egg sac, a shed skin."""

OUTSIDE = "(not in this key)"
"""Id of the hypothesis "something not in this key"; it is always the last row."""

REMEMBERED = 20_000
"""Entries kept of what was worked out; an answer is some 3 kB, so this is about 60 MB."""

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

    @property
    def danger_rows(self) -> dict[str, list[int]]:
        """The rows of `gated` by danger group; worked out once."""
        if "danger rows" not in self.memo:
            found: dict[str, list[int]] = {}
            for row in self.gated:
                found.setdefault(self.rows[row].danger, []).append(row)
            self.memo["danger rows"] = found
        return self.memo["danger rows"]  # type: ignore[return-value]

    def remember(self, key: object, value: object) -> None:
        """Keep something worked out from these tables; all is forgotten when there is too much of it."""
        if len(self.memo) >= REMEMBERED:
            self.memo.clear()
        self.memo[key] = value

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
    held = [c for c in keyset.characters.values() if c.states]
    gated = tuple(i for i, row in enumerate(rows) if row.danger)
    groups = tuple(sorted({row.group for row in rows}))
    place = {group: i for i, group in enumerate(groups)}
    applying = _applying(keyset, taxa)
    return Tables(
        keyset=keyset,
        weights=keyset.weights,
        rows=rows,
        rows_of=rows_of,
        characters=_character_tables(held, taxa, owner, applying, keyset.weights),
        size_applies={c.id: applying[c.applies_to][owner] for c in keyset.characters.values() if c.number},
        gated=gated,
        groups=groups,
        group_of=np.array([place[row.group] for row in rows], dtype=np.int64),
    )


def _rows(taxa: list[Taxon]) -> tuple[tuple[Row, ...], list[int]]:
    """The rows, and for each the index of its taxon (one more than the last for `OUTSIDE`)."""
    makers = {taxon.kind: taxon for taxon in reversed(taxa) if taxon.form is Form.ANIMAL}
    rows: list[Row] = []
    owner: list[int] = []
    for index, taxon in enumerate(taxa):
        sign = taxon.form is not Form.ANIMAL
        models = [makers.get(kind, taxon) if sign else taxon for kind in taxon.made_by or (taxon.kind,)]
        together = sign and _made_by_many(models)
        for kind, model in zip(taxon.made_by or (taxon.kind,), models, strict=True):
            danger = model.danger_group if model.danger.is_gated else ""
            group = _group_of(taxon if taxon.outside else model, danger)
            if together and not danger:
                group = GroupId("sign", taxon.id)
            rows.append(Row(taxon.id, kind, group, danger, sign))
            owner.append(index)
    rows.append(Row(OUTSIDE, OUTSIDE, GroupId("outside", OUTSIDE), "", False))
    return tuple(rows), [*owner, len(taxa)]


def _made_by_many(models: list[Taxon]) -> bool:
    """Whether no one family makes half of them: then the sign itself, not a family, is what it comes to."""
    families = Counter(model.family for model in models if not model.danger.is_gated)
    return len(families) > 1 and 2 * max(families.values()) < sum(families.values())


def applies(rule: AppliesTo, taxon: Taxon) -> bool:
    """Whether a character with this rule applies to `taxon`."""
    return _applies(rule, taxon.form, taxon.group_names)


def _applies(rule: AppliesTo, form: Form, names: frozenset[str]) -> bool:
    """Whether a character with this rule applies to a taxon of this form with these group names."""
    if rule.forms and str(form) not in rule.forms:
        return False
    if rule.groups and form is Form.ANIMAL and names.isdisjoint(rule.groups):
        return False
    return names.isdisjoint(rule.not_groups)


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


def _applying(keyset: KeySet, taxa: list[Taxon]) -> dict[AppliesTo, Bools]:
    """For each rule in use, to which taxa it applies, and last to what is not in the key (always)."""
    # Taxa of one form and with the same group names are alike to every rule.
    kinds: dict[tuple[Form, frozenset[str]], int] = {}
    kind_of = [kinds.setdefault((taxon.form, taxon.group_names), len(kinds)) for taxon in taxa]
    last = np.array([*kind_of, len(kinds)], dtype=np.int64)
    rules = {character.applies_to for character in keyset.characters.values()}
    return {rule: np.array([*(_applies(rule, *kind) for kind in kinds), True])[last] for rule in rules}


def _character_tables(
    held: list[Character], taxa: list[Taxon], owner: list[int], applying: dict[AppliesTo, Bools], weights: Weights
) -> dict[str, CharacterTable]:
    kinds = _kind_weights(taxa)
    said = described(held, taxa, weights.unlisted)
    bounds = np.searchsorted(said.character, np.arange(len(held) + 1))
    # A taxon has one row, or as a sign one for each of its makers, which follow each other.
    first = np.searchsorted(owner, np.arange(len(taxa) + 2))
    masks = {rule: found[owner] for rule, found in applying.items()}
    # One piece of memory for all characters, which is had faster than a piece for each.
    chances = np.empty(len(owner) * sum(len(c.states) for c in held))
    lists = np.zeros(len(chances), dtype=bool)
    begin = 0
    tables = {}
    for i, character in enumerate(held):
        part = np.arange(bounds[i], bounds[i + 1])
        part = part[applying[character.applies_to][said.taxon[part]]]
        count, members = len(character.states), said.taxon[part]
        known, shown = said.chance[part, :count], said.listed[part, :count]
        mean = np.average(known, axis=0, weights=kinds[members]) if len(members) else np.full(count, 1.0 / count)
        repeats = first[members + 1] - first[members]
        from_entry = np.repeat(np.arange(len(members)), repeats)
        rows = np.arange(len(from_entry)) + np.repeat(first[members] - np.cumsum(repeats) + repeats, repeats)
        own = slice(begin, begin + len(owner) * count)
        begin = own.stop
        chance, listed = chances[own].reshape(-1, count), lists[own].reshape(-1, count)
        chance[:] = mean
        chance[rows] = known[from_entry]
        # What is not in the key may show anything, but rare things are rare there too; and it is no
        # more often a web or a skin than the rest.
        breadth = 0.0 if character.id == THING else weights.outside_breadth
        chance[-1] = (1.0 - breadth) * mean + breadth / count
        listed[rows] = shown[from_entry]
        mentioned = np.zeros(len(owner), dtype=bool)
        mentioned[rows] = True
        right = np.array([character.right if s.right is None else s.right for s in character.states])
        states = {state_id: k for k, state_id in enumerate(character.state_ids)}
        tables[character.id] = CharacterTable(
            character, chance, listed, mentioned, masks[character.applies_to], _misread(character, states), right
        )
    return tables


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
