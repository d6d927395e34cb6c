"""A figure that can be enlarged."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QFrame, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.texts import button, label, row

__all__ = ["FigureButton", "FigureSheet"]


class FigureButton(QPushButton):
    """A figure on its plate, `side` wide; pressing it shows it as large as the window allows."""

    def __init__(self, kit: Kit, session: Session, figure: str, side: int, says: str, name: str) -> None:
        super().__init__()
        self._kit = kit
        self._session = session
        self._figure = figure
        self._side = side
        self._says = says
        enlarge = session.words.fixed("families.enlarge", name=says)
        self.setObjectName(name)
        self.setAccessibleName(enlarge)
        self.setToolTip(enlarge)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoDefault(True)  # Return presses it as Space does
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.set_side(side)
        self.clicked.connect(self._on_clicked)

    def set_side(self, side: int) -> None:
        """Show it larger or smaller."""
        self._side = side
        self.setFixedSize(side, side)

    def sizeHint(self) -> QSize:
        return QSize(self._side, self._side)

    def _on_clicked(self) -> None:
        FigureSheet(self._kit, self._session, self._figure, self._says, self.window())

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._kit.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        path = QPainterPath()
        path.addRoundedRect(QRectF(self.rect()), SPACE.tiny, SPACE.tiny)
        painter.fillPath(path, look.colour("plate"))
        painter.save()
        painter.setClipPath(path)
        painter.drawPixmap(0, 0, self._kit.figures.pixmap(self._figure, self._side, self.devicePixelRatioF()))
        painter.restore()
        if self._side > SPACE.thumb:
            # The other corners hold scale bars and insets of the figures.
            at = SPACE.tiny
            mark = look.icon("enlarge", "plate_ink" if look.is_dark else "accent")
            mark.paint(painter, at, at, SPACE.icon, SPACE.icon)
        if self.hasFocus() or self.underMouse():
            wide = SPACE.ring if self.hasFocus() else SPACE.hair
            # On the light plate the accent of the dark theme would not stand out.
            painter.setPen(QPen(look.colour("plate_ink" if look.is_dark else "accent"), wide))
            half = wide / 2
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(half, half, -half, -half), SPACE.tiny, SPACE.tiny)
        painter.end()


class FigureSheet(QFrame):
    """One figure as large as the window allows, over all that is in it, with what it shows.

    Esc or *Close* takes it away and gives the focus back; so does anything that takes the focus, such as the
    emergency card.
    """

    def __init__(self, kit: Kit, session: Session, figure: str, says: str, window: QWidget) -> None:
        super().__init__(window)
        self._before = QApplication.focusWidget()
        self.setObjectName("figure-sheet")
        self.setProperty("role", "desk")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setAutoFillBackground(True)
        self.setAccessibleName(says)
        inside = QVBoxLayout(self)
        inside.setContentsMargins(SPACE.wide, SPACE.large, SPACE.wide, SPACE.large)
        inside.setSpacing(SPACE.medium)
        inside.addStretch(1)
        side = min(window.width() - 2 * SPACE.wide, window.height() - 3 * SPACE.target - 2 * SPACE.huge)
        inside.addWidget(FigureView(kit, figure, max(SPACE.portrait, side), says), 0, Qt.AlignmentFlag.AlignHCenter)
        inside.addWidget(label(says))
        inside.addStretch(1)
        self._close = button(session.words.fixed("families.close"), "figure-close", "primary")
        self._close.clicked.connect(self._on_close)
        self._close.installEventFilter(self)
        inside.addLayout(row(None, self._close))
        window.installEventFilter(self)
        self.setGeometry(window.rect())
        self.show()
        self.raise_()
        self._close.setFocus(Qt.FocusReason.OtherFocusReason)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kind = event.type()
        if watched is not self._close:
            if kind is QEvent.Type.Resize:
                self.setGeometry(self.window().rect())
        elif kind is QEvent.Type.ShortcutOverride and _is_escape(event):
            # Else the window would take it for going back.
            event.accept()
            return True
        elif kind is QEvent.Type.KeyPress and _is_escape(event):
            self._on_close()
            return True
        elif kind is QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and event.key() in _TABS:
            return True
        elif (
            kind is QEvent.Type.FocusOut
            and isinstance(event, QFocusEvent)
            and event.reason() is not Qt.FocusReason.ActiveWindowFocusReason
        ):
            self._go()
        return super().eventFilter(watched, event)

    def _on_close(self) -> None:
        before = self._before
        self._go()
        if before is not None and shiboken6.isValid(before):
            before.setFocus(Qt.FocusReason.OtherFocusReason)

    def _go(self) -> None:
        self._close.removeEventFilter(self)
        self.window().removeEventFilter(self)
        self.hide()
        self.deleteLater()


_TABS = (Qt.Key.Key_Tab, Qt.Key.Key_Backtab)


def _is_escape(event: QEvent) -> bool:
    return isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_Escape
