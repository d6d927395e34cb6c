"""Cases for the papers: observers walked through the shipped key, and what is read back from a PDF."""

from __future__ import annotations

import datetime
import io
import random
import re
from dataclasses import replace

import pypdf

from keyapp.engine import Reading, Tables, read_case
from keyapp.folders import images_folder
from keyapp.model import Case, Evidence, Report, Settings
from keyapp.sheets import Paper, sheet_pdf
from keyapp.wording import Words
from tests.keys.walks import Observer, seen_states

DAY = datetime.date(2026, 11, 25)
EDITION = "keyapp 0.1.0, key 0123abcd"
NAMES = (
    "widow",
    "recluse",
    "scorpion-hurt",
    "jumping",
    "unfinished",
    "nothing",
    "unknown",
    "contradiction",
    "centipede",
)


def walked(
    tables: Tables, taxon: str, *, reports: bool = False, evidence: Evidence = Evidence.WORDS, **settings
) -> Case:
    """The case of someone who answers every couplet right, and with `reports` says more besides."""
    chance = random.Random(1)
    found = tables.keyset.taxa[taxon]
    observer = Observer(tables, found, seen_states(found, chance), Settings(**settings), chance)
    case = observer.right_answers()
    for report in observer.reports(0) if reports else ():
        case = case.with_answer(report)
    return replace(case, answers=tuple(replace(answer, evidence=evidence) for answer in case.answers))


def case_of(tables: Tables, name: str) -> Case:
    """A case by name, from `NAMES`."""
    match name:
        case "widow":
            return walked(tables, "widow-black-female", region="AZ", month=7, told="just a house spider")
        case "recluse":
            return walked(tables, "recluse", region="demo-office", month=7, told="a wolf spider")
        case "scorpion-hurt":
            return walked(tables, "bark-scorpion", region="AZ", month=8, hurt=True)
        case "jumping":
            return walked(tables, "jumping-spider", region="demo-office", month=7, told="a black widow")
        case "unfinished":
            return Case(Settings(region="central"), walked(tables, "wolf-spider").answers[:2])
        case "nothing":
            return Case()
        case "unknown":
            return walked(tables, "insect-not-in-key", region="MO", month=6)
        case "contradiction":
            case = walked(tables, "wolf-spider", region="MO", month=6)
            return case.with_answer(Report("body-parts", frozenset({"one-oval"})))
        case _:
            return walked(tables, "house-centipede", reports=True, evidence=Evidence.VIEWS, region="MO", month=7)


def read_of(tables: Tables, name: str) -> Reading:
    """The reading of a case by name; each is worked out once."""
    key = ("reading in sheet tests", name)
    if key not in tables.memo:
        tables.memo[key] = read_case(tables, case_of(tables, name))
    return tables.memo[key]


def printed(tables: Tables, name: str, paper: Paper = Paper.LETTER, language: str = "en") -> bytes:
    """The PDF of a case by name; each is made once."""
    key = ("sheet in sheet tests", name, paper, language)
    if key not in tables.memo:
        words = Words(tables.keyset, language)
        tables.memo[key] = sheet_pdf(
            tables, read_of(tables, name), words, images=images_folder(), date=DAY, edition=EDITION, paper=paper
        )
    return tables.memo[key]


def pages_of(content: bytes) -> list[str]:
    """The text of each page, in one line of single spaces."""
    return [plain(page.extract_text()) for page in pypdf.PdfReader(io.BytesIO(content)).pages]


def text_of(content: bytes) -> str:
    """The text of all pages, without their feet."""
    return " ".join(re.sub(r"Date: \S+ · Edition: .{1,60}? \d of \d", "", page) for page in pages_of(content))


def plain(text: str) -> str:
    """Single spaces, and none where a line end may have put one."""
    return " ".join(text.split())


def squeezed(text: str) -> str:
    """Without any space: what a line end did to a text no longer matters."""
    return "".join(text.split())
