"""Exact places: from a dotted path inside an entry to the line it was written on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from keyapp.keyfile.node import Node
from keyapp.keyfile.problem import Problem
from keyapp.model.place import Place

__all__ = ["LineIndex", "within"]


def within(place: Place, *names: str | int) -> Place:
    """Return the place of a field below `place`; its line stays that of `place` until it is looked up.

    >>> within(Place("a.yaml", 3, "x"), "cautions", 0, "says").path
    'x.cautions[0].says'
    """
    path = place.path
    for name in names:
        if isinstance(name, int):
            path += f"[{name}]"
        else:
            path = f"{path}.{name}" if path else name
    return Place(place.file, place.line, path)


class LineIndex:
    """Looks up the lines of paths in the files that were read.

    Args:
        roots: file -> its document.
    """

    def __init__(self, roots: Mapping[str, Node]) -> None:
        self._roots = roots
        self._lines: dict[str, dict[str, int]] = {}

    def exact(self, problem: Problem) -> Problem:
        """Return the problem with the line of the innermost part of its path that was written down."""
        place = problem.place
        lines = self._of_file(place.file)
        path = place.path
        while path and path not in lines:
            path = path[: max(path.rfind("."), path.rfind("["), 0)]
        line = lines.get(path, place.line)
        return problem if line == place.line else replace(problem, place=Place(place.file, line, place.path))

    def _of_file(self, file: str) -> dict[str, int]:
        if file not in self._lines:
            lines: dict[str, int] = {}
            pending = [self._roots[file]] if file in self._roots else []
            while pending:
                node = pending.pop()
                for name, child in node.fields.items():
                    place = node.place_of(name)
                    lines.setdefault(place.path, place.line)
                    pending.append(child)
                for item in node.items:
                    lines.setdefault(item.path, item.line)
                    pending.append(item)
            self._lines[file] = lines
        return self._lines[file]
