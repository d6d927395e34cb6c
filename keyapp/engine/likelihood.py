"""The chance of each answer under each hypothesis and level of observer."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping

import numpy as np

from keyapp.engine.tables import Bools, CharacterTable, Floats, Tables
from keyapp.model import Choice, Couplet, Evidence, Measurement, Report, Sureness, Weights

__all__ = [
    "contradicts_lead",
    "contradicts_report",
    "error_chance",
    "lead_chances",
    "number_chance",
    "readings",
    "report_chance",
]

TINY = 1e-300


def error_chance(right: float, sureness: Sureness, evidence: Evidence, factor: float, weights: Weights) -> float:
    """Chance that a report is wrong: misread (`1 - right`) or slipped, both scaled, capped.

    Sureness, evidence and observer scale both; the two are taken as independent.
    """
    scale = weights.sureness.get(str(sureness), 1.0) * weights.evidence.get(str(evidence), 1.0) * factor
    sound = (1.0 - min(1.0, (1.0 - right) * scale)) * (1.0 - min(1.0, weights.slip * scale))
    return min(weights.error_cap, 1.0 - sound)


def report_chance(table: CharacterTable, report: Report, factor: float, weights: Weights) -> Floats:
    """P(report | h) for every hypothesis h.

    For one state r: sum over true states s of chance(s|h) * [(1-e)*(r=s) + e*misread(r|s)], where
    the error chance e may differ by true state.
    "One of these" sums over the set; two states seen at once count as the less likely of them.
    Where the character does not apply, few observers report anything, and what they report is
    any state: `inapplicable` / number of states.
    """
    seen = told_chances(table, report.sureness, report.evidence, factor, weights)
    columns = [k for k, state in enumerate(table.character.state_ids) if state in report.states]
    chosen = seen[:, columns]
    count = len(table.misread)
    if report.both:
        value, inapplicable = chosen.min(axis=1), weights.inapplicable / count
    else:
        value, inapplicable = chosen.sum(axis=1), weights.inapplicable * len(columns) / count
    return np.maximum(np.where(table.applies, value, inapplicable), TINY)


def told_chances(
    table: CharacterTable, sureness: Sureness, evidence: Evidence, factor: float, weights: Weights
) -> Floats:
    """H x K: chance of each single report under each hypothesis to which the character applies."""
    return np.asarray(table.chance @ _reading(table, sureness, evidence, factor, weights))


def readings(table: CharacterTable, sureness: Sureness, evidence: Evidence, weights: Weights) -> Floats:
    """O x K x K: chance of each single report (last) given the true state, by level of observer."""
    return np.array([_reading(table, sureness, evidence, o.factor, weights) for o in weights.observers])


def _reading(table: CharacterTable, sureness: Sureness, evidence: Evidence, factor: float, weights: Weights) -> Floats:
    errors = np.array([error_chance(right, sureness, evidence, factor, weights) for right in table.right])
    return np.asarray(np.diag(1.0 - errors) + errors[:, None] * table.misread)


def lead_fits(tables: Tables, couplet: Couplet, without: Iterable[str], weights: Weights) -> tuple[Floats, Bools]:
    """Chance that an observer who sees everything would choose lead 1, lead 2 or neither.

    Returns an H x 3 array whose rows sum to 1, and whether the couplet applies to each row.
    Characters named in `without` are passed over (they are reported directly elsewhere).
    """
    count = len(tables.rows)
    applies = np.ones(count, dtype=bool)
    fits = np.ones((count, 3))
    for side, lead in enumerate(couplet.leads):
        for character, states in lead.holds.items():
            if character in without:
                continue
            table = tables.characters[character]
            columns = [k for k, state in enumerate(table.character.state_ids) if state in states]
            fits[:, side] *= table.chance[:, columns].sum(axis=1)
            applies &= table.applies
    fits[:, 2] = np.maximum(weights.neither_floor, 1.0 - fits[:, 0] - fits[:, 1])
    return fits / fits.sum(axis=1, keepdims=True), applies


def lead_chances(
    tables: Tables,
    couplet: Couplet,
    choice: Choice,
    error: float,
    without: frozenset[str],
) -> Floats:
    """P(choice | h) for a couplet: (1-e)*fit + e*misread, as one event whatever the leads assert.

    A couplet that does not apply to h is answered at random between its leads and *neither fits*.
    """
    weights = tables.weights
    fits, applies = lead_fits(tables, couplet, without, weights)
    slip = weights.neither_slip
    misread = np.array([[0.0, 1.0 - slip, slip], [1.0 - slip, 0.0, slip], [0.5, 0.5, 0.0]])
    chances = fits @ ((1.0 - error) * np.eye(3) + error * misread)
    column = {Choice.FIRST: 0, Choice.SECOND: 1, Choice.NEITHER: 2}[choice]
    return np.maximum(np.where(applies, chances[:, column], 1.0 / 3.0), TINY)


def couplet_right(tables: Tables, couplet: Couplet, without: frozenset[str]) -> float:
    """Chance that a couplet is read right: that of its least reliable character."""
    held = {c for lead in couplet.leads for c in lead.holds} - without
    return min((tables.characters[c].character.right for c in held), default=0.5)


def number_chance(tables: Tables, answer: Measurement, factor: float) -> Floats:
    """Relative chance of a reported size for every hypothesis, in (0, 1].

    On the log scale: 1 up to the top of the grown range, then falling off with the reporting
    uncertainty to an outlier floor. Smaller than grown never contradicts (young ones exist),
    except for sizes of things that do not grow (egg sacs). Body length and leg span are
    confused at the stated chance. Taxa without a range are uninformative.
    """
    character = tables.keyset.characters[answer.character]
    number = character.number
    assert number is not None
    weights = tables.weights
    spread = answer.spread if answer.spread is not None else number.spread
    spread = max(0.02, spread * weights.sureness.get(str(answer.sureness), 1.0) ** 0.5 * factor**0.5)
    outlier = min(weights.error_cap, weights.size_outlier * factor)
    value = _fits_range(tables, answer.character, answer.mm, spread)
    if number.confused_with:
        other = _fits_range(tables, number.confused_with, answer.mm, spread)
        value = (1.0 - number.confused) * value + number.confused * other
    value = (1.0 - outlier) * value + outlier
    applies = tables.size_applies[answer.character]
    mean = float(value[applies].mean()) if applies.any() else 1.0
    return np.maximum(np.where(applies, value, mean), TINY)


def _fits_range(tables: Tables, character: str, mm: float, spread: float) -> Floats:
    values = np.full(len(tables.rows), np.nan)
    for i, row in enumerate(tables.rows[:-1]):
        size = tables.keyset.taxa[row.taxon].sizes.get(character)
        if size is None:
            continue
        values[i] = _normal_above((math.log(mm) - math.log(size.most)) / spread)
        if row.sign:
            values[i] *= _normal_above((math.log(size.least) - math.log(mm)) / spread)
    mean = float(np.nanmean(values)) if not np.isnan(values).all() else 1.0
    return np.where(np.isnan(values), mean, values)


def _normal_above(z: float) -> float:
    """Chance that a standard normal exceeds z, scaled to 1 well below and 1/2 at the edge."""
    return 0.5 * math.erfc(z / math.sqrt(2.0))


def contradicts_report(table: CharacterTable, report: Report) -> Bools:
    """Which hypotheses never show what was reported, by their own description."""
    columns = [k for k, state in enumerate(table.character.state_ids) if state in report.states]
    shown = table.listed[:, columns]
    fits = shown.all(axis=1) if report.both else shown.any(axis=1)
    return table.applies & table.described & ~fits


def contradicts_lead(tables: Tables, holds: Mapping[str, frozenset[str]], without: frozenset[str]) -> Bools:
    """Which hypotheses never show something the chosen lead asserts."""
    found = np.zeros(len(tables.rows), dtype=bool)
    for character, states in holds.items():
        if character not in without:
            table = tables.characters[character]
            found |= contradicts_report(table, Report(character, states))
    return found
