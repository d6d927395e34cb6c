"""Body plans of hunters on plants and of the large hunting spiders (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["OTHER_HUNTERS"]

OTHER_HUNTERS: dict[str, Mapping[str, object]] = {
    "nursery-web": {
        "carapace": {
            "length": 5.6, "width": 4.8, "shape": "shield", "color": "#CBAA78", "hairs": 80, "hair-length": 0.35,
            "hair-color": "#7A5C3C", "overlap": 0.03,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.0, 0.5, 0.04, 0.44, 0.3, 0.38, 0.6, 0.28, 0.94, 0, 0.98],
                    "color": "#7D5733", "opacity": 0.9,
                },
                {
                    "kind": "line", "points": [0.58, 0.1, 0.48, 0.4, 0.34, 0.92], "pair": True, "wide": 0.03,
                    "color": "#F4E8CF",
                },
                {"kind": "line", "points": [0, 0.5, 0, 0.72], "wide": 0.03},
            ],
        },
        "abdomen": {
            "length": 9.2, "width": 4.4, "shape": "tail-pointed", "color": "#CDAE7E", "hairs": 170,
            "hair-length": 0.4, "hair-color": "#7A5C3C", "fringe": 40,
            "marks": [
                {
                    "kind": "area",
                    "points": [
                        0, 0.01, 0.46, 0.04, 0.52, 0.18, 0.44, 0.3, 0.54, 0.38, 0.44, 0.5, 0.52, 0.58, 0.42, 0.7,
                        0.46, 0.78, 0.34, 0.92, 0, 0.985,
                    ],
                    "color": "#7D5733", "opacity": 0.92, "edge": "#F6ECD6", "edge-width": 0.7,
                },
            ],
        },
        "legs": {
            "lengths": [23.5, 23, 18, 24], "thick": 0.175, "taper": 1.35, "color": "#BC976A",
            "posture": "front-and-back", "arch": 0.12, "hairs": 2.2, "hair-length": 0.35, "hair-color": "#6A4C30",
            "spines": [0, 0, 2, 1, 4, 4, 0], "spine-length": 0.9, "sway": 2,
        },
        "eyes": {"layout": "nursery", "times": 1.1},
        "jaws": {"length": 0.9, "width": 1.0, "color": "#7A4E2C"},
        "palps": {"length": 4.6, "thick": 0.62, "start": 0.4},
        "spinners": {"length": 0.4, "width": 0.5},
    },
    "fishing-spider": {
        "carapace": {
            "length": 10.2, "width": 9.4, "shape": "shield", "color": "#86735C", "hairs": 230, "hair-length": 0.6,
            "hair-color": "#4B3D2E", "overlap": 0.05,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.04, 0.34, 0.08, 0.3, 0.36, 0, 0.48], "color": "#4A3B2C",
                    "opacity": 0.6,
                },
                {"kind": "rays", "color": "#3A2D22", "count": 4, "opacity": 0.6},
                {"kind": "margin", "color": "#D0C2A8", "from": 0.3, "to": 0.9, "inner": 0.82, "outer": 0.93},
                {"kind": "line", "points": [0, 0.1, 0, 0.5], "wide": 0.02, "color": "#D8CBB2"},
            ],
        },
        "abdomen": {
            "length": 13.0, "width": 9.0, "shape": "oval", "color": "#8C7A62", "hairs": 330, "hair-length": 0.7,
            "hair-color": "#4B3D2E", "fringe": 60,
            "marks": [
                {"kind": "speckle", "count": 90, "color": "#4A3B2C", "size": 0.03},
                {
                    "kind": "area", "points": [0, 0.05, 0.14, 0.12, 0.17, 0.24, 0.08, 0.38, 0, 0.4],
                    "color": "#4A3B2C", "opacity": 0.7,
                },
                {
                    "kind": "chevrons", "count": 4, "from": 0.4, "to": 0.86, "width": 0.78, "color": "#32271D",
                    "thick": 0.03, "drop": 0.03,
                },
                {
                    "kind": "chevrons", "count": 4, "from": 0.445, "to": 0.9, "width": 0.72, "color": "#DCCFB6",
                    "thick": 0.014, "drop": 0.03,
                },
                {"kind": "spots", "at": [0.5, 0.2, 0.56, 0.33], "pair": True, "size": 0.07, "color": "#DCCFB6"},
            ],
        },
        "legs": {
            "lengths": [38, 38, 34, 40], "thick": 0.2, "taper": 1.35, "color": "#9A866A", "posture": "sprawl",
            "arch": 0.2, "hairs": 3, "hair-length": 0.6, "hair-color": "#4B3D2E", "spines": [0, 0, 4, 1, 6, 6, 0],
            "spine-length": 1.6,
            "bands": {
                "color": "#3E3126", "opacity": 0.75, "femur": [0.08, 0.2, 0.38, 0.52, 0.72, 0.88],
                "patella": [0.3, 0.8], "tibia": [0.06, 0.2, 0.42, 0.58, 0.8, 0.94],
                "metatarsus": [0.06, 0.2, 0.46, 0.6, 0.86, 1],
            },
        },
        "eyes": {"layout": "nursery", "times": 1.1},
        "jaws": {"length": 1.6, "width": 1.9, "color": "#5A3E28", "hairs": 10},
        "palps": {"length": 8.6, "thick": 0.6, "start": 0.42},
        "spinners": {"length": 0.6, "width": 0.8},
    },
    "green-lynx": {
        "carapace": {
            "length": 6.2, "width": 4.8, "shape": "wolf", "color": "#79AD4A", "shine": 0.2, "overlap": 0.05,
            "marks": [
                {"kind": "spots", "at": [0.3, 0.3, 0.42, 0.46], "pair": True, "size": 0.05, "color": "#B4472D"},
                {"kind": "line", "points": [0, 0.5, 0, 0.68], "wide": 0.025, "color": "#3F6A24"},
            ],
        },
        "abdomen": {
            "length": 10.6, "width": 5.2, "shape": "tail-pointed", "color": "#8CBD58", "shine": 0.2,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.06, 0.12, 0.12, 0.1, 0.3, 0, 0.42], "color": "#5E9038",
                    "opacity": 0.7,
                },
                {
                    "kind": "chevrons", "count": 5, "from": 0.3, "to": 0.88, "width": 0.74, "color": "#F3F4DA",
                    "thick": 0.02, "drop": 0.07, "opacity": 0.95,
                },
                {
                    "kind": "chevrons", "count": 5, "from": 0.325, "to": 0.9, "width": 0.7, "color": "#B4563A",
                    "thick": 0.009, "drop": 0.07, "opacity": 0.8,
                },
                {"kind": "margin", "color": "#E9EFC4", "from": 0.12, "to": 0.7, "inner": 0.86, "opacity": 0.8},
            ],
        },
        "legs": {
            "lengths": [25, 23, 17.5, 21], "thick": 0.175, "taper": 1.5, "color": "#A9C06A",
            "base-color": "#8FBF55", "posture": "all-round", "hairs": 0.6, "hair-length": 0.3,
            "spines": [0, 0, 8, 2, 10, 9, 0], "spine-length": 2.4,
            "bands": {
                "color": "#231C18", "opacity": 0.85, "femur": [0.2, 0.24, 0.4, 0.44, 0.6, 0.64, 0.8, 0.84],
                "tibia": [0.2, 0.24, 0.5, 0.54, 0.8, 0.84], "metatarsus": [0.3, 0.34, 0.66, 0.7],
            },
        },
        "eyes": {"layout": "hexagon-high", "times": 1.15, "patch": "#E9EFC4"},
        "jaws": {"length": 0.8, "width": 1.1, "color": "#7FAF50"},
        "palps": {"length": 4.8, "thick": 0.62, "start": 0.4},
        "spinners": {"length": 0.4, "width": 0.5, "color": "#B4C878"},
    },
    "jumping-spider": {
        "carapace": {
            "length": 5.4, "width": 4.6, "shape": "box", "color": "#2E2A2A", "hairs": 190, "hair-length": 0.45,
            "hair-color": "#7E7872", "fringe": 90, "shine": 0.15, "overlap": 0.06, "stipple": 60,
        },
        "abdomen": {
            "length": 7.0, "width": 5.0, "shape": "oval", "color": "#2C2728", "hairs": 230, "hair-length": 0.5,
            "hair-color": "#7B736C", "fringe": 120, "shine": 0.1,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.03, 0.44, 0.07, 0.66, 0.13, 0.58, 0.16, 0.3, 0.12, 0, 0.1],
                    "color": "#F2ECDF", "opacity": 0.95,
                },
                {
                    "kind": "area", "points": [0, 0.36, 0.2, 0.45, 0.24, 0.52, 0.1, 0.55, 0, 0.56],
                    "color": "#F6F1E6", "opacity": 1,
                },
                {
                    "kind": "area", "points": [0.36, 0.64, 0.56, 0.62, 0.58, 0.68, 0.4, 0.71], "pair": True,
                    "color": "#F2ECDF", "opacity": 0.95,
                },
                {
                    "kind": "area", "points": [0.2, 0.76, 0.36, 0.76, 0.34, 0.81, 0.2, 0.81], "pair": True,
                    "color": "#F2ECDF", "opacity": 0.8,
                },
            ],
        },
        "legs": {
            "lengths": [9.6, 8.4, 8.2, 9.8], "thick": 0.27, "thicker": [1.3, 1.0, 0.92, 0.95], "taper": 1.0,
            "color": "#332D2C", "posture": "short", "hairs": 3.4, "hair-length": 0.5, "hair-color": "#2A2423",
            "bands": {
                "color": "#CFC6B8", "opacity": 0.6, "patella": [0.1, 0.35], "tibia": [0.08, 0.25],
                "metatarsus": [0.05, 0.35], "tarsus": [0.0, 0.3],
            },
            "shares": [0.29, 0.15, 0.22, 0.2, 0.14],
        },
        "eyes": {"layout": "two-big-in-front"},
        "jaws": {"length": 1.2, "width": 1.35, "color": "#2F7F78", "shine": 0.6},
        "palps": {"length": 3.6, "thick": 0.85, "start": 0.6, "spread": 24, "color": "#4A4440"},
        "spinners": {"length": 0.5, "width": 0.5},
    },
    "crab-spider": {
        "carapace": {
            "length": 3.4, "width": 3.4, "shape": "box", "color": "#D9C86A", "shine": 0.15, "overlap": 0.12,
            "marks": [
                {
                    "kind": "area", "points": [0.5, 0.12, 0.78, 0.3, 0.88, 0.6, 0.66, 0.86, 0.5, 0.6], "pair": True,
                    "color": "#9E8E3A", "opacity": 0.55,
                },
                {
                    "kind": "area", "points": [0, 0.0, 0.5, 0.03, 0.46, 0.16, 0, 0.2], "color": "#FBF6DC",
                    "opacity": 0.9,
                },
            ],
        },
        "abdomen": {
            "length": 5.6, "width": 6.1, "shape": "broad-behind", "color": "#F0DC66", "shine": 0.2, "depth": 0.3,
            "marks": [
                {
                    "kind": "area", "points": [0.72, 0.22, 0.86, 0.36, 0.92, 0.6, 0.84, 0.64, 0.74, 0.42],
                    "pair": True, "color": "#B8412E", "opacity": 0.85,
                },
                {"kind": "spots", "at": [0.2, 0.4, 0.28, 0.6], "pair": True, "size": 0.035, "color": "#A8923A"},
                {"kind": "spots", "at": [0, 0.28], "size": 0.03, "color": "#A8923A"},
            ],
        },
        "legs": {
            "lengths": [12.2, 12, 6.2, 6.6], "thick": 0.22, "thicker": [1.3, 1.28, 0.85, 0.85], "taper": 1.1,
            "color": "#E6D57C", "posture": "crab-to-sides", "arch": 0.1, "hairs": 0.8, "hair-length": 0.15,
            "spines": [0, 0, 0, 0, 3, 4, 0], "spine-length": 0.45,
            "bands": {"color": "#A77E36", "opacity": 0.4, "tibia": [0.75, 1], "metatarsus": [0.8, 1]},
        },
        "eyes": {"layout": "crab", "times": 1.1, "patch": "#FFFBE8"},
        "jaws": {"length": 0.4, "width": 0.75, "color": "#CDBB60"},
        "palps": {"length": 1.8, "thick": 0.5, "start": 0.4},
        "spinners": {"length": 0.3, "width": 0.4, "color": "#D9C86A"},
    },
    "giant-crab": {
        "carapace": {
            "length": 9.0, "width": 9.6, "shape": "shield", "color": "#8A6540", "hairs": 120, "hair-length": 0.5,
            "hair-color": "#3E2B1C", "overlap": 0.04,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.0, 0.8, 0.02, 0.86, 0.12, 0.4, 0.12, 0, 0.1],
                    "color": "#EFDDB4", "opacity": 0.95,
                },
                {
                    "kind": "area", "points": [0, 0.78, 0.5, 0.76, 0.9, 0.64, 0.96, 0.8, 0.7, 0.9, 0, 0.9],
                    "color": "#EADAB2", "opacity": 0.9,
                },
                {
                    "kind": "area", "points": [0.34, 0.2, 0.62, 0.3, 0.74, 0.55, 0.44, 0.72, 0.2, 0.66, 0.3, 0.44],
                    "pair": True, "color": "#3F2A1A", "opacity": 0.6,
                },
                {"kind": "line", "points": [0, 0.52, 0, 0.68], "wide": 0.02},
            ],
        },
        "abdomen": {
            "length": 11.6, "width": 8.0, "shape": "oval", "color": "#977045", "hairs": 240, "hair-length": 0.6,
            "hair-color": "#4A3420", "fringe": 50,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.06, 0.12, 0.14, 0.12, 0.4, 0, 0.52], "color": "#5A3E24",
                    "opacity": 0.55,
                },
                {"kind": "spots", "at": [0.28, 0.3, 0.28, 0.46], "pair": True, "size": 0.05, "color": "#3F2A1A"},
                {"kind": "speckle", "count": 60, "color": "#4A3420", "size": 0.03},
            ],
        },
        "legs": {
            "lengths": [44, 48, 37, 41], "thick": 0.19, "taper": 1.3, "color": "#A27A4C", "posture": "crab-giant",
            "arch": 0.15, "hairs": 3, "hair-length": 0.6, "hair-color": "#4A3420", "spines": [0, 0, 5, 0, 5, 4, 0],
            "spine-length": 1.8,
            "bands": {"color": "#3F2A1A", "opacity": 0.85, "femur": [0.3, 0.335, 0.55, 0.585, 0.8, 0.835]},
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 1.6, "width": 1.8, "color": "#4A2F1C"},
        "palps": {"length": 8.6, "thick": 0.55, "start": 0.42},
        "spinners": {"length": 0.6, "width": 0.8},
    },
    "tarantula": {
        "carapace": {
            "length": 17, "width": 15, "shape": "round", "color": "#8F6B45", "hairs": 300, "hair-length": 1.4,
            "hair-color": "#D3B58A", "fringe": 140, "overlap": 0.02, "stipple": 40,
            "marks": [{"kind": "rays", "color": "#4B3422", "count": 4, "opacity": 0.5, "at": 0.62}],
        },
        "abdomen": {
            "length": 21, "width": 16, "shape": "oval", "color": "#5C4230", "hairs": 400, "hair-length": 2.2,
            "hair-color": "#2B1D14", "fringe": 190, "shine": 0.04, "stipple": 30,
        },
        "legs": {
            "lengths": [50, 45, 41, 53], "thick": 0.37, "taper": 0.72, "color": "#6B4E38", "posture": "all-round",
            "hairs": 6.5, "hair-length": 2.1, "hair-color": "#3A281B", "shine": 0.2,
            "shares": [0.28, 0.15, 0.22, 0.2, 0.15],
        },
        "eyes": {"layout": "small-mound", "times": 1.1, "patch": "#3A281B"},
        "jaws": {"length": 5.4, "width": 4.4, "color": "#5A3F2B", "hairs": 60, "spread": 2},
        "palps": {"length": 27, "thick": 0.78, "start": 0.62, "spread": 24},
        "spinners": {"length": 3.4, "width": 1.3, "color": "#4A3424", "jointed": True, "spread": 20},
    },
    "tarantula-male": {
        "plan": "tarantula",
        "carapace": {"length": 15, "width": 13.6, "color": "#4A3A30", "hair-color": "#9A826A"},
        "abdomen": {
            "length": 15.5, "width": 10.5, "color": "#3A2820", "hairs": 300, "hair-color": "#8A4A30",
            "hair-length": 2.0, "fringe": 150,
        },
        "legs": {
            "lengths": [60, 55, 50, 62], "thick": 0.29, "taper": 0.85, "color": "#3F322B", "hair-color": "#241A14",
            "hairs": 6,
        },
        "palps": {"length": 32, "thick": 0.8, "bulbs": "plain", "bulb-color": "#2A1710"},
        "spinners": {"length": 2.8},
    },
}  # fmt: skip
"""Plan name to settings."""
