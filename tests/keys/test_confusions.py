"""What people most often mix up comes out right from plain observations.

The mix-ups are those that extension offices and museums report: Vetter 2005, Arachnids submitted as suspected brown
recluse spiders, Journal of Medical Entomology 42:512-521; Crawford, The Spider Myths Site, Burke Museum; Edwards and
McCanless, Southern house spider (EENY-144), University of Florida IFAS Extension; fact sheets of Penn State Extension.
"""

from __future__ import annotations

import pytest

from keyapp.engine import Action, Claim
from keyapp.model import Evidence
from keyapp.work import Enquiry


@pytest.fixture
def told(shipped):
    """Weighs what was said: settings by name, then a state (or states) by character."""

    def weigh(settings=None, evidence=Evidence.PHOTO, **said):
        enquiry = Enquiry(shipped)
        enquiry.set_up(evidence=evidence, **(settings or {}))
        for character, states in said.items():
            enquiry.report(character.replace("_", "-"), frozenset(states.split()), view_seen=True)
        return enquiry.reading

    return weigh


def first(reading):
    return reading.standing.groups[0][0].name


def first_taxon(reading):
    return reading.verdict.candidates[0].taxa[0]


def named(reading):
    return {danger.group for danger in reading.not_ruled_out}


CELLAR = {
    "leg_count": "eight",
    "leg_build": "thread-thin-very-long",
    "front_mark": "violin",
    "abdomen_pattern": "spots",
    "web_shape": "loose-mesh",
    "gait": "bobs-or-whirls",
}


def test_a_cellar_spider_with_a_mark_like_a_fiddle_is_a_cellar_spider(told):
    assert first(told({"region": "MO", "spot": "basement-crawlspace"}, **CELLAR)) == "Pholcidae"


def test_a_plain_spider_with_a_fiddle_and_three_pairs_of_eyes_is_a_recluse(told):
    reading = told(
        {"region": "MO", "spot": "stored-things"},
        leg_count="eight",
        leg_build="long-slender",
        leg_pattern="plain",
        front_mark="violin",
        abdomen_pattern="plain",
        eye_layout="three-pairs",
        web_shape="none",
    )
    assert first(reading) == "recluses"


def test_a_fiddle_alone_neither_names_nor_clears_a_recluse(told):
    reading = told(leg_count="eight", front_mark="violin")
    assert "recluses" in named(reading)
    assert reading.verdict.claim in (Claim.UNKNOWN, Claim.ONE_OF)


MALE_SOUTHERN_HOUSE = {
    "leg_count": "eight",
    "leg_build": "long-slender",
    "leg_pattern": "plain",
    "body_colour": "mid-or-pale-brown",
    "abdomen_pattern": "plain",
    "gait": "runs-fast",
    "web_shape": "none",
}


def test_a_male_southern_house_spider_is_told_from_a_recluse_by_its_eyes(told):
    reading = told({"region": "FL", "spot": "room", "month": 6}, **MALE_SOUTHERN_HOUSE, eye_layout="small-mound")
    assert (first(reading), first_taxon(reading)) == ("Filistatidae", "crevice-male")


def test_until_its_eyes_are_seen_a_recluse_is_not_ruled_out(told):
    reading = told({"region": "FL", "spot": "room", "month": 6}, **MALE_SOUTHERN_HOUSE)
    assert "recluses" in named(reading)
    assert Action.MOVE not in reading.verdict.actions


def test_three_pairs_of_eyes_tell_a_recluse_from_a_male_southern_house_spider(told):
    reading = told({"region": "TX", "spot": "room", "month": 6}, **MALE_SOUTHERN_HOUSE, eye_layout="three-pairs")
    assert first(reading) == "recluses"


@pytest.mark.parametrize("month", [9, 10])
def test_a_large_furry_walker_in_autumn_is_a_male_tarantula(told, month):
    reading = told(
        {"region": "TX", "spot": "road-or-open", "month": month},
        leg_count="eight",
        leg_build="thick-hairy",
        body_surface="furry-bristly",
        body_colour="dark-brown black",
        gait="slow-careful",
        web_shape="none",
    )
    assert (first(reading), first_taxon(reading)) == ("Theraphosidae", "tarantula-male")


GUARDING = {
    "leg_count": "eight",
    "body_colour": "green",
    "leg_surface": "stiff-spines",
    "carries": "guards-sac-on-plant",
    "gait": "still",
}


def test_a_green_spider_on_a_flower_that_guards_its_young_is_a_lynx_spider(told):
    reading = told({"region": "TX", "spot": "plants-or-flowers", "month": 10}, **GUARDING)
    assert (first(reading), first_taxon(reading)) == ("Oxyopidae", "lynx-guarding")


@pytest.mark.parametrize("evidence", list(Evidence))
def test_a_spider_that_guards_its_young_is_never_to_be_moved(told, evidence):
    settings = {"region": "TX", "spot": "plants-or-flowers", "month": 10}
    assert Action.MOVE not in told(settings, evidence, **GUARDING, leg_pattern="banded").verdict.actions


@pytest.mark.parametrize("settings", [{}, {"thing": "animal"}], ids=["no word of what it is", "called an animal"])
def test_a_hollow_skin_with_its_lid_open_is_a_shed_skin(shipped, told, settings):
    reading = told(settings, skin_sign="hollow-lid-open", leg_count="eight", body_parts="two-with-waist")
    chances = {taxon: shipped.mass(reading.standing.posterior, taxon) for taxon in shipped.keyset.taxa}
    ordered = sorted(chances, key=lambda taxon: -chances[taxon])
    assert ordered[0] == "shed-skin-spider", [(taxon, round(chances[taxon], 3)) for taxon in ordered[:6]]


@pytest.mark.parametrize("evidence", [Evidence.WORDS, Evidence.PHOTO, Evidence.VIEWS, Evidence.SPECIMEN])
def test_a_shiny_dark_globe_in_a_tangle_without_an_hourglass_is_still_named_a_widow(told, evidence):
    reading = told(
        {"spot": "garage-shed"},
        evidence,
        leg_count="eight",
        body_colour="black dark-brown",
        body_surface="bare-shiny",
        abdomen_shape="globe",
        web_shape="tangle",
        underside_mark="none",
    )
    assert "widows" in named(reading)
    assert Action.MOVE not in reading.verdict.actions


def test_widows_and_recluses_are_let_go_once_a_wheel_weaver_is_plainly_seen(told):
    """The other side: a safety line that never ends would not be read."""
    reading = told(
        {"region": "PA", "spot": "web-between-plants", "month": 9},
        Evidence.VIEWS,
        thing="animal",
        leg_count="eight",
        skin_sign="solid-body",
        web_shape="orb",
        web_hold="middle-of-wheel",
        abdomen_shape="oval",
        abdomen_pattern="bold-bright",
        leg_posture="in-pairs-x",
        web_silk="sticky-spiral",
    )
    assert named(reading) & {"widows", "recluses"} == set()


@pytest.mark.parametrize(
    ("said", "elsewhere"),
    [
        ("banana spider", "South America"),
        ("mouse spider", "Australia"),
        ("button spider", "southern Africa"),
        ("funnel-web spider", "Australia"),
    ],
)
def test_a_name_that_belongs_to_a_spider_of_another_country_is_set_straight(shipped, said, elsewhere):
    misnames = [m for taxon in shipped.keyset.taxa.values() for m in taxon.misnames if said in m.said.lower()]
    assert any(elsewhere.lower() in str(m.fact).lower() and m.basis for m in misnames)


@pytest.mark.parametrize("said", ["banana spider", "mouse spider", "huntsman", "daddy longlegs", "brown recluse"])
def test_a_name_that_stands_for_several_animals_leads_to_a_result(shipped, said):
    taxa = shipped.keyset.taxa.values()
    told_of = [(t, *t.popular_names, *t.common_names.get("en", ()), *(m.said for m in t.misnames)) for t in taxa]
    assert [t.id for t, *names in told_of if any(said in name.lower() for name in names)] != []
