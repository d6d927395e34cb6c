"""Contrast: the two leads of a couplet must say opposite things about the same character."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, note, problem
from keyapp.keyfile.problem import Problem
from keyapp.model.graph import Couplet

__all__ = ["contrasting_characters", "leads_contrast", "leads_mix_groups"]


def contrasting_characters(couplet: Couplet) -> tuple[str, ...]:
    """Characters about which the two leads assert states that have nothing in common, sorted."""
    first, second = (lead.holds for lead in couplet.leads)
    return tuple(sorted(c for c in first.keys() & second.keys() if not first[c] & second[c]))


def leads_contrast(facts: Facts) -> Iterator[Problem]:
    """K311, K312: leads that share no character, or share one without being opposites in any."""
    for couplet in facts.keyset.couplets.values():
        first, second = (lead.holds for lead in couplet.leads)
        shared = sorted(first.keys() & second.keys())
        if not first or not second:
            continue  # reported when the file was read
        if not shared:
            yield problem(
                "K311", couplet.place, f"The leads of {couplet.id} speak of different characters "
                f"({', '.join(sorted(first))} against {', '.join(sorted(second))}).",
                "Let both leads assert states of the same character.")
        elif not contrasting_characters(couplet):
            overlap = "; ".join(f"{c}: {', '.join(sorted(first[c] & second[c]))}" for c in shared)
            yield problem("K312", couplet.place, f"The leads of {couplet.id} do not contrast: both allow {overlap}.",
                          "Give each state to one lead only.")


def leads_mix_groups(facts: Facts) -> Iterator[Problem]:
    """K313: a lead that asserts characters from several independence groups, so that it is two answers in one."""
    characters = facts.keyset.characters
    for couplet in facts.keyset.couplets.values():
        for lead in couplet.leads:
            groups = sorted({characters[c].group for c in lead.holds if c in characters})
            if len(groups) > 1:
                yield note("K313", lead.place, f"This lead of {couplet.id} asserts characters of {len(groups)} groups "
                           f"({', '.join(groups)}) but counts as one answer.",
                           "Split the couplet if observers may see one and not the other.")
