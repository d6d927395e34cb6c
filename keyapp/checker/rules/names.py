"""Names: what a character applies to, and what separates look-alikes, must match the results."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, note, problem
from keyapp.engine.tables import applies
from keyapp.keyfile.problem import Problem, nearest

__all__ = ["applies_to_something", "look_alikes_differ", "shown_characters_apply"]


def applies_to_something(facts: Facts) -> Iterator[Problem]:
    """K381: a name in `applies-to` that no result has, or a form that none has."""
    taxa = facts.keyset.taxa.values()
    names = {name for taxon in taxa for name in taxon.group_names}
    forms = {str(taxon.form) for taxon in taxa}
    for character in facts.keyset.characters.values():
        rule = character.applies_to
        for name in (*rule.groups, *rule.not_groups):
            if name not in names:
                yield problem("K381", character.place, f'"{character.id}" applies to "{name}", but no result has a '
                              "class, order, family or danger group of that name.", nearest(name, names))
        for form in rule.forms:
            if form not in forms:
                yield problem("K381", character.place, f'"{character.id}" applies to the form "{form}", which no '
                              "result has.", nearest(form, forms))


def shown_characters_apply(facts: Facts) -> Iterator[Problem]:
    """K382: a description lists a character that does not apply to it; the engine passes over it."""
    characters = facts.keyset.characters
    for taxon in facts.keyset.taxa.values():
        for name in taxon.shows:
            character = characters.get(name)
            if character is not None and not applies(character.applies_to, taxon):
                yield note("K382", taxon.place, f'"{taxon.id}" shows "{name}", which does not apply to it, so that it '
                           "counts for nothing.", f'Remove it, or widen `applies-to` of "{name}".')


def look_alikes_differ(facts: Facts) -> Iterator[Problem]:
    """K383: the character said to separate two look-alikes does not: both show the same states."""
    taxa = facts.keyset.taxa
    for taxon in taxa.values():
        for look_alike in taxon.look_alikes:
            other = taxa.get(look_alike.taxon)
            own = taxon.shows.get(look_alike.character)
            its = other.shows.get(look_alike.character) if other else None
            if own and its and own == its:
                yield note("K383", look_alike.place, f'"{taxon.id}" and "{look_alike.taxon}" show the same states of '
                           f'"{look_alike.character}", which is said to separate them.',
                           "Name a character in which they differ, or mend a description.")
