"""The page of all families and signs: found, read about, held side by side, by keyboard, and never a verdict."""

from __future__ import annotations

import pytest
from harness import Bench, Count
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QLineEdit, QWidget

from keyapp.browse import spans
from keyapp.gui.browsing import Browsing, Place, View
from keyapp.gui.look import Mode
from keyapp.gui.session import Stage
from keyapp.gui.widgets.figure_view import FigureView
from keyapp.gui.widgets.season_strip import SeasonStrip
from keyapp.gui.widgets.term_text import TermText
from keyapp.gui.widgets.tiles import Tiles
from keyapp.model import Case, Choice, Settings

CTRL = Qt.KeyboardModifier.ControlModifier
VIEWS = tuple(View)


def go(bench: Bench, view: View = View.LIST) -> None:
    bench.session.open_families()
    browsing = bench.session.browsing
    if view is View.KIND:
        browsing.open("widow")
    elif view is View.COMPARE:
        browsing.compare("widow", "cobweb", "orb")
    elif view is View.NAMES:
        browsing.show_names()
        browsing.ask_name("spider")
    bench.settle()
    for _ in range(10):
        bench.settle()


def cards(bench: Bench) -> list[str]:
    page = bench.window.page
    assert page is not None
    found = [w for w in page.findChildren(QAbstractButton) if w.isVisible() and w.objectName().startswith("open-")]
    found.sort(key=lambda w: w.mapTo(page, w.rect().topLeft()).y())
    return [w.objectName().removeprefix("open-") for w in found]


def names(bench: Bench) -> set[str]:
    return {w.objectName() for w in bench.window.findChildren(QWidget) if w.isVisible()}


# Getting there and back ------------------------------------------------------------------------


def test_the_rail_leads_there_and_back_to_where_one_was(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    case = bench.session.case
    bench.click("rail-families")
    assert bench.session.stage is Stage.FAMILIES
    assert bench.window.rail.families.isChecked()
    assert not bench.window.rail.work.isChecked()
    bench.click("rail-work")
    assert bench.session.stage is Stage.KEY
    assert bench.window.rail.work.isChecked()
    assert bench.session.case == case


def test_it_can_be_opened_before_the_key_is_there(closed: Bench) -> None:
    closed.click("rail-families")
    assert "Opening the key" in closed.texts()
    closed.open()
    assert cards(closed) == ["widow", "cobweb", "orb", "wolf", "insect"]


def test_looking_up_leaves_the_enquiry_alone(bench: Bench) -> None:
    count = Count(bench.session.changed)
    for view in VIEWS:
        go(bench, view)
    assert count.times == 0


# The list --------------------------------------------------------------------------------------


def test_the_list_holds_everything_once_dangers_on_top(bench: Bench) -> None:
    go(bench)
    assert cards(bench) == ["widow", "cobweb", "orb", "wolf", "insect"]
    assert bench.named("families-dangers").property("role") == "danger"
    assert "Looking up a name does not tell you what you have." in bench.texts()


def test_typing_finds_without_leaving_the_field(bench: Bench) -> None:
    go(bench)
    assert bench.focused() == "find"
    field = QApplication.focusWidget()
    bench.type("cobwb")
    assert QApplication.focusWidget() is field
    assert cards(bench) == ["widow", "cobweb"]
    assert "Belongs to: Cobweb spiders" in bench.texts()
    bench.tab_to("find-clear")
    bench.press(Qt.Key.Key_Space)
    assert bench.focused() == "find"
    assert len(cards(bench)) == 5


def test_a_wrong_name_is_told_as_such(bench: Bench) -> None:
    go(bench)
    bench.type("button spider")
    assert cards(bench) == ["widow"]
    assert "Wrongly called “button spider”" in bench.texts()


def test_a_name_that_is_not_there_is_no_comfort(bench: Bench) -> None:
    go(bench)
    bench.type("zzqq")
    assert cards(bench) == []
    assert "Treat it as unknown and do not handle it." in bench.texts()


def test_words_of_injury_open_the_emergency_card_here_too(bench: Bench) -> None:
    go(bench)
    bench.type("bitten")
    assert bench.window.is_emergency
    assert bench.session.case.settings.hurt is True


def test_the_list_is_narrowed_by_keyboard_and_keeps_the_danger(bench: Bench) -> None:
    go(bench)
    bench.tab_to("fold-families-narrow")
    bench.press(Qt.Key.Key_Space)
    bench.tab_to("filter-spot")
    for _ in range(5):
        bench.press(Qt.Key.Key_Down)
        if bench.session.browsing.filters.get("spot") == "plants":
            break
    assert bench.session.browsing.filters == {"spot": "plants"}
    assert bench.focused() == "filter-spot"
    assert cards(bench) == ["widow"]
    assert "Not usual in such a spot. It may still turn up." in bench.texts()
    assert "Left out by your choices: 4." in bench.texts()
    bench.tab_to("families-all")
    bench.press(Qt.Key.Key_Space)
    assert len(cards(bench)) == 5


def test_a_fifth_is_not_taken_and_two_are_enough(bench: Bench) -> None:
    go(bench)
    assert not bench.named("families-compare").isEnabled()
    for one in ("widow", "cobweb", "orb", "wolf"):
        bench.click(f"pick-{one}")
    assert not bench.named("pick-insect").isEnabled()
    assert bench.session.browsing.picked == ("widow", "cobweb", "orb", "wolf")
    bench.click("pick-wolf")
    assert bench.named("pick-insect").isEnabled()
    bench.click("families-compare")
    assert bench.session.browsing.place.view is View.COMPARE


def test_back_from_a_kind_finds_the_focus_where_it_was(bench: Bench) -> None:
    go(bench)
    bench.tab_to("open-orb")
    bench.press(Qt.Key.Key_Return)
    assert bench.session.browsing.place == Place(View.KIND, "orb")
    bench.press(Qt.Key.Key_Escape)
    assert bench.session.browsing.place == Place()
    assert bench.focused() == "open-orb"


# A kind ----------------------------------------------------------------------------------------


def test_cautions_come_first_and_nothing_may_be_moved(bench: Bench) -> None:
    go(bench, View.KIND)
    text = bench.texts()
    assert (
        text.index("Caution for widow.") < text.index("Nothing is identified here.") < text.index("What a widow looks")
    )
    assert "Advice for widow." in text
    bench.session.browsing.open("cobweb")
    bench.settle()
    assert "Caution for cobweb." in bench.texts()
    # Advice of a kind that is not dangerous may say to move it.
    assert "Advice for cobweb." not in bench.texts()
    assert "Leave it alone, and do not handle it." in bench.texts()


def test_a_kind_is_told_in_full(bench: Bench) -> None:
    go(bench, View.KIND)
    text = bench.texts()
    for said in (
        "Checked 2026-11-01. To be looked at again by 2027-11-01.",
        "The widow is glossy, the cobweb spider dull.",
        "“button spider”",
        "That is a name for another animal.",
        "Met all year.",
        "The widow eats flies.",
        "Source: common practice",
        "The description rests on: common practice.",
        "Any bite or sting can bring on an allergic reaction.",
    ):
        assert said in text
    assert bench.named("families-cautions").property("role") == "danger"
    assert "Medically important" in text
    strip = bench.window.findChild(SeasonStrip)
    assert strip is not None
    assert strip.accessibleName() == "Met all year."


def test_a_figure_is_enlarged_and_closed_by_key(bench: Bench) -> None:
    go(bench, View.KIND)
    bench.tab_to("figure-widow")
    small = bench.named("figure-widow").width()
    bench.press(Qt.Key.Key_Return)
    sheet = bench.named("figure-sheet")
    assert sheet.accessibleName() == "A black spider."
    assert max(w.width() for w in sheet.findChildren(FigureView)) > small
    assert bench.focused() == "figure-close"
    bench.press(Qt.Key.Key_Tab)
    assert bench.focused() == "figure-close"
    bench.press(Qt.Key.Key_Escape)
    assert not bench.has("figure-sheet")
    assert bench.focused() == "figure-widow"
    assert bench.session.browsing.place == Place(View.KIND, "widow")


def test_the_emergency_card_goes_before_an_enlarged_figure(bench: Bench) -> None:
    go(bench, View.KIND)
    bench.click("figure-widow")
    assert bench.has("figure-sheet")
    bench.press(Qt.Key.Key_F1)
    assert bench.window.is_emergency
    assert not bench.has("figure-sheet")


def test_from_a_kind_to_is_it_a_and_back(bench: Bench) -> None:
    go(bench, View.KIND)
    bench.click("families-feared")
    assert bench.session.stage is Stage.FEARED
    assert bench.session.feared == "widows"
    bench.click("leave-feared")
    assert bench.session.stage is Stage.FAMILIES
    bench.click("families-work")
    assert bench.session.stage is Stage.HURT


# Terms -----------------------------------------------------------------------------------------


def test_a_term_is_opened_in_place_by_key_and_closed_again(bench: Bench) -> None:
    go(bench, View.KIND)
    text = "It sits in a web, or near the web."
    made = TermText(bench.kit, bench.session, text, "trial", spans(text, bench.session.keyset.glossary))
    page = bench.window.page
    assert page is not None
    page.body.addWidget(made)  # type: ignore[attr-defined]
    bench.settle()
    (link,) = made.paragraph.links
    assert made.paragraph.text() == "It sits in a web, or near the web."
    assert link.accessibleName() == "web: what does it mean?"
    assert link.width() >= 24
    # As high as a target must be and no higher, so that it does not lie over the lines beside it.
    assert 24 <= link.height() <= 28
    assert made.paragraph.rect().intersects(link.geometry())
    link.setFocus()
    bench.press(Qt.Key.Key_Space)
    assert "Silk threads." in [one.text() for one in made.findChildren(QLabel)]
    assert link.hasFocus()
    assert link.accessibleName() == "web, explained"
    bench.press(Qt.Key.Key_Space)
    bench.settle()
    assert "Silk threads." not in [one.text() for one in made.findChildren(QLabel)]


def test_a_long_text_with_terms_is_as_high_as_its_lines(bench: Bench) -> None:
    text = "It sits in a web. " * 20
    made = TermText(bench.kit, bench.session, text, "long", spans(text, bench.session.keyset.glossary))
    heights = [made.paragraph.heightForWidth(width) for width in (200, 400, 800)]
    assert heights == sorted(heights, reverse=True)
    assert made.hasHeightForWidth()
    made.deleteLater()


# Side by side ----------------------------------------------------------------------------------


def test_what_tells_them_apart_comes_first(bench: Bench) -> None:
    go(bench, View.COMPARE)
    lines = [n for n in names(bench) if n.startswith("line-")]
    assert {"line-skin", "line-web-shape", "line-mark"} <= set(lines)
    assert "line-gait" not in lines
    assert "One difference alone never settles it." in bench.texts()
    assert "Medically important" in bench.texts()


def test_one_can_be_taken_out_and_another_added_by_key(bench: Bench) -> None:
    go(bench, View.COMPARE)
    bench.tab_to("take-orb")
    bench.press(Qt.Key.Key_Space)
    assert bench.session.browsing.picked == ("widow", "cobweb")
    bench.tab_to("families-add")
    bench.press(Qt.Key.Key_Down)
    assert len(bench.session.browsing.picked) == 3


def test_columns_give_way_where_there_is_no_room(bench: Bench) -> None:
    go(bench, View.COMPARE)
    page = bench.window.page
    assert page is not None
    wide = max(one.across for one in page.findChildren(Tiles) if one.isVisible())
    bench.window.resize(640, 480)
    bench.settle()
    narrow = max(one.across for one in page.findChildren(Tiles) if one.isVisible())
    assert wide == 3
    assert narrow == 2


# What people call a ... ------------------------------------------------------------------------


def test_a_name_leads_to_who_is_meant_and_what_to_ask(bench: Bench) -> None:
    go(bench)
    bench.click("families-names")
    assert bench.focused() == "name"
    bench.type("spider")
    found = names(bench)
    assert {"meant-widow", "meant-cobweb", "meant-orb", "meant-wolf"} <= found
    assert bench.has("names-dangers")
    assert "What of web-shape?" in bench.texts()
    assert "Over the telephone: Say, what of web-shape?" in bench.texts()
    assert "Fits: Widow spider, Cobweb spider" in bench.texts()
    assert "One answer never settles it." in bench.texts()


def test_working_it_out_presets_nothing_but_what_they_were_told(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.set_up(month=5, region="GA")
    before = bench.session.case
    go(bench, View.NAMES)
    bench.click("names-work")
    assert bench.session.stage is Stage.HURT
    assert bench.session.case == Case(Settings(told="spider"))
    bench.session.undo()
    bench.session.undo()
    assert bench.session.case == before


# All of them -----------------------------------------------------------------------------------


@pytest.mark.parametrize("view", VIEWS)
def test_everything_one_can_use_has_a_name_and_room(bench: Bench, view: View) -> None:
    go(bench, view)
    for fold in [n for n in names(bench) if n.startswith("fold-")]:
        bench.click(fold)
    found = [w for w in bench.window.findChildren(QWidget) if isinstance(w, QAbstractButton | QLineEdit)]
    found = [w for w in found if w.isVisible() and not w.objectName().startswith("qt_")]
    assert [w.objectName() for w in found if not w.accessibleName()] == []
    assert [w for w in found if not w.objectName()] == []
    assert [w.objectName() for w in found if w.width() < 24 or w.height() < 24] == []
    known = [w.objectName() for w in found]
    assert len(known) == len(set(known))


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("size", [(1024, 768), (640, 480)])
def test_tab_goes_round_and_what_has_the_focus_is_in_view(bench: Bench, view: View, size: tuple[int, int]) -> None:
    bench.window.resize(*size)
    go(bench, view)
    start = bench.focused()
    seen = []
    for _ in range(80):
        bench.press(Qt.Key.Key_Tab)
        seen.append(bench.focused())
        widget = QApplication.focusWidget()
        assert widget is not None
        assert not widget.visibleRegion().isEmpty(), widget.objectName()
        if bench.focused() == start:
            break
    assert seen[-1] == start
    assert "" not in seen


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("zoom", [1, 2])
def test_nothing_is_wider_than_the_page(bench: Bench, view: View, zoom: int) -> None:
    bench.window.resize(1024 if zoom == 2 else 640, 768)
    bench.look.set_zoom(zoom)
    go(bench, view)
    page = bench.window.page
    assert page is not None
    column = page._column  # type: ignore[attr-defined]
    assert column._shown.minimumSizeHint().width() <= column.viewport().width()
    bench.look.set_zoom(1)


@pytest.mark.parametrize("view", VIEWS)
def test_a_change_of_theme_keeps_the_place(bench: Bench, view: View) -> None:
    go(bench, view)
    before = bench.texts()
    bench.look.set_mode(Mode.DARK)
    for _ in range(10):
        bench.settle()
    assert bench.texts() == before
    bench.look.set_mode(Mode.LIGHT)


def test_control_f_looks_for_a_name_from_anywhere(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.press(Qt.Key.Key_F, CTRL)
    assert bench.session.stage is Stage.FAMILIES
    assert bench.focused() == "find"


# Where one is ----------------------------------------------------------------------------------


def test_places_are_kept_to_go_back_to_and_changes_are_told_once(application: QApplication) -> None:
    browsing = Browsing()
    count = Count(browsing.moved)
    browsing.open("widow")
    browsing.open("widow")
    browsing.compare("widow", "orb", "widow")
    assert count.times == 2
    assert browsing.picked == ("widow", "orb")
    browsing.go_back()
    assert browsing.place == Place(View.KIND, "widow")
    browsing.go_back()
    browsing.go_back()
    assert browsing.place == Place()
    assert not browsing.can_go_back
    assert count.times == 4


def test_choices_are_told_once_and_taken_back(application: QApplication) -> None:
    browsing = Browsing()
    count = Count(browsing.moved)
    browsing.narrow(month=5)
    browsing.narrow(month=5)
    browsing.narrow(month=None)
    browsing.narrow_nothing()
    assert browsing.filters == {}
    assert count.times == 2
    for one in "abcde":
        browsing.pick(one, True)
    assert browsing.picked == ("a", "b", "c", "d")
