"""The phrases of a key, made ready once for finding them in many notes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from keyapp.model import Character, KeySet, Text
from keyapp.model.notes import WordsByLanguage
from keyapp.notes.item import Kind
from keyapp.notes.scope import ScopeWords, mark_scopes, sequences
from keyapp.notes.spelling import Speller
from keyapp.notes.token import Token, tokenize, word_set

__all__ = ["ARTICLES", "ASK", "SIZES", "Index", "Phrase", "content_of", "make_index"]

ASK = "ask-instead"
SIZES = "things"
_KEPT = frozenset(["nothing"])
"""Words that deny, and are part of what is said all the same."""
ARTICLES = frozenset(["a", "an", "the"])
_BINDING = word_set("on in under at by my me our his her off out some")
"""Small words that a phrase of one word cannot do without."""
_ORDERED = frozenset(["in", "of", "just", "only", "out"])
"""Words that make the order of a phrase matter (“legs in pairs” is no “pair of legs”)."""
_SOME_LEGS = word_set("front back hind first last third second rear fore")
_ADJECTIVES = ("y", "ed", "ing", "ish")
"""Endings of words that describe: “hairy” is no hair."""
_NOUNS = word_set("body belly legged winged eyed webbing marking something thing")
_BEFORE_NOUNS = frozenset(["the", "a", "my", "our", "his", "her"])
_BREAKS = frozenset(["and", "the", "its", "a", "with", "is", "are", "has", "have", "but", "on"])
_LIKENS = frozenset(["like", "como"])
_NOT_PARTS = {
    "rear": frozenset(["leg", "porch", "yard", "door", "deck", "wall", "garden", "fence", "pair", "up", "in"])
}
"""Words after which a word is no part of an animal (“back legs”)."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase made ready: its words in plain form, each with whether it is denied.

    Attributes:
        kind: what it stands for: a kind of find, or `ASK` or `SIZES`.
        owner: id of the character, spot, word or thing.
        state: id of the state, for `Kind.STATES`.
        words: pairs of a plain form and whether it is denied.
        row: its words in order, in plain form, where the order matters.
        small: its words that carry nothing by themselves.
        tight: where one word is all that is left of a phrase such as “on my skin”: its words, to stand in a row.
    """

    kind: str
    owner: str
    state: str
    words: tuple[tuple[str, bool], ...]
    row: tuple[str, ...] = ()
    tight: tuple[str, ...] = ()
    small: frozenset[str] = frozenset()

    @property
    def denies(self) -> bool:
        """Whether it says that something is not there."""
        return any(denied for _, denied in self.words)

    @property
    def is_mixed(self) -> bool:
        """Whether it says of one thing that it is there and of another that it is not (“a web but no spider”)."""
        return len({denied for _, denied in self.words}) > 1


@dataclass(slots=True)
class Index:
    """What reading a note needs of a key, in one language.

    Attributes:
        by_word: phrases by their rarest word.
        parts: rows of plain forms by their first, with the name of the part and whether the words mean the same.
        about: for a character whose lone words are held to parts: those parts.
        animals: rows of last words of names.
        told: rows of words before a belief.
        names: plain names without spaces, with the name as it is written in the key.
        described: single words for the look or the ways of a whole animal; “brown spider” is no name.
    """

    keyset: KeySet
    language: str
    scope: ScopeWords
    speller: Speller
    by_word: dict[str, list[Phrase]] = field(default_factory=dict)
    parts: dict[str, list[tuple[tuple[str, ...], str, bool]]] = field(default_factory=dict)
    about: Mapping[str, frozenset[str]] = field(default_factory=dict)
    animals: frozenset[tuple[str, ...]] = frozenset()
    told: tuple[tuple[str, ...], ...] = ()
    names: Mapping[str, str] = field(default_factory=dict)
    described: frozenset[str] = frozenset()

    def prepare(self, text: str) -> tuple[list[Token], frozenset[int]]:
        """The words of `text` with parts and scopes marked, and the positions of the words that made the scopes."""
        tokens = tokenize(text)
        self.speller.mend(tokens)
        used = mark_scopes(tokens, self.scope)
        found, used = self._with_parts(tokens, used)
        _mark_likened(found)
        _mark_some(found)
        return found, used

    def _with_parts(self, tokens: list[Token], used: frozenset[int]) -> tuple[list[Token], frozenset[int]]:
        found: list[Token] = []
        kept: set[int] = set()
        at = 0
        while at < len(tokens):
            token = tokens[at]
            for row, part, alike in self.parts.get(token.lemma, ()):
                end = at + len(row)
                if tuple(t.lemma for t in tokens[at:end]) == row and _is_part(tokens, at, end, part):
                    last = tokens[end - 1]
                    token.end, token.part = last.end, part
                    token.plain = "".join(row)
                    token.lemma = f"<{part}>" if alike else token.lemma
                    token.misspelt = any(t.misspelt for t in tokens[at:end])
                    token.denied, token.denied_from = last.denied, last.denied_from
                    if len(row) > 1:
                        token.word = " ".join(t.word for t in tokens[at:end])
                    break
            else:
                end = at + 1
            if at in used:
                kept.add(len(found))
            found.append(token)
            at = end
        return found, frozenset(kept)


def _mark_likened(tokens: Sequence[Token]) -> None:
    """Mark what something is only likened to: up to two words after “like a”."""
    for at, token in enumerate(tokens):
        if token.word not in _LIKENS:
            continue
        i, words = at + 1, 0
        if i < len(tokens) and tokens[i].word in ("it", "it's", "they", "that", "this", "its"):
            continue
        while i < len(tokens) and not tokens[i].sign and words < 2 and tokens[i].word not in ("and", "with", "but"):
            if not tokens[i].is_filler:
                tokens[i].likened = True
                words += 1
                if tokens[i].part:
                    break
            i += 1


def _mark_some(tokens: Sequence[Token]) -> None:
    """Mark legs of which only some are meant."""
    for at, token in enumerate(tokens):
        if token.part == "leg":
            for other in reversed(tokens[max(0, at - 4) : at]):
                if other.clause != token.clause or other.word in _BREAKS:
                    break
                token.some = token.some or other.word in _SOME_LEGS


def content_of(tokens: Sequence[Token], used: frozenset[int]) -> list[int]:
    """Positions of the words that carry something."""
    return [
        at
        for at, token in enumerate(tokens)
        if token.word in _KEPT or (at not in used and (token.part or not token.is_filler))
    ]


def make_index(keyset: KeySet, language: str = "en") -> Index:
    """Make the index of a key in a language; a key without words in it gives an index that finds next to nothing."""
    notes = keyset.notes
    lists = (notes.denies, notes.denies_not, notes.unknown, notes.unsure, notes.rough)
    scope = ScopeWords(*(sequences(words.get(language, ())) for words in lists))
    index = Index(keyset, language, scope, Speller())
    for part, words in notes.parts.items():
        _add_part(index, part, words.get(language, ()), alike=True)
    for noun, words in notes.nouns.items():
        _add_part(index, noun, words.get(language, ()), alike=False)
    for rows in index.parts.values():
        rows.sort(key=lambda row: (-len(row[0]), row[1]))
    index.about = {name: frozenset(parts) for name, parts in notes.about.items()}
    index.animals = frozenset(tuple(t.lemma for t in tokenize(word)) for word in notes.animals.get(language, ()))
    index.told = sequences(notes.told.get(language, ()))
    index.names = _names(keyset, language)
    index.described = _described(keyset, language)
    phrases = [*_phrases(index)]
    count = Counter(word for phrase in phrases for word, _ in set(phrase.words))
    for phrase in phrases:
        rarest = min((word for word, _ in phrase.words), key=lambda word: (count[word], word))
        index.by_word.setdefault(rarest, []).append(phrase)
    index.speller = Speller.of(_words_to_spell(index), _words_known(keyset, language))
    return index


def _add_part(index: Index, part: str, words: Iterable[str], *, alike: bool) -> None:
    for word in words:
        row = tuple(token.lemma for token in tokenize(word))
        if row and all(row != other for other, _, _ in index.parts.get(row[0], ())):
            index.parts.setdefault(row[0], []).append((row, part, alike))


def _is_part(tokens: Sequence[Token], at: int, end: int, part: str) -> bool:
    """Not so for “hairy”, for “back” in “back legs”, nor for “behind” in “behind the wall”."""
    word, following = tokens[at].word, tokens[end] if end < len(tokens) else None
    if end - at > 1:
        return True
    if word.endswith(_ADJECTIVES) and word not in _NOUNS:
        return False
    if following is None:
        return True
    if following.lemma in _NOT_PARTS.get(part, ()):
        return False
    return word != "behind" or following.sign or following.word not in _BEFORE_NOUNS


def _phrases(index: Index) -> Iterable[Phrase]:
    keyset, language, notes = index.keyset, index.language, index.keyset.notes
    for character in keyset.characters.values():
        for state in character.states:
            for words in state.phrases.get(language, ()):
                yield from _phrase(index, words, Kind.STATES, character.id, state.id)
    for spot, by_language in notes.spots.items():
        yield from _all(index, by_language, Kind.SPOT, spot)
    for word in notes.ask_instead:
        yield from _all(index, word.words, ASK, word.id)
    for thing in notes.things:
        yield from _all(index, thing.words, SIZES, thing.id)


def _all(index: Index, words: WordsByLanguage, kind: str, owner: str) -> Iterable[Phrase]:
    for phrase in words.get(index.language, ()):
        yield from _phrase(index, phrase, kind, owner, "")


def _phrase(index: Index, words: str, kind: str, owner: str, state: str) -> Iterable[Phrase]:
    tokens, used = index.prepare(words)
    found = tuple(sorted({(tokens[at].lemma, tokens[at].denied) for at in content_of(tokens, used)}))
    if found:
        plain = tuple(token.word for token in tokens if not token.sign and token.word not in ARTICLES)
        row = tuple(tokens[at].lemma for at in content_of(tokens, used)) if kind == ASK or _ORDERED & set(plain) else ()
        small = frozenset(token.word for token in tokens if token.is_filler and not token.sign)
        tight = plain if len(found) == 1 and _BINDING & set(plain) else ()
        yield Phrase(kind, owner, state, found, row, tight, small)


def _names(keyset: KeySet, language: str) -> dict[str, str]:
    """Names in use for results: common and popular ones, and short wrong ones."""
    found: dict[str, str] = {}
    for taxon in keyset.taxa.values():
        wrong = [one.said for one in taxon.misnames if len(one.said.split()) <= 3]
        for name in (*taxon.common_names.get(language, ()), *taxon.popular_names, *wrong):
            plain = name.casefold()
            for article in ("a ", "an ", "the "):
                plain = plain.removeprefix(article)
            squeezed = "".join(token.lemma for token in tokenize(plain) if not token.sign)
            if len(squeezed) >= 4:
                found.setdefault(squeezed, plain)
    return found


def _described(keyset: KeySet, language: str) -> frozenset[str]:
    """Single words that describe the look or the ways of the whole animal."""
    found: set[str] = set()
    for character in keyset.characters.values():
        if ("animal" in keyset.notes.about.get(character.id, ()) and character.never_clears) or character.id == "gait":
            for state in character.states:
                for phrase in state.phrases.get(language, ()):
                    words = [t.lemma for t in tokenize(phrase) if not t.sign]
                    found |= set(words) if len(words) == 1 else set()
    return frozenset(found - {"jump", "hunt"})


def _words_to_spell(index: Index) -> set[str]:
    keyset, language, notes = index.keyset, index.language, index.keyset.notes
    texts: list[str] = [p for c in keyset.characters.values() for s in c.states for p in s.phrases.get(language, ())]
    texts += index.names.values()
    for by_language in (
        notes.animals,
        notes.unsure,
        *notes.parts.values(),
        *notes.nouns.values(),
        *notes.spots.values(),
    ):
        texts += by_language.get(language, ())
    texts += [word for one in notes.ask_instead for word in one.words.get(language, ())]
    texts += [word for one in notes.things for word in one.words.get(language, ())]
    return {token.word for text in texts for token in tokenize(text) if not token.sign}


def _words_known(keyset: KeySet, language: str) -> set[str]:
    """Words that are spelt right, whatever they look like: all that the key itself writes."""
    texts = [text.say(language) for c in keyset.characters.values() for text in _texts(c)]
    for taxon in keyset.taxa.values():
        texts += [taxon.diagnosis.say(language), taxon.title.say(language)]
        texts += [said.says.say(language) for said in (*taxon.cautions, *taxon.advice)]
        texts += [one.fact.say(language) for one in taxon.misnames]
    texts += [word.why.say(language) for word in keyset.notes.ask_instead]
    texts += [term.means.say(language) for term in keyset.glossary.values()]
    texts += [" ".join(words.get(language, ())) for words in (keyset.notes.told, keyset.notes.unknown)]
    texts += keyset.emergency.words
    texts += [text.say(language) for text in keyset.wording.values()]
    return {token.word for text in texts for token in tokenize(text) if not token.sign}


def _texts(character: Character) -> list[Text]:
    return [character.question, character.ask_caller, character.look, *(s.means for s in character.states)]
