"""The fast ways of the engine give what the definitions give, on random keys with all that a key may hold."""

from __future__ import annotations

import numpy as np
import pytest

from keyapp.engine import build_tables, not_ruled_out, prior
from keyapp.engine.expect import Expectation, bits_apart, entropy
from keyapp.engine.feared import about, feared
from keyapp.engine.ledger import events, report_event
from keyapp.engine.likelihood import told_chances
from keyapp.engine.safety import clearing_counts, openness
from keyapp.engine.settle import settling
from keyapp.engine.standing import standing
from keyapp.engine.sums import layout_of, sums_of
from keyapp.keyfile.cache import read_copy, write_copy
from keyapp.model import (
    AppliesTo,
    Choice,
    Danger,
    Evidence,
    Form,
    LeadAnswer,
    Observer,
    Report,
    Settings,
    Sureness,
    Weights,
)
from tests.builders import character, keyset, lead, taxon

SEEDS = range(24)
EVIDENCE = Evidence.PHOTO
RULES = (
    AppliesTo(),
    AppliesTo(forms=("animal",)),
    AppliesTo(groups=("Odonata", "F1")),
    AppliesTo(not_groups=("F2", "widows")),
)
OBSERVERS = (Observer("good", 0.3, 0.5), Observer("ordinary", 0.5, 1.0), Observer("poor", 0.2, 2.5))
WEIGHTS = {
    "outside": 0.07,
    "unlisted": 0.03,
    "slip": 0.04,
    "inapplicable": 0.3,
    "outside_breadth": 0.4,
    "observers": OBSERVERS,
    "ruled_out_ratio": 0.2,
    "ruled_out_posterior": 0.1,
    "evidence": {"photo": 0.8},
}


def random_keyset(seed):
    """Fourteen results, two of them signs of several makers, two dangers; twelve characters in six groups."""
    rng = np.random.default_rng(seed)
    characters = [
        character(
            f"c{i}",
            " ".join(f"s{k}" for k in range(int(rng.integers(2, 7)))),
            group=f"g{i // 2}",
            right=float(rng.uniform(0.6, 1.0)),
            tell=float(rng.uniform(0.4, 1.0)),
            never_clears="it varies" if rng.random() < 0.2 else "",
            absent="s1" if rng.random() < 0.2 else "",
            applies_to=RULES[int(rng.integers(len(RULES)))],
        )
        for i in range(12)
    ]
    dangers = {1: "widows", 2: "widows", 5: "ticks"}
    taxa = [
        taxon(
            f"t{n}",
            {c.id: _shown(rng, c) for c in characters if rng.random() < 0.6},
            family=f"F{n // 3}",
            order="Odonata" if n % 2 else "Araneae",
            danger=Danger.SIGNIFICANT if n in dangers else Danger.NONE,
            group=dangers.get(n, ""),
            share=float(rng.uniform(0.2, 2.0)),
            kind=f"k{n // 2}",
        )
        for n in range(12)
    ]
    taxa += [
        taxon(
            f"web{n}",
            {c.id: _shown(rng, c) for c in characters if rng.random() < 0.5},
            form=Form.WEB,
            kind=f"web{n}",
            made_by=makers,
        )
        for n, makers in enumerate((("k0", "k3"), ("k1", "k2", "k4")))
    ]
    couplets = {
        "x": (lead("couplet:y", c0="s0", c4="s0"), lead("taxon:t1", c0="s1", c4="s1")),
        "y": (lead("taxon:t2", c1="s0"), lead("taxon:t3", c1="s1")),
    }
    return keyset(characters, taxa, couplets, Weights(**WEIGHTS))


def _shown(rng, one):
    """One to three states, not always all that there is."""
    names = list(rng.permutation(list(one.state_ids)))[: int(rng.integers(1, 4))]
    often = rng.dirichlet(np.ones(len(names))) * float(rng.choice([1.0, 0.9]))
    return {str(name): max(0.01, float(value)) for name, value in zip(names, often, strict=True)}


def answered(tables, seed):
    """A few reports, and a lead that joins two independence groups; the standing after them."""
    rng = np.random.default_rng(500 + seed)
    reports = [
        Report(
            str(name),
            frozenset({str(rng.choice(tables.characters[name].character.state_ids))}),
            sureness=Sureness.SURE if rng.random() < 0.8 else Sureness.THINK_SO,
        )
        for name in rng.choice(list(tables.characters), size=int(rng.integers(0, 6)), replace=False)
    ]
    leads = [LeadAnswer("k/x", Choice.FIRST)] if seed % 2 else []
    found = events(tables, [*reports, *leads])
    log_prior = np.log(prior(tables, Settings()))
    return log_prior, found, standing(tables, log_prior, found)


def told_by_row(tables, name, factor):
    """Rows x states: chance of each sure report."""
    table = tables.characters[name]
    told = told_chances(table, Sureness.SURE, EVIDENCE, factor, tables.weights)
    return np.where(table.applies[:, None], told, tables.weights.inapplicable / len(table.right))


def by_trial(tables, log_prior, found, stand, name):
    """Expected bits and expected fall of openness: every report made, and everything read anew."""
    bits = cleared = 0.0
    for state in tables.characters[name].character.state_ids:
        event = report_event(tables, Report(name, frozenset({state}), evidence=EVIDENCE))
        chance = float((np.exp(event.logs) * stand.joint).sum())
        then = standing(tables, log_prior, [*found, event])
        bits += chance * (entropy(tables.group_sums(stand.posterior)) - entropy(tables.group_sums(then.posterior)))
        cleared += chance * (openness(tables, stand, found) - openness(tables, then, [*found, event]))
    return max(0.0, bits), max(0.0, cleared)


@pytest.mark.parametrize("seed", SEEDS)
def test_sums_of_groups_are_those_of_their_rows(seed):
    tables = build_tables(random_keyset(seed))
    _, _, stand = answered(tables, seed)
    layout, sums = layout_of(tables), sums_of(tables, stand)
    for place, table in enumerate(tables.characters.values()):
        by_row = table.chance * table.applies[:, None]
        for k in range(len(table.right)):
            expected = np.array([np.bincount(tables.group_of, weights=level * by_row[:, k]) for level in stand.joint])
            found = np.add.reduceat(sums.by_segment[layout.first[place] + k], layout.group_starts, axis=1)
            assert found == pytest.approx(expected, abs=1e-14)
        assert sums.beside[place] == pytest.approx(stand.posterior[~table.applies].sum(), abs=1e-14)


@pytest.mark.parametrize("seed", SEEDS)
def test_bits_of_a_first_question_of_its_group_are_those_of_the_rows(seed):
    tables = build_tables(random_keyset(seed))
    _, _, stand = answered(tables, seed)
    found = bits_apart(tables, stand, EVIDENCE)
    before = entropy(tables.group_sums(stand.posterior))
    for name in tables.characters:
        after = sum(
            level[:, None] * told_by_row(tables, name, observer.factor)
            for level, observer in zip(stand.joint, tables.weights.observers, strict=True)
        )
        gain = sum(rows.sum() * (before - entropy(tables.group_sums(rows / rows.sum()))) for rows in after.T)
        assert found[name] == pytest.approx(max(0.0, gain), abs=1e-12)


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("fear", [None, "widows"])
def test_what_a_question_brings_is_what_its_answers_bring(seed, fear):
    whole = build_tables(random_keyset(seed))
    log_prior, found, _ = answered(whole, seed)
    tables = whole if fear is None else about(whole, feared(whole, fear))
    stand = standing(tables, log_prior, found)
    expectation = Expectation(tables, found, stand, EVIDENCE, clearing=True)
    said = {name for event in found for name in event.characters}
    for name in tables.characters.keys() - said:
        bits, cleared = by_trial(tables, log_prior, found, stand, name)
        assert expectation.bits(name) == pytest.approx(bits, abs=1e-12)
        assert expectation.cleared(name) == pytest.approx(cleared, abs=1e-12)


def test_the_random_keys_hold_what_they_are_meant_to_try():
    """Answers of the same group, dangers still open, results that a character does not apply to."""
    joined = opened = beside = 0
    for seed in SEEDS:
        tables = build_tables(random_keyset(seed))
        _, found, stand = answered(tables, seed)
        taken = {group for event in found for group in event.groups}
        said = {name for event in found for name in event.characters}
        joined += any(t.character.group in taken and n not in said for n, t in tables.characters.items())
        opened += bool(not_ruled_out(tables, stand, found))
        beside += any(not table.applies.all() for table in tables.characters.values())
    assert min(joined, opened, beside) > 10


@pytest.mark.parametrize("seed", SEEDS)
def test_openness_is_that_of_each_danger(seed):
    tables = build_tables(random_keyset(seed))
    _, found, stand = answered(tables, seed)
    counts, weights, total = clearing_counts(tables, found), tables.weights, 0.0
    for danger in ("widows", "ticks"):
        rows = [i for i, row in enumerate(tables.rows) if row.danger == danger]
        missing = 1 - min(1, counts[rows].min() / weights.ruled_out_answers)
        mass, ratio = stand.posterior[rows].sum(), np.exp(stand.fit[rows] - stand.fit.max()).max()
        above = np.log(mass / weights.ruled_out_posterior) / -np.log(weights.ruled_out_posterior)
        reach = np.log(ratio / weights.ruled_out_ratio) / -np.log(weights.ruled_out_ratio)
        total += 0.5 * missing + 0.5 * min(1, max(0, above, reach))
    assert openness(tables, stand, found) == pytest.approx(total, abs=1e-12)


@pytest.mark.parametrize("seed", SEEDS)
def test_reports_clear_once_for_each_independence_group(seed):
    tables = build_tables(random_keyset(seed))
    rng = np.random.default_rng(seed)
    reports = [
        Report(name, frozenset({str(rng.choice(table.character.state_ids))}))
        for name, table in tables.characters.items()
    ]
    counts = clearing_counts(tables, events(tables, reports))
    for h in range(len(tables.rows)):
        groups = set()
        for report in reports:
            table, (state,) = tables.characters[report.character], report.states
            k = table.character.state_ids.index(state)
            never = table.character.never_clears or table.character.state(state).absence
            if not never and table.applies[h] and table.described[h] and not table.listed[h, k]:
                groups.add(table.character.group)
        assert counts[h] == len(groups)


def settling_by_row(tables, stand, danger):
    """Character -> chance that looking speaks against the danger, from every row in turn."""
    rows = [r for t in danger.taxa for r in tables.rows_of[t] if tables.rows[r].danger == danger.group]
    others = [h for h in range(len(tables.rows)) if h not in rows]
    found = {}
    for name, table in tables.characters.items():
        character = table.character
        telling = [r for r in rows if table.applies[r] and table.described[r]]
        if character.never_clears or not telling or stand.posterior[table.applies].sum() < 0.5:
            continue
        clears = [
            k
            for k, state in enumerate(character.states)
            if not state.absence and not any(table.listed[r, k] for r in telling)
        ]
        speaks = sum(stand.posterior[h] * table.chance[h, k] for h in others if table.applies[h] for k in clears)
        found[name] = speaks / stand.posterior[others].sum() * character.tell * character.right
    return found


@pytest.mark.parametrize("seed", SEEDS)
def test_what_settles_a_danger_is_found_among_all_rows(seed):
    tables = build_tables(random_keyset(seed))
    _, found, stand = answered(tables, seed)
    for danger in not_ruled_out(tables, stand, found):
        by_row = settling_by_row(tables, stand, danger)
        best = settling(tables, stand, danger, (), ())
        if max(by_row.values(), default=0.0) == 0:
            assert best is None
        else:
            assert best.chance == pytest.approx(max(by_row.values()), abs=1e-12)
            assert best.chance == pytest.approx(by_row[best.character], abs=1e-12)


@pytest.mark.parametrize("seed", SEEDS)
def test_tables_of_a_compiled_key_are_those_of_the_key(seed, tmp_path):
    key = random_keyset(seed)
    write_copy(tmp_path / "copy.key", key)
    compiled = read_copy(tmp_path / "copy.key")
    assert compiled == key
    one, other = build_tables(key), build_tables(compiled)
    assert one.rows == other.rows
    for name, table in one.characters.items():
        for part in ("chance", "listed", "described", "applies", "misread", "right"):
            assert np.array_equal(getattr(table, part), getattr(other.characters[name], part))


def test_tables_are_described_row_by_row():
    """What is left open falls on the states not named; `unlisted` on all; the undescribed take the mean of kinds."""
    key = random_keyset(3)
    tables = build_tables(key)
    for name, table in tables.characters.items():
        states, rows = table.character.state_ids, {}
        for one in key.taxa.values():
            row = tables.row(one.id)
            if not one.shows.get(name) or not table.applies[row]:
                continue
            shown = np.array([one.shows[name].get(state, 0.0) for state in states])
            rest, free = max(0.0, 1 - shown.sum()), shown == 0
            if rest > 1e-12:
                shown[free if free.any() else slice(None)] += rest / (free.sum() or len(states))
            rows[one.id] = 0.97 * shown / shown.sum() + 0.03 / len(states)
            for own in tables.rows_of[one.id]:
                assert table.chance[own] == pytest.approx(rows[one.id], abs=1e-14)
                assert list(table.listed[own]) == [one.shows[name].get(state, 0) > 0 for state in states]
        shares = {
            t.id: t.share / sum(o.share for o in key.taxa.values() if o.kind == t.kind) for t in key.taxa.values()
        }
        mean = np.average(list(rows.values()), axis=0, weights=[shares[t] for t in rows])
        others = [h for h, row in enumerate(tables.rows[:-1]) if row.taxon not in rows]
        assert table.chance[others] == pytest.approx(np.tile(mean, (len(others), 1)), abs=1e-14)
        assert table.chance[-1] == pytest.approx(0.6 * mean + 0.4 / len(states), abs=1e-14)


def test_a_changed_result_of_a_compiled_key_is_not_read_from_the_columns(tmp_path):
    from dataclasses import replace

    key = random_keyset(1)
    write_copy(tmp_path / "copy.key", key)
    compiled = read_copy(tmp_path / "copy.key")
    changed = {**compiled.taxa, "t0": replace(compiled.taxa["t0"], shows={"c0": {"s0": 1.0}})}
    plain = {**key.taxa, "t0": replace(key.taxa["t0"], shows={"c0": {"s0": 1.0}})}
    one, other = build_tables(replace(compiled, taxa=changed)), build_tables(replace(key, taxa=plain))
    for name, table in one.characters.items():
        assert np.array_equal(table.chance, other.characters[name].chance)
