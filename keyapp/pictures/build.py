"""Writes the figures of a key as SVG files."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from keyapp.model import Figure
from keyapp.pictures.recipe import draw
from keyapp.pictures.svg import svg_text

__all__ = ["figure_svg", "render_all"]


def figure_svg(figure: Figure, lang: str = "en") -> str:
    """The SVG text of one figure, its alt text as title. UserError when the figure cannot be drawn."""
    return svg_text(draw(figure), title=figure.alt.say(lang))


def render_all(figures: Mapping[str, Figure], out_folder: Path) -> list[Path]:
    """Write `<id>.svg` for every figure into the folder and return the paths; files already right stay untouched."""
    out_folder.mkdir(parents=True, exist_ok=True)
    written: list[Path] = []
    for figure_id in sorted(figures):
        path = out_folder / f"{figure_id}.svg"
        text = figure_svg(figures[figure_id])
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8", newline="\n")
        written.append(path)
    return written
