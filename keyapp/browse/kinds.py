"""The kinds of animal and the signs of a key, each with all its stages and sexes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from keyapp.engine import Tables
from keyapp.model import Danger, Form, Taxon

__all__ = ["Kind", "kind_of", "kinds", "sorts"]


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of animal, or a sign.

    Attributes:
        id: id of its first result.
        taxa: ids of its results (stages and sexes), in the order of the key.
        danger: the worst medical importance of them.
        gated: whether a danger group names it.
        sort: what sort of thing it is: the scientific name of its order or class, or the form of a sign.
        outside: it stands for what is not in the key yet.
    """

    id: str
    taxa: tuple[str, ...]
    danger: Danger
    gated: bool
    sort: str
    outside: bool


def kinds(tables: Tables) -> tuple[Kind, ...]:
    """Every kind and sign of the key, each once, in the order of the key. Worked out once."""
    if "kinds" not in tables.memo:
        together: dict[tuple[str, Form], list[Taxon]] = {}
        for taxon in tables.keyset.taxa.values():
            together.setdefault((taxon.kind, taxon.form), []).append(taxon)
        tables.memo["kinds"] = tuple(_kind(tables, taxa) for taxa in together.values())
    return tables.memo["kinds"]  # type: ignore[return-value]


def kind_of(tables: Tables, taxon_id: str) -> Kind:
    """The kind that a result belongs to; KeyError for an unknown id."""
    if "kind of" not in tables.memo:
        tables.memo["kind of"] = {taxon: kind for kind in kinds(tables) for taxon in kind.taxa}
    found: Mapping[str, Kind] = tables.memo["kind of"]  # type: ignore[assignment]
    return found[taxon_id]


def sorts(tables: Tables) -> tuple[str, ...]:
    """The sorts of thing there are, in the order of the key, animals before signs."""
    forms = set(Form)
    found = dict.fromkeys(kind.sort for kind in kinds(tables) if kind.sort)
    return tuple(sorted(found, key=lambda sort: sort in forms))


def _kind(tables: Tables, taxa: Sequence[Taxon]) -> Kind:
    first = taxa[0]
    order = list(Danger)
    gated = any(tables.rows[row].danger for taxon in taxa for row in tables.rows_of[taxon.id])
    sort = str(first.form) if first.form is not Form.ANIMAL else first.order or first.class_
    return Kind(
        first.id,
        tuple(taxon.id for taxon in taxa),
        min((taxon.danger for taxon in taxa), key=order.index),
        gated,
        sort,
        any(taxon.outside for taxon in taxa),
    )
