"""A kept case made fit for the key as it is now."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING

from keyapp.errors import UserError
from keyapp.model import Answer, Case, LeadAnswer, Measurement, Report, Settings

if TYPE_CHECKING:
    from keyapp.engine import Tables
    from keyapp.work.enquiry import Enquiry

__all__ = ["usable"]


def usable(case: Case, tables: Tables) -> tuple[Case, tuple[str, ...]]:
    """The part of `case` that this key can take, and a name for each thing left out.

    Everything is given to a fresh enquiry again, so that a kept case passes the same checks as
    a person's own answers.
    """
    from keyapp.work.enquiry import Enquiry

    trial = Enquiry(tables)
    dropped = []
    for field in fields(Settings):
        value = getattr(case.settings, field.name)
        try:
            trial.set_up(**{field.name: value})
        except (UserError, TypeError):
            dropped.append(field.name)
    for answer in case.answers:
        try:
            _give(trial, answer)
            trial.reading  # noqa: B018 - a case that cannot be read must show itself here
        except (UserError, TypeError, KeyError, ValueError):
            trial.take_back(answer)
            dropped.append(_name(answer))
    known = frozenset(c for c in case.reopened if c in tables.keyset.couplets)
    return Case(trial.case.settings, trial.case.answers, known), tuple(dropped)


def _give(trial: Enquiry, answer: Answer) -> None:
    if isinstance(answer, LeadAnswer):
        if not isinstance(answer.view_seen, bool):
            raise TypeError("view_seen")
        trial.choose(answer.couplet, answer.choice, answer.sureness, answer.evidence, answer.view_seen)
    elif isinstance(answer, Report):
        if not isinstance(answer.view_seen, bool) or not isinstance(answer.both, bool):
            raise TypeError("view_seen")
        trial.report(
            answer.character,
            answer.states,
            both=answer.both,
            sureness=answer.sureness,
            evidence=answer.evidence,
            view_seen=answer.view_seen,
        )
    else:
        trial.measure(
            answer.character, answer.mm, spread=answer.spread, sureness=answer.sureness, evidence=answer.evidence
        )


def _name(answer: Answer) -> str:
    if isinstance(answer, Report | Measurement):
        return str(answer.character)
    return str(answer.couplet)
