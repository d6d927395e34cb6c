"""The numbers the engine works with, each kept with its reason."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

__all__ = ["Observer", "Weights"]


@dataclass(frozen=True, slots=True)
class Observer:
    """One level of observer reliability: its prior share and the factor on error chances."""

    id: str
    share: float
    factor: float


@dataclass(frozen=True, slots=True)
class Weights:
    """Numbers of the engine. Defaults are neutral; the shipped values are in `weights.yaml`.

    Attributes:
        outside: prior mass of "something not in this key" (0-1).
        outside_breadth: how evenly its likelihood is spread over the states (1 evenly, 0 as in the key).
        floor: least value of any one prior factor.
        place_floor: weight of a find spot that a description does not list (0-1).
        month_floor: weight of a month far from the season (0-1).
        unlisted: chance that an animal shows a state its description does not list (0-1).
        observers: levels of reliability the standing is averaged over.
        sureness: factor on the error chance for `sure` and `think-so`.
        evidence: factor on the error chance by kind of evidence.
        inapplicable: chance, against an animal it applies to, that an observer reports a character
            unasked that the animal does not have.
        slip: chance that any answer at all goes wrong, however easy its character: a question misheard,
            a word misunderstood; scaled as other errors are.
        error_cap: no error chance exceeds this.
        neither_slip: of wrong readings of a couplet, the share that end in *neither fits*.
        neither_floor: least chance that neither lead fits an animal they both apply to.
        size_outlier: chance of a reported size that has nothing to do with the animal.
        ruled_out_ratio: likelihood ratio to the best taxon below which a taxon may be ruled out.
        ruled_out_posterior: posterior below which it may be ruled out.
        ruled_out_answers: contradicting *sure* answers needed, each from its own group.
        firm: posterior of a group from which one name may be used at all.
        outside_limit: posterior of "not in this key" above which nothing may be moved.
        likely: posterior a group must reach to be listed as one of these.
        pass_branch: share of the standing below which the far branch of a *can't tell* is skipped.
        danger_bits: worth, in bits, of one danger group no longer having to be named.
        asking: seconds that putting and understanding any question takes, beside looking.
        reasons: reason and basis by field name.
    """

    outside: float = 0.1
    outside_breadth: float = 1.0
    floor: float = 1e-3
    place_floor: float = 0.1
    month_floor: float = 0.1
    unlisted: float = 0.0
    observers: tuple[Observer, ...] = (Observer("ordinary", 1.0, 1.0),)
    sureness: Mapping[str, float] = field(default_factory=lambda: {"sure": 1.0, "think-so": 2.0})
    evidence: Mapping[str, float] = field(default_factory=dict)
    inapplicable: float = 1.0
    slip: float = 0.0
    error_cap: float = 0.45
    neither_slip: float = 0.15
    neither_floor: float = 0.02
    size_outlier: float = 0.05
    ruled_out_ratio: float = 0.02
    ruled_out_posterior: float = 0.002
    ruled_out_answers: int = 2
    firm: float = 0.9
    outside_limit: float = 0.1
    likely: float = 0.03
    pass_branch: float = 0.02
    danger_bits: float = 0.5
    asking: float = 0.0
    reasons: Mapping[str, str] = field(default_factory=dict)
