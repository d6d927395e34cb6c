"""A text as words: where each stands, what it is in plain form, and in which clause."""

from __future__ import annotations

import re
from dataclasses import dataclass

__all__ = ["FILLERS", "Token", "plain_word", "stem", "tokenize", "word_set"]


def word_set(text: str) -> frozenset[str]:
    """The words of a list written with spaces."""
    return frozenset(text.split())


_TOKEN = re.compile(r"\d+(?:\.\d+)?|[½¼¾⅓⅔⅛⅜⅝⅞]|[^\W\d_]+(?:'[^\W\d_]+)*|[.,;:!?()\n\"/–—-]")
_HARD = frozenset(".;!?\n")
_SOFT = frozenset(",:()–—")
_TURNS = word_set("but though although however except because while pero aunque")
"""Words that begin a clause of their own."""

FILLERS = word_set(
    "a an the its it he she they them their his her hers my our your this that these those there here is are was "
    "were be been being am has have had having got gets get do does did of on in at to with from by as for and or "
    "so quite pretty too also we you i me us who which it's i'm he's she's they're there's that's "
    "one's i've we've he'd she'd it'll i'd well then now when where than some any other others bit little rather "
    "fairly el la los las un una unos unas su sus es son está están de del en con y o al lo se muy que"
)
"""Words that carry nothing for a phrase."""

_IRREGULAR = {
    "ran": "run", "hung": "hang", "sat": "sit", "sits": "sit", "sitting": "sit", "lies": "lie", "lay": "lie",
    "lying": "lie", "feet": "foot", "held": "hold", "crept": "creep", "leapt": "leap", "flew": "flew", "flying": "flew",
    "flown": "flew", "stuck": "stick", "spun": "spin", "shook": "shake", "came": "come", "grey": "gray",
    "greyish": "gray", "grayish": "gray", "greenish": "green", "bluish": "blue", "brownish": "brown",
    "yellowish": "yellow", "reddish": "reddish", "blackish": "black", "whitish": "white", "silvery": "silver",
    "colour": "color", "coloured": "color", "colors": "color", "colored": "color", "colours": "color",
    "centre": "middle", "center": "middle", "babies": "baby", "bodies": "body", "this": "this", "does": "does",
    "legged": "leg", "winged": "wing", "eyed": "eye", "slid": "slide", "fell": "fall", "fallen": "fall",
    "moulted": "molt", "thinner": "thin", "was": "was", "walking": "walk", "mummy": "mummy", "skinny": "skinny",
    "silky": "silky", "six": "6", "eight": "8", "two": "2", "three": "3", "four": "4", "five": "5", "ten": "10",
    "one": "1",
    "twelve": "12", "fourteen": "14", "thirty": "30", "hundred": "100", "seven": "7", "nine": "9",
}  # fmt: skip


@dataclass(slots=True)
class Token:
    """A word or sign of a text.

    Attributes:
        start, end: where it stands.
        word: small letters, with a plain apostrophe.
        lemma: what it is compared by; `<part>` for a word for a part of an animal.
        part: the part it is a word for, or what else a sentence can be about; else empty.
        likened: it stands in a comparison ("like a ball").
        some: only some of the legs are meant ("the first pair of legs").
        plain: the plain form of its words, whatever part they name.
        clause: number of its clause: parts between commas and the like.
        sentence: number of its sentence, or of the part of one that begins anew ("but").
        sign: it is punctuation.
        denied, unknown, unsure: what the words around say of it.
        denied_from: where the word stands that denies it; -1 where none does.
        misspelt: it was read in spite of its spelling.
    """

    start: int
    end: int
    word: str
    lemma: str
    clause: int
    sentence: int
    sign: bool = False
    denied: bool = False
    denied_from: int = -1
    unknown: bool = False
    unsure: bool = False
    misspelt: bool = False
    part: str = ""
    plain: str = ""
    likened: bool = False
    some: bool = False

    @property
    def is_filler(self) -> bool:
        """Whether it carries nothing for a phrase."""
        return self.sign or self.word in FILLERS


def tokenize(text: str) -> list[Token]:
    """Return the words and signs of `text`, in order; never raises.

    >>> [(t.lemma, t.clause) for t in tokenize("Long, skinny legs.")]
    [('long', 0), (',', 0), ('skinny', 1), ('leg', 1), ('.', 1)]
    """
    tokens: list[Token] = []
    clause = sentence = 0
    straight = text.replace("’", "'").replace("‘", "'").replace("`", "'")
    for match in _TOKEN.finditer(straight):
        word = plain_word(match.group())
        sign = not (word[0].isalnum() or word[0] in "½¼¾⅓⅔⅛⅜⅝⅞")
        if word in _TURNS:
            clause, sentence = clause + 1, sentence + 1
        tokens.append(Token(match.start(), match.end(), word, word if sign else stem(word), clause, sentence, sign))
        if word in _HARD:
            clause, sentence = clause + 1, sentence + 1
        elif word in _SOFT:
            clause += 1
    return tokens


def plain_word(word: str) -> str:
    """Small letters, character for character, so that nothing moves."""
    return "".join(small if len(small := letter.lower()) == 1 else letter for letter in word)


def stem(word: str) -> str:
    """The word without its usual English endings; good enough to compare by, no dictionary form.

    >>> [stem(word) for word in ("legs", "striped", "stripes", "running", "spiky", "bodies", "glass")]
    ['leg', 'strip', 'strip', 'run', 'spik', 'body', 'glass']
    """
    word = word.removesuffix("'s")
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if len(word) > 4 and word.endswith("ies"):
        word = word[:-3] + "y"
    elif len(word) > 3 and word.endswith("s") and not word.endswith(("us", "is", "ss")):
        word = word[:-1]
    if len(word) > 5 and word.endswith("ing"):
        word = _single(word[:-3])
    elif len(word) > 4 and word.endswith("ed"):
        word = _single(word[:-2])
    if len(word) > 6 and word.endswith("ish"):
        word = word[:-3]
    if len(word) > 5 and word.endswith("ly"):
        word = word[:-2]
    if len(word) > 4 and word[-1] in "yi" and word not in ("belly", "daddy", "woody"):
        word = _single(word[:-1])
    if len(word) > 4 and word.endswith("e"):
        word = word[:-1]
    return word


def _single(word: str) -> str:
    """The last letter once, where the ending had doubled it."""
    return word[:-1] if len(word) > 3 and word[-1] == word[-2] and word[-1] not in "aeiou" else word
