"""What was found in plain words, in sentences to be confirmed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from keyapp.wording.words import Words

__all__ = ["Find", "FindText", "better_line", "find_text"]


class Find(Protocol):
    """What is needed of a find (`Found` of the package `notes`)."""

    @property
    def kind(self) -> str: ...
    @property
    def words(self) -> str: ...
    @property
    def characters(self) -> tuple[str, ...]: ...
    @property
    def states(self) -> tuple[str, ...]: ...
    @property
    def mm(self) -> float | None: ...
    @property
    def value(self) -> str: ...
    @property
    def denied(self) -> bool: ...
    @property
    def view(self) -> object: ...
    @property
    def misspelt(self) -> bool: ...
    @property
    def against(self) -> tuple[int, ...]: ...
    @property
    def sureness(self) -> str: ...


@dataclass(frozen=True, slots=True)
class FindText:
    """A find in words.

    Attributes:
        says: what would be taken.
        notes: lines beneath: first the words it came from.
        measured: for a size of which it was not said what was measured, a label for each possible character.
    """

    says: str
    notes: tuple[str, ...]
    measured: tuple[str, ...] = ()


def find_text(words: Words, find: Find) -> FindText:
    """One find, with the words it came from and what to know before confirming it."""
    notes = [words.fixed("note.from", words=find.words)]
    if find.view is not None:
        notes.append(words.fixed("note.in-view"))
    if find.misspelt:
        notes.append(words.fixed("note.misspelt"))
    if find.against:
        notes.append(words.fixed("note.against"))
    says = _says(words, find)
    if find.sureness != "sure":
        says = f"{says} ({words.fixed(f'sureness.{find.sureness}')})"
    measured = tuple(_question(words, one) for one in find.characters) if len(find.characters) > 1 else ()
    return FindText(says, tuple(notes), tuple(words.fixed("note.measured", question=one) for one in measured))


def better_line(words: Words, said: str, ask: str) -> str:
    """What to ask instead of words that often mislead; `ask` is the id of a character, or the question itself."""
    character = words.keyset.characters.get(ask)
    if character is not None:
        ask = character.ask_caller.say(words.language) or character.question.say(words.language)
    return words.fixed("note.better", words=said, ask=ask)


def _says(words: Words, find: Find) -> str:
    keyset, language, kind = words.keyset, words.language, str(find.kind)
    if kind == "size":
        size = words.fixed("note.size", mm=f"{find.mm:g}")
        return f"{_question(words, find.characters[0])} {size}" if len(find.characters) == 1 else size
    if kind in ("states", "thing"):
        character = keyset.characters[find.characters[0]]
        said = " / ".join(character.state(state).label.say(language) for state in find.states)
        return f"{character.question.say(language)} {said}"
    value = find.value
    if kind == "spot" and value in keyset.spots:
        value = keyset.spots[value].label.say(language)
    elif kind == "month":
        value = words.fixed(f"month.{value}")
    elif kind == "region" and value in keyset.regions:
        value = keyset.regions[value].name.say(language)
    part = {"told": "name"}.get(kind, kind)
    return words.fixed(f"note.{kind}", **{part: value})


def _question(words: Words, character: str) -> str:
    return words.keyset.characters[character].question.say(words.language)
