"""The two leads of a couplet as large picture cards, and the two ways out beneath them."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from keyapp.gui.first_page import FirstPage
from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.choices import Option, Picks
from keyapp.model import Choice

__all__ = ["CHOICES", "LeadCards"]

CHOICES = (Choice.FIRST, Choice.SECOND, Choice.CANT_TELL, Choice.NEITHER)
"""In the order in which they stand on the page."""


class LeadCards(QWidget):
    """One group: arrows pick and go round, Return calls `on_return`. `notes` says what the ways out mean."""

    def __init__(
        self,
        kit: Kit,
        page: FirstPage,
        picked: Choice | None,
        on_pick: Callable[[Choice], None],
        on_return: Callable[[], None],
        *,
        notes: bool = True,
    ) -> None:
        super().__init__()
        self.setAccessibleName(page.asks)
        picture = _tr("Picture:")
        self._options = [
            Option(
                kit,
                lead.says,
                f"lead-{choice}",
                figure=lead.figure,
                side=SPACE.figure,
                tall=True,
                says=f"{lead.says} {picture} {lead.alt}" if lead.alt else lead.says,
            )
            for lead, choice in zip(page.leads, CHOICES[:2], strict=True)
        ]
        means = (
            _tr("Not seen, or not from this side. Both ways stay open."),
            _tr("Seen well, and it is neither of the two."),
        )
        self._options += [
            Option(kit, text[:1].upper() + text[1:], f"lead-{choice}", note=note if notes else "")
            for text, choice, note in zip((page.cant_tell, page.neither), CHOICES[2:], means, strict=True)
        ]
        self._cards = QHBoxLayout()
        self._cards.setSpacing(SPACE.medium)
        ways = QHBoxLayout()
        ways.setSpacing(SPACE.medium)
        for card in self._options[:2]:
            self._cards.addWidget(card, 1)
        for way in self._options[2:]:
            ways.addWidget(way, 1)
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        inside.addLayout(self._cards)
        inside.addLayout(ways)
        at = CHOICES.index(picked) if picked is not None else None
        self.first = f"lead-{CHOICES[at or 0]}"
        self._picks = Picks(self, self._options, lambda i: on_pick(CHOICES[i]), on_return, at)

    def choose(self, choice: Choice) -> None:
        """Show this one as picked, without telling anyone."""
        self._picks.choose(CHOICES.index(choice))

    def fit(self, width: int, height: int, share: float = 0.3) -> None:
        """Cards side by side where a page of this size has room; figures as large as it lets them be.

        `share` is the part of the height that a figure may take.
        """
        room = min(width, SPACE.column) - 2 * SPACE.wide
        is_narrow = room < 2 * SPACE.list_width
        way = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        self._cards.setDirection(way)
        each = room if is_narrow else (room - SPACE.medium) // 2
        side = min(SPACE.figure, each - 2 * SPACE.wide, max(SPACE.portrait, round(height * share)))
        for option in self._options[:2]:
            if option.figure_view is not None:
                option.figure_view.set_side(max(SPACE.thumb, side))


def _tr(text: str) -> str:
    return QCoreApplication.translate("Leads", text)
