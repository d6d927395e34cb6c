"""An observer with one specimen who misreads so many answers and no more, with all that follows from them.

Observers know what the specimen shows and answer by what the questions say. They share no likelihood
code with the engine.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass, field

from keyapp.engine import Tables
from keyapp.model import Choice, Evidence, LeadAnswer, Measurement, Report, Sureness, Taxon
from keyapp.proof.runs import CANT_TELLS
from keyapp.proof.specimen import LEADS, couplet_characters, may_show, truthful

__all__ = ["Observer", "draw_specimen"]

AGAIN = 0.5
"""Chance that an error repeats in a later answer of the same independence group."""

DOUBT, UNSURE, LOST = 0.1, 0.05, 0.1
"""Chances of "one of these two", of *think so*, and of *can't tell* at a couplet while some are left."""


@dataclass(slots=True)
class Observer:
    """Someone who answers about one specimen.

    Attributes:
        tables: the key.
        taxon: what is there.
        shows: character -> the state it shows; what does not apply is left out, and made up when asked about.
        chance: source of all that is random.
        slip_at: numbers of the judgements they get wrong, from 0.
        evidence: what their answers rest on.
        judged: judgements so far; repeated errors are none.
        slips: answers misread, not counting what follows from them.
        cant_tells: *can't tell* so far.
        slipped: independence groups in which they have erred.
        hows: couplet or character -> how its answer came about: `seen`, `misread`, `misread again`,
            `made up` or `can't tell`.
    """

    tables: Tables
    taxon: Taxon
    shows: Mapping[str, str]
    chance: random.Random
    slip_at: frozenset[int] = frozenset()
    evidence: Evidence = Evidence.WORDS
    judged: int = 0
    slips: int = 0
    cant_tells: int = 0
    slipped: set[str] = field(default_factory=set)
    hows: dict[str, str] = field(default_factory=dict)

    def reports(self, character_id: str, instead: str = "") -> Report:
        """What they say of a character; one they misread comes out as `instead` where that is given."""
        character = self.tables.keyset.characters[character_id]
        states = character.state_ids
        sureness = self._sureness()
        pick, doubt = self.chance.random(), self.chance.random()
        if character_id not in self.shows:
            self.hows[character_id] = "made up"
            made_up = frozenset({states[int(pick * len(states))]})
            return Report(character_id, made_up, sureness=sureness, evidence=self.evidence)
        true = self.shows[character_id]
        how = self.hows[character_id] = self._misreads(frozenset({character.group}))
        others = [state for state in states if state != true] or [true]
        other = others[int(pick * len(others))]
        right = {true, other} if doubt < DOUBT else {true}
        said = frozenset(right if how == "seen" else {instead or other})
        return Report(character_id, said, sureness=sureness, evidence=self.evidence)

    def chooses(self, couplet_id: str) -> LeadAnswer:
        """What they say at a couplet."""
        keyset = self.tables.keyset
        couplet = keyset.couplets[couplet_id]
        characters = couplet_characters(couplet)
        sureness = self._sureness()
        pick, lost = self.chance.random(), self.chance.random()
        if lost < LOST and self.cant_tells < CANT_TELLS:
            self.cant_tells += 1
            self.hows[couplet_id] = "can't tell"
            return LeadAnswer(couplet_id, Choice.CANT_TELL, evidence=self.evidence)
        if all(c in self.shows for c in characters):
            right = truthful(couplet, self.shows)
            how = self._misreads(frozenset(keyset.characters[c].group for c in characters))
            wrong = [choice for choice in (*LEADS, Choice.NEITHER) if choice not in right]
            open_to = right if how == "seen" else wrong
        else:
            how, open_to = "made up", (*LEADS, Choice.NEITHER)
        self.hows[couplet_id] = how
        return LeadAnswer(couplet_id, open_to[int(pick * len(open_to))], sureness, self.evidence)

    def measures(self, character_id: str) -> Measurement | None:
        """A size they give, from half the least of a grown one to its most; None where it has no such size.

        Sizes never clear, so that it is of no matter here whether they are read right.
        """
        size = self.taxon.sizes.get(character_id)
        if size is None:
            return None
        self.hows[character_id] = "seen"
        return Measurement(character_id, self.chance.uniform(size.least / 2, size.most), evidence=self.evidence)

    def _sureness(self) -> Sureness:
        return Sureness.THINK_SO if self.chance.random() < UNSURE else Sureness.SURE

    def _misreads(self, groups: frozenset[str]) -> str:
        """How the next judgement about these independence groups comes out."""
        if groups & self.slipped:
            return "misread again" if self.chance.random() < AGAIN else "seen"
        wrong = self.judged in self.slip_at
        self.judged += 1
        if wrong:
            self.slips += 1
            self.slipped |= groups
        return "misread" if wrong else "seen"


def draw_specimen(tables: Tables, taxon_id: str, chance: random.Random) -> dict[str, str]:
    """Character -> a state that the result may show.

    As often as described; in a quarter of the specimens evenly, so that rare states are met.
    """
    taxon = tables.keyset.taxa[taxon_id]
    shows = {}
    for character, states in _may_show(tables, taxon).items():
        shown = taxon.shows.get(character, {})
        even = chance.random() < 0.25
        shows[character] = chance.choices(states, None if even else [shown.get(s, 1.0) for s in states])[0]
    return shows


def _may_show(tables: Tables, taxon: Taxon) -> dict[str, tuple[str, ...]]:
    """`may_show`, kept: it is the same in every run."""
    key = ("may show", taxon.id)
    if key not in tables.memo:
        tables.memo[key] = may_show(tables.keyset, taxon)
    return tables.memo[key]  # type: ignore[return-value]
