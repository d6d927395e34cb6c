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
from keyapp.gui.look import Mode
from keyapp.gui.pages.page import Page
from keyapp.gui.session import Stage
from keyapp.model import Choice

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


def no_key(bench: Bench) -> None:
    error = UserError("The key has 2 problems and cannot be used.", where="keys", fix="Mend them and start again.")
    bench.window.show_no_key(error, ("taxa/a.yaml:3: [K201] Wrong.  Fix: Right it.", "start.yaml:7: [K202] Wrong."))


LOOK_FOR: dict[str, tuple[str, Callable[[Bench], None], str]] = {
    "start": ("StartPage", start, "The question first; two buttons on one line; nothing cut off."),
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
    bench.open(keep=False)
    LOOK_FOR[name][1](bench)
    bench.settle()
    bench.window.rail.theme.setFocus(Qt.FocusReason.TabFocusReason)
    bench.settle()
    shot = tmp_path / f"{name}.png"
    bench.window.centralWidget().grab().save(str(shot))
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
