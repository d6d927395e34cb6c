"""What may be said, how firmly, and what may be done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from keyapp.engine.ledger import Event, asserted
from keyapp.engine.safety import NotRuledOut
from keyapp.engine.standing import Standing, standing
from keyapp.engine.tables import Floats, GroupId, Tables
from keyapp.engine.walk import Walk, lead_taxa
from keyapp.model import Choice, Danger, Evidence, Form, Settings, Taxon

__all__ = ["Action", "Candidate", "Claim", "Verdict", "verdict"]


class Claim(StrEnum):
    """How firmly a result may be put, weakest first."""

    UNKNOWN = "unknown"
    ONE_OF = "one-of"
    CONSISTENT = "consistent"
    PROBABLY = "probably"
    IN_OFFICE = "in-office"
    CONFIRMED = "confirmed"


class Action(StrEnum):
    """What a person may be told to do with the animal."""

    KEEP_AWAY = "keep-away"
    LEAVE = "leave"
    MOVE = "move"


CLAIM_BY_EVIDENCE = {
    Evidence.WORDS: Claim.ONE_OF,
    Evidence.OWN_EYES: Claim.CONSISTENT,
    Evidence.PHOTO: Claim.CONSISTENT,
    Evidence.VIEWS: Claim.PROBABLY,
    Evidence.SPECIMEN: Claim.IN_OFFICE,
    Evidence.SPECIALIST: Claim.CONFIRMED,
}
"""The firmest claim each kind of evidence carries (a common ladder of extension practice)."""

BROOD = "carries"
"""The character that says an egg sac or young is with the animal: then it is left where it is."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A group that may be listed: its probability and its results, likeliest first."""

    group: GroupId
    chance: float
    taxa: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Verdict:
    """The outcome, to be shown whole.

    Attributes:
        claim: how firmly it may be put.
        candidates: groups to be listed, likeliest first; `outside` among them where likely.
        basis: the kind of evidence that carries the first place.
        led_to: taxa the key led to.
        differs: the key led to another group than the standing.
        parting: couplet where the way to the first place and the way taken part, if any.
        actions: what may be said to do, most careful first.
    """

    claim: Claim
    candidates: tuple[Candidate, ...]
    basis: Evidence
    led_to: tuple[str, ...]
    differs: bool
    parting: str | None
    actions: tuple[Action, ...]


def verdict(
    tables: Tables,
    log_prior: Floats,
    settings: Settings,
    found: Sequence[Event],
    stand: Standing,
    way: Walk,
    named: Sequence[NotRuledOut],
    contradicted: bool = False,
    doubted: bool = False,
) -> Verdict:
    """Weigh the standing, the key's way and the evidence into what may be said.

    While answers contradict each other, or the key led elsewhere, or the observer holds that the result does
    not quite fit (`doubted`), no more than "one of these"; and in doubt nothing may be moved.
    """
    candidates = _candidates(tables, stand)
    top = stand.groups[0][0]
    basis = _basis(tables, log_prior, found, top)
    ends = {tables.rows[row].group for taxon in way.ends for row in tables.rows_of[taxon]}
    differs = bool(ends) and top not in ends
    claim = Claim.UNKNOWN
    if found and top.level != "outside":
        firm = stand.groups[0][1] >= tables.weights.firm and not (differs or contradicted or doubted)
        claim = CLAIM_BY_EVIDENCE[basis] if firm else Claim.ONE_OF
    parting = _parting(tables, way, candidates[0].taxa) if differs and candidates else None
    actions = _actions(tables, settings, found, stand, candidates, claim, named)
    if doubted:
        actions = (Action.KEEP_AWAY,)
    return Verdict(claim, candidates, basis, way.ends, differs, parting, actions)


def _candidates(tables: Tables, stand: Standing) -> tuple[Candidate, ...]:
    """Groups to be listed: each at least likely, until nearly all of the standing is covered."""
    found: list[Candidate] = []
    covered = 0.0
    for group, chance in stand.groups:
        if found and (chance < tables.weights.likely or covered > 0.97):
            break
        rows = [i for i, row in enumerate(tables.rows) if row.group == group and row.taxon in tables.keyset.taxa]
        rows.sort(key=lambda i: (-stand.posterior[i], tables.rows[i].taxon))
        taxa = tuple(dict.fromkeys(tables.rows[i].taxon for i in rows))
        found.append(Candidate(group, chance, taxa))
        covered += chance
    return tuple(found)


def _basis(tables: Tables, log_prior: Floats, found: Sequence[Event], top: GroupId) -> Evidence:
    """The best kind of evidence that by itself, with better kinds, puts `top` firmly first."""
    for kind in reversed(Evidence):
        at_least = list(Evidence)[list(Evidence).index(kind) :]
        held = [event for event in found if event.evidence in at_least]
        if not held:
            continue
        alone = standing(tables, log_prior, held)
        if alone.groups[0][0] == top and alone.groups[0][1] >= tables.weights.firm:
            return kind
    return Evidence.WORDS


def _parting(tables: Tables, way: Walk, taxa: Sequence[str]) -> str | None:
    """The first couplet answered so that the taxon in first place can no longer be reached."""
    first = taxa[0] if taxa else None
    couplets = tables.keyset.couplets
    for step in way.steps:
        if step.choice in (Choice.FIRST, Choice.SECOND):
            lead = couplets[step.couplet].leads[0 if step.choice is Choice.FIRST else 1]
            if first not in lead_taxa(tables, lead):
                return step.couplet
    return None


def _actions(
    tables: Tables,
    settings: Settings,
    found: Sequence[Event],
    stand: Standing,
    candidates: Sequence[Candidate],
    claim: Claim,
    named: Sequence[NotRuledOut],
) -> tuple[Action, ...]:
    """The gate on actions: "move it" only when nothing dangerous and nothing unknown is left."""
    outside = sum(chance for group, chance in stand.groups if group.level == "outside")
    taxa = [tables.keyset.taxa[t] for c in candidates for t in c.taxa]
    likely = [t for t in taxa if tables.mass(stand.posterior, t.id) >= tables.weights.likely]
    unsettled = (
        bool(named)
        or settings.hurt is True
        or claim is Claim.UNKNOWN
        or outside >= tables.weights.outside_limit
        or any(t.danger not in (Danger.MINOR, Danger.NONE) for t in likely)
    )
    if unsettled:
        return (Action.KEEP_AWAY,)
    if any(t.form is not Form.ANIMAL or _broods(tables, t) for t in likely) or _young_seen(tables, found):
        return (Action.LEAVE,)
    return (Action.LEAVE, Action.MOVE)


def _broods(tables: Tables, taxon: Taxon) -> bool:
    """Whether the description always has an egg sac or young with it."""
    shown = taxon.shows.get(BROOD)
    if not shown or BROOD not in tables.characters:
        return False
    character = tables.characters[BROOD].character
    return not any(character.state(state).absence for state in shown)


def _young_seen(tables: Tables, found: Sequence[Event]) -> bool:
    """Whether any answer speaks of an egg sac or young."""
    if BROOD not in tables.characters:
        return False
    character = tables.characters[BROOD].character
    said = (asserted(tables, answer).get(BROOD, frozenset()) for event in found for answer in event.answers)
    return any(not character.state(state).absence for states in said for state in states)
