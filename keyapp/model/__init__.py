"""What a key is: frozen data classes and enums; standard library only."""

from keyapp.model.case import (
    Answer,
    Case,
    Choice,
    Evidence,
    LeadAnswer,
    Measurement,
    Report,
    Settings,
    Sureness,
)
from keyapp.model.character import AppliesTo, Character, Means, Number, State, View
from keyapp.model.fit import check_answer, check_case, check_plain_setting, check_setting, check_shape, word_of
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
    "check_plain_setting",
    "check_setting",
    "check_shape",
    "pack_shows",
    "word_of",
]
