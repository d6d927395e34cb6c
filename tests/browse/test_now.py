"""What people are likely to ask about in a place and a month."""

from __future__ import annotations

import json

import pytest

from keyapp.browse import Filters, asked_about, find, in_season, kind_of
from keyapp.cli.main import run


def ids(hits):
    return [hit.kind.id for hit in hits]


def test_with_a_place_and_a_month_the_likeliest_stand_first(shipped):
    found = find(shipped, "", Filters(region="TX", month=9))
    weights = [asked_about(shipped, hit.kind, "TX", 9) for hit in found.others if not hit.kind.outside]
    assert weights == sorted(weights, reverse=True)
    assert weights[0] > 2 * weights[-1]


def test_the_list_of_one_month_is_not_that_of_another(shipped):
    fall, winter = (ids(find(shipped, "", Filters(region="northeast", month=month)).others)[:10] for month in (9, 1))
    assert fall != winter
    assert "garden-orb" in fall
    assert "garden-orb" not in winter


def test_a_season_weighs_more_in_its_months_than_out_of_them(shipped):
    kind = kind_of(shipped, "garden-orb")
    season = in_season(shipped, kind, "northeast")
    inside = min(asked_about(shipped, kind, "northeast", month) for month in season)
    outside = max(asked_about(shipped, kind, "northeast", month) for month in range(1, 13) if month not in season)
    assert inside > outside


@pytest.mark.parametrize("month", [1, 7])
def test_the_dangerous_stay_on_top_whatever_the_month(shipped, month):
    found = find(shipped, "", Filters(region="TX", month=month))
    assert {"widow-black-female", "recluse", "hard-tick"} <= set(ids(found.dangers))


def test_with_a_name_the_name_decides(shipped):
    named = find(shipped, "jumping spider", Filters(region="TX", month=9))
    assert ids(named.others)[0] == "jumping-spider"


def test_the_terminal_lists_them_and_says_what_the_list_is_not(capsys):
    assert run(["now", "--region", "TX", "--month", "9"]) == 0
    said = capsys.readouterr().out
    assert said.index("Medically important") < said.index("What people ask about")
    assert "does not tell" in said
    assert run(["now", "--region", "TX", "--month", "9", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["dangers"]
    assert data["others"][0]["weight"] >= data["others"][1]["weight"]


@pytest.mark.parametrize(("region", "month"), [("ZZ", 9), ("TX", 13)])
def test_the_terminal_refuses_places_and_months_there_are_not(capsys, region, month):
    assert run(["now", "--region", region, "--month", str(month)]) == 2
    assert "no" in capsys.readouterr().err
