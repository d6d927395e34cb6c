"""The plot of a key's measures, as SVG text."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from keyapp.measure.errors import CoupletLoss
from keyapp.measure.measures import OWN, Measures
from keyapp.plots import bar, document, line, text

__all__ = ["svg_plot"]

WIDTH = 900
CHART = (70, 60, 780, 300)
"""Left, top, width, height of the upper chart."""
BARS = 15
ROW = 22


def svg_plot(measures: Measures) -> str:
    """Two charts: bits left after each couplet (as written, greedy, bound), and the couplets that lose most.

    Lines differ in dash and are named at their ends, so that colour carries nothing alone.
    """
    top = CHART[1] + CHART[3] + 80
    losses = measures.rates[OWN].losses
    bars, end = _bars("Ends at another group", losses, lambda c: c.error_lost, "look", top)
    more, bottom = _bars("Dangers unnamed", losses, lambda c: c.danger_lost, "ink-soft", end + 40)
    height = bottom + 30
    return document("Measures of the key", WIDTH, height, [*_curves(measures), *bars, *more])


def _curves(m: Measures) -> list[str]:
    left, top, width, height = CHART
    bits = m.bounds.entropy
    bound = [max(0.0, bits - k) for k in range(int(bits) + 2)]
    series = [
        ("as written", m.bits_by_step, "ink", ""),
        ("greedy order", m.greedy.bits_by_step, "look", "8 4"),
        ("bound: one bit a couplet", bound, "ink-soft", "2 4"),
    ]
    steps = max(1, *(len(values) - 1 for _, values, _, _ in series))
    highest = max(1.0, bits)

    def at(step: float, value: float) -> tuple[float, float]:
        return left + width * step / steps, top + height * (1 - value / highest)

    out = [text(left, top - 25, "Bits left about the result after each couplet, without error", strong=True)]
    for value in range(int(highest) + 1):
        y = at(0, value)[1]
        out.append(line([(left, y), (left + width, y)], "paper-shade", width=1))
        out.append(text(left - 8, y + 4, str(value), anchor="end"))
    for step in range(steps + 1):
        out.append(text(at(step, 0)[0], top + height + 18, str(step), anchor="middle"))
    out.append(text(left + width / 2, top + height + 38, "couplets answered", anchor="middle"))
    for row, (name, values, tone, dash) in enumerate(series):
        out.append(line([at(k, v) for k, v in enumerate(values)], tone, dash))
        y = top + 10 + 20 * row
        out.append(line([(left + width - 230, y), (left + width - 190, y)], tone, dash))
        out.append(text(left + width - 182, y + 4, name))
    return out


def _bars(
    title: str, losses: Sequence[CoupletLoss], lost: Callable[[CoupletLoss], float], tone: str, top: float
) -> tuple[list[str], float]:
    worst = [c for c in sorted(losses, key=lambda c: (-lost(c), c.couplet))[:BARS] if lost(c) > 0]
    out = [text(70, top, f"{title}: what slips at each couplet add, at its own rate", strong=True)]
    longest = max((lost(c) for c in worst), default=1.0)
    for row, loss in enumerate(worst):
        y = top + 16 + ROW * row
        length = 420 * lost(loss) / longest
        out.append(text(330, y + 12, loss.couplet, anchor="end"))
        out.append(bar(340, y, length, 14, tone))
        out.append(text(346 + length, y + 12, f"{lost(loss):.2%}"))
    return out, top + 16 + ROW * max(1, len(worst))
