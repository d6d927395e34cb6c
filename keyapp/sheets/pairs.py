"""The dangerous few of a place and month, each beside what it is often taken for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keyapp.engine import Tables, met_there
from keyapp.errors import UserError
from keyapp.model import Danger, DangerGroup, Form, KeySet, LookAlike, Means, Settings, Taxon, View
from keyapp.model.names import nearest

__all__ = ["DangerHere", "Double", "dangers_here", "known_region"]

OCCURS = 0.02
"""Least weight of occurrence at which a result is met in a place; below it lie strays that were carried there."""

BY_EYE = (Means.BARE_EYE, Means.PHOTO, Means.HAND_LENS)
"""What a difference takes to be seen, the easiest from a distance first."""


@dataclass(frozen=True, slots=True)
class Double:
    """A danger, another result it is taken for, and the one difference to look at."""

    danger: Taxon
    other: Taxon
    look: LookAlike
    means: Means
    view: View

    @property
    def from_afar(self) -> bool:
        """Whether it can be seen with the bare eye and from above or the side."""
        return self.means is Means.BARE_EYE and self.view is not View.UNDERSIDE


@dataclass(frozen=True, slots=True)
class DangerHere:
    """A kind of a danger group at its season in a place: its commonest result there, and its doubles, best first."""

    group: DangerGroup
    lead: Taxon
    doubles: tuple[Double, ...]


def known_region(keyset: KeySet, region: str) -> str:
    """`region` as the key knows it: a region id, or a two-letter state code. UserError for any other."""
    states = {state for one in keyset.regions.values() for state in one.states}
    for said in (region, region.upper()):
        if said in keyset.regions or said in states:
            return said
    known = [*keyset.regions, *sorted(states)]
    raise UserError(f"There is no region “{region}”.", where="region", fix=f"Use {nearest(region, known)}.")


def dangers_here(tables: Tables, region: str, month: int) -> tuple[tuple[DangerHere, ...], tuple[DangerGroup, ...]]:
    """The dangers met in a place and month, and the groups that are met less often: none is left out.

    A kind is met where one of its animals occurs there and is in its season; of the kinds of one group, the first
    stands for those that have no double there. Those of greater medical
    importance come first, then the commoner ones. Signs are not shown: the animal is near its web.
    Raises UserError for an unknown region or month.
    """
    if not 1 <= month <= 12:
        raise UserError(f"There is no month {month}.", where="month", fix="Use 1 to 12.")
    settings = Settings(region=known_region(tables.keyset, region), month=month)
    gated = [t for t in tables.keyset.taxa.values() if t.danger.is_gated and t.form is Form.ANIMAL]
    here: dict[str, tuple[tuple[int, float], DangerHere]] = {}
    for taxon in gated:
        common, season = met_there(tables, taxon, settings)
        if common < OCCURS or season < 1.0:
            continue
        rank = (list(Danger).index(taxon.danger), -common)
        if taxon.kind not in here or rank < here[taxon.kind][0]:
            group = tables.keyset.danger_groups[taxon.danger_group]
            here[taxon.kind] = (rank, DangerHere(group, taxon, tuple(_doubles(tables, taxon, settings))))
    first: dict[str, tuple[int, float]] = {}
    for rank, one in here.values():
        first[one.group.id] = min(rank, first.get(one.group.id, rank))
    ordered = sorted(here.values(), key=lambda one: (first[one[1].group.id], one[1].group.id, one[0]))
    # A further kind without a double there adds nothing to look at: what is said of its group holds for it.
    leads = {one.group.id: one for _, one in reversed(ordered)}
    found = tuple(one for _, one in ordered if one.doubles or leads[one.group.id] is one)
    met = {one.group.id for one in found}
    groups = dict.fromkeys(taxon.danger_group for taxon in gated if taxon.danger_group not in met)
    return found, tuple(tables.keyset.danger_groups[group] for group in groups)


def _doubles(tables: Tables, taxon: Taxon, settings: Settings) -> Iterator[Double]:
    """Doubles that live there, differences seen from a distance first, no other result shown twice."""
    found = [one for one in _of(tables.keyset, taxon) if met_there(tables, one.other, settings)[0] >= OCCURS]
    shown: set[str] = set()
    for one in sorted(found, key=lambda one: (BY_EYE.index(one.means), one.view is View.UNDERSIDE)):
        if one.other.id not in shown:
            shown.add(one.other.id)
            yield one


def _of(keyset: KeySet, taxon: Taxon) -> Iterator[Double]:
    """What `taxon` and others say of how they differ; only animals of the key that are no danger group themselves."""
    own = [(keyset.taxa[look.taxon], look) for look in taxon.look_alikes]
    theirs = [(other, look) for other in keyset.taxa.values() for look in other.look_alikes if look.taxon == taxon.id]
    for other, look in (*own, *theirs):
        if _may_stand(other):
            character = keyset.characters[look.character]
            yield Double(taxon, other, look, character.means, character.view)


def _may_stand(other: Taxon) -> bool:
    return not other.danger.is_gated and not other.outside and other.form is Form.ANIMAL
