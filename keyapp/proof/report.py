"""The proof in words and as data; every run that breaks it as a walk that can be read."""

from __future__ import annotations

from typing import Any

from keyapp.model import Answer, Choice, KeySet, LeadAnswer, Measurement, Sureness
from keyapp.proof.facts import Breach
from keyapp.proof.prove import Proof
from keyapp.proof.runs import Cover
from keyapp.proof.sample import Failure, Tally
from keyapp.proof.specimen import LEADS

__all__ = ["proof_data", "proof_text"]

SHOWN = 5
"""Walks of one kind that are written out."""

WHY = {
    "truthful": "a truthful answer counts against what is there",
    "inapplicable": "an answer about something the animal does not have counts against it",
    "never": "an answer that may never clear counts",
}


def proof_text(keyset: KeySet, proof: Proof) -> str:
    """The proof for a person: counts, then what breaks it, then the verdict."""
    facts = proof.facts
    lines = [
        f"rule: {proof.need} clearing answers of different independence groups, and low odds, rule a danger out",
        *(f"proven, {level}: {', '.join(taxa)}" for level, taxa in proof.levels.items()),
        f"not held by the gate, allergic risk: {', '.join(proof.allergic) or 'none'}",
        f"start settings that differ in their odds: {proof.settings:,}; none lowers the answers needed",
        f"truthful answers checked: {facts.truthful:,}   about what is not there: {facts.inapplicable:,}   "
        f"of kinds that never clear: {facts.never:,}   that count though they must not: {len(facts.breaches)}",
        "",
        "runs through the key with at most one misread answer and two “can't tell”, counted exactly; what is asked",
        "about what is not there (after a wrong turn, or of a sign taken for an animal) is answered any way:",
        *(_cover(cover) for cover in proof.covers),
        f"  together {sum(cover.runs for cover in proof.covers):,}",
        "",
        "runs through the engine, one misread answer:",
        *_tally(proof, proof.sampled),
        *_rates(proof.sampled),
        "",
        "runs through the engine, two misread answers (measured, not proven):",
        *_tally(proof, proof.two),
        *_rates(proof.two, every=True),
        f"  {_two_errors(proof)}",
    ]
    lines += _broken(keyset, proof)
    lines += ["", "One-error safety holds." if proof.holds else "One-error safety is BROKEN."]
    return "\n".join(lines)


def _two_errors(proof: Proof) -> str:
    """What stands between two errors and a danger that is ruled out."""
    if proof.need > 2:
        return f"Two sure errors never permit ruling out: the gate asks for {proof.need} clearing answers."
    return (
        "Two sure errors of different independence groups can permit ruling a danger out. What then stands in between "
        f"is the odds: a likelihood below {proof.ratio:g} of the best, and a posterior below {proof.posterior:g}."
    )


def _cover(cover: Cover) -> str:
    most = "two or more" if cover.clearing > 1 else str(cover.clearing)
    out = f"   enough to rule it out in {cover.ruled_out:,}" if cover.ruled_out else ""
    return f"  {cover.taxon}: {cover.right:,} right, {cover.misread:,} misread; most clearing answers: {most}{out}"


def _tally(proof: Proof, tally: Tally) -> list[str]:
    kinds = ", ".join(f"{name} {count:,}" for name, count in sorted(tally.kinds.items()))
    hows = ", ".join(f"{name} {count:,}" for name, count in sorted(tally.hows.items()))
    return [
        f"  {tally.total:,} ({kinds}), from {len(tally.starts)} of {proof.classes} classes of start settings; "
        f"danger unnamed in {tally.total_missed:,}",
        f"  {tally.answers:,} answers ({hows}); errors, with those about what there is at the start: {tally.slips:,}",
    ]


def _rates(tally: Tally, every: bool = False) -> list[str]:
    """Rates by result: those above none, or all."""
    return [
        f"  {taxon}: unnamed in {tally.missed.get(taxon, 0):,} of {count:,} "
        f"({100 * tally.missed.get(taxon, 0) / count:.2f} %)"
        for taxon, count in tally.runs.items()
        if every or tally.missed.get(taxon)
    ]


def _broken(keyset: KeySet, proof: Proof) -> list[str]:
    lines: list[str] = []
    for breach in proof.facts.breaches[:SHOWN]:
        lines += ["", *_breach(keyset, breach)]
    for cover in [cover for cover in proof.covers if cover.ruled_out][:SHOWN]:
        lines += ["", *_run(keyset, cover)]
    for failure in proof.sampled.failures[:SHOWN]:
        lines += ["", *_failure(keyset, failure)]
    return lines


def _breach(keyset: KeySet, breach: Breach) -> list[str]:
    head = f"{_title(keyset, breach.taxon)}: {WHY[breach.why]}:"
    return [head, *(f"  {_answer(keyset, answer)}" for answer in breach.answers)]


def _run(keyset: KeySet, cover: Cover) -> list[str]:
    lines = [f"{_title(keyset, cover.taxon)} can be ruled out in this walk:"]
    for character, state in cover.specimen.items():
        found = keyset.characters[character]
        lines.append(f"  it shows: {found.question} {found.state(state).label}")
    for number, said in enumerate(cover.walk, start=1):
        how = "" if said.how in ("seen", "can't tell") else f"   <- {said.how}"
        lines.append(f"  {number}. {_answer(keyset, LeadAnswer(said.couplet, said.choice))}{how}")
    return lines


def _failure(keyset: KeySet, failure: Failure) -> list[str]:
    run = failure.run
    missing = ", ".join(str(keyset.danger_groups[g].name) for g in failure.missing) or "nothing"
    settings = run.case.settings
    known = [
        f"{name}: {value}"
        for name in ("thing", "spot", "region", "month", "evidence")
        if (value := getattr(settings, name))
    ]
    lines = [
        f"{_title(keyset, run.taxon)}: {missing} left unnamed; allowed: {', '.join(failure.actions)}",
        f"  settings: {', '.join(known) or 'none'}",
    ]
    for number, (answer, how) in enumerate(zip(run.case.answers, run.hows, strict=True), start=1):
        mark = "" if how in ("seen", "can't tell") else f"   <- {how}"
        lines.append(f"  {number}. {_answer(keyset, answer)}{mark}")
    return lines


def _title(keyset: KeySet, taxon: str) -> str:
    found = keyset.taxa.get(taxon)
    return f"{found.title} ({taxon})" if found else "Something not in this key"


def _answer(keyset: KeySet, answer: Answer) -> str:
    """One answer in words: what was asked, and what was said."""
    if isinstance(answer, LeadAnswer):
        couplet = keyset.couplets[answer.couplet]
        if answer.choice in LEADS:
            said = str(couplet.leads[LEADS.index(answer.choice)].says)
        else:
            said = "neither fits" if answer.choice is Choice.NEITHER else "can't tell"
        asked = str(couplet.asks)
    else:
        character = keyset.characters[answer.character]
        asked = str(character.question)
        if isinstance(answer, Measurement):
            said = f"{answer.mm:g} mm"
        else:
            labels = [str(character.state(s).label) for s in character.state_ids if s in answer.states]
            said = (" and " if answer.both else " or ").join(labels)
    doubt = "" if answer.sureness is Sureness.SURE else " (think so)"
    return f"{asked} -> {said}{doubt}"


def proof_data(keyset: KeySet, proof: Proof) -> dict[str, Any]:
    """The proof for a program; whole numbers that may be large are given as text."""
    return {
        "holds": proof.holds,
        "answers_needed": proof.need,
        "odds_needed": {"ratio": proof.ratio, "posterior": proof.posterior},
        "start_settings": proof.settings,
        "start_classes": proof.classes,
        "levels": {level: list(taxa) for level, taxa in proof.levels.items()},
        "allergic_risk": list(proof.allergic),
        "facts": {
            "truthful": proof.facts.truthful,
            "inapplicable": proof.facts.inapplicable,
            "never": proof.facts.never,
            "breaches": [_breach(keyset, breach) for breach in proof.facts.breaches],
        },
        "runs": [_cover_data(cover) for cover in proof.covers],
        "one_error": _tally_data(keyset, proof.sampled),
        "two_errors": _tally_data(keyset, proof.two),
        "two_errors_can": _two_errors(proof),
        "walks": [_run(keyset, cover) for cover in proof.covers if cover.ruled_out],
    }


def _cover_data(cover: Cover) -> dict[str, Any]:
    return {
        "taxon": cover.taxon,
        "right": str(cover.right),
        "misread": str(cover.misread),
        "most_clearing": cover.clearing,
        "ruled_out": str(cover.ruled_out),
    }


def _tally_data(keyset: KeySet, tally: Tally) -> dict[str, Any]:
    return {
        "runs": tally.runs,
        "unnamed": tally.missed,
        "kinds": tally.kinds,
        "hows": tally.hows,
        "starts": len(tally.starts),
        "misread": tally.slips,
        "answers": tally.answers,
        "walks": [_failure(keyset, failure) for failure in tally.failures[:SHOWN]],
    }
