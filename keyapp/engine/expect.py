"""What a question is expected to bring: every report of it tried, all rows and levels of observer at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.ledger import Event
from keyapp.engine.likelihood import TINY, readings
from keyapp.engine.safety import Counted, counted, counts_of, openness, openness_of
from keyapp.engine.standing import Standing, block_logs, block_rank, blocks
from keyapp.engine.sums import Kind, layout_of, sums_of
from keyapp.engine.tables import CharacterTable, Floats, Tables
from keyapp.model import Evidence, Sureness

__all__ = ["Expectation", "bits_apart", "entropy"]


def bits_apart(tables: Tables, stand: Standing, evidence: Evidence) -> dict[str, float]:
    """Expected bits about the group for every character, each taken as the first of its independence group.

    How the true state is read is linear, so that it is applied to the sums of the groups, not to each row.
    """
    layout, sums = layout_of(tables), sums_of(tables, stand)
    by_group = sums.by_segment
    if len(layout.group_starts) < by_group.shape[2]:
        by_group = np.add.reduceat(by_group, layout.group_starts, axis=2)
    levels, groups = by_group.shape[1:]
    beside = by_group[len(layout.owner) :].sum(axis=1) * tables.weights.inapplicable
    before = entropy(tables.group_sums(stand.posterior))
    gain = np.zeros(len(tables.characters))
    for kind, reading in zip(layout.kinds, _readings(tables, evidence), strict=True):
        told = reading @ by_group[kind.columns].reshape(len(kind.members), kind.states * levels, groups)
        told += beside[layout.rule[kind.members] - len(layout.owner), None] / kind.states
        chance = told.sum(axis=2)
        # P(g, r) log P(g | r), with 0 log 0 = 0.
        logs = np.maximum(told, TINY)
        np.log2(logs, out=logs)
        logs *= told
        after = logs.sum(axis=2) - chance * np.log2(np.maximum(chance, TINY))
        gain[kind.members] = (chance * before + after).sum(axis=1)
    return {name: max(0.0, float(value)) for name, value in zip(tables.characters, gain, strict=True)}


def _readings(tables: Tables, evidence: Evidence) -> list[Floats]:
    """For each kind of characters: characters x told states x (true states * observer levels)."""
    key = ("readings", evidence)
    if key not in tables.memo:
        every = list(tables.characters.values())
        kinds = layout_of(tables).kinds
        tables.memo[key] = [_stacked(tables, [every[m] for m in kind.members], kind, evidence) for kind in kinds]
    return tables.memo[key]  # type: ignore[return-value]


def _stacked(tables: Tables, members: Sequence[CharacterTable], kind: Kind, evidence: Evidence) -> Floats:
    found = np.array([readings(table, Sureness.SURE, evidence, tables.weights) for table in members])
    return np.ascontiguousarray(found.transpose(0, 3, 2, 1)).reshape(len(members), kind.states, -1)


@dataclass(frozen=True, slots=True)
class _Block:
    """The answers so far of one block, as chances scaled to 1 at the row they fit best.

    Attributes:
        inverse: O x H, one by the least of the scaled chances.
        top: O, what the answer that says most is scaled by.
        rank: how much it says, to compare a further answer with.
    """

    inverse: Floats
    top: Floats
    rank: tuple[float, str]


class Expectation:
    """What reports are expected to bring after the answers so far. Made for one standing, then asked of characters."""

    def __init__(
        self, tables: Tables, found: Sequence[Event], stand: Standing, evidence: Evidence, *, clearing: bool
    ) -> None:
        """`clearing`: whether `cleared` will be asked for, which takes the likelihoods of all rows."""
        self._tables = tables
        self._stand = stand
        self._evidence = evidence
        self._before = entropy(tables.group_sums(stand.posterior))
        self._layout = layout_of(tables)
        self._sums = sums_of(tables, stand)
        self._place = {name: place for place, name in enumerate(tables.characters)}
        self._members = blocks(found)
        self._scaled: dict[str, _Block | None] = {}
        if clearing:
            shares = np.log([o.share for o in tables.weights.observers])
            logs = sum((block_logs(block) for block in self._members), np.zeros(stand.joint.shape))
            fit = logs + shares[:, None]
            self._fit = np.exp(fit - fit.max())
            self._open = openness(tables, stand, found)
            self._gated = np.array(tables.gated, dtype=np.int64)
            self._counted = [counted(event, self._gated) for event in found if event.may_clear]

    def bits(self, name: str) -> float:
        """Expected bits about the group of a character, beside what its independence group has said."""
        chance, joint = self._heard(name), np.einsum("oh,okh->kh", self._stand.joint, self._changed(name))
        whole = joint.sum(axis=1)
        by_group = np.add.reduceat(joint[:, self._layout.order], self._layout.starts, axis=1)
        by_group = np.add.reduceat(by_group, self._layout.group_starts, axis=1)
        gain = 0.0
        for one, total, sums in zip(chance, whole, by_group, strict=True):
            if total > 0:
                gain += float(one) * (self._before - entropy(sums / total))
        return max(0.0, gain)

    def cleared(self, name: str) -> float:
        """Expected fall of what is not ruled out, in danger groups (`openness`)."""
        chance, factor = self._heard(name), self._changed(name)
        joint = np.einsum("oh,okh->kh", self._stand.joint, factor)
        fit = np.einsum("oh,okh->kh", self._fit, factor)
        whole, best = joint.sum(axis=1), fit.max(axis=1)
        heard = np.flatnonzero((whole > 0) & (best > 0))
        posterior = joint[np.ix_(heard, self._gated)] / whole[heard, None]
        ratios = fit[np.ix_(heard, self._gated)] / best[heard, None]
        then = openness_of(self._tables, posterior.T, ratios.T, self._counts(name)[:, heard])
        return max(0.0, float(chance[heard] @ (self._open - then)))

    def _counts(self, name: str) -> NDArray[np.int64]:
        """Gated rows x states: clearing counts with a sure report of each state."""
        table = self._tables.characters[name]
        character = table.character
        clears = np.array([not (state.absence or character.never_clears) for state in character.states])
        against = (table.applies & table.described)[self._gated, None] & ~table.listed[self._gated] & clears
        report = Counted(frozenset({character.group}), (name,), against)
        return counts_of([*(one.columns() for one in self._counted), report], against.shape)

    def _heard(self, name: str) -> Floats:
        """K: chance that each state is reported, if anything is."""
        table, place = self._tables.characters[name], self._place[name]
        first, count = self._layout.first[place], len(table.right)
        true = self._sums.by_segment[first : first + count].sum(axis=2)
        beside = self._sums.beside[place] * self._tables.weights.inapplicable / count
        return np.asarray(np.einsum("so,osk->k", true, self._reading(table)) + beside)

    def _changed(self, name: str) -> Floats:
        """O x K x H: by what a report of each state changes the likelihood of each row (see `block_logs`)."""
        table = self._tables.characters[name]
        block = self._block(table.character.group)
        if block is None:
            return self._told(table)
        least, most = self._extremes(table)
        spread = (np.log(most) - np.log(least)).max(axis=0)
        says_most = np.array([(round(float(one), 12), repr((name,))) > block.rank for one in spread])
        level = np.where(says_most, most / block.top[:, None], 1.0)
        # min(1, (told / most) / against) * level, with one pass over the rows less for each factor that is drawn in.
        changed = self._told(table, level / most)
        changed *= block.inverse[:, None, :]
        return np.asarray(np.minimum(changed, level[:, :, None], out=changed))

    def _extremes(self, table: CharacterTable) -> tuple[Floats, Floats]:
        """O x K: chance of each report in the row it fits worst, and in the one it fits best; worked out once."""
        key = ("extremes", table.character.id, self._evidence)
        if key not in self._tables.memo:
            told = self._told(table)
            self._tables.memo[key] = np.maximum(told.min(axis=2), TINY), np.maximum(told.max(axis=2), TINY)
        return self._tables.memo[key]  # type: ignore[return-value]

    def _told(self, table: CharacterTable, times: Floats | float = 1.0) -> Floats:
        """O x K x H: chance of each single sure report, `times` (O x K) that."""
        times = np.broadcast_to(times, (len(self._stand.joint), len(table.right)))
        # A level at a time, states before rows: then the inner loops are long, and each product small enough
        # for one processor core.
        told = (self._reading(table).transpose(0, 2, 1) * times[:, :, None]) @ table.chance.T
        if not table.applies.all():
            told[:, :, ~table.applies] = (times * (self._tables.weights.inapplicable / len(table.right)))[:, :, None]
        return np.asarray(told)

    def _reading(self, table: CharacterTable) -> Floats:
        """O x K x K, of a sure report; worked out once."""
        key = ("reading", table.character.id, self._evidence)
        if key not in self._tables.memo:
            self._tables.memo[key] = readings(table, Sureness.SURE, self._evidence, self._tables.weights)
        return self._tables.memo[key]  # type: ignore[return-value]

    def _block(self, group: str) -> _Block | None:
        """What the answers of this independence group, and those joined with it, have said; None where none has."""
        if group not in self._scaled:
            members = next((each for each in self._members if any(group in e.groups for e in each)), None)
            self._scaled[group] = None if members is None else _scaled(members)
        return self._scaled[group]


def _scaled(members: Sequence[Event]) -> _Block:
    logs = block_logs(members)
    rank, top = max(((block_rank(event), event.logs.max(axis=1)) for event in members), key=lambda each: each[0])
    return _Block(np.exp(top[:, None] - logs), np.exp(top), rank)


def entropy(p: Floats) -> float:
    """Shannon entropy in bits."""
    held = p[p > 0]
    return float(-(held * np.log2(held)).sum())
