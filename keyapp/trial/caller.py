"""Simulated callers: an animal, and someone who describes it, rightly or wrongly.

Nothing here uses the engine's likelihoods: animals are drawn from the descriptions with
variation that no description lists, and slips come in bunches, as those of real people do.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from keyapp.model import AppliesTo, Character, Choice, Couplet, Form, KeySet, Taxon

__all__ = ["Animal", "Caller", "Habits", "draw_animal", "draw_caller"]


@dataclass(frozen=True, slots=True)
class Habits:
    """How callers of a trial are drawn.

    Attributes:
        error: mean chance of a slip per answer (0-1); `None` takes each character's own.
        cant_tell: chance of *can't tell* per answer, beside each character's own.
        spread: how much callers differ (0 none; 1 a factor of e either way is common).
        bunching: chance that a slip about one character repeats within its independence group.
        unlisted: chance that an animal shows a state no description lists.
    """

    error: float | None = 0.1
    cant_tell: float = 0.1
    spread: float = 0.5
    bunching: float = 0.5
    unlisted: float = 0.03


@dataclass(frozen=True, slots=True)
class Animal:
    """One animal or sign: its taxon (None for one that is not in the key) and its true states."""

    taxon: str | None
    shows: Mapping[str, str]

    def state(self, character: str) -> str | None:
        """The state it shows, or None where the character does not apply to it."""
        return self.shows.get(character)


def draw_animal(keyset: KeySet, taxon: Taxon | None, habits: Habits, rng: np.random.Generator) -> Animal:
    """Draw an animal of `taxon`, or one that is not in the key (any state of what any animal has)."""
    shows: dict[str, str] = {}
    for character in keyset.characters.values():
        if not character.states:
            continue
        if taxon is not None and not _has(character.applies_to, taxon):
            continue
        if taxon is None and rng.random() < 0.4:
            continue
        shows[character.id] = _true_state(character, taxon, habits, rng)
    return Animal(taxon.id if taxon else None, shows)


def _true_state(character: Character, taxon: Taxon | None, habits: Habits, rng: np.random.Generator) -> str:
    states = character.state_ids
    known = taxon.shows.get(character.id) if taxon else None
    if not known or rng.random() < habits.unlisted:
        return states[int(rng.integers(len(states)))]
    names = list(known)
    chances = np.array([known[name] for name in names])
    return names[int(rng.choice(len(names), p=chances / chances.sum()))]


def _has(rule: AppliesTo, taxon: Taxon) -> bool:
    groups = {taxon.class_, taxon.order, taxon.family, taxon.danger_group}
    fits_form = not rule.forms or str(taxon.form) in rule.forms
    fits_group = not rule.groups or taxon.form is not Form.ANIMAL or bool(groups & set(rule.groups))
    return fits_form and fits_group and not groups & set(rule.not_groups)


class Caller:
    """Someone who answers about one animal; asked the same again, they say the same again."""

    def __init__(self, keyset: KeySet, animal: Animal, habits: Habits, rng: np.random.Generator) -> None:
        self.keyset = keyset
        self.animal = animal
        self.habits = habits
        self.rng = rng
        self.skill = float(np.exp(rng.normal(0.0, habits.spread)))
        self._seen: dict[str, str | None] = {}
        self._slipping: dict[str, bool] = {}

    def sees(self, name: str) -> str | None:
        """The state the caller believes they see; None where they cannot tell."""
        if name not in self._seen:
            self._seen[name] = self._look(self.keyset.characters[name])
        return self._seen[name]

    def _look(self, character: Character) -> str | None:
        true = self.animal.state(character.id)
        states = character.state_ids
        if true is None:
            # Asked about a part the animal does not have: often nothing, else anything.
            return None if self.rng.random() < 0.5 else states[int(self.rng.integers(len(states)))]
        if self.rng.random() < max(self.habits.cant_tell, 0.5 * (1.0 - character.tell) if self.habits.error else 0.0):
            return None
        if not self._slips(character):
            return true
        wrong = [state for state in states if state != true]
        likely = character.state(true).mistaken_for
        if likely and self.rng.random() < 0.7:
            names = list(likely)
            chances = np.array([likely[name] for name in names])
            return names[int(self.rng.choice(len(names), p=chances / chances.sum()))]
        return wrong[int(self.rng.integers(len(wrong)))]

    def _slips(self, character: Character) -> bool:
        mean = 1.0 - character.right if self.habits.error is None else self.habits.error
        chance = min(0.8, mean * self.skill)
        before = self._slipping.get(character.group)
        if before is not None and self.rng.random() < self.habits.bunching:
            return before
        slips = bool(self.rng.random() < chance)
        self._slipping[character.group] = slips
        return slips

    def choose(self, couplet: Couplet) -> Choice:
        """Answer a couplet by what is seen of the characters its leads speak of."""
        fits = [self._fits(lead.holds) for lead in couplet.leads]
        if fits[0] is None and fits[1] is None:
            return Choice.CANT_TELL
        if fits[0] and not fits[1]:
            return Choice.FIRST
        if fits[1] and not fits[0]:
            return Choice.SECOND
        if fits[0] is None or fits[1] is None:
            return Choice.CANT_TELL
        return Choice.NEITHER

    def _fits(self, holds: Mapping[str, frozenset[str]]) -> bool | None:
        """Whether all that a lead asserts is seen; None where something cannot be told."""
        seen = [(self.sees(name), states) for name, states in holds.items()]
        if any(state is not None and state not in states for state, states in seen):
            return False
        return None if any(state is None for state, _ in seen) else True


def draw_caller(keyset: KeySet, taxon: Taxon | None, habits: Habits, seed: int | Sequence[int]) -> Caller:
    """A caller with an animal of `taxon` before them; the same seed gives the same call."""
    rng = np.random.default_rng(seed)
    return Caller(keyset, draw_animal(keyset, taxon, habits, rng), habits, rng)
