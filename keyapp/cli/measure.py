"""`keyapp measure`: how long a key is, where it errs, and what no key can beat."""

from __future__ import annotations

from pathlib import Path

from keyapp.cli.open import open_tables, require_month, require_region
from keyapp.cli.plot_file import require_place, write_plot
from keyapp.cli.terminal import Terminal
from keyapp.measure import json_text, measure, plain_text, svg_plot
from keyapp.model import Settings

__all__ = ["run"]


def run(out: Terminal, folder: Path, as_json: bool, plot: Path | None, region: str | None, month: int | None) -> int:
    """Measure the key in `folder`, for a region and a month (1-12) where given; returns 0.

    With `plot`, an SVG file is written there as well. Raises UserError for a region that the key does not know, a
    month that is none, or a file that cannot be written.
    """
    tables = open_tables(folder)
    if region is not None:
        require_region(tables.keyset, region)
    if month is not None:
        require_month(month)
    require_place(plot)
    measures = measure(tables, Settings(region=region, month=month))
    if plot is not None:
        write_plot(plot, svg_plot(measures))
    out.say(json_text(measures) if as_json else plain_text(measures))
    return 0

