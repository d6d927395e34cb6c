"""The find sheet, read back by another library: all that must stand on it, and what must not."""

from __future__ import annotations

import io
import re

import pypdf
import pypdfium2
import pytest

from keyapp.engine import Action, Claim
from keyapp.sheets import Paper
from keyapp.wording import Words
from keyapp.wording.sheet import is_named
from tests.sheets.cases import DAY, EDITION, NAMES, pages_of, plain, printed, read_of, squeezed, text_of

COMFORT = re.compile(
    r"\b(safe|safely|harmless\w*|not (?:dangerous|venomous|poisonous)|no (?:danger|risk)|inofensiv\w*)\b", re.I
)
MOVING = ("cup and a card", "slide a stiff card", "Leave it alone", "Leaving it is fine")


@pytest.fixture(params=NAMES)
def name(request):
    return request.param


def has(text: str, said: str) -> bool:
    return squeezed(said) in squeezed(text)


def test_the_text_can_be_selected_and_read_by_a_second_library(shipped, name):
    document = pypdfium2.PdfDocument(printed(shipped, name))
    other = " ".join(page.get_textpage().get_text_bounded() for page in document)
    for said in ("911", "1-800-222-1222", "What to do", "Who to turn to"):
        assert has(other, said)


def test_a_sheet_has_one_or_two_pages_of_its_size_each_counted(shipped, name):
    for paper in Paper:
        reader = pypdf.PdfReader(io.BytesIO(printed(shipped, name, paper)))
        count = len(reader.pages)
        assert 1 <= count <= 2
        width, height = (side / 25.4 * 72 for side in paper.size)
        for number, page in enumerate(reader.pages, start=1):
            assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx((width, height), abs=0.5)
            assert f"{number} of {count}" in plain(page.extract_text())


def test_the_claim_is_that_of_the_verdict_or_not_identified(shipped, name):
    reading, words = read_of(shipped, name), Words(shipped.keyset)
    heading = words.heading(reading) if is_named(reading) else "Not identified. Treat as unknown: do not handle."
    first = pages_of(printed(shipped, name))[0]
    assert has(first, heading)
    for claim in Claim:
        if claim is not Claim.UNKNOWN and not (is_named(reading) and claim is reading.verdict.claim):
            assert words.fixed(f"claim.{claim}", name="").strip() not in first


@pytest.mark.parametrize("case", ["unfinished", "nothing", "unknown"])
def test_unknown_and_unfinished_print_as_not_identified(shipped, case):
    reading = read_of(shipped, case)
    assert not is_named(reading) or case == "unknown"
    text = text_of(printed(shipped, case))
    if not is_named(reading):
        assert has(text, "Not identified. Treat as unknown: do not handle.")
    assert has(text, "Keep away and ask. Do not handle it.")


def test_help_for_a_person_comes_before_anything_about_the_animal(shipped, name):
    first = pages_of(printed(shipped, name))[0]
    assert first.index("911") < first.index("1-800-222-1222") < first.index("What it could be")
    assert first.index("1-800-222-1222") < first.index("What to do")


def test_every_danger_not_ruled_out_is_named_with_what_would_settle_it(shipped, name):
    reading, words = read_of(shipped, name), Words(shipped.keyset)
    text = text_of(printed(shipped, name))
    for line in (*words.settle_lines(reading), *(words.danger(d.group) for d in reading.not_ruled_out)):
        assert has(text, line)
    for best in filter(None, reading.settles.values()):
        assert has(text, shipped.keyset.characters[best.character].look.say())
    if reading.not_ruled_out:
        assert has(text, words.safety_line(reading))


def test_every_caution_of_what_is_named_is_there_with_its_dates_and_sources(shipped, name):
    reading, words = read_of(shipped, name), Words(shipped.keyset)
    text = text_of(printed(shipped, name))
    blocks = words.cautions(reading)
    if not is_named(reading):
        open_taxa = {words.taxon(danger.taxa[0]) for danger in reading.not_ruled_out}
        blocks = [(about, cautions) for about, cautions in blocks if about in open_taxa]
        assert len(blocks) == len(open_taxa)
    for about, cautions in blocks:
        assert has(text, about)
        for caution in cautions:
            assert has(text, caution.says.say())
            assert has(text, f"Checked {caution.checked.isoformat()}, review by {caution.review_by.isoformat()}.")
            for one in caution.basis:
                source = shipped.keyset.sources.get(one)
                assert has(text, source.publisher if source else one)


def test_nothing_on_a_sheet_reassures(shipped, name):
    for language in ("en", "es"):
        assert COMFORT.findall(text_of(printed(shipped, name, language=language))) == []


def test_what_to_do_is_what_the_gate_allows(shipped, name):
    reading = read_of(shipped, name)
    text = text_of(printed(shipped, name))
    careful = reading.not_ruled_out or not is_named(reading) or Action.KEEP_AWAY in reading.verdict.actions
    assert has(text, "Keep away and ask. Do not handle it.") == bool(careful)
    if careful:
        assert not any(has(text, said) for said in MOVING)


def test_moving_it_is_offered_where_nothing_is_open(shipped):
    reading = read_of(shipped, "centipede")
    assert reading.verdict.actions == (Action.LEAVE, Action.MOVE)
    text = text_of(printed(shipped, "centipede"))
    assert has(text, "move it with a cup and a card, not with bare hands")
    assert text.index("Check again before you rely on this") < text.index("Leave it alone")


def test_a_hurt_person_is_put_first_with_every_sign_for_the_emergency_number(shipped):
    first = pages_of(printed(shipped, "scorpion-hurt"))[0]
    assert has(first, "Someone is hurt. See to that first.")
    for sign in shipped.keyset.emergency.signs:
        assert has(first, sign.says.say())


def test_answers_that_do_not_agree_are_said(shipped):
    reading, words = read_of(shipped, "contradiction"), Words(shipped.keyset)
    lines = words.contradiction_lines(reading)
    text = text_of(printed(shipped, "contradiction"))
    assert lines
    assert all(has(text, line) for line in lines)


def test_what_was_told_stands_against_what_was_seen(shipped):
    text = text_of(printed(shipped, "jumping"))
    assert has(text, "You were told: a black widow.")
    assert has(text, "What you saw points to:")
    assert has(text, "A whole animal, alive or dead, with its legs and body.")


def test_the_office_of_the_place_is_there_with_its_number(shipped):
    text = text_of(printed(shipped, "recluse"))
    for number in ("911", "1-800-222-1222", "555-0142", "555-0168", "555-0175"):
        assert number in text
    assert "555-0119" not in text  # For the office to call, not for the person.


def test_date_and_edition_are_on_every_page(shipped, name):
    for page in pages_of(printed(shipped, name)):
        assert f"Date: {DAY.isoformat()} · Edition: {EDITION}" in page


def test_the_same_case_gives_the_same_file(shipped):
    first = printed(shipped, "nothing")
    shipped.memo.pop(("sheet in sheet tests", "nothing", Paper.LETTER, "en"))
    assert printed(shipped, "nothing") == first


def test_in_spanish_the_sheets_own_words_are_spanish(shipped):
    text = text_of(printed(shipped, "recluse", language="es"))
    assert has(text, "Qué podría ser")
    assert has(text, "arañas reclusas")
    assert not has(text, "What it could be")
