"""Figures of kinds of ticks: one or both sexes with a scale bar, a mark or the mouth ringed, a young one by a pin."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.pictures.part import faded, fitted, framed, ground_shadow
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Circle, Drawing, Group, Point, Shape, box_of, placed, strokes
from keyapp.pictures.silk import flat
from keyapp.pictures.style import cylinder, globe, pen, ring, scale_bar, tint
from keyapp.pictures.texture import seeded
from keyapp.pictures.tick_kinds import tick_kind_parts
from keyapp.pictures.tick_looks import KINDS

__all__ = ["RECIPES", "tick_kind", "tick_pin"]

_RINGS: Mapping[str, tuple[Point, float, float]] = {
    "dot": ((50, 49.4), 6.4, 6.4),
    "shield": ((50, 41.8), 15.0, 14.0),
    "back": ((50, 52), 0.0, 0.0),
    "mouth": ((50, 24.6), 9.0, 9.6),
}


def _one(name: str, seed: int, marks: tuple[str, ...], *, pale: bool) -> list[Shape]:
    legs, rest = tick_kind_parts(name, seeded("tick-kind", name, seed))
    items: list[Shape] = [faded(legs, 0.62)] if pale else list(legs)
    items += rest
    for mark in marks:
        centre, rx, ry = _RINGS[mark]
        if mark == "back":
            body = KINDS[name].body
            centre, ry = (50, (body.top + body.bottom) / 2), (body.bottom - body.top) / 2 + 3.4
            rx = max(half for _, half in body.spots) + 4.2
        items.append(ring(centre, rx, ry))
    return items


def tick_kind(values: Mapping[str, object]) -> Drawing:
    """Recipe `tick-kind`. Settings: kind, with (a second kind below it, to the same scale), ring, with-ring,
    pale-legs, bar-mm, scale, seed."""
    settings = Settings(values)
    kind = settings.choice("kind", KINDS, "dog")
    second = settings.choice("with", (*KINDS, "none"), "none")
    marks = settings.words("ring", _RINGS)
    other_marks = settings.words("with-ring", _RINGS)
    pale = settings.flag("pale-legs")
    bar = settings.number("bar-mm", 0, least=0, most=20)
    most = settings.number("scale", 1.6, least=0.05, most=2)
    seed = settings.whole("seed", 1)
    settings.done()
    long = {name: look.body.bottom - look.body.top for name, look in KINDS.items()}
    first = _one(kind, seed, marks, pale=pale)
    if second == "none":
        body, scale = fitted(first, bottom=95 if bar else 100, most=most)
        shapes: list[Shape] = [body]
        if bar:
            shapes.append(scale_bar(bar, long[kind] * scale / KINDS[kind].mm))
        return framed(shapes)
    # The larger one above on the left, the smaller below on the right, at one scale.
    share = (KINDS[second].mm / long[second]) / (KINDS[kind].mm / long[kind])
    two = placed(_one(second, seed + 1, other_marks, pale=pale), scale=share)
    one_box, two_box = box_of(first), box_of([two])
    step = (one_box.right - two_box.left - two_box.width * 0.17, one_box.bottom - two_box.top - two_box.height * 0.24)
    both = [*first, placed((two,), at=step)]
    body, scale = fitted(both, margin=4, most=most)
    shapes = [body]
    if bar:
        units = long[kind] * scale / KINDS[kind].mm
        shapes.append(scale_bar(bar, units, right=5 + bar * units))
    return framed(shapes)


def tick_pin(values: Mapping[str, object]) -> Drawing:
    """Recipe `tick-pin`. Settings: bar-mm, seed. A young tick beside the head of a pin, both at one scale."""
    settings = Settings(values)
    bar = settings.number("bar-mm", 1, least=0.1, most=5)
    rng = seeded("tick-pin", settings.whole("seed", 1))
    settings.done()
    per_mm = 17.0
    head = (33.0, 30.0)
    radius = 1.9 * per_mm / 2
    steel = "#AEB6BA"
    shaft = flat(
        [(41.4, 31.2), (99.6, 82.8), (99.6, 96.4), (34.6, 38.8)], cylinder((65, 52), (58, 60), steel, shine=0.6)
    )
    edges = strokes([((41.4, 31.2), (99.6, 82.8)), ((34.6, 38.8), (99.6, 96.4))], pen("line"))
    gleam = strokes([((46, 38.6), (98.6, 85.6))], pen("bold", "white", opacity=0.75))
    ball = Group(
        (
            Circle(head, radius, globe(head, radius, steel, depth=0.5, shine=0.7), pen("outline")),
            Circle((head[0] - 5, head[1] - 6), 2.6, "white", None, 0.8),
        ),
        name="pin-head",
    )
    legs, rest = tick_kind_parts("nymph", rng)
    kind = KINDS["nymph"]
    scale = kind.mm * per_mm / (kind.body.bottom - kind.body.top)
    at = (30.0, 72.0)
    tick = placed([*legs, *rest], at=(at[0] - 50 * scale, at[1] - 50 * scale), scale=scale, name="tick")
    shapes = [
        tint(at, 25, 23),
        shaft,
        edges,
        gleam,
        ground_shadow((head[0] + 2, head[1] + 3), radius * 1.2, radius * 1.15, 0.2),
        ball,
        ground_shadow((at[0] + 1, at[1] + 2), 15, 14, 0.2),
        tick,
        scale_bar(bar, per_mm, right=6 + bar * per_mm),
    ]
    return framed(shapes)


RECIPES = {"tick-kind": tick_kind, "tick-pin": tick_pin}
