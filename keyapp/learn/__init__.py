"""Learning from confirmed calls: visible, reversible, and stricter before it is weaker."""

from keyapp.learn.change import Approval, Change, Proven, fingerprint
from keyapp.learn.counts import Confirmed, Counts, counted, counts_data, read_calls, read_counts
from keyapp.learn.learned import learned, proposed

__all__ = [
    "Approval",
    "Change",
    "Confirmed",
    "Counts",
    "Proven",
    "counted",
    "counts_data",
    "fingerprint",
    "learned",
    "proposed",
    "read_calls",
    "read_counts",
]
