"""The best order there is: dynamic programming over sets of specimens, as bit masks."""

from __future__ import annotations

import heapq
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, product

from keyapp.engine import Tables

__all__ = ["MOST_SUBSETS", "Item", "Splitting", "best_mean", "items_of", "merged", "splittings"]

MOST_ITEMS = 150
"""More kinds of specimen than this are not tried."""

MOST_SUBSETS = 20_000
"""So many different sets of specimens are looked at; beyond, there is no answer."""


@dataclass(frozen=True, slots=True)
class Item:
    """One kind of specimen: what it is, its true states by character, its weight.

    A character that is not in `states` does not apply to it.
    """

    label: Hashable
    states: frozenset[tuple[str, int]]
    weight: float


@dataclass(frozen=True, slots=True)
class Splitting:
    """One couplet: `first` are the items that fit its first lead, `able` those it can be asked of (bit masks)."""

    first: int
    able: int


def items_of(
    tables: Tables,
    weights: Mapping[str, float],
    characters: Iterable[str],
    labels: Mapping[str, Hashable] | None = None,
    *,
    most: int = MOST_ITEMS,
) -> tuple[Item, ...] | None:
    """Each taxon spread over the combinations of states it shows of `characters`; None where there are over `most`.

    `weights` are masses by taxon id; `labels` what is to be told apart (default: each taxon). So a taxon
    that can honestly go both ways goes both ways, by its state frequencies. `tables` are those of `as_described`.
    """
    names = sorted(characters)
    found = []
    for taxon, weight in weights.items():
        row = tables.row(taxon)
        choices = []
        for name in names:
            table = tables.characters[name]
            if table.applies[row]:
                choices.append([((name, k), float(p)) for k, p in enumerate(table.chance[row]) if p > 0])
        for drawn in product(*choices):
            share = weight
            for _, p in drawn:
                share *= p
            found.append(Item((labels or {}).get(taxon, taxon), frozenset(state for state, _ in drawn), share))
            if len(found) > 100 * most:
                return None
    few = merged(found)
    return few if len(few) <= most else None


def merged(items: Iterable[Item]) -> tuple[Item, ...]:
    """Items of the same label and the same states made one."""
    sums: dict[tuple[Hashable, frozenset[tuple[str, int]]], float] = {}
    for item in items:
        sums[item.label, item.states] = sums.get((item.label, item.states), 0.0) + item.weight
    return tuple(Item(label, states, weight) for (label, states), weight in sums.items())


def splittings(items: Sequence[Item]) -> tuple[Splitting, ...]:
    """Every couplet that puts the states of one character into two leads."""
    states: dict[str, dict[int, int]] = {}
    for i, item in enumerate(items):
        for name, k in item.states:
            masks = states.setdefault(name, {})
            masks[k] = masks.get(k, 0) | 1 << i
    found: dict[tuple[int, int], Splitting] = {}
    for masks in states.values():
        able = 0
        for mask in masks.values():
            able |= mask
        first, *others = masks.values()
        # The lead that holds the first state may hold any others, but not all.
        for size in range(len(others)):
            for chosen in combinations(others, size):
                one = first
                for mask in chosen:
                    one |= mask
                found[one, able] = Splitting(one, able)
    return tuple(found.values())


def best_mean(
    weights: Sequence[float],
    labels: Sequence[Hashable],
    splits: Sequence[Splitting],
    *,
    most_subsets: int = MOST_SUBSETS,
) -> float | None:
    """Least expected number of couplets, without error, until the label is settled or nothing can split on.

    Exact over all orders of the given couplets: f(S) = w(S) + min over splits of f(S and first) + f(S less first),
    f = 0 where one label is left or no couplet splits S. A couplet is asked only where it can be asked of all in S.
    Returns the mean over the weights, or None where more than `most_subsets` sets would have to be looked at
    (finding the best order is NP-complete: Hyafil & Rivest 1976).

    >>> free = [Splitting(mask, 0b111) for mask in range(1, 7)]
    >>> best_mean([2, 1, 1], "abc", free)
    1.5
    """
    try:
        return _Search(weights, labels, splits, most_subsets).least((1 << len(weights)) - 1) / sum(weights)
    except _TooManyError:
        return None


class _TooManyError(Exception):
    """More sets than may be looked at."""


class _Search:
    """Sets that have been worked out, and a lower bound for those that have not."""

    def __init__(
        self, weights: Sequence[float], labels: Sequence[Hashable], splits: Sequence[Splitting], most_subsets: int
    ) -> None:
        self.weights = weights
        self.splits = splits
        self.most = most_subsets
        self.done: dict[int, float] = {}
        self.bounds: dict[int, float] = {}
        self.alone = _masks(labels)
        whole = (1 << len(weights)) - 1
        # Where every couplet can be asked of all, an order ends at one label, or among items that no couplet tells
        # apart; so it always settles in which of these joined classes a specimen is.
        self.classes = _joined(labels, splits) if all(s.able == whole for s in splits) else [whole]

    def least(self, held: int) -> float:
        """Least total weight of couplets asked from `held` on."""
        if held in self.done:
            return self.done[held]
        if len(self.done) >= self.most:
            raise _TooManyError
        best = 0.0
        if pairs := self._pairs(held):
            mass = sum(self.weights[i] for i in _items(held))
            best = float("inf")
            for bound, one, two in sorted((self.bound(a) + self.bound(b), a, b) for a, b in pairs):
                if mass + bound >= best:
                    break
                first = self.least(one)
                if mass + first + self.bound(two) < best:
                    best = min(best, mass + first + self.least(two))
        self.done[held] = best
        return best

    def bound(self, held: int) -> float:
        """What no order can beat: Huffman's for the classes in `held`."""
        if held not in self.bounds:
            heap = [sum(self.weights[i] for i in _items(held & mask)) for mask in self.classes if held & mask]
            heapq.heapify(heap)
            total = 0.0
            while len(heap) > 1:
                joined = heapq.heappop(heap) + heapq.heappop(heap)
                total += joined
                heapq.heappush(heap, joined)
            self.bounds[held] = total * (1 - 1e-12)
        return self.bounds[held]

    def _pairs(self, held: int) -> set[tuple[int, int]]:
        """The ways to split `held`; none where one label is left."""
        found: set[tuple[int, int]] = set()
        if any(held & ~mask == 0 for mask in self.alone):
            return found
        for split in self.splits:
            one = held & split.first
            if one and one != held and held & ~split.able == 0:
                two = held & ~one
                found.add((min(one, two), max(one, two)))
        return found


def _items(mask: int) -> list[int]:
    return [i for i in range(mask.bit_length()) if mask >> i & 1]


def _masks(labels: Sequence[Hashable]) -> list[int]:
    """The items of each label."""
    of_label: dict[Hashable, int] = {}
    for i, label in enumerate(labels):
        of_label[label] = of_label.get(label, 0) | 1 << i
    return list(of_label.values())


def _joined(labels: Sequence[Hashable], splits: Sequence[Splitting]) -> list[int]:
    """Items joined that have a label in common or that no couplet tells apart, directly or through others."""
    alike = [tuple(bool(split.first >> i & 1) for split in splits) for i in range(len(labels))]
    classes: list[int] = []
    for mask in (*_masks(labels), *_masks(alike)):
        touching = [other for other in classes if other & mask]
        classes = [other for other in classes if not other & mask]
        for other in touching:
            mask |= other
        classes.append(mask)
    return classes
