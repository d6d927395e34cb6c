"""Pages written as PDF; the only module that knows the PDF library."""

from __future__ import annotations

import datetime
import io
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from fpdf import FPDF
from fpdf.enums import RenderStyle

from keyapp.sheets.items import Box, Drawing, Item, Mark, Page, Role, Rule, Sign, Words
from keyapp.sheets.letters import FONT_FILES
from keyapp.sheets.paper import Frame
from keyapp.sheets.style import COLOURS, Style

__all__ = ["Particulars", "pdf_of"]


@dataclass(frozen=True, slots=True)
class Particulars:
    """What a file says of itself: title, author, language (ISO 639-1), and the day it is dated."""

    title: str
    author: str
    language: str
    date: datetime.date


def pdf_of(pages: Sequence[Page], frame: Frame, particulars: Particulars, figures: Mapping[str, bytes]) -> bytes:
    """Pages as PDF, the same for the same input.

    Letters stay text, in embedded typefaces; figures (SVG by id) stay vectors with their alt text; titles,
    heads and paragraphs are tagged in the order they are read, and heads are bookmarks.
    """
    writer = _Writer(frame, particulars, figures)
    for page in pages:
        writer.put_page(page)
    return writer.finished()


class _Writer:
    def __init__(self, frame: Frame, particulars: Particulars, figures: Mapping[str, bytes]) -> None:
        pdf = FPDF(unit="mm", format=(frame.width, frame.height))
        pdf.set_auto_page_break(False)
        pdf.set_margin(0)
        for face, path in FONT_FILES.items():
            pdf.add_font(face.value, fname=path)
        pdf.set_title(particulars.title)
        pdf.set_author(particulars.author)
        pdf.set_lang(particulars.language)
        pdf.set_creator("keyapp")
        # The day alone: the same sheet is the same file whenever it is printed.
        pdf.set_creation_date(datetime.datetime.combine(particulars.date, datetime.time(), datetime.UTC))
        pdf.set_display_mode("fullpage")
        self._pdf = pdf
        self._figures = figures

    def put_page(self, page: Page) -> None:
        self._pdf.add_page()
        for item in page:
            self._put(item)

    def finished(self) -> bytes:
        return bytes(self._pdf.output())

    def _put(self, item: Item) -> None:
        if isinstance(item, Words):
            with self._tagged(item):
                for number, line in enumerate(item.lines, start=1):
                    for piece in line.pieces:
                        # A space ends each line but the last, or words would run together when read out.
                        ends = piece is line.pieces[-1] and number < len(item.lines)
                        text = f"{piece.text} " if ends else piece.text
                        self._write(line.x + piece.at, line.base, text, piece.style)
            return
        if isinstance(item, Drawing):
            svg = io.BytesIO(self._figures[item.figure])
            self._pdf.image(svg, item.x, item.y, item.side, item.side, alt_text=item.alt)
            return
        with self._artifact():
            if isinstance(item, Box):
                self._pdf.set_line_width(0.35)
                self._pdf.set_draw_color(COLOURS[item.edge])
                self._pdf.set_fill_color(COLOURS[item.fill])
                style = RenderStyle.DF
                self._pdf.rect(item.x, item.y, item.width, item.height, style, round_corners=True, corner_radius=1.6)
            elif isinstance(item, Rule):
                self._pdf.set_line_width(item.weight)
                self._pdf.set_draw_color(COLOURS[item.colour])
                self._pdf.line(item.x, item.y, item.x + item.width, item.y)
            else:
                self._mark(item)

    def _write(self, x: float, base: float, text: str, style: Style) -> None:
        self._pdf.set_font(style.face.value, size=style.size)
        self._pdf.set_text_color(COLOURS[style.colour])
        self._pdf.text(x, base, text)

    def _mark(self, mark: Mark) -> None:
        pdf, x, y, side = self._pdf, mark.x, mark.y, mark.side
        pdf.set_fill_color(COLOURS[mark.colour])
        if mark.sign is Sign.DOT:
            pdf.ellipse(x, y, side, side, RenderStyle.F)
            return
        pdf.polygon([(x + side / 2, y), (x + side, y + side * 0.92), (x, y + side * 0.92)], style=RenderStyle.F)
        pdf.set_fill_color(255)
        middle = x + side / 2
        pdf.polygon(
            [
                (middle - side * 0.07, y + side * 0.3),
                (middle + side * 0.07, y + side * 0.3),
                (middle + side * 0.045, y + side * 0.62),
                (middle - side * 0.045, y + side * 0.62),
            ],
            style=RenderStyle.F,
        )
        pdf.ellipse(middle - side * 0.06, y + side * 0.69, side * 0.12, side * 0.12, RenderStyle.F)

    @contextmanager
    def _tagged(self, words: Words) -> Iterator[None]:
        """Mark a paragraph for what it is. The library tags figures alone, so text is tagged here, by its means."""
        pdf = self._pdf
        if words.role is Role.FOOT:
            with self._artifact():
                yield
            return
        if words.role is Role.HEAD:
            pdf.set_xy(words.bounds[0], words.bounds[1])
            pdf.start_section(words.text)
        mark = pdf.struct_builder.next_mcid_for_page(pdf.page)
        pdf._add_marked_content(struct_type=f"/{words.role.value}", mcid=mark)
        pdf._out(f"/{words.role.value} <</MCID {mark}>> BDC")
        yield
        pdf._out("EMC")

    @contextmanager
    def _artifact(self) -> Iterator[None]:
        """Mark what is only there to be seen."""
        self._pdf._out("/Artifact BMC")
        yield
        self._pdf._out("EMC")
