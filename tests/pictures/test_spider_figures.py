"""The figures of spiders in the key: all there, within the canvas, alike in two renderers, and up to date on disk."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET
from functools import cache
from pathlib import Path

import cairosvg
import numpy as np
import pytest
import yaml
from PIL import Image
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from keyapp.model import Figure, Text
from keyapp.pictures.build import figure_svg, render_all
from keyapp.pictures.rear import body_widths
from keyapp.pictures.recipe import draw
from keyapp.pictures.shape import Drawing, box_of
from keyapp.pictures.svg import svg_text

ROOT = Path(__file__).parents[2]
RESULTS = """widow-black-female widow-brown-female widow-male widow-young false-widow house-cobweb cellar-spider
crevice-spider crevice-male funnel-weaver garden-orb typical-orb golden-silk-orb spiny-orb recluse recluse-young
woodlouse-hunter wolf-spider wolf-with-sac wolf-with-young long-legged-sac ground-spider nursery-web fishing-spider
green-lynx lynx-guarding jumping-spider crab-spider giant-crab tarantula tarantula-male spider-not-in-key""".split()
STATES = {
    "leg-posture": "all-round crab-to-sides in-pairs-x front-and-back",
    "leg-build": "thread-thin-very-long long-slender medium short-stout thick-hairy",
    "leg-pattern": "plain banded dark-feet",
    "leg-surface": "stiff-spines fine-hair-only furry bare-shiny",
    "leg-tufts": "brushes-on-legs none",
    "abdomen-pattern": "plain spots stripe-along chevrons bands-across bold-bright",
    "abdomen-shape": "globe oval long-narrow flat-wide with-points swollen-leathery",
    "body-surface": "bare-shiny fine-satin-hair furry-bristly",
    "body-colour": "black dark-brown mid-or-pale-brown grey yellow-or-cream green red-brown mixed-bright",
    "front-mark": "violin stripes-along other-marks plain",
    "underside-mark": "red-hourglass orange-or-yellow-hourglass red-spots-or-bars other-mark none",
    "top-red-mark": "red-on-top none",
    "eye-count": "six eight",
    "eye-layout": """three-pairs six-close-group two-big-in-front two-big-above-row-of-four two-rows hexagon-high
        small-mound""",
    "tail-spinners": "two-long not-seen",
    "carries": "sac-at-tail young-on-back sac-in-jaws-or-under-body guards-sac-on-plant nothing",
    "gait": "jumps runs-fast runs-in-web sideways slow-careful still bobs-or-whirls",
    "web-hold": "upside-down-under middle-of-wheel mouth-of-tube beside-or-hidden on-flat-silk",
    "rear-size": "far-bigger bit-bigger no-bigger",
    "front-legs": "front-stronger alike",
    "palp-length": "like-extra-legs short",
}
ALL_STATES = [f"{character}-{state}" for character, states in STATES.items() for state in states.split()]
PLAIN = {"svg", "title", "defs", "g", "rect", "path", "circle", "ellipse", "linearGradient", "radialGradient", "stop"}


def read(name: str) -> dict[str, Figure]:
    rows = yaml.safe_load((ROOT / "keys/figures" / f"{name}.yaml").read_text(encoding="utf-8"))
    return {
        key: Figure(key, Text.of(row["alt"]), row["credit"], row["draw"], row.get("with") or {})
        for key, row in rows.items()
    }


FIGURES = {**read("spiders"), **read("spider-states")}
SIZE = 120


@cache
def drawn(name: str) -> Drawing:
    return draw(FIGURES[name])


@cache
def svg_of(name: str) -> str:
    return svg_text(drawn(name), title=FIGURES[name].alt.say())


@cache
def on_disk(name: str) -> str:
    return (ROOT / "images/figures" / f"{name}.svg").read_text(encoding="utf-8")


def by_qt(svg: str) -> np.ndarray:
    image = QImage(SIZE, SIZE, QImage.Format.Format_RGB888)
    image.fill(QColor("white"))
    renderer = QSvgRenderer(QByteArray(svg.encode()))
    assert renderer.isValid()
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(SIZE, image.bytesPerLine())
    return rows[:, : SIZE * 3].reshape(SIZE, SIZE, 3).astype(int)


def by_cairo(svg: str) -> np.ndarray:
    png = cairosvg.svg2png(svg.encode(), output_width=SIZE, output_height=SIZE, background_color="white")
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB")).astype(int)


def blocks(picture: np.ndarray) -> np.ndarray:
    """Means over 5 x 5 blocks: what remains is shape and colour, not the smoothing of edges."""
    return picture.reshape(SIZE // 5, 5, SIZE // 5, 5, 3).mean(axis=(1, 3))


def test_every_spider_and_every_state_has_a_figure():
    assert set(read("spiders")) == set(RESULTS)
    assert set(read("spider-states")) == set(ALL_STATES)


@pytest.mark.parametrize("name", sorted(FIGURES))
def test_a_figure_fits_its_canvas_and_says_what_it_shows(name):
    figure = FIGURES[name]
    drawing = drawn(name)
    box = box_of(drawing.items)
    assert -0.5 <= min(box.left, box.top) and max(box.right, box.bottom) <= 100.5
    assert max(box.width, box.height) > 70
    assert 30 <= len(figure.alt.say()) <= 300
    assert figure.credit == "Drawn for this key"


@pytest.mark.parametrize("name", sorted(FIGURES))
def test_the_file_on_disk_is_this_figure_and_holds_only_plain_elements(name):
    text = on_disk(name)
    assert text == svg_of(name)
    assert {node.tag.split("}")[1] for node in ET.fromstring(text).iter()} <= PLAIN
    assert len(text) < 220_000


@pytest.mark.parametrize("name", sorted(FIGURES))
def test_two_renderers_draw_the_same_picture(name):
    text = on_disk(name)
    apart = np.abs(blocks(by_qt(text)) - blocks(by_cairo(text)))
    assert apart.max() < 60
    assert apart.mean() < 2.5


def test_the_comparison_of_renderers_notices_a_missing_leg():
    whole = svg_of("wolf-spider")
    thin = figure_svg(Figure("x", Text.of("x"), "", "spider", {"plan": "wolf", "seed": "wolf", "legs": {"thick": 0.1}}))
    assert np.abs(blocks(by_qt(whole)) - blocks(by_cairo(thin))).max() > 60


WHOLE = [name for name in RESULTS if name != "lynx-guarding"]


@pytest.mark.parametrize("name", WHOLE)
def test_a_whole_animal_shows_eight_legs_of_seven_segments(name):
    drawing = drawn(name)
    assert (drawing.count("leg"), drawing.count("segment")) == (8, 56)


@pytest.mark.parametrize(("name", "eyes"), [("eye-count-six", 6), ("eye-count-eight", 8)])
def test_the_count_of_eyes_is_the_count_drawn(name, eyes):
    drawing = drawn(name)
    tally = next(item for item in drawing.items if getattr(item, "name", "") == "tally")
    assert drawing.count("eye") == len(tally.items) == eyes


@pytest.mark.parametrize("state", STATES["eye-layout"].split())
def test_an_eye_pattern_shows_its_number_of_eyes_ringed(state):
    drawing = drawn(f"eye-layout-{state}")
    assert drawing.count("eye") == {"three-pairs": 6, "six-close-group": 6}.get(state, 8)
    assert drawing.count("ring") == 1


@pytest.mark.parametrize("name", ["widow-black-female", "widow-brown-female"])
def test_grown_widows_show_the_underside_beside_the_top(name):
    drawing = drawn(name)
    assert drawing.count("lens") == 1
    assert drawing.count("abdomen") == 2


def test_the_back_part_is_drawn_as_wide_as_its_state_says():
    times = {name: FIGURES[f"rear-size-{name}"].with_["times"] for name in STATES["rear-size"].split()}
    for ratio in times.values():
        front, back = body_widths(ratio)
        assert back / front == pytest.approx(ratio, rel=0.08)
    assert times["far-bigger"] >= 2 > times["bit-bigger"] > 1.1
    assert times["no-bigger"] <= 1


def test_the_states_of_one_character_are_different_pictures():
    texts = [svg_of(name) for name in ALL_STATES]
    assert len(set(texts)) == len(texts)


def test_rendering_writes_one_file_a_figure_and_leaves_right_ones_alone(tmp_path):
    some = {name: FIGURES[name] for name in ("leg-pattern-plain", "leg-pattern-banded")}
    paths = render_all(some, tmp_path)
    assert [path.name for path in paths] == ["leg-pattern-banded.svg", "leg-pattern-plain.svg"]
    before = [path.stat().st_mtime_ns for path in paths]
    assert [path.stat().st_mtime_ns for path in render_all(some, tmp_path)] == before
