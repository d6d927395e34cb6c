"""Where the phrases of a key stand in a note, near each other and about the right part."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from keyapp.model import View
from keyapp.notes.index import ARTICLES, ASK, SIZES, Index, Phrase, content_of
from keyapp.notes.item import Kind, Span
from keyapp.notes.token import Token, word_set

__all__ = ["Match", "find_phrases", "governing_part"]

GAP = 2
"""Other words that may stand among the words of a phrase."""
MIXED = 16
"""Words over which a phrase may reach that says what is there and what is not."""
AHEAD = 3
"""How many words a describing word may stand before what it describes."""
_SOME_LEGS = word_set("front back hind first last third second rear fore <rear> <front>")
_WEBS = frozenset(["web", "silk", "web-kind"])
_VERBS = word_set("is are was were has have had looks look seems it's its it they and with but")
_PARTS_FROM = frozenset(["is", "are", "was", "were", "has", "have", "had", "with"])
_AT = word_set("on in at from of to under by over across around for")
_OWN = frozenset(["the", "its", "his", "her", "it"])
_SUBJECTS = frozenset(["it", "it's", "he", "she", "he's", "she's", "they", "they're"])
_TAKES_PLACE: Mapping[str, tuple[str, ...]] = {"<body>": ("<animal>",)}
"""Who says “an oval spider” means its body."""


@dataclass(frozen=True, slots=True)
class Match:
    """A phrase found in a note.

    Attributes:
        at: positions of its words, in order.
        denied: the note denies what the phrase says.
    """

    phrase: Phrase
    at: tuple[int, ...]
    denied: bool

    def span(self, tokens: Sequence[Token]) -> Span:
        """The stretch of the text from its first to its last word."""
        return Span(tokens[self.at[0]].start, tokens[self.at[-1]].end)


def find_phrases(index: Index, tokens: Sequence[Token], used: frozenset[int]) -> list[Match]:
    """Every phrase in the note, in no order that matters."""
    content = content_of(tokens, used)
    order = {at: number for number, at in enumerate(content)}
    places: dict[str, list[int]] = {}
    for at in content:
        places.setdefault(tokens[at].lemma, []).append(at)
    for lemma, others in _TAKES_PLACE.items():
        more = [at for other in others for at in places.get(other, ())]
        if more:
            places[lemma] = sorted([*places.get(lemma, ()), *more])
    web = any(token.part in _WEBS and not token.denied for token in tokens)
    found = []
    for lemma in sorted(places):
        for phrase in index.by_word.get(lemma, ()):
            if all(word in places for word, _ in phrase.words):
                for start in places[lemma]:
                    match = _match(index, tokens, phrase, lemma, start, places, order, web)
                    if match is not None:
                        found.append(match)
    return list(dict.fromkeys(found))


def _match(
    index: Index,
    tokens: Sequence[Token],
    phrase: Phrase,
    anchor: str,
    start: int,
    places: Mapping[str, list[int]],
    order: Mapping[int, int],
    web: bool,
) -> Match | None:
    chosen: dict[str, int] = {anchor: start}
    for word, _ in phrase.words:
        if word not in chosen:
            near = [
                at
                for at in places[word]
                if at not in chosen.values() and (tokens[at].sentence == tokens[start].sentence or phrase.is_mixed)
            ]
            if not near:
                return None
            clause = tokens[start].clause
            chosen[word] = min(near, key=lambda at: (tokens[at].clause != clause, abs(order[at] - order[start]), at))
    at = tuple(sorted(chosen.values()))
    if any(tokens[i].unknown for i in at) or not _near(tokens, at, order, phrase):
        return None
    if not _fits(tokens, at, phrase):
        return None
    if phrase.tight and not _in_a_row(tokens, at[0], phrase.tight):
        return None
    if phrase.kind == Kind.STATES and not _about(index, tokens, phrase, at):
        return None
    if phrase.kind == Kind.STATES and not phrase.denies and not web and _is_of_web(index, phrase):
        return None
    return _with_denial(tokens, phrase, chosen, at)


def _in_a_row(tokens: Sequence[Token], at: int, row: tuple[str, ...]) -> bool:
    """Whether the words of `row` stand around this position, articles aside."""
    before = [t.word for t in tokens[max(0, at - 8) : at] if t.word not in ARTICLES]
    after = [t.word for t in tokens[at : at + 8] if t.word not in ARTICLES]
    words = before + after
    return any(
        tuple(words[i : i + len(row)]) == row for i in range(max(0, len(before) - len(row) + 1), len(before) + 1)
    )


def _with_denial(
    tokens: Sequence[Token], phrase: Phrase, chosen: Mapping[str, int], at: tuple[int, ...]
) -> Match | None:
    """The match, denied where the note denies what the phrase says; None where the two do not meet."""
    if phrase.is_mixed:
        met = all(tokens[chosen[word]].denied == denied for word, denied in phrase.words)
        return Match(phrase, at, False) if met else None
    wrong = [chosen[word] for word, denied in phrase.words if tokens[chosen[word]].denied != denied]
    if not wrong:
        return Match(phrase, at, False)
    if not phrase.denies:
        # “Smooth legs without hair” denies no smooth, hairy legs.
        return Match(phrase, at, True) if all(tokens[i].denied or tokens[i].part for i in at) else None
    met = any(denied and tokens[chosen[word]].denied for word, denied in phrase.words)
    return Match(phrase, at, False) if met and all(tokens[i].part and not tokens[i].denied for i in wrong) else None


def _is_of_web(index: Index, phrase: Phrase) -> bool:
    """Whether it is said of a web; then the note must speak of one (“near the ceiling”)."""
    if any(word.strip("<>") in _WEBS for word, _ in phrase.words):
        return False
    return index.keyset.characters[phrase.owner].view is View.WEB and "web" in index.keyset.notes.parts


def _fits(tokens: Sequence[Token], at: tuple[int, ...], phrase: Phrase) -> bool:
    """Whether what is only likened, or only some of the legs, is what the phrase speaks of too."""
    words = {word for word, _ in phrase.words}
    if any(tokens[i].likened for i in at) and not words & {"like", "como"} and phrase.kind != SIZES:
        return False
    if any(tokens[i].some for i in at) and not words & _SOME_LEGS:
        return False
    if phrase.row and tuple(tokens[i].lemma for i in at) != phrase.row:
        return False
    # “Round like a ball, and the web ...”: what comes with an article of its own is something else.
    inside = range(at[0] + 1, at[-1])
    return not any(tokens[i].word == "and" and i not in at and tokens[i + 1].word in _OWN for i in inside)


def _near(tokens: Sequence[Token], at: tuple[int, ...], order: Mapping[int, int], phrase: Phrase) -> bool:
    """Whether the words stand close together, with nothing of another part between, and not in several clauses."""
    first, last = at[0], at[-1]
    gap = order[last] - order[first] + 1 - len(phrase.words)
    if phrase.is_mixed:
        # One thing is there and another is not: "there is a web in the corner, but I see no spider".
        return last - first <= MIXED
    if gap > (0 if phrase.kind == ASK or {"just", "only"} & {word for word, _ in phrase.words} else GAP):
        return False
    for one, other in pairwise(at):
        # Across a comma only from one describing word to the next, as in “long, thin legs”.
        if tokens[one].clause != tokens[other].clause and (gap or tokens[one].part or tokens[other].part):
            return False
    return not any(tokens[i].part and i not in at for i in range(first, last))


def _about(index: Index, tokens: Sequence[Token], phrase: Phrase, at: tuple[int, ...]) -> bool:
    """Whether the words are said of the part that the phrase is about."""
    named = [i for i in at if tokens[i].part]
    if named:
        return _describes(tokens, at, named, phrase.small)
    if _by_caller(tokens, at[0]):
        return False
    parts = index.about.get(phrase.owner)
    governing = governing_part(tokens, at)
    return parts is None or governing is None or governing in parts


def _describes(tokens: Sequence[Token], at: tuple[int, ...], named: list[int], small: frozenset[str]) -> bool:
    """Whether the words hang together.

    Not where a verb or “with” parts a describing word from the part after it, nor where another part takes the last
    word (“legs, long body”).
    """
    first, last = at[0], at[-1]
    if first not in named:
        to = named[0]
        between = range(first + 1, to)
        if any(i not in at and tokens[i].word in _PARTS_FROM - small for i in between):
            return False
        if to - 1 > first and tokens[to - 1].word in {"and", "y"} - small:
            return False
    if last not in named:
        for i in range(last + 1, min(len(tokens), last + 6)):
            token = tokens[i]
            if token.sign or token.clause != tokens[last].clause or token.word in _VERBS or token.word in _AT:
                break
            if token.part:
                return False
    return True


def _by_caller(tokens: Sequence[Token], first: int) -> bool:
    """Whether it is the caller who ran, sat or walked."""
    before = [token.word for token in tokens[max(0, first - 2) : first] if token.clause == tokens[first].clause]
    return before[-1:] in (["i"], ["we"], ["i'm"]) or (
        before[:1] in (["i"], ["we"]) and before[1:] in (["was"], ["were"], ["am"], ["just"], ["almost"], ["then"])
    )


def governing_part(tokens: Sequence[Token], at: Sequence[int], *, earlier: bool = True) -> str | None:
    """The part that lone words at these positions are said of: what follows them, or what the clause began with.

    With `earlier`, where the clause names none, what the clause before it was about.
    """
    last, clause = at[-1], tokens[at[-1]].clause
    before = [token.word for token in tokens[max(0, at[0] - 2) : at[0]]]
    if before[-1:] == ["some"] or before in (["bit", "of"], ["touch", "of"], ["hint", "of"], ["lot", "of"]):
        return "mark"
    ahead = 0
    for i in range(last + 1, len(tokens)):
        token = tokens[i]
        if token.clause != clause or token.sign or (token.word in _VERBS and token.word != "and"):
            break
        if token.part:
            return token.part
        if token.word in _AT:
            break
        ahead += not token.is_filler
        if ahead > AHEAD:
            break
    for i in range(at[0] - 1, -1, -1):
        if tokens[i].clause != clause:
            break
        if tokens[i].word in _SUBJECTS:
            return None
        if tokens[i].part:
            return tokens[i].part
    return _earlier_subject(tokens, at[0]) if earlier else None


def _earlier_subject(tokens: Sequence[Token], start: int) -> str | None:
    """What the clause before was about, where the words have a clause to themselves (“Ringed legs, brown”)."""
    clause, sentence = tokens[start].clause, tokens[start].sentence
    own = [t for t in tokens[max(0, start - 8) : start + 8] if t.clause == clause and not t.sign]
    if len(own) > 4 or any(t.word in _SUBJECTS or t.word == "its" for t in own):
        return None
    before = [t for t in tokens[max(0, start - 14) : start] if t.clause == clause - 1 and t.sentence == sentence]
    return next((t.part for t in before if t.part and not t.denied), None)
