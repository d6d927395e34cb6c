"""The figures of ticks, mites, galls and mite webs: right counts of legs, scale bars, small files."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from keyapp.errors import UserError
from keyapp.model import Figure, Text
from keyapp.pictures.build import figure_svg
from keyapp.pictures.mite_kinds import MITES
from keyapp.pictures.recipe import draw
from keyapp.pictures.tick_looks import KINDS

_FILE = Path(__file__).parents[2] / "keys" / "figures" / "ticks-and-mites.yaml"
_RAW = yaml.safe_load(_FILE.read_text(encoding="utf-8"))
FIGURES = {
    name: Figure(name, Text((("en", raw["alt"]),)), raw["credit"], raw["draw"], raw.get("with", {}))
    for name, raw in _RAW.items()
}
LEGS = {
    "tick-blacklegged": 16,
    "tick-lone-star": 16,
    "tick-dog": 16,
    "tick-brown-dog": 8,
    "tick-nymph": 8,
    "soft-tick": 8,
    "chigger": 6,
    "velvet-mite": 8,
    "clover-mite": 8,
    "spider-mite": 8,
    "mite-gall": 4,
    "mite-look-orange-speck": 6,
    "shield-mark-pinhead": 8,
}


@pytest.mark.parametrize("name", FIGURES)
def test_every_figure_is_small_and_has_plain_alt_text(name: str) -> None:
    figure = FIGURES[name]
    assert len(figure_svg(figure).encode("utf-8")) < 50 * 1024
    alt = figure.alt.say()
    assert 20 < len(alt) < 260
    assert not any(word in alt.lower() for word in ("safe", "harmless", "dangerous", "poison"))


@pytest.mark.parametrize(("name", "legs"), LEGS.items())
def test_legs(name: str, legs: int) -> None:
    assert draw(FIGURES[name]).count("leg") == legs


@pytest.mark.parametrize("name", [name for name in LEGS if not name.startswith(("mite-look", "shield"))])
def test_results_have_a_scale_bar(name: str) -> None:
    assert draw(FIGURES[name]).count("scale-bar") == 1


def test_ticks_differ_as_the_animals_do() -> None:
    assert draw(FIGURES["tick-lone-star"]).count("dot") == 1  # the female alone
    assert draw(FIGURES["tick-blacklegged"]).count("festoons") == 0
    assert draw(FIGURES["tick-blacklegged"]).count("eye") == 0
    assert draw(FIGURES["tick-dog"]).count("festoons") == 2
    assert draw(FIGURES["tick-brown-dog"]).count("eye") == 2
    soft = draw(FIGURES["soft-tick"])
    assert soft.count("shield") == 0
    assert soft.count("mouth") == 0
    assert KINDS["lone-star"].reach > KINDS["dog"].reach
    assert KINDS["blacklegged"].reach > KINDS["brown-dog"].reach


def test_galls_are_where_they_should_be() -> None:
    for form in ("beads-or-spikes", "felt-patches", "blisters"):
        assert draw(FIGURES[f"gall-form-{form}"]).count("gall") > 4
    bare = draw(FIGURES["gall-form-no-gall"])
    assert bare.count("gall") == 0
    assert bare.count("leg") == 6


def test_what_to_look_at_is_ringed() -> None:
    assert draw(FIGURES["mite-look-two-dark-spots"]).count("ring") == 2
    assert draw(FIGURES["mite-look-long-front-legs"]).count("ring") == 2
    assert draw(FIGURES["shield-mark-pale-pattern"]).count("ring") == 2


def test_an_unknown_kind_is_refused() -> None:
    figure = Figure("x", Text((("en", "x"),)), "x", "mite-kind", {"kind": "dust"})
    with pytest.raises(UserError):
        draw(figure)
    assert "dust" not in MITES
