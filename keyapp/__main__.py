"""The door: no arguments open the window, anything else goes to the terminal commands."""

from __future__ import annotations

import sys

__all__ = ["main"]


def main(argv: list[str] | None = None) -> int:
    """Start the window or a terminal command; returns the exit code."""
    arguments = sys.argv[1:] if argv is None else argv
    if arguments:
        from keyapp.cli.main import run

        return run(arguments)
    from keyapp.gui.app import run as run_window

    return run_window([])


if __name__ == "__main__":
    sys.exit(main())
