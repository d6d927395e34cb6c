"""Regions, places to find an animal, and whom to turn to."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from keyapp.model.place import NOWHERE, Place
from keyapp.model.source import Basis
from keyapp.model.text import Text

__all__ = ["Contact", "ContactKind", "FindSpot", "Region"]


class ContactKind(StrEnum):
    """Whom a contact is for."""

    EMERGENCY = "emergency"
    POISON = "poison"
    EXTENSION = "extension"
    HEALTH = "health"
    VET = "vet"
    PLANT_REGULATOR = "plant-regulator"


@dataclass(frozen=True, slots=True)
class Contact:
    """Someone to turn to. `telephone`, `web` and `hours` may be empty; `demo` marks invented ones."""

    kind: ContactKind
    name: Text
    telephone: str
    web: str
    hours: Text
    when: Text
    basis: Basis
    demo: bool = False
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Region:
    """A part of the country, or an office's own area inside one (`part_of`).

    `states` are two-letter postal codes; `month_shift` is how many months later (+) or earlier
    (-) seasons run than in the middle of the country.
    """

    id: str
    name: Text
    part_of: str
    states: tuple[str, ...]
    month_shift: int
    contacts: tuple[Contact, ...]
    demo: bool = False
    basis: Basis = ()
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class FindSpot:
    """A kind of place where an animal is found, offered in the settings."""

    id: str
    label: Text
    indoors: bool
    place: Place = field(default=NOWHERE, compare=False)
