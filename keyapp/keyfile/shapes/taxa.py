"""The shape of `taxa/*.yaml`."""

from __future__ import annotations

from keyapp.keyfile.fields import Fields, read_number
from keyapp.keyfile.node import Node
from keyapp.keyfile.problem import Problems, nearest
from keyapp.keyfile.shapes.common import (
    FREQUENCY_WORDS,
    OCCURRENCE_WORDS,
    read_basis,
    read_basis_map,
    read_cautions,
    read_state_frequencies,
    read_statement,
    read_weight,
)
from keyapp.model.source import Statement
from keyapp.model.taxon import Danger, Form, LookAlike, Misname, Size, Taxon

__all__ = ["RANKS", "read_taxon"]

RANKS = ("kingdom", "phylum", "subphylum", "superclass", "class", "subclass", "superorder", "order", "suborder",
         "infraorder", "superfamily", "family", "subfamily", "tribe", "genus", "subgenus", "species")


def read_taxon(name: str, node: Node, problems: Problems) -> Taxon:
    """Read one result. Stand-ins take the place of faulty fields."""
    fields = Fields(node, problems, "the result")
    outside = fields.flag("outside")
    danger = fields.word("danger", Danger, Danger.UNKNOWN)
    form = fields.word("form", Form, Form.ANIMAL)
    taxon = Taxon(
        id=name,
        name=fields.string("name"),
        rank=_rank(fields),
        class_=fields.string("class", required=not outside),
        order=fields.string("order", required=not outside),
        family=fields.string("family", required=False),
        title=fields.text("title"),
        common_names=fields.words_by_language("common-names"),
        popular_names=fields.words("popular-names"),
        misnames=tuple(_misname(child, problems) for child in fields.list("misnames")),
        form=form,
        stage=fields.text("stage", required=False),
        kind=fields.id("kind", required=False, default=name),
        share=fields.number("share", least=0, most=1, above=True, default=1.0),
        made_by=_made_by(fields, form, outside),
        shows={character: states for character, child in fields.mapping("shows", required=not outside).items()
               if (states := read_state_frequencies(child, problems))},
        sizes=_sizes(fields),
        places=_weights(fields, "places"),
        months=_months(fields),
        occurrence=_occurrence(fields),
        danger=danger,
        danger_group=fields.id("danger-group", required=danger.is_gated),
        cautions=read_cautions(fields, "cautions"),
        advice=read_cautions(fields, "advice", "the advice"),
        look_alikes=tuple(_look_alike(child, problems) for child in fields.list("look-alikes")),
        garden=_garden(fields),
        diagnosis=fields.text("diagnosis", required=not outside),
        season=fields.text("season", required=False),
        outside=outside,
        figure=fields.id("figure", required=False, default=name),
        basis=read_basis(fields),
        basis_for=read_basis_map(fields, "basis-for"),
        place=node.place,
    )
    fields.done()
    return taxon


def _rank(fields: Fields) -> str:
    rank = fields.string("rank")
    if rank and rank not in RANKS:
        fields.problems.add("K112", fields.place_of("rank"), f'"{rank[:60]}" is not a rank.', nearest(rank, RANKS))
    return rank


def _made_by(fields: Fields, form: Form, outside: bool) -> tuple[str, ...]:
    # What makes a gall is too small to be a result of its own.
    needed = form not in (Form.ANIMAL, Form.GALL) and not outside
    makers = fields.ids("made-by", required=needed)
    if makers and form is Form.ANIMAL:
        fields.problems.add("K109", fields.place_of("made-by"), 'Only a sign is "made by" a kind of animal.',
                            "Remove it, or give the result the form of a sign.")
        return ()
    return makers


def _misname(node: Node, problems: Problems) -> Misname:
    fields = Fields(node, problems, "the misname")
    misname = Misname(fields.string("said"), fields.text("fact"), read_basis(fields), node.place)
    fields.done()
    return misname


def _look_alike(node: Node, problems: Problems) -> LookAlike:
    fields = Fields(node, problems, "the look-alike")
    found = LookAlike(fields.id("taxon"), fields.id("character"), fields.text("difference"), node.place)
    fields.done()
    return found


def _garden(fields: Fields) -> Statement | None:
    inner = fields.inner("garden", "the garden note")
    return read_statement(inner) if inner else None


def _sizes(fields: Fields) -> dict[str, Size]:
    found = {}
    for character, node in fields.mapping("sizes").items():
        if node.kind != "list" or len(node.items) != 2:
            if node.kind != "bad":
                fields.problems.add("K111", node.place, "A least and a greatest size belong here.",
                                    "Write two numbers in mm, such as [8, 15].")
            continue
        least, most = (read_number(item, fields.problems, least=0, most=1e6, above=True) for item in node.items)
        if least is None or most is None:
            continue
        if least >= most:
            fields.problems.add("K113", node.place, f"The greatest size {most:g} is not above the least {least:g}.",
                                "Write the smaller number first.")
            continue
        found[character] = Size(least, most)
    return found


def _weights(fields: Fields, name: str) -> dict[str, float]:
    found = {}
    for spot, node in fields.mapping(name).items():
        weight = read_weight(node, fields.problems, FREQUENCY_WORDS)
        if weight is not None:
            found[spot] = weight
    return found


def _occurrence(fields: Fields) -> dict[str, float]:
    found = {}
    for region, node in fields.mapping("occurrence").items():
        weight = read_weight(node, fields.problems, OCCURRENCE_WORDS)
        if weight is not None:
            found[region] = weight
    return found


def _months(fields: Fields) -> tuple[int, ...]:
    found: list[int] = []
    for node in fields.list("months"):
        month = read_number(node, fields.problems, least=1, most=12)
        if month is None:
            continue
        if month != int(month) or int(month) in found:
            fields.problems.add("K113", node.place, f"{node.text} is not a month, or is listed twice.",
                                "List each month once, as a number from 1 to 12.")
            continue
        found.append(int(month))
    return tuple(sorted(found))
