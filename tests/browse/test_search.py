"""Kinds found by any name, narrowed down, with whatever is dangerous on top."""

from __future__ import annotations

import pytest

from keyapp.browse import Filters, find, kind_of, kinds, look_alikes, meant
from keyapp.engine import build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.model import Danger, Form

TABLES = build_tables(require_keyset(keys_folder()))
TAXA = TABLES.keyset.taxa


def ids(hits):
    return [hit.kind.id for hit in hits]


def test_every_result_belongs_to_one_kind_and_no_kind_is_listed_twice():
    found = find(TABLES)
    assert sorted(ids(found.hits)) == sorted(kind.id for kind in kinds(TABLES))
    assert sorted(taxon for hit in found.hits for taxon in hit.kind.taxa) == sorted(TAXA)
    assert found.left_out == 0


@pytest.mark.parametrize("said", ["", "spider", "black widow", "tick", "daddy longlegs", "egg sac", "web", "brown"])
def test_the_dangerous_stand_on_top_and_nothing_stands_twice(said):
    found = find(TABLES, said)
    assert len(set(ids(found.hits))) == len(found.hits)
    gated = [hit.kind.gated for hit in found.hits]
    assert gated == sorted(gated, reverse=True)
    assert any(gated)


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("dady longlegs", "harvestman"),
        ("daddylonglegs", "harvestman"),
        ("Daddy Long-Legs", "cellar-spider"),
        ("jumpng spidr", "jumping-spider"),
        ("JUMP", "jumping-spider"),
        ("theridiidae", "false-widow"),
        ("Latrodectus", "widow-black-female"),
        ("latrodectis", "widow-black-female"),
        ("Orthoptera", "camel-cricket"),
        ("Arachnida", "windscorpion"),
        ("orb weavers", "typical-orb"),
        ("viuda negra", "widow-black-female"),
        ("fiddleback", "recluse"),
        ("bark scorpions", "bark-scorpion"),
        ("ticks", "hard-tick"),
        ("cobweb", "web-tangle"),
        ("papery egg sac", "sac-widow"),
        ("is it a wolf spider in my shed", "wolf-spider"),
    ],
)
def test_a_kind_is_found_by_any_name_however_it_is_spelt(said, kind):
    assert kind in ids(find(TABLES, said).hits)


def test_every_name_of_every_result_finds_its_kind():
    for taxon in TAXA.values():
        names = [taxon.id, taxon.name, taxon.title.say(), *taxon.popular_names, *(one.said for one in taxon.misnames)]
        names += [name for some in taxon.common_names.values() for name in some]
        names += [name for name in (taxon.family, taxon.order, taxon.class_) if name]
        for name in names:
            assert kind_of(TABLES, taxon.id).id in ids(find(TABLES, name).hits), name


def test_every_danger_group_is_found_by_its_name():
    for group in TABLES.keyset.danger_groups.values():
        for _, name in group.name.entries:
            named = {hit.kind.id for hit in find(TABLES, name).dangers}
            assert named >= {kind.id for kind in kinds(TABLES) if TAXA[kind.id].danger_group == group.id}


def test_a_dangerous_look_alike_is_brought_in_and_says_of_what():
    found = find(TABLES, "harvestman")
    assert ids(found.others)[:2] == ["harvestman", "harvestman-saddled"]
    (tick,) = [hit for hit in found.dangers if hit.kind.id == "hard-tick"]
    assert tick.name is None
    assert set(ids(found.dangers)) >= {k.id for k in look_alikes(TABLES, kind_of(TABLES, "harvestman")) if k.gated}
    assert "harvestman" in [kind.id for kind in tick.taken_for]


def test_no_filter_takes_a_dangerous_look_alike_away():
    for filters in (
        Filters(sort="Opiliones"),
        Filters(danger=Danger.NONE),
        Filters(region="HI", month=1, spot="near-water", danger=Danger.NONE),
    ):
        found = find(TABLES, "", filters)
        here = set(ids(found.hits))
        for hit in found.hits:
            missing = [one.id for one in look_alikes(TABLES, hit.kind) if one.gated and one.id not in here]
            assert missing == [] or hit.kind.id in ids(found.dangers)


def test_place_and_season_drop_no_danger_but_say_so():
    found = find(TABLES, "", Filters(region="ME", month=1))
    gated = {kind.id for kind in kinds(TABLES) if kind.gated}
    assert set(ids(found.dangers)) == gated
    unusual = {hit.kind.id: hit.unusual for hit in found.dangers}
    assert "region" in unusual["bark-scorpion"]
    assert "month" in unusual["widow-black-female"]
    assert unusual["hard-tick"] == ()
    assert found.left_out > 0
    assert not any(hit.unusual for hit in found.others)


def test_filters_narrow_the_others():
    spiders = find(TABLES, "", Filters(sort="Araneae"))
    assert {TAXA[hit.kind.id].order for hit in spiders.others} == {"Araneae"}
    assert {TAXA[hit.kind.id].form for hit in spiders.others} == {Form.ANIMAL}
    webs = find(TABLES, "", Filters(sort="web"))
    assert {TAXA[hit.kind.id].form for hit in webs.others} == {Form.WEB}
    minor = find(TABLES, "", Filters(danger=Danger.MINOR))
    assert {hit.kind.danger for hit in minor.others} == {Danger.MINOR}
    winter = find(TABLES, "", Filters(month=1))
    assert "garden-orb" not in ids(winter.others)
    assert "garden-orb" in ids(find(TABLES, "", Filters(month=9)).others)
    water = find(TABLES, "", Filters(spot="near-water"))
    assert "fishing-spider" in ids(water.others)


def test_what_is_not_in_the_key_comes_last():
    outside = [hit.kind.outside for hit in find(TABLES).others]
    assert outside == sorted(outside)
    assert any(outside)


@pytest.mark.parametrize("said", ["murder hornet", "zzqq", "?!"])
def test_a_name_that_is_not_in_the_key_finds_nothing(said):
    assert find(TABLES, said).hits == ()
    assert meant(TABLES, said).hits == ()


def test_a_name_in_use_for_several_gives_them_with_the_question_that_splits_them():
    found = meant(TABLES, "daddy longlegs")
    assert ids(found.hits) == ["harvestman", "harvestman-saddled", "cellar-spider", "long-jawed"]
    assert ids(found.look_alikes) == ["hard-tick", "recluse"]
    assert found.split is not None
    assert found.split.character == "web-shape"
    best = {cell.kind.id: cell.states[0][0] for cell in found.split.cells}
    assert best["harvestman"] == "none"
    assert best["cellar-spider"] == "loose-mesh"


def test_what_people_say_counts_right_or_wrong_and_dangers_come_first():
    found = meant(TABLES, "brown recluse")
    assert found.hits[0].kind.id == "recluse"
    assert len(found.hits) > 1
    gated = [hit.kind.gated for hit in found.hits]
    assert gated == sorted(gated, reverse=True)


def test_a_name_of_one_kind_has_nothing_to_split():
    found = meant(TABLES, "spitting spider")
    assert ids(found.hits) == ["spitting-spider"]
    assert found.split is None
