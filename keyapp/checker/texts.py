"""Every text that a user reads, each with its place and kind."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keyapp.keyfile.places import within
from keyapp.model.keyset import KeySet
from keyapp.model.place import Place
from keyapp.model.source import Caution
from keyapp.model.text import Text

__all__ = ["Reading", "every_caution", "every_text"]


@dataclass(frozen=True, slots=True)
class Reading:
    """One text to be read.

    Attributes:
        place: where it was written (the entry it belongs to).
        called: what it is, for messages.
        text: its wordings.
        plain: it must be easy to read: the reading grade and the list of jargon apply.
        quotes: it quotes what people say, so that a wrong word may stand in it.
    """

    place: Place
    called: str
    text: Text
    plain: bool = True
    quotes: bool = False


def _easy(place: Place, field: str, called: str, text: Text) -> Reading:
    return Reading(within(place, field), called, text)


def _other(place: Place, field: str, called: str, text: Text) -> Reading:
    return Reading(within(place, field), called, text, plain=False)


def _quote(place: Place, field: str, called: str, text: Text) -> Reading:
    return Reading(within(place, field), called, text, plain=False, quotes=True)


def every_caution(keyset: KeySet) -> Iterator[tuple[Place, Caution, str]]:
    """Place, caution, and what it is called, for cautions, advice and the emergency card."""
    for taxon in keyset.taxa.values():
        for caution in taxon.cautions:
            yield caution.place, caution, f'A caution of "{taxon.id}"'
        for caution in taxon.advice:
            yield caution.place, caution, f'An advice of "{taxon.id}"'
    emergency = keyset.emergency
    for caution in emergency.signs:
        yield caution.place, caution, "An emergency sign"
    for kind, steps in emergency.first_aid.items():
        for caution in steps:
            yield caution.place, caution, f'A first-aid step for "{kind}"'
    for caution in emergency.never:
        yield caution.place, caution, 'A "never" line'


def every_text(keyset: KeySet) -> Iterator[Reading]:
    """Every text of the key that reaches a screen, a sheet or a caller."""
    yield from _characters(keyset)
    yield from _taxa(keyset)
    yield from _keys(keyset)
    for place, caution, called in every_caution(keyset):
        yield _easy(place, "says", called, caution.says)
    for region in keyset.regions.values():
        yield _other(region.place, "name", f'The name of the region "{region.id}"', region.name)
        for contact in region.contacts:
            yield _easy(contact.place, "when", f'"When" of the contact "{contact.name}"', contact.when)
            yield _other(contact.place, "hours", f'The hours of the contact "{contact.name}"', contact.hours)
    for term in keyset.glossary.values():
        yield _other(term.place, "means", f'The meaning of "{term.term}"', term.means)
    for figure in keyset.figures.values():
        yield _other(figure.place, "alt", f'The alt text of "{figure.id}"', figure.alt)
    for name, text in keyset.wording.items():
        yield Reading(Place("wording.yaml", 1, name), f'The sentence "{name}"', text, plain=False)
    for spot in keyset.spots.values():
        yield _easy(spot.place, "label", f'The label of the find spot "{spot.id}"', spot.label)
    for word in keyset.notes.ask_instead:
        yield _easy(word.place, "why", f'The reason to ask instead of "{word.id}"', word.why)


def _characters(keyset: KeySet) -> Iterator[Reading]:
    for character in keyset.characters.values():
        of = f'of "{character.id}"'
        yield _easy(character.place, "question", f"The question {of}", character.question)
        yield _easy(character.place, "ask-caller", f"`ask-caller` {of}", character.ask_caller)
        yield _easy(character.place, "look", f"`look` {of}", character.look)
        yield _other(character.place, "never-clears", f"`never-clears` {of}", character.never_clears)
        for state in character.states:
            yield _easy(state.place, "label", f'The label of "{state.id}" {of}', state.label)
            yield _easy(state.place, "means", f'`means` of "{state.id}" {of}', state.means)
            for language, phrases in state.phrases.items():
                phrase = Text(tuple((language, words) for words in phrases))
                yield _quote(state.place, "phrases", f'A phrase of "{state.id}" {of}', phrase)


def _taxa(keyset: KeySet) -> Iterator[Reading]:
    for taxon in keyset.taxa.values():
        of = f'of "{taxon.id}"'
        yield _other(taxon.place, "title", f"The title {of}", taxon.title)
        yield _other(taxon.place, "stage", f"The stage {of}", taxon.stage)
        yield _easy(taxon.place, "diagnosis", f"The diagnosis {of}", taxon.diagnosis)
        yield _easy(taxon.place, "season", f"The season {of}", taxon.season)
        if taxon.garden is not None:
            yield _easy(taxon.garden.place, "says", f"The garden note {of}", taxon.garden.says)
        for misname in taxon.misnames:
            yield _quote(misname.place, "said", f"A misname {of}", Text.of(misname.said))
            yield _easy(misname.place, "fact", f'The fact on the misname "{misname.said}"', misname.fact)
        for other in taxon.look_alikes:
            yield _easy(other.place, "difference", f'The difference from "{other.taxon}"', other.difference)
        for language, names in taxon.common_names.items():
            names_text = Text(tuple((language, name) for name in names))
            yield _other(taxon.place, "common-names", f"A common name {of}", names_text)
        for name in taxon.popular_names:
            yield _other(taxon.place, "popular-names", f"A popular name {of}", Text.of(name))


def _keys(keyset: KeySet) -> Iterator[Reading]:
    for key in keyset.keys.values():
        yield Reading(Place(key.place.file, 1, "title"), f'The title of the key "{key.id}"', key.title, plain=False)
        yield Reading(Place(key.place.file, 1, "scope"), f'The scope note of "{key.id}"', key.scope)
        for redirect in key.redirects:
            yield _easy(redirect.place, "seen", f'A redirect of "{key.id}"', redirect.seen)
        for couplet in key.couplets.values():
            yield _easy(couplet.place, "asks", f"The question of {couplet.id}", couplet.asks)
            for lead in couplet.leads:
                yield _easy(lead.place, "says", f"A lead of {couplet.id}", lead.says)
                yield _easy(lead.place, "ask-caller", f"`ask-caller` of a lead of {couplet.id}", lead.ask_caller)
