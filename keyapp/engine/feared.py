"""Starting from a feared animal: is it this one? What speaks for it, what against, and what is still missing."""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass, replace

import numpy as np

from keyapp.engine.ledger import report_event
from keyapp.engine.prior import log_prior_of
from keyapp.engine.question import Question, next_questions
from keyapp.engine.reading import Reading, unseen
from keyapp.engine.safety import NotRuledOut, clearing_counts, not_ruled_out
from keyapp.engine.second_look import SecondLook, second_looks
from keyapp.engine.settle import Settling, settling
from keyapp.engine.standing import Standing, standing
from keyapp.engine.stopping import LEAST_SCORE
from keyapp.engine.tables import Floats, GroupId, Tables
from keyapp.engine.weighing import Strength, Weighed, strength, weigh_answers
from keyapp.errors import UserError
from keyapp.model import Form, Report

__all__ = ["Fear", "Feared", "about", "feared", "feared_of", "read_fear"]

ITSELF = GroupId("feared", "it")
ALL_ELSE = GroupId("feared", "all else")


@dataclass(frozen=True, slots=True)
class Feared:
    """An animal that someone is afraid it is.

    Attributes:
        id: danger group id, else the id of the result it was named by.
        danger: the same danger group id; empty for an animal of no danger group.
        rows: its rows in the tables: all results of the danger group, or of the kind, with their signs.
    """

    id: str
    danger: str
    rows: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Fear:
    """How the answers so far stand to a feared animal.

    Attributes:
        feared: the animal.
        is_open: it is not ruled out, by the gate that holds for every danger; while it is, nobody may be told
            that it is not this animal.
        answered: whether there are answers at all.
        log_ratio, strength: what all answers together say of it; the ratios of `evidence` sum to it (nats).
        evidence: the answers by independence group, in the order given.
        missing: sure answers against it that are still missing before it may be ruled out; 0 where there
            are enough, and where it still is open then they do not weigh enough together yet.
        questions: what would tell most about it, best first, for the effort.
        points, clears: of the best question, the state that would speak for it most and the one that
            would speak against it most; empty where none would.
        settles: what is most likely to help to rule it out, were it not there; None where nothing is left.
        second_look: where it is ruled out, the answers to check again.
    """

    feared: Feared
    is_open: bool
    answered: bool
    log_ratio: float
    strength: Strength
    evidence: tuple[Weighed, ...]
    missing: int
    questions: tuple[Question, ...]
    points: str
    clears: str
    settles: Settling | None
    second_look: tuple[SecondLook, ...]

    @property
    def best(self) -> Question | None:
        """The one thing to look at next: while it is open, the best there is; then, only what is worth its effort."""
        if not self.questions or (not self.is_open and self.questions[0].score < LEAST_SCORE):
            return None
        return self.questions[0]


def feared(tables: Tables, name: str) -> Feared:
    """The feared animal with this id: a danger group, or a result.

    A result of a danger group stands for the whole group, since that is what the gate names, and a
    sign for the worst animal that makes it; any other result of a kind stands for all stages and
    signs of it. Raises UserError for an unknown id.
    """
    if name in tables.keyset.danger_groups:
        rows = tuple(row for row in tables.gated if tables.rows[row].danger == name)
        if rows:
            return Feared(name, name, rows)
    if name not in tables.keyset.taxa:
        raise UserError(f"There is no animal “{name}” in this key.", fix="Use the id of a danger group or a result.")
    return feared_of(tables, name)


def feared_of(tables: Tables, taxon_id: str) -> Feared:
    """The feared animal that a result stands for (see `feared`)."""
    taxon = tables.keyset.taxa[taxon_id]
    dangers = {tables.rows[row].danger for row in tables.rows_of[taxon_id]} - {""}
    if len(dangers) == 1 or (taxon.danger.is_gated and taxon.danger_group in dangers):
        return feared(tables, taxon.danger_group if len(dangers) > 1 else dangers.pop())
    if taxon.form is not Form.ANIMAL:
        return Feared(taxon_id, "", tables.rows_of[taxon_id])
    kind = tuple(i for i, row in enumerate(tables.rows) if row.kind == taxon.kind)
    first = next(tables.rows[row].taxon for row in kind if not tables.rows[row].sign)
    return Feared(first, "", kind)


def about(tables: Tables, fear: Feared) -> Tables:
    """The same tables with two groups, it and all else, and with it as the only danger.

    So the next question, the gate, the settling observation and the second look are those of
    the rest of the engine, asked of this animal.
    """
    key = ("about", fear.rows)
    if key not in tables.memo:
        rows = list(tables.rows)
        inside = set(fear.rows)
        for i, row in enumerate(rows):
            rows[i] = (
                replace(row, group=ITSELF, danger=fear.id) if i in inside else replace(row, group=ALL_ELSE, danger="")
            )
        groups = (ALL_ELSE, ITSELF)
        group_of = np.array([int(i in inside) for i in range(len(rows))], dtype=np.int64)
        tables.memo[key] = replace(tables, rows=tuple(rows), gated=fear.rows, groups=groups, group_of=group_of, memo={})
    return tables.memo[key]  # type: ignore[return-value]


def read_fear(tables: Tables, reading: Reading, fear: Feared, passed_over: Collection[str] = ()) -> Fear:
    """How the answers of `reading` stand to a feared animal, and what to look at next.

    Characters in `passed_over`, and those that the person could not tell, are not asked.
    """
    view = about(tables, fear)
    # The prior is that of the whole key: a danger keeps its highest value where little is known.
    log_prior = log_prior_of(tables, reading.case.settings)
    found = reading.events
    stand = standing(view, log_prior, found)
    named = not_ruled_out(view, stand, found)
    gate = {one.group for one in reading.not_ruled_out}
    is_open = bool(named) or any(tables.rows[row].danger in gate for row in fear.rows)
    still_open = _open_rows(tables, fear, named)
    passed = {*passed_over, *unseen(tables, reading)}
    settles = _settles(view, log_prior, reading, named, passed)
    questions = next_questions(
        view,
        log_prior,
        found,
        stand,
        named,
        reading.case.settings.evidence,
        passed,
        {settles.character} if settles is not None else (),
    )
    evidence = weigh_answers(tables, log_prior, found, fear.rows, still_open)
    total = sum(one.log_ratio for one in evidence)
    points, clears = _tellings(view, log_prior, reading, questions[0].character) if questions else ("", "")
    counts = clearing_counts(view, found)[list(still_open or fear.rows)]
    return Fear(
        fear,
        is_open,
        bool(found),
        total,
        strength(total),
        evidence,
        max(0, tables.weights.ruled_out_answers - int(counts.min())),
        questions,
        points,
        clears,
        settles,
        () if is_open else second_looks(view, log_prior, found),
    )


def _open_rows(tables: Tables, fear: Feared, named: tuple[NotRuledOut, ...]) -> tuple[int, ...]:
    open_taxa = {taxon for one in named for taxon in one.taxa}
    return tuple(row for row in fear.rows if tables.rows[row].taxon in open_taxa)


def _settles(
    view: Tables, log_prior: Floats, reading: Reading, named: tuple[NotRuledOut, ...], passed: Collection[str]
) -> Settling | None:
    if not named:
        return None
    found = reading.events
    said = {c for event in found for c in event.characters} | set(passed)
    rows = [row for row in view.gated if view.rows[row].taxon in named[0].taxa]
    used = {g for event in found if clearing_counts(view, [event])[rows].any() for g in event.groups}
    return settling(view, standing(view, log_prior, found), named[0], said, used)


def _tellings(view: Tables, log_prior: Floats, reading: Reading, name: str) -> tuple[str, str]:
    """The state that would speak for the animal, and the one that would speak against it, each the most telling.

    That is the one with the highest chance to be reported (were it this animal, or were it not)
    times the change of log odds it would bring; for it, only a state that it is described with.
    """
    found = reading.events
    table = view.characters[name]
    shown = np.asarray(table.listed[list(view.gated)].any(axis=0))
    before = standing(view, log_prior, found)
    ups, downs = {}, {}
    for state, is_shown in zip(table.character.state_ids, shown, strict=True):
        event = report_event(view, Report(name, frozenset({state}), evidence=reading.case.settings.evidence))
        told = (np.exp(event.logs) * before.joint).sum(axis=0)
        move = _log_odds(standing(view, log_prior, [*found, event])) - _log_odds(before)
        inside = float(told[list(view.gated)].sum())
        if move > 0 and is_shown:
            ups[state] = move * inside
        elif move < 0:
            downs[state] = -move * (float(told.sum()) - inside)
    return max(ups, key=lambda state: ups[state], default=""), max(downs, key=lambda state: downs[state], default="")


def _log_odds(stand: Standing) -> float:
    return math.log(max(stand.of(ITSELF), 1e-300)) - math.log(max(stand.of(ALL_ELSE), 1e-300))
