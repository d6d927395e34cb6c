"""Every page against the picture of it that a person has approved.

To approve new pictures run with KEYAPP_APPROVE=1 and look at each of them. A page that no longer looks
like its picture leaves the page, and the difference, in the test's folder.
"""

from __future__ import annotations

import inspect
import os
from collections.abc import Callable
from importlib import import_module
from pathlib import Path

import pytest
from harness import TO_COBWEB, TO_WIDOW, Bench
from PIL import Image, ImageChops
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

import keyapp.gui.pages
from keyapp.errors import UserError
from keyapp.gui.app import make_application
from keyapp.gui.draft import NoteDraft
from keyapp.gui.early import Early
from keyapp.gui.first_page import FirstLead, FirstPage
from keyapp.gui.look import Mode
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Stage
from keyapp.model import Choice, View
from keyapp.notes import BetterQuestion, Found, Kind, Note, Span

APPROVED = Path(__file__).resolve().parent / "approved"
SIZE = (960, 720)
MOST_ON_AVERAGE = 1.5
"""Mean absolute difference over pixels and channels, of 255: room for another smoothing of letters, not
for another layout."""

MOST_FAR_OFF = 0.01
"""Share of pixels that may differ by more than a quarter of the scale."""


def start(bench: Bench) -> None:
    bench.settle()


def emergency(bench: Bench) -> None:
    bench.window.show_emergency()


def settings(bench: Bench) -> None:
    bench.session.set_hurt(False)
    bench.session.set_up(thing="animal", region="GA", month=6)


def couplet(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.draft_lead(choice=Choice.FIRST)


def couplet_dark(bench: Bench) -> None:
    couplet(bench)
    bench.look.set_mode(Mode.DARK)


def seen(bench: Bench) -> None:
    bench.go()
    bench.session.see("web-shape")
    bench.session.draft_seen(states=frozenset({"orb", "tangle"}))


def asked(bench: Bench) -> None:
    bench.go()
    bench.session.ask("web-shape")
    bench.session.draft_seen(states=frozenset({"tangle"}))


def feared(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    for character, state in (("skin", "glossy"), ("gait", "runs"), ("mark", "none")):
        bench.session.see(character)
        bench.session.draft_seen(states=frozenset({state}), view_seen=True)
        bench.session.report()
    bench.session.open_feared()
    bench.session.fear_about("widows")


def feared_dark(bench: Bench) -> None:
    feared(bench)
    bench.look.set_mode(Mode.DARK)


def feared_choice(bench: Bench) -> None:
    bench.go()
    bench.session.open_feared()
    bench.session.find_feared("spider")


def result(bench: Bench) -> None:
    bench.go(*TO_WIDOW)


def unknown(bench: Bench) -> None:
    bench.go(*TO_COBWEB[:1])
    bench.answer(Choice.NEITHER)
    bench.answer(Choice.NEITHER)
    bench.session.show_stage(Stage.RESULT)


def families(bench: Bench) -> None:
    bench.session.open_families()
    bench.session.browsing.look_for("cobweb")
    bench.session.browsing.pick("cobweb", True)


def families_kind(bench: Bench) -> None:
    bench.session.open_families()
    bench.session.browsing.open("widow")
    for _ in range(3):
        bench.settle()


def families_kind_dark(bench: Bench) -> None:
    families_kind(bench)
    bench.look.set_mode(Mode.DARK)
    bench.settle()


def families_compare(bench: Bench) -> None:
    bench.session.open_families()
    bench.session.browsing.compare("widow", "cobweb", "orb", "wolf")
    for _ in range(3):
        bench.settle()


def families_names(bench: Bench) -> None:
    bench.session.open_families()
    bench.session.browsing.show_names()
    bench.session.browsing.ask_name("spider")


CLEAR = {"thing": "animal", "leg-count": "eight", "web-shape": "orb", "skin": "dull", "gait": "runs", "mark": "none"}


def short(bench: Bench) -> None:
    bench.session.set_hurt(False)
    bench.session.open_short()
    bench.session.draft_short(state="animal")


def short_dark(bench: Bench) -> None:
    short(bench)
    bench.look.set_mode(Mode.DARK)


def short_to_the_end(bench: Bench, shown: dict[str, str]) -> None:
    session = bench.session
    session.set_hurt(False)
    session.open_short()
    while session.short.question is not None or session.can_ask_more_short():
        if session.short.question is None:
            session.ask_more_short()
        name = session.short.question or ""
        session.draft_short(state=shown.get(name, ""), cant_tell=name not in shown)
        session.answer_short()


def short_keep(bench: Bench) -> None:
    short_to_the_end(bench, {"thing": "animal"})


def short_leave(bench: Bench) -> None:
    short_to_the_end(bench, {**CLEAR, "carries": "sac"})


def short_move(bench: Bench) -> None:
    short_to_the_end(bench, {**CLEAR, "carries": "nothing"})


def note(bench: Bench) -> None:
    """Finds made by hand, so that the picture does not follow how words are read."""
    span = Span(0, 1)
    finds = (
        Found(1, Kind.STATES, span, "it runs", characters=("gait",), states=("runs",)),
        Found(2, Kind.STATES, span, "no web", characters=("web-shape",), states=("none",), view=View.WEB),
        Found(3, Kind.SPOT, span, "in the room", value="room"),
    )
    better = (BetterQuestion("huge", span, "huge", "body-length", False),)
    text = "it runs, no web, in the room, huge"
    bench.go(Choice.SECOND)
    bench.settle()
    bench.session._note = NoteDraft(text, Note(text, "en", finds, better))
    bench.session.noted.emit()


def parked(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.session.park("web in the shed")
    bench.go(Choice.SECOND, Choice.SECOND)
    bench.session.open_parked()


def checked(bench: Bench) -> None:
    bench.session.set_up(told="button spider")
    bench.go(*TO_COBWEB)
    bench.session.show_stage(Stage.RESULT)
    for _ in range(6):
        bench.settle()
    bench.session.ask_part(True)
    bench.settle()
    page = bench.window.page
    assert isinstance(page, Page)
    page.show_widget(bench.named("final-check"))


def no_key(bench: Bench) -> None:
    error = UserError("The key has 2 problems and cannot be used.", where="keys", fix="Mend them and start again.")
    bench.window.show_no_key(error, ("taxa/a.yaml:3: [K201] Wrong.  Fix: Right it.", "start.yaml:7: [K202] Wrong."))


def early(bench: Bench) -> None:
    leads = (FirstLead("Eight legs.", "", ""), FirstLead("Six legs.", "", ""))
    safety = "Not ruled out: widow spiders. Do not handle."
    page = FirstPage("start/legs", safety, "How many legs?", "Count one side.", leads, "can't tell", "neither fits")
    bench.session.early = Early(page)
    bench.session.go_on()
    bench.session.pick_early(Choice.FIRST)


def big(bench: Bench) -> None:
    bench.go(Choice.SECOND)
    bench.window.toggle_big_picture()
    bench.window.showNormal()
    bench.window.resize(*SIZE)
    bench.session.draft_lead(choice=Choice.FIRST)


NOT_OPEN = ("early",)
"""Pages of a window whose key is not open yet."""

LOOK_FOR: dict[str, tuple[str, Callable[[Bench], None], str]] = {
    "start": ("StartPage", start, "The question first; two buttons on one line; nothing cut off."),
    "early": ("EarlyPage", early, "The danger first; two cards of one height; said that the key is being opened."),
    "big": ("BigCoupletPage", big, "White ground, black text, larger all through; the danger, the question, no more."),
    "emergency": ("EmergencyPage", emergency, "Both numbers large, in lining figures; the danger panel first."),
    "settings": ("SettingsPage", settings, "Cards in two columns, fields in line with their labels."),
    "couplet": ("CoupletPage", couplet, "Two cards of one height; the question about the view beneath; Next at rest."),
    "couplet-dark": ("CoupletPage", couplet_dark, "The same in the dark; figures on light plates."),
    "seen": ("SeenPage", seen, "The list to the left; two ticks; one of these or all at once."),
    "seen-asked": ("SeenPage", asked, "One question alone, without the list; can't tell beside report."),
    "feared": ("FearedPage", feared, "Not ruled out in the danger style; for and against side by side; one way on."),
    "feared-dark": ("FearedPage", feared_dark, "The same in the dark."),
    "feared-choice": ("FearedPage", feared_choice, "Dangers first, a field for any name, what has that name."),
    "result": ("ResultPage", result, "The safety line on top in the danger style; bars with words; keep away."),
    "result-unknown": ("ResultPage", unknown, "Not identified, do not handle; no name in the heading."),
    "families": ("FamiliesPage", families, "The calm line first; the danger panel on top of the list; one tick set."),
    "families-kind": ("FamiliesPage", families_kind, "Cautions in the danger style before all else; nothing to move."),
    "families-kind-dark": ("FamiliesPage", families_kind_dark, "The same in the dark."),
    "families-compare": ("FamiliesPage", families_compare, "Four columns of one width; what separates best on top."),
    "families-names": ("FamiliesPage", families_names, "Dangers first, then the others, then the one question."),
    "short": ("ShortPage", short, "The question, two cards to a row with their numbers, can't tell; Next lit."),
    "short-dark": ("ShortPage", short_dark, "The same in the dark."),
    "short-keep": ("ShortPage", short_keep, "Keep away in the danger style, largest on the page; no garden, no steps."),
    "short-leave": ("ShortPage", short_leave, "Leave it, with why; no steps."),
    "short-move": ("ShortPage", short_move, "Move it only if it must go; the steps beneath, two to a row."),
    "note": ("CoupletPage", note, "Safety line first, then the line and its finds, numbered, with their words."),
    "parked": ("ParkedPage", parked, "The label to type; beneath, what is put aside with age and what is open."),
    "result-checked": ("ResultPage", checked, "Which part does not fit: each with what it should be."),
    "no-key": ("NoKeyPage", no_key, "Both problems listed; the emergency button stands out."),
}
"""Name of the picture -> class of the page, how to get there, and what to look for."""


def off(difference: Image.Image) -> tuple[float, float]:
    """Mean of the largest channel's difference (0-255), and the share of pixels more than 64 off."""
    red, green, blue = difference.split()
    counts = ImageChops.lighter(red, ImageChops.lighter(green, blue)).histogram()
    total = sum(counts)
    return sum(value * count for value, count in enumerate(counts)) / total, sum(counts[65:]) / total


@pytest.mark.parametrize("name", LOOK_FOR)
def test_a_page_looks_as_approved(name: str, tmp_path: Path) -> None:
    make_application(["keyapp"])
    bench = Bench(tmp_path)
    bench.window.resize(*SIZE)
    if name not in NOT_OPEN:
        bench.open(keep=False)
    LOOK_FOR[name][1](bench)
    bench.settle()
    bench.window.rail.theme.setFocus(Qt.FocusReason.TabFocusReason)
    bench.settle()
    shot = tmp_path / f"{name}.png"
    bench.window.centralWidget().grab().save(str(shot))
    bench.look.set_big(False)
    bench.look.set_mode(Mode.LIGHT)
    bench.close()
    if os.environ.get("KEYAPP_APPROVE"):
        APPROVED.mkdir(exist_ok=True)
        with Image.open(shot) as picture:
            picture.convert("RGB").quantize(128).save(APPROVED / f"{name}.png", optimize=True)
    with Image.open(shot) as one, Image.open(APPROVED / f"{name}.png") as other:
        assert one.size == other.size
        difference = ImageChops.difference(one.convert("RGB"), other.convert("RGB"))
    difference.save(tmp_path / f"{name}-difference.png")
    average, far = off(difference)
    assert average <= MOST_ON_AVERAGE, LOOK_FOR[name][2]
    assert far <= MOST_FAR_OFF, LOOK_FOR[name][2]


def test_every_page_has_an_approved_picture() -> None:
    folder = Path(keyapp.gui.pages.__file__).parent
    modules = [
        import_module(f"keyapp.gui.pages.{path.stem}") for path in folder.glob("*.py") if path.stem != "__init__"
    ]
    classes = {
        one.__name__
        for module in modules
        for one in vars(module).values()
        if inspect.isclass(one) and issubclass(one, QWidget) and one.__module__ == module.__name__ and one is not Page
    }
    assert classes == {page for page, _, _ in LOOK_FOR.values()}
    assert {path.stem for path in APPROVED.glob("*.png")} == set(LOOK_FOR)


def test_a_changed_page_would_be_seen(tmp_path: Path) -> None:
    with Image.open(APPROVED / "start.png") as picture:
        base = picture.convert("RGB")
    moved = ImageChops.offset(base, 0, 6)
    average, far = off(ImageChops.difference(base, moved))
    assert average > MOST_ON_AVERAGE
    assert far > MOST_FAR_OFF
