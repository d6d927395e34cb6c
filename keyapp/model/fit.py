"""Whether a case fits a key: every id known, every word and number one that can be."""

from __future__ import annotations

import math
from collections.abc import Iterable
from enum import StrEnum
from typing import TypeVar

from keyapp.errors import UserError
from keyapp.model.case import (
    Answer,
    Case,
    Choice,
    Evidence,
    FinalCheck,
    LeadAnswer,
    Measurement,
    Report,
    Settings,
    Sureness,
)
from keyapp.model.keyset import KeySet
from keyapp.model.names import nearest

__all__ = [
    "check_answer",
    "check_case",
    "check_final",
    "check_plain_setting",
    "check_setting",
    "check_shape",
    "word_of",
]

Word = TypeVar("Word", bound=StrEnum)

THING = "thing"
MOST_SPREAD = 2.0
"""Greatest standard deviation of the log of a measured size; that is a factor of seven either way."""


def word_of(kind: type[Word], name: str, value: object) -> Word:
    """`value` as a member of `kind`; raises UserError where it is none of its words."""
    if isinstance(value, str):
        try:
            return kind(value)
        except ValueError:
            pass
    raise _no_word(kind, name, value)


def check_case(keyset: KeySet, case: Case) -> None:
    """Raise UserError where the key cannot take the case: the first thing that is wrong, where, and the fix.

    Each couplet and each character may be answered once. A spot, region or thing is not looked up in a key
    that has none at all.
    """
    for name in Settings.__dataclass_fields__:
        value = getattr(case.settings, name)
        choices = _choices(keyset, name)
        if choices != ():
            check_setting(keyset, name, value)
    _is_member(Evidence, "evidence", case.settings.evidence)
    said = set()
    for answer in case.answers:
        check_answer(keyset, answer)
        about = ("couplet", answer.couplet) if isinstance(answer, LeadAnswer) else ("character", answer.character)
        if about in said:
            raise UserError(f"“{about[1]}” is answered twice.", where=about[1], fix="Keep one of the two answers.")
        said.add(about)
    for couplet in case.reopened:
        _known("couplet", couplet, keyset.couplets)
    if case.check is not None:
        check_final(keyset, case.check)


def check_final(keyset: KeySet, check: FinalCheck) -> None:
    """Raise UserError where the key cannot take this final check."""
    _known("result", check.taxon, keyset.taxa)
    if check.part:
        _known("character", check.part, keyset.characters)
    if not isinstance(check.fits, bool):
        raise UserError("A final check fits or does not.", where="check", fix="Give true or false.")


def check_setting(keyset: KeySet, name: str, value: object) -> None:
    """Raise UserError where the key cannot take this value of a setting; None is “not known”."""
    if name not in Settings.__dataclass_fields__:
        known = Settings.__dataclass_fields__
        raise UserError(f"There is no setting “{_short(name)}”.", fix=f"Use {nearest(_short(name), known)}.")
    choices = _choices(keyset, name)
    if value is not None and choices is not None and not (isinstance(value, str) and value in choices):
        fix = f"Use {nearest(_short(value), choices)}."
        raise UserError(f"“{_short(value)}” is not a possible {name} in this key.", where=name, fix=fix)
    check_plain_setting(name, value)


def check_plain_setting(name: str, value: object) -> None:
    """Raise UserError where no key can take this value of a setting; None is “not known”."""
    if value is None and name not in ("told", "evidence"):
        return
    if name == "evidence" and not isinstance(value, Evidence):
        word_of(Evidence, name, value)
    if name == "month" and not (_is_whole(value) and 1 <= value <= 12):  # type: ignore[operator]
        raise UserError(f"“{_short(value)}” is not a month.", where=name, fix="Give a whole number from 1 to 12.")
    if name == "hurt" and not isinstance(value, bool):
        fix = "Give true or false."
        raise UserError(f"“{_short(value)}” is not an answer to “is anyone hurt”.", where=name, fix=fix)
    if name not in ("evidence", "month", "hurt") and not isinstance(value, str):
        raise UserError(f"“{name}” must be text.", where=name, fix="Put it in quotation marks.")
    if isinstance(value, str) and not _can_be_written(value):
        raise UserError("It holds half a character, which cannot be written.", where=name, fix="Write it anew.")


def check_answer(keyset: KeySet, answer: Answer) -> None:
    """Raise UserError where the key cannot take this answer."""
    if isinstance(answer, LeadAnswer):
        _known("couplet", answer.couplet, keyset.couplets)
    elif isinstance(answer, Report):
        _known("character", answer.character, keyset.characters)
        found = keyset.characters[answer.character]
        if found.number is not None:
            raise UserError(f"“{found.id}” is a size.", where=found.id, fix="Give it in mm (measure).")
        _check_states(found.id, answer.states, found.state_ids)
    elif isinstance(answer, Measurement):
        numeric = {c.id: c.number for c in keyset.characters.values() if c.number is not None}
        number = numeric.get(answer.character) if isinstance(answer.character, str) else None
        if number is None:
            name = _short(answer.character)
            raise UserError(f"“{name}” is not a size.", where="character", fix=f"Use {nearest(name, numeric)}.")
        limits = f"Give {number.least:g} to {number.most:g} mm."
        if not _is_number(answer.mm) or not number.least <= answer.mm <= number.most:
            raise UserError(f"{_short(answer.mm)} mm is out of range.", where=answer.character, fix=limits)
    check_shape(answer)


def check_shape(answer: Answer) -> None:
    """Raise UserError where no key can take an answer: a word that is none, a size that is none."""
    if not isinstance(answer, LeadAnswer | Report | Measurement):
        raise UserError("This is not an answer.", where=type(answer).__name__, fix="Answer a couplet or a character.")
    where = answer.couplet if isinstance(answer, LeadAnswer) else answer.character
    if not isinstance(where, str) or not _can_be_written(where):
        raise UserError("An id is text.", where=_short(where), fix="Give the id of a couplet or a character.")
    _is_member(Sureness, "sureness", answer.sureness)
    _is_member(Evidence, "evidence", answer.evidence)
    if isinstance(answer, LeadAnswer):
        _is_member(Choice, "choice", answer.choice)
    flags = [("both", answer.both)] if isinstance(answer, Report) else []
    if not isinstance(answer, Measurement):
        flags.append(("view_seen", answer.view_seen))
    for name, flag in flags:
        if not isinstance(flag, bool):
            raise UserError(f"“{_short(flag)}” is neither true nor false.", where=name, fix="Give true or false.")
    if isinstance(answer, Report):
        states = answer.states
        if not isinstance(states, frozenset) or not states or not all(isinstance(s, str) for s in states):
            raise UserError("A report names states.", where=where, fix="Give the ids of one state or several.")
    if isinstance(answer, Measurement):
        if not _is_number(answer.mm) or not 0 < answer.mm < math.inf:
            raise UserError(f"{_short(answer.mm)} mm is out of range.", where=where, fix="Give more than 0 mm.")
        if answer.spread is not None and (not _is_number(answer.spread) or not 0 < answer.spread <= MOST_SPREAD):
            fix = f"Give more than 0, up to {MOST_SPREAD:g}."
            raise UserError(f"A spread of {_short(answer.spread)} is out of range.", where=where, fix=fix)


def _check_states(character: str, states: object, known: tuple[str, ...]) -> None:
    if isinstance(states, str) or not isinstance(states, Iterable):
        raise UserError(f"“{_short(states)}” is not a set of states.", where=character, fix="Give a set of state ids.")
    given = list(states)
    wrong = sorted(_short(state) for state in given if not isinstance(state, str) or state not in known)
    if wrong:
        fix = f"Use {nearest(wrong[0], known)}."
        raise UserError(f"“{character}” has no state “{wrong[0]}”.", where=character, fix=fix)
    if not given:
        raise UserError(f"No state of “{character}” is given.", where=character, fix=f"Use {', '.join(known)}.")


def _choices(keyset: KeySet, name: str) -> tuple[str, ...] | None:
    """The words a setting can have in this key; None where it is not one of several words."""
    match name:
        case "spot":
            return tuple(keyset.spots)
        case "region":
            return (*keyset.regions, *(state for region in keyset.regions.values() for state in region.states))
        case "thing":
            return keyset.characters[THING].state_ids if THING in keyset.characters else ()
        case "asker":
            return ("caller", "gardener", "class", "staff")
        case "evidence":
            return tuple(str(one) for one in Evidence)
    return None


def _known(what: str, name: object, names: Iterable[str]) -> None:
    if not isinstance(name, str) or name not in names:
        fix = f"Use {nearest(_short(name), names)}."
        raise UserError(f"There is no {what} “{_short(name)}”.", where=what, fix=fix)


def _is_member(kind: type[StrEnum], name: str, value: object) -> None:
    """A plain text that reads the same will not do: the engine tells the members apart by identity."""
    if not isinstance(value, kind):
        raise _no_word(kind, name, value)


def _no_word(kind: type[StrEnum], name: str, value: object) -> UserError:
    fix = f"Use {nearest(_short(value), [str(one) for one in kind])}."
    return UserError(f"“{_short(value)}” is not a possible {name}.", where=name, fix=fix)


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _is_whole(value: object) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def _can_be_written(text: str) -> bool:
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True


def _short(value: object) -> str:
    """A value as it may be shown in a message: one short line that can be written anywhere."""
    try:
        text = str(value)
    except ValueError:  # Python refuses to write out whole numbers of thousands of digits
        text = "a very long number"
    return text[:40].encode("utf-8", "replace").decode()
