"""Codes of the problems that reading the files can find."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["LOADER_CODES"]

LOADER_CODES: Mapping[str, str] = {
    "K101": "A file or folder is missing or cannot be read.",
    "K102": "A file is too large.",
    "K103": "A file is not saved as UTF-8 text.",
    "K104": "A file is not valid YAML.",
    "K105": "Anchors, aliases and tags are not allowed.",
    "K106": "A file is too deep, too long, holds several documents, or has more problems than are listed.",
    "K107": "A name is written twice.",
    "K108": "A value or name would be converted to something else than is meant.",
    "K109": "A field is not known here.",
    "K110": "A field is missing.",
    "K111": "A value is of the wrong kind.",
    "K112": "A word is not one of the possible ones.",
    "K113": "A number is out of range.",
    "K114": "A date is not a date.",
    "K115": "An id is not well formed, or does not fit its file.",
    "K116": "Something is empty.",
    "K117": "The same id is defined in two files.",
    "K118": "Frequencies or chances do not add up.",
    "K119": "The language of a text is missing or unknown.",
    "K120": "A couplet does not have exactly two leads.",
    "K121": "A file or folder in the key folder is not part of a key.",
    "K201": "A character or state that is named does not exist.",
    "K202": "A lead, redirect or start goes to a couplet, result or key that does not exist.",
    "K203": "A result or kind that is named does not exist.",
    "K204": "A find spot, region or state code that is named does not exist.",
    "K205": "A danger group that is named does not exist.",
    "K206": "The key goes round in a loop.",
}
