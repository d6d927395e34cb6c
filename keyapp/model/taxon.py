"""Results: taxa, their stages and sexes, and the signs they leave."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from keyapp.model.place import NOWHERE, Place
from keyapp.model.source import Basis, Caution, Statement
from keyapp.model.text import Text

__all__ = ["Danger", "DangerGroup", "Form", "LookAlike", "Misname", "Size", "Taxon"]


class Danger(StrEnum):
    """Medical importance, worst first."""

    SIGNIFICANT = "significant"
    VECTOR = "vector"
    ALLERGIC_RISK = "allergic-risk"
    UNKNOWN = "unknown"
    MINOR = "minor"
    NONE = "none"

    @property
    def is_gated(self) -> bool:
        """Whether the safety line must name it until it is ruled out."""
        return self in (Danger.SIGNIFICANT, Danger.VECTOR)


class Form(StrEnum):
    """What a result is: an animal, or a sign of one."""

    ANIMAL = "animal"
    WEB = "web"
    EGG_SAC = "egg-sac"
    SHED_SKIN = "shed-skin"
    NEST = "nest"
    BURROW = "burrow"
    GALL = "gall"


@dataclass(frozen=True, slots=True)
class Size:
    """Adult range of a numeric character in mm."""

    least: float
    most: float


@dataclass(frozen=True, slots=True)
class Misname:
    """What people wrongly call it, and the correction."""

    said: str
    fact: Text
    basis: Basis
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class LookAlike:
    """Another result it is taken for, the character that separates them, and how."""

    taxon: str
    character: str
    difference: Text
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class DangerGroup:
    """A group of medically important results that is named as one on the safety line.

    Attributes:
        name: plain plural ("widow spiders").
        worst: the level of its worst member.
        icd10: ICD-10-CM codes (without the last characters) that a clinic report may carry.
    """

    id: str
    name: Text
    worst: Danger
    icd10: tuple[str, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Taxon:
    """One result.

    Attributes:
        name, rank: scientific name of the lowest group the result claims, and its rank.
        class_, order, family: scientific names; `family` is empty where the result is wider.
        title: plain name shown as heading.
        common_names, popular_names: names in use; the second are regional or loose.
        misnames: wrong names with the correction.
        form, stage: animal or sign; life stage or sex in plain words.
        kind: the kind of animal this describes a stage, sex or sign of; prior mass is given
            to the kind and split by `share`.
        made_by: for a sign, the kinds that make it; empty for an animal.
        shows: character -> state -> how often (0-1, summing to at most 1; what is missing is
            spread over the states not named). A character not mentioned is uninformative.
        sizes: numeric character -> adult range in mm.
        places: place id -> weight 0-1 of finding it there; places not named get the floor.
        months: months (1-12) in which it is seen, in the middle of its range; empty = all year.
        occurrence: region id, state code or `default` -> weight 0-1.
        danger, danger_group: medical importance; group id where it is gated.
        cautions, advice: what to beware of; what to do. Both sourced and dated.
        look_alikes, garden, diagnosis, season: as the result page shows them.
        outside: it stands for animals not in the key yet; never a confident name.
        figure: id of its figure.
        basis: what its description rests on; `basis_for` overrides it by character.
    """

    id: str
    name: str
    rank: str
    class_: str
    order: str
    family: str
    title: Text
    common_names: Mapping[str, tuple[str, ...]]
    popular_names: tuple[str, ...]
    misnames: tuple[Misname, ...]
    form: Form
    stage: Text
    kind: str
    share: float
    made_by: tuple[str, ...]
    shows: Mapping[str, Mapping[str, float]]
    sizes: Mapping[str, Size]
    places: Mapping[str, float]
    months: tuple[int, ...]
    occurrence: Mapping[str, float]
    danger: Danger
    danger_group: str
    cautions: tuple[Caution, ...]
    advice: tuple[Caution, ...]
    look_alikes: tuple[LookAlike, ...]
    garden: Statement | None
    diagnosis: Text
    season: Text
    outside: bool
    figure: str
    basis: Basis
    basis_for: Mapping[str, Basis] = field(default_factory=dict)
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def group_names(self) -> frozenset[str]:
        """Every group name that an `applies_to` may use for it."""
        return frozenset(n for n in (self.class_, self.order, self.family, self.danger_group) if n)
