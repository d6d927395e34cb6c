"""Propagation: where a specimen ends when its observer follows the key strictly, worked out exactly."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product

from keyapp.engine import Tables, build_tables
from keyapp.engine.likelihood import couplet_right
from keyapp.measure.routes import Hop, Routes

__all__ = ["Flow", "Way", "as_described", "own_errors", "same_error"]

Known = frozenset[tuple[str, int]]
"""True states, by character and index of the state, that matter further on."""

Node = tuple[str, Known]
"""A couplet, and what of the specimen is settled there."""

Errors = Mapping[str, float]
"""Couplet -> chance that it is misread (0-1)."""


@dataclass(frozen=True, slots=True)
class _Answer:
    """One kind of right answer at a node: its chance, the chance that it is lead 1, and where leads go."""

    chance: float
    first: float
    ahead: tuple[Node | str, Node | str]
    fits: str


@dataclass(frozen=True, slots=True)
class Flow:
    """Chances of one specimen at given error rates.

    Attributes:
        ends: taxon -> chance of ending there; they sum to 1.
        visits: couplet -> chance of being asked it.
        neither: couplet -> chance of being asked it while neither lead fits.
        inapplicable: couplet -> chance of being asked it while it does not apply.
    """

    ends: Mapping[str, float]
    visits: Mapping[str, float]
    neither: Mapping[str, float]
    inapplicable: Mapping[str, float]

    @property
    def couplets(self) -> float:
        """Expected number of couplets answered."""
        return sum(self.visits.values())


class Way:
    """Every way one taxon can take through the key.

    The animal's states are drawn once, by the frequencies of its description, and stay as they are
    when a character is met again. At each couplet the observer picks the lead that fits; where both or
    neither fit, and where the couplet does not apply to the taxon, either lead at even chance. Then, on
    its own at each couplet, a slip swaps the lead at the couplet's error rate. *Can't tell* and *neither
    fits* are not chosen: it is the printed key that is measured, not the program around it.
    """

    def __init__(self, tables: Tables, graph: Routes, taxon: str) -> None:
        """`tables` are those of `as_described`, so that only listed states are drawn."""
        self.taxon = taxon
        self.graph = graph
        self.start: Node = (graph.start, frozenset())
        self._row = tables.row(taxon)
        self._characters = tables.characters
        self._answers: dict[Node, tuple[_Answer, ...]] = {}
        layers: dict[str, dict[Node, None]] = {graph.start: {self.start: None}}
        for couplet in graph.couplets:
            for node in layers.get(couplet, {}):
                self._answers[node] = self._at(node)
                for answer in self._answers[node]:
                    for ahead in answer.ahead:
                        if not isinstance(ahead, str):
                            layers.setdefault(ahead[0], {})[ahead] = None

    def _at(self, node: Node) -> tuple[_Answer, ...]:
        couplet, known = node
        sides = self.graph.hops[couplet]
        merged: dict[tuple[float, str, tuple[Node | str, Node | str]], float] = {}
        for chance, first, fits, after in self._draws(couplet, known):
            ahead = (self._ahead(sides[0], after), self._ahead(sides[1], after))
            merged[first, fits, ahead] = merged.get((first, fits, ahead), 0.0) + chance
        return tuple(_Answer(chance, first, ahead, fits) for (first, fits, ahead), chance in merged.items())

    def _draws(self, couplet: str, known: Known) -> Iterator[tuple[float, float, str, Known]]:
        """Chance, chance of lead 1, how the leads fit, and what is settled then."""
        asked = sorted(self.graph.asked[couplet])
        if not all(self._characters[c].applies[self._row] for c in asked):
            yield 1.0, 0.5, "inapplicable", known
            return
        settled = dict(known)
        choices = []
        for name in asked:
            shown = self._characters[name].chance[self._row]
            if name in settled:
                choices.append([(name, settled[name], 1.0)])
            else:
                choices.append([(name, k, float(p)) for k, p in enumerate(shown) if p > 0])
        for drawn in product(*choices):
            chance = 1.0
            states = {}
            for name, k, p in drawn:
                chance *= p
                states[name] = self._characters[name].character.state_ids[k]
            leads = self.graph.couplets[couplet].leads
            one, two = (all(states[c] in held for c, held in lead.holds.items()) for lead in leads)
            fits = "one" if one != two else "neither" if not one else "both"
            first = 0.5 if one == two else float(one)
            yield chance, first, fits, known | {(name, k) for name, k, _ in drawn}

    def _ahead(self, hop: Hop, known: Known) -> Node | str:
        if hop.taxon:
            return hop.taxon
        needed = self.graph.asked_below[hop.couplet]
        return hop.couplet, frozenset(item for item in known if item[0] in needed)

    def arriving(self, errors: Errors) -> dict[Node | str, float]:
        """Chance of coming to each node and each end."""
        mass: dict[Node | str, float] = {self.start: 1.0}
        for node, answers in self._answers.items():
            here = mass.get(node, 0.0)
            if here == 0.0:
                continue
            error = errors[node[0]]
            for answer in answers:
                first = _told(answer.first, error)
                for share, ahead in zip((first, 1.0 - first), answer.ahead, strict=True):
                    if share > 0:
                        mass[ahead] = mass.get(ahead, 0.0) + here * answer.chance * share
        return mass

    def flow(self, errors: Errors) -> Flow:
        """The chances of this specimen at these error rates."""
        ends: dict[str, float] = {}
        counts: dict[str, dict[str, float]] = {"visits": {}, "neither": {}, "inapplicable": {}}
        for node, mass in self.arriving(errors).items():
            if isinstance(node, str):
                ends[node] = mass
                continue
            couplet = node[0]
            counts["visits"][couplet] = counts["visits"].get(couplet, 0.0) + mass
            for answer in self._answers[node]:
                if answer.fits in counts:
                    table = counts[answer.fits]
                    table[couplet] = table.get(couplet, 0.0) + mass * answer.chance
        return Flow(ends, **counts)

    def slips(self, errors: Errors, cost: Mapping[str, float]) -> dict[str, float]:
        """By couplet, how much the expected `cost` (by end) would fall were it alone never misread.

        Exact: no path meets a couplet twice, so the expected cost is linear in each error rate.
        """
        mass = self.arriving(errors)
        value: dict[Node | str, float] = {}
        lost: dict[str, float] = {}
        for node in reversed(self._answers):
            couplet = node[0]
            error = errors[couplet]
            total = 0.0
            for answer in self._answers[node]:
                one, two = (value[a] if not isinstance(a, str) else cost[a] for a in answer.ahead)
                first = _told(answer.first, error)
                total += answer.chance * (first * one + (1.0 - first) * two)
                gap = answer.chance * (first - answer.first) * (one - two)
                lost[couplet] = lost.get(couplet, 0.0) + mass.get(node, 0.0) * gap
            value[node] = total
        return lost

    def asked_from(self, errors: Errors) -> dict[str, float]:
        """By couplet: chance of being asked it, times the expected couplets from there on (itself counted)."""
        mass = self.arriving(errors)
        beyond: dict[Node | str, float] = {}
        found: dict[str, float] = {}
        for node in reversed(self._answers):
            total = 1.0
            for answer in self._answers[node]:
                one, two = (0.0 if isinstance(a, str) else beyond[a] for a in answer.ahead)
                first = _told(answer.first, errors[node[0]])
                total += answer.chance * (first * one + (1.0 - first) * two)
            beyond[node] = total
            found[node[0]] = found.get(node[0], 0.0) + mass.get(node, 0.0) * total
        return found

    def by_step(self, errors: Errors) -> Iterator[dict[str, float]]:
        """After 0, 1, 2, ... answers: chance of standing at each couplet, or of having ended at each taxon."""
        mass: dict[Node | str, float] = {self.start: 1.0}
        while True:
            places: dict[str, float] = {}
            for node, here in mass.items():
                name = f"={node}" if isinstance(node, str) else node[0]
                places[name] = places.get(name, 0.0) + here
            yield places
            if all(isinstance(node, str) for node in mass):
                return
            after: dict[Node | str, float] = {}
            for node, here in mass.items():
                if isinstance(node, str):
                    after[node] = after.get(node, 0.0) + here
                    continue
                for answer in self._answers[node]:
                    first = _told(answer.first, errors[node[0]])
                    for share, ahead in zip((first, 1.0 - first), answer.ahead, strict=True):
                        if share > 0:
                            after[ahead] = after.get(ahead, 0.0) + here * answer.chance * share
            mass = after


def _told(first: float, error: float) -> float:
    """Chance that lead 1 is chosen when it is right at chance `first`."""
    return (1.0 - error) * first + error * (1.0 - first)


def as_described(tables: Tables) -> Tables:
    """The same tables with nothing set aside for states that no description lists."""
    keyset = tables.keyset
    return build_tables(replace(keyset, weights=replace(keyset.weights, unlisted=0.0)))


def same_error(graph: Routes, error: float) -> dict[str, float]:
    """One error rate for every couplet."""
    return dict.fromkeys(graph.couplets, error)


def own_errors(tables: Tables, graph: Routes) -> dict[str, float]:
    """Each couplet's own rate: that of the least reliable character that its leads assert."""
    return {name: 1.0 - couplet_right(tables, couplet, frozenset()) for name, couplet in graph.couplets.items()}
