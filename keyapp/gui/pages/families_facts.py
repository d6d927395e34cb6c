"""What the descriptions say of a kind besides its looks: names, season, places, signs, marks, sources."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.browse import (
    Kind,
    Often,
    Telling,
    in_season,
    kind_of,
    makers,
    occurrence_known,
    often_where,
    signs,
    telling,
    usual_spots,
)
from keyapp.gui.pages.families_part import Part
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.season_strip import SeasonStrip
from keyapp.gui.widgets.texts import label, panel, rule
from keyapp.gui.widgets.tiles import Tiles
from keyapp.model.source import Basis
from keyapp.wording import basis_levels, basis_line, season_line, source_lines

if TYPE_CHECKING:
    from keyapp.gui.pages.page import Page

__all__ = ["FactsPart"]


class FactsPart(Part):
    """The lower part of the page of a kind."""

    def __init__(self, page: Page) -> None:
        super().__init__(page)
        self.kind: Kind = kind_of(self.tables, self.browsing.place.kind)
        self.taxa = [self.keyset.taxa[taxon] for taxon in self.kind.taxa]
        self.first = self.taxa[0]

    def terms(self, text: str, name: str, role: str = "") -> QWidget:
        """A text with its terms; one that is opened here stays closed on the page of another kind."""
        return super().terms(text, f"{self.kind.id}-{name}", role)

    # Names ---------------------------------------------------------------------------------------

    def add_names(self) -> None:
        """What it is called, rightly and loosely, and what it is wrongly called, set straight."""
        common = dict.fromkeys(n for t in self.taxa for some in t.common_names.values() for n in some)
        popular = dict.fromkeys(n for t in self.taxa for n in t.popular_names)
        wrong = {one.said: one for t in self.taxa for one in t.misnames}
        if not (common or popular or wrong):
            return
        frame, inside = self._panel("names-head")
        if common:
            inside.addWidget(label(self.say("names-common", names=self.words.listing(list(common)))))
        if popular:
            inside.addWidget(label(self.say("names-popular", names=self.words.listing(list(popular)))))
        if wrong:
            inside.addWidget(rule())
            inside.addWidget(label(self.say("names-wrong"), "strong"))
        for at, one in enumerate(wrong.values()):
            if at:
                inside.addSpacing(SPACE.small)
            inside.addWidget(label(self.say("said", said=one.said), "strong"))
            inside.addWidget(self.terms(one.fact.say(self.language), f"misname-{at}"))
            inside.addWidget(self._levels(one.basis))
        self._add_sources(inside, [(one.said, one.basis) for one in wrong.values()], "names")
        self.page.body.addWidget(frame)

    # Season and place ----------------------------------------------------------------------------

    def add_season(self) -> None:
        """When and where it is met, in a strip and in words; never that it cannot be met."""
        region = self.session.case.settings.region
        months = in_season(self.tables, self.kind, region)
        said = season_line(self.words, months, of_region=region is not None)
        frame, inside = self._panel("season-head")
        names = [self.words.fixed(f"month.{month}") for month in range(1, 13)]
        inside.addWidget(SeasonStrip(self.kit, names, months, said))
        inside.addWidget(label(said))
        for at, text in enumerate(dict.fromkeys(t.season.say(self.language) for t in self.taxa if t.season)):
            inside.addWidget(self.terms(text, f"season-{at}"))
        inside.addWidget(rule())
        inside.addWidget(label(self.say("where-head"), "head"))
        for line in self._where():
            inside.addWidget(label(line))
        spots = [self.keyset.spots[spot].label.say(self.language) for spot in usual_spots(self.tables, self.kind)]
        if spots:
            inside.addWidget(label(self.say("spots", names="; ".join(spots))))
        inside.addWidget(label(self.say("where-note"), "soft"))
        self.page.body.addWidget(frame)

    def _where(self) -> list[str]:
        if not occurrence_known(self.tables, self.kind):
            return [self.say("where-none")]
        found: dict[Often, list[str]] = {}
        for region in self.keyset.regions.values():
            if not region.part_of:
                often = often_where(self.tables, self.kind, region.id)
                found.setdefault(often, []).append(region.name.say(self.language))
        return [self.say(f"often.{one}", names=self.words.listing(found[one])) for one in Often if one in found]

    # The garden, signs ---------------------------------------------------------------------------

    def add_garden(self) -> None:
        """What it does in the garden."""
        said = {t.garden.says.say(self.language): t.garden for t in self.taxa if t.garden is not None}
        if not said:
            return
        frame, inside = self._panel("garden-head")
        for at, (text, statement) in enumerate(said.items()):
            inside.addWidget(self.terms(text, f"garden-{at}"))
            inside.addWidget(self._levels(statement.basis))
        self._add_sources(inside, [(text, statement.basis) for text, statement in said.items()], "garden")
        self.page.body.addWidget(frame)

    def add_relations(self) -> None:
        """The signs it leaves, or for a sign what makes it."""
        for entry, name, found in (
            ("signs-head", "sign", signs(self.tables, self.kind)),
            ("makers-head", "maker", makers(self.tables, self.kind)),
        ):
            if found:
                self.page.body.addWidget(label(self.say(entry), "head"))
                cards: list[QWidget] = [self.card(one, (), name) for one in found]
                self.page.body.addWidget(Tiles(cards, SPACE.list_width + SPACE.thumb))

    # Marks, sources ------------------------------------------------------------------------------

    def add_marks(self) -> None:
        """The marks that few others show, with their figures, on request."""

        def body(held: QVBoxLayout) -> None:
            held.addWidget(label(self.say("marks-note"), "soft"))
            marks = [self._mark(one) for one in telling(self.tables, self.kind)]
            held.addWidget(Tiles(marks, SPACE.label_width))

        self.page.body.addWidget(Fold(self.kit, self.session, "families-marks", self.say("marks-head"), body))

    def _mark(self, one: Telling) -> QWidget:
        character = self.keyset.characters[one.character]
        state = character.state(one.state)
        made = QWidget()
        inside = QVBoxLayout(made)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.tiny)
        text = state.label.say(self.language)
        inside.addWidget(self.figure(state.figure, SPACE.portrait, text, f"figure-mark-{one.character}"))
        inside.addWidget(label(character.question.say(self.language), "small"))
        inside.addWidget(label(text, "strong"))
        inside.addWidget(self.terms(state.means.say(self.language), f"mark-{one.character}"))
        return made

    def add_basis(self) -> None:
        """How well founded it is, and the sources on request."""
        frame, inside = self._panel("basis-head")
        inside.addWidget(label(basis_line(self.words, self.taxa)))
        lines = source_lines(self.words, self.taxa)

        def body(held: QVBoxLayout) -> None:
            for line in lines:
                held.addWidget(label(line, "small"))

        if lines:
            title = self.words.fixed("sheet.head.sources")
            inside.addWidget(Fold(self.kit, self.session, "families-sources", title, body))
        self.page.body.addWidget(frame)

    def _levels(self, basis: Basis) -> QWidget:
        """How well founded a statement is, without its sources."""
        levels = basis_levels(self.words, [basis])
        return label(self.say("source", source=self.words.listing(levels)), "small")

    def _add_sources(self, inside: QVBoxLayout, statements: Sequence[tuple[str, Basis]], name: str) -> None:
        """The published sources of statements, on request."""
        published = [(text, basis) for text, basis in statements if any(one in self.keyset.sources for one in basis)]

        def body(held: QVBoxLayout) -> None:
            for text, basis in published:
                held.addWidget(label(text, "small"))
                held.addWidget(label(self.say("source", source=self.words.basis(basis)), "small"))
                held.addSpacing(SPACE.tiny)

        if published:
            title = self.words.fixed("sheet.head.sources")
            inside.addWidget(Fold(self.kit, self.session, f"families-{name}-sources", title, body))

    def _panel(self, entry: str) -> tuple[QWidget, QVBoxLayout]:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName(f"families-{entry}")
        inside.addWidget(label(self.say(entry), "head"))
        return frame, inside
