"""What has been picked on a page and not yet given as an answer."""

from __future__ import annotations

from dataclasses import dataclass

from keyapp.model import Choice, Evidence, Sureness

__all__ = ["LeadDraft", "SeenDraft"]


@dataclass(frozen=True, slots=True)
class LeadDraft:
    """An answer to a couplet in the making. None means not said yet."""

    couplet: str
    choice: Choice | None = None
    sureness: Sureness = Sureness.SURE
    evidence: Evidence | None = None
    view_seen: bool | None = None


@dataclass(frozen=True, slots=True)
class SeenDraft:
    """A direct report in the making: states, or a size in mm."""

    character: str = ""
    states: frozenset[str] = frozenset()
    both: bool = False
    mm: float | None = None
    sureness: Sureness = Sureness.SURE
    evidence: Evidence | None = None
    view_seen: bool | None = None
