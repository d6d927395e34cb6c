"""Facts about single answers, each checked in every case: the lemmas of the one-error proof.

The gate rules a result out only after `ruled_out_answers` clearing answers of different independence
groups. If no truthful answer ever counts, and none about something that is not there to be looked at, then
clearing answers can only come from what was misread; and since answers of one independence group count
once, one misread answer gives at most one. Place, month and region enter by the odds alone, which can
only keep a result named for longer, so that no start settings need to be told apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, combinations, product

from keyapp.engine import Tables
from keyapp.engine.ledger import events
from keyapp.engine.safety import clearing_counts
from keyapp.model import Answer, Choice, Couplet, Evidence, LeadAnswer, Measurement, Report, Sureness
from keyapp.proof.specimen import LEADS, couplet_characters, gated_taxa, may_show, truthful

__all__ = ["Breach", "Facts", "check_facts", "counts_against"]


@dataclass(frozen=True, slots=True)
class Breach:
    """An answer that counts towards ruling out though it must not.

    Attributes:
        taxon: what was there.
        answers: the answer, with those given beside it.
        why: what kind of answer it is: `truthful`, `inapplicable` or `never`.
    """

    taxon: str
    answers: tuple[Answer, ...]
    why: str


@dataclass(frozen=True, slots=True)
class Facts:
    """Outcome of the exhaustive check.

    Attributes:
        truthful, inapplicable, never: how many pairs of a result and an answer of each kind were checked.
        breaches: what counts though it must not; empty for a key that is safe.
    """

    truthful: int
    inapplicable: int
    never: int
    breaches: tuple[Breach, ...]


def counts_against(tables: Tables, taxon: str, answers: Sequence[Answer]) -> int:
    """How many of `answers` the gate counts against the result, at most over its rows."""
    counts = clearing_counts(tables, events(tables, answers))
    return int(max(counts[row] for row in tables.rows_of[taxon]))


def check_facts(tables: Tables) -> Facts:
    """Check every lead, every pair of leads about one character, and every report, in every state shown."""
    keyset = tables.keyset
    found: list[Breach] = []
    tally = {"truthful": 0, "inapplicable": 0}
    for taxon_id in gated_taxa(tables):
        shows = may_show(keyset, keyset.taxa[taxon_id])
        for why, answers in chain(_leads(tables, shows), _met(tables, shows), _reports(tables, shows)):
            tally[why] += 1
            if counts_against(tables, taxon_id, answers):
                found.append(Breach(taxon_id, answers, why))
    never = 0
    for answer in _never(tables):
        never += 1
        worst = clearing_counts(tables, events(tables, [answer]))
        if worst.any():
            found.append(Breach(tables.rows[int(worst.argmax())].taxon, (answer,), "never"))
    return Facts(tally["truthful"], tally["inapplicable"], never, tuple(found))


def _leads(tables: Tables, shows: dict[str, tuple[str, ...]]) -> Iterator[tuple[str, tuple[Answer, ...]]]:
    """Each couplet in each combination of states of its characters, and with some of them reported as well."""
    for couplet in tables.keyset.couplets.values():
        characters = couplet_characters(couplet)
        if not all(c in shows for c in characters):
            for choice in (*LEADS, Choice.NEITHER):
                yield "inapplicable", (LeadAnswer(couplet.id, choice),)
            continue
        for states in product(*(shows[c] for c in characters)):
            seen = dict(zip(characters, states, strict=True))
            for choice in truthful(couplet, seen):
                for noted in _subsets(characters, least=0, most=len(characters) - 1):
                    beside = tuple(Report(c, frozenset({seen[c]})) for c in noted)
                    yield "truthful", (LeadAnswer(couplet.id, choice), *beside)


def _met(tables: Tables, shows: dict[str, tuple[str, ...]]) -> Iterator[tuple[str, tuple[Answer, ...]]]:
    """Leads of two couplets, and of all, about the same one character, which the ledger takes as one."""
    asking: dict[str, list[Couplet]] = {}
    for couplet in tables.keyset.couplets.values():
        characters = couplet_characters(couplet)
        if len(characters) == 1 and characters[0] in shows:
            asking.setdefault(characters[0], []).append(couplet)
    for character, couplets in asking.items():
        for state in shows[character]:
            right = [LeadAnswer(c.id, truthful(c, {character: state})[0]) for c in couplets]
            for answers in (*combinations(right, 2), tuple(right)):
                if len(answers) > 1:
                    yield "truthful", answers


def _reports(tables: Tables, shows: dict[str, tuple[str, ...]]) -> Iterator[tuple[str, tuple[Answer, ...]]]:
    """Every set of states of every character, "one of these" and "both are there"."""
    for character in tables.keyset.characters.values():
        for states in _subsets(character.state_ids, least=1, most=len(character.states)):
            said = frozenset(states)
            if character.id not in shows:
                yield "inapplicable", (Report(character.id, said),)
                continue
            true = set(shows[character.id])
            if said & true:
                yield "truthful", (Report(character.id, said),)
            if len(said) > 1 and said <= true:
                yield "truthful", (Report(character.id, said, both=True),)


def _never(tables: Tables) -> Iterator[Answer]:
    """Answers that may never count, whatever is there."""
    keyset = tables.keyset
    for couplet in keyset.couplets.values():
        for evidence in Evidence:
            yield LeadAnswer(couplet.id, Choice.NEITHER, evidence=evidence)
            yield LeadAnswer(couplet.id, Choice.CANT_TELL, evidence=evidence)
            for choice, lead in zip(LEADS, couplet.leads, strict=True):
                yield LeadAnswer(couplet.id, choice, Sureness.THINK_SO, evidence)
                held = [(keyset.characters[c], states) for c, states in lead.holds.items()]
                if any(c.never_clears or any(c.state(s).absence for s in states) for c, states in held):
                    yield LeadAnswer(couplet.id, choice, evidence=evidence)
    for character in keyset.characters.values():
        for evidence in Evidence:
            if character.number:
                yield Measurement(character.id, character.number.least, evidence=evidence)
                yield Measurement(character.id, character.number.most, evidence=evidence)
            for state in character.states:
                said = frozenset({state.id})
                yield Report(character.id, said, sureness=Sureness.THINK_SO, evidence=evidence)
                if character.never_clears or state.absence:
                    yield Report(character.id, said, evidence=evidence)
                    yield Report(character.id, said, evidence=evidence, view_seen=False)


def _subsets(items: Sequence[str], least: int, most: int) -> Iterator[tuple[str, ...]]:
    return chain.from_iterable(combinations(items, size) for size in range(least, most + 1))
