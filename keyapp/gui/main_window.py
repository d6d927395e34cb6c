"""The frame: rail, message bar, and the page at hand."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QKeySequence, QPaintEvent, QShortcut, QShowEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from keyapp.errors import UserError
from keyapp.gui.kit import Kit
from keyapp.gui.look_ahead import LookAhead
from keyapp.gui.pages.page import Page
from keyapp.gui.rail import Rail
from keyapp.gui.reporter import Reporter
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.message_bar import MessageBar

if TYPE_CHECKING:
    from keyapp.gui.pages.emergency import EmergencyPage
    from keyapp.gui.pages.no_key import NoKeyPage

__all__ = ["MainWindow"]


class MainWindow(QMainWindow):
    """Holds no state but which page stands in front.

    Signals:
        shown: the window has been painted for the first time; no arguments.
    """

    shown = Signal()

    def __init__(self, session: Session, kit: Kit, reporter: Reporter) -> None:
        super().__init__()
        self._session = session
        self._kit = kit
        self.setWindowTitle(self.tr("Garden arthropod key"))
        self.setMinimumSize(SPACE.least_width, SPACE.least_height)
        self.resize(SPACE.window_width, SPACE.window_height)
        self.message_bar = MessageBar(reporter, kit)
        self.rail = Rail(kit, self._on_work, self._on_families, self.show_emergency)
        self._pages: dict[str, Page] = {}
        self._no_key: NoKeyPage | None = None
        self._card: EmergencyPage | None = None
        self._before_emergency: QWidget | None = None
        self._focus_before = ""
        self._is_shown = False
        self.stack = QStackedWidget()
        self.stack.setCurrentWidget(self._page_of(session.stage))
        middle = QWidget()
        inside = QVBoxLayout(middle)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(0)
        inside.addWidget(self.message_bar)
        inside.addWidget(self.stack, 1)
        ground = QWidget()
        ground.setProperty("role", "desk")
        across = QHBoxLayout(ground)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(0)
        across.addWidget(self.rail)
        across.addWidget(middle, 1)
        self.setCentralWidget(ground)
        for keys, act in (
            ("F1", self.show_emergency),
            ("Esc", self._on_escape),
            ("Ctrl+Z", session.undo),
            ("Ctrl+Shift+Z", session.redo),
            ("Ctrl+Y", session.redo),
            ("Ctrl+R", self._on_result),
            ("Ctrl+F", self._on_find),
            ("F2", self._on_short),
            ("F3", self._on_note),
            ("F4", self._on_parked),
            ("F11", self.toggle_big_picture),
            ("Ctrl++", lambda: kit.look.step_zoom(1)),
            ("Ctrl+=", lambda: kit.look.step_zoom(1)),
            ("Ctrl+-", lambda: kit.look.step_zoom(-1)),
            ("Ctrl+0", lambda: kit.look.set_zoom(1)),
        ):
            QShortcut(QKeySequence(keys), self, act)
        session.opened.connect(self._on_opened)
        session.moved.connect(self._on_moved)
        session.emergency.connect(self.show_emergency)
        kit.look.changed.connect(self._on_look)
        LookAhead(session, kit.figures, self)

    @property
    def page(self) -> QWidget | None:
        """The page in front."""
        return self.stack.currentWidget()

    @property
    def is_emergency(self) -> bool:
        """Whether the emergency card is in front."""
        return self._card is not None and self.page is self._card

    def show_emergency(self) -> None:
        """Put the emergency card in front; the place and the focus are kept for coming back."""
        if self.is_emergency:
            return
        focused = QApplication.focusWidget()
        self._focus_before = focused.objectName() if focused is not None else ""
        self._before_emergency = self.page
        card = self._emergency()
        card.refresh()
        self.stack.setCurrentWidget(card)
        card.take_focus()

    def hide_emergency(self) -> None:
        """Go back to where one was."""
        if not self.is_emergency:
            return
        back = self._no_key or self._page_of(self._session.stage)
        is_same = back is self._before_emergency
        self.stack.setCurrentWidget(back)
        if is_same and self._focus_before:
            for widget in self.findChildren(QWidget, self._focus_before):
                if widget.isVisible():
                    widget.setFocus(Qt.FocusReason.OtherFocusReason)
                    return
        self._take_focus(back)

    def toggle_big_picture(self) -> None:
        """Enter or leave the big picture for a projector: larger, with more contrast and fewer words."""
        self._kit.look.set_big(not self._kit.look.is_big)

    def get_ready(self) -> None:
        """Make the emergency card, so that it need not be made when it is wanted."""
        self._emergency()

    def show_no_key(self, error: UserError, problems: Sequence[str]) -> None:
        """Say that the key cannot be used."""
        from keyapp.gui.pages.no_key import NoKeyPage

        self._no_key = NoKeyPage(self._session, self._kit, error, problems)
        self.stack.addWidget(self._no_key)
        if not self.is_emergency:
            self.stack.setCurrentWidget(self._no_key)
            self._no_key.take_focus()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self.page is not None:
            self._take_focus(self.page)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._is_shown:
            self._is_shown = True
            QTimer.singleShot(0, self, self.shown.emit)

    def closeEvent(self, event: QCloseEvent) -> None:
        self._session.close()
        super().closeEvent(event)

    # Inside ----------------------------------------------------------------------------------

    def _emergency(self) -> EmergencyPage:
        if self._card is None:
            from keyapp.gui.pages.emergency import EmergencyPage

            self._card = EmergencyPage(self._session, self._kit, self.hide_emergency)
            self.stack.addWidget(self._card)
        return self._card

    def _page_of(self, stage: Stage) -> Page:
        kind = str(stage)
        if stage is Stage.KEY:
            kind = "early" if not self._session.is_open else "big" if self._kit.look.is_big else kind
        if kind not in self._pages:
            self._pages[kind] = self._make(stage, kind)
            self.stack.addWidget(self._pages[kind])
        return self._pages[kind]

    def _make(self, stage: Stage, kind: str) -> Page:
        # Each page is imported when it is made: what is shown first has to wait for no other, and
        # most of them need the engine.
        if kind == "early":
            from keyapp.gui.pages.early import EarlyPage

            return EarlyPage(self._session, self._kit)
        if kind == "big":
            from keyapp.gui.pages.big_couplet import BigCoupletPage

            return BigCoupletPage(self._session, self._kit)
        if stage is Stage.HURT:
            from keyapp.gui.pages.start import StartPage

            return StartPage(self._session, self._kit)
        if stage is Stage.SETTINGS:
            from keyapp.gui.pages.settings import SettingsPage

            return SettingsPage(self._session, self._kit)
        if stage is Stage.KEY:
            from keyapp.gui.pages.couplet import CoupletPage

            return CoupletPage(self._session, self._kit)
        if stage is Stage.SEEN:
            from keyapp.gui.pages.seen import SeenPage

            return SeenPage(self._session, self._kit)
        if stage is Stage.FEARED:
            from keyapp.gui.pages.feared import FearedPage

            return FearedPage(self._session, self._kit)
        if stage is Stage.SHORT:
            from keyapp.gui.pages.short import ShortPage

            return ShortPage(self._session, self._kit)
        if stage is Stage.PARKED:
            from keyapp.gui.pages.parked import ParkedPage

            return ParkedPage(self._session, self._kit)
        if stage is Stage.FAMILIES:
            from keyapp.gui.pages.families import FamiliesPage

            return FamiliesPage(self._session, self._kit)
        from keyapp.gui.pages.result import ResultPage

        return ResultPage(self._session, self._kit)

    def _on_opened(self) -> None:
        self._kit.figures.describe(self._session.keyset.figures)
        self._on_moved()
        self._get_ready(list(Stage))

    def _get_ready(self, stages: list[Stage]) -> None:
        """Make one page each turn of the loop, so that none has to be made when it is wanted."""
        if stages:
            self._page_of(stages[0])
            QTimer.singleShot(0, self, lambda: self._get_ready(stages[1:]))

    def _on_moved(self) -> None:
        self.rail.show_families(self._session.stage is Stage.FAMILIES)
        page = self._page_of(self._session.stage)
        if self.is_emergency or self._no_key is not None or page is self.page:
            return
        self.stack.setCurrentWidget(page)
        self._take_focus(page)

    def _take_focus(self, page: QWidget) -> None:
        if isinstance(page, Page) or (self._no_key is not None and page is self._no_key):
            page.take_focus()

    def _on_look(self) -> None:
        """Another page may belong to the stage in the big picture; full screen goes with it."""
        is_big = self._kit.look.is_big
        if is_big != self.isFullScreen() and self.isVisible():
            self.setWindowState(self.windowState() ^ Qt.WindowState.WindowFullScreen)
        self._on_moved()

    def _on_work(self) -> None:
        self.rail.show_families(False)
        self._session.leave_families()
        self.hide_emergency()

    def _on_families(self) -> None:
        self.rail.show_families(self._no_key is None)
        if self._no_key is None:
            self._session.open_families()
        self.hide_emergency()

    def _on_find(self) -> None:
        """Turn to the list of families, ready to type a name."""
        self._on_families()
        self._session.browsing.show_list()
        if self._session.stage is Stage.FAMILIES:
            self._take_focus(self._page_of(Stage.FAMILIES))

    def _on_escape(self) -> None:
        if self.is_emergency:
            self.hide_emergency()
        elif self.message_bar.message is None and self._kit.look.is_big:
            self.toggle_big_picture()
        elif self.message_bar.message is None and self._session.stage is Stage.FAMILIES:
            self._session.browsing.go_back()
        else:
            self.message_bar.close_message()

    def _on_short(self) -> None:
        """Turn to the short way, from anywhere; someone hurt still comes first there."""
        if self._no_key is None:
            self.hide_emergency()
            self._session.open_short()

    def _on_note(self) -> None:
        """Go to the line for what is said, where the page has one."""
        line = self.page.findChild(QWidget, "note-line") if self.page is not None else None
        if line is not None and line.isVisible():
            line.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _on_parked(self) -> None:
        """Turn to what is put aside."""
        if self._session.is_open and not self.is_emergency:
            self._session.open_parked()

    def _on_result(self) -> None:
        if self._session.is_open and not self.is_emergency:
            self._session.show_stage(Stage.RESULT)
