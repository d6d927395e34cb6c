"""The axes of a plot: from values to places on the page, with a quiet grid and its labels."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from keyapp.plots.marks import line, text

__all__ = ["Axes", "ticks"]


def ticks(most: float, wanted: int = 5) -> tuple[float, ...]:
    """Round values from 0 up to `most` or just beyond it, about `wanted` steps of 1, 2 or 5 times a power of ten.

    >>> ticks(17)
    (0.0, 5.0, 10.0, 15.0, 20.0)
    """
    if most <= 0:
        return (0.0, 1.0)
    raw = most / wanted
    power = 10.0 ** math.floor(math.log10(raw))
    step = next(power * times for times in (1, 2, 5, 10) if power * times >= raw * (1 - 1e-9))
    return tuple(round(step * i, 12) for i in range(math.ceil(most / step - 1e-9) + 1))


@dataclass(frozen=True, slots=True)
class Axes:
    """A field of `width` by `height` pixels whose upper left corner is at `left`, `top`.

    Values from `least_x` to `most_x` lie across it, and from 0 at its foot to `most_y` at its head.
    """

    left: float
    top: float
    width: float
    height: float
    most_x: float
    most_y: float
    least_x: float = 0.0

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Where a pair of values lies on the page."""
        across = (x - self.least_x) / (self.most_x - self.least_x)
        return self.left + self.width * across, self.top + self.height * (1 - y / self.most_y)

    def grid(self, labels: Mapping[float, str], words: str) -> Iterator[str]:
        """Level lines with their labels, and what is measured, written upward beside them."""
        for value, label in labels.items():
            y = self.at(self.least_x, value)[1]
            yield line([(self.left, y), (self.left + self.width, y)], "paper-shade" if value else "silk", width=1)
            yield text(self.left - 8, y + 4, label, anchor="end", size=12)
        yield text(self.left - 46, self.top + self.height / 2, words, anchor="middle", size=12, upward=True)

    def across(self, labels: Mapping[float, str], words: str, *, apart: float = 34.0) -> Iterator[str]:
        """Labels beneath, and what they are; one nearer than `apart` pixels to the one before is left out."""
        foot = self.top + self.height
        last = -math.inf
        for value, label in labels.items():
            x = self.at(value, 0)[0]
            if x - last >= apart:
                yield text(x, foot + 18, label, anchor="middle", size=12)
                last = x
        yield text(self.left + self.width / 2, foot + 38, words, anchor="middle", size=12)
