"""The groups of a result: one line each to compare them, one card each to hold against the animal."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from keyapp.engine import Candidate
from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.standing_strip import Bar
from keyapp.gui.widgets.texts import label, panel, row, rule, with_symbol
from keyapp.model import Taxon

__all__ = ["candidate_list", "fit_card"]


def candidate_list(kit: Kit, session: Session, candidates: tuple[Candidate, ...]) -> QWidget:
    """Every group that may be listed, likeliest first, with bar and words."""
    frame, inside = panel("card", SPACE.medium, SPACE.large)
    frame.setObjectName("candidates")
    for at, candidate in enumerate(candidates):
        if at:
            inside.addWidget(rule())
        inside.addLayout(_line(kit, session, candidate))
    return frame


def fit_card(kit: Kit, session: Session, taxon: Taxon) -> QWidget:
    """A large picture and the short diagnosis of one result: does this fit?"""
    language = session.language
    frame, inside = panel("card", SPACE.small, SPACE.large)
    frame.setObjectName(f"fit-{taxon.id}")
    alt = kit.figures.alt(taxon.figure, language) or taxon.title.say(language)
    texts = QVBoxLayout()
    texts.setSpacing(SPACE.tiny)
    texts.addWidget(label(taxon.title.say(language), "head"))
    texts.addWidget(label(_science(taxon), "science"))
    stage = taxon.stage.say(language)
    if stage:
        texts.addWidget(label(stage, "small"))
    texts.addSpacing(SPACE.small)
    texts.addWidget(label(taxon.diagnosis.say(language)))
    texts.addStretch(1)
    line = QHBoxLayout()
    line.setSpacing(SPACE.large)
    line.addWidget(FigureView(kit, taxon.figure, SPACE.portrait, alt), 0, Qt.AlignmentFlag.AlignTop)
    line.addLayout(texts, 1)
    inside.addLayout(line)
    return frame


def _line(kit: Kit, session: Session, candidate: Candidate) -> QHBoxLayout:
    words, language = session.words, session.language
    name, how = words.group(candidate.group), words.chance(candidate.chance)
    taxon = session.keyset.taxa[candidate.taxa[0]] if candidate.taxa else None
    is_outside = candidate.group.level == "outside"
    texts = QVBoxLayout()
    texts.setSpacing(SPACE.hair)
    texts.addWidget(label(name[:1].upper() + name[1:], "strong"))
    if is_outside:
        texts.addWidget(label(_tr("What such an animal does is not known here."), "small"))
    elif taxon is not None:
        texts.addWidget(label(taxon.title.say(language), "small"))
    dangers = {one.group for one in session.reading.not_ruled_out}
    if candidate.group.level == "danger" and candidate.group.name in dangers:
        mark = _tr("Medically important and not ruled out")
        texts.addLayout(with_symbol(kit, "warning", mark, "signal-small", "signal"))
    texts.addStretch(1)
    line = QHBoxLayout()
    line.setSpacing(SPACE.large)
    figure = taxon.figure if taxon is not None and not is_outside else ""
    says = taxon.title.say(language) if taxon is not None else name
    alt = kit.figures.alt(figure, language) or says
    line.addWidget(FigureView(kit, figure, SPACE.thumb, alt), 0, Qt.AlignmentFlag.AlignTop)
    line.addLayout(texts, 3)
    bar = Bar(kit, candidate.chance, f"{name}: {how}")
    bar.setMaximumWidth(SPACE.list_width)
    measure = QVBoxLayout()
    measure.addLayout(row(bar))
    measure.addWidget(label(how, "soft"))
    measure.addStretch(1)
    measure.setSpacing(SPACE.hair)
    line.addLayout(measure, 2)
    return line


def _science(taxon: Taxon) -> str:
    wider = [one for one in (taxon.family, taxon.order) if one and one != taxon.name]
    return " · ".join([taxon.name, *wider])


def _tr(text: str) -> str:
    return QCoreApplication.translate("Candidates", text)
