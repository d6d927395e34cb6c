"""A list that drops down."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QStandardItem, QStandardItemModel, QWheelEvent
from PySide6.QtWidgets import QComboBox, QSizePolicy

from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE

__all__ = ["Select"]

Entry = tuple[str, object]


class Select(QComboBox):
    """One of many, by name. An entry whose value is `Select.HEADING` is a heading and cannot be chosen."""

    HEADING = "heading"

    def __init__(
        self, kit: Kit, name: str, says: str, entries: Sequence[Entry], on_pick: Callable[[object], None]
    ) -> None:
        super().__init__()
        self._kit = kit
        self._entries = list(entries)
        self.setObjectName(name)
        self.setAccessibleName(says)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMinimumContentsLength(1)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        model = QStandardItemModel(self)
        for text, value in entries:
            item = QStandardItem(text)
            if value is Select.HEADING:
                item.setEnabled(False)
            model.appendRow(item)
        self.setModel(model)
        self.activated.connect(lambda index: on_pick(self._entries[index][1]))

    def choose(self, value: object) -> None:
        """Show the entry with this value, without telling anyone."""
        for index, (_, one) in enumerate(self._entries):
            if one == value and one is not Select.HEADING:
                self.setCurrentIndex(index)
                return
        self.setCurrentIndex(0)

    def sizeHint(self) -> QSize:
        return QSize(super().sizeHint().width() + SPACE.huge, SPACE.target + 2 * SPACE.line)

    def minimumSizeHint(self) -> QSize:
        return QSize(SPACE.thumb, SPACE.target + 2 * SPACE.line)

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._kit.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide = SPACE.ring if self.hasFocus() else SPACE.hair
        half = wide / 2
        box = QRectF(self.rect()).adjusted(half, half, -half, -half)
        painter.setPen(QPen(look.colour("accent" if self.hasFocus() else "edge"), wide))
        painter.setBrush(look.colour("hover" if self.underMouse() else "sheet"))
        painter.drawRoundedRect(box, SPACE.corner, SPACE.corner)
        inner = self.rect().adjusted(SPACE.medium, 0, -SPACE.medium - SPACE.icon, 0)
        painter.setPen(look.colour("ink"))
        text = self.fontMetrics().elidedText(self.currentText(), Qt.TextElideMode.ElideRight, inner.width())
        painter.drawText(inner, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)
        arrow = look.icon("down", "soft")
        top = (self.height() - SPACE.icon) // 2
        arrow.paint(painter, self.width() - SPACE.small - SPACE.icon, top, SPACE.icon, SPACE.icon)
        painter.end()
