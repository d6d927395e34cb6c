"""A whole card to press: a figure, a title and some lines."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.texts import label, symbol

__all__ = ["CardButton"]


class CardButton(QPushButton):
    """Shows `title` with a figure before it and lines beneath, and calls `on_press`.

    A line is a text with the role it is shown in, and the name of a symbol before it or nothing.
    """

    def __init__(
        self,
        kit: Kit,
        name: str,
        title: str,
        lines: Sequence[tuple[str, str, str]],
        figure: str,
        on_press: Callable[[], None],
        *,
        says: str = "",
        side: int = SPACE.thumb,
    ) -> None:
        super().__init__()
        self._kit = kit
        self.setObjectName(name)
        self.setAccessibleName(says or title)
        self.setAccessibleDescription(". ".join(text for text, _, _ in lines))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoDefault(True)  # Return presses it as Space does
        self.clicked.connect(lambda: on_press())
        across = QHBoxLayout(self)
        across.setContentsMargins(SPACE.medium, SPACE.small, SPACE.medium, SPACE.small)
        across.setSpacing(SPACE.large)
        if figure:
            across.addWidget(FigureView(kit, figure, side, ""), 0, Qt.AlignmentFlag.AlignTop)
        texts = QVBoxLayout()
        texts.setSpacing(SPACE.hair)
        texts.addStretch(1)
        texts.addWidget(label(title, "strong"))
        for text, role, icon in lines:
            texts.addLayout(_line(kit, text, role, icon))
        texts.addStretch(1)
        across.addLayout(texts, 1)
        across.addWidget(symbol(kit, "right", "accent"), 0, Qt.AlignmentFlag.AlignVCenter)
        for child in self.findChildren(QWidget):
            child.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        inside = self.layout()
        return inside.totalHeightForWidth(width) if inside is not None else super().heightForWidth(width)

    def sizeHint(self) -> QSize:
        inside = self.layout()
        return inside.totalSizeHint() if inside is not None else super().sizeHint()

    def minimumSizeHint(self) -> QSize:
        inside = self.layout()
        return inside.totalMinimumSize() if inside is not None else super().minimumSizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._kit.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide = SPACE.ring if self.hasFocus() else SPACE.hair
        half = wide / 2
        ground = "tint" if self.isDown() else "hover" if self.underMouse() else "sheet"
        painter.setBrush(look.colour(ground))
        painter.setPen(QPen(look.colour("accent" if self.hasFocus() else "edge"), wide))
        box = QRectF(self.rect()).adjusted(half, half, -half, -half)
        painter.drawRoundedRect(box, SPACE.corner, SPACE.corner)
        painter.end()


def _line(kit: Kit, text: str, role: str, icon: str) -> QBoxLayout:
    line = QHBoxLayout()
    line.setSpacing(SPACE.tiny)
    if icon:
        tone = "signal" if role.startswith("signal") else "soft"
        line.addWidget(symbol(kit, icon, tone), 0, Qt.AlignmentFlag.AlignTop)
    line.addWidget(label(text, role), 1)
    return line
