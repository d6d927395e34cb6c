"""What the descriptions say of one kind; where terms stand in a text."""

from __future__ import annotations

import re

import pytest

from keyapp.browse import (
    Often,
    in_season,
    kind_of,
    kinds,
    look_alikes,
    makers,
    often_where,
    signs,
    sorts,
    spans,
    telling,
    usual_spots,
)
from keyapp.browse.facts import how_often
from keyapp.browse.glossary import EVERYDAY
from keyapp.engine import build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.keyfile.shapes.common import OCCURRENCE_WORDS
from keyapp.model import Term, Text

TABLES = build_tables(require_keyset(keys_folder()))
GLOSSARY = TABLES.keyset.glossary


def kind(name):
    return kind_of(TABLES, name)


def test_the_words_of_the_key_come_back_as_themselves():
    assert {word: str(how_often(weight)) for word, weight in OCCURRENCE_WORDS.items()} == {
        w: w for w in OCCURRENCE_WORDS
    }


def test_how_common_it_is_follows_state_region_and_maker():
    assert often_where(TABLES, kind("widow-black-female"), "AK") is Often.CARRIED
    assert often_where(TABLES, kind("widow-black-female"), "southeast") is Often.COMMON
    assert often_where(TABLES, kind("sac-brown-widow"), "ME") is often_where(TABLES, kind("widow-brown-female"), "ME")


def test_the_season_of_a_kind_is_that_of_any_of_its_stages():
    assert in_season(TABLES, kind("green-lynx")) == tuple(range(5, 13))
    assert in_season(TABLES, kind("hard-tick")) == tuple(range(1, 13))


def test_look_alikes_go_both_ways_and_dangers_come_first():
    for one in kinds(TABLES):
        found = look_alikes(TABLES, one)
        assert one.id not in [other.id for other in found]
        assert all(one.id in [back.id for back in look_alikes(TABLES, other)] for other in found)
        gated = [other.gated for other in found]
        assert gated == sorted(gated, reverse=True)


def test_signs_and_their_makers_name_each_other():
    assert "web-tangle" in [one.id for one in signs(TABLES, kind("widow-black-female"))]
    assert [one.id for one in makers(TABLES, kind("web-tangle"))][:2] == ["widow-black-female", "widow-brown-female"]
    for one in kinds(TABLES):
        assert all(one.id in [maker.id for maker in makers(TABLES, sign)] for sign in signs(TABLES, one))
    assert makers(TABLES, kind("wolf-spider")) == ()


def test_marks_are_what_it_mostly_shows_and_few_others_do():
    marks = telling(TABLES, kind("harvestman"))
    shown = {mark.character: mark.state for mark in marks[:4]}
    assert shown["harvestman-back"] == "plain-or-stripe"
    assert shown["body-parts"] == "one-oval"
    assert all(mark.chance >= 0.5 for mark in marks)
    told = [mark.chance - mark.others for mark in marks]
    assert told == sorted(told, reverse=True)


def test_the_advice_of_a_dangerous_kind_never_tells_how_to_carry_it_off():
    """It is the only advice shown where nothing is identified."""
    gated = [TABLES.keyset.taxa[taxon] for one in kinds(TABLES) if one.gated for taxon in one.taxa]
    texts = [advice.says.say() for taxon in gated for advice in taxon.advice]
    assert texts
    assert [text for text in texts if re.search(r"\b(?:cup|card|bowl|set it down)\b", text)] == []


def test_spots_are_the_usual_ones():
    assert usual_spots(TABLES, kind("widow-black-female"))[0] == "garage-shed"
    assert len(usual_spots(TABLES, kind("widow-black-female"))) <= 6


def test_animals_come_before_signs_among_the_sorts():
    found = sorts(TABLES)
    assert found.index("Araneae") < found.index("web")
    assert len(set(found)) == len(found)


@pytest.mark.parametrize(
    ("text", "terms"),
    [
        ("She guards her egg sacs near the web.", ["egg sac"]),
        ("A red HOURGLASS on the back part.", ["hourglass", "abdomen"]),
        ("An egg sac, and another egg sac.", ["egg sac"]),
        ("A sheet web runs into a tube.", ["funnel web"]),
        ("It stings, in this order, in every state.", []),
        ("Cobwebby things.", []),
        ("", []),
    ],
)
def test_terms_are_found_where_they_stand_first(text, terms):
    assert [span.term for span in spans(text, GLOSSARY)] == terms


def test_a_span_is_the_words_as_they_stand():
    text = "Her egg sacs are spiky."
    (span,) = spans(text, GLOSSARY)
    assert text[span.start : span.end] == "egg sacs"


def test_the_longest_term_wins_and_words_with_signs_in_them_are_safe():
    words = {t: Term(t, (), Text.of("It.")) for t in ("web", "orb web", "a+b")}
    assert [span.term for span in spans("An orb web or a web: a+b", words)] == ["orb web", "web", "a+b"]
    assert spans("anything", {}) == ()


def test_everyday_terms_are_terms_of_the_glossary():
    assert set(GLOSSARY) >= EVERYDAY
