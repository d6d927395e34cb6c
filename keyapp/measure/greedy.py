"""A greedy dichotomous order from the same characters: the yardstick for a written key."""

from __future__ import annotations

import heapq
from collections.abc import Collection, Hashable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from keyapp.engine import Tables
from keyapp.engine.tables import Floats

__all__ = ["Branch", "Order", "greedy_order"]

DUST = 1e-6
"""A share of a specimen smaller than this, of all that is being told apart, is not followed further."""


@dataclass(slots=True)
class Branch:
    """A place in a greedy order.

    Attributes:
        weight: share of all specimens that come here.
        labels: what they are, by weight.
        character: what is asked here; empty at an end.
        states: states of the first lead.
        others: states of the second lead.
        ahead: the branches the two leads go to; empty at an end.
    """

    weight: float
    labels: Mapping[Hashable, float]
    character: str = ""
    states: frozenset[str] = frozenset()
    others: frozenset[str] = frozenset()
    ahead: tuple[Branch, ...] = ()

    def each(self) -> Iterator[Branch]:
        """This branch and all beyond it."""
        yield self
        for branch in self.ahead:
            yield from branch.each()

    @property
    def bits_left(self) -> float:
        """Weight times the entropy in bits of what is left here to tell apart."""
        return _plogp(np.array(list(self.labels.values())))


@dataclass(frozen=True, slots=True)
class Order:
    """A greedy order: its first branch, expected couplets, and bits left at its ends."""

    root: Branch
    mean: float
    bits_left: float

    @property
    def couplets(self) -> int:
        """Number of couplets in it."""
        return sum(1 for branch in self.root.each() if branch.ahead)

    @property
    def longest(self) -> int:
        """Couplets on its longest path."""

        def depth(branch: Branch) -> int:
            return 1 + max(map(depth, branch.ahead)) if branch.ahead else 0

        return depth(self.root)

    def bits_by_step(self) -> list[float]:
        """Bits left after 0, 1, 2, ... answers."""
        left = []
        level = [self.root]
        while True:
            left.append(sum(branch.bits_left for branch in level))
            if not any(branch.ahead for branch in level):
                return left
            level = [further for branch in level for further in (branch.ahead or (branch,))]


@dataclass(frozen=True, slots=True)
class _Choice:
    gain: float
    character: str = ""
    chosen: NDArray[np.bool_] = field(default_factory=lambda: np.zeros(0, dtype=bool))


def greedy_order(
    tables: Tables,
    weights: Mapping[str, float],
    labels: Mapping[str, Hashable] | None = None,
    characters: Collection[str] | None = None,
    *,
    bits_left: float = 0.0,
    most: int = 2000,
    off: float = 0.02,
) -> Order:
    """Grow an order couplet by couplet, each the one that tells most; error-free.

    A couplet puts the states of one character into two leads; a multi-state character may come again
    with the states that are left. A taxon that can honestly go both ways goes both ways, in parts, by
    the states it shows, as in the written key. The branch where a couplet tells most is split first,
    until no more than `bits_left` bits are left on average, or there are `most` couplets, or nothing
    tells more. Largest expected information first is within a logarithmic factor of the best order
    (Dasgupta 2004, Advances in Neural Information Processing Systems 17).

    Args:
        tables: those of `as_described`.
        weights: masses by taxon id.
        labels: what is to be told apart (default: each taxon).
        characters: those that may be asked (default: all).
        off: a character is passed over on a branch where more than this share of the specimens
            does not have it; the others are answered at random.
    """
    return _Grower(tables, weights, labels or {}, characters, off).grow(bits_left, most)


class _Grower:
    def __init__(
        self,
        tables: Tables,
        weights: Mapping[str, float],
        labels: Mapping[str, Hashable],
        characters: Collection[str] | None,
        off: float,
    ) -> None:
        taxa = [taxon for taxon, weight in weights.items() if weight > 0]
        rows = [tables.row(taxon) for taxon in taxa]
        self.off = off
        self.mass = np.array([weights[taxon] for taxon in taxa], dtype=float)
        self.mass /= self.mass.sum()
        self.named = list(dict.fromkeys(labels.get(taxon, taxon) for taxon in taxa))
        place = {label: i for i, label in enumerate(self.named)}
        self.label = np.array([place[labels.get(taxon, taxon)] for taxon in taxa])
        names = [name for name in tables.characters if characters is None or name in characters]
        self.states = {name: tables.characters[name].character.state_ids for name in names}
        self.chance = {name: tables.characters[name].chance[rows] for name in names}
        self.applies = {name: tables.characters[name].applies[rows] for name in names}

    def grow(self, bits_left: float, most: int) -> Order:
        """Split the branch where a couplet tells most, again and again."""
        everything = {name: np.ones(len(states), dtype=bool) for name, states in self.states.items()}
        root = self._branch(self.mass)
        left, made, count = root.bits_left, 0, 0
        heap: list[tuple[float, int, Branch, Floats, dict[str, NDArray[np.bool_]], _Choice]] = []

        def offer(branch: Branch, mass: Floats, allowed: dict[str, NDArray[np.bool_]]) -> None:
            nonlocal count
            choice = self._best(mass, allowed)
            if choice.gain > 1e-9:
                heapq.heappush(heap, (-choice.gain / branch.weight, count, branch, mass, allowed, choice))
                count += 1

        offer(root, self.mass, everything)
        while heap and made < most and left > bits_left + 1e-12:
            _, _, branch, mass, allowed, choice = heapq.heappop(heap)
            name, chosen = choice.character, choice.chosen
            rest = allowed[name] & ~chosen
            share = self._share(name, chosen, allowed[name])
            parts = [mass * share, mass * (1.0 - share)]
            parts = [np.where(part > DUST, part, 0.0) for part in parts]
            branch.character = name
            branch.states, branch.others = (
                frozenset(s for s, is_in in zip(self.states[name], mask, strict=True) if is_in)
                for mask in (chosen, rest)
            )
            branch.ahead = tuple(self._branch(part) for part in parts)
            for further, part, mask in zip(branch.ahead, parts, (chosen, rest), strict=True):
                offer(further, part, {**allowed, name: mask})
            left += sum(further.bits_left for further in branch.ahead) - branch.bits_left
            made += 1
        mean = sum(branch.weight for branch in root.each() if branch.ahead)
        return Order(root, mean, max(0.0, left))

    def _branch(self, mass: Floats) -> Branch:
        sums = np.bincount(self.label, weights=mass, minlength=len(self.named))
        labels = {self.named[i]: float(w) for i, w in enumerate(sums) if w > 0}
        return Branch(float(mass.sum()), labels)

    def _share(self, name: str, chosen: NDArray[np.bool_], allowed: NDArray[np.bool_]) -> Floats:
        """Chance of lead 1 for each specimen, given that it shows one of the states still allowed."""
        chance = self.chance[name]
        held = chance[:, allowed].sum(axis=1)
        with np.errstate(divide="ignore", invalid="ignore"):
            share = np.where(held > 0, chance[:, chosen].sum(axis=1) / held, 0.5)
        return np.where(self.applies[name], share, 0.5)

    def _best(self, mass: Floats, allowed: Mapping[str, NDArray[np.bool_]]) -> _Choice:
        held = mass > 0
        here, label = mass[held], self.label[held]
        total = here.sum()
        sums = np.bincount(label, weights=here).astype(np.float64)
        if np.count_nonzero(sums) < 2:
            return _Choice(0.0)
        before = _plogp(sums)
        inverse = np.unique(label, return_inverse=True)[1]
        one_hot = np.zeros((inverse.max() + 1, len(here)))
        one_hot[inverse, np.arange(len(here))] = 1.0
        best = _Choice(0.0)
        for name, mask in allowed.items():
            if here[~self.applies[name][held]].sum() > self.off * total:
                continue
            chance = np.where(mask, self.chance[name][held], 0.0)
            seen = mask & (chance.max(axis=0, initial=0.0) > 0)
            leads = _leads(int(seen.sum()))
            if not len(leads):
                continue
            sums_held = chance.sum(axis=1, keepdims=True)
            share = np.divide(
                chance[:, seen] @ leads.T, sums_held, out=np.full((len(here), len(leads)), 0.5), where=sums_held > 0
            )
            share[~self.applies[name][held]] = 0.5
            first = one_hot @ (here[:, None] * share)
            second = np.maximum(sums[np.unique(label)][:, None] - first, 0.0)
            gains = before - _plogp_columns(first) - _plogp_columns(second)
            top = int(np.argmax(np.round(gains, 12)))
            if gains[top] > best.gain + 1e-12:
                chosen = np.zeros(len(mask), dtype=bool)
                chosen[np.flatnonzero(seen)[leads[top] > 0]] = True
                best = _Choice(float(gains[top]), name, chosen)
        return best


@cache
def _leads(count: int) -> Floats:
    """Every way to put `count` states into two leads: rows of 0 and 1, the first state always in lead 1."""
    rows = []
    for size in range(count - 1):
        for others in combinations(range(1, count), size):
            rows.append([1.0 if k == 0 or k in others else 0.0 for k in range(count)])
    return np.array(rows, dtype=float).reshape(len(rows), count)


def _plogp(weights: Floats) -> float:
    """Total weight times the entropy in bits."""
    return float(_plogp_columns(weights[:, None])[0])


def _plogp_columns(weights: Floats) -> Floats:
    totals = weights.sum(axis=0)
    with np.errstate(divide="ignore", invalid="ignore"):
        terms = np.where(weights > 0, weights * np.log2(weights / np.where(totals > 0, totals, 1.0)), 0.0)
    return np.asarray(-terms.sum(axis=0) + 0.0)
