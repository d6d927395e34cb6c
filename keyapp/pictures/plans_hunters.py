"""Body plans of further hunting spiders (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["HUNTERS"]

HUNTERS: dict[str, Mapping[str, object]] = {
    "burrowing-wolf": {
        "carapace": {
            "length": 8.6, "width": 6.2, "shape": "head-broad", "color": "#8F7858", "hairs": 130, "hair-length": 0.7,
            "hair-color": "#4A3A2A", "overlap": 0.05, "fringe": 40, "stipple": 40,
            "marks": [
                {"kind": "area", "points": [0, 0.2, 0.22, 0.26, 0.2, 0.5, 0.1, 0.8, 0, 0.94], "color": "#B7A07A",
                 "opacity": 0.5},
            ],
        },
        "abdomen": {
            "length": 9.4, "width": 6.8, "shape": "oval", "color": "#9A8463", "hairs": 170, "hair-length": 0.75,
            "hair-color": "#4E3E2C", "fringe": 70, "shine": 0.06, "stipple": 40,
            "marks": [
                {"kind": "area", "points": [0, 0.05, 0.14, 0.1, 0.17, 0.26, 0.09, 0.44, 0, 0.5], "color": "#5A4630",
                 "opacity": 0.7},
                {"kind": "chevrons", "count": 3, "from": 0.56, "to": 0.84, "width": 0.32, "color": "#5A4630",
                 "thick": 0.016, "opacity": 0.5},
            ],
        },
        "legs": {
            "lengths": [20, 18, 16, 21], "thick": 0.31, "thicker": [1.25, 1.1, 0.84, 0.92], "taper": 1.0,
            "color": "#A08A68", "front-color": "#3A2C21", "posture": "hunter", "hairs": 1.6, "hair-length": 0.7,
            "hair-color": "#35271B", "spines": [0, 0, 1, 0, 2, 3, 0], "spine-length": 1.1, "lean": True,
            "shares": [0.3, 0.15, 0.22, 0.2, 0.13],
        },
        "eyes": {"layout": "two-big-above-row-of-four", "times": 1.05},
        "jaws": {"length": 1.8, "width": 2.0, "color": "#3A2A1E", "hairs": 16, "shine": 0.08, "plain": True},
        "palps": {"length": 6.8, "thick": 0.62, "start": 0.5, "color": "#6E5840"},
        "spinners": {"length": 0.5, "width": 0.6},
    },
    "striped-lynx": {
        "carapace": {
            "length": 2.7, "width": 2.1, "shape": "wolf", "color": "#E3D2A6", "overlap": 0.05, "stipple": 30,
            "shine": 0.2,
            "marks": [
                {"kind": "line", "points": [0.24, 0.22, 0.24, 0.5, 0.12, 0.92], "pair": True, "wide": 0.075,
                 "color": "#5E4C38", "opacity": 0.9},
                {"kind": "line", "points": [0.74, 0.24, 0.74, 0.5, 0.6, 0.86], "pair": True, "wide": 0.075,
                 "color": "#5E4C38", "opacity": 0.9},
            ],
        },
        "abdomen": {
            "length": 4.2, "width": 2.2, "shape": "tail-pointed", "color": "#E9DBB4", "hairs": 60, "hair-length": 0.2,
            "hair-color": "#A08A60", "stipple": 30, "shine": 0.15,
            "marks": [
                {"kind": "area", "points": [0, 0.04, 0.2, 0.12, 0.24, 0.26, 0.12, 0.5, 0, 0.6], "color": "#C2AC80",
                 "opacity": 0.95, "edge": "#FBF4DF", "edge-width": 0.5},
                {
                    "kind": "area",
                    "points": [0.4, 0.1, 0.56, 0.1, 0.7, 0.3, 0.66, 0.6, 0.6, 0.9, 0.3, 0.96, 0.4, 0.7, 0.46, 0.4],
                    "pair": True, "color": "#54412E", "opacity": 0.95,
                },
                {"kind": "margin", "color": "#8E7A5A", "from": 0.14, "to": 0.76, "inner": 0.86, "opacity": 0.8},
            ],
        },
        "legs": {
            "lengths": [9.8, 9.3, 7.6, 9], "thick": 0.19, "taper": 1.4, "color": "#DCC795", "posture": "all-round",
            "hairs": 0.4, "hair-length": 0.2, "spines": [0, 0, 3, 1, 5, 4, 0], "spine-length": 1.0, "lean": True,
            "bands": {"color": "#5A4630", "opacity": 0.7, "femur": [0.9, 1], "tibia": [0.9, 1]},
        },
        "eyes": {"layout": "hexagon-high", "times": 1.2, "patch": "#3A2C20"},
        "jaws": {"length": 0.5, "width": 0.55, "color": "#CDB888", "plain": True},
        "palps": {"length": 2.2, "thick": 0.62, "start": 0.4},
        "spinners": {"length": 0.25, "width": 0.26, "color": "#B8A070"},
    },
    "wandering-spider": {
        "carapace": {
            "length": 8.6, "width": 6.9, "shape": "wolf", "color": "#9A7448", "hairs": 90, "hair-length": 0.5,
            "hair-color": "#5E4428", "overlap": 0.04, "stipple": 40,
            "marks": [
                {"kind": "area", "points": [0, 0.2, 0.2, 0.22, 0.18, 0.4, 0.28, 0.54, 0.16, 0.72, 0.1, 0.97, 0, 0.985],
                 "color": "#EAD7AC", "opacity": 0.97},
                {"kind": "rays", "color": "#4E361E", "count": 4, "opacity": 0.5},
                {"kind": "margin", "color": "#D9C294", "from": 0.3, "to": 0.93, "inner": 0.84, "outer": 0.96,
                 "opacity": 0.8},
            ],
        },
        "abdomen": {
            "length": 10.4, "width": 6.6, "shape": "oval", "color": "#A98454", "hairs": 130, "hair-length": 0.55,
            "hair-color": "#5E4428", "fringe": 50, "stipple": 40, "shine": 0.06,
            "marks": [
                {"kind": "area",
                 "points": [0, 0.02, 0.22, 0.06, 0.28, 0.24, 0.2, 0.42, 0.26, 0.52, 0.16, 0.66, 0.2, 0.76, 0.1, 0.95,
                            0, 0.98],
                 "color": "#EAD7AC", "opacity": 0.92},
                {"kind": "spots", "at": [0.38, 0.2, 0.4, 0.37, 0.4, 0.52, 0.38, 0.66, 0.34, 0.79], "pair": True,
                 "size": 0.06, "color": "#4A3119"},
                {"kind": "speckle", "count": 40, "color": "#5E4428", "size": 0.025},
            ],
        },
        "legs": {
            "lengths": [37, 34, 29, 40], "thick": 0.225, "taper": 1.25, "color": "#B48C58", "posture": "all-round",
            "hairs": 1, "hair-length": 0.6, "hair-color": "#4A3524", "spines": [0, 0, 3, 1, 6, 4, 0],
            "spine-length": 2.2, "lean": True, "foot-color": "#8A683E",
        },
        "eyes": {"layout": "two-four-two", "times": 1.1, "patch": "#4A3524"},
        "jaws": {"length": 1.8, "width": 1.9, "color": "#6A3F20", "shine": 0.2, "plain": True},
        "palps": {"length": 8.4, "thick": 0.58, "start": 0.45},
        "spinners": {"length": 0.7, "width": 0.6},
    },
    "false-wolf": {
        "carapace": {
            "length": 6.6, "width": 5.1, "shape": "wolf", "color": "#CDB384", "hairs": 90, "hair-length": 0.45,
            "hair-color": "#5E4A32", "overlap": 0.04, "fringe": 20, "stipple": 40,
            "marks": [
                {
                    "kind": "area",
                    "points": [0.1, 0.2, 0.5, 0.18, 0.44, 0.34, 0.66, 0.44, 0.56, 0.58, 0.62, 0.72, 0.36, 0.9,
                    0.16, 0.94,
                               0.1, 0.74, 0.24, 0.58, 0.16, 0.42],
                    "pair": True, "color": "#3E2D20", "opacity": 0.92, "tension": 0.7,
                },
                {"kind": "spots", "at": [0.82, 0.36, 0.88, 0.5, 0.86, 0.64, 0.78, 0.78], "pair": True, "size": 0.06,
                 "color": "#4A3726"},
            ],
        },
        "abdomen": {
            "length": 8.4, "width": 5.4, "shape": "oval", "color": "#B09874", "hairs": 110, "hair-length": 0.5,
            "hair-color": "#4E3C28", "fringe": 30, "stipple": 0, "shine": 0,
            "marks": [
                {"kind": "speckle", "count": 45, "color": "#4A3726", "size": 0.035},
                {"kind": "area", "points": [0, 0.03, 0.24, 0.08, 0.2, 0.2, 0.3, 0.28, 0.16, 0.4, 0, 0.46],
                 "color": "#38281C", "opacity": 0.95, "edge": "#E6D6B4", "edge-width": 0.5},
                {"kind": "chevrons", "count": 4, "from": 0.52, "to": 0.88, "width": 0.5, "color": "#38281C",
                 "thick": 0.022, "drop": 0.05, "opacity": 0.95},
                {
                    "kind": "area", "points": [0.56, 0.12, 0.84, 0.24, 0.9, 0.5, 0.7, 0.44, 0.6, 0.3], "pair": True,
                    "color": "#4A3726", "opacity": 0.7,
                },
                {
                    "kind": "area", "points": [0.7, 0.56, 0.92, 0.6, 0.8, 0.78, 0.58, 0.84, 0.62, 0.68], "pair": True,
                    "color": "#4A3726", "opacity": 0.6,
                },
            ],
        },
        "legs": {
            "lengths": [21, 19, 16.5, 22], "thick": 0.25, "taper": 1.05, "color": "#B89E76", "posture": "all-round",
            "hairs": 0.8, "hair-length": 0.4, "hair-color": "#4A3928", "spines": [0, 0, 2, 0, 3, 2, 0],
            "spine-length": 1.1, "lean": True,
            "brush": {"pairs": [1, 2, 3, 4], "segments": [5, 6], "from": 0.04, "to": 1, "length": 0.34,
                      "color": "#7A664C", "count": 22},
            "bands": {
                "color": "#44331F", "opacity": 0.6, "femur": [0.1, 0.2, 0.34, 0.5, 0.62, 0.7, 0.84, 0.97],
                "patella": [0.2, 0.6], "tibia": [0.06, 0.24, 0.42, 0.52, 0.7, 0.92],
                "metatarsus": [0.08, 0.24, 0.5, 0.66],
            },
        },
        "eyes": {"layout": "nursery", "times": 1.05, "patch": "#3E2D20"},
        "jaws": {"length": 1.1, "width": 1.35, "color": "#4A3020", "plain": True},
        "palps": {"length": 5.4, "thick": 0.62, "start": 0.45},
        "spinners": {"length": 0.5, "width": 0.5},
    },
    "flattie": {
        "carapace": {
            "length": 4.7, "width": 5.4, "shape": "flat-front", "color": "#A9946F", "hairs": 50, "hair-length": 0.3,
            "hair-color": "#5E4E38", "overlap": 0.02, "stipple": 40, "depth": 0.22, "shine": 0.06,
            "marks": [
                {"kind": "line", "points": [0, 0.5, 0, 0.66], "wide": 0.02},
                {"kind": "spots", "at": [0.24, 0.42, 0.3, 0.66, 0.6, 0.4, 0.68, 0.58, 0.6, 0.76], "pair": True,
                 "size": 0.075, "color": "#6A563C", "opacity": 0.6},
                            ],
        },
        "abdomen": {
            "length": 6.0, "width": 5.4, "shape": "globe", "color": "#A8967A", "hairs": 60, "hair-length": 0.35,
            "hair-color": "#5E4E38", "fringe": 40, "stipple": 20, "depth": 0.2, "shine": 0.05,
            "marks": [
                {"kind": "area", "points": [0, 0.05, 0.1, 0.1, 0.13, 0.3, 0.06, 0.5, 0, 0.56], "color": "#5A4833",
                 "opacity": 0.75},
                {"kind": "spots", "at": [0.32, 0.2, 0.36, 0.38, 0.34, 0.56, 0.7, 0.3, 0.76, 0.5], "pair": True,
                 "size": 0.07, "color": "#54432E", "opacity": 0.8},
                {"kind": "chevrons", "count": 3, "from": 0.66, "to": 0.88, "width": 0.5, "color": "#54432E",
                 "thick": 0.02, "opacity": 0.7},
                {"kind": "speckle", "count": 60, "color": "#4A3B29", "size": 0.03},
            ],
        },
        "legs": {
            "lengths": [17, 20, 20.5, 19], "thick": 0.2, "taper": 1.3, "color": "#C4AE84", "posture": "flat-out",
            "arch": 0.05, "hairs": 0.6, "hair-length": 0.4, "hair-color": "#5E4E38", "spines": [0, 0, 3, 0, 4, 3, 0],
            "spine-length": 1.0, "lean": True,
            "bands": {
                "color": "#4E3D2A", "opacity": 0.8, "femur": [0.14, 0.28, 0.44, 0.58, 0.78, 0.94],
                "patella": [0.3, 0.8],
                "tibia": [0.08, 0.24, 0.5, 0.66, 0.88, 1], "metatarsus": [0.1, 0.28, 0.6, 0.78],
            },
        },
        "eyes": {"layout": "six-in-front-row", "times": 1.0, "patch": "#4A3B29"},
        "jaws": {"length": 0.5, "width": 0.9, "color": "#6A4E32", "plain": True},
        "palps": {"length": 3.6, "thick": 0.58, "start": 0.5, "spread": 30},
        "spinners": {"length": 0.3, "width": 0.45},
    },
    "running-crab": {
        "carapace": {
            "length": 2.5, "width": 2.6, "shape": "round", "color": "#A07E52", "hairs": 30, "hair-length": 0.2,
            "hair-color": "#6A5032", "overlap": 0.05, "stipple": 30, "depth": 0.28,
            "marks": [
                {"kind": "area", "points": [0, 0.02, 0.5, 0.05, 0.46, 0.3, 0.3, 0.64, 0.24, 0.96, 0, 0.98],
                 "color": "#E6D6AE", "opacity": 0.95},
                {"kind": "margin", "color": "#DAC69A", "from": 0.3, "to": 0.94, "inner": 0.88, "opacity": 0.8},
            ],
        },
        "abdomen": {
            "length": 3.9, "width": 2.7, "shape": "kite-soft", "color": "#C9B080", "hairs": 90, "hair-length": 0.2,
            "hair-color": "#7A6040", "stipple": 30, "depth": 0.28, "shine": 0.08,
            "marks": [
                {"kind": "margin", "color": "#7E6240", "from": 0.1, "to": 0.9, "inner": 0.66, "opacity": 0.75},
                {"kind": "area", "points": [0, 0.04, 0.15, 0.12, 0.17, 0.3, 0.1, 0.46, 0, 0.52], "color": "#6E5434",
                 "opacity": 0.95, "edge": "#F3E8CB", "edge-width": 0.45},
                {"kind": "chevrons", "count": 4, "from": 0.58, "to": 0.9, "width": 0.56, "color": "#6E5434",
                 "thick": 0.016, "drop": 0.05, "opacity": 0.8},
            ],
        },
        "legs": {
            "lengths": [10.4, 13.4, 9.8, 9.6], "thick": 0.165, "taper": 1.3, "color": "#CDB384", "posture": "flat-out",
            "arch": 0.06, "hairs": 0.8, "hair-length": 0.2, "hair-color": "#6A5032", "spines": [0, 0, 0, 0, 1, 1, 0],
            "spine-length": 0.5, "lean": True,
            "bands": {"color": "#7E6240", "opacity": 0.5, "femur": [0.86, 1], "tibia": [0.86, 1],
                      "metatarsus": [0.88, 1]},
        },
        "eyes": {"layout": "two-rows-wide", "times": 0.85},
        "jaws": {"length": 0.4, "width": 0.5, "color": "#A88A5C", "plain": True},
        "palps": {"length": 1.8, "thick": 0.65, "start": 0.45},
        "spinners": {"length": 0.25, "width": 0.26, "color": "#A88A5C"},
    },
    "flower-crab": {
        "carapace": {
            "length": 3.6, "width": 3.6, "shape": "box", "color": "#E9EBCD", "overlap": 0.14, "stipple": 30,
            "shine": 0.2, "depth": 0.28,
            "marks": [
                {"kind": "area", "points": [0.5, 0.1, 0.8, 0.26, 0.92, 0.6, 0.7, 0.88, 0.44, 0.7, 0.52, 0.4],
                 "pair": True, "color": "#B9C08A", "opacity": 0.75},
                {"kind": "area", "points": [0, 0.0, 0.6, 0.02, 0.56, 0.16, 0, 0.2], "color": "#FFFFFF", "opacity": 0.9},
            ],
        },
        "abdomen": {
            "length": 6.0, "width": 6.5, "shape": "broad-behind", "color": "#FAF7EA", "shine": 0.3, "depth": 0.2,
            "stipple": 50,
            "marks": [
                {"kind": "area", "points": [0.62, 0.12, 0.82, 0.2, 0.95, 0.42, 0.95, 0.64, 0.86, 0.62, 0.78, 0.38],
                 "pair": True, "color": "#D9627F", "opacity": 0.9},
                {"kind": "spots", "at": [0.2, 0.36, 0.3, 0.56], "pair": True, "size": 0.028, "color": "#BDB896"},
                {"kind": "spots", "at": [0, 0.24], "size": 0.026, "color": "#BDB896"},
            ],
        },
        "legs": {
            "lengths": [13.6, 13.4, 6.6, 7], "thick": 0.225, "thicker": [1.3, 1.28, 0.82, 0.82], "taper": 1.1,
            "color": "#EEEFD6", "posture": "crab-to-sides", "arch": 0.1, "hairs": 0.6, "hair-length": 0.15,
            "spines": [0, 0, 0, 0, 0, 3, 0], "spine-length": 0.4, "lean": True,
            "bands": {"color": "#C9B878", "opacity": 0.35, "patella": [0.2, 0.9], "tibia": [0.75, 1]},
        },
        "eyes": {"layout": "crab", "times": 1.1, "patch": "#FFFFFF"},
        "jaws": {"length": 0.4, "width": 0.8, "color": "#D6D8B4", "plain": True},
        "palps": {"length": 1.9, "thick": 0.5, "start": 0.4},
        "spinners": {"length": 0.3, "width": 0.4, "color": "#DAD6BC"},
    },
    "parson-spider": {
        "carapace": {
            "length": 4.2, "width": 3.1, "shape": "shield", "color": "#3A2B22", "hairs": 80, "hair-length": 0.3,
            "hair-color": "#7E7064", "overlap": 0.03, "stipple": 30, "shine": 0.1,
            "marks": [
                {"kind": "area", "points": [0, 0.12, 0.2, 0.18, 0.24, 0.4, 0.14, 0.62, 0, 0.72], "color": "#CFC3B4",
                 "opacity": 0.5},
            ],
        },
        "abdomen": {
            "length": 7.2, "width": 3.8, "shape": "long", "color": "#332B29", "hairs": 230, "hair-length": 0.35,
            "hair-color": "#776C66", "fringe": 70, "stipple": 20, "shine": 0.05,
            "marks": [
                {
                    "kind": "area",
                    "points": [0, 0.04, 0.16, 0.06, 0.2, 0.14, 0.3, 0.2, 0.2, 0.3, 0.26, 0.4, 0.16, 0.52, 0.18,
                    0.6, 0.08,
                               0.68, 0, 0.7],
                    "color": "#F3E7DC", "opacity": 0.97, "tension": 0.7,
                },
                {"kind": "area", "points": [0, 0.84, 0.16, 0.86, 0.14, 0.92, 0, 0.94], "color": "#F3E7DC",
                 "opacity": 0.95},
            ],
        },
        "legs": {
            "lengths": [13, 11.6, 10.4, 15.4], "thick": 0.25, "taper": 1.15, "color": "#54392A", "posture": "hunter",
            "base-color": "#3C2C22", "hairs": 1.6, "hair-length": 0.28, "hair-color": "#2A1F18", "lean": True,
            "spines": [0, 0, 1, 0, 1, 2, 0], "spine-length": 0.5,
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 0.6, "width": 0.8, "color": "#2E211A", "plain": True},
        "palps": {"length": 3.2, "thick": 0.62, "start": 0.45},
        "spinners": {"length": 1.25, "width": 0.46, "color": "#5E4E44", "spread": 10},
    },
}  # fmt: skip
"""Plan name to settings."""
