"""Animals found by the names people use for them."""

from __future__ import annotations

import pytest

from keyapp.engine import build_tables
from keyapp.errors import UserError
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.wording import Words, feared_called, feared_name, taxa_called

TABLES = build_tables(require_keyset(keys_folder()))
WORDS = Words(TABLES.keyset)


def ids(said):
    return [animal.id for animal in feared_called(TABLES, said)]


@pytest.mark.parametrize(
    ("said", "danger"),
    [
        ("black widow", "widows"),
        ("Black Widows", "widows"),
        ("black-widow spider", "widows"),
        ("is it a widow?", "widows"),
        ("blak widow", "widows"),
        ("brown recluse", "recluses"),
        ("brown reclsue", "recluses"),
        ("FIDDLEBACK", "recluses"),
        ("deer ticks", "ticks"),
        ("arañas viuda", "widows"),
    ],
)
def test_a_feared_name_leads_to_its_danger_group_however_it_is_spelt(said, danger):
    assert ids(said) == [danger]


def test_a_right_name_goes_before_a_wrong_one():
    """`black widow` is also what people wrongly call the false widow; `brown recluse`, half of all brown spiders."""
    assert ids("false black widow") == ["false-widow"]
    assert "false-widow" not in ids("black widow")


def test_a_wide_name_holds_the_dangerous_ones_and_they_come_first():
    assert ids("scorpion") == ["bark-scorpions", "other-scorpion"]
    assert ids("spider")[:2] == ["widows", "recluses"]


def test_a_name_in_use_for_several_gives_them_all():
    assert set(ids("banana spider")) == {"giant-crab", "garden-orb", "golden-silk-orb"}


def test_a_stage_stands_for_its_kind_and_a_sign_for_the_worst_that_makes_it():
    assert ids("wolf spider with egg sac") == ["wolf-spider"]
    assert ids("widow egg sac") == ["widows"]


@pytest.mark.parametrize("said", ["zzqq", "", "   ", "?!", "x" * 5000])
def test_what_is_like_no_name_is_refused_with_names_to_try(said):
    with pytest.raises(UserError, match="widow spiders"):
        feared_called(TABLES, said)


def test_every_danger_group_and_result_is_found_by_its_own_names():
    for group in TABLES.keyset.danger_groups.values():
        assert ids(group.name.say()) == [group.id]
    for taxon in TABLES.keyset.taxa.values():
        for name in taxon.common_names["en"]:
            found = [row for animal in feared_called(TABLES, name) for row in animal.rows]
            assert set(TABLES.rows_of[taxon.id]) & set(found), name


def test_names_to_show():
    assert [feared_name(WORDS, animal) for animal in feared_called(TABLES, "black widow")] == ["widow spiders"]
    assert [feared_name(WORDS, animal) for animal in feared_called(TABLES, "tarantula")] == ["Tarantula"]


def test_names_within_what_was_told():
    assert "widow-black-female" in taxa_called(TABLES.keyset, "I was told a Black Widow")
    assert taxa_called(TABLES.keyset, "  ") == ()
