"""A feared animal, the question that helps most and the stopping rule as plain JSON data, for scripts."""

from __future__ import annotations

from typing import Any

from keyapp.cli.reply import answer_data
from keyapp.engine import Fear, Feared, Question, Stop
from keyapp.wording import EvidenceLine, Words, fear_text, feared_name, helps_line, stop_line, why_line

__all__ = ["fear_data", "feared_data", "helps_data", "question_data", "stop_data"]


def feared_data(words: Words, animal: Feared) -> dict[str, Any]:
    """One animal that a name may mean."""
    return {"id": animal.id, "danger": animal.danger, "name": feared_name(words, animal)}


def fear_data(words: Words, fear: Fear) -> dict[str, Any]:
    """How the answers stand to a feared animal; `open` until the gate lets it be ruled out."""
    text = fear_text(words, fear)
    return {
        **feared_data(words, fear.feared),
        "ask": text.ask,
        "open": fear.is_open,
        "status": text.status,
        "together": text.together,
        "for": [_line_data(words, line) for line in text.for_it],
        "against": [_line_data(words, line) for line in text.against_it],
        "little": [_line_data(words, line) for line in text.little],
        "missing": list(text.missing),
        "best": question_data(words, fear.best) if fear.best else None,
        "best_says": [one for one in (text.best, text.best_why) if one],
        "check_again": [answer_data(words, answer) for answer in text.again],
    }


def question_data(words: Words, question: Question) -> dict[str, Any]:
    """A direct question with its states; `cant-see` answers it where it cannot be told."""
    character = words.keyset.characters[question.character]
    say = words.language
    return {
        "character": character.id,
        "asks": character.question.say(say),
        "look": character.look.say(say),
        "ask_caller": character.ask_caller.say(say),
        "states": [{"id": state.id, "says": state.label.say(say)} for state in character.states],
        "view": str(character.view),
        "bits": round(question.bits, 6),
        "cleared": round(question.cleared, 6),
        "score": round(question.score, 6),
    }


def stop_data(words: Words, stop: Stop) -> dict[str, Any]:
    """Whether to go on asking, why, and with what."""
    return {
        "reason": str(stop.reason),
        "because": str(stop.because),
        "dangers": list(stop.dangers),
        "says": stop_line(words, stop),
    }


def helps_data(words: Words, stop: Stop) -> dict[str, Any] | None:
    """The question that would help most, with its reason; None where nothing is left to ask."""
    if stop.question is None:
        return None
    return {
        **question_data(words, stop.question),
        "because": str(stop.because),
        "why": why_line(words, stop),
        "dangers": list(stop.dangers),
        "says": helps_line(words, stop),
    }


def _line_data(words: Words, line: EvidenceLine) -> dict[str, Any]:
    answers = [answer_data(words, answer) for answer in line.answers]
    return {"answers": answers, "speaks": line.speaks, "clears": line.clears}
