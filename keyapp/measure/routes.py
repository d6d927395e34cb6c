"""Routes: the key as one graph, each couplet before those it leads to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from graphlib import TopologicalSorter

from keyapp.model import Couplet, KeySet, TargetKind

__all__ = ["Hop", "Routes", "routes"]


@dataclass(frozen=True, slots=True)
class Hop:
    """Where a lead goes: to a couplet or to a taxon; the other is empty."""

    couplet: str = ""
    taxon: str = ""


@dataclass(frozen=True)
class Routes:
    """A key without loops.

    Attributes:
        start: the first couplet.
        couplets: those the start reaches, each before those it leads to.
        hops: couplet -> where its two leads go.
        asked: couplet -> characters its leads assert.
        asked_below: couplet -> characters asked there or further on.
    """

    start: str
    couplets: Mapping[str, Couplet]
    hops: Mapping[str, tuple[Hop, Hop]]
    asked: Mapping[str, frozenset[str]]
    asked_below: Mapping[str, frozenset[str]]

    @cached_property
    def depths(self) -> dict[str, int]:
        """Couplets on the longest path from each couplet, itself counted."""
        depths: dict[str, int] = {}
        for couplet in reversed(list(self.couplets)):
            depths[couplet] = 1 + max(depths[hop.couplet] if hop.couplet else 0 for hop in self.hops[couplet])
        return depths

    @property
    def longest(self) -> int:
        """Couplets on the longest path of all."""
        return self.depths[self.start]

    @property
    def ends(self) -> tuple[str, ...]:
        """Taxa that leads go to, each once, in order."""
        return tuple(dict.fromkeys(hop.taxon for pair in self.hops.values() for hop in pair if hop.taxon))

    @property
    def rejoining(self) -> int:
        """Leads beyond the first into each couplet and each taxon: how far the key is from a plain tree."""
        into = [hop for pair in self.hops.values() for hop in pair]
        return len(into) - len(set(into))


def routes(keyset: KeySet) -> Routes:
    """Prepare the graph of a key set whose links are sound and free of loops."""
    all_couplets = keyset.couplets
    start = keyset.keys[keyset.start].start
    hops: dict[str, tuple[Hop, Hop]] = {}
    pending = [start]
    while pending:
        here = pending.pop()
        if here in hops:
            continue
        first, second = (_hop(keyset, lead.to.kind, lead.to.id) for lead in all_couplets[here].leads)
        hops[here] = (first, second)
        pending += [hop.couplet for hop in (first, second) if hop.couplet]
    sorter = TopologicalSorter({here: [h.couplet for h in pair if h.couplet] for here, pair in hops.items()})
    backwards = list(sorter.static_order())
    asked = {here: frozenset(c for lead in all_couplets[here].leads for c in lead.holds) for here in hops}
    below: dict[str, frozenset[str]] = {}
    for here in backwards:
        below[here] = asked[here].union(*(below[h.couplet] for h in hops[here] if h.couplet))
    order = backwards[::-1]
    return Routes(start, {c: all_couplets[c] for c in order}, {c: hops[c] for c in order}, asked, below)


def _hop(keyset: KeySet, kind: TargetKind, target: str) -> Hop:
    if kind is TargetKind.TAXON:
        return Hop(taxon=target)
    return Hop(couplet=keyset.keys[target].start if kind is TargetKind.KEY else target)
