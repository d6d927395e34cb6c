"""The gate: when a dangerous result may be ruled out, and what may be done."""

from __future__ import annotations

import pytest

from keyapp.engine import Action, build_tables, read_case, second_look
from keyapp.engine.ledger import events
from keyapp.engine.safety import clearing_counts
from keyapp.model import (
    AppliesTo,
    Case,
    Choice,
    Danger,
    Evidence,
    Form,
    LeadAnswer,
    Report,
    Settings,
    Sureness,
    View,
    Weights,
)
from tests.builders import character, keyset, lead, taxon

SURE = Evidence.SPECIMEN
NC = "it is the least reliable word"


def dangerous_garden(**weights):
    """widow (dangerous) against weaver, leaper and stalker, over five characters of four groups."""
    characters = [
        character("web", "tangle orb none", right=0.95, absent="none", view=View.WEB),
        character("gait", "hangs leaps stalks", right=0.95),
        character("shape", "globe oval flat", right=0.95),
        character("colour", "black green", right=0.95, never_clears=NC),
        character("under", "red none", right=0.95, absent="none", view=View.UNDERSIDE, never_clears=NC),
    ]
    taxa = [
        taxon(
            "widow",
            {"web": "tangle", "gait": "hangs", "shape": "globe", "colour": "black", "under": {"red": 0.8, "none": 0.2}},
            danger=Danger.SIGNIFICANT,
            group="widows",
        ),
        taxon("weaver", {"web": "orb", "gait": "hangs", "shape": "oval", "colour": "green", "under": "none"}),
        taxon("leaper", {"web": "none", "gait": "leaps", "shape": "oval", "colour": "black", "under": "none"}),
        taxon("stalker", {"web": "none", "gait": "stalks", "shape": "flat", "colour": "green", "under": "none"}),
    ]
    couplets = {
        "web": (lead("taxon:weaver", web="orb"), lead("couplet:gait", web="tangle none")),
        "gait": (lead("couplet:shape", gait="leaps stalks"), lead("taxon:widow", gait="hangs")),
        "shape": (lead("taxon:leaper", shape="oval"), lead("taxon:stalker", shape="flat globe")),
    }
    values = {"outside": 0.02, "unlisted": 0.01, "ruled_out_ratio": 0.05, "ruled_out_posterior": 0.01, **weights}
    return build_tables(keyset(characters, taxa, couplets, Weights(**values)))


TABLES = dangerous_garden()


def report(name, state, **how):
    return Report(name, frozenset({state}), **how)


def named(*answers, tables=TABLES):
    return [d.group for d in read_case(tables, Case(answers=answers)).not_ruled_out]


def test_with_nothing_said_the_danger_is_named():
    assert named() == ["widows"]


def test_one_sure_answer_never_clears_however_strong():
    tables = dangerous_garden(ruled_out_ratio=1.0, ruled_out_posterior=1.0)
    assert named(report("gait", "leaps"), tables=tables) == ["widows"]


def test_two_sure_answers_of_two_groups_clear_once_odds_are_low_too():
    assert named(report("gait", "leaps"), report("web", "orb"), report("shape", "oval")) == []


def test_low_odds_alone_do_not_clear_when_the_answers_are_not_sure():
    unsure = [
        report(c, s, sureness=Sureness.THINK_SO) for c, s in (("gait", "leaps"), ("web", "orb"), ("shape", "oval"))
    ]
    tables = dangerous_garden(ruled_out_ratio=1.0, ruled_out_posterior=1.0)
    assert named(*unsure, tables=tables) == ["widows"]


def test_two_answers_alone_do_not_clear_while_odds_are_not_low():
    tables = dangerous_garden(ruled_out_posterior=1e-9)
    assert named(report("gait", "leaps"), report("web", "orb"), tables=tables) == ["widows"]


@pytest.mark.parametrize("never", [("colour", "green"), ("under", "none"), ("web", "none")])
def test_what_never_clears_does_not_count(never):
    """Colour, a missing mark and a missing web beside one sure answer: still named."""
    tables = dangerous_garden(ruled_out_ratio=1.0, ruled_out_posterior=1.0)
    assert named(report("gait", "leaps"), report(*never), tables=tables) == ["widows"]


def test_two_answers_of_one_group_count_once():
    characters = [character(c, "yes no", right=0.99, group="one") for c in "xy"]
    taxa = [
        taxon("bad", dict.fromkeys("xy", "yes"), danger=Danger.SIGNIFICANT, group="widows"),
        taxon("good", dict.fromkeys("xy", "no")),
    ]
    tables = build_tables(keyset(characters, taxa, weights=Weights(ruled_out_ratio=1.0, ruled_out_posterior=1.0)))
    assert named(report("x", "no"), report("y", "no"), tables=tables) == ["widows"]


def test_a_state_that_is_listed_as_rare_is_no_contradiction():
    tables = dangerous_garden(ruled_out_ratio=1.0, ruled_out_posterior=1.0)
    event = read_case(tables, Case(answers=(report("under", "none"),))).events[0]
    assert not event.against[tables.row("widow")]


def test_place_month_and_region_never_rule_out():
    for settings in (Settings(month=1), Settings(region="northeast"), Settings(spot="room")):
        assert [d.group for d in read_case(TABLES, Case(settings)).not_ruled_out] == ["widows"]


def test_nothing_may_be_moved_while_a_danger_is_named():
    actions = read_case(TABLES, Case(answers=(report("gait", "leaps"),))).verdict.actions
    assert actions == (Action.KEEP_AWAY,)


def test_move_it_comes_only_when_nothing_dangerous_is_left():
    answers = tuple(report(c, s, evidence=SURE) for c, s in (("gait", "leaps"), ("web", "orb"), ("shape", "oval")))
    assert Action.MOVE in read_case(TABLES, Case(answers=answers)).verdict.actions
    hurt = Case(Settings(hurt=True), answers)
    assert read_case(TABLES, hurt).verdict.actions == (Action.KEEP_AWAY,)


def test_nothing_said_is_unknown_and_kept_away_from():
    verdict = read_case(TABLES, Case()).verdict
    assert (verdict.claim, verdict.actions) == ("unknown", (Action.KEEP_AWAY,))


def test_the_observation_that_settles_it_best_is_named():
    reading = read_case(TABLES, Case(answers=(report("web", "orb"),)))
    settles = reading.settles["widows"]
    assert settles.character == "shape"
    assert settles.clears == ("oval", "flat")


def test_what_never_clears_is_not_proposed_to_settle():
    for answers in ((), (report("web", "orb"),), (report("web", "orb"), report("shape", "oval"))):
        reading = read_case(TABLES, Case(answers=answers))
        found = [s.character for s in reading.settles.values() if s is not None]
        assert not set(found) & {"colour", "under"}


def test_the_second_look_is_what_brings_the_danger_back():
    """Equal to trying every set of answers: one taken back is enough, and it is the cheapest."""
    answers = (report("gait", "leaps"), report("shape", "oval"), report("web", "orb", sureness=Sureness.THINK_SO))
    tables = dangerous_garden()
    reading = read_case(tables, Case(answers=answers))
    assert reading.not_ruled_out == ()
    looks = second_look(tables, reading)
    assert [look.group for look in looks] == ["widows"]
    brings_back = [
        a for a in answers if read_case(tables, Case(answers=tuple(b for b in answers if b != a))).not_ruled_out
    ]
    assert len(looks[0].answers) == 1
    assert looks[0].answers[0] in brings_back


def test_one_misread_answer_with_all_that_follows_never_hides_a_danger():
    """Every run of a widow through the key with one answer wrong, random where nothing applies."""
    truth = {"web": Choice.SECOND, "gait": Choice.SECOND, "shape": Choice.SECOND}
    for wrong in truth:
        for slip in (Choice.FIRST, Choice.NEITHER, Choice.CANT_TELL):
            case = Case()
            while (couplet := read_case(TABLES, case).current) is not None:
                name = couplet.removeprefix("k/")
                case = case.with_answer(LeadAnswer(couplet, slip if name == wrong else truth[name]))
            assert [d.group for d in read_case(TABLES, case).not_ruled_out] == ["widows"]


def web_and_its_maker():
    """A widow and her web. A web has no legs, which can be said of it; of its shape and gait nothing can."""
    animals = AppliesTo(forms=("animal",))
    characters = [
        character("thing", "animal web"),
        character("legs", "eight none"),
        character("shape", "globe oval", applies_to=animals),
        character("gait", "hangs leaps", applies_to=animals),
    ]
    widow = {"thing": "animal", "legs": "eight", "shape": "globe", "gait": "hangs"}
    leaper = {"thing": "animal", "legs": "eight", "shape": "oval", "gait": "leaps"}
    how = {"danger": Danger.SIGNIFICANT, "group": "widows"}
    taxa = [
        taxon("widow", widow, **how),
        taxon("web", {"thing": "web", "legs": "none"}, form=Form.WEB, made_by=("widow",), **how),
        taxon("leaper", leaper),
    ]
    couplets = {
        "both": (lead("taxon:widow", legs="none", shape="globe"), lead("taxon:leaper", legs="eight", shape="oval"))
    }
    weights = Weights(ruled_out_ratio=1.0, ruled_out_posterior=1.0)
    return build_tables(keyset(characters, taxa, couplets, weights))


def clearing(tables, *answers):
    counts = clearing_counts(tables, events(tables, answers))
    return {tables.rows[row].taxon: int(counts[row]) for row in tables.gated}


TAKEN = report("thing", "animal")


@pytest.mark.parametrize(
    ("answers", "counted"),
    [
        ((), 0),
        ((TAKEN,), 1),
        ((TAKEN, report("shape", "oval"), report("gait", "leaps")), 1),
        ((TAKEN, LeadAnswer("k/both", Choice.SECOND), report("gait", "leaps")), 1),
        ((TAKEN, report("legs", "none"), report("gait", "leaps")), 1),
        ((TAKEN, report("legs", "eight")), 2),
    ],
    ids=["nothing", "taken for it", "its body made up", "a lead about it", "then seen right", "two errors"],
)
def test_a_web_taken_for_an_animal_is_contradicted_once_whatever_is_made_up_of_its_body(answers, counted):
    tables = web_and_its_maker()
    assert clearing(tables, *answers)["web"] == counted
    still_named = [d.group for d in read_case(tables, Case(answers=answers)).not_ruled_out] == ["widows"]
    assert still_named or counted == 2


def test_a_true_animal_clears_the_web_by_what_a_web_never_shows():
    tables = web_and_its_maker()
    seen = [TAKEN, report("legs", "eight"), report("shape", "oval"), report("gait", "leaps")]
    assert clearing(tables, *seen) == {"widow": 2, "web": 2}
    assert read_case(tables, Case(answers=tuple(seen))).not_ruled_out == ()
