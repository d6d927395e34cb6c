"""What a key is: frozen data classes and enums; standard library only.

A name is looked up in its module when it is first asked for, so that the window, which needs few of
them, shows before the rest are made.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from keyapp.model.case import (
        Answer,
        Case,
        Choice,
        Evidence,
        FinalCheck,
        LeadAnswer,
        Measurement,
        Report,
        Settings,
        Sureness,
    )
    from keyapp.model.character import AppliesTo, Character, Means, Number, State, View
    from keyapp.model.fit import (
        check_answer,
        check_case,
        check_final,
        check_plain_setting,
        check_setting,
        check_shape,
        word_of,
    )
    from keyapp.model.graph import Couplet, Key, Lead, Redirect, Target, TargetKind
    from keyapp.model.keyset import Emergency, Figure, KeySet, Term
    from keyapp.model.notes import AskInstead, KnownSize, NoteWords
    from keyapp.model.packed import PackedShows, ShownColumns, pack_shows
    from keyapp.model.place import NOWHERE, Place
    from keyapp.model.region import Contact, ContactKind, FindSpot, Region
    from keyapp.model.source import COMMON_PRACTICE, FROM_MEMORY, Basis, Caution, Source, Statement
    from keyapp.model.taxon import Danger, DangerGroup, Form, LookAlike, Misname, Size, Taxon
    from keyapp.model.text import Text
    from keyapp.model.weights import Observer, Weights

__all__ = [
    "COMMON_PRACTICE",
    "FROM_MEMORY",
    "NOWHERE",
    "Answer",
    "AppliesTo",
    "AskInstead",
    "Basis",
    "Case",
    "Caution",
    "Character",
    "Choice",
    "Contact",
    "ContactKind",
    "Couplet",
    "Danger",
    "DangerGroup",
    "Emergency",
    "Evidence",
    "Figure",
    "FinalCheck",
    "FindSpot",
    "Form",
    "Key",
    "KeySet",
    "KnownSize",
    "Lead",
    "LeadAnswer",
    "LookAlike",
    "Means",
    "Measurement",
    "Misname",
    "NoteWords",
    "Number",
    "Observer",
    "PackedShows",
    "Place",
    "Redirect",
    "Region",
    "Report",
    "Settings",
    "ShownColumns",
    "Size",
    "Source",
    "State",
    "Statement",
    "Sureness",
    "Target",
    "TargetKind",
    "Taxon",
    "Term",
    "Text",
    "View",
    "Weights",
    "check_answer",
    "check_case",
    "check_final",
    "check_plain_setting",
    "check_setting",
    "check_shape",
    "pack_shows",
    "word_of",
]

_HOMES = {
    "case": "Answer Case Choice Evidence FinalCheck LeadAnswer Measurement Report Settings Sureness",
    "character": "AppliesTo Character Means Number State View",
    "fit": "check_answer check_case check_final check_plain_setting check_setting check_shape word_of",
    "graph": "Couplet Key Lead Redirect Target TargetKind",
    "keyset": "Emergency Figure KeySet Term",
    "notes": "AskInstead KnownSize NoteWords",
    "packed": "PackedShows ShownColumns pack_shows",
    "place": "NOWHERE Place",
    "region": "Contact ContactKind FindSpot Region",
    "source": "COMMON_PRACTICE FROM_MEMORY Basis Caution Source Statement",
    "taxon": "Danger DangerGroup Form LookAlike Misname Size Taxon",
    "text": "Text",
    "weights": "Observer Weights",
}
"""Module -> the names it gives out."""

_HOME_OF = {name: home for home, names in _HOMES.items() for name in names.split()}


def __getattr__(name: str) -> Any:
    if name not in _HOME_OF:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = getattr(import_module(f"{__name__}.{_HOME_OF[name]}"), name)
    globals()[name] = found
    return found
