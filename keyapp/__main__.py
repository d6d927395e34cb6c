"""The door: no arguments open the window, anything else goes to the terminal commands."""

from __future__ import annotations

import io
import sys

__all__ = ["main"]


def main(argv: list[str] | None = None) -> int:
    """Start the window or a terminal command; returns the exit code."""
    arguments = sys.argv[1:] if argv is None else argv
    if arguments:
        from keyapp.cli.main import run

        _read_and_write_anything()
        return run(arguments)
    from keyapp.gui.app import run as run_window

    return run_window([])


def _read_and_write_anything() -> None:
    """Letters that the terminal's encoding does not have are replaced; they must not end the program."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


if __name__ == "__main__":
    sys.exit(main())
