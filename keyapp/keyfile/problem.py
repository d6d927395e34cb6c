"""A problem found in the files of a key: where, what is wrong, and how to mend it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from keyapp.model.names import closest
from keyapp.model.place import Place

__all__ = ["Problem", "Problems", "nearest"]

Severity = Literal["problem", "note"]

PROBLEMS_PER_FILE = 200
_SHOWN_CHOICES = 12


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One fault, or one remark, about one place in the files.

    Sorts by file and line, then code.

    Attributes:
        place: file (below the key folder), line, and dotted path inside the document.
        code: rule code such as `K101`; `keyapp.checker.codes` says what each means.
        what: what is wrong, one plain sentence.
        fix: what to do about it, one plain sentence.
        severity: `problem`, or `note` for a remark that does not fail a check.
    """

    place: Place
    code: str
    what: str
    fix: str
    severity: Severity = "problem"

    def __str__(self) -> str:
        """One line in the form that editors can jump to: `file:line: [code] what  Fix: ...`."""
        where = f"{self.place.file or 'keys'}:{max(self.place.line, 1)}"
        return f"{where}: [{self.code}] {self.what}  Fix: {self.fix}"


@dataclass(slots=True)
class Problems:
    """Collects problems while files are read; at most `PROBLEMS_PER_FILE` are kept for each file.

    Attributes:
        kept: the problems so far.
        broken: something could not be built at all, so that rules about the whole key would mislead.
    """

    kept: list[Problem] = field(default_factory=list)
    broken: bool = False
    _count: dict[str, int] = field(default_factory=dict)

    def add(self, code: str, place: Place, what: str, fix: str) -> None:
        """Add one problem."""
        count = self._count[place.file] = self._count.get(place.file, 0) + 1
        if count <= PROBLEMS_PER_FILE:
            self.kept.append(Problem(place, code, what, fix))
        elif count == PROBLEMS_PER_FILE + 1:
            self.kept.append(Problem(
                Place(place.file, place.line), "K106",
                f"There are more than {PROBLEMS_PER_FILE} problems in this file; the rest are not listed.",
                "Mend the ones above first, then check again.",
            ))


def nearest(name: str, choices: Iterable[str]) -> str:
    """Return a sentence that helps with a name that is not among `choices`.

    >>> nearest("tangel", ["orb", "tangle"])
    'Did you mean "tangle"?'
    >>> nearest("xyz", ["orb", "tangle"])
    'Use one of: orb, tangle.'
    """
    known = sorted(set(choices))
    close = closest(name, known)
    if close:
        return f'Did you mean "{close}"?'
    if not known:
        return "Nothing of this kind is defined yet: define it first."
    if len(known) > _SHOWN_CHOICES:
        return f"Use one of the {len(known)} defined names, such as: {', '.join(known[:_SHOWN_CHOICES])}."
    return f"Use one of: {', '.join(known)}."
