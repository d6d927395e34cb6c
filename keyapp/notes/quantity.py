"""Numbers in a note: sizes with their unit, and counts of legs and eyes."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.model import Character
from keyapp.notes.item import Span
from keyapp.notes.token import Token, stem, word_set

__all__ = ["Counted", "Length", "counts", "lengths", "measured_part", "span_of", "words_of_measure"]

MM_PER_UNIT = {
    "mm": 1.0, "millimeter": 1.0, "millimeters": 1.0, "millimetre": 1.0, "millimetres": 1.0, "milímetro": 1.0,
    "milímetros": 1.0, "mil": 1.0, "mils": 1.0, "cm": 10.0, "cms": 10.0, "centimeter": 10.0, "centimeters": 10.0,
    "centimetre": 10.0, "centimetres": 10.0, "centímetro": 10.0, "centímetros": 10.0, "inch": 25.4, "inches": 25.4,
    "inchs": 25.4, "pulgada": 25.4, "pulgadas": 25.4, "in": 25.4,
}  # fmt: skip
_NUMBERS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "eighteen": 18,
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "hundred": 100, "couple": 2, "uno": 1, "dos": 2, "tres": 3,
    "cuatro": 4, "cinco": 5, "seis": 6, "siete": 7, "ocho": 8, "diez": 10, "a": 1, "an": 1, "una": 1, "un": 1,
}  # fmt: skip
_FRACTIONS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
    "eighth": 8, "eighths": 8, "sixteenth": 16, "sixteenths": 16, "media": 2, "medio": 2, "cuarto": 4,
}  # fmt: skip
_SIGNS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
_EXTENT = frozenset(["long", "wide", "across", "body", "or"])
_NO_SIZE = word_set("away from above off deep apart tall ago high up below thick")
_SOME = word_set("front back hind first last rear other middle second third lost missing")
_OWN_BODY = re.compile(
    r"\bbody\b|\bcuerpo\b|without (?:the |its |his |her )?legs|\bno legs\b|"
    r"not (?:counting|including) (?:the |its )?legs|minus (?:the )?legs|sin (?:las )?patas"
)
_NOT_LEGS = re.compile(r"(?:not|without) (?:counting|including) (?:the |its )?legs")
_WITH_LEGS = re.compile(
    r"(?:with|counting|including|incl) (?:the |its |his |her |all (?:the |its )?)?legs|legs (?:and all|and everything|"
    r"included|spread|out\b)|leg ?-?span|tip to tip|leg to leg|con (?:las )?patas"
)


@dataclass(frozen=True, slots=True)
class Length:
    """A size said with its unit: mm, where it stands (positions `first` to `last`), and whether it is hedged."""

    mm: float
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Counted:
    """A count of something: the character, the state it falls in, and the positions of its words."""

    character: str
    state: str
    at: tuple[int, ...]


def lengths(tokens: Sequence[Token], text: str) -> list[Length]:
    """Every size with a unit; of a range the middle (on a log scale, as sizes are weighed)."""
    found = []
    at = 0
    while at < len(tokens):
        length = _length(tokens, text, at)
        if length is None:
            at += 1
            continue
        following = [token.word for token in tokens[length.last + 1 : length.last + 3]]
        if not set(following[:1]) & _NO_SIZE and (following[:1] == [","] or not set(following) & _NO_SIZE):
            found.append(length)
        at = length.last + 1
    return found


def _length(tokens: Sequence[Token], text: str, at: int) -> Length | None:
    first = _number(tokens, at)
    if first is None and tokens[at].word == "inch" and at + 1 < len(tokens) and tokens[at + 1].word in _EXTENT:
        return Length(25.4, at, at)
    if first is None:
        return None
    low, after = first
    unit = _unit(tokens, text, after)
    if unit is not None:
        low, after = _half_more(tokens, low, unit[1]), unit[1]
        after = _past_half(tokens, after)
    high = None
    if after < len(tokens) and tokens[after].word in ("to", "-", "–", "or", "a", "and"):
        second = _number(tokens, after + 1)
        if second is not None:
            second_unit = _unit(tokens, text, second[1])
            if second_unit is not None and tokens[after].word != "and":
                high = _half_more(tokens, second[0], second_unit[1]) * second_unit[0]
                unit = unit or second_unit
                after = _past_half(tokens, second_unit[1])
    if unit is None:
        return None
    mm = low * unit[0]
    if high is not None:
        mm = (mm * high) ** 0.5
    return Length(mm, at, after - 1) if mm > 0 else None


def _number(tokens: Sequence[Token], at: int) -> tuple[float, int] | None:
    """A number in figures or words from `at`, and the position after it."""
    whole: float | None = None
    start = at
    if at >= len(tokens):
        return None
    if (value := _plain_number(tokens, at)) is not None:
        whole, at = value
        if at < len(tokens) and tokens[at].word in ("and", "-") and _fraction(tokens, at + 1) is not None:
            at += 1
    part = _fraction(tokens, at)
    if part is not None and whole is not None and tokens[at - 1].word in ("a", "an", "three", "five", "seven", "two"):
        # “three quarters”, “a third”: so many of them.
        return whole * part[0], part[1]
    if part is not None:
        return (whole or 0) + part[0], part[1]
    if whole is None or at == start:
        return None
    return whole, at


def _plain_number(tokens: Sequence[Token], at: int) -> tuple[float, int] | None:
    word = tokens[at].word
    if word[0].isdigit():
        try:
            value = float(word)
        except ValueError:
            return None
        if at + 2 < len(tokens) and tokens[at + 1].word == "/" and tokens[at + 2].word.isdecimal():
            below = float(tokens[at + 2].word)
            return (value / below, at + 3) if below else None
        return value, at + 1
    if word in _NUMBERS:
        return float(_NUMBERS[word]), at + 1
    return None


def _fraction(tokens: Sequence[Token], at: int) -> tuple[float, int] | None:
    if at >= len(tokens):
        return None
    word = tokens[at].word
    if word in _SIGNS:
        return _SIGNS[word], at + 1
    if word in _FRACTIONS:
        return 1 / _FRACTIONS[word], at + 1
    if word in ("a", "an") and at + 1 < len(tokens) and tokens[at + 1].word in _FRACTIONS:
        return 1 / _FRACTIONS[tokens[at + 1].word], at + 2
    if word.isdecimal() and at + 2 < len(tokens) and tokens[at + 1].word == "/" and tokens[at + 2].word.isdecimal():
        below = float(tokens[at + 2].word)
        return (float(word) / below, at + 3) if below else None
    return None


def _unit(tokens: Sequence[Token], text: str, at: int) -> tuple[float, int] | None:
    """The unit at or just after `at` (“of an inch”, “-inch”): mm, and the position after it."""
    end = tokens[at - 1].end
    if text[end : end + 1] in ('"', "”", "″") and tokens[at - 1].word[0].isdigit():
        return 25.4, at
    steps = 0
    while at < len(tokens) and steps < 3 and tokens[at].word in ("of", "a", "an", "-", "de", "una"):
        at, steps = at + 1, steps + 1
    if at >= len(tokens) or tokens[at].word not in MM_PER_UNIT:
        return None
    if tokens[at].word == "in":
        following = tokens[at + 1] if at + 1 < len(tokens) else None
        if (
            steps
            or not tokens[at - 1].word[-1].isdigit()
            or not (following is None or following.sign or following.word in ("long", "wide", "across"))
        ):
            return None
    return MM_PER_UNIT[tokens[at].word], at + 1


def _half_more(tokens: Sequence[Token], value: float, at: int) -> float:
    """“An inch and a half”."""
    if at + 1 < len(tokens) and tokens[at].word == "and":
        part = _fraction(tokens, at + 1)
        if part is not None:
            return value + part[0]
    return value


def _past_half(tokens: Sequence[Token], at: int) -> int:
    if at + 1 < len(tokens) and tokens[at].word == "and":
        part = _fraction(tokens, at + 1)
        if part is not None:
            return part[1]
    return at


def measured_part(tokens: Sequence[Token], text: str, first: int, last: int) -> str:
    """What was measured as far as the words say: `body`, `legs` (their span) or nothing.

    The clause of the size itself goes before the one before it and the one after.
    """
    clause, sentence = tokens[first].clause, tokens[first].sentence
    for wanted in (clause, clause - 1, clause + 1):
        own = [token for token in tokens[max(0, first - 30) : last + 30] if token.clause == wanted]
        if not own or own[0].sentence != sentence:
            continue
        start = own[0].start
        words = text[start : own[-1].end].lower()
        number = (tokens[first].start - start, tokens[last].end - start)
        said = [
            (_apart(match.span(), number), name)
            for name, pattern in (("body", _OWN_BODY), ("legs", _WITH_LEGS))
            for match in pattern.finditer(words)
        ]
        # “Not counting the legs” holds “counting the legs”.
        if said:
            return "body" if _NOT_LEGS.search(words) else min(said)[1]
    return ""


def _apart(one: tuple[int, int], other: tuple[int, int]) -> int:
    """Letters between two stretches."""
    return max(0, one[0] - other[1], other[0] - one[1])


def words_of_measure(tokens: Sequence[Token], text: str, first: int, last: int) -> set[int]:
    """Positions of words near a size that only say what was measured (“not counting the legs”)."""
    near = range(max(0, first - 20), min(len(tokens), last + 20))
    own = [at for at in near if tokens[at].sentence == tokens[first].sentence]
    start, end = tokens[own[0]].start, tokens[own[-1]].end
    stretch = "".join(letter.lower() if len(letter.lower()) == 1 else letter for letter in text[start:end])
    found: set[int] = set()
    for pattern in (_OWN_BODY, _WITH_LEGS):
        for match in pattern.finditer(stretch):
            if match.group() not in ("body", "cuerpo"):
                found |= {at for at in own if match.start() <= tokens[at].start - start < match.end()}
    return found


def counts(tokens: Sequence[Token], characters: Sequence[Character]) -> list[Counted]:
    """Counts of what a character named “...-count” counts: “8 legs”, “four pairs of legs”, “eight of them”."""
    found = []
    for character in characters:
        if not character.id.endswith("-count") or not character.states:
            continue
        noun = stem(character.id.removesuffix("-count"))
        lemmas = {noun, f"<{noun}>"}
        for at, token in enumerate(tokens):
            if token.sign or (value := _plain_number(tokens, at)) is None or token.word in ("a", "an", "one", "couple"):
                continue
            counted = _count(tokens, at, value, lemmas)
            state = _state_of(character, counted[0]) if counted else None
            if counted and state:
                found.append(Counted(character.id, state, counted[1]))
    return found


def _count(
    tokens: Sequence[Token], at: int, value: tuple[float, int], lemmas: set[str]
) -> tuple[float, tuple[int, ...]] | None:
    number, after = value
    if at and tokens[at - 1].word in _SOME | {"-"}:
        return None
    others = 0
    for i in range(after, min(len(tokens), after + 7)):
        token = tokens[i]
        if token.word in _SOME or token.sentence != tokens[at].sentence or (token.sign and token.word not in "-,"):
            return None
        if token.word in ("pair", "pairs"):
            number *= 2
            continue
        if token.word == "them" and i == after + 1:
            back = next((j for j in range(at - 1, max(-1, at - 8), -1) if tokens[j].lemma in lemmas), None)
            return (number, (back, at, i)) if back is not None else None
        if token.lemma in lemmas:
            side = " ".join(t.word for t in tokens[i + 1 : i + 5])
            if side.startswith(("on each side", "per side", "a side", "each side", "on a side", "on one side")):
                number *= 2
            return number, (at, i)
        others += not token.is_filler
        if token.part or others > 2:
            return None
    return None


def _state_of(character: Character, number: float) -> str | None:
    """The state whose id names this number: “six”, “ten-to-fourteen”, “thirty-or-more”."""
    for state in character.state_ids:
        words = state.split("-")
        least = _NUMBERS.get(words[0])
        if least is None:
            continue
        most = float(least)
        if words[1:] == ["or", "more"]:
            most = float("inf")
        elif len(words) == 3 and words[1] == "to":
            most = _NUMBERS.get(words[2], least)
        if least <= number <= most:
            return state
    return None


def span_of(tokens: Sequence[Token], first: int, last: int) -> Span:
    """The stretch of the text from one position to another."""
    return Span(tokens[first].start, tokens[last].end)
