"""Enquiries held from start to end: through the key, in free order, from a feared animal, and the short way."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass, replace

from keyapp.engine import THING, Tables
from keyapp.model import Case, Character, Form, KeySet, LeadAnswer, Means, Report, View
from keyapp.proof.gate import settles, way_on
from keyapp.proof.observer import Observer, draw_specimen
from keyapp.proof.specimen import dangers_of
from keyapp.proof.starts import Start, draw_settings, starts

__all__ = ["KINDS", "Run", "draw_run"]

STEPS = 14
"""Answers in free order, at most."""

FEARED_STEPS = 5
"""Questions about a feared animal, at most."""

QUICK_SECONDS = 10
QUICK_VIEWS = (View.ANY, View.TOP, View.WEB)
"""What a gardener is asked on the short way: by eye, hands off, from where they stand."""


@dataclass(frozen=True, slots=True)
class Run:
    """One enquiry, held.

    Attributes:
        taxon: what was there.
        kind: one of `KINDS`.
        case: settings and answers.
        hows: how each answer came about, in the order of `case.answers` (see `Observer.hows`).
        slips: answers misread, not counting what follows from them.
    """

    taxon: str
    kind: str
    case: Case
    hows: tuple[str, ...]
    slips: int


def draw_run(tables: Tables, taxon_id: str, kind: str, slips: int, seed: str, start: Start | None = None) -> Run:
    """Hold one enquiry about `taxon_id` in which `slips` answers are misread, wherever they fall.

    The enquiry is held without an error first, to see how many judgements it holds; then with the
    error in one of them, drawn evenly, and so on for a second one after it. In half of the runs
    before a sign the first error is that it is taken for an animal from the start. The same seed
    gives the same run. `start` is the class of start settings; without it, any.
    """
    where = random.Random(f"{seed} where")
    at: frozenset[int] = frozenset()
    start = start or where.choice(starts(tables.keyset))
    sign = tables.keyset.taxa[taxon_id].form is not Form.ANIMAL
    if slips and sign and where.random() < 0.5:
        start, at = replace(start, thing=True), frozenset({0})
    run, judged = _held(tables, taxon_id, kind, at, seed, start)
    while len(at) < slips:
        first = max(at, default=-1) + 1
        if judged <= first:
            break
        at |= {where.randrange(first, judged)}
        run, judged = _held(tables, taxon_id, kind, at, seed, start)
    return run


def _held(
    tables: Tables, taxon_id: str, kind: str, slip_at: frozenset[int], seed: str, start: Start
) -> tuple[Run, int]:
    chance = random.Random(seed)
    taxon = tables.keyset.taxa[taxon_id]
    shows = draw_specimen(tables, taxon_id, chance)
    someone = Observer(tables, taxon, shows, chance, slip_at, start.evidence)
    case = Case(draw_settings(tables.keyset, start, chance))
    if start.thing and THING in shows:
        # A sign misread at the start is taken for an animal: that is where the body is made up.
        opening = someone.reports(THING, "" if taxon.form is Form.ANIMAL else str(Form.ANIMAL))
        told = sorted(opening.states, key=lambda state: state != shows[THING])[0]
        case = Case(replace(case.settings, thing=told))
    case = _WAYS[kind](someone, case)
    hows = tuple(someone.hows[a.couplet if isinstance(a, LeadAnswer) else a.character] for a in case.answers)
    return Run(taxon_id, kind, case, hows, someone.slips), someone.judged


def _by_key(someone: Observer, case: Case) -> Case:
    """Up to three reports, the key to its end, and up to four reports more."""
    names = _shuffled(someone)
    before, after = someone.chance.choice((0, 0, 1, 3)), someone.chance.choice((0, 0, 2, 4))
    for name in names[:before]:
        case = case.with_answer(someone.reports(name))
    while still_open := way_on(someone.tables, case).open:
        case = case.with_answer(someone.chooses(someone.chance.choice(still_open)))
    for name in names[before : before + after]:
        case = case.with_answer(someone.reports(name))
    return case


def _in_free_order(someone: Observer, case: Case) -> Case:
    """Reports, sizes and couplets in any order, some of them about what is not there."""
    return _freely(someone, case, someone.chance.randint(2, STEPS))


def _from_feared(someone: Observer, case: Case) -> Case:
    """Is it that animal? Each time what would settle it best is asked for; then, half the time, whatever comes.

    The feared animal is the one that is there, or in one run of four any other of the key.
    """
    keyset = someone.tables.keyset
    own = sorted(dangers_of(someone.tables, someone.taxon.id))
    feared = someone.chance.choice(own if someone.chance.random() < 0.75 else sorted(keyset.danger_groups) or own)
    asked: set[str] = set()
    for _ in range(FEARED_STEPS):
        best = settles(someone.tables, case, feared)
        if best is None or best.character in asked:
            break
        asked.add(best.character)
        case = case.with_answer(someone.reports(best.character))
    return _freely(someone, case, someone.chance.choice((0, 0, 3, 6)))


def _short_way(someone: Observer, case: Case) -> Case:
    """Three to five quick questions, and no more."""
    names = [c.id for c in someone.tables.keyset.characters.values() if _is_quick(c)]
    for name in someone.chance.sample(names, min(len(names), someone.chance.randint(3, 5))):
        case = case.with_answer(someone.reports(name))
    return case


_WAYS: dict[str, Callable[[Observer, Case], Case]] = {
    "key": _by_key,
    "free": _in_free_order,
    "short": _short_way,
    "feared": _from_feared,
}

KINDS = tuple(_WAYS)
"""Kinds of run: `key`, `free` (in any order), `short` (a gardener's) and `feared` (from a feared animal)."""


def _freely(someone: Observer, case: Case, steps: int) -> Case:
    said = {a.character for a in case.answers if isinstance(a, Report)}
    names = [name for name in _shuffled(someone) if name not in said]
    for _ in range(steps):
        turn = someone.chance.random()
        if turn < 0.3:
            still_open = way_on(someone.tables, case).open
            if still_open:
                case = case.with_answer(someone.chooses(someone.chance.choice(still_open)))
        elif turn < 0.35:
            size = someone.measures(someone.chance.choice(_sizes(someone.tables.keyset) or [""]))
            case = case if size is None else case.with_answer(size)
        elif names:
            case = case.with_answer(someone.reports(names.pop()))
    return case


def _is_quick(character: Character) -> bool:
    by_eye = character.means is Means.BARE_EYE and character.view in QUICK_VIEWS
    return bool(character.states) and by_eye and character.seconds <= QUICK_SECONDS


def _sizes(keyset: KeySet) -> list[str]:
    return [c.id for c in keyset.characters.values() if c.number]


def _shuffled(someone: Observer) -> list[str]:
    """Characters in any order: all that apply, and a third of those that do not."""
    keyset = someone.tables.keyset
    names = [c.id for c in keyset.characters.values() if c.states and (c.id in someone.shows or _stray(someone))]
    someone.chance.shuffle(names)
    return names


def _stray(someone: Observer) -> bool:
    return someone.chance.random() < 1 / 3
