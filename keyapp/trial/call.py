"""One simulated call: the key is walked, then the questions that help most are asked."""

from __future__ import annotations

from dataclasses import dataclass

from keyapp.engine import OUTSIDE, Claim, Reading, Tables, helpful_questions
from keyapp.model import Evidence, Settings, State
from keyapp.trial.caller import Caller
from keyapp.work import Enquiry

__all__ = ["Outcome", "Policy", "hold_call"]


@dataclass(frozen=True, slots=True)
class Policy:
    """How a call is led: at most `couplets` of the key, then at most `extra` direct questions.

    Direct questions are asked while a danger is named or no group stands at `firm`, and while a
    question promises at least `least_score` (bits a second).
    """

    couplets: int = 40
    extra: int = 6
    least_score: float = 0.002
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
        named: danger groups named as not ruled out.
        answers: couplet answers and direct answers given.
        extra: direct answers among them.
        strict_right: following the key alone, without weighing, ended at the true group and no other.
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
    thing = caller.sees("thing") if "thing" in tables.characters else None
    enquiry.set_up(
        thing=thing, region=settings.region, month=settings.month, spot=settings.spot, evidence=policy.evidence
    )
    asked = 0
    while asked < policy.couplets and (couplet := enquiry.reading.current) is not None:
        choice = caller.choose(tables.keyset.couplets[couplet])
        view = enquiry.lead_needs_view(couplet, choice)
        enquiry.choose(couplet, choice, view_seen=None if view is None else True)
        asked += 1
    led = enquiry.reading.walk.ends
    extra = 0
    asked_of: set[str] = set()
    while extra < policy.extra and _goes_on(tables, enquiry.reading):
        questions = helpful_questions(tables, enquiry.reading, asked_of)
        if not questions or questions[0].score < policy.least_score:
            break
        name = questions[0].character
        asked_of.add(name)
        extra += 1
        state = caller.sees(name)
        if state is not None:
            _report(enquiry, tables.characters[name].character.state(state), name)
    reading = enquiry.reading
    rows = [tables.rows[row] for row in tables.rows_of.get(caller.animal.taxon or "", ())]
    groups = tuple(dict.fromkeys(row.group.name for row in rows))
    led_groups = {tables.rows[row].group.name for taxon in led for row in tables.rows_of[taxon]}
    return Outcome(
        taxon=caller.animal.taxon,
        groups=groups,
        dangers=tuple(dict.fromkeys(row.danger for row in rows if row.danger)),
        ranked=tuple(g.name for g, _ in reading.standing.groups),
        chance=reading.standing.groups[0][1],
        claim=reading.verdict.claim,
        named=tuple(d.group for d in reading.not_ruled_out),
        answers=asked + extra,
        extra=extra,
        strict_right=bool(led) and led_groups <= set(groups),
    )


def _goes_on(tables: Tables, reading: Reading) -> bool:
    firm = reading.standing.groups[0][1] >= tables.weights.firm
    return bool(reading.not_ruled_out) or not firm


def _report(enquiry: Enquiry, state: State, name: str) -> None:
    enquiry.report(name, frozenset({state.id}), view_seen=True if state.absence else None)
