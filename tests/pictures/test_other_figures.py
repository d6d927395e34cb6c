"""Figures of webs, sacs, shed skins and animals other than spiders: complete, true in number, within the canvas."""

from __future__ import annotations

import io
import itertools
import math
import re
from pathlib import Path

import cairosvg
import numpy as np
import pytest
import yaml
from PIL import Image
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from keyapp.errors import UserError
from keyapp.model import Figure, Text
from keyapp.pictures.build import figure_svg
from keyapp.pictures.recipe import draw
from keyapp.pictures.shape import box_of
from keyapp.pictures.silk import ray_out
from keyapp.pictures.texture import seeded
from keyapp.pictures.web import OrbWeb, spoke_angles, sticky_spiral

ROOT = Path(__file__).parents[2]
FILES = ("webs", "sacs", "other-animals", "other-states")
RESULTS = """harvestman bark-scorpion other-scorpion hard-tick hard-tick-fed tick-larva windscorpion house-centipede
camel-cricket web-orb web-tangle web-sheet-funnel web-woolly sac-widow sac-brown-widow sac-orb shed-skin-spider
shed-skin-tarantula insect-not-in-key many-legs-not-in-key arachnid-not-in-key sign-not-in-key""".split()
STATES = {
    "thing": "animal web egg-sac shed-skin",
    "leg-count": "six eight ten-to-fourteen thirty-or-more none",
    "body-parts": "one-oval two-with-waist three-parts long-many-rings",
    "feelers": "long-feelers none",
    "wings": "wings none",
    "hind-legs": "big-jumping like-the-others",
    "front-tools": "pincers-and-tail pincers-no-tail huge-jaws long-forward-fangs ordinary",
    "pincer-build": "slender stout",
    "tail-rest": "curled-to-side arched-over-back",
    "scorpion-skin": "smooth-plain-pale striped-back dark-or-hairy",
    "attached": "stuck-to-skin on-skin-or-clothes not-on-body",
    "back-plate": "hard-shield-behind-head none",
    "web-shape": "orb tangle sheet-funnel loose-mesh woolly-round-hole silk-tube none",
    "web-extra": "zigzag-band hiding-tube-or-leaf egg-sacs golden-silk none",
    "web-silk": "coarse-strong fine-soft dusty-woolly sticky-spiral",
    "web-height": "low high",
    "sac-skin": "smooth-papery-round spiky-round tough-brown-bag fluffy-white flat-disc-or-woolly",
    "sac-place": "in-tangle-web hung-by-threads-on-plant stuck-flat-to-surface in-rolled-leaf loose",
    "skin-sign": "hollow-lid-open solid-body",
}
MEASURED = ["body-length", "leg-span", "sac-width"]


def _read() -> dict[str, Figure]:
    figures = {}
    for name in FILES:
        table = yaml.safe_load((ROOT / "keys" / "figures" / f"{name}.yaml").read_text(encoding="utf-8"))
        for figure_id, row in table.items():
            assert figure_id not in figures
            figures[figure_id] = Figure(figure_id, Text.of(row["alt"]), row["credit"], row["draw"], row.get("with", {}))
    return figures


FIGURES = _read()
every_figure = pytest.mark.parametrize("figure", FIGURES.values(), ids=FIGURES.keys())

# What an animal or a web must have, whatever the drawing looks like.
COUNTS = [
    ("harvestman", {"leg": 8, "palp": 2, "eye": 2}),
    ("bark-scorpion", {"leg": 8, "pincer": 2, "back-plate": 7, "tail-joint": 5, "sting": 1}),
    ("other-scorpion", {"leg": 8, "pincer": 2, "tail-joint": 5, "sting": 1}),
    ("hard-tick", {"leg": 8, "palp": 2, "shield": 1}),
    ("hard-tick-fed", {"leg": 8, "palp": 2, "shield": 1}),
    ("tick-larva", {"leg": 6, "palp": 2, "shield": 1}),
    ("back-plate-hard-shield-behind-head", {"leg": 8, "shield": 1}),
    ("back-plate-none", {"leg": 8, "shield": 0}),
    ("windscorpion", {"leg": 6, "feeling-leg": 2, "palp": 2, "jaw": 2, "ring-plate": 10, "tail": 0, "pincer": 0}),
    ("house-centipede", {"leg": 30, "feeler": 2, "stripe": 3}),
    ("camel-cricket", {"leg": 6, "feeler": 2, "wing": 0}),
    ("leg-count-six", {"leg": 6}),
    ("leg-count-eight", {"leg": 8}),
    ("leg-count-ten-to-fourteen", {"leg": 14}),
    ("leg-count-thirty-or-more", {"leg": 42}),
    ("body-parts-one-oval", {"bracket": 1}),
    ("body-parts-two-with-waist", {"bracket": 2, "front-part": 1, "hind-part": 1}),
    ("body-parts-three-parts", {"bracket": 3, "head": 1, "middle-part": 1, "hind-part": 1, "leg": 6}),
    ("body-parts-long-many-rings", {"bracket": 21, "ring-plate": 21, "leg": 42}),
    ("feelers-long-feelers", {"feeler": 2, "leg": 6, "ring": 1}),
    ("feelers-none", {"feeler": 0, "leg": 8, "palp": 2, "ring": 1}),
    ("wings-wings", {"wing": 2, "leg": 6}),
    ("wings-none", {"wing": 0, "leg": 6}),
    ("hind-legs-big-jumping", {"leg": 6}),
    ("hind-legs-like-the-others", {"leg": 6}),
    ("front-tools-pincers-and-tail", {"pincer": 2, "tail": 1, "leg": 8}),
    ("front-tools-pincers-no-tail", {"pincer": 2, "tail": 0, "leg": 8}),
    ("front-tools-huge-jaws", {"jaw": 2, "pincer": 0}),
    ("front-tools-long-forward-fangs", {"jaw": 2, "pincer": 0, "leg": 8, "eye": 6}),
    ("front-tools-ordinary", {"jaw": 2, "pincer": 0, "leg": 8, "eye": 8}),
    ("shed-skin-spider", {"leg": 8, "lid-open": 1, "cup": 1}),
    ("shed-skin-tarantula", {"leg": 8, "lid-open": 1, "cup": 1}),
    ("skin-sign-hollow-lid-open", {"leg": 8, "lid-open": 1}),
    ("skin-sign-solid-body", {"leg": 8, "lid-open": 0, "front-part": 1}),
    ("attached-stuck-to-skin", {"leg": 8, "swelling": 1, "arm": 1}),
    ("attached-on-skin-or-clothes", {"leg": 8, "swelling": 0, "arm": 1, "sleeve": 1}),
    ("attached-not-on-body", {"leg": 8, "swelling": 0, "arm": 0}),
    ("web-orb", {"spoke": 31, "guy": 1, "frame": 1, "hub": 1, "sticky": 1}),
    ("web-tangle", {"catching-line": 8, "spoke": 0, "sticky": 0}),
    ("web-sheet-funnel", {"tube-mouth": 1, "spoke": 0, "sticky": 0}),
    ("web-woolly", {"hole": 1, "sticky": 0}),
    ("web-shape-none", {"spoke": 0, "sticky": 0, "thread": 0}),
    ("web-extra-zigzag-band", {"zigzag": 1, "spoke": 31}),
    ("web-extra-hiding-tube-or-leaf", {"retreat": 1, "zigzag": 0}),
    ("web-extra-egg-sacs", {"egg-sac": 3, "zigzag": 0}),
    ("web-extra-none", {"zigzag": 0, "retreat": 0, "egg-sac": 0, "glow": 0}),
    ("sac-widow", {"egg-sac": 1, "spike": 0}),
    ("sac-brown-widow", {"egg-sac": 1, "spike": 76}),
    ("insect-not-in-key", {"other": 3}),
]


@pytest.fixture(scope="module")
def window_system():
    return QGuiApplication.instance() or QGuiApplication([])


def test_every_result_state_and_measure_has_its_figure():
    wanted = [*RESULTS, *(f"{name}-{state}" for name, states in STATES.items() for state in states.split()), *MEASURED]
    assert sorted(FIGURES) == sorted(wanted)


@pytest.mark.parametrize(("figure_id", "counts"), COUNTS, ids=[row[0] for row in COUNTS])
def test_parts_are_there_in_the_right_number(figure_id, counts):
    drawing = draw(FIGURES[figure_id])
    assert {name: drawing.count(name) for name in counts} == counts


@every_figure
def test_nothing_leaves_the_canvas(figure):
    drawing = draw(figure)
    box = box_of(drawing.items)
    # Backgrounds end on the canvas edge, so their pen may stand over it by half its width.
    assert min(box.left, box.top) >= -0.5
    assert max(box.right - drawing.width, box.bottom - drawing.height) <= 0.5


@every_figure
def test_alt_text_is_a_plain_sentence_without_reassurance(figure):
    alt = figure.alt.say()
    assert alt.endswith(".")
    assert 20 < len(alt) < 260
    assert not re.search(r"\b(safe|harmless|dangerous|poisonous)\b", alt, re.IGNORECASE)
    assert figure.credit == "Drawn for this key"


@every_figure
def test_drawing_twice_gives_the_same_text(figure):
    assert figure_svg(figure) == figure_svg(figure)


@every_figure
def test_svg_holds_only_what_qt_draws_and_no_letters(figure):
    tags = set(re.findall(r"<([A-Za-z]+)", figure_svg(figure)))
    assert tags <= {
        "svg", "title", "defs", "g", "path", "circle", "ellipse", "rect", "linearGradient", "radialGradient", "stop",
    }  # fmt: skip


@every_figure
def test_shipped_picture_is_the_one_drawn_now(figure):
    path = ROOT / "images" / "figures" / f"{figure.id}.svg"
    assert path.read_text(encoding="utf-8") == figure_svg(figure)


def _by_qt(svg: str, size: int) -> np.ndarray:
    renderer = QSvgRenderer(QByteArray(svg.encode()))
    assert renderer.isValid()
    image = QImage(size, size, QImage.Format.Format_RGB888)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    renderer.render(painter)
    painter.end()
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(size, image.bytesPerLine())
    return rows[:, : size * 3].reshape(size, size, 3).astype(float)


def _coarse(picture: np.ndarray) -> np.ndarray:
    size = picture.shape[0] // 4
    return picture.reshape(size, 4, size, 4, 3).mean(axis=(1, 3))


def _by_cairo(svg: str, size: int) -> np.ndarray:
    png = cairosvg.svg2png(svg.encode(), output_width=size, output_height=size, background_color="white")
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB"), float)


@every_figure
def test_two_renderers_draw_the_same_picture(figure, window_system):
    svg = figure_svg(figure)
    # Averaged over 4 x 4 pixels: what is compared is where the ink lies, not how each reader softens an edge.
    one, two = _coarse(_by_qt(svg, 400)), _coarse(_by_cairo(svg, 400))
    gap = np.abs(one - two)
    assert gap.mean() < 2.2
    assert gap.max() < 60
    # Not an empty sheet: something stands out from the paper.
    assert one.std() > 3.0


def test_states_of_one_character_look_different(window_system):
    for name, states in STATES.items():
        pictures = [_by_qt(figure_svg(FIGURES[f"{name}-{state}"]), 96) for state in states.split()]
        gaps = [np.abs(a - b).mean() for k, a in enumerate(pictures) for b in pictures[k + 1 :]]
        assert min(gaps) > 0.8, name


@pytest.mark.parametrize("spokes", [25, 31, 40])
def test_sticky_spiral_keeps_clear_of_the_hub_and_inside_the_frame(spokes):
    web = OrbWeb(spokes=spokes)
    angles = spoke_angles(web, seeded("check", spokes))
    stretches = sticky_spiral(web, angles)
    ends = [spot for stretch in stretches for spot in (stretch[0], stretch[-1])]
    far = [math.dist(web.hub, spot) for spot in ends]
    assert min(far) >= web.inner - 1e-6 > web.hub_radius + 2
    for spot, away in zip(ends, far, strict=True):
        degrees = math.degrees(math.atan2(spot[0] - web.hub[0], web.hub[1] - spot[1]))
        assert away < ray_out(web.hub, degrees, web.frame)


def test_sticky_spiral_is_one_thread_that_winds_outwards():
    web = OrbWeb()
    stretches = sticky_spiral(web, spoke_angles(web, seeded("check")))
    first_turns = stretches[: 3 * web.spokes]
    for before, after in itertools.pairwise(first_turns):
        assert math.dist(before[-1], after[0]) < 1e-6
        assert math.dist(web.hub, after[-1]) > math.dist(web.hub, after[0])


def test_spokes_lie_closer_below_the_hub_than_above():
    web = OrbWeb()
    angles = spoke_angles(web, seeded("check"))
    below = sum(90 < angle % 360 < 270 for angle in angles)
    assert len(angles) == 31
    assert below > len(angles) - below


def test_fed_tick_is_longer_than_the_unfed_one_and_the_larva_smaller_than_its_bar():
    sizes = {name: FIGURES[name].with_["body-mm"] for name in ("hard-tick", "hard-tick-fed", "tick-larva")}
    assert sizes["hard-tick-fed"] > 2 * sizes["hard-tick"] > 8 * sizes["tick-larva"]
    assert FIGURES["tick-larva"].with_["bar-mm"] > sizes["tick-larva"]


def test_misspelt_setting_is_refused_with_the_nearest_name():
    figure = Figure("x", Text.of("x"), "x", "orb-web", {"spoke": 30})
    with pytest.raises(UserError, match="Did you mean 'spokes'"):
        draw(figure)


@pytest.mark.parametrize("spokes", [12, 24, 41])
def test_wheel_web_refuses_a_number_of_spokes_no_such_web_has(spokes):
    with pytest.raises(UserError, match="between 25 and 40"):
        draw(Figure("x", Text.of("x"), "x", "orb-web", {"spokes": spokes}))
