"""Body plans of further spiders that build wheel-shaped webs (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["MORE_ORB_WEAVERS"]

MORE_ORB_WEAVERS: dict[str, Mapping[str, object]] = {
    "humped-orb": {
        "carapace": {
            "length": 5.4, "width": 4.5, "shape": "pear", "color": "#A88A62", "hairs": 80, "hair-length": 0.5,
            "hair-color": "#F0E6D0", "overlap": 0.22, "stipple": 40,
            "marks": [
                {"kind": "area", "points": [0, 0.1, 0.14, 0.3, 0.09, 0.7, 0, 0.85], "color": "#6E5236",
                 "opacity": 0.55},
            ],
        },
        "abdomen": {
            "length": 12.4, "width": 12.6, "shape": "two-humped", "color": "#C9A878", "hairs": 110,
            "hair-length": 0.55, "hair-color": "#6E5236", "fringe": 30, "stipple": 70,
            "marks": [
                {
                    "kind": "area",
                    "points": [0, 0.3, 0.3, 0.32, 0.52, 0.4, 0.4, 0.55, 0.44, 0.62, 0.28, 0.74, 0.3, 0.8, 0.14, 0.92,
                               0, 0.97],
                    "color": "#8A6640", "opacity": 0.6,
                },
                {"kind": "speckle", "count": 50, "color": "#6E4C2C", "size": 0.03},
                {"kind": "humps", "at": [0.66, 0.215], "pair": True, "size": 0.23, "color": "#D8BC8E"},
                {
                    "kind": "line", "points": [0, 0.13, 0.2, 0.25, 0.44, 0.2, 0.6, 0.29], "pair": True, "wide": 0.034,
                    "color": "#FBF3DF", "opacity": 1,
                },
                {"kind": "area", "points": [0, 0.04, 0.07, 0.08, 0.05, 0.17, 0, 0.2], "color": "#FBF3DF", "opacity": 1},
                {
                    "kind": "spots", "at": [0.24, 0.44, 0.23, 0.58, 0.2, 0.71], "pair": True, "size": 0.035,
                    "color": "#3A2819",
                },
            ],
        },
        "legs": {
            "lengths": [19, 17.5, 11.5, 17], "thick": 0.28, "taper": 1.2, "color": "#C29F70", "posture": "orb-rest",
            "hairs": 1.6, "hair-length": 0.45, "spines": [0, 0, 2, 1, 4, 3, 0], "spine-length": 0.9, "lean": True,
            "bands": {
                "color": "#5E4229", "femur": [0.5, 0.66, 0.86, 1], "patella": [0.5, 1],
                "tibia": [0.0, 0.14, 0.42, 0.6, 0.84, 1], "metatarsus": [0, 0.12, 0.42, 0.58, 0.86, 1],
                "tarsus": [0.5, 1],
            },
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.8, "width": 1.0, "color": "#5E4029", "plain": True},
        "palps": {"length": 3.9, "thick": 0.5},
        "spinners": {"length": 0.3, "width": 0.7},
    },
    "trashline-orb": {
        "carapace": {
            "length": 2.0, "width": 1.5, "shape": "pear", "color": "#3C3029", "hairs": 40, "hair-length": 0.2,
            "hair-color": "#B9AC98", "overlap": 0.28, "stipple": 30,
        },
        "abdomen": {
            "length": 4.6, "width": 2.9, "shape": "blunt-tail", "color": "#A6977F", "hairs": 60, "hair-length": 0.2,
            "hair-color": "#5A4A3A", "stipple": 60,
            "marks": [
                {
                    "kind": "area", "points": [0.3, 0.1, 0.8, 0.14, 0.96, 0.3, 0.7, 0.44, 0.8, 0.56, 0.5, 0.5,
                    0.36, 0.3],
                    "pair": True, "color": "#4A3B2E", "opacity": 0.75,
                },
                {
                    "kind": "area",
                    "points": [0, 0.04, 0.24, 0.08, 0.14, 0.2, 0.36, 0.3, 0.16, 0.42, 0.34, 0.54, 0.2, 0.7, 0, 0.74],
                    "color": "#E9DFCA", "opacity": 0.85, "tension": 0.7,
                },
                {"kind": "area", "points": [0, 0.1, 0.06, 0.2, 0.1, 0.36, 0.04, 0.56, 0, 0.62], "color": "#5A4938",
                 "opacity": 0.8},
                {"kind": "bands", "at": [0.76], "thick": 0.03, "color": "#44362A", "reach": 0.85, "opacity": 0.55,
                 "wavy": 0.012},
                {"kind": "speckle", "count": 50, "color": "#3A2D22", "size": 0.035},
                {"kind": "humps", "at": [0.36, 0.14], "pair": True, "size": 0.16, "color": "#CDBFA6"},
                {"kind": "humps", "at": [0, 0.945], "size": 0.24, "color": "#B7A68C"},
            ],
        },
        "legs": {
            "lengths": [6.4, 5.6, 3.5, 5.3], "thick": 0.27, "taper": 1.15, "color": "#CBBB9C", "posture": "orb-rest",
            "hairs": 1.4, "hair-length": 0.18, "lean": True,
            "bands": {
                "color": "#4A3829", "opacity": 0.85, "femur": [0.45, 1], "patella": [0.6, 1],
                "tibia": [0.3, 0.55, 0.84, 1], "metatarsus": [0.4, 0.6, 0.86, 1], "tarsus": [0.5, 1],
            },
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.4, "width": 0.42, "color": "#2F2520", "plain": True},
        "palps": {"length": 1.5, "thick": 0.5},
        "spinners": {"length": 0.02, "width": 0.1},
    },
    "basilica-orb": {
        "carapace": {
            "length": 2.6, "width": 2.0, "shape": "pear", "color": "#C08A4C", "hairs": 24, "hair-length": 0.2,
            "hair-color": "#F0DFBE", "overlap": 0.2, "stipple": 40, "shine": 0.22,
            "marks": [
                {"kind": "line", "points": [0, 0.24, 0, 0.9], "wide": 0.06, "color": "#3E2C1C"},
                {"kind": "margin", "color": "#3E2C1C", "from": 0.3, "to": 0.94, "inner": 0.82},
            ],
        },
        "abdomen": {
            "length": 6.6, "width": 3.5, "shape": "cylinder", "color": "#C5742E", "hairs": 0, "shine": 0.28,
            "stipple": 60,
            "marks": [
                {
                    "kind": "area",
                    "points": [0.62, 0.08, 0.9, 0.16, 0.98, 0.4, 0.96, 0.66, 0.8, 0.86, 0.66, 0.7, 0.7, 0.4],
                    "pair": True, "color": "#E7B13E", "opacity": 0.75,
                },
                {"kind": "line", "points": [0.86, 0.2, 0.95, 0.48, 0.84, 0.78], "pair": True, "wide": 0.03,
                 "color": "#7A3F1C", "opacity": 0.8},
                {
                    "kind": "area",
                    "points": [0, 0.02, 0.5, 0.06, 0.56, 0.2, 0.42, 0.34, 0.5, 0.46, 0.36, 0.6, 0.42, 0.7, 0.3, 0.84,
                               0.34, 0.93, 0, 0.985],
                    "color": "#4F5428", "opacity": 1, "edge": "#FBF4DC", "edge-width": 1.1,
                },
                {"kind": "area", "points": [0, 0.06, 0.13, 0.12, 0.15, 0.3, 0.08, 0.6, 0.08, 0.86, 0, 0.93],
                 "color": "#262A15", "opacity": 0.8},
                {"kind": "spots", "at": [0.3, 0.14, 0.28, 0.46, 0.24, 0.7], "pair": True, "size": 0.05,
                 "color": "#F3E3A8"},
            ],
        },
        "legs": {
            "lengths": [11.2, 9.8, 6, 9], "thick": 0.23, "taper": 1.25, "color": "#B9905A", "posture": "orb-rest",
            "base-color": "#9A9258", "hairs": 1, "hair-length": 0.22, "spines": [0, 0, 0, 0, 2, 2, 0],
            "spine-length": 0.5, "lean": True,
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.5, "width": 0.5, "color": "#7A4E2C", "plain": True},
        "palps": {"length": 1.9, "thick": 0.5},
        "spinners": {"length": 0.15, "width": 0.3},
    },
    "labyrinth-orb": {
        "carapace": {
            "length": 2.5, "width": 2.0, "shape": "pear", "color": "#6A4A30", "hairs": 60, "hair-length": 0.25,
            "hair-color": "#EFE6D4", "overlap": 0.2, "stipple": 40,
            "marks": [
                {"kind": "area", "points": [0, 0.0, 0.9, 0.03, 0.8, 0.16, 0.4, 0.3, 0, 0.36], "color": "#B99468",
                 "opacity": 0.8},
            ],
        },
        "abdomen": {
            "length": 5.0, "width": 4.2, "shape": "tapering", "color": "#7C6A56", "hairs": 60, "hair-length": 0.25,
            "hair-color": "#C9BBA3", "stipple": 50, "shine": 0.15,
            "marks": [
                {
                    "kind": "folium", "lobes": 4, "width": 0.82, "from": 0.03, "to": 0.97, "color": "#2B211B",
                    "edge": "#F6F0E2", "opacity": 0.97,
                },
                {"kind": "area", "points": [0, 0.05, 0.05, 0.1, 0.055, 0.4, 0.04, 0.8, 0, 0.9], "color": "#FBF7EC",
                 "opacity": 1},
                {
                    "kind": "area",
                    "points": [0, 0.25, 0.3, 0.19, 0.44, 0.21, 0.32, 0.25, 0, 0.32], "color": "#FBF7EC", "opacity": 1,
                    "tension": 0.6,
                },
                {"kind": "spots", "at": [0.26, 0.47, 0.22, 0.62], "pair": True, "size": 0.05, "color": "#FBF7EC"},
            ],
        },
        "legs": {
            "lengths": [9.6, 8.2, 5, 7.6], "thick": 0.24, "taper": 1.2, "color": "#D8BE92", "posture": "orb-rest",
            "hairs": 1.4, "hair-length": 0.2, "spines": [0, 0, 0, 0, 3, 2, 0], "spine-length": 0.45, "lean": True,
            "bands": {
                "color": "#4A3423", "opacity": 0.9, "femur": [0.4, 0.58, 0.84, 1], "patella": [0.6, 1],
                "tibia": [0.36, 0.54, 0.84, 1], "metatarsus": [0.36, 0.54, 0.84, 1], "tarsus": [0.5, 1],
            },
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.45, "width": 0.52, "color": "#4A3423", "plain": True},
        "palps": {"length": 1.8, "thick": 0.5},
        "spinners": {"length": 0.15, "width": 0.3},
    },
    "long-jawed": {
        "carapace": {
            "length": 2.6, "width": 1.75, "shape": "shield", "color": "#C9AC74", "overlap": 0.06, "stipple": 30,
            "shine": 0.22,
            "marks": [
                {"kind": "head-groove", "at": 0.5, "color": "#7A5C34"},
                {"kind": "line", "points": [0, 0.5, 0, 0.64], "wide": 0.05, "color": "#7A5C34"},
            ],
        },
        "abdomen": {
            "length": 7.4, "width": 1.75, "shape": "stick", "color": "#C6BC98", "shine": 0.3, "stipple": 50,
            "marks": [
                {"kind": "margin", "color": "#F1EBD6", "from": 0.05, "to": 0.9, "inner": 0.5, "outer": 0.86,
                 "opacity": 0.9},
                {"kind": "line", "points": [0, 0.04, 0, 0.3, 0, 0.95], "wide": 0.1, "color": "#7E6C45", "opacity": 0.8},
                {"kind": "line", "points": [0.02, 0.24, 0.4, 0.18], "pair": True, "wide": 0.05, "color": "#7E6C45",
                 "opacity": 0.7},
                {"kind": "line", "points": [0.02, 0.44, 0.4, 0.38], "pair": True, "wide": 0.05, "color": "#7E6C45",
                 "opacity": 0.7},
            ],
        },
        "legs": {
            "lengths": [19, 11.5, 5.4, 11.5], "thick": 0.22, "taper": 1.5, "color": "#C7AA70", "posture": "along-stem",
            "arch": 0.06, "sway": 1.2, "hairs": 0.8, "hair-length": 0.2, "lean": True,
        },
        "eyes": {"layout": "two-rows", "times": 1.1},
        "jaws": {"length": 2.4, "width": 0.66, "color": "#B98A4C", "folded-fangs": True, "spread": 16,
        "shine": 0.35, "plain": True},
        "palps": {"length": 3.4, "thick": 0.55, "start": 0.62, "spread": 34},
        "spinners": {"length": 0.2, "width": 0.22, "color": "#9A8658"},
    },
    "orchard-orb": {
        "carapace": {
            "length": 2.4, "width": 1.9, "shape": "pear", "color": "#B9BE6A", "overlap": 0.12, "stipple": 30,
            "shine": 0.25,
            "marks": [
                {"kind": "line", "points": [0, 0.2, 0, 0.9], "wide": 0.06, "color": "#66632C", "opacity": 0.8},
                {"kind": "margin", "color": "#7C7A38", "from": 0.3, "to": 0.94, "inner": 0.84, "opacity": 0.7},
            ],
        },
        "abdomen": {
            "length": 5.0, "width": 2.8, "shape": "long", "color": "#F1F1EA", "shine": 0.5, "stipple": 40,
            "depth": 0.3,
            "marks": [
                {"kind": "margin", "color": "#B7C23F", "from": 0.14, "to": 0.86, "inner": 0.72, "outer": 0.98,
                 "opacity": 1},
                {"kind": "margin", "color": "#E6D24A", "from": 0.24, "to": 0.8, "inner": 0.76, "outer": 0.88,
                 "opacity": 0.9},
                {"kind": "line", "points": [0, 0.03, 0, 0.4, 0, 0.93], "wide": 0.035, "color": "#4C4A34"},
                {"kind": "line", "points": [0.34, 0.05, 0.4, 0.3, 0.34, 0.62, 0.2, 0.92], "pair": True, "wide": 0.022,
                 "color": "#4C4A34", "opacity": 0.85},
                {"kind": "line", "points": [0.68, 0.14, 0.71, 0.4, 0.62, 0.76], "pair": True, "wide": 0.03,
                 "color": "#4C4A34", "opacity": 0.95},
                {"kind": "line", "points": [0.02, 0.26, 0.34, 0.17], "pair": True, "wide": 0.022, "color": "#4C4A34"},
                {"kind": "line", "points": [0.02, 0.46, 0.36, 0.36], "pair": True, "wide": 0.022, "color": "#4C4A34"},
                {"kind": "line", "points": [0.02, 0.64, 0.32, 0.55], "pair": True, "wide": 0.022, "color": "#4C4A34"},
                {
                    "kind": "area", "points": [0.44, 0.79, 0.72, 0.75, 0.78, 0.83, 0.5, 0.89], "pair": True,
                    "color": "#D8452A", "opacity": 1,
                },
                {"kind": "spots", "at": [0.9, 0.13], "pair": True, "size": 0.07, "color": "#DE7A34"},
            ],
        },
        "legs": {
            "lengths": [14.4, 10.8, 5.4, 9.6], "thick": 0.19, "taper": 1.4, "color": "#93AE54",
            "posture": "web-hanger", "arch": 0.14, "hairs": 0.8, "hair-length": 0.2, "lean": True,
            "spines": [0, 0, 1, 0, 2, 1, 0], "spine-length": 0.5,
            "bands": {"color": "#4E5A2A", "opacity": 0.75, "femur": [0.92, 1], "tibia": [0.86, 1],
                      "metatarsus": [0.9, 1]},
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.7, "width": 0.55, "color": "#8E8A42", "plain": True},
        "palps": {"length": 1.9, "thick": 0.55, "color": "#A9BA66"},
        "spinners": {"length": 0.15, "width": 0.26, "color": "#6C6A3A"},
    },
    "feather-legged": {
        "carapace": {
            "length": 1.6, "width": 1.35, "shape": "pear", "color": "#8A6E4E", "hairs": 70, "hair-length": 0.16,
            "hair-color": "#EADFC8", "overlap": 0.16, "stipple": 30,
            "marks": [
                {"kind": "area", "points": [0, 0.12, 0.16, 0.3, 0.1, 0.7, 0, 0.9], "color": "#D9C7A4", "opacity": 0.8},
            ],
        },
        "abdomen": {
            "length": 3.5, "width": 2.3, "shape": "shouldered", "color": "#BFA47C", "hairs": 110, "hair-length": 0.18,
            "hair-color": "#6E5538", "fringe": 40, "stipple": 50, "shine": 0.06,
            "marks": [
                {
                    "kind": "area",
                    "points": [0.24, 0.06, 0.62, 0.1, 0.9, 0.26, 0.7, 0.34, 0.6, 0.5, 0.34, 0.44, 0.28, 0.2],
                    "pair": True, "color": "#7A5C3C", "opacity": 0.6,
                },
                {
                    "kind": "area", "points": [0.26, 0.56, 0.6, 0.58, 0.66, 0.68, 0.4, 0.8, 0.24, 0.72], "pair": True,
                    "color": "#7A5C3C", "opacity": 0.55,
                },
                {"kind": "area", "points": [0, 0.04, 0.12, 0.1, 0.1, 0.3, 0.16, 0.5, 0.08, 0.8, 0, 0.9],
                 "color": "#EFE3C8", "opacity": 0.7},
                {"kind": "humps", "at": [0.38, 0.3], "pair": True, "size": 0.3, "color": "#D9C399"},
                {"kind": "spots", "at": [0.24, 0.56, 0.2, 0.72], "pair": True, "size": 0.07, "color": "#F6EEDB"},
            ],
        },
        "legs": {
            "lengths": [8.4, 4.7, 3.2, 5.2], "thick": 0.25, "taper": 1.2, "color": "#B99B70", "posture": "along-stem",
            "thicker": [1.15, 0.92, 0.9, 0.95], "arch": 0.06, "sway": 1.5, "hairs": 2, "hair-length": 0.15,
            "lean": True,
            "brush": {"pairs": [1], "segments": [4], "from": 0.42, "to": 1, "length": 2.0, "color": "#4A3624",
                      "count": 70},
            "bands": {"color": "#5E452C", "opacity": 0.8, "femur": [0.3, 0.46, 0.8, 1], "tibia": [0.5, 1],
                      "metatarsus": [0.3, 0.5, 0.8, 1]},
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 0.35, "width": 0.36, "color": "#6A5036", "plain": True},
        "palps": {"length": 1.1, "thick": 0.5},
        "spinners": {"length": 0.12, "width": 0.2},
    },
}  # fmt: skip
"""Plan name to settings."""
