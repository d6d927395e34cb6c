"""Confirmed calls as an office writes them down: one JSON list."""

from __future__ import annotations

from typing import Any

from keyapp.errors import UserError
from keyapp.learn.counts import Confirmed
from keyapp.learn.plain import strict_json

__all__ = ["read_calls"]

FIELDS = ("chance", "region", "reports", "taxon", "true")


def read_calls(text: str, where: str = "") -> tuple[Confirmed, ...]:
    """Confirmed calls from JSON: a list of {taxon, reports, true, region, chance}, the last three optional.

    Raises UserError, naming the call, for anything else. Whether the key has the ids is for `counted` to say.
    """
    items = strict_json(text, where)
    if not isinstance(items, list):
        raise UserError("There is no list of calls.", where=where, fix="Put the calls in square brackets.")
    return tuple(
        _call(item, f"{where}: call {number}" if where else f"call {number}")
        for number, item in enumerate(items, start=1)
    )


def _call(item: Any, here: str) -> Confirmed:
    if not isinstance(item, dict) or not {"taxon", "reports"} <= set(item) <= set(FIELDS):
        raise UserError("A call needs taxon and reports.", where=here, fix=f"Use {', '.join(FIELDS)}.")
    tables = (item["reports"], item.get("true", {}))
    words = all(isinstance(t, dict) and all(isinstance(s, str) for s in t.values()) for t in tables)
    chance, region = item.get("chance", 1.0), item.get("region")
    is_number = isinstance(chance, int | float) and not isinstance(chance, bool)
    if not (words and is_number and isinstance(item["taxon"], str) and isinstance(region, str | None)):
        raise UserError("A field is of the wrong kind.", where=here, fix="Give texts, and a number for chance.")
    if not 0 < chance <= 1:
        raise UserError("This chance is out of range.", where=f"{here}: chance", fix="Give more than 0, up to 1.")
    return Confirmed(item["taxon"], item["reports"], item.get("true", {}), region, float(chance))
