"""The program's sentences about a reading, for window, terminal and paper alike."""

from keyapp.wording.asking import helps_line, stop_line, why_line
from keyapp.wording.called import feared_called, taxa_called
from keyapp.wording.fear import EvidenceLine, FearText, fear_text, feared_name
from keyapp.wording.words import Words

__all__ = [
    "EvidenceLine",
    "FearText",
    "Words",
    "fear_text",
    "feared_called",
    "feared_name",
    "helps_line",
    "stop_line",
    "taxa_called",
    "why_line",
]
