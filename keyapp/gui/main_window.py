"""The frame: rail, message bar, and the page at hand."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QCloseEvent, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from keyapp.errors import UserError
from keyapp.gui.kit import Kit
from keyapp.gui.look import app_icon
from keyapp.gui.pages.emergency import EmergencyPage
from keyapp.gui.pages.no_key import NoKeyPage
from keyapp.gui.pages.page import Page
from keyapp.gui.pages.start import StartPage
from keyapp.gui.rail import Rail
from keyapp.gui.reporter import Reporter
from keyapp.gui.session import Session, Stage
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.message_bar import MessageBar

__all__ = ["MainWindow"]


class MainWindow(QMainWindow):
    """Holds no state but which page stands in front."""

    def __init__(self, session: Session, kit: Kit, reporter: Reporter) -> None:
        super().__init__()
        self._session = session
        self._kit = kit
        self.setWindowTitle(self.tr("Garden arthropod key"))
        self.setWindowIcon(app_icon())
        self.setMinimumSize(SPACE.least_width, SPACE.least_height)
        self.resize(SPACE.window_width, SPACE.window_height)
        self.message_bar = MessageBar(reporter, kit)
        self.rail = Rail(kit, self._on_work, self.show_emergency)
        self._pages: dict[Stage, Page] = {Stage.HURT: StartPage(session, kit)}
        self._no_key: NoKeyPage | None = None
        self._emergency = EmergencyPage(session, kit, self.hide_emergency)
        self._before_emergency: QWidget | None = None
        self._focus_before = ""
        self.stack = QStackedWidget()
        self.stack.addWidget(self._pages[Stage.HURT])
        self.stack.addWidget(self._emergency)
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
        ):
            QShortcut(QKeySequence(keys), self, act)
        session.opened.connect(self._on_opened)
        session.moved.connect(self._on_moved)
        session.emergency.connect(self.show_emergency)
        self._pages[Stage.HURT].refresh()

    @property
    def page(self) -> QWidget | None:
        """The page in front."""
        return self.stack.currentWidget()

    @property
    def is_emergency(self) -> bool:
        """Whether the emergency card is in front."""
        return self.page is self._emergency

    def show_emergency(self) -> None:
        """Put the emergency card in front; the place and the focus are kept for coming back."""
        if self.is_emergency:
            return
        focused = QApplication.focusWidget()
        self._focus_before = focused.objectName() if focused is not None else ""
        self._before_emergency = self.page
        self._emergency.refresh()
        self.stack.setCurrentWidget(self._emergency)
        self._emergency.take_focus()

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

    def show_no_key(self, error: UserError, problems: Sequence[str]) -> None:
        """Say that the key cannot be used."""
        self._no_key = NoKeyPage(self._session, self._kit, error, problems)
        self.stack.addWidget(self._no_key)
        if not self.is_emergency:
            self.stack.setCurrentWidget(self._no_key)
            self._no_key.take_focus()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self.page is not None:
            self._take_focus(self.page)

    def closeEvent(self, event: QCloseEvent) -> None:
        self._session.close()
        super().closeEvent(event)

    # Inside ----------------------------------------------------------------------------------

    def _page_of(self, stage: Stage) -> Page:
        if stage not in self._pages:
            self._pages[stage] = self._make(stage)
            self.stack.addWidget(self._pages[stage])
        return self._pages[stage]

    def _make(self, stage: Stage) -> Page:
        # These pages need the engine, so they are imported once it is there.
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
        from keyapp.gui.pages.result import ResultPage

        return ResultPage(self._session, self._kit)

    def _on_opened(self) -> None:
        self._kit.figures.describe(self._session.keyset.figures)
        self._get_ready(list(Stage))

    def _get_ready(self, stages: list[Stage]) -> None:
        """Make one page each turn of the loop, so that none has to be made when it is wanted."""
        if stages:
            self._page_of(stages[0])
            QTimer.singleShot(0, self, lambda: self._get_ready(stages[1:]))

    def _on_moved(self) -> None:
        page = self._page_of(self._session.stage)
        if self.is_emergency or self._no_key is not None or page is self.page:
            return
        self.stack.setCurrentWidget(page)
        self._take_focus(page)

    def _take_focus(self, page: QWidget) -> None:
        if isinstance(page, Page | NoKeyPage):
            page.take_focus()

    def _on_work(self) -> None:
        self.rail.work.setChecked(True)
        self.hide_emergency()

    def _on_escape(self) -> None:
        if self.is_emergency:
            self.hide_emergency()
        else:
            self.message_bar.close_message()

    def _on_result(self) -> None:
        if self._session.is_open and not self.is_emergency:
            self._session.show_stage(Stage.RESULT)
