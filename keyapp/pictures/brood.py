"""What a spider carries: an egg sac, or her young."""

from __future__ import annotations

import math
import random

from keyapp.pictures.body import PROFILES, Body, Coat, finished
from keyapp.pictures.shape import Circle, Group, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.style import blend, pen
from keyapp.pictures.texture import seeded

__all__ = ["carried_sac", "spiderling", "young_on"]


def carried_sac(centre: Point, diameter: float, tone: str, seed: str, *, seam: bool = True) -> Group:
    """A round egg sac with fine silk winding round it and the seam where its halves join."""
    rng = seeded("sac", seed)
    ball = Body((centre[0], centre[1] - diameter / 2), diameter, diameter * 0.97, PROFILES["globe"])
    marks: list[Shape] = []
    lines = []
    for index in range(22):
        v = 0.06 + 0.88 * index / 21
        bow = 0.1 + rng.uniform(-0.05, 0.05)
        lines.append(
            [ball.at(u, min(0.98, max(0.02, v + bow * (1 - u * u) - 0.05))) for u in (-0.93, -0.4, 0.1, 0.5, 0.93)]
        )
    marks.append(strokes(lines, Stroke(blend(tone, "ink", 0.35), 0.14, 0.6)))
    if seam:
        band = [ball.at(u, 0.5 + 0.1 * (1 - u * u)) for u in (-0.97, -0.6, 0, 0.6, 0.97)]
        marks.append(smooth(band, stroke=Stroke("paper", max(0.3, diameter * 0.05), 0.7)))
    return finished(ball, Coat(tone, stipple=50, shine=0.25, depth=0.35), marks, rng, "sac")


def spiderling(centre: Point, length: float, degrees: float, tone: str, rng: random.Random) -> Group:
    """A very small young spider, two body parts and eight bent legs, its head towards `degrees`."""
    turn = math.radians(degrees)
    head, across = (math.sin(turn), -math.cos(turn)), (math.cos(turn), math.sin(turn))

    def spot(along: float, side: float) -> Point:
        return (
            centre[0] + head[0] * along * length + across[0] * side * length,
            centre[1] + head[1] * along * length + across[1] * side * length,
        )

    legs = []
    for side in (-1, 1):
        for root, knee, foot in ((0.3, 0.55, 0.85), (0.25, 0.38, 0.45), (0.15, 0.1, -0.05), (0.1, -0.1, -0.5)):
            wide = 0.62 + rng.uniform(-0.08, 0.08)
            legs.append((spot(root, side * 0.1), spot(knee, side * wide * 0.9), spot(foot, side * wide)))
    dark = blend(tone, "ink", 0.45)
    return Group(
        (
            strokes(legs, Stroke(dark, max(0.13, length * 0.07))),
            Circle(spot(-0.2, 0), length * 0.27, tone, pen("hair")),
            Circle(spot(0.22, 0), length * 0.2, blend(tone, "ink", 0.2), pen("hair")),
        ),
        name="spiderling",
    )


def young_on(body: Body, count: int, length: float, tone: str, seed: str) -> list[Shape]:
    """Young spiders heaped on a body part, some over its edge; `length` is that of one young spider's body."""
    rng = seeded("young", seed)
    spots: list[Point] = []
    tries = 0
    while len(spots) < count and tries < count * 60:
        tries += 1
        spot = body.at(rng.uniform(-1.05, 1.05), rng.uniform(0.03, 0.98))
        if all(math.dist(spot, other) > length * 0.62 for other in spots):
            spots.append(spot)
    spots.sort(key=lambda spot: spot[1])
    return [
        spiderling(
            spot,
            length * rng.uniform(0.85, 1.1),
            rng.uniform(-70, 70),
            blend(tone, "#FFFFFF", rng.uniform(0, 0.25)),
            rng,
        )
        for spot in spots
    ]
