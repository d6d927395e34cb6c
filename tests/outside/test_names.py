"""Scientific names, ranks and lineages of the shipped key against NCBI Taxonomy, as the package taxoniq carries it."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

pytestmark = pytest.mark.outside
taxoniq = pytest.importorskip("taxoniq", reason="install the extra `outside`")

LISTED = yaml.safe_load((Path(__file__).parent / "name_differences.yaml").read_text("utf-8"))
FIELDS = ("rank", "class", "order", "family")


def in_key(taxon):
    """Rank and lineage as the key gives them; groups that it leaves open are left out."""
    given = dict(zip(FIELDS, (taxon.rank, taxon.class_, taxon.order, taxon.family), strict=True))
    return {field: name for field, name in given.items() if name}


def in_copy(name):
    """Rank and lineage of `name` in NCBI Taxonomy; empty where it does not have the name."""
    try:
        found = taxoniq.Taxon(scientific_name=name)
    except KeyError:
        return {}
    lineage = {one.rank.name: one.scientific_name for one in found.ranked_lineage}
    return {"rank": found.rank.name, **{field: lineage.get(field) for field in FIELDS[1:]}}


@pytest.fixture(scope="module")
def differences(shipped):
    """Every difference as (name, field, key, copy)."""
    pairs = [(t.name, in_key(t), in_copy(t.name)) for t in shipped.keyset.taxa.values()]
    return {(name, f, key[f], copy.get(f)) for name, key, copy in pairs for f in key if key[f] != copy.get(f)}


def listed():
    return {(name, f, d["key"], d["copy"]) for name, fields in LISTED.items() for f, d in fields.items()}


def test_every_name_is_known_outside(shipped):
    names = {t.name for t in shipped.keyset.taxa.values()}
    assert sorted(name for name in names if not in_copy(name)) == []


def test_every_difference_is_listed_with_the_source_of_current_usage(differences):
    assert differences - listed() == set()


def test_no_difference_is_listed_that_is_gone(differences):
    assert listed() - differences == set()


def test_every_listed_difference_names_its_source():
    sources = [d["source"] for fields in LISTED.values() for d in fields.values()]
    assert all("http" in source for source in sources)


def test_what_the_key_leaves_open_is_wider_than_that_group(shipped):
    """A result without a family is of a higher rank than family, or a sign that several families make."""
    wide = {"order", "class", "phylum"}
    narrow = [t.id for t in shipped.keyset.taxa.values() if not t.family and t.rank not in wide]
    assert narrow == []
