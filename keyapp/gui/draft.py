"""What has been picked or typed on a page and not yet given as an answer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from keyapp.model import Choice, Evidence, Sureness

if TYPE_CHECKING:
    from keyapp.notes import Note

__all__ = ["LeadDraft", "NoteDraft", "SeenDraft", "ShortDraft"]


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


@dataclass(frozen=True, slots=True)
class ShortDraft:
    """An answer to a question of the short way in the making: a state, or that it cannot be told."""

    character: str = ""
    state: str = ""
    cant_tell: bool = False
    sureness: Sureness = Sureness.SURE


@dataclass(frozen=True, slots=True)
class NoteDraft:
    """What was typed, and what was found in it.

    Attributes:
        text: the words as typed.
        note: what was found in them; None until they were read.
        gone: ids of the finds that were confirmed or dropped.
        evidence: what the words rest on; None is what the settings say.
    """

    text: str = ""
    note: Note | None = None
    gone: frozenset[int] = frozenset()
    evidence: Evidence | None = None
