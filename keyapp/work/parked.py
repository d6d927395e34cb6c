"""Enquiries put aside for a while: what is kept of each, and the shelf on disk that holds them."""

from __future__ import annotations

import datetime
import json
import re
import uuid
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from keyapp.errors import UserError
from keyapp.model import Case
from keyapp.work.casefile import case_in, case_out
from keyapp.work.whole_file import write_whole

__all__ = [
    "LONGEST_LABEL",
    "MOST_PARKED",
    "MOST_STEPS",
    "Parked",
    "Place",
    "Shelf",
    "check_label",
    "fresh_id",
    "parked_from",
    "parked_text",
]

FORMAT = 1
MOST_PARKED = 40
"""A desk with more open enquiries than this has lost sight of them."""
MOST_STEPS = 60
"""So many steps to undo are kept, and as many to redo; older ones are let go."""
LONGEST_LABEL = 60
_REACH = re.compile(r"@|(?:\d[\s().+-]*){7,}")
"""An e-mail address, or seven digits of a telephone number."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where it was left: the page, and the couplet or character it was about (may be empty)."""

    page: str
    about: str = ""


@dataclass(frozen=True, slots=True)
class Parked:
    """An enquiry put aside.

    Attributes:
        id: names its file.
        label: own words to find it by; never contact details.
        since: when it was put aside.
        case, undo, redo: the case and the steps around it, nearest last.
        place: where to come back to.
        lost: steps to undo that were let go because there were too many.
        dangers: danger groups that were not ruled out when it was put aside, likeliest first.
        is_clear: nothing dangerous and nothing unknown was left then.
    """

    id: str
    label: str
    since: datetime.datetime
    case: Case
    place: Place
    undo: tuple[Case, ...] = ()
    redo: tuple[Case, ...] = ()
    lost: int = 0
    dangers: tuple[str, ...] = ()
    is_clear: bool = False

    def trimmed(self) -> Parked:
        """With no more steps than are kept."""
        gone = max(0, len(self.undo) - MOST_STEPS)
        return replace(self, undo=self.undo[gone:], redo=self.redo[-MOST_STEPS:], lost=self.lost + gone)


def check_label(label: str) -> str:
    """The label in one line; UserError where it is too long or holds a telephone number or an address."""
    plain = " ".join(label.split())
    if len(plain) > LONGEST_LABEL:
        raise UserError("The label is too long.", where=f"{len(plain)} letters", fix=f"Use up to {LONGEST_LABEL}.")
    if _REACH.search(plain):
        raise UserError(
            "The label holds a telephone number or an e-mail address.",
            where="label",
            fix="Leave it out: say what and where, as in “web in the shed”.",
        )
    return plain


def parked_text(parked: Parked) -> str:
    """A parked enquiry as JSON."""
    return json.dumps(
        {
            "format": FORMAT,
            "label": parked.label,
            "since": parked.since.isoformat(),
            "page": parked.place.page,
            "about": parked.place.about,
            "case": case_out(parked.case),
            "undo": [case_out(case) for case in parked.undo],
            "redo": [case_out(case) for case in parked.redo],
            "lost": parked.lost,
            "dangers": list(parked.dangers),
            "clear": parked.is_clear,
        },
        ensure_ascii=False,
    )


def parked_from(name: str, text: str) -> Parked:
    """Read it back; UserError where the text is damaged or too new. `name` becomes its id."""
    try:
        data: dict[str, Any] = json.loads(text)
        if data["format"] > FORMAT:
            raise UserError("A parked enquiry was written by a newer version.", fix="Update the program.")
        since = datetime.datetime.fromisoformat(data["since"])
        words = [data[part] for part in ("label", "page", "about")]
        if (
            not all(isinstance(word, str) for word in words)
            or not isinstance(data["lost"], int)
            or since.tzinfo is None
        ):
            raise TypeError("not text")
        undo, redo = (tuple(case_in(one) for one in data[part]) for part in ("undo", "redo"))
        place = Place(data["page"], data["about"])
        dangers = tuple(data["dangers"])
        if not all(isinstance(group, str) for group in dangers) or not isinstance(data["clear"], bool):
            raise TypeError("dangers")
        case, lost = case_in(data["case"]), data["lost"]
        return Parked(name, data["label"], since, case, place, undo, redo, lost, dangers, data["clear"])
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError) as error:
        raise UserError("A parked enquiry is damaged and cannot be read.", where=name, fix="Ask it anew.") from error


def fresh_id() -> str:
    """An id that no parked enquiry has."""
    return uuid.uuid4().hex


class Shelf:
    """Parked enquiries, each in a file of its own, written whole or not at all."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder / "parked"

    def all(self) -> tuple[tuple[Parked, ...], tuple[UserError, ...]]:
        """Everything parked, longest parked first, and a problem for each file that was set aside as damaged."""
        found, problems = [], []
        for path in sorted(self.folder.glob("*.json")) if self.folder.is_dir() else []:
            try:
                found.append(parked_from(path.stem, path.read_text(encoding="utf-8")))
            except (OSError, UnicodeDecodeError, UserError) as error:
                aside = path.with_suffix(".damaged")
                try:
                    path.replace(aside)
                except OSError:
                    aside = path
                what = error.what if isinstance(error, UserError) else "A parked enquiry could not be read."
                problems.append(UserError(what, where=str(aside), fix="It was set aside; the others are there."))
        return tuple(sorted(found, key=lambda one: (one.since, one.id))), tuple(problems)

    def put(self, parked: Parked) -> None:
        """Write one; raises UserError if the disk refuses."""
        write_whole(self.folder / f"{parked.id}.json", parked_text(parked))

    def remove(self, parked_id: str) -> None:
        """Let one go."""
        (self.folder / f"{parked_id}.json").unlink(missing_ok=True)
