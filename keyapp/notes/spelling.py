"""Words read in spite of their spelling, with great care: a wrong guess would put words in someone's mouth."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from rapidfuzz.distance import OSA

from keyapp.notes.token import Token, stem, word_set

__all__ = ["Speller"]

SHORTEST = 5
"""Shorter words are taken as they are."""
LONG = 7
"""From this length on a letter may be a wrong one; below it only be left out, doubled or swapped with the next."""
VERY_LONG = 10
"""From this length on two slips are allowed."""

_EVERYDAY = word_set(
    "about above after again along always another asked because before began being below bigger bought bring "
    "brought build built called could country couple every family first found friend front great group hands "
    "horse house known large later leave light little looks lower means might month morning mother never night "
    "noise north often other outside owner paper people phone photo place plant point quite reach ready right "
    "river round seems seven shade shape share sharp sheet shift shirt shock shoes shoot short shots shown sides "
    "sight since sleep smell smile sound south space speak spend stage stand start state steps still stone store "
    "storm story stuff table taken taste thank their there these thick thing think those three throw times today "
    "touch towel trees truck under until using voice waste watch water wears where which while white whole whose "
    "woman women words world worry would wrong years young breaks broke blank crown greet plane planes strike "
    "spine shine spare sports shell beach peach march winds wines wants band bank hairs chair stairs pairs boards "
    "birds blood brain bread clear clean close cloud color count cover dance death earth eight enter field fight "
    "final floor force fresh fruit glass grand grass green happy heart heavy hello human image inner issue judge "
    "laugh learn least level local lucky lunch major maybe metal money mouse mouth movie music needs nurse ocean "
    "offer order paint panel party peace piece pilot press price print proof proud quick quiet radio raise range "
    "refer scale scene score sense serve shall sleeping sister brother husband neighbor neighbour daughter "
    "kitchen"
)


@dataclass(slots=True)
class Speller:
    """Mends single words against those that a key knows.

    `known` words are right as they are. A slip is mended only where it has the same first letter and exactly one
    word is nearest to it.
    """

    words: dict[tuple[str, int], list[str]] = field(default_factory=dict)
    known: frozenset[str] = frozenset()
    _memory: dict[str, str] = field(default_factory=dict)

    @classmethod
    def of(cls, words: Iterable[str], known: Iterable[str]) -> Speller:
        """A speller for `words`; `known` are other words that are spelt right."""
        all_words = {word for word in words if word.isalpha()}
        by_length: dict[tuple[str, int], list[str]] = {}
        for word in sorted(all_words):
            if len(word) >= SHORTEST:
                by_length.setdefault((word[0], len(word)), []).append(word)
        return cls(by_length, frozenset([*all_words, *known, *_EVERYDAY]))

    def mend(self, tokens: Sequence[Token]) -> None:
        """Give misspelt words the plain form of the word that was meant."""
        if not self.words:
            return
        for token in tokens:
            right = self.right_word(token.word)
            if right != token.word:
                token.word, token.lemma, token.misspelt = right, stem(right), True

    def right_word(self, word: str) -> str:
        """The word that was meant, or the word itself."""
        if len(word) < SHORTEST or len(word) > 30 or not word.isalpha() or word in self.known or self._is_form(word):
            return word
        kept = self._memory.get(word)
        if kept is None:
            if len(self._memory) > 10_000:
                self._memory.clear()
            kept = self._memory[word] = self._nearest(word)
        return kept

    def _is_form(self, word: str) -> bool:
        """Whether it is a usual form of a known word."""
        if (word + "s" in self.known and word[-1] != "s") or word + "d" in self.known or word + "ed" in self.known:
            return True
        return any(
            word.endswith(end) and word.removesuffix(end) in self.known
            for end in ("s", "es", "d", "ed", "ing", "ly", "er", "y")
        )

    def _nearest(self, word: str) -> str:
        most = 2 if len(word) >= VERY_LONG else 1
        best: list[str] = []
        for slips in range(1, most + 1):
            for length in range(len(word) - slips, len(word) + slips + 1):
                for right in self.words.get((word[0], length), ()):
                    if OSA.distance(word, right, score_cutoff=slips) <= slips and _likely(word, right):
                        best.append(right)
            if best:
                break
        stems = {stem(right) for right in best}
        return best[0] if len(stems) == 1 else word


def _likely(word: str, right: str) -> bool:
    """In shorter words another letter mostly makes another word."""
    return len(word) >= LONG or len(word) != len(right) or sorted(word) == sorted(right)
