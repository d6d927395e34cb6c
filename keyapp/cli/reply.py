"""A reading as plain JSON data, for scripts."""

from __future__ import annotations

from typing import Any

from keyapp.engine import Reading
from keyapp.model import Answer, Choice, LeadAnswer, Measurement
from keyapp.wording import Words
from keyapp.work import Enquiry

__all__ = ["answer_data", "couplet_data", "result_data", "state_data"]


def couplet_data(enquiry: Enquiry, words: Words, couplet_id: str) -> dict[str, Any]:
    """A couplet with its two leads; `needs_view` where a lead says something is not there."""
    couplet = enquiry.tables.keyset.couplets[couplet_id]
    say = words.language
    leads = []
    for choice, lead in zip((Choice.FIRST, Choice.SECOND), couplet.leads, strict=True):
        leads.append(
            {
                "choice": str(choice),
                "says": lead.says.say(say),
                "ask_caller": lead.ask_caller.say(say),
                "holds": {c: sorted(states) for c, states in lead.holds.items()},
                "needs_view": enquiry.lead_needs_view(couplet_id, choice),
            }
        )
    looks = [enquiry.tables.keyset.characters[c].look.say(say) for c in couplet.leads[0].holds]
    return {"id": couplet_id, "asks": couplet.asks.say(say), "look": looks, "leads": leads}


def answer_data(words: Words, answer: Answer) -> dict[str, Any]:
    """One answer."""
    data: dict[str, Any] = {
        "said": words.answer(answer),
        "sureness": str(answer.sureness),
        "evidence": str(answer.evidence),
    }
    if isinstance(answer, LeadAnswer):
        return {"couplet": answer.couplet, "choice": str(answer.choice), **data}
    if isinstance(answer, Measurement):
        return {"character": answer.character, "mm": answer.mm, **data}
    return {"character": answer.character, "states": sorted(answer.states), "both": answer.both, **data}


def _standing(reading: Reading, words: Words) -> list[dict[str, Any]]:
    return [
        {"group": group.name, "level": group.level, "name": words.group(group), "chance": round(chance, 6)}
        for group, chance in reading.standing.groups
        if chance >= 5e-4
    ]


def _named(reading: Reading, words: Words) -> list[dict[str, Any]]:
    named = []
    for danger in reading.not_ruled_out:
        best = reading.settles.get(danger.group)
        settles = None
        if best is not None:
            settles = {"character": best.character, "clears": list(best.clears), "points": list(best.points)}
        named.append(
            {
                "group": danger.group,
                "name": words.danger(danger.group),
                "taxa": list(danger.taxa),
                "chance": round(danger.chance, 6),
                "contradicted_by": danger.contradicted_by,
                "settles": settles,
            }
        )
    return named


def state_data(enquiry: Enquiry, words: Words) -> dict[str, Any]:
    """Where the enquiry stands: couplet, standing, not ruled out, allowed actions, trail."""
    reading = enquiry.reading
    return {
        "couplet": couplet_data(enquiry, words, reading.current) if reading.current else None,
        "standing": _standing(reading, words),
        "not_ruled_out": _named(reading, words),
        "safety_line": words.safety_line(reading),
        "actions": [str(action) for action in reading.verdict.actions],
        "trail": [
            {"couplet": step.couplet, "kind": str(step.kind), "choice": str(step.choice)} for step in reading.walk.steps
        ],
        "set_aside": [answer_data(words, answer) for answer in reading.walk.set_aside],
        "notes": [answer_data(words, a) for a in enquiry.case.answers if not isinstance(a, LeadAnswer)],
        "contradictions": list(words.contradiction_lines(reading)),
        "go_back": reading.go_back,
    }


def result_data(enquiry: Enquiry, words: Words) -> dict[str, Any]:
    """The result as it stands; always with its cautions, actions and referral."""
    reading = enquiry.reading
    found = reading.verdict
    case = enquiry.case
    return {
        "claim": str(found.claim),
        "heading": words.heading(reading),
        "reason": words.reason(reading),
        "candidates": [
            {
                "group": c.group.name,
                "level": c.group.level,
                "name": words.group(c.group),
                "chance": round(c.chance, 6),
                "taxa": list(c.taxa),
            }
            for c in found.candidates
        ],
        "basis": str(found.basis),
        "led_to": list(found.led_to),
        "led_line": words.led_line(reading),
        "differs": found.differs,
        "parting": found.parting,
        "finished": reading.current is None,
        "safety_line": words.safety_line(reading),
        "settle": list(words.settle_lines(reading)),
        "actions": [{"action": str(a), "says": says, "why": why} for a, says, why in words.action_lines(reading)],
        "cautions": [
            {
                "about": title,
                "says": [
                    {
                        "text": c.says.say(words.language),
                        "basis": list(c.basis),
                        "checked": c.checked.isoformat(),
                        "review_by": c.review_by.isoformat(),
                    }
                    for c in cautions
                ],
            }
            for title, cautions in words.cautions(reading)
        ],
        "second_look": [
            {"group": look.group, "name": words.danger(look.group), "answers": [words.answer(a) for a in look.answers]}
            for look in enquiry.second_look
        ],
        "would_change": words.would_change(reading),
        "referral": list(words.referral(case.settings)),
        "told": case.settings.told,
        "told_facts": list(words.told_facts(case.settings.told)),
    }
