"""Learning from confirmed calls: visible, reversible, and stricter before it is weaker."""

from keyapp.learn.calls import read_calls
from keyapp.learn.change import Approval, Change, Proven, fingerprint
from keyapp.learn.counts import Confirmed, Counts, added, counted, counts_data, read_counts, taken_out
from keyapp.learn.force import Opened, forget, keep, open_learned
from keyapp.learn.learned import learned, proposed
from keyapp.learn.lessons import Lessons, approved, lessons_text, read_lessons
from keyapp.learn.plain import file_text

__all__ = [
    "Approval",
    "Change",
    "Confirmed",
    "Counts",
    "Lessons",
    "Opened",
    "Proven",
    "added",
    "approved",
    "counted",
    "counts_data",
    "file_text",
    "fingerprint",
    "forget",
    "keep",
    "learned",
    "lessons_text",
    "open_learned",
    "proposed",
    "read_calls",
    "read_counts",
    "read_lessons",
    "taken_out",
]
