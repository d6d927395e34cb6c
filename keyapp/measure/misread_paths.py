"""Misread paths: the likeliest run of wrong answers to a dangerous result, and away from one."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from keyapp.engine import Tables
from keyapp.measure.routes import Routes

__all__ = ["MisreadPath", "Turn", "misread_paths"]

END = "="
"""Node names of ends start with it; couplet ids never do."""


@dataclass(frozen=True, slots=True)
class Turn:
    """An answer on the path that the specimen does not make likeliest.

    Attributes:
        couplet, lead: the couplet, and 1 or 2 for its lead.
        cost: -log of how likely the answer is against the likeliest (natural logarithm, above 0).
        misread: the specimen never shows what the lead asserts; otherwise it is a rarer state, read right.
    """

    couplet: str
    lead: int
    cost: float
    misread: bool


@dataclass(frozen=True, slots=True)
class MisreadPath:
    """The cheapest path of one specimen to one end.

    Attributes:
        specimen, end: taxon ids: what is there, and where the key ends.
        cost: sum of the costs of its turns; exp(-cost) is how likely it is against the likeliest answers.
        turns: the answers that cost something, in order.
    """

    specimen: str
    end: str
    cost: float
    turns: tuple[Turn, ...]

    @property
    def misreads(self) -> int:
        """How many of its turns are misread."""
        return sum(turn.misread for turn in self.turns)


def misread_paths(
    tables: Tables, graph: Routes, errors: Mapping[str, float]
) -> tuple[dict[str, MisreadPath], dict[str, MisreadPath]]:
    """For each dangerous result: the cheapest path to it, and from a specimen of it to an end that does not name it.

    Choosing lead i of a couplet costs -log[P(i|t) / max over leads of P(i'|t)], with P(i|t) = (1-e) fit + e (1-fit)
    and fit the chance that specimen t shows what the lead asserts, against the other lead; even where the couplet
    does not apply to it. Each answer is weighed on its own: that a state once drawn stays the same is not followed
    here. The path to a result is the cheapest over all specimens that are not of its danger group. `tables` are
    those of `as_described`. Shortest paths by Dijkstra's rule. Returns two mappings by taxon id; a result
    that no such path reaches is left out.
    """
    gated = {taxon: dangers for taxon in graph.ends if (dangers := _dangers(tables, taxon))}
    towards: dict[str, MisreadPath] = {}
    away: dict[str, MisreadPath] = {}
    for specimen, taxon in tables.keyset.taxa.items():
        if taxon.outside:
            continue
        own = _dangers(tables, specimen)
        found = _cheapest(tables, graph, errors, specimen)
        for end, dangers in gated.items():
            path = found.get(end)
            if path is not None and not own & dangers:
                towards[end] = _cheaper(towards.get(end), path)
        if own:
            for end, path in found.items():
                if not own & _dangers(tables, end):
                    away[specimen] = _cheaper(away.get(specimen), path)
    return towards, away


def _cheaper(old: MisreadPath | None, new: MisreadPath) -> MisreadPath:
    if old is None:
        return new
    return min(old, new, key=lambda path: (round(path.cost, 9), path.specimen, path.end))


def _dangers(tables: Tables, taxon: str) -> frozenset[str]:
    return frozenset(tables.rows[row].danger for row in tables.rows_of[taxon]) - {""}


def _cheapest(tables: Tables, graph: Routes, errors: Mapping[str, float], specimen: str) -> dict[str, MisreadPath]:
    """The cheapest path of one specimen to every end."""
    import networkx

    network = networkx.DiGraph()
    turns: dict[tuple[str, str], Turn] = {}
    for couplet, hops in graph.hops.items():
        for index, (turn, hop) in enumerate(zip(_turns(tables, graph, errors, specimen, couplet), hops, strict=True)):
            ahead = hop.couplet or END + hop.taxon
            known = turns.get((couplet, ahead))
            # Both leads may go to one place: the cheaper counts.
            if known is None or turn.cost < known.cost:
                turns[couplet, ahead] = turn
                network.add_edge(couplet, ahead, cost=turn.cost, lead=index)
    single_source: Callable[..., Any] = networkx.single_source_dijkstra
    costs, ways = single_source(network, graph.start, weight="cost")
    found = {}
    for node, way in ways.items():
        if node.startswith(END):
            taken = [turns[step] for step in pairwise(way)]
            end = node.removeprefix(END)
            found[end] = MisreadPath(specimen, end, float(costs[node]), tuple(t for t in taken if t.cost > 1e-12))
    return found


def _turns(
    tables: Tables, graph: Routes, errors: Mapping[str, float], specimen: str, couplet: str
) -> tuple[Turn, Turn]:
    row = tables.row(specimen)
    fits = [1.0, 1.0]
    applies = True
    for side, lead in enumerate(graph.couplets[couplet].leads):
        for character, states in lead.holds.items():
            table = tables.characters[character]
            applies = applies and bool(table.applies[row])
            shown = table.chance[row]
            fits[side] *= sum(float(shown[k]) for k, s in enumerate(table.character.state_ids) if s in states)
    total = sum(fits)
    even = not applies or total <= 0
    first = 0.5 if even else fits[0] / total
    error = errors[couplet]
    told = [(1 - error) * share + error * (1 - share) for share in (first, 1 - first)]
    top = max(told)
    one, two = (
        Turn(couplet, side + 1, -math.log(max(told[side], 1e-300) / top), not even and fits[side] <= 0)
        for side in (0, 1)
    )
    return one, two
