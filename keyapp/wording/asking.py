"""What would help most, and when to stop asking, in sentences."""

from __future__ import annotations

from collections.abc import Sequence

from keyapp.engine import Because, Stop, StopReason
from keyapp.wording.words import Words

__all__ = ["helps_line", "stop_line", "why_line"]


def stop_line(words: Words, stop: Stop) -> str:
    """Whether to go on asking, and why, as one line; dangers that stay named are said in it."""
    if stop.reason is StopReason.GO_ON:
        return words.fixed("stop.go-on", why=helps_line(words, stop))
    says = words.fixed(f"stop.{stop.because}", names=_names(words, stop.dangers))
    if stop.reason is StopReason.NOTHING_MORE and stop.dangers:
        return f"{says} {words.fixed('stop.still', names=_names(words, stop.dangers))}"
    return says


def helps_line(words: Words, stop: Stop) -> str:
    """The question that would help most, and its reason; empty where none is left."""
    if stop.question is None:
        return ""
    question = words.keyset.characters[stop.question.character].question.say(words.language)
    return f"{words.fixed('helps.question', question=question)} {why_line(words, stop)}"


def why_line(words: Words, stop: Stop) -> str:
    """What a question is asked for; empty where asking stops."""
    if stop.because not in (Because.FAMILY, Because.DANGER, Because.BOTH):
        return ""
    return words.fixed(f"helps.{stop.because}", names=_names(words, stop.dangers))


def _names(words: Words, dangers: Sequence[str]) -> str:
    return words.listing([words.danger(group) for group in dangers])
