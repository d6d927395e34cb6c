"""The sentences of the pages on which kinds and signs are looked up."""

from __future__ import annotations

import datetime
import re

import pytest

from keyapp.browse import Often, kinds
from keyapp.checker.rules.wording import FORBIDDEN
from keyapp.engine import build_tables
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.model import Caution, Danger, Form, Text
from keyapp.wording import (
    Name,
    NameRank,
    Words,
    basis_levels,
    called_line,
    dated_line,
    kind_title,
    month_spans,
    names_like,
    season_line,
    shown_lines,
    sort_name,
    source_lines,
)

TABLES = build_tables(require_keyset(keys_folder()))
WORDS = Words(TABLES.keyset)


@pytest.mark.parametrize(
    ("months", "said"),
    [
        ([4, 5, 6], "April to June"),
        ([11, 12, 1, 2], "November to February"),
        ([3], "March"),
        ([3, 5, 6, 9], "March, May to June, September"),
        (range(1, 13), "Met all year."),
    ],
)
def test_months_are_told_as_spans(months, said):
    assert month_spans(WORDS, months) == said


def test_a_season_never_says_that_it_cannot_be_met():
    assert season_line(WORDS, [4, 5]) == "In season: April to May. It may turn up in other months."
    assert season_line(WORDS, range(1, 13)) == "Met all year."


@pytest.mark.parametrize(
    ("chances", "lines"),
    [
        ([("orb", 0.95)], ("A wheel",)),
        ([("orb", 0.7), ("tangle", 0.25)], ("A wheel", "Often also: A messy tangle")),
        ([("orb", 0.5), ("tangle", 0.4), ("none", 0.1)], ("Any of: A wheel, A messy tangle", "At times: No web seen")),
        ([("orb", 0.5), ("tangle", 0.1)], ("Mostly: A wheel", "At times: A messy tangle")),
        ([], ()),
    ],
)
def test_states_are_told_by_how_often_without_numbers(chances, lines):
    assert shown_lines(WORDS, "web-shape", chances) == lines


def test_a_name_is_told_as_right_loose_or_wrong():
    def line(rank):
        return called_line(WORDS, Name(rank, "murder spider", "murder spider"), "Wolf spider")

    assert line(NameRank.RIGHT) == "Also called “murder spider”"
    assert line(NameRank.LOOSE) == "Loosely called “murder spider”"
    assert line(NameRank.WRONG).startswith("Wrongly called “murder spider”")
    assert line(NameRank.WIDER) == "Belongs to: murder spider"
    assert called_line(WORDS, Name(NameRank.RIGHT, "wolf spider", "wolf spider"), "Wolf spider, with young") == ""
    assert called_line(WORDS, Name(NameRank.RIGHT, "", "wolf"), "Wolf spider") == ""


def test_an_exact_name_goes_before_a_part_and_a_slip_only_where_nothing_agrees():
    names = [Name(NameRank.RIGHT, said, said, taxon=said) for said in ("wolf spider", "thin wolf spider", "wulf")]
    assert [one.name.shown for one in names_like(names, "the wolf spiders")] == ["wolf spider", "thin wolf spider"]
    assert [one.name.shown for one in names_like(names, "wolv spider")] == ["wolf spider", "thin wolf spider"]
    assert names_like(names, "of the") == ()


def test_dates_are_told_and_a_stale_one_says_so():
    def caution(checked, review):
        return Caution(Text.of("x"), ("from memory",), datetime.date(2026, checked, 1), datetime.date(2027, review, 1))

    fresh = dated_line(WORDS, [caution(1, 5), caution(3, 4)], datetime.date(2027, 1, 1))
    assert fresh == "Checked between 2026-01-01 and 2026-03-01. To be looked at again by 2027-04-01."
    assert dated_line(WORDS, [caution(1, 5)], datetime.date(2028, 1, 1)).endswith("Ask for a newer text.")
    assert dated_line(WORDS, [], datetime.date(2027, 1, 1)) == ""


def test_what_a_statement_rests_on_is_told_strongest_first():
    assert basis_levels(WORDS, [("from memory",), ("common practice", "psu-false-widow")]) == (
        "published sources", "common practice", "from memory",
    )  # fmt: skip
    assert basis_levels(WORDS, [("from memory",)]) == ("from memory",)


def test_every_kind_and_sort_has_a_plain_name_and_every_level_its_words():
    for kind in kinds(TABLES):
        assert "," not in kind_title(WORDS, kind.id) or TABLES.keyset.taxa[kind.id].form is not Form.ANIMAL
        if kind.sort:
            assert sort_name(WORDS, kind.sort) != kind.sort
        assert all(TABLES.keyset.sources[s].title for t in kind.taxa for s in TABLES.keyset.taxa[t].basis
                   if s in TABLES.keyset.sources)  # fmt: skip
    for danger in Danger:
        assert WORDS.fixed(f"families.danger.{danger}")
    for often in Often:
        assert WORDS.fixed(f"families.often.{often}", names="x").endswith("x")


def test_sources_are_listed_once():
    taxa = [TABLES.keyset.taxa[taxon] for kind in kinds(TABLES) for taxon in kind.taxa if kind.id == "recluse"]
    lines = source_lines(WORDS, taxa)
    assert lines
    assert len(set(lines)) == len(lines)


def test_no_sentence_of_these_pages_reassures_or_says_to_move_anything():
    mine = {name: text.say() for name, text in TABLES.keyset.wording.items() if name.startswith("families.")}
    assert len(mine) > 100
    for name, text in mine.items():
        assert not re.search(r"\b(?:move|cup|card|catch)\b", text), name
        assert not any(re.search(p, text, re.IGNORECASE) for of, p, _ in FORBIDDEN if of == "en"), name
