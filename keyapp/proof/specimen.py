"""What may lie before an observer, and what a truthful one answers.

Applicability is worked out here from the descriptions alone, not by the engine that is being proven.
"""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.engine import Tables
from keyapp.model import AppliesTo, Choice, Couplet, Form, KeySet, Taxon

__all__ = ["LEADS", "couplet_characters", "covers", "dangers_of", "gated_taxa", "may_show", "truthful"]

LEADS = (Choice.FIRST, Choice.SECOND)


def covers(rule: AppliesTo, taxon: Taxon) -> bool:
    """Whether a character with this rule applies to `taxon`; group names are not asked of signs."""
    if rule.forms and str(taxon.form) not in rule.forms:
        return False
    names = taxon.group_names
    if names & set(rule.not_groups):
        return False
    return not rule.groups or taxon.form is not Form.ANIMAL or bool(names & set(rule.groups))


def may_show(keyset: KeySet, taxon: Taxon) -> dict[str, tuple[str, ...]]:
    """Character -> states that `taxon` may show; characters that do not apply to it are left out.

    A character that applies but is not described may show any state.
    """
    found = {}
    for character in keyset.characters.values():
        if character.states and covers(character.applies_to, taxon):
            shown = taxon.shows.get(character.id, {})
            found[character.id] = tuple(s for s in character.state_ids if shown.get(s, 0) > 0) or character.state_ids
    return found


def couplet_characters(couplet: Couplet) -> tuple[str, ...]:
    """Characters that either lead speaks of, in order."""
    return tuple(sorted({character for lead in couplet.leads for character in lead.holds}))


def truthful(couplet: Couplet, shows: Mapping[str, str]) -> tuple[Choice, ...]:
    """Choices open to someone who sees all of `shows` rightly: a lead that fits whole, else *neither fits*."""
    fitting = tuple(
        choice
        for choice, lead in zip(LEADS, couplet.leads, strict=True)
        if all(shows[character] in states for character, states in lead.holds.items())
    )
    return fitting or (Choice.NEITHER,)


def gated_taxa(tables: Tables) -> tuple[str, ...]:
    """Ids of the results that have a row the gate names, in the order of the rows."""
    return tuple(dict.fromkeys(tables.rows[row].taxon for row in tables.gated))


def dangers_of(tables: Tables, taxon: str) -> frozenset[str]:
    """Danger groups that must be named while `taxon` may be there: its own, or those of a sign's makers."""
    return frozenset(tables.rows[row].danger for row in tables.rows_of[taxon]) - {""}
