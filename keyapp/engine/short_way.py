"""The short way: the few quick questions, hands off, that decide what to do with an animal at hand."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from keyapp.engine.ledger import report_event
from keyapp.engine.prior import log_prior_of
from keyapp.engine.question import next_questions
from keyapp.engine.reading import THING, Reading
from keyapp.engine.safety import clearing_counts
from keyapp.engine.stopping import clears
from keyapp.engine.tables import Bools, Tables
from keyapp.engine.verdict import BROOD, Action
from keyapp.model import Case, Character, Evidence, LeadAnswer, Means, Report, Sureness

__all__ = ["LEAST_ASKED", "MOST_ASKED", "MOST_SECONDS", "ShortEnd", "ShortWay", "is_quick", "short_way"]

LEAST_ASKED = 3
"""So many questions are put before anything is said to do, unless the first of them decides."""

MOST_ASKED = 5
"""Nobody stands at an animal for more questions than this."""

MOST_SECONDS = 10.0
"""A look that takes longer is not for someone who stands at the animal."""


ANIMAL = "animal"
"""State of the character `thing`."""


class ShortEnd(StrEnum):
    """Why the short way ends where it does."""

    HURT = "hurt"
    DANGER = "danger"
    UNKNOWN = "unknown"
    NOTHING_SAID = "nothing-said"
    BROOD = "brood"
    BROOD_UNSEEN = "brood-unseen"
    SIGN = "sign"
    CLEAR = "clear"


@dataclass(frozen=True, slots=True)
class ShortWay:
    """Where the short way stands: a question to put, or the one thing to do.

    Attributes:
        asked: characters it has had an answer to, in the order given; *can't tell* is one too.
        question: the character to ask; None once there is an action.
        action: the one thing to do; None while a question is left.
        why: why that; None while a question is left.
        dangers: the danger groups that are not ruled out, likeliest first.
    """

    asked: tuple[str, ...]
    question: str | None
    action: Action | None
    why: ShortEnd | None
    dangers: tuple[str, ...]

    @property
    def at(self) -> int:
        """The number of the question that is put, from 1."""
        return len(self.asked) + 1


def is_quick(character: Character) -> bool:
    """Whether it can be told at once by bare eye, from where one stands."""
    return (
        character.means is Means.BARE_EYE
        and character.seconds <= MOST_SECONDS
        and bool(character.states)
        and character.id != THING
    )


def _fitting(tables: Tables, case: Case) -> frozenset[str]:
    """The quick characters that can be asked of what there is.

    A sign is not asked for what every thing can be asked for (how many legs?): that only tells that it is a sign.
    """
    things = _things(case)
    thing = tables.characters.get(THING)
    every = frozenset(thing.character.state_ids) if thing is not None else frozenset()
    found = set()
    for name, table in tables.characters.items():
        forms = set(table.character.applies_to.forms)
        is_general = not forms or forms >= every
        fits = not things or not forms or bool(forms & things)
        if is_quick(table.character) and fits and not (is_general and things and ANIMAL not in things):
            found.add(name)
    return frozenset(found)


def _things(case: Case) -> frozenset[str]:
    """What there is, as far as it was said; nothing where it may be anything."""
    note = case.note(THING)
    if isinstance(note, Report):
        return note.states if len(note.states) == 1 else frozenset()
    return frozenset({case.settings.thing}) if case.settings.thing else frozenset()


def short_way(tables: Tables, reading: Reading, most: int = MOST_ASKED) -> ShortWay:
    """What to ask next, or what to do.

    First what there is, where that is not said yet; then, of the quick characters, the one with the
    highest (expected bits about the group + `danger_bits` x expected fall of what is not ruled out) for each
    second (`next_questions`); and, before anything may be moved, whether eggs or young are with it.
    It ends after `most` questions, and sooner where no answer to those that are left could change
    what is to be done. What is to be done is what the gate of the verdict allows and nothing more: an answer that
    is missing, unknown or in doubt never makes it milder.
    """
    case = reading.case
    asked = _asked(tables, case)
    dangers = tuple(one.group for one in reading.not_ruled_out)

    def end(action: Action, why: ShortEnd) -> ShortWay:
        return ShortWay(asked, None, action, why, dangers)

    def ask(name: str) -> ShortWay:
        return ShortWay(asked, name, None, None, dangers)

    if case.settings.hurt:
        return end(Action.KEEP_AWAY, ShortEnd.HURT)
    if THING in tables.characters and THING not in asked:
        return ask(THING)
    left = most - len(asked)
    allowed = reading.verdict.actions
    if Action.MOVE in allowed:
        brood = _brood_said(tables, case)
        if brood is None and left > 0:
            return ask(BROOD)
        return end(Action.MOVE, ShortEnd.CLEAR) if brood else end(Action.LEAVE, ShortEnd.BROOD_UNSEEN)
    if Action.LEAVE in allowed:
        return end(Action.LEAVE, ShortEnd.BROOD if _is_animal(case) else ShortEnd.SIGN)
    name = None
    if left > 0 and (len(asked) < LEAST_ASKED or _can_clear(tables, reading, asked, left)):
        name = _best(tables, reading, asked)
    if name is not None:
        return ask(name)
    if not reading.events:
        return end(Action.KEEP_AWAY, ShortEnd.NOTHING_SAID)
    return end(Action.KEEP_AWAY, ShortEnd.DANGER if dangers else ShortEnd.UNKNOWN)


def _asked(tables: Tables, case: Case) -> tuple[str, ...]:
    """The characters that the short way has an answer to."""
    found = [THING] if case.settings.thing and case.note(THING) is None else []
    for answer in case.answers:
        if not isinstance(answer, LeadAnswer):
            name = answer.character
            if name == THING or is_quick(tables.characters[name].character):
                found.append(name)
    return tuple(found)


def _best(tables: Tables, reading: Reading, asked: Collection[str]) -> str | None:
    """The quick character that brings most for its seconds; None where none brings anything."""
    quick = _fitting(tables, reading.case) - set(asked)
    passed = set(tables.characters) - quick
    could = {name for name in quick if clears(tables, reading, name)}
    log_prior = log_prior_of(tables, reading.case.settings)
    found, stand, named = reading.events, reading.standing, reading.not_ruled_out
    best = next_questions(tables, log_prior, found, stand, named, Evidence.OWN_EYES, passed, could)
    if best:
        return best[0].character
    # While a sign may still be a misread animal, nothing of the sign may seem to apply to enough of the standing.
    is_sign = not _is_animal(reading.case)
    own = sorted((tables.characters[name].character.seconds, name) for name in quick) if is_sign else []
    return own[0][1] if own else None


def _can_clear(tables: Tables, reading: Reading, asked: Collection[str], left: int) -> bool:
    """Whether the questions left could still rule out every danger by count.

    A bound from above: for each result still open, the independence groups with a quick character that is not
    answered yet and whose report could count against it, at most one answer each. One question is kept for the brood.
    """
    named = {taxon: one.group for one in reading.not_ruled_out for taxon in one.taxa}
    rows = [row for taxon in named for row in tables.rows_of[taxon] if tables.rows[row].danger == named[taxon]]
    if not rows:
        return True
    before = clearing_counts(tables, reading.events)[rows]
    gains = np.zeros((len(rows),), dtype=np.int64)
    groups: dict[str, Bools] = {}
    fitting = _fitting(tables, reading.case)
    for name, table in tables.characters.items():
        if name in asked or name not in fitting or table.character.never_clears:
            continue
        could = np.zeros(len(rows), dtype=bool)
        for state in table.character.state_ids:
            event = report_event(tables, Report(name, frozenset({state}), evidence=Evidence.OWN_EYES))
            if event.may_clear:
                could |= (event.against & ~event.inapplicable)[rows]
        old = groups.get(table.character.group)
        groups[table.character.group] = could if old is None else old | could
    for could in groups.values():
        gains += could
    room = left - (0 if BROOD in asked or BROOD not in tables.characters else 1)
    missing = np.maximum(0, tables.weights.ruled_out_answers - before)
    return bool((missing <= np.minimum(gains, room)).all())


def _brood_said(tables: Tables, case: Case) -> bool | None:
    """Whether it was seen that neither eggs nor young are with it; None where that was not asked.

    A key that cannot ask it cannot know it either.
    """
    if BROOD not in tables.characters:
        return False
    said = case.note(BROOD)
    if not isinstance(said, Report):
        return None
    character = tables.characters[BROOD].character
    is_sure = said.view_seen and said.sureness is Sureness.SURE
    return is_sure and all(character.state(state).absence for state in said.states)


def _is_animal(case: Case) -> bool:
    things = _things(case)
    return not things or ANIMAL in things
