"""The measures as a whole: what holds of every key, the shipped key, and the command."""

from __future__ import annotations

import io
import json
import xml.etree.ElementTree as ET

import pytest

from keyapp.cli import measure as command
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.folders import keys_folder
from keyapp.measure import json_text, measure, plain_text, svg_plot
from keyapp.measure.bounds import answer_bits
from keyapp.measure.measures import OWN
from keyapp.model import Settings
from tests.measure.random_keys import random_key


@pytest.fixture(scope="module")
def measures(shipped):
    return measure(shipped)


@pytest.mark.parametrize("seed", range(10))
def test_no_key_tells_more_than_its_answers_can_carry(seed):
    """Bits told about the group are at most the expected answers times the capacity of one."""
    found = measure(random_key(seed))
    for name, error in (("0 %", 0.0), ("5 %", 0.05), ("10 %", 0.1), ("20 %", 0.2)):
        rates = found.rates[name]
        assert rates.bits_before - rates.bits_left <= rates.couplets * answer_bits(error) + 1e-9
        assert rates.least_couplets <= rates.couplets + 1e-9
    own = found.rates[OWN]
    assert own.least_couplets <= own.couplets
    assert found.least_reports <= own.couplets


@pytest.mark.parametrize("seed", range(10))
def test_losses_by_group_and_result_add_up(seed):
    for rates in measure(random_key(seed)).rates.values():
        assert sum(t.weight for t in rates.taxa) == pytest.approx(1.0)
        assert sum(t.weight * t.error for t in rates.taxa) == pytest.approx(rates.error)
        gated = [t for t in rates.taxa if t.danger_miss is not None]
        mass = sum(t.weight for t in gated)
        assert sum(t.weight * t.danger_miss for t in gated) == pytest.approx(rates.danger_miss * mass)
        assert all(0 <= t.unwarned <= t.danger_miss + 1e-12 <= 1 + 1e-9 for t in gated)
        assert sum(c.visits for c in rates.losses) == pytest.approx(rates.couplets)


def test_the_shipped_key_is_right_without_error(measures):
    """Every result that is described ends at its own group, asked nothing that does not apply to it."""
    free = measures.rates["0 %"]
    assert free.error == pytest.approx(0.0, abs=1e-9)
    assert free.danger_miss == pytest.approx(0.0, abs=1e-9)
    assert max(c.inapplicable + c.neither for c in free.losses) == pytest.approx(0.0, abs=1e-9)


def test_the_shipped_key_keeps_the_order_of_bounds(measures):
    bounds = measures.bounds
    assert bounds.entropy <= bounds.huffman < bounds.entropy + 1
    assert bounds.huffman <= measures.greedy.mean + measures.greedy.bits_left
    assert measures.greedy.mean <= measures.expected <= measures.shape.longest
    for part in measures.below:
        assert part.best is None or 0 < part.best <= part.written + 1e-9


def test_errors_grow_with_the_rate(measures):
    for value in ("error", "danger_miss", "bits_left"):
        row = [getattr(measures.rates[name], value) for name in ("0 %", "5 %", "10 %", "20 %")]
        assert row == sorted(row)


def test_every_danger_has_its_paths(measures, shipped):
    gated = {row.taxon for row in shipped.rows if row.danger}
    assert set(measures.towards) == set(measures.away) == gated
    assert all(path.cost > 0 and path.turns for path in (*measures.towards.values(), *measures.away.values()))


def test_where_and_when_change_the_weights_alone(shipped, measures):
    other = measure(shipped, Settings(region="CA", month=1))
    assert other.shape == measures.shape
    assert other.unseparated == measures.unseparated
    assert other.expected != pytest.approx(measures.expected, abs=1e-6)
    assert other.rates["0 %"].error == pytest.approx(0.0, abs=1e-9)


def test_json_holds_what_was_measured(measures):
    data = json.loads(json_text(measures))
    assert data["expected"] == pytest.approx(measures.expected)
    assert data["rates"]["10 %"]["error"] == pytest.approx(measures.rates["10 %"].error)
    assert len(data["thin"]) == len(measures.thin)
    assert {p["first"] for p in data["unseparated"]} == {p.first for p in measures.unseparated}


def test_the_text_names_the_weakest_places(measures):
    text = plain_text(measures)
    worst = max(measures.rates[OWN].losses, key=lambda c: c.danger_lost)
    assert worst.couplet in text
    assert f"{measures.expected:6.2f}" in text
    assert all(f"{p.first} / {p.second}" in text for p in measures.unseparated[:12])
    assert "nan" not in text


def test_the_plot_is_svg_with_its_words(measures):
    tree = ET.fromstring(svg_plot(measures))
    words = [node.text or "" for node in tree.iter("{http://www.w3.org/2000/svg}text")]
    worst = max(measures.rates[OWN].losses, key=lambda c: c.error_lost)
    assert {"as written", "greedy order", worst.couplet} <= set(words)
    assert svg_plot(measures) == svg_plot(measures)


def ran(**more):
    out = io.StringIO()
    options = {"as_json": False, "plot": None, "region": None, "month": None, **more}
    code = command.run(Terminal(target=out), keys_folder(), **options)
    return code, out.getvalue()


def test_the_command_writes_json_and_a_plot(tmp_path):
    code, text = ran(as_json=True, plot=tmp_path / "plot.svg", month=7)
    assert code == 0
    assert json.loads(text)["shape"]["couplets"] > 0
    assert (tmp_path / "plot.svg").read_text(encoding="utf-8").startswith("<svg")


@pytest.mark.parametrize(
    ("options", "says"), [({"region": "atlantis"}, "no region “atlantis”"), ({"month": 13}, "no month 13")]
)
def test_the_command_refuses_what_is_not_there(options, says):
    with pytest.raises(UserError, match=says):
        ran(**options)


def test_the_command_says_where_a_plot_cannot_go(tmp_path):
    with pytest.raises(UserError, match=r"could not be written\. Name a folder"):
        ran(plot=tmp_path / "missing" / "plot.svg")
