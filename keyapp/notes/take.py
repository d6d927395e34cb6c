"""Takes confirmed finds of a note into an enquiry."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from typing import Any

from keyapp.errors import UserError
from keyapp.model import Evidence, Sureness
from keyapp.notes.item import Found, Kind
from keyapp.work import Enquiry

__all__ = ["take_finds"]

_BETWEEN_NAMES = "; "


def take_finds(
    enquiry: Enquiry,
    finds: Iterable[Found],
    *,
    seen: Collection[int] = (),
    measured: Mapping[int, str] | None = None,
    evidence: Evidence | str | None = None,
) -> None:
    """Take the finds that a person has confirmed, and nothing else, into the enquiry.

    Args:
        enquiry: where they go, one act each, so that each can be undone.
        finds: the confirmed ones. Of two about one character that agree in some states, those states count; of two
            that contradict each other, one or the other ("one of these", as “think so”).
        seen: ids of the finds whose `view` was confirmed to have been in sight; without it “not there” adds nothing.
        measured: for sizes of which it was not said what was measured: id of the find to the character.
        evidence: kind of evidence; that of the enquiry by default.

    Raises:
        UserError: a size is taken without saying what was measured, or the key cannot take a find; nothing is taken.
    """
    finds = sorted(finds, key=lambda find: find.id)
    reports = _reports([find for find in finds if find.kind is Kind.STATES], frozenset(seen))
    sizes = [(_character(find, measured or {}), find) for find in finds if find.kind is Kind.SIZE]
    settings = _settings(enquiry, finds)
    if settings:
        enquiry.set_up(**settings)
    for character, (states, sureness, view_seen) in reports.items():
        enquiry.report(character, sorted(states), sureness=sureness, evidence=evidence, view_seen=view_seen)
    for character, find in sizes:
        assert find.mm is not None
        enquiry.measure(character, find.mm, sureness=find.sureness, evidence=evidence)


def _reports(finds: Iterable[Found], seen: frozenset[int]) -> dict[str, tuple[frozenset[str], Sureness, bool]]:
    """One report for each character."""
    found: dict[str, tuple[frozenset[str], Sureness, bool]] = {}
    for find in finds:
        (character,) = find.characters
        states, view_seen = frozenset(find.states), find.view is None or find.id in seen
        sureness = find.sureness
        if character in found:
            old, old_sureness, old_seen = found[character]
            both = old & states
            states = both or old | states
            if not both or Sureness.THINK_SO in (old_sureness, sureness):
                sureness = Sureness.THINK_SO
            view_seen = view_seen and old_seen
        found[character] = (states, sureness, view_seen)
    return found


def _character(find: Found, measured: Mapping[int, str]) -> str:
    character = measured.get(find.id, find.characters[0] if len(find.characters) == 1 else "")
    if character not in find.characters:
        names = " or ".join(find.characters)
        raise UserError(f"It is not said what was measured: “{find.words}”.", where=names, fix=f"Ask: {names}?")
    return character


def _settings(enquiry: Enquiry, finds: Iterable[Found]) -> dict[str, Any]:
    """What the finds say of the setting; where several speak of one thing, the last that was confirmed counts."""
    settings: dict[str, Any] = {}
    told = [enquiry.case.settings.told] if enquiry.case.settings.told else []
    for find in finds:
        match find.kind:
            case Kind.THING:
                settings["thing"] = find.states[0]
            case Kind.SPOT:
                settings["spot"] = find.value
            case Kind.MONTH:
                settings["month"] = int(find.value)
            case Kind.REGION:
                settings["region"] = find.value
            case Kind.INJURY:
                settings["hurt"] = True
            case Kind.TOLD if find.value not in told:
                told.append(find.value)
                settings["told"] = _BETWEEN_NAMES.join(told)
    return settings
