"""The program's sentences about a reading, for window, terminal and paper alike."""

from keyapp.wording.asking import helps_line, stop_line, why_line
from keyapp.wording.called import Alike, Closeness, Name, NameRank, feared_called, names_in_use, names_like, taxa_called
from keyapp.wording.families import (
    basis_levels,
    basis_line,
    called_line,
    dated_line,
    kind_title,
    month_spans,
    science_line,
    season_line,
    shown_lines,
    size_line,
    sort_name,
    source_lines,
)
from keyapp.wording.fear import EvidenceLine, FearText, fear_text, feared_name
from keyapp.wording.found import FindText, better_line, find_text
from keyapp.wording.short import MOVE_FIGURES, PHOTO_FIGURE, ShortText, short_text
from keyapp.wording.words import Words

__all__ = [
    "MOVE_FIGURES",
    "PHOTO_FIGURE",
    "Alike",
    "Closeness",
    "EvidenceLine",
    "FearText",
    "FindText",
    "Name",
    "NameRank",
    "ShortText",
    "Words",
    "basis_levels",
    "basis_line",
    "better_line",
    "called_line",
    "dated_line",
    "fear_text",
    "feared_called",
    "feared_name",
    "find_text",
    "helps_line",
    "kind_title",
    "month_spans",
    "names_in_use",
    "names_like",
    "science_line",
    "season_line",
    "short_text",
    "shown_lines",
    "size_line",
    "sort_name",
    "source_lines",
    "stop_line",
    "taxa_called",
    "why_line",
]
