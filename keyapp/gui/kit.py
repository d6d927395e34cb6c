"""What every widget may need to draw itself, handed to it when it is made."""

from __future__ import annotations

from dataclasses import dataclass

from keyapp.gui.figures import Figures
from keyapp.gui.look import Look

__all__ = ["Kit"]


@dataclass(frozen=True, slots=True)
class Kit:
    """The look in force and the figures."""

    look: Look
    figures: Figures
