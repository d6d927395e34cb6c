"""Channel capacity against closed forms."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from keyapp.engine import build_tables
from keyapp.measure.bounds import answer_bits, entropy
from keyapp.measure.capacity import capacity, character_capacity
from tests.builders import character, keyset, taxon


def symmetric(states, error):
    return (1 - error) * np.eye(states) + error * (1 - np.eye(states)) / (states - 1)


@pytest.mark.parametrize("states", range(2, 7))
@pytest.mark.parametrize("error", [0.0, 0.05, 0.2, 0.45])
def test_symmetric_channels(states, error):
    """log2 K less the entropy of a row."""
    channel = symmetric(states, error)
    assert capacity(channel) == pytest.approx(math.log2(states) - entropy(channel[0]), abs=1e-7)


def test_binary_symmetric_channel_is_the_worth_of_an_answer():
    assert capacity(symmetric(2, 0.1)) == pytest.approx(answer_bits(0.1), abs=1e-8)


def test_z_channel():
    """One input never misread, the other half the time: log2(5/4) bits."""
    assert capacity(np.array([[1.0, 0.0], [0.5, 0.5]])) == pytest.approx(math.log2(1.25), abs=1e-7)


def test_erasure_channel():
    assert capacity(np.array([[0.7, 0.0, 0.3], [0.0, 0.7, 0.3]])) == pytest.approx(0.7, abs=1e-7)


def test_a_channel_that_tells_nothing():
    assert capacity(np.array([[0.3, 0.7], [0.3, 0.7]])) == 0


def test_capacity_is_the_most_over_all_inputs():
    """Brute force over a grid of inputs, for an uneven channel of three states."""
    channel = np.random.default_rng(4).dirichlet(np.ones(3), size=3)
    best = 0.0
    for a in np.linspace(0, 1, 101):
        for b in np.linspace(0, 1 - a, 101):
            inputs = np.array([a, b, 1 - a - b])
            told = inputs @ channel
            best = max(best, entropy(told) - sum(p * entropy(row) for p, row in zip(inputs, channel, strict=True)))
    assert best <= capacity(channel) + 1e-9
    assert best == pytest.approx(capacity(channel), abs=1e-3)


def test_a_character_at_its_own_rate_or_another():
    tables = build_tables(
        keyset([character("c", "x y z", right=0.9)], [taxon("a", {"c": "x"}), taxon("b", {"c": "y"})])
    )
    assert character_capacity(tables.characters["c"]) == pytest.approx(capacity(symmetric(3, 0.1)))
    assert character_capacity(tables.characters["c"], 0.3) == pytest.approx(capacity(symmetric(3, 0.3)))


def test_a_state_with_a_rate_of_its_own():
    """y is read wrong half the time, x never: a channel whose capacity is known, log2(5/4)."""
    plain = character("c", "x y", right=1.0)
    mixed = replace(plain, states=(plain.states[0], replace(plain.states[1], right=0.5)))
    tables = build_tables(keyset([mixed], [taxon("a", {"c": "x"}), taxon("b", {"c": "y"})]))
    assert character_capacity(tables.characters["c"]) == pytest.approx(math.log2(1.25), abs=1e-7)
