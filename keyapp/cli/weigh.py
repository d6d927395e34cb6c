"""`keyapp weigh FILE`: reported states of one case or many, weighed; results as JSON."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from keyapp.cli.open import open_tables
from keyapp.cli.reply import result_data
from keyapp.cli.terminal import Terminal
from keyapp.engine import Tables
from keyapp.errors import UserError
from keyapp.keyfile.node import NUMBER_PATTERN, Node
from keyapp.keyfile.problem import Problems
from keyapp.keyfile.source import read
from keyapp.model import Evidence, Sureness
from keyapp.wording import Words
from keyapp.work import Enquiry
from keyapp.work.names import nearest

__all__ = ["run", "weigh_case"]

CASE_FIELDS = ("id", "settings", "reports", "sizes")
REPORT_FIELDS = ("states", "both", "sureness", "evidence", "view-seen")
SIZE_FIELDS = ("mm", "spread", "sureness", "evidence")


def run(out: Terminal, folder: Path, file: Path, language: str, learned: Path | None = None) -> int:
    """Weigh every case of `file`; 1 if any could not be weighed. The others are weighed all the same."""
    tables = open_tables(folder, learned, out)
    words = Words(tables.keyset, language)
    problems = Problems()
    root = read(file, file.name, problems)
    if root is None or problems.kept:
        first = problems.kept[0]
        raise UserError(first.what, where=str(first.place), fix=first.fix)
    _known(root, ("cases",))
    cases = root.fields.get("cases")
    if cases is None or cases.kind != "list":
        raise UserError(
            "The file has no list of cases.", where=file.name, fix="Begin it with “cases:” and list cases below."
        )
    results = []
    failed = False
    for number, case in enumerate(cases.items, start=1):
        name = case.fields["id"].text if case.kind == "mapping" and "id" in case.fields else f"case {number}"
        try:
            results.append({"id": name, "ok": True, **weigh_case(tables, words, case)})
        except UserError as error:
            failed = True
            trouble = {"what": error.what, "where": error.where, "fix": error.fix}
            results.append({"id": name, "ok": False, "error": trouble})
    out.say(json.dumps(results, ensure_ascii=False, indent=1))
    return 1 if failed else 0


def weigh_case(tables: Tables, words: Words, case: Node) -> dict[str, Any]:
    """Weigh one case; raises UserError naming line and fix."""
    _known(case, CASE_FIELDS)
    enquiry = Enquiry(tables)
    _set_up(enquiry, case.fields.get("settings"))
    for character, node in _fields(case.fields.get("reports")).items():
        _report(enquiry, character, node)
    for character, node in _fields(case.fields.get("sizes")).items():
        _measure(enquiry, character, node)
    return result_data(enquiry, words)


def _set_up(enquiry: Enquiry, node: Node | None) -> None:
    values: dict[str, object] = {}
    for name, value in _fields(node).items():
        text = _scalar(value)
        if name == "month":
            values[name] = int(text) if text.isdigit() else text
        elif name == "hurt":
            values[name] = _truth(value)
        elif name == "evidence":
            values[name] = _one_of(value, [str(e) for e in Evidence])
        else:
            values[name] = text
    if "evidence" in values:
        values["evidence"] = Evidence(str(values["evidence"]))
    with _placed(node):
        enquiry.set_up(**values)


def _report(enquiry: Enquiry, character: str, node: Node) -> None:
    details = node.fields if node.kind == "mapping" else {"states": node}
    if node.kind == "mapping":
        _known(node, REPORT_FIELDS)
    states = details.get("states")
    if states is None:
        raise UserError("No states are given.", where=str(node.place), fix="Add “states”.")
    names = [_scalar(item) for item in states.items] if states.kind == "list" else [_scalar(states)]
    with _placed(node):
        enquiry.report(
            character,
            frozenset(names),
            both="both" in details and _truth(details["both"]),
            view_seen=_truth(details["view-seen"]) if "view-seen" in details else None,
            **_how(details),
        )


def _measure(enquiry: Enquiry, character: str, node: Node) -> None:
    details = node.fields if node.kind == "mapping" else {"mm": node}
    if node.kind == "mapping":
        _known(node, SIZE_FIELDS)
    if "mm" not in details:
        raise UserError("No size is given.", where=str(node.place), fix="Add “mm”.")
    with _placed(node):
        enquiry.measure(
            character,
            _number(details["mm"]),
            spread=_number(details["spread"]) if "spread" in details else None,
            **_how(details),
        )


def _how(details: dict[str, Node]) -> dict[str, Any]:
    how: dict[str, Any] = {}
    if "sureness" in details:
        how["sureness"] = Sureness(_one_of(details["sureness"], [str(s) for s in Sureness]))
    if "evidence" in details:
        how["evidence"] = Evidence(_one_of(details["evidence"], [str(e) for e in Evidence]))
    return how


class _placed:
    """Adds file and line to a UserError raised inside."""

    def __init__(self, node: Node | None) -> None:
        self.node = node

    def __enter__(self) -> None:
        return None

    def __exit__(self, kind: object, error: BaseException | None, trace: object) -> None:
        if isinstance(error, UserError) and self.node is not None and str(self.node.place) not in error.where:
            raise UserError(error.what, where=str(self.node.place), fix=error.fix) from None


def _fields(node: Node | None) -> dict[str, Node]:
    if node is None:
        return {}
    if node.kind != "mapping":
        raise UserError("Names with values are expected here.", where=str(node.place), fix="Write “name: value”.")
    return node.fields


def _known(node: Node, names: tuple[str, ...]) -> None:
    for name in _fields(node):
        if name not in names:
            raise UserError(
                f"“{name}” is not known here.", where=str(node.place_of(name)), fix=f"Use {nearest(name, names)}."
            )


def _scalar(node: Node) -> str:
    if node.kind != "scalar" or not node.text:
        raise UserError("One word is expected here.", where=str(node.place), fix="Give a single value.")
    return node.text


def _number(node: Node) -> float:
    text = _scalar(node)
    if not NUMBER_PATTERN.fullmatch(text):
        raise UserError(f"“{text}” is not a number.", where=str(node.place), fix="Give mm as a plain number.")
    return float(text)


def _truth(node: Node) -> bool:
    return _one_of(node, ["true", "false"]) == "true"


def _one_of(node: Node, names: list[str]) -> str:
    text = _scalar(node)
    if text not in names:
        raise UserError(f"“{text}” is not known here.", where=str(node.place), fix=f"Use {nearest(text, names)}.")
    return text
