"""The standing: how the results compare after the answers so far."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from keyapp.engine.ledger import Event
from keyapp.engine.tables import Floats, GroupId, Tables

__all__ = ["Standing", "standing"]


@dataclass(frozen=True, slots=True)
class Standing:
    """Probabilities after the answers so far.

    Attributes:
        posterior: H, probability of each hypothesis; sums to 1.
        fit: H, log likelihood of all the answers, averaged over observers.
        observers: O, probability of each level of observer; sums to 1.
        groups: groups with their summed probability, likeliest first, ties by name.
    """

    posterior: Floats
    fit: Floats
    observers: Floats
    groups: tuple[tuple[GroupId, float], ...]

    def of(self, group: GroupId) -> float:
        """Summed probability of a group; 0 for a group that is not there."""
        return dict(self.groups).get(group, 0.0)


def standing(tables: Tables, log_prior: Floats, found: Sequence[Event]) -> Standing:
    """Bayes' rule over hypotheses and observer levels, in log space.

    Events that share an independence group form a block. In a block the evidence against each
    hypothesis counts as much as the strongest single answer, not the sum: for hypothesis h,
    min over the events e of log P(e|h) - max over h' of log P(e|h'). So a repeated answer adds
    nothing, and a block of one event is exact.
    """
    observers = tables.weights.observers
    logs = np.zeros((len(observers), len(tables.rows)))
    for block in _blocks(found):
        logs += _block_logs(block)
    shares = np.log([o.share for o in observers])
    fit = _logsumexp(logs + shares[:, None], axis=0)
    joint = logs + shares[:, None] + log_prior[None, :]
    joint -= joint.max()
    weights = np.exp(joint)
    total = weights.sum()
    posterior = weights.sum(axis=0) / total
    sums: dict[GroupId, float] = {}
    for row, value in zip(tables.rows, posterior, strict=True):
        sums[row.group] = sums.get(row.group, 0.0) + float(value)
    ordered = tuple(sorted(sums.items(), key=lambda item: (-item[1], item[0])))
    return Standing(posterior, fit, weights.sum(axis=1) / total, ordered)


def _blocks(found: Sequence[Event]) -> list[list[Event]]:
    """Events joined where they share an independence group, directly or through others."""
    blocks: list[tuple[set[str], list[Event]]] = []
    for event in found:
        groups, members = set(event.groups), [event]
        rest = []
        for other_groups, other_members in blocks:
            if other_groups & groups:
                groups |= other_groups
                members = other_members + members
            else:
                rest.append((other_groups, other_members))
        blocks = [*rest, (groups, members)]
    return [members for _, members in blocks]


def _block_logs(block: list[Event]) -> Floats:
    if len(block) == 1:
        return block[0].logs
    tops = [event.logs.max(axis=1, keepdims=True) for event in block]
    against = np.min([event.logs - top for event, top in zip(block, tops, strict=True)], axis=0)
    # The level of observer is judged by the answer that says most, so that repeats add nothing.
    spreads = [float(np.ptp(event.logs, axis=1).max()) for event in block]
    best = max(range(len(block)), key=lambda i: (round(spreads[i], 12), repr(block[i].characters), i * 0))
    return np.asarray(against + tops[best])


def _logsumexp(values: Floats, axis: int) -> Floats:
    top = values.max(axis=axis, keepdims=True)
    return np.asarray(np.squeeze(top, axis) + np.log(np.exp(values - top).sum(axis=axis)))
