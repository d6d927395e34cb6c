"""Results by any name in use for them, however it is spelt."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum

from rapidfuzz.distance import OSA

from keyapp.engine import Feared, Tables, feared, feared_of
from keyapp.errors import UserError
from keyapp.model import KeySet, Taxon
from keyapp.model.names import closest

__all__ = ["Alike", "Closeness", "Name", "NameRank", "feared_called", "names_in_use", "names_like", "taxa_called"]

_WORD = re.compile(r"[^\W_]+")
_PASSED = frozenset(["a", "an", "the", "is", "it", "one", "of", "this", "these"])
"""Words around a name that are no part of it."""

MOST_LETTERS = 80


class NameRank(IntEnum):
    """How right a name is for what it stands for, best first."""

    RIGHT = 0
    LOOSE = 1
    WRONG = 2
    WIDER = 3
    """Of a class, order or family that it belongs to."""


class Closeness(IntEnum):
    """How a name agrees with what was said, closest first."""

    EXACT = 0
    WITHIN = 1
    """The whole name stands in what was said."""
    PART = 2
    """What was said is a part of the name, in whole words."""
    BEGUN = 3
    """Every word that was said begins a word of the name."""
    SPELT = 4
    """Every word that was said is like a word of the name."""


@dataclass(frozen=True, slots=True)
class Name:
    """A name in use: how right it is, as written, made plain, and the danger group or result it stands for.

    `shown` is empty for an id, which nobody says.
    """

    rank: NameRank
    shown: str
    plain: str
    group: str = ""
    taxon: str = ""


@dataclass(frozen=True, slots=True)
class Alike:
    """A name that agrees with what was said, and how."""

    closeness: Closeness
    name: Name


def taxa_called(keyset: KeySet, said: str) -> tuple[str, ...]:
    """Ids of the results that `said` names, by common, popular or wrong name; none for an empty text.

    A name counts where it stands in `said` in singular or plural.
    """
    plain = f" {' '.join(said.casefold().split())} "
    if not plain.strip():
        return ()
    found = []
    for taxon in keyset.taxa.values():
        names = [*_true(taxon)[2:], *taxon.popular_names, *(one.said for one in taxon.misnames)]
        if any(f" {name.casefold()}{end} " in plain for name in names for end in ("", "s")):
            found.append(taxon.id)
    return tuple(found)


def feared_called(tables: Tables, said: str) -> tuple[Feared, ...]:
    """The animals that `said` may name, dangers first; several where the name is in use for several.

    Capitals, hyphens, plurals and a word or two around the name do not matter. A name that is right
    goes before a loose or wrong one, a whole name before a part of one; what matches none is taken
    as misspelt. Raises UserError where nothing is like it.
    """
    wanted = _plain(said[:MOST_LETTERS])
    found: list[Feared] = []
    if wanted:
        names = [(one.rank, one.plain, _animal(tables, one)) for one in _narrow(tables)]
        spelt = closest(wanted, [name for _, name, _ in names])
        for matches in _MATCHES:
            for rank in (NameRank.RIGHT, NameRank.LOOSE, NameRank.WRONG):
                found = [animal for level, name, animal in names if level is rank and matches(name, wanted, spelt)]
                if found:
                    # Whoever says "scorpion" may mean the dangerous ones as well.
                    found += [
                        a for level, name, a in names
                        if level is NameRank.RIGHT and a.danger and f" {wanted} " in f" {name} "
                    ]  # fmt: skip
                    return tuple(sorted(dict.fromkeys(found), key=lambda animal: not animal.danger))
    dangers = ", ".join(group.name.say() for group in tables.keyset.danger_groups.values())
    raise UserError(
        f"No animal in this key is called “{said.strip()[:MOST_LETTERS]}”.",
        fix=f"Try another name for it, or one of: {dangers}.",
    )


_MATCHES = (
    lambda name, wanted, _spelt: name == wanted,
    lambda name, wanted, _spelt: f"{name} spider" == wanted or name == f"{wanted} spider",
    lambda name, wanted, _spelt: f" {name} " in f" {wanted} ",
    lambda name, wanted, _spelt: f" {wanted} " in f" {name} ",
    lambda name, _wanted, spelt: name == spelt,
)
"""Ways in which a name may be meant, closest first."""


def names_in_use(tables: Tables) -> tuple[Name, ...]:
    """Every name that stands for something in the key, those of wider groups last. Worked out once."""
    if "names in use" not in tables.memo:
        tables.memo["names in use"] = (*_narrow(tables), *_wider(tables.keyset))
    return tables.memo["names in use"]  # type: ignore[return-value]


def names_like(names: Sequence[Name], said: str) -> tuple[Alike, ...]:
    """The names that `said` may mean: closest first, then right before loose before wrong.

    Of those that stand within what was said the longest goes first, of all others the shortest.

    Capitals, hyphens, spaces, plurals and a word or two around a name do not matter, and a name may be only
    begun. Slips in the spelling count only where no name agrees without: one in a word of four to six letters,
    two in a longer one. None for an empty text.

    >>> names_like([Name(NameRank.RIGHT, "wolf spider", "wolf spider", taxon="wolf")], "Wolf-Spidrs")[0].closeness.name
    'SPELT'
    """
    wanted = _plain(said[:MOST_LETTERS])
    if not wanted:
        return ()
    found = [Alike(how, one) for one in names if (how := _agrees(one, wanted)) is not None]
    if not found:
        found = [Alike(Closeness.SPELT, one) for one in names if _spelt_like(one.plain, wanted)]

    def place(one: Alike) -> tuple[int, int, int]:
        length = len(one.name.plain)
        return one.closeness, one.name.rank, -length if one.closeness is Closeness.WITHIN else length

    return tuple(sorted(found, key=place))


def _agrees(name: Name, wanted: str) -> Closeness | None:
    plain = name.plain
    if plain in (wanted, f"{wanted} spider") or f"{plain} spider" == wanted or _joined(plain) == _joined(wanted):
        return Closeness.EXACT
    # "Spider" stands in "banana spider", but that is not a way to say "any spider".
    if f" {plain} " in f" {wanted} " and name.rank is not NameRank.WIDER:
        return Closeness.WITHIN
    if f" {wanted} " in f" {plain} ":
        return Closeness.PART
    words = plain.split()
    if all(any(word.startswith(part) for word in words) for part in wanted.split()):
        return Closeness.BEGUN
    return None


def _spelt_like(name: str, wanted: str) -> bool:
    """Whether every word of `wanted` is like one of the name; or all of it, where only the spaces differ."""
    words = name.split()
    if all(any(_is_slip(word, part) for word in words) for part in wanted.split()):
        return True
    return _is_slip(_joined(name), _joined(wanted))


def _joined(text: str) -> str:
    return text.replace(" ", "")


def _is_slip(right: str, said: str) -> bool:
    most = 0 if len(said) < 4 else 1 if len(said) < 7 else 2
    return OSA.distance(right, said, score_cutoff=most) <= most


def _animal(tables: Tables, name: Name) -> Feared:
    return feared(tables, name.group) if name.group else feared_of(tables, name.taxon)


def _narrow(tables: Tables) -> Iterator[Name]:
    """The names of danger groups, then of results."""
    for group in tables.keyset.danger_groups.values():
        if any(tables.rows[row].danger == group.id for row in tables.gated):
            for _, name in group.name.entries:
                yield Name(NameRank.RIGHT, name, _plain(name), group=group.id)
            yield Name(NameRank.RIGHT, "", _plain(group.id), group=group.id)
    for taxon in tables.keyset.taxa.values():
        yield Name(NameRank.RIGHT, "", _plain(taxon.id), taxon=taxon.id)
        misnames = tuple(one.said for one in taxon.misnames)
        levels = (_true(taxon)[1:], taxon.popular_names, misnames)
        for rank, names in zip((NameRank.RIGHT, NameRank.LOOSE, NameRank.WRONG), levels, strict=True):
            for name in names:
                yield Name(rank, name, _plain(name), taxon=taxon.id)


def _wider(keyset: KeySet) -> Iterator[Name]:
    """The names of the family, order and class of every result, scientific and plain, and its title."""
    for taxon in keyset.taxa.values():
        for _, title in taxon.title.entries:
            yield Name(NameRank.RIGHT, title, _plain(title), taxon=taxon.id)
        for level, name in (("family", taxon.family), ("order", taxon.order), ("class", taxon.class_)):
            if name and name != taxon.name:
                yield Name(NameRank.WIDER, name, _plain(name), taxon=taxon.id)
            plain = keyset.wording.get(f"{level}.{name}")
            for _, said in plain.entries if plain else ():
                yield Name(NameRank.WIDER, said, _plain(said), taxon=taxon.id)


def _true(taxon: Taxon) -> tuple[str, ...]:
    """Id, scientific name, then the common names in every language."""
    return (taxon.id, taxon.name, *(name for some in taxon.common_names.values() for name in some))


def _plain(text: str) -> str:
    """Small letters, single spaces, no articles, and every word in the singular as far as an s makes the plural."""
    words = [word for word in _WORD.findall(text.casefold()) if word not in _PASSED]
    return " ".join(w[:-1] if len(w) > 3 and w.endswith("s") and not w.endswith("ss") else w for w in words)
