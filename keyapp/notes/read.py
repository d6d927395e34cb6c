"""Reads a note: everything in it that could be an observation, for a person to confirm."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from keyapp.model import KeySet, Sureness
from keyapp.model.injury import injury_words
from keyapp.notes.index import SIZES, Index, make_index
from keyapp.notes.item import BetterQuestion, Found, Kind, Note, Span
from keyapp.notes.match import Match, find_phrases, governing_part
from keyapp.notes.observe import THING, Seen, misleading, observations
from keyapp.notes.quantity import Length, counts, lengths, measured_part, span_of, words_of_measure
from keyapp.notes.setting import months, regions
from keyapp.notes.token import Token, word_set
from keyapp.notes.told import told_names

__all__ = ["NoteReader", "read_note"]

BODY, SPAN, SAC = "body-length", "leg-span", "sac-width"
_OTHER_THINGS = word_set("web silk hole mark wing feeler eye fang claw jaw tail hair front skin leg")
"""Parts whose size is not that of the animal."""
_SACS = frozenset(["sac", "egg", "ball"])
_COMPARES = word_set("size big large small wide long fit fits cover covers sized tamaño")
_KEPT_READERS = 4
_UNLIKE = 0.25
"""Sizes of one thing further apart than this share contradict each other."""


class NoteReader:
    """A key made ready for reading notes in one language.

    Making it takes a moment; reading a note then takes a few milliseconds. The same text always gives the same note.
    """

    def __init__(self, keyset: KeySet, language: str = "en") -> None:
        self.keyset = keyset
        self.language = language
        self._index: Index = make_index(keyset, language)

    def read(self, text: str) -> Note:
        """Everything found in `text`. Never raises, whatever the text; nothing found gives an empty note."""
        tokens, used = self._index.prepare(text)
        measures = lengths(tokens, text)
        used |= {
            at
            for one in measures
            for at in range(one.first, min(len(tokens), one.last + 2))
            if _of_size(tokens, one, at)
        }
        for one in measures:
            used |= words_of_measure(tokens, text, one.first, one.last)
        matches = find_phrases(self._index, tokens, used)
        told = told_names(self._index, tokens, text)
        names = frozenset(at for one in told for at in one.at)
        counted = [
            one
            for one in counts(tokens, list(self.keyset.characters.values()))
            if not any(tokens[at].unknown for at in one.at)
        ]
        seen = observations(self._index, tokens, matches, counted, [frozenset(one.at) for one in told])
        found: list[Found] = [self._state(one, tokens, text) for one in seen]
        found += self._sizes(tokens, matches, text, seen, measures)
        found += self._spots(tokens, matches, text)
        for month, at in months(tokens, text):
            found.append(_plain(Kind.MONTH, span_of(tokens, at, at), text, str(month)))
        for place, first, last in regions(tokens, text, self.keyset):
            if first in names:
                continue
            found.append(_plain(Kind.REGION, span_of(tokens, first, last), text, place))
        for name in (one for one in told if not one.denied):
            found.append(_plain(Kind.TOLD, span_of(tokens, name.at[0], name.at[-1]), text, name.name))
        found += self._injury(text)
        better = tuple(
            BetterQuestion(word.id, span, text[span.start : span.end], word.ask, word.keep)
            for word, match in misleading(self._index, matches, tokens)
            if (span := match.span(tokens)) and not set(match.at) <= names
        )
        return Note(text, self.language, _numbered(found), better)

    def _state(self, seen: Seen, tokens: Sequence[Token], text: str) -> Found:
        span = span_of(tokens, seen.at[0], seen.at[-1])
        if seen.denied:
            # “No web” rests on the “no” as well.
            starts = [tokens[at].denied_from for at in seen.at if tokens[at].denied_from >= 0]
            span = Span(min([span.start, *starts]), span.end)
        kind = Kind.THING if seen.character == THING else Kind.STATES
        return Found(
            0,
            kind,
            span,
            text[span.start : span.end],
            seen.sureness,
            (seen.character,),
            seen.states,
            denied=seen.denied,
            view=seen.view,
            misspelt=any(tokens[at].misspelt for at in seen.at),
        )

    def _sizes(
        self,
        tokens: Sequence[Token],
        matches: Sequence[Match],
        text: str,
        seen: Sequence[Seen],
        measures: Sequence[Length],
    ) -> list[Found]:
        """Sizes with a unit, and those compared with a thing of known size."""
        sizes = [(length.mm, length.first, length.last) for length in measures]
        known = {thing.id: thing.mm for thing in self.keyset.notes.things}
        for match in sorted((m for m in matches if m.phrase.kind == SIZES), key=lambda m: (-len(m.at), m.at)):
            first, last = match.at[0], match.at[-1]
            if not any(first <= end and start <= last for _, start, end in sizes) and _compares(tokens, first, last):
                sizes.append((known[match.phrase.owner], first, last))
        sac = any(one.character == THING and one.states == ("egg-sac",) for one in seen)
        found = []
        for mm, first, last in sorted(sizes, key=lambda size: size[1]):
            own = tokens[first : last + 1]
            if any(token.denied or token.unknown for token in own):
                continue
            characters = self._measured(tokens, text, first, last, mm, sac)
            if not characters:
                continue
            unsure = any(token.unsure for token in own)
            span = span_of(tokens, first, last)
            words, sureness = text[span.start : span.end], Sureness.THINK_SO if unsure else Sureness.SURE
            found.append(Found(0, Kind.SIZE, span, words, sureness, characters, mm=round(mm, 3)))
        return found

    def _measured(
        self, tokens: Sequence[Token], text: str, first: int, last: int, mm: float, sac: bool
    ) -> tuple[str, ...]:
        """The characters a size may be meant for, within their ranges."""
        said = measured_part(tokens, text, first, last)
        end = last
        while end + 1 < len(tokens) and tokens[end + 1].word in ("-", "sized", "size"):
            end += 1
        part = governing_part(tokens, range(first, end + 1), earlier=False)
        if part in _SACS or sac:
            wanted: tuple[str, ...] = (SAC,) if sac else ()
        elif said:
            wanted = (BODY,) if said == "body" else (SPAN,)
        elif part in _OTHER_THINGS:
            wanted = ()
        else:
            wanted = (BODY, SPAN)
        numbers = {name: self.keyset.characters[name].number for name in wanted if name in self.keyset.characters}
        return tuple(name for name, number in numbers.items() if number and number.least <= mm <= number.most)

    def _spots(self, tokens: Sequence[Token], matches: Sequence[Match], text: str) -> list[Found]:
        """Find spots, each once; one whose words lie in those of another is left out."""
        # In “shed skins” there is no shed.
        inside = {
            at for m in matches if m.phrase.kind == Kind.STATES and len(m.at) > 1 and not m.phrase.small for at in m.at
        }
        spots = [m for m in matches if m.phrase.kind == Kind.SPOT and not m.denied]
        spots = [m for m in spots if len(m.at) > 1 or m.phrase.tight or m.at[0] not in inside]
        spots.sort(key=lambda m: (-len(m.at), m.at, m.phrase.owner))
        kept: list[Match] = []
        for match in spots:
            if not any(set(match.at) & set(o.at) or match.phrase.owner == o.phrase.owner for o in kept):
                kept.append(match)
        found = []
        for match in kept:
            sureness = Sureness.THINK_SO if any(tokens[at].unsure for at in match.at) else Sureness.SURE
            found.append(_plain(Kind.SPOT, match.span(tokens), text, match.phrase.owner, sureness))
        return found

    def _injury(self, text: str) -> list[Found]:
        """Words of injury, as one find: whoever reads it opens the emergency card."""
        words = sorted(injury_words(text, self.keyset.emergency.words))
        if not words:
            return []
        straight = text.replace("’", "'").replace("‘", "'").replace("`", "'")
        places = [
            match.span()
            for word in words
            if (match := re.search(rf"(?<!\w){_loose(word)}(?!\w)", straight, re.IGNORECASE)) is not None
        ]
        start, end = min(places, default=(0, len(text)))
        return [_plain(Kind.INJURY, Span(start, end), text, ", ".join(words))]


def read_note(keyset: KeySet, text: str, language: str = "en") -> Note:
    """Read `text`; the index of the key is made at the first call and kept for the next ones.

    Never raises, whatever the text. See `NoteReader`.
    """
    for reader in _readers:
        if reader.keyset is keyset and reader.language == language:
            return reader.read(text)
    reader = NoteReader(keyset, language)
    _readers.insert(0, reader)
    del _readers[_KEPT_READERS:]
    return reader.read(text)


_readers: list[NoteReader] = []
"""The last few readers made, newest first."""


def _loose(word: str) -> str:
    return r"\s+".join(re.escape(part) for part in word.split())


def _compares(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the thing is named as a measure (“the size of a dime”, “dime-sized”), and not as a limit."""
    before = [token.word for token in tokens[max(0, first - 5) : first] if token.sentence == tokens[first].sentence]
    after = [token.word for token in tokens[last + 1 : last + 3] if not token.sign]
    if "than" in before:
        return False
    if before[-2:-1] and before[-2] in ("about", "around", "roughly") and before[-1] in ("a", "an"):
        return True
    return bool(_COMPARES & set(before)) or bool(after and after[0] in ("sized", "size"))


def _of_size(tokens: Sequence[Token], length: Length, at: int) -> bool:
    """Whether the word is part of a size, such as the “long” of “half an inch long”."""
    return at <= length.last or tokens[at].word in ("long", "wide", "across", "big", "length", "width")


def _plain(kind: Kind, span: Span, text: str, value: str, sureness: Sureness = Sureness.SURE) -> Found:
    return Found(0, kind, span, text[span.start : span.end], sureness, value=value)


def _numbered(found: Sequence[Found]) -> tuple[Found, ...]:
    """The finds in the order of the words, numbered, each with those that contradict it."""
    order = sorted(found, key=lambda one: (one.span, one.kind, one.characters, one.states, one.value))
    numbered = [replace(one, id=number) for number, one in enumerate(order, start=1)]
    rivals: dict[tuple[Kind, tuple[str, ...]], list[Found]] = {}
    for one in numbered:
        rivals.setdefault((one.kind, one.characters), []).append(one)
    return tuple(
        replace(one, against=tuple(o.id for o in rivals[one.kind, one.characters] if _contradict(one, o)))
        for one in numbered
    )


def _contradict(one: Found, other: Found) -> bool:
    if one.id == other.id or one.kind is not other.kind:
        return False
    if one.kind in (Kind.STATES, Kind.THING):
        return one.characters == other.characters and not set(one.states) & set(other.states)
    if one.kind is Kind.SIZE:
        assert one.mm is not None and other.mm is not None
        apart = abs(one.mm - other.mm) > _UNLIKE * max(one.mm, other.mm)
        return one.characters == other.characters and apart
    return one.kind in (Kind.SPOT, Kind.MONTH, Kind.REGION) and one.value != other.value
