"""Facts stated in published keys and handbooks hold in the shipped descriptions.

Each row: source, results, character, states that must be listed as shown; or, below, that must not be.
"""

from __future__ import annotations

import pytest

CDC = "Scott and Stojanovich, Arthropods of public health importance: key to common classes and orders, CDC"
RILEY = "Riley and Johannsen 1915, Handbook of medical entomology, pp. 152-153"
LEGNER = "Legner, Arachnida, with a key to the orders, University of California, Riverside"
BIERY = "Biery 1977, Venomous arthropod handbook, United States Air Force"
BUCKS = "A history of Buckinghamshire, vol. 1 (Victoria County History, 1905), spiders, pp. 152-153"
BERKS = "A history of Berkshire, vol. 1 (Victoria County History, 1906), arachnids, p. 166"
EMERTON = "Emerton 1902, The common spiders of the United States"
KNOBEL = "Knobel 1901, The spiders of the northern states, p. 7"
CRANSHAW = "Cranshaw, Brown recluse spiders in Colorado (fact sheet 5.607), Colorado State University Extension"
NORTHERN = "Northern black widow (Latrodectus variolus), Encyclopedia of Life"
RAPPAHANNOCK = "Wild ideas: Black widow or not?, Rappahannock News, 22 November 2012"
TENNESSEE = "Centipedes and millipedes, University of Tennessee Institute of Agriculture"

RECLUSES = "recluse recluse-young"
WIDOWS = "widow-black-female widow-brown-female widow-male widow-young"
COBWEB = f"{WIDOWS} false-widow house-cobweb"
ORBS = "garden-orb typical-orb golden-silk-orb spiny-orb"
WOLVES = "wolf-spider wolf-with-sac wolf-with-young"
HUNTERS = (
    f"{RECLUSES} {WOLVES} woodlouse-hunter long-legged-sac ground-spider nursery-web fishing-spider green-lynx "
    "lynx-guarding jumping-spider crab-spider giant-crab tarantula tarantula-male"
)
SPIDERS = f"{COBWEB} {ORBS} {HUNTERS} cellar-spider crevice-spider crevice-male funnel-weaver"
EIGHT_EYED = " ".join(t for t in SPIDERS.split() if t not in (*RECLUSES.split(), "woodlouse-hunter"))

SHOWN = [
    (CDC, "camel-cricket", "leg-count", "six"),
    (CDC, f"{SPIDERS} bark-scorpion other-scorpion hard-tick windscorpion harvestman", "leg-count", "eight"),
    ("Riley and Johannsen 1915, Handbook of medical entomology, on ticks", "tick-larva", "leg-count", "six"),
    (CDC, "house-centipede", "leg-count", "thirty-or-more"),
    (RILEY, f"{SPIDERS} bark-scorpion other-scorpion hard-tick windscorpion harvestman", "feelers", "none"),
    (RILEY, f"{SPIDERS} bark-scorpion other-scorpion hard-tick windscorpion harvestman", "wings", "none"),
    (RILEY, "camel-cricket", "feelers", "long-feelers"),
    (TENNESSEE, "house-centipede", "body-parts", "long-many-rings"),
    (LEGNER, "bark-scorpion other-scorpion", "front-tools", "pincers-and-tail"),
    (RILEY, SPIDERS, "body-parts", "two-with-waist"),
    (RILEY, "hard-tick hard-tick-fed tick-larva", "body-parts", "one-oval"),
    ("Are harvestmen spiders?, Biology Insights", "harvestman", "body-parts", "one-oval"),
    ("Are harvestmen spiders?, Biology Insights", "harvestman", "eye-layout", "small-mound"),
    (BERKS, f"{RECLUSES} woodlouse-hunter", "eye-count", "six"),
    (BERKS, EIGHT_EYED, "eye-count", "eight"),
    (CRANSHAW, RECLUSES, "eye-layout", "three-pairs"),
    (CRANSHAW, RECLUSES, "abdomen-pattern", "plain"),
    (CRANSHAW, RECLUSES, "leg-pattern", "plain"),
    (CRANSHAW, RECLUSES, "leg-surface", "fine-hair-only"),
    (BUCKS, "crab-spider", "leg-posture", "crab-to-sides"),
    (BUCKS, "crab-spider", "gait", "sideways"),
    (BUCKS, "crab-spider", "eye-layout", "two-rows"),
    (BUCKS, "jumping-spider", "eye-layout", "two-big-in-front"),
    (BUCKS, "jumping-spider", "gait", "jumps"),
    (KNOBEL, WOLVES, "eye-layout", "two-big-above-row-of-four"),
    (BUCKS, "nursery-web", "carries", "sac-in-jaws-or-under-body"),
    (EMERTON, "wolf-with-sac", "carries", "sac-at-tail"),
    (BUCKS, "funnel-weaver", "tail-spinners", "two-long"),
    (BUCKS, "funnel-weaver web-sheet-funnel", "web-shape", "sheet-funnel"),
    (BUCKS, f"{COBWEB} web-tangle", "web-shape", "tangle"),
    (EMERTON, COBWEB, "web-hold", "upside-down-under"),
    (BUCKS, f"{ORBS} web-orb", "web-shape", "orb"),
    (BUCKS, ORBS, "eye-layout", "two-rows"),
    (EMERTON, "crevice-spider web-woolly", "web-shape", "woolly-round-hole"),
    (BIERY, "widow-black-female", "body-surface", "bare-shiny"),
    (BIERY, "widow-black-female", "body-colour", "black"),
    (BIERY, "widow-black-female", "abdomen-shape", "globe"),
    (BIERY, "widow-black-female", "underside-mark", "red-hourglass red-spots-or-bars"),
    (NORTHERN, "widow-black-female", "underside-mark", "red-spots-or-bars none"),
    (RAPPAHANNOCK, "widow-young", "body-colour", "grey black"),
    (RAPPAHANNOCK, "widow-young", "abdomen-pattern", "stripe-along"),
    (BIERY, "widow-male", "abdomen-pattern", "stripe-along spots bands-across"),
    (BIERY, "widow-male", "body-colour", "mid-or-pale-brown"),
]

NEVER_SHOWN = [
    (CDC, "camel-cricket", "leg-count", "eight"),
    (RILEY, SPIDERS, "body-parts", "one-oval"),
    (RILEY, f"{SPIDERS} bark-scorpion hard-tick", "wings", "wings"),
    (LEGNER, f"{SPIDERS} harvestman windscorpion", "front-tools", "pincers-and-tail"),
    ("Are harvestmen spiders?, Biology Insights", "harvestman", "body-parts", "two-with-waist"),
    (CRANSHAW, RECLUSES, "eye-layout", "two-rows six-close-group"),
    (CRANSHAW, RECLUSES, "abdomen-pattern", "spots stripe-along chevrons bands-across bold-bright"),
    (CRANSHAW, RECLUSES, "leg-pattern", "banded"),
    (CRANSHAW, RECLUSES, "leg-surface", "stiff-spines"),
    (CRANSHAW, "woodlouse-hunter", "eye-layout", "three-pairs"),
    (KNOBEL, WOLVES, "eye-layout", "two-big-in-front"),
    (BUCKS, "nursery-web", "carries", "sac-at-tail"),
    (EMERTON, "wolf-with-sac", "carries", "sac-in-jaws-or-under-body"),
    (BUCKS, f"{COBWEB} funnel-weaver", "web-shape", "orb"),
]


def rows(table):
    return [
        pytest.param(taxon, character, state, id=f"{taxon}-{character}-{state}")
        for _, taxa, character, states in table
        for taxon in taxa.split()
        for state in states.split()
    ]


@pytest.mark.parametrize(("taxon", "character", "state"), rows(SHOWN))
def test_what_published_keys_state_is_described(shipped, taxon, character, state):
    assert state in shipped.keyset.taxa[taxon].shows[character]


@pytest.mark.parametrize(("taxon", "character", "state"), rows(NEVER_SHOWN))
def test_what_published_keys_exclude_is_not_described(shipped, taxon, character, state):
    assert state not in shipped.keyset.taxa[taxon].shows[character]
