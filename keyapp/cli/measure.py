"""`keyapp measure`: how long a key is, where it errs, and what no key can beat."""

from __future__ import annotations

from pathlib import Path

from keyapp.cli.open import open_tables
from keyapp.cli.plot_file import require_place, write_plot
from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.measure import json_text, measure, plain_text, svg_plot
from keyapp.model import KeySet, Settings
from keyapp.work.names import nearest

__all__ = ["run"]


def run(out: Terminal, folder: Path, as_json: bool, plot: Path | None, region: str | None, month: int | None) -> int:
    """Measure the key in `folder`, for a region and a month (1-12) where given; returns 0.

    With `plot`, an SVG file is written there as well. Raises UserError for a region that the key does not know, a
    month that is none, or a file that cannot be written.
    """
    tables = open_tables(folder)
    if region is not None:
        known = _places(tables.keyset)
        if region not in known:
            raise UserError(f"There is no region “{region}”.", fix=f"Use {nearest(region, known)}.")
    if month is not None and not 1 <= month <= 12:
        raise UserError(f"There is no month {month}.", fix="Give a number from 1 to 12.")
    require_place(plot)
    measures = measure(tables, Settings(region=region, month=month))
    if plot is not None:
        write_plot(plot, svg_plot(measures))
    out.say(json_text(measures) if as_json else plain_text(measures))
    return 0


def _places(keyset: KeySet) -> set[str]:
    """Region ids and the state codes they cover."""
    return {*keyset.regions, *(state for region in keyset.regions.values() for state in region.states)}
