"""The one style of all figures: named colours, named pens, and the ring and tint that say "look here"."""

from __future__ import annotations

import math

from keyapp.errors import ProgramError
from keyapp.pictures.shape import (
    Circle,
    Ellipse,
    Group,
    LinearGradient,
    Path,
    Point,
    RadialGradient,
    Shape,
    Stop,
    Stroke,
    placed,
)

__all__ = [
    "COLORS",
    "WIDTHS",
    "blend",
    "color",
    "cylinder",
    "globe",
    "pen",
    "ring",
    "scale_bar",
    "tint",
]

COLORS = {
    "paper": "#FBF7EF",
    "paper-shade": "#EFE7D8",
    "ink": "#2A211B",
    "ink-soft": "#75675A",
    "silk": "#9A948B",
    "silk-soft": "#C9C3B8",
    "look": "#0F7C8C",
    "look-soft": "#CFE6E4",
    "leaf": "#8FA86B",
    "leaf-dark": "#55703F",
    "wood": "#B99A76",
    "soil": "#A58B6D",
    "white": "#FFFFFF",
    "black": "#1A1613",
}
"""Role name to #rrggbb. `look` is the single accent of figures: the ring or tint round what to look at."""

WIDTHS = {"hair": 0.16, "fine": 0.25, "line": 0.4, "outline": 0.55, "bold": 0.9, "ring": 0.75}
"""Role name to line width in units of the 100 x 100 canvas."""


def color(name: str) -> str:
    """The #rrggbb of a role name; a #rrggbb is returned as it is. ProgramError for a name that is no role."""
    if name.startswith("#") and len(name) == 7:
        return name
    if name not in COLORS:
        raise ProgramError(f"no colour role {name!r}")
    return COLORS[name]


def blend(first: str, second: str, share: float) -> str:
    """The colour `share` (0-1) of the way from the first to the second."""
    one, two = color(first), color(second)
    parts = (
        round(int(one[i : i + 2], 16) + (int(two[i : i + 2], 16) - int(one[i : i + 2], 16)) * share) for i in (1, 3, 5)
    )
    return "#" + "".join(f"{min(255, max(0, part)):02X}" for part in parts)


def pen(role: str, tone: str = "ink", *, opacity: float = 1.0, times: float = 1.0) -> Stroke:
    """A pen of a width role ("hair", "fine", "line", "outline", "bold", "ring"), made wider by `times`."""
    if role not in WIDTHS:
        raise ProgramError(f"no line role {role!r}")
    return Stroke(tone, WIDTHS[role] * times, opacity)


def globe(centre: Point, radius: float, tone: str, *, depth: float = 0.45, shine: float = 0.3) -> RadialGradient:
    """Soft shading of a rounded body lit from the upper left; depth darkens the rim, shine lightens the top."""
    return RadialGradient(
        (centre[0] - radius * 0.12, centre[1] - radius * 0.12),
        radius * 1.2,
        (
            Stop(0.0, blend(tone, "#FFFFFF", shine)),
            Stop(0.45, color(tone)),
            Stop(1.0, blend(tone, "#1A100A", depth)),
        ),
        (centre[0] - radius * 0.35, centre[1] - radius * 0.4),
    )


def cylinder(one: Point, two: Point, tone: str, *, depth: float = 0.4, shine: float = 0.28) -> LinearGradient:
    """Shading across a limb: `one` and `two` are points on its two edges, lightest nearer the upper left."""
    if one[0] + one[1] > two[0] + two[1]:
        one, two = two, one
    return LinearGradient(
        one,
        two,
        (
            Stop(0.0, blend(tone, "#1A100A", depth * 0.35)),
            Stop(0.35, blend(tone, "#FFFFFF", shine)),
            Stop(1.0, blend(tone, "#1A100A", depth)),
        ),
    )


def ring(centre: Point, rx: float, ry: float | None = None, *, turn: float = 0.0) -> Shape:
    """The thin ring round what to look at, with a paler edge so that it also shows on dark bodies."""
    ry = rx if ry is None else ry
    halo = Ellipse(centre, rx, ry, None, pen("ring", "paper", times=2.2, opacity=0.75), turn=turn)
    line = Ellipse(centre, rx, ry, None, pen("ring", "look"), turn=turn)
    return placed((halo, line), name="ring")


def tint(centre: Point, rx: float, ry: float | None = None, *, turn: float = 0.0) -> Shape:
    """A soft patch behind what to look at; draw it before the animal."""
    ry = rx if ry is None else ry
    stops = (Stop(0.0, "look-soft", 0.9), Stop(0.7, "look-soft", 0.75), Stop(1.0, "look-soft", 0.0))
    round_patch = Circle((0.0, 0.0), 50.0, RadialGradient((0.0, 0.0), 50.0, stops))
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    # A circle stretched to the ellipse, so that the colour thins out evenly on all sides.
    wide, high = rx / 50, ry / 50
    return Group((round_patch,), (cos * wide, sin * wide, -sin * high, cos * high, *centre), "tint")


def scale_bar(mm: float, units_per_mm: float, *, right: float = 95.0, bottom: float = 95.5) -> Shape:
    """A bar `mm` long with end ticks; one small tick for every millimetre, or every ten when longer than 12,
    or every tenth of one when shorter than 1."""
    length = mm * units_per_mm
    left = right - length
    step = 0.1 if mm < 1 else 1.0 if mm <= 12 else 10.0
    commands: list[tuple[str, tuple[float, ...]]] = [("M", (left, bottom)), ("L", (right, bottom))]
    for index in range(int(mm / step + 1e-6) + 1):
        at = left + index * step * units_per_mm
        high = 1.6 if index == 0 or abs(index * step - mm) < 1e-6 else 0.8
        commands += [("M", (at, bottom)), ("L", (at, bottom - high))]
    return placed((Path(tuple(commands), None, pen("outline")),), name="scale-bar")
