"""Every page through the eyes of those who do not use a mouse, a screen, colour or small print.

Thresholds from WCAG 2.2: 1.4.3 and 1.4.11 (contrast), 1.4.1 (not by colour alone), 1.4.4 (text at 200 %),
2.1.1 and 2.1.4 (keyboard, single letters), 2.4.7 (focus), 2.5.8 (targets).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from harness import STAGES, Bench
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QAccessibleInterface, QImage, QShortcut
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFrame, QLabel, QPushButton, QRadioButton, QWidget

import keyapp.gui
from keyapp.gui.look import Mode
from keyapp.gui.session import Stage
from keyapp.gui.theme import contrast
from keyapp.gui.widgets.reading_column import Footer
from keyapp.model import Choice

GUI = Path(keyapp.gui.__file__).parent


def to(stage: Stage) -> Callable[[Bench], None]:
    return lambda bench: bench.to(stage)


def emergency(bench: Bench) -> None:
    bench.window.show_emergency()


def view_asked(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.draft_lead(choice=Choice.FIRST)


def feared_answered(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.open_feared()
    bench.session.fear_about("widows")


def unfolded(bench: Bench) -> None:
    bench.to(Stage.KEY)
    for fold in ("standing", "trail", "terms", "settle"):
        bench.session.unfold(fold, True)


def with_message(bench: Bench) -> None:
    bench.reporter.note("Something to know.", "And what to do about it.")


def big(bench: Bench) -> None:
    view_asked(bench)
    bench.window.toggle_big_picture()


PAGES: dict[str, Callable[[Bench], None]] = {
    **{str(stage): to(stage) for stage in STAGES},
    "emergency": emergency,
    "view": view_asked,
    "feared-answered": feared_answered,
    "unfolded": unfolded,
    "message": with_message,
    "big": big,
}
every_page = pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
every_mode = pytest.mark.parametrize("mode", [Mode.LIGHT, Mode.DARK], ids=str)


@pytest.fixture
def seen(bench: Bench) -> Iterator[Bench]:
    """The bench, put back to its ordinary look afterwards."""
    yield bench
    bench.look.set_big(False)
    bench.look.set_zoom(1.0)
    bench.look.set_mode(Mode.LIGHT)
    bench.settle()


def turn_to(bench: Bench, page: Callable[[Bench], None]) -> None:
    page(bench)
    bench.settle()
    bench.settle()


def walk(thing: QAccessibleInterface) -> Iterator[QAccessibleInterface]:
    yield thing
    for index in range(thing.childCount()):
        child = thing.child(index)
        if child is not None and child.isValid():
            yield from walk(child)


def usable(bench: Bench) -> list[QAccessibleInterface]:
    """All that can have the focus, as a screen reader meets it."""
    whole = QAccessible.queryAccessibleInterface(bench.window)
    return [one for one in walk(whole) if one.state().focusable and not one.state().invisible]


def stops(bench: Bench) -> list[QWidget]:
    """The widgets that the Tab key goes through, in its order."""
    start = QApplication.focusWidget()
    found = []
    for _ in range(150):
        bench.press(Qt.Key.Key_Tab)
        focused = QApplication.focusWidget()
        if focused is None or focused in found:
            break
        found.append(focused)
    assert start is not None
    return found


def pixels(image: QImage) -> Counter[int]:
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    return Counter(memoryview(image.constBits()).cast("I").tolist())


def hex_of(pixel: int) -> str:
    return f"#{pixel & 0xFFFFFF:06X}"


def place(widget: QWidget, window: QWidget) -> QRect:
    """Where a widget stands in the window, less what is scrolled out of view."""
    shown = widget.visibleRegion().boundingRect()
    return QRect(widget.mapTo(window, shown.topLeft()), shown.size())


# Names, roles, states ----------------------------------------------------------------------------


@every_page
def test_all_that_can_have_the_focus_has_a_name_a_role_and_a_state(seen: Bench, page: Callable[[Bench], None]) -> None:
    turn_to(seen, page)
    found = usable(seen)
    assert len(found) >= 3
    for one in found:
        name = one.text(QAccessible.Text.Name)
        assert name.strip(), one.object()
        assert one.role() not in (QAccessible.Role.NoRole, QAccessible.Role.Client, QAccessible.Role.Pane), name
        assert not one.state().invalid, name


@every_page
def test_what_is_checked_or_off_is_told_as_such(seen: Bench, page: Callable[[Bench], None]) -> None:
    turn_to(seen, page)
    for widget in seen.window.findChildren(QAbstractButton):
        if widget.isVisible() and widget.objectName():
            state = QAccessible.queryAccessibleInterface(widget).state()
            assert bool(state.checked) == widget.isChecked(), widget.objectName()
            assert bool(state.disabled) != widget.isEnabled(), widget.objectName()


def test_leads_are_radio_buttons_with_what_the_picture_shows(seen: Bench) -> None:
    seen.go()
    lead = QAccessible.queryAccessibleInterface(seen.named("lead-first"))
    assert lead.role() is QAccessible.Role.RadioButton
    assert not lead.state().checked
    seen.press(Qt.Key.Key_Space)
    assert lead.state().checked


# Keyboard ----------------------------------------------------------------------------------------


def test_arrows_move_check_and_go_round_without_answering(seen: Bench) -> None:
    seen.go()
    names = ["lead-first", "lead-second", "lead-cant-tell", "lead-neither"]
    for forth, back in ((Qt.Key.Key_Right, Qt.Key.Key_Left), (Qt.Key.Key_Down, Qt.Key.Key_Up)):
        for key, order in ((forth, [*names[1:], names[0]]), (back, [*names[:0:-1], names[0]])):
            for name in order:
                seen.press(key)
                assert seen.focused() == name
                checked = [one.objectName() for one in seen.window.page.findChildren(QRadioButton) if one.isChecked()]
                assert [one for one in checked if one in names] == [name]
    assert seen.session.case.answers == ()
    assert seen.session.couplet == "start/legs"


@every_page
def test_every_act_is_reached_by_tab_in_reading_order(seen: Bench, page: Callable[[Bench], None]) -> None:
    turn_to(seen, page)
    found = stops(seen)
    groups = {widget.group() for widget in found if isinstance(widget, QAbstractButton)} - {None}
    for widget in seen.window.findChildren(QAbstractButton):
        if widget.isVisible() and widget.isEnabled() and widget.objectName():
            assert widget in found or widget.group() in groups, widget.objectName()
    on_page = [one for one in found if seen.window.page.isAncestorOf(one)]
    starts = [i for i, one in enumerate(found) if one in on_page and found[i - 1] not in on_page]
    assert len(starts) <= 1, "the page is left in its midst"
    first = min(range(len(on_page)), key=lambda i: _row_and_place(on_page[i], seen.window.page))
    in_order = on_page[first:] + on_page[:first]
    places = [_reading_place(one, seen.window.page) for one in in_order]
    # Things in one row may differ in height by a little; a step back up the page may not be larger.
    back = [
        (before.objectName(), after.objectName())
        for before, after, old, new in zip(in_order, in_order[1:], places, places[1:])
        if new[0] < old[0] - 60 and new[1] <= old[1]
    ]
    assert back == []


def _row_and_place(widget: QWidget, page: QWidget) -> tuple[int, int]:
    """What stands within 30 pixels of height is one row."""
    down, across = _reading_place(widget, page)
    return down // 30, across


def _reading_place(widget: QWidget, page: QWidget) -> tuple[int, int]:
    """Down and across; the row of buttons at the foot comes after all that scrolls above it."""
    at = widget.mapTo(page, QPoint(0, 0))
    foot = page.findChild(Footer)
    return at.y() + (100_000 if foot is not None and foot.isAncestorOf(widget) else 0), at.x()


def test_no_shortcut_is_a_single_letter(seen: Bench) -> None:
    for shortcut in seen.window.findChildren(QShortcut):
        key = shortcut.key()[0]
        held = key.keyboardModifiers()
        is_typed = key.key() < Qt.Key.Key_Escape
        is_held = bool(held & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier))
        assert is_held or not is_typed, shortcut.key().toString()


@pytest.mark.parametrize("stage", [Stage.HURT, Stage.KEY, Stage.RESULT])
def test_letters_do_nothing_where_nothing_is_typed(seen: Bench, stage: Stage) -> None:
    seen.to(stage)
    before = seen.session.case, seen.session.stage
    for letter in "abcdefghijklmnopqrstuvwxyz0123456789":
        QTest.keyClicks(QApplication.focusWidget(), letter)
    seen.settle()
    assert (seen.session.case, seen.session.stage) == before


# Seeing ------------------------------------------------------------------------------------------


@every_mode
@every_page
def test_the_focus_can_be_seen(seen: Bench, page: Callable[[Bench], None], mode: Mode) -> None:
    """At least as many pixels as its outline change by 3:1 where something gets the focus."""
    seen.look.set_mode(mode)
    turn_to(seen, page)
    for widget in stops(seen):
        widget.setFocus(Qt.FocusReason.TabFocusReason)
        seen.settle()
        where = place(widget, seen.window)
        on = seen.window.grab(where).toImage()
        elsewhere = seen.window.rail.work if widget is not seen.window.rail.work else seen.window.rail.help
        scrolled = place(widget, seen.window)
        elsewhere.setFocus(Qt.FocusReason.TabFocusReason)
        seen.settle()
        assert place(widget, seen.window) == scrolled
        off = seen.window.grab(where).toImage()
        pairs = Counter((a, b) for a, b in zip(_row_of(on), _row_of(off), strict=True) if a != b)
        far = sum(count for (a, b), count in pairs.items() if contrast(hex_of(a), hex_of(b)) >= 3.0)
        assert far >= where.width() + where.height(), (widget.objectName(), far, where)


def _row_of(image: QImage) -> list[int]:
    return memoryview(image.convertToFormat(QImage.Format.Format_RGB32).constBits()).cast("I").tolist()


@every_mode
@every_page
def test_every_text_on_the_screen_stands_out_from_what_is_behind_it(
    seen: Bench, page: Callable[[Bench], None], mode: Mode
) -> None:
    """Measured on the pixels: the most common colour of a label is its ground, the farthest its text."""
    seen.look.set_mode(mode)
    turn_to(seen, page)
    seen.window.rail.theme.setFocus(Qt.FocusReason.TabFocusReason)
    seen.settle()
    checked = 0
    for widget in seen.window.findChildren(QLabel):
        if not widget.text().strip() or not widget.isVisible() or not widget.isEnabled():
            continue
        where = place(widget, seen.window)
        if where.width() < 12 or where.height() < widget.fontInfo().pixelSize():
            continue
        colours = pixels(seen.window.grab(where).toImage())
        ground = colours.most_common(1)[0][0]
        farthest = max(contrast(hex_of(one), hex_of(ground)) for one in colours)
        size, is_bold = widget.fontInfo().pixelSize(), widget.font().bold()
        # Large: 18 pt, or 14 pt bold, at 96 pixels to the inch.
        least = 3.0 if size >= 24 or (is_bold and size >= 18.67) else 4.5
        assert farthest >= least, (widget.text(), farthest)
        checked += 1
    assert checked >= 3


@every_page
def test_targets_are_24_pixels_or_more(seen: Bench, page: Callable[[Bench], None]) -> None:
    turn_to(seen, page)
    for widget in seen.window.findChildren(QWidget):
        if widget.isVisible() and widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.objectName():
            assert min(widget.width(), widget.height()) >= 24, widget.objectName()


@every_mode
@every_page
def test_danger_has_a_word_and_a_symbol_and_shows_in_grey(
    seen: Bench, page: Callable[[Bench], None], mode: Mode
) -> None:
    seen.look.set_mode(mode)
    turn_to(seen, page)
    for panel in seen.window.findChildren(QFrame):
        if panel.property("role") != "danger" or not panel.isVisible():
            continue
        labels = [one for one in panel.findChildren(QLabel) if one.isVisible()]
        symbols = [one for one in labels if not one.pixmap().isNull()]
        assert any(one.text().strip() for one in labels)
        assert symbols
        grey = symbols[0].grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
        shades = pixels(grey)
        ground = shades.most_common(1)[0][0]
        assert max(contrast(hex_of(one), hex_of(ground)) for one in shades) >= 3.0


def test_every_danger_button_has_a_symbol(seen: Bench) -> None:
    for widget in seen.window.findChildren(QAbstractButton):
        if widget.property("role") in ("danger", "rail-signal"):
            assert widget.text().strip()
            assert not widget.icon().isNull()


@pytest.mark.parametrize("zoom", [1.0, 1.5, 2.0])
@every_page
def test_no_text_is_cut_off(seen: Bench, page: Callable[[Bench], None], zoom: float) -> None:
    seen.window.resize(1024, 768)
    seen.look.set_zoom(zoom)
    turn_to(seen, page)
    assert cut(seen) == []


def cut(bench: Bench) -> list[str]:
    """Texts of labels and buttons that have less room than they need, or reach beyond the window."""
    found = []
    for widget in bench.window.findChildren(QWidget):
        if not isinstance(widget, QLabel | QPushButton) or not widget.isVisible() or not widget.text().strip():
            continue
        needed = widget.sizeHint()
        if isinstance(widget, QLabel) and widget.wordWrap():
            fits = widget.heightForWidth(widget.width()) <= widget.height() and _longest_word(widget) <= widget.width()
        elif isinstance(widget, QPushButton) and widget.layout() is not None:
            continue
        else:
            fits = needed.width() <= widget.width() and needed.height() <= widget.height()
        left = widget.mapTo(bench.window, QPoint(0, 0)).x()
        if not fits or left < 0 or left + widget.width() > bench.window.width():
            found.append(f"{widget.text()[:60]} {widget.size().toTuple()} of {needed.toTuple()}")
    return found


def _longest_word(label: QLabel) -> int:
    measure = label.fontMetrics()
    return max(measure.horizontalAdvance(word) for word in label.text().split())


def test_text_grows_and_shrinks_by_keys(seen: Bench) -> None:
    held = Qt.KeyboardModifier.ControlModifier
    height = seen.named("hurt-no").height()
    for _ in range(6):
        seen.press(Qt.Key.Key_Plus, held)
    assert seen.look.zoom == 2.0
    assert seen.named("hurt-no").height() > 1.4 * height
    seen.press(Qt.Key.Key_Minus, held)
    assert seen.look.zoom == 1.75
    seen.press(Qt.Key.Key_0, held)
    assert seen.look.zoom == 1.0
    assert seen.named("hurt-no").height() == height


def test_nothing_moves_by_itself() -> None:
    """There is no animation of ours to switch off."""
    movers = ("QPropertyAnimation", "QVariantAnimation", "QTimeLine", "QMovie", "QGraphicsEffect", "animateClick")
    found = [path.name for path in GUI.rglob("*.py") if any(m in path.read_text(encoding="utf-8") for m in movers)]
    assert found == []


# The big picture ---------------------------------------------------------------------------------


def test_the_big_picture_is_larger_has_fewer_words_and_keeps_the_danger(seen: Bench) -> None:
    seen.go(Choice.SECOND)
    before, words = seen.texts(), len(seen.texts().split())
    large = seen.named("lead-first").figure_view.width()
    size = seen.window.page.findChildren(QLabel)[0].fontInfo().pixelSize()
    seen.window.resize(1600, 1000)
    seen.press(Qt.Key.Key_F11)
    assert seen.look.is_big
    assert type(seen.window.page).__name__ == "BigCoupletPage"
    assert len(seen.texts().split()) < 0.7 * words
    danger = next(line for line in before.splitlines() if "Not ruled out" in line)
    assert danger in seen.texts()
    assert seen.named("lead-first").figure_view.width() > 1.3 * large
    assert min(one.fontInfo().pixelSize() for one in seen.window.page.findChildren(QLabel) if one.text()) > size
    seen.press(Qt.Key.Key_Escape)
    assert not seen.look.is_big
    assert seen.texts() == before


def test_in_the_big_picture_the_same_answers_are_given(seen: Bench) -> None:
    seen.go()
    seen.press(Qt.Key.Key_F11)
    assert seen.focused() == "lead-first"
    seen.press(Qt.Key.Key_Right)
    assert seen.session.case.answers == ()
    seen.press(Qt.Key.Key_Return)
    assert [answer.choice for answer in seen.session.case.answers] == [Choice.SECOND]
    seen.press(Qt.Key.Key_Space)
    assert seen.has("lead-view-yes")
    seen.press(Qt.Key.Key_Return)
    assert seen.focused() == "lead-view-yes"
    seen.click("back")
    assert seen.session.couplet == "start/legs"


def test_the_rail_has_the_big_picture_too_and_escape_closes_messages_first(seen: Bench) -> None:
    seen.click("rail-big")
    assert seen.look.is_big
    with_message(seen)
    seen.press(Qt.Key.Key_Escape)
    assert seen.look.is_big
    assert seen.window.message_bar.message is None
    seen.press(Qt.Key.Key_F1)
    assert seen.window.is_emergency
    seen.press(Qt.Key.Key_Escape)
    assert seen.look.is_big
    assert not seen.window.is_emergency
    seen.press(Qt.Key.Key_Escape)
    assert not seen.look.is_big
