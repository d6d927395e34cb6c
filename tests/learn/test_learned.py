"""Learning against figures worked by hand; stricter at once, weaker only when approved and proven."""

from __future__ import annotations

import datetime
import io
import json
from dataclasses import replace

import pytest

from keyapp.cli import learn as command
from keyapp.cli.terminal import Terminal
from keyapp.engine import build_tables, prior
from keyapp.errors import UserError
from keyapp.learn import (
    Approval,
    Confirmed,
    Counts,
    Proven,
    counted,
    counts_data,
    fingerprint,
    learned,
    proposed,
    read_calls,
    read_counts,
)
from keyapp.model import Danger, Region, Settings, Text
from tests.builders import character, keyset, taxon
from tests.proof.tiny import garden

ANN = Approval("A. Specialist", datetime.date(2026, 11, 24))
REGIONS = {
    "north": Region("north", Text.of("North"), "", ("AA", "BB"), 0, ()),
    "south": Region("south", Text.of("South"), "", ("CC",), 0, ()),
}


def spiders():
    """Recluses (six eyes, rare) and weavers (eight eyes, common); shades that two states of recluse may show."""
    characters = [character("eyes", "six eight", right=0.9), character("shade", "pale dark red", right=0.8)]
    taxa = [
        taxon(
            "recluse",
            {"eyes": "six", "shade": {"pale": 0.5, "dark": 0.5}},
            danger=Danger.SIGNIFICANT,
            group="recluses",
            occurrence={"default": 0.02},
        ),
        taxon("weaver", {"eyes": "eight", "shade": "red"}, occurrence={"default": 1.0}),
    ]
    return keyset(characters, taxa, regions=REGIONS)


def calls(taxon_id, character_id, state, number, **more):
    return [Confirmed(taxon_id, {character_id: state}, **more)] * number


def reports(*groups):
    return counted(spiders(), [call for group in groups for call in group])


WORSE = reports(calls("recluse", "eyes", "six", 6), calls("recluse", "eyes", "eight", 4))
BETTER = reports(calls("recluse", "eyes", "six", 30))


def rights(key):
    eyes = key.characters["eyes"]
    return eyes.right, eyes.state("six").right


def fresh(counts, holds=True, strength=20):
    return Proven(fingerprint(proposed(spiders(), counts, strength)), holds)


def test_a_chance_that_falls_is_in_force_at_once():
    """Shipped 0.9 worth 20 calls is 18 right and 2 wrong; with 6 and 4 more: 24 of 30."""
    key, changes = learned(spiders(), WORSE, strength=20)
    assert rights(key) == pytest.approx((0.8, 0.8))
    assert {c.held for c in changes} == {""}
    assert {(c.figure, c.weakens) for c in changes} == {("right", False), ("mistaken-for", False)}


def test_a_mistake_is_a_share_of_all_reports_of_the_true_state():
    """(20 * 0.1 + 4) / (20 + 10)."""
    _, changes = learned(spiders(), WORSE, strength=20)
    (mistake,) = [c for c in changes if c.figure == "mistaken-for"]
    assert (mistake.old, mistake.new) == pytest.approx((0.1, 0.2))
    assert mistake.item == "eyes: six taken for eight"


def test_a_chance_that_rises_is_held_back():
    """(18 + 30) / (20 + 30) = 0.96, shown but not in force."""
    key, changes = learned(spiders(), BETTER, strength=20)
    assert key == spiders()
    assert [c.new for c in changes if c.figure == "right"] == pytest.approx([0.96, 0.96])
    assert all(c.held and c.weakens and c.now == pytest.approx(c.old) for c in changes)


@pytest.mark.parametrize(
    ("approval", "proven"),
    [
        (None, fresh(BETTER)),
        (ANN, None),
        (Approval("  ", ANN.date), fresh(BETTER)),
        (ANN, fresh(BETTER, holds=False)),
        (ANN, fresh(WORSE)),
        (ANN, Proven(fingerprint(spiders()), True)),
    ],
    ids=["no approver", "no proof", "nameless", "proof fails", "proof of another key", "proof of the shipped key"],
)
def test_what_weakens_needs_both_a_name_and_a_fresh_proof(approval, proven):
    key, changes = learned(spiders(), BETTER, approval, proven, 20)
    assert key == spiders()
    assert all(c.held for c in changes)


def test_what_weakens_is_in_force_once_approved_and_proven():
    key, changes = learned(spiders(), BETTER, ANN, fresh(BETTER), 20)
    assert rights(key) == pytest.approx((0.96, 0.96))
    assert [c.held for c in changes] == [""] * len(changes)
    assert key == proposed(spiders(), BETTER, 20)


def test_without_counts_the_shipped_key_comes_back():
    shipped = spiders()
    learned(shipped, WORSE)
    assert shipped == spiders()
    assert learned(shipped, Counts()) == (shipped, ())


def test_one_mistake_that_becomes_common_is_in_force_though_others_become_rare():
    """Of shade dark, 100 more reports, 20 pale and none red: red falls (held back), pale rises."""
    counts = reports(
        calls("recluse", "shade", "dark", 80, true={"shade": "dark"}),
        calls("recluse", "shade", "pale", 20, true={"shade": "dark"}),
    )
    key, changes = learned(spiders(), counts, strength=20)
    dark = key.characters["shade"].state("dark")
    pale, red = (20 * 0.1 + 20) / 120, 0.1
    assert dark.right == pytest.approx(1 - pale - red)
    assert dark.mistaken_for == pytest.approx({"pale": pale / (pale + red), "red": red / (pale + red)})
    assert [c.item for c in changes if c.figure == "mistaken-for" and c.held] == ["shade: dark taken for red"]


def test_a_call_that_may_have_shown_several_states_is_shared_among_them():
    """Pale or dark alike, reported pale: 0.5 * 0.8 against 0.5 * 0.1, so 8/9 and 1/9."""
    counts = reports(calls("recluse", "shade", "pale", 1))
    assert counts.reports == pytest.approx({("shade", "pale", "pale"): 8 / 9, ("shade", "dark", "pale"): 1 / 9})


def test_a_call_counts_by_how_seldom_its_kind_is_confirmed_up_to_a_cap():
    for chance, weight in ((1.0, 1.0), (0.25, 4.0), (0.001, 20.0)):
        counts = reports(calls("weaver", "eyes", "eight", 1, chance=chance))
        assert counts.reports == {("eyes", "eight", "eight"): pytest.approx(weight)}


def test_a_danger_found_more_often_is_more_common_at_once():
    """Shares 0.02 and 1 of 1.02, worth 50 finds, and ten recluses: 11/60 and 49.02/60 of 1.02."""
    counts = reports(calls("recluse", "eyes", "six", 10, region="north"))
    key, changes = learned(spiders(), counts, strength=50)
    finds = {c.item: c for c in changes if c.figure == "occurrence"}
    assert finds["recluse in north"].now == pytest.approx(1.02 * (50 * 0.02 / 1.02 + 10) / 60)
    assert finds["weaver in north"].now == pytest.approx(1.02 * (50 / 1.02) / 60)
    assert not any(c.weakens or c.held for c in finds.values())
    north, south = Settings(region="north"), Settings(region="south")
    before, after = build_tables(spiders()), build_tables(key)
    row = before.row("recluse")
    assert prior(after, north)[row] > 5 * prior(before, north)[row]
    assert prior(after, south)[row] == pytest.approx(prior(before, south)[row])


def test_a_danger_found_less_often_is_held_back():
    counts = reports(calls("weaver", "eyes", "eight", 200, region="north"))
    key, changes = learned(spiders(), counts, strength=50)
    (change,) = [c for c in changes if c.item == "recluse in north"]
    assert change.new < change.old == change.now
    assert key.taxa["recluse"].occurrence.get("north", 0.02) == pytest.approx(0.02)
    freed, _ = learned(spiders(), counts, ANN, fresh(counts, strength=50), 50)
    assert freed.taxa["recluse"].occurrence["north"] == pytest.approx(1.02 * (50 * 0.02 / 1.02) / 250)


def test_a_state_with_its_own_value_follows_its_region():
    base = spiders()
    own = replace(base.taxa["recluse"], occurrence={"default": 0.02, "AA": 0.1})
    key = replace(base, taxa={**base.taxa, "recluse": own})
    counts = counted(key, calls("recluse", "eyes", "six", 10, region="north"))
    table = learned(key, counts, strength=50)[0].taxa["recluse"].occurrence
    assert table["AA"] / 0.1 == pytest.approx(table["north"] / 0.02)
    assert table["AA"] > 0.1


def test_a_result_without_ranges_keeps_its_weight_elsewhere():
    base = spiders()
    key = replace(base, taxa={n: replace(t, occurrence={}) for n, t in base.taxa.items()})
    counts = counted(key, calls("recluse", "eyes", "six", 10, region="north"))
    changed = learned(key, counts, strength=50)[0]
    south = Settings(region="south")
    assert prior(build_tables(changed), south) == pytest.approx(prior(build_tables(key), south))


def test_counts_survive_a_file_and_no_other_file_is_taken_for_them():
    counts = reports(calls("recluse", "eyes", "six", 3, region="north"), calls("weaver", "eyes", "eight", 2))
    assert read_counts(json.loads(json.dumps(counts_data(counts)))) == counts
    for wrong in (
        {},
        [],
        {"calls": 1, "reports": [[1]], "kinds": []},
        {"calls": 1, "reports": [], "kinds": [["a", "b", -1]]},
    ):
        with pytest.raises(UserError):
            read_counts(wrong)


@pytest.mark.parametrize(
    "wrong",
    [
        Confirmed("nobody", {}),
        Confirmed("recluse", {"eyes": "seven"}),
        Confirmed("recluse", {"ears": "six"}),
        Confirmed("recluse", {}, region="moon"),
        Confirmed("recluse", {}, chance=0.0),
        Confirmed("recluse", {}, chance=float("nan")),
    ],
)
def test_a_call_that_does_not_fit_the_key_is_refused(wrong):
    with pytest.raises(UserError):
        counted(spiders(), [wrong])


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{}",
        "[1]",
        '[{"taxon": "recluse"}]',
        '[{"taxon": "a", "reports": {}, "x": 1}]',
        '[{"taxon": "a", "reports": {"b": 1}}]',
        '[{"taxon": "a", "reports": {}, "chance": true}]',
    ],
)
def test_what_is_not_a_list_of_calls_is_refused(text):
    with pytest.raises(UserError):
        read_calls(text)


def test_the_fingerprint_differs_wherever_a_figure_does():
    key = spiders()
    assert fingerprint(key) == fingerprint(spiders())
    looser = replace(key, weights=replace(key.weights, ruled_out_answers=1))
    assert len({fingerprint(k) for k in (key, looser, proposed(key, WORSE), proposed(key, BETTER))}) == 4


# The command ----------------------------------------------------------------------------------


def told(tmp_path, monkeypatch, number, state, **options):
    """Run the command on calls about the tiny garden; returns its code, its words, and what it wrote."""
    monkeypatch.setattr(command, "require_keyset", lambda folder: garden())
    source, target, out = tmp_path / "calls.json", tmp_path / "learned.json", io.StringIO()
    source.write_text(json.dumps([{"taxon": "widow", "reports": {"legs": state}}] * number), encoding="utf-8")
    code = command.run(
        Terminal(target=out), tmp_path, source, target=target, runs=60, workers=1, today=ANN.date, **options
    )
    return code, out.getvalue(), json.loads(target.read_text(encoding="utf-8"))


def test_the_command_puts_in_force_what_is_stricter(tmp_path, monkeypatch):
    code, words, data = told(tmp_path, monkeypatch, 20, "six")
    assert code == 0
    assert "stricter" in words and "HELD BACK" not in words
    assert data["approval"] is None and data["counts"]["reports"] == [["legs", "eight", "six", 20.0]]


def test_the_command_holds_back_what_is_weaker(tmp_path, monkeypatch):
    code, words, data = told(tmp_path, monkeypatch, 20, "eight")
    assert code == 1
    assert words.count("HELD BACK") == len(data["changes"]) > 0


def test_the_command_runs_the_proof_before_it_takes_an_approval(tmp_path, monkeypatch):
    code, words, data = told(tmp_path, monkeypatch, 20, "eight", approve="A. Specialist", date="2026-11-24")
    assert code == 0
    assert "HELD BACK" not in words
    assert data["approval"] == {"name": "A. Specialist", "date": "2026-11-24"}


def test_an_approval_does_not_help_where_the_proof_fails(tmp_path, monkeypatch):
    monkeypatch.setattr(command, "prove", lambda key, **how: type("Failed", (), {"holds": False})())
    code, words, _ = told(tmp_path, monkeypatch, 20, "eight", approve="A. Specialist", date="2026-11-24")
    assert code == 1
    assert "the one-error proof fails" in words


@pytest.mark.parametrize(
    "half",
    [
        {"approve": "A. Specialist"},
        {"date": "2026-11-24"},
        {"approve": " ", "date": "2026-11-24"},
        {"approve": "A. Specialist", "date": "soon"},
    ],
)
def test_half_an_approval_is_refused(tmp_path, monkeypatch, half):
    with pytest.raises(UserError):
        told(tmp_path, monkeypatch, 1, "eight", **half)
