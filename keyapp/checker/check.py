"""Runs the rules over a key."""

from __future__ import annotations

import datetime
from pathlib import Path

from keyapp.checker.facts import Facts
from keyapp.checker.report import Report
from keyapp.checker.rules import ENTRY_RULES, WHOLE_RULES
from keyapp.keyfile.links import broken_links
from keyapp.keyfile.load import load_keyset
from keyapp.keyfile.problem import Problem
from keyapp.model.keyset import KeySet

__all__ = ["check", "run_check"]

UNUSED_CODES = frozenset(["K331", "K332", "K333", "K334"])
_NOT_READ = "Some files could not be read whole, so the rules about the key itself have not been run yet."
_NOT_LINKED = "Some links are broken, so the rules about paths have not been run yet."


def check(keyset: KeySet, *, today: datetime.date, images: Path | None = None) -> tuple[Problem, ...]:
    """Return everything the rules find in a key, sorted by place.

    Args:
        keyset: the key; one edited in memory will do.
        today: the date that review dates are held against.
        images: folder of the pictures; None where pictures are not to be looked for.
    """
    facts = Facts(keyset, today, images)
    broken = broken_links(keyset)
    rules = ENTRY_RULES if broken or not keyset.keys else ENTRY_RULES + WHOLE_RULES
    return tuple(sorted({*broken, *(found for rule in rules for found in rule(facts))}))


def run_check(folder: Path, images: Path | None, today: datetime.date) -> Report:
    """Load a key folder and check it: problems of the files and of the rules in one report.

    Never raises for anything the folder holds.
    """
    loaded = load_keyset(folder, images)
    if loaded.draft is None:
        return Report(loaded.problems, remark=_NOT_READ)
    pictures = images if images is not None and images.is_dir() else None
    found = {*loaded.problems, *map(loaded.index.exact, check(loaded.draft, today=today, images=pictures))}
    if loaded.problems:  # what has a fault may be what uses them
        found = {each for each in found if each.code not in UNUSED_CODES}
    return Report(tuple(sorted(found)), remark=_NOT_LINKED if broken_links(loaded.draft) else "")
