"""A drawing as plain data: paths, ellipses and groups in canvas units, x to the right and y down."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

__all__ = [
    "IDENTITY",
    "Box",
    "Circle",
    "Command",
    "Drawing",
    "Ellipse",
    "Fill",
    "Gradient",
    "Group",
    "LinearGradient",
    "Matrix",
    "Path",
    "Point",
    "RadialGradient",
    "Shape",
    "Stop",
    "Stroke",
    "box_of",
    "mirror",
    "mirror_points",
    "placed",
    "polyline",
    "rotation",
    "smooth",
    "strokes",
]

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]
"""(a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f, as in SVG."""

Command = tuple[str, tuple[float, ...]]
"""("M", (x, y)), ("L", (x, y)), ("C", six numbers), ("Q", four numbers) or ("Z", ())."""

IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
_ARGUMENTS = {"M": 2, "L": 2, "C": 6, "Q": 4, "Z": 0}


@dataclass(frozen=True, slots=True)
class Stop:
    """One colour of a gradient: offset 0-1, colour (role name or #rrggbb), opacity 0-1."""

    offset: float
    color: str
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class LinearGradient:
    """Colours change from `start` to `end`, both in the units of the shape that is filled."""

    start: Point
    end: Point
    stops: tuple[Stop, ...]


@dataclass(frozen=True, slots=True)
class RadialGradient:
    """Colours change from `focus` (or the centre) outwards to the circle of `radius`."""

    centre: Point
    radius: float
    stops: tuple[Stop, ...]
    focus: Point | None = None


Gradient = LinearGradient | RadialGradient
Fill = str | LinearGradient | RadialGradient | None
"""A colour role, a #rrggbb colour, a gradient, or None for no fill."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A pen: colour (role name or #rrggbb), width in canvas units, opacity 0-1. Ends and corners are round."""

    color: str = "ink"
    width: float = 0.4
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Path:
    """A run of M, L, C, Q and Z commands, filled and stroked."""

    commands: tuple[Command, ...]
    fill: Fill = None
    stroke: Stroke | None = None
    opacity: float = 1.0

    def __post_init__(self) -> None:
        for letter, numbers in self.commands:
            if letter not in _ARGUMENTS or len(numbers) != _ARGUMENTS[letter]:
                raise ValueError(f"path command {letter!r} with {len(numbers)} numbers")


@dataclass(frozen=True, slots=True)
class Ellipse:
    """An ellipse with half-axes `rx`, `ry`, turned clockwise by `turn` degrees about its centre."""

    centre: Point
    rx: float
    ry: float
    fill: Fill = None
    stroke: Stroke | None = None
    opacity: float = 1.0
    turn: float = 0.0


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle."""

    centre: Point
    radius: float
    fill: Fill = None
    stroke: Stroke | None = None
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Group:
    """Shapes drawn one after another (later ones on top) through one transform.

    `name` says what the group is ("leg", "eye", "segment"); tests count groups by it.
    """

    items: tuple[Shape, ...]
    transform: Matrix = IDENTITY
    name: str = ""
    opacity: float = 1.0


Shape = Path | Ellipse | Circle | Group


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished picture: canvas width and height in units, background (None: see-through) and its shapes."""

    items: tuple[Shape, ...]
    width: float = 100.0
    height: float = 100.0
    background: str | None = "paper"

    def count(self, name: str) -> int:
        """How many groups of this name the picture holds, at any depth."""
        return sum(_count(item, name) for item in self.items)


@dataclass(frozen=True, slots=True)
class Box:
    """A bounding box in canvas units."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Extent along x."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Extent along y."""
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        """Middle of the box."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def grown(self, by: float) -> Box:
        """The box with `by` units added on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)


def _count(shape: Shape, name: str) -> int:
    if not isinstance(shape, Group):
        return 0
    return (shape.name == name) + sum(_count(item, name) for item in shape.items)


# ---------------------------------------------------------------- building paths


def polyline(
    points: Sequence[Point],
    *,
    closed: bool = False,
    fill: Fill = None,
    stroke: Stroke | None = None,
    opacity: float = 1.0,
) -> Path:
    """Straight lines through `points`."""
    commands: list[Command] = [("M", points[0]), *(("L", point) for point in points[1:])]
    if closed:
        commands.append(("Z", ()))
    return Path(tuple(commands), fill, stroke, opacity)


def smooth(
    points: Sequence[Point],
    *,
    closed: bool = False,
    fill: Fill = None,
    stroke: Stroke | None = None,
    opacity: float = 1.0,
    tension: float = 1.0,
) -> Path:
    """A soft curve through every one of `points` (Catmull-Rom); tension 0 gives straight lines, 1 full curves."""
    count = len(points)
    if count < 3:
        return polyline(points, closed=closed, fill=fill, stroke=stroke, opacity=opacity)

    def at(index: int) -> Point:
        return points[index % count] if closed else points[min(max(index, 0), count - 1)]

    commands: list[Command] = [("M", points[0])]
    for index in range(count if closed else count - 1):
        before, here, there, after = at(index - 1), at(index), at(index + 1), at(index + 2)
        reach = tension / 6
        commands.append(
            (
                "C",
                (
                    here[0] + (there[0] - before[0]) * reach,
                    here[1] + (there[1] - before[1]) * reach,
                    there[0] - (after[0] - here[0]) * reach,
                    there[1] - (after[1] - here[1]) * reach,
                    there[0],
                    there[1],
                ),
            )
        )
    if closed:
        commands.append(("Z", ()))
    return Path(tuple(commands), fill, stroke, opacity)


def strokes(lines: Iterable[Sequence[Point]], stroke: Stroke, opacity: float = 1.0) -> Path:
    """Many short open lines as one path (hairs, hatching): two points a straight line, three a bent one."""
    commands: list[Command] = []
    for line in lines:
        commands.append(("M", line[0]))
        if len(line) == 3:
            commands.append(("Q", (*line[1], *line[2])))
        else:
            commands.extend(("L", point) for point in line[1:])
    return Path(tuple(commands), None, stroke, opacity)


# ---------------------------------------------------------------- moving


def rotation(degrees: float, about: Point = (0.0, 0.0)) -> Matrix:
    """Turn clockwise on the screen by `degrees` about a point."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    x, y = about
    return (cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y)


def placed(
    items: Iterable[Shape], *, at: Point = (0.0, 0.0), scale: float = 1.0, turn: float = 0.0, name: str = ""
) -> Group:
    """Shapes drawn about (0, 0) put at a point, scaled and turned clockwise. Line widths scale with them."""
    a, b, c, d, _, _ = rotation(turn)
    return Group(tuple(items), (a * scale, b * scale, c * scale, d * scale, at[0], at[1]), name)


def mirror(shape: Shape, x: float = 50.0) -> Group:
    """The shape reflected in the upright line at `x`."""
    return Group((shape,), (-1.0, 0.0, 0.0, 1.0, 2 * x, 0.0))


def mirror_points(points: Sequence[Point], x: float = 50.0) -> list[Point]:
    """The points reflected in the upright line at `x`, in reverse order so that outlines can be closed."""
    return [(2 * x - px, py) for px, py in reversed(points)]


# ---------------------------------------------------------------- measuring


def _compose(outer: Matrix, inner: Matrix) -> Matrix:
    a, b, c, d, e, f = outer
    g, h, i, j, k, m = inner
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f)


def _apply(matrix: Matrix, point: Point) -> Point:
    a, b, c, d, e, f = matrix
    return a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f


_STEPS = tuple(step / 8 for step in range(1, 9))
_CUBIC = tuple(((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3) for t in _STEPS)
_SQUARE = tuple(((1 - t) ** 2, 2 * t * (1 - t), t * t) for t in _STEPS)


def _path_points(path: Path) -> list[Point]:
    """Points on the path, close enough together to measure it: the ends of lines, eight steps along each curve."""
    points: list[Point] = []
    x0, y0 = 0.0, 0.0
    for letter, numbers in path.commands:
        if letter == "C":
            x1, y1, x2, y2, x3, y3 = numbers
            points += [(a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3) for a, b, c, d in _CUBIC]
            x0, y0 = x3, y3
        elif letter == "Q":
            x1, y1, x2, y2 = numbers
            points += [(a * x0 + b * x1 + c * x2, a * y0 + b * y1 + c * y2) for a, b, c in _SQUARE]
            x0, y0 = x2, y2
        elif letter != "Z":
            x0, y0 = numbers
            points.append((x0, y0))
    return points


def _outline(shape: Path | Ellipse | Circle) -> list[Point]:
    if isinstance(shape, Path):
        return _path_points(shape)
    rx, ry, turn = (shape.radius, shape.radius, 0.0) if isinstance(shape, Circle) else (shape.rx, shape.ry, shape.turn)
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    ring = [(rx * math.cos(step * math.pi / 12), ry * math.sin(step * math.pi / 12)) for step in range(24)]
    return [(shape.centre[0] + x * cos - y * sin, shape.centre[1] + x * sin + y * cos) for x, y in ring]


def _boxes(shapes: Iterable[Shape], matrix: Matrix) -> list[Box]:
    found: list[Box] = []
    for shape in shapes:
        if isinstance(shape, Group):
            plain = shape.transform == IDENTITY
            found += _boxes(shape.items, matrix if plain else _compose(matrix, shape.transform))
            continue
        points = _outline(shape)
        if not points:
            continue
        if matrix != IDENTITY:
            points = [_apply(matrix, point) for point in points]
        scale = math.sqrt(abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]))
        half = shape.stroke.width / 2 * scale if shape.stroke else 0.0
        xs, ys = [x for x, _ in points], [y for _, y in points]
        found.append(Box(min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half))
    return found


def box_of(shapes: Iterable[Shape]) -> Box:
    """The box round all shapes, half of each line's width included; ValueError when there is nothing to measure."""
    boxes = _boxes(shapes, IDENTITY)
    if not boxes:
        raise ValueError("nothing to measure")
    return Box(
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    )
