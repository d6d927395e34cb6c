"""The shipped key is whole: the checker finds nothing, no text is empty, every picture is there."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from keyapp.checker import run_check
from keyapp.folders import images_folder, keys_folder
from keyapp.model import Form, Text
from keyapp.wording import Words

MAY_BE_EMPTY = {"never_clears", "hours", "when"}
"""Texts that say something where there is something to say: why a character never clears; when a contact answers."""


@pytest.fixture(scope="module")
def report(shipped):
    """What the checker says on the latest day on which a statement of the key was checked."""
    taxa = shipped.keyset.taxa.values()
    return run_check(keys_folder(), images_folder(), max(c.checked for t in taxa for c in (*t.cautions, *t.advice)))


def test_the_checker_finds_no_problem(report):
    assert (report.problems, report.remark) == ((), ""), report.text()


def empty_texts(item: Any, path: str = "") -> Iterator[str]:
    """Where in a data class (or a collection of them) a text is empty."""
    if isinstance(item, Text):
        if not all(wording.strip() for _, wording in item.entries) or not item:
            yield path
    elif dataclasses.is_dataclass(item):
        for field in dataclasses.fields(item):
            if field.name not in MAY_BE_EMPTY:
                yield from empty_texts(getattr(item, field.name), f"{path}.{field.name}")
    elif isinstance(item, Mapping):
        for name, value in item.items():
            yield from empty_texts(value, f"{path}.{name}")
    elif isinstance(item, tuple | list):
        for number, value in enumerate(item):
            yield from empty_texts(value, f"{path}.{number}")


def test_no_text_is_empty(shipped):
    assert list(empty_texts(shipped.keyset)) == []


def test_every_figure_has_its_picture(shipped):
    drawn = {path.stem for path in (images_folder() / "figures").glob("*.svg")}
    assert sorted(set(shipped.keyset.figures) - drawn) == []


def test_every_figure_that_is_shown_is_defined(shipped):
    keyset = shipped.keyset
    shown = {taxon.figure for taxon in keyset.taxa.values()}
    shown |= {state.figure for character in keyset.characters.values() for state in character.states}
    shown |= {lead.figure for couplet in keyset.couplets.values() for lead in couplet.leads}
    assert sorted(shown - set(keyset.figures)) == []


@pytest.mark.parametrize("part", ["question", "ask_caller", "look"])
def test_the_first_question_is_there_in_spanish(shipped, part):
    text = getattr(shipped.keyset.characters["thing"], part)
    assert text.say("es") != text.say("en")


def test_its_states_are_there_in_spanish(shipped):
    states = shipped.keyset.characters["thing"].states
    assert [
        s.id for s in states if s.label.say("es") == s.label.say("en") or s.means.say("es") == s.means.say("en")
    ] == []


def test_a_danger_is_named_in_spanish(shipped):
    assert Words(shipped.keyset, "es").danger("recluses") == "arañas reclusas"


def inside(keyset):
    return [taxon for taxon in keyset.taxa.values() if not taxon.outside]


@pytest.mark.parametrize("part", ["diagnosis", "cautions", "advice", "basis", "season", "common_names"])
def test_every_result_is_described_whole(shipped, part):
    assert [taxon.id for taxon in inside(shipped.keyset) if not getattr(taxon, part)] == []


@pytest.mark.parametrize("part", ["cautions", "advice", "diagnosis"])
def test_what_is_not_in_the_key_has_its_cautions_too(shipped, part):
    assert [taxon.id for taxon in shipped.keyset.taxa.values() if not getattr(taxon, part)] == []


def test_every_result_is_reached_by_some_path(shipped):
    reached = {lead.to.id for couplet in shipped.keyset.couplets.values() for lead in couplet.leads}
    assert sorted(set(shipped.keyset.taxa) - reached) == []


def test_signs_name_their_makers(shipped):
    signs = [taxon for taxon in inside(shipped.keyset) if taxon.form not in (Form.ANIMAL, Form.GALL)]
    kinds = {taxon.kind for taxon in inside(shipped.keyset)}
    assert [sign.id for sign in signs if not sign.made_by or not set(sign.made_by) <= kinds] == []


def test_every_source_that_is_cited_is_listed_once_and_used(shipped):
    keyset = shipped.keyset
    cited = set(bases(keyset))
    assert sorted(cited - set(keyset.sources) - {"common practice", "from memory"}) == []


def bases(item: Any) -> Iterator[str]:
    """Every basis named anywhere in the key."""
    if dataclasses.is_dataclass(item):
        for field in dataclasses.fields(item):
            value = getattr(item, field.name)
            yield from value if field.name == "basis" else bases(value)
    elif isinstance(item, Mapping):
        for value in item.values():
            yield from bases(value)
    elif isinstance(item, tuple | list):
        for value in item:
            yield from bases(value)
