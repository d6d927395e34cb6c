"""What is found in a note: each find with the words it rests on, for a person to confirm."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from keyapp.model import Sureness, View

__all__ = ["BetterQuestion", "Found", "Kind", "Note", "Span"]


class Kind(StrEnum):
    """What a find is about."""

    STATES = "states"
    SIZE = "size"
    THING = "thing"
    SPOT = "spot"
    MONTH = "month"
    REGION = "region"
    TOLD = "told"
    INJURY = "injury"


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """Characters `start` up to, not including, `end` of the note."""

    start: int
    end: int

    def overlaps(self, other: Span) -> bool:
        """Whether they share a character."""
        return self.start < other.end and other.start < self.end


@dataclass(frozen=True, slots=True)
class Found:
    """One find, to be confirmed or dropped by itself.

    Attributes:
        id: number of the find within the note, from 1, in the order of the words.
        kind: what it is about.
        span: the words it rests on; `words` are those words.
        sureness: `think-so` where the caller hedges, or the words are of a kind that often misleads.
        characters: the character; for a size of which it was not said what was measured, the possible ones: ask.
        states: ids of the states: one, or "one of these".
        mm: a size in mm.
        value: id of a find spot, state code or region, month as a number, or the name they were told.
        denied: it comes from words that deny something ("no web").
        view: the side that must have been seen before it may be confirmed; None where none need be.
        misspelt: a word was read in spite of its spelling.
        against: ids of finds that cannot be true together with this one.
    """

    id: int
    kind: Kind
    span: Span
    words: str
    sureness: Sureness = Sureness.SURE
    characters: tuple[str, ...] = ()
    states: tuple[str, ...] = ()
    mm: float | None = None
    value: str = ""
    denied: bool = False
    view: View | None = None
    misspelt: bool = False
    against: tuple[int, ...] = ()

    @property
    def meaning(self) -> tuple[Kind, tuple[str, ...], tuple[str, ...], float | None, str]:
        """What it says, wherever it stands: stays the same while more is typed, so that a decision can be kept."""
        return (self.kind, self.characters, self.states, self.mm, self.value)

    @property
    def must_ask(self) -> bool:
        """Whether it must be asked what was measured before it can be taken."""
        return self.kind is Kind.SIZE and len(self.characters) > 1


@dataclass(frozen=True, slots=True)
class BetterQuestion:
    """Words that often mislead: what to ask instead, and why (`word` is the id in the key)."""

    word: str
    span: Span
    words: str
    ask: str
    kept: bool


@dataclass(frozen=True, slots=True)
class Note:
    """What was found in a text, in the order of the words. Nothing of it is in any case yet."""

    text: str
    language: str
    found: tuple[Found, ...]
    better: tuple[BetterQuestion, ...]

    @property
    def injury(self) -> bool:
        """Whether the text speaks of injury: then the emergency card comes first."""
        return any(one.kind is Kind.INJURY for one in self.found)

    def item(self, number: int) -> Found:
        """The find with this id; raises KeyError if there is none."""
        for one in self.found:
            if one.id == number:
                return one
        raise KeyError(number)
