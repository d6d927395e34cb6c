"""Body plans of spiders that live in tangles, sheets and crevice webs (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["WEB_SPIDERS"]

WEB_SPIDERS: dict[str, Mapping[str, object]] = {
    "widow": {
        "carapace": {
            "length": 3.3, "width": 2.9, "shape": "heart", "color": "#2B2423", "shine": 0.5, "stipple": 30,
            "overlap": 0.14, "marks": [{"kind": "rays", "color": "#0E0A0A", "count": 3}],
        },
        "abdomen": {
            "length": 7.6, "width": 7.2, "shape": "globe", "color": "#262122", "shine": 0.85, "stipple": 30,
            "depth": 0.55,
        },
        "legs": {
            "lengths": [18, 12.5, 9.5, 16], "thick": 0.25, "taper": 1.35, "color": "#2A2322",
            "posture": "web-hanger", "shine": 0.4, "hairs": 0.9, "hair-length": 0.25, "gloss": 0.16,
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 0.5, "width": 0.6, "color": "#241C1B", "shine": 0.4},
        "palps": {"length": 2.4, "thick": 0.6},
        "spinners": {"length": 0.35, "width": 0.5, "color": "#1E1817"},
    },
    "widow-male": {
        "carapace": {
            "length": 1.6, "width": 1.3, "shape": "heart", "color": "#8A5A38", "shine": 0.25, "overlap": 0.14,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.05, 0.2, 0.2, 0.14, 0.7, 0, 0.95], "color": "#4A2C1C",
                    "opacity": 0.6,
                },
            ],
        },
        "abdomen": {
            "length": 2.7, "width": 1.7, "shape": "oval", "color": "#3A2C26", "shine": 0.3,
            "marks": [
                {"kind": "margin", "color": "#F2E7D2", "from": 0.08, "to": 0.55, "inner": 0.72, "outer": 0.98},
                {
                    "kind": "area", "points": [0.3, 0.32, 0.9, 0.42, 0.86, 0.5, 0.34, 0.42], "pair": True,
                    "color": "#F2E7D2",
                },
                {
                    "kind": "area", "points": [0.28, 0.52, 0.88, 0.64, 0.84, 0.72, 0.3, 0.61], "pair": True,
                    "color": "#F2E7D2",
                },
                {
                    "kind": "area", "points": [0.2, 0.7, 0.7, 0.82, 0.66, 0.88, 0.2, 0.78], "pair": True,
                    "color": "#F2E7D2",
                },
                {
                    "kind": "area", "points": [0, 0.18, 0.16, 0.24, 0.12, 0.36, 0, 0.4], "color": "#C8402B",
                    "opacity": 1,
                },
                {
                    "kind": "area", "points": [0, 0.46, 0.14, 0.5, 0.1, 0.6, 0, 0.63], "color": "#C8402B",
                    "opacity": 1,
                },
                {
                    "kind": "area", "points": [0, 0.7, 0.12, 0.73, 0.08, 0.8, 0, 0.83], "color": "#C8402B",
                    "opacity": 1,
                },
            ],
        },
        "legs": {
            "lengths": [12, 8, 5.8, 9.6], "thick": 0.23, "taper": 1.4, "color": "#B07A48", "posture": "web-hanger",
            "bands": {
                "color": "#3E2517", "femur": [0.82, 1], "patella": [0, 1], "tibia": [0.78, 1],
                "metatarsus": [0.84, 1],
            },
            "hairs": 1.0, "hair-length": 0.12,
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 0.22, "width": 0.3},
        "palps": {
            "length": 1.9, "thick": 0.95, "bulbs": "bold", "color": "#8A5A38", "bulb-color": "#2C1A14",
            "spread": 30,
        },
        "spinners": {"length": 0.16, "width": 0.2},
    },
    "widow-young": {
        "carapace": {
            "length": 1.5, "width": 1.25, "shape": "heart", "color": "#B98C5C", "overlap": 0.14,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.05, 0.16, 0.3, 0.1, 0.7, 0, 0.9], "color": "#6B472C",
                    "opacity": 0.6,
                },
            ],
        },
        "abdomen": {
            "length": 2.9, "width": 2.7, "shape": "globe", "color": "#A79B86", "shine": 0.35,
            "marks": [
                {
                    "kind": "area",
                    "points": [
                        0, 0.03, 0.17, 0.1, 0.12, 0.25, 0.2, 0.34, 0.11, 0.5, 0.18, 0.6, 0.09, 0.75, 0, 0.93,
                    ],
                    "color": "#F8F1E2", "opacity": 0.98, "edge": "#2C2420", "edge-width": 0.55,
                },
                {
                    "kind": "area",
                    "points": [0.34, 0.14, 0.66, 0.28, 0.92, 0.5, 0.86, 0.58, 0.56, 0.36, 0.3, 0.22], "pair": True,
                    "color": "#F8F1E2", "edge": "#2C2420", "edge-width": 0.4,
                },
                {
                    "kind": "area", "points": [0.32, 0.44, 0.62, 0.56, 0.9, 0.74, 0.82, 0.8, 0.5, 0.64, 0.3, 0.52],
                    "pair": True, "color": "#F8F1E2", "edge": "#2C2420", "edge-width": 0.4,
                },
                {
                    "kind": "spots", "at": [0.24, 0.27, 0.22, 0.42, 0.2, 0.6, 0.4, 0.72], "pair": True,
                    "size": 0.08, "color": "#2C2420",
                },
                {"kind": "area", "points": [0, 0.34, 0.05, 0.42, 0, 0.52], "color": "#D9762B"},
            ],
        },
        "legs": {
            "lengths": [6.8, 4.6, 3.5, 6], "thick": 0.22, "taper": 1.25, "color": "#C7A070",
            "posture": "web-hanger",
            "bands": {
                "color": "#4A3020", "femur": [0.35, 0.5, 0.85, 1], "patella": [0.3, 1],
                "tibia": [0.35, 0.55, 0.82, 1], "metatarsus": [0.4, 0.55, 0.85, 1],
            },
            "hairs": 1.0, "hair-length": 0.12,
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 0.22, "width": 0.28},
        "palps": {"length": 1.0, "thick": 0.62},
        "spinners": {"length": 0.16, "width": 0.2},
    },
    "brown-widow": {
        "plan": "widow",
        "carapace": {
            "color": "#8B6A4A", "shine": 0.2,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.1, 0.22, 0.3, 0.12, 0.75, 0, 0.9], "color": "#55392A",
                    "opacity": 0.6,
                },
            ],
        },
        "abdomen": {
            "color": "#9C7B58", "shine": 0.3, "length": 6.6, "width": 6.2, "depth": 0.4,
            "marks": [
                {"kind": "speckle", "count": 70, "color": "#5A4030", "size": 0.03},
                {
                    "kind": "spots", "at": [0, 0.28, 0, 0.48, 0, 0.68], "size": 0.15, "color": "#C9793A",
                    "edge": "#F3E8D4",
                },
                {
                    "kind": "spots", "at": [0.3, 0.22, 0.36, 0.42, 0.3, 0.62], "pair": True, "size": 0.075,
                    "color": "#38271D",
                },
                {
                    "kind": "area", "points": [0.5, 0.2, 0.8, 0.34, 0.94, 0.5, 0.9, 0.56, 0.7, 0.42, 0.46, 0.28],
                    "pair": True, "color": "#F1E5CE", "edge": "#38271D", "edge-width": 0.35,
                },
                {
                    "kind": "area",
                    "points": [0.5, 0.44, 0.76, 0.58, 0.88, 0.74, 0.8, 0.78, 0.62, 0.64, 0.44, 0.52], "pair": True,
                    "color": "#F1E5CE", "edge": "#38271D", "edge-width": 0.35,
                },
                {
                    "kind": "area", "points": [0.4, 0.68, 0.6, 0.78, 0.66, 0.88, 0.5, 0.86, 0.34, 0.76],
                    "pair": True, "color": "#F1E5CE", "edge": "#38271D", "edge-width": 0.35,
                },
            ],
        },
        "legs": {
            "color": "#B08A5E", "shine": 0.26,
            "bands": {
                "color": "#3C2719", "femur": [0.4, 0.52, 0.84, 1], "patella": [0.2, 1],
                "tibia": [0.38, 0.52, 0.82, 1], "metatarsus": [0.45, 0.56, 0.86, 1], "tarsus": [0.7, 1],
            },
        },
        "jaws": {"color": "#6A4C34"},
        "spinners": {"color": "#5A4030"},
    },
    "false-widow": {
        "carapace": {
            "length": 3.3, "width": 2.6, "shape": "heart", "color": "#6A3A28", "shine": 0.4, "overlap": 0.14,
            "marks": [{"kind": "rays", "color": "#3A1C12", "count": 3}],
        },
        "abdomen": {
            "length": 6.2, "width": 5.1, "shape": "oval", "color": "#4A3440", "shine": 0.6,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.06, 0.5, 0.08, 0.9, 0.24, 0.93, 0.34, 0.6, 0.17, 0, 0.13],
                    "color": "#E9DBC6", "opacity": 0.92,
                },
                {
                    "kind": "area", "points": [0, 0.24, 0.07, 0.36, 0.15, 0.42, 0.06, 0.45, 0, 0.47],
                    "color": "#E2D2BA", "opacity": 0.85,
                },
                {
                    "kind": "area", "points": [0, 0.5, 0.07, 0.58, 0.14, 0.63, 0.05, 0.66, 0, 0.68],
                    "color": "#E2D2BA", "opacity": 0.8,
                },
                {"kind": "area", "points": [0, 0.71, 0.08, 0.77, 0, 0.83], "color": "#E2D2BA", "opacity": 0.7},
                {"kind": "spots", "at": [0.3, 0.34, 0.3, 0.56], "pair": True, "size": 0.06, "color": "#241820"},
            ],
        },
        "legs": {
            "lengths": [11, 8.6, 7, 10], "thick": 0.26, "taper": 1.15, "color": "#8A4E30", "posture": "web-hanger",
            "hairs": 2,
            "bands": {
                "color": "#4A2416", "femur": [0.86, 1], "patella": [0.5, 1], "tibia": [0.82, 1],
                "metatarsus": [0.84, 1], "opacity": 0.6,
            },
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 0.5, "width": 0.6, "color": "#4F2A1C"},
        "palps": {"length": 2.3, "thick": 0.6},
        "spinners": {"length": 0.3, "width": 0.42},
    },
    "house-cobweb": {
        "carapace": {
            "length": 2.1, "width": 1.8, "shape": "heart", "color": "#9A6B3F", "overlap": 0.2,
            "marks": [{"kind": "rays", "color": "#5A3A22", "count": 3}],
        },
        "abdomen": {
            "length": 4.7, "width": 4.2, "shape": "shouldered", "color": "#B39B7B", "shine": 0.25, "stipple": 160,
            "marks": [
                {"kind": "speckle", "count": 120, "color": "#5E4630", "size": 0.045, "opacity": 0.5},
                {"kind": "speckle", "count": 60, "color": "#F6EEDD", "size": 0.04, "opacity": 0.8},
                {
                    "kind": "area", "points": [0.44, 0.2, 0.66, 0.3, 0.78, 0.5, 0.66, 0.56, 0.5, 0.42],
                    "pair": True, "color": "#4B3524", "opacity": 0.85,
                },
                {
                    "kind": "chevrons", "count": 4, "from": 0.42, "to": 0.86, "width": 0.5, "color": "#3F2C1E",
                    "thick": 0.03,
                },
                {
                    "kind": "chevrons", "count": 4, "from": 0.47, "to": 0.9, "width": 0.42, "color": "#F3E9D6",
                    "thick": 0.018,
                },
                {"kind": "area", "points": [0, 0.22, 0.12, 0.27, 0.08, 0.33, 0, 0.34], "color": "#2F2018"},
            ],
        },
        "legs": {
            "lengths": [13.5, 8.6, 6, 9.6], "thick": 0.22, "taper": 1.3, "color": "#BE9560",
            "posture": "web-hanger", "hairs": 1.6, "hair-length": 0.2,
            "bands": {
                "color": "#54371F", "femur": [0.42, 0.54, 0.86, 1], "patella": [0.4, 1],
                "tibia": [0.4, 0.56, 0.82, 1], "metatarsus": [0.42, 0.52, 0.88, 1],
            },
        },
        "eyes": {"layout": "two-rows"},
        "jaws": {"length": 0.3, "width": 0.4, "color": "#7A5230"},
        "palps": {"length": 1.5, "thick": 0.6},
        "spinners": {"length": 0.2, "width": 0.3},
    },
    "cellar-spider": {
        "carapace": {
            "length": 1.7, "width": 1.8, "shape": "shield", "color": "#CDB894", "overlap": 0.05, "stipple": 20,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.3, 0.35, 0.4, 0.3, 0.8, 0, 0.95], "color": "#8A6F4E",
                    "opacity": 0.6,
                },
            ],
        },
        "abdomen": {
            "length": 6.4, "width": 2.3, "shape": "cylinder", "color": "#BDB29C", "stipple": 60,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.06, 0.3, 0.2, 0.2, 0.45, 0.26, 0.6, 0.14, 0.9, 0, 0.96],
                    "color": "#8B8069", "opacity": 0.5,
                },
                {
                    "kind": "spots", "at": [0.5, 0.25, 0.5, 0.42, 0.46, 0.6], "pair": True, "size": 0.16,
                    "color": "#8B8069", "opacity": 0.5,
                },
            ],
        },
        "legs": {
            "lengths": [50, 36, 27, 35], "thick": 0.17, "taper": 1.6, "color": "#C2A67C", "posture": "spindly",
            "arch": 0.2, "hairs": 0.3, "hair-length": 0.4, "shares": [0.27, 0.03, 0.26, 0.35, 0.09], "sway": 4,
            "bands": {"color": "#6A4E32", "femur": [0.95, 1], "patella": [0, 1], "tibia": [0.95, 1]},
        },
        "eyes": {"layout": "triads"},
        "jaws": {"length": 0.3, "width": 0.4},
        "palps": {"length": 1.6, "thick": 0.9},
        "spinners": {"length": 0.2, "width": 0.35},
    },
    "crevice": {
        "carapace": {
            "length": 6.4, "width": 4.9, "shape": "head-broad", "color": "#3A2A24", "shine": 0.12, "hairs": 160,
            "hair-length": 0.5, "hair-color": "#8B7B6C", "stipple": 60, "overlap": 0.06,
            "marks": [{"kind": "rays", "color": "#150E0B", "count": 3}],
        },
        "abdomen": {
            "length": 9.6, "width": 6.8, "shape": "oval", "color": "#3B3533", "shine": 0.08, "hairs": 380,
            "hair-length": 0.65, "hair-color": "#8E8478", "fringe": 90, "stipple": 60, "depth": 0.45,
        },
        "legs": {
            "lengths": [19, 16, 14.5, 18], "thick": 0.27, "taper": 1.05, "color": "#3C302A", "posture": "all-round",
            "hairs": 3.2, "hair-length": 0.6, "hair-color": "#30261F",
        },
        "eyes": {"layout": "crevice"},
        "jaws": {"length": 1.3, "width": 1.4, "color": "#33231D"},
        "palps": {"length": 6.8, "thick": 0.75, "start": 0.55, "spread": 26},
        "spinners": {"length": 0.7, "width": 0.7},
    },
    "crevice-male": {
        "carapace": {
            "length": 4.7, "width": 4.0, "shape": "shield", "color": "#B08150", "shine": 0.18, "hairs": 60,
            "hair-length": 0.35, "overlap": 0.04,
            "marks": [
                {
                    "kind": "area", "points": [0, 0.02, 0.3, 0.1, 0.22, 0.4, 0, 0.52], "color": "#7A512E",
                    "opacity": 0.6,
                },
                {"kind": "rays", "color": "#6A4426", "count": 3},
            ],
        },
        "abdomen": {
            "length": 5.4, "width": 3.2, "shape": "oval", "color": "#9A7C5C", "hairs": 240, "hair-length": 0.45,
            "hair-color": "#5A432E", "fringe": 40,
        },
        "legs": {
            "lengths": [31, 25, 22, 27], "thick": 0.19, "taper": 1.2, "color": "#B88A58", "posture": "all-round",
            "hairs": 2.5, "hair-length": 0.5, "hair-color": "#5A3F28", "shares": [0.27, 0.08, 0.24, 0.26, 0.15],
        },
        "eyes": {"layout": "crevice"},
        "jaws": {"length": 0.5, "width": 0.8, "color": "#8A5C34"},
        "palps": {
            "length": 12.0, "thick": 0.72, "bulbs": "plain", "start": 0.4, "spread": 8, "bulb-color": "#7A3E22",
        },
        "spinners": {"length": 0.5, "width": 0.5},
    },
    "funnel-weaver": {
        "carapace": {
            "length": 5.2, "width": 3.9, "shape": "wolf", "color": "#C2A072", "hairs": 80, "hair-length": 0.35,
            "overlap": 0.03, "hair-color": "#6A5138",
            "marks": [
                {
                    "kind": "area",
                    "points": [0.3, 0.14, 0.56, 0.24, 0.66, 0.5, 0.6, 0.8, 0.34, 0.92, 0.26, 0.66, 0.28, 0.4],
                    "pair": True, "color": "#553A25", "opacity": 0.85,
                },
                {"kind": "margin", "color": "#553A25", "from": 0.35, "to": 0.92, "inner": 0.93, "opacity": 0.7},
                {"kind": "line", "points": [0, 0.5, 0, 0.72], "wide": 0.03},
            ],
        },
        "abdomen": {
            "length": 7.8, "width": 4.5, "shape": "oval", "color": "#8E7457", "hairs": 200, "hair-length": 0.45,
            "hair-color": "#55412D", "fringe": 50,
            "marks": [
                {
                    "kind": "area",
                    "points": [
                        0.24, 0.04, 0.62, 0.12, 0.84, 0.4, 0.7, 0.72, 0.3, 0.94, 0.2, 0.8, 0.3, 0.5, 0.26, 0.2,
                    ],
                    "pair": True, "color": "#4A3422", "opacity": 0.85,
                },
                {
                    "kind": "area", "points": [0, 0.04, 0.2, 0.1, 0.24, 0.4, 0.14, 0.8, 0, 0.96],
                    "color": "#AE7B4C", "opacity": 0.9,
                },
                {
                    "kind": "spots", "at": [0.36, 0.24, 0.4, 0.38, 0.38, 0.52, 0.33, 0.65, 0.28, 0.77, 0.23, 0.87],
                    "pair": True, "size": 0.075, "color": "#E7D6B4",
                },
            ],
        },
        "legs": {
            "lengths": [17.5, 16.5, 15.5, 21], "thick": 0.2, "taper": 1.25, "color": "#BC9768",
            "posture": "all-round", "hairs": 3.5, "hair-length": 0.35, "hair-color": "#4A3422",
            "spines": [0, 0, 2, 0, 4, 5, 0], "spine-length": 0.8,
            "bands": {
                "color": "#5A3E28", "femur": [0.3, 0.42, 0.7, 0.84], "tibia": [0.3, 0.44, 0.82, 0.98],
                "metatarsus": [0.4, 0.5, 0.86, 1], "opacity": 0.5,
            },
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 0.8, "width": 1.0, "color": "#6A4528"},
        "palps": {"length": 4.4, "thick": 0.62, "start": 0.4},
        "spinners": {"length": 2.4, "width": 0.5, "color": "#6B4F34", "jointed": True, "spread": 13},
    },
}  # fmt: skip
"""Plan name to settings."""
