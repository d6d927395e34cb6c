"""Wheel webs: frame, spokes, hub, free zone, sticky spiral, and what may be added to them."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from keyapp.pictures.part import Profile, framed, put
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Point, RadialGradient, Shape, Stop, Stroke, smooth, strokes
from keyapp.pictures.silk import Thread, leaf, ray_out, threads, twig
from keyapp.pictures.style import blend, globe, pen, ring
from keyapp.pictures.texture import seeded, stipple

__all__ = ["RECIPES", "OrbWeb", "orb_parts", "orb_stems", "orb_web", "spoke_angles", "sticky_spiral"]


@dataclass(frozen=True)
class OrbWeb:
    """Shape of a wheel web, in canvas units.

    Attributes:
        hub: its middle, above the middle of the frame.
        frame: corners of the frame threads, clockwise.
        anchors: for each corner, where its guy line is fixed.
        spokes: how many radii.
        pitch: distance between turns of the sticky spiral.
        hub_radius: outer edge of the tight hub spiral; the free zone runs from here to `inner`.
        inner: where the sticky spiral starts.
    """

    hub: Point = (50.0, 45.0)
    frame: tuple[Point, ...] = (
        (24.0, 17.0),
        (58.0, 11.0),
        (82.0, 25.0),
        (86.0, 58.0),
        (68.0, 84.0),
        (34.0, 86.0),
        (14.0, 62.0),
        (12.0, 36.0),
    )
    anchors: tuple[Point, ...] = (
        (10.0, 8.0),
        (60.0, 4.0),
        (92.0, 13.0),
        (95.0, 64.0),
        (78.0, 96.0),
        (24.0, 96.0),
        (4.5, 70.0),
        (4.5, 28.0),
    )
    spokes: int = 31
    pitch: float = 2.1
    hub_radius: float = 3.8
    inner: float = 7.6


def spoke_angles(web: OrbWeb, rng: random.Random) -> list[float]:
    """Directions of the radii (clockwise from up): closer together below the hub, a little uneven."""
    weights = []
    for index in range(web.spokes):
        below = 0.5 - 0.5 * math.cos(2 * math.pi * (index + 0.5) / web.spokes)
        weights.append((1.2 - 0.4 * below) * rng.uniform(0.86, 1.14))
    scale = 360 / sum(weights)
    angles, at = [], rng.uniform(-4, 4)
    for weight in weights:
        angles.append(at)
        at += weight * scale
    return angles


def _spot(web: OrbWeb, degrees: float, far: float) -> Point:
    return web.hub[0] + math.sin(math.radians(degrees)) * far, web.hub[1] - math.cos(math.radians(degrees)) * far


def sticky_spiral(web: OrbWeb, angles: Sequence[float]) -> list[Thread]:
    """Every stretch of the sticky spiral between two neighbouring radii, from the free zone out to the frame."""
    limits = [ray_out(web.hub, angle, web.frame) * 0.93 - 0.6 for angle in angles]
    count = len(angles)
    stretches: list[Thread] = []
    for turn in range(60):
        for index in range(count):
            after = (index + 1) % count
            one = web.inner + web.pitch * (turn + index / count)
            two = web.inner + web.pitch * (turn + (index + 1) / count)
            if one > limits[index] or two > limits[after]:
                continue
            a, b = _spot(web, angles[index], one), _spot(web, angles[after], two)
            middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            # Pulled a little towards the hub: the stretches are straight under tension, bowed a touch where slack.
            pull = 0.012
            bow = (middle[0] + (web.hub[0] - middle[0]) * pull, middle[1] + (web.hub[1] - middle[1]) * pull)
            stretches.append((a, bow, b))
    return stretches


def orb_parts(web: OrbWeb, rng: random.Random, *, tone: str = "ink-soft", weight: float = 1.0) -> list[Shape]:
    """The web itself: groups `guy`, `frame`, `spoke`, `hub` and `sticky`."""
    angles = spoke_angles(web, rng)
    items: list[Shape] = []
    corners = list(zip(web.frame, [*web.frame[1:], web.frame[0]], strict=True))
    items.append(
        threads([(a, b) for a, b in zip(web.anchors, web.frame, strict=True)], 0.42 * weight, tone, 0.95, "guy")
    )
    sagged: list[Thread] = []
    for a, b in corners:
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        sagged.append(
            (a, (middle[0] + (web.hub[0] - middle[0]) * 0.03, middle[1] + (web.hub[1] - middle[1]) * 0.03), b)
        )
    items.append(threads(sagged, 0.42 * weight, tone, 0.95, "frame"))
    for angle in angles:
        items.append(
            threads(
                [(_spot(web, angle, 0.8), _spot(web, angle, ray_out(web.hub, angle, web.frame) * 0.985))],
                0.26 * weight,
                tone,
                0.9,
                "spoke",
            )
        )
    hub = []
    turns = 4.5
    steps = int(turns * 24)
    for step in range(steps + 1):
        far = 0.7 + (web.hub_radius - 0.7) * step / steps
        hub.append(_spot(web, step * 15, far * (1 + 0.05 * math.sin(step * 1.9))))
    items.append(threads([tuple(hub)], 0.24 * weight, tone, 0.9, "hub"))
    items.append(threads(sticky_spiral(web, angles), 0.2 * weight, tone, 0.95, "sticky"))
    return items


def orb_stems(rng: random.Random) -> list[Shape]:
    """The twigs and leaves round the web of the standard shape."""
    bark = "#8A6B4C"
    items: list[Shape] = [
        twig([(3.0, 99), (5.0, 72), (3.6, 40), (8, 12), (13, 1.5)], 3.2, 1.6, rng, bark),
        twig([(97.0, 99), (94.8, 70), (96, 40), (92, 14), (87, 1.5)], 3.4, 1.6, rng, bark),
        twig([(8, 12), (30, 5.0), (60, 3.0), (76, 1.6)], 1.6, 0.7, rng, bark),
        twig([(4.6, 88), (16, 95), (34, 97.4), (52, 97.6)], 1.9, 0.7, rng, bark),
        twig([(95.4, 88), (86, 94.4), (76, 96.8), (66, 97)], 1.7, 0.6, rng, bark),
    ]
    for at, turn, long in (
        ((11, 9), -50, 9),
        ((93, 18), 62, 6.5),
        ((32, 5), -8, 4.4),
        ((68, 2.8), 100, 8),
        ((4.6, 52), 58, 8),
        ((95.6, 46), -62, 8),
        ((94.6, 80), -52, 9),
        ((5, 82), 46, 8),
        ((51, 97.6), 76, 6.5),
        ((67, 97), -66, 6.5),
        ((34, 97.2), 24, 5),
    ):
        items.append(leaf(at, turn, long, long * 0.42))
    return items


def _zigzag(web: OrbWeb) -> Group:
    x, y = web.hub
    bands: list[Shape] = []
    for start, stop, count in ((4.6, 27.0, 10), (-4.6, -23.0, 9)):
        points = []
        for index in range(count):
            share = index / (count - 1)
            points.append((x + (1 if index % 2 else -1) * (3.9 - 1.5 * share), y + start + (stop - start) * share))
        for width, tone in ((2.7, "ink"), (2.0, "white"), (0.3, "silk")):
            bands.append(strokes([points], Stroke(tone, width)))
    return Group(tuple(bands), name="zigzag")


def _hiding_leaf(web: OrbWeb) -> Group:
    # A leaf pulled into a tube at the upper edge of the web, tied on, with a signal thread to the hub.
    at = (31.0, 21.0)
    roll = put(
        [(-5.4, -9.5), (-2.0, -11.2), (2.6, -10.6), (5.0, -7), (5.4, 2), (4.2, 8.6), (0.6, 10.4), (-3.6, 9), (-5.4, 3)],
        at,
        -38,
    )
    mouth = put([(-3.6, 8.8), (-0.6, 10.6), (3.0, 10), (4.3, 8.4), (2.2, 6.8), (-1.6, 6.9)], at, -38)
    rib = [put([(-3.6, -8.6), (-2.9, 0), (-1.9, 7)], at, -38), put([(4.4, -6.4), (1.8, 0), (2.8, 6.7)], at, -38)]
    veins = [put([(-2.9, k), (0.2, k + 1.8), (3.2, k + 1.4)], at, -38) for k in (-7, -4, -1, 2)]
    wide = put([(-5, 0), (5, 0)], at, -38)
    legs = [put([(k, 8.6), (k * 1.3, 11.4), (k * 0.9, 13.4)], at, -38) for k in (-1.8, -0.5, 0.9, 2.2)]
    ties = [
        (put([(k, j)], at, -38)[0], put([(k * 2.6, j * 1.2 - 1)], at, -38)[0]) for k in (-5, 5) for j in (-7, -3, 3, 7)
    ]
    return Group(
        (
            threads([(put([(0.4, 9)], at, -38)[0], web.hub)], 0.5),
            threads(ties, 0.34),
            smooth(roll, closed=True, fill=_leaf_fill(wide), stroke=pen("outline", "leaf-dark")),
            strokes([*rib, *veins], pen("fine", "leaf-dark", opacity=0.85)),
            smooth(mouth, closed=True, fill="#2E2A1C", stroke=pen("line", "leaf-dark")),
            strokes(legs, pen("bold", "#6E4526", times=0.9)),
        ),
        name="retreat",
    )


def _leaf_fill(wide: Sequence[Point]) -> str:
    return blend("leaf", "#C9B060", 0.25) if len(wide) == 2 else "leaf"


def _egg_bags(web: OrbWeb, rng: random.Random) -> Group:
    # Bags hung one above another on a thread at the edge of the web.
    x = 27.5
    items: list[Shape] = [threads([((x - 1, 16), (x, 54)), ((x, 54), (x - 4, 70))], 0.5)]
    for index, y in enumerate((26.5, 36.0, 45.5)):
        r = 4.2 - 0.15 * index
        shape = [
            (x, y - r * 1.15),
            (x + r * 0.8, y - r * 0.7),
            (x + r, y),
            (x + r * 0.7, y + r * 0.75),
            (x, y + r),
            (x - r * 0.7, y + r * 0.75),
            (x - r, y),
            (x - r * 0.8, y - r * 0.7),
        ]
        ties: list[Thread] = [
            ((x + k * r * 0.9, y - j), (x + k * (r + 3.2), y - j * 2.4 + rng.uniform(-1, 1)))
            for k in (-1, 1)
            for j in (-2, 0, 2)
        ]
        ball = Profile(((y - r * 0.8, r * 0.5), (y, r * 0.85), (y + r * 0.8, r * 0.5)), x)
        items += [
            threads(ties, 0.26),
            Group(
                (
                    smooth(shape, closed=True, fill=globe((x, y), r, "#C9AE7C"), stroke=pen("outline", times=0.9)),
                    stipple(
                        ball.at,
                        rng,
                        count=40,
                        radius=0.12,
                    ),
                ),
                name="egg-sac",
            ),
        ]
    return Group(tuple(items), name="egg-sacs")


def orb_web(values: Mapping[str, object]) -> Drawing:
    """Recipe `orb-web`.

    Settings: spokes 25-40, pitch, extra none|zigzag-band|hiding-tube-or-leaf|egg-sacs, golden, ring, seed.
    """
    settings = Settings(values)
    spokes = settings.whole("spokes", 31, least=25, most=40)
    pitch = settings.number("pitch", 2.1, least=1, most=6)
    extra = settings.choice("extra", ("none", "zigzag-band", "hiding-tube-or-leaf", "egg-sacs"), "none")
    golden = settings.flag("golden")
    mark = settings.flag("ring")
    rng = seeded("orb-web", settings.whole("seed", 1))
    settings.done()
    web = OrbWeb(spokes=spokes, pitch=pitch)
    items = orb_stems(rng)
    items += orb_parts(web, rng, tone="#C2860F" if golden else "ink-soft", weight=1.6 if golden else 1.0)
    if golden:
        items.insert(
            0,
            Group(
                (
                    Circle(
                        web.hub,
                        44,
                        RadialGradient(
                            web.hub, 44, (Stop(0, "#F2CF62", 0.75), Stop(0.6, "#F4DC8C", 0.5), Stop(1, "#F4DC8C", 0.0))
                        ),
                    ),
                ),
                name="glow",
            ),
        )
    marks = {
        "zigzag-band": ring((50, 47), 9.5, 29),
        "hiding-tube-or-leaf": ring((31, 21), 13.5, 15),
        "egg-sacs": ring((27.5, 35.6), 10.5, 18),
    }
    if extra == "zigzag-band":
        items.append(_zigzag(web))
    elif extra == "hiding-tube-or-leaf":
        items.append(_hiding_leaf(web))
    elif extra == "egg-sacs":
        items.append(_egg_bags(web, rng))
    if mark and extra in marks:
        items.append(marks[extra])
    return framed(items)


RECIPES = {"orb-web": orb_web}
