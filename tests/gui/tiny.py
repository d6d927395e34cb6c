"""A key small enough to draw:

start: legs --six--> insect (not in the key)
         \\-eight-> web --none--> wolf
                      \\-there is one-> shape --wheel--> orb
                                            \\-tangle--> glossy --yes--> widow
                                                               \\-no--> cobweb
"""

from __future__ import annotations

import datetime
from pathlib import Path

import yaml

from keyapp.engine import build_tables
from keyapp.model import (
    COMMON_PRACTICE,
    AppliesTo,
    Caution,
    Character,
    Contact,
    ContactKind,
    Couplet,
    Danger,
    DangerGroup,
    Emergency,
    Figure,
    FindSpot,
    Form,
    Key,
    KeySet,
    Lead,
    LookAlike,
    Means,
    Misname,
    Number,
    Region,
    Size,
    State,
    Statement,
    Target,
    TargetKind,
    Taxon,
    Term,
    Text,
    View,
    Weights,
)
from keyapp.wording import Words
from keyapp.work import Enquiry

BASIS = (COMMON_PRACTICE,)
WORDING = Path(__file__).resolve().parents[2] / "keys" / "wording.yaml"


def caution(says: str) -> Caution:
    return Caution(Text.of(says), BASIS, datetime.date(2026, 11, 1), datetime.date(2027, 11, 1))


def character(
    name: str, states: dict[str, str], *, view: View = View.ANY, absent: str = "", never: str = ""
) -> Character:
    return Character(
        id=name,
        question=Text.of(f"What of {name}?"),
        ask_caller=Text.of(f"Say, what of {name}?"),
        look=Text.of(f"Look at {name} from a step away."),
        means=Means.BARE_EYE,
        view=view,
        applies_to=AppliesTo(),
        tell=0.95,
        right=0.95,
        group=name,
        never_clears=Text.of(never) if never else Text(()),
        seconds=5,
        basis=BASIS,
        states=tuple(
            State(s, Text.of(says), Text.of(f"It is {says.lower()}."), f"{name}-{s}", absence=s == absent)
            for s, says in states.items()
        ),
    )


def size() -> Character:
    whole = character("body-length", {})
    number = Number("mm", 0.2, 200, 0.3)
    return Character(**{**{f: getattr(whole, f) for f in whole.__dataclass_fields__}, "number": number})


def taxon(name: str, family: str, shows: dict[str, str], danger: Danger = Danger.MINOR, **parts: object) -> Taxon:
    plain: dict[str, object] = {
        "id": name,
        "name": name.title(),
        "rank": "family",
        "class_": "Arachnida",
        "order": "Araneae",
        "family": family,
        "title": Text.of(f"{name.title()} spider"),
        "common_names": {"en": (f"{name} spider",)},
        "popular_names": (),
        "misnames": (),
        "form": Form.ANIMAL,
        "stage": Text.of("grown"),
        "kind": name,
        "share": 1.0,
        "made_by": (),
        "shows": {c: {s: 1.0} for c, s in shows.items()},
        "sizes": {"body-length": Size(8, 15)},
        "places": {"room": 1.0},
        "months": (),
        "occurrence": {"default": 1.0},
        "danger": danger,
        "danger_group": "widows" if danger is Danger.SIGNIFICANT else "",
        "cautions": (caution(f"Caution for {name}."),),
        "advice": (caution(f"Advice for {name}."),),
        "look_alikes": (),
        "garden": Statement(Text.of(f"The {name} eats flies."), BASIS),
        "diagnosis": Text.of(f"What a {name} looks like."),
        "season": Text.of("Seen all year."),
        "outside": False,
        "figure": name,
        "basis": BASIS,
    }
    return Taxon(**{**plain, **parts})  # type: ignore[arg-type]


def lead(says: str, holds: dict[str, list[str]], to: tuple[TargetKind, str]) -> Lead:
    figure = "-".join(next((c, s[0]) for c, s in holds.items()))
    return Lead(Text.of(says), Text.of(f"{says}?"), figure, {c: frozenset(s) for c, s in holds.items()}, Target(*to))


def couplet(name: str, asks: str, one: Lead, other: Lead) -> Couplet:
    return Couplet(f"start/{name}", Text.of(asks), (one, other))


def tiny_keyset() -> KeySet:
    characters = [
        character("thing", {"animal": "An animal", "web": "A web"}, never="It says little."),
        character("leg-count", {"six": "Six legs", "eight": "Eight legs"}),
        character(
            "web-shape", {"orb": "A wheel", "tangle": "A tangle", "none": "No web"}, view=View.WEB, absent="none"
        ),
        character("skin", {"glossy": "Glossy", "dull": "Dull"}),
        character(
            "mark", {"red": "A red mark", "none": "No mark"}, view=View.UNDERSIDE, absent="none", never="It hides."
        ),
        character("gait", {"runs": "It runs", "hangs": "It hangs"}),
        character("carries", {"sac": "An egg sac", "nothing": "Neither eggs nor young"}, absent="nothing"),
        size(),
    ]
    look = LookAlike("cobweb", "skin", Text.of("The widow is glossy, the cobweb spider dull."))
    misname = Misname("button spider", Text.of("That is a name for another animal."), BASIS)
    widow = {"leg-count": "eight", "web-shape": "tangle", "skin": "glossy", "mark": "red", "gait": "hangs"}
    cobweb = {"leg-count": "eight", "web-shape": "tangle", "skin": "dull", "mark": "none", "gait": "hangs"}
    orb = {"leg-count": "eight", "web-shape": "orb", "skin": "dull", "mark": "none", "gait": "hangs"}
    wolf = {"leg-count": "eight", "web-shape": "none", "skin": "dull", "mark": "none", "gait": "runs"}
    taxa = [
        taxon("widow", "Theridiidae", widow, Danger.SIGNIFICANT, look_alikes=(look,), misnames=(misname,)),
        taxon("cobweb", "Theridiidae", cobweb),
        taxon("orb", "Araneidae", orb),
        taxon("wolf", "Lycosidae", wolf),
        taxon("insect", "", {"leg-count": "six"}, Danger.UNKNOWN, outside=True, order="", class_="Insecta"),
    ]
    to_taxon, to_couplet = TargetKind.TAXON, TargetKind.COUPLET
    couplets = [
        couplet(
            "legs",
            "How many legs?",
            lead("Six legs.", {"leg-count": ["six"]}, (to_taxon, "insect")),
            lead("Eight legs.", {"leg-count": ["eight"]}, (to_couplet, "start/web")),
        ),
        couplet(
            "web",
            "Is there a web?",
            lead("No web.", {"web-shape": ["none"]}, (to_taxon, "wolf")),
            lead("There is a web.", {"web-shape": ["orb", "tangle"]}, (to_couplet, "start/shape")),
        ),
        couplet(
            "shape",
            "What kind of web?",
            lead("A wheel.", {"web-shape": ["orb"]}, (to_taxon, "orb")),
            lead("A tangle.", {"web-shape": ["tangle"]}, (to_couplet, "start/skin")),
        ),
        couplet(
            "skin",
            "Is it glossy?",
            lead("Glossy like a shoe.", {"skin": ["glossy"]}, (to_taxon, "widow")),
            lead("Dull, with a pattern.", {"skin": ["dull"]}, (to_taxon, "cobweb")),
        ),
    ]
    contacts = (
        Contact(ContactKind.EMERGENCY, Text.of("Emergency"), "911", "", Text.of(""), Text.of("At once"), BASIS),
        Contact(ContactKind.POISON, Text.of("Poison Help"), "1-800-222-1222", "", Text.of(""), Text.of("Bites"), BASIS),
        Contact(ContactKind.EXTENSION, Text.of("Office"), "555-0142", "", Text.of(""), Text.of("Animals"), BASIS, True),
    )
    aid = ("spider", "scorpion", "tick", "sting", "unknown")
    with WORDING.open(encoding="utf-8") as file:
        wording = {str(name): Text.of(_english(says)) for name, says in yaml.safe_load(file).items()}
    return KeySet(
        characters={c.id: c for c in characters},
        taxa={t.id: t for t in taxa},
        keys={"start": Key("start", Text.of("Start"), Text.of("All."), (), "start/legs", {c.id: c for c in couplets})},
        start="start",
        regions={"south": Region("south", Text.of("South"), "", ("GA", "FL"), 0, contacts)},
        spots={
            "room": FindSpot("room", Text.of("In a room"), True),
            "plants": FindSpot("plants", Text.of("On plants"), False),
        },
        danger_groups={"widows": DangerGroup("widows", Text.of("widow spiders"), Danger.SIGNIFICANT)},
        sources={},
        glossary={"web": Term("web", (), Text.of("Silk threads."))},
        figures={"widow": Figure("widow", Text.of("A black spider."), "Drawn for this key", "", {})},
        wording=wording,
        weights=Weights(),
        emergency=Emergency(
            (caution("Trouble breathing."),),
            {kind: (caution(f"First aid for {kind}."),) for kind in aid},
            (caution("Never cut."),),
            ("bit", "bitten", "can't breathe"),
        ),
    )


def _english(says: object) -> str:
    return str(says["en"]) if isinstance(says, dict) else str(says)


def tiny_enquiry() -> tuple[Enquiry, Words]:
    keyset = tiny_keyset()
    return Enquiry(build_tables(keyset)), Words(keyset)
