"""From phrases found to observations: which of them hold, what a denial leaves, and how sure it is."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace

from keyapp.model import AskInstead, Character, Form, KeySet, Sureness, View
from keyapp.notes.index import ASK, Index, Phrase
from keyapp.notes.item import Kind
from keyapp.notes.match import Match
from keyapp.notes.quantity import Counted
from keyapp.notes.token import Token

__all__ = ["Seen", "misleading", "observations"]

THING = "thing"
ANIMAL = "animal"
_PLAIN_PARTS = frozenset(["body", "animal", "mark", "leg"])
"""Parts that add nothing to a word that misleads (“a violin on its back”)."""


@dataclass(frozen=True, slots=True)
class Seen:
    """An observation: states of a character, the positions of its words, and what was said of them.

    Attributes:
        denied: it comes from words that deny.
        view: the side that must have been seen, where it says that something is not there.
    """

    character: str
    states: tuple[str, ...]
    at: tuple[int, ...]
    denied: bool
    sureness: Sureness
    view: View | None = None


def misleading(index: Index, matches: Iterable[Match], tokens: Sequence[Token]) -> list[tuple[AskInstead, Match]]:
    """Words that often mislead, each once, the longest where they overlap, in the order of the note."""
    by_id = {word.id: word for word in index.keyset.notes.ask_instead}
    found = sorted(
        (m for m in matches if m.phrase.kind == ASK and not m.denied), key=lambda m: (-len(m.at), m.at, m.phrase.owner)
    )
    kept: list[Match] = []
    for match in found:
        if not any(match.phrase.owner == other.phrase.owner or set(match.at) <= set(other.at) for other in kept):
            kept.append(match)
    return sorted(((by_id[m.phrase.owner], m) for m in kept), key=lambda pair: pair[1].at)


def observations(
    index: Index,
    tokens: Sequence[Token],
    matches: Sequence[Match],
    counted: Sequence[Counted],
    names: Sequence[frozenset[int]],
) -> list[Seen]:
    """What the phrases and counts say of characters, in the order of the note."""
    keyset = index.keyset
    states = [m for m in matches if m.phrase.kind == Kind.STATES]
    states += [_as_match(tokens, count) for count in counted]
    states = [m for m in states if m.phrase.owner == THING or not any(set(m.at) < name for name in names)]
    asks = [m for m in matches if m.phrase.kind == ASK]
    absent = {(c.id, s.id) for c in keyset.characters.values() for s in c.states if s.absence}
    spots = [set(m.at) for m in matches if m.phrase.kind == Kind.SPOT]
    states = [m for m in states if len(m.at) > 1 or m.phrase.tight or not any(set(m.at) <= spot for spot in spots)]
    states = _longest(states, absent)
    # “On the wall” says where it is; that something is not there must be said in so many words.
    states = [m for m in states if m.denied or m.phrase.denies or (m.phrase.owner, m.phrase.state) not in absent]
    words = {word.id: word for word in keyset.notes.ask_instead}
    held = [m for m in states if not _withheld(m, asks, words, tokens)]
    held = [
        m for m in held if not (m.phrase.denies and m.phrase.owner.endswith("-count") and _just_not_seen(m, tokens))
    ]
    found: dict[tuple[str, tuple[str, ...]], Seen] = {}
    for match in sorted(held, key=lambda m: (m.at, m.phrase.owner, m.phrase.state)):
        seen = _seen(keyset.characters[match.phrase.owner], match, tokens)
        if seen is None:
            continue
        if seen.view is None and any(words[m.phrase.owner].keep and _same_words(m, match) for m in asks):
            seen = replace(seen, sureness=Sureness.THINK_SO)
        key = (seen.character, seen.states)
        old = found.get(key)
        if old is None or (old.sureness is Sureness.THINK_SO and seen.sureness is Sureness.SURE):
            found[key] = seen if old is None else replace(old, sureness=Sureness.SURE)
    settled = _settle_thing(_settle_denied(keyset, list(found.values())), states)
    thing = next((seen.states[0] for seen in settled if seen.character == THING), None)
    settled = [seen for seen in settled if _applies(keyset.characters[seen.character], thing)]
    return sorted(settled, key=lambda seen: (seen.at, seen.character, seen.states))


def _applies(character: Character, thing: str | None) -> bool:
    """Whether it can be asked of what they have: nothing is said of the body where there is only a web."""
    forms = character.applies_to.forms
    return thing is None or not forms or thing not in list(Form) or thing in forms


def _just_not_seen(match: Match, tokens: Sequence[Token]) -> bool:
    """“I didn't see legs” is no count of them."""
    return any(
        token.word in ("see", "saw", "seen", "notice") for token in tokens[max(0, match.at[0] - 3) : match.at[0]]
    )


def _same_words(one: Match, other: Match) -> bool:
    return set(one.at) <= set(other.at) or set(other.at) <= set(one.at)


def _as_match(tokens: Sequence[Token], count: Counted) -> Match:
    words = tuple((tokens[at].lemma, False) for at in count.at)
    denied = any(tokens[at].denied for at in count.at)
    return Match(Phrase(Kind.STATES, count.character, count.state, words), count.at, denied)


def _longest(matches: Sequence[Match], absent: Collection[tuple[str, str]]) -> list[Match]:
    """Of phrases that overlap about one character the longest; of different characters, one that holds another whole.

    A phrase holds no more than the shortest phrase for the same state in it: "shiny black" says no more of the
    surface than "shiny", so that "black" still counts. Words that say outright that something is not there
    ("no red mark") go before the denial of a longer phrase ("red mark on the belly").
    """

    outright = {
        (m.phrase.owner, at)
        for m in matches
        if m.phrase.denies and (m.phrase.owner, m.phrase.state) in absent
        for at in m.at
    }
    matches = [m for m in matches if not m.denied or not any((m.phrase.owner, at) in outright for at in m.at)]
    order = sorted(
        set(matches),
        key=lambda m: (-len(m.at), m.at[-1] - m.at[0], m.at, not m.denied, m.phrase.owner, m.phrase.state),
    )
    same: dict[tuple[str, str, bool], list[frozenset[int]]] = {}
    for match in order:
        same.setdefault((match.phrase.owner, match.phrase.state, match.denied), []).append(frozenset(match.at))
    kept: list[Match] = []
    taken: dict[int, list[tuple[str, frozenset[int]]]] = {}
    for match in order:
        owner, own = match.phrase.owner, frozenset(match.at)
        rivals = [rival for at in own for rival in taken.get(at, ())]
        if any(owner == other or (own < core and owner != THING) for other, core in rivals):
            continue
        kept.append(match)
        inner = [one for one in same[owner, match.phrase.state, match.denied] if one <= own]
        core = min(inner, key=lambda one: (len(one), sorted(one)))
        for at in own:
            taken.setdefault(at, []).append((owner, core))
    return kept


def _withheld(match: Match, asks: Sequence[Match], words: dict[str, AskInstead], tokens: Sequence[Token]) -> bool:
    """Whether it rests on misleading words alone. What is denied is another matter: "not hairy" tells."""
    if match.denied or match.phrase.denies:
        return False
    for ask in asks:
        if not words[ask.phrase.owner].keep and set(ask.at) & set(match.at):
            rest = set(match.at) - set(ask.at)
            if all(tokens[at].part in _PLAIN_PARTS for at in rest):
                return True
    return False


def _seen(character: Character, match: Match, tokens: Sequence[Token]) -> Seen | None:
    """The observation a match gives; None where nothing is left to say."""
    unsure = any(tokens[at].unsure for at in match.at) or bool(character.never_clears)
    sureness = Sureness.THINK_SO if unsure else Sureness.SURE
    state = character.state(match.phrase.state)
    states: tuple[str, ...] = (state.id,)
    denied = match.denied or match.phrase.denies
    if match.denied:
        if character.id == THING:
            return None
        states = tuple(other.id for other in character.states if other.id != state.id)
        if not states or (state.absence and len(states) > 1):
            return None
    absent = len(states) == 1 and character.state(states[0]).absence
    view = character.view if absent and character.view is not View.ANY else None
    return Seen(character.id, states, match.at, denied, sureness, view)


def _settle_denied(keyset: KeySet, found: list[Seen]) -> list[Seen]:
    """What several denials of one character leave together; none where something was seen that agrees with it."""
    kept: list[Seen] = []
    for seen in found:
        if len(seen.states) == 1:
            kept.append(seen)
            continue
        if any(o.character == seen.character and len(o.states) == 1 and o.states[0] in seen.states for o in found):
            continue
        at = next((i for i, o in enumerate(kept) if o.character == seen.character and len(o.states) > 1), None)
        if at is None:
            kept.append(seen)
            continue
        both = tuple(state for state in kept[at].states if state in seen.states)
        if both:
            unsure = Sureness.THINK_SO in (kept[at].sureness, seen.sureness)
            sureness = Sureness.THINK_SO if unsure else Sureness.SURE
            places = tuple(sorted({*kept[at].at, *seen.at}))
            kept[at] = replace(kept[at], states=both, at=places, sureness=sureness)
    return kept


def _settle_thing(found: list[Seen], matches: Sequence[Match]) -> list[Seen]:
    """An animal with its web or eggs is an animal; a sign is meant where there is no animal, or nothing else.

    A longer phrase ("just a web") speaks of the sign alone.
    """
    things = [seen for seen in found if seen.character == THING]
    if len(things) < 2:
        return found
    own = [m for m in matches if m.phrase.owner == THING]
    no_animal = any(m.phrase.denies or (m.denied and m.phrase.state == ANIMAL) for m in own)
    signs = [seen for seen in things if seen.states != (ANIMAL,)]
    alone = [seen for seen in signs if len(seen.at) > 1 or no_animal]
    if alone:
        kept = [max(alone, key=lambda seen: len(seen.at))]
    else:
        kept = [seen for seen in things if seen.states == (ANIMAL,)] or signs[:1]
    return [seen for seen in found if seen.character != THING or seen in kept]
