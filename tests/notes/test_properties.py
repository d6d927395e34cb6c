"""What holds for any text."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from keyapp.model import check_answer, check_setting
from keyapp.model.case import Measurement, Report
from keyapp.notes import Kind, read_note

WORDS = (
    "no not without a the it legs web body spider brown long thin round inch half quarter with of and or but maybe . , "
    "? ! ; 8 6 mm 1/2 \" hairy spots on its back like black widow tick bit in May Texas garage never didn't see any "
    "size egg sac I think is two pairs first ball – ’ ½ İ ß ǅ"
).split()
TEXTS = st.one_of(st.text(max_size=200), st.lists(st.sampled_from(WORDS), max_size=40).map(" ".join))


@given(TEXTS)
@settings(max_examples=400, deadline=None)
def test_any_text_is_read_and_every_find_could_be_taken(shipped, text):
    keyset = shipped.keyset
    note = read_note(keyset, text)
    assert note.text == text
    assert [find.id for find in note.found] == list(range(1, len(note.found) + 1))
    for one in (*note.found, *note.better):
        assert 0 <= one.span.start < one.span.end <= len(text)
        assert one.words == text[one.span.start : one.span.end]
    for find in note.found:
        assert all(find.id in note.item(other).against for other in find.against)
        match find.kind:
            case Kind.STATES:
                check_answer(keyset, Report(find.characters[0], frozenset(find.states), sureness=find.sureness))
                assert len(find.states) < len(keyset.characters[find.characters[0]].states)
            case Kind.SIZE:
                for character in find.characters:
                    check_answer(keyset, Measurement(character, find.mm))
            case Kind.THING:
                check_setting(keyset, "thing", find.states[0])
            case Kind.MONTH:
                check_setting(keyset, "month", int(find.value))
            case Kind.SPOT | Kind.REGION:
                check_setting(keyset, str(find.kind), find.value)
            case Kind.TOLD | Kind.INJURY:
                assert find.value


@given(TEXTS)
@settings(max_examples=100, deadline=None)
def test_the_same_text_gives_the_same_note(shipped, text):
    assert read_note(shipped.keyset, text) == read_note(shipped.keyset, text)


@given(st.lists(st.sampled_from(["shiny", "banded legs", "wings", "spots on its back", "furry"]), max_size=4), TEXTS)
@settings(max_examples=200, deadline=None)
def test_a_clause_that_denies_offers_nothing_of_what_it_denies(shipped, denied, rest):
    text = f"{rest}. It has no {' or '.join(denied)}." if denied else rest
    start = len(rest) + 2
    for find in read_note(shipped.keyset, text).found:
        if find.kind is Kind.STATES and find.span.start >= start:
            assert find.denied


@given(st.lists(st.sampled_from(["shiny spider", "no web", "long feelers", "in June", "half an inch"]), max_size=5))
@settings(max_examples=50, deadline=None)
def test_what_was_found_stays_while_more_is_typed(shipped, said):
    text = ". ".join(said)
    before = {find.meaning for find in read_note(shipped.keyset, text).found}
    after = {find.meaning for find in read_note(shipped.keyset, f"{text}. It has wings.").found}
    assert before <= after
