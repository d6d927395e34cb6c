"""A text whose terms can be opened, so that what they mean is told in place."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import (
    QAbstractTextDocumentLayout,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextOption,
)
from PySide6.QtWidgets import QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from keyapp.browse import Span, spans
from keyapp.gui.kit import Kit
from keyapp.gui.look import font
from keyapp.gui.session import Session
from keyapp.gui.theme import SPACE
from keyapp.gui.widgets.reading_column import ReadingColumn
from keyapp.gui.widgets.texts import clear, label, panel, reveal

__all__ = ["TermText", "term_text"]

_COLOURS = {"soft": "soft", "small": "soft", "science": "soft"}
_UNBROKEN = "\u00a0"


def term_text(kit: Kit, session: Session, text: str, name: str, role: str = "") -> QWidget:
    """`text` with its terms to be opened, or as a plain label where it has none. `name` tells it apart on its page."""
    found = spans(text, session.keyset.glossary)
    return TermText(kit, session, text, name, found, role) if found else label(text, role)


class TermText(QWidget):
    """The text, and beneath it the meaning of each term that is open; which are open is kept in the session."""

    def __init__(
        self, kit: Kit, session: Session, text: str, name: str, found: tuple[Span, ...], role: str = ""
    ) -> None:
        super().__init__()
        self._session = session
        self._name = name
        self._found = found
        inside = QVBoxLayout(self)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(SPACE.small)
        self.paragraph = _Paragraph(kit, text, found, role)
        inside.addWidget(self.paragraph)
        self._notes = QVBoxLayout()
        self._notes.setSpacing(SPACE.small)
        inside.addLayout(self._notes)
        for span, link in zip(found, self.paragraph.links, strict=True):
            link.setObjectName(f"term-{name}-{span.term.replace(' ', '-')}")
            link.clicked.connect(lambda _=False, term=span.term: self._on_clicked(term))
        session.folded.connect(self._on_folded)
        self._draw()

    def _fold(self, term: str) -> str:
        return f"term-{self._name}-{term}"

    def _on_clicked(self, term: str) -> None:
        self._session.unfold(self._fold(term), not self._session.is_unfolded(self._fold(term)))
        above = self.parentWidget()
        while above is not None and not isinstance(above, ReadingColumn):
            above = above.parentWidget()
        note = self.findChild(QWidget, self._note(term))
        if above is not None and note is not None:
            above.show_widget(note)

    def _note(self, term: str) -> str:
        return f"meaning-{self._name}-{term.replace(' ', '-')}"

    def _on_folded(self, fold: str) -> None:
        if fold in {self._fold(span.term) for span in self._found}:
            self._draw()

    def _draw(self) -> None:
        words, glossary = self._session.words, self._session.keyset.glossary
        clear(self._notes)
        for span, link in zip(self._found, self.paragraph.links, strict=True):
            is_open = self._session.is_unfolded(self._fold(span.term))
            entry = "families.term-open" if is_open else "families.term"
            link.setAccessibleName(words.fixed(entry, term=span.term))
            meaning = glossary[span.term].means.say(self._session.language)
            link.setAccessibleDescription(meaning if is_open else "")
            link.setToolTip(meaning)
            if is_open:
                frame, inside = panel("note", SPACE.hair, SPACE.small)
                frame.setObjectName(self._note(span.term))
                inside.addWidget(label(span.term, "strong"))
                inside.addWidget(label(meaning))
                self._notes.addWidget(frame)
        reveal(self)
        self.updateGeometry()


class _Paragraph(QLabel):
    """Holds the plain text for whoever reads it out, and paints it with its terms underlined with dots."""

    def __init__(self, kit: Kit, text: str, found: tuple[Span, ...], role: str) -> None:
        super().__init__(text)
        self._found = found
        self.setFont(font(role))
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self._document = QTextDocument(self)
        self._document.setDocumentMargin(0)
        self._document.setDefaultFont(font(role))
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WordWrap)
        self._document.setDefaultTextOption(option)
        self._write(kit, text, role)
        self.links = [_Link(self, kit) for _ in found]
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _write(self, kit: Kit, text: str, role: str) -> None:
        plain = QTextCharFormat()
        plain.setForeground(kit.look.colour(_COLOURS.get(role, "ink")))
        marked = QTextCharFormat(plain)
        marked.setForeground(kit.look.colour("accent"))
        marked.setUnderlineStyle(QTextCharFormat.UnderlineStyle.DotLine)
        lines = QTextBlockFormat()
        # Lines as high as the least target, so that a term can be hit.
        lines.setLineHeight(SPACE.wide, QTextBlockFormat.LineHeightTypes.MinimumHeight.value)
        cursor = QTextCursor(self._document)
        cursor.setBlockFormat(lines)
        at = 0
        for span in self._found:
            cursor.insertText(text[at : span.start], plain)
            # A term does not break over two lines, so that it is one thing to point at.
            cursor.insertText(text[span.start : span.end].replace(" ", _UNBROKEN), marked)
            at = span.end
        cursor.insertText(text[at:], plain)

    def sizeHint(self) -> QSize:
        self._document.setTextWidth(-1)
        wide = min(round(self._document.idealWidth()) + 1, SPACE.measure)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        return QSize(SPACE.portrait // 2, SPACE.wide)

    def heightForWidth(self, width: int) -> int:
        self._document.setTextWidth(width)
        return round(self._document.size().height() + 0.5)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._document.setTextWidth(self.width())
        for span, link in zip(self._found, self.links, strict=True):
            box = self._box(span)
            grown = max(0, SPACE.wide - round(box.height())) // 2 + 1
            link.setGeometry(box.toAlignedRect().adjusted(-SPACE.line, -grown, SPACE.line, grown))

    def _box(self, span: Span) -> QRectF:
        """Where a term stands; of one broken after a hyphen, its first part."""
        block = self._document.firstBlock()
        origin = self._document.documentLayout().blockBoundingRect(block).topLeft()
        laid = block.layout()
        line = laid.lineForTextPosition(span.start)
        last = line.textStart() + line.textLength()
        left, right = (_x(line.cursorToX(place)) for place in (span.start, min(span.end, last)))
        return QRectF(origin.x() + left, origin.y() + line.y(), right - left, line.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        self._document.setTextWidth(self.width())
        painter = QPainter(self)
        self._document.documentLayout().draw(painter, QAbstractTextDocumentLayout.PaintContext())
        painter.end()


class _Link(QPushButton):
    """A term within the text as a thing to press; the text shows through it."""

    def __init__(self, parent: QWidget, kit: Kit) -> None:
        super().__init__(parent)
        self._kit = kit
        self.setProperty("role", "term")
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoDefault(True)  # Return presses it as Space does
        self.setMinimumSize(SPACE.wide, SPACE.wide)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.hasFocus() or self.underMouse():
            wide = SPACE.line if self.hasFocus() else SPACE.hair
            half = wide / 2
            painter.setPen(QPen(self._kit.look.colour("accent"), wide))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(half, half, -half, -half), SPACE.tiny, SPACE.tiny)
        painter.end()


def _x(found: object) -> float:
    """The place along a line; depending on its version the binding gives the place in the text as well."""
    return float(found[0]) if isinstance(found, tuple) else float(found)  # type: ignore[arg-type]
