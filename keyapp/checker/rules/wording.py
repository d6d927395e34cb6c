"""Wording: words that must not be used, texts that are too hard, terms that nobody explained."""

from __future__ import annotations

import re
from collections.abc import Iterator

from keyapp.checker.facts import Facts, problem
from keyapp.checker.reading import count_text, grade
from keyapp.checker.texts import Reading, every_text
from keyapp.keyfile.problem import Problem
from keyapp.model.place import Place

__all__ = ["FORBIDDEN", "HARDEST_GRADE", "JARGON", "easy_to_read", "explained_terms", "no_false_comfort"]

HARDEST_GRADE = 8.0
SHORTEST_GRADED = 5

_LEAVE = "say what to do, such as “leave it alone”"
_NOT_IMPORTANT = "say “not considered medically important”, with place, source and date"
_NO_VERDICT = "never say what a bite or sting is or is not"
_NEVER = r"(?:cannot|can\s?not|can['’]t|will\s+not|won['’]t|does\s+not|doesn['’]t|do\s+not|don['’]t|never)"
FORBIDDEN: tuple[tuple[str, str, str], ...] = (
    ("en", r"\bsafe(?:ly)?\s+to\s+(?:handle|touch|hold|pick\s+up|move\s+by\s+hand)\b", _LEAVE),
    ("en", r"\b(?:is|are|it['’]s|they['’]re|quite|perfectly|completely|totally)\s+safe\b(?!\s+(?:distance|place))",
     _LEAVE),
    ("en", r"\bharmless(?:ly|ness)?\b", _NOT_IMPORTANT),
    ("en", rf"\b{_NEVER}\s+(?:hurt|harm)s?\s+(?:you|people|humans?|anyone|a\s+person)\b", _NOT_IMPORTANT),
    ("en", rf"\b{_NEVER}\s+(?:bite|sting)s?\b", _NOT_IMPORTANT),
    ("en", r"\b(?:no|not\s+an?|not\s+any|without)\s+(?:danger|risk|threat)\b", _NOT_IMPORTANT),
    ("en", r"\bnot\s+(?:dangerous|venomous|harmful)\b", _NOT_IMPORTANT),
    ("en", r"\bpoisonous\b", "write “venomous”"),
    ("en", r"\b(?:it|this|that|yours|sore|wound|mark)\s+(?:is|was|isn['’]t|wasn['’]t|must\s+be|can(?:not|['’]t)\s+be)"
     r"\s+(?:not\s+)?an?\s+(?:[\w-]+\s+){0,3}(?:bite|sting)\b", _NO_VERDICT),
    ("en", r"\bnot\s+(?:from\s+)?an?\s+(?:[\w-]+\s+){0,2}(?:bite|sting)\b", _NO_VERDICT),
    ("en", r"\bnothing\s+to\s+(?:worry|fear)\b|\bno\s+(?:need|reason)\s+to\s+worry\b|\b(?:don['’]t|do\s+not)\s+worry\b",
     _LEAVE),
    ("en", r"(?:^|[.!?]\s+)(?:(?!\b(?:no|not|never|don['’]t|without|instead|rather)\b)[^.!?])*"
     r"\b((?:insecticide|pesticide|bug\s+spray)s?)\b", "recommend no pesticide"),
    ("es", r"\binofensiv[oa]s?\b", "write “no se considera de importancia médica”"),
    ("es", r"\bsegur[oa]s?\s+(?:de|para)\s+(?:tocar|manejar|manipular|agarrar)\b", _LEAVE),
    ("es", r"\bno\s+(?:te|le|les|nos)?\s*(?:puede|pueden|hace|hacen)\s+(?:hacer(?:te|le)?\s+)?daño\b", _NOT_IMPORTANT),
    ("es", r"(?:^|[.!?]\s+)(?:(?!\b(?:no|nunca|sin)\b)[^.!?])*\b((?:pesticida|insecticida)s?)\b",
     "recommend no pesticide"),
)
"""Language, pattern (its group, where it has one, is what to show), and what to write instead."""

_JARGON_WORDS = (
    "cephalothorax pedipalp pedipalps chelicera chelicerae spinneret spinnerets cribellate cribellum calamistrum "
    "prosoma opisthosoma tarsus tarsi metatarsus metatarsi tibia tibiae femur patella coxa coxae trochanter epigynum "
    "epigyne scutum scutellum carapace sternum pedicel dorsal ventral lateral anterior posterior distal proximal "
    "cursorial palp palps setae seta spermatophore instar exuviae exuvia ecdysis scopula scopulae clypeus ocelli "
    "ocellus procurved recurved folium cardiac telson pectines pecten chela chelae metasoma mesosoma capitulum "
    "hypostome forcipule forcipules malleoli solifuge opilionid arachnid arachnids arthropod arthropods araneomorph "
    "mygalomorph ecribellate stabilimentum stabilimenta retreat-funnel ballooning thorax antennae antenna larva larvae "
    "nymph nymphs pupa pupae sclerite tubercle tubercles sexually dimorphism dimorphic synanthropic crepuscular "
    "nocturnal diurnal venation elytra elytron proleg prolegs cuticle integument neurotoxic cytotoxic necrotic "
    "envenomation latrodectism loxoscelism"
)
JARGON = frozenset(_JARGON_WORDS.split())
"""Terms that a lay person cannot be expected to know; each that is used needs a glossary entry."""

_COMPILED = tuple((language, re.compile(pattern, re.IGNORECASE), instead) for language, pattern, instead in FORBIDDEN)
_TERM_WORD = re.compile(r"[a-z]+(?:-[a-z]+)*")
_PLACEHOLDER = re.compile(r"\{[^}]*\}")


def no_false_comfort(facts: Facts) -> Iterator[Problem]:
    """K391: words that comfort falsely, diagnose, or name a pesticide. Quoted misnames may say "poisonous"."""
    told: set[Place] = set()
    for reading in every_text(facts.keyset):
        for language, wording in reading.text.entries:
            for of, pattern, instead in _COMPILED:
                found = pattern.search(wording) if of == language and not reading.quotes else None
                if found and reading.place not in told:
                    told.add(reading.place)
                    yield problem("K391", reading.place, f"{reading.called} says “{found[found.lastindex or 0]}”.",
                                  f"Reword it: {instead}.")


def easy_to_read(facts: Facts) -> Iterator[Problem]:
    """K392: an English text for lay people is harder than grade 8 (Flesch-Kincaid)."""
    terms = _glossary_words(facts)
    for reading in _plain_texts(facts):
        counts = count_text(_PLACEHOLDER.sub("name", reading.text.say()), terms)
        if counts.words < SHORTEST_GRADED:
            continue
        level = grade(counts)
        if level > HARDEST_GRADE:
            yield problem(
                "K392", reading.place, f"{reading.called} is too hard to read: grade {level:.1f} "
                f"({counts.words} words, {counts.sentences} sentences, {counts.syllables} syllables).",
                f"Use shorter sentences and words, down to grade {HARDEST_GRADE:.0f}; or explain its terms in the "
                "glossary.")


def explained_terms(facts: Facts) -> Iterator[Problem]:
    """K393: a term of the trade is used that the glossary does not explain; one problem for each term."""
    known = _glossary_words(facts)
    seen: set[str] = set()
    for reading in _plain_texts(facts):
        for word in _TERM_WORD.findall(reading.text.say().lower()):
            if word in JARGON and word not in seen and not {word, word.removesuffix("s")} & known:
                seen.add(word)
                yield problem("K393", reading.place, f"{reading.called} uses “{word}”, which the glossary does not "
                              "explain.", f"Use plain words, or add “{word}” to glossary.yaml.")


def _plain_texts(facts: Facts) -> Iterator[Reading]:
    return (reading for reading in every_text(facts.keyset) if reading.plain and reading.text)


def _glossary_words(facts: Facts) -> frozenset[str]:
    found: set[str] = set()
    for term in facts.keyset.glossary.values():
        for name in (term.term, *term.also):
            found.update(_TERM_WORD.findall(name.lower()))
    return frozenset(found)
