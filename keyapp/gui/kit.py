"""What every widget may need to draw itself, handed to it when it is made."""

from __future__ import annotations

from typing import NamedTuple

from keyapp.gui.figures import Figures
from keyapp.gui.look import Look

__all__ = ["Kit"]


class Kit(NamedTuple):
    """The look in force and the figures."""

    look: Look
    figures: Figures
