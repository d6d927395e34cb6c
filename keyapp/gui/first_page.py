"""The first couplet as it was last worked out, kept so that it shows before the key is open.

What is kept is for showing only. It counts once the key itself is open and says the same, word for
word: until then no answer to it is given, and where the key says something else it is thrown away.
Damage, an older form, a missing file: all the same, there is no such page then. Always safe to delete.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from keyapp.model import KeySet
    from keyapp.wording import Words

__all__ = ["FirstLead", "FirstPage", "first_page", "place_of", "read_first_page", "write_first_page"]

FORMAT = 1


class FirstLead(NamedTuple):
    """A lead as it is shown: its text, its figure, and what the figure shows in words."""

    says: str
    figure: str
    alt: str


class FirstPage(NamedTuple):
    """All that the page of the first couplet shows. Texts are in the language of the window."""

    couplet: str
    safety: str
    asks: str
    look: str
    leads: tuple[FirstLead, FirstLead]
    cant_tell: str
    neither: str


def first_page(keyset: KeySet, words: Words, couplet_id: str, safety: str, language: str) -> FirstPage:
    """The page of this couplet, from the key. `safety` is the safety line that stands above it."""
    couplet = keyset.couplets[couplet_id]
    held = dict.fromkeys(c for lead in couplet.leads for c in lead.holds)
    looks = dict.fromkeys(keyset.characters[c].look.say(language) for c in held)

    def of(which: int) -> FirstLead:
        lead = couplet.leads[which]
        figure = keyset.figures.get(lead.figure)
        return FirstLead(lead.says.say(language), lead.figure, figure.alt.say(language) if figure else "")

    return FirstPage(
        couplet_id,
        safety,
        couplet.asks.say(language),
        " ".join(text for text in looks if text),
        (of(0), of(1)),
        words.fixed("choice.cant-tell"),
        words.fixed("choice.neither"),
    )


def place_of(cache: Path, keys: Path, language: str) -> Path:
    """The file, in the folder `cache`, of the first page of the key in `keys`."""
    name = hashlib.sha256(os.fsencode(keys.absolute())).hexdigest()[:16]
    return cache / f"first-{language}-{name}.json"


def read_first_page(path: Path) -> FirstPage | None:
    """The page that is kept, or None where there is none or anything about it is odd."""
    try:
        kept = json.loads(path.read_bytes())
        body = kept["page"]
        if kept["format"] != FORMAT or kept["sum"] != _sum(body):
            return None
        leads = tuple(FirstLead(*lead) for lead in body["leads"])
        page = FirstPage(**{**body, "leads": leads})
        texts = [text for part in (page[:4], *leads, page[5:]) for text in part]
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return None
    return page if len(leads) == 2 and all(isinstance(text, str) for text in texts) else None


def write_first_page(path: Path, page: FirstPage) -> None:
    """Keep the page, whole or not at all; trouble with the disk is no error."""
    body = page._asdict()
    text = json.dumps({"format": FORMAT, "sum": _sum(body), "page": body}, ensure_ascii=False)
    part = path.with_suffix(f".{os.getpid()}.part")
    with contextlib.suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        part.write_text(text, encoding="utf-8")
        part.replace(path)


def _sum(body: object) -> str:
    return hashlib.sha256(json.dumps(body, ensure_ascii=False, sort_keys=True).encode()).hexdigest()
