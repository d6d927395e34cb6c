"""The find sheet: one or two pages for a person to keep."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from keyapp.engine import Reading, Tables
from keyapp.errors import UserError
from keyapp.sheets.blocks import Block, Cell, Columns, Gap, Para, Stack
from keyapp.sheets.figures import figures_of
from keyapp.sheets.flow import Section, flowed
from keyapp.sheets.foot import with_foot
from keyapp.sheets.items import Page, Role, Sign
from keyapp.sheets.letters import Span
from keyapp.sheets.paper import Paper, frame_of
from keyapp.sheets.parts import call_panel, contact_para, dot, para, picture
from keyapp.sheets.pdf import Particulars, pdf_of
from keyapp.sheets.style import TEXT_SIZES, Type, type_at
from keyapp.wording import Words
from keyapp.wording.sheet import CautionText, SheetText, sheet_text

__all__ = ["MOST_PAGES", "sheet_pages", "sheet_pdf"]

MOST_PAGES = 2


@dataclass(frozen=True, slots=True)
class _Room:
    """How much is shown: size and pitch of the text, sides of figures in mm, answers at most, whole sources or not,
    and whether statements run on in one paragraph.

    Cautions, dates, numbers, dangers and what to do are in every one.
    """

    size: float
    tight: bool
    found: float
    danger: float
    answers: int
    full_sources: bool
    run_in: bool = False


ROOMS = (
    _Room(TEXT_SIZES[0], False, 30.0, 20.0, 40, True),
    _Room(TEXT_SIZES[1], False, 26.0, 17.0, 20, True),
    _Room(TEXT_SIZES[2], False, 23.0, 15.0, 14, False),
    _Room(TEXT_SIZES[1], False, 22.0, 15.0, 8, False, run_in=True),
    _Room(TEXT_SIZES[2], False, 20.0, 14.0, 8, False, run_in=True),
    _Room(TEXT_SIZES[2], True, 19.0, 13.0, 6, False, run_in=True),
    _Room(TEXT_SIZES[3], True, 17.0, 12.0, 5, False, run_in=True),
    _Room(TEXT_SIZES[3], True, 14.0, 0.0, 3, False, run_in=True),
    _Room(TEXT_SIZES[3], True, 0.0, 0.0, 0, False, run_in=True),
)
"""From roomy to tight; the first that fits is printed."""


def sheet_pdf(
    tables: Tables,
    reading: Reading,
    words: Words,
    *,
    images: Path,
    date: datetime.date,
    edition: str,
    paper: Paper = Paper.LETTER,
) -> bytes:
    """The find sheet of a reading as PDF, dated `date`, with figures from the folder `images`.

    Raises UserError where it does not fit two pages, or a figure cannot be read.
    """
    text = sheet_text(words, tables, reading, date, edition)
    pages = sheet_pages(text, words, paper)
    about = Particulars(f"{text.kicker}: {text.title}", text.author, words.language, date)
    return pdf_of(pages, frame_of(paper), about, figures_of(images, pages))


def sheet_pages(text: SheetText, words: Words, paper: Paper) -> tuple[Page, ...]:
    """The pages of a sheet: one where it goes in readable size, else two.

    Where it is too long, figures and letters shrink (never below 9 pt) and answers are counted instead of
    listed. Raises UserError where that is not enough.
    """
    frame = frame_of(paper)
    fitting = None
    for number, room in enumerate(ROOMS):
        pages = flowed(_Composer(text, words, room).sections(), frame)
        fits = len(pages) <= MOST_PAGES and all(i.bounds[3] <= frame.bottom for page in pages for i in page)
        if fits and fitting is None:
            fitting = pages
        if fits and (len(pages) == 1 or number > 0):
            fitting = pages if len(pages) < len(fitting or pages) else fitting
            break
    if fitting is None:
        raise UserError(
            "The sheet does not fit two pages, and nothing on it may be left out.",
            where=f"paper {paper}",
            fix="Settle more of the dangers first, or shorten the texts of the key.",
        )
    return with_foot(fitting, words, frame, f"{text.dated} · {text.edition}")


class _Composer:
    """Turns the words of a sheet into sections of blocks."""

    def __init__(self, text: SheetText, words: Words, room: _Room) -> None:
        self.text = text
        self.words = words
        self.room = room
        self.type: Type = type_at(room.size, tight=room.tight)

    def sections(self) -> list[Section]:
        """All of them, in the order they are read: the person first, then the animal."""
        gap = self.type.gap
        again = self._section("change", self._change())
        is_open = self.text.is_open
        parts = [
            self._top(),
            self._call(),
            *self._safety(),
            # Nothing that reassures stands above what to check again.
            *([] if is_open else [again]),
            self._section("do", self._actions()),
            self._section("could-be", self._found()),
            self._section("beware", self._cautions(), columns=2),
            self._section("photo", self._photo()),
            *([again] if is_open else []),
            self._section("told", self._told(), columns=2),
            self._section("ask", self._contacts(), columns=2),
            self._section("sources", self._sources(), columns=2),
        ]
        return [replace(part, after=gap * 1.5) for part in parts if part.blocks]

    # Parts -----------------------------------------------------------------------------------------

    def _top(self) -> Section:
        text, kind = self.text, self.type
        kicker = f"{text.kicker} · {text.dated}"
        top = [para(kicker, kind.kicker, after=0.8), para(text.title, kind.title, Role.TITLE, after=1.0)]
        if text.names:
            top.append(para(text.names, kind.lead, after=0.6))
        return Section(None, tuple(top))

    def _call(self) -> Section:
        text, kind = self.text, self.type
        more = self._signs(text.signs) if text.signs is not None else []
        head = text.hurt or self.words.fixed("sheet.call")
        return Section(None, (call_panel(head, text.call, text.numbers, kind, more),))

    def _signs(self, signs: CautionText) -> list[Block]:
        """Signs for the emergency number, a line each in little room too: they are read in haste."""
        kind = self.type
        cuts = range(len(signs.says) + 1)
        cut = min(cuts, key=lambda at: abs(len("".join(signs.says[:at])) - len("".join(signs.says[at:]))))
        halves = (signs.says[:cut], signs.says[cut:])
        cells = tuple(Cell(0.0, tuple(dot(sign, kind) for sign in some)) for some in halves)
        return [Gap(0.6), Columns(cells, after=0.6), *(para(line, kind.small, after=0.0) for line in signs.dates)]

    def _safety(self) -> list[Section]:
        """The safety line, and the open dangers in two columns below it."""
        text, kind = self.text, self.type
        tone = replace(kind.lead, colour="signal" if text.is_open else "ink")
        line = Para((Span(text.safety, tone),), Role.TEXT, Sign.WARNING, tone.colour, kind.gap * 0.6)
        blocks: list[Block] = []
        for danger in text.dangers:
            if not self.room.danger:
                rest = " ".join(part for part in (danger.settle, danger.look) if part)
                spans = (Span(f"{danger.name}. ", kind.strong), Span(rest, kind.body))
                blocks.append(Para(spans, after=kind.gap * 0.6, parts=True))
                continue
            said = [para(danger.name, kind.strong, after=0.0), para(danger.settle, kind.body, after=0.0)]
            if danger.look:
                said.append(para(danger.look, kind.soft, after=0.0))
            side = self.room.danger
            cells = (Cell(side, (picture(self.words, danger.figure, side),)), Cell(0.0, tuple(said)))
            blocks.append(Columns(cells, after=kind.gap))
        head = self._section("open" if text.is_open else "safety", [line])
        return [head, Section(None, tuple(blocks), columns=2)]

    def _found(self) -> list[Block]:
        text, kind, side = self.text, self.type, self.room.found
        lines = (" ".join(text.why),) if self.room.tight else text.why
        blocks: list[Block] = [para(line, kind.body, after=kind.gap * 0.4) for line in lines]
        if text.found_lead:
            blocks.append(para(text.found_lead, kind.strong, after=kind.gap * 0.5))
        if not side:
            listed = "; ".join(f"{one.name}: {one.chance}" for one in text.found)
            return [*blocks, para(f"{listed}.", kind.strong)] if listed else blocks
        across = 2 if len(text.found) < 5 or not self.room.tight else 3
        for start in range(0, len(text.found), across):
            cells = []
            for one in text.found[start : start + across]:
                said = (para(one.name, kind.strong, after=0.0), para(one.chance, kind.soft, after=0.0))
                shown = (picture(self.words, one.figure, side),) if one.figure else ()
                pair = Columns((Cell(side, shown), Cell(0.0, (Gap(side * 0.15), *said))), between=2.5, after=0.0)
                cells.append(Cell(0.0, (pair,)))
            cells += [Cell(0.0, ())] * (across - len(cells))
            blocks.append(Columns(tuple(cells), after=kind.gap * 0.6))
        return blocks

    def _photo(self) -> list[Block]:
        if self.room.tight:
            return [para(" ".join(self.text.photo), self.type.body, after=0.0)]
        return [dot(line, self.type) for line in self.text.photo]

    def _actions(self) -> list[Block]:
        blocks: list[Block] = []
        for says, why in self.text.actions:
            blocks.append(para(says, self.type.lead, after=0.0))
            blocks.append(para(why, self.type.soft, after=self.type.gap * 0.6))
        return blocks

    def _cautions(self) -> list[Block]:
        blocks: list[Block] = []
        for block in self.text.cautions:
            blocks += self._caution(block)
        return blocks + [dot(line, self.type) for line in self.text.no_review]

    def _caution(self, block: CautionText) -> list[Block]:
        kind = self.type
        if self.room.run_in:
            name = [Span(f"{block.about}. ", kind.strong)] if block.about else []
            said = Span(" ".join(block.says) + " ", kind.body)
            dates = Span(" ".join(block.dates), kind.small)
            return [Para((*name, said, dates), after=kind.gap * 1.2, parts=True)]
        lines: list[Block] = [para(block.about, kind.strong, after=0.3)] if block.about else []
        lines += [dot(line, kind) for line in block.says]
        lines += [para(line, kind.small, after=kind.gap) for line in block.dates]
        # The name stays with the first statement, and the dates with the last.
        first = 2 if block.about else 1
        if len(lines) < first + 2:
            return [Stack(tuple(lines))]
        return [Stack(tuple(lines[:first])), *lines[first:-2], Stack(tuple(lines[-2:]))]

    def _change(self) -> list[Block]:
        blocks: list[Block] = []
        for line, answers in self.text.change:
            blocks.append(para(line, self.type.body, after=self.type.gap * 0.5))
            blocks += [dot(answer, self.type) for answer in answers]
        return blocks

    def _told(self) -> list[Block]:
        text, kind, words = self.text, self.type, self.words
        blocks: list[Block] = [para(line, kind.body, after=kind.gap * 0.4) for line in text.told]
        if not text.answers:
            return [*blocks, para(words.fixed("sheet.saw-none"), kind.body)]
        blocks.append(para(words.fixed("sheet.saw"), kind.body, after=kind.gap * 0.4))
        shown = text.answers[: self.room.answers]
        blocks += [dot(answer, kind) for answer in shown]
        left = len(text.answers) - len(shown)
        if left:
            blocks.append(para(words.fixed("sheet.more-answers", count=str(left)), kind.soft))
        return blocks

    def _contacts(self) -> list[Block]:
        kind = self.type
        blocks: list[Block] = [contact_para(one, kind) for one in self.text.contacts]
        return blocks + [para(note, kind.body, after=kind.gap * 0.4) for note in self.text.contact_notes]

    def _sources(self) -> list[Block]:
        kind = self.type
        lines: list[Block] = [para(line, kind.small, after=0.2) for line in self._source_lines()]
        return [*lines, para(self.text.limits, kind.small, after=0.0)]

    def _source_lines(self) -> tuple[str, ...]:
        """A line each, or in little room two paragraphs, one for each column."""
        text = self.text
        if self.room.full_sources:
            return text.sources
        half = (len(text.short_sources) + 1) // 2
        halves = (text.short_sources[:half], text.short_sources[half:])
        return tuple(" ".join(f"{line}." for line in some) for some in halves if some)

    def _section(self, head: str, blocks: Sequence[Block], columns: int = 1) -> Section:
        title = para(self.words.fixed(f"sheet.head.{head}"), self.type.head, Role.HEAD, after=0.0)
        return Section(title, tuple(blocks), columns=columns)
