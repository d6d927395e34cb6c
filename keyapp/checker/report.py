"""What a check found, as text or JSON, with counts and exit code."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import dataclass

from keyapp.keyfile.problem import Problem

__all__ = ["Report"]


@dataclass(frozen=True, slots=True)
class Report:
    """The outcome of a check.

    Attributes:
        found: problems and notes, sorted by place.
        remark: what was left out and why; empty where everything was looked at.
    """

    found: tuple[Problem, ...]
    remark: str = ""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What must be mended."""
        return tuple(each for each in self.found if each.severity == "problem")

    @property
    def notes(self) -> tuple[Problem, ...]:
        """What is worth a look."""
        return tuple(each for each in self.found if each.severity == "note")

    @property
    def counts(self) -> dict[str, int]:
        """Code -> how often it was found."""
        return dict(sorted(Counter(each.code for each in self.found).items()))

    @property
    def exit_code(self) -> int:
        """0 without problems (notes do not count), else 1."""
        return 1 if self.problems else 0

    @property
    def summary(self) -> str:
        """One line that counts."""
        problems, notes = len(self.problems), len(self.notes)
        text = f"{problems or 'No'} problem{'' if problems == 1 else 's'}"
        return f"{text}, {notes} note{'' if notes == 1 else 's'}." if notes else f"{text}."

    def text(self) -> str:
        """One line for each, in the form `file:line: [code] what  Fix: ...`, then the summary."""
        lines = [f"{each}  (note)" if each.severity == "note" else str(each) for each in self.found]
        return "\n".join([*lines, *([self.remark] if self.remark else []), self.summary]) + "\n"

    def json(self) -> str:
        """The same as a JSON object: `problems` (a list), `counts`, `remark`, `exit_code`."""
        entries = [
            {
                "code": each.code,
                "severity": each.severity,
                "file": each.place.file,
                "line": each.place.line,
                "path": each.place.path,
                "what": each.what,
                "fix": each.fix,
            }
            for each in self.found
        ]
        whole = {"problems": entries, "counts": self.counts, "remark": self.remark, "exit_code": self.exit_code}
        return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"
