"""The shape of `regions/*.yaml` and `spots.yaml`."""

from __future__ import annotations

from keyapp.keyfile.fields import Fields
from keyapp.keyfile.node import Node
from keyapp.keyfile.problem import Problems, nearest
from keyapp.keyfile.shapes.common import read_basis
from keyapp.model.region import Contact, ContactKind, FindSpot, Region

__all__ = ["STATE_CODES", "read_region", "read_spot"]

STATE_CODES = frozenset([
    "AL", "AK", "AZ", "AR", "CA", "CO", "CT", "DE", "FL", "GA", "HI", "ID", "IL", "IN", "IA", "KS", "KY", "LA",
    "ME", "MD", "MA", "MI", "MN", "MS", "MO", "MT", "NE", "NV", "NH", "NJ", "NM", "NY", "NC", "ND", "OH", "OK",
    "OR", "PA", "RI", "SC", "SD", "TN", "TX", "UT", "VT", "VA", "WA", "WV", "WI", "WY", "DC", "PR", "VI", "GU",
    "AS", "MP",
])
"""Two-letter postal codes of the states, the federal district and the territories (US Postal Service)."""


def read_region(name: str, node: Node, problems: Problems) -> Region:
    """Read one region."""
    fields = Fields(node, problems, "the region")
    states = []
    for code in fields.words("states"):
        if code in states:
            problems.add("K107", fields.place_of("states"), f'"{code}" is listed twice.', "Keep one of the two.")
        elif code in STATE_CODES:
            states.append(code)
        else:
            problems.add("K112", fields.place_of("states"), f'"{code[:20]}" is not a two-letter state code.',
                         nearest(code.upper(), STATE_CODES))
    region = Region(
        id=name,
        name=fields.text("name"),
        part_of=fields.id("part-of", required=False),
        states=tuple(states),
        month_shift=fields.whole("month-shift", least=-6, most=6, default=0),
        contacts=tuple(_contact(child, problems) for child in fields.list("contacts")),
        demo=fields.flag("demo"),
        basis=read_basis(fields),
        place=node.place,
    )
    listed = node.fields.get("states")
    is_empty = listed is None or (listed.kind == "list" and not listed.items)
    if node.kind == "mapping" and is_empty and not fields.has("part-of"):
        problems.add("K116", fields.place_of("states"), "The region covers no state.",
                     "List its states, or name the region it is `part-of`.")
    fields.done()
    return region


def _contact(node: Node, problems: Problems) -> Contact:
    fields = Fields(node, problems, "the contact")
    contact = Contact(
        kind=fields.word("kind", ContactKind, ContactKind.EXTENSION),
        name=fields.text("name"),
        telephone=fields.string("telephone", required=False),
        web=fields.string("web", required=False),
        hours=fields.text("hours", required=False),
        when=fields.text("when", required=False),
        basis=read_basis(fields),
        demo=fields.flag("demo"),
        place=node.place,
    )
    fields.done()
    return contact


def read_spot(name: str, node: Node, problems: Problems) -> FindSpot:
    """Read one find spot."""
    fields = Fields(node, problems, "the find spot")
    spot = FindSpot(name, fields.text("label"), fields.flag("indoors"), node.place)
    fields.done()
    return spot
