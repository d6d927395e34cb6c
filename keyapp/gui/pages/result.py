"""The result: what may be said, what to beware of, what to do, whom to ask."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.engine import Action, Claim
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.asking import asking_panel
from keyapp.gui.widgets.candidates import candidate_list, fit_card
from keyapp.gui.widgets.cautions import add_cautions, add_sources
from keyapp.gui.widgets.final_check import final_check
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.look_alikes import look_alike_card
from keyapp.gui.widgets.note_line import NoteLine
from keyapp.gui.widgets.print_row import PrintButton, printing_line
from keyapp.gui.widgets.proposals import answer_row, contradiction_panel, go_back_panel
from keyapp.gui.widgets.referral import referral_panel
from keyapp.gui.widgets.safety_panel import safety_panel
from keyapp.gui.widgets.standing_strip import standing_fold
from keyapp.gui.widgets.texts import button, label, panel, row, with_symbol
from keyapp.gui.widgets.told_card import told_card
from keyapp.gui.widgets.trail import Trail
from keyapp.model import Answer, Taxon
from keyapp.wording import taxa_called

__all__ = ["ResultPage"]


_FITS = 3
"""Results whose diagnosis is shown in full."""


class ResultPage(Page):
    """Shown at the end, and at any time before it. Nothing reassuring stands above a second look."""

    stage = Stage.RESULT
    first_focus = "fold-trail"

    def build(self) -> None:
        session = self.session
        if not session.is_open:
            return
        body = self.body
        body.addWidget(Trail(self.kit, session))
        if session.case.settings.hurt:
            body.addWidget(self._hurt_panel())
        body.addWidget(safety_panel(self.kit, session))
        for proposal in (contradiction_panel(self.kit, session), go_back_panel(self.kit, session)):
            if proposal is not None:
                body.addWidget(proposal)
        body.addWidget(NoteLine(self.kit, session))
        body.addWidget(printing_line(session))
        self._add_heading()
        self._add_second_look()
        self._add_candidates()
        self._add_footer()
        self.later(
            self._add_actions,
            self._add_fits,
            self._add_asking,
            self._add_referral,
            self._add_cautions,
            self._add_look_alikes,
            self._add_rest,
        )

    def _add_rest(self) -> None:
        self._add_change()
        self._add_told()
        self._add_misnames()
        self._add_garden()
        self._add_led()
        self.body.addWidget(standing_fold(self.kit, self.session))
        self.body.addStretch(1)

    # Parts, in the order of the page -------------------------------------------------------------

    def _hurt_panel(self) -> QWidget:
        frame, inside = panel("danger", SPACE.small, SPACE.medium)
        inside.addLayout(
            with_symbol(self.kit, "aid", self.tr("Someone is hurt. See to that first."), "signal", "signal")
        )
        card = button(self.tr("Open the emergency card"), "open-emergency", "danger")
        card.clicked.connect(self.session.ask_for_help)
        inside.addLayout(row(card, None))
        return frame

    def _add_heading(self) -> None:
        session, words = self.session, self.session.words
        self.body.addSpacing(SPACE.small)
        self.body.addWidget(label(words.heading(session.reading), "title"))
        if session.reading.events:
            self.body.addWidget(label(words.reason(session.reading), "soft"))
        if session.reading.current is not None:
            self.body.addWidget(label(self.tr("This is how it stands. The key has more to ask."), "soft"))

    def _add_second_look(self) -> None:
        session, words = self.session, self.session.words
        looks = session.second_look
        if not looks:
            return
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("second-look")
        together: dict[tuple[Answer, ...], list[str]] = {}
        for look in looks:
            together.setdefault(look.answers, []).append(words.danger(look.group))
        for at, (answers, names) in enumerate(together.items()):
            text = words.fixed("second-look", name=words.listing(names))
            inside.addLayout(with_symbol(self.kit, "eye", text, "strong"))
            for place, answer in enumerate(answers):
                answer_row(self.kit, session, inside, answer, f"second-look-{at}-{place}")
        self.body.addWidget(frame)

    def _add_asking(self) -> None:
        self.body.addWidget(asking_panel(self.kit, self.session))

    def _add_actions(self) -> None:
        session = self.session
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("actions")
        inside.addWidget(label(self.tr("What to do"), "head"))
        icons = {Action.KEEP_AWAY: "warning", Action.LEAVE: "check", Action.MOVE: "right"}
        for action, line, why in session.words.action_lines(session.reading):
            inside.addLayout(with_symbol(self.kit, icons[action], line, "lead"))
            said = label(why, "soft")
            said.setIndent(SPACE.icon + SPACE.small)
            inside.addWidget(said)
        advised = [a for taxon in self._advisers() for a in taxon.advice]
        if advised:
            add_cautions(self.kit, session, inside, list(dict.fromkeys(advised)))
            add_sources(self.kit, session, inside, advised, "advice-sources")
        self.body.addWidget(frame)

    def _add_referral(self) -> None:
        self.body.addWidget(referral_panel(self.kit, self.session))

    def _advisers(self) -> list[Taxon]:
        """Whose own advice may stand: a danger that is open, else the one result where moving is allowed."""
        session = self.session
        reading, taxa = session.reading, session.keyset.taxa
        if Action.KEEP_AWAY in reading.verdict.actions:
            return [taxa[one.taxa[0]] for one in reading.not_ruled_out[:1]]
        if Action.MOVE in reading.verdict.actions and reading.verdict.candidates[0].taxa:
            return [taxa[reading.verdict.candidates[0].taxa[0]]]
        return []

    def _add_candidates(self) -> None:
        session = self.session
        found = session.reading.verdict
        if not session.reading.events:
            return
        if found.claim is Claim.UNKNOWN:
            self.body.addWidget(label(self.tr("What comes closest so far, without a name:"), "soft"))
        self.body.addWidget(candidate_list(self.kit, session, found.candidates))

    def _add_fits(self) -> None:
        session = self.session
        found = session.reading.verdict
        taxa = [session.keyset.taxa[c.taxa[0]] for c in found.candidates if c.taxa]
        taxa = [taxon for taxon in taxa if not taxon.outside and taxon.diagnosis]
        if not taxa or not session.reading.events:
            return
        checked = session.case.check.taxon if session.case.check is not None else taxa[0].id
        self.body.addWidget(final_check(self.kit, session, taxa[0]))
        others = [taxon for taxon in taxa if taxon.id != checked][: _FITS - 1]
        if others:
            self.body.addWidget(label(self.tr("Hold these against it too"), "head"))
        for taxon in others:
            self.body.addWidget(fit_card(self.kit, session, taxon))

    def _add_cautions(self) -> None:
        session, words = self.session, self.session.words
        if not session.reading.events:
            return
        blocks = words.cautions(session.reading)
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("cautions")
        inside.addWidget(label(self.tr("What to beware of"), "head"))
        for title, cautions in blocks:
            inside.addWidget(label(title, "strong"))
            add_cautions(self.kit, session, inside, cautions)
        if not blocks:
            inside.addWidget(label(words.fixed("no-review")))
        add_sources(self.kit, session, inside, [c for _, some in blocks for c in some], "caution-sources")
        self.body.addWidget(frame)

    def _add_look_alikes(self) -> None:
        session = self.session
        taxon = self._first()
        if taxon is None or not taxon.look_alikes:
            return
        self.body.addWidget(label(self.tr("Look-alikes, side by side"), "head"))
        for look in taxon.look_alikes:
            other = session.keyset.taxa.get(look.taxon)
            if other is not None:
                self.body.addWidget(look_alike_card(self.kit, session, taxon, other, look))

    def _add_change(self) -> None:
        text = self.session.words.would_change(self.session.reading)
        self.body.addLayout(with_symbol(self.kit, "fork", text, "strong", "soft"))

    def _add_told(self) -> None:
        told = self.session.case.settings.told.strip()
        if told:
            self.body.addWidget(told_card(self.session, told))

    def _add_misnames(self) -> None:
        session = self.session
        told = session.case.settings.told
        ids = [c.taxa[0] for c in session.reading.verdict.candidates[:2] if c.taxa]
        ids += [t for t in taxa_called(session.keyset, told) if told.strip()]
        taxa = [session.keyset.taxa[t] for t in dict.fromkeys(ids)]
        found = [(taxon, misname) for taxon in taxa for misname in taxon.misnames]
        if not found or not session.reading.events:
            return

        def body(held: QVBoxLayout) -> None:
            for taxon, misname in found:
                said = self.tr("“{said}” ({title})").replace("{said}", misname.said)
                held.addWidget(label(said.replace("{title}", taxon.title.say(session.language)), "strong"))
                held.addWidget(label(misname.fact.say(session.language)))
                source = self.tr("Source: {source}").replace("{source}", session.words.basis(misname.basis))
                held.addWidget(label(source, "small"))

        self.body.addWidget(Fold(self.kit, session, "misnames", self.tr("Names set straight"), body))

    def _add_garden(self) -> None:
        session = self.session
        taxon = self._first()
        if taxon is None or Action.KEEP_AWAY in session.reading.verdict.actions:
            return
        garden, season = taxon.garden, taxon.season.say(session.language)
        if garden is None and not season:
            return
        frame, inside = panel("card", SPACE.small, SPACE.large)
        frame.setObjectName("garden")
        inside.addWidget(label(self.tr("In the garden"), "head"))
        if garden is not None:
            inside.addWidget(label(garden.says.say(session.language)))
            source = self.tr("Source: {source}").replace("{source}", session.words.basis(garden.basis))
            inside.addWidget(label(source, "small"))
        if season:
            inside.addWidget(label(season))
        self.body.addWidget(frame)

    def _add_led(self) -> None:
        session = self.session
        line = session.words.led_line(session.reading)
        if not line:
            return
        found = session.reading.verdict
        frame, inside = panel("card" if found.differs else "quiet", SPACE.small, SPACE.large if found.differs else 0)
        frame.setObjectName("led")
        inside.addWidget(label(line, "" if found.differs else "soft"))
        couplet_id = found.parting
        if found.differs and couplet_id is not None:
            asks = session.keyset.couplets[couplet_id].asks.say(session.language)
            ask = button(
                self.tr("Ask where they part: {asks}").replace("{asks}", asks),
                "ask-parting",
                says=self.tr("Ask the couplet where they part: ") + asks,
            )
            ask.clicked.connect(lambda: session.look_at(couplet_id))
            inside.addLayout(row(ask, None))
        self.body.addWidget(frame)

    def _add_footer(self) -> None:
        session = self.session
        again = button(self.tr("Start again"), "start-again", says=self.tr("Start again with a new enquiry"))
        again.clicked.connect(session.start_again)
        seen = button(self.tr("Report something seen"), "report-seen")
        seen.clicked.connect(lambda: session.show_stage(Stage.SEEN))
        change = button(self.tr("Change answers"), "change-answers")
        change.clicked.connect(self._on_change)
        self.footer.addWidget(again)
        self.footer.addWidget(PrintButton(self.kit, session))
        self.footer.addStretch(1)
        self.footer.addWidget(change)
        self.footer.addWidget(seen)
        if session.reading.current is not None:
            on = button(self.tr("Go on"), "go-on", "primary", says=self.tr("Go on with the key"))
            on.clicked.connect(session.go_on)
            self.footer.addWidget(on)

    def _on_change(self) -> None:
        """Open the trail, and go to it."""
        self.session.unfold("trail", True)
        trail = self.named("fold-trail")
        if trail is not None:
            trail.setFocus(Qt.FocusReason.OtherFocusReason)

    def _first(self) -> Taxon | None:
        """The likeliest result of the group in first place, where it is in the key."""
        found = self.session.reading.verdict
        if not self.session.reading.events or not found.candidates or not found.candidates[0].taxa:
            return None
        taxon = self.session.keyset.taxa[found.candidates[0].taxa[0]]
        return None if taxon.outside else taxon
