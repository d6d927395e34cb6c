"""Published descriptions, mapped to what a person could report, as cases to weigh.

The field `inside` of the files says what the first edition covered; every arachnid case counts now.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from keyapp.engine import GroupId, Reading, Tables
from keyapp.model import Danger, Evidence, Sureness
from keyapp.work import Enquiry

__all__ = ["FAMILY_OF_DANGER", "Published", "place_of", "published_cases", "ranking", "weighed"]

HERE = Path(__file__).parent

FAMILY_OF_DANGER = {
    "widows": "Theridiidae",
    "recluses": "Sicariidae",
    "bark-scorpions": "Buthidae",
    "ticks": "Ixodidae",
}
"""Danger groups are listed apart from their families; each counts as its family."""


@dataclass(frozen=True)
class Published:
    """One published description.

    Attributes:
        wanted: names of families that are right; `order` counts where the key names none of them.
        medical: importance the source gives it; empty where it gives none.
        told: the settings, reports and sizes as mapped.
    """

    id: str
    source: str
    wanted: frozenset[str]
    order: str
    medical: str
    told: dict[str, dict[str, Any]]

    @property
    def gated(self) -> bool:
        """Whether the source calls it medically significant or a carrier of disease."""
        return self.medical in (Danger.SIGNIFICANT, Danger.VECTOR)


def published_cases(name: str, later: str = "") -> list[Published]:
    """The cases of one mapping file, in its order; with `later`, the file of what characters that came later add."""
    entries = yaml.safe_load((HERE / name).read_text("utf-8"))["cases"]
    added = yaml.safe_load((HERE / later).read_text("utf-8")) if later else {}
    unknown = set(added) - {entry["id"] for entry in entries}
    assert not unknown, unknown
    for entry in entries:
        entry["reports"] = {**(entry.get("reports") or {}), **added.get(entry["id"], {})}
    return [_published(entry) for entry in entries]


def _published(entry: dict[str, Any]) -> Published:
    told = {part: entry.get(part) or {} for part in ("settings", "reports", "sizes")}
    return Published(
        entry["id"],
        entry["source"],
        frozenset(entry.get("family", ())),
        entry.get("order", ""),
        entry.get("medical", ""),
        told,
    )


def weighed(tables: Tables, case: Published, evidence: Evidence = Evidence.WORDS) -> Reading:
    """The reading of a case, every answer resting on `evidence`."""
    enquiry = Enquiry(tables)
    enquiry.set_up(**{"evidence": evidence, **case.told["settings"]})
    for character, said in case.told["reports"].items():
        enquiry.report(character, **_report(said))
    for character, mm in case.told["sizes"].items():
        enquiry.measure(character, float(mm))
    return enquiry.reading


def _report(said: str | list[str] | dict[str, Any]) -> dict[str, Any]:
    """Arguments of a report: one state, several in doubt, or a mapping that says more."""
    details = said if isinstance(said, dict) else {"states": said}
    states = details["states"]
    return {
        "states": frozenset([states] if isinstance(states, str) else states),
        "both": details.get("both", False),
        "sureness": Sureness(details.get("sureness", "sure")),
        "view_seen": details.get("view-seen"),
    }


def place_of(case: Published, reading: Reading) -> int:
    """Place of the first right group in the standing, from 1."""
    names = [_name(group) for group, _ in reading.standing.groups]
    wanted = case.wanted & set(names) or {case.order}
    return min((names.index(name) + 1 for name in wanted if name in names), default=len(names) + 1)


def ranking(reading: Reading, least: float = 0.005) -> str:
    """The standing on one line, for the message of a failed test."""
    return ", ".join(f"{group.name} {chance:.3f}" for group, chance in reading.standing.groups if chance >= least)


def _name(group: GroupId) -> str:
    return FAMILY_OF_DANGER.get(group.name, group.name) if group.level == "danger" else group.name
