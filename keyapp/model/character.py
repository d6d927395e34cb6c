"""Characters: what an observer can look at, and how far their word can be trusted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from keyapp.model.place import NOWHERE, Place
from keyapp.model.source import Basis
from keyapp.model.text import Text

__all__ = ["AppliesTo", "Character", "Means", "Number", "State", "View"]


class View(StrEnum):
    """The side of the animal (or the thing) that must be seen."""

    ANY = "any"
    TOP = "top"
    SIDE = "side"
    UNDERSIDE = "underside"
    FACE = "face"
    WEB = "web"


class Means(StrEnum):
    """What an observer needs for it."""

    BARE_EYE = "bare eye"
    HAND_LENS = "hand lens"
    PHOTO = "photo"


@dataclass(frozen=True, slots=True)
class AppliesTo:
    """To which results a character applies; an empty tuple means no limit.

    Attributes:
        forms: forms of result (`animal`, `web`, `egg-sac`, `shed-skin`, `burrow`, `nest`).
        groups: names of a class, order, family or danger group, any of which will do.
        not_groups: names for which it does not apply, checked after `groups`.
    """

    forms: tuple[str, ...] = ()
    groups: tuple[str, ...] = ()
    not_groups: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class State:
    """One state of a character.

    Attributes:
        label: short plain words, shown on cards and in lists.
        means: one or two sentences that say what to look for.
        figure: id of its figure.
        phrases: words callers use for it, lower case.
        absence: it says that something is not there: only to be reported when the view was
            seen, and it never rules anything out.
        right: chance that a report is right where this is the true state; None: that of the character.
        mistaken_for: chance, given that the report is wrong, of each other state being reported;
            states not named share what is left evenly.
    """

    id: str
    label: Text
    means: Text
    figure: str
    phrases: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    absence: bool = False
    right: float | None = None
    mistaken_for: Mapping[str, float] = field(default_factory=dict)
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Number:
    """Settings of a numeric character: values in mm within `least` and `most`.

    `spread` is the standard deviation of the natural log of what a lay observer reports;
    `confused_with` names the numeric character it is confused with, at chance `confused`.
    """

    unit: str
    least: float
    most: float
    spread: float
    confused_with: str = ""
    confused: float = 0.0


@dataclass(frozen=True, slots=True)
class Character:
    """Something to look at.

    Attributes:
        question: in plain words, grade 8 or below.
        ask_caller: shorter wording to say over the telephone.
        look: how to look without touching.
        means, view: what it takes, and the side to be seen.
        applies_to: to which results it applies.
        tell: chance that a lay observer can tell at all (0-1).
        right: chance that what they report is right (0-1).
        group: id of its independence group.
        never_clears: why it may never rule a danger out; empty where it may.
        seconds: effort of the observer in seconds.
        basis: what the error figures and statements rest on.
        states: its states in order (empty for a numeric character).
        number: settings of a numeric character, else None.
    """

    id: str
    question: Text
    ask_caller: Text
    look: Text
    means: Means
    view: View
    applies_to: AppliesTo
    tell: float
    right: float
    group: str
    never_clears: Text
    seconds: float
    basis: Basis
    states: tuple[State, ...] = ()
    number: Number | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def state_ids(self) -> tuple[str, ...]:
        """Ids of the states, in order."""
        return tuple(state.id for state in self.states)

    def state(self, state_id: str) -> State:
        """Return the state with this id; raises KeyError if there is none."""
        for state in self.states:
            if state.id == state_id:
                return state
        raise KeyError(state_id)
