"""The typed shape of every file in `keys/`: one reader for each kind of entry."""

from keyapp.keyfile.shapes.characters import read_character
from keyapp.keyfile.shapes.credits import read_figure, read_source, read_term
from keyapp.keyfile.shapes.keys import read_key
from keyapp.keyfile.shapes.notes import read_note_words
from keyapp.keyfile.shapes.regions import STATE_CODES, read_region, read_spot
from keyapp.keyfile.shapes.rest import read_danger_group, read_emergency, read_start, read_weights
from keyapp.keyfile.shapes.taxa import read_taxon

__all__ = [
    "STATE_CODES",
    "read_character",
    "read_danger_group",
    "read_emergency",
    "read_figure",
    "read_key",
    "read_note_words",
    "read_region",
    "read_source",
    "read_spot",
    "read_start",
    "read_taxon",
    "read_term",
    "read_weights",
]
