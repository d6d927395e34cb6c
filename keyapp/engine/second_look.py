"""The second look: the fewest misread answers that would bring a danger back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from keyapp.engine.ledger import Event
from keyapp.engine.safety import not_ruled_out
from keyapp.engine.standing import standing
from keyapp.engine.tables import Floats, Tables
from keyapp.model import Answer

__all__ = ["SecondLook", "second_looks"]


@dataclass(frozen=True, slots=True)
class SecondLook:
    """Answers to check again, since taking them back would name a danger again.

    Attributes:
        group: the danger group.
        answers: one or two answers, as given.
        cost: sum of -log[P(r|t) / max over r' of P(r'|t)] over them, least over its results.
    """

    group: str
    answers: tuple[Answer, ...]
    cost: float


def second_looks(tables: Tables, log_prior: Floats, found: Sequence[Event]) -> tuple[SecondLook, ...]:
    """For every danger that is ruled out, the cheapest one or two answers that keep it out.

    Exhaustive over single answers, then over pairs; cheapest first.
    """
    stand = standing(tables, log_prior, found)
    named = {one.group for one in not_ruled_out(tables, stand, found)}
    groups: dict[str, list[int]] = {}
    for row in tables.gated:
        groups.setdefault(tables.rows[row].danger, []).append(row)
    looks = []
    for group, rows in groups.items():
        if group in named:
            continue
        look = _cheapest(tables, log_prior, found, group, rows)
        if look is not None:
            looks.append(look)
    return tuple(sorted(looks, key=lambda look: (look.cost, look.group)))


def _cheapest(
    tables: Tables, log_prior: Floats, found: Sequence[Event], group: str, rows: Sequence[int]
) -> SecondLook | None:
    for size in (1, 2):
        best: SecondLook | None = None
        for taken in combinations(found, size):
            cost = min(sum(_cost(event, row) for event in taken) for row in rows)
            if cost <= 0 or (best is not None and cost >= best.cost):
                continue
            left = [event for event in found if event not in taken]
            stand = standing(tables, log_prior, left)
            if any(one.group == group for one in not_ruled_out(tables, stand, left)):
                best = SecondLook(group, tuple(answer for event in taken for answer in event.answers), cost)
        if best is not None:
            return best
    return None


def _cost(event: Event, row: int) -> float:
    """How surprising the answer is to the result in `row`, against the least surprised result."""
    logs = event.logs[len(event.logs) // 2]
    return float(logs.max() - logs[row])
