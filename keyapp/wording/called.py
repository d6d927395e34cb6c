"""Results by any name in use for them, however it is spelt."""

from __future__ import annotations

import re
from collections.abc import Iterator

from keyapp.engine import Feared, Tables, feared, feared_of
from keyapp.errors import UserError
from keyapp.model import KeySet, Taxon
from keyapp.model.names import closest

__all__ = ["feared_called", "taxa_called"]

_WORD = re.compile(r"[^\W_]+")
_PASSED = frozenset(["a", "an", "the", "is", "it", "one", "of", "this", "these"])
"""Words around a name that are no part of it."""

MOST_LETTERS = 80


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
        names = list(_names(tables))
        spelt = closest(wanted, [name for _, name, _ in names])
        for matches in _MATCHES:
            for rank in (0, 1, 2):
                found = [animal for level, name, animal in names if level == rank and matches(name, wanted, spelt)]
                if found:
                    # Whoever says "scorpion" may mean the dangerous ones as well.
                    found += [a for level, name, a in names if level == 0 and a.danger and f" {wanted} " in f" {name} "]
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


def _names(tables: Tables) -> Iterator[tuple[int, str, Feared]]:
    """Every name with what it stands for: 0 right, 1 loose, 2 wrong."""
    for group in tables.keyset.danger_groups.values():
        if any(tables.rows[row].danger == group.id for row in tables.gated):
            animal = feared(tables, group.id)
            for _, name in group.name.entries:
                yield 0, _plain(name), animal
            yield 0, _plain(group.id), animal
    for taxon in tables.keyset.taxa.values():
        animal = feared_of(tables, taxon.id)
        levels = (_true(taxon), taxon.popular_names, tuple(one.said for one in taxon.misnames))
        for rank, names in enumerate(levels):
            for name in names:
                yield rank, _plain(name), animal


def _true(taxon: Taxon) -> tuple[str, ...]:
    """Id, scientific name, then the common names in every language."""
    return (taxon.id, taxon.name, *(name for some in taxon.common_names.values() for name in some))


def _plain(text: str) -> str:
    """Small letters, single spaces, no articles, and every word in the singular as far as an s makes the plural."""
    words = [word for word in _WORD.findall(text.casefold()) if word not in _PASSED]
    return " ".join(w[:-1] if len(w) > 3 and w.endswith("s") and not w.endswith("ss") else w for w in words)
