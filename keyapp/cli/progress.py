"""The progress bar of a long command."""

from __future__ import annotations

import sys

__all__ = ["show_progress"]


def show_progress(done: int, total: int) -> None:
    """Draw the bar anew on the error stream; nothing where that is not a terminal."""
    if sys.stderr.isatty():
        end = "\n" if done == total else ""
        sys.stderr.write(f"\r[{'#' * (40 * done // total):<40}] {done}/{total}{end}")
        sys.stderr.flush()
