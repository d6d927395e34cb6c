"""All families and signs: looked up by any name, read about, held side by side. Nothing is identified here."""

from __future__ import annotations

from keyapp.gui.browsing import Place, View
from keyapp.gui.kit import Kit
from keyapp.gui.pages.families_compare import ComparePart
from keyapp.gui.pages.families_kind import KindPart
from keyapp.gui.pages.families_list import ListPart
from keyapp.gui.pages.families_names import NamesPart
from keyapp.gui.pages.families_part import Part
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Session, Stage
from keyapp.gui.widgets.texts import label

__all__ = ["FamiliesPage"]


class FamiliesPage(Page):
    """One of four parts, as `Session.browsing` has it: the list, a kind, kinds compared, what people call things."""

    stage = Stage.FAMILIES

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__(session, kit)
        self._part: Part | None = None
        self._drawn = Place()
        session.browsing.moved.connect(self._on_news)

    def subject(self) -> object:
        return (self.stage, self.session.is_open, self.session.browsing.place)

    def update_in_place(self) -> bool:
        return self._part is not None and self._part.follow()

    def build(self) -> None:
        place = self.session.browsing.place
        before, self._drawn = self._drawn, place
        self._part = None
        if not self.session.is_open:
            self.body.addWidget(label(self.tr("Opening the key"), "title"))
            self.body.addWidget(label(self.tr("One moment."), "soft"))
            self.body.addStretch(1)
            return
        made = {View.LIST: ListPart, View.KIND: KindPart, View.COMPARE: ComparePart, View.NAMES: NamesPart}
        self._part = made[place.view](self)
        # Who comes back to the list finds the focus where they left it.
        came_from = f"open-{before.kind}" if place.view is View.LIST and before.view is View.KIND else ""
        self._part.first_focus = came_from or self._part.first_focus
        self._part.build()
        self.first_focus = self._part.first_focus
