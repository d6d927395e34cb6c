"""Everything one edition of the key holds together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from keyapp.model.character import Character
from keyapp.model.graph import Couplet, Key
from keyapp.model.notes import NoteWords
from keyapp.model.place import NOWHERE, Place
from keyapp.model.region import FindSpot, Region
from keyapp.model.source import Caution, Source
from keyapp.model.taxon import DangerGroup, Taxon
from keyapp.model.text import Text
from keyapp.model.weights import Weights

__all__ = ["Emergency", "Figure", "Glossary", "KeySet", "Term"]


@dataclass(frozen=True, slots=True)
class Term:
    """A glossary entry: the term, other spellings of it, and its meaning in plain words."""

    term: str
    also: tuple[str, ...]
    means: Text
    place: Place = field(default=NOWHERE, compare=False)


Glossary = Mapping[str, Term]


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawn figure: id, alt text, credit, and what to draw (`draw` names a recipe, `with_` its settings)."""

    id: str
    alt: Text
    credit: str
    draw: str
    with_: Mapping[str, object]
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Emergency:
    """What to do when a person is hurt: signs for the emergency number, steps, what never to do, by kind.

    `words` are words of injury that open the card.
    """

    signs: tuple[Caution, ...]
    first_aid: Mapping[str, tuple[Caution, ...]]
    never: tuple[Caution, ...]
    words: tuple[str, ...]


@dataclass(frozen=True)
class KeySet:
    """One edition of the key. All mappings are by id."""

    characters: Mapping[str, Character]
    taxa: Mapping[str, Taxon]
    keys: Mapping[str, Key]
    start: str
    regions: Mapping[str, Region]
    spots: Mapping[str, FindSpot]
    danger_groups: Mapping[str, DangerGroup]
    sources: Mapping[str, Source]
    glossary: Glossary
    figures: Mapping[str, Figure]
    wording: Mapping[str, Text]
    weights: Weights
    emergency: Emergency
    notes: NoteWords = field(default_factory=NoteWords)

    @cached_property
    def couplets(self) -> Mapping[str, Couplet]:
        """Every couplet of every key, by full id."""
        return {cid: couplet for key in self.keys.values() for cid, couplet in key.couplets.items()}
