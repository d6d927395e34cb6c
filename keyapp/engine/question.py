"""The question that would help most: information for the observer's effort, and fewer dangers to name."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from keyapp.engine.ledger import Event, report_event
from keyapp.engine.likelihood import told_chances
from keyapp.engine.safety import NotRuledOut, openness
from keyapp.engine.standing import Standing, standing
from keyapp.engine.tables import CharacterTable, Floats, Tables
from keyapp.model import Evidence, Report, Sureness

__all__ = ["Question", "next_questions"]

MOSTLY_APPLIES = 0.5
"""A character is asked only where it applies to so much of the standing, leaving aside what is not in the key."""

LOOKED_AT = 12
"""So many of the most informative characters are looked at for what they clear, and those that settle a danger best."""


@dataclass(frozen=True, slots=True)
class Question:
    """A character worth asking.

    Attributes:
        character: character id.
        bits: expected information about the group (family or danger group), in bits.
        cleared: expected fall of what is not ruled out, in danger groups (`openness`).
        score: (bits + danger_bits * cleared) for each second of the observer's effort: looking, and `asking`.
    """

    character: str
    bits: float
    cleared: float
    score: float


@dataclass(frozen=True, slots=True)
class _Stack:
    """All characters side by side: rows sorted by group, columns are the states of all characters.

    `told` holds, for each level of observer, the chance of every single report (H x all states).
    """

    names: tuple[str, ...]
    owner: NDArray[np.int64]
    order: NDArray[np.int64]
    starts: NDArray[np.int64]
    told: tuple[Floats, ...]


def next_questions(
    tables: Tables,
    log_prior: Floats,
    found: Sequence[Event],
    stand: Standing,
    named: Sequence[NotRuledOut],
    evidence: Evidence,
    passed_over: Collection[str] = (),
    settling: Collection[str] = (),
) -> tuple[Question, ...]:
    """Characters worth asking, best first; those in `passed_over` or reported already are not asked.

    A sure answer of kind `evidence` is expected. The expected information is
    sum over reports r of P(r) * [H(group) - H(group | r)], with the chance that the observer can
    tell at all as a factor; a character of an independence group that has been answered gives
    only what it adds to it. Asking the same again gives nothing, since the same person would
    make the same error.
    """
    said = {c for event in found for c in event.characters} | set(passed_over)
    touched = {g for event in found for g in event.groups}
    bits = _bits_apart(tables, stand, evidence)
    # What is not in the key is left aside: everything may apply to it, so it would bring up questions
    # about legs before an egg sac.
    inside = stand.posterior[:-1] / max(float(stand.posterior[:-1].sum()), 1e-300)
    candidates = []
    for name, table in tables.characters.items():
        # Nobody can tell of a part that what they have before them does not have.
        if name in said or float(inside @ table.applies[:-1]) < MOSTLY_APPLIES:
            continue
        gain = bits[name]
        if table.character.group in touched:
            gain, _ = _by_trial(tables, log_prior, found, stand, named, name, evidence)
        candidates.append((gain * table.character.tell / _seconds(tables, name), gain, name))
    candidates.sort(key=lambda item: (-item[0], item[2]))
    questions = []
    for place, (_, gain, name) in enumerate(candidates):
        character = tables.characters[name].character
        cleared = 0.0
        if named and (place < LOOKED_AT or name in settling):
            cleared = _by_trial(tables, log_prior, found, stand, named, name, evidence)[1]
        worth = character.tell * (gain + tables.weights.danger_bits * cleared)
        questions.append(Question(name, character.tell * gain, character.tell * cleared, worth / _seconds(tables, name)))
    questions.sort(key=lambda q: (-q.score, q.character))
    return tuple(q for q in questions if q.score > 1e-9)


def _seconds(tables: Tables, name: str) -> float:
    """What a question costs the observer: having it put to them, and looking."""
    return tables.weights.asking + tables.characters[name].character.seconds


def _stacked(tables: Tables, evidence: Evidence) -> _Stack:
    key = ("stack", evidence)
    if key in tables.memo:
        return tables.memo[key]  # type: ignore[return-value]
    order = np.argsort(tables.group_of, kind="stable")
    starts = np.searchsorted(tables.group_of[order], np.arange(len(tables.groups)))
    owner = [i for i, table in enumerate(tables.characters.values()) for _ in table.right]
    told = tuple(
        np.hstack([_told_of(tables, table, evidence, o.factor)[order] for table in tables.characters.values()])
        for o in tables.weights.observers
    )
    stack = _Stack(tuple(tables.characters), np.array(owner, dtype=np.int64), order, starts, told)
    tables.memo[key] = stack
    return stack


def _told_of(tables: Tables, table: CharacterTable, evidence: Evidence, factor: float) -> Floats:
    told = told_chances(table, Sureness.SURE, evidence, factor, tables.weights)
    return np.where(table.applies[:, None], told, tables.weights.inapplicable / len(table.right))


def _bits_apart(tables: Tables, stand: Standing, evidence: Evidence) -> dict[str, float]:
    """Expected bits about the group for every character, each taken as the first of its independence group."""
    stack = _stacked(tables, evidence)
    joint = stand.joint[:, stack.order]
    told = sum(weight[:, None] * chances for weight, chances in zip(joint, stack.told, strict=True))
    by_group = np.add.reduceat(np.asarray(told), stack.starts, axis=0)
    chance = by_group.sum(axis=0)
    with np.errstate(divide="ignore", invalid="ignore"):
        after = np.where(by_group > 0, by_group * np.log2(by_group / chance), 0.0).sum(axis=0)
    before = _entropy(np.add.reduceat(joint.sum(axis=0), stack.starts))
    gain = np.bincount(stack.owner, weights=chance * before + after, minlength=len(stack.names))
    return {name: max(0.0, float(value)) for name, value in zip(stack.names, gain, strict=True)}


def _by_trial(
    tables: Tables,
    log_prior: Floats,
    found: Sequence[Event],
    stand: Standing,
    named: Sequence[NotRuledOut],
    name: str,
    evidence: Evidence,
) -> tuple[float, float]:
    """Expected bits, and expected fall of what is not ruled out, by trying every report in turn."""
    table = tables.characters[name]
    before = _entropy(tables.group_sums(stand.posterior))
    open_before = openness(tables, stand, found) if named else 0.0
    bits = cleared = 0.0
    for state in table.character.state_ids:
        event = _told(tables, name, state, evidence)
        chance = float((np.exp(event.logs) * stand.joint).sum())
        then = standing(tables, log_prior, [*found, event])
        bits += chance * (before - _entropy(tables.group_sums(then.posterior)))
        if named:
            cleared += chance * (open_before - openness(tables, then, [*found, event]))
    return max(0.0, bits), max(0.0, cleared)


def _told(tables: Tables, name: str, state: str, evidence: Evidence) -> Event:
    """The event of a sure report of one state; made once."""
    key = ("told", name, state, evidence)
    if key not in tables.memo:
        tables.memo[key] = report_event(tables, Report(name, frozenset({state}), evidence=evidence))
    return tables.memo[key]  # type: ignore[return-value]


def _entropy(p: Floats) -> float:
    """Shannon entropy in bits."""
    held = p[p > 0]
    return float(-(held * np.log2(held)).sum())
