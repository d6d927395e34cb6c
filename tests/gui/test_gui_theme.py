"""Contrast, roles and sizes. Thresholds from WCAG 2.2, success criteria 1.4.3, 1.4.11 and 2.5.8."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import keyapp.gui
from keyapp.gui.theme import BIG_DARK, BIG_LIGHT, CONTROL_PAIRS, DARK, LIGHT, SPACE, TEXT_PAIRS, Colours, contrast

GUI = Path(keyapp.gui.__file__).parent
every_theme = pytest.mark.parametrize(
    "theme", [LIGHT, DARK, BIG_LIGHT, BIG_DARK], ids=["light", "dark", "big-light", "big-dark"]
)
DRAWN = sorted([*(GUI / "pages").glob("*.py"), *(GUI / "widgets").glob("*.py")])


@pytest.mark.parametrize(
    ("one", "other", "wanted"),
    [("#000000", "#FFFFFF", 21.0), ("#767676", "#FFFFFF", 4.5422), ("#777777", "#FFFFFF", 4.4781)],
)
def test_contrast_agrees_with_worked_values(one: str, other: str, wanted: float) -> None:
    assert contrast(one, other) == pytest.approx(wanted, abs=5e-5)
    assert contrast(other, one) == contrast(one, other)


@every_theme
@pytest.mark.parametrize("pair", TEXT_PAIRS, ids="-on-".join)
def test_text_can_be_read(theme: Colours, pair: tuple[str, str]) -> None:
    assert contrast(getattr(theme, pair[0]), getattr(theme, pair[1])) >= 4.5


@pytest.mark.parametrize("theme", [BIG_LIGHT, BIG_DARK], ids=["big-light", "big-dark"])
@pytest.mark.parametrize("pair", TEXT_PAIRS, ids="-on-".join)
def test_the_big_picture_has_more_contrast(theme: Colours, pair: tuple[str, str]) -> None:
    assert contrast(getattr(theme, pair[0]), getattr(theme, pair[1])) >= 7.0


@every_theme
@pytest.mark.parametrize("pair", CONTROL_PAIRS, ids="-on-".join)
def test_controls_and_focus_can_be_seen(theme: Colours, pair: tuple[str, str]) -> None:
    assert contrast(getattr(theme, pair[0]), getattr(theme, pair[1])) >= 3.0


def test_every_colour_but_the_hairline_is_in_a_tested_pair() -> None:
    used = {role for pair in (*TEXT_PAIRS, *CONTROL_PAIRS) for role in pair}
    assert set(Colours._fields) - used == {"rule"}


def test_targets_are_large_enough() -> None:
    assert SPACE.target >= 24


@pytest.mark.parametrize("path", DRAWN, ids=lambda path: path.name)
def test_pages_and_widgets_name_roles_not_colours_or_pixels(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert re.findall(r"#[0-9A-Fa-f]{3,8}\b", text) == []
    assert re.findall(r"\d+(?:px|pt)\b", text) == []
    assert re.findall(r"QColor\(|setStyleSheet\(", text) == []
    limits = r"setFixed\w+|setM(?:in|ax)imum(?:Width|Height|Size)"
    sized = rf"(?:{limits}|setSpacing|addSpacing|setIndent)\(([^()]*)\)"
    times = r"\b\d+ \* |(?: \* | // )\d+\b"
    numbers = [found for found in re.findall(sized, text) if re.search(r"\b[1-9]\d*\b", re.sub(times, "", found))]
    assert numbers == []
