"""Recipe `spider-scene`: how a spider moves, how it sits in its web, and one that guards her egg sac."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from keyapp.pictures.body import PROFILES, Body, Coat, finished
from keyapp.pictures.net import net_web
from keyapp.pictures.plans import merged, planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Group,
    Point,
    Shape,
    Stroke,
    placed,
    polyline,
    smooth,
    strokes,
)
from keyapp.pictures.spider import Animal, animal, nice_length
from keyapp.pictures.spider_side import side_spider
from keyapp.pictures.style import cylinder, globe, pen, ring, scale_bar, tint
from keyapp.pictures.texture import seeded
from keyapp.pictures.web import orb_web

__all__ = ["RECIPES", "draw_scene"]


def _settings(plan: str, over: Mapping[str, object]) -> Settings:
    return Settings(planned(merged({"plan": plan, "seed": plan}, over)), "spider-scene")


def _animal(plan: str, span: float, over: Mapping[str, object]) -> Animal:
    """A spider whose larger extent is `span` units, its waist at (0, 0)."""
    s = _settings(plan, over)
    scale = 1.0
    for _ in range(3):
        built = animal(s, scale, (0.0, 0.0))
        scale *= span / max(built.box.width, built.box.height)
    return animal(s, scale, (0.0, 0.0))


def _put(built: Animal, at: Point, turn: float = 0.0) -> Group:
    return placed((*built.limbs, *built.trunk), at=at, turn=turn, name="spider")


def _arrow(points: Sequence[Point], *, dashed: bool = False, width: float = 1.1) -> Group:
    """A motion mark: a curved line with a head at its end."""
    (x0, y0), (x1, y1) = points[-2], points[-1]
    turn = math.atan2(y1 - y0, x1 - x0)
    size = width * 3.0
    wings = [(x1 + math.cos(turn + out) * size, y1 + math.sin(turn + out) * size) for out in (2.55, -2.55)]
    line: list[Shape] = []
    if dashed:
        line += [
            smooth(points[index : index + 2], stroke=Stroke("look", width)) for index in range(0, len(points) - 1, 2)
        ]
    else:
        line.append(smooth(points, stroke=Stroke("look", width)))
    head = polyline([wings[0], (x1, y1), wings[1]], stroke=Stroke("look", width))
    return Group((*line, head), name="motion")


def _arc(centre: Point, rx: float, ry: float, start: float, end: float, steps: int = 14) -> list[Point]:
    """Points on an ellipse between two directions (degrees clockwise from up the page)."""
    angles = [math.radians(start + (end - start) * index / steps) for index in range(steps + 1)]
    return [(centre[0] + math.sin(a) * rx, centre[1] - math.cos(a) * ry) for a in angles]


# ---------------------------------------------------------------- moving


def _jumps(plan: str, over: Mapping[str, object]) -> list[Shape]:
    s = _settings(plan, over)
    ground = 88.0
    items: list[Shape] = [strokes([((5, ground), (95, ground))], pen("line", "ink-soft"))]
    items.append(Group((side_spider(s, (77, 80.4), 20, "crouch"),), opacity=0.45))
    items.append(_arrow(_arc((44, 84), 36, 46, 64, -86, 26), dashed=True))
    items.append(side_spider(s, (44, 40), 36, "leap"))
    return items


def _runs(plan: str, over: Mapping[str, object]) -> list[Shape]:
    built = _animal(plan, 66, over)
    items: list[Shape] = []
    for x, y, length in ((13, 66, 22), (22, 76, 20), (33, 86, 22), (14, 80, 12), (24, 91, 12)):
        items.append(
            Group(
                (polyline([(x, y), (x - length * 0.5, y + length * 0.5)], stroke=Stroke("look", 1.0)),), name="motion"
            )
        )
    items.append(_put(built, (51, 46), 45))
    items.append(_arrow([(80, 20), (85, 15), (91, 9)]))
    return items


def _sideways(plan: str, over: Mapping[str, object]) -> list[Shape]:
    built = _animal(plan, 76, over)
    return [
        _put(built, (50, 48)),
        _arrow([(34, 89), (20, 89), (6, 89)], width=1.3),
        _arrow([(66, 89), (80, 89), (94, 89)], width=1.3),
    ]


def _slow(plan: str, over: Mapping[str, object]) -> list[Shape]:
    built = _animal(plan, 66, over)
    items: list[Shape] = [_put(built, (50, 46))]
    steps = [
        Circle((50 + side * 3.4, 95 - index * 4.6), 1.1, "look")
        for index in range(5)
        for side in (-1, 1)
        if (index + (side > 0)) % 2
    ]
    items.append(Group(tuple(steps), name="motion"))
    items.append(_arrow([(50, 11), (50, 8.5), (50, 6)]))
    return items


def _still(plan: str, over: Mapping[str, object]) -> list[Shape]:
    built = _animal(plan, 78, over)
    feet = [
        Circle((50 + x, 48 + y), 2.3, None, Stroke("look", 0.8)) for x, y in (pose.joints[-1] for pose in built.poses)
    ]
    return [_put(built, (50, 48)), Group(tuple(feet), name="motion")]


def _whirls(plan: str, over: Mapping[str, object]) -> list[Shape]:
    built = _animal(plan, 70, over)
    rng = seeded("whirl", plan)
    lines = []
    for _ in range(26):
        x, y = rng.uniform(6, 94), rng.uniform(6, 90)
        lines.append(((x, y), (x + rng.uniform(-34, 34), y + rng.uniform(-20, 20))))
    lines = [(a, (min(97, max(3, b[0])), min(95, max(3, b[1])))) for a, b in lines]
    items: list[Shape] = [strokes(lines, Stroke("silk-soft", 0.22))]
    for dx, dy, turn in ((-5.5, 3.2, -7), (5.5, -3.2, 7)):
        items.append(Group((_put(built, (50 + dx, 48 + dy), turn),), opacity=0.28))
    items.append(_put(built, (50, 48)))
    items.append(_arrow(_arc((50, 49), 12.5, 14.5, 20, 160)))
    items.append(_arrow(_arc((50, 49), 12.5, 14.5, 200, 340)))
    return items


# ---------------------------------------------------------------- in the web


def _under(plan: str, over: Mapping[str, object]) -> list[Shape]:
    rng = seeded("tangle", plan)
    items: list[Shape] = []
    knots = [(rng.uniform(8, 92), rng.gauss(30, 9)) for _ in range(40)]
    lines = []
    for x, y in knots:
        for _ in range(2):
            far = rng.choice(knots)
            if math.dist((x, y), far) < 44:
                lines.append(((x, y), far))
    lines += [((x, y), (x + rng.uniform(-12, 12), 4.0)) for x, y in knots[::2]]
    lines += [((x, y), (x + rng.uniform(-5, 5), rng.uniform(78, 96))) for x, y in knots[::4]]
    items.append(tint((50, 60), 44, 28))
    items.append(strokes(lines, Stroke("ink-soft", 0.26, 0.8)))
    bars = [[(6.0, 37.5), (50.0, 41.0), (94.0, 36.5)], [(6.0, 33.0), (46.0, 38.0), (94.0, 41.5)]]
    items += [smooth(bar, stroke=Stroke("ink-soft", 0.35)) for bar in bars]
    items.append(side_spider(_settings(plan, over), (48, 60), 36, "hang", mark=True))
    return items


def _wheel(plan: str, over: Mapping[str, object]) -> list[Shape]:
    items = list(orb_web({}).items)
    built = _animal(plan, 46, over)
    items.append(_put(built, (50, 43), 180))
    items.append(ring((50, 46), 21, 26))
    return items


def _tube(plan: str, over: Mapping[str, object]) -> list[Shape]:
    items = list(net_web({"kind": "sheet-funnel"}).items)
    built = _animal(plan, 42, over)
    items.append(_put(built, (34, 50), 156))
    items.append(ring((35, 52), 20, 18))
    return items


def _dashes(plan: str, over: Mapping[str, object]) -> list[Shape]:
    items = list(net_web({"kind": "sheet-funnel"}).items)
    streaks = [((20 + x, 38 + y), (9 + x, 32 + y)) for x, y in ((6, -2), (2, 7), (4, 16))]
    items.append(Group((strokes(streaks, Stroke("look", 1.1)),), name="motion"))
    items.append(_put(_animal(plan, 40, over), (46, 54), 118))
    items.append(_arrow([(69, 67), (76, 71), (83, 74)], width=1.3))
    return items


def _on_silk(plan: str, over: Mapping[str, object]) -> list[Shape]:
    """A board with a thin patch of crossing threads stuck flat to it, and the spider on the patch."""
    rng = seeded("flat-silk", plan)
    board = [(4.0, 8.0), (96.0, 8.0), (96.0, 92.0), (4.0, 92.0)]
    items: list[Shape] = [polyline(board, closed=True, fill="#D8C6A4", stroke=pen("line"))]
    grain = []
    for y in range(14, 92, 6):
        sway = rng.uniform(-1.6, 1.6)
        grain.append(((4.0, float(y)), (34.0, y + sway), (66.0, y - sway), (96.0, float(y))))
    items.append(strokes(grain, Stroke("#A98F66", 0.3, 0.8)))
    spots = [
        (50 + math.sin(a) * 33 * rng.uniform(0.86, 1.1), 50 - math.cos(a) * 30 * rng.uniform(0.86, 1.1))
        for a in (math.radians(index * 360 / 22) for index in range(22))
    ]
    patch = smooth(spots, closed=True, fill="paper", opacity=0.5)
    threads = [(spot, spots[(index + rng.randint(6, 15)) % 22]) for index, spot in enumerate(spots) for _ in range(4)]
    items.append(Group((patch, strokes(threads, Stroke("paper", 0.5, 0.95))), name="silk"))
    items.append(_put(_animal(plan, 44, over), (50, 48), 28))
    return items


def _hidden(plan: str, over: Mapping[str, object]) -> list[Shape]:
    items = list(orb_web({"extra": "hiding-tube-or-leaf"}).items)
    items.append(ring((31, 21), 15, 16))
    items.append(_signal())
    return items


def _signal() -> Group:
    return Group((smooth([(36.5, 26.5), (43, 36), (50, 45)], stroke=Stroke("look", 0.6)),), name="signal")


# ---------------------------------------------------------------- guarding


def _leaf(start: Point, turn: float, length: float, width: float, tone: str) -> Group:
    angle = math.radians(turn)
    ahead, side = (math.sin(angle), -math.cos(angle)), (math.cos(angle), math.sin(angle))

    def spot(f: float, s: float) -> Point:
        return (
            start[0] + ahead[0] * f * length + side[0] * s * width,
            start[1] + ahead[1] * f * length + side[1] * s * width,
        )

    edge = [spot(0, 0), spot(0.2, 0.36), spot(0.5, 0.5), spot(0.8, 0.26), spot(1, 0)]
    back = [spot(0.8, -0.26), spot(0.5, -0.5), spot(0.2, -0.36)]
    fill = cylinder(spot(0.5, -0.6), spot(0.5, 0.6), tone, depth=0.25)
    veins = [(spot(f, 0), spot(f + 0.12, s * 0.36)) for f in (0.2, 0.35, 0.5, 0.65) for s in (-1, 1)]
    return Group(
        (
            smooth([*edge, *back], closed=True, fill=fill, stroke=pen("line")),
            strokes([(spot(0.02, 0), spot(0.5, 0.02), spot(0.96, 0)), *veins], pen("hair", opacity=0.7)),
        ),
        name="leaf",
    )


def _guards(plan: str, over: Mapping[str, object]) -> list[Shape]:
    rng = seeded("guard", plan)
    stem: list[Point] = [(58, 97), (55, 78), (52, 55), (53, 30), (50, 8)]
    leaves = (
        (56.5, 86, 62, 34, 11),
        (53, 62, 292, 40, 13),
        (52.5, 42, 58, 40, 13),
        (52.6, 28, 300, 30, 10),
        (51, 16, 40, 19, 8),
    )
    items: list[Shape] = []
    items += [_leaf((x, y), turn, length, width, "leaf") for x, y, turn, length, width in leaves]
    items.append(smooth(stem, stroke=Stroke("ink", 2.5)))
    items.append(smooth(stem, stroke=Stroke("leaf-dark", 1.7)))
    sac_at = (47.0, 69.0)
    guys = [
        (sac_at, (sac_at[0] + math.cos(a) * 21, sac_at[1] + math.sin(a) * 16))
        for a in (0.2, 0.9, 1.7, 2.4, 3.1, 3.9, 5.6)
    ]
    items.append(strokes(guys, Stroke("silk", 0.3)))
    ball = Body((sac_at[0], sac_at[1] - 10.5), 21, 22, PROFILES["globe"])
    bumps: list[Shape] = []
    for u, v in ((-0.55, 0.3), (0.1, 0.2), (0.55, 0.38), (-0.2, 0.5), (0.34, 0.66), (-0.6, 0.66), (-0.05, 0.84)):
        x, y = ball.at(u, v)
        bumps.append(Circle((x, y), 1.9, globe((x, y), 1.9, "#D9C492"), pen("hair")))
        tufts = [((x, y), (x + rng.uniform(-3, 3), y + rng.uniform(-3, 3))) for _ in range(6)]
        bumps.append(strokes(tufts, Stroke("#8E7A4A", 0.16)))
    items.append(
        finished(
            ball,
            Coat("#D2BC86", stipple=120, hairs=60, hair_length=1.6, hair_color="#9A8452", splay=80),
            bumps,
            rng,
            "sac",
        )
    )
    built = _animal(plan, 66, over)
    items.append(_put(built, (46, 43), 188))
    items.append(Group((ring(sac_at, 14.5),), name="mark"))
    items.append(scale_bar(nice_length(built.scale), built.scale))
    return items


SCENES = {
    "jumps": (_jumps, "jumping-spider"),
    "runs-fast": (_runs, "wolf"),
    "sideways": (_sideways, "crab-spider"),
    "runs-in-web": (_dashes, "funnel-weaver"),
    "slow-careful": (_slow, "plain"),
    "still": (_still, "plain"),
    "bobs-or-whirls": (_whirls, "cellar-spider"),
    "upside-down-under": (_under, "widow"),
    "middle-of-wheel": (_wheel, "typical-orb"),
    "mouth-of-tube": (_tube, "funnel-weaver"),
    "beside-or-hidden": (_hidden, "typical-orb"),
    "on-flat-silk": (_on_silk, "plain"),
    "guards-sac-on-plant": (_guards, "green-lynx"),
}
"""Scene name to its maker and the plan it shows unless told otherwise."""


def draw_scene(settings: Mapping[str, object]) -> Drawing:
    """A spider doing something. Settings: `scene`, `mark` (false leaves out the ring on the sac), those of `spider`."""
    s = Settings(settings, "spider-scene")
    maker, plan = SCENES[s.choice("scene", SCENES, "still")]
    plan = s.text("plan", plan)
    parts = ("seed", "carapace", "abdomen", "legs", "eyes", "jaws", "palps", "spinners", "carries")
    over = {name: s.values[name] for name in parts if name in s.values}
    marked = s.flag("mark", True)
    s.done_except(parts)
    items = maker(plan, over)
    return Drawing(tuple(item for item in items if marked or not (isinstance(item, Group) and item.name == "mark")))


RECIPES = {"spider-scene": draw_scene}
