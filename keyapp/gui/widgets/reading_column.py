"""The one reading column of a page, and the footer in line with it."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import clear, reveal

__all__ = ["Footer", "ReadingColumn"]


class Footer(QFrame):
    """A row of buttons beneath a column. `parts` is the row to fill."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("role", "footer")
        self._held = QWidget()
        self._held.setMaximumWidth(SPACE.column - 2 * SPACE.wide)
        self.parts = QHBoxLayout(self._held)
        self.parts.setContentsMargins(0, 0, 0, 0)
        self.parts.setSpacing(SPACE.small)
        self._across = QHBoxLayout(self)
        self._across.addStretch(1)
        self._across.addWidget(self._held, SPACE.column)
        self._across.addStretch(1)
        self.align(0)

    def align(self, bar_width: int) -> None:
        """Stay in line with the column beside a scroll bar of this width."""
        self._across.setContentsMargins(SPACE.wide, SPACE.small, SPACE.wide + bar_width, SPACE.small)

    def empty(self) -> None:
        """Take everything out."""
        clear(self.parts)

    def reveal(self) -> None:
        """Show what was put in; an empty footer hides."""
        self.setVisible(self.parts.count() > 0)
        reveal(self._held)


class ReadingColumn(QScrollArea):
    """A centred column that scrolls; what has the focus is always in view. `body` is the column to fill."""

    def __init__(self, footer: Footer | None = None) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        ground = QWidget()
        self._across = QHBoxLayout(ground)
        self._across.setContentsMargins(0, 0, 0, 0)
        self._reading = self._fresh()
        self._shown = self._reading
        self._across.addStretch(1)
        self._across.addWidget(self._reading, SPACE.column)
        self._across.addStretch(1)
        self.setWidget(ground)
        bar = self.verticalScrollBar()
        if footer is not None:
            bar.rangeChanged.connect(lambda _low, high: footer.align(bar.sizeHint().width() if high else 0))
        application = QApplication.instance()
        assert isinstance(application, QApplication)
        application.focusChanged.connect(self._on_focus)

    @property
    def place(self) -> int:
        """How far it is scrolled."""
        return self.verticalScrollBar().value()

    def empty(self) -> None:
        """Begin an empty column; the old one stays in view until `reveal`."""
        self._reading = self._fresh()

    def drop(self) -> None:
        """Let everything go at once. Not to be called from anything inside."""
        self.empty()
        old = self._shown
        self._across.replaceWidget(old, self._reading)
        self._shown = self._reading
        shiboken6.delete(old)

    def reveal(self, place: int = 0) -> None:
        """Show what was put in, scrolled to `place`."""
        old, new = self._shown, self._reading
        if old is not new:
            # Sized before it is shown, it is laid out once and not twice.
            new.resize(min(SPACE.column, self.viewport().width()), old.height())
            self._across.replaceWidget(old, new)
            new.show()
            old.hide()
            old.setParent(None)
            old.deleteLater()
            self._shown = new
        self._across.activate()
        bar = self.verticalScrollBar()
        bar.setValue(place)
        if place:
            # The range follows the new height only in the next turn of the loop.
            QTimer.singleShot(0, bar, lambda: bar.setValue(place))

    def reveal_more(self) -> None:
        """Show what was added to a column that is in view."""
        reveal(self._shown)

    def _fresh(self) -> QWidget:
        made = QWidget()
        made.setMaximumWidth(SPACE.column)
        self.body = QVBoxLayout(made)
        self.body.setContentsMargins(SPACE.wide, SPACE.large, SPACE.wide, SPACE.wide)
        self.body.setSpacing(SPACE.medium)
        return made

    def show_widget(self, widget: QWidget) -> None:
        """Bring a widget into view once the layout has settled."""
        QTimer.singleShot(0, widget, lambda: self.ensureWidgetVisible(widget, 0, SPACE.large))

    def _on_focus(self, _old: QWidget | None, new: QWidget | None) -> None:
        if new is not None and self._shown.isAncestorOf(new):
            self.ensureWidgetVisible(new, 0, SPACE.large)
