"""The sentences of the pages on which kinds and signs are looked up. None of them tells what someone has."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

from keyapp.model import COMMON_PRACTICE, FROM_MEMORY, Caution, Form, Size, Taxon
from keyapp.wording.called import Name, NameRank
from keyapp.wording.words import Words

__all__ = [
    "basis_levels",
    "basis_line",
    "called_line",
    "dated_line",
    "kind_title",
    "month_spans",
    "science_line",
    "season_line",
    "shown_lines",
    "size_line",
    "sort_name",
    "source_lines",
]

USUAL, OFTEN, NOTED = 0.6, 0.2, 0.02
"""Chances of a state (0-1) from which it is named alone, as one of several, or as met at times."""


def kind_title(words: Words, taxon_id: str) -> str:
    """The title of a result without its stage or sex; a sign keeps all of it."""
    taxon = words.keyset.taxa[taxon_id]
    title = taxon.title.say(words.language)
    return title.split(",")[0] if taxon.form is Form.ANIMAL else title


def science_line(taxon: Taxon) -> str:
    """Its scientific name with those of the wider groups."""
    wider = [one for one in (taxon.family, taxon.order, taxon.class_) if one and one != taxon.name]
    return " · ".join([taxon.name, *wider])


def sort_name(words: Words, sort: str) -> str:
    """The plain name of a sort of thing: an order, a class, or a form of sign."""
    for entry in (f"families.form.{sort}", f"order.{sort}", f"class.{sort}"):
        found = words.keyset.wording.get(entry)
        if found is not None:
            return found.say(words.language)
    return sort


def called_line(words: Words, name: Name | None, title: str) -> str:
    """How the name that was looked for is used for it; empty where it is the title or nothing anyone says."""
    if name is None or not name.shown or name.shown.casefold() in title.casefold():
        return ""
    entry = {
        NameRank.RIGHT: "families.called",
        NameRank.LOOSE: "families.called-loosely",
        NameRank.WRONG: "families.called-wrongly",
        NameRank.WIDER: "families.belongs",
    }[name.rank]
    return words.fixed(entry, name=name.shown)


def month_spans(words: Words, months: Iterable[int]) -> str:
    """Months (1-12) as spans, going on over the new year: "April to June, September"."""
    wanted = set(months)
    if len(wanted) == 12:
        return words.fixed("families.season-all")
    spans = []
    for first in sorted(month for month in wanted if (month - 2) % 12 + 1 not in wanted):
        last = first
        while last % 12 + 1 in wanted:
            last = last % 12 + 1
        names = [words.fixed(f"month.{month}") for month in (first, last)]
        spans.append(names[0] if first == last else words.fixed("families.span", first=names[0], last=names[1]))
    return words.listing(spans)


def season_line(words: Words, months: Sequence[int], *, of_region: bool = False) -> str:
    """When it is met, in a sentence that never says that it cannot be met."""
    if len(set(months)) == 12:
        return words.fixed("families.season-all")
    entry = "families.season-region" if of_region else "families.season-some"
    return words.fixed(entry, months=month_spans(words, months))


def shown_lines(words: Words, character_id: str, states: Sequence[tuple[str, float]]) -> tuple[str, ...]:
    """What is shown of a character in words, from states with their chances (0-1), commonest first.

    The first line says what is usual; a second what is met as well. No numbers.
    """
    character = words.keyset.characters[character_id]

    def names(least: float, most: float) -> str:
        found = [state for state, often in states if least <= often < most]
        return words.listing([character.state(state).label.say(words.language) for state in found])

    if not states:
        return ()
    usual, often, noted = names(USUAL, 2.0), names(OFTEN, USUAL), names(NOTED, OFTEN)
    if usual:
        lines = [usual, words.fixed("families.cell.often", names=often) if often else ""]
    elif often:
        is_one = sum(OFTEN <= chance < USUAL for _, chance in states) == 1
        lines = [words.fixed("families.cell.mostly" if is_one else "families.cell.either", names=often)]
    else:
        return (words.fixed("families.cell.either", names=names(0.0, 2.0)),)
    lines.append(words.fixed("families.cell.times", names=noted) if noted else "")
    return tuple(line for line in lines if line)


def size_line(words: Words, size: Size) -> str:
    """A grown range in mm."""
    return words.fixed("families.cell.size", least=f"{size.least:g}", most=f"{size.most:g}")


def dated_line(words: Words, cautions: Sequence[Caution], today: datetime.date) -> str:
    """When these were checked and must be looked at again; empty for none."""
    if not cautions:
        return ""
    first = min(one.checked for one in cautions)
    last = max(one.checked for one in cautions)
    review = min(one.review_by for one in cautions)
    entry = "families.dated" if first == last else "families.dated-range"
    said = words.fixed(
        entry, checked=first.isoformat(), first=first.isoformat(), last=last.isoformat(), review=review.isoformat()
    )
    return said if review >= today else f"{said} {words.fixed('families.stale')}"


def basis_levels(words: Words, bases: Iterable[Sequence[str]]) -> tuple[str, ...]:
    """What statements rest on, in words, strongest first: published sources, common practice, memory."""
    every = {one for basis in bases for one in basis}
    found = []
    if every - {COMMON_PRACTICE, FROM_MEMORY}:
        found.append("published")
    if COMMON_PRACTICE in every:
        found.append("practice")
    if FROM_MEMORY in every:
        found.append("memory")
    return tuple(words.fixed(f"families.basis.{level}") for level in found)


def basis_line(words: Words, taxa: Sequence[Taxon]) -> str:
    """What the descriptions of these results rest on."""
    bases = [basis for taxon in taxa for basis in (taxon.basis, *taxon.basis_for.values())]
    return words.fixed("families.basis-line", levels=words.listing(basis_levels(words, bases)))


def source_lines(words: Words, taxa: Sequence[Taxon]) -> tuple[str, ...]:
    """Every published source that the descriptions of these results, and what is said of them, cite; each once."""
    cited = dict.fromkeys(
        one
        for taxon in taxa
        for basis in (
            taxon.basis,
            *taxon.basis_for.values(),
            *(said.basis for said in (*taxon.cautions, *taxon.advice)),
            *(misname.basis for misname in taxon.misnames),
            *((taxon.garden.basis,) if taxon.garden else ()),
        )
        for one in basis
    )
    lines = []
    for one in cited:
        source = words.keyset.sources.get(one)
        if source is not None:
            year = f", {source.year}" if source.year else ""
            lines.append(f"{source.title} ({source.publisher}{year}) {source.address}".strip())
    return tuple(lines)
