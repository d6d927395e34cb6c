"""Where things lie: inside the page, never on each other, whatever the length of the texts."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from keyapp.engine import read_case
from keyapp.errors import UserError
from keyapp.model import Case, Settings
from keyapp.sheets import Paper
from keyapp.sheets.blocks import Panel, Para
from keyapp.sheets.find_sheet import MOST_PAGES, sheet_pages
from keyapp.sheets.flow import Section, flowed
from keyapp.sheets.items import Box, Drawing, Role
from keyapp.sheets.items import Words as Text
from keyapp.sheets.letters import Span, broken, printable, width_of
from keyapp.sheets.paper import frame_of
from keyapp.sheets.style import type_at
from keyapp.wording import Words
from keyapp.wording.sheet import sheet_text
from tests.keys.walks import Observer, seen_states
from tests.sheets.cases import DAY, EDITION, NAMES, read_of, squeezed

LEAST_MARGIN = 12.0
BODY = type_at(10.0).body


def sheet(shipped, name, paper=Paper.LETTER, language="en", **changes):
    words = Words(shipped.keyset, language)
    text = sheet_text(words, shipped, read_of(shipped, name), DAY, EDITION)
    return sheet_pages(replace(text, **changes), words, paper)


def said(pages) -> str:
    """All that is read, without the feet, which may stand between two parts of a paragraph."""
    texts = [item for page in pages for item in page if isinstance(item, Text) and item.role is not Role.FOOT]
    return squeezed(" ".join(item.text for item in texts))


def check_page(page, paper) -> None:
    """Everything inside the margins; no text on another text or on a figure."""
    width, height = paper.size
    solid = []
    for item in page:
        left, top, right, bottom = item.bounds
        assert left >= LEAST_MARGIN and top >= LEAST_MARGIN
        assert right <= width - LEAST_MARGIN + 0.01 and bottom <= height - LEAST_MARGIN + 0.01
        if isinstance(item, Text):
            solid += [line.bounds for line in item.lines]
        elif isinstance(item, Drawing):
            solid.append(item.bounds)
    solid.sort(key=lambda one: one[1])
    for at, one in enumerate(solid):
        for other in solid[at + 1 :]:
            if other[1] >= one[3] - 0.05:
                break
            assert one[2] <= other[0] + 0.05 or other[2] <= one[0] + 0.05, (one, other)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("language", ["en", "es"])
def test_nothing_is_cut_off_and_nothing_overlaps(shipped, name, paper, language):
    pages = sheet(shipped, name, paper, language)
    assert len(pages) <= MOST_PAGES
    for page in pages:
        check_page(page, paper)


def test_texts_in_a_panel_stay_in_it(shipped):
    for page in sheet(shipped, "scorpion-hurt"):
        for box in [item for item in page if isinstance(item, Box)]:
            left, top, right, bottom = box.bounds
            inside = [line.bounds for item in page if isinstance(item, Text) for line in item.lines]
            touching = [one for one in inside if one[1] < bottom and one[3] > top]
            assert touching
            assert all(left < one[0] and one[2] < right and top < one[1] and one[3] < bottom for one in touching)


def test_long_texts_flow_on_and_are_shortened_without_losing_a_caution(shipped):
    words = Words(shipped.keyset)
    text = sheet_text(words, shipped, read_of(shipped, "widow"), DAY, EDITION)
    more = "And mind this as well."
    long = [replace(block, says=tuple(f"{one} {more}" for one in block.says)) for block in text.cautions]
    answers = tuple(f"Answer number {number} with a good many words in it" for number in range(60))
    pages = sheet(shipped, "widow", cautions=tuple(long), answers=answers)
    assert len(pages) == MOST_PAGES
    for page in pages:
        check_page(page, Paper.LETTER)
    for block in long:
        for one in (*block.says, *block.dates, block.about):
            assert squeezed(one) in said(pages)
    for number in text.numbers:
        assert number in said(pages)
    assert "Furtheranswers,notprintedhere:" in said(pages)


def test_a_third_of_longer_words_still_fits(shipped):
    """About what a translation from English into Spanish adds."""
    for name in ("widow", "scorpion-hurt", "unfinished"):
        words = Words(shipped.keyset)
        text = sheet_text(words, shipped, read_of(shipped, name), DAY, EDITION)

        def longer(one: str) -> str:
            return f"{one} {one[: len(one) // 4]}"

        cautions = tuple(replace(block, says=tuple(map(longer, block.says))) for block in text.cautions)
        dangers = tuple(replace(one, settle=longer(one.settle), look=longer(one.look)) for one in text.dangers)
        pages = sheet(shipped, name, cautions=cautions, dangers=dangers, photo=tuple(map(longer, text.photo)))
        for page in pages:
            check_page(page, Paper.LETTER)


def test_what_cannot_fit_is_refused_not_cut(shipped):
    text = sheet_text(Words(shipped.keyset), shipped, read_of(shipped, "widow"), DAY, EDITION)
    with pytest.raises(UserError, match="does not fit two pages"):
        sheet(shipped, "widow", cautions=text.cautions * 4)


def test_a_very_long_word_of_the_caller_is_broken_and_strange_letters_are_replaced(shipped):
    reading = read_of(shipped, "jumping")
    told = "x" * 400 + " 蜘蛛 🕷"
    case = replace(reading.case, settings=replace(reading.case.settings, told=told))
    words = Words(shipped.keyset)
    text = sheet_text(words, shipped, read_case(shipped, case), DAY, EDITION)
    pages = sheet_pages(text, words, Paper.A4)
    for page in pages:
        check_page(page, Paper.A4)
    assert "x" * 400 + "???" in said(pages)


def test_a_review_date_that_is_past_is_told(shipped):
    words = Words(shipped.keyset)
    late = max(c.review_by for t in shipped.keyset.taxa.values() for c in t.cautions)
    day = late.replace(year=late.year + 1)
    text = sheet_text(words, shipped, read_of(shipped, "recluse"), day, EDITION)
    assert text.cautions
    assert all("Past its review date" in line for block in text.cautions for line in block.dates)
    today = sheet_text(words, shipped, read_of(shipped, "recluse"), DAY, EDITION)
    assert not any("Past its review date" in line for block in today.cautions for line in block.dates)


def test_every_danger_is_named_on_the_sheet_of_who_saw_it_right(shipped):
    """Each medically important result, walked through by someone who makes no mistake."""
    words = Words(shipped.keyset)
    chance = random.Random(5)
    gated = [taxon for taxon in shipped.keyset.taxa.values() if taxon.danger.is_gated]
    assert gated
    for taxon in gated:
        observer = Observer(shipped, taxon, seen_states(taxon, chance), Settings(), chance)
        text = sheet_text(words, shipped, read_case(shipped, observer.right_answers()), DAY, EDITION)
        pages = sheet_pages(text, words, Paper.LETTER)
        assert squeezed(words.danger(taxon.danger_group)) in said(pages), taxon.id
        assert squeezed("Keep away and ask. Do not handle it.") in said(pages), taxon.id


@given(st.lists(st.text(st.characters(categories=["L", "N", "P", "Zs"]), max_size=60), min_size=1, max_size=5))
@settings(max_examples=60, deadline=None)
def test_lines_keep_every_letter_and_their_width(texts):
    spans = tuple(Span(text, BODY) for text in texts)
    lines = broken(spans, 40.0)
    for line in lines:
        assert line[-1].at + width_of(line[-1].text, BODY) <= 40.0 + 1e-6
    kept = "".join(piece.text for line in lines for piece in line)
    assert squeezed(kept) == squeezed("".join(printable(text) for text in texts))


@given(st.lists(st.integers(1, 400), min_size=1, max_size=40), st.sampled_from([1, 2]))
@settings(max_examples=40, deadline=None)
def test_any_paragraphs_flow_over_pages_in_order_without_overlap(lengths, columns):
    frame = frame_of(Paper.A4)
    blocks = tuple(Para((Span(f"n{at} " + "word " * length, BODY),), parts=True) for at, length in enumerate(lengths))
    head = Para((Span("Head", BODY),), Role.HEAD)
    pages = flowed([Section(head, blocks, columns=columns)], frame)
    if columns == 2 or max(lengths) < 300:
        for page in pages:
            check_page(page, Paper.A4)
    texts = " ".join(item.text for page in pages for item in page if isinstance(item, Text)).split()
    assert [word for word in texts if word.startswith("n")] == [f"n{at}" for at in range(len(lengths))]


def test_a_panel_keeps_its_paragraphs_together():
    frame = frame_of(Paper.A4)
    filler = Section(None, tuple(Para((Span("word " * 18, BODY),)) for _ in range(50)))
    panel = Panel(tuple(Para((Span(f"inside {n}", BODY),)) for n in range(6)), signal=True)
    pages = flowed([filler, Section(None, (panel,))], frame)
    holding = [at for at, page in enumerate(pages) for item in page if isinstance(item, Text) and "inside" in item.text]
    assert len(holding) == 6
    assert len(set(holding)) == 1


def test_an_empty_case_is_a_sheet_too(shipped):
    words = Words(shipped.keyset)
    text = sheet_text(words, shipped, read_case(shipped, Case()), DAY, EDITION)
    assert text.title == "Not identified. Treat as unknown: do not handle."
    assert text.found == ()
    assert len(text.dangers) == len(shipped.keyset.danger_groups)
