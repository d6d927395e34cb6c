"""Kinds and signs found by name and narrowed down, whatever is dangerous on top."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields

from keyapp.browse.compare import Line, splitting
from keyapp.browse.facts import Often, in_season, look_alikes, often_where
from keyapp.browse.kinds import Kind, kind_of, kinds
from keyapp.browse.now import asked_about
from keyapp.engine import Tables
from keyapp.model import Danger, Form
from keyapp.wording import Alike, Name, NameRank, names_in_use, names_like

__all__ = ["Filters", "Found", "Hit", "Meant", "find", "meant"]

_MOST_SPLIT = 12


@dataclass(frozen=True, slots=True)
class Filters:
    """What a list is narrowed to; None for each that is left open.

    Attributes:
        region: region, office or state code in which it is met.
        month: month (1-12) in which it is in season, or next to it.
        spot: find spot that its description lists.
        sort: sort of thing (see `Kind.sort`).
        danger: medical importance.
    """

    region: str | None = None
    month: int | None = None
    spot: str | None = None
    sort: str | None = None
    danger: Danger | None = None

    @property
    def here_and_now(self) -> bool:
        """Whether both a place and a month are set."""
        return self.region is not None and self.month is not None

    @property
    def count(self) -> int:
        """How many are set."""
        return sum(getattr(self, one.name) is not None for one in fields(self))


@dataclass(frozen=True, slots=True)
class Hit:
    """A kind in a list.

    Attributes:
        kind: the kind or sign.
        name: the name that agreed with what was said; None where nothing was said or a look-alike did.
        taken_for: what it is a dangerous look-alike of, where that alone brought it into the list.
        unusual: filters (`region`, `month`, `spot`) it does not fit, which drop no medically important kind.
    """

    kind: Kind
    name: Name | None = None
    taken_for: tuple[Kind, ...] = ()
    unusual: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Found:
    """A list: the medically important kinds first, then the others, and how many the filters left out."""

    dangers: tuple[Hit, ...]
    others: tuple[Hit, ...]
    left_out: int

    @property
    def hits(self) -> tuple[Hit, ...]:
        """All of them in order."""
        return (*self.dangers, *self.others)


@dataclass(frozen=True, slots=True)
class Meant:
    """What people may mean by a name.

    Attributes:
        hits: the kinds that the name stands for, dangers first.
        look_alikes: medically important kinds that one of them is taken for.
        split: the character that splits the kinds best; None where there is one kind, no such character, or so many
            kinds (`_MOST_SPLIT`) that no one question would help.
    """

    hits: tuple[Hit, ...]
    look_alikes: tuple[Hit, ...]
    split: Line | None


def find(tables: Tables, said: str = "", filters: Filters | None = None) -> Found:
    """Every kind that `said` may name and the filters leave, each once; all where both are empty.

    Medically important kinds stand first. Those that something in the list is taken for stand there too, whatever
    was said and whatever the filters are, since a name or a place does not tell what someone has. Region, month and
    find spot drop no medically important kind. What stands for things not in the key comes last. Where no name is
    given but a place and a month are, what people are likely to ask about there and then comes first of each part.
    """
    wanted = filters or Filters()
    named = _named(tables, said)
    kept = [Hit(kind, name, (), _unusual(tables, kind, wanted)) for kind, name in named]
    left = [hit for hit in kept if _fits(hit, wanted)]
    if not said.strip() and wanted.region is not None and wanted.month is not None:
        asked = {hit.kind.id: asked_about(tables, hit.kind, wanted.region, wanted.month) for hit in left}
        left.sort(key=lambda hit: -asked[hit.kind.id])
    dangers = [hit for hit in left if hit.kind.gated]
    others = sorted((hit for hit in left if not hit.kind.gated), key=lambda hit: hit.kind.outside)
    dangers += _taken_for(tables, left, wanted)
    shown = {hit.kind.id for hit in (*dangers, *others)}
    return Found(tuple(dangers), tuple(others), sum(kind.id not in shown for kind, _ in named))


def meant(tables: Tables, said: str) -> Meant:
    """What people may mean by `said`, and the question that splits it; nothing for an empty text.

    Of the names that agree with `said`, those that agree as closely as the closest count, whether they are right, loose
    or wrong: this is about what people say.
    """
    found = _alike(tables, said)
    closest = [one for one in found if one.closeness is found[0].closeness and one.name.rank is not NameRank.WIDER]
    named = _by_kind(tables, closest or [one for one in found if one.closeness is found[0].closeness])
    hits = sorted((Hit(kind, name) for kind, name in named), key=lambda hit: (not hit.kind.gated, hit.kind.outside))
    split = splitting(tables, [hit.kind for hit in hits]) if 1 < len(hits) <= _MOST_SPLIT else None
    return Meant(tuple(hits), tuple(_taken_for(tables, hits, Filters())), split)


def _alike(tables: Tables, said: str) -> tuple[Alike, ...]:
    return names_like(names_in_use(tables), said)


def _named(tables: Tables, said: str) -> list[tuple[Kind, Name | None]]:
    """The kinds a text may name, closest first; all by title, animals before signs, where it is empty."""
    if said.strip():
        return list(_by_kind(tables, _alike(tables, said)))
    taxa = {kind.id: tables.keyset.taxa[kind.id] for kind in kinds(tables)}

    def place(kind: Kind) -> tuple[bool, str]:
        return taxa[kind.id].form is not Form.ANIMAL, taxa[kind.id].title.say()

    return [(kind, None) for kind in sorted(kinds(tables), key=place)]


def _by_kind(tables: Tables, found: Sequence[Alike]) -> list[tuple[Kind, Name]]:
    """Each kind once, with the name that agrees best."""
    named: dict[str, tuple[Kind, Name]] = {}
    for one in found:
        for kind in _stands_for(tables, one.name):
            named.setdefault(kind.id, (kind, one.name))
    return list(named.values())


def _stands_for(tables: Tables, name: Name) -> tuple[Kind, ...]:
    if not name.group:
        return (kind_of(tables, name.taxon),)
    taxa = tables.keyset.taxa
    found = [kind for kind in kinds(tables) if any(taxa[taxon].danger_group == name.group for taxon in kind.taxa)]
    return tuple(sorted(found, key=lambda kind: taxa[kind.id].form is not Form.ANIMAL))


def _unusual(tables: Tables, kind: Kind, wanted: Filters) -> tuple[str, ...]:
    fails = []
    if wanted.region is not None and often_where(tables, kind, wanted.region) is Often.CARRIED:
        fails.append("region")
    if wanted.month is not None:
        season = in_season(tables, kind, wanted.region)
        if not {(wanted.month + step - 1) % 12 + 1 for step in (-1, 0, 1)} & set(season):
            fails.append("month")
    if wanted.spot is not None:
        places = [tables.keyset.taxa[taxon].places for taxon in kind.taxa]
        if all(places) and not any(wanted.spot in one for one in places):
            fails.append("spot")
    return tuple(fails)


def _fits(hit: Hit, wanted: Filters) -> bool:
    if wanted.sort is not None and hit.kind.sort != wanted.sort:
        return False
    if wanted.danger is not None and hit.kind.danger is not wanted.danger:
        return False
    return hit.kind.gated or not hit.unusual


def _taken_for(tables: Tables, hits: Sequence[Hit], wanted: Filters) -> list[Hit]:
    """The medically important kinds that something among `hits` is taken for and that are not among them."""
    here = {hit.kind.id for hit in hits}
    brought: dict[str, tuple[Kind, list[Kind]]] = {}
    for hit in hits:
        for other in look_alikes(tables, hit.kind):
            if other.gated and other.id not in here:
                brought.setdefault(other.id, (other, []))[1].append(hit.kind)
    return [Hit(kind, None, tuple(of), _unusual(tables, kind, wanted)) for kind, of in brought.values()]
