"""`keyapp ask --json`: the key for a script, one JSON object a line, both ways."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from enum import StrEnum
from pathlib import Path
from typing import Any

from keyapp.cli.ask_data import fear_data, feared_data, helps_data, stop_data
from keyapp.cli.open import open_tables
from keyapp.cli.reply import result_data, state_data
from keyapp.cli.terminal import Terminal
from keyapp.engine import feared, read_fear, stop
from keyapp.errors import UserError
from keyapp.model import Choice, Evidence, Settings, Sureness, word_of
from keyapp.model.injury import speaks_of_injury
from keyapp.wording import Words, feared_called
from keyapp.work import Enquiry
from keyapp.work.names import nearest

__all__ = ["ACTS", "Desk", "run"]

LONGEST_LINE = 100_000
MOST_FEARED = 4
"""A name in use for more animals than these is answered with the list of them, to choose from by id."""

KIND_WORDS = {str: "text", int: "a number", bool: "true or false", list: "a list"}
Fields = dict[str, Any]


class Desk:
    """Answers one request after another about one enquiry."""

    def __init__(self, enquiry: Enquiry, words: Words) -> None:
        self.enquiry = enquiry
        self.words = words
        self.done = False

    def answer(self, line: str) -> dict[str, Any]:
        """Carry out one line; a bad one changes nothing and says what, where and how to fix it."""
        extra: dict[str, Any] = {}
        try:
            fields = _parse(line)
            act = _take(fields, "act", str)
            if act not in ACTS:
                raise UserError(f"There is no act “{act}”.", where="act", fix=f"Use {nearest(act, ACTS)}.")
            extra = ACTS[act](self, fields) or {}
            return {"ok": True, "act": act, **extra, **state_data(self.enquiry, self.words), "acts": sorted(ACTS)}
        except UserError as error:
            trouble = {"what": error.what, "where": error.where, "fix": error.fix}
            return {"ok": False, "error": trouble, **state_data(self.enquiry, self.words), "acts": sorted(ACTS)}

    def emergency(self) -> list[str]:
        """What to say when a person may be hurt."""
        lines = [c.says.say(self.words.language) for c in self.enquiry.tables.keyset.emergency.signs]
        return [*self.words.referral(self.enquiry.case.settings), *lines]


def run(out: Terminal, folder: Path, language: str, learned: Path | None = None) -> int:
    """Speak JSON until the input ends or `quit` comes; returns 0."""
    tables = open_tables(folder, learned, out)
    desk = Desk(Enquiry(tables), Words(tables.keyset, language))
    out.say(json.dumps(desk.answer('{"act": "state"}'), ensure_ascii=False))
    while not desk.done and (line := out.read()) is not None:
        if line.strip():
            out.say(json.dumps(desk.answer(line), ensure_ascii=False))
    return 0


def _parse(line: str) -> Fields:
    if len(line) > LONGEST_LINE:
        raise UserError("The line is too long.", fix=f"Send at most {LONGEST_LINE} characters.")
    try:
        data = json.loads(line, parse_constant=_no_constant, object_pairs_hook=_once)
        json.dumps(data, ensure_ascii=False).encode()
    except UnicodeEncodeError:
        raise UserError("It holds half a character.", where="line", fix="Mend its \\u escapes.") from None
    except (ValueError, RecursionError) as error:
        raise UserError(
            "This line is not JSON.", where=str(error)[:80], fix='Send one object, as {"act": "state"}.'
        ) from None
    if not isinstance(data, dict):
        raise UserError("This line is not a JSON object.", where="line", fix='Send one object, as {"act": "state"}.')
    return data


def _no_constant(name: str) -> None:
    raise ValueError(f"{name} is not JSON")


def _once(pairs: list[tuple[str, Any]]) -> Fields:
    found: Fields = {}
    for name, value in pairs:
        if name in found:
            raise ValueError(f"“{name}” is given twice")
        found[name] = value
    return found


def _take(fields: Fields, name: str, kind: type | tuple[type, ...], default: Any = ...) -> Any:
    """Take a field out of `fields`, of the right kind, or its default."""
    if name not in fields:
        if default is ...:
            raise UserError(f"The field “{name}” is missing.", where=name, fix=f"Add “{name}”.")
        return default
    value = fields.pop(name)
    kinds = kind if isinstance(kind, tuple) else (kind,)
    if not isinstance(value, kinds) or (isinstance(value, bool) and bool not in kinds):
        raise UserError(f"“{name}” is of the wrong type.", where=name, fix=f"Give {KIND_WORDS[kinds[0]]}.")
    return value


def _choice_of(kind: type[StrEnum], name: str, value: str | None) -> Any:
    if value is None:
        return None
    return word_of(kind, name, value)


def _nothing_left(fields: Mapping[str, Any], known: tuple[str, ...]) -> None:
    if fields:
        name = next(iter(fields))
        raise UserError(f"The field “{name}” is not known here.", where=name, fix=f"Use {nearest(name, known)}.")


def _how(fields: Fields) -> dict[str, Any]:
    """Sureness, evidence and view, common to every answer."""
    return {
        "sureness": _choice_of(Sureness, "sureness", _take(fields, "sureness", str, "sure")),
        "evidence": _choice_of(Evidence, "evidence", _take(fields, "evidence", str, None)),
    }


def _settings(desk: Desk, fields: Fields) -> dict[str, Any]:
    if "evidence" in fields:
        fields["evidence"] = _choice_of(Evidence, "evidence", _take(fields, "evidence", str))
    for name in fields:
        if name not in Settings.__dataclass_fields__:
            known = Settings.__dataclass_fields__
            raise UserError(f"There is no setting “{name}”.", where=name, fix=f"Use {nearest(name, known)}.")
    desk.enquiry.set_up(**fields)
    told = desk.enquiry.case.settings
    hurt = told.hurt or speaks_of_injury(told.told, desk.enquiry.tables.keyset.emergency.words)
    return {"emergency": desk.emergency()} if hurt else {}


def _couplet(desk: Desk, fields: Fields) -> str:
    found = _take(fields, "couplet", str, None)
    found = desk.enquiry.reading.current if found is None else found
    if found is None:
        raise UserError(
            "The key has no couplet left to answer.", where="couplet", fix="Name a couplet, or ask for the result."
        )
    return str(found)


def _lead(desk: Desk, fields: Fields) -> None:
    couplet = _couplet(desk, fields)
    raw = _take(fields, "choice", str)
    choice = _choice_of(Choice, "choice", raw)
    how = _how(fields)
    seen = _take(fields, "view_seen", bool, None)
    _nothing_left(fields, ("couplet", "choice", "sureness", "evidence", "view_seen"))
    desk.enquiry.choose(couplet, choice, how["sureness"], how["evidence"], seen)


def _plain_choice(choice: Choice) -> Callable[[Desk, Fields], None]:
    def act(desk: Desk, fields: Fields) -> None:
        couplet = _couplet(desk, fields)
        how = _how(fields)
        _nothing_left(fields, ("couplet", "sureness", "evidence"))
        desk.enquiry.choose(couplet, choice, how["sureness"], how["evidence"])

    return act


def _report(desk: Desk, fields: Fields) -> None:
    character = _take(fields, "character", str)
    states = _take(fields, "states", list)
    if not all(isinstance(state, str) for state in states):
        raise UserError("States must be texts.", where="states", fix="Give a list of state ids.")
    both = _take(fields, "both", bool, False)
    how = _how(fields)
    seen = _take(fields, "view_seen", bool, None)
    _nothing_left(fields, ("character", "states", "both", "sureness", "evidence", "view_seen"))
    desk.enquiry.report(character, frozenset(states), both=both, view_seen=seen, **how)


def _measure(desk: Desk, fields: Fields) -> None:
    character = _take(fields, "character", str)
    mm = _take(fields, "mm", (int, float))
    spread = _take(fields, "spread", (int, float), None)
    how = _how(fields)
    _nothing_left(fields, ("character", "mm", "spread", "sureness", "evidence"))
    desk.enquiry.measure(character, mm, spread=spread, **how)


def _simple(act: Callable[[Desk], object]) -> Callable[[Desk, Fields], dict[str, Any] | None]:
    def carry_out(desk: Desk, fields: Fields) -> dict[str, Any] | None:
        _nothing_left(fields, ("act",))
        found = act(desk)
        return found if isinstance(found, dict) else None

    return carry_out


def _reopen(desk: Desk, fields: Fields) -> None:
    couplet = _take(fields, "couplet", str)
    _nothing_left(fields, ("couplet",))
    couplets = desk.enquiry.tables.keyset.couplets
    if couplet not in couplets:
        raise UserError(f"There is no couplet “{couplet}”.", where="couplet", fix=f"Use {nearest(couplet, couplets)}.")
    desk.enquiry.reopen(couplet)


def _take_back(desk: Desk, fields: Fields) -> None:
    character = _take(fields, "character", str)
    _nothing_left(fields, ("character",))
    note = desk.enquiry.case.note(character)
    if note is None:
        raise UserError(f"Nothing was reported of “{character}”.", where="character", fix="Name a character that was.")
    desk.enquiry.take_back(note)


def _cant_see(desk: Desk, fields: Fields) -> None:
    """*Can't tell* of a direct question: every state left open, so that it says nothing and is not asked again."""
    character = _take(fields, "character", str)
    _nothing_left(fields, ("character",))
    found = desk.enquiry.tables.keyset.characters.get(character)
    states = frozenset(found.state_ids) if found is not None else frozenset({"?"})
    desk.enquiry.report(character, states, view_seen=False)


def _feared(desk: Desk, fields: Fields) -> dict[str, Any]:
    """How the answers stand to each animal that `name` may mean; the case stays as it is."""
    name = _take(fields, "name", str)
    _nothing_left(fields, ("name",))
    tables, words = desk.enquiry.tables, desk.words
    if speaks_of_injury(name, tables.keyset.emergency.words):
        return {"emergency": desk.emergency(), "feared": []}
    known = name in tables.keyset.danger_groups or name in tables.keyset.taxa
    animals = (feared(tables, name),) if known else feared_called(tables, name)
    if len(animals) > MOST_FEARED:
        return {"feared": [], "may_mean": [feared_data(words, animal) for animal in animals]}
    reading = desk.enquiry.reading
    return {"feared": [fear_data(words, read_fear(tables, reading, animal)) for animal in animals]}


def _helps_most(desk: Desk) -> dict[str, Any]:
    found = stop(desk.enquiry.tables, desk.enquiry.reading)
    return {"helps_most": helps_data(desk.words, found), "stop": stop_data(desk.words, found)}


def _result(desk: Desk) -> dict[str, Any]:
    return {"result": {**result_data(desk.enquiry, desk.words), **_helps_most(desk)}}


def _quit(desk: Desk) -> None:
    desk.done = True


ACTS: dict[str, Callable[[Desk, Fields], dict[str, Any] | None]] = {
    "settings": _settings,
    "lead": _lead,
    "cant-tell": _plain_choice(Choice.CANT_TELL),
    "neither": _plain_choice(Choice.NEITHER),
    "report": _report,
    "measure": _measure,
    "change": _lead,
    "reopen": _reopen,
    "take-back": _take_back,
    "back": _simple(lambda desk: desk.enquiry.back()),
    "undo": _simple(lambda desk: desk.enquiry.undo()),
    "redo": _simple(lambda desk: desk.enquiry.redo()),
    "restart": _simple(lambda desk: desk.enquiry.start_again()),
    "state": _simple(lambda desk: None),
    "result": _simple(_result),
    "helps-most": _simple(_helps_most),
    "cant-see": _cant_see,
    "feared": _feared,
    "emergency": _simple(lambda desk: {"emergency": desk.emergency()}),
    "quit": _simple(_quit),
}
"""Every act by name."""
