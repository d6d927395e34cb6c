"""The county card: every danger of the place and month, beside what it is taken for."""

from __future__ import annotations

import pytest

from keyapp.engine import met_there
from keyapp.errors import UserError
from keyapp.folders import images_folder
from keyapp.model import Form, Settings
from keyapp.sheets import Paper, card_pdf
from keyapp.sheets.county_card import card_pages
from keyapp.sheets.items import Drawing
from keyapp.sheets.items import Words as Text
from keyapp.sheets.pairs import dangers_here, known_region
from keyapp.wording import Words
from tests.sheets.cases import DAY, EDITION, pages_of, squeezed
from tests.sheets.test_find_sheet import COMFORT
from tests.sheets.test_layout import check_page

PLACES = ("AZ", "MO", "FL", "northeast", "central", "demo-office", "california", "far")


def laid(shipped, region, month, paper=Paper.LETTER, language="en"):
    return card_pages(shipped, region, month, Words(shipped.keyset, language), date=DAY, edition=EDITION, paper=paper)


def said(pages) -> str:
    return " ".join(item.text for page in pages for item in page if isinstance(item, Text))


@pytest.mark.parametrize("region", PLACES)
@pytest.mark.parametrize("month", [1, 5, 7, 10])
def test_a_card_names_every_danger_group_and_every_number_on_one_page(shipped, region, month):
    words = Words(shipped.keyset)
    for paper, language in ((Paper.LETTER, "en"), (Paper.A4, "es")):
        pages = laid(shipped, region, month, paper, language)
        assert len(pages) == 1
        check_page(pages[0], paper)
    text = said(laid(shipped, region, month))
    for group in shipped.keyset.danger_groups:
        assert words.danger(group).casefold() in text.casefold()
    for contact in words.contacts(Settings(region=region)):
        assert str(contact.kind) == "plant-regulator" or contact.telephone in text
    assert "If unsure: keep away and ask." in text
    assert COMFORT.findall(text) == []


@pytest.mark.parametrize("region", PLACES)
def test_what_is_shown_lives_there_and_is_in_season(shipped, region):
    for month in range(1, 13):
        here, less = dangers_here(shipped, region, month)
        where = Settings(region=known_region(shipped.keyset, region), month=month)
        for one in here:
            common, season = met_there(shipped, one.lead, where)
            assert common >= 0.02 and season == 1.0
            assert one.lead.danger.is_gated and one.lead.form is Form.ANIMAL
            for double in one.doubles:
                assert not double.other.danger.is_gated
                assert one.lead.id in {double.danger.id}
                assert {double.look.taxon, double.other.id, double.danger.id} == {double.other.id, double.danger.id}
        groups = {one.group.id for one in here} | {group.id for group in less}
        assert groups == set(shipped.keyset.danger_groups)


def test_known_places_have_the_dangers_they_are_known_for(shipped):
    def groups(region, month):
        return {one.group.id for one in dangers_here(shipped, region, month)[0]}

    assert {"bark-scorpions", "widows"} <= groups("AZ", 7)
    assert {"recluses", "widows", "ticks"} <= groups("MO", 7)
    assert "recluses" not in groups("northeast", 7)
    assert "widows" not in groups("northeast", 1)


def test_each_pair_has_both_figures_and_the_difference(shipped):
    pages = laid(shipped, "MO", 7)
    figures = {item.figure for item in pages[0] if isinstance(item, Drawing)}
    text = squeezed(said(pages))
    here, _ = dangers_here(shipped, "MO", 7)
    for one in here:
        assert one.lead.figure in figures
        for double in one.doubles[:1]:
            assert double.other.figure in figures
            assert squeezed(double.look.difference.say()) in text
        assert one.doubles or "Nodoubleofitisonfile" in text
        assert squeezed(one.lead.cautions[0].says.say()) in text
        assert f"Checked{one.lead.cautions[0].checked.isoformat()}" in text
        assert "Oftentakenforit:" in text


def test_a_difference_seen_from_a_step_away_goes_before_one_that_needs_a_lens(shipped):
    here, _ = dangers_here(shipped, "MO", 7)
    for one in here:
        afar = [double.from_afar for double in one.doubles]
        assert afar == sorted(afar, reverse=True) or not afar[0]


def test_the_card_as_pdf_reads_back_and_is_the_same_each_time(shipped):
    words = Words(shipped.keyset)
    made = [
        card_pdf(shipped, "northeast", 1, words, images=images_folder(), date=DAY, edition=EDITION) for _ in range(2)
    ]
    assert made[0] == made[1]
    (page,) = pages_of(made[0])
    assert "1-800-222-1222" in page and "911" in page and "Northeast, January" in page


@pytest.mark.parametrize(("region", "month", "what"), [("atlantis", 7, "no region"), ("AZ", 13, "no month")])
def test_an_unknown_place_or_month_is_refused(shipped, region, month, what):
    with pytest.raises(UserError, match=what):
        laid(shipped, region, month)


def test_a_state_code_may_be_written_small(shipped):
    assert known_region(shipped.keyset, "az") == "AZ"
