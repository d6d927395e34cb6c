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
    FinalCheck,
    LeadAnswer,
    Measurement,
    Report,
    Settings,
    Sureness,
    check_plain_setting,
    check_shape,
)

__all__ = ["FORMAT", "case_from_json", "case_in", "case_out", "case_to_json"]

FORMAT = 2
"""Version of the file format; a newer one is refused. The second knows the final check."""


def case_to_json(case: Case) -> str:
    """Return `case` as one JSON object."""
    return json.dumps(case_out(case), ensure_ascii=False)


def case_out(case: Case) -> dict[str, Any]:
    """`case` as plain data."""
    return {
        "format": FORMAT,
        "settings": asdict(case.settings),
        "answers": [_answer_out(a) for a in case.answers],
        "reopened": sorted(case.reopened),
        "check": None if case.check is None else asdict(case.check),
    }


def case_from_json(text: str) -> Case:
    """Read a case back; raises UserError where the text is damaged or too new.

    Everything that no key could take is damage. Whether this key knows the ids is for `check_case`.
    """
    try:
        data = json.loads(text, parse_constant=_no_constant)
    except (ValueError, RecursionError) as error:
        raise _damaged() from error
    return case_in(data)


def case_in(data: object) -> Case:
    """A case from plain data; raises UserError as `case_from_json`."""
    try:
        if not isinstance(data, dict):
            raise TypeError("not an object")
        version = data["format"]
        if not isinstance(version, int) or isinstance(version, bool) or version < 1:
            raise TypeError("no version")
        if version > FORMAT:
            raise UserError(
                "The kept enquiry was written by a newer version.", fix="Update the program, or start a new enquiry."
            )
        return Case(
            _settings_in(data["settings"]),
            tuple(_answer_in(a) for a in data["answers"]),
            frozenset(_text(c) for c in data["reopened"]),
            _check_in(data["check"] if version > 1 else None),
        )
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError, _Damage) as error:
        raise _damaged() from error


def _damaged() -> UserError:
    return UserError("The kept enquiry is damaged and cannot be read.", fix="Start a new enquiry.")


def _check_in(data: object) -> FinalCheck | None:
    if data is None:
        return None
    if not isinstance(data, dict) or not isinstance(data["fits"], bool):
        raise TypeError("check")
    return FinalCheck(_text(data["taxon"]), data["fits"], _text(data["part"]))


class _Damage(Exception):
    """Something in the file that no key could take."""


def _no_constant(name: str) -> None:
    raise ValueError(f"{name} is no number")


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise TypeError(value)
    return value


def _settings_in(data: Mapping[str, Any]) -> Settings:
    values = dict(data)
    values["evidence"] = Evidence(values["evidence"])
    settings = Settings(**values)
    try:
        for name in Settings.__dataclass_fields__:
            check_plain_setting(name, getattr(settings, name))
    except UserError as error:
        raise _Damage from error
    return settings


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
        answer: Answer = LeadAnswer(**values)
    elif kind == "report":
        if not isinstance(values["states"], list):
            raise TypeError("states")
        answer = Report(**{**values, "states": frozenset(values["states"])})
    elif kind == "size":
        answer = Measurement(**values)
    else:
        raise ValueError(kind)
    try:
        check_shape(answer)
    except UserError as error:
        raise _Damage from error
    return answer
