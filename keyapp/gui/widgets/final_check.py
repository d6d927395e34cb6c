"""The final check: a result held against the animal. Does this fit?"""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.beside import Beside
from keyapp.gui.widgets.candidates import fit_card
from keyapp.gui.widgets.texts import button, label, panel, row, rule, with_symbol
from keyapp.model import Taxon
from keyapp.wording.check import part_lines, part_of

__all__ = ["final_check"]


def final_check(kit: Kit, session: Session, taxon: Taxon) -> QWidget:
    """Picture and diagnosis of the result, and the question; "not quite" asks for the part."""
    words, check = session.words, session.case.check
    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName("final-check")
    inside.addWidget(label(words.fixed("check.ask"), "head"))
    inside.addWidget(label(words.fixed("check.ask-why"), "soft"))
    shown = session.keyset.taxa.get(check.taxon, taxon) if check is not None else taxon
    inside.addWidget(fit_card(kit, session, shown))
    if session.is_checking:
        _ask_part(session, inside, taxon)
    elif check is None:
        asks, fits, misfits = (words.fixed(f"check.{part}") for part in ("ask", "yes", "no"))
        yes = button(fits, "check-yes", says=f"{asks} {fits}")
        yes.clicked.connect(lambda: session.say_fits(taxon.id))
        no = button(misfits, "check-no", says=f"{asks} {misfits}")
        no.clicked.connect(lambda: session.ask_part(True))
        inside.addLayout(row(yes, no, None, gap=SPACE.medium))
    else:
        _said(kit, session, inside, shown)
    return frame


def _ask_part(session: Session, inside: QVBoxLayout, taxon: Taxon) -> None:
    """Every part that can be seen, with what it should be."""
    words = session.words
    inside.addWidget(label(words.fixed("check.which"), "strong"))
    for at, (part, text) in enumerate(part_lines(words, session.reading, taxon)):
        if at:
            inside.addWidget(rule())
        misfits = words.fixed("check.no")
        made = button(misfits, f"part-{part}" if at else "part-first", says=f"{misfits}: {text}")
        made.clicked.connect(lambda _=False, p=part: session.say_part(taxon.id, p))
        inside.addWidget(Beside(label(text), (made,), SPACE.label_width))
    other = button(words.fixed("check.other"), "part-other")
    other.clicked.connect(lambda: session.say_part(taxon.id, ""))
    back = button(words.fixed("check.redo"), "check-back", "plain")
    back.clicked.connect(lambda: session.ask_part(False))
    inside.addLayout(row(other, back, None))


def _said(kit: Kit, session: Session, inside: QVBoxLayout, taxon: Taxon) -> None:
    words, check = session.words, session.case.check
    assert check is not None
    again = button(words.fixed("check.redo"), "check-redo", "plain")
    again.clicked.connect(session.check_anew)
    if check.fits:
        inside.addLayout(with_symbol(kit, "check", words.fixed("check.said-yes"), "strong"))
        inside.addLayout(row(again, None))
        return
    said = words.fixed("check.said-no", part=part_of(words, taxon, check.part))
    inside.addLayout(with_symbol(kit, "warning", said, "strong"))
    part = check.part
    if not part:
        inside.addLayout(row(again, None))
        return
    ask = button(words.fixed("check.again"), "check-ask", "primary", says=f"{words.fixed('check.again')}: {said}")
    ask.clicked.connect(lambda: session.ask(part))
    inside.addLayout(row(ask, again, None))
