"""Offices, states and regions as one list to choose from."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.model import Region

__all__ = ["STATES", "place_entries"]

STATES = {
    "AL": "Alabama", "AK": "Alaska", "AZ": "Arizona", "AR": "Arkansas", "CA": "California", "CO": "Colorado",
    "CT": "Connecticut", "DC": "District of Columbia", "DE": "Delaware", "FL": "Florida", "GA": "Georgia",
    "HI": "Hawaii", "ID": "Idaho", "IL": "Illinois", "IN": "Indiana", "IA": "Iowa", "KS": "Kansas",
    "KY": "Kentucky", "LA": "Louisiana", "ME": "Maine", "MD": "Maryland", "MA": "Massachusetts", "MI": "Michigan",
    "MN": "Minnesota", "MS": "Mississippi", "MO": "Missouri", "MT": "Montana", "NE": "Nebraska", "NV": "Nevada",
    "NH": "New Hampshire", "NJ": "New Jersey", "NM": "New Mexico", "NY": "New York", "NC": "North Carolina",
    "ND": "North Dakota", "OH": "Ohio", "OK": "Oklahoma", "OR": "Oregon", "PA": "Pennsylvania",
    "PR": "Puerto Rico", "RI": "Rhode Island", "SC": "South Carolina", "SD": "South Dakota", "TN": "Tennessee",
    "TX": "Texas", "UT": "Utah", "VT": "Vermont", "VA": "Virginia", "WA": "Washington", "WV": "West Virginia",
    "WI": "Wisconsin", "WY": "Wyoming",
}  # fmt: skip
"""Names of the states by postal code (USPS Publication 28, appendix B)."""


def place_entries(
    regions: Mapping[str, Region], language: str, headings: Mapping[str, str], heading: object
) -> list[tuple[str, object]]:
    """States by name, then offices, then whole regions; each part under its heading."""
    offices = sorted((r.name.say(language), r.id) for r in regions.values() if r.part_of)
    wide = sorted((r.name.say(language), r.id) for r in regions.values() if not r.part_of)
    states = sorted({(STATES.get(code, code), code) for r in regions.values() for code in r.states})
    parts = (("states", states), ("offices", offices), ("regions", wide))
    entries: list[tuple[str, object]] = []
    for name, part in parts:
        if part:
            entries.append((headings[name], heading))
            entries += [(text, value) for text, value in part]
    return entries
