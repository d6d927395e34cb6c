"""An observer with one specimen who misreads so many answers and no more, with all that follows from them.

Observers know what the specimen shows and answer by what the questions say. They share no likelihood
code with the engine.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from keyapp.engine import THING, Tables, read_case, walk
from keyapp.engine.ledger import known_states
from keyapp.model import Answer, Case, Choice, Form, KeySet, LeadAnswer, Report, Settings, Sureness, Taxon
from keyapp.proof.runs import CANT_TELLS
from keyapp.proof.specimen import LEADS, couplet_characters, dangers_of, may_show, truthful

__all__ = ["Run", "draw_run"]

REPORTS = 14
"""Direct reports in one run, at most."""

AGAIN = 0.5
"""Chance that an error repeats in a later answer of the same independence group."""


@dataclass(frozen=True, slots=True)
class Run:
    """One enquiry, held.

    Attributes:
        taxon: what was there.
        kind: `key`, `reports` (in any order) or `feared` (starting from the feared animal).
        case: settings and answers.
        hows: how each answer came about, in the order of `case.answers`: `seen`, `misread`, `misread again`,
            `made up`.
        slips: answers misread, not counting what follows from them.
    """

    taxon: str
    kind: str
    case: Case
    hows: tuple[str, ...]
    slips: int


@dataclass(slots=True)
class _Enquiry:
    """Someone who answers about one specimen.

    `slip_at` numbers the judgements they get wrong. `taken`: they have a sign and take it for an
    animal; what they say of its body is made up.
    """

    tables: Tables
    taxon: Taxon
    shows: Mapping[str, str]
    chance: random.Random
    slip_at: frozenset[int]
    taken: bool
    judged: int = 0
    slips: int = 0
    cant_tells: int = 0
    slipped: set[str] = field(default_factory=set)
    hows: dict[str, str] = field(default_factory=dict)

    def misreads(self, groups: frozenset[str]) -> str:
        """How the next judgement about these independence groups comes out."""
        if groups & self.slipped:
            return "misread again" if self.chance.random() < AGAIN else "seen"
        wrong = self.judged in self.slip_at
        self.judged += 1
        if wrong:
            self.slips += 1
            self.slipped |= groups
        return "misread" if wrong else "seen"

    def reports(self, character_id: str) -> Report | None:
        """What they say of a character; None where they say nothing."""
        character = self.tables.keyset.characters[character_id]
        states = character.state_ids
        sureness = Sureness.THINK_SO if self.chance.random() < 0.05 else Sureness.SURE
        pick, doubt = self.chance.random(), self.chance.random()
        if character_id not in self.shows:
            if self.taxon.form is not Form.ANIMAL and not self.taken:
                return None
            self.hows[character_id] = "made up"
            return Report(character_id, frozenset({states[int(pick * len(states))]}), sureness=sureness)
        true = self.shows[character_id]
        how = self.hows[character_id] = self.misreads(frozenset({character.group}))
        others = [state for state in states if state != true] or [true]
        other = others[int(pick * len(others))]
        if how != "seen":
            return Report(character_id, frozenset({other}), sureness=sureness)
        said = {true, other} if doubt < 0.1 else {true}
        return Report(character_id, frozenset(said), sureness=sureness)

    def chooses(self, couplet_id: str) -> LeadAnswer:
        """What they say at a couplet."""
        keyset = self.tables.keyset
        couplet = keyset.couplets[couplet_id]
        characters = couplet_characters(couplet)
        sureness = Sureness.THINK_SO if self.chance.random() < 0.05 else Sureness.SURE
        pick, lost = self.chance.random(), self.chance.random()
        if lost < 0.1 and self.cant_tells < CANT_TELLS:
            self.cant_tells += 1
            self.hows[couplet_id] = "can't tell"
            return LeadAnswer(couplet_id, Choice.CANT_TELL)
        if not all(c in self.shows for c in characters):
            any_way = (*LEADS, Choice.NEITHER)
            made_up = self.taxon.form is Form.ANIMAL or self.taken
            self.hows[couplet_id] = "made up" if made_up else "seen"
            return LeadAnswer(couplet_id, any_way[int(3 * pick)] if made_up else Choice.NEITHER, sureness)
        right = truthful(couplet, self.shows)
        how = self.misreads(frozenset(keyset.characters[c].group for c in characters))
        self.hows[couplet_id] = how
        wrong = [choice for choice in (*LEADS, Choice.NEITHER) if choice not in right]
        return LeadAnswer(couplet_id, right[0] if how == "seen" else wrong[int(pick * len(wrong))], sureness)


def draw_run(tables: Tables, taxon_id: str, kind: str, slips: int, seed: str, taken: bool = False) -> Run:
    """Hold one enquiry about `taxon_id` in which `slips` answers are misread, wherever they fall.

    The enquiry is held without an error first, to see how many judgements it holds; then with the
    error in one of them, drawn evenly, and so on for a second one after it. The same seed gives the
    same run. With `taken` the error is that a sign is taken for an animal from the start.
    """
    if taken:
        return _held(tables, taxon_id, kind, frozenset(), seed, taken)[0]
    where = random.Random(f"{seed} where")
    at: frozenset[int] = frozenset()
    run, judged = _held(tables, taxon_id, kind, at, seed, taken)
    for _ in range(slips):
        first = max(at, default=-1) + 1
        if judged <= first:
            break
        at |= {where.randrange(first, judged)}
        run, judged = _held(tables, taxon_id, kind, at, seed, taken)
    return run


def _held(tables: Tables, taxon_id: str, kind: str, slip_at: frozenset[int], seed: str, taken: bool) -> tuple[Run, int]:
    chance = random.Random(seed)
    keyset = tables.keyset
    taxon = keyset.taxa[taxon_id]
    shows = {c: _state(taxon, c, states, chance) for c, states in may_show(keyset, taxon).items()}
    someone = _Enquiry(tables, taxon, shows, chance, slip_at, taken)
    case = Case(_settings(keyset, chance))
    if taken:
        someone.slips, someone.slipped = 1, {keyset.characters[THING].group}
        case = Case(replace(case.settings, thing=str(Form.ANIMAL)))
    elif THING in shows and chance.random() < 0.5:
        opening = someone.reports(THING)
        if opening is not None and len(opening.states) == 1:
            case = Case(replace(case.settings, thing=next(iter(opening.states))))
    ways = {"key": _by_key, "reports": _by_reports, "feared": _from_feared}
    case = ways[kind](someone, case)
    hows = tuple(someone.hows[a.couplet if isinstance(a, LeadAnswer) else a.character] for a in case.answers)
    return Run(taxon_id, kind, case, hows, someone.slips), someone.judged


def _state(taxon: Taxon, character: str, states: tuple[str, ...], chance: random.Random) -> str:
    """As often as described; in a quarter of the specimens evenly, so that rare states are met."""
    shown = taxon.shows.get(character, {})
    weights = [shown.get(state, 1.0) for state in states]
    even = chance.random() < 0.25
    return chance.choices(states, None if even else weights)[0]


def _settings(keyset: KeySet, chance: random.Random) -> Settings:
    """Any place, region and month, each as often unknown as not."""
    spots: list[str | None] = [*keyset.spots] or [None]
    regions: list[str | None] = [*keyset.regions] or [None]
    return Settings(
        spot=chance.choice([None, chance.choice(spots)]),
        region=chance.choice([None, chance.choice(regions)]),
        month=chance.choice([None, chance.randint(1, 12)]),
    )


def _by_key(someone: _Enquiry, case: Case) -> Case:
    """Up to three reports, the key to its end, and up to four reports more."""
    names = _shuffled(someone)
    before, after = someone.chance.choice((0, 0, 1, 3)), someone.chance.choice((0, 0, 2, 4))
    for name in names[:before]:
        case = _told(case, someone.reports(name))
    while still_open := walk(someone.tables, case, known_states(someone.tables, _notes(case))).open:
        couplet = still_open[int(someone.chance.random() * len(still_open))]
        case = case.with_answer(someone.chooses(couplet))
    for name in names[before : before + after]:
        case = _told(case, someone.reports(name))
    return case


def _by_reports(someone: _Enquiry, case: Case) -> Case:
    """Reports in any order, some of them of what is not there."""
    for name in _shuffled(someone)[: someone.chance.randint(2, REPORTS)]:
        case = _told(case, someone.reports(name))
    return case


def _from_feared(someone: _Enquiry, case: Case) -> Case:
    """Is it that animal? Each time the observation that would settle it best is asked for."""
    feared = sorted(dangers_of(someone.tables, someone.taxon.id))[0]
    asked: set[str] = set()
    for _ in range(5):
        best = read_case(someone.tables, case).settles.get(feared)
        if best is None or best.character in asked:
            return case
        asked.add(best.character)
        case = _told(case, someone.reports(best.character))
    return case


def _told(case: Case, report: Report | None) -> Case:
    return case if report is None else case.with_answer(report)


def _notes(case: Case) -> tuple[Answer, ...]:
    """Direct reports, and what there is as it was set at the opening."""
    notes = tuple(a for a in case.answers if not isinstance(a, LeadAnswer))
    said = any(a.character == THING for a in notes)
    return notes if said or not case.settings.thing else (Report(THING, frozenset({case.settings.thing})), *notes)


def _shuffled(someone: _Enquiry) -> list[str]:
    """Characters in any order: all that apply, and a third of those that do not."""
    keyset = someone.tables.keyset
    names = [c.id for c in keyset.characters.values() if c.states and (c.id in someone.shows or _stray(someone))]
    someone.chance.shuffle(names)
    return names


def _stray(someone: _Enquiry) -> bool:
    return someone.chance.random() < 1 / 3
