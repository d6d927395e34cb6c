"""Body plans of sac spiders, ant mimics, and spiders of burrows and purses (see `plans`)."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["SAC_AND_TRAPDOOR"]

SAC_AND_TRAPDOOR: dict[str, Mapping[str, object]] = {
    "leafcurling-sac": {
        "carapace": {
            "length": 3.4, "width": 2.5, "shape": "shield", "color": "#B58A55", "shine": 0.25, "overlap": 0.04,
            "hairs": 30, "hair-length": 0.2, "hair-color": "#7A5A36",
        },
        "abdomen": {
            "length": 5.2, "width": 3.1, "shape": "oval", "color": "#A9855E", "hairs": 190, "hair-length": 0.28,
            "hair-color": "#75583A", "shine": 0.15,
            "marks": [
                {"kind": "area", "points": [0, 0.06, 0.12, 0.1, 0.1, 0.4, 0, 0.5], "color": "#7F5C3A", "opacity": 0.5},
            ],
        },
        "legs": {
            "lengths": [8.4, 8.2, 7.2, 9.6], "thick": 0.25, "taper": 1.2, "color": "#C29A64", "posture": "all-round",
            "hairs": 2, "hair-length": 0.22,
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 1.1, "width": 0.95, "color": "#4E2C18", "shine": 0.4},
        "palps": {"length": 2.6, "thick": 0.62, "start": 0.45},
        "spinners": {"length": 0.5, "width": 0.36, "color": "#8A6A48"},
    },
    "ghost-spider": {
        "carapace": {
            "length": 3.2, "width": 2.5, "shape": "pear", "color": "#DCC493", "shine": 0.15, "overlap": 0.04,
            "marks": [
                {
                    "kind": "area", "points": [0.3, 0.16, 0.52, 0.24, 0.62, 0.5, 0.5, 0.82, 0.34, 0.9, 0.28, 0.5],
                    "pair": True, "color": "#6E5032", "opacity": 0.9,
                },
            ],
        },
        "abdomen": {
            "length": 5.4, "width": 3.0, "shape": "long", "color": "#DECBA0", "hairs": 120, "hair-length": 0.25,
            "hair-color": "#9C8458",
            "marks": [
                {"kind": "area", "points": [0.1, 0.16 + 0.12 * row, 0.24, 0.15 + 0.12 * row, 0.24, 0.2 + 0.12 * row,
                                            0.1, 0.21 + 0.12 * row], "pair": True, "color": "#6E4C2E", "opacity": 0.85}
                for row in range(5)
            ] + [
                {"kind": "area", "points": [0.48, 0.2 + 0.13 * row, 0.64, 0.2 + 0.13 * row, 0.62, 0.26 + 0.13 * row,
                                            0.48, 0.25 + 0.13 * row], "pair": True, "color": "#7C5A38", "opacity": 0.7}
                for row in range(4)
            ],
        },
        "legs": {
            "lengths": [14.5, 11.6, 9.4, 13], "thick": 0.19, "taper": 1.3, "color": "#D9BF8E", "posture": "all-round",
            "hairs": 1.4, "hair-length": 0.25, "spines": [0, 0, 2, 0, 3, 3, 0], "spine-length": 0.9,
        },
        "eyes": {"layout": "fronted"},
        "jaws": {"length": 0.8, "width": 0.75, "color": "#8A6238"},
        "palps": {"length": 2.6, "thick": 0.7, "start": 0.45},
        "spinners": {"length": 0.4, "width": 0.3, "color": "#B79C6C"},
    },
    "ant-mimic-sac": {
        "carapace": {
            "length": 4.0, "width": 2.3, "shape": "shield", "color": "#5A1F14", "shine": 0.5, "overlap": -0.16,
        },
        "abdomen": {
            "length": 5.4, "width": 2.7, "shape": "broad-behind", "color": "#231C1A", "shine": 0.5, "hairs": 40,
            "hair-length": 0.2, "hair-color": "#8A8078",
            "marks": [
                {"kind": "area", "points": [0, 0.22, 0.5, 0.2, 0.9, 0.25, 0.9, 0.29, 0.5, 0.25, 0, 0.27],
                 "color": "#F1EADC", "opacity": 0.95},
                {"kind": "area", "points": [0, 0.52, 0.5, 0.5, 0.9, 0.54, 0.9, 0.58, 0.5, 0.55, 0, 0.57],
                 "color": "#F1EADC", "opacity": 0.95},
            ],
        },
        "legs": {
            "lengths": [9.6, 8.8, 8.2, 12], "thick": 0.17, "taper": 1.35, "color": "#6B3018", "posture": "hunter",
            "hairs": 1, "hair-length": 0.2, "shine": 0.35,
            "bands": {"color": "#221A16", "opacity": 0.8, "femur": [0.45, 0.95]},
        },
        "eyes": {"layout": "fronted", "times": 0.9},
        "jaws": {"length": 0.6, "width": 0.7, "color": "#3A1810"},
        "palps": {"length": 2.2, "thick": 0.6},
        "spinners": {"length": 0.25, "width": 0.25},
    },
    "broad-faced-sac": {
        "carapace": {
            "length": 4.3, "width": 3.5, "shape": "head-broad", "color": "#7E2416", "shine": 0.35, "stipple": 220,
            "overlap": 0.04,
        },
        "abdomen": {
            "length": 5.4, "width": 3.5, "shape": "oval", "color": "#CDBFA2", "hairs": 150, "hair-length": 0.2,
            "hair-color": "#94866A", "shine": 0.2,
            "marks": [
                {"kind": "area", "points": [0, 0.06, 0.12, 0.1, 0.1, 0.42, 0, 0.5], "color": "#A08C68", "opacity": 0.6},
            ],
        },
        "legs": {
            "lengths": [10.2, 9.2, 7.4, 9], "thick": 0.26, "thicker": [1.5, 1.25, 0.9, 0.85], "taper": 1.1,
            "color": "#9C3E22", "posture": "all-round", "hairs": 0.5, "hair-length": 0.2, "shine": 0.35,
        },
        "eyes": {"layout": "two-rows-wide"},
        "jaws": {"length": 1.1, "width": 1.25, "color": "#5C180E", "shine": 0.4},
        "palps": {"length": 2.8, "thick": 0.6, "start": 0.45},
        "spinners": {"length": 0.35, "width": 0.36, "color": "#A08C68"},
    },
    "ant-mimic-jumper": {
        "carapace": {
            "length": 3.4, "width": 1.75, "shape": "box", "color": "#2A211F", "shine": 0.5, "overlap": -0.2,
            "marks": [
                {"kind": "area", "points": [0, 0.56, 0.95, 0.53, 0.95, 0.58, 0, 0.61], "color": "#EDE3CF",
                 "opacity": 0.9},
            ],
        },
        "abdomen": {
            "length": 3.6, "width": 1.7, "shape": "broad-behind", "color": "#3A1D16", "shine": 0.5, "hairs": 30,
            "hair-length": 0.12, "hair-color": "#9A8C7C",
            "marks": [
                {"kind": "area", "points": [0, 0.3, 0.95, 0.27, 0.95, 0.33, 0, 0.36], "color": "#EDE3CF",
                 "opacity": 0.9},
            ],
        },
        "legs": {
            "lengths": [5.6, 4.4, 4.8, 6.2], "thick": 0.17, "taper": 1.2, "color": "#7A3A22",
            "posture": "front-and-back", "hairs": 0.8, "hair-length": 0.12,
        },
        "eyes": {"layout": "two-big-in-front"},
        "jaws": {"length": 0.5, "width": 0.8, "color": "#2A211F"},
        "palps": {"length": 1.3, "thick": 0.8},
        "spinners": {"length": 0.15, "width": 0.2},
    },
    "folding-door": {
        "carapace": {
            "length": 6.6, "width": 5.4, "shape": "head-broad", "color": "#6A4428", "shine": 0.35, "hairs": 40,
            "hair-length": 0.4, "hair-color": "#3E2918", "overlap": 0.03,
            "marks": [{"kind": "rays", "color": "#3A2414", "count": 4, "opacity": 0.5, "at": 0.66}],
        },
        "abdomen": {
            "length": 7.6, "width": 5.6, "shape": "oval", "color": "#7A5A44", "hairs": 240, "hair-length": 0.5,
            "hair-color": "#43301F",
            "marks": [
                {"kind": "area", "points": [0, 0.1, 0.5, 0.1, 0.56, 0.17, 0.46, 0.22, 0, 0.22], "color": "#3A2416",
                 "opacity": 0.95},
                {"kind": "area", "points": [0, 0.27, 0.34, 0.27, 0.38, 0.32, 0.3, 0.36, 0, 0.36], "color": "#3A2416",
                 "opacity": 0.95},
                {"kind": "area", "points": [0, 0.42, 0.2, 0.42, 0.2, 0.47, 0, 0.47], "color": "#3A2416",
                 "opacity": 0.9},
            ],
        },
        "legs": {
            "lengths": [14.6, 12.6, 11.4, 15], "thick": 0.38, "taper": 0.95, "color": "#6E4A2E", "posture": "all-round",
            "hairs": 3, "hair-length": 0.55, "hair-color": "#3E2918", "shares": [0.29, 0.17, 0.22, 0.19, 0.13],
        },
        "eyes": {"layout": "small-mound", "times": 1.1, "patch": "#3A2414"},
        "jaws": {"length": 2.9, "width": 2.0, "color": "#4A2C18", "hairs": 20, "spread": 4},
        "palps": {"length": 10.5, "thick": 0.85, "start": 0.62, "spread": 30},
        "spinners": {"length": 1.4, "width": 0.5, "color": "#5C4430", "jointed": True, "spread": 16},
    },
    "cork-lid": {
        "carapace": {
            "length": 10, "width": 8.8, "shape": "round", "color": "#2B1A12", "shine": 0.6, "overlap": 0.03,
            "marks": [{"kind": "rays", "color": "#120A07", "count": 4, "opacity": 0.5, "at": 0.68}],
        },
        "abdomen": {
            "length": 12.5, "width": 10.6, "shape": "globe", "color": "#5A4136", "hairs": 180, "hair-length": 0.5,
            "hair-color": "#33231A", "shine": 0.08, "stipple": 60,
        },
        "legs": {
            "lengths": [17.5, 15.5, 14, 19], "thick": 0.46, "taper": 0.85, "color": "#3A2418", "posture": "all-round",
            "hairs": 1.4, "hair-length": 0.5, "hair-color": "#1C110B", "shine": 0.45, "spines": [0, 0, 1, 2, 4, 5, 0],
            "spine-length": 0.9, "shares": [0.28, 0.18, 0.21, 0.18, 0.15],
        },
        "eyes": {"layout": "small-mound", "times": 1.0, "patch": "#120A07"},
        "jaws": {"length": 4.4, "width": 3.3, "color": "#24150E", "shine": 0.5, "hairs": 20, "spread": 3},
        "palps": {"length": 14, "thick": 0.85, "start": 0.62, "spread": 30},
        "spinners": {"length": 0.9, "width": 0.9, "color": "#463228"},
    },
    "purse-web": {
        "carapace": {
            "length": 8, "width": 7.4, "shape": "head-broad", "color": "#2A2020", "shine": 0.55, "overlap": 0.03,
            "marks": [{"kind": "rays", "color": "#120C0C", "count": 3, "opacity": 0.5, "at": 0.7}],
        },
        "abdomen": {
            "length": 11, "width": 7.6, "shape": "oval", "color": "#43322F", "hairs": 80, "hair-length": 0.35,
            "hair-color": "#2A1D1A", "shine": 0.2,
            "marks": [
                {"kind": "area", "points": [0, 0.08, 0.34, 0.1, 0.36, 0.24, 0, 0.26], "color": "#241817",
                 "opacity": 0.8},
            ],
        },
        "legs": {
            "lengths": [13, 11.5, 10.5, 13.5], "thick": 0.36, "taper": 0.95, "color": "#352625", "posture": "all-round",
            "hairs": 0.6, "hair-length": 0.3, "shine": 0.45,
        },
        "eyes": {"layout": "small-mound", "times": 1.0, "patch": "#120C0C"},
        "jaws": {"length": 6.6, "width": 3.3, "color": "#2A1E1E", "fangs": True, "spread": 5, "shine": 0.5},
        "palps": {"length": 7, "thick": 0.7, "start": 0.7, "spread": 52},
        "spinners": {"length": 1.8, "width": 0.7, "color": "#352625", "jointed": True, "spread": 14},
    },
    "purse-web-male": {
        "plan": "purse-web",
        "carapace": {"length": 6.4, "width": 6.0},
        "abdomen": {"length": 7.2, "width": 4.8, "color": "#232027"},
        "legs": {"lengths": [21, 19, 17, 21], "thick": 0.22, "taper": 1.1, "color": "#B32A1C"},
        "jaws": {"length": 5.2, "width": 2.6},
        "palps": {"length": 8.5, "thick": 0.75, "bulbs": "plain", "bulb-color": "#2A1710"},
    },
}  # fmt: skip
"""Plan name to settings."""
