"""One simulated call: the key is walked, then the questions that help most are asked."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from keyapp.engine import LEAST_SCORE, OUTSIDE, Claim, Reading, Tables, stop
from keyapp.model import Evidence, Settings, Sureness
from keyapp.trial.caller import Caller
from keyapp.work import Enquiry

__all__ = ["Outcome", "Policy", "hold_call"]


@dataclass(frozen=True, slots=True)
class Policy:
    """How a call is led: the couplets of the key first, then direct questions until the engine says to stop.

    Attributes:
        couplets: at most so many couplets of the key.
        extra: at most so many direct questions after it.
        least_score: a question must promise so much (bits a second).
        safety: at most so many questions once one group stands firm, for the dangers still named.
        evidence: how the caller sees the animal.
    """

    couplets: int = 40
    extra: int = 24
    least_score: float = LEAST_SCORE
    safety: int = 4
    evidence: Evidence = Evidence.OWN_EYES


@dataclass(frozen=True, slots=True)
class Outcome:
    """How a call ended.

    Attributes:
        taxon: the true taxon, None for an animal that is not in the key.
        groups, dangers: its group and danger group; for a sign, those of every kind that makes it.
        ranked: names of the groups at the end, likeliest first.
        chance: probability of the first.
        claim: how firmly it may be put.
        named, named_taxa: danger groups, and results, named as not ruled out.
        bits_before, bits_after: entropy over groups with nothing said but where and when, and at the end, bits.
        safety_extra: direct questions put after one group stood firm, for dangers still named.
        answers: what was asked: what it is, its size where one was given, couplets, direct questions.
        extra: direct answers among them.
        strict_right: following the key alone, without weighing, ended at the true group and no other.
        strict_misses: followed alone it ended at nothing that bears the danger.
    """

    taxon: str | None
    groups: tuple[str, ...]
    dangers: tuple[str, ...]
    ranked: tuple[str, ...]
    chance: float
    claim: Claim
    named: tuple[str, ...]
    answers: int
    extra: int
    strict_right: bool
    strict_misses: bool
    named_taxa: tuple[str, ...] = ()
    bits_before: float = 0.0
    bits_after: float = 0.0
    safety_extra: int = 0

    @property
    def right(self) -> bool:
        """The first place is right; for an animal not in the key, that it is so."""
        return self.place == 0 if self.taxon is not None else self.ranked[0] == OUTSIDE

    @property
    def place(self) -> int | None:
        """Place of a true group in the standing, 0 for first; None where it is not there."""
        return min((self.ranked.index(g) for g in self.groups if g in self.ranked), default=None)

    @property
    def misses_danger(self) -> bool:
        """A dangerous specimen ends unnamed."""
        return any(danger not in self.named for danger in self.dangers)


def hold_call(tables: Tables, caller: Caller, settings: Settings, policy: Policy) -> Outcome:
    """Lead one call to its end."""
    enquiry = Enquiry(tables)
    enquiry.set_up(region=settings.region, month=settings.month, spot=settings.spot, evidence=policy.evidence)
    before = _bits(enquiry.reading)
    asked = 0
    if "thing" in tables.characters:
        enquiry.set_up(thing=caller.sees("thing"))
        asked += 1
    asked += _gives_size(enquiry, caller)
    most = asked + policy.couplets
    while asked < most and (couplet := enquiry.reading.current) is not None:
        _choose(enquiry, caller, couplet)
        asked += 1
    led = enquiry.reading.walk.ends
    extra = safety = 0
    asked_of: set[str] = set()
    while extra < policy.extra and safety < policy.safety:
        firm = enquiry.reading.standing.groups[0][1] >= tables.weights.firm
        found = stop(tables, enquiry.reading, asked_of, least_score=policy.least_score)
        if found.question is None:
            break
        asked_of.add(found.question.character)
        extra += 1
        safety += firm
        _report(enquiry, caller, found.question.character)
    reading = enquiry.reading
    rows = [tables.rows[row] for row in tables.rows_of.get(caller.animal.taxon or "", ())]
    groups = tuple(dict.fromkeys(row.group.name for row in rows))
    led_groups = {tables.rows[row].group.name for taxon in led for row in tables.rows_of[taxon]}
    dangers = tuple(dict.fromkeys(row.danger for row in rows if row.danger))
    led_dangers = {tables.rows[row].danger for taxon in led for row in tables.rows_of[taxon]}
    return Outcome(
        taxon=caller.animal.taxon,
        groups=groups,
        dangers=dangers,
        ranked=tuple(g.name for g, _ in reading.standing.groups),
        chance=reading.standing.groups[0][1],
        claim=reading.verdict.claim,
        named=tuple(d.group for d in reading.not_ruled_out),
        answers=asked + extra,
        extra=extra,
        strict_right=bool(led) and led_groups <= set(groups),
        strict_misses=not set(dangers) <= led_dangers,
        named_taxa=tuple(dict.fromkeys(taxon for d in reading.not_ruled_out for taxon in d.taxa)),
        bits_before=before,
        bits_after=_bits(reading),
        safety_extra=safety,
    )


def _choose(enquiry: Enquiry, caller: Caller, couplet: str) -> None:
    found = enquiry.tables.keyset.couplets[couplet]
    choice = caller.choose(found)
    held = [name for lead in found.leads for name in lead.holds]
    seen = None if enquiry.lead_needs_view(couplet, choice) is None else True
    enquiry.choose(couplet, choice, _sureness(caller, *held), view_seen=seen)


def _report(enquiry: Enquiry, caller: Caller, name: str) -> None:
    state = caller.sees(name)
    if state is None:
        return
    absent = enquiry.tables.characters[name].character.state(state).absence
    enquiry.report(name, frozenset({state}), sureness=_sureness(caller, name), view_seen=True if absent else None)


def _sureness(caller: Caller, *names: str) -> Sureness:
    return Sureness.SURE if caller.sure(*names) else Sureness.THINK_SO


def _gives_size(enquiry: Enquiry, caller: Caller) -> bool:
    """Ask for one size, as anyone would: the body, or of an egg sac its width; whether one was given."""
    for name, character in enquiry.tables.keyset.characters.items():
        mm = caller.measures(name) if character.number else None
        if character.number and mm is not None:
            enquiry.measure(name, min(max(mm, character.number.least), character.number.most))
            return True
    return False


def _bits(reading: Reading) -> float:
    chances = np.array([chance for _, chance in reading.standing.groups])
    held = chances[chances > 0]
    return float(-(held * np.log2(held)).sum())
