"""Kinds side by side: what separates them comes first, and the sums are those worked out by hand."""

from __future__ import annotations

import pytest

from keyapp.browse import Standing, compare, kind_of, splitting
from keyapp.engine import build_tables
from keyapp.errors import ProgramError
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from tests.gui.tiny import tiny_keyset

TABLES = build_tables(require_keyset(keys_folder()))
TINY = build_tables(tiny_keyset())


def some(tables, *ids):
    return [kind_of(tables, one) for one in ids]


def by_character(lines):
    return {line.character: line for line in lines}


def test_separation_is_what_the_chances_do_not_share():
    lines = by_character(compare(TINY, some(TINY, "widow", "cobweb")))
    assert lines["skin"].separation == pytest.approx(1.0)
    assert lines["mark"].separation == pytest.approx(1.0)
    assert lines["web-shape"].separation == pytest.approx(0.0)
    assert lines["body-length"].separation == pytest.approx(0.0)


def test_over_three_it_is_the_mean_of_the_pairs():
    lines = by_character(compare(TINY, some(TINY, "widow", "cobweb", "orb")))
    assert lines["web-shape"].separation == pytest.approx(2 / 3)
    assert lines["skin"].separation == pytest.approx(2 / 3)
    assert lines["gait"].separation == pytest.approx(0.0)


def test_a_kind_without_a_say_separates_nothing_and_is_said_to_have_none():
    lines = by_character(compare(TINY, some(TINY, "widow", "cobweb", "insect")))
    cells = {cell.kind.id: cell for cell in lines["skin"].cells}
    assert cells["insect"].standing is Standing.UNTOLD
    assert lines["skin"].separation == pytest.approx(1 / 3)


def test_the_best_comes_first_and_the_order_of_the_kinds_does_not_matter():
    names = ["widow-black-female", "false-widow", "house-cobweb", "cellar-spider"]
    lines = compare(TABLES, some(TABLES, *names))
    scores = [line.separation for line in lines]
    assert scores == sorted(scores, reverse=True)
    assert all(0.0 <= score <= 1.0 + 1e-9 for score in scores)
    again = compare(TABLES, some(TABLES, *reversed(names)))
    assert [line.character for line in again] == [line.character for line in lines]
    assert [line.separation for line in again] == pytest.approx(scores)


def test_a_kind_against_itself_differs_in_nothing():
    kind = kind_of(TABLES, "wolf-spider")
    assert max(line.separation for line in compare(TABLES, [kind, kind])) == pytest.approx(0.0)


def test_stages_count_by_their_share_and_only_listed_states_are_named():
    (line,) = [
        one for one in compare(TABLES, some(TABLES, "widow-black-female", "false-widow"))
        if one.character == "underside-mark"
    ]  # fmt: skip
    widow = line.cells[0]
    chances = [chance for _, chance in widow.states]
    assert chances == sorted(chances, reverse=True)
    listed = {
        state for taxon in widow.kind.taxa
        for state in TABLES.keyset.taxa[taxon].shows.get("underside-mark", {})
    }  # fmt: skip
    assert {state for state, _ in widow.states} <= listed


def test_a_part_that_it_does_not_have_is_not_called_undescribed():
    lines = by_character(compare(TABLES, some(TABLES, "harvestman", "cellar-spider", "web-orb")))
    web = next(cell for cell in lines["body-parts"].cells if cell.kind.id == "web-orb")
    assert web.standing is Standing.INAPPLICABLE


def test_sizes_are_compared_by_their_ranges():
    lines = by_character(compare(TABLES, some(TABLES, "tarantula", "house-cobweb")))
    size = lines["body-length"]
    assert size.separation == pytest.approx(1.0)
    assert size.cells[0].size is not None
    assert size.cells[0].size.least > size.cells[1].size.most


def test_five_are_too_many():
    five = some(TABLES, "wolf-spider", "false-widow", "house-cobweb", "cellar-spider", "harvestman")
    with pytest.raises(ProgramError, match="At most 4"):
        compare(TABLES, five)


def test_the_splitting_question_can_be_answered_by_a_lay_person():
    """A web is told from an animal by what there is; eye details separate too but are hardly seen."""
    split = splitting(TABLES, some(TABLES, "web-orb", "garden-orb"))
    assert split is not None
    assert split.character == "thing"
    fine = splitting(TABLES, some(TABLES, "widow-black-female", "false-widow"))
    assert fine is not None
    assert TABLES.keyset.characters[fine.character].tell > 0.5


def test_nothing_splits_two_that_are_alike():
    kind = kind_of(TABLES, "wolf-spider")
    assert splitting(TABLES, [kind, kind]) is None
