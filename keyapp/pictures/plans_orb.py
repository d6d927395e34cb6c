"""Body plans of spiders that build wheel-shaped webs (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["ORB_WEAVERS"]

ORB_WEAVERS: dict[str, Mapping[str, object]] = {
    "garden-orb": {
        "carapace": {
            "length": 6.6, "width": 5.6, "shape": "pear", "color": "#C9C3B6", "hairs": 200, "hair-length": 0.45,
            "hair-color": "#F4F0E6", "overlap": 0.1, "stipple": 60,
            "marks": [{"kind": "rays", "color": "#6E675C", "count": 3, "opacity": 0.5}],
        },
        "abdomen": {
            "length": 15.5, "width": 11.2, "shape": "shouldered", "color": "#221D1A", "shine": 0.2, "depth": 0.3,
            "stipple": 70,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.02, 0.5, 0.05, 0.86, 0.12, 0.7, 0.16, 0.3, 0.13, 0, 0.15],
                    "color": "#EFE9DA", "opacity": 0.95,
                },
                {
                    "kind": "area", "points": [0.42, 0.19, 0.7, 0.18, 0.98, 0.24, 0.98, 0.3, 0.74, 0.3, 0.46, 0.28],
                    "pair": True, "color": "#E9B92D", "opacity": 1,
                },
                {
                    "kind": "area",
                    "points": [0.3, 0.36, 0.62, 0.33, 0.98, 0.38, 0.98, 0.52, 0.82, 0.47, 0.66, 0.5, 0.36, 0.47],
                    "pair": True, "color": "#E9B92D", "opacity": 1,
                },
                {
                    "kind": "area",
                    "points": [0.3, 0.54, 0.6, 0.56, 0.8, 0.54, 0.97, 0.6, 0.9, 0.68, 0.7, 0.64, 0.34, 0.63],
                    "pair": True, "color": "#E9B92D", "opacity": 1,
                },
                {
                    "kind": "area", "points": [0.34, 0.7, 0.7, 0.71, 0.94, 0.76, 0.8, 0.83, 0.42, 0.78],
                    "pair": True, "color": "#E9B92D", "opacity": 1,
                },
                {
                    "kind": "spots", "at": [0.16, 0.24, 0.15, 0.42, 0.15, 0.58, 0.14, 0.72, 0.2, 0.84],
                    "pair": True, "size": 0.055, "color": "#EBD27A",
                },
                {"kind": "spots", "at": [0.72, 0.24, 0.7, 0.41], "pair": True, "size": 0.045, "color": "#221D1A"},
            ],
        },
        "legs": {
            "lengths": [34, 33.5, 19, 34], "thick": 0.235, "taper": 1.3, "color": "#28201C",
            "base-color": "#C2702A", "posture": "in-pairs-x", "arch": 0.08, "hairs": 3, "hair-length": 0.6,
            "sway": 1.2,
            "bands": {"color": "#28201C", "opacity": 0.95, "femur": [0.62, 1]},
            "shares": [0.28, 0.12, 0.22, 0.27, 0.11],
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.9, "width": 1.2, "color": "#4A3A2A"},
        "palps": {"length": 4.6, "thick": 0.5, "color": "#D9A25A"},
        "spinners": {"length": 0.6, "width": 0.9},
    },
    "typical-orb": {
        "carapace": {
            "length": 5.2, "width": 4.4, "shape": "pear", "color": "#8F6C46", "hairs": 160, "hair-length": 0.45,
            "hair-color": "#E4D6BC", "overlap": 0.3,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.1, 0.16, 0.3, 0.1, 0.7, 0, 0.85], "color": "#4E3623",
                    "opacity": 0.7,
                },
            ],
        },
        "abdomen": {
            "length": 10.2, "width": 9.6, "shape": "shouldered", "color": "#B58A58", "hairs": 200,
            "hair-length": 0.5, "hair-color": "#5B4128", "fringe": 60,
            "marks": [
                {"kind": "speckle", "count": 90, "color": "#6E4C2C", "size": 0.03},
                {
                    "kind": "folium", "lobes": 5, "width": 0.7, "from": 0.24, "to": 0.98, "color": "#5B3C24",
                    "edge": "#F0E2C6",
                },
                {
                    "kind": "area", "points": [0, 0.05, 0.055, 0.1, 0.05, 0.3, 0, 0.42], "color": "#F3E7CE",
                    "opacity": 0.95,
                },
                {"kind": "spots", "at": [0.2, 0.16, 0.42, 0.22], "pair": True, "size": 0.06, "color": "#F3E7CE"},
                {
                    "kind": "spots", "at": [0.24, 0.34, 0.22, 0.52, 0.17, 0.68], "pair": True, "size": 0.045,
                    "color": "#2E1D12",
                },
            ],
        },
        "legs": {
            "lengths": [17, 15.5, 10, 15], "thick": 0.29, "taper": 1.2, "color": "#B88E5E", "posture": "orb-rest",
            "hairs": 3, "hair-length": 0.4, "spines": [0, 0, 3, 1, 5, 4, 0], "spine-length": 0.9,
            "bands": {
                "color": "#523622", "femur": [0.5, 0.66, 0.84, 1], "patella": [0.5, 1],
                "tibia": [0.0, 0.16, 0.42, 0.6, 0.82, 1], "metatarsus": [0, 0.12, 0.42, 0.58, 0.84, 1],
                "tarsus": [0.5, 1],
            },
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.8, "width": 1.0, "color": "#5E4029"},
        "palps": {"length": 3.8, "thick": 0.5},
        "spinners": {"length": 0.3, "width": 0.7},
    },
    "golden-silk-orb": {
        "carapace": {
            "length": 8.6, "width": 7.0, "shape": "head-broad", "color": "#A9A79F", "hairs": 260,
            "hair-length": 0.5, "hair-color": "#F5F3EC", "overlap": 0.06,
            "marks": [
                {
                    "kind": "spots", "at": [0.3, 0.42, 0.62, 0.5, 0.34, 0.62, 0.7, 0.66, 0.4, 0.8], "pair": True,
                    "size": 0.07, "color": "#3A3430",
                },
                {
                    "kind": "area", "points": [0, 0.0, 0.4, 0.03, 0.34, 0.24, 0, 0.28], "color": "#3A3430",
                    "opacity": 0.6,
                },
            ],
        },
        "abdomen": {
            "length": 19.5, "width": 7.6, "shape": "cylinder", "color": "#B9702F", "shine": 0.25,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.015, 0.4, 0.03, 0.78, 0.08, 0.5, 0.11, 0, 0.075],
                    "color": "#F4E9C6", "opacity": 0.95,
                },
                {
                    "kind": "spots",
                    "at": [0.36, 0.18, 0.4, 0.29, 0.4, 0.41, 0.38, 0.53, 0.36, 0.64, 0.32, 0.75, 0.28, 0.85],
                    "pair": True, "size": 0.13, "color": "#F2DE92", "edge": "#7E4719",
                },
                {
                    "kind": "spots", "at": [0.78, 0.2, 0.82, 0.34, 0.82, 0.48, 0.8, 0.62, 0.74, 0.75], "pair": True,
                    "size": 0.08, "color": "#F2DE92",
                },
                {
                    "kind": "line", "points": [0, 0.14, 0.02, 0.4, 0, 0.9], "wide": 0.03, "color": "#7E4719",
                    "opacity": 0.6,
                },
            ],
        },
        "legs": {
            "lengths": [47, 40, 21, 40], "thick": 0.2, "taper": 1.5, "color": "#C98A35", "posture": "in-pairs-x",
            "arch": 0.08, "hairs": 1.2, "sway": 2, "tufts": True, "shares": [0.28, 0.08, 0.23, 0.31, 0.1],
            "bands": {
                "color": "#35241A", "opacity": 0.9, "femur": [0.74, 1], "patella": [0, 1], "tibia": [0.7, 1],
                "metatarsus": [0.9, 1], "tarsus": [0, 1],
            },
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 2.0, "width": 2.0, "color": "#2A211D"},
        "palps": {"length": 6.2, "thick": 0.6, "color": "#D8A24E"},
        "spinners": {"length": 0.6, "width": 0.9},
    },
    "spiny-orb": {
        "carapace": {
            "length": 3.2, "width": 3.1, "shape": "box", "color": "#2E2622", "shine": 0.35, "hairs": 50,
            "hair-color": "#D9D0C0", "hair-length": 0.25, "overlap": 0.3,
        },
        "abdomen": {
            "length": 6.6, "width": 10.4, "shape": "barrel", "color": "#F4EEDC", "shine": 0.3, "depth": 0.28,
            "turn": 0, "stipple": 90,
            "points": {
                "color": "#B93A26",
                "at": [0.97, 0.3, 104, 2.0, 1.5, 0.97, 0.66, 74, 2.3, 1.7, 0.62, 0.93, 22, 1.9, 1.6],
            },
            "marks": [
                {
                    "kind": "spots", "at": [0.2, 0.1, 0.5, 0.12, 0.78, 0.2, 0.9, 0.42, 0.86, 0.62], "pair": True,
                    "size": 0.055, "color": "#2A1E1A",
                },
                {"kind": "spots", "at": [0, 0.1], "size": 0.05, "color": "#2A1E1A"},
                {"kind": "spots", "at": [0.27, 0.42, 0.25, 0.6], "pair": True, "size": 0.045, "color": "#2A1E1A"},
                {
                    "kind": "spots", "at": [0.16, 0.86, 0.42, 0.86, 0.66, 0.8], "pair": True, "size": 0.045,
                    "color": "#2A1E1A",
                },
            ],
        },
        "legs": {
            "lengths": [8.2, 7.8, 5.4, 7.8], "thick": 0.26, "taper": 1.1, "color": "#352A26", "posture": "orb-rest",
            "hairs": 2, "hair-length": 0.2,
            "bands": {
                "color": "#B86A3C", "femur": [0.2, 0.5], "tibia": [0.2, 0.5], "metatarsus": [0.2, 0.6],
                "opacity": 0.6,
            },
        },
        "eyes": {"layout": "orb"},
        "jaws": {"length": 0.5, "width": 0.8, "color": "#2A211D"},
        "palps": {"length": 2.2, "thick": 0.5},
        "spinners": {"length": 0.05, "width": 0.3},
    },
}  # fmt: skip
"""Plan name to settings."""
