"""`keyapp sheet CASE`: a case as a sheet to keep, on paper (PDF)."""

from __future__ import annotations

import json
from pathlib import Path

from keyapp.cli.ask_json import Desk
from keyapp.cli.open import open_tables
from keyapp.cli.paper_file import day_of, edition_of, require_file, write_paper
from keyapp.cli.terminal import Terminal
from keyapp.engine import Tables
from keyapp.errors import UserError
from keyapp.folders import images_folder
from keyapp.sheets import Paper, sheet_pdf
from keyapp.wording import Words
from keyapp.work import Enquiry
from keyapp.work.casefile import case_from_json

__all__ = ["read_enquiry", "run"]


def run(
    out: Terminal,
    folder: Path,
    file: Path,
    target: Path,
    paper: str,
    language: str,
    date: str | None = None,
    learned: Path | None = None,
) -> int:
    """Write the find sheet of the case in `file` to `target`; returns 0. Raises UserError."""
    day = day_of(date)
    require_file(target)
    tables = open_tables(folder, learned, out)
    words = Words(tables.keyset, language)
    enquiry = read_enquiry(tables, words, file)
    content = sheet_pdf(
        tables,
        enquiry.reading,
        words,
        images=images_folder(),
        date=day,
        edition=edition_of(folder, learned),
        paper=Paper(paper),
    )
    write_paper(target, content)
    out.say(f"Sheet written: {target}")
    return 0


def read_enquiry(tables: Tables, words: Words, file: Path) -> Enquiry:
    """The enquiry in a file: a kept enquiry, or the lines a script would send to `keyapp ask --json`.

    Raises UserError naming file and line.
    """
    try:
        text = file.read_text(encoding="utf-8")
    except OSError as error:
        raise UserError("The case could not be read.", where=str(file), fix=f"{error.strerror}: check it.") from error
    except UnicodeDecodeError as error:
        raise UserError("The case is not text.", where=str(file), fix="Name a case that was kept.") from error
    if not _is_lines(text):
        try:
            return Enquiry(tables, case_from_json(text))
        except UserError as error:
            raise UserError(error.what, where=error.where or str(file), fix=error.fix) from error
    desk = Desk(Enquiry(tables), words)
    for number, line in enumerate(text.splitlines(), start=1):
        if line.strip():
            reply = desk.answer(line)
            if not reply["ok"]:
                trouble = reply["error"]
                raise UserError(trouble["what"], where=f"{file}, line {number}", fix=trouble["fix"])
    return desk.enquiry


def _is_lines(text: str) -> bool:
    """Whether the first line is a whole request by itself."""
    first = next((line for line in text.splitlines() if line.strip()), "")
    try:
        data = json.loads(first)
    except (ValueError, RecursionError):
        return False
    return isinstance(data, dict) and "act" in data
