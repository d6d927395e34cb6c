"""What the statements of a key rest on, counted: published sources, common practice, or memory."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keyapp.checker.rules.basis import other_bases
from keyapp.checker.texts import every_caution
from keyapp.model.keyset import KeySet
from keyapp.model.source import COMMON_PRACTICE, FROM_MEMORY, Basis

__all__ = ["Resting", "counted", "plain_count"]

HEALTH = "about health: cautions, advice, first aid"
LOOKS = "what results show, a character each"
OTHER = "misnames, garden notes, characters, regions, contacts"


@dataclass(frozen=True, slots=True)
class Resting:
    """How many statements of one part of a key rest on what. A statement counts once, at the strongest it names.

    >>> Resting(3, 1, 0).share
    0.75
    """

    published: int = 0
    practice: int = 0
    memory: int = 0

    @property
    def total(self) -> int:
        """All statements of the part."""
        return self.published + self.practice + self.memory

    @property
    def share(self) -> float:
        """The part that rests on a published source, 0-1; 0 of nothing."""
        return self.published / self.total if self.total else 0.0


def counted(keyset: KeySet) -> dict[str, Resting]:
    """Part of the key -> what its statements rest on.

    Of a description, each character it shows is a statement; `basis-for` goes before the basis of the whole.
    """
    levels: dict[str, list[str]] = {HEALTH: [], LOOKS: [], OTHER: []}
    for part, basis in _statements(keyset):
        levels[part].append(_level(basis))
    return {
        part: Resting(found.count("published"), found.count("practice"), found.count("memory"))
        for part, found in levels.items()
    }


def plain_count(keyset: KeySet) -> str:
    """The count as a plain table, one part a line."""
    rows = [
        f"{part}: {one.total} statements, {one.published} published ({one.share:.0%}), "
        f"{one.practice} common practice, {one.memory} from memory"
        for part, one in counted(keyset).items()
    ]
    return "\n".join(["What the statements rest on, each at the strongest it names:", *rows])


def _statements(keyset: KeySet) -> Iterator[tuple[str, Basis]]:
    for _, caution, _ in every_caution(keyset):
        yield HEALTH, caution.basis
    for taxon in keyset.taxa.values():
        for character in (*taxon.shows, *taxon.sizes):
            yield LOOKS, taxon.basis_for.get(character, taxon.basis)
    for _, basis, _ in other_bases(keyset):
        yield OTHER, basis


def _level(basis: Basis) -> str:
    if any(one not in (COMMON_PRACTICE, FROM_MEMORY) for one in basis):
        return "published"
    return "practice" if COMMON_PRACTICE in basis else "memory"
