"""Typed reading of the fields of one mapping; what is asked for is what is allowed.

Every reader method names a field, takes it, reports what is wrong with it, and returns a value of
the right type in any case (a stand-in where the field is faulty), so that one pass finds every
fault. `done` reports the fields that nobody asked for.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable, Mapping
from enum import StrEnum
from typing import TypeVar

from keyapp.keyfile.node import ID_PATTERN, ID_RULE, NUMBER_PATTERN, Node, converted_kind
from keyapp.keyfile.problem import Problems, nearest
from keyapp.model.place import Place
from keyapp.model.text import DEFAULT_LANGUAGE, Text

__all__ = ["NO_TEXT", "Fields", "read_id", "read_number", "read_text", "read_wording", "read_words"]

NO_TEXT = Text(())

Word = TypeVar("Word", bound=StrEnum)


def read_wording(node: Node, problems: Problems) -> str:
    """Return the characters of a text scalar; report anything that is not plainly text."""
    if node.kind == "bad":
        return ""
    if node.kind != "scalar":
        problems.add("K111", node.place, f"Text belongs here, not {node.called}.", "Write one line of text.")
        return ""
    if node.text.strip() == "":
        problems.add("K116", node.place, "The text is empty.", "Write the text, or remove the field.")
        return ""
    kind = converted_kind(node.text) if node.plain else None
    if kind:
        problems.add("K108", node.place, f"{node.text} would be read as a {kind}, but text belongs here.",
                     f'Put it in quotes: "{node.text}".')
    return node.text.strip()


def read_text(node: Node, problems: Problems) -> Text:
    """Return a text: a string (English), or a mapping from language code to wording."""
    if node.kind != "mapping":
        wording = read_wording(node, problems)
        return Text.of(wording) if wording else NO_TEXT
    entries = []
    for code, child in node.fields.items():
        if not (len(code) == 2 and code.isascii() and code.isalpha() and code.islower()):
            problems.add("K119", node.place_of(code), f'"{code}" is not a language code.',
                         "Use two small letters, such as en or es.")
            continue
        entries.append((code, read_wording(child, problems)))
    if DEFAULT_LANGUAGE not in node.fields:
        problems.add("K119", node.place, "The English wording is missing.", 'Add an entry `en: "..."`.')
    entries.sort(key=lambda entry: (entry[0] != DEFAULT_LANGUAGE, entry[0]))
    return Text(tuple(entries))


def read_words(node: Node, problems: Problems) -> tuple[str, ...]:
    """Return a list of text scalars."""
    if node.kind == "bad":
        return ()
    if node.kind != "list":
        problems.add("K111", node.place, f"A list belongs here, not {node.called}.", "Write it as [first, second].")
        return ()
    return tuple(word for item in node.items if (word := read_wording(item, problems)))


def read_id(node: Node, problems: Problems) -> str:
    """Return an id: small letters and digits, joined by hyphens."""
    if node.kind == "bad":
        return ""
    word = read_wording(node, problems)
    if word and not ID_PATTERN.fullmatch(word):
        problems.add("K115", node.place, f'"{word[:60]}" is not an id.', ID_RULE)
        return ""
    return word


def read_number(
    node: Node, problems: Problems, *, least: float = -math.inf, most: float = math.inf, above: bool = False
) -> float | None:
    """Return a number within `least` and `most` (above `least` where `above`), or None where it is faulty."""
    if node.kind == "bad":
        return None
    if node.kind != "scalar":
        problems.add("K111", node.place, f"A number belongs here, not {node.called}.", "Write one number.")
        return None
    if not NUMBER_PATTERN.fullmatch(node.text):
        problems.add("K108" if converted_kind(node.text or "~") == "number" else "K111", node.place,
                     f"A number belongs here, not {node.called}.",
                     "Write it with digits and a point, such as 12 or 0.5.")
        return None
    if not node.plain:
        problems.add("K108", node.place, f"A number belongs here, not {node.called}.", "Remove the quotes.")
        return None
    value = float(node.text)
    if not (least <= value <= most) or not math.isfinite(value) or (above and value == least):
        low = f"{'above' if above else 'at least'} {least:g}" if math.isfinite(least) else ""
        high = f"at most {most:g}" if math.isfinite(most) else ""
        limits = " and ".join(part for part in (low, high) if part) or "a usual size"
        problems.add("K113", node.place, f"{node.text[:30]} is out of range.", f"Use a number of {limits}.")
        return None
    return value


class Fields:
    """The fields of one mapping, each asked for once.

    Args:
        node: the mapping; anything else is reported and read as empty.
        problems: takes every fault.
        called: what the mapping is, for messages ("the state").
    """

    def __init__(self, node: Node, problems: Problems, called: str) -> None:
        self.node = node
        self.problems = problems
        self.called = called
        self._asked: dict[str, None] = {}
        self._quiet = node.kind != "mapping"
        if self._quiet and node.kind != "bad":
            problems.add("K111", node.place, f"The fields of {called} belong here, not {node.called}.",
                         "Write them as `name: value`, indented below it.")

    @property
    def place(self) -> Place:
        """Where the mapping was written."""
        return self.node.place

    def place_of(self, name: str) -> Place:
        """Where the field was written, or the mapping where it was not."""
        return self.node.place_of(name) if name in self.node.fields else self.node.place

    def take(self, name: str, *, required: bool = False) -> Node | None:
        """Return the node of a field, or None where it is not there (a problem where it is required)."""
        self._asked[name] = None
        node = self.node.fields.get(name)
        if node is None:
            if required and not self._quiet:
                self.problems.add("K110", self.node.place, f'{self.called.capitalize()} has no field "{name}".',
                                  f"Add `{name}: ...`.")
            return None
        if node.kind == "scalar" and node.plain and not node.text:
            self.problems.add("K116", self.node.place_of(name), f'The field "{name}" is empty.',
                              "Write a value after the colon, or remove the field.")
            return None
        return node

    def has(self, name: str) -> bool:
        """Whether the field was written."""
        return name in self.node.fields

    def done(self) -> None:
        """Report the fields that were never asked for."""
        for name in self.node.fields:
            if name not in self._asked:
                self.problems.add("K109", self.node.place_of(name), f'{self.called.capitalize()} has no field called '
                                  f'"{name[:60]}".', nearest(name, self._asked))

    def _wording(self, name: str, required: bool) -> Node | None:
        node = self.take(name, required=required)
        stated_empty = node is not None and node.kind == "scalar" and not node.plain and not node.text
        return None if stated_empty and not required else node

    def text(self, name: str, *, required: bool = True) -> Text:
        """A text a user reads; an optional one may be written as ""."""
        node = self._wording(name, required)
        return read_text(node, self.problems) if node else NO_TEXT

    def string(self, name: str, *, required: bool = True) -> str:
        """A string in one wording; an optional one may be written as ""."""
        node = self._wording(name, required)
        return read_wording(node, self.problems) if node else ""

    def id(self, name: str, *, required: bool = True, default: str = "") -> str:
        """An id."""
        node = self.take(name, required=required)
        return (read_id(node, self.problems) if node else "") or default

    def ids(self, name: str, *, required: bool = False) -> tuple[str, ...]:
        """A list of ids."""
        node = self.take(name, required=required)
        if node is None:
            return ()
        if node.kind != "list":
            read_words(node, self.problems)
            return ()
        return tuple(word for item in node.items if (word := read_id(item, self.problems)))

    def words(self, name: str, *, required: bool = False) -> tuple[str, ...]:
        """A list of strings."""
        node = self.take(name, required=required)
        return read_words(node, self.problems) if node else ()

    def words_by_language(self, name: str) -> dict[str, tuple[str, ...]]:
        """A mapping from language code to a list of strings."""
        node = self.take(name)
        if node is None or node.kind == "bad":
            return {}
        if node.kind != "mapping":
            self.problems.add("K119", node.place, f'"{name}" needs its language first, not {node.called}.',
                              "Write it as {en: [first, second]}.")
            return {}
        found = {}
        for code, child in node.fields.items():
            if not (len(code) == 2 and code.isascii() and code.isalpha() and code.islower()):
                self.problems.add("K119", node.place_of(code), f'"{code}" is not a language code.',
                                  "Use two small letters, such as en or es.")
                continue
            found[code] = read_words(child, self.problems)
        return found

    def number(
        self, name: str, *, least: float, most: float, above: bool = False, default: float | None = None
    ) -> float:
        """A number within limits; required where there is no `default`."""
        node = self.take(name, required=default is None)
        value = read_number(node, self.problems, least=least, most=most, above=above) if node else None
        if value is not None:
            return value
        return default if default is not None else (least + most) / 2

    def whole(self, name: str, *, least: int, most: int, default: int) -> int:
        """A whole number within limits."""
        node = self.take(name)
        value = read_number(node, self.problems, least=least, most=most) if node else None
        if node is None or value is None:
            return default
        if value != int(value) or not node.text.lstrip("-").isdigit():
            self.problems.add("K111", node.place, f"A whole number belongs here, not {node.text}.",
                              "Write it without a point.")
            return default
        return int(value)

    def flag(self, name: str) -> bool:
        """`true` or `false`; false where it is not there."""
        node = self.take(name)
        if node is None or node.kind == "bad":
            return False
        if node.kind == "scalar" and node.plain and node.text in ("true", "false"):
            return node.text == "true"
        self.problems.add("K111", node.place, f"true or false belongs here, not {node.called}.",
                          "Write true or false, without quotes.")
        return False

    def word(self, name: str, kind: type[Word], default: Word, *, required: bool = True) -> Word:
        """One of the words of an enum."""
        node = self.take(name, required=required)
        word = read_wording(node, self.problems) if node else ""
        if not word or node is None:
            return default
        try:
            return kind(word)
        except ValueError:
            self.problems.add("K112", node.place, f'"{word[:60]}" is not a possible value of "{name}".',
                              nearest(word, [str(choice) for choice in kind]))
            return default

    def date(self, name: str, default: datetime.date) -> datetime.date:
        """A date, YYYY-MM-DD; always required, `default` stands in where it is faulty."""
        node = self.take(name, required=True)
        if node is None or node.kind == "bad":
            return default
        if node.kind == "scalar" and len(node.text) == 10 and node.text[4] == node.text[7] == "-":
            try:
                return datetime.date.fromisoformat(node.text)
            except ValueError:
                pass
        self.problems.add("K114", node.place, f"A date belongs here, not {node.called}.",
                          "Write it as YYYY-MM-DD, such as 2026-11-20.")
        return default

    def list(self, name: str, *, required: bool = False) -> Iterable[Node]:
        """The nodes of a list."""
        node = self.take(name, required=required)
        if node is None or node.kind == "bad":
            return []
        if node.kind != "list":
            self.problems.add("K111", node.place, f"A list belongs here, not {node.called}.",
                              "Start each entry with a dash.")
            return []
        return node.items

    def mapping(self, name: str, *, required: bool = False) -> Mapping[str, Node]:
        """The entries of a mapping."""
        node = self.take(name, required=required)
        if node is None or node.kind == "bad":
            return {}
        if node.kind != "mapping":
            self.problems.add("K111", node.place, f"Named entries belong here, not {node.called}.",
                              "Write them as `name: value`.")
            return {}
        return node.fields

    def inner(self, name: str, called: str, *, required: bool = False) -> Fields | None:
        """The fields of a mapping inside this one."""
        node = self.take(name, required=required)
        return Fields(node, self.problems, called) if node else None
