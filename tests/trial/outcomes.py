"""Outcomes of calls, written by hand."""

from __future__ import annotations

from keyapp.engine import OUTSIDE, Claim
from keyapp.trial import Outcome

__all__ = ["missed_widow", "named_widow", "outcome", "stranger"]


def outcome(taxon="a", ranked=("A", "B"), chance=0.97, claim=Claim.CONSISTENT, dangers=(), named=(), **more):
    """A call about an animal of group A that went well; without `taxon`, about one that is not in the key."""
    groups = ("A",) if taxon else ()
    values = {"answers": 5, "extra": 1, "strict_right": True, "strict_misses": False, **more}
    return Outcome(taxon, groups, dangers, ranked, chance, claim, named, **values)


def named_widow():
    return outcome("widow", dangers=("widows",), named=("widows",))


def missed_widow():
    return outcome("widow", dangers=("widows",), named=(), strict_right=False, strict_misses=True)


def stranger(**more):
    return outcome(None, **{"ranked": (OUTSIDE,), "claim": Claim.UNKNOWN, **more})
