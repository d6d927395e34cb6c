"""Ends: couplets and keys that nobody reaches, results without a path, choices that do not matter."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, note, problem
from keyapp.keyfile.problem import Problem

__all__ = ["pointless_couplets", "taxa_without_path", "unreached_couplets"]


def unreached_couplets(facts: Facts) -> Iterator[Problem]:
    """K301, K302: couplets that no path from the start reaches; a key of which none is reached is one problem."""
    reached = facts.graph.steps
    for key in facts.keyset.keys.values():
        if not any(couplet in reached for couplet in key.couplets):
            yield problem("K302", key.place, f'No path from the start leads into the key "{key.id}".',
                          "Lead into it with {key: " + key.id + "}, or remove its file.")
            continue
        for couplet in key.couplets.values():
            if couplet.id not in reached:
                yield problem("K301", couplet.place, f"No path from the start leads to the couplet {couplet.id}.",
                              "Lead to it from another couplet, or remove it.")


def taxa_without_path(facts: Facts) -> Iterator[Problem]:
    """K303: results that no path ends at, signs and "not in this key yet" included."""
    reached = facts.graph.below[facts.graph.start]
    for taxon in facts.keyset.taxa.values():
        if taxon.id not in reached:
            yield problem("K303", taxon.place, f'No path ends at the result "{taxon.id}".',
                          "Add a lead that goes to {taxon: " + taxon.id + "}.")


def pointless_couplets(facts: Facts) -> Iterator[Problem]:
    """K304: both leads of a couplet go to the same place."""
    for first, second in facts.graph.steps.values():
        if first.lead.to == second.lead.to:
            yield note("K304", first.lead.place, f"Both leads of {first.couplet} go to {first.lead.to.id}.",
                       "Remove the couplet, or send its leads to different places.")
