"""Things to pick: one of several, or any of several, each a whole card with its own mark."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QCheckBox,
    QHBoxLayout,
    QRadioButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from keyapp.gui.kit import Kit
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.texts import label

__all__ = ["Option", "Picks", "Tick"]


class _Mark(QWidget):
    """The round or square mark of its parent, drawn as the parent stands."""

    def __init__(self, kit: Kit, is_round: bool) -> None:
        super().__init__()
        self._kit = kit
        self._round = is_round
        self.setFixedSize(SPACE.icon, SPACE.icon)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, event: QPaintEvent) -> None:
        owner = self.parent()
        on = isinstance(owner, QAbstractButton) and owner.isChecked()
        look = self._kit.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(SPACE.line, SPACE.line, -SPACE.line, -SPACE.line)
        painter.setPen(QPen(look.colour("accent" if on else "edge"), SPACE.line))
        painter.setBrush(look.colour("sheet"))
        if self._round:
            painter.drawEllipse(box)
            if on:
                painter.setBrush(look.colour("accent"))
                painter.setPen(Qt.PenStyle.NoPen)
                painter.drawEllipse(box.center(), box.width() / 4, box.height() / 4)
        else:
            painter.setBrush(look.colour("accent" if on else "sheet"))
            painter.drawRoundedRect(box, SPACE.line, SPACE.line)
            if on:
                painter.setPen(QPen(look.colour("on_accent"), SPACE.line))
                w, h = box.width(), box.height()
                corners = ((0.2, 0.55), (0.42, 0.75), (0.8, 0.25))
                painter.drawPolyline(QPolygonF([QPointF(box.x() + x * w, box.y() + y * h) for x, y in corners]))
        painter.end()


def _paint_face(button: QAbstractButton, kit: Kit) -> None:
    look = kit.look
    painter = QPainter(button)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    inset = SPACE.ring
    box = QRectF(button.rect()).adjusted(inset, inset, -inset, -inset)
    ground = "tint" if button.isChecked() else "hover" if button.underMouse() else "sheet"
    painter.setBrush(look.colour(ground))
    painter.setPen(
        QPen(look.colour("accent" if button.isChecked() else "edge"), SPACE.line if button.isChecked() else SPACE.hair)
    )
    painter.drawRoundedRect(box, SPACE.corner, SPACE.corner)
    if button.hasFocus():
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(look.colour("accent"), SPACE.ring))
        half = SPACE.ring / 2
        ring = QRectF(button.rect()).adjusted(half, half, -half, -half)
        painter.drawRoundedRect(ring, SPACE.corner + half, SPACE.corner + half)
    painter.end()


def _fill(
    button: QAbstractButton, kit: Kit, text: str, note: str, figure: str, side: int, is_round: bool, tall: bool
) -> FigureView | None:
    """Lay out mark, figure and texts inside a button."""
    pad = SPACE.medium
    says = label(text, "lead" if tall else "")
    # No word is cut in two or cut off, however large the text.
    measure = QFontMetrics(says.font())
    widest = max((measure.horizontalAdvance(word) for word in text.split()), default=0)
    entire = measure.horizontalAdvance(text)
    if not (note or figure or tall) and entire <= SPACE.label_width:
        # A short text alone stays on one line.
        widest = entire
    says.setMinimumWidth(min(widest + SPACE.line, SPACE.list_width))
    parts = QVBoxLayout()
    parts.setSpacing(SPACE.hair)
    is_plain = not (note or figure or tall)
    parts.addWidget(says)
    if note:
        parts.addWidget(label(note, "small"))
    if not is_plain:
        parts.addStretch(1)
    line = QHBoxLayout()
    line.setSpacing(SPACE.small)
    line.addWidget(_Mark(kit, is_round), 0, Qt.AlignmentFlag.AlignVCenter if is_plain else Qt.AlignmentFlag.AlignTop)
    view = FigureView(kit, figure, side, "") if figure else None
    if tall:
        line.addLayout(parts, 1)
        whole = QVBoxLayout(button)
        if view is not None:
            whole.addWidget(view, 0, Qt.AlignmentFlag.AlignHCenter)
        whole.addLayout(line)
        whole.addStretch(1)
        whole.setSpacing(SPACE.medium)
        whole.setContentsMargins(pad, pad, pad, pad)
    else:
        if view is not None:
            line.addWidget(view, 0, Qt.AlignmentFlag.AlignTop)
        line.addLayout(parts, 1)
        line.setContentsMargins(pad, SPACE.small, pad, SPACE.small)
        button.setLayout(line)
    for child in button.findChildren(QWidget):
        child.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
    button.setMinimumHeight(SPACE.target + 2 * SPACE.ring)
    button.setCursor(Qt.CursorShape.PointingHandCursor)
    policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
    policy.setHeightForWidth(True)
    button.setSizePolicy(policy)
    button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    return view


class Option(QRadioButton):
    """One of several: a card with a mark, a text, a note and perhaps a figure (above the text where `tall`)."""

    def __init__(
        self,
        kit: Kit,
        text: str,
        name: str,
        *,
        note: str = "",
        figure: str = "",
        side: int = SPACE.thumb,
        tall: bool = False,
        says: str = "",
    ) -> None:
        super().__init__()
        self._kit = kit
        self.setObjectName(name)
        self.setAccessibleName(says or text)
        self.setAccessibleDescription(note)
        self.figure_view = _fill(self, kit, text, note, figure, side, True, tall)

    def sizeHint(self) -> QSize:
        inside = self.layout()
        return inside.sizeHint() if inside is not None else super().sizeHint()

    def minimumSizeHint(self) -> QSize:
        inside = self.layout()
        return inside.minimumSize() if inside is not None else super().minimumSizeHint()

    def hitButton(self, at: QPoint) -> bool:
        return self.rect().contains(at)

    def paintEvent(self, event: QPaintEvent) -> None:
        _paint_face(self, self._kit)


class Tick(QCheckBox):
    """Any of several: a card with a square mark."""

    def __init__(
        self, kit: Kit, text: str, name: str, *, note: str = "", figure: str = "", side: int = SPACE.thumb
    ) -> None:
        super().__init__()
        self._kit = kit
        self.setObjectName(name)
        self.setAccessibleName(text)
        self.setAccessibleDescription(note)
        _fill(self, kit, text, note, figure, side, False, False)

    def sizeHint(self) -> QSize:
        inside = self.layout()
        return inside.sizeHint() if inside is not None else super().sizeHint()

    def minimumSizeHint(self) -> QSize:
        inside = self.layout()
        return inside.minimumSize() if inside is not None else super().minimumSizeHint()

    def hitButton(self, at: QPoint) -> bool:
        return self.rect().contains(at)

    def paintEvent(self, event: QPaintEvent) -> None:
        _paint_face(self, self._kit)


class Picks(QObject):
    """A group of options as one stop of the Tab key: arrows pick and go round, Return goes on.

    `on_pick` gets the index picked by the user; `on_return`, where given, is called for Return.
    """

    def __init__(
        self,
        owner: QWidget,
        options: Sequence[QAbstractButton],
        on_pick: Callable[[int], None],
        on_return: Callable[[], None] | None = None,
        picked: int | None = None,
    ) -> None:
        super().__init__(owner)
        self._options = list(options)
        self._on_return = on_return
        group = self._group = QButtonGroup(owner)
        for index, option in enumerate(options):
            group.addButton(option, index)
            option.installEventFilter(self)
            if index != (picked or 0):
                option.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        if picked is not None:
            options[picked].setChecked(True)
        self._on_pick = on_pick
        self._is_silent = False
        group.idToggled.connect(self._on_toggled)

    def choose(self, index: int) -> None:
        """Show this one as picked, without telling anyone."""
        has_focus = any(option.hasFocus() for option in self._options)
        self._is_silent = True
        self._options[index].setChecked(True)
        self._is_silent = False
        if has_focus:
            self._options[index].setFocus(Qt.FocusReason.OtherFocusReason)

    def choose_none(self) -> None:
        """Show none as picked."""
        if self._group.checkedButton() is None:
            return
        self._group.setExclusive(False)
        for option in self._options:
            option.setChecked(False)
        self._group.setExclusive(True)
        for index, option in enumerate(self._options):
            option.setFocusPolicy(Qt.FocusPolicy.ClickFocus if index else Qt.FocusPolicy.StrongFocus)

    def _on_toggled(self, index: int, on: bool) -> None:
        if on and not self._is_silent:
            self._on_pick(index)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = {
                Qt.Key.Key_Right: 1,
                Qt.Key.Key_Down: 1,
                Qt.Key.Key_Left: -1,
                Qt.Key.Key_Up: -1,
            }.get(Qt.Key(event.key()))
            if step is not None:
                here = next(i for i, option in enumerate(self._options) if option is watched)
                there = self._options[(here + step) % len(self._options)]
                there.setChecked(True)
                there.setFocus(Qt.FocusReason.TabFocusReason)
                return True
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._on_return is not None:
                self._on_return()
                return True
        return super().eventFilter(watched, event)
