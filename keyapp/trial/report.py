"""The report on trials: their figures beside their targets, as text and as data for JSON."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby
from typing import Any

from keyapp.trial.summary import ENOUGH, Summary, Trial
from keyapp.trial.target import Judged, judge
from keyapp.trial.trial import Plan

__all__ = ["percent", "trial_data", "trial_text"]

WIDE = 44
"""Characters for the name of a figure in the table."""

SHOWN = 8
"""Results named in a line; JSON holds all."""

Show = Callable[[float], str]


def percent(share: float, places: int = 1) -> str:
    """A share in words.

    >>> percent(0.05), percent(0.125)
    ('5 %', '12.5 %')
    """
    digits = f"{100 * share:.{places}f}"
    return f"{digits.rstrip('0').rstrip('.') if '.' in digits else digits} %"


def _share(value: float) -> str:
    return f"{100 * value:.1f} %"


def _small(value: float) -> str:
    return f"{100 * value:.2f} %"


def _number(value: float) -> str:
    return f"{value:.2f}"


def _count(value: float) -> str:
    return f"{value:.0f}"


ROWS: tuple[tuple[str, str, Show], ...] = (
    ("inside", "calls about animals of the key", _count),
    ("dangerous", "  dangerous among them", _count),
    ("outside", "calls about animals not in it", _count),
    ("first", "true group in first place", _share),
    ("three", "true group in the first three", _share),
    ("danger_missed", "calls with a dangerous animal unnamed", _count),
    ("danger_miss", "  share of dangerous calls", _small),
    ("danger_upper", "  upper 95 % bound of the share", _small),
    ("outside_named", "animal not in the key given a firm name", _share),
    ("near_certain_calls", "calls stated at 95 % or more", _count),
    ("near_certain", "  right among them", _share),
    ("reliability_off", "stated and right apart, at most", _share),
    ("answers", "answers a call", _number),
    ("least_answers", "  lower bound", _number),
    ("extra", "  direct answers among them", _number),
    ("bits_before", "  bits at the start, over groups", _number),
    ("bits_after", "  bits at the end", _number),
    ("capacity", "  most bits one answer can tell", _number),
    ("named_taxa", "results still named for others", _number),
    ("most_named_taxa", "  most", _count),
    ("named_groups", "danger groups still named for others", _number),
    ("most_named_groups", "  most", _count),
    ("safety_extra", "answers of others for safety alone", _number),
    ("most_safety_extra", "  most", _count),
    ("strict_first", "key followed strictly: true group at its end", _share),
    ("strict_danger_miss", "  dangerous animal at none of its ends", _share),
)
"""Figure, its name in the table, how it is written."""

NOTES = (
    "Others are animals and signs of the key that are in no danger group.",
    "Upper bound: Clopper & Pearson 1934, one-sided. A target for dangers is shown to hold only where it lies below.",
    "Lower bound: bits lost from start to end, over the most bits that an answer about one character can tell when",
    "slips come at this rate. Bits: entropy of the engine's odds over groups, the mean of all calls.",
    "Followed strictly: the couplets alone, with nothing weighed. The true group must be its only end; a danger",
    "counts as found where any of its ends bears it.",
)


def trial_data(plan: Plan, trials: Sequence[Trial]) -> dict[str, Any]:
    """Everything as plain data for JSON: shares 0-1, nothing rounded."""
    return {
        "calls": plan.calls,
        "seed": plan.seed,
        "outside": plan.outside,
        "even": plan.even,
        "trials": [
            {
                "error": trial.error,
                "cant_tell": trial.cant_tell,
                "faultless": trial.faultless,
                **trial.summary.data(),
                "targets": [_judged_data(judged) for judged in judge(trial)],
            }
            for trial in trials
        ],
    }


def _judged_data(judged: Judged) -> dict[str, Any]:
    return {
        "figure": judged.target.figure,
        "least" if judged.target.at_least else "most": judged.target.limit,
        "value": judged.value,
        "verdict": judged.word,
        "unsure": judged.unsure,
    }


def trial_text(plan: Plan, trials: Sequence[Trial]) -> str:
    """The figures in lines of plain text, one table for each rate of *can't tell*."""
    lines = [
        f"{plan.calls} simulated calls at each rate, seed {plan.seed}; regions and months drawn; "
        f"{percent(plan.outside)} about animals not in the key; the others {_drawn(plan)}"
    ]
    for (faultless, cant_tell), some in groupby(trials, key=lambda trial: (trial.faultless, trial.cant_tell)):
        held = list(some)
        head = f"Can't tell: {percent(cant_tell)} of answers"
        lines += ["", "Callers who are sure and never err, every result as often" if faultless else head, ""]
        lines += _table(held)
        for trial in held:
            lines += _detail(trial)
    return "\n".join([*lines, "", *NOTES])


def _drawn(plan: Plan) -> str:
    common = "as common as the key holds them"
    return f"{percent(plan.even)} drawn evenly over results, else {common}" if plan.even else common


def _table(trials: Sequence[Trial]) -> Iterator[str]:
    judged = {j.target.figure: j for trial in trials for j in judge(trial)}
    yield f"{'slips, share of answers':<{WIDE}}" + "".join(f"{percent(t.error):>10}" for t in trials) + "   target"
    for figure, words, show in ROWS:
        values = [getattr(trial.summary, figure) for trial in trials]
        cells = "".join(f"{'-' if value is None else show(value):>10}" for value in values)
        beside = "   " + _target(judged[figure], show) if figure in judged else ""
        yield f"{words:<{WIDE}}{cells}{beside}"


def _target(judged: Judged, show: Show) -> str:
    target = judged.target
    limit = percent(target.limit, 2) if "%" in show(target.limit) else f"{target.limit:g}"
    where = "" if target.error is None else f"at {percent(target.error)}: "
    words = f"{where}at {'least' if target.at_least else 'most'} {limit}: {judged.word}"
    return words + (", but too few calls to show it" if judged.unsure else "")


def _detail(trial: Trial) -> Iterator[str]:
    found = trial.summary
    yield ""
    yield f"At {percent(trial.error)} slips: stated and right, first place ({ENOUGH} calls or more are judged)"
    for one in found.bins:
        word = f"{100 * one.off:.1f} points apart" if one.enough else "too few calls to judge"
        yield f"  stated {_share(one.stated):>7}   right {_share(one.right):>7}   calls {one.calls:>5}   {word}"
    yield "  dangerous animal unnamed: " + _missed(found)
    yield "  most often not first: " + _listed([f"{name} {count}" for name, count in found.worst])


def _missed(found: Summary) -> str:
    if not found.dangerous:
        return "no call was dangerous"
    return _listed([f"{m.taxon} {m.missed} of {m.calls}" for m in found.danger_by_taxon if m.missed])


def _listed(items: Sequence[str]) -> str:
    more = f" and {len(items) - SHOWN} more" if len(items) > SHOWN else ""
    return ", ".join(items[:SHOWN]) + more if items else "none"
