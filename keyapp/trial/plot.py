"""The plot of trials, as SVG text: four panels over the chance of a slip, once for each rate of *can't tell*."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from keyapp.plots import MARKS, Axes, area, bar, document, line, mark, text, ticks
from keyapp.trial.report import percent
from keyapp.trial.summary import ENOUGH, Summary, Trial
from keyapp.trial.target import TARGETS

__all__ = ["trial_plot"]

WIDTH = 1040
PANEL = (510, 356)
"""Width and height of a panel with all that belongs to it."""
FIELD = (82, 66, 296, 222)
"""Left, top, width and height of the field in its panel."""
HEAD = 62
SLIPS = "slips, share of answers"
FEW = 4
"""With more rates there is no room for whole counts."""
TONES = ("ink", "look", "leaf-dark", "wood", "ink-soft")
"""Colours of the rates in the reliability panel; their marks differ too.

There is one more than `MARKS`, so that no pair of both comes again soon."""

CURVES = (("three", "first three", "look", "8 4"), ("first", "first place", "ink", ""))
STRICT = ("strict_first", "strict key", "ink-soft", "2 4")
WITHIN = next(target.limit for target in TARGETS if target.figure == "reliability_off")
WHOLE = {value / 100: f"{value} %" for value in range(0, 101, 20)}


def trial_plot(trials: Sequence[Trial]) -> str:
    """Accuracy, danger miss, reliability, and answers beside their lower bound, by chance of a slip.

    Series differ in dash or mark and are named, so that colour carries nothing alone.
    """
    parts: list[str] = []
    top = 0.0
    for cant_tell, some in groupby(trials, key=lambda trial: trial.cant_tell):
        held = sorted(some, key=lambda trial: trial.error)
        calls = held[0].summary.calls
        words = f"{calls} simulated calls at each rate of slips, {percent(cant_tell)} of answers can't tell"
        parts.append(text(36, top + 36, words, strong=True, size=16))
        for place, panel in enumerate((_accuracy, _danger, _reliability, _answers)):
            row, column = divmod(place, 2)
            parts += panel(held, 10 + column * PANEL[0], top + HEAD + row * PANEL[1])
        top += HEAD + 2 * PANEL[1]
    return document("Simulated calls: how the key does", WIDTH, max(top, HEAD), parts)


def _field(left: float, top: float, most_x: float, most_y: float, least_x: float = 0.0) -> Axes:
    across, down, width, height = FIELD
    return Axes(left + across, top + down, width, height, most_x, most_y, least_x)


def _over_rates(trials: Sequence[Trial], left: float, top: float, most_y: float) -> Axes:
    """A field over the chance of a slip, with room at either side of the first and the last rate."""
    first, last = trials[0].error, trials[-1].error
    room = 0.12 * (last - first) or 0.5
    return _field(left, top, last + room, most_y, first - room)


def _titles(left: float, top: float, title: str, note: str) -> Iterator[str]:
    yield text(left + 26, top + 20, title, strong=True, size=14)
    yield text(left + 26, top + 40, note, size=12, tone="ink-soft")


def _side_by_side(trials: Sequence[Trial], left: float, top: float, most_y: float) -> Axes:
    """A field with one place for each rate, as wide as any other."""
    return _field(left, top, len(trials), most_y)


def _places(axes: Axes, trials: Sequence[Trial]) -> Iterator[str]:
    yield from axes.across({i + 0.5: percent(t.error) for i, t in enumerate(trials)}, SLIPS)


def _rates(axes: Axes, trials: Sequence[Trial]) -> Iterator[str]:
    yield from axes.across({t.error: percent(t.error) for t in trials}, SLIPS)


def _accuracy(trials: Sequence[Trial], left: float, top: float) -> Iterator[str]:
    axes = _over_rates(trials, left, top, 1.0)
    yield from _titles(left, top, "True group found", "green strokes: targets for first place and first three")
    yield from axes.grid(WHOLE, "share of calls")
    yield from _rates(axes, trials)
    rates = {trial.error for trial in trials}
    ends: list[tuple[float, str]] = []
    for figure, name, tone, dash in (*CURVES, STRICT):
        found = [(t.error, getattr(t.summary, figure)) for t in trials]
        points = [axes.at(error, value) for error, value in found if value is not None]
        if points:
            yield line(points, tone, dash)
            yield from (mark("circle", x, y, tone) for x, y in points)
            ends.append((points[-1][1], name))
    yield from _ends(axes, ends)
    for target in TARGETS:
        if target.figure in ("first", "three") and target.error in rates:
            yield _target(*axes.at(target.error, target.limit))


def _ends(axes: Axes, ends: Sequence[tuple[float, str]]) -> Iterator[str]:
    """Names at the ends of lines, pushed down where they would touch."""
    last = 0.0
    for y, name in sorted(ends):
        last = max(y + 4, last + 16)
        yield text(axes.left + axes.width + 6, last, name, size=12)


def _target(x: float, y: float) -> str:
    return line([(x - 13, y), (x + 13, y)], "leaf-dark", width=3)


def _danger(trials: Sequence[Trial], left: float, top: float) -> Iterator[str]:
    uppers = [t.summary.danger_upper for t in trials if t.summary.danger_upper is not None]
    steps = ticks(1.15 * max(uppers, default=0.01))
    axes = _side_by_side(trials, left, top, steps[-1])
    yield from _titles(left, top, "Dangerous animal ends unnamed", "bars: upper 95 % bound; green stroke: target")
    yield from axes.grid({value: percent(value, 2) for value in steps}, "share of dangerous calls")
    yield from _places(axes, trials)
    limits = {target.error: target.limit for target in TARGETS if target.figure == "danger_miss"}
    for place, trial in enumerate(trials):
        if trial.error in limits:
            yield _target(*axes.at(place + 0.5, limits[trial.error]))
        found = trial.summary
        if found.danger_miss is None or found.danger_upper is None:
            continue
        x, y = axes.at(place + 0.5, found.danger_miss)
        bound = axes.at(place + 0.5, found.danger_upper)[1]
        yield line([(x, y), (x, bound)], "ink", width=1.6)
        yield line([(x - 6, bound), (x + 6, bound)], "ink", width=1.6)
        yield mark("circle", x, y, "ink")
        words = f"{found.danger_missed} of {found.dangerous}" if len(trials) <= FEW else str(found.danger_missed)
        yield text(x, bound - 7, words, anchor="middle", size=12)


def _reliability(trials: Sequence[Trial], left: float, top: float) -> Iterator[str]:
    axes = _field(left, top, 1.0, 1.0)
    note = f"band: within {100 * WITHIN:g} points; open: fewer than {ENOUGH} calls"
    yield from _titles(left, top, "Stated and right, first place", note)
    corners = ((0.0, 0.0), (0.0, WITHIN), (1 - WITHIN, 1.0), (1.0, 1.0), (1.0, 1 - WITHIN), (WITHIN, 0.0))
    yield area([axes.at(x, y) for x, y in corners], "look-soft")
    yield from axes.grid(WHOLE, "right, share of calls")
    yield from axes.across(WHOLE, "stated, mean of calls")
    yield line([axes.at(0, 0), axes.at(1, 1)], "ink-soft", "2 4", 1.2)
    x = axes.left + axes.width + 22
    yield text(x - 8, axes.top + 4, "slips", size=12)
    for place, trial in enumerate(trials):
        tone, kind = TONES[place % len(TONES)], MARKS[place % len(MARKS)]
        for one in trial.summary.bins:
            yield mark(kind, *axes.at(one.stated, one.right), tone, filled=one.enough)
        y = axes.top + 22 + 18 * place
        yield mark(kind, x, y, tone)
        yield text(x + 12, y + 4, percent(trial.error), size=12)


def _answers(trials: Sequence[Trial], left: float, top: float) -> Iterator[str]:
    most = max((value for t in trials for value in _both(t.summary) if value is not None), default=1.0)
    steps = ticks(1.08 * most)
    axes = _side_by_side(trials, left, top, steps[-1])
    yield from _titles(left, top, "Answers a call", "lower bound: bits told / most bits one answer can tell")
    yield from axes.grid({value: f"{value:g}" for value in steps}, "answers, mean of calls")
    yield from _places(axes, trials)
    thick = min(30.0, 0.36 * axes.width / len(trials))
    tones = ("ink-soft", "look")
    for place, trial in enumerate(trials):
        for value, tone, at in zip(_both(trial.summary), tones, (-thick - 1, 1.0), strict=True):
            if value is not None:
                x, y = axes.at(place + 0.5, value)
                yield bar(x + at, y, thick, axes.top + axes.height - y, tone)
                if thick > 18:
                    yield text(x + at + thick / 2, y - 5, f"{value:.1f}", anchor="middle", size=12)
    for row, (name, tone) in enumerate(zip(("answers", "lower bound"), tones, strict=True)):
        y = axes.top + 2 + 20 * row
        yield bar(axes.left + axes.width + 8, y, 10, 10, tone)
        yield text(axes.left + axes.width + 23, y + 9, name, size=12)


def _both(found: Summary) -> tuple[float | None, float | None]:
    return found.answers, found.least_answers
