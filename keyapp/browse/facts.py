"""What the descriptions say of one kind: where and when it is met, what it is taken for, its signs and its marks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from keyapp.browse.kinds import Kind, kind_of, kinds
from keyapp.engine import THING, Tables, met_there
from keyapp.model import Form, Settings, Taxon

__all__ = [
    "Often",
    "Telling",
    "chances",
    "how_often",
    "in_season",
    "look_alikes",
    "makers",
    "occurrence_known",
    "often_where",
    "signs",
    "telling",
    "usual_spots",
]

IN_SEASON = 0.99
"""Season factor (see `met_there`) from which a month counts as the season itself, not the months next to it."""
OFTEN_THERE = 0.5
"""Weight of a find spot (0-1) from which an animal counts as met there often."""
LEAST_TOLD = 0.5
"""Chance of a state from which it is shown as a mark of the kind."""


class Often(StrEnum):
    """How common an animal is somewhere, in words of the key."""

    COMMON = "common"
    REGULAR = "regular"
    LOCAL = "local"
    RARE = "rare"
    CARRIED = "carried"


_LEAST = {Often.COMMON: 0.7, Often.REGULAR: 0.25, Often.LOCAL: 0.06, Often.RARE: 0.01, Often.CARRIED: 0.0}
"""Least occurrence weight (0-1) of each word; between those that the key's own words stand for."""


def how_often(weight: float) -> Often:
    """The word for an occurrence weight (0-1).

    >>> how_often(0.4).value
    'regular'
    """
    return next(word for word, least in _LEAST.items() if weight >= least)


@dataclass(frozen=True, slots=True)
class Telling:
    """A mark of a kind: the state of a character that it mostly shows, and few others do.

    `chance` is how often it shows it, `others` how often the other kinds do (0-1).
    """

    character: str
    state: str
    chance: float
    others: float


def in_season(tables: Tables, kind: Kind, region: str | None = None) -> tuple[int, ...]:
    """The months (1-12) in which any stage of it is in season in a region or state, or in the middle of its range."""
    taxa = [tables.keyset.taxa[taxon] for taxon in kind.taxa]
    return tuple(
        month
        for month in range(1, 13)
        if any(met_there(tables, taxon, Settings(region=region, month=month))[1] >= IN_SEASON for taxon in taxa)
    )


def often_where(tables: Tables, kind: Kind, region: str) -> Often:
    """How common its most common stage is in a region, office area or state; a sign is as common as its makers."""
    return how_often(max(met_there(tables, taxon, Settings(region=region))[0] for taxon in _models(tables, kind)))


def occurrence_known(tables: Tables, kind: Kind) -> bool:
    """Whether the key says how common it is at all."""
    return any(taxon.occurrence for taxon in _models(tables, kind))


def look_alikes(tables: Tables, kind: Kind) -> tuple[Kind, ...]:
    """The kinds it is taken for, or that are taken for it, the medically important ones first."""
    if "look-alike kinds" not in tables.memo:
        pairs: dict[str, dict[str, Kind]] = {one.id: {} for one in kinds(tables)}
        for taxon in tables.keyset.taxa.values():
            own = kind_of(tables, taxon.id)
            for look in taxon.look_alikes:
                other = kind_of(tables, look.taxon)
                if other.id != own.id:
                    pairs[own.id][other.id] = other
                    pairs[other.id][own.id] = own
        tables.memo["look-alike kinds"] = pairs
    found: Mapping[str, Mapping[str, Kind]] = tables.memo["look-alike kinds"]  # type: ignore[assignment]
    return tuple(sorted(found[kind.id].values(), key=lambda one: not one.gated))


def signs(tables: Tables, kind: Kind) -> tuple[Kind, ...]:
    """The signs that it makes; none for a sign."""
    own = tables.keyset.taxa[kind.id]
    if own.form is not Form.ANIMAL:
        return ()
    return tuple(one for one in kinds(tables) if own.kind in tables.keyset.taxa[one.id].made_by)


def makers(tables: Tables, kind: Kind) -> tuple[Kind, ...]:
    """The kinds that make a sign, the medically important ones first; none for an animal."""
    wanted = tables.keyset.taxa[kind.id].made_by
    animals = [one for one in kinds(tables) if tables.keyset.taxa[one.id].form is Form.ANIMAL]
    found = [one for one in animals if tables.keyset.taxa[one.id].kind in wanted]
    return tuple(sorted(found, key=lambda one: not one.gated))


def usual_spots(tables: Tables, kind: Kind, most: int = 6) -> tuple[str, ...]:
    """Ids of the find spots where it is met most, the usual ones first, at most `most`."""
    weights: dict[str, float] = {}
    for taxon in kind.taxa:
        for spot, weight in tables.keyset.taxa[taxon].places.items():
            weights[spot] = max(weight, weights.get(spot, 0.0))
    usual = sorted((spot for spot in weights if weights[spot] >= OFTEN_THERE), key=lambda spot: -weights[spot])
    return tuple((usual or sorted(weights, key=lambda spot: -weights[spot]))[:most])


def telling(tables: Tables, kind: Kind, most: int = 12) -> tuple[Telling, ...]:
    """Its marks, those that fewest other kinds of the same form show first, at most `most`.

    A mark is the commonest state of a character that is described for it, at `LEAST_TOLD` or more; `others` is
    the mean chance of that state over the other kinds to which the character applies.
    """
    form = tables.keyset.taxa[kind.id].form
    others = [
        one for one in kinds(tables)
        if one.id != kind.id and not one.outside and tables.keyset.taxa[one.id].form is form
    ]  # fmt: skip
    found = []
    for name, table in tables.characters.items():
        mine = chances(tables, kind, name)
        if name == THING or mine is None:
            continue
        at = int(np.argmax(mine))
        theirs = [known[at] for one in others if (known := chances(tables, one, name)) is not None]
        if theirs and mine[at] >= LEAST_TOLD:
            state = table.character.states[at].id
            found.append(Telling(name, state, float(mine[at]), float(np.mean(theirs))))
    return tuple(sorted(found, key=lambda one: (one.others - one.chance, one.character))[:most])


def chances(tables: Tables, kind: Kind, character: str) -> NDArray[np.float64] | None:
    """Chance of each state of a character over the stages of a kind by their share; None where none describes it."""
    table = tables.characters[character]
    known = [taxon for taxon in kind.taxa if _is_known(tables, taxon, character)]
    if not known:
        return None
    shares = [tables.keyset.taxa[taxon].share for taxon in known]
    rows = [tables.row(taxon) for taxon in known]
    return np.asarray(np.average(table.chance[rows], axis=0, weights=shares))


def _is_known(tables: Tables, taxon: str, character: str) -> bool:
    table, row = tables.characters[character], tables.row(taxon)
    return bool(table.described[row] and table.applies[row])


def _models(tables: Tables, kind: Kind) -> list[Taxon]:
    found = [taxon for one in makers(tables, kind) for taxon in one.taxa]
    return [tables.keyset.taxa[taxon] for taxon in found or kind.taxa]
