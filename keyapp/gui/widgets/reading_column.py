"""The one reading column of a page, and the footer in line with it."""

from __future__ import annotations

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
        self.body = QVBoxLayout()
        self.body.setContentsMargins(SPACE.wide, SPACE.large, SPACE.wide, SPACE.wide)
        self.body.setSpacing(SPACE.medium)
        self._reading = QWidget()
        self._reading.setMaximumWidth(SPACE.column)
        self._reading.setLayout(self.body)
        ground = QWidget()
        across = QHBoxLayout(ground)
        across.setContentsMargins(0, 0, 0, 0)
        across.addStretch(1)
        across.addWidget(self._reading, SPACE.column)
        across.addStretch(1)
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
        """Take everything out."""
        clear(self.body)

    def reveal(self, place: int = 0) -> None:
        """Show what was put in, scrolled to `place`."""
        reveal(self._reading)
        ground = self.widget()
        layout = ground.layout() if ground is not None else None
        if layout is not None:
            layout.activate()
        bar = self.verticalScrollBar()
        bar.setValue(place)
        if place:
            # The range follows the new height only in the next turn of the loop.
            QTimer.singleShot(0, bar, lambda: bar.setValue(place))

    def show_widget(self, widget: QWidget) -> None:
        """Bring a widget into view once the layout has settled."""
        QTimer.singleShot(0, widget, lambda: self.ensureWidgetVisible(widget, 0, SPACE.large))

    def _on_focus(self, _old: QWidget | None, new: QWidget | None) -> None:
        if new is not None and self._reading.isAncestorOf(new):
            self.ensureWidgetVisible(new, 0, SPACE.large)
