"""Every code that a check can report, with one line on what it means."""

from __future__ import annotations

from collections.abc import Mapping

from keyapp.keyfile.codes import LOADER_CODES

__all__ = ["CODES", "RULE_CODES"]

RULE_CODES: Mapping[str, str] = {
    "K301": "No path from the start leads to a couplet.",
    "K302": "No path from the start leads into a key.",
    "K303": "No path ends at a result.",
    "K304": "Both leads of a couplet go to the same place (note).",
    "K311": "The leads of a couplet speak of different characters.",
    "K312": "The leads of a couplet do not contrast.",
    "K313": "A lead asserts characters of several independence groups (note).",
    "K321": "A lead on a path contradicts the description of the result at its end.",
    "K322": "A result that can honestly be answered either way is reached through one lead only.",
    "K323": "A path asks for a character that does not apply to the result at its end.",
    "K324": "A path turns on a character that the description of its result leaves out (note).",
    "K325": "After one lead another can no longer be true (note).",
    "K331": "A character is not used.",
    "K332": "A state is not used.",
    "K333": "A figure is not used (note).",
    "K334": "A source is not used (note).",
    "K341": "A statement does not say what it rests on.",
    "K342": "A source that is cited is not listed.",
    "K351": "A figure that is shown is not defined.",
    "K352": "A picture file is missing.",
    "K353": "A figure has no credit.",
    "K354": "A figure has no alt text.",
    "K361": "A caution is past its review date.",
    "K362": "The dates of a caution cannot be right.",
    "K371": "A medically important result lacks cautions, or a published source among them.",
    "K372": "A medically important result has no advice.",
    "K373": "A medically important result has no danger group.",
    "K374": "A danger group is milder than one of its members.",
    "K375": "A sign is milder than the worst animal that makes it.",
    "K376": "A region lacks an emergency, poison or extension contact.",
    "K381": "A character applies to a name that no result has.",
    "K382": "A result shows a character that does not apply to it (note).",
    "K383": "The character said to separate look-alikes does not (note).",
    "K391": "A text comforts falsely, diagnoses, or names a pesticide.",
    "K392": "A text is harder to read than grade 8.",
    "K393": "A term is used that the glossary does not explain.",
}
"""Codes of the rules; those ending in (note) do not fail a check."""

CODES: Mapping[str, str] = {**LOADER_CODES, **RULE_CODES}
"""All codes, those of reading the files first."""
