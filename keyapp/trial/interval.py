"""How large a share may be, given that it was seen so often in so many calls."""

from __future__ import annotations

import math

import numpy as np

__all__ = ["upper_bound"]


def upper_bound(seen: int, calls: int, confidence: float = 0.95) -> float:
    """Upper bound of a share that was seen `seen` times in `calls` calls, at `confidence` (0-1), one-sided.

    It is the share at which so few, or fewer, would be seen with chance 1 - `confidence` (exact, after Clopper &
    Pearson 1934, Biometrika 26:404-413). Raises ValueError for counts that cannot be.

    >>> round(upper_bound(0, 59), 4)
    0.0495
    """
    if calls < 1 or not 0 <= seen <= calls:
        raise ValueError(f"{seen} of {calls} calls")
    if seen == calls:
        return 1.0
    some = np.arange(seen + 1)
    # Logs, since the numbers of ways grow past what a float holds.
    ways = np.array([math.lgamma(calls + 1) - math.lgamma(i + 1) - math.lgamma(calls - i + 1) for i in some.tolist()])
    low, high = seen / calls, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        if not low < middle < high:
            break
        chance = float(np.exp(ways + some * math.log(middle) + (calls - some) * math.log1p(-middle)).sum())
        low, high = (middle, high) if chance > 1.0 - confidence else (low, middle)
    return high
