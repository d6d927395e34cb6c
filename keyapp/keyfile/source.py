"""Reads one YAML file into nodes that keep file, line and path; the only module that knows YAML.

The events of PyYAML's safe loader are read one by one and nodes are made from them without
recursion, so that limits hold before anything grows: no value is ever converted, no tag is
obeyed, no alias is followed.
"""

from __future__ import annotations

import stat
from pathlib import Path
from typing import Any

import yaml

from keyapp.keyfile.node import Node, converted_kind
from keyapp.keyfile.problem import Problems
from keyapp.model.place import Place

__all__ = ["MAX_BYTES", "MAX_DEPTH", "MAX_NODES", "parse", "read"]

MAX_BYTES = 5_000_000
MAX_DEPTH = 20
MAX_NODES = 300_000

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_BOMS = ((b"\xff\xfe\x00\x00", "UTF-32"), (b"\x00\x00\xfe\xff", "UTF-32"), (b"\xff\xfe", "UTF-16"),
         (b"\xfe\xff", "UTF-16"))
_QUOTES = ("'", '"', "|", ">")
_SAVE_UTF8 = "Open it in a text editor and save it with the encoding UTF-8."
_HINTS = (
    ("mapping values are not allowed", "Put the text in double quotes if it holds a colon; check the indentation."),
    ("could not find expected ':'", "Write `name: value`, with a space after the colon; check the line above too."),
    ("cannot start any token", "Put the text in double quotes; use spaces, never tabs, to indent."),
    ("found unexpected end of stream", "Close the quotes or brackets that were opened here."),
    ("did not find expected key", "Check the indentation, and that quotes in the line above are closed."),
    ("did not find expected '-' indicator", "Start each list item with a dash at the same indentation."),
    ("did not find expected ',' or", "Put a comma between items and close the bracket."),
    ("unknown escape", "Use single quotes where the text holds a backslash."),
    ("control characters", "Remove the invisible control character."),
)


def read(path: Path, file: str, problems: Problems) -> Node | None:
    """Read the mapping that a file holds.

    Args:
        path: the file.
        file: its name for messages, below the key folder.
        problems: takes every fault found.

    Returns:
        The mapping, or None where the file could not be read at all. Never raises for anything
        a file can contain.
    """
    top = Place(file, 1)
    try:
        status = path.stat()
        if not stat.S_ISREG(status.st_mode):
            problems.add("K101", top, "This is not an ordinary file.", "Put a YAML text file here.")
            problems.broken = True
            return None
        if status.st_size > MAX_BYTES:
            problems.add(
                "K102", top, f"The file is too large ({status.st_size / 1e6:.0f} MB; the limit is "
                f"{MAX_BYTES / 1e6:.0f} MB).", "Split it into several files, or remove what does not belong here.")
            problems.broken = True
            return None
        data = path.read_bytes()
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        problems.add("K101", top, f"The file cannot be read ({reason}).", "Check that it exists and may be read.")
        problems.broken = True
        return None
    return parse(data, file, problems)


def parse(data: bytes, file: str, problems: Problems) -> Node | None:
    """Like `read`, for bytes already in memory."""
    text = _decode(data, file, problems)
    node = _compose(text, file, problems) if text is not None else None
    if node is None:
        problems.broken = True
        return None
    if node.kind != "mapping":
        if node.kind != "bad":
            problems.add("K111", node.place, f"The file should hold named entries, not {node.called}.",
                         "Write entries as `name: value`.")
        problems.broken = True
        return None
    return node


def _decode(data: bytes, file: str, problems: Problems) -> str | None:
    if len(data) > MAX_BYTES:
        problems.add("K102", Place(file, 1), "The file is too large.", "Split it into several files.")
        return None
    for mark, encoding in _BOMS:
        if data.startswith(mark):
            problems.add("K103", Place(file, 1), f"The file is saved as {encoding}, not UTF-8.", _SAVE_UTF8)
            return None
    data = data.removeprefix(b"\xef\xbb\xbf")
    zero = data.find(b"\x00")
    if zero >= 0:
        problems.add("K103", Place(file, data.count(b"\n", 0, zero) + 1), "The file holds a zero byte: it is not "
                     "plain text, or not UTF-8.", _SAVE_UTF8)
        return None
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        problems.add("K103", Place(file, data.count(b"\n", 0, error.start) + 1),
                     f"The file is not UTF-8: the byte {data[error.start]:#04x} does not belong here.", _SAVE_UTF8)
        return None


class _Builder:
    """Makes nodes from events; `root` is the finished document."""

    def __init__(self, file: str, problems: Problems) -> None:
        self.file = file
        self.problems = problems
        self.root: Node | None = None
        self.documents = 0
        self.count = 0
        self.stack: list[Node] = []
        self.keys: list[tuple[str, int] | None] = []  # the key waiting for its value, for each open mapping

    def add(self, code: str, line: int, path: str, what: str, fix: str) -> None:
        self.problems.add(code, Place(self.file, line, path), what, fix)

    def child_path(self) -> str:
        if not self.stack:
            return ""
        parent = self.stack[-1]
        if parent.kind == "list":
            return f"{parent.path}[{len(parent.items)}]"
        key = self.keys[-1]
        if key is None or not key[0]:
            return parent.path
        return f"{parent.path}.{key[0]}" if parent.path else key[0]

    def awaits_key(self) -> bool:
        return bool(self.stack) and self.stack[-1].kind == "mapping" and self.keys[-1] is None

    def attach(self, node: Node) -> None:
        """Put a finished scalar, or a container just opened, into its parent."""
        if not self.stack:
            self.root = node
            return
        parent = self.stack[-1]
        if parent.kind == "list":
            parent.items.append(node)
            return
        key = self.keys[-1]
        if key is None:
            self.take_key(parent, node)
            return
        self.keys[-1] = None
        name, line = key
        if not name:
            return
        if name in parent.fields:
            self.add("K107", line, parent.place_of(name).path,
                     f'"{name}" is written twice (first at line {parent.key_lines[name]}).',
                     "Keep one of the two, or give the second its own name.")
            return
        if node.kind != "scalar":
            node.line = line  # the line of its name is where an author looks for it
        parent.fields[name] = node
        parent.key_lines[name] = line

    def take_key(self, parent: Node, node: Node) -> None:
        """Use a node as the key whose value comes next; a faulty key is reported and its value dropped."""
        if node.kind != "scalar":
            if node.kind != "bad":
                self.add("K108", node.line, parent.path, f"A name must be a word, not {node.called}.",
                         "Write `name: value`; put names with brackets in quotes.")
            self.keys[-1] = ("", node.line)
            return
        kind = converted_kind(node.text) if node.plain else None
        if kind:
            self.add("K108", node.line, parent.path, f"The name {node.text} would be read as a {kind}."
                     if node.text else "A name is missing before the colon.",
                     f'Put it in quotes: "{node.text}".' if node.text else "Write a name before the colon.")
        self.keys[-1] = (node.text, node.line)

    def scalar(self, event: Any, line: int) -> None:
        node = Node("scalar", self.file, line, self.child_path(), event.value, event.style not in _QUOTES)
        if event.anchor is not None or event.tag is not None:
            self.checked(node, event)
        self.attach(node)

    def checked(self, node: Node, event: Any) -> Node:
        """Report anchors and tags; they make a node `bad`."""
        anchor = getattr(event, "anchor", None)
        if anchor is not None:
            self.add("K105", node.line, node.path, f"Anchors such as &{anchor[:30]} are not allowed.",
                     "Write the value out in full at each place.")
            self.problems.broken = True
        tag = getattr(event, "tag", None)
        if isinstance(tag, str):
            self.add("K105", node.line, node.path, f"Tags such as {tag[:40]} are not allowed.", "Remove the tag.")
            self.problems.broken = True
            if node.kind == "scalar":
                node.kind = "bad"
        return node

    def open(self, kind: Any, event: Any, line: int) -> bool:
        if len(self.stack) >= MAX_DEPTH:
            self.add("K106", line, self.stack[-1].path[:200], f"Values are nested more than {MAX_DEPTH} deep.",
                     "Remove the surplus brackets or indentation.")
            return False
        as_key = self.awaits_key()
        node = self.checked(Node(kind, self.file, line, self.child_path()), event)
        self.attach(node)
        if as_key:  # its content is read, then dropped together with its value
            node.path = self.stack[-1].path
        self.stack.append(node)
        self.keys.append(None)
        return True

    def close(self) -> None:
        self.stack.pop()
        self.keys.pop()

    def take(self, event: Any) -> bool:
        """Take one event; False where the file must be given up."""
        line = event.start_mark.line + 1
        self.count += 1
        if self.count > MAX_NODES:
            self.add("K106", line, "", f"The file holds more than {MAX_NODES} values.", "Split it into several files.")
            return False
        if isinstance(event, yaml.ScalarEvent):
            self.scalar(event, line)
        elif isinstance(event, yaml.MappingStartEvent):
            return self.open("mapping", event, line)
        elif isinstance(event, yaml.SequenceStartEvent):
            return self.open("list", event, line)
        elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
            self.close()
        elif isinstance(event, yaml.AliasEvent):
            self.add("K105", line, self.child_path(), f"Aliases such as *{str(event.anchor)[:30]} are not allowed.",
                     "Write the value out in full at each place.")
            self.problems.broken = True
            self.attach(Node("bad", self.file, line, self.child_path()))
        elif isinstance(event, yaml.DocumentStartEvent):
            self.documents += 1
            if self.documents > 1:
                self.add("K106", line, "", "A second document starts here (---).",
                         "Keep one document in each file: remove the line, or make a second file.")
                return False
        return True


def _compose(text: str, file: str, problems: Problems) -> Node | None:
    builder = _Builder(file, problems)
    loader = None
    try:
        loader = _LOADER(text)
        take, following = builder.take, loader.get_event
        while not isinstance(event := following(), yaml.StreamEndEvent):
            if not take(event):
                return None
    except yaml.YAMLError as error:
        _report_syntax(error, text, file, problems)
        return None
    finally:
        if loader is not None:
            loader.dispose()
    if builder.root is None or (builder.root.kind == "scalar" and not builder.root.text):
        problems.add("K116", Place(file, 1), "The file is empty.", "Write its entries, or delete the file.")
        return None
    return builder.root


def _report_syntax(error: yaml.YAMLError, text: str, file: str, problems: Problems) -> None:
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    words = getattr(error, "problem", None) or getattr(error, "reason", None) or "it cannot be understood"
    if mark is not None:
        line = mark.line + 1
    else:
        position = getattr(error, "position", 0)
        line = text.count("\n", 0, position if isinstance(position, int) else 0) + 1
    fix = next((hint for sign, hint in _HINTS if sign in words), "Check quotes, colons and indentation on this line.")
    lines = text.splitlines()
    if line <= len(lines) and "\t" in lines[line - 1]:
        fix = "Use spaces, never tabs, to indent."
    problems.add("K104", Place(file, line), f"This is not valid YAML: {words}.", fix)
