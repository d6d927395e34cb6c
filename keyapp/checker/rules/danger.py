"""Danger: what a medically important result must have before anyone sees it."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, problem
from keyapp.keyfile.problem import Problem
from keyapp.model.region import ContactKind, Region
from keyapp.model.source import COMMON_PRACTICE, FROM_MEMORY, Basis
from keyapp.model.taxon import Danger

__all__ = ["danger_groups_fit", "gated_results_complete", "regions_refer", "signs_carry_danger"]

LEAST_CAUTIONS = 2
NEEDED_CONTACTS = (ContactKind.POISON, ContactKind.EMERGENCY, ContactKind.EXTENSION)
_WORST_FIRST = tuple(Danger)


def gated_results_complete(facts: Facts) -> Iterator[Problem]:
    """K371, K372, K373: cautions, a published source among them, advice and a danger group."""
    for taxon in facts.keyset.taxa.values():
        if not taxon.danger.is_gated:
            continue
        who = f'"{taxon.id}" is medically important ({taxon.danger})'
        published = any(_is_published(caution.basis) for caution in taxon.cautions)
        if len(taxon.cautions) < LEAST_CAUTIONS or not published:
            yield problem(
                "K371", taxon.place, f"{who} but has {len(taxon.cautions)} cautions, "
                f"{'one or more' if published else 'none'} with a published source.",
                f"Give it at least {LEAST_CAUTIONS} cautions, at least one with a source from sources.yaml.")
        if not taxon.advice:
            yield problem("K372", taxon.place, f"{who} but has no advice.", "Say under `advice` what to do first.")
        if not taxon.danger_group:
            yield problem("K373", taxon.place, f"{who} but has no danger group.", "Add `danger-group:`.")


def danger_groups_fit(facts: Facts) -> Iterator[Problem]:
    """K374: a danger group is milder than one of its members."""
    groups = facts.keyset.danger_groups
    for taxon in facts.keyset.taxa.values():
        group = groups.get(taxon.danger_group)
        if group and taxon.danger.is_gated and _worse(taxon.danger, group.worst):
            yield problem("K374", group.place, f'The danger group "{group.id}" is "{group.worst}", milder than its '
                          f'member "{taxon.id}" ("{taxon.danger}").', f"Write `worst: {taxon.danger}`.")


def signs_carry_danger(facts: Facts) -> Iterator[Problem]:
    """K375: a sign is milder than the worst animal that makes it."""
    for sign in facts.keyset.taxa.values():
        makers = [taxon for taxon in facts.keyset.taxa.values() if not taxon.made_by and taxon.kind in sign.made_by]
        worst = min(makers, key=lambda taxon: _WORST_FIRST.index(taxon.danger), default=None)
        if worst is not None and _worse(worst.danger, sign.danger):
            yield problem("K375", sign.place, f'The sign "{sign.id}" is "{sign.danger}", milder than "{worst.id}" '
                          f'which makes it ("{worst.danger}").', f"Write `danger: {worst.danger}`.")


def regions_refer(facts: Facts) -> Iterator[Problem]:
    """K376: from a region no emergency, poison or extension contact can be reached."""
    if not any(taxon.danger.is_gated for taxon in facts.keyset.taxa.values()):
        return
    regions = facts.keyset.regions
    for region in regions.values():
        kinds: set[ContactKind] = set()
        seen: set[str] = set()
        at: Region | None = region
        while at is not None and at.id not in seen:
            seen.add(at.id)
            kinds.update(contact.kind for contact in at.contacts)
            at = regions.get(at.part_of)
        missing = [str(kind) for kind in NEEDED_CONTACTS if kind not in kinds]
        if missing:
            yield problem("K376", region.place, f'The region "{region.id}" has no contact for: {", ".join(missing)}.',
                          "Add these contacts, or those of the region it is part of.")


def _is_published(basis: Basis) -> bool:
    return any(source not in (COMMON_PRACTICE, FROM_MEMORY) for source in basis)


def _worse(one: Danger, other: Danger) -> bool:
    return _WORST_FIRST.index(one) < _WORST_FIRST.index(other)
