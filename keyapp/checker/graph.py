"""The key as one graph: what each couplet can come from, what it can lead to, and by which steps."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from graphlib import TopologicalSorter

from keyapp.keyfile.links import couplet_of
from keyapp.model.graph import Lead, TargetKind
from keyapp.model.keyset import KeySet

__all__ = ["Graph", "Step", "build_graph", "path_text"]

_ORDINALS = ("first lead", "second lead")


@dataclass(frozen=True, slots=True)
class Step:
    """One lead of one couplet; it goes to a couplet or to a taxon."""

    couplet: str
    index: int
    lead: Lead
    to_couplet: str | None
    to_taxon: str | None

    @property
    def named(self) -> str:
        """How messages name it."""
        return f"{self.couplet} ({_ORDINALS[self.index]})"


@dataclass(frozen=True, slots=True)
class Graph:
    """A key without loops and broken links, prepared for questions about paths.

    Attributes:
        start: the first couplet.
        steps: couplet -> its two steps, for couplets that the start reaches, each before those it leads to.
        all_couplets: every couplet of every key.
        below: couplet -> taxa that can be reached from it.
        ways: couplet -> couplets that can be reached from it (itself not among them).
    """

    start: str
    steps: Mapping[str, tuple[Step, Step]]
    all_couplets: frozenset[str]
    below: Mapping[str, frozenset[str]]
    ways: Mapping[str, frozenset[str]]

    def taxa_of(self, step: Step) -> frozenset[str]:
        """Taxa that can be reached by a step."""
        if step.to_taxon is not None:
            return frozenset([step.to_taxon])
        return self.below.get(step.to_couplet or "", frozenset())

    def each_step(self) -> Iterator[Step]:
        """Every step that the start reaches."""
        for pair in self.steps.values():
            yield from pair

    def way_to(self, couplet: str) -> list[Step]:
        """The fewest steps from the start to a couplet."""
        return self._shortest(self.start, lambda step: step.to_couplet == couplet) if couplet != self.start else []

    def way_on(self, step: Step, taxon: str) -> list[Step]:
        """The fewest steps that go on after `step` and end at `taxon`."""
        if step.to_couplet is None:
            return []
        return self._shortest(step.to_couplet, lambda each: each.to_taxon == taxon)

    def _shortest(self, start: str, done: Callable[[Step], bool]) -> list[Step]:
        came: dict[str, Step | None] = {start: None}
        queue = deque([start])
        while queue:
            couplet = queue.popleft()
            for step in self.steps.get(couplet, ()):
                if done(step):
                    way = [step]
                    while (before := came[way[0].couplet]) is not None:
                        way.insert(0, before)
                    return way
                if step.to_couplet is not None and step.to_couplet not in came:
                    came[step.to_couplet] = step
                    queue.append(step.to_couplet)
        return []


def build_graph(keyset: KeySet) -> Graph:
    """Prepare the graph of a key set whose links are sound (`broken_links` finds nothing)."""
    couplets = keyset.couplets
    start = keyset.keys[keyset.start].start
    steps: dict[str, tuple[Step, Step]] = {}
    pending = [start]
    while pending:
        couplet = pending.pop()
        if couplet in steps:
            continue
        first, second = (
            Step(couplet, index, lead, couplet_of(keyset, lead.to),
                 lead.to.id if lead.to.kind is TargetKind.TAXON else None)
            for index, lead in enumerate(couplets[couplet].leads)
        )
        steps[couplet] = (first, second)
        pending.extend(step.to_couplet for step in (first, second) if step.to_couplet is not None)
    order = list(TopologicalSorter({
        couplet: [step.to_couplet for step in pair if step.to_couplet is not None] for couplet, pair in steps.items()
    }).static_order())
    below: dict[str, frozenset[str]] = {}
    ways: dict[str, frozenset[str]] = {}
    for couplet in order:
        taxa: set[str] = set()
        further: set[str] = set()
        for step in steps[couplet]:
            if step.to_taxon is not None:
                taxa.add(step.to_taxon)
            if step.to_couplet is not None:
                taxa |= below[step.to_couplet]
                further |= {step.to_couplet} | ways[step.to_couplet]
        below[couplet], ways[couplet] = frozenset(taxa), frozenset(further)
    return Graph(start, {couplet: steps[couplet] for couplet in reversed(order)}, frozenset(couplets), below, ways)


def path_text(way: list[Step], end: str) -> str:
    """Name a path couplet by couplet."""
    return " > ".join([*(step.named for step in way), end])
