"""Figures that show what is measured: body length without legs, span across the legs, width of an egg sac."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.part import framed, recolored
from keyapp.pictures.plain import spider_parts
from keyapp.pictures.sac_skin import sac_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Box, Command, Drawing, Group, Path, Point, Shape, box_of, placed, strokes
from keyapp.pictures.style import pen
from keyapp.pictures.texture import seeded

__all__ = ["RECIPES", "measured", "measuring_bar"]


def measuring_bar(one: Point, two: Point, *, upright: bool) -> Group:
    """A bar with end marks from one point to another, in the accent colour with a paper edge."""
    (x0, y0), (x1, y1) = one, two
    tick = 2.6
    ends = (
        (((x0 - tick, y0), (x0 + tick, y0)), ((x1 - tick, y1), (x1 + tick, y1)))
        if upright
        else (((x0, y0 - tick), (x0, y0 + tick)), ((x1, y1 - tick), (x1, y1 + tick)))
    )
    commands: list[Command] = [("M", one), ("L", two)]
    for start, end in ends:
        commands += [("M", start), ("L", end)]
    line = tuple(commands)
    return Group(
        (Path(line, None, pen("bold", "paper", times=2.4)), Path(line, None, pen("bold", "look", times=1.3))),
        name="measuring-bar",
    )


def _guides(points: list[tuple[Point, Point]]) -> Group:
    dashes = []
    for (x0, y0), (x1, y1) in points:
        count = max(2, int((abs(x1 - x0) + abs(y1 - y0)) / 2.4))
        for index in range(0, count, 2):
            a, b = index / count, (index + 1) / count
            dashes.append(((x0 + (x1 - x0) * a, y0 + (y1 - y0) * a), (x0 + (x1 - x0) * b, y0 + (y1 - y0) * b)))
    return Group((strokes(dashes, pen("line", "look")),), name="guides")


def _spider() -> tuple[list[Shape], list[Shape], Box, Box]:
    legs, body = spider_parts(seeded("measured-spider"))
    scale = 0.9
    at = (50 - 50 * scale - 2.0, 51 - 52 * scale)
    legs, body = [placed(legs, at=at, scale=scale)], [placed(body, at=at, scale=scale)]
    trunk = (
        [item for item in body[0].items if isinstance(item, Group) and item.name in ("front-part", "hind-part", "jaw")]
        if isinstance(body[0], Group)
        else []
    )
    return legs, body, box_of([placed(trunk, at=at, scale=scale)]), box_of(legs)


def measured(values: Mapping[str, object]) -> Drawing:
    """Recipe `measured`. Settings: what body-length|leg-span|sac-width."""
    settings = Settings(values)
    what = settings.choice("what", ("body-length", "leg-span", "sac-width"), "body-length")
    settings.done()
    if what == "sac-width":
        sac = sac_parts("smooth-papery-round", (50, 44), 27, seeded("measured-sac"))
        return framed(
            [
                _guides([((23, 46), (23, 84)), ((77, 46), (77, 84))]),
                sac,
                measuring_bar((23, 84), (77, 84), upright=False),
            ]
        )
    legs, body, trunk, span = _spider()
    if what == "body-length":
        x = 88.0
        return framed(
            [
                recolored(Group(tuple(legs)), "paper", wash=0.42),
                *body,
                _guides(
                    [
                        ((trunk.centre[0] + 3, trunk.top), (x, trunk.top)),
                        ((trunk.centre[0] + 2, trunk.bottom), (x, trunk.bottom)),
                    ]
                ),
                measuring_bar((x, trunk.top), (x, trunk.bottom), upright=True),
            ]
        )
    y = 93.0
    widest = _widest(legs)
    return framed(
        [
            *legs,
            recolored(Group(tuple(body)), "paper", wash=0.5),
            _guides([((span.left, widest[0]), (span.left, y)), ((span.right, widest[1]), (span.right, y))]),
            measuring_bar((span.left, y), (span.right, y), upright=False),
        ]
    )


def _widest(legs: list[Shape]) -> tuple[float, float]:
    # Heights of the leg tips that reach farthest to the left and to the right.
    singles = [Group((leg,), outer.transform) for outer in legs if isinstance(outer, Group) for leg in outer.items]
    boxes = [box_of([single]) for single in singles]
    left, right = min(boxes, key=lambda box: box.left), max(boxes, key=lambda box: box.right)
    return left.top + 2, right.top + 2


RECIPES = {"measured": measured}
