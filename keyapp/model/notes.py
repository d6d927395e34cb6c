"""Words for reading a note: how callers hedge, deny, name places, and which of their words mislead."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from keyapp.model.place import NOWHERE, Place
from keyapp.model.source import Basis
from keyapp.model.text import Text

__all__ = ["AskInstead", "KnownSize", "NoteWords", "WordsByLanguage"]

WordsByLanguage = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class AskInstead:
    """Words that often mislead, and the better question.

    Attributes:
        words: the words, lower case, by language.
        ask: id of the character to ask.
        keep: an observation that rests on these words is still offered, as “think so”; else it is not offered.
        why: one sentence that says why the words do not tell.
    """

    id: str
    words: WordsByLanguage
    ask: str
    keep: bool
    why: Text
    basis: Basis
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class KnownSize:
    """A thing that people compare sizes with: its width in mm."""

    id: str
    words: WordsByLanguage
    mm: float
    basis: Basis
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class NoteWords:
    """What `notes.yaml` holds; all of it empty where a key has no such file.

    Attributes:
        ask_instead: words that often mislead.
        things: things whose size is known.
        spots: words for find spots, by id of the spot.
        parts: words for parts of an animal, by a name for the part; they mean the same. `animal` is the whole.
        nouns: what else a sentence can be about, by a name for it; these words do not mean the same.
        about: for characters whose phrases are lone words (“shiny”): the parts they may be said of.
        animals: words for kinds of animal, the last word of what someone may have been told.
        denies, denies_not: words that deny what follows, and those that only look like it.
        unknown: words after which nothing is observed (“no idea”, “if”).
        unsure: words of doubt.
        rough: words for a rough size (“about”); they doubt just what stands next to them.
        told: words before what someone was told or believes.
    """

    ask_instead: tuple[AskInstead, ...] = ()
    things: tuple[KnownSize, ...] = ()
    spots: Mapping[str, WordsByLanguage] = field(default_factory=dict)
    parts: Mapping[str, WordsByLanguage] = field(default_factory=dict)
    nouns: Mapping[str, WordsByLanguage] = field(default_factory=dict)
    about: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    animals: WordsByLanguage = field(default_factory=dict)
    denies: WordsByLanguage = field(default_factory=dict)
    denies_not: WordsByLanguage = field(default_factory=dict)
    unknown: WordsByLanguage = field(default_factory=dict)
    unsure: WordsByLanguage = field(default_factory=dict)
    rough: WordsByLanguage = field(default_factory=dict)
    told: WordsByLanguage = field(default_factory=dict)
