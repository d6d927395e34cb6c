"""What someone says in plain words: the observations in it, each to be confirmed before it counts; pure."""

from keyapp.notes.item import BetterQuestion, Found, Kind, Note, Span
from keyapp.notes.read import NoteReader, read_note
from keyapp.notes.take import take_finds

__all__ = ["BetterQuestion", "Found", "Kind", "Note", "NoteReader", "Span", "read_note", "take_finds"]
