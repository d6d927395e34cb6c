"""The file a plot is written to."""

from __future__ import annotations

from pathlib import Path

from keyapp.errors import UserError

__all__ = ["require_place", "write_plot"]


def require_place(plot: Path | None) -> None:
    """Raise UserError where a plot cannot be written: told before the long part of a command, not after it."""
    if plot is None:
        return
    if plot.is_dir():
        raise UserError("The plot could not be written.", where=str(plot), fix="This is a folder: name a file in it.")
    if not plot.absolute().parent.is_dir():
        raise UserError("The plot could not be written.", where=str(plot), fix="Name a folder that is there.")


def write_plot(plot: Path, svg: str) -> None:
    """Write SVG text; UserError where the file cannot be written."""
    try:
        plot.write_text(svg, encoding="utf-8")
    except OSError as error:
        raise UserError(
            "The plot could not be written.", where=str(plot), fix=f"{error.strerror}: choose another place."
        ) from error
