"""A case: what has been set and answered so far. Immutable; every act makes a new one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

__all__ = [
    "Answer",
    "Case",
    "Choice",
    "Evidence",
    "FinalCheck",
    "LeadAnswer",
    "Measurement",
    "Report",
    "Settings",
    "Sureness",
]


class Choice(StrEnum):
    """What the observer said at a couplet."""

    FIRST = "first"
    SECOND = "second"
    NEITHER = "neither"
    CANT_TELL = "cant-tell"


class Sureness(StrEnum):
    """How sure the observer is."""

    SURE = "sure"
    THINK_SO = "think-so"


class Evidence(StrEnum):
    """What an answer rests on, weakest first."""

    WORDS = "words"
    OWN_EYES = "own-eyes"
    PHOTO = "photo"
    VIEWS = "views"
    SPECIMEN = "specimen"
    SPECIALIST = "specialist"


@dataclass(frozen=True, slots=True)
class LeadAnswer:
    """An answer to a couplet. `view_seen`: the side the leads speak of was in view."""

    couplet: str
    choice: Choice
    sureness: Sureness = Sureness.SURE
    evidence: Evidence = Evidence.WORDS
    view_seen: bool = True


@dataclass(frozen=True, slots=True)
class Report:
    """A character reported directly.

    `states` holds one state, or several: "one of these" in doubt, or all of them seen at once
    where `both` is true.
    """

    character: str
    states: frozenset[str]
    both: bool = False
    sureness: Sureness = Sureness.SURE
    evidence: Evidence = Evidence.WORDS
    view_seen: bool = True


@dataclass(frozen=True, slots=True)
class Measurement:
    """A size in mm, with the standard deviation of its natural log where it was measured."""

    character: str
    mm: float
    spread: float | None = None
    sureness: Sureness = Sureness.SURE
    evidence: Evidence = Evidence.WORDS


Answer = LeadAnswer | Report | Measurement


@dataclass(frozen=True, slots=True)
class Settings:
    """What is asked before the key. None or empty means not known.

    `hurt`: someone was bitten, stung or became unwell. `thing`: state of the character `thing`.
    `spot`: id of a find spot. `region`: region id or two-letter state code. `month`: 1-12.
    `asker`: who asks (`caller`, `gardener`, `class`, `staff`). `told`: what they were told it is.
    `evidence`: kind of evidence that new answers start with.
    """

    hurt: bool | None = None
    thing: str | None = None
    spot: str | None = None
    region: str | None = None
    month: int | None = None
    asker: str | None = None
    told: str = ""
    evidence: Evidence = Evidence.WORDS


@dataclass(frozen=True, slots=True)
class FinalCheck:
    """The result held against the animal at the end: does this fit?

    Attributes:
        taxon: id of the result whose description was held against it.
        fits: what the observer said; false is "not quite".
        part: the character that does not fit; empty where it fits, or where it was none of those offered.
    """

    taxon: str
    fits: bool
    part: str = ""


@dataclass(frozen=True, slots=True)
class Case:
    """Settings, answers in the order given, couplets opened again by hand, and the final check.

    A "yes" of the final check holds only for the answers it was given for; a "not quite" stays until the part that
    did not fit is reported again, or the check is made anew.
    """

    settings: Settings = Settings()
    answers: tuple[Answer, ...] = ()
    reopened: frozenset[str] = frozenset()
    check: FinalCheck | None = None

    @property
    def is_doubted(self) -> bool:
        """Whether the observer holds that the result does not quite fit."""
        return self.check is not None and not self.check.fits

    def lead_answer(self, couplet: str) -> LeadAnswer | None:
        """The answer to a couplet, if there is one."""
        for answer in self.answers:
            if isinstance(answer, LeadAnswer) and answer.couplet == couplet:
                return answer
        return None

    def note(self, character: str) -> Report | Measurement | None:
        """The direct report of a character, if there is one."""
        for answer in self.answers:
            if not isinstance(answer, LeadAnswer) and answer.character == character:
                return answer
        return None

    def with_answer(self, answer: Answer) -> Case:
        """This case with `answer` added, or put in the place of the one it replaces."""

        def same(old: Answer) -> bool:
            if isinstance(answer, LeadAnswer):
                return isinstance(old, LeadAnswer) and old.couplet == answer.couplet
            return not isinstance(old, LeadAnswer) and old.character == answer.character

        told = "" if isinstance(answer, LeadAnswer) else answer.character
        check = self._check_after(told)
        if any(same(old) for old in self.answers):
            kept = tuple(answer if same(old) else old for old in self.answers)
            return replace(self, answers=kept, check=check)
        return replace(self, answers=(*self.answers, answer), check=check)

    def without(self, answer: Answer) -> Case:
        """This case with `answer` taken back."""
        left = tuple(old for old in self.answers if old != answer)
        return self if left == self.answers else replace(self, answers=left, check=self._check_after(""))

    def _check_after(self, told: str) -> FinalCheck | None:
        """What is left of the final check once the character `told` was reported (empty: another answer changed)."""
        if self.check is None or self.check.fits or (told and told == self.check.part):
            return None
        return self.check
