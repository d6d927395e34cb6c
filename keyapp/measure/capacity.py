"""Capacity: the most that one answer can tell, by how answers get misread."""

from __future__ import annotations

import numpy as np

from keyapp.engine.tables import CharacterTable, Floats

__all__ = ["capacity", "character_capacity"]

ROUNDS = 20_000
CLOSE = 1e-9


def capacity(channel: Floats) -> float:
    """Capacity in bits of a channel; row s holds the chance of each report when s is true, and sums to 1.

    Blahut and Arimoto's iteration (1972, from memory). It stops when the upper and the lower bound that it
    keeps are within 1e-9 bits, or after 20,000 rounds; the lower one is returned.
    """
    reads = np.asarray(channel, dtype=float)
    inputs = np.full(len(reads), 1.0 / len(reads))
    low = 0.0
    for _ in range(ROUNDS):
        told = inputs @ reads
        with np.errstate(divide="ignore", invalid="ignore"):
            logs = np.where(reads > 0, np.log2(reads / told), 0.0)
        worth = (reads * logs).sum(axis=1)
        low, high = float(inputs @ worth), float(worth.max())
        if high - low < CLOSE:
            break
        inputs = inputs * np.exp2(worth - high)
        inputs /= inputs.sum()
    return max(0.0, low)


def character_capacity(table: CharacterTable, error: float | None = None) -> float:
    """Most bits that one report of a character can carry at chance `error` of being wrong.

    Without `error`, its own rates by true state are taken. A wrong report falls on the states named in
    `mistaken-for`, else on all the others evenly.
    """
    wrong = 1.0 - table.right if error is None else np.full(len(table.misread), error)
    return capacity(np.diag(1.0 - wrong) + wrong[:, None] * table.misread)
