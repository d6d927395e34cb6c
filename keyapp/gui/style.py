"""The style sheet, written out of the theme's roles."""

from __future__ import annotations

from keyapp.gui.theme import SPACE, TYPE, Colours, Space

__all__ = ["style_sheet"]


def style_sheet(c: Colours) -> str:
    """The whole window's style sheet in these colours.

    Widgets choose their part with the dynamic property `role`.
    """
    s, t = SPACE, TYPE
    pad = s.ring - s.hair
    # Symbols on buttons grow with the text; where it is not enlarged they keep the size they were given.
    icons = "" if s.icon == Space.icon else f"QPushButton {{ icon-size: {s.icon - s.line}px; }}\n"
    return f"""
QScrollArea {{ border: none; }}
QToolTip {{ background: {c.sheet}; color: {c.ink}; border: {s.hair}px solid {c.edge}; padding: {s.tiny}px; }}

QFrame[role="card"] {{ background: {c.sheet}; border: {s.hair}px solid {c.rule}; border-radius: {s.corner}px; }}
QFrame[role="quiet"] {{ background: transparent; border: none; }}
QFrame[role="danger"] {{
    background: {c.signal_tint}; border: {s.line}px solid {c.signal}; border-radius: {s.corner}px; }}
QFrame[role="rule"] {{ background: {c.rule}; border: none; max-height: {s.hair}px; min-height: {s.hair}px; }}
QFrame[role="note"] {{
    background: {c.tint}; border: none; border-left: {s.ring}px solid {c.accent}; border-radius: {s.line}px; }}
QFrame[role="message"] {{ background: {c.sheet}; border: none; border-bottom: {s.line}px solid {c.ink}; }}
QFrame[role="footer"] {{ background: {c.sheet}; border: none; border-top: {s.hair}px solid {c.rule}; }}
QFrame[role="rail"] {{ background: {c.sheet}; border: none; border-right: {s.hair}px solid {c.rule}; }}

QPushButton {{
    background: {c.sheet}; border: {s.hair}px solid {c.edge}; border-radius: {s.corner}px;
    padding: {s.tiny + pad}px {s.small + pad}px; min-height: {s.target - 2 * (s.tiny + s.ring)}px; }}
{icons}QPushButton:hover {{ background: {c.hover}; }}
QPushButton:pressed {{ background: {c.tint}; }}
QPushButton:focus {{
    border: {s.ring}px solid {c.accent}; padding: {s.tiny}px {s.small}px; }}
QPushButton:disabled {{ color: {c.soft}; background: transparent; border: {s.hair}px dashed {c.edge}; }}
QPushButton[role="primary"] {{
    background: {c.accent}; color: {c.on_accent}; border-color: {c.accent}; font-weight: 600;
    padding-left: {s.large + pad}px; padding-right: {s.large + pad}px; }}
QPushButton[role="primary"]:hover {{ border-color: {c.ink}; }}
QPushButton[role="primary"]:focus {{
    background: {c.sheet}; color: {c.accent}; border: {s.ring}px solid {c.accent};
    padding-left: {s.large}px; padding-right: {s.large}px; }}
QPushButton[role="primary"]:disabled {{
    background: transparent; color: {c.soft}; border: {s.hair}px dashed {c.edge}; }}
QPushButton[role="plain"] {{ background: transparent; border-color: transparent; color: {c.accent}; }}
QPushButton[role="plain"]:hover {{ background: {c.hover}; }}
QPushButton[role="plain"]:focus {{ border-color: {c.accent}; }}
QPushButton[role="plain"]:disabled {{ color: {c.soft}; border-color: transparent; }}
QPushButton[role="term"], QPushButton[role="term"]:focus {{
    background: transparent; border: none; padding: 0; min-height: {s.wide}px; }}
QPushButton[role="fold"] {{
    background: transparent; border-color: transparent; text-align: left; color: {c.ink};
    padding-left: {pad}px; }}
QPushButton[role="fold"]:hover {{ background: {c.hover}; }}
QPushButton[role="fold"]:focus {{ border-color: {c.accent}; padding-left: 0; }}
QPushButton[role="danger"] {{
    background: {c.signal_tint}; border-color: {c.signal}; color: {c.signal}; font-weight: 600; }}
QPushButton[role="danger"]:hover {{ background: {c.sheet}; }}
QPushButton[role="danger"]:focus {{ border-color: {c.signal}; }}

QToolButton {{
    background: transparent; border: {s.hair}px solid transparent; border-radius: {s.corner}px;
    padding: {s.small}px {s.tiny}px; font-size: {t.small}px; }}
QToolButton:hover {{ background: {c.hover}; }}
QToolButton:checked {{ background: {c.tint}; border-color: {c.accent}; font-weight: 600; }}
QToolButton:focus {{ border: {s.ring}px solid {c.accent}; padding: {s.small - pad}px {s.tiny - pad}px; }}
QToolButton[role="rail-signal"] {{ color: {c.signal}; border-color: {c.signal}; font-weight: 600; }}
QToolButton[role="rail-signal"]:hover {{ background: {c.signal_tint}; }}

QLineEdit, QDoubleSpinBox {{
    background: {c.sheet}; border: {s.hair}px solid {c.edge}; border-radius: {s.corner}px;
    padding: {s.tiny + pad}px {s.small + pad}px; min-height: {s.target - 2 * (s.tiny + s.ring)}px;
    selection-background-color: {c.accent}; selection-color: {c.on_accent}; }}
QLineEdit:focus, QDoubleSpinBox:focus {{
    border: {s.ring}px solid {c.accent}; padding: {s.tiny}px {s.small}px; }}

QDoubleSpinBox::up-button, QDoubleSpinBox::down-button {{ width: 0; border: none; }}
QDoubleSpinBox QLineEdit, QDoubleSpinBox QLineEdit:focus {{
    border: none; padding: 0; min-height: 0; background: transparent; }}

QListView, QPlainTextEdit {{
    background: {c.sheet}; border: {s.hair}px solid {c.edge}; border-radius: {s.corner}px; padding: {s.line}px;
    outline: none; }}
QListView:focus, QPlainTextEdit:focus {{ border: {s.ring}px solid {c.accent}; padding: 0; }}
QListView::item {{ min-height: {s.target - s.tiny}px; padding: {s.hair}px {s.small}px; border-radius: {s.tiny}px; }}
QListView::item:hover {{ background: {c.hover}; }}
QListView::item:selected {{ background: {c.tint}; color: {c.ink}; }}
QListView::item:disabled {{ color: {c.soft}; }}
QComboBox QAbstractItemView {{ background: {c.sheet}; border: {s.hair}px solid {c.edge}; outline: none; }}
QComboBox QAbstractItemView::item {{ min-height: {s.target - s.tiny}px; }}
QComboBox QAbstractItemView::item:selected {{ background: {c.accent}; color: {c.on_accent}; }}

QScrollBar:vertical {{ background: {c.desk}; width: {s.medium}px; margin: 0; }}
QScrollBar::handle:vertical {{
    background: {c.edge}; border-radius: {s.tiny}px; min-height: {s.huge}px; margin: {s.line}px; }}
QScrollBar:horizontal {{ background: {c.desk}; height: {s.medium}px; margin: 0; }}
QScrollBar::handle:horizontal {{
    background: {c.edge}; border-radius: {s.tiny}px; min-width: {s.huge}px; margin: {s.line}px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QProgressBar {{
    background: {c.sheet}; border: {s.hair}px solid {c.edge}; border-radius: {s.tiny}px;
    max-height: {s.small}px; min-height: {s.small}px; }}
QProgressBar::chunk {{ background: {c.accent}; border-radius: {s.tiny}px; }}
"""
