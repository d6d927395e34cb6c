"""The final check in sentences: the parts of a result, and what each should be."""

from __future__ import annotations

from keyapp.engine import Reading
from keyapp.model import Means, Taxon
from keyapp.wording.words import Words

__all__ = ["MOST_PARTS", "part_lines", "part_of"]

MOST_PARTS = 8
"""So many parts are offered; more would not be read."""
_SHOWN = 0.25
"""A state is named where it is shown at least this often."""
_PASSED = frozenset({"thing"})


def part_lines(words: Words, reading: Reading, taxon: Taxon) -> tuple[tuple[str, str], ...]:
    """Character and sentence of each part to hold against the animal: those answered first, then by bare eye."""
    said = [c for event in reading.events for c in event.characters]
    seen = [c for c in words.keyset.characters if c in taxon.shows and c not in _PASSED]
    plain = [c for c in seen if words.keyset.characters[c].means is Means.BARE_EYE]
    order = dict.fromkeys([*(c for c in said if c in seen), *plain])
    return tuple((name, part_of(words, taxon, name)) for name in list(order)[:MOST_PARTS])


def part_of(words: Words, taxon: Taxon, character: str) -> str:
    """A part and what it should be; for none of those offered, words for it."""
    found = words.keyset.characters.get(character)
    if found is None:
        return words.fixed("check.other-part")
    question = found.question.say(words.language)
    shown = taxon.shows.get(character, {})
    states = [state for state in found.state_ids if shown.get(state, 0) >= _SHOWN]
    if not states:
        return question
    labels = " / ".join(found.state(state).label.say(words.language) for state in states)
    return words.fixed("check.should", question=question, states=labels)
