"""What a caller was told it is, or believes: names in use for results, and names after words of belief."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.notes.index import Index
from keyapp.notes.token import Token, tokenize, word_set

__all__ = ["Told", "told_names"]

MOST_WORDS = 5
MOST_PASSED = 8
_PASSED = word_set(
    "it it's its aren't isn't wasn't is this that that's they they're them are were was be been being a "
    "an the some any kind kinds sort of like just really called type maybe probably from to me us for i "
    "one these those as es un una"
)
"""Words between a word of belief and the name."""
_NO_NAME = word_set(
    "most poisonous venomous dangerous deadly harmless exotic and or with on in under that which not for size "
    "same dead big small little too"
)
_AFTER_NAME = frozenset(["that", "with", "right", "maybe", "perhaps", "or", "huh"])


@dataclass(frozen=True, slots=True)
class Told:
    """A name in a note: as it was said, the positions of its words, and whether it is denied."""

    name: str
    at: tuple[int, ...]
    denied: bool = False


def told_names(index: Index, tokens: Sequence[Token], text: str) -> list[Told]:
    """Names told, believed or denied, in the order of the note; of names that lie in each other the longest."""
    found = [*_in_use(index, tokens, text), *_believed(index, tokens, text), *_asked(index, tokens, text)]
    found.sort(key=lambda told: (-len(told.at), told.at))
    kept: list[Told] = []
    taken: set[int] = set()
    ends: set[str] = set()
    for told in found:
        plain = _plain(told.name).split()
        if not taken & set(told.at) and (told.denied or " ".join(plain) not in ends):
            kept.append(told)
            # The end of a longer name says nothing new.
            ends |= set() if told.denied else {" ".join(plain[start:]) for start in range(len(plain))}
        taken |= set(told.at)
    return sorted(kept, key=lambda told: told.at)


def _plain(name: str) -> str:
    return " ".join(token.lemma for token in tokenize(name) if not token.sign)


def _said(tokens: Sequence[Token], text: str, at: Sequence[int]) -> str:
    """The words as they were said, in small letters, misspelt ones mended."""
    words = [t.word if t.misspelt else text[t.start : t.end].casefold() for t in (tokens[i] for i in at)]
    return " ".join(" ".join(words).split())


def _in_use(index: Index, tokens: Sequence[Token], text: str) -> list[Told]:
    """Names of results anywhere in the note, but for those that are just a description (“brown spider”)."""
    found = []
    for start, token in enumerate(tokens):
        if token.sign:
            continue
        squeezed, at = "", []
        for i in range(start, min(len(tokens), start + 2 * MOST_WORDS)):
            other = tokens[i]
            if (other.sign and other.word != "-") or other.sentence != token.sentence:
                break
            if other.sign:
                continue
            squeezed += other.plain or other.lemma
            at.append(i)
            if len(at) > MOST_WORDS:
                break
            if squeezed in index.names and not _is_description(tokens, at, index.described):
                found.append(Told(_said(tokens, text, at), tuple(at), any(tokens[j].denied for j in at)))
    return found


def _is_description(tokens: Sequence[Token], at: Sequence[int], plain: frozenset[str]) -> bool:
    """A kind of animal alone, a web or sac, or a color and a kind: no name that somebody gave it."""
    last = tokens[at[-1]]
    if last.part in ("web", "sac", "egg", "skin", "silk", "ball"):
        return True
    if len(at) == 1 and (last.part or last.lemma in plain):
        return True
    return bool(last.part) and all(tokens[i].lemma in plain or tokens[i].is_filler for i in at[:-1])


def _believed(index: Index, tokens: Sequence[Token], text: str) -> list[Told]:
    """Names after “I think it's a”, “she says”, “could it be a”, and the ones joined to them with “or”."""
    found: list[Told] = []
    rows: dict[str, list[tuple[str, ...]]] = {}
    for row in index.told:
        rows.setdefault(row[0], []).append(row)
    for start, token in enumerate(tokens):
        for row in rows.get(token.word, ()):
            end = start + len(row)
            if tuple(t.word for t in tokens[start:end]) == row:
                found += _chain(index, tokens, text, end)
                found += _before(index, tokens, text, start)
                break
    return found


def _chain(index: Index, tokens: Sequence[Token], text: str, at: int) -> list[Told]:
    found = []
    name = _name_at(index, tokens, text, at)
    while name is not None:
        found.append(name)
        at = name.at[-1] + 1
        if at < len(tokens) and tokens[at].word == ",":
            at += 1
        if at >= len(tokens) or tokens[at].word not in ("or", "o"):
            break
        name = _name_at(index, tokens, text, at + 1)
    return found


def _name_at(index: Index, tokens: Sequence[Token], text: str, at: int) -> Told | None:
    """A name that begins at `at`, after words such as “it's a”: up to four words that end with a kind of animal."""
    at = next((i for i in range(at, min(len(tokens), at + MOST_PASSED)) if tokens[i].word not in _PASSED), len(tokens))
    best: Told | None = None
    for end in range(at, min(len(tokens), at + 6)):
        token = tokens[end]
        if (token.sign and token.word != "-") or token.word in _NO_NAME:
            break
        used = [i for i in range(at, end + 1) if not tokens[i].sign]
        lemmas = tuple(t.lemma for i in used for t in tokenize(tokens[i].word) if not t.sign)
        if len(used) > 4:
            break
        if not any(tokens[i].denied for i in used) and any(lemmas[-n:] in index.animals for n in (1, 2, 3)):
            # A kind alone, "a spider", is no name that says anything.
            alone = len(used) == 1 and tokens[used[0]].part == "animal"
            best = best if alone else Told(_said(tokens, text, used), tuple(used))
    return best


def _before(index: Index, tokens: Sequence[Token], text: str, at: int) -> list[Told]:
    """A name that is all its clause holds before the word of belief: “Green wasps I guess”."""
    start = at
    while start > max(0, at - MOST_PASSED) and tokens[start - 1].clause == tokens[at].clause:
        start -= 1
    name = _name_at(index, tokens, text, start) if start < at else None
    return [name] if name is not None and name.at[-1] == at - 1 else []


def _asked(index: Index, tokens: Sequence[Token], text: str) -> list[Told]:
    """A sentence that is hardly more than a name with a question mark: “Scorpion or hornet?”"""
    found: list[Told] = []
    start = 0
    for at, token in enumerate(tokens):
        if token.word not in ".!?;\n":
            continue
        sentence = tokens[start:at]
        if token.word == "?":
            clauses = [start, *(i + 1 for i in range(start, at) if tokens[i].word == ",")]
            for begin in clauses[:1] + clauses[-1:]:
                chain = _chain(index, tokens, text, begin)
                if chain and _ends(tokens, chain[-1].at[-1] + 1) and len(sentence) - (begin - start) <= 8:
                    found += chain
        start = at + 1
    return found


def _ends(tokens: Sequence[Token], at: int) -> bool:
    return at >= len(tokens) or tokens[at].sign or tokens[at].word in _AFTER_NAME
