"""What the tests of the window work with: a window over the tiny key, and hands on its keyboard."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtCore import QEvent, Qt, QtMsgType, qInstallMessageHandler
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget
from tiny import tiny_enquiry

from keyapp.gui.figures import Figures
from keyapp.gui.kit import Kit
from keyapp.gui.look import Look, Mode
from keyapp.gui.main_window import MainWindow
from keyapp.gui.reporter import Message, Reporter
from keyapp.gui.session import Session, Stage
from keyapp.model import Choice
from keyapp.work import Keeper

STAGES = tuple(Stage)
TO_COBWEB = (Choice.SECOND, Choice.SECOND, Choice.SECOND, Choice.SECOND)
TO_WIDOW = (Choice.SECOND, Choice.SECOND, Choice.SECOND, Choice.FIRST)


@contextmanager
def watch_qt() -> Iterator[list[str]]:
    """Collect what Qt warns of; the list must end up empty."""
    heard: list[str] = []

    def listen(kind: QtMsgType, _where: object, text: str) -> None:
        if kind is not QtMsgType.QtDebugMsg and kind is not QtMsgType.QtInfoMsg:
            heard.append(text)

    before = qInstallMessageHandler(listen)
    yield heard
    qInstallMessageHandler(before)


class Count:
    """Counts a signal."""

    def __init__(self, signal: object) -> None:
        self.times = 0
        signal.connect(self._on_signal)  # type: ignore[attr-defined]

    def _on_signal(self, *_: object) -> None:
        self.times += 1


class Bench:
    """One window, its session and its messages."""

    def __init__(self, folder: Path, mode: Mode = Mode.LIGHT) -> None:
        self.folder = folder
        self.reporter = Reporter()
        self.said: list[Message] = []
        self.reporter.said.connect(self.said.append)
        self.look = Look(mode)
        self.look.apply()
        self.kit = Kit(self.look, Figures(folder / "figures"))
        self.session = Session(self.reporter)
        self.window = MainWindow(self.session, self.kit, self.reporter)
        self.window.resize(1024, 768)
        self.window.show()
        self.window.activateWindow()
        self.settle()

    def open(self, keep: bool = True) -> None:
        self.session.open(*tiny_enquiry(), Keeper(self.folder) if keep else None)
        self.settle()

    def close(self) -> None:
        self.window.close()
        self.session.close()
        self.window.deleteLater()
        self.settle()

    def settle(self) -> None:
        for _ in range(8):
            QApplication.processEvents()
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)

    def go(self, *choices: Choice, hurt: bool = False) -> None:
        """Answer the first question, skip the settings, and answer couplets."""
        self.session.set_hurt(hurt)
        self.session.go_on()
        for choice in choices:
            self.answer(choice)

    def answer(self, choice: Choice, **parts: object) -> None:
        self.session.draft_lead(choice=choice, **parts)
        self.session.answer()
        self.settle()

    def to(self, stage: Stage) -> None:
        """Turn to a stage as a person may."""
        self.go(*TO_COBWEB[:2])
        self.session.see("web-shape")
        self.session.show_stage(stage)
        self.settle()

    # Hands ---------------------------------------------------------------------------------------

    def press(self, key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(QApplication.focusWidget() or self.window, key, held)
        self.settle()

    def type(self, text: str) -> None:
        QTest.keyClicks(QApplication.focusWidget(), text)
        self.settle()

    def tab_to(self, name: str) -> None:
        """Press Tab until the widget of that name has the focus."""
        seen = []
        for _ in range(60):
            if self.focused() == name:
                return
            self.press(Qt.Key.Key_Tab)
            seen.append(self.focused())
        raise AssertionError(f"{name} is not reached by Tab; reached: {seen}")

    def focused(self) -> str:
        widget = QApplication.focusWidget()
        return widget.objectName() if widget is not None else ""

    def named(self, name: str) -> QWidget:
        for widget in self.window.findChildren(QWidget, name):
            if widget.isVisibleTo(self.window) and widget.isVisible():
                return widget
        raise AssertionError(f"no visible widget {name}")

    def has(self, name: str) -> bool:
        return any(widget.isVisible() for widget in self.window.findChildren(QWidget, name))

    def click(self, name: str) -> None:
        widget = self.named(name)
        assert isinstance(widget, QAbstractButton)
        widget.click()
        self.settle()

    def texts(self) -> str:
        page = self.window.page
        assert page is not None
        from PySide6.QtWidgets import QLabel

        return "\n".join(one.text() for one in page.findChildren(QLabel) if one.isVisible())
