"""Figures of one trait: the same animals again with all but the trait drawn pale."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from keyapp.pictures.arachnid import mite_parts, pseudoscorpion_parts, whip_scorpion_parts
from keyapp.pictures.insect import ant_parts, beetle_parts, fly_parts
from keyapp.pictures.myriapod import brown_centipede_parts, house_centipede_parts, millipede_parts, sowbug_parts
from keyapp.pictures.opilionid import harvestman_parts
from keyapp.pictures.part import fitted, framed, recolored, silhouette
from keyapp.pictures.plain import PlainSpider, spider_parts
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Command, Drawing, Ellipse, Group, Path, Point, Shape, Stroke, smooth, strokes
from keyapp.pictures.silk import twig
from keyapp.pictures.style import pen, ring
from keyapp.pictures.texture import seeded

__all__ = ["ANIMALS", "RECIPES", "emphasised", "others", "trait"]

_WOODLOUSE_HUNTER = PlainSpider(
    tone="#9A4526", legs="#C77A45", belly="#C9B79C", fangs=True, hairs=60, mark=False, eyes=6
)


def _spider(build: PlainSpider | None = None) -> Callable[[int], list[Shape]]:
    def made(seed: int) -> list[Shape]:
        legs, body = spider_parts(seeded("trait-spider", seed), build)
        return [*legs, *body]

    return made


ANIMALS: Mapping[str, Callable[[int], list[Shape]]] = {
    "spider": _spider(),
    "woodlouse-hunter": _spider(_WOODLOUSE_HUNTER),
    "ant": lambda seed: ant_parts(seeded("ant", seed)),
    "beetle": lambda seed: beetle_parts(seeded("beetle", seed)),
    "longhorn": lambda seed: beetle_parts(seeded("longhorn", seed), "#6A4A30", long_feelers=True),
    "fly": lambda seed: fly_parts(seeded("fly", seed), winged=True),
    "sowbug": lambda seed: sowbug_parts(seeded("sowbug", seed)),
    "brown-centipede": lambda seed: brown_centipede_parts(seeded("centipede", seed)),
    "house-centipede": lambda seed: house_centipede_parts(seeded("house-centipede", seed)),
    "millipede": lambda seed: millipede_parts(seeded("millipede", seed)),
    "harvestman": lambda seed: harvestman_parts(seeded("harvestman-body", seed), size=2.7),
    "pseudoscorpion": lambda seed: pseudoscorpion_parts(seeded("pseudoscorpion", seed)),
    "whip-scorpion": lambda seed: whip_scorpion_parts(seeded("whip", seed)),
    "mite": lambda seed: mite_parts(seeded("mite", seed)),
}
"""Animal name to a function from a seed to its shapes, head up."""

_PARTS = {
    "harvestman": ((32.0, 68.2),),
    "spider": ((33.0, 50.6), (51.4, 80.6)),
    "ant": ((12.0, 29.4), (30.4, 57.0), (58.0, 85.6)),
    "brown-centipede": tuple((22.0 + index * 2.94 + 0.3, 22.0 + (index + 1) * 2.94 - 0.3) for index in range(21)),
}
_WIDTH = {"harvestman": 13.0, "spider": 11.5, "ant": 12.5, "brown-centipede": 13.0}
_FRONT = {
    "spider": (50.0, 31.6, 10.5, 9.5),
    "woodlouse-hunter": (50.0, 27.4, 9.5, 11.5),
    "pseudoscorpion": (50.0, 21.5, 36.0, 21.5),
    "longhorn": (50.0, 12.0, 47.0, 22.0),
}


def emphasised(items: Iterable[Shape], names: Sequence[str], *, fade: float = 0.62, wash: float = 0.42) -> list[Shape]:
    """The shapes with every group of these names turned to the accent colour and all else drawn pale."""
    out: list[Shape] = []
    for item in items:
        if isinstance(item, Group) and item.name in names:
            out.append(recolored(item, "look", line="ink", wash=wash))
        elif isinstance(item, Group) and any(_item_count(item, name) for name in names):
            out.append(replace(item, items=tuple(emphasised(item.items, names, fade=fade, wash=wash))))
        else:
            out.append(recolored(item, "paper", wash=1 - fade))
    return out


def _item_count(group: Group, name: str) -> int:
    """How many groups of this name a group holds, at any depth."""
    return sum((inner.name == name) + _item_count(inner, name) for inner in group.items if isinstance(inner, Group))


def _brackets(parts: Sequence[tuple[float, float]], x: float) -> Group:
    # One bracket beside each body part.
    marks: list[Shape] = []
    for top, bottom in parts:
        tick = 1.8 if len(parts) < 6 else 1.4
        commands: tuple[Command, ...] = (
            ("M", (x - tick, top)),
            ("L", (x, top)),
            ("L", (x, bottom)),
            ("L", (x - tick, bottom)),
        )
        marks.append(
            Group(
                (Path(commands, None, pen("bold", "paper", times=2.2)), Path(commands, None, pen("bold", "look"))),
                name="bracket",
            )
        )
    return Group(tuple(marks))


def trait(values: Mapping[str, object]) -> Drawing:
    """Recipe `trait`. Settings: animal, show whole|legs|parts, ring-front, ring-at [x, y, rx, ry], most, seed."""
    settings = Settings(values)
    animal = settings.choice("animal", ANIMALS, "spider")
    show = settings.choice("show", ("whole", "legs", "parts"), "whole")
    mark = settings.flag("ring-front")
    most = settings.number("most", 1.3, least=0.2, most=3)
    seed = settings.whole("seed", 1)
    settings.done()
    items = ANIMALS[animal](seed)
    if show == "legs":
        items = emphasised(items, ("leg",))
    elif show == "parts":
        limbs = ("leg", "palp", "feeler", "feelers", "arm")
        items = [
            recolored(item, "paper", wash=0.4)
            if isinstance(item, Group) and (item.name in limbs or _item_count(item, "leg"))
            else item
            for item in items
        ]
        items.append(_brackets(_PARTS[animal], 50 + _WIDTH[animal]))
    if mark:
        x, y, rx, ry = _FRONT[animal]
        items.append(ring((x, y), rx, ry))
    body, _ = fitted(items, margin=4, most=most)
    return framed([body])


def _nest_parts() -> list[list[Shape]]:
    pipes: list[Shape] = []
    for index, (x, high) in enumerate(((30, 58), (42, 70), (54, 64))):
        pipes.append(
            smooth(
                [
                    (x - 6, 12 + index),
                    (x + 6, 12 - index),
                    (x + 6.4, high),
                    (x + 4, high + 5),
                    (x - 4, high + 5),
                    (x - 6.4, high),
                ],
                closed=True,
                fill="ink",
                tension=0.4,
            )
        )
        lines: list[Sequence[Point]] = [((x - 5.6, y), (x, y + 3.4), (x + 5.6, y)) for y in range(18, high - 2, 6)]
        pipes.append(strokes(lines, Stroke("paper", 0.8)))
    cocoon: list[Shape] = [
        twig([(10, 22), (40, 14), (84, 18)], 3.0, 1.6, seeded("nest"), "#5A4A3A"),
        smooth(
            [(48, 17), (54, 26), (58, 44), (55, 62), (48, 72), (41, 62), (38, 44), (42, 26)], closed=True, fill="ink"
        ),
    ]
    burrow: list[Shape] = [
        smooth(
            [(10, 66), (20, 52), (36, 42), (50, 40), (64, 42), (80, 52), (90, 66), (70, 72), (50, 73), (30, 72)],
            closed=True,
            fill="ink",
        ),
        Ellipse((50, 53), 14, 8, "paper"),
        Ellipse((50, 54), 11, 6, "ink"),
    ]
    return [pipes, cocoon, burrow]


_GROUPS = {
    "insects": ("beetle", "ant", "fly"),
    "many-legs": ("millipede", "sowbug", "brown-centipede"),
    "arachnids": ("pseudoscorpion", "mite", "whip-scorpion"),
}
_PLACES = ((5.0, 5.0, 52.0, 52.0), (49.0, 12.0, 95.0, 58.0), (25.0, 50.0, 75.0, 96.0))


def others(values: Mapping[str, object]) -> Drawing:
    """Recipe `others`: three plain dark shapes for what the key does not hold.

    Settings: of insects|many-legs|arachnids|signs.
    """
    settings = Settings(values)
    kind = settings.choice("of", (*_GROUPS, "signs"), "insects")
    settings.done()
    tone = "#81776B"
    made = _nest_parts() if kind == "signs" else [ANIMALS[name](1) for name in _GROUPS[kind]]
    shapes: list[Shape] = []
    for items, (left, top, right, bottom) in zip(made, _PLACES, strict=True):
        flat = [_flat(item, tone) for item in items]
        group, _ = fitted(flat, margin=1.5, left=left, top=top, right=right, bottom=bottom)
        shapes.append(Group((group,), name="other"))
    return framed(shapes)


def _flat(item: Shape, tone: str) -> Shape:
    # Paper-coloured lines stay, they part the shape.
    if isinstance(item, Group):
        return replace(item, items=tuple(_flat(inner, tone) for inner in item.items), opacity=1.0)
    if item.fill == "paper" or (item.stroke is not None and item.stroke.color == "paper"):
        return item
    return silhouette(item, tone)


RECIPES = {"trait": trait, "others": others}
