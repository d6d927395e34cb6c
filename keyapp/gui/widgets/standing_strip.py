"""The standing as a strip that folds out: bars and words, no numbers."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRectF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QVBoxLayout, QWidget

from keyapp.gui.kit import Kit
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.fold import Fold
from keyapp.gui.widgets.texts import label, with_symbol

__all__ = ["Bar", "standing_fold"]

_MOST = 8


class Bar(QWidget):
    """A bar filled to `share` (0-1)."""

    def __init__(self, kit: Kit, share: float, says: str) -> None:
        super().__init__()
        self._kit = kit
        self._share = min(1.0, max(0.0, share))
        self.setAccessibleName(says)
        self.setMinimumWidth(SPACE.thumb)
        self.setFixedHeight(SPACE.bar + SPACE.tiny)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._kit.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        half = SPACE.hair / 2
        box = QRectF(0, SPACE.line, self.width(), SPACE.bar).adjusted(half, half, -half, -half)
        painter.setPen(look.colour("edge"))
        painter.setBrush(look.colour("sheet"))
        painter.drawRoundedRect(box, SPACE.tiny, SPACE.tiny)
        if self._share > 0:
            filled = QRectF(box)
            filled.setWidth(max(SPACE.tiny, box.width() * self._share))
            painter.setPen(look.colour("accent"))
            painter.setBrush(look.colour("accent"))
            painter.drawRoundedRect(filled, SPACE.tiny, SPACE.tiny)
        painter.end()


def standing_fold(kit: Kit, session: Session) -> Fold:
    """How the groups stand: those that are likely, and every danger that is not ruled out."""
    reading, words = session.reading, session.words
    dangers = {one.group for one in reading.not_ruled_out}
    likely = session.keyset.weights.likely
    shown = [
        (group, chance)
        for index, (group, chance) in enumerate(reading.standing.groups)
        if (chance >= likely and index < _MOST) or (group.level == "danger" and group.name in dangers)
    ]

    def body(held: QVBoxLayout) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE.medium)
        grid.setVerticalSpacing(SPACE.small)
        for at, (group, chance) in enumerate(shown):
            name, how = words.group(group), words.chance(chance)
            is_open = group.level == "danger" and group.name in dangers
            if is_open:
                mark = QCoreApplication.translate("Standing", "{name}: not ruled out").replace("{name}", name)
                grid.addLayout(with_symbol(kit, "warning", mark, "", "signal"), at, 0)
            else:
                grid.addWidget(label(name), at, 0)
            grid.addWidget(Bar(kit, chance, f"{name}: {how}"), at, 1)
            grid.addWidget(label(how, "soft", wrap=False), at, 2)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 3)
        held.addLayout(grid)
        note = QCoreApplication.translate("Standing", "How the groups compare after the answers so far. No name yet.")
        held.addWidget(label(note, "small"))

    return Fold(kit, session, "standing", QCoreApplication.translate("Standing", "How it stands so far"), body)
