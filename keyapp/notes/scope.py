"""How far a word reaches that denies, doubts, or says that nothing was seen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from keyapp.notes.token import Token, tokenize, word_set

__all__ = ["ScopeWords", "mark_scopes", "sequences"]

_DOUBT = 9
"""Words that doubt reaches to either side within a clause; people do not always use commas."""
_ROUGH = (3, 6)
"""Words that “about” reaches, back and on."""
_REACH = 7
"""Words a denial reaches at most; what comes after it in the same clause is not taken either way."""
_ENDS = word_set("but just only except with though that which because until till pero solo")
_JOINS = frozenset(["and", "y"])
_OR = frozenset(["or", "nor", "o", "ni"])
_BEGINS = word_set(
    "it its it's he she they their there there's i i'm we the a an has have is are was were with body legs eyes "
    "ran runs walks walked sits sat moves moved one some el la las los tiene es no not"
)
"""Words after “and” with which something new begins."""
_ASKS = word_set(
    "is are does do did can could should would will what which why how who when where has have am was were"
)
_AFTER = frozenset(["none", "absent", "missing", "no", "nope", "ninguna", "ninguno"])

Words = tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class ScopeWords:
    """Rows of words that deny, that only look so, after which nothing was seen, of doubt, and of rough sizes."""

    denies: Words
    denies_not: Words
    unknown: Words
    unsure: Words
    rough: Words


def sequences(phrases: Iterable[str]) -> Words:
    """Phrases as rows of words, longest first."""
    rows = {tuple(token.word for token in tokenize(phrase)) for phrase in phrases}
    return tuple(sorted((row for row in rows if row), key=lambda row: (-len(row), row)))


def mark_scopes(tokens: Sequence[Token], words: ScopeWords) -> frozenset[int]:
    """Mark which tokens are denied, unknown and unsure; returns the positions of the words that did so."""
    plain = [token.word for token in tokens]
    used: set[int] = set()
    passed = _places(plain, words.denies_not)
    used |= {at for start, end in passed for at in range(start, end)}
    for start, end in _places(plain, words.unknown):
        used |= set(range(start, end))
        _mark_unknown(tokens, end)
    for sentence in _sentences(tokens):
        _mark_question(tokens, sentence)
    for start, end in _places(plain, words.denies):
        if any(start < stop and begin < end for begin, stop in passed):
            continue
        used |= set(range(start, end))
        if plain[start] in _AFTER and _denies_before(tokens, start):
            continue
        _mark_denied(tokens, start, end)
    clauses = _clauses(tokens)
    for start, end in _places(plain, words.unsure):
        used |= set(range(start, end))
        _mark_unsure(tokens, clauses, start, end)
    for start, end in _places(plain, words.rough):
        used |= set(range(start, end))
        for at in clauses[tokens[start].clause]:
            if start - _ROUGH[0] <= at < end + _ROUGH[1]:
                tokens[at].unsure = True
    return frozenset(used)


def _places(plain: Sequence[str], rows: Words) -> list[tuple[int, int]]:
    """Where any of the rows stands; a longer one hides the shorter ones in it."""
    by_first: dict[str, list[tuple[str, ...]]] = {}
    for row in rows:
        by_first.setdefault(row[0], []).append(row)
    found = []
    at = 0
    while at < len(plain):
        rows_here = by_first.get(plain[at], [])
        row = next((r for r in rows_here if tuple(plain[at : at + len(r)]) == r), ())
        if not row:
            at += 1
            continue
        found.append((at, at + len(row)))
        at += len(row)
    return found


def _sentences(tokens: Sequence[Token]) -> list[range]:
    """Ranges of tokens up to each full stop, question mark and the like."""
    found, start = [], 0
    for at, token in enumerate(tokens):
        if token.word in ".!?;\n":
            found.append(range(start, at + 1))
            start = at + 1
    return [*found, range(start, len(tokens))]


def _mark_question(tokens: Sequence[Token], sentence: range) -> None:
    """A sentence that asks says nothing of what was seen."""
    if len(sentence) > 1 and tokens[sentence[-1]].word == "?" and tokens[sentence[0]].word in _ASKS:
        for at in sentence:
            tokens[at].unknown = True


def _mark_unknown(tokens: Sequence[Token], start: int) -> None:
    for at in range(start, len(tokens)):
        if (tokens[at].sign and tokens[at].word not in "-/") or tokens[at].word in ("but", "pero"):
            return
        tokens[at].unknown = True


def _mark_denied(tokens: Sequence[Token], denier: int, start: int) -> None:
    """Deny what follows, up to where something new begins; what may or may not be meant becomes unknown."""
    reached, doubtful = 0, False
    for at in range(start, len(tokens)):
        token = tokens[at]
        if token.word in _ENDS and at > start and (reached or token.word != "with"):
            return
        if token.sign and token.word not in "-/":
            if token.word != "," or not _list_goes_on(tokens, at):
                return
            continue
        if token.word in _JOINS:
            if at + 1 < len(tokens) and tokens[at + 1].word in _BEGINS:
                return
            doubtful = True
            continue
        if doubtful or reached >= _REACH:
            if token.unknown:
                return
            token.unknown = True
        else:
            token.denied, token.denied_from = True, tokens[denier].start
        reached += not token.is_filler


def _list_goes_on(tokens: Sequence[Token], comma: int) -> bool:
    """Whether the commas from here on part a list that ends with “or”, as in “no wings, claws or tail”."""
    count = 0
    for token in tokens[comma + 1 :]:
        if token.word in _OR:
            return True
        if (token.sign and token.word != ",") or token.word in _BEGINS or token.word in _JOINS:
            return False
        count = 0 if token.sign else count + 1
        if count > 2:
            return False
    return False


def _denies_before(tokens: Sequence[Token], none: int) -> bool:
    """Deny what stands before a “none” that ends its clause, as in “wings: none”."""
    following = tokens[none + 1] if none + 1 < len(tokens) else None
    if (following is not None and not following.sign) or none == 0 or tokens[none - 1].word in _JOINS:
        return False
    at = none - 1
    if tokens[at].sign and tokens[at].word in (":-?" if tokens[none].word == "no" else ":-,?"):
        at -= 1
    marked = False
    while at >= 0 and not tokens[at].sign and tokens[at].word not in _JOINS:
        # It may be put as a question and answered: “Wings? No.”
        tokens[at].denied = marked = True
        tokens[at].unknown = False
        at -= 1
    return marked


def _mark_unsure(tokens: Sequence[Token], clauses: Mapping[int, range], start: int, end: int) -> None:
    """Doubt the clause, as far as doubt reaches; and the one before, where the clause holds nothing else."""
    own = clauses[tokens[start].clause]
    doubted = [at for at in own if start - _DOUBT <= at < end + _DOUBT]
    before = clauses.get(tokens[start].clause - 1)
    alone = sum(not tokens[at].sign for at in doubted) <= end - start
    if alone and before is not None and tokens[before[0]].sentence == tokens[start].sentence:
        doubted += [at for at in before if at >= start - _DOUBT - 2]
    for at in doubted:
        tokens[at].unsure = True


def _clauses(tokens: Sequence[Token]) -> dict[int, range]:
    """Positions of each clause."""
    found: dict[int, range] = {}
    for at, token in enumerate(tokens):
        start = found[token.clause].start if token.clause in found else at
        found[token.clause] = range(start, at + 1)
    return found
