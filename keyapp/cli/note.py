"""`keyapp note`: what is found in a note in plain words, with the words it rests on. Nothing is taken as confirmed."""

from __future__ import annotations

import calendar
import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from keyapp.cli.terminal import Terminal
from keyapp.errors import UserError
from keyapp.keyfile import require_keyset
from keyapp.model import KeySet, Settings, Sureness
from keyapp.notes import BetterQuestion, Found, Kind, Note, read_note
from keyapp.wording import Words

__all__ = ["note_data", "run"]


def run(out: Terminal, folder: Path, text: Sequence[str], language: str, as_json: bool) -> int:
    """Read the note given as words, or else the lines of the input; say what was found; returns 0.

    Raises UserError where there is no note to read.
    """
    note_text = " ".join(text) if text else _input(out)
    if not note_text.strip():
        raise UserError(
            "There is no note to read.", where="note", fix='Give it in quotes: keyapp note "brown, no web".'
        )
    keyset = require_keyset(folder)
    note = read_note(keyset, note_text, language)
    words = Words(keyset, language)
    if as_json:
        out.say(json.dumps(note_data(keyset, note), ensure_ascii=False, indent=2))
    else:
        for line in _lines(words, note):
            out.say(line)
    return 0


def _input(out: Terminal) -> str:
    lines = []
    while (line := out.read()) is not None:
        lines.append(line)
    return "\n".join(lines)


def note_data(keyset: KeySet, note: Note) -> dict[str, Any]:
    """A note as plain data; `start` and `end` count characters of the text."""
    why = {word.id: word.why.say(note.language) for word in keyset.notes.ask_instead}
    return {
        "text": note.text,
        "injury": note.injury,
        "found": [_found_data(find) for find in note.found],
        "ask_instead": [
            {
                "words": one.words,
                "start": one.span.start,
                "end": one.span.end,
                "ask": one.ask,
                "question": keyset.characters[one.ask].ask_caller.say(note.language),
                "why": why[one.word],
                "kept": one.kept,
            }
            for one in note.better
        ],
    }


def _found_data(find: Found) -> dict[str, Any]:
    return {
        "id": find.id,
        "kind": str(find.kind),
        "words": find.words,
        "start": find.span.start,
        "end": find.span.end,
        "sureness": str(find.sureness),
        "characters": list(find.characters),
        "states": list(find.states),
        "mm": find.mm,
        "value": find.value,
        "denied": find.denied,
        "must_ask": find.must_ask,
        "view": str(find.view) if find.view else None,
        "misspelt": find.misspelt,
        "against": list(find.against),
    }


def _lines(words: Words, note: Note) -> list[str]:
    lines = []
    if note.injury:
        region = next((find.value for find in note.found if find.kind is Kind.REGION), None)
        lines += ["PERSON FIRST", *(f"  {line}" for line in words.referral(Settings(region=region)))]
    lines.append("Found, to be confirmed one by one:" if note.found else "Nothing that the key can use was found.")
    for find in note.found:
        lines.append(f"  {find.id}. {_says(words, find)}  [“{_one_line(find.words)}”]")
        lines += [f"     {hint}" for hint in _hints(words, find)]
    if note.better:
        lines.append("Better asked than taken down:")
        lines += [line for one in note.better for line in _better(words, one)]
    return lines


def _says(words: Words, find: Found) -> str:
    """One find in a few words, in the key's own wording."""
    keyset, language = words.keyset, words.language
    match find.kind:
        case Kind.STATES | Kind.THING:
            character = keyset.characters[find.characters[0]]
            labels = [character.state(state).label.say(language) for state in find.states]
            said = f"{character.question.say(language)} {' / '.join(labels)}"
        case Kind.SIZE if find.must_ask:
            said = f"A size: {find.mm:g} mm"
        case Kind.SIZE:
            said = f"{keyset.characters[find.characters[0]].question.say(language)} {find.mm:g} mm"
        case Kind.SPOT:
            said = f"Where: {keyset.spots[find.value].label.say(language)}"
        case Kind.MONTH:
            said = f"Month: {calendar.month_name[int(find.value)]}"
        case Kind.REGION:
            said = f"State or region: {find.value}"
        case Kind.TOLD:
            said = f"What they were told: {find.value}"
        case Kind.INJURY:
            said = f"Words of injury: {find.value}"
    return f"{said} ({words.fixed('sureness.think-so')})" if find.sureness is Sureness.THINK_SO else said


def _hints(words: Words, find: Found) -> list[str]:
    hints = []
    if find.must_ask:
        questions = [words.keyset.characters[name].question.say(words.language) for name in find.characters]
        hints.append(f"Ask what was measured: {' / '.join(questions)}")
    if find.view is not None:
        hints.append(f"Counts only if that side was seen: {find.view}")
    if find.against:
        hints.append(f"Cannot be true together with {', '.join(map(str, find.against))}: ask again.")
    if find.misspelt:
        hints.append("Read in spite of its spelling.")
    return hints


def _better(words: Words, one: BetterQuestion) -> list[str]:
    keyset, language = words.keyset, words.language
    why = next(word.why.say(language) for word in keyset.notes.ask_instead if word.id == one.word)
    question = keyset.characters[one.ask].ask_caller.say(language)
    return [f"  “{_one_line(one.words)}”: {why}", f"     Ask: {question}"]


def _one_line(text: str) -> str:
    return " ".join(text.split())
