"""Enquiries put aside, in sentences."""

from __future__ import annotations

from collections.abc import Sequence

from keyapp.wording.words import Words

__all__ = ["age_line", "answers_line", "open_line"]

_MINUTE, _HOUR, _DAY = 60, 3600, 86400


def age_line(words: Words, seconds: float) -> str:
    """How long ago, in the largest whole unit; a clock that was set back counts as just now."""
    for least, unit, name in ((_DAY, _DAY, "days"), (_HOUR, _HOUR, "hours"), (_MINUTE, _MINUTE, "minutes")):
        if seconds >= least:
            return words.fixed(f"park.age-{name}", count=str(int(seconds // unit)))
    return words.fixed("park.age-now")


def answers_line(words: Words, count: int) -> str:
    """How many answers it holds."""
    entry = {0: "park.answers-none", 1: "park.answers-one"}.get(count, "park.answers")
    return words.fixed(entry, count=str(count))


def open_line(words: Words, dangers: Sequence[str], is_clear: bool) -> str:
    """What was not ruled out when it was put aside."""
    if dangers:
        return words.fixed("park.open", names=words.listing([words.danger(group) for group in dangers]))
    return words.fixed("park.clear" if is_clear else "park.unknown")
