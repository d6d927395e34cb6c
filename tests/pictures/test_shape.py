"""Shapes as data: boxes, curves, mirrors, and the SVG text made of them."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import pytest

from keyapp.errors import ProgramError
from keyapp.pictures.shape import (
    Circle,
    Drawing,
    Ellipse,
    Group,
    LinearGradient,
    Path,
    Stop,
    Stroke,
    box_of,
    mirror,
    placed,
    polyline,
    smooth,
)
from keyapp.pictures.style import blend, color, pen
from keyapp.pictures.svg import svg_text

SVG = "{http://www.w3.org/2000/svg}"


def test_a_box_takes_in_half_of_the_line_width():
    box = box_of([polyline([(10, 20), (30, 20)], stroke=Stroke("ink", 2))])
    assert (box.left, box.top, box.right, box.bottom) == (9, 19, 31, 21)


def test_a_box_follows_a_curve_and_not_its_control_points():
    arch = Path((("M", (0, 0)), ("Q", (5, -10, 10, 0))))
    assert box_of([arch]).top == pytest.approx(-5)


def test_a_box_follows_turned_and_scaled_groups():
    bar = placed([polyline([(0, 0), (4, 0)])], at=(10, 10), scale=2, turn=90)
    box = box_of([bar])
    assert (box.left, box.top, box.right, box.bottom) == pytest.approx((10, 10, 10, 18))


def test_a_box_of_nothing_is_refused():
    with pytest.raises(ValueError, match="nothing to measure"):
        box_of([])


def test_a_turned_ellipse_is_as_wide_as_it_was_high():
    box = box_of([Ellipse((0, 0), 2, 5, turn=90)])
    assert (box.width, box.height) == pytest.approx((10, 4))


def test_mirroring_reflects_in_the_upright_line():
    assert box_of([mirror(Circle((20, 30), 3), 50)]).centre == pytest.approx((80, 30))


def test_a_soft_curve_passes_through_its_points():
    points = [(0.0, 0.0), (4.0, 9.0), (11.0, 3.0), (16.0, 8.0)]
    path = smooth(points)
    ends = [numbers[-2:] for _, numbers in path.commands]
    assert ends == points


@pytest.mark.parametrize("command", [("M", (1.0,)), ("A", (1.0, 2.0)), ("C", (1.0, 2.0)), ("Z", (1.0,))])
def test_a_malformed_path_command_is_refused(command):
    with pytest.raises(ValueError, match="path command"):
        Path((command,))


def test_groups_are_counted_by_name_at_any_depth():
    leg = Group((Circle((0, 0), 1),), name="leg")
    assert Drawing((Group((leg, Group((leg,))), name="side"), leg)).count("leg") == 3


def test_the_svg_holds_only_plain_elements_and_round_numbers():
    fill = LinearGradient((0, 0), (1.23456, 0), (Stop(0, "paper"), Stop(1, "ink", 0.5)))
    shapes = (polyline([(1.234567, 2), (3, 4)], fill=fill, stroke=pen("line")), Circle((5, 5), 1 / 3, "look"))
    root = ET.fromstring(svg_text(Drawing(shapes), title="a < b"))
    assert {node.tag.removeprefix(SVG) for node in root.iter()} <= {
        "svg", "title", "defs", "g", "rect", "path", "circle", "ellipse", "linearGradient", "radialGradient", "stop"
    }  # fmt: skip
    assert root.find(f"{SVG}title").text == "a < b"
    assert root.find(f".//{SVG}circle").get("r") == "0.33"
    # A shaded patch that is not small is written in tenths, the rest in hundredths.
    assert root.find(f".//{SVG}path").get("d") == "m1.2 2l1.8 2"
    plain = ET.fromstring(svg_text(Drawing((polyline([(1.234567, 2), (3, 4)], stroke=pen("line")),))))
    assert plain.find(f".//{SVG}path").get("d") == "m1.23 2l1.77 2"


def test_relative_steps_do_not_drift():
    points = [(index * 0.3333, math.sin(index)) for index in range(400)]
    data = ET.fromstring(svg_text(Drawing((polyline(points),)))).find(f".//{SVG}path").get("d")
    x = sum(float(step.replace("-", " -").split()[0]) for step in data.lstrip("m").split("l"))
    assert x == pytest.approx(points[-1][0], abs=0.006)


def test_the_same_drawing_gives_the_same_text():
    drawing = Drawing((smooth([(0, 0), (5, 5), (9, 1)], stroke=pen("hair")),))
    assert svg_text(drawing) == svg_text(drawing)


def test_unknown_roles_are_a_fault_of_the_program():
    with pytest.raises(ProgramError, match="no colour role 'inc'"):
        color("inc")
    with pytest.raises(ProgramError, match="no line role 'thick'"):
        pen("thick")


def test_blending_goes_from_one_colour_to_the_other():
    assert [blend("#000000", "#FFFFFF", share) for share in (0, 0.5, 1)] == ["#000000", "#808080", "#FFFFFF"]
