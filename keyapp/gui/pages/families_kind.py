"""The page of one kind or sign: what the descriptions say, cautions first."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.browse import Kind, kind_of
from keyapp.engine import feared_of
from keyapp.gui.browsing import MOST_COMPARED
from keyapp.gui.pages.families_facts import FactsPart
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.cautions import add_sources
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.texts import button, label, panel, row, rule, symbol, with_symbol
from keyapp.gui.widgets.tiles import Tiles
from keyapp.model import Caution, Character, LookAlike, Taxon
from keyapp.wording import dated_line, science_line, size_line

__all__ = ["KindPart"]


class KindPart(FactsPart):
    """At this door nothing is identified: no advice but to leave it, and that of a medically important group."""

    first_focus = "families-back"

    def build(self) -> None:
        body = self.page.body
        body.addLayout(with_symbol(self.kit, "info", self.say("kind-where"), "soft", "soft"))
        body.addWidget(label(self.title(self.kind), "title"))
        body.addWidget(label(science_line(self.first), "science"))
        body.addWidget(self._cautions())
        body.addWidget(self._what_to_do())
        self._add_footer()
        self.page.later(
            self._add_looks,
            self._add_look_alikes,
            self.add_names,
            self.add_season,
            self.add_garden,
            self.add_relations,
            self.add_marks,
            self.add_basis,
            lambda: body.addStretch(1),
        )

    # Cautions first ------------------------------------------------------------------------------

    def _cautions(self) -> QWidget:
        is_gated = self.kind.gated
        frame, inside = panel("danger" if is_gated else "card", SPACE.small, SPACE.large)
        frame.setObjectName("families-cautions")
        role, tone = ("signal", "signal") if is_gated else ("strong", "ink")
        icon = "warning" if is_gated else "info"
        inside.addLayout(with_symbol(self.kit, icon, self.say(f"danger.{self.kind.danger}"), role, tone))
        inside.addWidget(label(self.say("cautions-head"), "head"))
        cautions = self._every("cautions")
        self._add_dated(inside, cautions, "caution")
        if not cautions:
            inside.addWidget(label(self.words.fixed("no-review")))
        inside.addLayout(with_symbol(self.kit, "aid", self.say("any-bite"), "strong"))
        add_sources(self.kit, self.session, inside, cautions, "families-caution-sources", self.say("sources-dates"))
        return frame

    def _what_to_do(self) -> QWidget:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("families-do")
        inside.addWidget(label(self.say("do-head"), "head"))
        inside.addLayout(with_symbol(self.kit, "warning", self.say("do-unknown"), "lead"))
        inside.addWidget(label(self.say("do-unknown-why"), "soft"))
        # Advice of other kinds may say to move it, which is for an animal that is identified.
        advice = self._every("advice") if self.kind.gated else []
        if advice:
            inside.addWidget(label(self.say("do-gated"), "strong"))
        self._add_dated(inside, advice, "advice")
        add_sources(self.kit, self.session, inside, advice, "families-advice-sources", self.say("sources-dates"))
        return frame

    def _every(self, name: str) -> list[Caution]:
        """The statements of all its stages, each once: two that say the same are one."""
        said: dict[str, Caution] = {}
        for taxon in self.taxa:
            for one in getattr(taxon, name):
                said.setdefault(one.says.say(self.language), one)
        return list(said.values())

    def _add_dated(self, inside: QVBoxLayout, cautions: list[Caution], name: str) -> None:
        for at, caution in enumerate(cautions):
            line = row(symbol(self.kit, "dot", "soft"))
            line.addWidget(self.terms(caution.says.say(self.language), f"{name}-{at}"), 1)
            inside.addLayout(line)
        dated = dated_line(self.words, cautions, datetime.date.today())
        if dated:
            inside.addWidget(label(dated, "small"))

    # What it looks like --------------------------------------------------------------------------

    def _add_looks(self) -> None:
        frame, inside = panel("card", SPACE.medium, SPACE.large)
        frame.setObjectName("families-looks")
        inside.addWidget(label(self.say("looks-head" if len(self.taxa) == 1 else "stages"), "head"))
        # Two side by side, or three a little smaller.
        side = SPACE.figure if len(self.taxa) < 3 else SPACE.figure - SPACE.huge
        inside.addWidget(Tiles([self._stage(taxon, side) for taxon in self.taxa], side, SPACE.wide))
        self.page.body.addWidget(frame)

    def _stage(self, taxon: Taxon, side: int) -> QWidget:
        made = QWidget()
        inside = QVBoxLayout(made)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        title = taxon.title.say(self.language)
        inside.addLayout(row(self.figure(taxon.figure, side, title, f"figure-{taxon.id}"), None))
        if len(self.taxa) > 1:
            inside.addWidget(label(title, "strong"))
        stage = taxon.stage.say(self.language)
        if stage:
            inside.addWidget(label(stage[:1].upper() + stage[1:], "small"))
        inside.addWidget(self.terms(taxon.diagnosis.say(self.language), f"diagnosis-{taxon.id}"))
        return made

    # Look-alikes ---------------------------------------------------------------------------------

    def _add_look_alikes(self) -> None:
        pairs = list(self._pairs())
        if not pairs:
            return
        self.page.body.addWidget(label(self.say("alike-head"), "head"))
        self.page.body.addWidget(label(self.say("alike-note"), "soft"))
        for other, looks in pairs:
            self.page.body.addWidget(self._look_alike(other, looks))

    def _pairs(self) -> Iterator[tuple[Kind, list[tuple[Taxon, Taxon, LookAlike]]]]:
        """Each kind it is mixed up with, and what tells them apart: this one's result, the other's, and how."""
        found: dict[str, list[tuple[Taxon, Taxon, LookAlike]]] = {}
        for taxon in self.keyset.taxa.values():
            for look in taxon.look_alikes:
                other = self.keyset.taxa[look.taxon]
                one, two = (taxon, other) if taxon.id in self.kind.taxa else (other, taxon)
                is_pair = one.id in self.kind.taxa and two.id not in self.kind.taxa
                known = found.setdefault(kind_of(self.tables, two.id).id, []) if is_pair else None
                if known is not None and all(look.character != before.character for _, _, before in known):
                    known.append((one, two, look))
        others = sorted(self.kinds_of(list(found)), key=lambda kind: not kind.gated)
        return ((kind, found[kind.id]) for kind in others)

    def _look_alike(self, other: Kind, looks: list[tuple[Taxon, Taxon, LookAlike]]) -> QWidget:
        frame, inside = panel("danger" if other.gated else "card", SPACE.small, SPACE.large)
        frame.setObjectName(f"alike-{other.id}")
        title = self.title(other)
        inside.addWidget(label(title, "head"))
        opens = button(self.say("alike-open"), f"alike-open-{other.id}", says=self.say("open", name=title))
        opens.clicked.connect(lambda: self.browsing.open(other.id))
        both = button(
            self.say("alike-compare"), f"alike-compare-{other.id}", says=self.say("alike-compare-says", name=title)
        )
        both.clicked.connect(lambda: self.browsing.compare(self.kind.id, other.id))
        for text, role, icon in self.danger_lines(other):
            inside.addLayout(with_symbol(self.kit, icon, text, role, "signal"))
        self._add_difference(inside, *looks[0])

        def more(held: QVBoxLayout) -> None:
            for at, difference in enumerate(looks[1:]):
                if at:
                    held.addWidget(rule())
                self._add_difference(held, *difference)

        if looks[1:]:
            text = self.say("alike-more", count=str(len(looks) - 1))
            inside.addWidget(Fold(self.kit, self.session, f"families-alike-{other.id}", text, more))
        inside.addLayout(row(opens, both, None))
        return frame

    def _add_difference(self, inside: QVBoxLayout, one: Taxon, two: Taxon, look: LookAlike) -> None:
        character = self.keyset.characters.get(look.character)
        name = f"{one.id}-{two.id}-{look.character}"
        inside.addWidget(self.terms(look.difference.say(self.language), f"difference-{name}"))
        if character is None:
            return
        inside.addWidget(label(character.question.say(self.language), "small"))
        shown = [self._shows(taxon, character, f"{name}-{taxon.id}") for taxon in (one, two)]
        inside.addWidget(Tiles(shown, SPACE.label_width))

    def _shows(self, taxon: Taxon, character: Character, name: str) -> QWidget:
        made = QWidget()
        inside = QVBoxLayout(made)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.tiny)
        inside.addWidget(label(taxon.title.say(self.language), "strong"))
        shown = taxon.shows.get(character.id)
        if shown:
            state = character.state(max(shown, key=lambda one: shown[one]))
            text = state.label.say(self.language)
            inside.addWidget(self.figure(state.figure, SPACE.portrait, text, f"figure-{name}"))
            inside.addWidget(label(text))
        elif character.id in taxon.sizes:
            inside.addWidget(label(size_line(self.words, taxon.sizes[character.id])))
        else:
            title = taxon.title.say(self.language)
            inside.addWidget(self.figure(taxon.figure, SPACE.portrait, title, f"figure-{name}"))
        return made

    # The ways on ---------------------------------------------------------------------------------

    def _add_footer(self) -> None:
        footer, title = self.page.footer, self.title(self.kind)
        footer.addWidget(self.back_button())
        footer.addStretch(1)
        if not self.kind.outside:
            asks = button(self.say("is-it-this"), "families-feared", says=self.say("is-it", name=title))
            asks.clicked.connect(self._on_feared)
            footer.addWidget(asks)
        picked = self.browsing.picked
        others = [one for one in picked if one != self.kind.id][: MOST_COMPARED - 1]
        compares = button(self.say("pick"), "families-compare", says=self.say("pick-says", name=title))
        compares.clicked.connect(lambda: self.browsing.compare(self.kind.id, *others))
        footer.addWidget(compares)
        footer.addWidget(self.work_button("primary"))

    def _on_feared(self) -> None:
        self.session.open_feared()
        self.session.fear_about(feared_of(self.tables, self.kind.id).id)
