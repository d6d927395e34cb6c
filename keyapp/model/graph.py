"""The dichotomous key as a decision graph.

The vocabulary of the whole project: a *key* is a set of *couplets*; a couplet holds two
contrasting *leads*; a lead asserts character states and leads to a couplet, a taxon or
another key.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from keyapp.model.place import NOWHERE, Place
from keyapp.model.text import Text

__all__ = ["Couplet", "Key", "Lead", "Redirect", "Target", "TargetKind"]


class TargetKind(StrEnum):
    """What a lead leads to."""

    COUPLET = "couplet"
    TAXON = "taxon"
    KEY = "key"


@dataclass(frozen=True, slots=True)
class Target:
    """Where a lead goes. Couplet ids are written `key-id/couplet-id` once loaded."""

    kind: TargetKind
    id: str


@dataclass(frozen=True, slots=True)
class Lead:
    """One of the two statements of a couplet.

    Attributes:
        says: the statement as read on screen and paper.
        ask_caller: wording for the telephone.
        figure: id of the picture on its card.
        holds: character -> states it asserts (one of them is true).
        to: where it goes.
    """

    says: Text
    ask_caller: Text
    figure: str
    holds: Mapping[str, frozenset[str]]
    to: Target
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Couplet:
    """A question with two contrasting leads. `id` is `key-id/couplet-id`."""

    id: str
    asks: Text
    leads: tuple[Lead, Lead]
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Redirect:
    """ "If you came here with X, go there", part of a scope note."""

    seen: Text
    to: Target
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Key:
    """One decision graph. `start` and the ids in `couplets` are full couplet ids."""

    id: str
    title: Text
    scope: Text
    redirects: tuple[Redirect, ...]
    start: str
    couplets: Mapping[str, Couplet]
    place: Place = field(default=NOWHERE, compare=False)
