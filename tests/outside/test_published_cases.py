"""Published descriptions, mapped before the key existed, weighed by the engine.

`arachnid_cases.yaml` and `insect_cases.yaml` name the source of each description. They are frozen: where a case
comes out wrong, a description or a weight is mended on its own merits, never the case.
"""

from __future__ import annotations

import pytest

from keyapp.engine import Action, Claim
from keyapp.model import Evidence
from tests.outside.cases import FAMILY_OF_DANGER, place_of, published_cases, ranking, weighed

ARACHNIDS = published_cases("arachnid_cases.yaml", later="later_reports.yaml")
AS_FROZEN = published_cases("arachnid_cases.yaml")
INSECTS = published_cases("insect_cases.yaml")
SPIDER_AMONG_INSECTS = "ant-mimic-spider-kitchen"
"""Published beside the insects as a double of ants; it is a spider."""
OUTSIDE = [case for case in INSECTS if case.id != SPIDER_AMONG_INSECTS]
SHOWS_AN_INSECT = {"wings": "wings", "body-parts": "three-parts", "leg-count": "six"}
"""Reports that no arachnid answers to."""
GATED = [case for case in ARACHNIDS if case.gated]


def by_id(case):
    return case.id


def places(tables, cases):
    """Case -> place of the right family in the standing, and the standing in words."""
    readings = {case.id: (case, weighed(tables, case)) for case in cases}
    return {name: (place_of(case, reading), ranking(reading)) for name, (case, reading) in readings.items()}


def beyond(places, last):
    """The cases whose family stands after place `last`, as lines to read."""
    return [f"{name}: place {place} in {row}" for name, (place, row) in places.items() if place > last]


def test_the_files_hold_what_they_held_when_they_were_frozen():
    assert (len(ARACHNIDS), len(INSECTS)) == (46, 44)


def test_the_key_has_a_result_for_every_published_arachnid(shipped):
    families = {taxon.family for taxon in shipped.keyset.taxa.values() if taxon.family}
    assert [case.id for case in ARACHNIDS if not case.wanted & families] == []


@pytest.mark.parametrize(
    ("cases", "last", "share"),
    # Without what characters that came later add, less is known of each animal than its description says.
    [(ARACHNIDS, 1, 0.90), (ARACHNIDS, 3, 0.97), (AS_FROZEN, 1, 0.80), (AS_FROZEN, 3, 0.93)],
    ids=["first", "first three", "first, as frozen", "first three, as frozen"],
)
def test_the_right_family_comes_first(shipped, cases, last, share):
    found = places(shipped, cases)
    misses = beyond(found, last)
    assert len(found) - len(misses) >= share * len(found), "\n" + "\n".join(misses)


@pytest.mark.parametrize("evidence", [Evidence.WORDS, Evidence.VIEWS])
@pytest.mark.parametrize("case", GATED, ids=by_id)
def test_a_dangerous_animal_is_named(shipped, case, evidence):
    reading = weighed(shipped, case, evidence)
    families = {FAMILY_OF_DANGER[danger.group] for danger in reading.not_ruled_out}
    assert families & case.wanted, ranking(reading)


@pytest.mark.parametrize("evidence", [Evidence.WORDS, Evidence.VIEWS])
@pytest.mark.parametrize("case", OUTSIDE, ids=by_id)
def test_what_is_not_in_the_key_gets_no_confident_name(shipped, case, evidence):
    reading = weighed(shipped, case, evidence)
    assert reading.verdict.claim in (Claim.UNKNOWN, Claim.ONE_OF), ranking(reading)


@pytest.mark.parametrize("evidence", [Evidence.WORDS, Evidence.VIEWS])
@pytest.mark.parametrize("case", OUTSIDE, ids=by_id)
def test_what_is_not_in_the_key_is_never_to_be_moved(shipped, case, evidence):
    reading = weighed(shipped, case, evidence)
    assert Action.MOVE not in reading.verdict.actions, ranking(reading)


def shows_an_insect(case):
    """Whether something was reported for sure that only insects have."""
    return any(case.told["reports"].get(name) == state for name, state in SHOWS_AN_INSECT.items())


@pytest.mark.parametrize("case", [case for case in OUTSIDE if shows_an_insect(case)], ids=by_id)
def test_an_insect_ends_as_an_insect_that_is_not_in_this_key(shipped, case):
    reading = weighed(shipped, case)
    insects = {row.group for row in shipped.rows[:-1] if shipped.keyset.taxa[row.taxon].class_ == "Insecta"}
    first, _ = reading.standing.groups[0]
    assert first.level == "outside", ranking(reading)
    assert first in insects, ranking(reading)


@pytest.mark.parametrize("evidence", [Evidence.WORDS, Evidence.VIEWS])
@pytest.mark.parametrize("case", OUTSIDE, ids=by_id)
def test_no_insect_is_taken_for_one_arachnid(shipped, case, evidence):
    """However little was reported, no family of arachnids is left alone as likely."""
    reading = weighed(shipped, case, evidence)
    families = [group for group, chance in reading.standing.groups if group.level != "outside" and chance >= 0.9]
    assert families == [], ranking(reading)
