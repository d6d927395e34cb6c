"""Pictures: every figure that is shown is defined, drawn, credited, and has an alt text."""

from __future__ import annotations

from collections.abc import Iterator

from keyapp.checker.facts import Facts, problem
from keyapp.keyfile.problem import Problem, nearest
from keyapp.model.place import Place

__all__ = ["credited_figures", "defined_figures", "drawn_figures"]


def _shown(facts: Facts) -> Iterator[tuple[str, Place, str]]:
    """Figure, place and owner; leads with broken links are passed over, since their figure is named after a state."""
    characters = facts.keyset.characters
    for taxon in facts.keyset.taxa.values():
        yield taxon.figure, taxon.place, f'The result "{taxon.id}"'
    for character in facts.keyset.characters.values():
        for state in character.states:
            yield state.figure, state.place, f'The state "{state.id}" of "{character.id}"'
    for couplet in facts.keyset.couplets.values():
        for lead in couplet.leads:
            if all(c in characters and states <= set(characters[c].state_ids) for c, states in lead.holds.items()):
                yield lead.figure, lead.place, f"The lead of {couplet.id}"


def defined_figures(facts: Facts) -> Iterator[Problem]:
    """K351: a figure that is shown is not defined."""
    figures = facts.keyset.figures
    for name, place, who in _shown(facts):
        if name and name not in figures:
            yield problem("K351", place, f'{who} shows the figure "{name}", which is not defined.',
                          nearest(name, figures) if figures else "Define it in figures/.")


def drawn_figures(facts: Facts) -> Iterator[Problem]:
    """K352: a figure has no file `figures/<id>.svg` in the picture folder, where one was given."""
    if facts.images is None:
        return
    for figure in facts.keyset.figures.values():
        if not (facts.images / "figures" / f"{figure.id}.svg").is_file():
            yield problem("K352", figure.place, f"The picture figures/{figure.id}.svg is missing.",
                          "Draw the figures: keyapp draw.")


def credited_figures(facts: Facts) -> Iterator[Problem]:
    """K353, K354: figures without credit, or without alt text."""
    for figure in facts.keyset.figures.values():
        if not figure.credit:
            yield problem("K353", figure.place, f'The figure "{figure.id}" has no credit.',
                          "Add `credit:` with who drew it, or from what.")
        if not figure.alt:
            yield problem("K354", figure.place, f'The figure "{figure.id}" has no alt text.',
                          "Add `alt:` that says what can be seen.")
