"""The sentences of a county card around its dangers."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.model import Settings
from keyapp.wording.sheet import (
    ContactText,
    author_of,
    call_lines,
    call_numbers,
    contact_notes,
    contact_text,
    contacts_of,
)
from keyapp.wording.words import Words

__all__ = ["CardText", "card_text"]


@dataclass(frozen=True, slots=True)
class CardText:
    """What stands on a county card besides the dangers and their doubles.

    Attributes:
        kicker, title, place: what it is, what it asks for, region and month.
        call_head, call, numbers: what to do where someone is hurt, with the telephone numbers in it.
        unsure: what to do where it is not clear.
        less: the groups that are met less often there; empty where there are none.
        contacts, notes: whom to turn to about the animal.
        limits, dated, edition, author: the foot.
    """

    kicker: str
    title: str
    place: str
    call_head: str
    call: tuple[str, ...]
    numbers: tuple[str, ...]
    unsure: str
    less: str
    contacts: tuple[ContactText, ...]
    notes: tuple[str, ...]
    limits: str
    dated: str
    edition: str
    author: str


def card_text(
    words: Words, region: str, month: int, less: Sequence[str], any_here: bool, date: datetime.date, edition: str
) -> CardText:
    """The words of a card for a known region or state code and a month (1-12); `less` are danger group ids."""
    settings = Settings(region=region, month=month)
    known = words.keyset.regions.get(region)
    name = known.name.say(words.language) if known else region
    names = words.listing([words.danger(group) for group in less])
    entry = "card.others" if any_here else "card.no-group"
    return CardText(
        kicker=words.fixed("card.kicker"),
        title=words.fixed("card.title"),
        place=words.fixed("card.when", region=name, month=words.fixed(f"month.{month}")),
        call_head=words.fixed("sheet.call"),
        call=call_lines(words, settings),
        numbers=call_numbers(words, settings),
        unsure=words.fixed("card.unsure"),
        less=words.fixed(entry, names=names) if names else "",
        contacts=tuple(contact_text(words, one) for one in contacts_of(words, settings)),
        notes=contact_notes(words, settings),
        limits=words.fixed("card.limits"),
        dated=words.fixed("sheet.of-date", date=date.isoformat()),
        edition=words.fixed("sheet.edition", edition=edition),
        author=author_of(words, settings),
    )
