"""A feared animal, and the stopping rule, in sentences that never reassure."""

from __future__ import annotations

import re
from dataclasses import fields

import numpy as np
import pytest

from keyapp.checker.reading import reading_grade
from keyapp.checker.rules.wording import FORBIDDEN
from keyapp.engine import (
    Because,
    Question,
    Stop,
    StopReason,
    Strength,
    build_tables,
    feared,
    read_case,
    read_fear,
    stop,
)
from keyapp.folders import keys_folder
from keyapp.keyfile import require_keyset
from keyapp.model import Case, Report, Settings, Sureness
from keyapp.wording import Words, fear_text, helps_line, stop_line, why_line

TABLES = build_tables(require_keyset(keys_folder()))
WORDS = Words(TABLES.keyset)
ANIMALS = ("widows", "recluses", "ticks", "bark-scorpions", "wolf-spider")
DENIES = re.compile(
    r"\bis not (?:a|an|one)\b|\bisn['’]t\b|\bcannot be\b|\bno (?:widow|recluse|tick|scorpion)", re.IGNORECASE
)


def some_answers(seed):
    rng = np.random.default_rng(seed)
    names = list(rng.permutation(list(TABLES.characters)))[: int(rng.integers(0, 9))]
    return tuple(
        Report(
            str(name),
            frozenset({str(rng.choice(TABLES.characters[name].character.state_ids))}),
            sureness=Sureness.SURE if rng.uniform() < 0.8 else Sureness.THINK_SO,
        )
        for name in names
    )


def text_of(animal, *answers):
    reading = read_case(TABLES, Case(Settings(region="MO"), answers))
    return reading, fear_text(WORDS, read_fear(TABLES, reading, feared(TABLES, animal)))


def own_sentences(text):
    """What the program says itself, without the words of answers and questions."""
    found = [text.ask, text.status, text.together, *text.missing, text.check_again]
    for line in (*text.for_it, *text.against_it, *text.little):
        # Behind the first sentence may stand the key's own reason why a character never clears.
        found += [line.speaks, line.clears.split(". ")[0]]
    return [one for one in found if one]


@pytest.mark.parametrize("animal", ANIMALS)
@pytest.mark.parametrize("seed", range(8))
def test_it_never_denies_the_animal_never_reassures_and_says_no_number(seed, animal):
    reading, text = text_of(animal, *some_answers(seed))
    for sentence in own_sentences(text):
        assert not DENIES.search(sentence), sentence
        assert not any(char.isdigit() for char in sentence), sentence
        for language, pattern, _ in FORBIDDEN:
            assert language != "en" or not re.search(pattern, sentence, re.IGNORECASE), sentence
    assert "o not handle" in text.status
    assert {f.name for f in fields(text)} >= {"status", "missing"}
    assert reading.case.answers == some_answers(seed)


@pytest.mark.parametrize("animal", ANIMALS[:-1])
@pytest.mark.parametrize("seed", range(8))
def test_the_status_follows_the_gate(seed, animal):
    reading, text = text_of(animal, *some_answers(seed))
    is_named = animal in {one.group for one in reading.not_ruled_out}
    assert text.status.startswith("Not ruled out:" if is_named else "Your answers speak against")
    assert bool(text.missing) == is_named


def test_each_answer_is_told_once_on_one_side():
    answers = some_answers(3)
    _, text = text_of("widows", *answers)
    lines = [*text.for_it, *text.against_it, *text.little]
    assert sorted(repr(a) for line in lines for a in line.answers) == sorted(repr(a) for a in answers)


def test_what_can_never_clear_is_said_to_be_so_with_the_reason():
    _, text = text_of("widows", Report("body-colour", frozenset({"green"})))
    (line,) = (*text.against_it, *text.little)
    assert line.clears.startswith("This alone cannot rule it out, however sure you are.")
    assert WORDS.keyset.characters["body-colour"].never_clears.say() in line.clears


def test_nothing_said_is_told_as_nothing_said():
    _, text = text_of("widows")
    assert text.together == "Nothing has been said yet that tells about it."
    assert text.best.startswith("Look at this next: ")
    assert "two sure answers" in text.missing[0]


def test_every_sentence_for_every_case_is_there():
    for one in Strength:
        assert WORDS.fixed(f"fear.all.{one}")
        assert WORDS.fixed(f"fear.says.{one}")
    for because in Because:
        aim = because in (Because.FAMILY, Because.DANGER, Because.BOTH)
        reason = StopReason.GO_ON if aim else StopReason.NOTHING_MORE
        question = Question("gait", 0.1, 0.1, 0.01) if aim else None
        line = stop_line(WORDS, Stop(reason, because, question, ("widows",)))
        assert "{" not in line
        assert line.endswith(".")


def test_a_reading_that_goes_on_says_the_question_and_what_it_is_for():
    found = stop(TABLES, read_case(TABLES, Case()))
    question = WORDS.keyset.characters[found.question.character].question.say()
    assert question in stop_line(WORDS, found)
    assert why_line(WORDS, found) in helps_line(WORDS, found)
    assert why_line(WORDS, found).startswith(("It tells more", "It may help"))


def test_dangers_that_stay_named_are_said_where_asking_ends():
    line = stop_line(WORDS, Stop(StopReason.NOTHING_MORE, Because.CANT_TELL, dangers=("widows", "ticks")))
    assert line.endswith("Not ruled out: widow spiders, ticks. Do not handle.")
    assert "bark scorpions" in stop_line(
        WORDS, Stop(StopReason.SPECIALIST, Because.DANGER_LEFT, dangers=("bark-scorpions",))
    )


def test_cant_tell_of_a_direct_question_reads_as_cant_tell():
    everything = Report("gait", frozenset(TABLES.characters["gait"].character.state_ids))
    assert WORDS.says_nothing(everything)
    assert WORDS.answer(everything) == "How does it move? can't tell"
    assert not WORDS.says_nothing(Report("gait", frozenset({"leaps"})))


def test_the_sentences_are_plain():
    for name, text in TABLES.keyset.wording.items():
        if name.startswith(("fear.", "stop.", "helps.")) and len(text.say().split()) >= 5:
            assert reading_grade(re.sub(r"\{[^}]*\}", "name", text.say())) <= 8.0, name
