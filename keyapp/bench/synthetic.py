"""A made-up key of any size, as sparse and as uneven as a real one; the same seed gives the same key."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from keyapp.model import (
    AppliesTo,
    Caution,
    Character,
    Danger,
    DangerGroup,
    Emergency,
    Form,
    Key,
    KeySet,
    Means,
    State,
    Taxon,
    Text,
    View,
    Weights,
)

__all__ = ["Extent", "synthetic_keyset"]

MOST_STATES = 6
TOGETHER = 5
"""So many characters form an independence group; they apply to the same animals."""
ORDERS = 14
GENERAL = 0.12
"""Share of the characters that apply to every animal; each of the others applies to a few orders."""
BASIS = ("from memory",)
SOME_DAY = datetime.date(2026, 1, 1)
NOTHING = Text.of("")


@dataclass(frozen=True, slots=True)
class Extent:
    """How large a key: results and characters; families and danger groups follow from them."""

    taxa: int
    characters: int

    @property
    def families(self) -> int:
        """Families, of 28 results on average."""
        return max(2, self.taxa // 28)

    @property
    def dangers(self) -> int:
        """Danger groups, of up to twelve results each."""
        return min(6, max(1, self.families // 2))


@dataclass(frozen=True, slots=True)
class _Family:
    """One family: its order, the characters described in it, and the state usual for each."""

    name: str
    order: str
    usual: dict[str, int]
    danger: str


def synthetic_keyset(extent: Extent, seed: int, weights: Weights) -> KeySet:
    """A key of that extent: families of uneven size in 14 orders, dangers in a few families, webs among the results.

    A result describes the characters that its family does, most of them: 13 % of all in a key of 500 characters.
    Most are shown in the family's usual state, or in up to three. There are no couplets and no places.
    """
    chance = np.random.default_rng(seed)
    characters = {c.id: c for c in _characters(extent, chance)}
    families = [_family(i, extent, characters, chance) for i in range(extent.families)]
    # Families are uneven: a few large ones, many small.
    sizes = chance.dirichlet(np.full(extent.families, 1.5))
    homes = np.sort(chance.choice(extent.families, size=extent.taxa, p=sizes))
    taxa: dict[str, Taxon] = {}
    seen: dict[str, int] = {}
    for number, home in enumerate(homes):
        family = families[home]
        seen[family.name] = seen.get(family.name, 0) + 1
        gated = bool(family.danger) and seen[family.name] <= 12
        made = _taxon(number, family, gated, characters, chance)
        taxa[made.id] = made
    dangers = {f.danger: DangerGroup(f.danger, Text.of(f.danger), Danger.SIGNIFICANT) for f in families if f.danger}
    return KeySet(
        characters=characters,
        taxa=taxa,
        keys={"none": Key("none", Text.of("none"), Text.of("none"), (), "", {})},
        start="none",
        regions={},
        spots={},
        danger_groups=dangers,
        sources={},
        glossary={},
        figures={},
        wording={},
        weights=weights,
        emergency=Emergency((), {}, (), ()),
    )


def _characters(extent: Extent, chance: Generator) -> list[Character]:
    found: list[Character] = []
    rule = AppliesTo()
    for number in range(extent.characters):
        name = f"character-{number}"
        if number % TOGETHER == 0 and number >= max(2, round(GENERAL * extent.characters)):
            orders = chance.choice(ORDERS, size=int(chance.integers(1, 5)), replace=False)
            rule = AppliesTo(("animal",), tuple(f"Order{o}" for o in sorted(orders)))
        count = int(chance.integers(2, MOST_STATES + 1))
        right = round(float(chance.uniform(0.75, 0.97)), 2)
        found.append(
            Character(
                id=name,
                question=Text.of(f"What of {name}?"),
                ask_caller=Text.of(f"{name}?"),
                look=Text.of("Look from a step away."),
                means=Means.BARE_EYE,
                view=View.ANY,
                applies_to=rule,
                tell=round(float(chance.uniform(0.5, 0.95)), 2),
                right=right,
                group=f"group-{number // TOGETHER}",
                never_clears=Text.of("It varies.") if chance.random() < 0.2 else NOTHING,
                seconds=float(chance.integers(3, 40)),
                basis=BASIS,
                states=tuple(_state(name, k, count, right, chance) for k in range(count)),
            )
        )
    return found


def _state(character: str, k: int, count: int, right: float, chance: Generator) -> State:
    mistaken = {f"state-{(k + 1) % count}": 0.5} if count > 2 and chance.random() < 0.3 else {}
    return State(
        id=f"state-{k}",
        label=Text.of(f"state {k}"),
        means=Text.of(f"State {k} of {character}."),
        figure="",
        absence=k == count - 1 and bool(chance.random() < 0.2),
        right=round(right - 0.1, 2) if chance.random() < 0.1 else None,
        mistaken_for=mistaken,
    )


def _family(number: int, extent: Extent, characters: dict[str, Character], chance: Generator) -> _Family:
    order = f"Order{chance.integers(ORDERS)}"
    usual = {}
    for name, character in characters.items():
        groups = character.applies_to.groups
        if (not groups or order in groups) and chance.random() < 0.6:
            usual[name] = int(chance.integers(len(character.states)))
    return _Family(f"Family{number}", order, usual, f"danger-{number}" if number < extent.dangers else "")


def _taxon(number: int, family: _Family, gated: bool, characters: dict[str, Character], chance: Generator) -> Taxon:
    name = f"taxon-{number}"
    web = number > 1 and not gated and bool(chance.random() < 0.02)
    shows: dict[str, dict[str, float]] = {}
    for character, usual in family.usual.items():
        if web and characters[character].applies_to.forms:
            continue
        if chance.random() < 0.9:
            shows[character] = _shown(len(characters[character].states), usual, chance)
    caution = Caution(Text.of(f"Beware of {name}: it is made up."), BASIS, SOME_DAY, SOME_DAY)
    return Taxon(
        id=name,
        name=family.name,
        rank="family",
        class_="Arachnida",
        order=family.order,
        family=family.name,
        title=Text.of(f"Animal {number}"),
        common_names={"en": (f"animal {number}",)},
        popular_names=(),
        misnames=(),
        form=Form.WEB if web else Form.ANIMAL,
        stage=Text.of("adult"),
        kind=name,
        share=1.0,
        made_by=tuple(f"taxon-{number - back}" for back in (1, 2)) if web else (),
        shows=shows,
        sizes={},
        places={},
        months=(),
        occurrence={"default": round(float(chance.uniform(0.05, 1.0)), 3)},
        danger=Danger.SIGNIFICANT if gated else Danger.NONE,
        danger_group=family.danger if gated else "",
        cautions=(caution,) if gated else (),
        advice=(caution,),
        look_alikes=(),
        garden=None,
        diagnosis=Text.of(f"Like others of {family.name}."),
        season=NOTHING,
        outside=False,
        figure="",
        basis=BASIS,
    )


def _shown(count: int, usual: int, chance: Generator) -> dict[str, float]:
    """The usual state alone, or up to three with how often; a tenth of the results differ from their family."""
    first = usual if chance.random() < 0.9 else int(chance.integers(count))
    if chance.random() < 0.55:
        return {f"state-{first}": 1.0}
    others = [k for k in chance.permutation(count) if k != first][: int(chance.integers(1, 3))]
    often = chance.dirichlet([4.0, *(1.0 for _ in others)])
    kept = {k: max(0.03, round(float(value), 3)) for k, value in zip([first, *others], often, strict=True)}
    total = sum(kept.values())
    return {f"state-{k}": value / total for k, value in kept.items()}
