"""Basis: every statement says what it rests on, and names sources that are listed."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, problem
from keyapp.checker.texts import every_caution
from keyapp.keyfile.problem import Problem, nearest
from keyapp.model.keyset import KeySet
from keyapp.model.place import Place
from keyapp.model.source import COMMON_PRACTICE, FROM_MEMORY, Basis

__all__ = ["every_basis", "known_sources", "other_bases", "stated_basis"]


def every_basis(keyset: KeySet) -> Iterator[tuple[Place, Basis, str]]:
    """Place, basis, and what rests on it, for everything that must have a basis."""
    for taxon in keyset.taxa.values():
        yield taxon.place, taxon.basis, f'The description of "{taxon.id}"'
        for name, basis in taxon.basis_for.items():
            yield taxon.place, basis, f'"{name}" in the description of "{taxon.id}"'
    for place, caution, called in every_caution(keyset):
        yield place, caution.basis, called
    yield from other_bases(keyset)


def other_bases(keyset: KeySet) -> Iterator[tuple[Place, Basis, str]]:
    """The same for all but the descriptions and what is said about health."""
    for character in keyset.characters.values():
        yield character.place, character.basis, f'The character "{character.id}"'
    for taxon in keyset.taxa.values():
        for misname in taxon.misnames:
            yield misname.place, misname.basis, f'The misname "{misname.said}"'
        if taxon.garden is not None:
            yield taxon.garden.place, taxon.garden.basis, f'The garden note of "{taxon.id}"'
    for region in keyset.regions.values():
        yield region.place, region.basis, f'The region "{region.id}"'
        for contact in region.contacts:
            yield contact.place, contact.basis, f'The contact "{contact.name}"'
    for word in keyset.notes.ask_instead:
        yield word.place, word.basis, f'The word "{word.id}" to ask about instead'
    for thing in keyset.notes.things:
        yield thing.place, thing.basis, f'The size of "{thing.id}"'


def stated_basis(facts: Facts) -> Iterator[Problem]:
    """K341: statements without a basis."""
    for place, basis, called in every_basis(facts.keyset):
        if not basis:
            yield problem("K341", place, f"{called} does not say what it rests on.",
                          f"Add `basis:` with source ids, or `{COMMON_PRACTICE}`, or `{FROM_MEMORY}`.")


def known_sources(facts: Facts) -> Iterator[Problem]:
    """K342: source ids that are not listed in `sources.yaml`."""
    sources = facts.keyset.sources
    for place, basis, called in every_basis(facts.keyset):
        for source in basis:
            if source not in sources and source not in (COMMON_PRACTICE, FROM_MEMORY):
                yield problem("K342", place, f'{called} cites "{source}", which is not in sources.yaml.',
                              nearest(source, sources))
