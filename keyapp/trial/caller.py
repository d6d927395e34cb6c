"""Simulated callers: an animal, and someone who describes it, rightly or wrongly.

Nothing here uses the engine's likelihoods: animals are drawn from the descriptions with
variation that no description lists, and slips come in bunches, as those of real people do.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from keyapp.model import AppliesTo, Character, Choice, Couplet, Form, KeySet, Taxon

__all__ = ["Animal", "Caller", "Habits", "draw_animal", "draw_caller"]


@dataclass(frozen=True, slots=True)
class Habits:
    """How callers of a trial are drawn.

    Every figure is an assumption (from memory): no table of lay answers to single questions is published.

    Attributes:
        error: mean chance of a slip per answer (0-1); `None` takes each character's own.
        cant_tell: chance of *can't tell* per answer, beside each character's own.
        spread: how much callers differ (0 none; 1 a factor of e either way is common).
        bunching: chance that a slip about one character repeats within its independence group.
        unlisted: chance that an animal shows a state no description lists.
        doubt: chance that a right answer is given in doubt (*think so*); `doubt_wrong` that a wrong one is.
        young: chance that an animal is not fully grown, and so smaller than its description says.
        wanders: chance that it is met at a spot that has nothing to do with its habits.
        sized: chance that the caller gives a body length at all.
        size_error: standard deviation of the natural log of the size given, for a caller of mean skill.
        fear: chance that fear makes the size twice what it is.
    """

    error: float | None = 0.1
    cant_tell: float = 0.1
    spread: float = 0.5
    bunching: float = 0.5
    unlisted: float = 0.03
    doubt: float = 0.1
    doubt_wrong: float = 0.3
    young: float = 0.2
    wanders: float = 0.1
    sized: float = 0.7
    size_error: float = 0.25
    fear: float = 0.1

    @classmethod
    def faultless(cls) -> Habits:
        """Callers who see all there is, are sure of it and never err, with animals just as they are described."""
        never = dict.fromkeys(("error", "cant_tell", "spread", "unlisted", "doubt", "doubt_wrong"), 0.0)
        return cls(**never, young=0.0, wanders=0.0, sized=1.0, size_error=0.1, fear=0.0)


@dataclass(frozen=True, slots=True)
class Animal:
    """One animal or sign.

    Attributes:
        taxon: its id; None for one that is not in the key.
        shows: its true states.
        spot: where it was met; None where the key has no spots.
        sizes: its true sizes in mm.
    """

    taxon: str | None
    shows: Mapping[str, str]
    spot: str | None = None
    sizes: Mapping[str, float] = field(default_factory=dict)

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
        shows[character.id] = _true_state(keyset, character, taxon, habits, rng)
    return Animal(
        taxon.id if taxon else None, shows, _spot(keyset, taxon, habits, rng), _sizes(keyset, taxon, habits, rng)
    )


def _true_state(
    keyset: KeySet, character: Character, taxon: Taxon | None, habits: Habits, rng: np.random.Generator
) -> str:
    """A state as its description lists them; where it says nothing, as a relative's does; now and then any."""
    states = character.state_ids
    known = taxon.shows.get(character.id) or _of_a_relative(keyset, character, taxon, rng) if taxon else None
    if not known or rng.random() < habits.unlisted:
        return states[int(rng.integers(len(states)))]
    return _drawn(known, rng)


def _of_a_relative(
    keyset: KeySet, character: Character, taxon: Taxon, rng: np.random.Generator
) -> Mapping[str, float] | None:
    alike = [t for t in keyset.taxa.values() if t.form is taxon.form and t.shows.get(character.id)]
    near = [t for t in alike if t.order == taxon.order] or alike
    return near[int(rng.integers(len(near)))].shows[character.id] if near else None


def _drawn(chances: Mapping[str, float], rng: np.random.Generator) -> str:
    names = list(chances)
    weights = np.array([chances[name] for name in names])
    return names[int(rng.choice(len(names), p=weights / weights.sum()))]


def _spot(keyset: KeySet, taxon: Taxon | None, habits: Habits, rng: np.random.Generator) -> str | None:
    if not keyset.spots:
        return None
    if taxon is None or not taxon.places or rng.random() < habits.wanders:
        return str(rng.choice(list(keyset.spots)))
    return _drawn(taxon.places, rng)


def _sizes(keyset: KeySet, taxon: Taxon | None, habits: Habits, rng: np.random.Generator) -> dict[str, float]:
    """Each size at one and the same place between the least and the most of its range; all smaller when young."""
    place = float(rng.random())
    grown = 1.0 if rng.random() >= habits.young else float(rng.uniform(0.3, 1.0))
    if taxon is None:
        length = float(np.exp(rng.uniform(np.log(3.0), np.log(50.0))))
        return {c.id: length for c in keyset.characters.values() if c.number}
    grown = grown if taxon.form is Form.ANIMAL else 1.0
    return {name: float(size.least * (size.most / size.least) ** place) * grown for name, size in taxon.sizes.items()}


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
        self._sure: dict[tuple[str, ...], bool] = {}

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
            return _drawn(likely, self.rng)
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

    def sure(self, *names: str) -> bool:
        """Whether the caller is sure of what they say of these characters; wrong answers are more often in doubt."""
        wrong = any(self.sees(name) not in (None, self.animal.state(name)) for name in names)
        key = tuple(sorted(names))
        if key not in self._sure:
            chance = self.habits.doubt_wrong if wrong else self.habits.doubt
            self._sure[key] = bool(self.rng.random() >= chance)
        return self._sure[key]

    def measures(self, name: str) -> float | None:
        """The size in mm the caller gives; None where they give none or the animal has no such size."""
        true = self.animal.sizes.get(name)
        if true is None or self.rng.random() >= self.habits.sized:
            return None
        factor = float(np.exp(self.rng.normal(0.0, self.habits.size_error * self.skill)))
        return true * factor * (2.0 if self.rng.random() < self.habits.fear else 1.0)

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
