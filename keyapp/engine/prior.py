"""How likely each result is before anything is answered: kind, range, season, place."""

from __future__ import annotations

import numpy as np

from keyapp.engine.tables import Floats, Tables
from keyapp.model import Settings, Taxon

__all__ = ["log_prior_of", "met_there", "prior"]


def prior(tables: Tables, settings: Settings) -> Floats:
    """Prior probabilities over the rows of `tables`; they sum to 1.

    Mass goes to kinds and is split among their descriptions by share, so that describing more
    stages, sexes or signs of a kind adds none. What is not in this key holds `outside` in all.
    Each factor has a floor. Where region or month is unknown, gated taxa take their highest
    value and the others their mean.
    """
    weights = tables.weights
    taxa = tables.keyset.taxa
    shares: dict[str, float] = {}
    animals: dict[str, list[Taxon]] = {}
    for row in tables.rows[:-1]:
        shares[row.kind] = shares.get(row.kind, 0.0) + taxa[row.taxon].share
        if not row.sign:
            animals.setdefault(row.kind, []).append(taxa[row.taxon])

    mass = np.zeros(len(tables.rows))
    for i, row in enumerate(tables.rows[:-1]):
        taxon = taxa[row.taxon]
        gated = bool(row.danger)
        # A sign is as common as what makes it.
        models = animals.get(row.kind, [taxon]) if row.sign else [taxon]
        common = max(_factor(_occurrences(tables, one, settings.region), gated, weights.floor) for one in models)
        season = _factor(_months(tables, taxon, settings), gated, weights.floor)
        place = _place(tables, taxon, settings.spot)
        mass[i] = taxon.share / shares[row.kind] * common * season * place
    # What is not in the key: half of its mass to the results that stand for it, half to the unknown.
    stand_ins = np.array([row.group.level == "outside" for row in tables.rows])
    stand_ins[-1] = False
    known = ~stand_ins
    known[-1] = False
    half = 0.5 * weights.outside if mass[stand_ins].sum() > 0 else 0.0
    if half:
        mass[stand_ins] *= half / mass[stand_ins].sum()
    if mass[known].sum() > 0:
        mass[known] *= (1.0 - weights.outside) / mass[known].sum()
    mass[-1] = weights.outside - half
    return np.asarray(mass / mass.sum(), dtype=float)


def log_prior_of(tables: Tables, settings: Settings) -> Floats:
    """The natural logarithm of `prior`, kept for each place, month and find spot; not to be written to."""
    key = ("log prior", settings.region, settings.month, settings.spot)
    if key not in tables.memo:
        kept = np.log(prior(tables, settings))
        kept.setflags(write=False)
        tables.memo[key] = kept
    return tables.memo[key]  # type: ignore[return-value]


def met_there(tables: Tables, taxon: Taxon, settings: Settings) -> tuple[float, float]:
    """How common a result is in the place set and how much in season in the month set, each 0-1.

    The highest of the values that count, as for a medically important row of `prior`.
    """
    return max(_occurrences(tables, taxon, settings.region)), max(_months(tables, taxon, settings))


def _place(tables: Tables, taxon: Taxon, spot: str | None) -> float:
    """How much more often than at an average spot it is met at `spot`; 1 where either is not known."""
    if not spot or not taxon.places:
        return 1.0
    low = max(tables.weights.floor, tables.weights.place_floor)
    often = {known: max(low, taxon.places.get(known, 0.0)) for known in tables.keyset.spots}
    return often[spot] * len(often) / sum(often.values())


def _factor(found: list[float], gated: bool, floor: float) -> float:
    """One value, or the highest (gated) or mean (other) of several."""
    return max(floor, max(found) if gated else sum(found) / len(found))


def _occurrences(tables: Tables, taxon: Taxon, region: str | None) -> list[float]:
    """Occurrence in the place set: one value, or one for each part of it.

    A state's own value beats its region's, and that the default. Of a region whose states differ,
    all its states count, and of an unknown place every value there is.
    """
    table = taxon.occurrence
    if not table:
        return [1.0]
    default = table.get("default", 0.0)
    if region is None:
        return list(table.values())
    regions = tables.keyset.regions
    if region not in regions:
        home = next((r.id for r in regions.values() if region in r.states and not r.part_of), None)
        return [table.get(region, table.get(home or "", default))]
    current = regions[region]
    while current.part_of in regions and current.id not in table:
        current = regions[current.part_of]
    base = table.get(current.id, default)
    return [table.get(state, base) for state in regions[region].states] or [base]


def _months(tables: Tables, taxon: Taxon, settings: Settings) -> list[float]:
    """Season factor in the month set, or in every month where none is set."""
    if not taxon.months:
        return [1.0]
    shift = _shift(tables, settings.region)
    low = tables.weights.month_floor
    season = {(month + shift - 1) % 12 + 1 for month in taxon.months}
    near = {(month + step - 1) % 12 + 1 for month in season for step in (-1, 1)} - season
    value = {m: 1.0 if m in season else (1 + low) / 2 if m in near else low for m in range(1, 13)}
    return [value[settings.month]] if settings.month else list(value.values())


def _shift(tables: Tables, region: str | None) -> int:
    regions = tables.keyset.regions
    if region is None:
        return 0
    if region in regions:
        found = regions[region]
        return found.month_shift or (_shift(tables, found.part_of) if found.part_of else 0)
    return next((r.month_shift for r in regions.values() if region in r.states and not r.part_of), 0)
