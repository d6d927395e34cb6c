"""Errors of a strict following of the key: ends at another group, and dangers that end unnamed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from keyapp.engine import GroupId, Tables
from keyapp.engine.tables import Floats
from keyapp.measure.bounds import answer_bits
from keyapp.measure.propagate import Way
from keyapp.measure.routes import Routes

__all__ = ["CoupletLoss", "ErrorRates", "TaxonMiss", "error_rates"]


@dataclass(frozen=True, slots=True)
class TaxonMiss:
    """One result as specimen.

    Attributes:
        taxon: taxon id.
        weight: its share of all specimens.
        couplets: expected couplets answered.
        error: chance of ending at another group.
        danger_miss: chance of ending where its danger is not named; None where it is not medically important.
        unwarned: of these, chance of ending at a result in the key that names no danger at all; else None.
    """

    taxon: str
    weight: float
    couplets: float
    error: float
    danger_miss: float | None
    unwarned: float | None


@dataclass(frozen=True, slots=True)
class CoupletLoss:
    """What slips at one couplet cost.

    Attributes:
        couplet: couplet id.
        error: its error rate.
        visits: share of all specimens that are asked it.
        error_lost: how much the chance of ending at another group would fall were it never misread.
        danger_lost: the same for the danger miss, every danger group counting alike.
        inapplicable: share of all specimens that are asked it though it does not apply to them.
        neither: share of all specimens that are asked it while neither lead fits.
    """

    couplet: str
    error: float
    visits: float
    error_lost: float
    danger_lost: float
    inapplicable: float
    neither: float


@dataclass(frozen=True, slots=True)
class ErrorRates:
    """The key at given error rates.

    Attributes:
        couplets: expected couplets answered.
        error: share of specimens that end at another group.
        danger_miss: chance that a dangerous specimen ends where its danger is not named, by how common they are.
        danger_by_group: the same within each danger group.
        taxa: by result, worst first.
        losses: by couplet, in the order of the key.
        bits_before, bits_left: entropy of the group before the key, and when its end is known.
        least_couplets: no way of asking yes/no questions misread at the least of these rates gets as far with fewer.
    """

    couplets: float
    error: float
    danger_miss: float
    danger_by_group: Mapping[str, float]
    taxa: tuple[TaxonMiss, ...]
    losses: tuple[CoupletLoss, ...]
    bits_before: float
    bits_left: float
    least_couplets: float


def error_rates(
    tables: Tables, graph: Routes, ways: Mapping[str, Way], rows: Floats, errors: Mapping[str, float]
) -> ErrorRates:
    """Propagate every specimen through the graph, exactly.

    `rows` are masses by row of `tables` that sum to 1; `errors` the chance that each couplet is misread. An end is
    right where its group is the specimen's (for a sign: that of its maker); a danger is named where the end, or
    a maker of it, is of the same danger group.

    `least_couplets` is (H(group) - H(group | end)) / capacity: each answer through a channel tells at most its
    capacity (Shannon), 1 - h2(e) for yes/no answers.
    """
    names = _Names(tables)
    taxa = [taxon for taxon in ways if any(rows[r] > 0 for r in tables.rows_of[taxon])]
    dangers = sorted({tables.rows[r].danger for r in range(len(rows)) if rows[r] > 0} - {""})
    in_danger = {d: sum(float(rows[r]) for r in tables.gated if tables.rows[r].danger == d) for d in dangers}
    misses = []
    joint: dict[tuple[GroupId, str], float] = {}
    by_danger = dict.fromkeys(dangers, 0.0)
    sums = {c: [0.0] * 5 for c in graph.couplets}
    for taxon in taxa:
        own = [(tables.rows[r], float(rows[r])) for r in tables.rows_of[taxon] if rows[r] > 0]
        weight = sum(w for _, w in own)
        flow = ways[taxon].flow(errors)
        gated = sum(w for row, w in own if row.danger)
        wrong = missed = unwarned = 0.0
        for end, chance in flow.ends.items():
            for row, w in own:
                joint[row.group, end] = joint.get((row.group, end), 0.0) + w * chance
                wrong += w * chance * (row.group not in names.groups[end])
                if row.danger and row.danger not in names.dangers[end]:
                    missed += w * chance
                    unwarned += w * chance * names.quiet[end]
                    by_danger[row.danger] += w * chance / in_danger[row.danger]
        misses.append(
            TaxonMiss(
                taxon,
                weight,
                flow.couplets,
                wrong / weight,
                missed / gated if gated else None,
                unwarned / gated if gated else None,
            )
        )

        wrong_end = {end: sum(w for row, w in own if row.group not in names.groups[end]) for end in graph.ends}
        # Every danger group counts alike, however rare it is.
        unnamed = {
            end: sum(
                w / in_danger[row.danger] / len(dangers)
                for row, w in own
                if row.danger and row.danger not in names.dangers[end]
            )
            for end in graph.ends
        }
        tables_of = (
            flow.visits,
            ways[taxon].slips(errors, wrong_end),
            ways[taxon].slips(errors, unnamed) if gated else {},
            flow.inapplicable,
            flow.neither,
        )
        for i, (table, scale) in enumerate(zip(tables_of, (weight, 1.0, 1.0, weight, weight), strict=True)):
            for couplet, value in table.items():
                sums[couplet][i] += scale * value
    total_gated = sum(in_danger.values())
    before, left = _bits(joint)
    losses = tuple(CoupletLoss(c, errors[c], *values) for c, values in sums.items())
    least = answer_bits(min(errors.values()))
    return ErrorRates(
        couplets=sum(m.weight * m.couplets for m in misses),
        error=sum(m.weight * m.error for m in misses),
        danger_miss=sum(by_danger[d] * in_danger[d] for d in dangers) / total_gated if total_gated else 0.0,
        danger_by_group=by_danger,
        taxa=tuple(sorted(misses, key=lambda m: (-(m.danger_miss or 0.0), -m.error, m.taxon))),
        losses=losses,
        bits_before=before,
        bits_left=left,
        least_couplets=(before - left) / least if least > 0 else 0.0,
    )


class _Names:
    """What each end names: groups, danger groups, and whether it names no danger at all."""

    def __init__(self, tables: Tables) -> None:
        self.groups = {taxon: {tables.rows[r].group for r in rows} for taxon, rows in tables.rows_of.items()}
        self.dangers = {taxon: {tables.rows[r].danger for r in rows} - {""} for taxon, rows in tables.rows_of.items()}
        outside = {taxon.id for taxon in tables.keyset.taxa.values() if taxon.outside}
        self.quiet = {taxon: not named and taxon not in outside for taxon, named in self.dangers.items()}


def _bits(joint: Mapping[tuple[GroupId, str], float]) -> tuple[float, float]:
    """Entropy of the group, and of the group given the end, in bits."""
    groups = {group: i for i, group in enumerate(sorted({group for group, _ in joint}))}
    ends = {end: i for i, end in enumerate(sorted({end for _, end in joint}))}
    mass = np.zeros((len(groups), len(ends)))
    for (group, end), chance in joint.items():
        mass[groups[group], ends[end]] = chance
    mass /= mass.sum()

    def plogp(values: Floats) -> float:
        held = values[values > 0]
        return float(-(held * np.log2(held)).sum())

    return plogp(mass.sum(axis=1)), max(0.0, plogp(mass.ravel()) - plogp(mass.sum(axis=0)))
