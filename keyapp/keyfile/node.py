"""A value as written in a file, with the place it was written at."""

from __future__ import annotations

import re
from typing import Literal

from keyapp.model.place import Place

__all__ = ["ID_PATTERN", "ID_RULE", "NUMBER_PATTERN", "Node", "converted_kind"]

ID_RULE = "Use small letters, digits and single hyphens."
ID_PATTERN = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
NUMBER_PATTERN = re.compile(r"-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?")

_BOOLEANS = frozenset(
    case(word) for word in ("y", "n", "yes", "no", "true", "false", "on", "off")
    for case in (str.lower, str.upper, str.capitalize)
)
_NULLS = frozenset(["", "~", "null", "Null", "NULL"])
_NUMBERS = re.compile(
    r"[-+]?(?:0b[01_]+|0o[0-7_]+|0x[0-9a-fA-F_]+|[0-9][0-9_]*(?::[0-5]?[0-9])+(?:\.[0-9_]*)?"
    r"|(?:[0-9][0-9_]*(?:\.[0-9_]*)?|\.[0-9][0-9_]*)(?:[eE][-+]?[0-9]+)?|\.(?:inf|Inf|INF))|\.(?:nan|NaN|NAN)"
)
_DATES = re.compile(r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(?:[Tt ]+[0-9]{1,2}:.*)?")


# Shared by all nodes that have none: there are many scalars, and nothing is ever added to these.
_NO_FIELDS: dict[str, Node] = {}
_NO_ITEMS: list[Node] = []
_NO_LINES: dict[str, int] = {}


class Node:
    """A mapping, a list or a scalar.

    Attributes:
        kind: `mapping`, `list`, `scalar`, or `bad` for a value whose fault was reported already.
        text: the characters of a scalar.
        plain: the scalar was written without quotes.
        fields: name -> node of a mapping, in order.
        items: nodes of a list.
        file, line, path: where it was written; `line` is 1-based.
        key_lines: name -> line of the key of a mapping.
    """

    __slots__ = ("fields", "file", "items", "key_lines", "kind", "line", "path", "plain", "text")

    def __init__(
        self, kind: Literal["mapping", "list", "scalar", "bad"], file: str, line: int, path: str,
        text: str = "", plain: bool = False,
    ) -> None:
        self.kind = kind
        self.file = file
        self.line = line
        self.path = path
        self.text = text
        self.plain = plain
        holds = kind == "mapping"
        self.fields: dict[str, Node] = {} if holds else _NO_FIELDS
        self.items: list[Node] = [] if kind == "list" else _NO_ITEMS
        self.key_lines: dict[str, int] = {} if holds else _NO_LINES

    @property
    def place(self) -> Place:
        """Where it was written."""
        return Place(self.file, self.line, self.path)

    def place_of(self, name: str) -> Place:
        """Where the key `name` of this mapping was written."""
        return Place(self.file, self.key_lines.get(name, self.line), f"{self.path}.{name}" if self.path else name)

    @property
    def called(self) -> str:
        """What it is, for a sentence: `a list`, `a number`, `"tangle"`..."""
        if self.kind == "mapping":
            return "a group of fields"
        if self.kind == "list":
            return "a list"
        if self.text == "":
            return "nothing"
        kind = converted_kind(self.text) if self.plain else None
        shown = self.text if len(self.text) <= 40 else self.text[:37] + "..."
        return f"the {kind} {shown}" if kind else f'the text "{shown}"'


def converted_kind(text: str) -> str | None:
    """What common YAML readers turn an unquoted scalar into, or None where it stays text.

    >>> converted_kind("yes"), converted_kind("012"), converted_kind("2026-05-01"), converted_kind("orb")
    ('yes/no value', 'number', 'date', None)
    """
    if text in _BOOLEANS:
        return "yes/no value"
    if text in _NULLS:
        return "empty value"
    if _DATES.fullmatch(text):
        return "date"
    if text[0] in "+-.0123456789" and _NUMBERS.fullmatch(text):
        return "number"
    if text in ("<<", "="):
        return "merge sign"
    return None
