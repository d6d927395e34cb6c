"""Every run through the key with at most one misread answer, counted exactly.

A run is one specimen (a state of each character the key asks about, of those it may show) and one sheet
of answers. Couplets are taken in an order in which each stands before those it leads to; what is carried
from one to the next is which couplets are still to be asked, the states already looked at that will be
asked about again, what has been misread, how many *can't tell* are left, and which independence groups
have cleared. Runs that agree in these are counted together, as exact whole numbers.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import product

from keyapp.engine import Tables
from keyapp.model import Choice, Couplet, KeySet, LeadAnswer, TargetKind
from keyapp.proof.facts import counts_against
from keyapp.proof.specimen import LEADS, couplet_characters, may_show, truthful

__all__ = ["CANT_TELLS", "Cover", "Said", "count_runs"]

CANT_TELLS = 2
"""*Can't tell* in one run, at most. More would only take answers away that could have cleared."""

LOOKED = ""
"""Stands for the state of a character that has been looked at and will not be asked about again."""

Groups = frozenset[str]
SPENT: Groups = frozenset({""})
"""Stands for an error about something that will not be asked about again."""

Seen = tuple[tuple[str, str], ...]
Trail = tuple["Trail", "Said", Seen] | None
"""The answers of one run, last first, each with the states looked at by then."""


@dataclass(frozen=True, slots=True)
class Said:
    """One answer of a run: `how` is `seen`, `misread`, `misread again`, `made up` or `can't tell`."""

    couplet: str
    choice: Choice
    how: str


@dataclass(frozen=True, slots=True)
class Cover:
    """All runs of one result.

    Attributes:
        taxon: result id.
        right: runs without an error.
        misread: runs with one misread answer and all that follows from it.
        clearing: most clearing answers in any run, 2 standing for two and more.
        walk: a run that has so many.
        specimen: the states looked at in it.
        ruled_out: runs in which the clearing answers are enough to rule the result out.
    """

    taxon: str
    right: int
    misread: int
    clearing: int
    walk: tuple[Said, ...]
    specimen: Mapping[str, str]
    ruled_out: int

    @property
    def runs(self) -> int:
        """All runs counted."""
        return self.right + self.misread


@dataclass(frozen=True, slots=True)
class _Place:
    """What decides how a run may go on: couplets to be asked, states that will be asked about again, the error."""

    reached: int
    seen: Seen
    slip: Groups


Rest = tuple[int, frozenset[Groups]]
"""*Can't tell* left; and the groups that have cleared: at most one set of them, or two disjoint ones."""

Table = dict[_Place, dict[Rest, tuple[int, Trail]]]
"""Runs so far: how many there are, and one of them."""


@dataclass(slots=True)
class _Node:
    """A couplet made ready for one result.

    `clears`: choices that count against the result by themselves; `may_clear`: those that do so by
    themselves or with other answers about the same character, with which they may meet in a state
    that the result never shows.
    """

    couplet: Couplet
    applies: bool
    characters: tuple[str, ...]
    groups: Groups
    clears: frozenset[Choice]
    may_clear: frozenset[Choice]
    goes: dict[Choice, int]
    below: int
    asked: Mapping[str, int]
    closes: tuple[str, ...]


def count_runs(tables: Tables, taxon: str) -> Cover:
    """Count every run before `taxon` and find the most clearing answers in any.

    One answer at most is misread, to any other lead or to *neither fits*. What follows from it: couplets
    about the same independence group may be misread again, and those that do not apply to what is there,
    as all about the body of a spider do not to a web, are answered any way.
    """
    nodes, classes = _prepare(tables, taxon)
    memo: dict[object, object] = {}
    table: Table = {_Place(1, (), frozenset()): {(CANT_TELLS, frozenset()): (1, None)}}
    for index, node in enumerate(nodes):
        after: Table = {}
        for place, rests in table.items():
            for then, times, said, seen in _steps(nodes, index, place, classes, memo):
                into = after.setdefault(then, {})
                for rest, (count, trail) in rests.items():
                    moved = rest if said is None else _moved(rest, node, said)
                    if moved is None:
                        continue
                    if moved in into:
                        old, first = into[moved]
                        into[moved] = (old + count * times, first)
                    else:
                        into[moved] = (count * times, trail if said is None else (trail, said, seen))
        table = {place: rests for place, rests in after.items() if rests}
    return _summed(tables, taxon, table)


def _steps(
    nodes: list[_Node], index: int, place: _Place, classes: Mapping[str, Mapping[str, int]], memo: dict[object, object]
) -> Iterator[tuple[_Place, int, Said | None, Seen]]:
    """What may come of a couplet: where a run then is, how many runs this is, the answer, and the states seen for it.

    A couplet that has not been reached is passed over.
    """
    node = nodes[index]
    if not place.reached >> index & 1:
        kept, times = _close(place, nodes, index, classes, memo)
        yield kept, times, None, ()
        return
    for seen, times in _looks(place, node, classes):
        for choice, how, slip in _answers(node, dict(seen), place.slip):
            then = _Place(place.reached & ~(1 << index) | node.goes[choice], seen, slip)
            kept, more = _close(then, nodes, index, classes, memo)
            yield kept, times * more, Said(node.couplet.id, choice, how), seen


def _moved(rest: Rest, node: _Node, said: Said) -> Rest | None:
    """What is left after an answer; None where there is no *can't tell* left."""
    left, cleared = rest
    if said.choice is Choice.CANT_TELL:
        return (left - 1, cleared) if left else None
    if said.choice in (node.clears if said.how == "seen" else node.may_clear):
        cleared = _with(cleared, node.groups)
    return left, cleared


def _summed(tables: Tables, taxon: str, table: Table) -> Cover:
    need = min(tables.weights.ruled_out_answers, 2)
    right = misread = out = most = 0
    worst: Trail = None
    for place, rests in table.items():
        for (_, cleared), (count, trail) in rests.items():
            right += 0 if place.slip else count
            misread += count if place.slip else 0
            out += count if len(cleared) >= need else 0
            if worst is None or len(cleared) > most:
                most, worst = len(cleared), trail
    walk: list[Said] = []
    specimen: dict[str, str] = {}
    while worst is not None:
        worst, said, seen = worst
        walk.insert(0, said)
        # Later on a state may stand for others like it; the one first looked at is meant.
        specimen.update(seen)
    return Cover(taxon, right, misread, most, tuple(walk), dict(sorted(specimen.items())), out)


def _with(cleared: frozenset[Groups], groups: Groups) -> frozenset[Groups]:
    """Clearing answers so far, with one more: two that share no group are as bad as it gets.

    While all share a group they count once; the first is kept, so that this never counts too few
    where answers speak of one group each, and the sets that overlap are joined by what they share.
    """
    if len(cleared) == 2:
        return cleared
    if not cleared:
        return frozenset({groups})
    (held,) = cleared
    if not held & groups:
        return frozenset({held, groups})
    return frozenset({held & groups})


def _answers(node: _Node, known: Mapping[str, str], slip: Groups) -> Iterator[tuple[Choice, str, Groups]]:
    """Answers that this observer may give: choice, how, and what is misread by then."""
    yield Choice.CANT_TELL, "can't tell", slip
    if not node.applies:
        for choice in (*LEADS, Choice.NEITHER):
            yield choice, "made up", slip
        return
    right = truthful(node.couplet, known)
    for choice in (*LEADS, Choice.NEITHER):
        if choice in right:
            yield choice, "seen", slip
        elif not slip:
            yield choice, "misread", node.groups
        elif slip & node.groups:
            yield choice, "misread again", slip


def _looks(place: _Place, node: _Node, classes: Mapping[str, Mapping[str, int]]) -> Iterator[tuple[Seen, int]]:
    """The states the characters of a couplet may turn out to have, and how many specimens have them."""
    if not node.applies:
        yield place.seen, 1
        return
    seen = dict(place.seen)
    new = [c for c in node.characters if c not in seen]
    for states in product(*(classes[c].items() for c in new)):
        times = 1
        found = dict(seen)
        for character, (value, many) in zip(new, states, strict=True):
            found[character] = value
            times *= many
        yield tuple(sorted(found.items())), times


def _close(
    place: _Place,
    nodes: list[_Node],
    index: int,
    classes: Mapping[str, Mapping[str, int]],
    memo: dict[object, object],
) -> tuple[_Place, int]:
    """Forget what is not asked about again; a character never looked at may have had any state."""
    times = 1
    seen = dict(place.seen)
    for character in nodes[index].closes:
        if seen.pop(character, None) is None:
            times *= sum(classes[character].values())
    below, groups = _below(nodes, place.reached, memo)
    asked = nodes[index].asked
    seen = {c: _alike(nodes, classes[c], c, value, asked[c] & below, memo) for c, value in seen.items()}
    slip = place.slip if not place.slip or place.slip & groups else SPENT
    return _Place(place.reached, tuple(sorted(seen.items())), slip), times


def _below(nodes: list[_Node], reached: int, memo: dict[object, object]) -> tuple[int, Groups]:
    """Couplets that may still be asked, and the independence groups of those that apply."""
    if reached not in memo:
        below = 0
        for place, node in enumerate(nodes):
            if reached >> place & 1:
                below |= node.below
        left = [node.groups for i, node in enumerate(nodes) if node.applies and below >> i & 1]
        memo[reached] = (below, frozenset().union(*left))
    return memo[reached]  # type: ignore[return-value]


def _alike(
    nodes: list[_Node],
    values: Mapping[str, int],
    character: str,
    value: str,
    couplets: int,
    memo: dict[object, object],
) -> str:
    """The first state that `couplets` do not tell from this one; LOOKED where none of them asks about it."""
    if not couplets or value == LOOKED:
        return LOOKED
    key = (character, value, couplets)
    if key not in memo:
        leads = [lead for i, node in enumerate(nodes) if couplets >> i & 1 for lead in node.couplet.leads]
        held = [lead.holds.get(character, frozenset()) for lead in leads]
        memo[key] = next(other for other in values if all((other in states) == (value in states) for states in held))
    return memo[key]  # type: ignore[return-value]


def _prepare(tables: Tables, taxon: str) -> tuple[list[_Node], dict[str, dict[str, int]]]:
    keyset = tables.keyset
    shows = may_show(keyset, keyset.taxa[taxon])
    order = _order(keyset)
    place = {couplet: i for i, couplet in enumerate(order)}
    nodes = []
    for couplet_id in order:
        couplet = keyset.couplets[couplet_id]
        characters = couplet_characters(couplet)
        ways = [_bit(keyset, place, couplet, side) for side in (0, 1)]
        clears = frozenset(c for c in LEADS if counts_against(tables, taxon, [LeadAnswer(couplet_id, c)]))
        may_clear = clears | {c for c in LEADS if _may_meet(keyset, couplet, c, shows)}
        nodes.append(
            _Node(
                couplet,
                all(c in shows for c in characters),
                characters,
                frozenset(keyset.characters[c].group for c in characters),
                clears,
                may_clear,
                {
                    Choice.FIRST: ways[0],
                    Choice.SECOND: ways[1],
                    Choice.NEITHER: ways[0] | ways[1],
                    Choice.CANT_TELL: ways[0] | ways[1],
                },
                0,
                {},
                (),
            )
        )
    asked: dict[str, int] = {}
    for i, node in reversed(list(enumerate(nodes))):
        onward = [nodes[at].below for at in range(i + 1, len(nodes)) if node.goes[Choice.NEITHER] >> at & 1]
        node.below = 1 << i
        for mask in onward:
            node.below |= mask
        node.asked = asked
        if node.applies:
            for character in node.characters:
                asked[character] = asked.get(character, 0) | 1 << i
    last = {c: i for i, node in enumerate(nodes) if node.applies for c in node.characters}
    for i, node in enumerate(nodes):
        node.closes = tuple(sorted(c for c, at in last.items() if at == i))
    return nodes, {c: _classes(nodes, c, shows[c]) for c in last}


def _may_meet(keyset: KeySet, couplet: Couplet, choice: Choice, shows: Mapping[str, tuple[str, ...]]) -> bool:
    """Whether a lead leaves a state open that the result never shows, and another couplet asks the same."""
    characters = couplet_characters(couplet)
    if len(characters) != 1 or keyset.characters[characters[0]].never_clears:
        return False
    (name,) = characters
    if name not in shows or sum(couplet_characters(other) == characters for other in keyset.couplets.values()) < 2:
        return False
    held = couplet.leads[LEADS.index(choice)].holds.get(name, frozenset())
    return bool(held - set(shows[name]))


def _classes(nodes: list[_Node], character: str, states: tuple[str, ...]) -> dict[str, int]:
    """States that no couplet tells apart, as one of them and how many they are."""
    found: dict[tuple[bool, ...], list[str]] = {}
    for state in states:
        mark = tuple(state in lead.holds.get(character, ()) for node in nodes for lead in node.couplet.leads)
        found.setdefault(mark, []).append(state)
    return {alike[0]: len(alike) for alike in found.values()}


def _bit(keyset: KeySet, place: Mapping[str, int], couplet: Couplet, side: int) -> int:
    target = _target(keyset, couplet, side)
    return 1 << place[target] if target else 0


def _target(keyset: KeySet, couplet: Couplet, side: int) -> str:
    to = couplet.leads[side].to
    if to.kind is TargetKind.TAXON:
        return ""
    return keyset.keys[to.id].start if to.kind is TargetKind.KEY else to.id


def _order(keyset: KeySet) -> list[str]:
    """Couplets that can be reached, each before those it leads to (depth first, so that few are open at once)."""
    done: list[str] = []
    seen: set[str] = set()

    def visit(couplet_id: str) -> None:
        if couplet_id in seen:
            return
        seen.add(couplet_id)
        for side in (1, 0):
            target = _target(keyset, keyset.couplets[couplet_id], side)
            if target:
                visit(target)
        done.append(couplet_id)

    visit(keyset.keys[keyset.start].start)
    return done[::-1]
