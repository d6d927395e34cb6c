"""Links between entries: every name that the program follows must lead somewhere.

These are the links the engine relies on; a key in which one is broken is never handed out.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from graphlib import CycleError, TopologicalSorter

from keyapp.keyfile.places import within
from keyapp.keyfile.problem import Problem, nearest
from keyapp.keyfile.shapes.regions import STATE_CODES
from keyapp.model.character import Character
from keyapp.model.graph import Target, TargetKind
from keyapp.model.keyset import KeySet
from keyapp.model.place import Place

__all__ = ["broken_links", "couplet_of"]

DEFAULT_OCCURRENCE = "default"


def broken_links(keyset: KeySet) -> tuple[Problem, ...]:
    """Return a problem for every name in the key that refers to nothing, and for every loop."""
    found = [*_characters(keyset), *_taxa(keyset), *_keys(keyset), *_regions(keyset), *_notes(keyset),
             *_loops(keyset)]
    return tuple(sorted(found))


def couplet_of(keyset: KeySet, target: Target) -> str | None:
    """Return the full id of the couplet a target leads to, or None for a taxon or a broken target."""
    if target.kind is TargetKind.KEY:
        key = keyset.keys.get(target.id)
        return key.start if key else None
    return target.id if target.kind is TargetKind.COUPLET else None


def _unknown(code: str, place: Place, what: str, name: str, choices: Iterable[str]) -> Problem:
    return Problem(place, code, f'{what} "{name}" does not exist.', nearest(name, choices))


def _states(
    keyset: KeySet, place: Place, character: str, states: Collection[str], who: str
) -> Iterator[Problem]:
    found = keyset.characters.get(character)
    if found is None:
        yield _unknown("K201", place, f"{who}: the character", character, keyset.characters)
        return
    if found.number is not None:
        yield Problem(place, "K201", f'{who}: "{character}" is measured and has no states.',
                      "Use a character with states here; give sizes under `sizes`.")
        return
    for state in sorted(states):
        if state not in found.state_ids:
            yield _unknown("K201", place, f'{who}: the state of "{character}"', state, found.state_ids)


def _numeric(keyset: KeySet, place: Place, character: str, who: str) -> Iterator[Problem]:
    found = keyset.characters.get(character)
    if found is None or found.number is None:
        measured = [name for name, each in keyset.characters.items() if each.number]
        yield _unknown("K201", place, f"{who}: the measured character", character, measured)


def _characters(keyset: KeySet) -> Iterator[Problem]:
    for name, character in keyset.characters.items():
        yield from _mistaken(name, character)
        number = character.number
        if number and number.confused_with:
            yield from _numeric(keyset, character.place, number.confused_with, f'Character "{name}"')


def _mistaken(name: str, character: Character) -> Iterator[Problem]:
    for state in character.states:
        for other in sorted(state.mistaken_for):
            place = within(state.place, "mistaken-for", other)
            if other == state.id:
                yield Problem(place, "K201", f'State "{state.id}" is said to be mistaken for itself.',
                              "Name another state.")
            elif other not in character.state_ids:
                yield _unknown("K201", place, f'State "{state.id}": the state of "{name}"', other, character.state_ids)


def _taxa(keyset: KeySet) -> Iterator[Problem]:
    kinds = {taxon.kind for taxon in keyset.taxa.values() if not taxon.made_by}
    for name, taxon in keyset.taxa.items():
        who, place = f'Result "{name}"', taxon.place
        for character, states in taxon.shows.items():
            yield from _states(keyset, within(place, "shows", character), character, states, who)
        for character in taxon.sizes:
            yield from _numeric(keyset, within(place, "sizes", character), character, who)
        for kind in taxon.made_by:
            if kind not in kinds:
                yield _unknown("K203", within(place, "made-by"), f"{who} is made by the kind", kind, kinds)
        for other in taxon.look_alikes:
            if other.taxon not in keyset.taxa:
                yield _unknown("K203", other.place, f"{who}: the look-alike", other.taxon, keyset.taxa)
            if other.character not in keyset.characters:
                yield _unknown("K201", other.place, f"{who}: the character", other.character, keyset.characters)
        for character in taxon.basis_for:
            if character not in keyset.characters:
                yield _unknown("K201", within(place, "basis-for", character), f"{who}: the character", character,
                               keyset.characters)
        for spot in taxon.places:
            if spot not in keyset.spots:
                yield _unknown("K204", within(place, "places", spot), f"{who}: the find spot", spot, keyset.spots)
        for region in taxon.occurrence:
            if region not in keyset.regions and region not in STATE_CODES and region != DEFAULT_OCCURRENCE:
                yield _unknown("K204", within(place, "occurrence", region), f"{who}: the region", region,
                               [*keyset.regions, DEFAULT_OCCURRENCE])
        if taxon.danger_group and taxon.danger_group not in keyset.danger_groups:
            yield _unknown("K205", within(place, "danger-group"), f"{who}: the danger group", taxon.danger_group,
                           keyset.danger_groups)


def _keys(keyset: KeySet) -> Iterator[Problem]:
    couplets = keyset.couplets
    if keyset.keys and keyset.start not in keyset.keys:
        yield _unknown("K202", Place("keyset.yaml", 1, "start"), "The first key", keyset.start, keyset.keys)
    for name, key in keyset.keys.items():
        if key.start not in key.couplets:
            yield _unknown("K202", key.place, f'The start of key "{name}", couplet', _short(key.start),
                           map(_short, key.couplets))
        for redirect in key.redirects:
            yield from _target(keyset, couplets, name, redirect.to, within(redirect.place, "go"))
        for couplet in key.couplets.values():
            for lead in couplet.leads:
                yield from _target(keyset, couplets, name, lead.to, within(lead.place, "to"))
                for character, states in lead.holds.items():
                    yield from _states(keyset, within(lead.place, "holds", character), character, states, "The lead")


def _target(
    keyset: KeySet, couplets: Mapping[str, object], key: str, target: Target, place: Place
) -> Iterator[Problem]:
    if target.kind is TargetKind.TAXON and target.id not in keyset.taxa:
        yield _unknown("K202", place, "The result", target.id, keyset.taxa)
    elif target.kind is TargetKind.KEY and target.id not in keyset.keys:
        yield _unknown("K202", place, "The key", target.id, keyset.keys)
    elif target.kind is TargetKind.COUPLET and target.id not in couplets:
        own = [_short(couplet) for couplet in couplets if couplet.startswith(f"{key}/")]
        yield _unknown("K202", place, "The couplet", target.id.removeprefix(f"{key}/"),
                       own if target.id.startswith(f"{key}/") else couplets)


def _short(couplet: str) -> str:
    return couplet.rsplit("/", 1)[-1]


def _regions(keyset: KeySet) -> Iterator[Problem]:
    for name, region in keyset.regions.items():
        if region.part_of and region.part_of not in keyset.regions:
            yield _unknown("K204", region.place, f'Region "{name}" is part of a region that', region.part_of,
                           keyset.regions)
        seen, at = {name}, region.part_of
        while at in keyset.regions:
            if at in seen:
                yield Problem(region.place, "K206", f'Region "{name}" is part of itself, by way of "{at}".',
                              "Mend `part-of`.")
                break
            seen.add(at)
            at = keyset.regions[at].part_of
    first: dict[str, str] = {}
    for name, region in keyset.regions.items():
        for state in region.states if not region.part_of else ():
            if state in first:
                yield Problem(region.place, "K107", f'The state "{state}" is in two regions, "{first[state]}" and '
                              f'"{name}".', "Keep it in one of them.")
            first[state] = name


def _notes(keyset: KeySet) -> Iterator[Problem]:
    notes, file = keyset.notes, "notes.yaml"
    for word in notes.ask_instead:
        if word.ask not in keyset.characters:
            yield _unknown("K201", within(word.place, "ask"), "The character", word.ask, keyset.characters)
    for spot in notes.spots:
        if spot not in keyset.spots:
            yield _unknown("K204", Place(file, 1, f"spots.{spot}"), "The find spot", spot, keyset.spots)
    for character, parts in notes.about.items():
        place = Place(file, 1, f"about.{character}")
        if character not in keyset.characters:
            yield _unknown("K201", place, "The character", character, keyset.characters)
        for part in parts:
            if part not in notes.parts and part not in notes.nouns:
                yield Problem(place, "K112", f'"{part}" is neither a part nor a noun of this file.',
                              nearest(part, [*notes.parts, *notes.nouns]))


def _loops(keyset: KeySet) -> Iterator[Problem]:
    """Name loops one by one; after each, the step that closes it is left out to find the next."""
    couplets = keyset.couplets
    steps: dict[str, list[str]] = {
        name: [to for lead in couplet.leads if (to := couplet_of(keyset, lead.to)) in couplets and to is not None]
        for name, couplet in couplets.items()
    }
    order = _order(keyset, steps)
    while True:
        try:
            TopologicalSorter(steps).prepare()
            return
        except CycleError as error:
            ring: list[str] = error.args[1][:-1]
            if ring[1 % len(ring)] not in steps[ring[0]]:
                ring.reverse()
            first = min(range(len(ring)), key=lambda i: (order.get(ring[i], len(couplets)), ring[i]))
            ring = [*ring[first:], *ring[:first]]
            last = ring[-1]
            steps[last] = [to for to in steps[last] if to != ring[0]]
            lead = next(lead for lead in couplets[last].leads if couplet_of(keyset, lead.to) == ring[0])
            yield Problem(within(lead.place, "to"), "K206",
                          f"The key goes round in a loop: {' > '.join([*ring, ring[0]])}.",
                          "Send one of these leads on to another couplet or a result.")


def _order(keyset: KeySet, steps: Mapping[str, list[str]]) -> dict[str, int]:
    """Position of each couplet in the order in which the start reaches them, nearest first."""
    start = keyset.keys.get(keyset.start)
    layer = [start.start] if start and start.start in steps else []
    order: dict[str, int] = {}
    while layer:
        for couplet in layer:
            order.setdefault(couplet, len(order))
        layer = list(dict.fromkeys(to for couplet in layer for to in steps[couplet] if to not in order))
    return order
