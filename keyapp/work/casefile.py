"""A case as JSON, so that an enquiry can be kept and carried on."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from keyapp.errors import UserError
from keyapp.model import (
    Answer,
    Case,
    Choice,
    Evidence,
    LeadAnswer,
    Measurement,
    Report,
    Settings,
    Sureness,
)

__all__ = ["FORMAT", "case_from_json", "case_to_json"]

FORMAT = 1
"""Version of the file format; a newer one is refused."""


def case_to_json(case: Case) -> str:
    """Return `case` as one JSON object."""
    return json.dumps(
        {
            "format": FORMAT,
            "settings": asdict(case.settings),
            "answers": [_answer_out(a) for a in case.answers],
            "reopened": sorted(case.reopened),
        },
        ensure_ascii=False,
    )


def case_from_json(text: str) -> Case:
    """Read a case back; raises UserError where the text is damaged or too new."""
    try:
        data = json.loads(text)
        if not isinstance(data, dict):
            raise TypeError("not an object")
        version = data["format"]
        if not isinstance(version, int) or version > FORMAT:
            raise UserError(
                "The kept enquiry was written by a newer version.", fix="Update the program, or start a new enquiry."
            )
        settings = dict(data["settings"])
        settings["evidence"] = Evidence(settings["evidence"])
        return Case(
            Settings(**settings),
            tuple(_answer_in(a) for a in data["answers"]),
            frozenset(str(c) for c in data["reopened"]),
        )
    except (ValueError, TypeError, KeyError, AttributeError) as error:
        raise UserError("The kept enquiry is damaged and cannot be read.", fix="Start a new enquiry.") from error


def _answer_out(answer: Answer) -> dict[str, Any]:
    kind = {LeadAnswer: "lead", Report: "report", Measurement: "size"}[type(answer)]
    values = {name: getattr(answer, name) for name in answer.__dataclass_fields__}
    if isinstance(answer, Report):
        values["states"] = sorted(answer.states)
    return {"kind": kind, **values}


def _answer_in(data: Mapping[str, Any]) -> Answer:
    values = dict(data)
    kind = values.pop("kind")
    values["sureness"] = Sureness(values["sureness"])
    values["evidence"] = Evidence(values["evidence"])
    if kind == "lead":
        values["choice"] = Choice(values["choice"])
        return LeadAnswer(**values)
    if kind == "report":
        values["states"] = frozenset(values["states"])
        return Report(**values)
    if kind == "size":
        return Measurement(**values)
    raise ValueError(kind)
