"""The rules of the checker, an ordinary list: one family of rules for each module."""

from keyapp.checker.facts import Rule
from keyapp.checker.rules import basis, cautions, contrast, danger, ends, names, paths, pictures, unused, wording

__all__ = ["ENTRY_RULES", "WHOLE_RULES"]

ENTRY_RULES: tuple[Rule, ...] = (
    contrast.leads_contrast,
    contrast.leads_mix_groups,
    basis.stated_basis,
    basis.known_sources,
    pictures.defined_figures,
    pictures.drawn_figures,
    pictures.credited_figures,
    cautions.caution_dates,
    danger.gated_results_complete,
    danger.danger_groups_fit,
    danger.signs_carry_danger,
    danger.regions_refer,
    wording.no_false_comfort,
    wording.easy_to_read,
    wording.explained_terms,
)
"""Rules that look at entries one by one; they hold even where links are broken."""

WHOLE_RULES: tuple[Rule, ...] = (
    ends.unreached_couplets,
    ends.taxa_without_path,
    ends.pointless_couplets,
    paths.satisfy_every_lead,
    paths.lead_both_ways,
    paths.ask_what_applies,
    paths.ask_what_is_described,
    paths.ask_without_repeating,
    unused.unused_characters,
    unused.unused_figures,
    unused.unused_sources,
    names.applies_to_something,
    names.shown_characters_apply,
    names.look_alikes_differ,
)
"""Rules that look at the key as a whole; they would mislead while a link is broken."""
