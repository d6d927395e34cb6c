"""The figures of palps, side eyes, a body beside a grain of rice, a glass wall, stings, stances: complete, true."""

from __future__ import annotations

import io
import itertools
import math
from collections.abc import Iterator
from pathlib import Path

import cairosvg
import numpy as np
import pytest
import yaml
from PIL import Image
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from keyapp.errors import UserError
from keyapp.model import Figure, Text
from keyapp.pictures.build import figure_svg
from keyapp.pictures.carriage import POSES
from keyapp.pictures.recipe import draw
from keyapp.pictures.rice import GRAIN, UNITS, body_box
from keyapp.pictures.shape import Box, Circle, Drawing, Group, Shape, box_of
from keyapp.pictures.side_eyes import side_eyes

ROOT = Path(__file__).parents[2]
STATES = {
    "palps": ("knobs-or-very-long", "thin-short"),
    "side-eyes": ("touching", "apart"),
    "body-step": ("under-rice-grain", "rice-grain-or-longer"),
    "on-glass": ("climbs", "slips"),
    "sting-tooth": ("tooth", "none"),
    "carriage": ("hung-between-knees", "clear-of-ground", "on-the-ground"),
}
COUNTS = {
    "palps-knobs-or-very-long": {"palp": 2, "bulb": 2, "ring": 2, "small-spider": 1},
    "palps-thin-short": {"palp": 2, "bulb": 0, "ring": 2, "small-spider": 0},
    "side-eyes-touching": {"eye": 8, "ring": 2},
    "side-eyes-apart": {"eye": 8, "ring": 2},
    "body-step-under-rice-grain": {"rice": 1, "leg": 8, "segment": 56, "eye": 8, "measuring-bar": 1, "scale-bar": 1},
    "body-step-rice-grain-or-longer": {"rice": 1, "leg": 8, "segment": 56, "measuring-bar": 1, "scale-bar": 1},
    "on-glass-climbs": {"spider": 1, "leg": 8, "segment": 56, "motion": 1, "skid": 0},
    "on-glass-slips": {"spider": 1, "leg": 8, "segment": 56, "motion": 1, "skid": 1},
    # Two joints and the sting, enlarged, and the five joints and sting of the small whole scorpion beside them.
    "sting-tooth-tooth": {"tooth": 1, "sting": 1 + 1, "tail-joint": 2 + 5, "ring": 1, "key-map": 1},
    "sting-tooth-none": {"tooth": 0, "sting": 1 + 1, "tail-joint": 2 + 5, "ring": 1, "key-map": 1},
    **{f"carriage-{state}": {"leg": 8, "segment": 24, "body": 1, "guide": 1} for state in POSES},
}
SIZE = 120


def _read() -> dict[str, Figure]:
    rows = yaml.safe_load((ROOT / "keys/figures/extra-states.yaml").read_text(encoding="utf-8"))
    return {
        name: Figure(name, Text.of(row["alt"]), row["credit"], row["draw"], row.get("with") or {})
        for name, row in rows.items()
    }


FIGURES = _read()
every_figure = pytest.mark.parametrize("figure", FIGURES.values(), ids=FIGURES)


def _groups(shapes: tuple[Shape, ...], name: str) -> Iterator[Group]:
    for shape in shapes:
        if isinstance(shape, Group):
            if shape.name == name:
                yield shape
            yield from _groups(shape.items, name)


def _box(drawing: Drawing, name: str) -> Box:
    return box_of(_groups(drawing.items, name))


def _by_qt(svg: str) -> np.ndarray:
    renderer = QSvgRenderer(QByteArray(svg.encode()))
    assert renderer.isValid()
    image = QImage(SIZE, SIZE, QImage.Format.Format_RGB888)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    renderer.render(painter)
    painter.end()
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(SIZE, image.bytesPerLine())
    return rows[:, : SIZE * 3].reshape(SIZE, SIZE, 3).astype(float)


def _by_cairo(svg: str) -> np.ndarray:
    png = cairosvg.svg2png(svg.encode(), output_width=SIZE, output_height=SIZE, background_color="white")
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB"), float)


def _coarse(picture: np.ndarray) -> np.ndarray:
    return picture.reshape(SIZE // 5, 5, SIZE // 5, 5, 3).mean(axis=(1, 3))


def test_every_state_has_its_figure():
    assert set(FIGURES) == {f"{name}-{state}" for name, states in STATES.items() for state in states} == set(COUNTS)


@pytest.mark.parametrize("name", COUNTS)
def test_parts_are_there_in_the_right_number(name):
    drawing = draw(FIGURES[name])
    assert {part: drawing.count(part) for part in COUNTS[name]} == COUNTS[name]


@every_figure
def test_nothing_leaves_the_canvas(figure):
    box = box_of(draw(figure).items)
    assert min(box.left, box.top) >= -0.5
    assert max(box.right, box.bottom) <= 100.5


@every_figure
def test_alt_text_says_what_is_seen(figure):
    alt = figure.alt.say()
    assert alt.endswith(".")
    assert 40 < len(alt) < 260
    assert not any(word in alt.lower() for word in ("safe", "harmless", "dangerous", "poison"))
    assert figure.credit == "Drawn for this key"


@every_figure
def test_shipped_picture_is_the_one_drawn_now(figure):
    path = ROOT / "images/figures" / f"{figure.id}.svg"
    assert path.read_text(encoding="utf-8") == figure_svg(figure)


@every_figure
def test_two_renderers_draw_the_same_picture(figure):
    svg = figure_svg(figure)
    apart = np.abs(_coarse(_by_qt(svg)) - _coarse(_by_cairo(svg)))
    assert apart.max() < 60
    assert apart.mean() < 2.5


@pytest.mark.parametrize("name", STATES)
def test_the_states_differ_to_the_eye(name):
    pictures = [_by_qt(figure_svg(FIGURES[f"{name}-{state}"])) for state in STATES[name]]
    # Somewhere the pictures differ as much as ink does from paper: the state, not the fine texture.
    for one, two in itertools.combinations(pictures, 2):
        assert np.abs(_coarse(one) - _coarse(two)).max() > 20


def test_knees_stand_far_above_the_body_only_where_it_hangs_between_them():
    over = {}
    for state in STATES["carriage"]:
        drawing = draw(FIGURES[f"carriage-{state}"])
        knees, body = _box(drawing, "leg").top, _box(drawing, "body")
        over[state] = (body.top - knees) / body.height
    assert over["hung-between-knees"] > 1.5
    assert max(over["clear-of-ground"], over["on-the-ground"]) < 0.5
    grounds = {state: _box(draw(FIGURES[f"carriage-{state}"]), "leg").bottom for state in POSES}
    bellies = {state: _box(draw(FIGURES[f"carriage-{state}"]), "body").bottom for state in POSES}
    gaps = {state: grounds[state] - bellies[state] for state in POSES}
    assert gaps["on-the-ground"] < 2
    assert gaps["clear-of-ground"] > 8


@pytest.mark.parametrize("shown", ["touching", "apart"])
def test_side_eyes_touch_or_leave_the_width_of_an_eye(shown):
    upper, lower = side_eyes(shown)
    gap = math.dist((upper.x, upper.y), (lower.x, lower.y)) - upper.r - lower.r
    width = upper.r + lower.r
    assert gap == pytest.approx({"touching": 0, "apart": width}[shown], abs=0.05 * width)


@pytest.mark.parametrize("shown", ["touching", "apart"])
def test_each_ring_holds_the_two_side_eyes_of_its_side(shown):
    drawing = draw(FIGURES[f"side-eyes-{shown}"])
    rings = [box_of([ring]) for ring in _groups(drawing.items, "ring")]
    balls = [item for eye in _groups(drawing.items, "eye") for item in eye.items[:1]]
    assert all(isinstance(ball, Circle) for ball in balls)
    for ring in rings:
        inside = [b for b in balls if ring.left < b.centre[0] < ring.right and ring.top < b.centre[1] < ring.bottom]
        assert len(inside) == 2


def test_grain_and_bodies_are_drawn_to_one_scale():
    small, large = (draw(FIGURES[f"body-step-{state}"]) for state in STATES["body-step"])
    for drawing in (small, large):
        assert _box(drawing, "rice").height == pytest.approx(GRAIN * UNITS, abs=1.0)
        assert _box(drawing, "scale-bar").width == pytest.approx(GRAIN * UNITS, abs=1.0)
    assert _box(small, "rice") == _box(large, "rice")


@pytest.mark.parametrize("state", STATES["body-step"])
def test_the_body_is_as_long_as_its_setting_says(state):
    figure = FIGURES[f"body-step-{state}"]
    long = figure.with_["body-mm"]
    assert body_box(long).height / UNITS == pytest.approx(long, rel=0.06)
    bar = _box(draw(figure), "measuring-bar")
    assert bar.height / UNITS == pytest.approx(long, rel=0.15)
    assert (long < GRAIN) == (state == "under-rice-grain")


def test_the_climber_is_far_above_the_one_that_slips():
    tops, bottoms = zip(
        *((box.top, box.bottom) for box in (_glass_spider("climbs"), _glass_spider("slips"))), strict=True
    )
    assert tops[0] + 20 < tops[1]
    assert bottoms[0] < 60 < 80 < bottoms[1]


def _glass_spider(does: str) -> Box:
    return _box(draw(FIGURES[f"on-glass-{does}"]), "spider")


def test_the_ring_on_the_sting_holds_the_tooth():
    drawing = draw(FIGURES["sting-tooth-tooth"])
    ring, tooth = _box(drawing, "ring"), _box(drawing, "tooth")
    assert ring.left < tooth.left and tooth.right < ring.right
    assert ring.top < tooth.top and tooth.bottom < ring.bottom
    assert _box(draw(FIGURES["sting-tooth-none"]), "ring") == ring


@pytest.mark.parametrize(
    ("recipe", "setting"),
    [
        ("palps", "end"),
        ("side-eye-gap", "stat"),
        ("rice-step", "body"),
        ("on-glass", "doe"),
        ("carriage", "stat"),
        ("rear-size", "time"),
    ],
)
def test_a_misspelt_setting_is_refused(recipe, setting):
    with pytest.raises(UserError, match="unknown setting"):
        draw(Figure("x", Text.of("x"), "x", recipe, {setting: "x"}))
