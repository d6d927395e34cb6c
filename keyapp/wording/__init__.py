"""The program's sentences about a reading, for window, terminal and paper alike."""

from keyapp.wording.words import Words

__all__ = ["Words"]
