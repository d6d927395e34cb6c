"""Observers walked through the shipped key: who sees everything right, and who misreads once.

They share no likelihood code with the engine: an observer knows what the animal shows and answers each couplet by
what its leads say. Where a couplet does not apply to an animal, which happens after a wrong turn, the answer is drawn
at random between the leads and *neither fits*. Asked about the body of an animal that is not there, before a web, an
egg sac or a skin, observers say that they can't tell, unless they are of those that guess.
"""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from keyapp.engine import Tables, not_ruled_out, prior, standing, walk
from keyapp.engine.ledger import events
from keyapp.model import Answer, AppliesTo, Case, Choice, Form, Lead, LeadAnswer, Report, Settings, Taxon

__all__ = ["Observer", "named", "seen_states", "some_settings"]

LEADS = (Choice.FIRST, Choice.SECOND)


@dataclass(frozen=True)
class Observer:
    """Someone with a given animal or sign before them, in given circumstances.

    Attributes:
        tables: the key.
        taxon: what is there.
        shows: character -> the state it shows.
        settings: where and when.
        chance: source of all that is random.
        guesses: makes up answers about a body that is not there.
    """

    tables: Tables
    taxon: Taxon
    shows: Mapping[str, str]
    settings: Settings
    chance: random.Random
    guesses: bool = False

    def right_answers(self) -> Case:
        """The case after a walk without any error."""
        return self._walked({})

    def one_misread(self) -> Case:
        """The case after a walk in which one couplet, drawn at random, is misread."""
        given = self.right_answers()
        slip = self.chance.choice([a for a in given.answers if isinstance(a, LeadAnswer)])
        wrong = [choice for choice in (*LEADS, Choice.NEITHER) if choice is not slip.choice]
        return self._walked({slip.couplet: self.chance.choice(wrong)})

    def reports(self, misread: int) -> tuple[Report, ...]:
        """Up to fourteen characters reported directly, `misread` of them wrong, the rest right."""
        characters = [c for c in sorted(self.shows) if self._applies(c)]
        told = self.chance.sample(characters, min(14, len(characters)))
        return tuple(self._report(character, number < misread) for number, character in enumerate(told))

    def _report(self, character: str, wrong: bool) -> Report:
        right = self.shows[character]
        others = [state for state in self.tables.keyset.characters[character].state_ids if state != right]
        return Report(character, frozenset({self.chance.choice(others) if wrong else right}))

    def _walked(self, misread: Mapping[str, Choice]) -> Case:
        case = Case(self.settings)
        while still_open := walk(self.tables, case, {}).open:
            couplet = still_open[0]
            choice = misread.get(couplet) or self._choice(couplet)
            case = case.with_answer(LeadAnswer(couplet, choice))
        return case

    def _choice(self, couplet: str) -> Choice:
        leads = _leads(self.tables, couplet)
        if not all(self._applies(character) for lead in leads for character in lead.holds):
            made_up = self.chance.choice((*LEADS, Choice.NEITHER))
            return made_up if self.taxon.form is Form.ANIMAL or self.guesses else Choice.CANT_TELL
        if not all(character in self.shows for lead in leads for character in lead.holds):
            return Choice.CANT_TELL
        fitting = [choice for choice, lead in zip(LEADS, leads, strict=True) if self._fits(lead)]
        return fitting[0] if fitting else Choice.NEITHER

    def _fits(self, lead: Lead) -> bool:
        return all(self.shows[character] in states for character, states in lead.holds.items())

    def _applies(self, character: str) -> bool:
        return _covers(self.tables.keyset.characters[character].applies_to, self.taxon)


def _leads(tables: Tables, couplet: str) -> tuple[Lead, Lead]:
    key = "couplets in tests"
    if key not in tables.memo:
        tables.memo[key] = tables.keyset.couplets
    return tables.memo[key][couplet].leads


def _covers(rule: AppliesTo, taxon: Taxon) -> bool:
    names = taxon.group_names
    of_group = not rule.groups or taxon.form is not Form.ANIMAL or bool(names & set(rule.groups))
    return of_group and not names & set(rule.not_groups) and (not rule.forms or str(taxon.form) in rule.forms)


def seen_states(taxon: Taxon, chance: random.Random) -> dict[str, str]:
    """One state of each character it may show, every listed state as likely as the others."""
    return {character: chance.choice(sorted(states)) for character, states in taxon.shows.items()}


def some_settings(tables: Tables, chance: random.Random) -> Settings:
    """Any place, region and month, each as often unknown as not."""
    keyset = tables.keyset
    return Settings(
        spot=chance.choice([None, chance.choice(list(keyset.spots))]),
        region=chance.choice([None, chance.choice(list(keyset.regions))]),
        month=chance.choice([None, chance.randint(1, 12)]),
    )


def named(tables: Tables, settings: Settings, answers: Sequence[Answer]) -> set[str]:
    """The danger groups that the answers leave possible.

    What `read_case` does for its safety line, without the rest, which takes most of the time.
    """
    key = ("prior in tests", settings)
    if key not in tables.memo:
        tables.memo[key] = np.log(prior(tables, settings))
    found = events(tables, answers)
    stand = standing(tables, tables.memo[key], found)
    return {danger.group for danger in not_ruled_out(tables, stand, found)}
