"""Printing the sheet of an enquiry: the button, where to put it, and that it is being written."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QFileDialog, QProgressBar, QPushButton, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.texts import label

__all__ = ["PrintButton", "choose_file", "printing_line"]


def choose_file(parent: QWidget) -> Path | None:
    """Ask where the sheet is to be written; None where nothing was chosen. It asks before it replaces."""
    title = QCoreApplication.translate("Print", "Where to write the sheet")
    kinds = QCoreApplication.translate("Print", "PDF files (*.pdf)")
    name, _ = QFileDialog.getSaveFileName(parent, title, str(Path.home() / "find-sheet.pdf"), kinds)
    if not name:
        return None
    path = Path(name)
    return path if path.suffix else path.with_suffix(".pdf")


class PrintButton(QPushButton):
    """Asks for a file and has the sheet written; rests while one is being written.

    `choose` may be replaced, as tests do, by something that asks nobody.
    """

    choose = staticmethod(choose_file)

    def __init__(self, kit: Kit, session: Session) -> None:
        says = session.words.fixed("print.sheet")
        super().__init__(says)
        self._session = session
        self.setObjectName("print-sheet")
        self.setProperty("role", "")
        self.setAccessibleName(says)
        self.setIcon(kit.look.icon("sheet"))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoDefault(False)
        self.clicked.connect(self._on_clicked)
        session.printed.connect(self._on_printed)
        self._on_printed()

    def _on_clicked(self) -> None:
        target = type(self).choose(self)
        if target is not None:
            self._session.print_sheet(target)

    def _on_printed(self) -> None:
        self.setEnabled(not self._session.is_printing and self._session.images is not None)


class _PrintingLine(QWidget):
    """Shown while the sheet is being written."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.setObjectName("printing")
        says = session.words.fixed("print.doing")
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.tiny)
        bar = QProgressBar()
        bar.setRange(0, 0)
        bar.setTextVisible(False)
        bar.setAccessibleName(says)
        inside.addWidget(label(says, "small"))
        inside.addWidget(bar)
        session.printed.connect(self._on_printed)
        self._on_printed()

    def _on_printed(self) -> None:
        self.setVisible(self._session.is_printing)


def printing_line(session: Session) -> QWidget:
    """A line with a bar that goes to and fro, hidden while nothing is written."""
    return _PrintingLine(session)
