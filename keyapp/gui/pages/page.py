"""What all pages of *Work it out* have in common: a reading column, a footer, a redraw that keeps the focus."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from keyapp.errors import ProgramError
from keyapp.gui.kit import Kit
from keyapp.gui.session import Session, Stage
from keyapp.gui.widgets.reading_column import Footer, ReadingColumn

__all__ = ["Page"]


class Page(QWidget):
    """A page over the session. It reads and draws; it holds nothing.

    Subclasses say which `stage` they show and `build` the column and the footer; `first_focus` names the
    widget that gets the focus when the page turns up.
    """

    stage: Stage
    first_focus = ""

    def __init__(self, session: Session, kit: Kit) -> None:
        super().__init__()
        self.session = session
        self.kit = kit
        self.setProperty("role", "desk")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._stale = True
        self._subject: object = None
        self._turn = 0
        self._later: list[Callable[[], None]] = []
        self._foot = Footer()
        self._column = ReadingColumn(self._foot)
        self._is_drawing = False
        self.footer = self._foot.parts
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

    @property
    def body(self) -> QVBoxLayout:
        """The column to fill."""
        return self._column.body

    # For subclasses ------------------------------------------------------------------------------

    def build(self) -> None:
        """Fill `body` and `footer` from the session."""
        raise ProgramError(f"{type(self).__name__} fills nothing")

    def update_in_place(self) -> bool:
        """Follow the session without drawing anew; False where that is not enough."""
        return False

    def forget(self) -> None:
        """Let go of parts of the column that were kept by name: they are gone, and are built anew later."""

    def subject(self) -> object:
        """What the page is about; while it stays the same a redraw keeps place and focus."""
        return self.stage

    def later(self, *parts: Callable[[], None]) -> None:
        """Build these parts of the body one by one once the page is in view, so that it shows at once."""
        self._later += parts

    def show_widget(self, widget: QWidget) -> None:
        """Bring a widget into view once the layout has settled."""
        self._column.show_widget(widget)

    # Redrawing -----------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Draw the page anew; the place in the page and the focus stay where they were."""
        if self._is_drawing:
            return
        self._stale = False
        is_same = self.subject() == self._subject
        if is_same and self.update_in_place():
            return
        focused = QApplication.focusWidget()
        name = focused.objectName() if focused is not None and self.isAncestorOf(focused) else ""
        place = self._column.place if is_same else 0
        self._subject = self.subject()
        self._is_drawing = True
        self._turn += 1
        self._later = []
        self.setUpdatesEnabled(False)
        self._column.empty()
        self._foot.empty()
        self.build()
        wish = self.session.take_wish() if self.isVisible() else ""
        if place or wish:
            while self._later:
                self._later.pop(0)()
        self._column.reveal(place)
        self._foot.reveal()
        self.setUpdatesEnabled(True)
        self._is_drawing = False
        self._order_tabs()
        self._plan(self._turn)
        target = self.named(wish) if wish else None
        if target is None:
            target = self.named(name) if name and is_same else None
        if target is not None and target.isEnabled():
            target.setFocus(Qt.FocusReason.OtherFocusReason)
        elif name or QApplication.focusWidget() is None:
            self.take_focus()

    def named(self, name: str) -> QWidget | None:
        """The widget of that name that is on the page now."""
        return next((widget for widget in self.findChildren(QWidget, name) if not widget.isHidden()), None)

    def take_focus(self) -> None:
        """Give the focus to where one starts on this page."""
        target = self.named(self.first_focus) if self.first_focus else None
        if target is None or not target.isEnabled():
            for widget in self.findChildren(QWidget):
                if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisibleTo(self) and widget.isEnabled():
                    target = widget
                    break
        if target is not None:
            target.setFocus(Qt.FocusReason.OtherFocusReason)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._stale:
            self._subject = None
            self.refresh()

    def _plan(self, turn: int) -> None:
        if self._later:
            QTimer.singleShot(0, self, lambda: self._continue(turn))

    def _continue(self, turn: int) -> None:
        if turn == self._turn and self._later:
            self._later.pop(0)()
            self._column.reveal_more()
            if not self._later:
                self._order_tabs()
            self._plan(turn)

    def _order_tabs(self) -> None:
        """Let the Tab key go from the column to the footer beneath it, and only then to the rail."""
        last: QWidget | None = None
        one = self._column.nextInFocusChain()
        while one is not None and one is not self._column:
            if one.focusPolicy() & Qt.FocusPolicy.TabFocus and self._column.isAncestorOf(one):
                last = one
            one = one.nextInFocusChain()
        for cell in self._foot.cells:
            if last is not None:
                QWidget.setTabOrder(last, cell)
                last = cell

    def _on_changing(self) -> None:
        self._turn += 1
        self._column.drop()
        self.forget()
        self._subject = None

    def _on_news(self) -> None:
        if self.isVisible() and self.session.stage is self.stage:
            self.refresh()
        else:
            self._stale = True
