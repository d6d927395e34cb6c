"""Two results side by side on the character that separates them."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.texts import label, panel
from keyapp.model import Character, LookAlike, State, Taxon

__all__ = ["look_alike_card"]


def look_alike_card(kit: Kit, session: Session, taxon: Taxon, other: Taxon, look: LookAlike) -> QWidget:
    """Both names, what each shows of the separating character, and the difference in words."""
    language = session.language
    character = session.keyset.characters.get(look.character)
    frame, inside = panel("card", SPACE.small, SPACE.large)
    if character is not None:
        inside.addWidget(label(character.question.say(language), "small"))
    grid = QGridLayout()
    grid.setHorizontalSpacing(SPACE.wide)
    for at, one in enumerate((taxon, other)):
        grid.addWidget(label(one.title.say(language), "strong"), 0, at)
        grid.addLayout(_shown(kit, session, one, character), 1, at)
        grid.setColumnStretch(at, 1)
    inside.addLayout(grid)
    inside.addWidget(label(look.difference.say(language)))
    return frame


def _shown(kit: Kit, session: Session, taxon: Taxon, character: Character | None) -> QVBoxLayout:
    language = session.language
    held = QVBoxLayout()
    held.setSpacing(SPACE.tiny)
    state = _commonest(taxon, character)
    if state is not None:
        says = kit.figures.alt(state.figure, language) or state.label.say(language)
        held.addWidget(FigureView(kit, state.figure, SPACE.portrait, says), 0, Qt.AlignmentFlag.AlignLeft)
        held.addWidget(label(state.label.say(language)))
    elif character is not None and character.number is not None and character.id in taxon.sizes:
        size = taxon.sizes[character.id]
        text = _tr("{least} to {most} mm, grown")
        held.addWidget(label(text.replace("{least}", f"{size.least:g}").replace("{most}", f"{size.most:g}")))
    else:
        says = kit.figures.alt(taxon.figure, language) or taxon.title.say(language)
        held.addWidget(FigureView(kit, taxon.figure, SPACE.portrait, says), 0, Qt.AlignmentFlag.AlignLeft)
    held.addStretch(1)
    return held


def _commonest(taxon: Taxon, character: Character | None) -> State | None:
    shown = taxon.shows.get(character.id) if character is not None else None
    if character is None or not shown:
        return None
    return character.state(max(shown, key=lambda state: shown[state]))


def _tr(text: str) -> str:
    return QCoreApplication.translate("LookAlikes", text)
