"""Body plans of sheet-web, mesh-web and wall spiders and of those that live near them (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["MESH_SPIDERS"]

MESH_SPIDERS: dict[str, Mapping[str, object]] = {
    "sheet-web": {
        "carapace": {
            "length": 1.6, "width": 1.2, "shape": "pear", "color": "#8A5B36", "shine": 0.5, "stipple": 30,
            "overlap": 0.14, "marks": [{"kind": "rays", "color": "#4A2C1A", "count": 3, "opacity": 0.4}],
        },
        "abdomen": {
            "length": 2.7, "width": 1.95, "shape": "oval", "color": "#33261F", "shine": 0.7, "stipple": 40,
            "depth": 0.5,
            "marks": [
                {"kind": "margin", "color": "#F1E8D2", "from": 0.1, "to": 0.84, "inner": 0.83, "outer": 0.97},
                {
                    "kind": "area", "points": [0.86, 0.26, 0.6, 0.26, 0.5, 0.32, 0.62, 0.36, 0.88, 0.36], "pair": True,
                    "color": "#F1E8D2",
                },
                {
                    "kind": "area", "points": [0.88, 0.47, 0.58, 0.46, 0.46, 0.53, 0.6, 0.58, 0.88, 0.57],
                    "pair": True, "color": "#F1E8D2",
                },
                {
                    "kind": "area", "points": [0.86, 0.68, 0.56, 0.67, 0.42, 0.74, 0.58, 0.79, 0.84, 0.78],
                    "pair": True, "color": "#F1E8D2",
                },
            ],
        },
        "legs": {
            "lengths": [7.6, 7.0, 4.8, 6.6], "thick": 0.16, "taper": 1.4, "color": "#B98E58", "posture": "all-round",
            "hairs": 0.5, "hair-length": 0.12, "lean": True, "gloss": 0.3,
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.14, "width": 0.32, "color": "#7A4C2C", "shine": 0.1},
        "palps": {"length": 1.2, "thick": 0.7},
        "spinners": {"length": 0.14, "width": 0.2},
    },
    "wall": {
        "carapace": {
            "length": 0.95, "width": 1.1, "shape": "disc", "color": "#DCC9A4", "shine": 0.15, "stipple": 20,
            "overlap": 0.16, "hairs": 16, "hair-length": 0.08,
            "marks": [
                {"kind": "margin", "color": "#4A3B2E", "from": 0.2, "to": 0.95, "inner": 0.88, "outer": 0.98},
                {"kind": "area", "points": [0, 0.12, 0.3, 0.16, 0.32, 0.34, 0, 0.42], "color": "#4A3B2E"},
                {
                    "kind": "spots", "at": [0.66, 0.42, 0.7, 0.6, 0.52, 0.78], "pair": True, "size": 0.09,
                    "color": "#4A3B2E",
                },
            ],
        },
        "abdomen": {
            "length": 1.75, "width": 1.45, "shape": "oval", "color": "#CDBD9E", "shine": 0.12, "stipple": 40,
            "hairs": 70, "hair-length": 0.1, "fringe": 30, "hair-color": "#6A5A48",
            "marks": [
                {
                    "kind": "spots", "at": [0.3, 0.14, 0.62, 0.26, 0.26, 0.36, 0.76, 0.46, 0.4, 0.56, 0.7,
                        0.68, 0.3, 0.78],
                    "pair": True, "size": 0.12, "color": "#4E4034", "opacity": 0.85,
                },
                {
                    "kind": "spots", "at": [0.46, 0.22, 0.52, 0.4, 0.6, 0.58, 0.46, 0.7, 0.16, 0.62], "pair": True,
                    "size": 0.08, "color": "#FBF6EA",
                },
                {
                    "kind": "area", "points": [0, 0.12, 0.13, 0.18, 0.1, 0.38, 0.16, 0.5, 0, 0.6], "color": "#6A5743",
                    "opacity": 0.7,
                },
                {"kind": "speckle", "count": 40, "color": "#FBF6EA", "size": 0.04, "opacity": 0.8},
            ],
        },
        "legs": {
            "lengths": [3.5, 3.7, 3.6, 3.9], "thick": 0.17, "taper": 1.2, "color": "#D9C6A0", "posture": "star",
            "arch": 0.1, "hairs": 1.0, "hair-length": 0.08, "hair-color": "#6A5A48", "lean": True, "sway": 2,
            "bands": {
                "color": "#4A3B2E", "opacity": 0.85, "femur": [0.3, 0.46, 0.8, 0.98], "patella": [0.4, 0.98],
                "tibia": [0.2, 0.42, 0.76, 0.98], "metatarsus": [0.2, 0.42, 0.78, 0.98],
            },
        },
        "eyes": {"layout": "crevice"},
        "jaws": {"length": 0.1, "width": 0.2, "color": "#A88C66"},
        "palps": {"length": 0.75, "thick": 0.85},
        "spinners": {"length": 0.24, "width": 0.17, "color": "#B9A888", "spread": 4},
    },
    "hackled-band": {
        "carapace": {
            "length": 4.6, "width": 3.5, "shape": "head-broad", "color": "#8C4A2C", "shine": 0.5, "stipple": 40,
            "overlap": 0.06, "hairs": 20, "hair-length": 0.3,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.0, 0.66, 0.04, 0.8, 0.2, 0.6, 0.34, 0, 0.46], "color": "#3A1A10",
                    "opacity": 0.7,
                },
                {"kind": "rays", "color": "#4A2012", "count": 3},
            ],
        },
        "abdomen": {
            "length": 6.4, "width": 4.6, "shape": "oval", "color": "#6B6259", "shine": 0.1, "hairs": 150,
            "hair-length": 0.4, "hair-color": "#3E3730", "fringe": 40, "stipple": 50,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.08, 0.2, 0.12, 0.24, 0.34, 0.1, 0.42, 0, 0.44], "color": "#38302A",
                    "opacity": 0.7,
                },
                {
                    "kind": "spots", "at": [0.42, 0.2, 0.46, 0.34], "pair": True, "size": 0.13, "color": "#CFC3A6",
                    "opacity": 0.75,
                },
                {
                    "kind": "chevrons", "count": 4, "from": 0.5, "to": 0.88, "width": 0.66, "color": "#D3C7AA",
                    "thick": 0.022, "drop": 0.045, "opacity": 0.85,
                },
            ],
        },
        "legs": {
            "lengths": [13.4, 11.8, 10.4, 12.8], "thick": 0.235, "taper": 1.15, "color": "#9A5C38",
            "base-color": "#9A5C38", "posture": "all-round", "hairs": 1.3, "hair-length": 0.35,
            "hair-color": "#3E2418", "lean": True, "spines": [0, 0, 2, 0, 4, 5, 0], "spine-length": 0.75,
        },
        "eyes": {"layout": "crevice"},
        "jaws": {"length": 0.5, "width": 1.0, "color": "#4A2416", "shine": 0.15},
        "palps": {"length": 3.8, "thick": 0.7, "start": 0.5},
        "spinners": {"length": 0.5, "width": 0.55},
    },
    "mesh-web": {
        "carapace": {
            "length": 1.3, "width": 1.05, "shape": "head-broad", "color": "#6E5138", "shine": 0.12, "stipple": 30,
            "overlap": 0.12,
            "marks": [
                {"kind": "line", "points": [0, 0.1, 0, 0.55], "wide": 0.07, "color": "#EFE6D2", "opacity": 0.75},
                {
                    "kind": "line", "points": [0.42, 0.1, 0.36, 0.34, 0.12, 0.56], "pair": True, "wide": 0.055,
                    "color": "#EFE6D2", "opacity": 0.75,
                },
            ],
        },
        "abdomen": {
            "length": 2.4, "width": 1.85, "shape": "oval", "color": "#CFC2A8", "shine": 0.08, "hairs": 150,
            "hair-length": 0.16, "hair-color": "#7A6B56", "fringe": 50, "stipple": 30,
            "marks": [
                {
                    "kind": "area",
                    "points": [0, 0.05, 0.24, 0.09, 0.3, 0.24, 0.16, 0.32, 0.22, 0.42, 0.12, 0.48, 0, 0.5],
                    "color": "#5C4330", "opacity": 0.9,
                },
                {
                    "kind": "chevrons", "count": 3, "from": 0.58, "to": 0.84, "width": 0.44, "color": "#5C4330",
                    "thick": 0.028, "drop": 0.035, "opacity": 0.85,
                },
                {
                    "kind": "spots", "at": [0.62, 0.3, 0.68, 0.46, 0.6, 0.62], "pair": True, "size": 0.07,
                    "color": "#7A5E44", "opacity": 0.7,
                },
            ],
        },
        "legs": {
            "lengths": [4.0, 3.6, 2.9, 3.4], "thick": 0.2, "taper": 1.15, "color": "#B4946A", "posture": "all-round",
            "hairs": 1.2, "hair-length": 0.12, "hair-color": "#6A5438", "lean": True,
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.14, "width": 0.28, "color": "#6A4A30", "shine": 0.1},
        "palps": {"length": 1.0, "thick": 0.72, "start": 0.5},
        "spinners": {"length": 0.14, "width": 0.2},
    },
    "grass": {
        "plan": "funnel-weaver",
        "carapace": {"length": 5.6, "width": 4.2, "color": "#CDB48A", "hairs": 40, "stipple": 50},
        "abdomen": {
            "length": 8.8, "width": 4.4, "color": "#B49A74", "hairs": 110, "fringe": 40, "stipple": 50,
            "marks": [
                {
                    "kind": "area",
                    "points": [
                        0.3, 0.03, 0.7, 0.12, 0.92, 0.4, 0.8, 0.7, 0.4, 0.95, 0.26, 0.86, 0.36, 0.55, 0.34, 0.2,
                    ],
                    "pair": True, "color": "#4F3B29", "opacity": 0.85,
                },
                {
                    "kind": "line", "points": [0.34, 0.12, 0.42, 0.4, 0.34, 0.7, 0.2, 0.92], "pair": True,
                    "wide": 0.045, "color": "#F1E6CC", "opacity": 0.9,
                },
                {
                    "kind": "area", "points": [0, 0.06, 0.12, 0.12, 0.14, 0.34, 0, 0.44], "color": "#7A5E40",
                    "opacity": 0.6,
                },
            ],
        },
        "legs": {
            "lengths": [21, 20, 18.5, 26], "thick": 0.185, "color": "#C4A67A", "hairs": 1.6, "lean": True,
            "bands": {
                "color": "#5A432D", "opacity": 0.55, "femur": [0.4, 0.5, 0.86, 0.98], "patella": [0.5, 0.98],
                "tibia": [0.82, 0.98], "metatarsus": [0.86, 0.99],
            },
        },
        "eyes": {"layout": "agelenid", "times": 1.1},
        "spinners": {"length": 3.1, "width": 0.46},
    },
    "net-casting": {
        "carapace": {
            "length": 4.6, "width": 3.3, "shape": "pear", "color": "#A98A62", "hairs": 24, "hair-length": 0.3,
            "hair-color": "#6E563A", "stipple": 40, "overlap": 0.02,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.1, 0.34, 0.16, 0.3, 0.5, 0.16, 0.9, 0, 0.97], "color": "#75583A",
                    "opacity": 0.6,
                },
            ],
        },
        "abdomen": {
            "length": 12.2, "width": 2.7, "shape": "twig", "color": "#AE9068", "hairs": 60, "hair-length": 0.4,
            "hair-color": "#6E563A", "stipple": 40, "turn": 0,
            "marks": [
                {
                    "kind": "line", "points": [0, 0.03, 0, 0.3, 0, 0.7, 0, 0.97], "wide": 0.16, "color": "#6E5236",
                    "opacity": 0.7,
                },
                {
                    "kind": "line", "points": [0.5, 0.06, 0.6, 0.36, 0.5, 0.7, 0.3, 0.94], "pair": True, "wide": 0.06,
                    "color": "#E2D2B0", "opacity": 0.8,
                },
            ],
        },
        "legs": {
            "lengths": [30, 27, 19, 23], "thick": 0.22, "taper": 1.5, "color": "#A98A62", "posture": "front-and-back",
            "arch": 0.05, "hairs": 0.3, "hair-length": 0.3, "hair-color": "#6E563A", "lean": True, "sway": 1.2,
        },
        "eyes": {"layout": "two-huge"},
        "jaws": {"length": 0.5, "width": 0.8, "color": "#8A6B46"},
        "palps": {"length": 3.4, "thick": 0.7, "start": 0.5},
        "spinners": {"length": 0.5, "width": 0.4, "color": "#8A6B46"},
    },
    "pirate": {
        "carapace": {
            "length": 2.2, "width": 1.75, "shape": "pear", "color": "#E2CB8E", "shine": 0.3, "stipple": 30,
            "overlap": 0.12,
            "marks": [
                {
                    "kind": "line", "points": [0.3, 0.16, 0.3, 0.34, 0.1, 0.6, 0.04, 0.7], "pair": True, "wide": 0.045,
                    "color": "#5A3420",
                },
                {"kind": "line", "points": [0, 0.14, 0, 0.4, 0, 0.66], "wide": 0.03, "color": "#5A3420"},
                {
                    "kind": "spots", "at": [0.78, 0.46, 0.84, 0.6, 0.66, 0.78], "pair": True, "size": 0.08,
                    "color": "#5A3420", "opacity": 0.8,
                },
            ],
        },
        "abdomen": {
            "length": 3.2, "width": 2.9, "shape": "shouldered", "color": "#E6D29C", "shine": 0.25, "hairs": 40,
            "hair-length": 0.35, "hair-color": "#4A3020", "stipple": 40,
            "marks": [
                {"kind": "speckle", "count": 50, "color": "#B98A54", "size": 0.04, "opacity": 0.7},
                {
                    "kind": "area", "points": [0.4, 0.14, 0.66, 0.2, 0.72, 0.34, 0.54, 0.34, 0.4, 0.24], "pair": True,
                    "color": "#4A2C1C", "opacity": 0.9,
                },
                {
                    "kind": "spots", "at": [0.24, 0.4, 0.56, 0.48, 0.24, 0.56, 0.5, 0.64, 0.22, 0.7, 0.2, 0.82],
                    "pair": True, "size": 0.085, "color": "#4A2C1C",
                },
                {
                    "kind": "spots", "at": [0.36, 0.3, 0.38, 0.5], "pair": True, "size": 0.06, "color": "#B4502E",
                    "opacity": 0.8,
                },
            ],
        },
        "legs": {
            "lengths": [12.2, 10.2, 6.2, 7.4], "thick": 0.2, "thicker": [1, 0.98, 0.85, 0.85], "taper": 1.35,
            "color": "#E0C98E", "posture": "hunter", "hairs": 0.4, "hair-length": 0.2, "lean": True, "arch": 0.15,
            "spine-length": 1.05, "comb": [0, 0, 0, 0, 5, 5], "hair-color": "#2E1D14",
            "bands": {
                "color": "#5A3A24", "opacity": 0.8, "femur": [0.3, 0.38, 0.6, 0.68, 0.9, 0.99],
                "patella": [0.5, 0.98], "tibia": [0.2, 0.3, 0.5, 0.6, 0.86, 0.98],
                "metatarsus": [0.2, 0.3, 0.56, 0.66, 0.9, 0.99],
            },
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.25, "width": 0.4, "color": "#C9AE74"},
        "palps": {"length": 1.8, "thick": 0.6, "start": 0.4},
        "spinners": {"length": 0.2, "width": 0.3},
    },
    "spitting": {
        "carapace": {
            "length": 2.7, "width": 2.45, "shape": "egg", "color": "#E8D7A8", "shine": 0.4, "stipple": 40,
            "overlap": 0.08, "depth": 0.5,
            "marks": [
                {
                    "kind": "area",
                    "points": [0.12, 0.16, 0.26, 0.22, 0.22, 0.42, 0.34, 0.62, 0.3, 0.84, 0.2, 0.8, 0.22,
                        0.62, 0.12, 0.44],
                    "pair": True, "color": "#3A2A20", "opacity": 0.9,
                },
                {
                    "kind": "area", "points": [0.5, 0.36, 0.66, 0.44, 0.62, 0.6, 0.66, 0.76, 0.52, 0.78, 0.5, 0.58],
                    "pair": True, "color": "#3A2A20", "opacity": 0.9,
                },
                {
                    "kind": "spots", "at": [0.84, 0.46, 0.86, 0.6, 0.82, 0.74], "pair": True, "size": 0.08,
                    "color": "#3A2A20",
                },
                {"kind": "spots", "at": [0, 0.3, 0, 0.72, 0, 0.88], "size": 0.06, "color": "#3A2A20"},
            ],
        },
        "abdomen": {
            "length": 2.9, "width": 2.5, "shape": "globe", "color": "#E6D6AC", "shine": 0.25, "stipple": 40,
            "hairs": 40, "hair-length": 0.2,
            "marks": [
                {
                    "kind": "spots", "at": [0.3, 0.16, 0.66, 0.26, 0.3, 0.36, 0.7, 0.46, 0.32, 0.56, 0.62,
                        0.66, 0.26, 0.76],
                    "pair": True, "size": 0.11, "color": "#3A2A20",
                },
                {"kind": "spots", "at": [0, 0.28, 0, 0.48, 0, 0.68, 0, 0.86], "size": 0.08, "color": "#3A2A20"},
            ],
        },
        "legs": {
            "lengths": [10, 8.6, 6.2, 8.6], "thick": 0.12, "taper": 1.25, "color": "#DCC690", "posture": "all-round",
            "hairs": 0.4, "hair-length": 0.14, "lean": True,
            "bands": {
                "color": "#3A2A20", "opacity": 0.85, "femur": [0.2, 0.28, 0.46, 0.54, 0.74, 0.84],
                "patella": [0.3, 0.98], "tibia": [0.22, 0.3, 0.5, 0.58, 0.88, 0.98], "metatarsus": [0.3,
                    0.38, 0.7, 0.78],
            },
        },
        "eyes": {"layout": "three-pairs", "times": 1.05},
        "jaws": {"length": 0.22, "width": 0.36, "color": "#C9B27C"},
        "palps": {"length": 1.7, "thick": 0.85, "start": 0.3},
        "spinners": {"length": 0.18, "width": 0.28},
    },
    "ant-mimic": {
        "carapace": {
            "length": 3.8, "width": 1.9, "shape": "ant", "color": "#3E2A22", "shine": 0.45, "stipple": 30,
            "overlap": -0.05,
        },
        "abdomen": {
            "length": 4.8, "width": 2.5, "shape": "ant-rear", "color": "#3A2720", "shine": 0.5, "stipple": 40,
            "hairs": 40, "hair-length": 0.3, "turn": 0,
            "marks": [{"kind": "bands", "at": [0.32], "thick": 0.022, "bow": 0.02, "color": "#E9DDC2"}],
        },
        "legs": {
            "lengths": [9.0, 7.8, 7.6, 10.4], "thick": 0.21, "taper": 1.4, "color": "#8A5230", "posture": "ant-walk",
            "hairs": 0.5, "hair-length": 0.2, "lean": True, "sway": 1.5,
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.5, "width": 0.6, "color": "#3A261C"},
        "palps": {"length": 1.3, "thick": 0.7, "start": 0.35},
        "spinners": {"length": 0.22, "width": 0.3},
    },
}  # fmt: skip
"""Plan name to settings."""
