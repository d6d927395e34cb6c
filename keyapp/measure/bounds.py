"""Bounds on questioning: what no order of questions can beat, whatever the key."""

from __future__ import annotations

import heapq
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

__all__ = [
    "Huffman",
    "answer_bits",
    "entropy",
    "huffman",
    "least_mean",
    "least_restricted_total",
    "lies_bits",
    "lies_questions",
    "majority_right",
    "path_survival",
    "worst_mean",
]


@dataclass(frozen=True, slots=True)
class Huffman:
    """The best order when every split may be asked: mean number of questions, and questions by end."""

    mean: float
    lengths: tuple[int, ...]


def entropy(chances: Sequence[float]) -> float:
    """Entropy in bits of chances or weights (scaled to sum to 1); zeros count nothing.

    No error-free order of yes/no questions needs fewer on average, and the best needs less than one more
    (Dagan, Filmus, Gabizon & Moran, "Twenty (simple) questions", arXiv 1611.01655).

    >>> entropy([0.5, 0.25, 0.125, 0.125])
    1.75
    """
    total = math.fsum(chances)
    return math.fsum(-(p / total) * math.log2(p / total) for p in chances if p > 0) + 0.0


def huffman(chances: Sequence[float]) -> Huffman:
    """Huffman's code lengths for chances or weights (Huffman 1952, from memory). Zeros are taken as ends too.

    >>> huffman([0.5, 0.25, 0.125, 0.125])
    Huffman(mean=1.75, lengths=(1, 2, 3, 3))
    """
    if len(chances) == 0:
        raise ValueError("no chances given")
    total = math.fsum(chances)
    lengths = [0] * len(chances)
    heap = [(p / total, i, [i]) for i, p in enumerate(chances)]
    heapq.heapify(heap)
    tie = len(chances)
    while len(heap) > 1:
        (first, _, some), (second, _, others) = heapq.heappop(heap), heapq.heappop(heap)
        for i in (*some, *others):
            lengths[i] += 1
        heapq.heappush(heap, (first + second, tie, some + others))
        tie += 1
    return Huffman(math.fsum(p / total * n for p, n in zip(chances, lengths, strict=True)), tuple(lengths))


def least_mean(ends: int) -> float:
    """Least mean path of a dichotomous key without rejoining paths, all `ends` (at least 1) equally likely.

    (n k + 2 (n - 2^k)) / n with k = floor(log2 n); standard tree arithmetic.

    >>> least_mean(12)
    3.6666666666666665
    """
    k = ends.bit_length() - 1
    return (ends * k + 2 * (ends - (1 << k))) / ends


def worst_mean(ends: int) -> float:
    """Mean path when every couplet splits off one end, all `ends` equally likely: (n(n+1)/2 - 1) / n."""
    return (ends * (ends + 1) / 2 - 1) / ends


@cache
def least_restricted_total(ends: int) -> int:
    """Least total path over all `ends` (1 to a few hundred) when a question may single out at most three of them.

    f(n) = min over i in 1, 2, 3 of f(n-i) + f(i) + n, with f(1) = 0, f(2) = 2, f(3) = 5
    (after Hyafil & Rivest 1976, Information Processing Letters 5(1):15-17).
    """
    if ends <= 3:
        return (0, 0, 2, 5)[ends]
    return min(least_restricted_total(ends - i) + least_restricted_total(i) + ends for i in (1, 2, 3))


def answer_bits(error: float) -> float:
    """Most bits that one yes/no answer is worth when it is wrong at chance `error`: 1 - h2(error) (Shannon).

    >>> round(answer_bits(0.1), 4)
    0.531
    """
    return 1.0 - entropy([error, 1.0 - error])


def lies_questions(ends: int, lies: int) -> int:
    """Questions needed to find one of `ends` when up to `lies` answers may be wrong.

    No lies: ceil(log2 n). One lie: exact (Pelc 1987, in Osthus & Watkinson, arXiv 0705.1220): least q with
    n <= 2^q / (q + 1) for even n, n <= (2^q - q + 1) / (q + 1) for odd n. More lies: the lower bound
    n * sum over i <= k of C(q, i) <= 2^q (Berlekamp, in Pelc 2002, Theoretical Computer Science 270:71-109).

    >>> lies_questions(1_000_000, 1)
    25
    """
    if ends < 1 or lies < 0:
        raise ValueError(f"{ends} ends, {lies} lies")
    q = 0
    while not _enough(ends, lies, q):
        q += 1
    return q


def _enough(ends: int, lies: int, q: int) -> bool:
    if ends == 1:
        return True
    if lies == 1 and ends % 2:
        return ends * (q + 1) <= (1 << q) - q + 1
    return ends * sum(math.comb(q, i) for i in range(min(lies, q) + 1)) <= 1 << q


def lies_bits(chances: Sequence[float], lies: int) -> float:
    """About how many questions ends of uneven chances take with `lies` wrong answers: H + k * H2.

    H2 = sum of p log2 log2(1/p); ends of chance 1/2 or more, for which it is not positive, count 0 in it
    ("The entropy of lies", Dagan, Filmus, Kane & Moran).

    >>> round(lies_bits([1 / 32] * 32, 2), 2)
    9.64
    """
    total = math.fsum(chances)
    second = math.fsum(p / total * math.log2(math.log2(total / p)) for p in chances if 0 < p < total / 2)
    return entropy(chances) + lies * second


def path_survival(right: float, couplets: int) -> float:
    """Chance of the right end after `couplets` answers, each right at chance `right` on its own: right^d."""
    return float(right**couplets)


def majority_right(right: float, cues: int) -> float:
    """Chance that most of an odd number of different, independent cues are right, each at chance `right`.

    >>> round(majority_right(0.9, 3), 3)
    0.972
    """
    if cues < 1 or cues % 2 == 0:
        raise ValueError(f"{cues} cues have no majority in every case; give an odd number")
    need = cues // 2 + 1
    return math.fsum(math.comb(cues, i) * right**i * (1 - right) ** (cues - i) for i in range(need, cues + 1))
