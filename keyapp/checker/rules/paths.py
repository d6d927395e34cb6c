"""Paths: the key must agree with the descriptions of its results, on every path.

Whether a path contradicts a description is decided step by step, never path by path: a step lies on some
path to a result exactly if the start reaches it and it reaches the result. So the work grows with
the number of leads times the number of results, however many paths there are; one path through
each fault is then named.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from keyapp.checker.facts import Facts, note, problem
from keyapp.checker.graph import Step, path_text
from keyapp.checker.rules.contrast import contrasting_characters
from keyapp.engine.tables import applies
from keyapp.keyfile.problem import Problem
from keyapp.model.graph import Lead
from keyapp.model.taxon import Taxon

__all__ = ["ask_what_applies", "ask_what_is_described", "ask_without_repeating", "lead_both_ways", "satisfy_every_lead"]


def satisfy_every_lead(facts: Facts) -> Iterator[Problem]:
    """K321: a lead on a path to a result asserts states of which its description lists none."""
    for step, taxon in _steps_with_ends(facts):
        for character in sorted(step.lead.holds):
            shown = taxon.shows.get(character)
            wanted = step.lead.holds[character]
            if shown and not wanted & shown.keys():
                way = [*facts.graph.way_to(step.couplet), step, *facts.graph.way_on(step, taxon.id)]
                yield problem(
                    "K321", step.lead.place,
                    f'"{taxon.id}" is reached through {step.named}, which asserts {character} = '
                    f"{_either(wanted)}, but its description says {_either(shown)}. "
                    f"Path: {path_text(way, taxon.id)}.",
                    f'Mend the lead, the description of "{taxon.id}" ({taxon.place.file}:{taxon.place.line}), '
                    "or where the lead goes.")


def lead_both_ways(facts: Facts) -> Iterator[Problem]:
    """K322: a result that can honestly be answered either way at a couplet is reached through one lead only.

    Results are sent from the start along every lead that fits them. Where one arrives at a couplet
    whose contrasting characters it shows in states of both leads, both must reach it.
    """
    graph, keyset = facts.graph, facts.keyset
    couplets = keyset.couplets
    arrived: dict[str, dict[str, Step | None]] = {couplet: {} for couplet in graph.steps}
    arrived[graph.start] = dict.fromkeys(sorted(graph.below[graph.start]))
    for couplet, pair in graph.steps.items():
        contrasts = contrasting_characters(couplets[couplet])
        for name in arrived[couplet]:
            taxon = keyset.taxa[name]
            for step in pair:
                if not _fits(taxon, step.lead, contrasts):
                    continue
                if name in graph.taxa_of(step):
                    if step.to_couplet is not None:
                        arrived[step.to_couplet].setdefault(name, step)
                elif any(c in taxon.shows for c in contrasts):
                    way = _way_back(arrived, couplet, name)
                    seen = "; ".join(f"{c} = {_either(step.lead.holds[c] & taxon.shows[c].keys())}"
                                     for c in contrasts if c in taxon.shows)
                    yield problem(
                        "K322", step.lead.place,
                        f'"{name}" may honestly be answered with {step.named} ({seen}), but cannot be reached '
                        f"from there. Path: {path_text([*way, step], 'lost')}.",
                        f'Lead to "{name}" from there too, or mend its description '
                        f"({taxon.place.file}:{taxon.place.line}).")


def ask_what_applies(facts: Facts) -> Iterator[Problem]:
    """K323: a path to a result asks for a character that does not apply to it, so that the answer is chance."""
    characters = facts.keyset.characters
    for step, taxon in _steps_with_ends(facts):
        if taxon.outside:
            continue
        for character in sorted(step.lead.holds):
            if not applies(characters[character].applies_to, taxon):
                way = [*facts.graph.way_to(step.couplet), step, *facts.graph.way_on(step, taxon.id)]
                yield problem(
                    "K323", step.lead.place,
                    f'"{taxon.id}" is reached through {step.named}, which asserts {character}, but that does not '
                    f"apply to it. Path: {path_text(way, taxon.id)}.",
                    f'Widen `applies-to` of "{character}", or ask for something else.')


def ask_what_is_described(facts: Facts) -> Iterator[Problem]:
    """K324: a path to a result turns on characters of which its description says nothing."""
    couplets = facts.keyset.couplets
    for step, taxon in _steps_with_ends(facts):
        contrasts = contrasting_characters(couplets[step.couplet])
        if contrasts and not taxon.outside and not any(c in taxon.shows for c in contrasts):
            yield note("K324", step.lead.place, f'The description of "{taxon.id}" says nothing of '
                       f"{', '.join(contrasts)}, on which {step.named} turns.",
                       f"Add it under `shows` ({taxon.place.file}:{taxon.place.line}).")


def ask_without_repeating(facts: Facts) -> Iterator[Problem]:
    """K325: after one lead another can no longer be true, so that nobody right ever chooses it."""
    graph = facts.graph
    holders: dict[str, list[Step]] = {}
    for step in graph.each_step():
        for character in step.lead.holds:
            holders.setdefault(character, []).append(step)
    for character, steps in sorted(holders.items()):
        for first in steps:
            if first.to_couplet is None:
                continue
            after = graph.ways[first.to_couplet] | {first.to_couplet}
            for second in steps:
                if second.couplet in after and not first.lead.holds[character] & second.lead.holds[character]:
                    yield note("K325", second.lead.place, f"After {first.named} the lead {second.named} cannot be "
                               f"true: they assert different states of {character}.",
                               "Leave the couplet out on that way, if it is not a deliberate second look.")


def _steps_with_ends(facts: Facts) -> Iterator[tuple[Step, Taxon]]:
    """Every step on some path, with every result that lies beyond it."""
    for step in facts.graph.each_step():
        for name in sorted(facts.graph.taxa_of(step)):
            yield step, facts.keyset.taxa[name]


def _fits(taxon: Taxon, lead: Lead, contrasts: tuple[str, ...]) -> bool:
    """Whether all that a description says of the contrasting characters can be answered with this lead."""
    return all(lead.holds[c] & taxon.shows[c].keys() for c in contrasts if c in taxon.shows)


def _way_back(arrived: dict[str, dict[str, Step | None]], couplet: str, name: str) -> list[Step]:
    way: list[Step] = []
    step = arrived[couplet][name]
    while step is not None:
        way.insert(0, step)
        step = arrived[step.couplet][name]
    return way


def _either(states: Iterable[str]) -> str:
    return " or ".join(sorted(states))
