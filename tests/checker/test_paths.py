"""The key against the descriptions of its results, on every path."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from keyapp.checker import check
from keyapp.model import Couplet, KeySet, Lead, TargetKind, Taxon
from tests.builders import character, keyset, lead, taxon

TODAY = datetime.date(2026, 11, 24)
LETTERS = "abc"


def found(keys: KeySet, *codes: str) -> list[str]:
    return [each.what for each in check(keys, today=TODAY) if each.code in codes]


def fork(**shows: object) -> KeySet:
    """web? orb -> left; tangle -> right, with two taxa that show what is given."""
    taxa = [taxon("left", {"web": shows["left"]}), taxon("right", {"web": shows["right"]})]
    couplets = {"only": (lead("taxon:left", web="orb"), lead("taxon:right", web="tangle"))}
    return keyset([character("web", "orb tangle none")], taxa, couplets)


def test_key_that_agrees_with_its_descriptions_is_quiet() -> None:
    assert found(fork(left="orb", right="tangle"), "K321", "K322") == []


def test_contradiction_names_lead_states_and_path() -> None:
    (what,) = found(fork(left="none", right="tangle"), "K321")
    assert what == (
        '"left" is reached through k/only (first lead), which asserts web = orb, but its description says none. '
        "Path: k/only (first lead) > left."
    )


def test_result_that_fits_both_leads_must_be_reached_through_both() -> None:
    (what,) = found(fork(left={"orb": 0.9, "tangle": 0.1}, right="tangle"), "K322")
    assert what == (
        '"left" may honestly be answered with k/only (second lead) (web = tangle), but cannot be reached from '
        "there. Path: k/only (second lead) > lost."
    )


def test_result_that_says_nothing_of_the_question_is_no_contradiction() -> None:
    keys = keyset(
        [character("web", "orb tangle")],
        [taxon("left", {}), taxon("right", {"web": "tangle"})],
        {"only": (lead("taxon:left", web="orb"), lead("taxon:right", web="tangle"))},
    )
    assert found(keys, "K321", "K322") == []
    assert len(found(keys, "K324")) == 1


def test_only_contrasting_characters_decide_whether_it_goes_either_way() -> None:
    """gait is asserted by the first lead alone, so `left`, which runs, cannot take it for the second."""
    keys = keyset(
        [character("web", "orb tangle"), character("gait", "runs jumps")],
        [taxon("left", {"web": "orb", "gait": {"runs": 0.5, "jumps": 0.5}}), taxon("right", {"web": "tangle"})],
        {"only": (lead("taxon:left", web="orb", gait="runs"), lead("taxon:right", web="tangle"))},
    )
    assert found(keys, "K321", "K322") == []


def test_result_under_both_leads_is_let_through() -> None:
    """
    web --orb--> both
        --tangle--> gait --runs--> both
                         --jumps--> other
    """
    both = taxon("both", {"web": {"orb": 0.5, "tangle": 0.5}, "gait": "runs"})
    keys = keyset(
        [character("web", "orb tangle"), character("gait", "runs jumps")],
        [both, taxon("other", {"web": "tangle", "gait": "jumps"})],
        {
            "web": (lead("taxon:both", web="orb"), lead("couplet:gait", web="tangle")),
            "gait": (lead("taxon:both", gait="runs"), lead("taxon:other", gait="jumps")),
        },
    )
    assert found(keys, "K321", "K322") == []


def ladder(rungs: int, last: str) -> KeySet:
    """A ladder of couplets that rejoin after each, so that there are 2 ** rungs paths to the last."""
    characters = [character(f"c{i}", "a b") for i in range(rungs + 1)]
    both = {f"c{i}": {"a": 0.5, "b": 0.5} for i in range(rungs)}
    taxa = [taxon("up", {**both, f"c{rungs}": "a"}), taxon("down", {**both, f"c{rungs}": last})]
    couplets = {}
    for i in range(rungs):
        couplets[f"n{i}"] = (lead(f"couplet:n{i + 1}", **{f"c{i}": "a"}), lead(f"couplet:n{i + 1}", **{f"c{i}": "b"}))
    end = f"c{rungs}"
    couplets[f"n{rungs}"] = (lead("taxon:up", **{end: "a"}), lead("taxon:down", **{end: "b"}))
    return keyset(characters, taxa, couplets)


def test_very_many_paths_are_no_trouble() -> None:
    assert found(ladder(80, "b"), "K321", "K322") == []


def test_fault_at_the_end_of_very_many_paths_is_named_once_with_one_path() -> None:
    (what,) = found(ladder(80, "a"), "K321")
    assert what.count(" > ") == 81
    assert what.endswith("k/n80 (second lead) > down.")


@st.composite
def small_keys(draw: st.DrawFn) -> KeySet:
    """Random keys of up to five couplets, three characters and four results, without loops."""
    count, ends = draw(st.integers(1, 5)), draw(st.integers(1, 4))
    characters = [character(name, "x y z") for name in LETTERS]
    states = st.sets(st.sampled_from("xyz"), min_size=1)
    shows = st.dictionaries(st.sampled_from(LETTERS), states, max_size=3)
    taxa = [
        taxon(f"t{i}", {c: dict.fromkeys(sorted(s), 1 / len(s)) for c, s in draw(shows).items()}) for i in range(ends)
    ]
    couplets: dict[str, tuple[Lead, Lead]] = {}
    for i in range(count):
        name = draw(st.sampled_from(LETTERS))
        first = draw(st.sets(st.sampled_from("xyz"), min_size=1, max_size=2))
        targets = [f"couplet:n{j}" for j in range(i + 1, count)] + [f"taxon:t{j}" for j in range(ends)]
        to = st.sampled_from(targets)
        rest = sorted(set("xyz") - first)
        couplets[f"n{i}"] = (
            lead(draw(to), **{name: " ".join(sorted(first))}), lead(draw(to), **{name: " ".join(rest)})
        )
    return keyset(characters, taxa, couplets)


def every_path(keys: KeySet) -> Iterator[tuple[list[tuple[Couplet, int]], str]]:
    """All paths from the start to a result, one by one."""
    pending: list[tuple[list[tuple[Couplet, int]], str]] = [([], keys.keys["k"].start)]
    while pending:
        way, at = pending.pop()
        couplet = keys.couplets[at]
        for index, each in enumerate(couplet.leads):
            longer = [*way, (couplet, index)]
            match each.to.kind:
                case TargetKind.TAXON:
                    yield longer, each.to.id
                case _:
                    pending.append((longer, each.to.id))


def fits(one: Taxon, each: Lead) -> bool:
    return all(states & one.shows[c].keys() for c, states in each.holds.items() if c in one.shows)


@given(small_keys())
@settings(max_examples=150, deadline=None, derandomize=True, database=None)
def test_contradictions_are_those_that_walking_every_path_finds(keys: KeySet) -> None:
    expected = {
        (couplet.id, index, end)
        for way, end in every_path(keys)
        for couplet, index in way
        if not fits(keys.taxa[end], couplet.leads[index])
    }
    ordinals = {"first": 0, "second": 1}
    told = set()
    for what in found(keys, "K321"):
        words = what.split()
        told.add((words[4], ordinals[words[5].strip("(")], words[0].strip('"')))
    assert told == expected


def losses(keys: KeySet, one: Taxon) -> set[tuple[str, int, str]]:
    """Leads by which a result that answers honestly is lost, found by walking every way it may take."""
    ends: dict[str, set[str]] = {}
    for way, end in every_path(keys):
        for couplet, index in way:
            ends.setdefault(f"{couplet.id} {index}", set()).add(end)
    lost = set()
    pending = [keys.keys["k"].start] if any(end == one.id for _, end in every_path(keys)) else []
    while pending:
        couplet = keys.couplets[pending.pop()]
        (asked,) = couplet.leads[0].holds
        for index, each in enumerate(couplet.leads):
            if not fits(one, each):
                continue
            if one.id not in ends[f"{couplet.id} {index}"]:
                lost |= {(couplet.id, index, one.id)} if asked in one.shows else set()
            elif each.to.kind is TargetKind.COUPLET:
                pending.append(each.to.id)
    return lost


@given(small_keys())
@settings(max_examples=150, deadline=None, derandomize=True, database=None)
def test_results_lost_are_those_that_walking_every_way_finds(keys: KeySet) -> None:
    expected = set().union(*(losses(keys, one) for one in keys.taxa.values()))
    ordinals = {"first": 0, "second": 1}
    told = set()
    for what in found(keys, "K322"):
        words = what.split()
        told.add((words[6], ordinals[words[7].strip("(")], words[0].strip('"')))
    assert told == expected


@pytest.mark.parametrize("code", ["K301", "K303"])
def test_couplet_and_result_beyond_a_missing_step_are_named(code: str) -> None:
    keys = keyset(
        [character("web", "orb tangle")],
        [taxon("left", {"web": "orb"}), taxon("right", {"web": "tangle"}), taxon("far", {"web": "tangle"})],
        {
            "only": (lead("taxon:left", web="orb"), lead("taxon:right", web="tangle")),
            "lost": (lead("taxon:far", web="orb"), lead("taxon:right", web="tangle")),
        },
    )
    assert len(found(keys, code)) == 1
