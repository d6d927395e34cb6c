"""The standing: how the results compare after the answers so far."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from keyapp.engine.ledger import Event
from keyapp.engine.tables import Floats, GroupId, Tables

__all__ = ["Standing", "block_logs", "block_rank", "blocks", "standing"]


@dataclass(frozen=True, slots=True)
class Standing:
    """Probabilities after the answers so far.

    Attributes:
        posterior: H, probability of each hypothesis; sums to 1.
        fit: H, log likelihood of all the answers, averaged over observers.
        joint: O x H, probability of each level of observer with each hypothesis; sums to 1.
        observers: O, probability of each level of observer; sums to 1.
        groups: groups with their summed probability, likeliest first, ties by name.
    """

    posterior: Floats
    fit: Floats
    joint: Floats
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
    for block in blocks(found):
        logs += block_logs(block)
    return from_logs(tables, log_prior, logs)


def from_logs(tables: Tables, log_prior: Floats, logs: Floats) -> Standing:
    """The standing from the summed log likelihoods (O x H) of all blocks."""
    shares = np.log([o.share for o in tables.weights.observers])
    fit = _logsumexp(logs + shares[:, None], axis=0)
    joint = logs + shares[:, None] + log_prior[None, :]
    joint = np.exp(joint - joint.max())
    joint /= joint.sum()
    posterior = joint.sum(axis=0)
    ordered = sorted(zip(tables.groups, tables.group_sums(posterior).tolist(), strict=True), key=_likeliest)
    return Standing(posterior, fit, joint, joint.sum(axis=1), tuple(ordered))


def _likeliest(item: tuple[GroupId, float]) -> tuple[float, str, str]:
    return (-item[1], item[0].level, item[0].name)


def blocks(found: Sequence[Event]) -> list[list[Event]]:
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


def block_logs(block: Sequence[Event]) -> Floats:
    """O x H: what a block says of each hypothesis, by level of observer."""
    if len(block) == 1:
        return block[0].logs
    tops = [event.logs.max(axis=1, keepdims=True) for event in block]
    against = np.min([event.logs - top for event, top in zip(block, tops, strict=True)], axis=0)
    # The level of observer is judged by the answer that says most, so that repeats add nothing.
    ranks = [block_rank(event) for event in block]
    return np.asarray(against + tops[ranks.index(max(ranks))])


def block_rank(event: Event) -> tuple[float, str]:
    """How much an answer says, to find the one of a block that says most; ties go by name."""
    return round(float(np.ptp(event.logs, axis=1).max()), 12), repr(event.characters)


def _logsumexp(values: Floats, axis: int) -> Floats:
    top = values.max(axis=axis, keepdims=True)
    return np.asarray(np.squeeze(top, axis) + np.log(np.exp(values - top).sum(axis=axis)))
