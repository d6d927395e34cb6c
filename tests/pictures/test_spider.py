"""Spiders: right numbers of parts, and proportions that tell the families apart.

The proportions asked for here are common knowledge of the groups (cellar spiders' legs many times the body,
widows' front legs longest, crab spiders' two front pairs longest and thickest, and so on).
"""

from __future__ import annotations

import pytest

from keyapp.pictures.eyes import ABOVE, FACE
from keyapp.pictures.plans import PLANS, planned
from keyapp.pictures.settings import Settings
from keyapp.pictures.shape import Drawing
from keyapp.pictures.spider import animal, draw_spider, nice_length

EYES = {"three-pairs": 6, "six-close-group": 6}
MALES = {"widow-male", "crevice-male", "tarantula-male", "purse-web-male"}


def parts(plan: str) -> Drawing:
    built = animal(Settings(planned({"plan": plan}), "test"), 1.0, (0.0, 0.0))
    return Drawing((*built.limbs, *built.trunk))


def body_length(plan: str) -> float:
    rows = planned({"plan": plan})
    return rows["carapace"]["length"] * (1 - rows["carapace"].get("overlap", 0.08)) + rows["abdomen"]["length"]


def legs(plan: str) -> list[float]:
    return planned({"plan": plan})["legs"]["lengths"]


@pytest.mark.parametrize("plan", sorted(PLANS))
def test_every_spider_has_its_parts(plan):
    drawing = parts(plan)
    layout = planned({"plan": plan})["eyes"]["layout"]
    assert drawing.count("leg") == 8
    assert drawing.count("segment") == 8 * 7
    assert drawing.count("palp") == 2
    assert drawing.count("palp-segment") == 2 * 6
    assert drawing.count("jaw") == 2
    assert drawing.count("eye") == EYES.get(layout, 8)
    assert drawing.count("carapace") == drawing.count("abdomen") == 1
    assert drawing.count("bulb") == 2 * (plan in MALES)


@pytest.mark.parametrize("layout", sorted(ABOVE))
def test_eyes_from_above_are_six_or_eight(layout):
    assert 2 * len(ABOVE[layout]) == EYES.get(layout, 8)


@pytest.mark.parametrize("layout", sorted(FACE))
def test_eyes_from_the_front_are_six_or_eight_and_do_not_overlap(layout):
    right = FACE[layout]
    assert 2 * len(right) == EYES.get(layout, 8)
    spots = [(side * e.x, e.y, e.r) for e in right for side in (1, -1)]
    gaps = [
        ((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 - a[2] - b[2]
        for index, a in enumerate(spots)
        for b in spots[index + 1 :]
    ]
    assert min(gaps) > -0.02


def test_big_eyes_are_where_their_names_say():
    front = sorted(FACE["two-big-in-front"], key=lambda e: -e.r)[0]
    assert front.r > 1.7 * sorted(e.r for e in FACE["two-big-in-front"])[-2]
    row = FACE["two-big-above-row-of-four"]
    small, large = [e for e in row if e.r < 0.05], [e for e in row if e.r > 0.06]
    assert min(e.y for e in small) > max(e.y for e in large)


def test_cellar_spider_legs_are_five_to_seven_times_the_body():
    assert 5 <= legs("cellar-spider")[0] / body_length("cellar-spider") <= 7


def test_widow_front_legs_are_longest_and_third_shortest():
    one, two, three, four = legs("widow")
    assert one > four > two > three


def test_recluse_second_legs_are_longest():
    assert max(legs("recluse")) == legs("recluse")[1]


def test_wolf_spider_hind_legs_are_longest():
    assert max(legs("wolf")) == legs("wolf")[3]


def test_crab_spider_front_legs_are_longer_and_thicker_than_hind_legs():
    one, two, three, four = legs("crab-spider")
    assert min(one, two) > 1.5 * max(three, four)
    thick = planned({"plan": "crab-spider"})["legs"]["thicker"]
    assert min(thick[:2]) > max(thick[2:])


def test_orb_weavers_third_legs_are_shortest():
    assert all(
        min(legs(plan)) == legs(plan)[2] for plan in ("garden-orb", "typical-orb", "golden-silk-orb", "spiny-orb")
    )


def test_jumping_spider_legs_are_short():
    assert max(legs("jumping-spider")) < body_length("jumping-spider")


def test_tarantula_legs_are_the_thickest_in_mm():
    """`thick` is a share of the front part's width; trapdoor spiders have stouter legs for their size."""
    legs = {plan: planned({"plan": plan}) for plan in PLANS}
    thick = {plan: one["legs"]["thick"] * one["carapace"]["width"] for plan, one in legs.items()}
    assert max(thick, key=thick.get) == "tarantula"


def test_spiny_orb_weaver_is_wider_than_long_and_widow_round():
    spiny, widow = planned({"plan": "spiny-orb"})["abdomen"], planned({"plan": "widow"})["abdomen"]
    assert spiny["width"] > 1.3 * spiny["length"]
    assert widow["width"] > 0.9 * widow["length"]


def test_legs_are_not_mirror_images():
    built = animal(Settings(planned({"plan": "wolf"}), "test"), 1.0, (0.0, 0.0))
    feet = {(pose.pair, pose.side): pose.joints[-1] for pose in built.poses}
    assert all(abs(feet[pair, 1][0] + feet[pair, -1][0]) > 0.05 for pair in range(4))


@pytest.mark.parametrize(("carries", "part", "count"), [("sac-at-tail", "sac", 1), ("sac-under", "sac", 1)])
def test_a_carried_sac_is_drawn(carries, part, count):
    drawing = draw_spider({"plan": "wolf", "carries": {"what": carries, "size": 6}})
    assert drawing.count(part) == count


def test_young_are_drawn_in_the_number_asked_for():
    drawing = draw_spider({"plan": "wolf", "carries": {"what": "young-on-back", "size": 2, "count": 20}})
    assert drawing.count("spiderling") == 20


def test_rings_mark_the_places_named():
    assert draw_spider({"plan": "crevice-male", "ring": ["bulbs", "eyes"]}).count("ring") == 2


@pytest.mark.parametrize(("scale", "mm"), [(20, 1), (8, 2), (4.8, 5), (1.2, 20), (0.1, 50)])
def test_the_scale_bar_is_the_longest_that_fits(scale, mm):
    assert nice_length(scale) == mm


def test_the_scale_bar_is_true_to_the_animal():
    drawing = draw_spider({"plan": "recluse", "bar": 5})
    built = [item for item in drawing.items if getattr(item, "name", "") == "scale-bar"]
    (left, _), (right, _) = (numbers for _, numbers in built[0].items[0].commands[:2])
    carapace = next(item for item in drawing.items if getattr(item, "name", "") == "carapace")
    outline = carapace.items[-2].commands
    high = [numbers[-1] for _, numbers in outline if numbers]
    assert (right - left) / (max(high) - min(high)) == pytest.approx(5 / 4.2, rel=0.02)
