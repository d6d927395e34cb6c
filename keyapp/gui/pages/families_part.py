"""What the parts of the page of all families have in common."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from keyapp.browse import Kind, kind_of
from keyapp.errors import ProgramError
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.asking import feared_button
from keyapp.gui.widgets.card_button import CardButton
from keyapp.gui.widgets.figure_button import FigureButton
from keyapp.gui.widgets.term_text import term_text
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol
from keyapp.wording import kind_title, science_line

if TYPE_CHECKING:
    from keyapp.gui.pages.page import Page

__all__ = ["Line", "Part"]

Line = tuple[str, str, str]
"""A text, the role it is shown in, and the symbol before it or nothing."""


class Part:
    """Fills the column of a page. `first_focus` is where one starts on it."""

    first_focus = ""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.session = page.session
        self.kit = page.kit
        self.words = page.session.words
        self.tables = page.session.tables
        self.keyset = page.session.keyset
        self.language = page.session.language
        self.browsing = page.session.browsing

    def build(self) -> None:
        """Fill the column and the footer."""
        raise ProgramError(f"{type(self).__name__} fills nothing")

    def follow(self) -> bool:
        """Follow what has changed without drawing all anew; False where that is not enough."""
        return False

    # Parts that several of them show -------------------------------------------------------------

    def say(self, entry: str, /, **parts: str) -> str:
        """A fixed sentence of these pages."""
        return self.words.fixed(f"families.{entry}", **parts)

    def title(self, kind: Kind) -> str:
        """What a kind is called."""
        return kind_title(self.words, kind.id)

    def terms(self, text: str, name: str, role: str = "") -> QWidget:
        """A text of the key with its terms to be opened."""
        return term_text(self.kit, self.session, text, name, role)

    def figure(self, figure: str, side: int, says: str, name: str) -> FigureButton:
        """A figure to be enlarged; what it shows is told by its own alt text, or by `says`."""
        alt = self.kit.figures.alt(figure, self.language) or says
        return FigureButton(self.kit, self.session, figure, side, alt, name)

    def limits(self) -> QFrame:
        """That looking up is not identifying, with the ways on."""
        frame, inside = panel("card", SPACE.small, SPACE.medium)
        frame.setObjectName("limits")
        inside.addLayout(with_symbol(self.kit, "info", self.say("limits"), "strong", "soft"))
        inside.addWidget(label(self.say("limits-why"), "soft"))
        inside.addLayout(row(self.work_button(), feared_button(self.session), None))
        return frame

    def work_button(self, role: str = "") -> QPushButton:
        """The way to *Work it out*."""
        work = button(self.say("work-out"), "families-work", role)
        work.clicked.connect(self.session.leave_families)
        return work

    def back_button(self) -> QPushButton:
        """The way back to where one was on this page."""
        back = button(self.say("back"), "families-back")
        back.clicked.connect(self.browsing.go_back)
        return back

    def danger_lines(self, kind: Kind) -> list[Line]:
        """The medical importance of a kind, with a symbol where it is gated."""
        text = self.say(f"danger.{kind.danger}")
        return [(text, "signal-small", "warning")] if kind.gated else []

    def card(self, kind: Kind, lines: Sequence[Line], name: str = "open") -> CardButton:
        """A kind as a card that leads to its page."""
        taxon = self.keyset.taxa[kind.id]
        title = self.title(kind)
        science: Line = (" · ".join(science_line(taxon).split(" · ")[:2]), "science", "")
        return CardButton(
            self.kit,
            f"{name}-{kind.id}",
            title,
            [science, *lines, *self.danger_lines(kind)],
            taxon.figure,
            lambda: self.browsing.open(kind.id),
            says=self.say("open", name=title),
        )

    def kinds_of(self, ids: Sequence[str]) -> list[Kind]:
        """The kinds with these ids."""
        return [kind_of(self.tables, one) for one in ids]

    @staticmethod
    def hold(inside: QVBoxLayout, *parts: QWidget) -> None:
        """Put parts into a column."""
        for part in parts:
            inside.addWidget(part)
