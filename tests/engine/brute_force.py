"""The worth of a question from nothing but whole readings of every case that an answer could lead to."""

from __future__ import annotations

import math

from keyapp.engine import prior, read_case
from keyapp.engine.safety import openness
from keyapp.model import Case, Report

__all__ = ["entropy", "log_prior_of", "worth_by_hand"]


def entropy(chances):
    return -sum(p * math.log2(p) for p in chances if p > 0)


def log_prior_of(tables):
    import numpy as np

    return np.log(prior(tables, Case().settings))


def error(tables, right, factor):
    """Misread, or slipped: of a sure answer by word, where neither scales anything."""
    slip = min(1.0, tables.weights.slip * factor)
    return min(tables.weights.error_cap, 1.0 - (1.0 - min(1.0, (1.0 - right) * factor)) * (1.0 - slip))


def chance_of(tables, stand, name, k):
    """The chance that state `k` is reported, over true states, animals and levels of observer."""
    table = tables.characters[name]
    total = 0.0
    for o, observer in enumerate(tables.weights.observers):
        for h in range(len(tables.rows)):
            told = 0.0
            for s, right in enumerate(table.right):
                e = error(tables, right, observer.factor)
                told += table.chance[h, s] * ((1.0 - e) * (s == k) + e * table.misread[s, k])
            total += stand.joint[o, h] * told
    return total


def worth_by_hand(tables, view, name, answers, sides):
    """Bits about `sides` (a function from a standing to chances), openness taken away, and both for the effort.

    `view` is what openness is asked of: the tables themselves, or the same about one animal alone.
    """
    before = read_case(tables, Case(answers=answers))
    open_before = openness(view, before.standing, before.events)
    bits = cleared = 0.0
    character = tables.characters[name].character
    for k, state in enumerate(character.state_ids):
        after = read_case(tables, Case(answers=(*answers, Report(name, frozenset({state})))))
        chance = chance_of(tables, before.standing, name, k)
        bits += chance * (entropy(sides(before.standing)) - entropy(sides(after.standing)))
        cleared += chance * (open_before - openness(view, after.standing, after.events))
    bits, cleared = character.tell * max(0.0, bits), character.tell * max(0.0, cleared)
    score = (bits + tables.weights.danger_bits * cleared) / (tables.weights.asking + character.seconds)
    return bits, cleared, score
