"""Month and place named in a note."""

from __future__ import annotations

from collections.abc import Sequence

from keyapp.model import KeySet
from keyapp.notes.token import Token, tokenize, word_set

__all__ = ["months", "regions"]

_MONTHS = {
    "january": 1, "february": 2, "march": 3, "april": 4, "may": 5, "june": 6, "july": 7, "august": 8, "september": 9,
    "october": 10, "november": 11, "december": 12, "enero": 1, "febrero": 2, "marzo": 3, "abril": 4, "mayo": 5,
    "junio": 6, "julio": 7, "agosto": 8, "septiembre": 9, "octubre": 10, "noviembre": 11, "diciembre": 12,
    "jan": 1, "feb": 2, "mar": 3, "apr": 4, "jun": 6, "jul": 7, "aug": 8, "sep": 9, "sept": 9, "oct": 10, "nov": 11,
    "dec": 12,
}  # fmt: skip
_ALSO_WORDS = frozenset(["may", "march", "mar", "jan", "sep", "dec", "nov", "jun", "jul"])
"""Months that are other words or short forms as well: only with a word of time before them or a number after."""
_TIME = word_set(
    "in since of mid late early last this next was until by during every it's around en de desde end beginning"
)
_STATES = {
    "alabama": "AL", "alaska": "AK", "arizona": "AZ", "arkansas": "AR", "california": "CA", "colorado": "CO",
    "connecticut": "CT", "delaware": "DE", "florida": "FL", "georgia": "GA", "hawaii": "HI", "idaho": "ID",
    "illinois": "IL", "indiana": "IN", "iowa": "IA", "kansas": "KS", "kentucky": "KY", "louisiana": "LA",
    "maine": "ME", "maryland": "MD", "massachusetts": "MA", "michigan": "MI", "minnesota": "MN",
    "mississippi": "MS", "missouri": "MO", "montana": "MT", "nebraska": "NE", "nevada": "NV", "new hampshire": "NH",
    "new jersey": "NJ", "new mexico": "NM", "new york": "NY", "north carolina": "NC", "north dakota": "ND",
    "ohio": "OH", "oklahoma": "OK", "oregon": "OR", "pennsylvania": "PA", "rhode island": "RI",
    "south carolina": "SC", "south dakota": "SD", "tennessee": "TN", "texas": "TX", "utah": "UT", "vermont": "VT",
    "virginia": "VA", "washington": "WA", "west virginia": "WV", "wisconsin": "WI", "wyoming": "WY",
    "washington dc": "DC", "district of columbia": "DC", "puerto rico": "PR",
}  # fmt: skip
"""Names of states with their postal codes (US Postal Service)."""
_ALSO_ENGLISH = word_set("IN OR ME HI OK OH AL DE LA MA PA ID CO AS")
"""Codes that are words as well: only after a comma."""

Place = tuple[str, int, int]


def months(tokens: Sequence[Token], text: str) -> list[tuple[int, int]]:
    """Months named, each with the position of its word."""
    found = []
    for at, token in enumerate(tokens):
        month = _MONTHS.get(token.word)
        if month is None or token.denied or token.unknown:
            continue
        if token.word in _ALSO_WORDS and not _of_time(tokens, text, at):
            continue
        found.append((month, at))
    return found


def _of_time(tokens: Sequence[Token], text: str, at: int) -> bool:
    if token_is_small(tokens[at], text) and tokens[at].word in ("may", "march"):
        return False
    before = tokens[at - 1].word if at else ""
    after = tokens[at + 1].word if at + 1 < len(tokens) else ""
    return before in _TIME or after[:1].isdigit() or (after == "." and after[:1].isdigit())


def token_is_small(token: Token, text: str) -> bool:
    """Whether the word begins with a small letter in the text."""
    return text[token.start].islower()


def regions(tokens: Sequence[Token], text: str, keyset: KeySet) -> list[Place]:
    """State codes and regions named that the key knows: (code or id, first position, last position)."""
    codes = {code for region in keyset.regions.values() for code in region.states}
    found: list[Place] = []
    taken: set[int] = set()
    for length in (3, 2, 1):
        for at in range(len(tokens) - length + 1):
            row = tokens[at : at + length]
            if any(t.denied or t.unknown or t.sign for t in row) or any(i in taken for i in range(at, at + length)):
                continue
            code = _STATES.get(" ".join(t.word for t in row)) or (_code(tokens, text, at) if length == 1 else None)
            if code in codes:
                found.append((code, at, at + length - 1))
                taken |= set(range(at, at + length))
    if not found:
        found = _named_regions(tokens, keyset)
    return sorted(found, key=lambda one: one[1])


def _code(tokens: Sequence[Token], text: str, at: int) -> str | None:
    written = text[tokens[at].start : tokens[at].end]
    if len(written) != 2 or not written.isupper():
        return None
    before = tokens[at - 1].word if at else ""
    return written if before == "," or (before in ("in", "from") and written not in _ALSO_ENGLISH) else None


def _named_regions(tokens: Sequence[Token], keyset: KeySet) -> list[Place]:
    found = []
    for region in keyset.regions.values():
        if region.demo or region.part_of:
            continue
        name = tuple(token.word for token in tokenize(region.name.say()) if not token.sign)
        for at in range(1, len(tokens) - len(name) + 1):
            row = tokens[at : at + len(name)]
            following = tokens[at + len(name)] if at + len(name) < len(tokens) else None
            named = tokens[at - 1].word in ("the", "pacific") and (following is None or following.sign)
            if name and named and tuple(t.word for t in row) == name and not row[0].denied:
                found.append((region.id, at, at + len(name) - 1))
    return found
