"""The one reading column of a page, and the footer in line with it."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import clear, reveal

__all__ = ["Footer", "ReadingColumn"]


class Footer(QFrame):
    """A row of buttons beneath a column, or several rows where one has no room. `parts` is the row to fill."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("role", "footer")
        self._held = QWidget()
        self._rows = QVBoxLayout(self._held)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(SPACE.small)
        self.parts = QHBoxLayout()
        self.parts.setContentsMargins(0, 0, 0, 0)
        self.parts.setSpacing(SPACE.small)
        self._rows.addLayout(self.parts)
        self._cells: list[QWidget | None] = []
        self._is_flowing = False
        self._across = QHBoxLayout(self)
        self._across.addStretch(1)
        self._across.addWidget(self._held, SPACE.column)
        self._across.addStretch(1)
        self.align(0)

    def align(self, bar_width: int) -> None:
        """Stay in line with the column beside a scroll bar of this width."""
        self._bar_width = bar_width
        self._held.setMaximumWidth(SPACE.column - 2 * SPACE.wide)
        self._across.setContentsMargins(SPACE.wide, SPACE.small, SPACE.wide + bar_width, SPACE.small)

    def empty(self) -> None:
        """Take everything out."""
        clear(self.parts)
        for row in self._more_rows():
            clear(row)
        self._drop_rows()
        self._cells = []
        self.align(self._bar_width)

    @property
    def cells(self) -> tuple[QWidget, ...]:
        """The widgets in it, in their order."""
        return tuple(cell for cell in self._cells if cell is not None)

    def reveal(self) -> None:
        """Show what was put in; an empty footer hides."""
        self.setVisible(self.parts.count() > 0)
        reveal(self._held)
        items = [self.parts.itemAt(i) for i in range(self.parts.count())]
        self._cells = [item.widget() if item is not None else None for item in items]
        self._flow()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._flow()

    def _flow(self) -> None:
        """Everything in one row where that has room; else row by row, in the same order."""
        shown = [cell for cell in self._cells if cell is not None]
        if self._is_flowing or not shown:
            return
        edges = self._across.contentsMargins()
        room = min(self._held.maximumWidth(), self.width() - edges.left() - edges.right())
        rows: list[list[QWidget | None]] = [[]]
        needed = sum(cell.sizeHint().width() + SPACE.small for cell in shown) - SPACE.small
        if needed <= room:
            rows = [self._cells]
        else:
            taken = 0
            for cell in shown:
                width = cell.sizeHint().width() + SPACE.small
                if rows[-1] and taken + width - SPACE.small > room:
                    rows.append([])
                    taken = 0
                rows[-1].append(cell)
                taken += width
        if len(rows) == self._rows.count():
            return
        self._is_flowing = True
        for row in (self.parts, *self._more_rows()):
            while row.takeAt(0) is not None:
                pass
        self._drop_rows()
        for cells in rows:
            row = self.parts if cells is rows[0] else self._new_row()
            for one in cells:
                if one is None:
                    row.addStretch(1)
                else:
                    row.addWidget(one)
            if len(rows) > 1:
                row.addStretch(1)
        self._is_flowing = False

    def _more_rows(self) -> list[QHBoxLayout]:
        """The rows after the first."""
        found = [self._rows.itemAt(i) for i in range(1, self._rows.count())]
        return [item for item in found if isinstance(item, QHBoxLayout)]

    def _drop_rows(self) -> None:
        while self._rows.count() > 1:
            self._rows.takeAt(1)

    def _new_row(self) -> QHBoxLayout:
        made = QHBoxLayout()
        made.setContentsMargins(0, 0, 0, 0)
        made.setSpacing(SPACE.small)
        self._rows.addLayout(made)
        return made


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
        self._footer = footer
        if footer is not None:
            self.verticalScrollBar().rangeChanged.connect(self._on_range)
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

    def _on_range(self, _low: int, high: int) -> None:
        if self._footer is not None:
            self._footer.align(self.verticalScrollBar().sizeHint().width() if high else 0)

    def _on_focus(self, _old: QWidget | None, new: QWidget | None) -> None:
        if new is not None and self._shown.isAncestorOf(new):
            self.ensureWidgetVisible(new, 0, SPACE.large)
