"""The first question: is anyone hurt?"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QProgressBar

from keyapp.gui.pages.page import Page
from keyapp.gui.session import Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.offer import offer_panel
from keyapp.gui.widgets.texts import button, column, label, panel, row

__all__ = ["StartPage"]


_EMBLEMS = ("jumping-spider", "garden-orb", "wolf-spider")
"""Figures that may stand on this page, the first there is."""


class StartPage(Page):
    """Works before the key is open: a person hurt does not wait for files."""

    stage = Stage.HURT
    first_focus = "hurt-no"

    def build(self) -> None:
        body = self.body
        body.addSpacing(SPACE.wide)
        offer = offer_panel(self.kit, self.session)
        if offer is not None:
            body.addWidget(offer)
            body.addSpacing(SPACE.medium)
        body.addWidget(label(self.tr("First, the people"), "small"))
        body.addWidget(label(self.tr("Has anyone been bitten, stung or become unwell?"), "title"))
        body.addWidget(label(self.tr("A person comes before an animal. A pet counts too: call a vet."), "soft"))
        yes = button(
            self.tr("Yes, or not sure"),
            "hurt-yes",
            "danger",
            icon=self.kit.look.icon("aid", "signal"),
            says=self.tr("Yes, or not sure: someone may be bitten, stung or unwell"),
        )
        yes.clicked.connect(lambda: self.session.set_hurt(True))
        no = button(self.tr("No one is hurt"), "hurt-no", "primary", says=self.tr("No one is hurt, go on"))
        no.clicked.connect(lambda: self.session.set_hurt(False))
        body.addSpacing(SPACE.small)
        body.addLayout(row(yes, no, None, gap=SPACE.medium))
        body.addSpacing(SPACE.medium)
        self._add_short()
        self._add_parked()
        body.addSpacing(SPACE.small)
        about, whole = panel("card", SPACE.small, SPACE.wide)
        inside = column(SPACE.small)
        across = QHBoxLayout()
        across.setSpacing(SPACE.wide)
        across.addLayout(inside, 1)
        whole.addLayout(across)
        emblem = next((one for one in _EMBLEMS if self.kit.figures.has(one)), "")
        if emblem:
            view = FigureView(self.kit, emblem, SPACE.portrait, self.tr("Ink drawing of a spider"))
            across.addWidget(view, 0, Qt.AlignmentFlag.AlignTop)
        inside.addWidget(label(self.tr("What this does"), "head"))
        for text in (
            self.tr("It asks what can be seen from a step away, two choices at a time."),
            self.tr("It ends with a family of animals, or with a few that still fit, and with whom to ask."),
            self.tr("It does not say what bit someone, and it does not replace a doctor or your extension office."),
            self.tr("Touch nothing to answer. “Can't tell” is always a good answer."),
        ):
            inside.addWidget(label(text))
        inside.addStretch(1)
        body.addWidget(about)
        if not self.session.is_open:
            body.addStretch(1)
            bar = QProgressBar()
            bar.setRange(0, 0)
            bar.setTextVisible(False)
            bar.setAccessibleName(self.tr("Opening the key"))
            body.addWidget(label(self.tr("Opening the key. You can answer already."), "small"))
            body.addWidget(bar)
        body.addStretch(2)

    def _add_short(self) -> None:
        """The way for someone who stands at the animal; it asks for the people first as well."""
        frame, inside = panel("card", SPACE.small, SPACE.medium)
        frame.setObjectName("short-panel")
        at = button(
            self.tr("I am standing at it"),
            "short-way",
            icon=self.kit.look.icon("cup"),
            says=self.tr("I am standing at it: the short way"),
        )
        at.setToolTip(self.tr("The short way (F2)"))
        at.clicked.connect(self.session.open_short)
        why = label(self.tr("The short way: a few quick looks, then what to do. No name is needed."), "soft")
        across = row(at, why, gap=SPACE.medium)
        across.setStretch(1, 1)
        inside.addLayout(across)
        self.body.addWidget(frame)

    def _add_parked(self) -> None:
        """The way to what is put aside, where there is any."""
        count = len(self.session.parked) if self.session.is_open else 0
        if not count:
            return
        text = self.tr("Put aside: {count}").replace("{count}", str(count))
        aside = button(text, "open-parked", "plain", icon=self.kit.look.icon("parked", "accent"))
        aside.setToolTip(self.tr("Enquiries put aside (F4)"))
        aside.clicked.connect(self.session.open_parked)
        self.body.addLayout(row(aside, None))
