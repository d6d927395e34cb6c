"""`keyapp card`: the dangerous few of a region and month beside their doubles, on one page (PDF)."""

from __future__ import annotations

from pathlib import Path

from keyapp.cli.open import open_tables
from keyapp.cli.paper_file import day_of, edition_of, require_file, write_paper
from keyapp.cli.terminal import Terminal
from keyapp.folders import images_folder
from keyapp.sheets import Paper, card_pdf, known_region
from keyapp.wording import Words

__all__ = ["run"]


def run(
    out: Terminal,
    folder: Path,
    region: str,
    month: int,
    target: Path,
    paper: str,
    language: str,
    date: str | None = None,
) -> int:
    """Write the county card to `target`; returns 0. Raises UserError for an unknown region or month."""
    day = day_of(date)
    require_file(target)
    tables = open_tables(folder)
    content = card_pdf(
        tables,
        known_region(tables.keyset, region),
        month,
        Words(tables.keyset, language),
        images=images_folder(),
        date=day,
        edition=edition_of(folder),
        paper=Paper(paper),
    )
    write_paper(target, content)
    out.say(f"Card written: {target}")
    return 0
