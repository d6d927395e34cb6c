"""Pillbugs and sowbugs straight from above: seven broad plates, five narrow ones, and the tail with its appendages."""

from __future__ import annotations

import itertools
import random
from collections.abc import Sequence

from keyapp.pictures.part import eye, ribbon
from keyapp.pictures.shape import Circle, Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.style import blend, cylinder, pen
from keyapp.pictures.texture import seeded
from keyapp.pictures.track import Joints, Legs, Track

__all__ = ["bug_from_above"]

_BROAD = {
    "sowbug": (9.6, 12.2, 14.2, 15.3, 15.3, 14.5, 12.8),
    "pillbug": (10.8, 12.1, 12.7, 13.0, 13.0, 12.9, 12.5),
}
_NARROW = {"sowbug": (9.6, 9.6, 11.4, 10.2, 8.8), "pillbug": (10.4, 10.4, 12.0, 11.2, 10.0)}
_TOP, _STEP, _SHORT = 24.0, 5.3, 2.2


def _plate(y0: float, y1: float, half: float, corner: float, tone: str, bow: float, edge: str) -> Group:
    """One plate; its rear corners are drawn back by `corner`."""
    long = y1 - y0
    right: list[Point] = [
        (half * 0.55, y0 - 0.2),
        (half * 0.9, y0 + long * 0.06),
        (half * 0.99, y0 + long * 0.4),
        (half, y1 + corner * 0.6),
        (half * 0.97, y1 + corner),
        (half * 0.8, y1 + corner * 0.2),
        (half * 0.45, y1 + bow * 0.55),
    ]
    ring = [
        (50.0, y0 - 0.4),
        *((50 + x, y) for x, y in right),
        (50.0, y1 + bow),
        *((50 - x, y) for x, y in reversed(right)),
    ]
    fill = cylinder((50 - half, y0), (50 + half, y0), tone, depth=0.5, shine=0.22)
    seam, rim = [], []
    for side in (1, -1):
        seam.append(((50 + side * half * 0.74, y0 + 0.4), (50 + side * half * 0.73, y1 - 0.2)))
        rim.append(((50 + side * half * 0.9, y0 + long * 0.5), (50 + side * half * 0.9, y1 + corner * 0.3)))
    return Group(
        (
            smooth(ring, closed=True, fill=fill, stroke=pen("line", times=1.1), tension=0.75),
            strokes(seam, pen("hair", "#1A100A", opacity=0.35)),
            strokes(rim, pen("bold", edge, opacity=0.55)),
        ),
        name="ring-plate",
    )


def _tail(kind: str, y: float, tone: str, mark: str | None) -> list[Shape]:
    """The tail plate and its two appendages."""
    fill = mark or blend(tone, "#D9D3C6", 0.12)
    made: list[Shape] = []
    for side in (1, -1):
        if kind == "sowbug":
            inner = [(1.2, 2.0), (1.0, 6.3), (1.7, 6.9), (2.6, 3.0)]
            outer = [(2.6, 1.0), (3.0, 5.0), (3.9, 11.0), (4.5, 11.4), (5.9, 6.4), (6.2, 1.6)]
            parts = [inner, outer]
        else:
            parts = [[(2.2, 1.0), (2.2, 5.2), (4.6, 5.0), (7.0, 3.5), (8.4, 1.2), (7.6, -0.6)]]
        for part in parts:
            points = [(50 + side * a, y + b) for a, b in part]
            made.append(
                Group((smooth(points, closed=True, fill=fill, stroke=pen("line"), tension=0.7),), name="tail-point")
            )
    if kind == "sowbug":
        plate = [(-5.6, -0.6), (-3.2, 2.2), (-1.2, 4.8), (0, 7.0), (1.2, 4.8), (3.2, 2.2), (5.6, -0.6)]
    else:
        plate = [(-5.0, -0.6), (-3.4, 2.6), (-2.6, 5.0), (2.6, 5.0), (3.4, 2.6), (5.0, -0.6)]
    points = [(50 + a, y + b) for a, b in plate]
    made.append(smooth(points, closed=True, fill=cylinder((45, y), (55, y), tone), stroke=pen("line"), tension=0.5))
    return made


def _feelers(kind: str, tone: str) -> list[Shape]:
    """The second feelers: five parts and a two-part lash; the first pair is too small to be seen."""
    made: list[Shape] = []
    by = 1.0 if kind == "sowbug" else 0.8
    for side, lean in ((1, 0.0), (-1, 1.6)):
        spots = [
            (3.6, 20.6),
            (5.0, 18.6),
            (7.8, 16.8 + lean * 0.4),
            (12.4, 17.6 - lean),
            (17.6, 12.6 - lean),
            (20.2, 9.0 - lean),
            (22.0, 6.0 - lean),
        ]
        line = [(50 + side * (3.6 + (x - 3.6) * by), 20.6 + (y - 20.6) * by) for x, y in spots]
        widths = (1.5, 1.5, 1.45, 1.25, 0.85, 0.7)
        parts = [
            ribbon([a, b], (w, w * 0.84), blend(tone, "#2A2620", 0.1), Stroke(blend(tone, "ink", 0.8), 0.28))
            for (a, b), w in zip(itertools.pairwise(line), widths, strict=True)
        ]
        made.append(Group(tuple(parts), name="feeler"))
    return made


def _speckle(rng: random.Random, halves: Sequence[float]) -> Group:
    spots: list[Shape] = []
    for index, half in enumerate(halves):
        y = _TOP + index * _STEP
        for u in (-0.56, -0.3, -0.12, 0.12, 0.3, 0.56):
            if rng.random() < 0.85:
                spots.append(
                    Circle(
                        (50 + half * (u + rng.uniform(-0.05, 0.05)), y + rng.uniform(1.6, 3.8)),
                        rng.uniform(0.3, 0.6),
                        "#DAD4C6",
                        None,
                        0.6,
                    )
                )
    return Group(tuple(spots))


def bug_from_above(
    kind: str = "sowbug", *, tone: str | None = None, tail_mark: str | None = None
) -> tuple[list[Shape], list[Point]]:
    """A sowbug or a pillbug from above, and where its right legs end; `tail_mark` colours the tail's appendages."""
    tone = tone or ("#827D74" if kind == "sowbug" else "#6E7478")
    broad, narrow = _BROAD[kind], _NARROW[kind]
    rng = seeded("bug-from-above", kind)
    track = Track(
        ((50, _TOP), (50, 40), (50, _TOP + 7 * _STEP)), tuple((k / 6.5, half) for k, half in enumerate(broad))
    )
    legs = Legs(blend(tone, "#E4DDCB", 0.55), outline=0.3)
    out = 1.0 if kind == "sowbug" else 0.85
    ends: list[Point] = []
    for index in range(7):
        turn = 56 + index * 12
        build = Joints(
            (3.4 * out, 3.6 * out, 3.4 * out),
            (turn - 6, turn + 6, turn + 24),
            ((1.8, 1.9, 1.6), (1.6, 1.5, 1.15), (1.1, 0.8, 0.15)),
        )
        for side in (-1, 1):
            legs.on(track, (index + 0.5) / 7, side, build, inset=0.84, swing=rng.uniform(-5, 5))
        ends.append(legs.ends[-1])
    items = [*legs.shapes(), *_feelers(kind, tone)]
    bottom = _TOP + 7 * _STEP
    items += _tail(kind, bottom + 5 * _SHORT - 0.6, tone, tail_mark)
    edge = blend(tone, "#EFE8D8", 0.5)
    for index in range(4, -1, -1):
        corner = 0.4 if index < 2 else 2.0 if kind == "sowbug" else 0.9
        items.append(
            _plate(bottom + index * _SHORT, bottom + (index + 1) * _SHORT + 0.3, narrow[index], corner, tone, 0.5, edge)
        )
    for index in range(6, -1, -1):
        corner = (0.2, 0.5, 0.8, 1.1, 1.5, 2.2, 3.0)[index] * (1.0 if kind == "sowbug" else 0.6)
        items.append(
            _plate(_TOP + index * _STEP, _TOP + (index + 1) * _STEP + 0.4, broad[index], corner, tone, 0.8, edge)
        )
    items.append(_speckle(rng, broad))
    head = [
        (43.6, 24.6),
        (43.4, 21.6),
        (45.4, 20.0),
        (48, 19.2),
        (50, 18.4),
        (52, 19.2),
        (54.6, 20.0),
        (56.6, 21.6),
        (56.4, 24.6),
        (50, 26.2),
    ]
    items.append(
        Group(
            (
                smooth(
                    head,
                    closed=True,
                    fill=cylinder((44, 21), (56, 24), blend(tone, "#2A2620", 0.1)),
                    stroke=pen("outline"),
                    tension=0.7,
                ),
            ),
            name="head",
        )
    )
    items += [eye((44.6, 22.3), 0.95), eye((55.4, 22.3), 0.95)]
    return items, ends
