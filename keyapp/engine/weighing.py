"""The evidence for and against some of the results, answer by answer."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.ledger import Event
from keyapp.engine.safety import clearing_counts
from keyapp.engine.standing import block_logs, blocks
from keyapp.engine.tables import Floats, Tables
from keyapp.model import Answer, Choice, LeadAnswer, Sureness

__all__ = ["NotClearing", "Strength", "Weighed", "strength", "weigh_answers"]

STRONG = math.log(10.0)
"""An answer that multiplies the odds by ten, or divides them, speaks strongly (a common scale of Bayes factors)."""

SOME = math.log(1.5)
"""Below this an answer says little either way."""

STEPS = 64
"""Points of Gauss-Legendre quadrature; the sum then holds to better than one part in a million millions."""


class Strength(StrEnum):
    """How an answer speaks of an animal."""

    STRONGLY_FOR = "strongly-for"
    SOMEWHAT_FOR = "somewhat-for"
    LITTLE = "little"
    SOMEWHAT_AGAINST = "somewhat-against"
    STRONGLY_AGAINST = "strongly-against"


class NotClearing(StrEnum):
    """Why an answer does not count towards ruling an animal out.

    `never`: it is of a character that never clears. `absence`: it only says what is not there, or what does
    not fit. `unsure`: it was not given as sure. `shown`: some of these animals can look so.
    """

    NEVER = "never"
    ABSENCE = "absence"
    UNSURE = "unsure"
    SHOWN = "shown"


@dataclass(frozen=True, slots=True)
class Weighed:
    """What the answers of one independence group say of an animal.

    Attributes:
        answers: the answers, in the order given.
        characters: what they speak of.
        log_ratio: by how much they change the log odds of the animal against all else, in nats; positive speaks
            for it.
        strength: the same in words.
        not_clearing: why they do not count towards ruling it out; None where they count.
    """

    answers: tuple[Answer, ...]
    characters: tuple[str, ...]
    log_ratio: float
    strength: Strength
    not_clearing: NotClearing | None


def strength(log_ratio: float) -> Strength:
    """A change of log odds (nats) in words.

    >>> [str(strength(x)) for x in (3.0, -1.0, 0.1)]
    ['strongly-for', 'somewhat-against', 'little']
    """
    if abs(log_ratio) < SOME:
        return Strength.LITTLE
    if log_ratio > 0:
        return Strength.STRONGLY_FOR if log_ratio >= STRONG else Strength.SOMEWHAT_FOR
    return Strength.STRONGLY_AGAINST if log_ratio <= -STRONG else Strength.SOMEWHAT_AGAINST


def weigh_answers(
    tables: Tables,
    log_prior: Floats,
    found: Sequence[Event],
    rows: Collection[int],
    still_open: Collection[int] = (),
) -> tuple[Weighed, ...]:
    """The answers by independence group, each with what it says of the results in `rows` against all others.

    The ratios sum to the log ratio of the standing: log odds after all answers less log odds
    before any. They do not depend on the order of answers. With the answers taken up together in
    steps t from 0 to 1 (every log likelihood times t), the odds move by the sum over blocks of
    E[logs of the block | in rows] - E[logs of the block | not in rows] for each step, under the standing at t;
    the ratio of a block is its part of that, summed over all steps (the value of Aumann and
    Shapley 1974, which is the only way of sharing out that is additive and takes no order).

    Args:
        still_open: the rows among `rows` that are not ruled out yet; an answer counts towards
            ruling out where it counts against every one of them that it can apply to and that no
            other answer counts against. All of `rows` where empty.
    """
    joined = [sorted(block, key=lambda event: found.index(event)) for block in blocks(found)]
    joined.sort(key=lambda block: found.index(block[0]))
    ratios = _shares(tables, log_prior, [block_logs(block) for block in joined], rows)
    open_rows = list(still_open or rows)
    return tuple(
        Weighed(
            tuple(answer for event in block for answer in event.answers),
            tuple(dict.fromkeys(name for event in block for name in event.characters)),
            ratio,
            strength(ratio),
            _not_clearing(tables, found, block, open_rows),
        )
        for block, ratio in zip(joined, ratios, strict=True)
    )


def _shares(tables: Tables, log_prior: Floats, logs: Sequence[Floats], rows: Collection[int]) -> list[float]:
    """The part of each block in the change of log odds, in nats."""
    if not logs:
        return []
    inside = np.zeros(len(tables.rows), dtype=bool)
    inside[list(rows)] = True
    stacked = np.array(logs)
    start = np.log([o.share for o in tables.weights.observers])[:, None] + log_prior[None, :]
    whole = stacked.sum(axis=0)
    total = np.zeros(len(logs))
    points, weights = np.polynomial.legendre.leggauss(STEPS)
    for point, weight in zip((points + 1.0) / 2.0, weights / 2.0, strict=True):
        # Each side is scaled by itself, so that neither runs out of digits where the other is far likelier.
        for side, sign in ((inside, 1.0), (~inside, -1.0)):
            part = _scaled(start[:, side] + point * whole[:, side])
            total += sign * weight * np.einsum("boh,oh->b", stacked[:, :, side], part)
    return [float(value) for value in total]


def _scaled(logs: Floats) -> Floats:
    chances = np.exp(logs - logs.max())
    return np.asarray(chances / chances.sum())


def _not_clearing(
    tables: Tables, found: Sequence[Event], block: Sequence[Event], rows: Sequence[int]
) -> NotClearing | None:
    """Why a block does not count towards ruling out `rows`; the reason of its best answer."""
    others = clearing_counts(tables, [event for event in found if event not in block])[list(rows)]
    counts = clearing_counts(tables, found)[list(rows)] > others
    spoken_of = ~np.all([event.inapplicable[list(rows)] for event in block], axis=0)
    # Results that another answer speaks against need not be met by this one as well.
    left = spoken_of & (others == 0)
    if counts[left].all() if left.any() else counts[spoken_of].any():
        return None
    reasons = [_reason(tables, event, np.array(rows)[spoken_of]) for event in block]
    order = (NotClearing.UNSURE, NotClearing.SHOWN, NotClearing.ABSENCE, NotClearing.NEVER)
    return min(reasons, key=order.index)


def _reason(tables: Tables, event: Event, rows: NDArray[np.int64]) -> NotClearing:
    if any(tables.keyset.characters[name].never_clears for name in event.characters):
        return NotClearing.NEVER
    if any(isinstance(answer, LeadAnswer) and answer.choice is Choice.NEITHER for answer in event.answers):
        return NotClearing.ABSENCE
    if event.may_clear or not event.against[rows].all():
        return NotClearing.SHOWN
    if any(answer.sureness is not Sureness.SURE for answer in event.answers):
        return NotClearing.UNSURE
    return NotClearing.ABSENCE
