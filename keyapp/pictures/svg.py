"""Writes a drawing as SVG, using only what a Tiny 1.2 reader draws; the same drawing gives the same text."""

from __future__ import annotations

import re

from keyapp.pictures.shape import (
    IDENTITY,
    Circle,
    Drawing,
    Ellipse,
    Fill,
    Gradient,
    Group,
    LinearGradient,
    Path,
    Shape,
    Stop,
    Stroke,
)
from keyapp.pictures.style import color

__all__ = ["svg_text"]


_PEN = re.compile(r' stroke="#[0-9A-Fa-f]{6}" stroke-width="[0-9.]+"( stroke-opacity="[0-9.]+")?/>$')

MANY_LINES = 12
"""A path of more separate lines than this is texture; a tenth of a unit is finer than anyone sees in it."""


SMALL = 1.5
"""A shaded patch narrower than this, in units of the canvas (of 100), is written in hundredths."""


def svg_text(drawing: Drawing, *, title: str = "") -> str:
    """The SVG file of a drawing as text; numbers are rounded to two decimals, `title` becomes its title."""
    return _Writer().write(drawing, title)


def _number(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _escaped(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


class _Writer:
    def __init__(self) -> None:
        self._gradients: dict[Gradient, str] = {}
        self._ramps: dict[tuple[Stop, ...], str] = {}
        self._defs: list[str] = []

    def write(self, drawing: Drawing, title: str) -> str:
        body: list[str] = []
        if drawing.background is not None:
            size = f'width="{_number(drawing.width)}" height="{_number(drawing.height)}"'
            body.append(f'<rect {size} fill="{color(drawing.background)}"/>')
        for item in drawing.items:
            self._shape(item, body)
        head = (
            '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
            'version="1.2" baseProfile="tiny" '
            f'viewBox="0 0 {_number(drawing.width)} {_number(drawing.height)}" '
            f'width="{_number(drawing.width)}mm" height="{_number(drawing.height)}mm">'
        )
        lines = [head]
        if title:
            lines.append(f"<title>{_escaped(title)}</title>")
        if self._defs:
            lines += ["<defs>", *self._defs, "</defs>"]
        # Round ends and corners, and no fill unless one is given: set once, inherited by all.
        root = '<g fill="none" stroke-linecap="round" stroke-linejoin="round">'
        lines += [root, *_sharing(body), "</g>", "</svg>"]
        return "\n".join(lines) + "\n"

    def _shape(self, shape: Shape, out: list[str]) -> None:
        if isinstance(shape, Group):
            self._group(shape, out)
        elif isinstance(shape, Path):
            out.append(f'<path d="{_path_data(shape)}"{self._paint(shape)}/>')
        elif isinstance(shape, Circle):
            x, y = shape.centre
            where = f'cx="{_number(x)}" cy="{_number(y)}" r="{_number(shape.radius)}"'
            out.append(f"<circle {where}{self._paint(shape)}/>")
        else:
            self._ellipse(shape, out)

    def _ellipse(self, shape: Ellipse, out: list[str]) -> None:
        x, y = (_number(part) for part in shape.centre)
        turned = f' transform="rotate({_number(shape.turn)} {x} {y})"' if shape.turn else ""
        size = f'cx="{x}" cy="{y}" rx="{_number(shape.rx)}" ry="{_number(shape.ry)}"'
        out.append(f"<ellipse {size}{turned}{self._paint(shape)}/>")

    def _group(self, group: Group, out: list[str]) -> None:
        bits = ""
        if group.transform != IDENTITY:
            numbers = [f"{part:.5f}".rstrip("0").rstrip(".") for part in group.transform]
            bits += f' transform="matrix({" ".join("0" if n in ("-0", "") else n for n in numbers)})"'
        if group.opacity < 1:
            bits += f' opacity="{_number(group.opacity)}"'
        if not bits:
            for item in group.items:
                self._shape(item, out)
            return
        out.append(f"<g{bits}>")
        for item in group.items:
            self._shape(item, out)
        out.append("</g>")

    def _paint(self, shape: Path | Ellipse | Circle) -> str:
        text = "" if shape.fill is None else f' fill="{self._fill(shape.fill)}"'
        if shape.fill is not None and shape.opacity < 1:
            text += f' fill-opacity="{_number(shape.opacity)}"'
        return text + (_pen(shape.stroke, shape.opacity) if shape.stroke else "")

    def _fill(self, fill: Fill) -> str:
        if fill is None:
            return "none"
        if isinstance(fill, str):
            return color(fill)
        if fill not in self._gradients:
            name = f"g{len(self._gradients) + 1}"
            self._gradients[fill] = name
            if fill.stops not in self._ramps:
                # Many limbs share one run of colours: it is written once and linked to.
                self._ramps[fill.stops] = f"s{len(self._ramps) + 1}"
                self._defs.append(_ramp(fill.stops, self._ramps[fill.stops]))
            self._defs.append(_gradient(fill, name, self._ramps[fill.stops]))
        return f"url(#{self._gradients[fill]})"


def _sharing(body: list[str]) -> list[str]:
    """The same elements, with a pen that several in a row have in common written once, on a group round them."""
    out: list[str] = []
    start = 0
    while start < len(body):
        found = _PEN.search(body[start])
        end = start + 1
        while found and end < len(body) and body[end].endswith(found.group()) and _PEN.search(body[end]):
            end += 1
        if found and end - start > 2:
            cut = len(found.group())
            out.append(f"<g{found.group()[:-2]}>")
            out += [f"{line[:-cut]}/>" for line in body[start:end]]
            out.append("</g>")
        else:
            out += body[start:end]
        start = end
    return out


def _pen(stroke: Stroke, opacity: float) -> str:
    text = f' stroke="{color(stroke.color)}" stroke-width="{_number(stroke.width)}"'
    solid = stroke.opacity * opacity
    return text + (f' stroke-opacity="{_number(solid)}"' if solid < 1 else "")


def _ramp(stops: tuple[Stop, ...], name: str) -> str:
    text = "".join(
        f'<stop offset="{_number(stop.offset)}" stop-color="{color(stop.color)}"'
        + (f' stop-opacity="{_number(stop.opacity)}"' if stop.opacity < 1 else "")
        + "/>"
        for stop in stops
    )
    return f'<linearGradient id="{name}">{text}</linearGradient>'


def _gradient(fill: Gradient, name: str, ramp: str) -> str:
    common = f'id="{name}" gradientUnits="userSpaceOnUse" xlink:href="#{ramp}"'
    if isinstance(fill, LinearGradient):
        x1, y1, x2, y2 = (_number(round(at, 1)) for at in (*fill.start, *fill.end))
        where = f'x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"'
        return f"<linearGradient {common} {where}/>"
    x, y = fill.centre
    fx, fy = fill.focus or fill.centre
    where = f'cx="{_number(x)}" cy="{_number(y)}" r="{_number(fill.radius)}" fx="{_number(fx)}" fy="{_number(fy)}"'
    return f"<radialGradient {common} {where}/>"


def _path_data(path: Path) -> str:
    """Path data in relative commands: short, and free of drift because each step starts from what was written."""
    grain = _grain(path)
    parts: list[str] = []
    here = start = (0.0, 0.0)
    for letter, numbers in path.commands:
        if letter == "Z":
            parts.append("z")
            here = start
            continue
        steps = [_grains(value, grain) - _grains(here[index % 2], grain) for index, value in enumerate(numbers)]
        parts.append(letter.lower() + _packed(steps, grain))
        here = (numbers[-2], numbers[-1])
        if letter == "M":
            start = here
    return "".join(parts)


def _grain(path: Path) -> int:
    """Steps a unit that a path is written in.

    Tenths for many fine lines, as hairs and threads are, and for shaded patches that are not small; else hundredths.
    """
    if path.fill is None:
        return 10 if sum(letter == "M" for letter, _ in path.commands) > MANY_LINES else 100
    if not isinstance(path.fill, LinearGradient):
        return 100
    across = [numbers[-2:] for _, numbers in path.commands if numbers]
    wide = min(max(one[axis] for one in across) - min(one[axis] for one in across) for axis in (0, 1))
    return 10 if wide > SMALL else 100


def _grains(value: float, grain: int) -> int:
    return round(value * grain)


def _packed(steps: list[int], grain: int) -> str:
    text = ""
    for step in steps:
        number = _number(step / grain)
        if abs(step) < grain:
            number = number.replace("0.", ".", 1)
        text += number if not text or number.startswith("-") else f" {number}"
    return text
