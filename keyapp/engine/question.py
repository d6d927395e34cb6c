"""The question that would help most: information for the observer's effort, and fewer dangers to name."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from keyapp.engine.expect import Expectation, bits_apart
from keyapp.engine.ledger import Event
from keyapp.engine.safety import NotRuledOut
from keyapp.engine.standing import Standing
from keyapp.engine.sums import sums_of
from keyapp.engine.tables import Floats, Tables
from keyapp.model import Evidence

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
    bits = bits_apart(tables, stand, evidence)
    trial = Expectation(tables, found, stand, evidence, clearing=bool(named))
    # What is not in the key is left aside: everything may apply to it, so it would bring up questions
    # about legs before an egg sac.
    inside = max(float(stand.posterior[:-1].sum()), 1e-300)
    candidates = []
    for (name, table), beside in zip(tables.characters.items(), sums_of(tables, stand).beside.tolist(), strict=True):
        # Nobody can tell of a part that what they have before them does not have.
        if name in said or 1.0 - beside / inside < MOSTLY_APPLIES:
            continue
        gain = trial.bits(name) if table.character.group in touched else bits[name]
        candidates.append((gain * table.character.tell / _seconds(tables, name), gain, name))
    candidates.sort(key=lambda item: (-item[0], item[2]))
    questions = []
    for place, (_, gain, name) in enumerate(candidates):
        character = tables.characters[name].character
        cleared = 0.0
        if named and (place < LOOKED_AT or name in settling):
            cleared = trial.cleared(name)
        worth = character.tell * (gain + tables.weights.danger_bits * cleared)
        questions.append(
            Question(name, character.tell * gain, character.tell * cleared, worth / _seconds(tables, name))
        )
    questions.sort(key=lambda q: (-q.score, q.character))
    return tuple(q for q in questions if q.score > 1e-9)


def _seconds(tables: Tables, name: str) -> float:
    """What a question costs the observer: having it put to them, and looking."""
    return tables.weights.asking + tables.characters[name].character.seconds
