"""The find sheet in words: everything that is printed on it, before anything is laid out."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from keyapp.engine import Action, Claim, Reading, Tables, second_look
from keyapp.model import COMMON_PRACTICE, FROM_MEMORY, Answer, Caution, Contact, ContactKind, Settings
from keyapp.wording.words import Words

__all__ = [
    "CautionText",
    "ContactText",
    "DangerText",
    "FoundText",
    "SheetText",
    "SourceList",
    "author_of",
    "call_lines",
    "call_numbers",
    "capital",
    "caution_text",
    "contact_notes",
    "contact_text",
    "contacts_of",
    "is_named",
    "sheet_text",
]

PHOTO_LINES = ("sheet.photo-1", "sheet.photo-2", "sheet.photo-3", "sheet.photo-4", "sheet.photo-5")
FOR_A_PERSON = (ContactKind.EMERGENCY, ContactKind.POISON)
CONTACT_ORDER = (
    *FOR_A_PERSON,
    ContactKind.EXTENSION,
    ContactKind.HEALTH,
    ContactKind.VET,
)
"""Contacts as they are printed; a plant regulator is for the office to call, not for the person."""

CLOSEST = 4
"""As many groups are listed as closest where none may be named."""


@dataclass(frozen=True, slots=True)
class FoundText:
    """A group that may be named: its name, how well it fits in words, and the figure of its likeliest result."""

    name: str
    chance: str
    figure: str


@dataclass(frozen=True, slots=True)
class DangerText:
    """A danger not ruled out: its name, what would settle it, how to look hands off, and its figure."""

    name: str
    settle: str
    look: str
    figure: str


@dataclass(frozen=True, slots=True)
class CautionText:
    """The cautions about one result. `says` ends with the numbers of its sources; `dates` apply to all of them."""

    about: str
    says: tuple[str, ...]
    dates: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ContactText:
    """Someone to turn to: name, telephone (may be empty), the rest in one line, and what for."""

    name: str
    telephone: str
    reach: str
    when: str


@dataclass(frozen=True, slots=True)
class SheetText:
    """A find sheet in words, in the order it is printed.

    Attributes:
        kicker, title, names, why: what the sheet is, the claim, the groups it is one of, and why it is no firmer.
        call, numbers: what to do where someone is hurt, and the telephone numbers in it.
        hurt, signs: where someone is hurt: the line above, and the signs for the emergency number.
        safety, is_open, dangers: the safety line, whether a danger is open, and each of them.
        found_lead, found: the line above the groups that may be it, and those.
        actions: line and reason of what may be done, most careful first.
        photo: how to photograph it.
        cautions: what to beware of, dangers first.
        change: what could change the answer, with the answers to check again under each line.
        told, answers: what was told, set straight; the answers as given.
        contacts, contact_notes: whom to turn to, and lines about them.
        sources, short_sources: numbered from 1: in full, and by publisher and year.
        limits, dated, edition, author: the foot.
    """

    kicker: str
    title: str
    names: str
    why: tuple[str, ...]
    call: tuple[str, ...]
    numbers: tuple[str, ...]
    hurt: str
    signs: CautionText | None
    safety: str
    is_open: bool
    dangers: tuple[DangerText, ...]
    found_lead: str
    found: tuple[FoundText, ...]
    actions: tuple[tuple[str, str], ...]
    photo: tuple[str, ...]
    cautions: tuple[CautionText, ...]
    no_review: tuple[str, ...]
    change: tuple[tuple[str, tuple[str, ...]], ...]
    told: tuple[str, ...]
    answers: tuple[str, ...]
    contacts: tuple[ContactText, ...]
    contact_notes: tuple[str, ...]
    sources: tuple[str, ...]
    short_sources: tuple[str, ...]
    limits: str
    dated: str
    edition: str
    author: str


def is_named(reading: Reading) -> bool:
    """Whether a result may stand on paper: the key is finished and the verdict names something."""
    return bool(reading.events) and reading.current is None and reading.verdict.claim is not Claim.UNKNOWN


def sheet_text(words: Words, tables: Tables, reading: Reading, date: datetime.date, edition: str) -> SheetText:
    """A reading as a sheet to keep, dated `date`.

    Whatever is not finished or not known is put as "not identified", with the most careful action alone:
    on paper nobody can see that more was to come.
    """
    sources = SourceList(words)
    named = is_named(reading)
    if not named:
        # What is not named is not listed at length either: what comes closest, and every danger.
        listed = reading.verdict.candidates[:CLOSEST] if reading.events else ()
        reading = replace(reading, verdict=replace(reading.verdict, candidates=listed))
    settings = reading.case.settings
    hurt = settings.hurt is True
    signs = caution_text(words, sources, "", words.keyset.emergency.signs, date) if hurt else None
    cautions = tuple(caution_text(words, sources, about, some, date) for about, some in words.cautions(reading))
    contacts = contacts_of(words, settings)
    return SheetText(
        kicker=words.fixed("sheet.kicker"),
        title=words.heading(reading) if named else words.fixed("unknown"),
        names=_names(words, reading) if named and reading.verdict.claim is Claim.ONE_OF else "",
        why=tuple(_why(words, reading, named)),
        call=call_lines(words, settings),
        numbers=call_numbers(words, settings),
        hurt=words.fixed("sheet.hurt") if hurt else "",
        signs=signs,
        safety=words.safety_line(reading) if named or reading.not_ruled_out else words.fixed("safety.unknown"),
        is_open=bool(reading.not_ruled_out),
        dangers=tuple(_dangers(words, reading)),
        found_lead="" if named or not reading.events else words.fixed("sheet.closest"),
        found=tuple(_found(words, reading)),
        actions=tuple(_actions(words, reading, named)),
        photo=tuple(words.fixed(entry) for entry in PHOTO_LINES),
        cautions=cautions,
        no_review=tuple(_no_review(words, reading)),
        change=tuple(_change(words, tables, reading)),
        told=tuple(_told(words, reading, named)),
        answers=tuple(words.answer(answer) for answer in _seen(reading)),
        contacts=tuple(contact_text(words, one) for one in contacts),
        contact_notes=contact_notes(words, settings),
        sources=sources.lines,
        short_sources=sources.short_lines,
        limits=words.fixed("sheet.limits"),
        dated=words.fixed("sheet.of-date", date=date.isoformat()),
        edition=words.fixed("sheet.edition", edition=edition),
        author=author_of(words, settings),
    )


class SourceList:
    """Numbers sources in the order they are first cited."""

    def __init__(self, words: Words) -> None:
        self._words = words
        self._cited: list[str] = []

    def cite(self, basis: Iterable[str]) -> str:
        """The mark after a statement: numbers of its sources, and words where it has none."""
        numbers, plain = [], []
        for one in basis:
            if one in (COMMON_PRACTICE, FROM_MEMORY):
                plain.append(one)
                continue
            if one not in self._cited:
                self._cited.append(one)
            numbers.append(str(self._cited.index(one) + 1))
        # No space between numbers, so that a line does not break there.
        marks = [",".join(numbers), *plain]
        return f"[{', '.join(mark for mark in marks if mark)}]" if numbers or plain else ""

    @property
    def lines(self) -> tuple[str, ...]:
        """The sources, each a line, number 1 first."""
        return tuple(f"[{number}] {self._words.basis([one])}" for number, one in enumerate(self._cited, start=1))

    @property
    def short_lines(self) -> tuple[str, ...]:
        """The same by publisher and year, for where there is little room."""
        found = []
        for number, one in enumerate(self._cited, start=1):
            source = self._words.keyset.sources.get(one)
            year = f", {source.year}" if source and source.year else ""
            found.append(f"[{number}] {source.publisher}{year}" if source else f"[{number}] {one}")
        return tuple(found)


def _why(words: Words, reading: Reading, named: bool) -> Iterable[str]:
    if not reading.events:
        yield words.fixed("sheet.nothing")
        return
    if reading.current is not None:
        yield words.fixed("sheet.unfinished")
    if named or reading.verdict.claim is Claim.UNKNOWN:
        yield words.reason(reading)
    if named:
        if words.reason(reading) == words.fixed(f"claim-why.{Claim.ONE_OF}"):
            # Every other reason says by itself what the answers rest on.
            yield words.fixed("sheet.rests-on", evidence=words.fixed(f"evidence.{reading.verdict.basis}"))
        if line := words.led_line(reading):
            yield line


def _names(words: Words, reading: Reading) -> str:
    return " · ".join(capital(words.group(one.group)) for one in reading.verdict.candidates)


def call_lines(words: Words, settings: Settings) -> tuple[str, ...]:
    """What to do at once where a person may be hurt."""
    return words.referral(settings)[: len(call_numbers(words, settings))]


def call_numbers(words: Words, settings: Settings) -> tuple[str, ...]:
    """The numbers to call for a person, as far as there are any; one for each line of `call_lines`."""
    contacts = words.contacts(settings)
    found = {c.kind: c.telephone for c in reversed(contacts)}
    return tuple(found[kind] for kind in FOR_A_PERSON if kind in found)


def _dangers(words: Words, reading: Reading) -> Iterable[DangerText]:
    keyset, language = words.keyset, words.language
    for danger, settle in zip(reading.not_ruled_out, words.settle_lines(reading), strict=True):
        best = reading.settles.get(danger.group)
        look = keyset.characters[best.character].look.say(language) if best else ""
        name = words.danger(danger.group)
        figure = keyset.taxa[danger.taxa[0]].figure
        yield DangerText(capital(name), settle, words.fixed("sheet.look", look=look) if look else "", figure)


def _found(words: Words, reading: Reading) -> Iterable[FoundText]:
    if not reading.events:
        return
    for one in reading.verdict.candidates:
        figure = words.keyset.taxa[one.taxa[0]].figure if one.taxa else ""
        yield FoundText(capital(words.group(one.group)), words.chance(one.chance), figure)


def _actions(words: Words, reading: Reading, named: bool) -> Iterable[tuple[str, str]]:
    """What the gate allows; nothing but keeping away where nothing may be named or anything is open."""
    if not named or reading.not_ruled_out or Action.KEEP_AWAY in reading.verdict.actions:
        yield words.fixed("action.keep-away"), words.fixed("action.keep-away-why")
        return
    for _, line, why in words.action_lines(reading):
        yield line, why


def caution_text(
    words: Words, sources: SourceList, about: str, cautions: Sequence[Caution], date: datetime.date
) -> CautionText:
    """Cautions about one result, with their sources numbered and their dates; told where one is past review."""
    dates = list(dict.fromkeys((one.checked, one.review_by) for one in cautions))
    says = []
    for one in cautions:
        # One line of dates serves a whole block where they agree, which they mostly do.
        own = "" if len(dates) == 1 else " " + _dated(words, one.checked, one.review_by, date)
        says.append(f"{one.says.say(words.language)} {sources.cite(one.basis)}".rstrip() + own)
    shared = (_dated(words, *dates[0], date),) if len(dates) == 1 else ()
    return CautionText(about, tuple(says), shared)


def _dated(words: Words, checked: datetime.date, review: datetime.date, date: datetime.date) -> str:
    line = words.fixed("sheet.dated", checked=checked.isoformat(), review=review.isoformat())
    return f"{line} {words.fixed('sheet.stale')}" if date > review else line


def _no_review(words: Words, reading: Reading) -> Iterable[str]:
    """Groups that may be named and of which no caution is on file: that is said, not passed over."""
    if not reading.events:
        return
    for one in reading.verdict.candidates:
        if not any(words.keyset.taxa[taxon].cautions for taxon in one.taxa):
            yield words.fixed("sheet.no-review", name=capital(words.group(one.group)))


def _change(words: Words, tables: Tables, reading: Reading) -> Iterable[tuple[str, tuple[str, ...]]]:
    for line in words.contradiction_lines(reading):
        yield line, ()
    if reading.go_back:
        asks = words.keyset.couplets[reading.go_back].asks.say(words.language)
        yield words.fixed("neither-twice", couplet=asks), ()
    together: dict[tuple[Answer, ...], list[str]] = {}
    for look in second_look(tables, reading):
        together.setdefault(look.answers, []).append(words.danger(look.group))
    for answers, names in together.items():
        yield words.fixed("second-look", name=words.listing(names)), tuple(words.answer(one) for one in answers)
    yield words.would_change(reading), ()


def _told(words: Words, reading: Reading, named: bool) -> Iterable[str]:
    where = _where(words, reading.case.settings)
    if where:
        yield words.fixed("sheet.where", where=where)
    told = " ".join(reading.case.settings.told.split())
    if not told:
        return
    yield words.fixed("told", told=told)
    yield from words.told_facts(told)
    if named:
        names = [words.group(one.group) for one in reading.verdict.candidates]
        yield words.fixed("sheet.points", names=words.listing(names))


def _where(words: Words, settings: Settings) -> str:
    """Place, month and spot as far as they are known."""
    keyset, language = words.keyset, words.language
    region, spot = keyset.regions.get(settings.region or ""), keyset.spots.get(settings.spot or "")
    parts = [
        spot.label.say(language) if spot else "",
        region.name.say(language) if region else settings.region or "",
        words.fixed(f"month.{settings.month}") if settings.month else "",
    ]
    return ", ".join(part for part in parts if part)


def _seen(reading: Reading) -> Iterable[Answer]:
    """Answers as they were given, without those that the way through the key no longer meets."""
    return (answer for answer in reading.case.answers if answer not in reading.walk.set_aside)


def contacts_of(words: Words, settings: Settings) -> tuple[Contact, ...]:
    """Contacts of the place by kind, nearest first; of the further ones those with a number of their own."""
    found = words.contacts(settings)
    kept: list[Contact] = []
    for kind in CONTACT_ORDER:
        of_kind = [c for c in found if c.kind is kind]
        numbers = {c.telephone: c for c in reversed(of_kind) if c.telephone}
        kept += [c for c in of_kind if c is of_kind[0] or c in numbers.values()]
    return tuple(kept)


def contact_notes(words: Words, settings: Settings) -> tuple[str, ...]:
    """Lines about whom to turn to that no contact says by itself."""
    lines = words.referral(settings)[len(call_numbers(words, settings)) :]
    named = any(c.kind is ContactKind.EXTENSION and c.telephone for c in contacts_of(words, settings))
    return lines[1:] if named else lines


def contact_text(words: Words, contact: Contact) -> ContactText:
    """A contact in words."""
    language = words.language
    reach = " · ".join(part for part in (contact.hours.say(language), contact.web) if part)
    # When to call for a person stands at the top of the sheet.
    when = "" if contact.kind in FOR_A_PERSON else contact.when.say(language)
    return ContactText(contact.name.say(language), contact.telephone, reach, when)


def author_of(words: Words, settings: Settings) -> str:
    """Who hands the paper over: the office of the place where it has a number, and the program."""
    contacts = contacts_of(words, settings)
    office = next((c for c in contacts if c.kind is ContactKind.EXTENSION and c.telephone), None)
    return words.fixed("sheet.author", office=office.name.say(words.language)) if office else "keyapp"


def capital(name: str) -> str:
    """A name as it begins a line."""
    return name[:1].upper() + name[1:]
