"""What a run of the scale benchmark says: a table, JSON, a plot."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict
from statistics import median

from keyapp.bench.scale import TARGETS, Growth, Peer, Scale
from keyapp.plots import MARKS, Axes, document, line, mark, text, ticks

__all__ = ["json_text", "plain_text", "scale_plot"]

COLUMNS = (
    *("taxa", "load", "whole", "worked"),
    *("median", "slowest", "worked", "first", "median", "slowest", "worked", "memory"),
)
HEADING = "          load (ms)                  update (ms)                question (ms)\n" + "".join(
    f"{word:>9}" for word in COLUMNS
)
"""`whole`: from the start of the process; `worked`: what the processor worked, of the slowest."""
PANEL = (520, 330)
FIELD = (70, 60, 380, 200)
"""Left, top, width and height of the field in its panel."""


def plain_text(scale: Scale) -> str:
    """The table, the targets, the peers."""
    lines = [
        f"made-up keys of {scale.characters} characters, seed {scale.seed}; each time the least of several rounds",
        "whole: from the start of the process; worked: what the processor worked, other users of the machine aside",
        "",
        HEADING,
    ]
    lines += [_row(one) for one in scale.growth]
    last = scale.growth[-1]
    lines += ["", f"targets at {last.taxa} taxa:"]
    for name, value, words in _held(last):
        limit = TARGETS[name]
        how = "not measured on this system" if value is None else words(value)
        verdict = "" if value is None else "  met" if value < limit else "  NOT MET"
        lines.append(f"  {name}: {how}, below {words(limit)}{verdict}")
    lines += ["", "peers on the same key after the same answers, in this run:"]
    lines += [_against(peer) for peer in scale.peers]
    lines += [f"  {name} is not installed (extra `outside`): not compared" for name in scale.missing]
    return "\n".join(lines)


def json_text(scale: Scale) -> str:
    """Everything measured; seconds and bytes."""
    held = {
        name: {"value": value, "below": TARGETS[name], "met": None if value is None else value < TARGETS[name]}
        for name, value, _ in _held(scale.growth[-1])
    }
    ratios = [{**asdict(peer), "ratio": peer.ratio} for peer in scale.peers]
    return json.dumps({**asdict(scale), "peers": ratios, "targets": held}, indent=2)


def scale_plot(scale: Scale) -> str:
    """Four panels over the number of taxa: load, memory, update, question.

    By the clock in a whole line, what the processor worked in a dashed one, the target in a dotted one:
    where others use the machine the first two part.
    """
    width, height = PANEL
    parts = [text(26, 30, f"Growth of a made-up key, {scale.characters} characters", strong=True, size=16)]
    parts.append(text(26, 50, "whole line: by the clock; dashed: worked by the processor; dotted: target", size=12))
    panels: list[tuple[str, str, float, Callable[[Growth], tuple[float, ...]]]] = [
        ("load", "seconds; worked: from the start of the process", 1.0, lambda g: (g.load, g.worked)),
        ("memory", "MB", 1e-6, lambda g: (g.memory or 0.0,)),
        ("update", "ms, slowest of the answers", 1e3, lambda g: (g.update, max(t.processor for t in g.updates))),
        ("question", "ms, slowest of the answers", 1e3, lambda g: (g.question, max(t.processor for t in g.questions))),
    ]
    for place, (name, unit, factor, value) in enumerate(panels):
        down, across = divmod(place, 2)
        values = [tuple(one * factor for one in value(g)) for g in scale.growth]
        taxa = [g.taxa for g in scale.growth]
        limit = TARGETS[name] * factor
        parts += _panel(across * width, 56 + down * height, f"{name} ({unit})", taxa, values, limit, MARKS[place])
    return document("Growth of the engine with the key", 2 * width, 56 + 2 * height, parts)


def _panel(
    left: float,
    top: float,
    title: str,
    taxa: Sequence[int],
    values: Sequence[tuple[float, ...]],
    limit: float,
    shape: str,
) -> Iterator[str]:
    steps = ticks(max(limit, *(one for both in values for one in both)) * 1.05)
    field = Axes(left + FIELD[0], top + FIELD[1], FIELD[2], FIELD[3], max(taxa), steps[-1])
    yield text(left + 26, top + 30, title, strong=True)
    yield from field.grid({value: f"{value:g}" for value in steps}, "")
    yield from field.across({float(n): str(n) for n in taxa}, "taxa")
    yield line([field.at(0, limit), field.at(max(taxa), limit)], "look", "2 4")
    yield text(field.at(max(taxa), limit)[0] + 6, field.at(0, limit)[1] + 4, "target", size=12, tone="look")
    for series, dash in zip(zip(*values, strict=True), ("", "6 4"), strict=False):
        points = [field.at(n, value) for n, value in zip(taxa, series, strict=True)]
        yield line(points, "ink", dash)
        for x, y in points:
            yield mark(shape, x, y, "ink", filled=not dash)


def _row(one: Growth) -> str:
    memory = "-" if one.memory is None else f"{one.memory / 1e6:.0f} MB"
    cells = [
        str(one.taxa),
        f"{one.load * 1000:.0f}",
        f"{one.whole * 1000:.0f}",
        f"{one.worked * 1000:.0f}",
        f"{median(t.clock for t in one.updates) * 1000:.2f}",
        f"{one.update * 1000:.2f}",
        f"{max(t.processor for t in one.updates) * 1000:.2f}",
        f"{one.first_question * 1000:.0f}",
        f"{median(t.clock for t in one.questions) * 1000:.1f}",
        f"{one.question * 1000:.1f}",
        f"{max(t.processor for t in one.questions) * 1000:.1f}",
        memory,
    ]
    return "".join(f"{cell:>9}" for cell in cells)


def _held(last: Growth) -> Iterator[tuple[str, float | None, Callable[[float], str]]]:
    """What the targets are held against; where there are several times, the slowest."""
    yield "update", last.update, _ms
    yield "question", last.question, _ms
    yield "load", last.load, _ms
    yield "memory", last.memory, lambda size: f"{size / 1e6:.0f} MB"


def _against(peer: Peer) -> str:
    return (
        f"  {peer.what}, {peer.taxa} taxa: {_ms(peer.ours)}; {peer.name}: {_ms(peer.theirs)}, "
        f"{peer.ratio:.0f} times as long; results differ by {peer.difference:.0e} at most"
    )


def _ms(seconds: float) -> str:
    return f"{seconds * 1000:.2f} ms" if seconds < 0.1 else f"{seconds * 1000:.0f} ms"
