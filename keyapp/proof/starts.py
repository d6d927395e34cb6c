"""How a run starts: place, month, find spot, what there is, and the kind of evidence, each known or not."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from keyapp.model import Evidence, KeySet, Settings

__all__ = ["Start", "class_of", "draw_settings", "starts"]


@dataclass(frozen=True, slots=True, order=True)
class Start:
    """One class of start settings: `place` is `region`, `state` or empty, the others say what is known."""

    place: str
    month: bool
    spot: bool
    thing: bool
    evidence: Evidence


def starts(keyset: KeySet) -> tuple[Start, ...]:
    """Every class of start settings that the key allows."""
    places = ["", *(["region"] if keyset.regions else []), *(["state"] if _states(keyset) else [])]
    spots = (False, True) if keyset.spots else (False,)
    return tuple(Start(*one) for one in product(places, (False, True), spots, (False, True), Evidence))


def draw_settings(keyset: KeySet, start: Start, chance: random.Random) -> Settings:
    """Settings of one class, but for `thing`, which is for the observer to say."""
    places: dict[str, Sequence[str | None]] = {"": [None], "region": [*keyset.regions], "state": _states(keyset)}
    return Settings(
        region=chance.choice(places[start.place]),
        month=chance.randint(1, 12) if start.month else None,
        spot=chance.choice([*keyset.spots]) if start.spot else None,
        evidence=start.evidence,
    )


def class_of(keyset: KeySet, settings: Settings) -> Start:
    """The class that settings fall into."""
    place = "" if settings.region is None else "region" if settings.region in keyset.regions else "state"
    known = (settings.month is not None, settings.spot is not None, settings.thing is not None)
    return Start(place, *known, settings.evidence)


def _states(keyset: KeySet) -> list[str]:
    return [state for region in keyset.regions.values() for state in region.states]
