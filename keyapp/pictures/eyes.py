"""Where a spider's eyes stand, seen from above and from the front, and how an eye is drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from keyapp.pictures.body import Body
from keyapp.pictures.shape import Circle, Group, Point, RadialGradient, Shape, Stop, Stroke

__all__ = ["ABOVE", "FACE", "Eye", "eye", "eyes_above", "eyes_on_face", "halo"]


@dataclass(frozen=True, slots=True)
class Eye:
    """One eye of the right half: distance from the middle line, distance along, and radius, as parts of the
    carapace's length (from above) or of the face's width (from the front). `x` 0 is a single eye on the middle."""

    x: float
    y: float
    r: float
    pale: bool = False


ABOVE: dict[str, tuple[Eye, ...]] = {
    # y counts back from the front edge of the carapace.
    "two-rows": (Eye(0.035, 0.05, 0.024), Eye(0.115, 0.065, 0.026), Eye(0.045, 0.135, 0.024), Eye(0.15, 0.13, 0.024)),
    "two-rows-wide": (Eye(0.05, 0.045, 0.024), Eye(0.2, 0.05, 0.03), Eye(0.07, 0.15, 0.025), Eye(0.26, 0.14, 0.033)),
    "orb": (Eye(0.045, 0.04, 0.028), Eye(0.045, 0.115, 0.028), Eye(0.17, 0.055, 0.022), Eye(0.185, 0.095, 0.022)),
    "three-pairs": (Eye(0.042, 0.055, 0.031), Eye(0.15, 0.1, 0.029), Eye(0.185, 0.15, 0.029)),
    "six-close-group": (Eye(0.06, 0.03, 0.034), Eye(0.105, 0.085, 0.032), Eye(0.04, 0.105, 0.03)),
    "two-big-in-front": (
        Eye(0.125, 0.01, 0.105),
        Eye(0.275, 0.05, 0.058),
        Eye(0.29, 0.2, 0.02),
        Eye(0.28, 0.36, 0.052),
    ),
    "two-big-above-row-of-four": (
        Eye(0.05, 0.02, 0.02),
        Eye(0.115, 0.025, 0.019),
        Eye(0.095, 0.09, 0.047),
        Eye(0.15, 0.215, 0.04),
    ),
    "agelenid": (
        Eye(0.09, 0.02, 0.027),
        Eye(0.045, 0.07, 0.026),
        Eye(0.145, 0.075, 0.025),
        Eye(0.06, 0.145, 0.026),
    ),
    "two-huge": (Eye(0.11, 0.0, 0.105), Eye(0.05, -0.03, 0.016), Eye(0.225, 0.06, 0.02), Eye(0.16, 0.17, 0.024)),
    "nursery": (Eye(0.04, 0.035, 0.022), Eye(0.105, 0.03, 0.019), Eye(0.065, 0.11, 0.031), Eye(0.17, 0.155, 0.031)),
    "hexagon-high": (Eye(0.025, 0.02, 0.013), Eye(0.07, 0.05, 0.03), Eye(0.15, 0.105, 0.03), Eye(0.09, 0.17, 0.03)),
    "small-mound": (Eye(0.022, 0.075, 0.019), Eye(0.065, 0.08, 0.017), Eye(0.04, 0.115, 0.012), Eye(0.07, 0.12, 0.015)),
    "triads": (Eye(0.03, 0.075, 0.018), Eye(0.13, 0.06, 0.033), Eye(0.185, 0.09, 0.033), Eye(0.13, 0.12, 0.033)),
    "crab": (Eye(0.05, 0.075, 0.014), Eye(0.17, 0.05, 0.034), Eye(0.075, 0.15, 0.014), Eye(0.235, 0.14, 0.027)),
    "fronted": (Eye(0.05, 0.035, 0.026), Eye(0.15, 0.035, 0.028), Eye(0.06, 0.115, 0.025), Eye(0.19, 0.12, 0.028)),
    "two-four-two": (Eye(0.035, 0.022, 0.02), Eye(0.05, 0.085, 0.031), Eye(0.122, 0.088, 0.015), Eye(0.135,
        0.15, 0.033)),
    "six-in-front-row": (Eye(0.04, 0.035, 0.022), Eye(0.115, 0.03, 0.024), Eye(0.19, 0.042, 0.018), Eye(0.27,
        0.1, 0.03)),
    "crevice": (Eye(0.035, 0.06, 0.022), Eye(0.11, 0.065, 0.022), Eye(0.05, 0.12, 0.021), Eye(0.145, 0.11, 0.021)),
}
"""Eye patterns seen from above: one half, mirrored when drawn."""

FACE: dict[str, tuple[Eye, ...]] = {
    # y counts down from the top of the face; x and r are parts of the face's width.
    "three-pairs": (Eye(0.075, 0.33, 0.052), Eye(0.275, 0.24, 0.05), Eye(0.345, 0.165, 0.05)),
    "six-close-group": (Eye(0.105, 0.36, 0.066), Eye(0.175, 0.245, 0.06), Eye(0.055, 0.2, 0.055)),
    "two-big-in-front": (Eye(0.165, 0.43, 0.145), Eye(0.375, 0.36, 0.08), Eye(0.41, 0.2, 0.027), Eye(0.4, 0.09, 0.06)),
    "two-big-above-row-of-four": (
        Eye(0.06, 0.44, 0.04),
        Eye(0.155, 0.455, 0.034),
        Eye(0.115, 0.29, 0.088),
        Eye(0.235, 0.11, 0.072),
    ),
    "two-rows": (Eye(0.065, 0.4, 0.038), Eye(0.215, 0.39, 0.041), Eye(0.09, 0.235, 0.036), Eye(0.29, 0.25, 0.038)),
    "two-four-two": (
        Eye(0.15, 0.44, 0.043),
        Eye(0.068, 0.325, 0.043),
        Eye(0.235, 0.315, 0.041),
        Eye(0.098, 0.195, 0.043),
    ),
    "six-in-front-row": (
        Eye(0.058, 0.4, 0.04),
        Eye(0.158, 0.4, 0.041),
        Eye(0.245, 0.405, 0.026),
        Eye(0.345, 0.2, 0.05),
    ),
    "hexagon-high": (Eye(0.05, 0.4, 0.02), Eye(0.115, 0.33, 0.046), Eye(0.215, 0.215, 0.047), Eye(0.125, 0.12, 0.045)),
    "small-mound": (
        Eye(0.045, 0.15, 0.026),
        Eye(0.107, 0.172, 0.024),
        Eye(0.05, 0.095, 0.014),
        Eye(0.092, 0.104, 0.02),
    ),
}
"""Eye patterns seen from the front."""


def eye(centre: Point, radius: float, *, rim: str = "ink", iris: str = "#241A16") -> Group:
    """One glossy eye with a dark rim and a spark of light, named "eye"."""
    x, y = centre
    glass = RadialGradient(
        centre,
        radius,
        (Stop(0.0, "#6A5A50"), Stop(0.5, iris), Stop(1.0, "#0D0907")),
        (x - radius * 0.3, y - radius * 0.35),
    )
    items: list[Shape] = [
        Circle(centre, radius, glass, Stroke(rim, max(0.12, radius * 0.28))),
        Circle((x - radius * 0.32, y - radius * 0.36), radius * 0.27, "white", None, 0.95),
    ]
    if radius > 1.2:
        items.append(Circle((x + radius * 0.35, y + radius * 0.38), radius * 0.12, "white", None, 0.5))
    return Group(tuple(items), name="eye")


def eyes_above(carapace: Body, layout: str, *, times: float = 1.0, patch: str | None = None) -> list[Shape]:
    """All eyes of a pattern on a carapace seen from above; `times` enlarges them, `patch` is a dark base colour."""
    shapes: list[Shape] = []
    spots = _both(ABOVE[layout])
    size = carapace.length
    if patch:
        shapes += [Circle(carapace.place(e.x * size, e.y * size), e.r * size * 1.7, patch, None, 0.7) for e in spots]
    shapes += [eye(carapace.place(e.x * size, e.y * size), max(0.16, e.r * size * times)) for e in spots]
    return shapes


def eyes_on_face(layout: str, top: Point, width: float, *, iris: str = "#241A16") -> list[Shape]:
    """All eyes of a pattern on a face whose top middle is `top` and whose width is `width`."""
    return [
        eye((top[0] + e.x * width, top[1] + e.y * width), e.r * width, iris=iris if e.r > 0.1 else "#241A16")
        for e in sorted(_both(FACE[layout]), key=lambda e: e.y)
    ]


def _both(half: Sequence[Eye]) -> list[Eye]:
    eyes = list(half)
    eyes += [Eye(-one.x, one.y, one.r, one.pale) for one in half if one.x]
    return eyes


def halo(carapace: Body, layout: str) -> tuple[Point, float, float]:
    """Centre and half-axes of an ellipse that rings the eyes seen from above."""
    size = carapace.length
    spots = _both(ABOVE[layout])
    right = max(e.x + e.r for e in spots) * size
    top, bottom = min(e.y - e.r for e in spots) * size, max(e.y + e.r for e in spots) * size
    return carapace.place(0, (top + bottom) / 2), right * 1.25 + 0.8, (bottom - top) / 2 * 1.35 + 0.8
