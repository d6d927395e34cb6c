"""The county card: one page with the dangerous few of a place and month beside their doubles."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from keyapp.engine import Tables
from keyapp.errors import UserError
from keyapp.sheets.blocks import Block, Cell, Columns, Hair, Para, Stack
from keyapp.sheets.figures import figures_of
from keyapp.sheets.flow import Section, flowed
from keyapp.sheets.foot import with_foot
from keyapp.sheets.items import Page, Role, Sign
from keyapp.sheets.letters import Span
from keyapp.sheets.pairs import DangerHere, Double, dangers_here, known_region
from keyapp.sheets.paper import Paper, frame_of
from keyapp.sheets.parts import call_panel, contact_para, para, picture
from keyapp.sheets.pdf import Particulars, pdf_of
from keyapp.sheets.style import Type, type_at
from keyapp.wording import Words
from keyapp.wording.card import CardText, card_text
from keyapp.wording.sheet import SourceList, capital, caution_text

__all__ = ["card_pages", "card_pdf"]


@dataclass(frozen=True, slots=True)
class _Room:
    """Size and pitch of the text, sides of the figures of a danger and of a double in mm, doubles at most."""

    size: float
    tight: bool
    danger: float
    double: float
    doubles: int


ROOMS = (
    _Room(10.5, False, 34.0, 21.0, 4),
    _Room(10.5, False, 34.0, 21.0, 2),
    _Room(10.0, False, 31.0, 19.0, 2),
    _Room(9.5, False, 28.0, 17.0, 2),
    _Room(9.0, True, 26.0, 16.0, 2),
    _Room(9.0, True, 24.0, 22.0, 1),
    _Room(9.0, True, 20.0, 16.0, 1),
)


def card_pdf(
    tables: Tables,
    region: str,
    month: int,
    words: Words,
    *,
    images: Path,
    date: datetime.date,
    edition: str,
    paper: Paper = Paper.LETTER,
) -> bytes:
    """The card of a region (id or two-letter state code) and month (1-12) as PDF, dated `date`.

    Raises UserError for an unknown region or month, a figure that cannot be read, or a card too long for a page.
    """
    pages = card_pages(tables, region, month, words, date=date, edition=edition, paper=paper)
    text = _text(tables, region, month, words, date, edition)
    about = Particulars(f"{text.kicker}: {text.place}", text.author, words.language, date)
    return pdf_of(pages, frame_of(paper), about, figures_of(images, pages))


def card_pages(
    tables: Tables, region: str, month: int, words: Words, *, date: datetime.date, edition: str, paper: Paper
) -> tuple[Page, ...]:
    """The one page of a card; doubles are left out where it gets long, groups and cautions never."""
    here, _ = dangers_here(tables, region, month)
    text = _text(tables, region, month, words, date, edition)
    frame = frame_of(paper)
    for room in ROOMS:
        pages = flowed(_Composer(words, text, room, date).sections(here), frame)
        if len(pages) == 1 and all(item.bounds[3] <= frame.bottom for item in pages[0]):
            return with_foot(pages, words, frame, f"{text.dated} · {text.edition}")
    raise UserError(
        "The card does not fit one page.", where=f"paper {paper}", fix="Shorten the cautions or differences in the key."
    )


def _text(tables: Tables, region: str, month: int, words: Words, date: datetime.date, edition: str) -> CardText:
    here, less = dangers_here(tables, region, month)
    place = known_region(tables.keyset, region)
    return card_text(words, place, month, [group.id for group in less], bool(here), date, edition)


class _Composer:
    """Turns the words of a card and its dangers into sections of blocks."""

    def __init__(self, words: Words, text: CardText, room: _Room, date: datetime.date) -> None:
        self.words = words
        self.text = text
        self.room = room
        self.date = date
        self.type: Type = type_at(room.size, tight=room.tight)
        self.sources = SourceList(words)

    def sections(self, here: Sequence[DangerHere]) -> list[Section]:
        """Help first, then what to do in doubt, then the dangers, then whom to ask."""
        text, kind = self.text, self.type
        kicker = f"{text.kicker} · {text.place} · {text.dated}"
        top = (para(kicker, kind.kicker, after=0.8), para(text.title, kind.title, Role.TITLE, after=1.4))
        call = call_panel(text.call_head, text.call, text.numbers, kind)
        unsure = Para((Span(text.unsure, kind.lead),), Role.TEXT, after=0.0)
        dangers = [Section(None, (Stack((Hair(), self._danger(one))),), kind.gap * 1.2) for one in here]
        less = [Section(None, (para(text.less, kind.body, after=0.0),), kind.gap)] if text.less else []
        return [
            Section(None, top, 0.6),
            Section(None, (call,), kind.gap * 1.8),
            Section(None, (unsure,), kind.gap * 1.4),
            *dangers,
            *less,
            self._ask(),
        ]

    def _head(self, one: DangerHere) -> Para:
        name = capital(self.words.danger(one.group.id))
        return Para((Span(name, self.type.head),), Role.HEAD, Sign.WARNING, "signal", 0.3)

    def _danger(self, one: DangerHere) -> Block:
        """The danger with its first caution at the left, its doubles at the right."""
        words, kind, room = self.words, self.type, self.room
        caution = caution_text(words, self.sources, "", one.lead.cautions[:1], self.date)
        said: list[Block] = [self._head(one), para(words.taxon(one.lead.id), kind.strong, after=0.4)]
        said += [para(line, kind.body, after=0.3) for line in caution.says]
        said += [para(line, kind.small, after=0.0) for line in caution.dates]
        doubles: list[Block] = [self._double(double) for double in one.doubles[: room.doubles]]
        if not doubles:
            doubles = [para(words.fixed("card.no-pair"), kind.soft, after=0.0)]
        portrait = picture(words, one.lead.figure, room.danger)
        return Columns((Cell(room.danger, (portrait,)), Cell(0.0, tuple(said)), Cell(0.0, tuple(doubles))), 3.5, 0.0)

    def _double(self, double: Double) -> Block:
        words, kind, side = self.words, self.type, self.room.double
        entry = "card.look" if double.from_afar else "card.look-photo"
        name = words.within(words.taxon(double.other.id))
        look = (
            Span(f"{words.fixed(entry)}: ", kind.soft),
            Span(double.look.difference.say(words.language), kind.body),
        )
        said = (para(words.fixed("card.twin", name=name), kind.strong, after=0.2), Para(look, after=0.0))
        return Columns((Cell(side, (picture(words, double.other.figure, side),)), Cell(0.0, said)), 2.5, 1.2)

    def _ask(self) -> Section:
        text, kind = self.text, self.type
        blocks: list[Block] = [contact_para(one, kind) for one in text.contacts]
        blocks += [para(note, kind.body, after=kind.gap * 0.4) for note in text.notes]
        cited = " ".join(f"{line}." for line in self.sources.short_lines)
        if cited:
            blocks.append(para(f"{self.words.fixed('sheet.head.sources')}: {cited}", kind.small, after=0.4))
        blocks.append(para(text.limits, kind.small, after=0.0))
        head = para(self.words.fixed("sheet.head.ask"), kind.head, Role.HEAD, after=0.0)
        return Section(head, tuple(blocks), 0.0, columns=2)
