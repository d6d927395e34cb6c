"""Ringed bodies seen obliquely: cross sections along an axis, shaded; round, arched, keeled and flat ones."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from keyapp.pictures.shape import (
    Group,
    LinearGradient,
    Path,
    Point,
    Shape,
    Stop,
    Stroke,
)
from keyapp.pictures.style import blend, pen
from keyapp.pictures.track import Joints, Legs, polygon

__all__ = [
    "SECTIONS",
    "Spot",
    "View",
    "arch",
    "cut_body",
    "flat_oval",
    "keeled",
    "ribbon_section",
    "round_section",
    "shell",
    "stride",
]

Spot = tuple[float, float, float]


@dataclass(frozen=True)
class View:
    """How space (x across, y up, z from head to tail) is seen: turned by `yaw`, from above by `pitch` degrees."""

    yaw: float = 42.0
    pitch: float = 30.0

    def flat(self, spot: Spot) -> Point:
        """Where a point of space is on the page."""
        x, y, z = spot
        a, b = math.radians(self.yaw), math.radians(self.pitch)
        far = -x * math.sin(a) + z * math.cos(a)
        return x * math.cos(a) + z * math.sin(a), -y * math.cos(b) - far * math.sin(b)

    @property
    def eye(self) -> Spot:
        """The direction towards the one who looks."""
        a, b = math.radians(self.yaw), math.radians(self.pitch)
        return math.sin(a) * math.cos(b), math.sin(b), -math.cos(a) * math.cos(b)

    @property
    def sun(self) -> Spot:
        """Where the light comes from: the upper left of the page, from before it."""
        a, b = math.radians(self.yaw), math.radians(self.pitch)
        right = (math.cos(a), 0.0, math.sin(a))
        up = (-math.sin(a) * math.sin(b), math.cos(b), math.cos(a) * math.sin(b))
        x, y, z = (-0.45 * r + 0.62 * u + 0.64 * e for r, u, e in zip(right, up, self.eye, strict=True))
        return x, y, z


def _arc(count: int, wide: float, high: float, start: float, end: float, lift: float = 0.0) -> list[Point]:
    made = []
    for k in range(count + 1):
        turn = math.radians(start + (end - start) * k / count)
        made.append((-math.cos(turn) * wide, math.sin(turn) * high + lift))
    return made


def arch() -> list[Point]:
    """A tunnel: a broad arch whose lower edges come down steeply."""
    return [(-1.0, -0.02), *_arc(16, 1.0, 1.0, 14, 166), (1.0, -0.02)]


def flat_oval() -> list[Point]:
    """A low arch that runs out into a thin flat edge."""
    return [(-1.25, 0.0), (-1.1, 0.12), *_arc(14, 0.95, 0.46, 22, 158), (1.1, 0.12), (1.25, 0.0)]


def ribbon_section() -> list[Point]:
    """A thin flat strip."""
    return [(-1.0, 0.0), (-0.97, 0.1), *_arc(10, 0.9, 0.24, 30, 150, 0.02), (0.97, 0.1), (1.0, 0.0)]


def keeled() -> list[Point]:
    """A round body, its upper sides drawn out into two shelves."""
    return [
        (-1.55, 0.5),
        (-1.5, 0.62),
        (-0.95, 0.56),
        *_arc(12, 0.86, 0.66, 25, 155, 0.34),
        (0.95, 0.56),
        (1.5, 0.62),
        (1.55, 0.5),
    ]


def _neck() -> list[Point]:
    return [(-0.85, 0.0), *_arc(14, 0.86, 0.9, 10, 170, 0.1), (0.85, 0.0)]


def round_section() -> list[Point]:
    """A round rod, open nowhere."""
    return _arc(28, 1.0, 1.0, -80, 260)


SECTIONS: dict[str, Callable[[], list[Point]]] = {
    "round": round_section,
    "side-plates": keeled,
    "flat-ribbon": ribbon_section,
    "arched-plates": arch,
    "flat-oval": flat_oval,
}


def _lit(tone: str, glow: float, shine: float) -> str:
    if glow < 0.55:
        return blend(tone, "#1A100A", min(0.72, (0.55 - glow) * 0.95))
    return blend(tone, "#FFFFFF", min(0.75, (glow - 0.55) * shine))


def shell(
    view: View,
    section: Sequence[Point],
    ends: Sequence[tuple[float, float, float, float]],
    tone: str,
    *,
    shine: float = 0.9,
    ink: Stroke | None = None,
    drop: float = 0.0,
    rim: str | None = None,
) -> Group:
    """One ring: `section` at both of `ends` (z, width, height, lift), its seen part as one shaded outline."""
    (z0, w0, h0, l0), (z1, w1, h1, l1) = ends
    front = [(x * w0, y * h0 + l0, z0) for x, y in section]
    back = [(x * w1, y * h1 + l1, z1 + drop * abs(x)) for x, y in section]
    seen, glows = [], []
    a, b, c = view.eye
    sun = view.sun
    for k, (x, y) in enumerate(section):
        xa, ya = section[max(k - 1, 0)]
        xb, yb = section[min(k + 1, len(section) - 1)]
        nx, ny = -(yb - ya) * h0, (xb - xa) * w0
        nz = (ny * (h1 - h0) * y + nx * (w1 - w0) * x) / ((z1 - z0) or 1e-6) * -1.0
        long = math.sqrt(nx * nx + ny * ny + nz * nz) or 1e-6
        nx, ny, nz = nx / long, ny / long, nz / long
        if nx * a + ny * b + nz * c > -0.12:
            seen.append(k)
        glows.append(nx * sun[0] + ny * sun[1] + nz * sun[2])
    if len(seen) < 2:
        return Group(())
    low, high = seen[0], seen[-1]
    one = [view.flat(front[k]) for k in range(low, high + 1)]
    two = [view.flat(back[k]) for k in range(low, high + 1)]
    ax, ay = view.flat((0, 0, 1))
    long = math.hypot(ax, ay) or 1e-6
    px, py = -ay / long, ax / long
    across = [x * px + y * py for x, y in one]
    least, most = min(across), max(across)
    if across[0] > across[-1]:
        px, py = -px, -py
        across = [-v for v in across]
        least, most = -most, -least
    base = one[0]
    along = base[0] * px + base[1] * py
    start = (base[0] + px * (least - along), base[1] + py * (least - along))
    end = (base[0] + px * (most - along), base[1] + py * (most - along))
    stops, best = [], -1.0
    for k in range(low, high + 1, max(1, (high - low) // 7)):
        t = (across[k - low] - least) / ((most - least) or 1e-6)
        if t > best:
            stops.append(Stop(t, _lit(tone, glows[k], shine)))
            best = t
    fill = LinearGradient(start, end, tuple(stops))
    pale: list[Shape] = []
    if rim:
        inside = [view.flat((x * w1, y * h1 + l1, z1 - 0.85)) for x, y in section[low + 1 : high + 1]]
        pale = [Path((("M", inside[0]), *(("L", spot) for spot in inside[1:])), None, pen("bold", rim, opacity=0.6))]
    return Group(
        (
            polygon([*one, *reversed(two)], fill, ink or pen("line")),
            *pale,
            Path(
                (("M", two[0]), *(("L", spot) for spot in two[1:])),
                None,
                pen("line", "#1A100A", opacity=0.35, times=1.5),
            ),
        ),
        name="ring-plate",
    )


def stride(
    view: View,
    legs: Legs,
    hip: Spot,
    side: int,
    out: float,
    down: float,
    sweep: float,
    wide: float,
    knee: float = 0.12,
    tone: str | None = None,
) -> None:
    """One bent leg in space from its hip: out to a knee, then down to the ground."""
    x, y, z = hip
    spots = [
        hip,
        (x + side * out * 0.55, y + down * knee, z + sweep * 0.35),
        (x + side * out, y - down * 0.45, z + sweep * 0.75),
        (x + side * out * 1.12, y - down, z + sweep),
    ]
    flat = [view.flat(spot) for spot in spots]
    heads, lengths = [], []
    for (xa, ya), (xb, yb) in itertools.pairwise(flat):
        long = math.hypot(xb - xa, yb - ya) or 1e-6
        heads.append(((xb - xa) / long, (yb - ya) / long))
        lengths.append(long)
    legs.add(
        flat[0],
        heads,
        Joints(
            tuple(lengths),
            (0, 0, 0),
            ((wide, wide, wide * 0.85), (wide * 0.85, wide * 0.8, wide * 0.65), (wide * 0.6, wide * 0.4, wide * 0.1)),
        ),
        tone,
    )


# ---------------------------------------------------------------- a piece cut off in front


def cut_body(
    kind: str,
    tone: str,
    *,
    rings: int = 7,
    pairs: int = 1,
    legs: str = "#C99A62",
    view: View | None = None,
    size: tuple[float, float] = (13.0, 13.0),
    step: float = 8.0,
    lift: float = 4.0,
    leg: tuple[float, float, float] = (9, 6, 1.6),
    tinted: Sequence[int] = (),
    face: str = "look-soft",
) -> list[Shape]:
    """A few rings with a clean cut in front, tinted, showing the cross section."""
    view = view or View()
    section = SECTIONS[kind]()
    wide, high = size
    items: list[Shape] = []
    hip = {
        "round": (0.35, -0.9),
        "side-plates": (0.5, 0.1),
        "arched-plates": (0.6, 0.12),
        "flat-oval": (0.75, 0.05),
    }.get(kind, (0.85, 0.05))
    off = high if kind == "round" else 0.0
    # The far side's legs lie behind the body, the near side's in front of it (a round body hides neither).
    for side in (-1, 1):
        gang = Legs(legs, outline=0.3)
        for index in range(rings - 1, -1, -1):
            for part in (0.45,) if pairs == 1 else (0.68, 0.2):
                z = (index + part) * step
                stride(
                    view,
                    gang,
                    (side * hip[0] * wide, hip[1] * high + off + lift, z),
                    side,
                    leg[0],
                    leg[1] + lift * 0.3,
                    math.sin(z * 0.35) * 1.5,
                    leg[2],
                    knee=-0.25 if kind == "flat-ribbon" else 0.12,
                    tone="#5FB0B8" if index in tinted else None,
                )
        items += gang.shapes()
    for index in range(rings - 1, -1, -1):
        z0, z1 = index * step, (index + 1) * step * 0.999 + step * 0.02
        small = 0.955
        shade = "#7FB9BC" if index in tinted else tone
        inner = _neck() if kind == "side-plates" else section
        items.append(
            shell(
                view,
                inner,
                (
                    (z0 + step * 0.8, wide * small, high * small, lift + off + high * (1 - small) * 0.3),
                    (z1, wide * small, high * small, lift + off + high * (1 - small) * 0.3),
                ),
                blend(shade, "#1A100A", 0.35),
            )
        )
        items.append(
            shell(view, section, ((z0, wide, high, lift + off), (z0 + step * 0.86, wide, high, lift + off)), shade)
        )
        if kind == "side-plates":
            for side in (-1, 1):
                tip = [
                    (side * x * wide, y * high + lift, z0 + step * f)
                    for x, y, f in ((1.15, 0.6, 0.1), (1.5, 0.64, 0.1), (1.5, 0.64, 0.76), (1.15, 0.6, 0.76))
                ]
                items.append(polygon([view.flat(spot) for spot in tip], "#D9A968", None, 0.9))
    if face:
        edge = pen("bold", "look", times=1.2) if face == "look-soft" else pen("line")
        rim = [view.flat((x * wide, y * high + lift + off, 0)) for x, y in section]
        if kind == "side-plates":
            rim += [
                view.flat((x * wide, y * high + lift, 0))
                for x, y in (
                    (0.92, 0.36),
                    (0.86, 0.1),
                    (0.55, -0.2),
                    (0, -0.3),
                    (-0.55, -0.2),
                    (-0.86, 0.1),
                    (-0.92, 0.36),
                )
            ]
        elif kind != "round":
            rim += [view.flat((x * wide, y * high + lift, 0)) for x, y in ((0.7, -0.06), (0, -0.1), (-0.7, -0.06))]
        items.append(polygon(rim, face, edge))
    return items
