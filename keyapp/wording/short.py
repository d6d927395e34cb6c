"""The short way in sentences: one thing to do, why, and how."""

from __future__ import annotations

from dataclasses import dataclass

from keyapp.engine import Action, Reading, ShortEnd, ShortWay
from keyapp.model import Taxon
from keyapp.wording.words import Words

__all__ = ["MOVE_FIGURES", "PHOTO_FIGURE", "ShortText", "short_text"]

MOVE_FIGURES = ("moving-cover", "moving-slide", "moving-carry", "moving-release")
"""Figures of the steps with cup and card, in order."""
PHOTO_FIGURE = "photo-hands-off"
_KEEP = ("short.keep-1", "short.keep-2", "short.keep-3")
_PHOTO = ("sheet.photo-1", "sheet.photo-2", "sheet.photo-3", "sheet.photo-4", "sheet.photo-5")


@dataclass(frozen=True, slots=True)
class ShortText:
    """What to do, to be shown whole, in this order.

    Attributes:
        action, says, why: the one action, in words, and its reason.
        keep: what keeping away means; empty for the other actions.
        steps: figure and text of each step with cup and card; only where it may be moved.
        stop, advice: when to stop moving it, and what is advised for animals like it; with the steps.
        leaving: heading of what speaks for leaving it; empty while a danger is open.
        garden: what it does in a garden, each with its source.
        stay: how long it will stay.
        photo, ask: what to photograph and how; whom to ask.
    """

    action: Action
    says: str
    why: str
    keep: tuple[str, ...]
    steps: tuple[tuple[str, str], ...]
    stop: str
    advice: tuple[str, ...]
    leaving: str
    garden: tuple[tuple[str, str], ...]
    stay: str
    photo: tuple[str, ...]
    ask: tuple[str, ...]


def short_text(words: Words, reading: Reading, way: ShortWay) -> ShortText:
    """Sentences for an ended short way. What a garden has of it is said only where nothing dangerous is open."""
    action, why = way.action or Action.KEEP_AWAY, way.why or ShortEnd.UNKNOWN
    away, move = action is Action.KEEP_AWAY, action is Action.MOVE
    taxa = () if away else _likeliest(words, reading)
    says = words.fixed(f"action.{action}")
    return ShortText(
        action=action,
        says=says,
        why=_why(words, way, why),
        keep=tuple(words.fixed(entry) for entry in _KEEP) if away else (),
        steps=tuple((f, words.fixed(f"short.move-{n}")) for n, f in enumerate(MOVE_FIGURES, 1)) if move else (),
        stop=words.fixed("short.move-stop") if move else "",
        advice=_advice(words, taxa) if move else (),
        leaving="" if away else words.fixed("short.leaving" if move else "short.leave"),
        garden=() if away else _garden(words, taxa),
        stay="" if away else _stay(words, taxa),
        photo=tuple(words.fixed(entry) for entry in _PHOTO),
        ask=words.referral(reading.case.settings),
    )


def _why(words: Words, way: ShortWay, why: ShortEnd) -> str:
    names = words.listing([words.danger(group) for group in way.dangers])
    said = words.fixed(f"short.why.{why}", names=names)
    if why in (ShortEnd.UNKNOWN, ShortEnd.NOTHING_SAID, ShortEnd.HURT) and names:
        return f"{said} {words.fixed('short.why.danger', names=names)}"
    return said


def _likeliest(words: Words, reading: Reading) -> tuple[Taxon, ...]:
    """The likeliest result of each group that is listed, leaving out what stands for animals not in the key."""
    firsts = [words.keyset.taxa[one.taxa[0]] for one in reading.verdict.candidates if one.taxa]
    return tuple(taxon for taxon in firsts if not taxon.outside)


def _advice(words: Words, taxa: tuple[Taxon, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.says.say(words.language) for taxon in taxa for one in taxon.advice))


def _garden(words: Words, taxa: tuple[Taxon, ...]) -> tuple[tuple[str, str], ...]:
    found = [
        (one.garden.says.say(words.language), words.fixed("short.source", source=words.basis(one.garden.basis)))
        for one in taxa
        if one.garden is not None
    ]
    return tuple(dict.fromkeys(found)) or ((words.fixed("short.garden-none"), ""),)


def _stay(words: Words, taxa: tuple[Taxon, ...]) -> str:
    seasons = dict.fromkeys(one.season.say(words.language) for one in taxa)
    return " ".join(season for season in seasons if season) or words.fixed("short.stay-none")
