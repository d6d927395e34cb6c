"""Is it a ...? The evidence for and against a feared animal, in sentences."""

from __future__ import annotations

from dataclasses import dataclass

from keyapp.engine import Fear, Feared, NotClearing, Question, Strength, Weighed
from keyapp.model import Answer, Form
from keyapp.wording.words import Words

__all__ = ["EvidenceLine", "FearText", "fear_text", "feared_name"]

FOR = (Strength.STRONGLY_FOR, Strength.SOMEWHAT_FOR)
AGAINST = (Strength.STRONGLY_AGAINST, Strength.SOMEWHAT_AGAINST)


@dataclass(frozen=True, slots=True)
class EvidenceLine:
    """What some answers say of the animal: the answers, how they speak, and whether they may rule it out."""

    answers: tuple[Answer, ...]
    said: str
    speaks: str
    clears: str


@dataclass(frozen=True, slots=True)
class FearText:
    """A feared animal in words, to be shown whole.

    Attributes:
        name, ask: what it is called, and the question about it.
        status: whether it is ruled out, and what to do; never that it is not this animal.
        together: all answers taken together; empty where it is ruled out.
        for_it, against_it, little: the answers, those that say most first.
        missing: what is still missing to rule it out; nothing where it is ruled out.
        best, best_look, best_why: the one thing to look at next, how to look, and what it would say; empty
            where there is none.
        check_again: where it is ruled out, the line above the answers to check again, and those.
    """

    name: str
    ask: str
    status: str
    together: str
    for_it: tuple[EvidenceLine, ...]
    against_it: tuple[EvidenceLine, ...]
    little: tuple[EvidenceLine, ...]
    missing: tuple[str, ...]
    best: str
    best_look: str
    best_why: str
    check_again: str
    again: tuple[Answer, ...]


def feared_name(words: Words, animal: Feared) -> str:
    """Its plain name: of a danger group the plural; of a kind its title, without the stage."""
    if animal.danger:
        return words.danger(animal.id)
    title = words.taxon(animal.id)
    return title.split(",")[0] if words.keyset.taxa[animal.id].form is Form.ANIMAL else title


def fear_text(words: Words, fear: Fear) -> FearText:
    """A feared animal in words: no numbers, and nothing that reassures."""
    name = feared_name(words, fear.feared)
    within = words.within(name)
    lines = [(one.strength, _line(words, one)) for one in sorted(fear.evidence, key=lambda one: -abs(one.log_ratio))]
    looks = fear.second_look[:1]
    together = ""
    if fear.is_open:
        together = words.fixed(f"fear.all.{fear.strength}" if fear.answered else "fear.nothing-yet")
    question = words.keyset.characters[fear.best.character] if fear.best else None
    return FearText(
        name=name,
        ask=words.fixed("fear.ask-danger" if fear.feared.danger else "fear.ask-kind", name=within),
        status=words.fixed("fear.open" if fear.is_open else "fear.ruled-out", name=within),
        together=together,
        for_it=tuple(line for strength, line in lines if strength in FOR),
        against_it=tuple(line for strength, line in lines if strength in AGAINST),
        little=tuple(line for strength, line in lines if strength is Strength.LITTLE),
        missing=_missing(words, fear),
        best=words.fixed("fear.best", question=question.question.say(words.language)) if question else "",
        best_look=question.look.say(words.language) if question else "",
        best_why=_best_why(words, fear, fear.best),
        check_again=words.fixed("second-look", name=within) if looks else "",
        again=looks[0].answers if looks else (),
    )


def _line(words: Words, one: Weighed) -> EvidenceLine:
    said = " · ".join(words.answer(answer) for answer in one.answers)
    speaks = words.fixed(f"fear.says.{one.strength}")
    clears = ""
    if one.not_clearing is NotClearing.NEVER and one.strength not in FOR:
        reasons = [words.keyset.characters[name].never_clears for name in one.characters]
        why = " ".join(reason.say(words.language) for reason in reasons if reason)
        clears = f"{words.fixed('fear.cannot.never')} {why}".strip()
    elif one.strength in AGAINST:
        clears = words.fixed("fear.counts" if one.not_clearing is None else f"fear.cannot.{one.not_clearing}")
    return EvidenceLine(one.answers, said, speaks, clears)


def _missing(words: Words, fear: Fear) -> tuple[str, ...]:
    if not fear.is_open:
        return ()
    entry = {0: "odds", 1: "1", 2: "2"}.get(fear.missing, "many")
    lines = [words.fixed(f"fear.missing.{entry}")]
    if fear.settles is None:
        lines.append(words.fixed("fear.missing.none-left"))
    return tuple(lines)


def _best_why(words: Words, fear: Fear, best: Question | None) -> str:
    if best is None:
        return ""
    character = words.keyset.characters[best.character]
    parts = [
        words.fixed(f"fear.best-{side}", state=character.state(state).label.say(words.language))
        for side, state in (("for", fear.points), ("against", fear.clears))
        if state
    ]
    return " ".join(parts)
