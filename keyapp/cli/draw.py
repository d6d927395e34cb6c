"""`keyapp draw`: figures from their description to SVG."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.pictures.build import render_all
from keyapp.work.names import nearest

__all__ = ["run"]


def run(out: Terminal, folder: Path, figures: Sequence[str], target: Path) -> int:
    """Draw the named figures, or all; returns 0."""
    known = require_keyset(folder).figures
    for figure in figures:
        if figure not in known:
            raise UserError(f"There is no figure “{figure}”.", fix=f"Use {nearest(figure, known)}.")
    chosen = {name: known[name] for name in figures} if figures else known
    render_all(chosen, target)
    out.say(f"{len(chosen)} figures drawn into {target}")
    return 0
