"""The emergency card: what to do now, with the numbers to call."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from keyapp.gui.first_aid import FirstAid, first_aid
from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.choices import Option, Picks
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.reading_column import Footer, ReadingColumn
from keyapp.gui.widgets.texts import button, label, panel, row, symbol, with_symbol

__all__ = ["EmergencyPage"]

KINDS = ("unknown", "spider", "scorpion", "tick", "sting")

NARROW = 1.25
"""Where text is larger than that, the kinds of animal do not fit in one row."""


class EmergencyPage(QWidget):
    """Works with no key at all. `on_close` is called to go back to where one was."""

    def __init__(self, session: Session, kit: Kit, on_close: Callable[[], None]) -> None:
        super().__init__()
        self.setProperty("role", "desk")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._session = session
        self._kit = kit
        self._on_close = on_close
        self._foot = Footer()
        self._column = ReadingColumn(self._foot)
        self._footer = self._foot.parts
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self._column, 1)
        whole.addWidget(self._foot)
        session.opened.connect(self._on_news)
        session.changed.connect(self._on_news)
        session.moved.connect(self._on_news)
        kit.look.changing.connect(self._on_changing)
        kit.look.changed.connect(self._on_news)

    def refresh(self) -> None:
        """Draw the card anew; the focus stays where it was."""
        focused = self.focusWidget()
        name = focused.objectName() if focused is not None else ""
        place = self._column.place
        self._column.empty()
        self._foot.empty()
        content = first_aid(self._session)
        body = self._column.body
        body.addLayout(
            with_symbol(self._kit, "aid", self.tr("If someone is hurt"), "signal-title", "signal", SPACE.icon_large)
        )
        body.addWidget(self._calls(content))
        body.addWidget(self._steps(content))
        never, inside = panel("card", SPACE.small, SPACE.large)
        inside.addWidget(label(self.tr("Never"), "head"))
        for text in content.never:
            inside.addLayout(with_symbol(self._kit, "close", text, "", "soft"))
        body.addWidget(never)
        body.addWidget(label(self.tr("If your office or your doctor says something else, follow them."), "soft"))
        if content.sources:
            body.addWidget(Fold(self._kit, self._session, "aid-sources", self.tr("Sources and dates"), self._sources))
        body.addStretch(1)
        self._add_footer()
        self._column.reveal(place)
        self._foot.reveal()
        again = next((w for w in self.findChildren(QWidget, name) if not w.isHidden()), None) if name else None
        if again is not None:
            again.setFocus(Qt.FocusReason.OtherFocusReason)

    def take_focus(self) -> None:
        """Give the focus to the way back."""
        for widget in self.findChildren(QWidget, "close-emergency"):
            if not widget.isHidden():
                widget.setFocus(Qt.FocusReason.OtherFocusReason)

    # Parts ---------------------------------------------------------------------------------------

    def _calls(self, content: FirstAid) -> QWidget:
        frame, inside = panel("danger", SPACE.small, SPACE.large)
        inside.addWidget(
            label(self.tr("Call {number} now for any of these").replace("{number}", content.emergency), "call")
        )
        for text in content.signs:
            inside.addLayout(with_symbol(self._kit, "warning", text, "", "signal"))
        if content.elsewhere:
            inside.addWidget(label(content.elsewhere, "strong"))
        poison, within = panel("card", SPACE.tiny, SPACE.large)
        within.addWidget(label(self.tr("No such sign, but someone was or may have been bitten or stung"), "soft"))
        line = row(symbol(self._kit, "phone", "ink", SPACE.icon_large), gap=SPACE.small)
        line.addWidget(label(self.tr("Poison Help {number}").replace("{number}", content.poison), "call"), 1)
        within.addLayout(line)
        within.addWidget(
            label(self.tr("Day and night, free, in the United States. Do not wait for an identification."))
        )
        both = QWidget()
        held = QVBoxLayout(both)
        held.setContentsMargins(0, 0, 0, 0)
        held.setSpacing(SPACE.medium)
        held.addWidget(frame)
        held.addWidget(poison)
        return both

    def _steps(self, content: FirstAid) -> QWidget:
        frame, inside = panel("card", SPACE.small, SPACE.large)
        inside.addWidget(label(self.tr("Until help answers"), "head"))
        names = {
            "unknown": self.tr("Not known"),
            "spider": self.tr("Spider"),
            "scorpion": self.tr("Scorpion"),
            "tick": self.tr("Tick"),
            "sting": self.tr("Bee, wasp or ant"),
        }
        kinds = [kind for kind in KINDS if kind in content.kinds]
        if len(kinds) > 1:
            options = [Option(self._kit, names[kind], f"aid-{kind}") for kind in kinds]
            holder = QWidget()
            across = row(*options, gap=SPACE.small)
            if self._kit.look.is_big or self._kit.look.zoom > NARROW:
                across.setDirection(QBoxLayout.Direction.TopToBottom)
            holder.setLayout(across)
            Picks(holder, options, lambda i: self._session.set_first_aid(kinds[i]), None, kinds.index(content.kind))
            inside.addWidget(holder)
        for text in content.steps:
            inside.addLayout(with_symbol(self._kit, "dot", text, "", "soft"))
        return frame

    def _sources(self, held: QVBoxLayout) -> None:
        for text in first_aid(self._session).sources:
            held.addWidget(label(text, "small"))

    def _add_footer(self) -> None:
        session = self._session
        if session.case.settings.hurt is not None:
            hurt = session.case.settings.hurt
            text = self.tr("Marked: someone is hurt") if hurt else self.tr("Marked: no one is hurt")
            self._footer.addWidget(label(text, "soft", wrap=False))
            other = button(self.tr("No one is hurt") if hurt else self.tr("Someone is hurt"), "aid-hurt", "plain")
            other.clicked.connect(lambda: session.mark_hurt(not hurt))
            self._footer.addWidget(other)
        self._footer.addStretch(1)
        back = button(self.tr("Close (Esc)"), "close-emergency", "primary", says=self.tr("Close the emergency card"))
        back.clicked.connect(self._on_close)
        self._footer.addWidget(back)

    def _on_changing(self) -> None:
        if not self.isVisible():
            self._column.drop()

    def _on_news(self) -> None:
        if self.isVisible():
            self.refresh()
