"""Looking things up in the key: every kind and sign, found by any name, described and held side by side."""

from keyapp.browse.compare import Cell, Line, Standing, compare, splitting
from keyapp.browse.facts import (
    Often,
    Telling,
    in_season,
    look_alikes,
    makers,
    occurrence_known,
    often_where,
    signs,
    telling,
    usual_spots,
)
from keyapp.browse.glossary import Span, spans
from keyapp.browse.kinds import Kind, kind_of, kinds, sorts
from keyapp.browse.now import asked_about
from keyapp.browse.search import Filters, Found, Hit, Meant, find, meant

__all__ = [
    "Cell",
    "Filters",
    "Found",
    "Hit",
    "Kind",
    "Line",
    "Meant",
    "Often",
    "Span",
    "Standing",
    "Telling",
    "asked_about",
    "compare",
    "find",
    "in_season",
    "kind_of",
    "kinds",
    "look_alikes",
    "makers",
    "meant",
    "occurrence_known",
    "often_where",
    "signs",
    "sorts",
    "spans",
    "splitting",
    "telling",
    "usual_spots",
]
