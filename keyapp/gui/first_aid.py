"""What the emergency card says, from the key or, where there is none, from a few lines built in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication

from keyapp.gui.session import Session

if TYPE_CHECKING:
    from keyapp.model import Caution

__all__ = ["EMERGENCY", "POISON_HELP", "FirstAid", "first_aid"]

EMERGENCY = "911"
"""Emergency number of the United States and Canada."""

POISON_HELP = "1-800-222-1222"
"""Poison Help line (Health Resources and Services Administration, https://poisonhelp.hrsa.gov)."""


@dataclass(frozen=True, slots=True)
class FirstAid:
    """The card's content.

    `kinds` can be chosen; `elsewhere` is set where the place is not known; `sources` are lines for
    the fold.
    """

    emergency: str
    poison: str
    elsewhere: str
    signs: tuple[str, ...]
    kind: str
    kinds: tuple[str, ...]
    steps: tuple[str, ...]
    never: tuple[str, ...]
    sources: tuple[str, ...]


def first_aid(session: Session) -> FirstAid:
    """The card for the kind of animal chosen, with the numbers of the place that is set."""
    if not session.is_open:
        return _built_in()
    from keyapp.model import ContactKind

    words, language = session.words, session.language
    emergency = session.keyset.emergency
    kind = session.first_aid if session.first_aid in emergency.first_aid else "unknown"
    steps = emergency.first_aid.get(kind, ())
    numbers = {c.kind: c.telephone for c in reversed(words.contacts(session.case.settings)) if c.telephone}
    plain = _built_in()

    def say(some: Sequence[Caution]) -> tuple[str, ...]:
        return tuple(one.says.say(language) for one in some)

    every = dict.fromkeys((*emergency.signs, *steps, *emergency.never))
    return FirstAid(
        emergency=numbers.get(ContactKind.EMERGENCY, EMERGENCY),
        poison=numbers.get(ContactKind.POISON, POISON_HELP),
        elsewhere="" if session.case.settings.region else words.fixed("refer.elsewhere"),
        signs=say(emergency.signs) or plain.signs,
        kind=kind,
        kinds=tuple(emergency.first_aid),
        steps=say(steps) or plain.steps,
        never=say(emergency.never) or plain.never,
        sources=tuple(
            f"{one.says.say(language)} ({words.basis(one.basis)}; {one.checked.isoformat()})" for one in every
        ),
    )


def _built_in() -> FirstAid:
    return FirstAid(
        emergency=EMERGENCY,
        poison=POISON_HELP,
        elsewhere=_tr("Outside the United States, call your local emergency number."),
        signs=(
            _tr("Trouble breathing, or swelling of the face, tongue or throat"),
            _tr("Collapse, a seizure, or someone who cannot be woken"),
        ),
        kind="unknown",
        kinds=("unknown",),
        steps=(
            _tr("Get away from the animal. Do not try to catch it."),
            _tr("Call Poison Help or a clinician, also when nothing shows yet."),
            _tr("Do what they tell you."),
        ),
        never=(_tr("Do not cut, suck or bind the place."),),
        sources=(_tr("Poison Help line: Health Resources and Services Administration, https://poisonhelp.hrsa.gov"),),
    )


def _tr(text: str) -> str:
    return QCoreApplication.translate("FirstAid", text)
