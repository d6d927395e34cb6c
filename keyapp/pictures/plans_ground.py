"""Body plans of hunting spiders of floors, walls and ground, and of a plain one (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["GROUND_HUNTERS"]

GROUND_HUNTERS: dict[str, Mapping[str, object]] = {
    "plain": {
        "carapace": {
            "length": 5.0, "width": 4.0, "shape": "pear", "color": "#A0805A", "hairs": 60, "hair-length": 0.3,
            "hair-color": "#5E4630", "overlap": 0.05,
        },
        "abdomen": {
            "length": 7.0, "width": 4.7, "shape": "oval", "color": "#A88C68", "hairs": 130, "hair-length": 0.35,
            "hair-color": "#6E563C",
        },
        "legs": {
            "lengths": [17, 15.5, 13, 17], "thick": 0.21, "taper": 1.2, "color": "#A58660", "posture": "all-round",
            "hairs": 1.2, "hair-length": 0.3, "hair-color": "#5E4630",
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.6, "width": 0.9, "color": "#6E4E32"},
        "palps": {"length": 3.2, "thick": 0.62},
        "spinners": {"length": 0.3, "width": 0.45},
    },
    "neutral": {
        "plan": "plain",
        "carapace": {"color": "#DDD6C8", "hairs": 0, "stipple": 60, "shine": 0.1},
        "abdomen": {"color": "#DDD6C8", "hairs": 0, "stipple": 90, "shine": 0.1},
        "legs": {"color": "#DDD6C8", "hairs": 0},
        "jaws": {"color": "#CFC7B8"},
        "spinners": {"color": "#CFC7B8"},
    },
    "recluse": {
        "carapace": {
            "length": 4.2, "width": 3.5, "shape": "pear", "color": "#B98A55", "shine": 0.15, "hairs": 50,
            "hair-length": 0.25, "hair-color": "#5A3F28", "overlap": 0.05,
            "marks": [{"kind": "violin", "color": "#4A2A18"}],
        },
        "abdomen": {
            "length": 5.8, "width": 3.9, "shape": "oval", "color": "#A58460", "hairs": 330, "hair-length": 0.4,
            "hair-color": "#5E4630", "fringe": 40, "shine": 0.1,
        },
        "legs": {
            "lengths": [18.5, 20.5, 16, 19.5], "thick": 0.185, "taper": 1.3, "color": "#B58956",
            "posture": "sprawl", "arch": 0.22, "hairs": 1.5, "hair-length": 0.22, "hair-color": "#5A3F28",
        },
        "eyes": {"layout": "three-pairs", "times": 1.15},
        "jaws": {"length": 0.5, "width": 0.7, "color": "#7A4E2C"},
        "palps": {"length": 2.9, "thick": 0.75},
        "spinners": {"length": 0.35, "width": 0.45},
    },
    "recluse-young": {
        "plan": "recluse",
        "carapace": {
            "length": 1.7, "width": 1.42, "color": "#D3B285", "hairs": 20, "hair-length": 0.12,
            "marks": [{"kind": "violin", "color": "#A57B4E", "opacity": 0.75}],
        },
        "abdomen": {
            "length": 2.1, "width": 1.5, "color": "#CDB692", "hairs": 150, "hair-length": 0.17,
            "hair-color": "#8A6F50", "fringe": 20,
        },
        "legs": {
            "lengths": [5.6, 6.1, 4.9, 5.8], "thick": 0.2, "taper": 1.1, "color": "#D2B284", "hair-length": 0.1,
        },
        "eyes": {"times": 1.25},
        "jaws": {"length": 0.2, "width": 0.3, "color": "#B08A58"},
        "palps": {"length": 1.1},
        "spinners": {"length": 0.16, "width": 0.2},
    },
    "woodlouse-hunter": {
        "carapace": {
            "length": 5.2, "width": 3.9, "shape": "shield", "color": "#8E2F1C", "shine": 0.5, "stipple": 60,
            "overlap": 0.03,
        },
        "abdomen": {
            "length": 8.0, "width": 4.4, "shape": "cylinder", "color": "#D8CCB4", "hairs": 140, "hair-length": 0.3,
            "hair-color": "#8F8168", "shine": 0.3, "depth": 0.34,
        },
        "legs": {
            "lengths": [12.5, 11, 9, 12], "thick": 0.27, "taper": 1.15, "color": "#C0612F", "posture": "hunter",
            "hairs": 1.5, "shine": 0.34, "hair-length": 0.25, "shares": [0.31, 0.17, 0.23, 0.2, 0.09],
        },
        "eyes": {"layout": "six-close-group", "times": 1.0},
        "jaws": {"length": 2.6, "width": 1.35, "color": "#8A2B18", "fangs": True, "spread": 9, "shine": 0.45},
        "palps": {"length": 3.6, "thick": 0.55, "start": 0.62, "spread": 44},
        "spinners": {"length": 0.4, "width": 0.5, "color": "#B8A98C"},
    },
    "wolf": {
        "carapace": {
            "length": 8.4, "width": 6.4, "shape": "wolf", "color": "#6E543B", "hairs": 220, "hair-length": 0.6,
            "hair-color": "#3A2A1E", "overlap": 0.05, "fringe": 50,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.24, 0.13, 0.3, 0.1, 0.5, 0.13, 0.7, 0.1, 0.92, 0, 0.97],
                    "color": "#D8C29A", "opacity": 0.95,
                },
                {"kind": "margin", "color": "#D0B88E", "from": 0.22, "to": 0.95, "inner": 0.76, "outer": 0.96},
                {"kind": "rays", "color": "#2F2118", "count": 4, "opacity": 0.6},
            ],
        },
        "abdomen": {
            "length": 9.8, "width": 6.4, "shape": "oval", "color": "#7C6347", "hairs": 330, "hair-length": 0.65,
            "hair-color": "#35271B", "fringe": 90, "shine": 0.06,
            "marks": [
                {
                    "kind": "area",
                    "points": [
                        0, 0.03, 0.32, 0.08, 0.36, 0.3, 0.26, 0.5, 0.34, 0.58, 0.22, 0.7, 0.27, 0.77, 0.16, 0.9, 0,
                        0.97,
                    ],
                    "color": "#D2BA90", "opacity": 0.75,
                },
                {
                    "kind": "area", "points": [0, 0.05, 0.13, 0.1, 0.16, 0.26, 0.1, 0.44, 0, 0.5],
                    "color": "#3E2C1E", "opacity": 0.9,
                },
                {
                    "kind": "chevrons", "count": 4, "from": 0.55, "to": 0.9, "width": 0.32, "color": "#3E2C1E",
                    "thick": 0.02,
                },
                {
                    "kind": "area",
                    "points": [0.46, 0.06, 0.84, 0.2, 0.95, 0.5, 0.8, 0.76, 0.5, 0.9, 0.42, 0.6, 0.52, 0.34],
                    "pair": True, "color": "#4A3624", "opacity": 0.55,
                },
            ],
        },
        "legs": {
            "lengths": [22.5, 21, 19, 27], "thick": 0.255, "taper": 1.15, "color": "#826747", "posture": "hunter",
            "hairs": 3, "hair-length": 0.6, "hair-color": "#35271B", "spines": [0, 0, 3, 1, 5, 5, 0],
            "spine-length": 1.2,
            "bands": {
                "color": "#3E2C1E", "opacity": 0.4, "femur": [0.2, 0.34, 0.56, 0.72],
                "tibia": [0.1, 0.26, 0.7, 0.9],
            },
        },
        "eyes": {"layout": "two-big-above-row-of-four", "times": 1.05},
        "jaws": {"length": 1.0, "width": 1.5, "color": "#4A3626", "hairs": 16, "shine": 0.05},
        "palps": {"length": 6.6, "thick": 0.62, "start": 0.45},
        "spinners": {"length": 0.5, "width": 0.6},
    },
    "long-legged-sac": {
        "carapace": {
            "length": 3.5, "width": 2.7, "shape": "shield", "color": "#D9C184", "shine": 0.22, "overlap": 0.04,
            "stipple": 50,
        },
        "abdomen": {
            "length": 5.6, "width": 3.4, "shape": "oval", "color": "#DDD09A", "hairs": 160, "hair-length": 0.25,
            "hair-color": "#A8965E", "shine": 0.2,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.06, 0.13, 0.12, 0.12, 0.36, 0.04, 0.55, 0, 0.6],
                    "color": "#B59B55", "opacity": 0.65,
                },
            ],
        },
        "legs": {
            "lengths": [17, 11.5, 8.6, 12.5], "thick": 0.185, "taper": 1.25, "color": "#DDC58C",
            "posture": "all-round", "hairs": 1.6, "hair-length": 0.22, "spines": [0, 0, 1, 0, 2, 2, 0],
            "spine-length": 0.6,
            "bands": {"color": "#33221A", "opacity": 0.9, "tarsus": [0.6, 1]},
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 1.1, "width": 0.85, "color": "#4A2818", "shine": 0.35},
        "palps": {"length": 2.9, "thick": 0.7, "start": 0.45},
        "spinners": {"length": 0.6, "width": 0.36, "color": "#C9B27C"},
    },
    "ground-spider": {
        "carapace": {
            "length": 3.4, "width": 2.5, "shape": "shield", "color": "#33291F", "shine": 0.15, "hairs": 70,
            "hair-length": 0.25, "hair-color": "#8A7B68", "overlap": 0.04,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.2, 0.2, 0.26, 0.22, 0.5, 0.12, 0.7, 0, 0.76],
                    "color": "#D9CFBE", "opacity": 0.7,
                },
            ],
        },
        "abdomen": {
            "length": 5.8, "width": 2.9, "shape": "cylinder", "color": "#3A3330", "shine": 0.1, "hairs": 330,
            "hair-length": 0.3, "hair-color": "#8E847A", "fringe": 50,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.05, 0.2, 0.09, 0.26, 0.3, 0.2, 0.52, 0.1, 0.62, 0, 0.64],
                    "color": "#F1EADC", "opacity": 0.95, "tension": 0.7,
                },
                {
                    "kind": "area", "points": [0, 0.76, 0.13, 0.8, 0.1, 0.88, 0, 0.9], "color": "#F1EADC",
                    "opacity": 0.9,
                },
            ],
        },
        "legs": {
            "lengths": [9.4, 8.4, 7.6, 11.4], "thick": 0.26, "taper": 1.2, "color": "#4A3A2C", "posture": "hunter",
            "hairs": 3, "hair-length": 0.25, "foot-color": "#6A5440", "spines": [0, 0, 1, 0, 2, 3, 0],
            "spine-length": 0.5,
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 0.5, "width": 0.65, "color": "#2C211A"},
        "palps": {"length": 2.6, "thick": 0.62, "start": 0.45},
        "spinners": {"length": 0.85, "width": 0.34, "color": "#574A3F", "spread": 9},
    },
}  # fmt: skip
"""Plan name to settings."""
