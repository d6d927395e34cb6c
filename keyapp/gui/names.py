"""Results by any name in use for them."""

from __future__ import annotations

from keyapp.model import KeySet

__all__ = ["taxa_called"]


def taxa_called(keyset: KeySet, said: str) -> tuple[str, ...]:
    """Ids of the results that `said` names, by common, popular or wrong name; none for an empty text.

    A name counts where it stands in `said` in singular or plural.
    """
    plain = f" {' '.join(said.casefold().split())} "
    if not plain.strip():
        return ()
    found = []
    for taxon in keyset.taxa.values():
        names = [name for some in taxon.common_names.values() for name in some]
        names += [*taxon.popular_names, *(one.said for one in taxon.misnames)]
        if any(f" {name.casefold()}{end} " in plain for name in names for end in ("", "s")):
            found.append(taxon.id)
    return tuple(found)
