"""A key with what the proof must cope with: a wrong early turn, ways that meet, a lead of two characters."""

from __future__ import annotations

from dataclasses import replace

from keyapp.model import AppliesTo, Danger, FindSpot, Form, Region, Text, Weights
from tests.builders import character, keyset, lead, taxon

ANIMAL = AppliesTo(forms=("animal",))
SPIDERS = AppliesTo(forms=("animal",), groups=("Araneae",))


def garden(**weights):
    """Widows, their web, a weaver and a beetle, over seven characters of six independence groups."""
    characters = [
        character("thing", "animal web", never_clears="it decides what all else is about"),
        character("legs", "eight six", applies_to=ANIMAL),
        character("web", "tangle orb none", absent="none"),
        character("shape", "globe oval flat", applies_to=SPIDERS),
        character("belly", "round long", applies_to=SPIDERS, group="shape"),
        character("spines", "yes no", applies_to=SPIDERS),
        character("wings", "hard soft", applies_to=AppliesTo(forms=("animal",), groups=("Coleoptera",))),
    ]
    widow = {
        "thing": "animal",
        "legs": "eight",
        "web": {"tangle": 0.7, "none": 0.3},
        "shape": {"globe": 0.8, "oval": 0.2},
        "belly": "round",
        "spines": "no",
    }
    weaver = {"thing": "animal", "legs": "eight", "web": "orb", "shape": "flat", "belly": "long", "spines": "yes"}
    taxa = [
        taxon("widow", widow, danger=Danger.SIGNIFICANT, group="widows"),
        taxon(
            "widow-web",
            {"thing": "web", "web": "tangle"},
            danger=Danger.SIGNIFICANT,
            group="widows",
            form=Form.WEB,
            made_by=("widow", "weaver"),
            order="Araneae",
        ),
        taxon("weaver", weaver),
        taxon("beetle", {"thing": "animal", "legs": "six", "wings": "hard"}, order="Coleoptera"),
    ]
    couplets = {
        "thing": (lead("couplet:legs", thing="animal"), lead("couplet:web", thing="web")),
        "legs": (lead("couplet:web", legs="eight"), lead("couplet:wings", legs="six")),
        "web": (lead("couplet:body", web="tangle none"), lead("taxon:weaver", web="orb")),
        "wings": (lead("taxon:beetle", wings="hard"), lead("couplet:body", wings="soft")),
        "body": (
            lead("couplet:spines", shape="globe oval", belly="round"),
            lead("taxon:weaver", shape="flat", belly="long"),
        ),
        "spines": (lead("taxon:widow", spines="no"), lead("taxon:weaver", spines="yes")),
    }
    values = {"outside": 0.02, "unlisted": 0.01, "ruled_out_ratio": 1.0, "ruled_out_posterior": 1.0, **weights}
    return keyset(characters, taxa, couplets, Weights(**values))


def one_answer_is_enough():
    """The same key made unsafe: a single answer rules a danger out."""
    return garden(ruled_out_answers=1)


def with_state(key, taxon_id, character_id, shows):
    """`key` with another description of one character of one result."""
    old = key.taxa[taxon_id]
    new = replace(old, shows={**old.shows, character_id: shows})
    return replace(key, taxa={**key.taxa, taxon_id: new})


def with_places(key):
    """`key` with one region of two states, and one find spot."""
    region = Region("north", Text.of("North"), "", ("AA", "AB"), 0, ())
    return replace(key, regions={"north": region}, spots={"shed": FindSpot("shed", Text.of("Shed"), indoors=True)})
