"""Unused: states, characters, figures and sources that nothing in the key makes use of."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, note, problem
from keyapp.checker.rules.basis import every_basis
from keyapp.keyfile.problem import Problem
from keyapp.pictures.moving import SHOWN

__all__ = ["unused_characters", "unused_figures", "unused_sources"]


def unused_characters(facts: Facts) -> Iterator[Problem]:
    """K331, K332: characters and states that no lead asserts and no result shows."""
    used: dict[str, set[str]] = {}
    for couplet in facts.keyset.couplets.values():
        for lead in couplet.leads:
            for name, states in lead.holds.items():
                used.setdefault(name, set()).update(states)
    for taxon in facts.keyset.taxa.values():
        for name, shown in taxon.shows.items():
            used.setdefault(name, set()).update(shown)
        for name in taxon.sizes:
            used.setdefault(name, set())
    for character in facts.keyset.characters.values():
        if character.id not in used:
            yield problem("K331", character.place, f'No lead and no result uses the character "{character.id}".',
                          "Use it in a description or a lead, or remove it.")
            continue
        for state in character.states:
            if state.id not in used[character.id]:
                yield problem("K332", state.place, f'No lead and no result uses the state "{state.id}" of '
                              f'"{character.id}".', "Use it in a description or a lead, or remove it.")


def unused_figures(facts: Facts) -> Iterator[Problem]:
    """K333: figures that nothing shows. A measured character may have one of its own, by its id."""
    keyset = facts.keyset
    used = {taxon.figure for taxon in keyset.taxa.values()}
    used |= {state.figure for character in keyset.characters.values() for state in character.states}
    used |= {lead.figure for couplet in keyset.couplets.values() for lead in couplet.leads}
    used |= {character.id for character in keyset.characters.values() if character.number}
    used |= set(SHOWN)
    for figure in keyset.figures.values():
        if figure.id not in used:
            yield note("K333", figure.place, f'Nothing shows the figure "{figure.id}".', "Use it, or remove it.")


def unused_sources(facts: Facts) -> Iterator[Problem]:
    """K334: sources that no statement cites."""
    used = {source for _, basis, _ in every_basis(facts.keyset) for source in basis}
    reasons = " ".join(facts.keyset.weights.reasons.values())
    for source in facts.keyset.sources.values():
        if source.id not in used and source.id not in reasons:
            yield note("K334", source.place, f'No statement cites the source "{source.id}".', "Cite it, or remove it.")
