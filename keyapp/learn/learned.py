"""The key with what confirmed calls have taught it: stricter at once, weaker only when allowed and proven.

Every rate has a Dirichlet prior whose mean is the shipped figure and whose weight is STRENGTH calls; its
posterior mean is (STRENGTH * shipped + counted) / (STRENGTH + all counted). This is the usual conjugate
update for rates (common practice; for instance Gelman and others, Bayesian Data Analysis, section 3.4).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from keyapp.learn.change import Approval, Change, Proven, fingerprint
from keyapp.learn.counts import Counts, confusion
from keyapp.model import Character, Form, KeySet, State, Taxon

__all__ = ["STRENGTH", "learned", "proposed"]

STRENGTH = 50.0
"""Confirmed calls that a shipped figure is worth (from memory; more is more careful)."""

SMALL = 1e-9
LEAST_RIGHT = 0.05
"""No report is taken as right less often than this."""


@dataclass(frozen=True, slots=True)
class _Rule:
    """What may come into force: everything, or only what makes things stricter."""

    everything: bool
    held: str

    def of(self, figure: str, item: str, old: float, new: float, weakens: bool, why: str) -> Change:
        holds_back = weakens and not self.everything
        return Change(figure, item, old, new, old if holds_back else new, weakens, why, self.held if holds_back else "")


def learned(
    keyset: KeySet,
    counts: Counts,
    approval: Approval | None = None,
    proven: Proven | None = None,
    strength: float = STRENGTH,
) -> tuple[KeySet, tuple[Change, ...]]:
    """The key with the figures that are in force, and every change with its old and new value.

    What makes things stricter is in force at once: a chance of being right that falls, a mistake that
    turns out to be more common, a danger that turns out to be more common. What weakens is in force
    only with an `approval` that names someone, and a proof (`proven`) that holds for exactly the key of
    `proposed`. Without counts the key comes back as it was. Pure: `keyset` is never changed.
    """
    everything, held = False, "it weakens a caution: it needs a named approver and a date"
    if approval is not None and approval.name.strip():
        held = "it weakens a caution: the one-error proof has not been run on the key it makes"
        if proven is not None and proven.fingerprint == fingerprint(proposed(keyset, counts, strength)):
            everything, held = proven.holds, "it weakens a caution: the one-error proof fails for the key it makes"
    return _apply(keyset, counts, strength, _Rule(everything, held))


def proposed(keyset: KeySet, counts: Counts, strength: float = STRENGTH) -> KeySet:
    """The key with every change in force, to be proven before anyone approves it."""
    return _apply(keyset, counts, strength, _Rule(True, ""))[0]


def _apply(keyset: KeySet, counts: Counts, strength: float, rule: _Rule) -> tuple[KeySet, tuple[Change, ...]]:
    if not counts.reports and not counts.kinds:
        return keyset, ()
    changes: list[Change] = []
    characters = dict(keyset.characters)
    for name in dict.fromkeys(character for character, _, _ in counts.reports):
        if name in characters:
            characters[name] = _character(characters[name], counts, strength, rule, changes)
    taxa = dict(keyset.taxa)
    for region in dict.fromkeys(region for region, _ in counts.kinds):
        taxa = _occurrence(keyset, taxa, region, counts, strength, rule, changes)
    return replace(keyset, characters=characters, taxa=taxa), tuple(changes)


def _character(character: Character, counts: Counts, strength: float, rule: _Rule, changes: list[Change]) -> Character:
    told = {
        true: {said: counts.reports.get((character.id, true, said), 0.0) for said in character.state_ids}
        for true in character.state_ids
    }
    every = sum(sum(said.values()) for said in told.values())
    right = sum(said[true] for true, said in told.items())
    states = tuple(_state(character, s, told[s.id], strength, rule, changes) for s in character.states)
    if every <= 0:
        return character
    why = f"{right:g} of {every:g} confirmed reports were right"
    new = (strength * character.right + right) / (strength + every)
    change = rule.of("right", character.id, character.right, new, new > character.right, why)
    if abs(change.new - change.old) > SMALL:
        changes.append(change)
    return replace(character, right=change.now, states=states)


def _state(
    character: Character, state: State, told: Mapping[str, float], strength: float, rule: _Rule, changes: list[Change]
) -> State:
    """One true state: what it is reported as. Each mistake is judged by itself."""
    every = sum(told.values())
    if every <= 0:
        return state
    shipped = confusion(character, state.id)
    now: dict[str, float] = {}
    found = []
    for said, old in shipped.items():
        if said == state.id:
            continue
        new = (strength * old + told[said]) / (strength + every)
        item = f"{character.id}: {state.id} taken for {said}"
        change = rule.of("mistaken-for", item, old, new, new < old, f"{told[said]:g} of {every:g} confirmed reports")
        now[said] = change.now
        if abs(change.new - change.old) > SMALL:
            found.append(change)
    error = min(sum(now.values()), 1.0 - LEAST_RIGHT)
    right = 1.0 - error
    learned_right = (strength * shipped[state.id] + told[state.id]) / (strength + every)
    if abs(learned_right - shipped[state.id]) > SMALL or abs(right - shipped[state.id]) > SMALL:
        weakens = learned_right > shipped[state.id]
        changes.append(
            Change(
                "right",
                f"{character.id}: {state.id}",
                shipped[state.id],
                learned_right,
                right,
                weakens,
                f"{told[state.id]:g} of {every:g} confirmed reports were right",
                rule.held if abs(right - learned_right) > SMALL else "",
            )
        )
    changes += found
    if all(abs(change.now - change.old) <= SMALL for change in found):
        return state
    total = sum(now.values())
    mistaken = {said: chance / total for said, chance in now.items()} if total > 0 else dict(state.mistaken_for)
    return replace(state, right=right, mistaken_for=mistaken)


def _occurrence(
    keyset: KeySet,
    taxa: dict[str, Taxon],
    region: str,
    counts: Counts,
    strength: float,
    rule: _Rule,
    changes: list[Change],
) -> dict[str, Taxon]:
    """How common each kind is in a region: a Dirichlet over kinds, in shares of all that is found there.

    Only what a danger gains is in force at once. What it loses, and what others gain at its cost,
    weakens.
    """
    animals: dict[str, list[Taxon]] = {}
    for taxon in taxa.values():
        if taxon.form is Form.ANIMAL and not taxon.outside:
            animals.setdefault(taxon.kind, []).append(taxon)
    old = {kind: max(_in_region(keyset, taxon, region) for taxon in models) for kind, models in animals.items()}
    whole = sum(old.values())
    found = {kind: counts.kinds.get((region, kind), 0.0) for kind in animals}
    every = sum(found.values())
    if whole <= 0 or every <= 0:
        return taxa
    made = dict(taxa)
    for kind, models in animals.items():
        gated = any(taxon.danger.is_gated for taxon in models)
        new = min(1.0, whole * (strength * old[kind] / whole + found[kind]) / (strength + every))
        if old[kind] <= 0 or abs(new - old[kind]) <= SMALL:
            continue
        why = f"{found[kind]:g} of {every:g} confirmed finds in {region}"
        # A kind without danger that grows takes its share from the dangers as well.
        weakens = new < old[kind] if gated else new > old[kind]
        change = rule.of("occurrence", f"{kind} in {region}", old[kind], new, weakens, why)
        changes.append(change)
        for taxon in models if change.now != change.old else ():
            made[taxon.id] = replace(taxon, occurrence=_scaled(keyset, taxon, region, change.now / old[kind]))
    return made


def _scaled(keyset: KeySet, taxon: Taxon, region: str, factor: float) -> dict[str, float]:
    """Occurrence with the value of a region, and of each of its states that has its own, times `factor`."""
    table = dict(taxon.occurrence) or {"default": 1.0}
    table[region] = min(1.0, _base(keyset, taxon, region) * factor)
    for state in keyset.regions[region].states:
        if state in table:
            table[state] = min(1.0, table[state] * factor)
    return table


def _in_region(keyset: KeySet, taxon: Taxon, region: str) -> float:
    """Occurrence in a region: over its states the highest for a gated result, else the mean."""
    base = _base(keyset, taxon, region)
    values = [taxon.occurrence.get(state, base) for state in keyset.regions[region].states] or [base]
    return max(values) if taxon.danger.is_gated else sum(values) / len(values)


def _base(keyset: KeySet, taxon: Taxon, region: str) -> float:
    """The value of a region itself, or of what it is part of, or the default."""
    if not taxon.occurrence:
        return 1.0
    current = region
    while current in keyset.regions:
        if current in taxon.occurrence:
            return taxon.occurrence[current]
        current = keyset.regions[current].part_of
    return taxon.occurrence.get("default", 0.0)
