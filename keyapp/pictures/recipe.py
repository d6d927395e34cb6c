"""Finds the recipe that a figure names and lets it draw.

A recipe is a function from a mapping of settings to a drawing. Any module of this package that holds recipes
lists them in a module-level mapping `RECIPES`, name to function; they are found by looking through the package.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Mapping
from functools import cache

import keyapp.pictures
from keyapp.errors import ProgramError, UserError
from keyapp.model import Figure
from keyapp.pictures.settings import nearest
from keyapp.pictures.shape import Drawing

__all__ = ["Recipe", "draw", "recipes"]

Recipe = Callable[[Mapping[str, object]], Drawing]


@cache
def recipes() -> Mapping[str, Recipe]:
    """Every recipe of the program, by name; ProgramError when two modules use one name."""
    found: dict[str, Recipe] = {}
    for info in sorted(pkgutil.iter_modules(keyapp.pictures.__path__), key=lambda module: module.name):
        module = importlib.import_module(f"keyapp.pictures.{info.name}")
        for name, recipe in getattr(module, "RECIPES", {}).items():
            if name in found:
                raise ProgramError(f"two recipes are called {name!r}")
            found[name] = recipe
    return found


def draw(figure: Figure) -> Drawing:
    """Draw a figure.

    Raises:
        UserError: the recipe or one of its settings is unknown or out of range; names the figure and its file.
    """
    known = recipes()
    where = f"figure {figure.id}"
    if figure.draw not in known:
        raise UserError(f"unknown recipe {figure.draw!r}.", where=where, fix=nearest(figure.draw, known))
    try:
        return known[figure.draw](figure.with_)
    except UserError as error:
        raise UserError(error.what, where=f"{where}: {error.where}", fix=error.fix) from error
