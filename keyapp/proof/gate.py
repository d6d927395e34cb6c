"""What stands at the end of a run: the dangers that are named, and what may be done."""

from __future__ import annotations

from keyapp.engine import Action, NotRuledOut, Settling, Standing, Tables, Walk, not_ruled_out, standing, walk
from keyapp.engine.ledger import Event, contradictions, events, known_states
from keyapp.engine.prior import log_prior_of
from keyapp.engine.reading import notes_of
from keyapp.engine.settle import settling
from keyapp.engine.verdict import verdict
from keyapp.model import Answer, Case, Settings

__all__ = ["outcome", "settles", "way_on"]


def outcome(tables: Tables, case: Case) -> tuple[frozenset[str], tuple[Action, ...]]:
    """The danger groups that `read_case` would name and the actions it would allow, without all else it works out."""
    way, answers = _answers(tables, case)
    found, stand, named = _weighed(tables, case.settings, answers)
    disagreeing = bool(contradictions(tables, answers))
    said = verdict(tables, log_prior_of(tables, case.settings), case.settings, found, stand, way, named, disagreeing)
    return frozenset(danger.group for danger in named), said.actions


def settles(tables: Tables, case: Case, danger: str) -> Settling | None:
    """What `read_case` would propose to look at for one danger group; None where it is not named."""
    found, stand, named = _weighed(tables, case.settings, _answers(tables, case)[1])
    mine = next((one for one in named if one.group == danger), None)
    if mine is None:
        return None
    rows = [row for taxon in mine.taxa for row in tables.rows_of[taxon]]
    used = {g for event in found if event.may_clear and event.against[rows].any() for g in event.groups}
    return settling(tables, stand, mine, {c for event in found for c in event.characters}, used)


def way_on(tables: Tables, case: Case) -> Walk:
    """The way through the key, passing what sure reports settle."""
    return walk(tables, case, known_states(tables, notes_of(case)))


def _answers(tables: Tables, case: Case) -> tuple[Walk, tuple[Answer, ...]]:
    way = way_on(tables, case)
    return way, (*notes_of(case), *way.answers)


def _weighed(
    tables: Tables, settings: Settings, answers: tuple[Answer, ...]
) -> tuple[tuple[Event, ...], Standing, tuple[NotRuledOut, ...]]:
    found = events(tables, answers)
    stand = standing(tables, log_prior_of(tables, settings), found)
    return found, stand, not_ruled_out(tables, stand, found)
