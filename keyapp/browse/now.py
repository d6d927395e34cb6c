"""What people are likely to ask about in a place and a month, from range, season and find spots."""

from __future__ import annotations

from keyapp.browse.facts import makers
from keyapp.browse.kinds import Kind
from keyapp.engine import Tables, met_there
from keyapp.model import Form, Settings

__all__ = ["asked_about"]

NEAR_HOMES = ("wall-or-porch", "garage-shed", "on-person-or-pet", "web-between-plants", "ground-or-lawn")
"""Find spots outdoors where people meet animals as often as in the house; a judgement from memory."""


def asked_about(tables: Tables, kind: Kind, region: str, month: int) -> float:
    """How likely people are to meet a kind, or to notice a sign, and to ask about it, from 0; to compare kinds with.

    How common its most common stage or maker is in `region` (a region, office or state code), times how much more in
    season it is in `month` (1-12) than in a mean month, times the strongest of its weights for spots in and around the
    house. No count of calls goes into it: no published table of what offices are asked, family by family, was found.
    """
    sign = tables.keyset.taxa[kind.id].form is not Form.ANIMAL
    models = [taxon for one in (makers(tables, kind) or (kind,)) for taxon in one.taxa] if sign else kind.taxa
    taxa = [tables.keyset.taxa[taxon] for taxon in kind.taxa]
    here = Settings(region=region)
    common = max(met_there(tables, tables.keyset.taxa[taxon], here)[0] for taxon in models)
    months = [Settings(region=region, month=at) for at in range(1, 13)]
    year = [max(met_there(tables, taxon, one)[1] for taxon in taxa) for one in months]
    near = {spot.id for spot in tables.keyset.spots.values() if spot.indoors} | set(NEAR_HOMES)
    met = max((weight for taxon in taxa for spot, weight in taxon.places.items() if spot in near), default=0.0)
    return common * met * year[month - 1] * 12 / sum(year)
